"""Battens across the underside, screwed through slots."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from ..picture.scene import Mark
from .drawn import Drawn
from .fixings_on_a_line import fixings_across, screwed, slots
from .given import Given
from .made import MadePiece, Size, Sum
from .making import ACROSS
from .on_battens import batten_middles, battened, on_battens
from .piece import Allowances, Piece
from .rules import INCH_M, CutRule, NoteRule, down, fixed, travel, up
from .steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from .travel import Quantities, fixings, outermost_m
from .way import Limit, Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of the outer and the half-way screws along the batten, careful end, and the sizes that never change.

    The outer screws sit as far out as a wall at the end of the batten allows.
    """
    kept = allowances.edge_cover_m + allowances.least_wall_m
    kept += 0.5 * (allowances.screw_diameter_m + allowances.slot_clearance_m)
    return {
        **fixings(travels, allowances, outermost_m(travels["width"], kept)),
        "screw": allowances.screw_diameter_m,
        "cover": allowances.edge_cover_m,
        "wall": allowances.least_wall_m,
    }


def _slots(name: str) -> tuple[CutRule, ...]:
    why = "in the {month} month the screw moves {direction} with the panel"
    return slots(
        name, "screw", "widening", "narrowing", "screw shank, plus the panel's travel both ways, plus play", why
    )


RULES = (
    *_slots("outer"),
    *_slots("halfway"),
    up(
        "set_back",
        "batten end, set back from each edge",
        (fixed("cover"), travel("edge_narrowing")),
        "in the driest month the edge draws in and must still hide the batten",
    ),
)


def make(given: Given) -> MadePiece:
    """A whole panel on battens screwed on through slots."""
    back = given.cut("set_back")
    length = Size(given.width.exact_m - 2 * back.exact_m, "typed in the brief, less the set-back of the cut list twice")
    terms = ((1, "batten", length.exact_m), (2, "set-back", back.exact_m))
    whole = Sum(ACROSS, terms, given.width.exact_m)
    piece = on_battens(given, length, back.exact_m, Fraction(0), whole)
    screw = Size(given.allowance("screw"), "shop allowance")
    screws = [
        fixing
        for number, middle in enumerate(batten_middles(given), start=1)
        for fixing in fixings_across(given, f"screw in batten {number}", "batten", middle, screw)
    ]
    return replace(piece, fixings=tuple(screws))


def joint(d: Drawn) -> list[Mark]:
    """The outer screw in its slot."""
    return screwed(d, "batten", "outer_slot", "outer")


WAY = Way(
    key="battens",
    name="battens below, in slots",
    short="slotted battens",
    built_as="a panel on battens that let it slide",
    means="Bars screwed on below keep it flat; their screws sit in slots, so that the wood can slide.",
    plural=True,
    also=("battens with slots",),
    kinds=("table top", "seat", "shelf", "lid", "board", "door panel"),
    usual=True,
    keeps_flat=True,
    fast_at="middle",
    numbers=numbers,
    cuts=RULES,
    states=(
        down(
            "hidden_driest",
            "batten hidden at each edge in the driest month",
            (fixed("cover"),),
            "the edge draws in and the batten does not",
            chain=((1, "set_back"),),
            moves=(travel("edge_narrowing", -1.0),),
        ),
    ),
    stopped_by=Limit(("outer_slot",), 0.75 * INCH_M, "a washer no longer covers a slot longer than {limit}"),
    make=make,
    order=(
        Step("cut the battens to size, with their slots", ["parallel face"], ["slotted battens"]),
        Step(
            "screw the battens on, square to the front edge",
            [SQUARE_EDGE, SQUARE_ENDS, "slotted battens"],
            [TOGETHER],
        ),
    ),
    plan=battened,
    joint=joint,
    shows="A panel with battens below it: the panel narrows and widens past them. Below, the outer screw travels "
    "along its slot in the batten.",
    main_cuts=("outer_slot_outward", "outer_slot_inward", "set_back"),
    driest="the outer screws slide inward in their slots by {outer_narrowing}",
    dampest="the outer screws slide outward in their slots by {outer_widening}",
    reasons=("The battens keep the panel flat and hold it at the middle only, so it slides past every other screw.",),
    steps=(
        "Screw the middle of each batten through a round hole, all other screws through slots.",
        "Use pan-head screws with washers, drawn up snug and then backed off a touch.",
        "Put no glue between batten and panel; wax the face that slides.",
        "Set the batten ends back and round them over.",
    ),
    notes=(
        NoteRule(
            (fixed("outer_distance"), *RULES[1].terms, fixed("wall"), fixed("width", -0.5), *RULES[-1].terms),
            "the outer slots come nearer to the ends of the battens than the shop's least wall; set the outer screws "
            "nearer to the middle",
        ),
        NoteRule(
            (fixed("screw", 6.0), fixed("halfway_distance", -1.0)),
            "half-way screws would crowd the middle one; leave them out on so narrow a panel",
        ),
    ),
    change="A border that has to show across the ends would ask for a frame or a breadboard end instead.",
)
