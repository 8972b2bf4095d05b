"""Setting out: two drawer fronts from one blank, their dowels, the cut between them, and a pull on metric centres.

All clearances are those of :mod:`woodlib.setting_out.kernels`; the exact rows and fits are in ``setting_out.joints``
and ``setting_out.holes``, and the tests hold this study against them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache, reduce

from ..setting_out.holes import Marking, hole_pair, markings
from ..setting_out.kernels import clear_after, clear_before, hole_for_screw, pair_about, rest_each_side
from ..setting_out.practice import ShopPractice
from ..study import Answer, Choice, Reading, Span, study
from ..units.exact import INCH_M, Rounding
from ..words.decided import Decided, Pick, Sliding, larger, level, pick, size_of, smaller
from ..words.say import Said, fine_length, length, say
from .setting_out_pictures import draw

BLANK_M = 44 * INCH_M
CENTRES_M = 0.128
FIXED_DOWELS_M = tuple(place * INCH_M for place in (2, 10, 18, 26, 42))  # numbers 1 to 4 and 6 of an even row
DOWEL_M, REACH_M = 0.375 * INCH_M, INCH_M
RULES = {
    "1/16 in": "sixteenths of an inch",
    "1/64 in": "64ths of an inch",
    "0.5 mm": "half millimetres",
}
TONES = ("stop", "watch", "fine")
HAIR_M = 1e-6  # a clearance that lacks no more than this keeps its margin: sizes on one grid often meet it exactly


@lru_cache(maxsize=1)
def shop() -> dict[str, float]:
    """What the shop allows, as plain metres."""
    practice = ShopPractice()
    names = ("saw_kerf", "dowel_margin", "marking_tolerance", "drilling_tolerance", "screw_diameter")
    return {name: float(getattr(practice, f"{name}_m")) for name in names}


@lru_cache(maxsize=8)
def marked(rule: str) -> Marking:
    """Two holes 128 mm apart, marked both ways from a struck centre line with a rule of this step."""
    return markings(hole_pair("34 in", "128 mm", name="pull"), rule)[1]


@dataclass(frozen=True)
class Clearances:
    """Wood left between things, m, smallest of each kind; negative where one goes into the other.

    ``by_dowel`` the least that each of the six dowels has to anything; ``needs`` the hole that takes the screw.
    """

    dowels_cut: Decided
    dowels_holes: Decided
    dowels: Decided
    holes_cut: Decided
    by_dowel: tuple[Decided, ...]
    needs: float


def clearances(rule: str, cut: float, pull: float, dowel: float, hole: float) -> Clearances:
    """Every clearance of the blank for one state of its sliders; all in m from the left end."""
    half, kerf = DOWEL_M / 2, (cut, cut + shop()["saw_kerf"])
    row = (*FIXED_DOWELS_M[:4], dowel, FIXED_DOWELS_M[4])
    holes: tuple[Sliding, Sliding] = pair_about(pull, CENTRES_M)
    to_cut = [_clear(place, half, *kerf) for place in row]
    to_holes = [_least(_clear(place, half, at - hole / 2, at + hole / 2) for at in holes) for place in row]
    beside: list[Sliding] = [second - first - DOWEL_M for first, second in zip(row, row[1:], strict=False)]
    beside = [beside[0], *(smaller(a, b) for a, b in zip(beside, beside[1:], strict=False)), beside[-1]]
    by_dowel = tuple(_least(three) for three in zip(to_cut, to_holes, beside, strict=True))
    off = float(marked(rule).misfit_m) + shop()["marking_tolerance"] + shop()["drilling_tolerance"]
    return Clearances(
        _least(to_cut),
        _least(to_holes),
        _least(beside),
        clear_before(holes[1], hole / 2, cut) + Decided("+", 0.0, 0.0),
        by_dowel,
        hole_for_screw(shop()["screw_diameter"], off, 0.0),
    )


def _clear(place: float, half: float, low: float, high: float) -> Decided:
    """Wood between something at a place and something that lies from ``low`` to ``high``, on whichever "
    "side there is."""
    return larger(clear_before(place, half, low), clear_after(place, half, high))


