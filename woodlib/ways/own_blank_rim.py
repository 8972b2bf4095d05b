"""A rim all round whose end pieces are cut from the panel's own blank, so that their grain runs with the panel."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from ..picture.scene import Line, Mark, corners
from .drawn import Drawn, label, sized, wood
from .end_pieces import across_end, end_lines, end_places, end_section
from .given import Given
from .joint_drawing import CENTRE, LEFT
from .made import JointGlue, JointLine, MadePiece, Section, Sum, WoodPart
from .making import ALONG, made
from .piece import Allowances, Piece
from .rules import INCH_M, NoteRule, down, fixed, travel, up
from .steps import SQUARE_ENDS, TOGETHER, Step
from .travel import Quantities, at_fixing
from .way import Limit, Way

REACH_SHARE = 0.5  # of the rim's width that a loose tongue goes into; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Blank and rim move as one: the whole width, and the travel of each outer edge, careful end."""
    return {
        **at_fixing(travels, "edge", 0.5 * travels["width"]),
        "whole_width": travels["width"],
        "clearance": allowances.slot_clearance_m,
        "cover": allowances.edge_cover_m,
        "rim_width": piece.border_width_m,
        "tongue_reach": min(allowances.edge_cover_m, REACH_SHARE * piece.border_width_m),
        "rim_thickness": piece.border_thickness_m,
        "woods_differ": float(piece.border_wood is not piece.wood),
    }


RULES = (
    up(
        "end_piece_width",
        "end pieces, width along the grain",
        (fixed("rim_width"),),
        "crosscut from both ends of the blank, next to the end each one goes to",
    ),
    up(
        "end_piece_length",
        "end pieces, length across the grain",
        (fixed("whole_width"),),
        "as wide as the whole blank today; trimmed flush after gluing",
    ),
    down(
        "loose_tongue_length",
        "loose tongue in each end joint, length across the panel",
        (fixed("whole_width"), fixed("cover", -2.0)),
        "stopped short of both edges so that it stays hidden",
    ),
    down(
        "loose_tongue_thickness",
        "loose tongue in each end joint, thickness",
        (fixed("rim_thickness", 1 / 3),),
        "a third of the rim",
    ),
    down(
        "loose_tongue_reach",
        "loose tongue in each end joint, reach into each side",
        (fixed("tongue_reach"),),
        "half the rim's width at most, so that wood is left beyond it",
        fine=True,
    ),
    up(
        "loose_tongue_slot_depth",
        "slots for the loose tongue, depth on each side",
        (fixed("tongue_reach"), fixed("clearance", 0.5)),
        "a little deeper than the tongue reaches, for glue, so that the joint closes",
        fine=True,
    ),
    up(
        "space_beside",
        "space to leave beside each long edge",
        (fixed("clearance"), travel("edge_widening")),
        "in the dampest month the whole width grows and must not meet a wall or frame",
    ),
)


STATES = (
    up(
        "space_driest",
        "space beside each long edge in the driest month",
        (fixed("clearance"), travel("edge_widening"), travel("edge_narrowing")),
        "the edge has drawn in",
        chain=((1, "space_beside"),),
        moves=(travel("edge_narrowing"),),
    ),
)


def make(given: Given) -> MadePiece:
    """A panel and its end pieces, cut one after the other from the panel's own blank."""
    between = given.between(given.length)
    panel = WoodPart("panel", 1, between, given.width, given.thickness, "panel")
    ends = WoodPart("end piece", 2, given.border, given.width, given.thickness, note="from the panel's own blank")
    border = given.border.exact_m
    whole = Sum(ALONG, ((2, "end piece", border), (1, "panel", between.exact_m)), given.length.exact_m)
    tongue = given.cut("loose_tongue_length")
    reach = given.cut("loose_tongue_reach")
    slot = given.cut("loose_tongue_slot_depth")
    thin = given.cut("loose_tongue_thickness")
    key = WoodPart(
        "loose tongue",
        2,
        replace(reach, exact_m=2 * reach.exact_m),
        tongue,
        thin,
        "offcut",
        note=("from offcuts, side by side where none is as wide; its grain along the panel's"),
    )
    through = Sum("loose tongue", ((2, "reach into each side", reach.exact_m),), 2 * reach.exact_m)
    remarks = [
        f"Slots for the loose tongues are {given.written(slot.exact_m)} deep on each side, in the middle of the thickness."
    ]
    if given.border_thickness.exact_m != given.thickness.exact_m:
        remarks.append("End pieces from the panel's own blank are as thick as the panel, not as the brief's border.")
    glue = JointGlue(
        "end piece to panel, end grain, with a loose tongue",
        2,
        given.width.exact_m,
        given.thickness.exact_m,
        given.clamps(given.width.exact_m),
    )
    return made(
        given,
        (panel, ends, key),
        (whole, through),
        end_places(given, grain="along"),
        [*end_section(given, end=False), *_loose_tongues(given, reach.exact_m, thin.exact_m)],
        lines=_slotted_lines(given, slot.exact_m),
        glue=(glue,),
        section_runs="along",
        own_ends_m=border,
        remarks=tuple(remarks),
    )


