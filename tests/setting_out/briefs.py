"""Briefs and verdicts for the tests of setting out, from sizes as they would be typed."""

from dataclasses import replace
from types import MappingProxyType

from woodlib.brief import Brief, read_brief
from woodlib.data_files import data_path
from woodlib.movement.spread import NO_DOUBTS
from woodlib.movement.wood import Wood
from woodlib.units import metres
from woodlib.ways.held import plane_field
from woodlib.ways.index import verdict_for
from woodlib.ways.piece import Piece

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
MONTHS = [7, 6.5, 6, 7, 8, 9, 11, 12, 11, 10, 9, 8]
BRIEF = read_brief(data_path("briefs/reading_nook_seat.toml"))
ENTRIES = ("width", "length", "thickness", "border_width")


def brief_of(width, length, thickness, border_width, units="millimetres", **more) -> Brief:
    """The demonstration's brief with other sizes and without its boards and hardware; ``more`` typed keys, _ for a dot."""
    sizes = dict(zip(ENTRIES, (width, length, thickness, border_width), strict=True))
    kept = {
        key: value for key, value in BRIEF.typed.items() if key.split(".")[0] not in ("piece", "boards", "hardware")
    }
    typed = kept | {f"piece.{entry}": size for entry, size in sizes.items()}
    typed |= {key.replace("__", "."): value for key, value in more.items()}
    piece = replace(BRIEF.piece, **{f"{entry}_m": metres(size, name=entry) for entry, size in sizes.items()})
    return replace(BRIEF, typed=MappingProxyType(typed), units=units, piece=piece, boards=(), hardware=())


def verdict_on(brief: Brief, key: str, months=MONTHS, wood=ASH, doubts=NO_DOUBTS, stock=8):
    """The verdict on one way to build for the piece of a brief."""
    piece = Piece(wood, *(brief.typed[f"piece.{entry}"] for entry in ENTRIES))
    return verdict_for(key, piece, stock, months, doubts=doubts, held=plane_field)
