"""Exercises of the lesson on ways out and setting out: limits of width, what glue does, "
"where a dowel may sit, holes."""

from __future__ import annotations

from fractions import Fraction

from ...setting_out.holes import hole_fit, hole_pair, markings
from ...setting_out.practice import ShopPractice
from ...studies.ways_out_numbers import bearing
from . import exercise

_INCH_M = 0.0254
_DRIEST_RH, _DAMPEST_RH = 25.0, 62.0
_DOWEL_M = Fraction(3, 8) * Fraction(254, 10000)


def _widest(species: str, ring_angle_deg: float = 0.0) -> float:
    return float(bearing(species, ring_angle_deg).at(_DRIEST_RH, _DAMPEST_RH).widest("breadboard"))


@exercise(
    "ways-out-and-setting-out/widest-breadboard",
    "The same house (25 % to 62 %), flatsawn black cherry. A step of up to 1/4 in (6 mm) at "
    "each corner is allowed. Up to "
    "what width does a breadboard end stay sensible?",
    kind="length",
    tolerance=0.5 * _INCH_M,
    misses={
        _widest("white oak"): "That is white oak; cherry moves less, so a wider piece gets by with the same step.",
        0.5 * _widest("black cherry"): "The step is at each corner: both edges share the movement, half for each.",
        _widest("black cherry", 90.0): "That is quartersawn cherry; flatsawn it moves nearly twice as far.",
    },
    why="Step and width grow together, so whatever moves two thirds as far may be half as wide again.",
    way="Set the wood to cherry, leave the rest, and read how far the bar of the breadboard end runs.",
)
def widest_breadboard() -> float:
    """Where the careful step of one corner meets its limit."""
    return _widest("black cherry")


@exercise(
    "ways-out-and-setting-out/narrow-glue",
    "The client likes the glued border and offers a seat 10 in (254 mm) wide instead of 20 "
    "in (508 mm). What does that do to "
    "the strain that the glue holds back?",
    options=("It halves it", "It hardly changes it", "It takes it away"),
    misses={
        "It halves it": "The movement halves, but so does the width that has to take it: the strain is movement "
        "for each "
        "inch of width.",
        "It takes it away": "Each inch of wood still wants to shrink, and the border still will not let it.",
    },
    why="A slot gets shorter with the width; a strain does not. Narrower stock saves a way that "
    "slides, not one that is "
    "glued.",
    way="Slide the width from end to end and read the first two rows.",
)
def narrow_glue() -> str:
    """Strain held back at 10 and at 20 inches."""
    sliding = bearing("white oak", 0.0)
    narrow, wide = (
        float(sliding.at(_DRIEST_RH, _DAMPEST_RH).judged("glued_border", width * _INCH_M).most)
        for width in (10.0, 20.0)
    )
    options = narrow_glue.question.options
    return options[1] if narrow > 0.8 * wide else options[0] if narrow > 0.2 * wide else options[2]


@exercise(
    "ways-out-and-setting-out/last-dowel",
    "A front is to be cut off at 32 in (813 mm). Dowels are 3/8 in (9.5 mm) thick, and 1/4 "
    "in (6.4 mm) of sound wood is to "
    "stay between dowel and saw. How far from the left end may the middle of the last dowel be?",
    kind="length",
    tolerance=_INCH_M / 40,
    misses={
        31.75 * _INCH_M: "That is where the dowel may end; its middle lies half its thickness before that.",
        31.8125 * _INCH_M: "That just clears the saw; the margin has to stay as well.",
        31.375 * _INCH_M: "That takes off a whole dowel; from its middle only half of it reaches towards the saw.",
    },
    why="Margin plus half the dowel, counted back from where the saw begins. A row is set out "
    "before the cut, so this is "
    "where it is cheap to think.",
    way="32 in less 1/4 in less half of 3/8 in.",
)
def last_dowel() -> float:
    """The cut less the margin less half a dowel."""
    return float(Fraction(32) * Fraction(254, 10000) - ShopPractice().dowel_margin_m - _DOWEL_M / 2)


def _hole(rule: str) -> float:
    rounding = markings(hole_pair("12 in", "96 mm"), rule)[1].misfit_m
    return float(hole_fit("4 mm", rounding_error=rounding).needs_m)


@exercise(
    "ways-out-and-setting-out/hole-for-a-pull",
    "A pull with holes 96 mm apart is marked with a rule of sixteenths, both ways from the "
    "middle: 1-7/8 in instead of 48 mm, "
    "0.375 mm short on each side. Mark and bit may each be off by 1/64 in (0.4 mm). What "
    "hole lets a 4 mm screw in at the "
    "worst?",
    kind="fine_length",
    tolerance=0.00015,
    misses={
        _hole("0.5 mm"): "That is the hole for exact marks; here the rounding of each mark comes on top.",
        0.5 * (_hole("1/16 in") + 0.004): "The screw may be off to either side, so what it may be off counts twice.",
        0.00475: "That covers the rounding alone; mark and bit wander too.",
    },
    why="0.375 mm of rounding costs twice that in the hole. A metric rule costs nothing.",
    way="Add the three errors, twice, to 4 mm.",
)
def hole_for_a_pull() -> float:
    """The screw and twice all that may go wrong."""
    return _hole("1/16 in")
