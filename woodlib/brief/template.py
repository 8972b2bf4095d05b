"""Write a new brief in which every key is explained; an existing file is never touched."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from textwrap import wrap

from ..errors import InputError
from ..files import put
from ..tables import rows
from ..units import shown
from .keys import KEYS, Key
from .values import as_path

_HEAD = """\
# A brief: one commission, one file. Change the values, take out what you do not need.
# Lengths as you write them: "1-1/2 in", '1 1/2"', "1' 6-3/8\\"", "38 mm", "3.8 cm".
# Text with an inch mark in it goes between single quotation marks: '20"'.
# Paths are relative to the folder of this file. The kit reads this file and never writes into it.
"""

# table -> (heading as written, what the table is about)
_TABLES = {
    "piece": ("[piece]", "The piece, finished, border included. Grain runs along its length."),
    "wood": ("[wood]", "The stock on the bench."),
    "finish": ("[finish]", "Leave the table out for bare wood."),
    "house.seasons.*": (
        "[house.seasons.winter]",
        "The air where it will live: one of seasons (two or four, or months by name), log, weather, climate; a log may have "
        "weather or climate beside it, for the months that it lacks.",
    ),
    "house": ("[house]", "Other ways to give the air; [house.seasons...] above must go then."),
    "hardware[]": ("[[hardware]]", "Anything screwed on at two points; one such table each."),
    "boards[]": (
        "[[boards]]",
        "Rough boards on hand for the panel; one such table each. Without them the panel is set out as one board.",
    ),
    "shop": (
        "[shop]",
        "The shop it is built in; what is left out is taken as usual, and said. Better in a file for all briefs.",
    ),
    "test_piece[]": (
        "[[test_piece]]",
        "A piece of these very boards, measured across the grain at two moistures (or a fresh slice beside one that lay in "
        "another room): it says how far THEY move, better than any table. One such table each.",
    ),
}
_SUMMER = {"temperature": "75 degF", "humidity": "60 %"}
_SUMMER_AIR = "house.seasons.summer"
_HANDOUT = """\
# Where the sliders of a handout begin: one table per study, named by the study's key, inputs by theirs.
# [handout.name_of_the_study]
# name_of_the_input = "20 in"
"""


def write_template(path: str | Path, kind: str = "") -> Path:
    """Write a documented brief to ``path`` and return the path; raises :class:`InputError` if the file exists.

    >>> import tempfile, pathlib
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     write_template(pathlib.Path(folder) / "bench.toml").name
    'bench.toml'
    """
    return write_new(path, template_text(sizes_of(kind)) if kind else template_text())


def write_new(path: str | Path, text: str) -> Path:
    """Write a brief where there is none yet; raises :class:`InputError` if the file exists."""
    return put(text.encode(), as_path(path), remedy="choose a folder that exists")


def sizes_of(kind: str, units: str = "inches") -> dict[str, str]:
    """Usual sizes of a kind of piece (common practice, no source), by key of the brief.

    >>> sizes_of("drawer side", "millimetres")["piece.width"]
    '150 mm'
    """
    row = next((row for row in rows("kinds.csv") if row["kind"] == kind), None)
    if row is None:
        raise InputError(f"kind {shown(kind)} is none of: {', '.join(row['kind'] for row in rows('kinds.csv'))}.")
    unit = "in" if units == "inches" else "mm"
    width, length, thickness = row[units].split(" x ")
    sizes = {"width": width, "length": length, "thickness": thickness}
    if row[f"border_{units}"]:
        sizes |= {"border_width": row[f"border_{units}"], "border_thickness": thickness}
    given = {"piece.kind": kind, "units": units, "title": kind[0].upper() + kind[1:]}
    return given | {f"piece.{name}": f"{size} {unit}" for name, size in sizes.items()}


def template_text(given: Mapping[str, str] | None = None, only: bool = False) -> str:
    """The text of a new brief: every key explained, with an example or the value that is ``given`` for it by its path.

    With a kind of piece among them, keys that only other kinds have are left out; with ``only`` the keys that are not
    given are commented out.

    >>> "lifts" in template_text({"piece.kind": "drawer side"})
    False
    """
    given = given or {}
    keys = [key for key in KEYS if key.path not in _foreign(given.get("piece.kind", ""))]
    sheet = [_HEAD, *_lines_of("", keys, given, only)]
    for table, (heading, about) in _TABLES.items():
        seasons = table == "house.seasons.*"
        if only and seasons and "house.climate" in given:
            continue
        lines = _lines_of(table, keys, given, only or ("piece.kind" in given and table == "hardware[]"))
        bare = not any(line and not line.startswith("#") for line in lines)
        sheet += ["", *_comment(about), f"# {heading}" if bare else heading, *lines]
        if seasons:
            summer = (f"{name} = {_quoted(given.get(f'{_SUMMER_AIR}.{name}', air))}" for name, air in _SUMMER.items())
            sheet += ["", f"[{_SUMMER_AIR}]", *summer]
    return "\n".join([*sheet, "", _HANDOUT])


def _foreign(kind: str) -> set[str]:
    """Keys that a kind of piece has no use for, while others do."""
    uses = {row["kind"]: set(row["keys"].split("|")) for row in rows("kinds.csv")}
    return set().union(*uses.values()) - uses[kind] if kind else set()


def _lines_of(table: str, keys: list[Key], given: Mapping[str, str], only: bool) -> list[str]:
    return [line for key in keys if key.table == table for line in _entry(key, given, only)]


def _entry(key: Key, given: Mapping[str, str], only: bool) -> list[str]:
    value = given.get(key.path.replace("*", "winter"))
    example = key.example if value is None else value if key.reads == "whole" else _quoted(value)
    lines = f"{key.name} = {example}".split("\n")
    stands = value is not None or (key.shown and not only)
    return [*_comment(key.says), *(lines if stands else [f"# {line}" for line in lines])]


def _quoted(value: str) -> str:
    """A text as TOML writes it.

    >>> print(_quoted('20"'), _quoted("Ann's"))
    '20"' "Ann's"
    """
    return f"'{value}'" if '"' in value and "'" not in value else json.dumps(value, ensure_ascii=False)


def _comment(sentence: str) -> list[str]:
    return [f"# {line}" for line in wrap(sentence, 100)]
