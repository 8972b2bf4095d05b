"""A border across both ends, glued along its whole length with its grain across the panel's."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Line, Mark, corners
from .drawn import Drawn, end_wood, label, wood
from .end_pieces import CUT_END_PIECES, end_lines, end_pieces, end_places, end_section
from .given import Given
from .joint_drawing import CENTRE, LEFT
from .made import JointGlue, MadePiece, Sum, WoodPart
from .making import ALONG, made
from .piece import Allowances, Piece
from .plan_drawing import glued
from .steps import SQUARE_ENDS, TOGETHER, Step
from .travel import Quantities
from .way import Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Nothing beyond the travels: the border leaves nothing to be cut loose."""
    return {}


def make(given: Given) -> MadePiece:
    """A panel of the whole width between two end pieces that are glued on."""
    between = given.between(given.length)
    panel = WoodPart("panel", 1, between, given.width, given.thickness, "panel")
    border = given.border.exact_m
    whole = Sum(ALONG, ((2, "end piece", border), (1, "panel", between.exact_m)), given.length.exact_m)
    glue = JointGlue(
        "end piece to panel", 2, given.width.exact_m, given.thickness.exact_m, given.clamps(given.width.exact_m)
    )
    return made(
        given,
        (panel, end_pieces(given)),
        (whole,),
        end_places(given),
        end_section(given),
        lines=end_lines(given, Fraction(0), False),
        glue=(glue,),
        section_runs="along",
    )


def joint(d: Drawn) -> list[Mark]:
    """Along the grain: panel, glue line, border with its grain across."""
    px, mid = d.px, 180.0
    half, border = 0.5 * px(d.piece["thickness"]), 0.5 * px(d.piece["border_thickness"])
    joint = CENTRE + 10.0
    end = joint + px(d.piece["border_width"])
    return [
        *wood(corners(LEFT, mid - half, joint, mid + half)),
        *end_wood(corners(joint, mid - border, end, mid + border), "border-wood"),
        Line([(joint, mid - half), (joint, mid + half)], "glue", 3.0),
        label(LEFT + 6.0, mid - half - 8.0, "panel"),
        label(end, mid - border - 8.0, "border", "end"),
        label(LEFT, 320.0, "glue holds both to one width"),
    ]


WAY = Way(
    key="glued_border",
    name="border glued across the ends",
    short="glued border",
    built_as="a panel with its border glued across the ends",
    means="The border is glued to the panel, which then cannot move.",
    also=("border glued all round",),
    kinds=("table top", "seat", "lid", "board"),
    usual=True,
    reference=True,
    holds_width=True,
    wants_border=True,
    holds=True,
    keeps_border=True,
    all_round=True,
    keeps_flat=True,
    numbers=numbers,
    held_by="Stretched by its border, at most",
    make=make,
    order=(
        CUT_END_PIECES,
        Step("glue the end pieces on, where the verdict allows it", [SQUARE_ENDS, "square end pieces"], [TOGETHER]),
    ),
    plan=glued,
    joint=joint,
    shows="A panel with a border glued across its end: the border holds the end at today's width while the rest "
    "narrows and widens. Below, panel, glue line and border from the side.",
    driest=("the border keeps it from shrinking by {narrowing_high}, so it is pulled apart across its grain"),
    driest_still="it is no drier than today, so it is not pulled in the first year",
    dampest="the border keeps it from growing by {widening_high}, so it pushes and may bow",
    dampest_still="it is no damper than today, so it does not push",
    reasons=(
        "Glue is allowed here: the border stretches the panel by at most {most} of its width, and wood stays elastic "
        "below {limit}.",
        "Glue is refused: the border stretches the panel by about {held} of its width, at most {most}, counting what "
        "damp summers have squeezed short; above {limit} wood takes a set and may crack over the years.",
        "Glue is refused: the border stretches the panel by about {held} of its width, at most {most}, counting what "
        "damp summers have squeezed short; from {limit} wood starts to fail.",
    ),
    steps=(
        "Glue a cross-grain border only where the verdict allows it.",
        "Glue up at the moisture content of the middle of the year in that house.",
        "Otherwise choose a way that lets the panel slide.",
    ),
    change="A house that holds the wood steadier, or quartersawn stock, would ease the pull; narrower stock would not.",
    watch="inside the panel, or in the glue line of the border,",
)
