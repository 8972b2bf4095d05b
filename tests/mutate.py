"""Change one thing at a time in the kit and see whether its tests notice.

``python tests/mutate.py woodlib/air woodlib/movement --tests tests/air tests/movement --most 40``

One run under coverage tells which tests come by which line. Then each change (an operator turned round, a comparison, a
number 10 % off) is made in a process forked from there, where only the tests that come by are run, the quickest first. A
change of what is worked out as a module is loaded gets a fresh process. What survives is printed with its line, then the
score of each file. ``--most N`` takes an even sample of N changes of each file; ``--seconds`` limits the tests tried for
one change. A number below 1e-8 only keeps rounding in check and stays. It needs fork, so Linux or macOS; leave the files
alone while it runs.
"""

from __future__ import annotations

import argparse
import ast
import gc
import importlib.machinery
import os
import pickle
import signal
import sys
import time
import types
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NamedTuple

import coverage
import pytest
from _pytest.runner import runtestprotocol
from hypothesis import Phase, settings

PROJECT = Path(__file__).resolve().parent.parent
TURNED = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Pow: ast.Mult}
TURNED |= {ast.Lt: ast.GtE, ast.GtE: ast.Lt, ast.Gt: ast.LtE, ast.LtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq}
TURNED |= {ast.And: ast.Or, ast.Or: ast.And}
HANGS_S = 120
QUIET = ["-q", "--tb=no", "-p", "no:cacheprovider", "-W", "ignore"]


class Change(NamedTuple):
    """One change: where it is, what it is, the lines that a test has to come by, and whether they are in a function."""

    path: Path
    line: int
    what: str
    near: range
    in_function: bool
    tree: bytes

    def code(self) -> types.CodeType:
        """The changed module, compiled."""
        return compile(pickle.loads(self.tree), str(self.path), "exec", dont_inherit=True)


def changes(path: Path, tree: ast.Module | None = None) -> Iterator[Change]:
    """Every change of a module; text, annotations, subscripts and what only tells of an error stay."""
    tree = tree or ast.parse(path.read_text(encoding="utf-8"))
    for node, statement, inside in _walk(tree, tree.body[0], False):
        for set_to, what in _turned(node):
            undo = set_to()
            body = getattr(statement, "body", None)
            last = body[0].lineno - 1 if isinstance(body, list) else statement.end_lineno
            near = range(statement.lineno, max(last, statement.lineno) + 1)
            yield Change(path, node.lineno, what, near, inside, pickle.dumps(tree))
            undo()


def _walk(node: ast.AST, statement: ast.stmt, inside: bool) -> Iterator[tuple[ast.AST, ast.stmt, bool]]:
    """Every node that may be changed, with the statement it stands in and whether it waits until a function runs."""
    if isinstance(node, ast.Raise | ast.JoinedStr | ast.Subscript) or _tells_an_error(node):
        return
    statement = node if isinstance(node, ast.stmt) else statement
    yield node, statement, inside
    for name, value in ast.iter_fields(node):
        if name in ("annotation", "returns"):
            continue
        waits = inside or (name == "body" and isinstance(node, ast.FunctionDef | ast.Lambda))
        for part in value if isinstance(value, list) else [value]:
            if isinstance(part, ast.AST):
                yield from _walk(part, statement, waits)


def _tells_an_error(node: ast.AST) -> bool:
    return (
        isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and ast.unparse(node.func) == "problems.add"
    )


def _turned(node: ast.AST):
    if isinstance(node, ast.BinOp | ast.BoolOp) and type(node.op) in TURNED and not _joins_text(node):
        yield _swap(node, "op", TURNED[type(node.op)]()), f"{ast.unparse(node)}: {type(node.op).__name__}"
    if isinstance(node, ast.Compare) and type(node.ops[0]) in TURNED:
        yield _swap(node, "ops", [TURNED[type(node.ops[0])](), *node.ops[1:]]), ast.unparse(node)
    if isinstance(node, ast.Constant) and type(node.value) in (int, float) and not 0 < node.value < 1e-8:
        other = node.value * 1.1 if isinstance(node.value, float) and node.value else node.value + 1
        yield _swap(node, "value", other), f"{node.value} -> {other:.4g}"


