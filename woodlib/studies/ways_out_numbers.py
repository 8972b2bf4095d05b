"""Numbers of the ways out: how wide a piece each way to build can bear, in a house between two airs.

Every way that slides has a size that grows with the width (a slot, a step, a gap) and a limit the shop sets on it;
where the two meet, the way stops being sensible. A way that is glued has no such width: it is judged by strain.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from ..construction.for_sliders import Airs, Travels, held_shares, share_at
from ..construction.glued_face_rim import face_share
from ..construction.index import find_construction
from ..construction.piece import Allowances, Piece
from ..construction.rules import CutRule
from ..construction.verdict import held_strain, risk_level
from ..data_files import data_path
from ..movement.wood import wood_of
from ..reading.decided import Decided, larger, smaller

INCH_M = 0.0254
LOWEST_M, HIGHEST_M = 8 * INCH_M, 40 * INCH_M
WIDEST_M = 48 * INCH_M  # end of the scale; a way that bears more is said to bear this and more
STOCK_MC_PERCENT = 8.0
DRIEST, DAMPEST = Airs(20.0, 25.0, 15.0, 45.0), Airs(24.0, 62.0, 50.0, 80.0)
GLUED = ("glued_border", "glued_face_rim")
SLIDING = (
    "own_blank_rim",
    "breadboard",
    "frame_panel",
    "same_grain_border",
    "battens",
    "sliding_dovetail",
    "buttons",
    "slotted_blocks",
    "figure_plates",
    "inset_panel",
    "edged_sheet",
)
WAYS = GLUED + SLIDING
"""The ways that serve a seat: glued ones first, then those that keep a border, those below, and those set in."""

_REFERENCES_M = (12 * INCH_M, 36 * INCH_M)
_ORDERS = 6


@dataclass(frozen=True)
class Limit:
    """What stops a way: the rules of the sizes that may not pass ``limit_m``, and in words what happens then.

    ``meaning`` has ``{limit}`` where the limit is to be written.
    """

    rules: tuple[CutRule, ...]
    limit_m: float
    meaning: str


@lru_cache(maxsize=1)
def limits() -> dict[str, Limit]:
    """What stops each sliding way, by its key.

    >>> limits()["breadboard"].meaning
    'the step at a corner passes {limit} and catches clothes'
    """
    with open(data_path("ways_out_limits.csv"), encoding="utf-8", newline="") as table:
        rows = list(csv.DictReader(table))
    found = {}
    for way in SLIDING:
        own = [row for row in rows if row["way"] == way]
        construction = find_construction(way)
        known = {rule.name: rule for rule in (*construction.rules, *construction.states)}
        found[way] = Limit(tuple(known[row["size"]] for row in own), float(own[0]["limit"]), own[0]["meaning"])
    return found


@dataclass(frozen=True)
class Bearing:
    """One piece on the bench: its travels, and how much each glued way holds back over the width."""

    piece: Piece
    travels: Travels
    shares: tuple[tuple[float, ...], ...]

    def pull(self, way: str, width_m: float, driest: float, dampest: float, end: str = "high") -> Decided:
        """Strain held back by a glued way, at the careful end unless ``end`` says otherwise."""
        share = share_at(self.shares[GLUED.index(way)], width_m, LOWEST_M, HIGHEST_M)
        return held_strain({**self.travels(driest, dampest, width_m), "held_share": share}, end)

    def level(self, way: str, width_m: float, driest: float, dampest: float) -> Decided:
        """0, 1 or 2: safe, strained or cracking, for a glued way."""
        return risk_level(self.pull(way, width_m, driest, dampest))

    def widest(self, way: str, driest: float, dampest: float) -> Decided:
        """The widest piece that a sliding way bears, m; no more than ``WIDEST_M``.

        The size grows evenly with the width, so two widths give the line, and the line the width at its limit.
        """
        construction, limit = find_construction(way), limits()[way]
        asked = [
            construction.numbers(self.travels(driest, dampest, width), self.piece, _shop()) for width in _REFERENCES_M
        ]
        first, last = _REFERENCES_M
        found: float | Decided = WIDEST_M
        for rule in limit.rules:
            small, large = (rule.size(numbers) for numbers in asked)
            per_metre = larger((large - small) / (last - first), 1e-6)  # where it does not grow: no limit on the scale
            found = smaller(found, first + (limit.limit_m - small) / per_metre)
        return larger(found, 0.0)


@lru_cache(maxsize=8)
def bearing(species: str, ring_angle_deg: float) -> Bearing:
    """The invented seat of the reading nook, 44 in long and 7/8 in thick with a 2 in border, in a wood and cut."""
    piece = Piece(species, 20 * INCH_M, 44 * INCH_M, 0.875 * INCH_M, 2 * INCH_M, ring_angle_deg=ring_angle_deg)
    wood = wood_of(species)
    travels = Travels(wood, wood, math.radians(ring_angle_deg), STOCK_MC_PERCENT, DRIEST, DAMPEST)
    edge = held_shares(piece, LOWEST_M, HIGHEST_M, _ORDERS)
    return Bearing(piece, travels, (edge, _fitted(lambda width: face_share(replace(piece, width_m=width)))))


@lru_cache(maxsize=1)
def _shop() -> Allowances:
    return Allowances()


def _fitted(share: Callable[[float], float]) -> tuple[float, ...]:
    """A share over the width as Chebyshev coefficients."""
    places = np.cos(np.pi * (np.arange(_ORDERS) + 0.5) / _ORDERS)
    widths = LOWEST_M + (HIGHEST_M - LOWEST_M) * 0.5 * (places + 1.0)
    found = np.polynomial.chebyshev.chebfit(places, [share(float(width)) for width in widths], _ORDERS - 1)
    return tuple(float(value) for value in np.round(found, 14))
