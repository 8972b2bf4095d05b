"""A part fitted into an opening: a drawer's front or side, a door or a lid."""

from __future__ import annotations

from dataclasses import replace

from ..picture.scene import Line, Mark, corners
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, Drawn, end_wood, wood
from .given import Given
from .joint_drawing import beside
from .made import MadePiece, Place, Section, Size, Sum, WoodPart
from .making import ZERO, made
from .plan_drawing import sheet_box
from .rules import CutRule, down, fixed, travel, up


def front_rules(part: str) -> tuple[CutRule, CutRule]:
    """Height of a front or a side in its opening, and the gap that is left above it today."""
    return (
        down(
            "height",
            f"drawer {part}, height",
            (fixed("opening"), fixed("least", -1.0), travel("gap_growth", -1.0)),
            "in the dampest month it must still clear the rail above",
            fine=True,
        ),
        up(
            "gap_today",
            f"gap above the {part} today",
            (fixed("least"), travel("gap_growth")),
            "all of the movement shows at the top, because the drawer stands on its runners",
            chain=((1, "opening"), (-1, "height")),
        ),
    )


def front_states(part: str) -> tuple[CutRule, CutRule]:
    """The gap above in the driest and in the dampest month."""
    return (
        up(
            "gap_driest",
            f"gap above the {part} in the driest month",
            (fixed("least"), travel("gap_growth"), travel("gap_shrink")),
            "it is at its lowest",
            chain=((1, "gap_today"),),
            moves=(travel("gap_shrink"),),
        ),
        down(
            "gap_dampest",
            f"gap above the {part} in the dampest month",
            (fixed("least"),),
            "it still clears",
            chain=((1, "gap_today"),),
            moves=(travel("gap_growth", -1.0),),
        ),
    )


def fitted(given: Given, name: str, length: Size, width: Size, sums: tuple[Sum, ...], *remarks: str) -> MadePiece:
    """A part alone, as large as it is cut."""
    part = WoodPart(name, 1, length, width, given.thickness, "panel")
    size = length.exact_m, width.exact_m, given.thickness.exact_m
    return replace(
        made(
            given,
            (part,),
            sums,
            (Place(name, (ZERO, size[0]), (ZERO, size[1])),),
            (Section(name, (ZERO, size[1]), (ZERO, size[2])),),
            remarks=remarks,
        ),
        size_m=size,
    )


def plan(d: Drawn) -> list[Mark]:
    """A part in its opening, standing on its lower or hinged edge; the gap at the other is drawn as much larger."""
    opening = d.piece["width"] * d.scale.plan_px
    top, low = MIDDLE - 0.5 * opening, MIDDLE + 0.5 * opening
    today = low - opening + d.sizes["gap_today"] * (d.scale.plan_px * d.scale.times)
    edge = today - d.width_change * d.scale.plan_px * d.scale.times
    return [
        *end_wood(corners(PLAN_LEFT, top - 14.0, PLAN_RIGHT, top), from_above=True),
        *end_wood(corners(PLAN_LEFT, low, PLAN_RIGHT, low + 14.0), from_above=True),
        *wood(corners(PLAN_LEFT, edge, PLAN_RIGHT, low), count=7, within=sheet_box()),
        Line([(PLAN_LEFT, today), (PLAN_RIGHT, today)], "today", 1.4, "5 4"),
    ]


def joint(d: Drawn, part: str, neighbour: str) -> list[Mark]:
    """The free edge, and what it must clear."""
    gap = d.sizes["gap_today"] - d.either(-d.numbers["gap_shrink"], d.numbers["gap_growth"])
    return beside(d, part, neighbour, gap)
