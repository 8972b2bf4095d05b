"""A stable sheet with solid edging."""

from __future__ import annotations

from ..picture.scene import Line, Mark, corners
from .drawn import Drawn, end_wood, label, sized
from .frame import plan
from .given import Given
from .joint_drawing import CENTRE, LEFT
from .made import MadePiece
from .making import ZERO
from .rules import INCH_M, NoteRule, fixed, travel, up
from .stable_sheet import DUST, FLUSH, ORDER, SHEET, SPACE, edged, numbers
from .steps import TOGETHER, Step
from .way import Limit, Way

RULES = (
    *SHEET,
    up("edging_width", "edging, width", (fixed("edging"),), "planed flush with the faces after gluing"),
    SPACE,
)


STATES = (
    up(
        "step_driest",
        "edging below the sheet in the driest month",
        (travel("step_narrowing"),),
        "both faces together",
        fine=True,
    ),
    up(
        "step_dampest",
        "edging above the sheet in the dampest month",
        (travel("step_widening"),),
        "both faces together",
        fine=True,
    ),
    up(
        "mitre_driest",
        "mitre of the edging open in the driest month, if no glue held it",
        (travel("mitre_narrowing"),),
        "at the inside corner",
        fine=True,
    ),
    up(
        "mitre_dampest",
        "mitre of the edging open in the dampest month, if no glue held it",
        (travel("mitre_widening"),),
        "at the outside corner",
        fine=True,
    ),
)


def _mitre(name: str) -> NoteRule:
    return NoteRule(
        (travel(name), fixed("visible", -1.0)),
        "edging this wide would open its mitres visibly; make it narrower, or butt the corners",
    )


def make(given: Given) -> MadePiece:
    """A sheet with solid edging."""
    return edged(given, ZERO)


def joint(d: Drawn) -> list[Mark]:
    """The edge of a sheet with its solid edging, whose own thickness and width still move."""
    px, mid = d.px, 180.0
    half = 0.5 * px(d.piece["thickness"])
    joint = CENTRE
    end = joint + px(d.piece["border_width"] + d.moved("edging"))
    proud, width = 0.5 * px(d.moved("step")), d.piece["border_width"] + d.moved("edging")
    return [
        *end_wood(corners(LEFT, mid - half, joint, mid + half), "grid"),
        *end_wood(corners(joint, mid - half - proud, end, mid + half + proud), "border-wood"),
        Line([(joint, mid - half), (joint, mid + half)], "glue", 3.0),
        label(LEFT + 6.0, mid - half - 8.0, "stable sheet"),
        label(end, mid - half - 12.0, "edging", "end"),
        *sized((joint, mid + half + 24.0), (end, mid + half + 24.0), width, "nearest", offset=8.0),
    ]


WAY = Way(
    key="edged_sheet",
    name="stable sheet with solid edging",
    short="sheet, solid edging",
    built_as="a stable sheet with solid edging",
    means="Its middle is a made board that hardly moves, such as plywood; strips of solid wood run around it.",
    also=("sheet with solid edging",),
    kinds=("table top", "seat", "shelf", "lid", "door panel", "drawer front"),
    still_outside=True,
    mitred=True,
    keeps_border=True,
    all_round=True,
    keeps_flat=True,
    solid=False,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    part="sheet",
    stopped_by=Limit(("space_beside",), 0.25 * INCH_M, "the space beside it gets wider than {limit}"),
    make=make,
    order=(*ORDER, Step(FLUSH, ["edged sheet"], [TOGETHER])),
    plan=plan,
    joint=joint,
    shows="A sheet that hardly moves, with solid wood around it. Below, edging and sheet from the side.",
    main_cuts=("sheet_width", "space_beside"),
    driest="the sheet hardly moves; the edging draws in by {edging_narrowing} and sinks a hair",
    dampest="the sheet hardly moves; the edging grows out by {edging_widening} and stands a hair proud",
    reasons=("The sheet moves a small part as far as solid wood, so edging can be glued along all four sides.",),
    steps=(
        "Let the grain of the edging run along each edge; glue it with a loose tongue or a plain long-grain joint.",
        "Veneer after the edging is on and flush, or leave a small chamfer at the joint: its line will be felt.",
        "Keep the edging narrow: its own width moves like any solid wood.",
    ),
    notes=(_mitre("mitre_narrowing"), _mitre("mitre_widening")),
    change="A client who wants solid wood through and through would ask for a frame, or for a breadboard end.",
    cautions=(DUST,),
)
