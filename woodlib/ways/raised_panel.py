"""A raised panel in a frame: a field within bevelled edges, whose flat tongues slide in the grooves."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from ..picture.scene import Line, Mark, box, corners
from ..words.decided import larger
from . import frame_panel
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, Drawn, end_wood, hollow, label, sized
from .flat_panel import DRAWN_OUT, FLAT_EXPECT, kept
from .frame import plan as frame_plan
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import MadePiece, Place
from .piece import Allowances, Piece
from .plan_drawing import sizes_px
from .rules import CutRule, down, fixed, up
from .travel import Quantities


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """As any panel in a frame; its field is in line with the frame, or as much below it as the panel is thinner."""
    framed = frame_panel.numbers(travels, piece, allowances)
    tongue = framed["cutter"] - framed["fit"]
    above = min(0.5 * (piece.border_thickness_m - tongue), piece.thickness_m - tongue)
    return framed | {
        "bevel": allowances.panel_bevel_m,
        "field_step": allowances.field_step_m,
        "above": above,
        "behind": piece.thickness_m - tongue - above,
    }


LEAST_FIELD_M = Fraction(1, 20)  # a narrower field is not drawn: such a panel is refused
RAIL_GROOVE = next(rule.terms for rule in frame_panel.RULES if rule.key == "rail_groove_depth")


def _said(rule: CutRule) -> CutRule:
    """The shoulders of a flush panel are here the flats of its tongues, without a shoulder in front."""
    flats = {
        "edge_shoulder": (
            "flat of the tongue on the long edges, width",
            "as wide as the groove is deep: the bevel begins where the panel is never drawn in, so it cannot wedge",
        ),
        "end_shoulder": (
            "flat of the tongue on the ends, width",
            "as wide as the rails' groove is deep; the bevel begins behind it",
        ),
    }
    label, why = flats.get(rule.key, (rule.label, rule.why))
    if rule.key == "end_shoulder":
        rule = replace(rule, terms=RAIL_GROOVE, chain=((1, "rail_groove_depth"),))
    return replace(rule, label=label, why=why)


BEVELS = (
    up("bevel_width", "bevel, from the flat to the field", (fixed("bevel"),), "what frames the field"),
    down(
        "bevel_depth",
        "bevel, depth at the flat below the field",
        (fixed("above"),),
        "the wood in front of the tongue; the field comes in line with the frame where the panel is thick enough",
        fine=True,
    ),
    down(
        "field_step",
        "step from the bevel up to the field",
        (fixed("field_step"),),
        "a clean line round the field",
        fine=True,
    ),
)


def make(given: Given) -> MadePiece:
    """As a flush panel, its edges bevelled up to a field."""
    piece = frame_panel.make(given)
    bevel, step = given.cut("bevel_width").exact_m, given.cut("field_step").exact_m
    panel = next(part for part in piece.section if part.part == "panel")
    tongue = next(part for part in piece.section if part.part == "tongue")
    deep = tongue.depth[0] - panel.depth[0]
    section = tuple(
        replace(part, bevel=(bevel, min(step, deep), deep)) if part is panel and deep > 0 else part
        for part in piece.section
    )
    ends = next(line for line in piece.lines if line.name == "left end of the panel").high_m
    long, wide, _ = piece.size_m
    field = Place(
        "field", (ends + bevel, long - ends - bevel), (panel.spread[0] + bevel, wide - panel.spread[0] - bevel)
    )
    whole = min(span[1] - span[0] for span in (field.along, field.across)) > LEAST_FIELD_M
    named = tuple(
        replace(part, note="with its tongues and bevels") if part.role == "panel" else part for part in piece.parts
    )
    return replace(piece, parts=named, section=section, places=(*piece.places, *((field,) if whole else ())))


def plan(d: Drawn) -> list[Mark]:
    """A frame, and the line round the field."""
    whole, _, border = sizes_px(d)
    inset = d.numbers["bevel"] * d.scale.plan_px
    end, tall = PLAN_RIGHT - border - inset, whole - 2.0 * (border + inset)
    outline = box(PLAN_LEFT, MIDDLE - 0.5 * tall, end - PLAN_LEFT, tall)
    return [*frame_plan(d), Line(outline, "edge", 1.4)]


def joint(d: Drawn) -> list[Mark]:
    """The tongue in the groove of the frame, and the bevel up to the field."""
    px, shrink, sizes = d.px, d.numbers["panel_shrink"], d.sizes
    moved = d.either(-0.5 * shrink, 0.5 * d.numbers["panel_growth"])
    deep = d.numbers["cover"] + 0.5 * larger(shrink, 0.0) + moved
    face, mid = CENTRE + 20.0, 160.0
    frame, groove = 0.5 * px(d.piece["border_thickness"]), 0.5 * px(d.numbers["cutter"])
    tongue = 0.5 * px(sizes["tongue_thickness"])
    tip = face + px(deep)
    flat = tip - px(sizes["edge_shoulder"])
    field, front = flat - px(sizes["bevel_width"]), mid - tongue - px(sizes["bevel_depth"])
    low = mid + tongue + px(d.numbers["behind"])
    panel = [
        (LEFT, front),
        (field, front),
        (field, front + px(sizes["field_step"])),
        (flat, mid - tongue),
        (tip, mid - tongue),
        (tip, mid + tongue),
        (flat, mid + tongue),
        (flat, low),
        (LEFT, low),
    ]
    return [
        *end_wood(corners(face, mid - frame, face + px(d.piece["border_width"]), mid + frame), "border-wood"),
        *hollow(corners(face, mid - groove, face + px(sizes["stile_groove_depth"]), mid + groove)),
        *end_wood(panel, "wood"),
        *sized(
            (face, mid - frame - 8.0),
            (face + px(sizes["stile_groove_depth"]), mid - frame - 8.0),
            sizes["stile_groove_depth"],
        ),
        label(LEFT + 6.0, mid - frame - 12.0, "field"),
        label(RIGHT, mid + frame + 20.0, "frame", "end"),
        label(LEFT, 300.0, "in the groove:"),
        *sized((face, 318.0), (tip, 318.0), deep, "down", offset=8.0),
    ]


WAY = replace(
    frame_panel.WAY,
    key="raised_panel",
    name="frame with a raised panel",
    short="raised panel",
    built_as="a frame with a loose, raised panel",
    kinds=("door panel", "frame", "lid"),
    usual=False,
    means="The panel, raised in its middle, lies loose in its frame and can grow and shrink there.",
    profile="raised",
    numbers=numbers,
    cuts=(*(_said(rule) for rule in kept(frame_panel.RULES, "line_today")), *BEVELS),
    states=(DRAWN_OUT, *kept(frame_panel.STATES, "line_change", "line_driest", "line_dampest")),
    opens=None,
    make=make,
    plan=plan,
    joint=joint,
    shows="A raised panel in a frame that hardly moves outside. Below, the flat of its edge moves in and out of the groove.",
    main_cuts=("stile_groove_depth", "panel_width", "rail_groove_depth"),
    reasons=(
        "The border becomes a frame that moves little, and the panel grows and shrinks inside its grooves; no line "
        "opens, but up to {drawn_out} more of each edge shows in the driest month.",
    ),
    steps=(
        *frame_panel.WAY.steps[:3],
        "Cut the flat of the tongue parallel, as wide as given: a bevel that runs on to the edge wedges the frame apart.",
        "What the panel is thicker than bevel and tongue comes off its back, in a rebate as wide as the flat.",
        "Cut the ends of the panel before its long edges, so that chips at the corners go with the second cut.",
        frame_panel.WAY.steps[4],
        "Finish the panel before assembly, flats too, so that no bare strip shows in the driest month.",
    ),
    change="A panel too thin for a bevel would lie flat in its groove; a face to write or eat on would ask for a flush one.",
    cautions=("Raising a panel takes much wood: several light passes, the panel held down, never freehand.",),
    expect=FLAT_EXPECT,
)
