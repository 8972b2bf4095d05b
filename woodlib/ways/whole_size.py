"""The finished size of a piece, and sizes of its parts that no movement is added to."""

from __future__ import annotations

from .piece import Piece
from .rules import CutRule, Term, fixed
from .travel import Quantities


def size(key: str, label: str, *terms: Term, why: str = "") -> CutRule:
    """A size that no movement is added to; written to the nearest step."""
    return CutRule(key, label, terms, "nearest", why)


JOINTS = "what goes into the joints is added to it"


def whole_sizes(piece: Piece, width_m: float) -> Quantities:
    """Finished size of the piece, outside, and the width of its border, metres."""
    return {"finished_width": width_m, "finished_length": piece.length_m, "border": piece.border_width_m}


FINISHED = (
    size("finished_width", "finished outside, across the grain", fixed("finished_width")),
    size("finished_length", "finished outside, along the grain", fixed("finished_length")),
)
"""Of every way whose sizes are those of the whole piece, before its own parts."""
