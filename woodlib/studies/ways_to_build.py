"""Ways to build: the piece of a brief, built each usual way, in its house between the driest and the dampest month.

Unlike other studies this one is made for a brief: its wood, its stock today, its months and its sizes are the brief's,
and its sliders start there. The numbers are those of :mod:`woodlib.construction`; nothing is worked out anew here.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import product

from ..brief import Brief
from ..construction.for_sliders import WORRYING_SCORE, Airs, StressScore, Travels, held_shares, share_at, stress_score
from ..construction.glued_border import GLUED_BORDER
from ..construction.index import find_construction
from ..construction.piece import Allowances, Piece
from ..construction.verdict import held_strain, risk_level, risk_levels
from ..movement.months import MonthlyMoisture
from ..movement.spread import Doubts
from ..reading.decided import Decided, larger, pick, reached, size_of
from ..reading.say import Said, length, moisture, say, strain
from ..study.answer import Answer, Reading
from ..study.inputs import Choice, Span
from ..study.study import Study
from .ways_close_ups import close_up_room
from .ways_pictures import draw, scales_for
from .ways_sheet import Scales, State, sizes
from .ways_words import MAIN_CUTS, NAMES, PICTURES, month_words

KEY = "ways-to-build"
QUESTION = "How does the piece come through the year, built this way or that?"
_STEPS_M = {"inches": (0.0254, 0.0127, 0.00635, 0.003175), "millimetres": (0.02, 0.01, 0.005, 0.002, 0.001)}
_AROUND_PERCENT = 15.0  # how far a slider goes beyond the brief's own humidity


@dataclass(frozen=True)
class Bench:
    """All that a piece brings to the study, by value, so that two equal pieces are one."""

    ways: tuple[str, ...]
    travels: Travels
    piece: Piece
    lowest_width_m: float
    highest_width_m: float
    width_step_m: float
    shares: tuple[float, ...]
    months: tuple[str, str]
    stress: StressScore | None = None

    def numbers(self, way: str, width_m: float, driest_rh: float, dampest_rh: float) -> Mapping[str, float]:
        """The smooth numbers of one way to build."""
        construction = find_construction(way)
        travels = self.travels(driest_rh, dampest_rh, width_m)
        own = construction.numbers(travels, self.piece, _allowances())
        held = share_at(self.shares, width_m, self.lowest_width_m, self.highest_width_m) if construction.holds else 0.0
        return {**travels, **own, "held_share": held}

    def state(self, way: str, width_m: float, driest_rh: float, dampest_rh: float) -> State:
        """One state of one way to build, with its decisions."""
        numbers = self.numbers(way, width_m, driest_rh, dampest_rh)
        pull = tuple(held_strain(numbers, end) for end in ("mid", "high"))
        push = tuple(
            larger(numbers["held_share"] * numbers[f"widening_{end}"] / numbers["width"], 0.0)
            for end in ("mid", "high")
        )
        strained = risk_level(pull[1])
        warned = self._warned(way, driest_rh, dampest_rh)
        level = larger(strained, warned)
        return State(way, numbers, sizes(find_construction(way).rules, numbers), level, pull, push, level - strained)

    def _warned(self, way: str, driest_rh: float, dampest_rh: float) -> float | Decided:
        """1 where the stress model warns of a glued border, else 0."""
        if way != GLUED_BORDER.key or self.stress is None:
            return 0.0
        return reached(self.stress(driest_rh, dampest_rh), WORRYING_SCORE)


@lru_cache(maxsize=1)
def _allowances() -> Allowances:
    return Allowances()


def ways_to_build(title: str, bench: Bench, start: str) -> Study:
    """The study for a piece: ``title`` names it, ``start`` is the key of the way shown first.

    :func:`woodlib.commission.commission_of` makes it from a brief.
    """
    scales = _scales(bench)
    shown = f"{title}: driest and dampest month"

    def answer(way: str, width: float, driest: float, dampest: float) -> Answer:
        return _answer(bench, scales, shown, way, width, driest, dampest)

    return Study(KEY, QUESTION, _inputs(bench, start), answer)


def bench_of(brief: Brief, piece: Piece, months: MonthlyMoisture, doubts: Doubts, ways: tuple[str, ...]) -> Bench:
    """The piece of a brief as its study takes it; ``ways`` are the keys of the ways to compare."""
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
    step, low, high = _widths(piece, brief.units)
    shares = held_shares(piece, low, high)
    names = months.names[months.driest], months.names[months.dampest]
    stress = stress_score(piece, travels, months.mc_percent) if GLUED_BORDER.key in ways else None
    return Bench(ways, travels, piece, low, high, step, shares, names, stress)


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


def _inputs(bench: Bench, start: str) -> tuple[Choice | Span, ...]:
    labels = {way: NAMES[way] for way in bench.ways}
    dry, damp = bench.travels.driest, bench.travels.dampest
    return (
        Choice("way", "Built as", labels, start),
        Span(
            "width",
            "Width of the whole piece, across the grain",
            "length",
            bench.lowest_width_m,
            bench.highest_width_m,
            bench.width_step_m,
            bench.piece.width_m,
        ),
        Span(
            "driest",
            f"Air in the driest month ({bench.months[0]})",
            "humidity",
            dry.lowest_percent,
            dry.highest_percent,
            1.0,
            dry.rh_percent,
        ),
        Span(
            "dampest",
            f"Air in the dampest month ({bench.months[1]})",
            "humidity",
            damp.lowest_percent,
            damp.highest_percent,
            1.0,
            damp.rh_percent,
        ),
    )


def _scales(bench: Bench) -> Scales:
    """Scales from the corners of the sliders, so that nothing ever leaves its sheet."""
    dry, damp = bench.travels.driest, bench.travels.dampest
    furthest, room, longest = 0.0, 1e-3, 2.0 * risk_levels()[-1].from_strain
    airs = (dry.lowest_percent, dry.highest_percent), (damp.lowest_percent, damp.highest_percent)
    for way, driest, dampest in product(bench.ways, *airs):
        state = bench.state(way, bench.highest_width_m, driest, dampest)
        moves = (abs(state.numbers[f"{name}_mid"]) for name in ("narrowing", "widening"))
        furthest = max(furthest, *(move / bench.highest_width_m for move in moves))
        room = max(room, close_up_room(way, state.numbers, state.cuts))
        longest = max(longest, 1.04 * float(state.pull[1]), 1.04 * float(state.push[1]))
    return scales_for(bench.highest_width_m, furthest, bench.piece.border_width_m, room, longest)


def _answer(bench: Bench, scales: Scales, title: str, way: str, width: float, driest: float, dampest: float) -> Answer:
    state = bench.state(way, width, driest, dampest)
    numbers = state.numbers
    return Answer(
        draw(state, scales, title),
        reason(state),
        (
            Reading(
                "The panel moves over the year" + (", were it free" if way in _HELD else ""),
                range_words(numbers, "swing"),
                say(
                    "from {dry} in the wood to {damp}; today {now}",
                    dry=moisture(numbers["driest_mc"]),
                    damp=moisture(numbers["dampest_mc"]),
                    now=moisture(numbers["stock_mc"]),
                ),
            ),
            _held_reading(way, state),
            *(
                Reading(f"Cut today: {name}", _cut(way, name, state), f"rounded {_rule(way, name).rounding}")
                for name in MAIN_CUTS[way]
            ),
            Reading(
                f"Driest month ({bench.months[0]})", lead_words(state, "narrowing"), month_words(state, "narrowing")
            ),
            Reading(
                f"Dampest month ({bench.months[1]})", lead_words(state, "widening"), month_words(state, "widening")
            ),
        ),
        say(
            "{what} Left in the driest month, at {dry} of moisture in the wood, right in the dampest, at {damp}. "
            "Movement "
            "from above is drawn {times} times its size.",
            what=PICTURES[way],
            dry=moisture(numbers["driest_mc"]),
            damp=moisture(numbers["dampest_mc"]),
            times=str(scales.exaggeration),
        ),
        _FINE_PRINT,
    )


def _held_reading(way: str, state: State) -> Reading:
    tone = pick(state.level, [1.0, 2.0], ["fine", "watch", "stop"])
    if way not in _HELD:
        return Reading("Held back", "nothing is held back", "the panel is free to move", tone)
    meaning = pick(state.level, [1.0, 2.0], [risk.meaning for risk in risk_levels()])
    return Reading("Stretched by its border, at most", strain(state.pull[1]), meaning, tone)


_FINE_PRINT = (
    "Slots, gaps and grooves are for the careful end of the range (nine cases in ten), and are rounded up; tongues and "
    "panels are rounded down.",
    "Stretch: what a border keeps the panel from shrinking, as a share of its width, times how firmly it holds; beyond "
    "0.50 % of squeezing in the dampest month wood keeps a set, and the next dry month stretches it by that much more.",
    "Held wood stays elastic below 0.40 % and starts to fail from 0.90 % (The Structural Conservation of "
    "Panel Paintings, Getty 1998).",
    "Moisture from air: two-hydrate equation of the Wood Handbook FPL-GTR-190, eq. 4-5; movement: its eq. 13-2 "
    "from 6 to "
    "14 %, total shrinkage outside.",
    "Pins, screws, play and cover: common practice, no source.",
)


def _cut(way: str, name: str, state: State):
    return length(state.cuts[name], _rule(way, name).rounding)


@cache
def _rule(way: str, name: str):
    return next(rule for rule in find_construction(way).rules if rule.name == name)


def reason(state: State):
    """The sentence that decides, by the step of risk reached."""
    construction = find_construction(state.key)
    sentences = []
    for step in range(len(risk_levels())):
        limit = risk_levels()[max(step, 1)].from_strain
        sentence = construction.reasons[min(step, len(construction.reasons) - 1)]
        sizes_said = {
            name: length(rule.size(state.numbers), rule.rounding) for name, rule in construction.reason_sizes
        }
        values = {"held": strain(state.pull[0]), "most": strain(state.pull[1]), "limit": strain(limit)}
        sentences.append(say(sentence, **values, **sizes_said))
    by_strain = pick(state.level, [1.0, 2.0], sentences)
    return pick(state.only_stress_warns, [1.0], [by_strain, _STRESS_WARNS])


_STRESS_WARNS = (
    "The strain rule would let it pass, but by the stress model the chance of a crack is 1 in 20 or more; the careful "
    "side counts."
)


def range_words(numbers: Mapping[str, float], name: str) -> Said:
    """A movement with the range that holds nine cases in ten."""
    low, mid, high = (length(numbers[f"{name}_{end}"]) for end in ("low", "mid", "high"))
    return say("about {mid}, could be {low} to {high}", low=low, mid=mid, high=high)


_HELD = frozenset(("glued_border",))  # ways that keep the panel from moving


def lead_words(state: State, way: str):
    """How the width stands against today, or would if nothing held it."""
    lead = _against_today(state.numbers, way)
    return say("would be {lead} if it were free", lead=lead) if state.key in _HELD else lead


def _against_today(numbers: Mapping[str, float], way: str):
    mid = numbers[f"{way}_mid"]
    hardly = 0.0008  # half of 1/16 in: written as nothing otherwise
    wanted, opposite = ("narrower", "wider") if way == "narrowing" else ("wider", "narrower")
    size = length(size_of(mid))
    sides = [say("about {size} {side} than today", size=size, side=side) for side in (opposite, wanted)]
    return pick(mid, [-hardly, hardly], [sides[0], "about as wide as today", sides[1]])
