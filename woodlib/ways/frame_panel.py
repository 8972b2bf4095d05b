"""A frame with a groove: the panel floats inside, the frame makes the border."""

from __future__ import annotations

from fractions import Fraction

from ..errors import InputError
from ..units import both
from ..units.exact import Rounding
from .frame import ORDER, frame_places, framed, joint, plan
from .given import Given
from .made import JointGlue, MadePiece, Sum, WoodPart
from .making import made
from .piece import Allowances, Piece
from .rules import INCH_M, NoteRule, down, fixed, travel, up
from .travel import RANGE, Quantities, thickness_travel
from .way import Limit, Opening, Way

SEAT_CAUTION = (
    "A seat or step carries a person: bear its panel from below on ledges or battens on which it can slide; do not "
    "hang it in its grooves alone."
)


FIT_M = 0.0002  # a sliding fit: slides by hand, does not fall; common practice, no source


TONGUE_SHARE = 0.7  # of the panel's thickness that a tongue may keep; common practice, no source
THIN_TENON = 0.25  # of the frame's thickness, below which a tenon is thin; common practice, no source


def cutter_m(piece: Piece, allowances: Allowances) -> float:
    """The shop's cutter nearest to a third of the frame that leaves the panel its shoulders, or its thinnest, m.

    >>> shop = Allowances()
    >>> [round(cutter_m(Piece("cherry", 1, 1, t, 0.06, 0.021), shop) / 0.0254 * 16) for t in (0.021, 0.008, 0.006)]
    [4, 3, 2]
    """
    fitting = [cutter for cutter in allowances.cutters_m if cutter <= TONGUE_SHARE * piece.thickness_m]
    wanted = piece.border_thickness_m / 3.0
    return min(fitting, key=lambda cutter: abs(cutter - wanted)) if fitting else min(allowances.cutters_m)