def _least(numbers: Iterable[Sliding]) -> Decided:
    return reduce(smaller, numbers)


@study(
    key="setting-out",
    question="Do the dowels, the cut and the pull's holes keep clear of each other, and will the screws go in?",
    inputs=[
        Choice("rule", "Rule for the holes", RULES, "1/16 in"),
        Span(
            "cut",
            "Cut between the fronts, from the left end",
            "length",
            30 * INCH_M,
            40 * INCH_M,
            INCH_M / 8,
            34 * INCH_M,
        ),
        Span(
            "pull", "Middle of the pull, from the left end", "length", 14 * INCH_M, 24 * INCH_M, INCH_M / 8, 17 * INCH_M
        ),
        Span(
            "dowel",
            "Dowel number 5, from the left end",
            "length",
            26.5 * INCH_M,
            41.5 * INCH_M,
            INCH_M / 8,
            34 * INCH_M,
        ),
        Span("hole", "Hole drilled for each screw", "fine_length", 0.004, 0.007, 0.00025, 0.005),
    ],
)
def setting_out_study(rule: str, cut: float, pull: float, dowel: float, hole: float) -> Answer:
    """What conflicts on the blank, by how much, and where it would be clear."""
    clear = clearances(rule, cut, pull, dowel, hole)
    margin = shop()["dowel_margin"] - HAIR_M
    worst = _least((clear.dowels_cut, clear.dowels_holes, clear.dowels, clear.holes_cut))
    fits = level(hole, [shop()["screw_diameter"] + HAIR_M, clear.needs])
    rests = (pull - CENTRES_M / 2, cut - pull - CENTRES_M / 2)
    readings = (
        _reading("Dowels and the cut", clear.dowels_cut, margin, "the saw goes into a dowel"),
        _reading("Dowels and the pull's holes", clear.dowels_holes, margin, "the bit goes into a dowel"),
        _reading("Dowels and their neighbours", clear.dowels, margin, "two dowels share one hole"),
        _reading("Pull's holes and the cut", clear.holes_cut, margin, "the saw opens a hole"),
        Reading("Dowel 5 is clear of the cut", _room(cut, margin), "to its middle, from the left end"),
        Reading(
            "From the holes to the ends",
            say("{left} on the left, {right} on the right", left=fine_length(rests[0]), right=fine_length(rests[1])),
            _off_middle(cut, pull),
        ),
        Reading(
            "Hole that each screw needs",
            fine_length(clear.needs, "up"),
            _fit_words(fits, hole, clear.needs),
            Pick(fits, ("stop", "watch", "fine")),
        ),
        Reading("Marks from the centre line", _marks(marked(rule)), _mark_error(marked(rule))),
    )
    return Answer(
        draw(_state(clear, cut, pull, dowel, hole), margin),
        say(
            "{wood}, and {screws}.",
            wood=pick(
                worst,
                [0.0, margin],
                ["Something is cut into", "Something comes nearer than the margin", "Everything keeps the margin"],
            ),
            screws=Pick(
                fits,
                (
                    "the screws have no play at all",
                    "the holes may be too small for the screws",
                    "the screws go in at the worst",
                ),
            ),
        ),
        readings,
        say(
            "A blank {blank} long from above, its front edge below. Six dowels cross the glue line; a saw cut at "
            "{cut} parts "
            "two fronts; a pull with two holes sits about {pull}. Below, a bar for each clearance with the margin of "
            "{margin} marked, and both screws in their holes with every error at its worst.",
            blank=length(BLANK_M),
            cut=length(cut),
            pull=length(pull),
            margin=length(margin),
        ),
        _fine_print(),
    )


