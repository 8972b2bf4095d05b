"""Battens across the underside, screwed through slots."""

from __future__ import annotations

from .piece import Allowances, Piece
from .registry import register
from .rules import INCH_M, CutRule, Facts, NoteRule, fixed, travel
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


def _reach(name: str, direction: str, way: str, month: str) -> CutRule:
    return CutRule(
        f"{name}_slot_{direction}",
        f"{name} slots, {direction} from the screw's centre",
        (fixed("screw", 0.5), fixed("clearance", 0.5), travel(f"{name}_{way}")),
        "up",
        f"in the {month} month the screw moves {direction} with the panel",
    )


def _slot(name: str) -> tuple[CutRule, ...]:
    """Length of a slot and its two reaches from the screw's centre."""
    reaches = _reach(name, "outward", "widening", "dampest"), _reach(name, "inward", "narrowing", "driest")
    length = CutRule(
        f"{name}_slot",
        f"{name} slots, length",
        (fixed("screw"), fixed("clearance"), travel(f"{name}_narrowing"), travel(f"{name}_widening")),
        "up",
        "screw shank, plus the panel's travel both ways, plus play",
        reaches=reaches,
    )
    return length, *reaches


RULES = (
    *_slot("outer"),
    *_slot("halfway"),
    CutRule(
        "set_back",
        "batten end, set back from each edge",
        (fixed("cover"), travel("edge_narrowing")),
        "up",
        "in the driest month the edge draws in and must still hide the batten",
    ),
)


def _driest(facts: Facts) -> str:
    return f"the outer screws slide inward in their slots by {facts.up_to('outer_narrowing')}"


def _dampest(facts: Facts) -> str:
    return f"the outer screws slide outward in their slots by {facts.up_to('outer_widening')}"


BATTENS = register(
    Way(
        key="battens",
        name="battens below, in slots",
        short="slotted battens",
        built_as="a panel on battens that let it slide",
        plural=True,
        also=("battens with slots",),
        kinds=("table top", "seat", "lid", "board", "door panel"),
        usual=True,
        keeps_flat=True,
        numbers=numbers,
        cuts=RULES,
        states=(
            CutRule(
                "hidden_driest",
                "batten hidden at each edge in the driest month",
                (fixed("cover"),),
                "down",
                "the edge draws in and the batten does not",
            ),
        ),
        stopped_by=Limit(("outer_slot",), 0.75 * INCH_M, "a washer no longer covers a slot longer than {limit}"),
        shows=(
            "A panel with battens below it: the panel narrows and widens past them. Below, the outer screw travels "
            "along its slot in the batten."
        ),
        main_cuts=("outer_slot_outward", "outer_slot_inward", "set_back"),
        driest=_driest,
        dampest=_dampest,
        reasons=(
            "The battens keep the panel flat and hold it at the middle only, so it slides past every other screw.",
        ),
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
)