def _loose_tongues(given: Given, reach: Fraction, thick: Fraction) -> tuple[Section, ...]:
    """The loose tongue in both end joints, in the middle of the thickness."""
    border, depth = given.border.exact_m, given.thickness.exact_m
    span = (depth - thick) / 2, (depth + thick) / 2
    return tuple(
        Section("loose tongue", (at - reach, at + reach), span, False) for at in (border, given.length.exact_m - border)
    )


def _slotted_lines(given: Given, deep: Fraction) -> tuple[JointLine, ...]:
    """Both end joints with what their slots take up on each side."""
    return tuple(
        replace(line, low_m=line.at_m - deep, high_m=line.at_m + deep) for line in end_lines(given, Fraction(0), False)
    )


def plan(d: Drawn) -> list[Mark]:
    """An end piece whose grain runs with the panel's."""
    return across_end(d, alike=True)


def joint(d: Drawn) -> list[Mark]:
    """Along the grain: end piece against the panel with a loose tongue across the joint, grain running through."""
    px, mid = d.px, 180.0
    half = 0.5 * px(d.piece["border_thickness"])
    tongue = 0.5 * px(d.sizes["loose_tongue_thickness"])
    joint = CENTRE + 10.0
    width = d.sizes["end_piece_width"]
    end = joint + px(width)
    return [
        *wood(corners(LEFT, mid - half, joint, mid + half)),
        *wood(corners(joint, mid - half, end, mid + half), "border-wood"),
        *wood(corners(joint - 2.2 * tongue, mid - tongue, joint + 2.2 * tongue, mid + tongue), "wood", count=2),
        Line([(joint, mid - half), (joint, mid + half)], "glue", 3.0),
        label(LEFT + 6.0, mid - half - 8.0, "panel"),
        label(end, mid - half - 8.0, "end piece", "end"),
        *sized((joint, mid + half + 18.0), (end, mid + half + 18.0), width, offset=8.0),
        label(LEFT, 320.0, "the grain runs through"),
    ]


WAY = Way(
    key="own_blank_rim",
    name="border cut from the panel's own blank",
    short="own-blank border",
    built_as="a panel with end pieces cut from its own blank",
    means="The end pieces run the same way as the panel, so that all of it moves together.",
    also=("rim with end pieces from the panel's own blank",),
    kinds=("table top", "seat", "lid", "board"),
    wants_border=True,
    keeps_border=True,
    all_round=True,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(("space_driest",), 0.5 * INCH_M, "the space beside it gets wider than {limit}"),
    make=make,
    order=(
        Step(
            "slot the panel's ends and the end pieces for loose tongues",
            [SQUARE_ENDS, "end pieces"],
            ["tongue slots"],
        ),
        Step(
            "glue each end piece back at its own end",
            ["tongue slots", "end numbers"],
            [TOGETHER],
            ["end numbers"],
        ),
    ),
    plan=plan,
    joint=joint,
    shows="A panel with an end piece whose grain runs with its own: both narrow and widen together. Below, the joint"
    " from the side, with a loose tongue across it.",
    main_cuts=("loose_tongue_length", "space_beside"),
    driest="panel and rim shrink together, each edge by {edge_narrowing}, and nothing is held",
    dampest="panel and rim grow together, each edge by {edge_widening}, and nothing is held",
    reasons=("The end pieces come off the same blank with their grain along the panel's, so all of it moves alike.",),
    steps=(
        "Glue up one blank for panel and rim, long enough for both end pieces, their kerfs and the trim.",
        "Number the end pieces before the crosscut, and glue each back at its own end, face up, boards in line.",
        "On the face glue them flat, grain beside grain: such a joint is as strong as the wood.",
        "In line with the panel the joint is end grain to end grain and weak: put in a loose tongue.",
        "Let the tongue's own grain cross the joint, along the panel's; a tongue with its grain along the joint holds "
        "the panel like a glued border.",
        "Seal the end grain twice, so that the short pieces keep pace with the panel.",
    ),
    remarks=(
        "an end piece has short grain: it snaps in the hand until it is glued, and must not be used as a handle",
        "nothing keeps the panel flat; add battens where that matters",
    ),
    notes=(
        NoteRule(
            (fixed("woods_differ"),),
            "border and panel are named as different woods; end pieces from the panel's own blank are the panel's wood",
        ),
    ),
    change="A panel that has to be kept flat by its border would ask for a breadboard end or a frame.",
    cautions=(
        "End pieces are short and short-grained: no jointer, no planer; plane them by hand or glue them on first.",
    ),
    watch="inside the panel, or between panel and end piece,",
)
