"""How far a panel moves across its width between the driest and the dampest month of a house."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import numpy as np

from ..air.sorption import sorption_percent
from ..movement.spread import USUAL_DOUBTS, strain_range
from ..movement.wood import Wood, wood_of
from ..species import Species, find_species
from ..study import Answer, Choice, Reading, Span, study
from ..tables import number
from ..units.exact import INCH_M
from ..words.decided import Decided, Pick, Sliding, in_sight, larger, now, pick
from ..words.say import Said, angle, count, fine_length, length, moisture, movement, percent, say, temperature
from .panel_year import BOARD_THICKNESS_M, MONTHS, PITH_DISTANCE_M, TIMES, YearOfPanel, year_picture

WOODS = (
    "white oak",
    "red oak",
    "black walnut",
    "black cherry",
    "sugar maple",
    "white ash",
    "American beech",
    "yellow-poplar",
    "eastern white pine",
)
STRIPS = {"4": "4 boards", "8": "8 narrow strips"}
ROOM_TEMPERATURE_C = 21.0
FOOT_M = 12 * INCH_M
SAW_KERF_M = number("shop practice", "saw_kerf").middle
RULE_PER_FOOT_M = INCH_M / 8  # a rule of the shop; common practice, no source

_DAMP = 0.5 - 0.5 * np.cos(2 * np.pi * (MONTHS - 0.5) / 12.0)  # 0 in mid January, 1 in mid July
_STATUS = {
    "printed": "seen in print",
    "confirmed": "from memory, and agrees with print",
    "quoted": "quoted by others",
    "recalled": "from memory, not seen in print",
    "derived": "worked out from its shrinkage",
    "estimated": "estimated",
    "own": "your own",
}


@study(
    key="panel-movement",
    question="How far does a panel move across its width over a year?",
    inputs=[
        Choice("species", "Wood", WOODS, "white oak"),
        Span("width", "Width across the grain", "length", 6 * INCH_M, 36 * INCH_M, INCH_M, 20 * INCH_M),
        Span("driest", "Air in the driest month", "humidity", 15, 50, 1, 30),
        Span("dampest", "Air in the dampest month", "humidity", 50, 80, 1, 60),
        Span("ring_angle", "Rings: 0° flat, 90° quarter", "angle", 0, 90, 1, 0),
        Choice("strips", "Glued up from", STRIPS, "4"),
    ],
    more=("strips",),
)
def panel_movement(species: str, width: float, driest: float, dampest: float, ring_angle: float, strips: str) -> Answer:
    """The panel's movement from the driest to the dampest month, with its range."""
    wood = _wood(species)
    dry, damp = (sorption_percent(ROOM_TEMPERATURE_C, humidity) for humidity in (driest, dampest))
    angle_rad, decided = np.radians(ring_angle), (in_sight(dry), in_sight(damp))
    lowest, across, highest = _range(wood, angle_rad, *decided)
    along, radial, tangential = wood.axis_strains(*decided)
    # The width comes last, as a step that a page repeats: so a table holds strains, whatever the width.
    mid, low, high = across * width, larger(lowest, 0.0) * width, highest * width
    per_foot = across * FOOT_M
    flat = np.cos(angle_rad) ** 2
    thickness = radial * (BOARD_THICKNESS_M * flat) + tangential * (BOARD_THICKNESS_M * (1.0 - flat))
    year_of_moisture = say("{dry} in the driest month, {damp} in the dampest", dry=moisture(dry), damp=moisture(damp))
    thin = say("of {thickness}: the same law, but little wood to move", thickness=length(BOARD_THICKNESS_M))
    readings = (
        Reading("Movement", _range_text(mid, low, high), _compared(mid)),
        Reading("Each foot (300 mm)", movement(per_foot), _against_rule(per_foot)),
        Reading("Moisture", year_of_moisture, _moisture_words(damp - dry)),
        Reading("In the thickness", _small(thickness), thin),
        Reading("Along the grain", _small(along * width), "over the same distance: wood hardly moves along its length"),
        Reading(
            f"Each of {strips} boards",
            _small(mid / int(strips)),
            "together as far as the panel, however many there are",
        ),
    )
    year = YearOfPanel(
        width,
        int(strips),
        ring_angle,
        now(radial),
        now(tangential),
        *_year(wood, driest, dampest, ring_angle),
        movement(mid),
    )
    headline = say(
        "A panel of {wood}, {width} wide, moves about {mid} across its width over this year.",
        wood=species,
        width=length(width),
        mid=movement(mid),
    )
    return Answer(year_picture(year), headline, readings, _told(ring_angle, mid, low, high), _fine_print(species))


@lru_cache
def _wood(species: str) -> Wood:
    return wood_of(species)


def _range(wood: Wood, ring_angle_rad: Sliding, dry: Sliding, damp: Sliding) -> tuple[Sliding, Sliding, Sliding]:
    """Strain between two moistures, lowest, best guess and highest; dry and damp air are doubted independently."""
    doubt = USUAL_DOUBTS.air_percent
    return strain_range(wood, ring_angle_rad, 0.0, dry, damp, from_percent=doubt, to_percent=doubt)


