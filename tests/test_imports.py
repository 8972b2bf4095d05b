"""The house is one street: nothing imports upward, no packages form a ring; imports inside functions count."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

import woodlib

PACKAGE = Path(woodlib.__file__).resolve().parent
FLOORS = (
    ("errors", "data_files", "templates"),
    ("tables", "files"),
    ("units",),
    ("door", "shop_sizes"),
    ("words",),
    ("species", "air"),
    ("moisture",),
    ("movement",),
    ("restraint",),
    ("picture",),
    ("ways",),
    ("brief",),
    ("setting_out",),
    ("study",),
    ("studies",),
    ("commission",),
    ("live", "lesson", "handout"),
    ("classroom",),
    (
        "quick_answer",
        "piece_answer",
        "new_brief",
        "survey",
        "environment",
        "package_installer",
        "opening",
        "testing",
        "command_line",
        "hub",
        "__main__",
    ),
)
FLOOR = {room: number for number, rooms in enumerate(FLOORS) for room in rooms}
BESIDE = {("handout", "live"), ("lesson", "live"), ("lesson", "handout")}
"""Rooms of one floor of which the first may use the second."""

STILL_THERE: frozenset[tuple[str, str]] = frozenset()
"""Arrows upward that wait to be taken away: this list only gets shorter."""


def room_of(module: str) -> str:
    """The package, or the module at the top, that a module is in: ``woodlib.air.year`` is in ``air``."""
    return module.split(".")[1] if "." in module else ""


def arrows() -> set[tuple[str, str]]:
    """Every import within the kit as (module, module it uses), lazy ones included."""
    found = set()
    for path in PACKAGE.rglob("*.py"):
        parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
        module = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        package = module if path.name == "__init__.py" else module.rpartition(".")[0]
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            for used in _used(node, package):
                if used.startswith("woodlib."):
                    found.add((module, used))
    return found


def _used(node: ast.AST, package: str) -> list[str]:
    if isinstance(node, ast.Import):
        return [alias.name for alias in node.names]
    if not isinstance(node, ast.ImportFrom):
        return []
    if not node.level:
        return [node.module or ""]
    base = package.split(".")[: len(package.split(".")) - node.level + 1]
    whole = ".".join([*base, node.module] if node.module else base)
    # ``from . import name`` uses the module of that name
    return [whole] if node.module else [f"{whole}.{alias.name}" for alias in node.names]


def between_rooms() -> set[tuple[str, str]]:
    """The arrows between different rooms."""
    pairs = {(room_of(module), room_of(used)) for module, used in arrows()}
    return {(a, b) for a, b in pairs if a != b and a and b and b in FLOOR}


def test_every_room_has_its_floor():
    rooms = {path.relative_to(PACKAGE).parts[0].removesuffix(".py") for path in PACKAGE.rglob("*.py")}
    assert rooms - {"__init__"} <= set(FLOOR), "a new room needs a floor in FLOORS"


def test_nothing_imports_upward():
    upward = {
        (module, used)
        for module, used in arrows()
        if room_of(module) in FLOOR
        and room_of(used) in FLOOR
        and room_of(module) != room_of(used)
        and FLOOR[room_of(module)] <= FLOOR[room_of(used)]
        and (room_of(module), room_of(used)) not in BESIDE
        and FLOOR[room_of(module)] != len(FLOORS) - 1
    }
    assert upward - STILL_THERE == set()
    assert STILL_THERE - upward == set(), "these arrows are gone: take them off the list"


def test_no_rooms_form_a_ring():
    graph: dict[str, set[str]] = {}
    for module, used in arrows() - STILL_THERE:
        a, b = room_of(module), room_of(used)
        if a and b and a != b and a in FLOOR and b in FLOOR:
            graph.setdefault(a, set()).add(b)
    done: set[str] = set()

    def walk(room: str, path: tuple[str, ...]) -> None:
        if room in path:
            pytest.fail("a ring: " + " -> ".join([*path[path.index(room) :], room]))
        if room not in done:
            for other in sorted(graph.get(room, ())):
                walk(other, (*path, room))
            done.add(room)

    for room in sorted(graph):
        walk(room, ())


def test_an_arrow_upward_is_seen(tmp_path):
    tree = ast.parse("def f():\n    from ..studies import find_study\n")
    assert [used for node in ast.walk(tree) for used in _used(node, "woodlib.air")] == ["woodlib.studies"]
