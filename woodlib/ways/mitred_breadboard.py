"""A breadboard end mitred into the panel's own edges: a border all round whose mitres open and close with the year."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

from ..picture.scene import Line, Mark
from ..words.decided import larger
from . import breadboard
from .drawn import MIDDLE, PLAN_RIGHT, Drawn, label, shape, sized
from .end_pieces import across_end, end_section
from .fixings_on_a_line import fixings_across
from .frame import frame_places
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import JointLine, MadePiece, Sum, WoodPart
from .making import ALONG, made
from .piece import Allowances, Piece
from .plan_drawing import sizes_px
from .rules import CutRule, fixed, travel, up
from .steps import SQUARE_EDGE, SQUARE_ENDS, Step
from .travel import Quantities, fixings, outermost_m
from .way import Limit, Opening


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """As a breadboard end, its tongue between the mitres; an edge that moves by t opens a mitre by t over the root of 2."""
    found, border = breadboard.numbers(travels, piece, allowances), piece.border_width_m
    kept = allowances.edge_cover_m + 1.5 * allowances.slot_clearance_m + allowances.least_wall_m + 0.5 * found["pin"]
    outer = larger(outermost_m(travels["width"], kept + border), 3.0 * found["pin"])
    moved = found | fixings(travels, allowances, outer)
    return moved | {
        "between": travels["width"] - 2.0 * border,
        "seen": allowances.visible_gap_m,
        **{f"mitre_{way}": moved[f"edge_{way}"] / sqrt(2.0) for way in ("narrowing", "widening")},
    }


def _between(rule: CutRule) -> CutRule:
    """The sizes of a breadboard's tongue and groove, which here lie between the mitres."""
    if rule.key == "tongue_width":
        return replace(
            rule,
            terms=(fixed("between"), *rule.terms[1:]),
            why="between the mitres; in the dampest month the tongue must not reach the ends of the stopped groove",
        )
    if rule.key == "groove_stop":
        return replace(rule, label="groove stop from the inner point of each mitre")
    return rule


RULES = (
    *(_between(rule) for rule in breadboard.RULES if not rule.key.startswith("halfway")),
    up(
        "mitre_today",
        "line to leave in each mitre today",
        (fixed("seen"), travel("mitre_narrowing")),
        "it closes as the panel shrinks; in the driest month the mitre must not press the end off",
        fine=True,
    ),
)
STATES = (
    up(
        "mitre_driest",
        "line in each mitre in the driest month",
        (fixed("seen"),),
        "it has just closed",
        chain=((1, "mitre_today"),),
        moves=(travel("mitre_narrowing", -1.0),),
    ),
    up(
        "mitre_dampest",
        "line in each mitre in the dampest month",
        (fixed("seen"), travel("mitre_narrowing"), travel("mitre_widening")),
        "the panel's edges have moved away from the end",
        chain=((1, "mitre_today"),),
        moves=(travel("mitre_widening"),),
    ),
    *breadboard.STATES,
)


def make(given: Given) -> MadePiece:
    """A panel whose edges run to the corners, cut back to a tongue between them, and two mitred end pieces."""
    tongue, groove = given.cut("tongue_length").exact_m, given.cut("groove_depth").exact_m
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    between = given.between(given.length).exact_m
    panel = WoodPart(
        "panel",
        1,
        given.length,
        given.width,
        given.thickness,
        "panel",
        ((long * wide - 2 * border * (wide - border)) / wide, wide),
        "its edges run to the corners and are mitred; between them it is cut back to the tongues",
    )
    end = WoodPart(
        "end piece",
        2,
        given.width,
        given.border,
        given.border_thickness,
        "strip",
        (wide - border, border),
        "length over its mitres",
    )
    depth, pin = given.cut("pin_from_shoulder").exact_m, given.cut("pin")
    pins = (
        *fixings_across(given, "left pin", "end piece", border - depth, pin, "tongue", ("outer",)),
        *fixings_across(given, "right pin", "end piece", long - border + depth, pin, "tongue", ("outer",)),
    )
    inner = border, wide - border
    lines = (
        JointLine("left end piece", "across", border, border - groove, border, True, inner),
        JointLine("right end piece", "across", long - border, long - border, long - border + groove, True, inner),
    )
    return made(
        given,
        (panel, end),
        (Sum(ALONG, ((2, "end piece", border), (1, "panel between the shoulders", between)), long),),
        frame_places(given, "edge of the panel", "end piece"),
        end_section(given, tongue=(tongue, given.cut("tongue_thickness").exact_m)),
        lines=lines,
        section_runs="along",
        fixings=pins,
        remarks=("Glue, if any, goes within a hand's width of the middle of each end; none in the mitres.",),
    )


