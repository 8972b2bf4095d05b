"""A breadboard end on a short tongue with three long tenons: only the middle one is fast, the outer ones travel."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from ..picture.scene import Line, Mark, corners
from ..words.decided import smaller
from . import breadboard
from .breadboard import TONGUE, pin_slots
from .drawn import Drawn, end_wood, hollow, label, shape, sized, wood
from .end_pieces import end_lines, end_pieces, end_places, end_section
from .fixings_on_a_line import fixings_across, slot_detail
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import JointLine, MadePiece, Sum, WoodPart
from .making import ALONG, made
from .piece import Allowances, Piece
from .rules import down, fixed, travel, up
from .steps import SQUARE_EDGE, SQUARE_ENDS, Step
from .travel import Quantities, at_fixing, fixings, outermost_m

TENON_SHARE = 1 / 8  # of the width, for each of the three tenons; common practice, no source
WIDEST_TENON_M = 0.0635  # 2-1/2 in: a wider one, fast in its mortise, moves too much; common practice, no source
DEPTH_SHARE = 2 / 3  # of the end's width, for the mortises; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """As a breadboard end, its outer tenons as far out as their own width and a wall beside them allow."""
    found = breadboard.numbers(travels, piece, allowances)
    tenon = smaller(TENON_SHARE * travels["width"], WIDEST_TENON_M)
    kept = allowances.edge_cover_m + 1.5 * allowances.slot_clearance_m + allowances.least_wall_m
    face = outermost_m(travels["width"], kept)
    return {
        **found,
        **fixings(travels, allowances, face - 0.5 * tenon),
        **at_fixing(travels, "face", face),
        "tenon": tenon,
    }


REACHES = tuple(
    up(
        f"outer_mortise_{direction}",
        f"outer mortises, {direction} from the tenon's centre",
        (fixed("tenon", 0.5), fixed("clearance", 0.5), travel(f"face_{way}")),
        f"in the {month} month the tenon moves {direction} with the panel",
    )
    for direction, way, month in (("outward", "widening", "dampest"), ("inward", "narrowing", "driest"))
)
RULES = (
    *pin_slots("outer"),
    up(
        "outer_mortise",
        "outer mortises, length",
        (fixed("tenon"), fixed("clearance"), travel("face_narrowing"), travel("face_widening")),
        "the tenon's width, the travel of its outer face both ways, and play",
        chain=tuple((1, rule.key) for rule in REACHES),
    ),
    *REACHES,
    down(
        "tenon_width",
        "tenons, width across the panel",
        (fixed("tenon"),),
        "an eighth of the panel's width each, but none so wide that it presses its mortise",
    ),
    down(
        "middle_mortise",
        "middle mortise, length",
        (fixed("tenon"),),
        "as long as its tenon is wide: there the end is fast",
        chain=((1, "tenon_width"),),
    ),
    down(
        "tenon_length",
        "tenons, length from the shoulder",
        (fixed("end_width", DEPTH_SHARE), fixed("clearance", -1.0)),
        "two thirds of the end's width, less what keeps them off the bottom",
    ),
    up("mortise_depth", "mortises, depth", (fixed("end_width", DEPTH_SHARE),), "two thirds of the end's width"),
    TONGUE,
    down(
        "tongue_thickness",
        "tongue and tenons, thickness",
        (fixed("thickness", 1 / 3),),
        "a third of the panel's thickness, as the chisel or cutter for the mortises is",
        fine=True,
    ),
    down(
        "haunch_length",
        "tongue between the tenons, length from the shoulder",
        (fixed("thickness", 1 / 3), fixed("clearance", -0.5)),
        "about as long as it is thick; it keeps the boards in line between the tenons",
        fine=True,
    ),
    up(
        "groove_depth",
        "groove for the tongue, depth",
        (fixed("thickness", 1 / 3), fixed("clearance", 0.5)),
        "what the tongue is long, and play at its bottom",
        fine=True,
    ),
    next(rule for rule in breadboard.RULES if rule.key == "groove_stop"),
    next(rule for rule in breadboard.RULES if rule.key == "pin"),
    down(
        "pin_from_shoulder",
        "pins, from the shoulder",
        (fixed("end_width", 0.5 * DEPTH_SHARE), fixed("clearance", -0.5)),
        "the middle of the tenon's length",
        fine=True,
    ),
    next(rule for rule in breadboard.RULES if rule.key == "draw_bore"),
)


def make(given: Given) -> MadePiece:
    """A panel with a tongue and three tenons at both ends, in the grooves and mortises of two end pieces."""
    tenon, thick, depth = given.cut("tenon_length"), given.cut("tongue_thickness"), given.cut("mortise_depth").exact_m
    border, long, wide = given.border.exact_m, given.length.exact_m, given.width.exact_m
    between = given.between(given.length)
    panel = WoodPart(
        "panel",
        1,
        between.plus(2 * tenon.exact_m, "with two tenons as in the cut list"),
        given.width,
        given.thickness,
        "panel",
        (between.exact_m, wide),
        "with its tenons; between the shoulders it is as long as between the end pieces",
    )
    terms = ((2, "end piece", border), (1, "panel", panel.length.exact_m), (-2, "tenon", tenon.exact_m))
    from_shoulder, pin = given.cut("pin_from_shoulder").exact_m, given.cut("pin")
    pins = tuple(
        fixing
        for name, at in (("left pin", border - from_shoulder), ("right pin", long - border + from_shoulder))
        for fixing in fixings_across(given, name, "end piece", at, pin, "tenon", ("outer",))
    )
    section = end_section(given, tongue=(tenon.exact_m, thick.exact_m))
    tenons = (replace(part, part="tenon") if part.part == "tongue" else part for part in section)
    return made(
        given,
        (panel, end_pieces(given)),
        (Sum(ALONG, terms, long),),
        end_places(given),
        list(tenons),
        lines=(*end_lines(given, given.cut("groove_depth").exact_m, True), *_mortises(given, depth)),
        section_runs="along",
        fixings=pins,
        remarks=("Glue, if any, goes on the middle tenon alone, and on the inner half of its length.",),
    )


def _mortises(given: Given, depth: Fraction) -> tuple[JointLine, ...]:
    """Each mortise as far as it goes across the piece."""
    middle, out = given.width.exact_m / 2, given.allowance("outer_distance")
    half = given.cut("middle_mortise").exact_m / 2
    outward, inward = (given.cut(f"outer_mortise_{way}").exact_m for way in ("outward", "inward"))
    spans = (
        (middle - out - outward, middle - out + inward),
        (middle - half, middle + half),
        (middle + out - inward, middle + out + outward),
    )
    left, right = end_lines(given, depth, True)
    return tuple(
        replace(line, name=f"mortises of the {line.name}", between=span) for line in (left, right) for span in spans
    )


def joint(d: Drawn) -> list[Mark]:
    """Along the grain through a tenon in its mortise, the groove's bottom dashed; below, the outer pin slot from above."""
    px, top = d.px, 74.0
    thickness, tongue = px(d.piece["thickness"]), px(d.sizes["tongue_thickness"])
    shoulder, end = CENTRE - 20.0, CENTRE - 20.0 + px(d.piece["border_width"])
    mid = top + 0.5 * thickness
    tip, bottom = shoulder + px(d.sizes["tenon_length"]), shoulder + px(d.sizes["mortise_depth"])
    pin, half = shoulder + px(d.sizes["pin_from_shoulder"]), 0.5 * px(d.numbers["pin"])
    haunch = shoulder + px(d.sizes["groove_depth"])
    return [
        *end_wood(corners(shoulder, top, end, top + thickness), "border-wood"),
        *hollow(corners(shoulder, mid - 0.5 * tongue - 1.0, bottom, mid + 0.5 * tongue + 1.0)),
        *wood(corners(LEFT, top, shoulder, top + thickness)),
        *wood(corners(shoulder - 2.0, mid - 0.5 * tongue, tip, mid + 0.5 * tongue), count=2),
        Line([(haunch, mid - 0.5 * tongue), (haunch, mid + 0.5 * tongue)], "edge", 1.4, "4 3"),
        *shape(corners(pin - half, top, pin + half, top + thickness), "metal"),
        *sized((shoulder, top - 6.0), (tip, top - 6.0), d.sizes["tenon_length"], "down"),
        label(LEFT + 6.0, top + thickness + 18.0, "panel"),
        label(end, top + thickness + 18.0, "end", "end"),
        label(LEFT, 238.0, "outer slot, enlarged"),
        *slot_detail(d, "outer_slot", d.numbers["pin"], 284.0, d.moved("outer"), 0.0),
        label(RIGHT, 238.0, "outward \u2192", "end", "quiet"),
    ]


