"""Read a brief: the whole file is checked and every mistake reported at once, each with its line."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Any

from ..errors import InputError
from ..units import shown
from .checks import check_boards, check_fit, check_house, check_stock, check_test_pieces
from .desk import Desk, with_places
from .keys import KEYS, SEASONS
from .lines import key_lines
from .plain_words import TWICE, in_plain_words
from .record import BoardOnHand, Brief, Finish, Hardware, House, Piece, Season, Stock, TestPiece
from .unknown import report_unknown
from .values import as_path

MOST_DOTS = 200
"""Dots on one line, far beyond any sentence: a key of thousands of parts costs gigabytes before it can be refused."""
LARGEST_BYTES = 1_000_000
"""A brief is a page of text; a file beyond this is refused before it is read."""


def read_brief(path: str | Path, more_checks: Sequence[Callable[[Desk], None]] = ()) -> Brief:
    """The brief in a TOML file; paths in it are relative to its own folder. The file is only ever read.

    ``more_checks`` get the file while it is being read, so that what they find is reported together with the rest.
    Raises :class:`InputError` with one sentence per mistake, each with its line.

    >>> from woodlib.data_files import data_path
    >>> brief = read_brief(data_path("briefs/reading_nook_seat.toml"))
    >>> brief.typed["piece.width"], round(brief.piece.width_m, 4), brief.stock.species
    ('20 in', 0.508, 'white oak')
    """
    path = as_path(path)
    text = _text_of(path)
    desk = Desk(path, *_parsed(path, text))
    report_unknown(desk)
    made = _read(desk)
    for check in (check_fit, check_boards, check_stock, *more_checks):
        check(desk)
    check_test_pieces(desk, made)
    source = check_house(desk, made["house"])
    desk.problems.raise_if_any()
    return _brief(desk, made, source)


def _text_of(path: Path) -> str:
    try:
        if not path.is_file():
            raise InputError(f"there is no brief at {shown(str(path))}; give the path of a .toml file.")
        if path.stat().st_size > LARGEST_BYTES:
            raise InputError(f"{path.name} has {path.stat().st_size} bytes; a brief has at most {LARGEST_BYTES}.")
        content = path.read_bytes()
    except (OSError, ValueError) as error:
        if isinstance(error, InputError):
            raise
        reason = getattr(error, "strerror", None) or "not a path"
        raise InputError(f"{shown(str(path))} cannot be read ({reason}); give the path of a .toml file.") from None
    try:
        return content.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        raise InputError(f"{path.name}, line {line}: a letter is not in UTF-8; save the file as UTF-8 text.") from None


def _parsed(path: Path, text: str) -> tuple[dict[str, Any], dict[tuple[str | int, ...], int]]:
    for number, line in enumerate(text.split("\n"), start=1):
        if line.count(".") > MOST_DOTS:
            raise InputError(f"{path.name}, line {number}: more than {MOST_DOTS} dots on one line; write key = value.")
    try:
        return tomllib.loads(text), key_lines(text)
    except RecursionError:
        raise InputError(f"{path.name}: brackets are nested too deeply; write the brief as flat tables.") from None
    except ValueError as error:
        raise InputError(_broken(path, text, str(error))) from None


def _broken(path: Path, text: str, reason: str) -> str:
    found = re.search(r" \(at (?:line (\d+), column (\d+)|end of document)\)", reason)
    line = int(found[1]) if found and found[1] else text.count("\n") + 1
    why = in_plain_words(reason[: found.start()]) if found else "a number has too many digits"
    if why in TWICE:
        return f"{path.name}, line {line}: {TWICE[why]}"
    return (
        f"{path.name}, line {line}: this line cannot be read as TOML ({why}); write key = value "
        'with text in quotation marks, for example width = "20 in" or width = \'20"\'.'
    )


def _read(desk: Desk) -> dict[str, Any]:
    """Every value of the file, as the fields of each record."""
    made: dict[str, Any] = {"": desk.read_table((), "")}
    made |= {table: desk.read_table((table,), table) for table in ("piece", "wood", "finish", "house")}
    for array, record in (("hardware", Hardware), ("boards", BoardOnHand), ("test_piece", TestPiece)):
        made[array] = tuple(_each(desk, array, record))
    seasons = desk.table(("house", "seasons")).items()
    named = [name for name, entry in seasons if name.lower() in SEASONS and isinstance(entry, Mapping)]
    if named:
        fields = {name: desk.read_table(("house", "seasons", name), "house.seasons.*") for name in named}
        made["house"]["seasons"] = tuple(Season(name, **found) for name, found in fields.items() if len(found) == 2)
    made["handout"] = {study: _starts(desk, study) for study in desk.table(("handout",))}
    return made


def _each(desk: Desk, array: str, record: type) -> Any:
    """One record for each table of an array that has all it needs."""
    needed = {key.field for key in KEYS if key.table == f"{array}[]" and key.required}
    for place in range(desk.count(array)):
        if isinstance(desk.raw((array, place)), Mapping):
            found = desk.read_table((array, place), f"{array}[]")
            if needed <= set(found):
                yield record(**found)


def _starts(desk: Desk, study: str) -> Mapping[str, Any]:
    start = next(key for key in KEYS if key.table == "handout.*")
    names = desk.table(("handout", study))
    return MappingProxyType({name: desk.read(start, ("handout", study, name)) for name in names})


def _brief(desk: Desk, made: dict[str, Any], source: str) -> Brief:
    piece = made["piece"]
    lifts = desk.known.get("piece.lifts", "yes" if piece["kind"] == "lid" else "no") == "yes"
    return Brief(
        path=desk.path,
        **made[""],
        piece=Piece(**piece, lifts=lifts),
        stock=Stock(**made["wood"]),
        finish=Finish(**made["finish"]),
        house=House(source=source, **made["house"]),
        hardware=made["hardware"],
        boards=made["boards"],
        test_piece=made["test_piece"],
        handout=MappingProxyType(made["handout"]),
        typed=MappingProxyType(desk.typed),
        lines=MappingProxyType({with_places(path): line for path, line in desk.lines.items()}),
    )
