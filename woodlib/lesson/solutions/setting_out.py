"""Setting out: predictions and exercises on where a dowel may sit, and on holes."""

from __future__ import annotations

from fractions import Fraction

from ...setting_out.holes import hole_fit, hole_pair, markings
from ...setting_out.joints import joint_row
from ...setting_out.later_cuts import LaterCut
from ...setting_out.practice import ShopPractice
from . import exercise, prediction

_INCH_M, _EXACT_INCH = 0.0254, Fraction(254, 10000)
_DOWEL_M = Fraction(3, 8) * Fraction(254, 10000)


@prediction(
    "setting-out/metric-on-inches",
    "Two holes belong 128 mm apart. You mark them both ways from the middle, to the nearest sixteenth of an inch. How far "
    "off is their distance?",
    kind="fine_length",
    close="0.3 mm",
)
def metric_on_inches() -> tuple[float, str]:
    """The pair's distance, marked to sixteenths."""
    marked = markings(hole_pair("34 in", "128 mm", name="pull"), "1/16 in")[1]
    return float(marked.centres_error_m), "Half a millimetre on each side, and both the same way: inward."


@prediction(
    "setting-out/even-spacing",
    "Six dowels stand evenly from 2 in to 42 in along a blank of 44 in (1118 mm). The saw parts it at 34 in (864 mm) later. How many of the "
    "dowels are in its way?",
    options=("None: dowels are small", "One", "Three"),
)
def even_spacing() -> tuple[str, str]:
    """The row against the saw cut."""
    places = [f"{2 + 8 * k} in" for k in range(6)]
    row = joint_row(
        "44 in",
        [LaterCut("saw cut", 34 * _EXACT_INCH, (34 + Fraction(1, 8)) * _EXACT_INCH)],
        positions=places,
        keep_mirrored=False,
    )
    hit = sum("is cut into" in said for said in row.says)
    options = even_spacing.question.options
    return options[
        min(hit, 2)
    ], "Even spacing puts number 5 at 34 in, where the saw comes through. Nobody sees it until then."


@exercise(
    "setting-out/last-dowel",
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
    "setting-out/hole-for-a-pull",
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


@exercise(
    "setting-out/which-first",
    "You have the blank of the two fronts, glued and flat. What do you mark first?",
    options=("The holes of the pull", "The cut between the fronts", "It does not matter"),
    misses={
        "The holes of the pull": "Marked first, they sit in the middle of a front that does not exist yet; the saw takes its kerf from one side.",
        "It does not matter": "The pull belongs in the middle of its front, and only the cut says where that front ends.",
    },
    why="What is cut off sets the edges; metal is marked last, from edges that will stay.",
    way="Ask which of the two can be put right later.",
)
def which_first() -> str:
    """Half a kerf is lost to a pull that is marked before the cut."""
    lost = 0.5 * float(ShopPractice().saw_kerf_m)
    options = which_first.question.options
    return options[1] if lost > 0 else options[2]
