"""Read a brief: the whole file is checked and every mistake reported at once, each with its line."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Any

from .checks import check_boards, check_fit, check_house, check_stock, check_test_pieces
from .desk import Desk, with_places
from .keys import KEYS, SEASONS
from .record import BoardOnHand, Brief, Finish, Hardware, House, Piece, Season, Stock, TestPiece
from .shop import read_shop
from .toml_file import parsed, text_of
from .unknown import report_unknown
from .values import as_path


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
    text = text_of(path)
    desk = Desk(path, *parsed(path, text))
    report_unknown(desk)
    made = _read(desk)
    for check in (check_fit, check_boards, check_stock, *more_checks):
        check(desk)
    check_test_pieces(desk, made)
    house = check_house(desk, made["house"])
    desk.problems.raise_if_any()
    assert house is not None  # or a sentence has been raised
    return _brief(desk, made, house)


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
    made["shop"] = read_shop(desk)
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


def _brief(desk: Desk, made: dict[str, Any], house: House) -> Brief:
    piece = made["piece"]
    lifts = desk.known.get("piece.lifts", "yes" if piece["kind"] == "lid" else "no") == "yes"
    return Brief(
        path=desk.path,
        **made[""],
        piece=Piece(**piece, lifts=lifts),
        stock=Stock(**made["wood"]),
        finish=Finish(**made["finish"]),
        house=house,
        hardware=made["hardware"],
        boards=made["boards"],
        test_piece=made["test_piece"],
        shop=made["shop"],
        handout=MappingProxyType(made["handout"]),
        typed=MappingProxyType(desk.typed),
        lines=MappingProxyType({with_places(path): line for path, line in desk.lines.items()}),
    )