def opening_m(piece: Piece, width_m: float) -> float:
    """What a frame leaves open across the grain: the whole width less two stiles.

    Raises :class:`InputError` where two stiles or two rails leave nothing.
    """
    border = piece.border_width_m
    if border < 0.5 * width_m and border < 0.5 * piece.length_m:
        return width_m - 2.0 * border
    raise InputError(
        f"border width is {both(border)}; on a piece {both(width_m)} wide and {both(piece.length_m)} long it must be "
        f"less than {both(0.5 * min(width_m, piece.length_m))}, so that two of them leave a panel between them; make "
        "it narrower."
    )


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Shrinkage and growth of the panel that fills the opening and both grooves, careful ends; growth of the frame.

    With s the narrowing and g the widening strain, the panel P = opening + 2 cover + shrink must satisfy
    P (1 - s) = opening + 2 cover, so shrink = (opening + 2 cover) s/(1 - s); it grows by P g. The two stiles are solid
    wood across their own grain, so the frame is wider outside by their growth alone. The travels that are handed on
    are those of the panel, opening + 2 cover wide.
    """
    whole, cover, stile = travels["width"], allowances.groove_cover_m, piece.border_width_m
    opening = opening_m(piece, whole)
    narrowing, widening = travels["narrowing_high"] / whole, travels["widening_high"] / whole
    wanted, cutter = opening + 2.0 * cover, cutter_m(piece, allowances)
    moving = ("to_driest", "to_dampest", "swing", "narrowing", "widening")
    panel = {f"{way}_{end}": travels[f"{way}_{end}"] * wanted / whole for way in moving for end in RANGE}
    return {
        **panel,
        "width": wanted,
        "whole_width": whole,
        "opening": opening,
        "opening_length": piece.length_m - 2.0 * stile,
        "cover": cover,
        "clearance": allowances.slot_clearance_m,
        "panel_shrink": wanted * narrowing / (1.0 - narrowing),
        "panel_growth": wanted * widening / (1.0 - narrowing),
        "stile": stile,
        "frame_narrowing": 2.0 * stile * narrowing,
        "frame_widening": 2.0 * stile * widening,
        "cutter": cutter,
        "frame_thickness": piece.border_thickness_m,
        "fit": FIT_M,
        "frame_woods_differ": float(piece.border_wood is not piece.wood),
        **thickness_travel(travels, piece, "tongue", cutter),
    }


GROOVE = up(
    "stile_groove_depth",
    "groove in the stiles, depth",
    (fixed("cover"), fixed("clearance"), travel("panel_shrink", 0.5), travel("panel_growth", 0.5)),
    "in the dampest month the panel must not reach the bottom and push the frame apart",
)


LINE = up(
    "line_today",
    "line between shoulder and stile today, each side",
    (fixed("clearance"), travel("panel_growth", 0.5)),
    "it closes as the panel grows; in the dampest month the shoulder must not push the stile",
    chain=((0.5, "opening"), (-0.5, "panel_width"), (1, "edge_shoulder")),
)


CHANGE = up(
    "line_change",
    "line between shoulder and stile, change over the year",
    (travel("panel_growth", 0.5), travel("panel_shrink", 0.5)),
    "each long edge of the panel goes in and out by half of its movement",
    fine=True,
)


RULES = (
    down(
        "panel_width",
        "panel, width across the grain",
        (fixed("opening"), fixed("cover", 2.0), travel("panel_shrink")),
        "in the driest month it must still sit in both grooves",
    ),
    GROOVE,
    down(
        "panel_length",
        "panel, length along the grain",
        (fixed("opening_length"), fixed("cover", 2.0)),
        "along the grain it hardly moves; the rails' groove only has to hold it",
    ),
    up(
        "rail_groove_depth",
        "groove in the rails, depth",
        (fixed("cover"), fixed("clearance")),
        "the panel's small change of length fits in the play",
    ),
    up(
        "groove_width",
        "groove, width",
        (fixed("cutter"),),
        "the cutter nearest to a third of the frame's thickness, and thinner than the panel; tenons of the same cutter",
        fine=True,
    ),
    up(
        "edge_play",
        "play of the panel's edge across its groove today",
        (fixed("fit"), travel("tongue_widening")),
        "in the dampest month the thicker edge must still slide",
        chain=((1, "groove_width"), (-1, "tongue_thickness")),
    ),
    down(
        "tongue_thickness",
        "tongue on the panel's edges, thickness",
        (fixed("cutter"), fixed("fit", -1.0), travel("tongue_widening", -1.0)),
        "the groove less the play: the panel's edges are cut down to slide in it",
        fine=True,
    ),
    up(
        "edge_shoulder",
        "long edges of the panel, shoulder set back by",
        GROOVE.terms,
        "as much as the groove is deep: the tongue there, and the line that the shoulder leaves open today",
        chain=((1, "stile_groove_depth"),),
    ),
    up(
        "end_shoulder",
        "ends of the panel, shoulder set back by",
        (fixed("cover"), *LINE.terms),
        "the tongue in the rails' groove, and a line there as wide as along the sides today, so that it looks meant",
        chain=((1, "line_today"), (0.5, "panel_length"), (-0.5, "opening_length")),
    ),
    LINE,
    up(
        "space_beside",
        "space to leave in front of or behind the frame",
        (fixed("clearance"), travel("frame_widening")),
        "two stiles grow in the dampest month, and what stands beside the frame must not stop them",
        fine=True,
    ),
)


IN_GROOVE = (0.5, "panel_width"), (-0.5, "opening")  # how deep the panel is in each groove today


STATES = (
    CHANGE,
    up(
        "line_driest",
        "line between shoulder and stile in the driest month",
        (*LINE.terms, travel("panel_shrink", 0.5)),
        "the panel is at its narrowest; finish the tongue, for it shows",
        chain=((1, "line_today"),),
        moves=(travel("panel_shrink", 0.5),),
    ),
    down(
        "line_dampest",
        "line between shoulder and stile in the dampest month",
        (fixed("clearance"),),
        "the panel is at its widest",
        chain=((1, "line_today"),),
        moves=(travel("panel_growth", -0.5),),
    ),
    up(
        "frame_narrower",
        "frame narrower outside in the driest month",
        (travel("frame_narrowing"),),
        "two stiles across their own grain",
        fine=True,
    ),
    up(
        "frame_wider",
        "frame wider outside in the dampest month",
        (travel("frame_widening"),),
        "two stiles across their own grain",
        fine=True,
    ),
    down(
        "hold_driest",
        "panel in each groove in the driest month",
        (fixed("cover"),),
        "what keeps it from dropping out",
        chain=IN_GROOVE,
        moves=(travel("panel_shrink", -0.5),),
    ),
    down(
        "spare_dampest",
        "spare at the bottom of each groove in the dampest month",
        (fixed("clearance"),),
        "nothing is left to blow the frame apart",
        chain=((1, "stile_groove_depth"), *((-times, key) for times, key in IN_GROOVE)),
        moves=(travel("panel_growth", -0.5),),
    ),
    up(
        "rattle_driest",
        "rattle across the groove in the driest month",
        (fixed("fit"), travel("tongue_widening"), travel("tongue_narrowing")),
        "the panel's edge is at its thinnest",
        chain=((1, "edge_play"),),
        moves=(travel("tongue_narrowing"),),
    ),
)


def make(given: Given) -> MadePiece:
    """Two stiles of the whole length, two rails between them with tenons, and the loose panel."""
    panel, sums, section, lines = framed(given)
    between, tenon = given.between(given.width), given.tenon_m
    rail_length = between.plus(2 * tenon, "with two tenons (practice)")
    stiles = WoodPart("stile", 2, given.length, given.border, given.border_thickness)
    rails = WoodPart(
        "rail",
        2,
        rail_length,
        given.border,
        given.border_thickness,
        "strip",
        (between.exact_m, given.border.exact_m),
        "with its tenons",
    )
    border = given.border.exact_m
    rail = Sum(
        "rails", ((1, "rail", rail_length.exact_m), (-2, "tenon", tenon), (2, "stile", border)), given.width.exact_m
    )
    glue = JointGlue("tenon cheek", 8, tenon, border, 2)
    stub = given.cut("stile_groove_depth").exact_m >= tenon
    remarks = (
        _tenons(given, tenon),
        *(("The tenons go no deeper than the panel's groove: pin them, or make the border wider.",) if stub else ()),
    )
    return made(
        given,
        (panel, stiles, rails),
        (*sums, rail),
        frame_places(given, "stile", "rail"),
        section,
        lines=lines,
        glue=(glue,),
        remarks=remarks,
    )


HAUNCH_SHARE = Fraction(1, 4)  # of a rail's width, at its outer edge; common practice, no source


def _tenons(given: Given, long: Fraction) -> str:
    """The tenons of the rails in a sentence: as thick as the groove, less wide than the rail by the groove and a haunch."""
    cutter = given.cut("groove_width").exact_m
    groove, border = given.cut("rail_groove_depth").exact_m, given.border.exact_m
    haunch = Rounding(HAUNCH_SHARE * border, given.rule).marked_m
    thick, wide, reach, outer, inner = (
        both(size, 64, 0.1, "down", given.first) for size in (cutter, border - groove - haunch, long, haunch, groove)
    )
    if border - groove - haunch < border / 3:
        return f"Tenons: {thick} thick, {reach} long; the rail is too narrow for a haunch, so pin or dowel the joint."
    return (
        f"Tenons: {thick} thick, as the groove and its cutter, {wide} wide and {reach} long; inside, {inner} of the rail's width goes "
        f"to the groove, outside, {outer} to a haunch as deep as the stile's groove (practice)."
    )


WAY = Way(
    key="frame_panel",
    name="frame with a floating panel",
    short="frame and panel",
    built_as="a frame with a loose, floating panel",
    means="The panel lies loose in its frame, as in a panelled door, and can grow and shrink there.",
    kinds=("table top", "seat", "lid", "door panel", "frame", "back"),
    usual=True,
    framed=True,
    profile="flush",
    still_outside=True,
    keeps_border=True,
    all_round=True,
    keeps_flat=True,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(("stile_groove_depth",), INCH_M, "the groove gets deeper than {limit}, half of the stile"),
    opens=Opening("line", "beside the panel", "line_driest", "line_dampest", "line_today"),
    make=make,
    order=ORDER,
    plan=plan,
    joint=joint,
    shows="A panel in a frame that hardly moves outside. Below, the tongue of the panel moves in and out of its "
    "groove, and the line beside it opens and closes.",
    main_cuts=("stile_groove_depth", "panel_width", "rail_groove_depth"),
    driest=(
        "it still sits about {at_least_cover} deep in each groove, and the frame outside is narrower by "
        "{frame_narrowing}"
    ),
    dampest=(
        "each edge comes within the play of the groove's bottom and does not touch it, and the frame outside "
        "is wider by {frame_widening}"
    ),
    reasons=(
        "The border becomes a frame that moves little, and the panel grows and shrinks in its grooves; the line along "
        "each side of the panel is {line_today} wide today and changes by up to {line_change} over the year.",
    ),
    steps=(
        "Join the frame at its corners with tenons, dowels or loose tongues (splines); the joints carry all of it.",
        "Pin the panel at the middle of each rail, so that it moves alike to both sides.",
        "Put no glue in the groove.",
        "Cut the tongue in the middle of the panel's edge; leave its shoulders off the frame by the line given.",
        "Lay soft spacers of cork or foam in the grooves; they take up the rattle and keep the panel centred.",
        "Finish the panel before assembly, tongue and shoulders too, so that no bare line shows in the driest month.",
    ),
    notes=(
        NoteRule(
            (fixed("frame_thickness", THIN_TENON), fixed("cutter", -1.0)),
            "so thin a panel makes a thin groove, and tenons of that cutter are weak; take a thicker panel, or loose tongues "
            "of their own cutter in the corners",
        ),
        NoteRule(
            (fixed("frame_woods_differ"),),
            "frame and panel are different woods; their movement is taken to be alike, which is right only roughly",
        ),
        NoteRule(
            (*GROOVE.terms, fixed("stile", -0.5)),
            "the groove takes more than half of the border's width; make the border wider or split the panel in two",
        ),
    ),
    change="A top that must be flush and easy to wipe would ask for a breadboard end or battens.",
    seat_cautions=(SEAT_CAUTION,),
    expect="The line along the frame is no crack. "
    "The whole piece becomes wider and narrower by {outside} over the year, because the two long sides of its frame"
    " do; {room} is left free beside it.",
    watch="inside the panel, or in a corner of the frame,",
)
