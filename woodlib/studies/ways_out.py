"""Ways out: one seat, every way to build it, and the width at which each stops being sensible in its house."""

from __future__ import annotations

from functools import lru_cache

from ..construction.verdict import risk_levels
from ..figures.scene import Area, Circle, Frame, Line, Mark, Picture, Words, box
from ..reading.decided import Decided, Pick, level, pick, reached
from ..reading.say import Said, count, length, movement, percent, say, strain
from ..study import Answer, Choice, Reading, Span, study
from .ways_out_numbers import (
    DAMPEST,
    DRIEST,
    GLUED,
    HIGHEST_M,
    INCH_M,
    LOWEST_M,
    SLIDING,
    STOCK_MC_PERCENT,
    WAYS,
    WIDEST_M,
    Bearing,
    bearing,
    limits,
)

NAMES = {
    "glued_border": "border glued across the ends",
    "glued_face_rim": "rim glued across the face",
    "own_blank_rim": "rim from the panel's own blank",
    "breadboard": "breadboard end on slots",
    "frame_panel": "frame with a floating panel",
    "same_grain_border": "border with the panel's grain",
    "battens": "battens below, on slots",
    "sliding_dovetail": "batten in a sliding dovetail",
    "buttons": "buttons on a base",
    "slotted_blocks": "slotted blocks on an apron",
    "figure_plates": "figure plates on an apron",
    "inset_panel": "plain panel set in an opening",
    "edged_sheet": "sheet with solid edging",
}
SHORT_NAMES = {
    "glued_border": "glued border",
    "glued_face_rim": "rim glued on the face",
    "own_blank_rim": "rim from own blank",
    "breadboard": "breadboard end",
    "frame_panel": "frame and panel",
    "same_grain_border": "same-grain border",
    "battens": "slotted battens",
    "sliding_dovetail": "sliding dovetail",
    "buttons": "buttons",
    "slotted_blocks": "slotted blocks",
    "figure_plates": "figure plates",
    "inset_panel": "panel in an opening",
    "edged_sheet": "sheet, solid edging",
}
"""Names for the picture, which a phone shows small."""
NEAR = 0.85  # of its widest: from here a way is near its limit; an assumption of ours
CUTS = {"flatsawn": 0.0, "quartersawn": 90.0}

_WIDTH, _HEIGHT = 720.0, 452.0
_ROW, _TOP, _BAR = 27.0, 36.0, 13.0
_SCALE = Frame(224.0, _TOP, 354.0, _ROW * len(WAYS), 0.0, WIDEST_M, 0.0, 1.0)
_TICKS_M = (12 * INCH_M, 36 * INCH_M)
_GLUED_WORDS = ("safe", "strained", "cracking")
_SLIDING_WORDS = ("sensible", "near its limit", "too wide")
_TONES = ("fine", "watch", "stop")


@study(
    key="ways-out",
    question="Which ways to build are sensible in this house, and up to what width?",
    inputs=[
        Choice("species", "Wood", ("white oak", "black cherry"), "white oak"),
        Choice("cut", "Cut", tuple(CUTS), "flatsawn"),
        Span("width", "Width of the seat, across its grain", "length", LOWEST_M, HIGHEST_M, INCH_M, 20 * INCH_M),
        Span("driest", "Air in the driest month", "humidity", DRIEST.lowest_percent, DRIEST.highest_percent, 1, 25),
        Span("dampest", "Air in the dampest month", "humidity", DAMPEST.lowest_percent, DAMPEST.highest_percent, 1, 62),
    ],
)
def ways_out(species: str, cut: str, width: float, driest: float, dampest: float) -> Answer:
    """Every way to build a seat, its verdict at this width, and the widest it bears."""
    bench = bearing(species, CUTS[cut])
    judged = _judged(bench, width, driest, dampest)
    good = sum((1.0 - reached(entry.level, 1.0) for entry in judged if entry.way in GLUED), 0.0)
    good = sum((1.0 - reached(entry.level, 2.0) for entry in judged if entry.way in SLIDING), good)
    travels = bench.travels(driest, dampest, width)
    low, mid, high = (movement(travels[f"swing_{end}"]) for end in ("low", "mid", "high"))
    headline = say(
        f"In {cut} {species}, {{width}} wide, {{good}} of {len(WAYS)} ways to build are sensible in this "
        f"house; {{glue}}.",
        width=length(width),
        good=count(good),
        glue=_of(judged[0], ("even a glued border stays safe", "a glued border is strained", "a glued border cracks")),
    )
    moves = say("about {mid}, could be {low} to {high}", mid=mid, low=low, high=high)
    readings = (Reading("The seat moves over the year", moves, "free, from the driest to the dampest month"),)
    return Answer(
        _draw(judged, width),
        headline,
        (*readings, *(_reading(entry) for entry in judged)),
        say(
            f"A bar for each of {len(WAYS)} ways to build runs as far as the widest seat that it bears, on a "
            "scale up to "
            "{widest}; an upright line marks the seat, {width} wide. Bars that end before the line are out.",
            widest=length(WIDEST_M),
            width=length(width),
        ),
        _fine_print(),
    )


