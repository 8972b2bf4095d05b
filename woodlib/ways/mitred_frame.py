"""A solid frame with mitred corners around a floating panel: the mitres themselves want to open."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import sqrt

from ..picture.scene import Mark
from . import frame_panel
from .drawn import Drawn, label, shape, sized
from .frame import ORDER, frame_places, framed, plan
from .given import Given
from .held import Held
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import JointGlue, MadePiece, WoodPart
from .making import made
from .piece import Allowances, Piece
from .rules import NoteRule, down, fixed, travel, up
from .stiffness import panel_and_strip
from .travel import Quantities
from .way import Opening, Way


def mitre_share(piece: Piece) -> float:
    """Strain across the grain that a glued mitre takes, over the free strain of a member's width; first order.

    Each mitre wants to turn by e, the strain across less that along (each member by e/2). The closed frame forbids it
    and bends: M = 2 E I e/(a + b), a and b its sides along the middle of the members. Over the mitre, sqrt 2 w long,
    that is at its end a stress of E w e/(2 (a + b)); half of it pulls across the grain, by E w/(4 (a + b) E_across) e.
    Own derivation: thin members, nothing yields at the joint, so it leans to the careful side. At most 1.

    >>> round(mitre_share(Piece("white ash", "425 mm", "425 mm", "20 mm", "75 mm")), 3)
    0.335
    """
    member, along, _ = panel_and_strip(replace(piece, species=piece.border_species))
    sides = piece.width_m + piece.length_m - 2.0 * piece.border_width_m
    return min(1.0, along.modulus_x_pa * piece.border_width_m / (4.0 * sides * member.modulus_x_pa))


def holding(piece: Piece, allowances: Allowances) -> Held:
    """The mitres' own share; the rule for an edge-glued border is not used."""
    return Held(mitre_share(piece), ("the mitres hold by the bending of the closed frame", *panel_and_strip(piece)[2]))


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """The panel as in any frame, and how far each mitre would open if no glue held it.

    A mitre is sqrt 2 w long and turns by e, so it opens by sqrt 2 w e: inside when drier, outside when damper.
    """
    per_strain = sqrt(2.0) * piece.border_width_m
    return {
        **frame_panel.numbers(travels, piece, allowances),
        "inside": per_strain * travels["stretch_high"],
        "outside": per_strain * travels["widening_high"] / travels["width"],
        "visible": allowances.visible_gap_m,
        "member": piece.border_width_m,
        "woods_differ": float(piece.border_wood is not piece.wood),
    }


RULES = (
    *frame_panel.RULES,
    down(
        "loose_tongue_thickness",
        "loose tongue (spline) across each mitre, thickness",
        (fixed("frame_thickness", 1 / 3),),
        "a third of the frame",
    ),
    up(
        "loose_tongue_slot_depth",
        "slot for the loose tongue, depth in each member",
        (fixed("member", 1 / 3), fixed("clearance", 0.5)),
        "a third of the member's width, and room for glue",
    ),
)


STATES = (
    *frame_panel.STATES,
    up(
        "mitre_driest",
        "mitre open at the inside corner in the driest month, if no glue held it",
        (travel("inside"),),
        "every member is at its narrowest, and its mitre steeper",
        fine=True,
    ),
    up(
        "mitre_dampest",
        "mitre open at the outside corner in the dampest month, if no glue held it",
        (travel("outside"),),
        "every member is at its widest, and its mitre flatter",
        fine=True,
    ),
)


MITRE = Fraction(99, 70)  # square root of 2, 0.005 percent up


def make(given: Given) -> MadePiece:
    """Four members over their mitres around the loose panel."""
    panel, sums, section, lines = framed(given)
    border, frame = given.border.exact_m, given.border_thickness.exact_m
    # Over the mitres a member is as long outside as the piece; half of each corner belongs to its neighbour.
    front = WoodPart(
        "front and back member",
        2,
        given.length,
        given.border,
        given.border_thickness,
        "strip",
        (given.length.exact_m - border, border),
        "length over its mitres",
    )
    ends = WoodPart(
        "end member",
        2,
        given.width,
        given.border,
        given.border_thickness,
        "strip",
        (given.width.exact_m - border, border),
        "length over its mitres",
    )
    glue = JointGlue("mitre", 4, border * MITRE, frame, 4)
    members = {"stile": "front and back member", "rail": "end member"}
    named = tuple(
        replace(s, terms=tuple((n, members.get(what, what), size) for n, what, size in s.terms)) for s in sums
    )
    sections = tuple(replace(part, part=members.get(part.part, part.part)) for part in section)
    return made(
        given,
        (panel, front, ends),
        named,
        frame_places(given, *members.values()),
        sections,
        lines=lines,
        glue=(glue,),
    )


