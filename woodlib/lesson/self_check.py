"""The first line of the first notebook: is everything here, and does it give the printed number?"""

from __future__ import annotations

from ..movement.board import Board
from ..species import all_species
from ..ways.registry import every_way

PRINTED_MM = (
    1.7  # Wood Handbook FPL-GTR-190 (2010), chapter 13: flatsawn white fir, 232 mm, from 8 to 11 % (from memory)
)


def self_check() -> str:
    """One sentence: ready, or what is wrong and what to do.

    >>> self_check()[:6]
    'Ready.'
    """
    moved_mm = 1000.0 * Board("white fir", 0.232, 0.025, 1.0).change(8, 11).width_m
    told = f"the handbook's board of white fir comes out at {moved_mm:.1f} mm, printed {PRINTED_MM} mm"
    if abs(moved_mm - PRINTED_MM) > 0.05:
        return f"Not ready: {told}. Some table was changed or lost; get the kit again."
    if not (all_species() and every_way()):
        return "Not ready: the woods or the ways to build are missing; get the kit again."
    return f"Ready. The tables are here, and {told}."
