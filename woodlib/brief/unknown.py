"""Keys that no brief has, and tables that are something else: reported with the nearest known key."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import get_close_matches

from ..errors import MOST_TOLD
from ..units import shown
from .desk import Desk
from .keys import KEYS, SEASONS, SOURCES_OF_AIR

_LEAVES = {key.path: key for key in KEYS}
_TABLES = {path.rsplit(".", depth)[0] for path in _LEAVES for depth in range(1, path.count(".") + 1)}
_ARRAYS = {path[:-2] for path in _TABLES if path.endswith("[]")}


def report_unknown(desk: Desk) -> None:
    """Walk through the whole file and collect what does not belong into the desk's problems."""
    _walk(desk, desk.document, (), "")


def _walk(desk: Desk, table: Mapping, path: tuple, pattern: str) -> None:
    for name, value in table.items():
        if len(desk.problems.sentences) > 2 * MOST_TOLD:  # to look for the nearest key takes its time
            return
        here, form = (*path, name), _form(pattern, name)
        if form in _ARRAYS:
            _walk_array(desk, value, here, form)
        elif form in _TABLES:
            _walk_table(desk, value, here, form)
        elif form not in _LEAVES:
            desk.problems.add(f"{desk.where(here)}{_not_a_key(pattern, name)}")


def _walk_table(desk: Desk, value, path: tuple, form: str) -> None:
    if isinstance(value, Mapping):
        _walk(desk, value, path, form)
    else:
        written = ".".join(path)
        desk.problems.add(f"{desk.where(path)}{written} is {shown(value)}; it must be a table headed [{written}].")


def _walk_array(desk: Desk, value, path: tuple, form: str) -> None:
    if not isinstance(value, list) or not all(isinstance(entry, Mapping) for entry in value):
        desk.problems.add(f"{desk.where(path)}{form} is not a list of tables; head each one with [[{form}]].")
        return
    for place, entry in enumerate(value):
        _walk(desk, entry, (*path, place), f"{form}[]")


def _form(pattern: str, name: str) -> str:
    """The name in the spelling of the table of keys: a season, a study and its inputs have names of their own."""
    own = pattern in ("handout", "handout.*") or (pattern == "house.seasons" and name.lower() in SEASONS)
    return f"{pattern}.{'*' if own else name}".lstrip(".")


def _not_a_key(pattern: str, name: str) -> str:
    if pattern == "house.seasons":
        near = get_close_matches(name.lower(), SEASONS, 1)
        return _sentence(f"house.seasons.{name}", near, "winter, spring, summer, autumn and the months")
    written = f"{pattern}.{name}".lstrip(".").replace("[]", "").replace("*.", "")
    same_table = {key.name: key.path for key in KEYS if key.table == pattern}
    first = {key.name: key.path for key in reversed(KEYS)}  # a name of several tables: the one that comes first
    names = {**first, **{table: table for table in _TABLES | _ARRAYS}, **same_table}
    names |= {source: f"house.{source}" for source in SOURCES_OF_AIR}
    wanted = name.lower()
    near = (
        [wanted] if wanted in names else get_close_matches(wanted, same_table, 1) or get_close_matches(wanted, names, 1)
    )
    known = ", ".join(same_table) if same_table else ", ".join(sorted({key.path.split(".")[0] for key in KEYS}))
    return _sentence(written, [names[key].replace("[]", "").replace("*.", "") for key in near], known.replace("[]", ""))


def _sentence(written: str, near: list[str], known: str) -> str:
    hint = f"did you mean {near[0]}?" if near and near[0] != "*" else f"known here are {known}."
    return f"{shown(written)} is not a key of a brief; {hint}"