def _joins_text(node: ast.AST) -> bool:
    left = getattr(node, "left", None)
    return isinstance(left, ast.JoinedStr) or (isinstance(left, ast.Constant) and isinstance(left.value, str))


def _swap(node: ast.AST, name: str, new):
    def set_to():
        old = getattr(node, name)
        setattr(node, name, new)
        return lambda: setattr(node, name, old)

    return set_to


def _codes(code: types.CodeType) -> Iterator[types.CodeType]:
    yield code
    for part in code.co_consts:
        if isinstance(part, types.CodeType):
            yield from _codes(part)


def put_in_place(change: Change) -> None:
    """Give every function of the changed module that is alive the changed code."""
    usual = compile(change.path.read_text(encoding="utf-8"), str(change.path), "exec", dont_inherit=True)
    new = {old: now for old, now in zip(_codes(usual), _codes(change.code()), strict=True) if old != now}
    for each in gc.get_objects():
        if isinstance(each, types.FunctionType) and each.__code__ in new:
            each.__code__ = new[each.__code__]


def load_changed(change: Change) -> None:
    """Load the changed module instead of the usual one, in a process that has not loaded it yet."""
    name = ".".join(change.path.relative_to(PROJECT).with_suffix("").parts).removesuffix(".__init__")

    class Changed(importlib.machinery.SourceFileLoader):
        def get_code(self, fullname):
            return change.code()

    class Finder(importlib.machinery.PathFinder):
        @classmethod
        def find_spec(cls, fullname, path=None, target=None):
            spec = super().find_spec(fullname, path, target)
            if fullname == name and spec is not None:
                spec.loader = Changed(fullname, str(change.path))
            return spec

    sys.meta_path.insert(0, Finder)


FELL_OVER = 3


def forked(work) -> int:
    """Exit code of the work in a process of its own that says nothing; one that hangs is ended by a signal."""
    child = os.fork()
    if not child:
        code = FELL_OVER
        try:
            signal.setitimer(signal.ITIMER_VIRTUAL, HANGS_S)
            silent = os.open(os.devnull, os.O_WRONLY)
            os.dup2(silent, 1)
            os.dup2(silent, 2)
            code = int(work())
        finally:
            os._exit(code)
    code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    if code == FELL_OVER:
        raise RuntimeError("a trial fell over by itself, so nothing can be said of it")
    return code


class Learn:
    """A plugin: run each test once under coverage, then try every change inside a function beside it."""

    def __init__(self, found: list[Change], options) -> None:
        self.found, self.seconds = found, options.seconds
        self.survivors: list[Change] = []
        self.waiting: list[tuple[Change, list[str]]] = []

    def pytest_sessionstart(self) -> None:
        phases = (Phase.explicit, Phase.generate)  # whether it fails matters here, not the smallest case that does
        settings.register_profile("mutate", settings.get_profile("usual"), phases=phases)
        settings.load_profile("mutate")

    def pytest_runtestloop(self, session) -> bool:
        files = sorted({str(change.path) for change in self.found})
        with TemporaryDirectory() as folder:
            kept = Path(folder) / "kept"
            forked(lambda: self._learn(session.items, files, kept))
            took, by_line, failed = pickle.loads(kept.read_bytes())
        if failed:
            raise pytest.UsageError(f"These tests fail before anything is changed: {', '.join(failed)}")
        for change in self.found:
            lines = by_line[str(change.path)]
            near = {item for line in change.near for item in lines.get(line, ())} if change.in_function else set()
            came = near or {item for tests in lines.values() for item in tests} or range(len(took))
            come_by = self._quickest(sorted(came, key=took.__getitem__), took)
            if not near:
                self.waiting.append((change, [session.items[i].nodeid for i in come_by]))
            elif not forked(lambda c=change, t=come_by: self._noticed(c, [session.items[i] for i in t])):
                tell(self.survivors, change, len(come_by))
        return True

    def _quickest(self, tests: list[int], took: list[float]) -> list[int]:
        chosen, spent = [], 0.0
        for test in tests:
            spent += took[test]
            if spent > self.seconds and chosen:
                break
            chosen.append(test)
        return chosen

    def _learn(self, items, files: list[str], kept: Path) -> int:
        measured = coverage.Coverage(branch=True, include=files, data_file=None)
        took: list[float] = []
        failed: list[str] = []
        measured.start()
        for place, item in enumerate(items):
            measured.switch_context(str(place))
            start = time.process_time()
            following = items[place + 1] if place + 1 < len(items) else None
            if any(report.failed for report in runtestprotocol(item, log=False, nextitem=following)):
                failed.append(item.nodeid)
            took.append(time.process_time() - start)
        measured.stop()
        data, by_line = measured.get_data(), {}
        for file in files:
            contexts = data.contexts_by_lineno(file)
            by_line[file] = {line: {int(name) for name in names if name} for line, names in contexts.items()}
        kept.write_bytes(pickle.dumps((took, by_line, failed)))
        return 0

    @staticmethod
    def _noticed(change: Change, items) -> bool:
        put_in_place(change)
        for place, item in enumerate(items):
            following = items[place + 1] if place + 1 < len(items) else None
            if any(report.failed for report in runtestprotocol(item, log=False, nextitem=following)):
                return True
        return False