def plan(d: Drawn) -> list[Mark]:
    """An end whose corners meet the panel's edges in a mitre."""
    today, _, border = sizes_px(d)
    inner, end = 0.5 * today - border, PLAN_RIGHT - border
    marks = across_end(d, pins=True)
    marks += [
        Line([(end, MIDDLE + s * inner), (PLAN_RIGHT, MIDDLE + s * 0.5 * today)], "edge", 2.0) for s in (-1.0, 1.0)
    ]
    return marks


def joint(d: Drawn) -> list[Mark]:
    """From above: the corner, its mitre open as far as it is in this month, true to size."""
    px, side = d.px, d.px(d.piece["border_width"])
    gap, moved = d.either(d.numbers["seen"], d.sizes["mitre_dampest"]), d.moved("edge")
    x, y = CENTRE - 40.0, 66.0  # where the end's outer corner stands
    foot, inner = y + side + 26.0, x + side
    away = px(gap) * sqrt(2.0)
    edge = [
        (LEFT, y - px(moved)),
        (inner - away, y - px(moved)),
        (x - away, y + side - px(moved)),
        (LEFT, y + side - px(moved)),
    ]
    end = [(inner, y), (inner, foot), (x, foot), (x, y + side)]
    return [
        *shape(edge, "wood"),
        *shape(end, "border-wood"),
        label(LEFT + 6.0, y + 0.5 * side + 5.0, "panel's edge"),
        label(inner + 8.0, foot - 6.0, "end"),
        label(LEFT, 318.0, "line in the mitre:"),
        *sized((CENTRE, 332.0), (CENTRE + px(gap), 332.0), gap, "nearest", fine=True, offset=8.0),
        label(RIGHT, 56.0, "from above", "end", "quiet"),
    ]


WAY = replace(
    breadboard.WAY,
    key="mitred_breadboard",
    name="breadboard end mitred into the panel's edges",
    short="mitred breadboard",
    built_as="a panel with breadboard ends mitred into its edges",
    also=("mitred breadboard end", "mitred breadboard ends"),
    kinds=("table top", "lid", "board"),
    usual_for=(),
    usual=False,
    wants_border=True,
    mitred=True,
    means="Strips across the ends keep it flat and let it slide; their corners meet its edges at a slant.",
    all_round=True,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(("mitre_dampest",), 0.004, "the line in a mitre opens wider than {limit}"),
    opens=Opening("line", "in each mitre", "mitre_driest", "mitre_dampest", "mitre_today"),
    make=make,
    order=(
        breadboard.WAY.order[0],
        Step("mitre the ends of the end pieces", ["square end pieces"], ["mitred ends"]),
        breadboard.WAY.order[1],
        breadboard.WAY.order[2],
        Step(
            "saw the mitres into the panel's edges, and cut the tongue between them",
            [SQUARE_EDGE, SQUARE_ENDS, "mitred ends"],
            ["long tongues"],
            [SQUARE_ENDS],
        ),
        *breadboard.WAY.order[4:],
    ),
    notes=(breadboard.WAY.notes[0],),
    plan=plan,
    joint=joint,
    shows="A panel with an end piece across its grain, mitred into its edges. Below, a corner from above: its mitre opens as "
    "the panel grows.",
    main_cuts=("mitre_today", "outer_slot_outward", "outer_slot_inward"),
    driest="the mitres have just closed, and the end stands proud of each panel edge by {edge_narrowing}",
    dampest="each panel edge stands proud of the end by {edge_widening}, and the mitres stand open",
    reasons=(
        "The end is held at the middle only, so both halves slide, unstrained; the price is a line in every mitre, "
        "{mitre_today} wide today and up to {mitre_dampest} in the dampest month.",
    ),
    steps=(
        *breadboard.WAY.steps[:4],
        "Trim the mitres by a shaving or two until the line given is there with the end pinned; put no glue in them.",
        "Drive a tapered middle pin; pin from below, and finish tongue and mitres before assembly.",
    ),
    change="Where a mitre may never be seen open, the trade takes square breadboard ends, or a frame.",
    expect="The mitres at the corners close in {month} and open in the damp months; that line is no crack.",
    watch="inside the panel, or between panel and end piece away from the mitres,",
)