def _plan(d: Drawn) -> list[Mark]:
    """A frame whose corners are cut at 45 degrees."""
    return plan(d, mitred=True)


def joint(d: Drawn) -> list[Mark]:
    """From above: the corner, with the opening each mitre would show if no glue held it, true to size."""
    px, side = d.px, d.px(d.piece["border_width"])
    inside = d.either(d.sizes["mitre_driest"], 0.0)
    outside = d.either(0.0, d.sizes["mitre_dampest"])
    x, y = CENTRE - 110.0, 60.0
    foot = y + side + 60.0
    upright = [(x, y), (x + side, y + side), (x + side, foot), (x, foot)]
    level = [(x + px(outside), y), (RIGHT, y), (RIGHT, y + side), (x + side + px(inside), y + side)]
    worst = inside + outside
    return [
        *shape(upright, "border-wood"),
        *shape(level, "wood"),
        label(LEFT, 318.0, "opening, if no glue held it:"),
        *sized((CENTRE, 332.0), (CENTRE + px(worst), 332.0), worst, "up", offset=8.0),
    ]


WAY = Way(
    key="mitred_frame",
    name="mitred frame with a floating panel",
    short="mitred frame",
    built_as="a mitred frame with a loose, floating panel",
    means="The panel lies loose in its frame, whose corners meet at a slant, and can grow and shrink there.",
    also=("mitred frame around a floating panel",),
    kinds=("frame", "door panel", "lid"),
    framed=True,
    profile="flush",
    still_outside=True,
    mitred=True,
    holds=True,
    keeps_border=True,
    all_round=True,
    keeps_flat=True,
    opens_when_damp=True,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    hidden_below=("mitre_driest", "mitre_dampest"),
    holding=holding,
    held_by="Stretched in the mitres, at most",
    opens=Opening("line", "beside the panel", "line_driest", "line_dampest", "line_today"),
    make=make,
    order=ORDER,
    plan=_plan,
    joint=joint,
    shows="A panel in a frame with mitred corners. Below, a corner from above: how far its mitre would open if no "
    "glue held it.",
    main_cuts=("stile_groove_depth", "panel_width", "rail_groove_depth"),
    driest="each mitre wants to open at its inside corner by {inside}; the panel stays in its grooves",
    dampest="each mitre wants to open at its outside corner by {outside}; the panel touches no bottom",
    reasons=(
        "The panel floats, and the mitres are strained by at most {most}, below the {limit} at which wood takes a set.",
        "The mitres are strained by about {held}, at most {most}; above {limit} they take a set and open in time.",
        "The mitres are strained by about {held}, at most {most}; from {limit} wood or glue starts to fail.",
    ),
    steps=(
        "Let a glued loose tongue cross every mitre, its grain square to the joint.",
        "Keep the members narrow: the opening grows with their width.",
        "Quartersawn members open about half as far.",
        "Glue up at the moisture of the middle of the year; leave the panel dry in its grooves.",
    ),
    notes=(
        NoteRule(
            (fixed("woods_differ"),),
            "frame and panel are different woods; the mitres are worked out for the panel's, right only roughly",
        ),
        *frame_panel.WAY.notes,
    ),
    change="Narrower or quartersawn members would ease the mitres; square corners with tenons do not open at all.",
    seat_cautions=frame_panel.WAY.seat_cautions,
    expect="The line along the frame is no crack. "
    "The whole piece becomes wider and narrower by {outside} over the year, because the two long sides of its frame"
    " do; {room} is left free beside it.",
    watch="inside the panel, or in a mitre of the frame,",
)