def _year(wood: Wood, driest: Sliding, dampest: Sliding, ring_angle: Sliding) -> tuple[Any, Any, Any]:
    """The strain from the driest month, and its margins below and above, at every place of the time scale.

    The doubt grows from none in the driest month, from which all is counted. Seams at 6 and 14 % MC bend a line of the
    picture by far less than a px.
    """
    moistures = sorption_percent(ROOM_TEMPERATURE_C, driest + (dampest - driest) * _DAMP)
    dry, doubt = sorption_percent(ROOM_TEMPERATURE_C, driest), np.maximum(_DAMP, 1e-3) * USUAL_DOUBTS.air_percent
    low, strain, high = strain_range(
        wood, np.radians(ring_angle), 0.0, dry, moistures, from_percent=doubt, to_percent=doubt
    )
    return strain, strain - low, high - strain


def _range_text(mid: Decided, low: Decided, high: Decided) -> Said:
    return say("about {mid}, could be {low} to {high}", mid=movement(mid), low=movement(low), high=movement(high))


def _small(size: Decided) -> Pick:
    """A length that may be too small to write as a fraction."""
    return pick(size, [INCH_M / 64], [say("less than {least}", least=fine_length(INCH_M / 64)), fine_length(size)])


def _compared(mid: Decided) -> Pick:
    kerfs = say("about {n} saw kerfs of {kerf} side by side", n=count(mid / SAW_KERF_M), kerf=length(SAW_KERF_M))
    options = (
        "no more than a sharp pencil line",
        say("less than a saw kerf of {kerf}", kerf=length(SAW_KERF_M)),
        say("about one saw kerf of {kerf}", kerf=length(SAW_KERF_M)),
        kerfs,
    )
    return pick(mid, [INCH_M / 32, 0.75 * SAW_KERF_M, 1.5 * SAW_KERF_M], options)


def _against_rule(per_foot: Decided) -> Pick:
    rule = length(RULE_PER_FOOT_M)
    options = tuple(
        say(f"{words} the shop's rule of {{rule}} a foot (common practice, no source)", rule=rule)
        for words in ("less than", "close to", "more than")
    )
    return pick(per_foot, [0.8 * RULE_PER_FOOT_M, 1.25 * RULE_PER_FOOT_M], options)


def _moisture_words(points: float) -> Said:
    return say(
        "the air moves the wood's moisture by {points} over the year, and the moisture moves the wood",
        points=moisture(points),
    )


def _told(ring_angle: float, mid: Decided, low: Decided, high: Decided) -> Said:
    return say(
        "Above, the end of one board with its rings at {angle}: its size in the driest month, and dashed in the dampest. "
        f"Below, the panel from above with time running down the sheet: its right edge moves out by {{mid}} from January "
        f"to July and back by December; a shaded band holds {{low}} to {{high}}. Movement is drawn {TIMES} times too large.",
        angle=angle(ring_angle),
        mid=movement(mid),
        low=movement(low),
        high=movement(high),
    )


@lru_cache
def _fine_print(name: str) -> tuple[str | Said, ...]:
    species = find_species(name)
    doubts = USUAL_DOUBTS
    return (
        *(_source(species, way) for way in ("tangential", "radial")),
        # One line for every wood, so that the pages of all woods have the same make-up.
        " ".join(species.doubts) or f"{species.name}: nothing doubtful is known about these two numbers.",
        "From 6 to 14 % MC the handbook's coefficient is used (Wood Handbook FPL-GTR-190, Eq. 13-2), outside it the "
        "total shrinkage (Eq. 13-3, number from memory).",
        say(
            "The range holds nine boards in ten: boards of one species differ (standard deviation {share} of the movement; "
            "Wood Handbook ch. 4, from memory), the ring angle may be off by {angle}, and the wood may settle {points} "
            "above or below the table in dry and in damp air (from memory).",
            share=percent(100.0 * doubts.species_share),
            angle=angle(doubts.ring_angle_deg),
            points=moisture(doubts.air_percent),
        ),
        say(
            "The wood is taken to follow the air of each month in full, at {room} all year; a thick or well finished panel "
            "moves less. The year is one wave, driest in January, dampest in July; south of the equator read it six "
            "months later.",
            room=temperature(ROOM_TEMPERATURE_C),
        ),
        say(
            "The rings are drawn about a pith {pith} from the middle of a board {board} wide; the numbers take the "
            "ring angle as the average over the panel.",
            pith=length(PITH_DISTANCE_M),
            board=length(5 * INCH_M),
        ),
    )


def _source(species: Species, way: str) -> str:
    value = species.require(f"{way}_coefficient_per_percent")
    return (
        f"{species.name}, {way}: {100 * value.number:.3f} % of the size for each point of moisture "
        f"({_STATUS[value.status]}: {value.source})."
    )