def tell(survivors: list[Change], change: Change, tried: int) -> None:
    """Keep a survivor and print it."""
    survivors.append(change)
    print(f"survived {tried} tests: {change.path.relative_to(PROJECT)}:{change.line}: {change.what}", flush=True)


def afresh(change: Change, tests: list[str]) -> bool:
    """Whether the tests notice a change that was there when the kit was loaded."""

    def work() -> bool:
        load_changed(change)
        return pytest.main([*QUIET, "-x", *tests]) != 0

    return bool(tests) and forked(work) != 0


def main() -> int:
    """Try the changes; 1 when one survives."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("modules", nargs="+", type=Path)
    parser.add_argument("--tests", nargs="+", required=True)
    parser.add_argument("--most", type=int, default=0)
    parser.add_argument(
        "--inside", action="store_true", help="leave out what is worked out as a module is loaded: slow"
    )
    parser.add_argument("--seconds", type=float, default=20.0)
    options = parser.parse_args()
    os.chdir(PROJECT)
    sys.dont_write_bytecode = True
    found: list[Change] = []
    for module in options.modules:
        for path in sorted(module.rglob("*.py")) if module.is_dir() else [module]:
            every = [each for each in changes(path.resolve()) if each.in_function or not options.inside]
            found += every[:: max(1, -(-len(every) // options.most))] if options.most else every
    for heavy in ("numpy", "scipy.optimize", "scipy.stats", "matplotlib.figure", "pint"):
        __import__(heavy)
    with TemporaryDirectory() as folder:
        kept = Path(folder) / "learnt"
        learn = Learn(found, options)
        child = os.fork()
        if not child:
            code = pytest.main([*QUIET, *options.tests], plugins=[learn])
            places = [found.index(change) for change in learn.survivors]
            if code not in (pytest.ExitCode.OK, pytest.ExitCode.NO_TESTS_COLLECTED):
                os._exit(1)
            kept.write_bytes(pickle.dumps((places, [(found.index(c), tests) for c, tests in learn.waiting])))
            os._exit(int(code))
        os.waitpid(child, 0)
        if not kept.exists():
            return 2
        places, waiting = pickle.loads(kept.read_bytes())
    survivors = [found[place] for place in places]
    for place, tests in waiting:
        if not afresh(found[place], tests):
            tell(survivors, found[place], len(tests))
    score: dict[Path, list[int]] = defaultdict(lambda: [0, 0])
    for change in found:
        score[change.path][1] += 1
        score[change.path][0] += change not in survivors
    for path, (noticed, tried) in score.items():
        print(f"{path.relative_to(PROJECT)}: {noticed} of {tried} changes noticed")
    print(f"in all: {len(found) - len(survivors)} of {len(found)}")
    return 1 if survivors else 0


if __name__ == "__main__":
    sys.exit(main())
