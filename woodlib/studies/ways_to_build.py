"""Ways to build: the piece of a brief, built each usual way, in its house between the driest and the dampest month.

Unlike other studies this one is made for a brief: its wood, its stock today, its months and its sizes are the brief's,
and its sliders start there. The numbers are those of :mod:`woodlib.ways`; nothing is worked out anew here.
"""

from __future__ import annotations

from itertools import product

from ..picture.scene import Picture
from ..study.answer import Answer, Reading
from ..study.inputs import Choice, Span
from ..study.study import Study
from ..ways.drawing import Sheet, draw, measures_of, sheet_for
from ..ways.judge import NOT_KNOWN, Judgement, range_words
from ..ways.registry import way_of
from ..ways.risk import risk_levels
from ..words.say import moisture, say, strain
from .sliding_piece import SlidingPiece

KEY = "ways-to-build"
QUESTION = "How does the piece come through the year, built this way or that?"


def ways_to_build(title: str, sliding: SlidingPiece, start: str) -> Study:
    """The study for a piece: ``title`` names it, ``start`` is the key of the way shown first.

    :func:`woodlib.commission.commission_of` makes it from a brief.
    """
    sheets = {way: _sheet(sliding, way) for way in sliding.ways}
    shown = f"{title}: driest and dampest month"

    def answer(way: str, width: float, driest: float, dampest: float) -> Answer:
        judged = sliding.at(driest, dampest).judged(way, width)
        picture = draw(sheets[way], (judged, measures_of(sliding.piece) | {"width": width}), shown)
        return _answer(judged, picture, sheets[way].scale.times, sliding.months)

    return Study(KEY, QUESTION, (_way(sliding, start), *spans_of(sliding)), answer)


def _sheet(sliding: SlidingPiece, way: str) -> Sheet:
    """The sheet on which every state that the sliders reach has room."""
    airs = ((air.lowest_percent, air.highest_percent) for air in (sliding.driest, sliding.dampest))
    return sheet_for(
        [
            (sliding.at(*air).judged(way, width), measures_of(sliding.piece) | {"width": width})
            for width, *air in product(sliding.widths_m, *airs)
        ]
    )


def _way(sliding: SlidingPiece, start: str) -> Choice:
    return Choice("way", "Built as", {way: way_of(way).name for way in sliding.ways}, start)


def spans_of(sliding: SlidingPiece) -> tuple[Span, ...]:
    """Sliders for the width of the piece and the air of its two months."""
    dry, damp = sliding.driest, sliding.dampest
    return (
        Span(
            "width",
            "Width of the whole piece, across the grain",
            "length",
            *sliding.widths_m,
            sliding.width_step_m,
            sliding.piece.width_m,
        ),
        Span(
            "driest",
            "Air in the driest month",
            "humidity",
            dry.lowest_percent,
            dry.highest_percent,
            1.0,
            dry.rh_percent,
        ),
        Span(
            "dampest",
            "Air in the dampest month",
            "humidity",
            damp.lowest_percent,
            damp.highest_percent,
            1.0,
            damp.rh_percent,
        ),
    )


def _answer(judged: Judgement, picture: Picture, times: int, months: tuple[str, str]) -> Answer:
    way, numbers = judged.way, judged.numbers
    dry, damp, now = (moisture(numbers[f"{name}_mc"]) for name in ("driest", "dampest", "stock"))
    return Answer(
        picture,
        judged.reason(),
        (
            Reading(
                "The panel moves over the year" + (", were it free" if way.holds_width else ""),
                range_words(numbers, "swing"),
                say("from {dry} in the wood to {damp}; today {now}", dry=dry, damp=damp, now=now),
            ),
            _held(judged),
            *(
                Reading(f"Cut today: {rule.label}", judged.size(rule.key), f"rounded {rule.rounding}")
                for rule in (way.sizes[key] for key in way.main_cuts)
            ),
            *(
                Reading(f"{name} month ({month})", judged.against_today(towards), judged.month(towards))
                for name, month, towards in zip(("Driest", "Dampest"), months, ("narrowing", "widening"), strict=True)
            ),
        ),
        say(
            f"{way.shows} Left in the driest month, at {{dry}} of moisture in the wood, right in the dampest, at {{damp}}. "
            f"Movement from above is drawn {times} times its size.",
            dry=dry,
            damp=damp,
        ),
        _FINE_PRINT,
    )


def _held(judged: Judgement) -> Reading:
    if not judged.way.holds:
        return Reading("Held back", "nothing is held back", "the panel is free to move", judged.tone)
    meaning = judged.of_risk(tuple(risk.meaning for risk in risk_levels()), NOT_KNOWN)
    return Reading(judged.way.held_by, strain(judged.most), meaning, judged.tone)


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