def _state(clear: Clearances, cut: float, pull: float, dowel: float, hole: float) -> dict:
    """What the picture shows, by name, in metres."""
    return {
        "blank": BLANK_M,
        "dowels": (*FIXED_DOWELS_M[:4], dowel, FIXED_DOWELS_M[4]),
        "by_dowel": clear.by_dowel,
        "dowel_size": DOWEL_M,
        "reach": REACH_M,
        "cut": cut,
        "kerf": shop()["saw_kerf"],
        "holes": pair_about(pull, CENTRES_M),
        "hole": hole,
        "screw": shop()["screw_diameter"],
        "needs": clear.needs,
        "holes_dowels": clear.dowels_holes,
        "holes_cut": clear.holes_cut,
        "dowels_cut": clear.dowels_cut,
        "dowels_apart": clear.dowels,
    }


def _reading(label: str, clear: Decided, margin: float, into: str) -> Reading:
    left = fine_length(larger(clear, 0.0), "down")
    value = pick(
        clear,
        [0.0],
        [say("overlap of {size}", size=fine_length(size_of(clear), "up")), say("{size} of wood left", size=left)],
    )
    words = (into, say("less than the margin of {margin}", margin=length(margin)), "keeps the margin")
    return Reading(label, value, pick(clear, [0.0, margin], words), pick(clear, [0.0, margin], TONES))


def _room(cut: float, margin: float) -> Said:
    away = margin + DOWEL_M / 2
    return say(
        "up to {low}, and from {high} on",
        low=length(cut - away, "down"),
        high=length(cut + shop()["saw_kerf"] + away, "up"),
    )


def _off_middle(cut: float, pull: float) -> Pick:
    off = pull - cut / 2
    sides = [
        say(f"the pull sits {{off}} {side} of the middle of its front", off=fine_length(size_of(off)))
        for side in ("left", "right")
    ]
    hair = INCH_M / 128
    middle = say(
        "the pull sits in the middle of its front, {rest} on each side",
        rest=fine_length(rest_each_side(cut, CENTRES_M)),
    )
    return pick(off, [-hair, hair], [sides[0], middle, sides[1]])


def _fit_words(fits: Decided, hole: float, needs: float) -> Pick:
    drilled = fine_length(hole)
    return Pick(
        fits,
        (
            say("{hole} is the screw itself: no error at all is allowed", hole=drilled),
            say(
                "{hole} is drilled, {lacks} too little at the worst: mark closer, use a jig, or drill larger",
                hole=drilled,
                lacks=fine_length(larger(needs - hole, 0.0), "up"),
            ),
            say("{hole} is drilled, which is enough", hole=drilled),
        ),
    )


def _marks(way: Marking) -> str:
    return " and ".join(_mark(mark) for mark in way.marks)


def _mark(mark: Rounding) -> str:
    return mark.text.removeprefix("-")


def _mark_error(way: Marking) -> Pick:
    error = float(way.centres_error_m)
    return pick(
        error,
        [1e-6],
        [
            "exact: the rule has a line where each hole belongs",
            say("the holes end up {error} off their distance", error=fine_length(error)),
        ],
    )


@lru_cache(maxsize=1)
def _fine_print() -> tuple[str | Said, ...]:
    allowed = shop()
    return (
        say(
            "Sound wood to leave between a dowel and anything cut later: {margin}; a saw kerf: {kerf}; a mark "
            "may be off by "
            "{mark}, a bit may wander by {bit}: common practice, no source.",
            margin=length(allowed["dowel_margin"]),
            kerf=length(allowed["saw_kerf"]),
            mark=fine_length(allowed["marking_tolerance"]),
            bit=fine_length(allowed["drilling_tolerance"]),
        ),
        say(
            "At the worst both screws are off in opposite directions, each by mark, bit and rounding together; a "
            "hole wider "
            "than its {screw} screw by twice that takes both.",
            screw=fine_length(allowed["screw_diameter"]),
        ),
        say(
            "The fronts are invented. Dowels are {size} thick; clearances are counted along the glue line, where "
            "all of these "
            "lie; a dowel counts as its square.",
            size=length(DOWEL_M),
        ),
        "Rip and drill with guards on and work held down; check what lies under the bit before it turns.",
    )
