"""The panel as a top, held down by buttons in a groove of the rails, or by screws through slots."""

from __future__ import annotations

from ..picture.scene import Mark, corners
from .drawn import Drawn, end_wood, hollow, label, shape, sized
from .joint_drawing import CENTRE, LEFT, RIGHT
from .on_a_base import from_fast_line, make, plan
from .piece import Allowances, Piece
from .rules import INCH_M, down, fixed, travel, up
from .travel import Quantities
from .way import Limit, Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of each edge and of the outer screws against a base that is fast on one line, careful end."""
    return {
        **from_fast_line(travels, piece, allowances),
        "screw": allowances.screw_diameter_m,
        "hold": allowances.button_hold_m,
    }


RULES = (
    up(
        "shoulder_gap",
        "gap between button shoulder and rail",
        (fixed("clearance"), travel("edge_widening")),
        "in the dampest month the button moves outward and must not push the rail",
    ),
    up(
        "tongue_length",
        "button tongue, length",
        (fixed("hold"), fixed("clearance"), travel("edge_narrowing"), travel("edge_widening")),
        "in the driest month it must still hold in the groove",
        chain=((1, "shoulder_gap"), (1, "hold")),
        moves=(travel("edge_narrowing"),),
    ),
    up(
        "groove_depth",
        "groove for the buttons, depth",
        (fixed("hold"), fixed("clearance"), travel("edge_narrowing"), travel("edge_widening")),
        "in the dampest month the tongue must not reach the bottom",
    ),
    up(
        "cross_rail_slot",
        "screw slots in the cross rails, length",
        (fixed("screw"), fixed("clearance"), travel("outer_narrowing"), travel("outer_widening")),
        "screw shank, plus the top's travel both ways, plus play",
    ),
)


IN_RAIL = (1, "tongue_length"), (-1, "shoulder_gap")  # how deep a button is in its groove today


def joint(d: Drawn) -> list[Mark]:
    """Across the rail: the top, a button screwed to it, its tongue in the rail's groove."""
    px, top = d.px, 66.0
    low = top + px(d.piece["thickness"])
    gap, tongue = d.sizes["shoulder_gap"], d.sizes["tongue_length"]
    depth, moved = d.sizes["groove_depth"], d.moved("edge")
    rail = CENTRE + 10.0
    shoulder = rail + px(moved - gap)
    tip = shoulder + px(tongue)
    return [
        *end_wood(corners(LEFT, top, RIGHT, low), "wood"),
        *end_wood(corners(rail, low, rail + px(d.piece["border_thickness"] * 1.2), 300.0)),
        *hollow(corners(rail, low + 40.0, rail + px(depth), low + 66.0)),
        *shape(
            [
                (LEFT + 40.0, low),
                (shoulder, low),
                (shoulder, low + 42.0),
                (tip, low + 42.0),
                (tip, low + 64.0),
                (shoulder, low + 64.0),
                (shoulder, low + 90.0),
                (LEFT + 40.0, low + 90.0),
            ]
        ),
        label(LEFT + 6.0, top + 18.0, "top"),
        label(LEFT + 50.0, low + 60.0, "button"),
        label(rail + 8.0, 292.0, "rail"),
        *sized((shoulder, low + 104.0), (rail, low + 104.0), gap - moved, "down", offset=8.0),
        label(LEFT, 320.0, "hold in the groove:"),
        *sized((rail, 334.0), (tip, 334.0), tongue - gap + moved, "down", offset=8.0),
    ]


WAY = Way(
    key="buttons",
    name="held to a base by buttons",
    short="buttons",
    built_as="a panel held to its base by buttons that let it slide",
    means="Small wooden catches hold it down from below and let it slide.",
    plural=True,
    also=("slotted screws", "buttons or slotted screws to a base"),
    kinds=("table top", "seat"),
    usual=True,
    on_a_base=True,
    numbers=numbers,
    cuts=RULES,
    states=(
        down(
            "hold_driest",
            "hold of a button in the driest month",
            (fixed("hold"),),
            "it draws back with the edge",
            chain=IN_RAIL,
            moves=(travel("edge_narrowing", -1.0),),
        ),
        down(
            "hold_dampest",
            "hold of a button in the dampest month",
            (fixed("hold"), travel("edge_narrowing"), travel("edge_widening")),
            "it moves outward with the edge",
            chain=IN_RAIL,
            moves=(travel("edge_widening"),),
        ),
    ),
    stopped_by=Limit(("tongue_length",), 0.875 * INCH_M, "a button's tongue longer than {limit} snaps"),
    make=make,
    plan=plan,
    joint=joint,
    shows="A panel on a base: the panel narrows and widens past it. Below, a button moves in and out of the groove "
    "in the rail.",
    main_cuts=("shoulder_gap", "groove_depth"),
    driest="each button draws back by {edge_narrowing} and still holds",
    dampest="each button moves outward by {edge_widening} and clears the rail",
    reasons=("The base holds the top down but not across its grain, so the top slides on the buttons.",),
    steps=(
        "Set the buttons along the long rails with the gap given; grain of a button runs along its tongue.",
        "Where a rail crosses the grain, screw through slots instead.",
        "Cut the slots across the grain of the top, not along it.",
    ),
    change="Rails too thin for a groove would ask for slotted blocks or figure-eight fasteners instead.",
)
