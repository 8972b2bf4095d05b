"""Change one thing in a module and see whether its tests notice: ``python tests/mutate.py woodlib/air/seasons.py tests/air``.

Each change (an operator turned round, a comparison, a number 10 % off) is made in a copy of the project; the tests named
must fail there. What survives is printed with its line, and a score at the end. ``--most N`` takes an even sample.
"""

from __future__ import annotations

import argparse
import ast
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

PROJECT = Path(__file__).resolve().parent.parent
TURNED = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Pow: ast.Mult}
TURNED |= {ast.Lt: ast.GtE, ast.GtE: ast.Lt, ast.Gt: ast.LtE, ast.LtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq}
TURNED |= {ast.And: ast.Or, ast.Or: ast.And}


def changes(source: str):
    """Every change as (line, what it is, the source after it); text, annotations and checks of kind stay."""
    tree = ast.parse(source)
    left: set[int] = set()
    for node in ast.walk(tree):
        for part in [getattr(node, "annotation", None), getattr(node, "returns", None)]:
            left |= {id(each) for each in ast.walk(part)} if part else set()
        if isinstance(node, ast.Raise | ast.JoinedStr | ast.Subscript):
            left |= {id(each) for each in ast.walk(node)}
    for node in ast.walk(tree):
        if id(node) in left:
            continue
        for set_to, what in _turned(node):
            undo = set_to()
            yield node.lineno, what, ast.unparse(tree)
            undo()


def _turned(node: ast.AST):
    if isinstance(node, ast.BinOp | ast.BoolOp) and type(node.op) in TURNED and not _joins_text(node):
        yield _swap(node, "op", TURNED[type(node.op)]()), f"{ast.unparse(node)}: {type(node.op).__name__}"
    if isinstance(node, ast.Compare) and type(node.ops[0]) in TURNED:
        yield _swap(node, "ops", [TURNED[type(node.ops[0])](), *node.ops[1:]]), ast.unparse(node)
    if isinstance(node, ast.Constant) and type(node.value) in (int, float):
        other = node.value * 1.1 if isinstance(node.value, float) and node.value else node.value + 1
        yield _swap(node, "value", other), f"{node.value} -> {other:.4g}"


def _joins_text(node: ast.AST) -> bool:
    left = getattr(node, "left", None)
    return isinstance(left, ast.Constant) and isinstance(left.value, str)


def _swap(node: ast.AST, name: str, new):
    def set_to():
        old = getattr(node, name)
        setattr(node, name, new)
        return lambda: setattr(node, name, old)

    return set_to


def noticed(copy: Path, tests: list[str]) -> bool:
    """Whether the tests fail in the copy; one that hangs has noticed, too."""
    settings = os.environ | {"PYTHONPATH": f"{copy}{os.pathsep}{copy / 'tests'}", "PYTHONDONTWRITEBYTECODE": "1"}
    command = [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *tests]
    try:
        done = subprocess.run(command, cwd=copy, env=settings, capture_output=True, text=True, timeout=300)
    except subprocess.TimeoutExpired:
        return True
    if done.returncode not in (0, 1, 2):
        raise SystemExit(done.stdout + done.stderr)
    return done.returncode != 0


def main() -> int:
    """Try the changes; 1 when one survives."""
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("module", type=Path)
    options.add_argument("tests", nargs="+")
    options.add_argument("--most", type=int, default=0)
    chosen = options.parse_args()
    source = (PROJECT / chosen.module).read_text(encoding="utf-8")
    found = list(changes(source))
    found = found[:: max(1, len(found) // chosen.most)] if chosen.most else found
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "copy"
        shutil.copytree(PROJECT, copy, ignore=shutil.ignore_patterns(".*", "__pycache__", "*.ipynb_checkpoints"))
        if noticed(copy, chosen.tests):
            raise SystemExit("These tests fail before anything is changed.")
        survived = 0
        for line, what, changed in found:
            (copy / chosen.module).write_text(changed, encoding="utf-8")
            if not noticed(copy, chosen.tests):
                survived += 1
                print(f"survived: {chosen.module}:{line}: {what}", flush=True)
    print(f"{chosen.module}: {len(found) - survived} of {len(found)} changes noticed")
    return 1 if survived else 0


if __name__ == "__main__":
    sys.exit(main())
