"""Ways to build: the piece of a brief, built each usual way, in its house between the driest and the dampest month.

Unlike other studies this one is made for a brief: its wood, its stock today, its months and its sizes are the brief's,
and its sliders start there. The numbers are those of :mod:`woodlib.ways`; nothing is worked out anew here.
"""

from __future__ import annotations

from ..study.answer import Answer, Reading
from ..study.inputs import Choice, Span
from ..study.study import Study
from ..ways.registry import way_of
from ..ways.risk import risk_levels
from ..ways.rules import CutRule
from ..words.decided import pick
from ..words.say import length, moisture, movement, say, strain
from .ways_bench import Bench, State
from .ways_pictures import Sheet, draw, sheet_for
from .ways_words import lead_words, month_words, range_words, reason

KEY = "ways-to-build"
QUESTION = "How does the piece come through the year, built this way or that?"


def ways_to_build(title: str, bench: Bench, start: str) -> Study:
    """The study for a piece: ``title`` names it, ``start`` is the key of the way shown first.

    :func:`woodlib.commission.commission_of` makes it from a brief.
    """
    sheets = {way: sheet_for(bench, way) for way in bench.ways}
    shown = f"{title}: driest and dampest month"

    def answer(way: str, width: float, driest: float, dampest: float) -> Answer:
        return _answer(bench, sheets[way], shown, way, width, driest, dampest)

    return Study(KEY, QUESTION, (_way(bench, start), *spans_of(bench)), answer)


def _way(bench: Bench, start: str) -> Choice:
    return Choice("way", "Built as", {way: way_of(way).name for way in bench.ways}, start)


def spans_of(bench: Bench) -> tuple[Span, ...]:
    """Sliders for the width of the piece and the air of its two months."""
    dry, damp = bench.travels.driest, bench.travels.dampest
    return (
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


def _answer(bench: Bench, sheet: Sheet, title: str, way: str, width: float, driest: float, dampest: float) -> Answer:
    state = bench.state(way, width, driest, dampest)
    numbers = state.numbers
    return Answer(
        draw(bench, sheet, state, width, title),
        reason(state),
        (
            Reading(
                "The panel moves over the year" + (", were it free" if state.way.holds_width else ""),
                range_words(numbers, "swing"),
                say(
                    "from {dry} in the wood to {damp}; today {now}",
                    dry=moisture(numbers["driest_mc"]),
                    damp=moisture(numbers["dampest_mc"]),
                    now=moisture(numbers["stock_mc"]),
                ),
            ),
            _held_reading(state),
            *(
                Reading(f"Cut today: {rule.label}", _cut(rule, state), f"rounded {rule.rounding}")
                for rule in (state.way.sizes[key] for key in state.way.main_cuts)
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
            "Movement from above is drawn {times} times its size.",
            what=state.way.shows,
            dry=moisture(numbers["driest_mc"]),
            damp=moisture(numbers["dampest_mc"]),
            times=str(sheet.scale.times),
        ),
        _FINE_PRINT,
    )


def _held_reading(state: State) -> Reading:
    tone = pick(state.level, [1.0, 2.0], ["fine", "watch", "stop"])
    if state.numbers["held_share"] == 0.0:
        return Reading("Held back", "nothing is held back", "the panel is free to move", tone)
    meaning = pick(state.level, [1.0, 2.0], [risk.meaning for risk in risk_levels()])
    return Reading(state.way.held_by, strain(state.pull[1]), meaning, tone)


_FINE_PRINT = (
    "Slots, gaps and grooves are for the careful end of the range (nine cases in ten), and are rounded up; tongues and "
    "panels are rounded down.",
    "Stretch: what a border keeps the panel from shrinking, as a share of its width, times how firmly it holds; beyond "
    "0.50 % of squeezing in the dampest month wood keeps a set, and the next dry month stretches it by that much more.",
    "Held wood stays elastic below 0.40 % and starts to fail from 0.90 % (The Structural Conservation of "
    "Panel Paintings, Getty 1998).",
    "Moisture from air: two-hydrate equation of the Wood Handbook FPL-GTR-190, eq. 4-5; movement: its eq. 13-2 "
    "from 6 to 14 %, total shrinkage outside.",
    "Pins, screws, play and cover: common practice, no source.",
)


def _cut(rule: CutRule, state: State):
    return (movement if rule.fine else length)(state.sizes[rule.key], rule.rounding)