class _Judged:
    """One way: its verdict as a level of 0 to 2, its widest seat, and for a glued way the strain held back."""

    def __init__(self, way: str, verdict: Decided, widest: Decided, pull: Decided | None = None) -> None:
        self.way, self.level, self.widest, self.pull = way, verdict, widest, pull


def _judged(bench: Bearing, width: float, driest: float, dampest: float) -> tuple[_Judged, ...]:
    found = []
    for way in GLUED:
        step = bench.level(way, width, driest, dampest)
        widest = (1.0 - reached(step, 1.0)) * WIDEST_M  # by strain: all the scale, or nothing
        found.append(_Judged(way, step, widest, bench.pull(way, width, driest, dampest)))
    for way in SLIDING:
        widest = bench.widest(way, driest, dampest)
        found.append(_Judged(way, level(width, [widest * NEAR, widest]), widest))
    return tuple(found)


def _of(entry: _Judged, options: tuple) -> Pick:
    return pick(entry.level, [1.0, 2.0], options)


def _words(entry: _Judged) -> Pick:
    return _of(entry, _GLUED_WORDS if entry.way in GLUED else _SLIDING_WORDS)


def _reading(entry: _Judged) -> Reading:
    name, tone = NAMES[entry.way].capitalize(), _of(entry, _TONES)
    if entry.pull is not None:
        risks = [say("{word}: {meaning}", word=risk.word, meaning=risk.meaning) for risk in risk_levels()]
        return Reading(name, say("up to {pull} held back", pull=strain(entry.pull)), _of(entry, tuple(risks)), tone)
    bears = pick(
        entry.widest,
        [WIDEST_M],
        [say("up to {widest} wide", widest=length(entry.widest, "down")), say("{all} and more", all=length(WIDEST_M))],
    )
    limit = limits()[entry.way]
    meaning = say(limit.meaning, limit=length(limit.limit_m))
    options = tuple(
        say(f"{word}{joined}{{meaning}}", meaning=meaning)
        for word, joined in zip(_SLIDING_WORDS, ("; beyond, ", "; beyond, ", ": "), strict=True)
    )
    return Reading(name, bears, _of(entry, options), tone)


def _draw(judged: tuple[_Judged, ...], width: float) -> Picture:
    bottom = _TOP + _SCALE.height
    marks: list[Mark] = []
    for number, entry in enumerate(judged):
        marks += _row(entry, _TOP + _ROW * number)
    for tick in _TICKS_M:
        marks.append(Line([(_SCALE.x(tick), bottom), (_SCALE.x(tick), bottom + 5)], "quiet", 1.4))
        marks.append(Words(_SCALE.x(tick), bottom + 20, say("{tick}", tick=length(tick)), "quiet", 14))
    marks.append(Line([(_SCALE.left, bottom), (_SCALE.left + _SCALE.width, bottom)], "quiet", 1.4))
    marks.append(
        Words(_SCALE.left + _SCALE.width / 2, bottom + 46, "widest seat that it bears, across the grain", "ink", 15)
    )
    here = _SCALE.x(width)
    marks.append(Line([(here, _TOP - 6), (here, bottom)], "today", 2.4))
    marks.append(Words(here, _TOP - 13, say("this seat: {width}", width=length(width)), "today", 15, bold=True))
    return Picture("Ways to build, and the widest seat each bears", _WIDTH, _HEIGHT, tuple(marks))


def _row(entry: _Judged, top: float) -> list[Mark]:
    middle, tone = top + _ROW / 2, _of(entry, _TONES)
    end = _SCALE.x(entry.widest)
    bar = box(_SCALE.left, middle - _BAR / 2, end - _SCALE.left, _BAR)
    return [
        Line([(_SCALE.left, middle), (_SCALE.left + _SCALE.width, middle)], "grid", 1.4),
        Area(bar, tone),
        Line([*bar, bar[0]], "edge", 1.0),
        Circle(end, middle, 4.5, tone, filled=True),
        Words(_SCALE.left - 8, middle + 5, SHORT_NAMES[entry.way], "ink", 15, "end"),
        Words(_SCALE.left + _SCALE.width + 10, middle + 5, _words(entry), tone, 15, "start", bold=True),
    ]


@lru_cache(maxsize=1)
def _fine_print() -> tuple[str | Said, ...]:
    return (
        say(
            "The seat is invented: {long} long, {thick} thick, its border {border} wide, built today at "
            f"{STOCK_MC_PERCENT:g} % MC. Slots, steps and gaps are those of the careful end of the movement (nine "
            "cases "
            "in ten), by the same rules as every verdict of the kit.",
            long=length(44 * INCH_M),
            thick=length(0.875 * INCH_M),
            border=length(2 * INCH_M),
        ),
        say(
            "What is too long a slot, too high a step or too wide a gap: common practice, no source. A way is "
            "called near "
            "its limit from {near} of its widest on.",
            near=percent(100 * NEAR),
        ),
        "The glued ways are judged by the strain rule alone: elastic below 0.40 %, failing from 0.90 % (The Structural "
        "Conservation of Panel Paintings, Getty 1998). The stress model of crossing the grain may warn earlier.",
        "Moisture from air: two-hydrate equation of the Wood Handbook FPL-GTR-190, eq. 4-5; movement: its "
        "eq. 13-2 from 6 "
        "to 14 %, total shrinkage outside.",
    )
