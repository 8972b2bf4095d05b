"""Whether a way fits its piece: every proportion has its bound and its reason, and who is refused hears the size that would do."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from ..tables import rows
from ..units import both
from .piece import Piece
from .way import Way

_OF_THE_PIECE = {"border": "border", "border_thickness": "border's thickness", "thickness": "panel's thickness"}


@cache
def _bounds(key: str) -> tuple[dict[str, str], ...]:
    return tuple(row for row in rows("proportions.csv") if key in row["ways"].split("|"))


def unfit(way: Way, piece: Piece, sizes: Mapping[str, float], first: str = "customary") -> str:
    """Why a way does not fit a piece, with the size at which it would, or nothing.

    ``sizes`` of its cuts by key, m; ``first`` the leading system. Bounds are common practice (``proportions.csv``).
    """
    measures = {
        "border": piece.border_width_m,
        "border_thickness": piece.border_thickness_m,
        "thickness": piece.thickness_m,
    }
    for row in _bounds(way.key):
        key, reason = row["size"], row["reason"]
        value = float(measures[key] if key in measures else sizes[key])
        beside = "side's thickness" if way.fitted else _OF_THE_PIECE["border_thickness"]
        names = _OF_THE_PIECE | {"border_thickness": beside}
        label = names.get(key) or way.sizes[key].label
        for bound, passed, wanted in (("least", -1.0, "up"), ("most", 1.0, "down")):
            if row[f"{bound}_m"] and passed * (value - float(row[f"{bound}_m"])) > 0.0:
                limit = both(float(row[f"{bound}_m"]), 16, 1, wanted, first)
                return f"It does not fit: {label} {_said(value, first)}, and {reason}; it takes at {bound} {limit}."
        if row["most_share"] and value > float(row["most_share"]) * measures[row["of"]]:
            wanted = both(value / float(row["most_share"]), 16, 1, "up", first)
            return (
                f"It does not fit: {label} {_said(value, first)} in a {names[row['of']]} of {_said(measures[row['of']], first)}, and "
                f"{reason}; it takes {wanted}."
            )
    return ""


def _said(size: float, first: str) -> str:
    written = both(size, 64, 0.1, first=first)
    return f"would be {written}" if size <= 0.0 else written
