"""A thin flat panel, whole in the groove of a frame: no tongue is cut, and no line opens beside it."""

from __future__ import annotations

from dataclasses import replace

from ..picture.scene import Mark, corners
from ..words.decided import larger
from . import frame_panel
from .drawn import Drawn, end_wood, hollow, label, sized
from .frame import ORDER, plan
from .joint_drawing import CENTRE, LEFT, RIGHT
from .piece import Allowances, Piece
from .rules import CutRule, fixed, travel, up
from .steps import SQUARE_EDGE, SQUARE_ENDS, Step
from .travel import Quantities, thickness_travel


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """As any panel in a frame, but its whole thickness goes into the groove."""
    thick = piece.thickness_m
    framed = frame_panel.numbers(travels, piece, allowances)
    return framed | {"panel": thick} | thickness_travel(travels, piece, "tongue", thick)


def kept(rules: tuple[CutRule, ...], *left_out: str) -> tuple[CutRule, ...]:
    """The rules but some, by key."""
    return tuple(rule for rule in rules if rule.key not in left_out)


GROOVE_WIDTH = up(
    "groove_width",
    "groove, width",
    (fixed("panel"), fixed("fit"), travel("tongue_widening")),
    "the panel as thick as it is, and play to slide in the dampest month; tenons of the same cutter",
    fine=True,
)

EDGE_PLAY = up(
    "edge_play",
    "play of the panel's edge across its groove today",
    (fixed("fit"), travel("tongue_widening")),
    "in the dampest month the thicker edge must still slide",
    chain=((1, "groove_width"), (-1, "panel")),
)

DRAWN_OUT = up(
    "drawn_out",
    "strip of each edge that leaves its groove by the driest month",
    (travel("panel_shrink", 0.5),),
    "finish the panel before assembly, or the strip shows bare",
    fine=True,
)


FLAT_EXPECT = (
    "A little more of the panel's edge shows in {month}, along the frame only; nothing is wrong then. "
    "The whole piece becomes wider and narrower by {outside} over the year, because the two long sides of its frame"
    " do; {room} is left free beside it."
)


def joint(d: Drawn) -> list[Mark]:
    """The panel's edge in the groove of the frame."""
    px, shrink = d.px, d.numbers["panel_shrink"]
    depth = d.sizes["stile_groove_depth"]
    deep = d.numbers["cover"] + 0.5 * larger(shrink, 0.0) + d.either(-0.5 * shrink, 0.5 * d.numbers["panel_growth"])
    face, mid = CENTRE - 20.0, 160.0
    frame, half = 0.5 * px(d.piece["border_thickness"]), 0.5 * px(d.piece["thickness"])
    groove = half + 0.5 * px(d.sizes["edge_play"])
    return [
        *end_wood(corners(face, mid - frame, face + px(d.piece["border_width"]), mid + frame), "border-wood"),
        *hollow(corners(face, mid - groove, face + px(depth), mid + groove)),
        *end_wood(corners(LEFT, mid - half, face + px(deep), mid + half), "wood"),
        *sized((face, mid - frame - 8.0), (face + px(depth), mid - frame - 8.0), depth),
        label(LEFT + 6.0, mid - half - 8.0, "panel"),
        label(RIGHT, mid + frame + 20.0, "frame", "end"),
        label(LEFT, 300.0, "in the groove:"),
        *sized((face, 318.0), (face + px(deep), 318.0), deep, "down", offset=8.0),
    ]


WAY = replace(
    frame_panel.WAY,
    key="flat_panel",
    name="frame with a thin flat panel",
    short="flat panel",
    built_as="a frame with a thin, loose panel flat in its grooves",
    means="The panel lies loose in its frame and can grow and shrink there.",
    kinds=("door panel", "frame", "lid"),
    usual=False,
    profile="flat",
    numbers=numbers,
    cuts=tuple(
        {"groove_width": GROOVE_WIDTH, "edge_play": EDGE_PLAY}.get(rule.key, rule)
        for rule in kept(frame_panel.RULES, "tongue_thickness", "edge_shoulder", "end_shoulder", "line_today")
    ),
    states=(DRAWN_OUT, *kept(frame_panel.STATES, "line_change", "line_driest", "line_dampest")),
    opens=None,
    order=(
        *ORDER[:3],
        Step("finish the panel, edges and all", [SQUARE_EDGE, SQUARE_ENDS], ["finished panel"]),
        *ORDER[5:],
    ),
    plan=plan,
    joint=joint,
    shows="A thin panel in a frame that hardly moves outside. Below, its edge moves in and out of the groove.",
    main_cuts=("stile_groove_depth", "panel_width", "groove_width"),
    reasons=(
        "The border becomes a frame that moves little, and the panel grows and shrinks inside its grooves; no line "
        "opens, and up to {drawn_out} more of each edge shows in the driest month.",
    ),
    steps=(
        *frame_panel.WAY.steps[:3],
        "Plough grooves and tenons to the panel, not the panel to the cutter: it slides by hand and does not fall.",
        frame_panel.WAY.steps[4],
        "Finish the panel before assembly, edges too, so that no bare strip shows in the driest month.",
    ),
    change="A panel in line with its frame, or one thicker than its groove can be, would ask for a tongue on its edges.",
    expect=FLAT_EXPECT,
)
