"""A breadboard end: a cross-grain piece on a tongue, fixed at the middle, free to slide on pins in slots."""

from __future__ import annotations

from ..picture.scene import Mark, corners
from .drawn import Drawn, end_wood, hollow, label, shape, sized, wood
from .end_pieces import CUT_END_PIECES, across_end, end_lines, end_pieces, end_places, end_section
from .fixings_on_a_line import fixings_across, slot_detail, slots
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import MadePiece, Sum, WoodPart
from .making import ALONG, made
from .piece import Allowances, Piece
from .rules import INCH_M, CutRule, NoteRule, Term, down, fixed, travel, up
from .steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from .travel import Quantities, fixings, outermost_m
from .way import Limit, Opening, Way

END_SHARE, THICKNESS_SHARE = 0.2, 0.5  # of end and stock that a pin may take; common practice, no source


LEAST_PIN_M = 0.003  # a thinner pin shears; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of the tongue past the outer and the half-way pins, careful end, and the sizes that never change.

    The pin is that of the shop, or a fifth of the end's width or half the thickness where that is less: wood must
    be left on both sides of it. The outer pins sit as far out as a wall at the end of the tongue allows.
    """
    pin = min(allowances.pin_diameter_m, END_SHARE * piece.border_width_m, THICKNESS_SHARE * piece.thickness_m)
    kept = allowances.edge_cover_m + 1.5 * allowances.slot_clearance_m + allowances.least_wall_m + 0.5 * pin
    return {
        **fixings(travels, allowances, outermost_m(travels["width"], kept)),
        "pin": pin,
        "too_slim": LEAST_PIN_M - pin,
        "cover": allowances.edge_cover_m,
        "wall": allowances.least_wall_m,
        "thickness": piece.thickness_m,
        "end_width": piece.border_width_m,
        "draw_bore": allowances.draw_bore_offset_m,
    }


def pin_slots(name: str) -> tuple[CutRule, ...]:
    """The slots of the pins that are ``name``, in a tongue that moves past them."""
    why = "in the {month} month the tongue moves the other way past the pin"
    whole = "pin, plus the tongue's travel past it both ways, plus play"
    return slots(name, "pin", "narrowing", "widening", whole, why)


TONGUE = down(
    "tongue_width",
    "tongue, width across the panel",
    (
        fixed("width"),
        fixed("cover", -2.0),
        fixed("clearance", -2.0),
        travel("edge_narrowing", -2.0),
        travel("edge_widening", -2.0),
    ),
    "in the dampest month the tongue must not reach the ends of the stopped groove",
)


RULES = (
    *pin_slots("outer"),
    *pin_slots("halfway"),
    down("pin", "pins, diameter", (fixed("pin"),), "wood is left on both sides of every pin", fine=True),
    up(
        "groove_stop",
        "groove stop from each end of the end piece",
        (fixed("cover"), travel("edge_narrowing")),
        "in the driest month the panel's edge draws back and must still hide the groove",
    ),
    TONGUE,
    down(
        "tongue_thickness",
        "tongue, thickness",
        (fixed("thickness", 1 / 3),),
        "a third of the panel's thickness",
        fine=True,
    ),
    down(
        "tongue_length",
        "tongue, length from the shoulder",
        (fixed("end_width", 0.5), fixed("clearance", -1.0)),
        "half the width of the end, less what keeps it off the bottom of the groove",
    ),
    up("groove_depth", "groove for the tongue, depth", (fixed("end_width", 0.5),), "half the width of the end"),
    down(
        "pin_from_shoulder",
        "pins, from the shoulder",
        (fixed("end_width", 0.25), fixed("clearance", -0.5)),
        "the middle of the tongue, so that wood stays on both sides of every pin",
        fine=True,
    ),
    down(
        "draw_bore",
        "middle hole in the tongue, nearer to the shoulder by",
        (fixed("draw_bore"),),
        "the pin then draws the end tight without glue",
        fine=True,
    ),
)


STATES = (
    up(
        "step_driest",
        "step at each corner in the driest month",
        (travel("edge_narrowing"),),
        "the end stands proud of the panel",
        fine=True,
    ),
    up(
        "step_dampest",
        "step at each corner in the dampest month",
        (travel("edge_widening"),),
        "the panel stands proud of the end",
        fine=True,
    ),
)


def make(given: Given) -> MadePiece:
    """A panel with a tongue at both ends, in the grooves of two end pieces."""
    tongue, groove = given.cut("tongue_length"), given.cut("groove_depth")
    thick = given.cut("tongue_thickness")
    between = given.between(given.length)
    panel_length = between.plus(2 * tongue.exact_m, "with two tongues as in the cut list")
    panel = WoodPart(
        "panel",
        1,
        panel_length,
        given.width,
        given.thickness,
        "panel",
        (between.exact_m, given.width.exact_m),
        "with its tongues; between the shoulders it is as long as between the end pieces",
    )
    terms = (
        (2, "end piece", given.border.exact_m),
        (1, "panel", panel_length.exact_m),
        (-2, "tongue", tongue.exact_m),
    )
    depth, pin = given.cut("pin_from_shoulder").exact_m, given.cut("pin")
    border, long = given.border.exact_m, given.length.exact_m
    pins = (
        *fixings_across(given, "left pin", "end piece", border - depth, pin, "tongue"),
        *fixings_across(given, "right pin", "end piece", long - border + depth, pin, "tongue"),
    )
    return made(
        given,
        (panel, end_pieces(given)),
        (Sum(ALONG, terms, given.length.exact_m),),
        end_places(given),
        end_section(given, tongue=(tongue.exact_m, thick.exact_m)),
        lines=end_lines(given, groove.exact_m, True),
        section_runs="along",
        fixings=pins,
        remarks=("Glue, if any, goes within a hand's width of the middle of each end.",),
    )


def plan(d: Drawn) -> list[Mark]:
    """An end on pins."""
    return across_end(d, pins=True)


def joint(d: Drawn) -> list[Mark]:
    """Along the grain: the tongue in the end's groove, a pin through both; below, the outer slot from above."""
    px, top = d.px, 74.0
    thickness, tongue = px(d.piece["thickness"]), px(d.sizes["tongue_thickness"])
    shoulder, end = CENTRE - 20.0, CENTRE - 20.0 + px(d.piece["border_width"])
    mid = top + 0.5 * thickness
    tip = shoulder + px(d.sizes["tongue_length"])
    bottom = shoulder + px(d.sizes["groove_depth"])
    pin = shoulder + px(d.sizes["pin_from_shoulder"])
    half = 0.5 * px(d.numbers["pin"])
    return [
        *end_wood(corners(shoulder, top, end, top + thickness), "border-wood"),
        *hollow(corners(shoulder, mid - 0.5 * tongue - 1.0, bottom, mid + 0.5 * tongue + 1.0)),
        *wood(corners(LEFT, top, shoulder, top + thickness)),
        *wood(corners(shoulder - 2.0, mid - 0.5 * tongue, tip, mid + 0.5 * tongue), count=2),
        *shape(corners(pin - half, top, pin + half, top + thickness), "metal"),
        *sized((shoulder, top - 6.0), (tip, top - 6.0), d.sizes["tongue_length"], "down"),
        label(LEFT + 6.0, top + thickness + 18.0, "panel"),
        label(end, top + thickness + 18.0, "end", "end"),
        label(LEFT, 238.0, "outer slot, enlarged"),
        *slot_detail(d, "outer_slot", d.numbers["pin"], 284.0, d.moved("outer"), 0.0),
        label(RIGHT, 238.0, "outward \u2192", "end", "quiet"),
    ]


