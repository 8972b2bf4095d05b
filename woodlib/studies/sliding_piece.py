"""A piece whose width and whose air slide: its ways to build, its house, and the judgement at every state."""

from __future__ import annotations

import math
from dataclasses import dataclass

from ..brief import Brief
from ..movement.months import MonthlyMoisture
from ..movement.spread import Doubts
from ..ways.for_sliders import WORRYING_SCORE, Airs, StressScore, Travels, held_shares, share_at, stress_score
from ..ways.judge import Judgement, judge, numbers_of
from ..ways.piece import Allowances, Piece
from ..ways.registry import reference_way, way_of
from ..ways.travel import Quantities
from ..words.decided import Decided, Sliding, larger, reached, smaller

_STEPS_M = {"inches": (0.0254, 0.0127, 0.00635, 0.003175), "millimetres": (0.02, 0.01, 0.005, 0.002, 0.001)}
_AROUND_PERCENT = 15.0  # how far a slider goes beyond the brief's own humidity


@dataclass(frozen=True)
class SlidingPiece:
    """All that a piece brings to its studies, by value, so that two equal pieces are one.

    ``shares`` holds, for each of ``ways``, how much of the movement it holds, over the width.
    """

    ways: tuple[str, ...]
    travels: Travels
    piece: Piece
    lowest_width_m: float
    highest_width_m: float
    width_step_m: float
    shares: tuple[tuple[float, ...], ...]
    months: tuple[str, str]
    stress: StressScore | None = None

    def judged(self, way: str, width_m: Sliding, driest_rh: Sliding, dampest_rh: Sliding) -> Judgement:
        """The judgement on one way at one state of the sliders."""
        warned = self.stress is not None and way_of(way).reference
        stress = reached(self.stress(driest_rh, dampest_rh), WORRYING_SCORE) if warned else 0.0
        return judge(way_of(way), self._numbers(way, width_m, driest_rh, dampest_rh), stress)

    def _numbers(self, way: str, width_m: Sliding, driest_rh: Sliding, dampest_rh: Sliding) -> Quantities:
        share = share_at(self.shares[self.ways.index(way)], width_m, self.lowest_width_m, self.highest_width_m)
        return numbers_of(way_of(way), self.piece, self.travels(driest_rh, dampest_rh, width_m), Allowances(), share)

    def widest(self, way: str, driest_rh: Sliding, dampest_rh: Sliding) -> Sliding:
        """The widest piece that a way that slides bears, m; no more than ``scale_m``.

        What stops it is a size that grows evenly with the width (``Way.stopped_by``), so two widths give the line, and
        the line the width at its limit.
        """
        found: Sliding = self.scale_m
        limit, sizes = way_of(way).stopped_by, way_of(way).sizes
        if limit is None:
            return Decided("+", found, 0.0)
        first, last = self.lowest_width_m, self.highest_width_m
        asked = [self._numbers(way, width, driest_rh, dampest_rh) for width in (first, last)]
        for rule in (sizes[key] for key in limit.sizes):
            small, large = (rule.size(numbers) for numbers in asked)
            per_metre = larger((large - small) / (last - first), 1e-6)  # where it does not grow: no limit on the scale
            found = smaller(found, first + (limit.most_m - small) / per_metre)
        return larger(found, 0.0)

    @property
    def scale_m(self) -> float:
        """The widest piece that a picture of widths shows, m."""
        return 1.2 * self.highest_width_m

    def with_ways(self, ways: tuple[str, ...]) -> SlidingPiece:
        """The same piece with some of its ways."""
        return sliding_piece(
            ways,
            self.travels,
            self.piece,
            (self.width_step_m, self.lowest_width_m, self.highest_width_m),
            self.months,
            self.stress,
        )


def sliding_piece_of(
    brief: Brief, piece: Piece, months: MonthlyMoisture, doubts: Doubts, ways: tuple[str, ...]
) -> SlidingPiece:
    """The piece of a brief as its studies take it; ``ways`` are the keys of the ways to compare."""
    year = brief.year()
    dry, damp = year.driest(), year.dampest()
    middle = float(round(0.5 * (dry.rh_percent + damp.rh_percent)))
    driest = Airs(dry.temperature_c, dry.rh_percent, *_around(dry.rh_percent, 0.0, max(middle, dry.rh_percent)))
    dampest = Airs(damp.temperature_c, damp.rh_percent, *_around(damp.rh_percent, min(middle, damp.rh_percent), 100.0))
    travels = Travels(
        piece.wood,
        piece.border_wood,
        math.radians(piece.ring_angle_deg),
        brief.stock.moisture_percent(),
        driest,
        dampest,
        doubts,
    )
    names = months.names[months.driest], months.names[months.dampest]
    stress = stress_score(piece, travels, months.mc_percent) if reference_way().key in ways else None
    return sliding_piece(ways, travels, piece, _widths(piece, brief.units), names, stress)


def sliding_piece(
    ways: tuple[str, ...],
    travels: Travels,
    piece: Piece,
    widths: tuple[float, float, float],
    months: tuple[str, str],
    stress: StressScore | None = None,
) -> SlidingPiece:
    """A sliding piece from its parts; ``widths`` are a step, the narrowest and the widest, m."""
    step, low, high = widths
    shares = tuple(held_shares(piece, low, high, way_of(way)) for way in ways)
    return SlidingPiece(ways, travels, piece, low, high, step, shares, months, stress)


def _around(rh_percent: float, lowest: float, highest: float) -> tuple[float, float]:
    """Whole percents around a humidity, within the limits; never less than four of them."""
    low = max(math.floor(rh_percent - _AROUND_PERCENT), math.floor(lowest), min(5, math.floor(rh_percent)))
    high = min(math.ceil(rh_percent + _AROUND_PERCENT), math.ceil(highest), max(95, math.ceil(rh_percent)))
    return float(min(low, max(high - 4, 0))), float(max(high, min(low + 4, 100)))


def _widths(piece: Piece, units: str) -> tuple[float, float, float]:
    """Step, narrowest and widest piece: from three fifths to five quarters of the brief's width, never all border."""
    width_m = piece.width_m
    fitting = [step for step in _STEPS_M[units] if width_m >= 20.0 * step]
    step = fitting[0] if fitting else width_m / 20.0
    low, high = (step * round(share * width_m / step) for share in (0.6, 1.25))
    low = min(max(low, step * math.ceil(piece.border_width_m / (0.45 * step))), width_m)
    return step, low, high
