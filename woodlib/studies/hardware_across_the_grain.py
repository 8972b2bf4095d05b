"""How long a slot must be when metal on fixed centres is screwed across the grain."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import numpy as np

from ..air.sorption import sorption_percent
from ..movement.spread import USUAL_DOUBTS, strain_range
from ..movement.wood import Wood, width_strain, wood_of
from ..picture.scene import Circle, Line, Mark, Picture, Words, dimension_line
from ..picture.wood import panel_face
from ..restraint.fasteners import FITTING_ALLOWANCE_M
from ..restraint.measures import STRAIN_WORDS, strain_edges
from ..species import find_species
from ..study import Answer, Choice, Reading, Span, study
from ..words.decided import Decided, Sliding, in_sight, larger, level, pick
from ..words.say import Said, fine_length, length, moisture, movement, say, strain
from .crossing_numbers import DAMPEST_RH, DRIEST_RH, INCH_M, RINGS_DEG, ROOM_C

WOODS = ("white oak", "red oak", "black walnut", "black cherry", "sugar maple", "white ash")
FIXED = {"end": "tight at one end", "middle": "tight in the middle"}
MM = 0.001

WIDTH_PX, HEIGHT_PX = 720.0, 452.0
TIMES = 5  # movement is drawn this many times too large
_PX_PER_M = 900.0
_LEFT, _MIDDLE, _WOOD_PX = 12.0, 360.0, 696.0
_BEYOND = {"end": (24.0, 84.0), "middle": (54.0, 54.0)}  # of metal beyond the outer screws, px
_ROWS = ((128.0, "dampest month", "damp"), (236.0, "the day it is fitted", "today"), (344.0, "driest month", "dry"))


@study(
    key="hardware-across-the-grain",
    question="A metal strip or pull is screwed across the grain. How long must its slots be?",
    inputs=[
        Choice("species", "Wood", WOODS, "white oak"),
        Choice("fixed", "The metal is", FIXED, "end"),
        Choice("rings", "Boards", tuple(RINGS_DEG), "flatsawn"),
        Span("centres", "Distance between the outer screws", "fine_length", 64 * MM, 512 * MM, 32 * MM, 128 * MM),
        Span("shank", "Thickness of the screw", "fine_length", 3 * MM, 6 * MM, 0.5 * MM, 4 * MM),
        Span("driest", "Air in the driest month", "humidity", *DRIEST_RH, 1, 25),
        Span("dampest", "Air in the dampest month", "humidity", *DAMPEST_RH, 1, 62),
    ],
    more=("rings", "shank"),
)
def hardware_across_the_grain(
    species: str, fixed: str, rings: str, centres: float, shank: float, driest: float, dampest: float
) -> Answer:
    """Slots for metal fitted halfway between the driest and the dampest moisture of the wood."""
    wood = _wood(species)
    dry, damp = (in_sight(sorption_percent(ROOM_C, humidity)) for humidity in (driest, dampest))
    fitted = 0.5 * (dry + damp)
    angle = np.radians(RINGS_DEG[rings])
    (_, swelling, most), (least, shrinkage, _) = (_range(wood, angle, fitted, then) for then in (damp, dry))
    distance = in_sight(centres * (0.5 if fixed == "middle" else 1.0))  # a page multiplies by it itself
    outward, inward = most * distance, least * distance * -1.0
    slot = outward + inward + (shank + FITTING_ALLOWANCE_M)
    held = width_strain(wood, angle, 0.0, damp, dry) * -1.0
    likely = (swelling - shrinkage) * distance
    step = level(held, strain_edges())
    where = "the far screw" if fixed == "end" else "each outer screw"
    readings = (
        Reading(
            "Slot, at least",
            length(slot, "up"),
            say(f"the screw, the travel both ways and {{a}} to fit it; at {where}", a=fine_length(FITTING_ALLOWANCE_M)),
        ),
        Reading(
            "The wood slides past the metal",
            say(
                "{about}{mid} over the year, could be up to {high}",
                about=pick(likely, [INCH_M / 64], ["", "about "]),
                mid=_small(likely),
                high=_small(outward + inward),
            ),
            say(
                "from {damp} in the dampest month to {dry} in the driest; fitted at {now}",
                damp=moisture(damp),
                dry=moisture(dry),
                now=moisture(fitted),
            ),
        ),
        Reading(
            "From the screw's middle",
            say("{out} outward, {inw} inward", out=_small(outward), inw=_small(inward)),
            "away from the tight screw as the wood swells, towards it as it shrinks",
        ),
        Reading(
            "A round hole instead",
            length(larger(outward, inward) * 2.0 + shank, "up"),
            "across, under a washer, with the screw in its middle on the day it is fitted",
        ),
        Reading(
            "All screws tight",
            strain(held),
            say(
                "is what the metal would hold back over the year: the wood {what}",
                what=pick(step, [1.0, 2.0], STRAIN_WORDS),
            ),
            pick(step, [1.0, 2.0], ["fine", "watch", "stop"]),
        ),
    )
    picture = _picture(fixed, centres, shank, distance, outward, inward, (swelling, 0.0, shrinkage), slot)
    headline = say("Slot the holes {slot} long and keep one screw tight.", slot=length(slot, "up"))
    return Answer(picture, headline, readings, _told(fixed, centres, slot), _fine_print(species))


@lru_cache
def _wood(species: str) -> Wood:
    return wood_of(species)


def _range(wood: Wood, ring_angle_rad: float, fitted: Sliding, then: Sliding) -> tuple[Decided, Decided, Decided]:
    """Strain across the width from the day of fitting, lowest, best guess and highest; both ends doubted on their own."""
    doubt = USUAL_DOUBTS.air_percent
    return strain_range(wood, ring_angle_rad, 0.0, fitted, then, from_percent=doubt, to_percent=doubt)


def _small(size: Any) -> Any:
    least = INCH_M / 64
    return pick(size, [least], [say("less than {least}", least=fine_length(least)), movement(size)])


def _picture(fixed, centres, shank, distance, outward, inward, strains, slot) -> Picture:
    """The strip at three times of the year; the wood and its screws move, the metal does not."""
    half = centres / 2.0 * _PX_PER_M
    tight = _MIDDLE - half if fixed == "end" else _MIDDLE
    outer = (_MIDDLE + half,) if fixed == "end" else (_MIDDLE - half, _MIDDLE + half)
    play = (shank + FITTING_ALLOWANCE_M) * 0.5 * _PX_PER_M
    beyond = _BEYOND[fixed]
    marks: list[Mark] = [
        Words(12, 24, "The wood carries the screws; the metal keeps its length", "ink", 16, "start", bold=True),
        Words(12, 46, "violet: tight", "today", 14, "start"),
        Words(142, 46, "black: slides", "ink", 14, "start"),
        Words(708, 46, "the grain runs up the sheet", "quiet", 14, "end"),
    ]
    for (y, name, role), free in zip(_ROWS, strains, strict=True):
        marks += [
            *panel_face(_LEFT, y - 34, _WOOD_PX, 68, 5, along="y"),
            Words(_LEFT, y - 42, name, role, 15, "start", bold=True),
            Line([(_MIDDLE - half - beyond[0], y), (_MIDDLE + half + beyond[1], y)], "metal", 30.0),
        ]
        for place in outer:
            away = TIMES * _PX_PER_M if place > tight else -TIMES * _PX_PER_M
            ends = [(place + away * travel, y) for travel in (outward, inward * -1.0)]
            marks += [
                Line(ends, "edge", 2 * play + 3.5),
                Line(ends, "gap", 2 * play),
                _screw(place + away * distance * free, y, shank),
            ]
        marks.append(_screw(tight, y, shank, tight=True))
    marks += [
        *dimension_line(
            (_MIDDLE - half, 394.0),
            (_MIDDLE + half, 394.0),
            say("{c} between the outer screws", c=fine_length(centres)),
            "ink",
            8.0,
            14,
        ),
        Words(
            12,
            442,
            say(f"Slot {{s}} long. Movement drawn {TIMES} times too large.", s=length(slot, "up")),
            "ink",
            15,
            "start",
            bold=True,
        ),
    ]
    return Picture("A metal strip across the grain through the year", WIDTH_PX, HEIGHT_PX, tuple(marks))


def _screw(x: Any, y: float, shank: float, tight: bool = False) -> Circle:
    return Circle(x, y, shank * 0.5 * _PX_PER_M + 1.5, "today" if tight else "ink", filled=True)


def _told(fixed: str, centres: float, slot: Decided) -> Said:
    return say(
        f"A metal strip on screws {{centres}} apart, across the grain of a panel, {FIXED[fixed]}; three times one "
        f"below the other: "
        "in the dampest month the sliding screw stands at the outer end of its slot, on the day of fitting near its "
        "middle, in "
        f"the driest month at its inner end. The slot is {{slot}} long. Movement is drawn {TIMES} times too large.",
        centres=fine_length(centres),
        slot=length(slot, "up"),
    )


@lru_cache
def _fine_print(name: str) -> tuple[str | Said, ...]:
    wood = _wood(name)
    doubts = (
        " ".join(f"{text[0].upper()}{text[1:]}.".replace("..", ".") for text in wood.remarks)
        or "Nothing doubtful is known of this wood's row."
    )
    source = find_species(name).require("tangential_coefficient_per_percent").source
    return (
        "Slot = screw + travel outward + travel inward + fitting; the travel is the distance from the tight screw "
        "times the free strain, at the careful end of a range that holds nine boards in ten. Rounded up.",
        "Fitted halfway between the two moistures; fitted drier or damper, shift the slot, not its length.",
        say(
            "{a} for fitting: common practice, no source. Screw heads and washers must cover the slot.",
            a=fine_length(FITTING_ALLOWANCE_M),
        ),
        f"Movement: {source}; 6 to 14 % MC by coefficient (Wood Handbook FPL-GTR-190, Eq. 13-2), outside by total "
        f"shrinkage.",
        "All screws tight: the metal is taken as stiff; a screw that crushes its hole gives some of it back. Edges "
        "0.40 % and 0.90 %: The Structural Conservation of Panel Paintings (Getty 1998).",
        doubts,
    )