WAY = replace(
    breadboard.WAY,
    key="haunched_tongue",
    name="breadboard end on a haunched tongue with tenons",
    short="haunched tongue",
    built_as="a panel with breadboard ends on a haunched tongue with tenons",
    also=("haunched tongue with tenons", "breadboard ends with tenons"),
    kinds=("table top",),
    usual_for=(),
    usual=False,
    numbers=numbers,
    cuts=RULES,
    make=make,
    order=(
        breadboard.WAY.order[0],
        Step(
            "chop the mortises and plough the groove between them",
            ["square end pieces"],
            ["ploughed ends"],
        ),
        breadboard.WAY.order[2],
        Step(
            "cut a tongue as long as the tenons on both ends of the panel",
            [SQUARE_EDGE, SQUARE_ENDS],
            ["long tongues"],
            [SQUARE_ENDS],
        ),
        Step("saw the tenons out of it, and the tongue between them down to its length", ["long tongues"], ["tongues"]),
        *breadboard.WAY.order[5:],
    ),
    joint=joint,
    shows="A panel with an end piece across its grain: the panel becomes narrower and wider than the end piece. Below, a "
    "tenon in its mortise, and the outer slot that slides past its pin.",
    main_cuts=("outer_slot_outward", "outer_mortise", "tenon_length"),
    reasons=("Long tenons carry the end and keep the panel flat; only the middle one is fast, so both halves slide.",),
    steps=(
        "Cut the middle mortise to its tenon, the outer ones longer by the reaches given, from the tenon's middle.",
        "Drill the end from below, short of the show face unless pins may show; put it on, and mark every pin on its tenon.",
        "Drill the middle tenon round, the offset given nearer to the shoulder; slot the outer tenons by the reaches given.",
        "On a panel wider than about a yard put two more tenons half-way out, with mortises and slots as the outer ones.",
        "Glue the inner half of the middle tenon at most; pin from below, and finish the tongue before assembly.",
    ),
    notes=(breadboard.WAY.notes[0], breadboard.WAY.notes[3]),
    change="A thin or narrow end would take a plain tongue on pins; a border all round would ask for a frame.",
)
