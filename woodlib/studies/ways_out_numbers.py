"""The seat of the ways out: an invented piece, with every way that serves a seat."""

from __future__ import annotations

from functools import lru_cache

from ..ways.piece import Piece
from ..ways.registry import way_of, ways_for
from .sliding_piece import MonthAir, SlidingPiece, sliding_piece

INCH_M = 0.0254
LOWEST_M, HIGHEST_M = 8 * INCH_M, 40 * INCH_M
STOCK_MC_PERCENT = 8.0
DRIEST, DAMPEST = MonthAir(20.0, 25.0, 15.0, 45.0), MonthAir(24.0, 62.0, 50.0, 80.0)
WAYS = tuple(
    way.key
    for way in sorted(
        ways_for("seat"),
        key=lambda way: (
            not way.holds,
            not way.solid,
            way.fitted,
            way.on_a_base,
            not (way.keeps_border or way.wants_border),
        ),
    )
)
"""The ways that serve a seat: glued ones first, then those that keep a border, those below, and those set in."""
GLUED = tuple(way for way in WAYS if way_of(way).holds)
SLIDING = tuple(way for way in WAYS if way not in GLUED)


@lru_cache(maxsize=8)
def bearing(species: str, ring_angle_deg: float) -> SlidingPiece:
    """The invented seat of the reading nook, 44 in long and 7/8 in thick with a 2 in border, in a wood and cut."""
    piece = Piece(species, 20 * INCH_M, 44 * INCH_M, 0.875 * INCH_M, 2 * INCH_M, ring_angle_deg=ring_angle_deg)
    year = [float(air.emc_percent(air.rh_percent)) for air in (DAMPEST, DRIEST)]
    names = "the driest month", "the dampest month"
    return sliding_piece(piece, STOCK_MC_PERCENT, (DRIEST, DAMPEST), WAYS, (INCH_M, LOWEST_M, HIGHEST_M), names, year)


WIDEST_M = bearing("white oak", 0.0).scale_m
"""End of the scale; a way that bears more is said to bear this and more."""
