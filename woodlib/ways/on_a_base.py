"""A panel held to a base: what holds it is small stuff or metal."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Circle, Line, Mark
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, Drawn
from .given import Given
from .made import MadePiece, Place, Section, Sum
from .making import ACROSS, made, whole_panel
from .piece import Allowances, Piece
from .plan_drawing import panel, sizes_px, today_lines
from .travel import Quantities, at_fixing, fixings


def from_fast_line(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Careful travel of the edges and of the outer fixings past a base that is fast on one line, and the play.

    Fast in the middle, each edge is half the width away; fast in front or at the back, the other edge is all of it.
    """
    half = 0.5 * travels["width"]
    inset = (1.0 - allowances.outermost_share) * half
    far = half if piece.base_holds == "middle" else 2.0 * half
    return {**fixings(travels, allowances, far - inset), **at_fixing(travels, "edge", far)}


def make(given: Given) -> MadePiece:
    """A whole panel held to a base: what holds it is small stuff or metal."""
    zero, long, wide = Fraction(0), given.length.exact_m, given.width.exact_m
    return made(
        given,
        (whole_panel(given),),
        (Sum(ACROSS, ((1, "panel", wide),), wide),),
        (Place("panel", (zero, long), (zero, wide)),),
        (Section("panel", (zero, wide), (zero, given.thickness.exact_m)),),
        remarks=(
            "The base is not set out here, nor where buttons, blocks or plates sit on it; they come with the base.",
        ),
    )


def plan(d: Drawn) -> list[Mark]:
    """An apron below, dashed, fixed at the middle of its end rail."""
    today, now, _ = sizes_px(d)
    half, end = 0.38 * today, PLAN_RIGHT - 26.0
    apron = [(PLAN_LEFT, MIDDLE - half), (end, MIDDLE - half), (end, MIDDLE + half), (PLAN_LEFT, MIDDLE + half)]
    return [
        *panel(PLAN_LEFT, PLAN_RIGHT, now),
        *today_lines(d, PLAN_LEFT, PLAN_RIGHT, today),
        Line(apron, "edge", 1.4, "6 4"),
        Circle(PLAN_RIGHT - 34.0, MIDDLE, 4.0, "metal", filled=True),
    ]
