"""Study: where a board lay in the log decides how it cups; how five of them are laid decides what the panel does."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from ..moisture.rates import readiness_limit
from ..moisture.readiness import saw_kerf_m
from ..movement.shape import wedge_map
from ..movement.wood import wood_of
from ..species import find_species
from ..study import Answer, Choice, Reading, Span, study
from ..units.exact import INCH_M
from ..words.decided import Decided, Pick, Sliding, level, pick, reached, size_of
from ..words.say import Said, fine_length, length, movement, say, small_length
from .laying_pictures import BOARD_TIMES, BOARDS, PANEL_TIMES, THICKNESS_M, Laid, laying_picture

WOODS = ("white oak", "black walnut", "black cherry", "eastern white pine")
WIDTHS = ("3", "4", "6", "8")  # in
MOST_DRIED = 6.0  # % MC
JOINTER_M, WANTED_M = 6 * INCH_M, 15 / 16 * INCH_M
_FLAT, _KERF = readiness_limit("flat_within_m"), saw_kerf_m()
_CLEANUP = readiness_limit("cleanup_per_face_m")


@study(
    "laying-boards",
    "Where did the board lie in the log, what shape does it take, and how are five of them best laid?",
    [
        Choice("species", "Wood", WOODS, "white oak"),
        Span("pith_below", "Pith below the board", "length", 3.5 * INCH_M, 8 * INCH_M, INCH_M / 4, 4 * INCH_M),
        Span("pith_aside", "Pith to one side of its middle", "length", 0.0, 3 * INCH_M, INCH_M / 4, 0.0),
        Choice(
            "width", "Width of the board", {name: f"{name} in ({25.4 * float(name):.0f} mm)" for name in WIDTHS}, "8"
        ),
        Span("dries", "Dries by (below 0: takes up)", "moisture", -4.0, MOST_DRIED, 0.5, 4.0),
    ],
)
def laying_boards(species: str, pith_below: float, pith_aside: float, width: str, dries: float) -> Answer:
    """Cup and lean of one board, and the panel of five laid both ways."""
    width_m, strains = float(width) * INCH_M, _strains(species, dries)
    # Each taken up and dried by as much as the slider goes.
    up, down = (
        board_shape(pith_below, pith_aside, width_m, *_strains(species, most)) for most in (-MOST_DRIED, MOST_DRIED)
    )
    gap, lean = (_dried(*ends, dries) for ends in zip(up, down, strict=True))
    # Shallow arcs go with the square of the width; in turn, one arc goes up and the next goes down.
    one, same, turned = size_of(gap), size_of(gap * float(BOARDS**2)), size_of(gap * 2.0)
    readings = (
        Reading("Cup of one board", small_length(one), _hollow(gap)),
        Reading(
            "Its edge leans, over its thickness",
            small_length(size_of(lean)),
            pick(size_of(lean), [_FLAT / 2, _FLAT], _LEAN),
        ),
        Reading(
            "Panel, all bark sides up",
            say("out of flat by {size}", size=movement(same)),
            pick(same, [2 * _FLAT, 8 * _FLAT], _SAME),
            pick(same, [2 * _FLAT, 8 * _FLAT], ["fine", "watch", "stop"]),
        ),
        Reading(
            "Panel, laid in turn",
            say("out of flat by {size}", size=small_length(turned)),
            pick(turned, [_FLAT, 4 * _FLAT], _TURNED),
            pick(turned, [_FLAT, 4 * _FLAT], ["fine", "watch", "stop"]),
        ),
        _flattened(one, width_m),
    )
    headline = say(
        "One board cups by {one}. Five laid the same way make one arc of {same}; laid in turn, a ripple of {turned}.",
        one=small_length(one),
        same=movement(same),
        turned=small_length(turned),
    )
    picture = laying_picture(Laid(pith_below, pith_aside, width_m, *strains, gap))
    return Answer(picture, headline, readings, _told(pith_below, pith_aside, width_m, dries), _fine_print(species))


_LEAN = ("its end stays square", "its end is hardly out of square", "its end is out of square, drawn to a diamond")
_SAME = (
    "flat, as far as a long straightedge tells",
    "one even bow that a few battens or a frame pull flat",
    "one big bow: held by a frame it pulls at its fastenings all the time; free it is seen",
)
_TURNED = (
    "not to be felt",
    "to be felt by hand, seen in raking light; no fastening pulls it out",
    "a washboard: narrower boards or rings more upright would help",
)


@lru_cache
def _shrinkages(species: str) -> tuple[float, float]:
    wood = wood_of(species)
    saturation = wood.fibre_saturation_percent
    return wood.radial_shrinkage / saturation, wood.tangential_shrinkage / saturation


def _strains(species: str, dries: float) -> tuple[float, float]:
    radial, tangential = _shrinkages(species)
    return -radial * dries, -tangential * dries


def _dried(up: Sliding, down: Sliding, dries: Sliding) -> Decided:
    """A shape at any drying, in proportion from the two ends: true to half a percent; a page has a slider less."""
    return Decided("*", dries, 1.0 / MOST_DRIED) * (0.5 * (down - up))


def board_shape(
    pith_below_m: Sliding, pith_aside_m: Sliding, width_m: float, radial_strain: float, tangential_strain: float
) -> tuple[Sliding, Sliding]:
    """Cup of the bark side and lean over the thickness of a board anywhere in the log; both in m, exact.

    Cup: gap under a straightedge from edge to edge at the middle of the bark side, above zero where that side is
    hollow. Lean: how far the upper end of a line through the thickness has gone sideways, against the width.

    >>> cup, lean = board_shape(0.1, 0.0, 0.2, -0.0100, -0.0215)
    >>> round(1000 * float(cup), 2), round(1000 * abs(float(lean)), 2)
    (0.83, 0.0)
    """
    half, up = 0.5 * width_m, 0.5 * THICKNESS_M
    across = pith_aside_m + np.array([-half, 0.0, half, -half, half, 0.0, 0.0])
    depth = pith_below_m + np.array([up, up, up, 0.0, 0.0, -up, up])
    points = np.column_stack(wedge_map(across, depth, radial_strain, tangential_strain))
    left, middle, right, west, east, low, high = points
    edge, sag, along = right - left, middle - left, east - west
    cup = (edge[1] * sag[0] - edge[0] * sag[1]) / np.hypot(*edge)
    return cup, along @ (high - low) / np.hypot(*along)


def _hollow(cup: Decided) -> Pick:
    words = (
        "hollow on the pith side: it has swollen",
        "flat, as far as a straightedge tells",
        "hollow on the bark side: it has shrunk",
    )
    return pick(cup, [-_FLAT, _FLAT], words)


def _flattened(cup: Decided, width: float) -> Reading:
    """Thickness left whole, and the fewest strips that fit the jointer and keep the thickness."""
    whole, halves = (THICKNESS_M - 2 * _CLEANUP - cup * _part(width, strips) ** 2 for strips in (1, 2))
    # 1 strip where it fits and keeps the thickness, else 2 where those keep it, else none of both.
    one = Decided("*", reached(JOINTER_M, width), reached(whole, WANTED_M))
    place = (1.0 - one) * (2.0 - reached(halves, WANTED_M))
    words = (
        say("flatten it whole: it fits a jointer of {jointer}", jointer=length(JOINTER_M)),
        say(
            "rip it in two first: then it fits a jointer of {jointer} and keeps {thick}",
            jointer=length(JOINTER_M),
            thick=length(halves, "down"),
        ),
        say("even ripped in two it does not keep {wanted}: take thicker stock", wanted=length(WANTED_M)),
    )
    return Reading(
        "Left of 1 in (25 mm), flattened whole",
        length(whole, "down"),
        pick(place, [0.5, 1.5], words),
        pick(level(place, [0.5, 1.5]), [0.5, 1.5], ["fine", "watch", "stop"]),
    )


def _part(width: float, strips: int) -> float:
    return (width - (strips - 1) * _KERF) / (strips * width)


def _told(pith_below: float, pith_aside: float, width: float, dries: float) -> Said:
    return say(
        "A log with the rings about its pith and a board in it, {width} wide, {below} above the pith and {aside} to "
        "the side. Beside it the end of that board, dashed as it was and in full as it is, moved "
        f"{BOARD_TIMES} times too far: its upper face, the bark side, is {{hollow}}. Below, five such boards glued "
        f"edge to edge, once with all bark sides up, once in turn, cup drawn {PANEL_TIMES} times too large: one "
        "arc, and a ripple.",
        width=length(width),
        below=length(pith_below),
        aside=length(pith_aside),
        hollow=pick(dries, [-0.25, 0.25], ["crowned", "flat", "hollow"]),
    )


@lru_cache
def _fine_print(species: str) -> tuple[str | Said, ...]:
    wood = find_species(species)
    shrinkage = {way: wood.require(f"{way}_shrinkage_percent") for way in ("radial", "tangential")}
    return (
        *(
            f"{wood.name}, {way}: {value.number:.1f} % from green to oven-dry ({value.status}: {value.source})."
            for way, value in shrinkage.items()
        ),
        "Shrinkage is spread evenly over the moistures from green to oven-dry (Wood Handbook FPL-GTR-190, ch. 13, from "
        "memory).",
        "Shape: rings stay circles about the pith when wood of even moisture dries; own derivation, exact for "
        "straight, free boards. Numbers between the ends of the last slider in proportion, within half a percent.",
        say(
            "Panel: each strip bends to the arc of its own cup, joints flush. The piece needs {wanted}; jointer "
            "{jointer}, kerf {kerf}, {clean} "
            "off each face, and {flat} as flat: common practice, no source.",
            wanted=length(WANTED_M),
            jointer=length(JOINTER_M),
            kerf=length(_KERF),
            clean=fine_length(_CLEANUP),
            flat=fine_length(_FLAT),
        ),
        "Boards differ and are seldom straight: twist and bow come on top. Rip a cupped board crown up, so that it "
        "cannot rock, and never freehand (common practice, no source).",
    )
