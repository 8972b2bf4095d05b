"""A border whose grain runs the same way as the panel's, glued along the long edges."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Mark, box
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, PLAN_WIDTH, Drawn, broken, wood
from .given import Given
from .joint_drawing import beside_wall
from .made import JointGlue, JointLine, MadePiece, Place, Section, Sum, WoodPart
from .making import ACROSS, made
from .piece import Allowances, Piece
from .plan_drawing import panel, sheet_box, sizes_px, today_lines
from .rules import INCH_M, NoteRule, fixed, travel, up
from .steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from .travel import Quantities, at_fixing
from .way import Limit, Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Panel and border move as one: travel of each outer edge, careful end."""
    return {
        **at_fixing(travels, "edge", 0.5 * travels["width"]),
        "clearance": allowances.slot_clearance_m,
        "woods_differ": float(piece.border_wood is not piece.wood),
    }


RULES = (
    up(
        "space_beside",
        "space to leave beside each long edge",
        (fixed("clearance"), travel("edge_widening")),
        "in the dampest month the whole width grows and must not meet a wall or frame",
    ),
)


SPACE_DRIEST = up(
    "space_driest",
    "space beside each long edge in the driest month",
    (fixed("clearance"), travel("edge_widening"), travel("edge_narrowing")),
    "the edge has drawn in",
    chain=((1, "space_beside"),),
    moves=(travel("edge_narrowing"),),
)


def make(given: Given) -> MadePiece:
    """A panel between two strips along its long edges, all grain the same way."""
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    between = given.between(given.width)
    panel = WoodPart("panel", 1, given.length, between, given.thickness, "panel")
    strips = WoodPart("border strip", 2, given.length, given.border, given.border_thickness)
    zero = Fraction(0)
    spans = (
        ("border strip", (zero, border)),
        ("panel", (border, wide - border)),
        ("border strip", (wide - border, wide)),
    )
    thick = {"panel": given.thickness.exact_m, "border strip": given.border_thickness.exact_m}
    whole = Sum(ACROSS, ((2, "border strip", border), (1, "panel", between.exact_m)), wide)
    lines = (
        JointLine("front strip", "along", border, border, border),
        JointLine("back strip", "along", wide - border, wide - border, wide - border),
    )
    glue = JointGlue("border strip to panel", 2, long, given.thickness.exact_m, given.clamps(long))
    return made(
        given,
        (panel, strips),
        (whole,),
        (Place(name, (zero, long), span) for name, span in spans),
        (Section(name, span, (zero, thick[name])) for name, span in spans),
        lines=lines,
        glue=(glue,),
    )


def plan(d: Drawn) -> list[Mark]:
    """Strips along both edges, moving with the panel."""
    today, now, border = sizes_px(d)
    strip = border * now / today
    inner = now - 2.0 * strip
    marks = panel(PLAN_LEFT, PLAN_RIGHT, inner)
    for top in (MIDDLE - 0.5 * now, MIDDLE + 0.5 * inner):
        marks += wood(box(PLAN_LEFT, top, PLAN_WIDTH, strip), "border-wood", seed=41, count=22, within=sheet_box())
    return [*marks, *broken(PLAN_LEFT, MIDDLE - 0.52 * now, 1.04 * now), *today_lines(d, PLAN_LEFT, PLAN_RIGHT, today)]


WAY = Way(
    key="same_grain_border",
    name="border with its grain along the panel's",
    short="same-grain border",
    built_as="a panel whose border runs the way of its grain",
    means="The strips of the border run the same way as the panel, so that both move together.",
    also=("border with the grain",),
    kinds=("table top", "seat", "lid", "board"),
    usual=True,
    wants_border=True,
    numbers=numbers,
    cuts=RULES,
    states=(SPACE_DRIEST,),
    stopped_by=Limit(("space_driest",), 0.5 * INCH_M, "the space beside it gets wider than {limit}"),
    make=make,
    order=(
        Step("rip the border strips", ["parallel face"], ["strips"]),
        Step("glue the strips to the long edges", [SQUARE_EDGE, SQUARE_ENDS, "strips"], [TOGETHER], [SQUARE_EDGE]),
    ),
    plan=plan,
    joint=beside_wall,
    shows="A panel with border strips along its long edges: all of it narrows and widens together. Below, the space "
    "left beside it to a wall or frame.",
    main_cuts=("space_beside",),
    driest="border and panel shrink together, each edge by {edge_narrowing}, and nothing is held",
    dampest="border and panel grow together, each edge by {edge_widening}, and nothing is held",
    reasons=("Grain beside grain moves alike, so a border along the edges can be glued and nothing is held back.",),
    steps=(
        "Glue the border strips along the long edges, grain parallel, rings tilted like the panel's.",
        "Show the border at the ends with a scribed line or a bead worked into the panel itself.",
        "Glue no strip on the end grain: such a joint holds about a quarter of the wood's strength.",
    ),
    remarks=("no border is left across the ends, and nothing keeps the panel flat; add battens where that matters",),
    notes=(
        NoteRule(
            (fixed("woods_differ"),),
            "border and panel are different woods; they are taken to move alike, which is right only roughly",
        ),
    ),
    change="A border across the ends is wanted: then cut its end pieces from the panel's own blank.",
)
