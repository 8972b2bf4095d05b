"""The parts of a piece at their whole size: what is finished outside, and what each part measures on its way there."""

from __future__ import annotations

from .piece import Piece
from .rules import CutRule, Term, fixed
from .travel import Quantities

JOINTS = "what goes into the joints is added to it"


def size(key: str, label: str, *terms: Term, why: str = "") -> CutRule:
    """A size that no movement is added to; written to the nearest step."""
    return CutRule(key, label, terms, "nearest", why)


def whole_sizes(piece: Piece, width_m: float) -> Quantities:
    """Finished size of the piece, outside, and the width of its border, metres."""
    return {"finished_width": width_m, "finished_length": piece.length_m, "border": piece.border_width_m}


FINISHED = (
    size("finished_width", "finished outside, across the grain", fixed("finished_width")),
    size("finished_length", "finished outside, along the grain", fixed("finished_length")),
)
"""Of every way whose sizes are those of the whole piece, before its own parts."""

OPENING = (
    size("opening_width", "opening, across the grain", fixed("finished_width")),
    size("opening_length", "opening, along the grain", fixed("finished_length")),
)
"""Of a part that is fitted into one."""

ROUND = (
    size("diameter", "diameter", fixed("finished_width")),
    size("length", "length along the grain", fixed("finished_length")),
)
"""Of a turned part."""

ENDS = (
    size(
        "panel_between",
        "panel between the end pieces, along the grain",
        fixed("finished_length"),
        fixed("border", -2.0),
        why=JOINTS,
    ),
    size("end_piece_length", "end pieces, two, length across the panel", fixed("finished_width")),
    size("end_piece_width", "end pieces, width", fixed("border")),
)
"""A panel of the whole width between two end pieces."""

EDGING = (
    size("long_edging_length", "edging along the grain, two, length over the mitres", fixed("finished_length")),
    size("end_edging_length", "edging across the grain, two, length over the mitres", fixed("finished_width")),
)
"""Solid edging around a sheet."""
