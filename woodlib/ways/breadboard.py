"""A breadboard end: a cross-grain piece on a tongue, fixed at the middle, free to slide on pins in slots."""

from __future__ import annotations

from .parts import ENDS, size
from .piece import Allowances, Piece
from .registry import register
from .rules import INCH_M, CutRule, Facts, NoteRule, Term, fixed, travel
from .travel import Quantities, fixings, outermost_m
from .way import Limit, Way

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


def _reach(name: str, direction: str, way: str, month: str) -> CutRule:
    return CutRule(
        f"{name}_slot_{direction}",
        f"{name} slots, {direction} from the pin's centre",
        (fixed("pin", 0.5), fixed("clearance", 0.5), travel(f"{name}_{way}")),
        "up",
        f"in the {month} month the tongue moves the other way past the pin",
    )


def _slot(name: str) -> tuple[CutRule, ...]:
    """Length of a slot and its two reaches from the pin's centre."""
    reaches = _reach(name, "outward", "narrowing", "driest"), _reach(name, "inward", "widening", "dampest")
    length = CutRule(
        f"{name}_slot",
        f"{name} slots, length",
        (fixed("pin"), fixed("clearance"), travel(f"{name}_narrowing"), travel(f"{name}_widening")),
        "up",
        "pin, plus the tongue's travel past it both ways, plus play",
        reaches=reaches,
    )
    return length, *reaches


TONGUE = CutRule(
    "tongue_width",
    "tongue, width across the panel",
    (
        fixed("width"),
        fixed("cover", -2.0),
        fixed("clearance", -2.0),
        travel("edge_narrowing", -2.0),
        travel("edge_widening", -2.0),
    ),
    "down",
    "in the dampest month the tongue must not reach the ends of the stopped groove",
)

RULES = (
    *_slot("outer"),
    *_slot("halfway"),
    CutRule("pin", "pins, diameter", (fixed("pin"),), "down", "wood is left on both sides of every pin", fine=True),
    CutRule(
        "groove_stop",
        "groove stop from each end of the end piece",
        (fixed("cover"), travel("edge_narrowing")),
        "up",
        "in the driest month the panel's edge draws back and must still hide the groove",
    ),
    TONGUE,
    CutRule(
        "tongue_thickness",
        "tongue, thickness",
        (fixed("thickness", 1 / 3),),
        "down",
        "a third of the panel's thickness",
        fine=True,
    ),
    CutRule(
        "tongue_length",
        "tongue, length from the shoulder",
        (fixed("end_width", 0.5), fixed("clearance", -1.0)),
        "down",
        "half the width of the end, less what keeps it off the bottom of the groove",
    ),
    CutRule(
        "groove_depth", "groove for the tongue, depth", (fixed("end_width", 0.5),), "up", "half the width of the end"
    ),
    CutRule(
        "pin_from_shoulder",
        "pins, from the shoulder",
        (fixed("end_width", 0.25), fixed("clearance", -0.5)),
        "down",
        "the middle of the tongue, so that wood stays on both sides of every pin",
        fine=True,
    ),
    CutRule(
        "draw_bore",
        "middle hole in the tongue, nearer to the shoulder by",
        (fixed("draw_bore"),),
        "down",
        "the pin then draws the end tight without glue",
        fine=True,
    ),
)

STATES = (
    CutRule(
        "step_driest",
        "step at each corner in the driest month",
        (travel("edge_narrowing"),),
        "up",
        "the end stands proud of the panel",
        fine=True,
    ),
    CutRule(
        "step_dampest",
        "step at each corner in the dampest month",
        (travel("edge_widening"),),
        "up",
        "the panel stands proud of the end",
        fine=True,
    ),
)


def _driest(facts: Facts) -> str:
    proud = facts.up_to("edge_narrowing")
    return f"the breadboard end stands proud of each panel edge by {proud}, and its groove stays hidden"


def _dampest(facts: Facts) -> str:
    return f"each panel edge stands proud of the breadboard end by {facts.up_to('edge_widening')}"


BREADBOARD = register(
    Way(
        key="breadboard",
        name="breadboard end that slides on slots",
        short="breadboard end",
        built_as="a panel with breadboard ends that slide on slots",
        also=("breadboard ends", "breadboard end with slots"),
        kinds=("table top", "seat", "lid", "board"),
        usual_for=("table top", "board"),
        usual=True,
        keeps_border=True,
        keeps_flat=True,
        numbers=numbers,
        cuts=RULES,
        states=STATES,
        parts=(
            *ENDS,
            size(
                "panel_with_tongues",
                "panel with both tongues, along the grain",
                fixed("finished_length"),
                fixed("border", -1.0),
                fixed("clearance", -2.0),
            ),
        ),
        stopped_by=Limit(
            ("step_driest", "step_dampest"),
            0.25 * INCH_M,
            "the step at a corner passes {limit} and catches clothes",
        ),
        shows=(
            "A panel with an end piece across its grain: the panel becomes narrower and wider than the end piece. "
            "Below, the tongue in its groove, and the outer slot that slides past its pin."
        ),
        main_cuts=("outer_slot_outward", "outer_slot_inward", "groove_stop"),
        driest=_driest,
        dampest=_dampest,
        reasons=("The end keeps the panel flat and is held at the middle only, so both halves slide, unstrained.",),
        steps=(
            "Make the tongue a third of the thickness and the groove a sliding fit.",
            "Drill the end from below, short of the show face unless pins may show; put it on, and mark every pin on the tongue.",
            "Drill the middle hole in the tongue round, the offset given nearer to the shoulder; cut the others as slots.",
            "Give each slot the inward and outward reach given, its middle line straight through the mark.",
            "Drive a tapered middle pin; it draws the end tight, so glue is needed at most within a hand's width of it.",
            "Pin from below, and finish the tongue before assembly so that it cannot stick.",
        ),
        remarks=(
            "the end is flush with the panel only at today's moisture; ease both corners so that a step looks meant",
        ),
        notes=(
            NoteRule(
                (fixed("too_slim"),),
                "end or stock is too slim for a pin through the tongue; make the end wider or choose battens",
            ),
            NoteRule(
                (
                    fixed("outer_distance"),
                    *_reach("outer", "outward", "narrowing", "driest").terms,
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
        expect="Expected: a small step at the corners of the end pieces, which comes and goes with the seasons.",
        watch="inside the panel, or between panel and end piece,",
    )
)
