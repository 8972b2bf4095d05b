"""A piece whose width and whose air slide: its ways to build, its house, and the judgement at every state."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from ..air.sorption import sorption_percent
from ..brief import Brief
from ..movement.months import MonthlyMoisture
from ..movement.spread import USUAL_DOUBTS, Doubts
from ..ways.grip import WORRYING_SCORE, Fitted, crack_score, held_by, share_over_width
from ..ways.held import Held
from ..ways.judge import Judgement, judge, not_yet, numbers_of
from ..ways.piece import Allowances, Piece
from ..ways.registry import way_of
from ..ways.travel import Quantities, over_width, travel_strains
from ..ways.way import Way
from ..words.decided import Sliding, in_sight, larger, reached, smaller

_STEPS_M = {"inches": (0.0254, 0.0127, 0.00635, 0.003175), "millimetres": (0.02, 0.01, 0.005, 0.002, 0.001)}
_AROUND_PERCENT = 15.0  # how far a slider goes beyond the brief's own humidity


@dataclass(frozen=True)
class MonthAir:
    """The air of one month: its temperature, its humidity by the brief, and the humidities a slider may reach, in %.

    ``follows`` the share of a change of the air that the wood follows, ``rests`` its moisture at the brief's humidity, %;
    left out, it follows in full.
    """

    temperature_c: float
    rh_percent: float
    lowest_percent: float
    highest_percent: float
    follows: float = 1.0
    rests: float | None = None

    def emc_percent(self, rh_percent: Sliding) -> Sliding:
        """The moisture that the wood comes to at another humidity, in %."""
        if self.rests is None:
            return sorption_percent(self.temperature_c, rh_percent)
        own = float(sorption_percent(self.temperature_c, self.rh_percent))
        return self.rests + self.follows * (sorption_percent(self.temperature_c, rh_percent) - own)


@dataclass(frozen=True)
class SlidingPiece:
    """All that a piece brings to its studies, by value, so that two equal pieces are one.

    ``widths_m`` the narrowest and the widest; ``shares`` how much of the movement each of ``ways`` holds, over the
    width, and what else is known of it by value; ``score`` the warning of the stress model over both humidities, where it can judge;
    ``not_known`` what of the year is not.
    """

    piece: Piece
    stock_mc_percent: float
    driest: MonthAir
    dampest: MonthAir
    doubts: Doubts
    widths_m: tuple[float, float]
    width_step_m: float
    months: tuple[str, str]
    ways: tuple[str, ...]
    shares: tuple[Fitted, ...]
    helds: tuple[Held, ...]
    score: Fitted | None
    allowances: Allowances = Allowances()
    not_known: str = ""

    def at(self, driest_rh: Sliding, dampest_rh: Sliding) -> PieceInAir:
        """The piece in the air of two months."""
        piece, stock = self.piece, self.stock_mc_percent
        # Where the law of movement has its seams is not to be smoothed over by a table of a page.
        driest, dampest = in_sight(self.driest.emc_percent(driest_rh)), in_sight(self.dampest.emc_percent(dampest_rh))
        ring = math.radians(piece.ring_angle_deg)
        strains = travel_strains(piece.wood, piece.border_wood, ring, stock, driest, dampest, self.doubts)
        warns = 0.0 if self.score is None else reached(self.score(driest_rh, dampest_rh), WORRYING_SCORE)
        return PieceInAir(self, strains, warns)

    @property
    def scale_m(self) -> float:
        """The widest piece that a picture of widths shows, m."""
        return 1.2 * self.widths_m[1]

    def with_ways(self, ways: tuple[str, ...]) -> SlidingPiece:
        """The same piece with some of its ways."""
        places = [self.ways.index(way) for way in ways]
        shares = tuple(self.shares[place] for place in places)
        return replace(self, ways=ways, shares=shares, helds=tuple(self.helds[place] for place in places))


@dataclass(frozen=True)
class PieceInAir:
    """A sliding piece in the air of two months: what its width goes by is worked out once, whatever the way."""

    sliding: SlidingPiece
    strains: Quantities
    stress_warns: Sliding

    def travels(self, width_m: Sliding) -> Quantities:
        """How far solid wood of a width goes from today to the two months, and the three moistures."""
        return over_width(self.strains, width_m)

    def judged(self, way: str, width_m: Sliding) -> Judgement:
        """The judgement on one way at a width."""
        asked, held = way_of(way), self._held(way, width_m)
        judged = judge(asked, self._numbers(asked, width_m), held, self.stress_warns if asked.reference else 0.0)
        return not_yet(judged, self.sliding.not_known)

    def _held(self, way: str, width_m: Sliding) -> Held:
        place = self.sliding.ways.index(way)
        return replace(self.sliding.helds[place], share=self.sliding.shares[place](width_m))

    def _numbers(self, way: Way, width_m: Sliding) -> Quantities:
        travels = self.travels(width_m)
        return numbers_of(way, self.sliding.piece, travels, self.sliding.allowances, self._held(way.key, width_m))

    def widest(self, way: str) -> Sliding:
        """The widest piece that a way that slides bears, m; no more than ``scale_m``.

        What stops it is a size that grows evenly with the width (``Way.stopped_by``), so two widths give the line, and
        the line the width at its limit.
        """
        found: Sliding = self.sliding.scale_m
        asked = way_of(way)
        limit, (first, last) = asked.stopped_by, self.sliding.widths_m
        if limit is None:
            return in_sight(found)
        narrow, wide = (self._numbers(asked, width) for width in (first, last))
        for rule in (asked.sizes[key] for key in limit.sizes):
            small, large = rule.size(narrow), rule.size(wide)
            per_metre = larger((large - small) / (last - first), 1e-6)  # where it does not grow: no limit on the scale
            found = smaller(found, first + (limit.most_m - small) / per_metre)
        return larger(found, 0.0)


def sliding_piece_of(
    brief: Brief, piece: Piece, months: MonthlyMoisture, doubts: Doubts, ways: tuple[str, ...]
) -> SlidingPiece:
    """The piece of a brief as its studies take it; ``ways`` are the keys of the ways to compare."""
    year = brief.year()
    dry, damp = year.driest(), year.dampest()
    middle = float(round(0.5 * (dry.rh_percent + damp.rh_percent)))
    outside = year.dampest().emc_percent - year.driest().emc_percent
    follows = float(np.ptp(months.mc_percent)) / outside if outside > 0.0 else 1.0
    lowest, highest = (float(months.mc_percent[place]) for place in (months.driest, months.dampest))
    spans = (
        _around(dry.rh_percent, 0.0, max(middle, dry.rh_percent)),
        _around(damp.rh_percent, min(middle, damp.rh_percent), 100.0),
    )
    driest = MonthAir(dry.temperature_c, dry.rh_percent, *spans[0], follows, lowest)
    dampest = MonthAir(damp.temperature_c, damp.rh_percent, *spans[1], follows, highest)
    names = months.names[months.driest], months.names[months.dampest]
    stock, widths = brief.stock.moisture_percent(), _widths(piece, brief.units)
    made = sliding_piece(piece, stock, (driest, dampest), ways, widths, names, months.mc_percent.tolist(), doubts)
    return replace(made, allowances=Allowances.of(brief.first, brief.shop.cutters_m), not_known=year.not_known)


def sliding_piece(
    piece: Piece,
    stock_mc_percent: float,
    airs: tuple[MonthAir, MonthAir],
    ways: tuple[str, ...],
    widths: tuple[float, float, float],
    months: tuple[str, str],
    year_mc_percent: Sequence[float],
    doubts: Doubts = USUAL_DOUBTS,
) -> SlidingPiece:
    """A piece with its sliders; ``widths`` are a step, the narrowest and the widest, m, ``airs`` the two months."""
    step, low, high = widths
    shares = tuple(share_over_width(way_of(way), piece, (low, high)) for way in ways)
    score = None
    if any(way_of(way).reference for way in ways):
        score = crack_score(
            piece,
            stock_mc_percent,
            year_mc_percent,
            tuple((air.lowest_percent, air.highest_percent) for air in airs),
            tuple(air.rh_percent for air in airs),
            lambda driest_rh, dampest_rh: (airs[0].emc_percent(driest_rh), airs[1].emc_percent(dampest_rh)),
        )
    helds = tuple(held_by(way_of(way), piece) for way in ways)
    return SlidingPiece(piece, stock_mc_percent, *airs, doubts, (low, high), step, months, ways, shares, helds, score)


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
