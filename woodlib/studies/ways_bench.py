"""The piece of a brief as sliders need it: its ways to build, its house, and the smooth numbers of every state."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from ..brief import Brief
from ..movement.months import MonthlyMoisture
from ..movement.spread import Doubts
from ..ways.for_sliders import WORRYING_SCORE, Airs, StressScore, Travels, held_shares, share_at, stress_score
from ..ways.parts import whole_sizes
from ..ways.piece import Allowances, Piece
from ..ways.registry import reference_way, way_of
from ..ways.risk import risk_level
from ..ways.verdict import held_strain
from ..ways.way import Way
from ..words.decided import Decided, larger, reached, smaller

_STEPS_M = {"inches": (0.0254, 0.0127, 0.00635, 0.003175), "millimetres": (0.02, 0.01, 0.005, 0.002, 0.001)}
_AROUND_PERCENT = 15.0  # how far a slider goes beyond the brief's own humidity

Number = float | Decided


@dataclass(frozen=True)
class State:
    """One state of a way to build: its smooth numbers, its sizes by name, and what counts against the wood.

    ``pull`` and ``push`` are held strains, likely and careful; ``only_stress_warns`` is 1 where the stress model
    warns and the strain rule does not.
    """

    way: Way
    numbers: Mapping[str, float]
    sizes: Mapping[str, Number]
    level: Number
    pull: tuple[Number, Number]
    push: tuple[Number, Number]
    only_stress_warns: Number = 0.0


@dataclass(frozen=True)
class Bench:
    """All that a piece brings to a study, by value, so that two equal pieces are one.

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

    def numbers(self, way: str, width_m: float, driest_rh: float, dampest_rh: float) -> Mapping[str, float]:
        """The smooth numbers of one way to build."""
        construction = way_of(way)
        travels = self.travels(driest_rh, dampest_rh, width_m)
        own = construction.numbers(travels, self.piece, _allowances())
        share = share_at(self.shares[self.ways.index(way)], width_m, self.lowest_width_m, self.highest_width_m)
        held = {"held_share": share} | ({"push_share": share} if construction.opens_when_damp else {})
        return {**travels, **whole_sizes(self.piece, width_m), **own, **held}

    def state(self, way: str, width_m: float, driest_rh: float, dampest_rh: float) -> State:
        """One state of one way to build, with its decisions."""
        numbers = self.numbers(way, width_m, driest_rh, dampest_rh)
        pull = tuple(held_strain(numbers, end) for end in ("mid", "high"))
        push = tuple(
            larger(numbers["held_share"] * numbers[f"widening_{end}"] / numbers["width"], 0.0)
            for end in ("mid", "high")
        )
        strained = risk_level(pull[1])
        level = larger(strained, self._warned(way, driest_rh, dampest_rh))
        return State(way_of(way), numbers, _sizes(way, numbers), level, pull, push, level - strained)

    def widest(self, way: str, driest_rh: float, dampest_rh: float) -> Number:
        """The widest piece that a way that slides bears, m; no more than ``scale_m``.

        What stops it is a size that grows evenly with the width (``Way.stopped_by``), so two widths give the line, and
        the line the width at its limit.
        """
        found: Number = self.scale_m
        limit = way_of(way).stopped_by
        if limit is None:
            return Decided("+", found, 0.0)
        first, last = self.lowest_width_m, self.highest_width_m
        asked = [self.numbers(way, width, driest_rh, dampest_rh) for width in (first, last)]
        for rule in (way_of(way).sizes[key] for key in limit.sizes):
            small, large = (rule.size(numbers) for numbers in asked)
            per_metre = larger((large - small) / (last - first), 1e-6)  # where it does not grow: no limit on the scale
            found = smaller(found, first + (limit.most_m - small) / per_metre)
        return larger(found, 0.0)

    @property
    def scale_m(self) -> float:
        """The widest piece that a picture of widths shows, m."""
        return 1.2 * self.highest_width_m

    def with_ways(self, ways: tuple[str, ...]) -> Bench:
        """The same piece with some of its ways."""
        return bench_from(
            ways,
            self.travels,
            self.piece,
            (self.width_step_m, self.lowest_width_m, self.highest_width_m),
            self.months,
            self.stress,
        )

    def _warned(self, way: str, driest_rh: float, dampest_rh: float) -> Number:
        """1 where the stress model warns of a glued border, else 0."""
        if not way_of(way).reference or self.stress is None:
            return 0.0
        return reached(self.stress(driest_rh, dampest_rh), WORRYING_SCORE)


@lru_cache(maxsize=1)
def _allowances() -> Allowances:
    return Allowances()


def _sizes(way: str, numbers: Mapping[str, float]) -> dict[str, Number]:
    """Every size by key, to cut and as it will stand, remembered with its decisions."""
    return {key: rule.size(numbers) for key, rule in way_of(way).sizes.items()}


def bench_of(brief: Brief, piece: Piece, months: MonthlyMoisture, doubts: Doubts, ways: tuple[str, ...]) -> Bench:
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
    return bench_from(ways, travels, piece, _widths(piece, brief.units), names, stress)


def bench_from(
    ways: tuple[str, ...],
    travels: Travels,
    piece: Piece,
    widths: tuple[float, float, float],
    months: tuple[str, str],
    stress: StressScore | None = None,
) -> Bench:
    """A bench from its parts; ``widths`` are a step, the narrowest and the widest, m."""
    step, low, high = widths
    shares = tuple(held_shares(piece, low, high, way_of(way)) for way in ways)
    return Bench(ways, travels, piece, low, high, step, shares, months, stress)


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
