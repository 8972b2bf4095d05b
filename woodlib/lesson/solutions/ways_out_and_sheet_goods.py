"""Ways out and sheet goods: predictions and exercises on limits of width, and on what glue does."""

from __future__ import annotations

from ...moisture.equilibrium import emc_percent
from ...studies.ways_out_numbers import bearing
from ...tables import number
from ...units import both
from . import exercise, prediction

_INCH_M = 0.0254
_SHEET_M = 40 * _INCH_M
_DRIEST_RH, _DAMPEST_RH = 33.0, 54.0  # the air that the seat's wood feels


def _widest(species: str, ring_angle_deg: float = 0.0) -> float:
    return float(bearing(species, ring_angle_deg).at(_DRIEST_RH, _DAMPEST_RH).widest("breadboard"))


@prediction(
    "ways-out-and-sheet-goods/gives-out-first",
    "The seat gets wider and wider. Which of these stops being sensible first?",
    options=("A frame with a floating panel", "Battens below, on slots", "A plain panel set in an opening"),
)
def gives_out_first() -> tuple[str, str]:
    """The widest seat that each bears."""
    oak = bearing("white oak", 0.0).at(_DRIEST_RH, _DAMPEST_RH)
    ways = dict(zip(gives_out_first.question.options, ("frame_panel", "battens", "inset_panel"), strict=True))
    widest = {name: float(oak.widest(way)) for name, way in ways.items()}
    first = min(widest, key=lambda name: widest[name])
    return first, (
        f"All of its movement shows in one gap: it bears {both(widest[first], rounding='down')}. The other two bear more than "
        "twice as much."
    )


@prediction(
    "ways-out-and-sheet-goods/how-wide-a-breadboard",
    "With a breadboard end the seat steps out or in at each corner over the year. Up to what width of seat does that step "
    "stay within 1/4 in (6.5 mm)?",
    kind="length",
    close="3 in",
)
def how_wide_a_breadboard() -> tuple[float, str]:
    """Where the careful step of one corner meets its limit."""
    return _widest("white oak"), "Each corner sees half of the movement, at its careful end."


@exercise(
    "ways-out-and-sheet-goods/widest-breadboard",
    "The wood feels the same air (33 % to 54 %), but it is flatsawn American beech. A step of up to 1/4 in (6.5 mm) at each corner "
    "is allowed. Beech moves 0.431 % of its width for a point, white oak 0.365 %. White oak bears 40-7/8 in (1038 mm). Up to what width "
    "does a breadboard end stay sensible in beech?",
    kind="length",
    tolerance=0.6 * _INCH_M,
    misses={
        _widest("white oak"): "That is white oak; beech moves more, so the step is used up sooner.",
        0.5 * _widest("American beech"): "The step is at each corner: both edges share the movement, half for each.",
        _widest("white oak") * 0.431 / 0.365: "Beech moves more, so the width gets smaller, not larger.",
    },
    why="Step and width grow together, so whatever moves a fifth further may be a sixth narrower.",
    way="40-7/8 in times 0.365 over 0.431.",
)
def widest_breadboard() -> float:
    """Where the careful step of one corner meets its limit."""
    return _widest("American beech")


@exercise(
    "ways-out-and-sheet-goods/narrow-glue",
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


def _sheet_growth_m(points: float) -> float:
    return number("allowances", "sheet_coefficient").middle * points * _SHEET_M


@exercise(
    "ways-out-and-sheet-goods/sheet-growth",
    "A sheet of fibreboard, 40 in (1016 mm) long, goes from air of 50 % to air of 80 % humidity, in which it grows by about 0.34 %. "
    "How much longer does it get?",
    kind="fine_length",
    tolerance=_INCH_M / 64,
    misses={
        0.0: "A sheet moves little, not nothing.",
        0.025 * _SHEET_M: "That is flatsawn oak across its grain. A sheet moves about a tenth as far.",
    },
    why="An eighth of an inch over the whole length: a sheet in a tight recess can still buckle.",
    way="0.34 % of 40 in.",
)
def sheet_growth() -> float:
    """The kit's sheet between the two airs."""
    return _sheet_growth_m(float(emc_percent(21.0, 80.0) - emc_percent(21.0, 50.0)))