WAY = Way(
    key="breadboard",
    name="breadboard end that slides on slots",
    short="breadboard end",
    built_as="a panel with breadboard ends that slide on slots",
    means="A breadboard end is a strip across the end; it keeps the panel flat and lets it slide.",
    also=("breadboard ends", "breadboard end with slots"),
    kinds=("table top", "seat", "shelf", "lid", "board"),
    usual_for=("table top", "board"),
    usual=True,
    keeps_border=True,
    keeps_flat=True,
    fast_at="middle",
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(
        ("step_driest", "step_dampest"),
        0.25 * INCH_M,
        "the step at a corner passes {limit} and catches clothes",
    ),
    opens=Opening("step", "at each corner of the ends", "step_driest", "step_dampest"),
    make=make,
    order=(
        CUT_END_PIECES,
        Step("plough the end pieces, stopped short of their ends", ["square end pieces"], ["ploughed ends"]),
        Step(
            "drill the ends from below, short of the show face unless pins may show",
            ["square end pieces", "ploughed ends"],
            ["drilled ends"],
            ["square end pieces"],
        ),
        Step("cut the tongue on both ends of the panel", [SQUARE_EDGE, SQUARE_ENDS], ["long tongues"], [SQUARE_ENDS]),
        Step("saw the notch at each edge of the tongues, down to their width", ["long tongues"], ["tongues"]),
        Step("mark the pins through the end pieces on the tongues", ["drilled ends", "tongues"], ["pin marks"]),
        Step("drill the middle hole and cut the slots in the tongues", ["pin marks"], ["slots"], ["pin marks"]),
        Step("finish the tongues, and pin the ends on", ["slots", "drilled ends"], [TOGETHER]),
    ),
    plan=plan,
    joint=joint,
    shows="A panel with an end piece across its grain: the panel becomes narrower and wider than the end piece. "
    "Below, the tongue in its groove, and the outer slot that slides past its pin.",
    main_cuts=("outer_slot_outward", "outer_slot_inward", "groove_stop"),
    driest=("the breadboard end stands proud of each panel edge by {edge_narrowing}, and its groove stays hidden"),
    dampest="each panel edge stands proud of the breadboard end by {edge_widening}",
    reasons=("The end keeps the panel flat and is held at the middle only, so both halves slide, unstrained.",),
    steps=(
        "Make the tongue a third of the thickness and the groove a sliding fit.",
        "Drill the end from below, short of the show face unless pins may show; put it on, and mark every pin on the tongue.",
        "Drill the middle hole in the tongue round, the offset given nearer to the shoulder; cut the others as slots.",
        "Give each slot the inward and outward reach given, its middle line straight through the mark.",
        "Drive a tapered middle pin; it draws the end tight, so glue is needed at most within a hand's width of it.",
        "Pin from below, and finish the tongue before assembly so that it cannot stick.",
    ),
    remarks=("the end is flush with the panel only at today's moisture; ease both corners so that a step looks meant",),
    notes=(
        NoteRule(
            (fixed("too_slim"),),
            "end or stock is too slim for a pin through the tongue; make the end wider or choose battens",
        ),
        NoteRule(
            (
                fixed("outer_distance"),
                *RULES[1].terms,
                fixed("wall"),
                *(Term(term.name, -0.5 * term.times, term.only_room) for term in TONGUE.terms),
            ),
            "the outer slots come nearer to the ends of the tongue than the shop's least wall; set the outer pins nearer "
            "to the middle",
        ),
        NoteRule(
            (fixed("pin", 3.0), fixed("halfway_distance", -1.0)),
            "half-way pins would crowd the middle one; leave them out on so narrow a panel",
        ),
        NoteRule(
            (fixed("width", 0.5), *(Term(term.name, -term.times, term.only_room) for term in TONGUE.terms)),
            "less than half the width is left for the tongue; choose battens or a frame for so narrow a panel",
        ),
    ),
    change="A border seen all round would ask for a frame; a step that may never show would ask for a calmer house.",
    cautions=("Cross-grain cuts for the tongue lift chips and stock: clamp the panel and a fence on both faces.",),
    expect="The small step at the corners of the end pieces comes and goes with the seasons; it is no fault.",
    watch="inside the panel, or between panel and end piece,",
)
