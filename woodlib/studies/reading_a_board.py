"""Study: the rings at the end of a board say what it will do as a panel, as a rail and as a leg."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..movement.wood import wood_of
from ..picture.scene import Area, Circle, Line, Mark, Picture, Window, Words
from ..picture.wood import end_outline, moved_end, pith_direction
from ..study import Answer, Choice, Reading, Span, study
from ..units.exact import INCH_M
from ..words.decided import in_sight, pick, size_of
from ..words.say import Said, length, moisture, movement, say, small_length

WOODS = {name: name for name in ("white oak", "black walnut", "black cherry", "American beech", "eastern white pine")}
PANEL_M, RAIL_M, LEG_M = 20 * INCH_M, 2.5 * INCH_M, 3 * INCH_M
PITH_M = 5 * INCH_M  # from the middle of each end, in the drawing
TIMES = 8
_FELT_M = INCH_M / 64  # an edge out of square by less is not felt; common practice, no source

_PX_PER_M = 48.0 / INCH_M
_RINGS_M = INCH_M * np.arange(1.5, 8.6, 0.25)
# What is drawn: name, middle of the end in px, width and thickness.
_ENDS = (
    ("a board of a panel", (136.0, 132.0), 5 * INCH_M, INCH_M),
    ("a rail", (396.0, 132.0), RAIL_M, INCH_M),
    ("a leg", (604.0, 132.0), LEG_M, LEG_M),
)


@study(
    "reading-a-board",
    "What do the rings at the end of a board say about the panel, the rail or the leg that it becomes?",
    [
        Choice("wood", "Wood", WOODS, "white oak"),
        Span("rings", "Rings: 0° along the width, 90° upright", "angle", 0, 90, 1, 0),
        Span("dries", "Dries by", "moisture", 1.0, 6.0, 0.5, 4.0),
    ],
)
def reading_a_board(wood: str, rings: float, dries: float) -> Answer:
    """Size across and squareness of three parts of one board, in proportion to the points of moisture."""
    oak, angle = wood_of(wood), np.radians(rings)
    radial, tangential = oak.radial_coefficient * dries, oak.tangential_coefficient * dries
    across = radial + (tangential - radial) * np.cos(angle) ** 2
    slant = (tangential - radial) * np.sin(2.0 * angle) * LEG_M
    turned = in_sight(rings)
    panel, rail, lean = in_sight(across * PANEL_M), in_sight(across * RAIL_M), size_of(in_sight(slant))
    readings = (
        Reading(
            "As a panel",
            say("{wide} of it shrink by {size}", wide=length(PANEL_M), size=movement(panel)),
            pick(turned, _CUTS_DEG, _PANEL),
            pick(turned, _CUTS_DEG, ["watch", "watch", "fine"]),
        ),
        Reading(
            "As a rail",
            say("{wide} shrink by {size}", wide=length(RAIL_M), size=small_length(rail)),
            "little wood moves little, whichever way its rings lie: look for straight grain along it instead",
        ),
        Reading(
            "As a leg",
            say("{wide} square, its corners go out of square by {size}", wide=length(LEG_M), size=small_length(lean)),
            pick(lean, [_FELT_M / 2, _FELT_M], _LEG),
            pick(lean, [_FELT_M / 2, _FELT_M], ["fine", "watch", "watch"]),
        ),
    )
    headline = say(
        "The panel shrinks by {size}; the leg goes out of square by {lean}.",
        size=movement(panel),
        lean=small_length(lean),
    )
    return Answer(_picture(rings, radial, tangential), headline, readings, _told(dries), _fine_print(wood))


_CUTS_DEG = (30.0, 60.0)
_PANEL = (
    "the liveliest panel: flatsawn stock, which shows the widest figure",
    "between the two: riftsawn stock",
    "the calmest panel: quartersawn stock",
)
_LEG = (
    "it stays square, but two of its faces look unlike the other two",
    "hardly to be felt",
    "a diamond, but all four faces look alike: leave it to rest before the last cut",
)


def _picture(rings: float, radial: Any, tangential: Any) -> Picture:
    marks: list[Mark] = [
        Words(14, 20, f"Three ends from one plank, dried: drawn {TIMES} times too far", "ink", 15, "start", bold=True)
    ]
    for name, middle, width, thickness in _ENDS:
        marks += _end(middle, width * _PX_PER_M, thickness * _PX_PER_M, rings, -TIMES * radial, -TIMES * tangential)
        marks.append(Words(middle[0], 232, name, "ink", 15))
    marks.append(Words(14, 262, "dashed: as it was planed", "quiet", 14, "start"))
    return Picture("The ends of a panel board, a rail and a leg", 720, 274, tuple(marks))


def _end(
    middle: tuple[float, float], width: float, thick: float, rings: float, radial: Any, tangential: Any
) -> list[Mark]:
    distance = PITH_M * _PX_PER_M
    before = end_outline(middle[0] - 0.5 * width, middle[1] - 0.5 * thick, width, thick)
    after = moved_end(before, middle, rings, distance, radial, tangential)
    across, down = pith_direction(rings)
    x, y = (start + part * ((1.0 + radial) * distance) for start, part in zip(middle, (across, down), strict=True))
    lines = [
        Circle(x, y, (radial + 1.0) * float(radius * _PX_PER_M), "late-wood", 1.6 if k % 2 else 0.8)
        for k, radius in enumerate(_RINGS_M)
    ]
    return [
        Area(after, "wood-end"),
        Window(after, tuple(lines)),
        Line(np.concatenate([after, after[:1]]), "edge", 1.8),
        Line(np.concatenate([before, before[:1]]), "ghost", 1.6, "5 4"),
    ]


def _told(dries: float) -> Said:
    return say(
        "The ends of a wide board, a rail and a square leg, with their rings; dashed as they were planed, in full after "
        f"drying by {{dries}}, drawn {TIMES} times too far.",
        dries=moisture(dries),
    )


def _fine_print(wood: str) -> tuple[str | Said, ...]:
    oak = wood_of(wood)
    return (
        f"{wood}: {100 * oak.tangential_coefficient:.3f} % along the rings and {100 * oak.radial_coefficient:.3f} % across "
        "them for each point of moisture (Wood Handbook FPL-GTR-190, chapter 13).",
        say("The rings are drawn {pith} from the pith; the numbers take their angle as even.", pith=length(PITH_M)),
        say(
            "Out of square by more than {felt} is felt with a try square: common practice, no source.",
            felt=length(_FELT_M),
        ),
        "One board differs from the average by a quarter either way; a test piece says more.",
    )
