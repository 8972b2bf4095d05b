"""The panel as a top, held down by buttons in a groove of the rails, or by screws through slots."""

from __future__ import annotations

from .piece import Allowances, Piece
from .rules import CutRule, Facts, fixed, travel
from .travel import Quantities, at_fixing
from .verdict import Construction


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of each edge and of the outer screws against a base that is fixed at the middle, careful end."""
    return {
        **at_fixing(travels, "edge", 0.5 * travels["width"]),
        **at_fixing(travels, "outer", 0.5 * travels["width"] * allowances.outermost_share),
        "screw": allowances.screw_diameter_m,
        "clearance": allowances.slot_clearance_m,
        "hold": allowances.button_hold_m,
    }


RULES = (
    CutRule(
        "gap between button shoulder and rail",
        (fixed("clearance"), travel("edge_widening")),
        "up",
        "in the dampest month the button moves outward and must not push the rail",
    ),
    CutRule(
        "button tongue, length",
        (fixed("hold"), fixed("clearance"), travel("edge_narrowing"), travel("edge_widening")),
        "down",
        "in the driest month it must still hold in the groove",
    ),
    CutRule(
        "groove for the buttons, depth",
        (fixed("hold"), fixed("clearance"), travel("edge_narrowing"), travel("edge_widening")),
        "up",
        "in the dampest month the tongue must not reach the bottom",
    ),
    CutRule(
        "screw slots in the cross rails, length",
        (fixed("screw"), fixed("clearance"), travel("outer_narrowing"), travel("outer_widening")),
        "up",
        "screw shank, plus the top's travel both ways, plus play",
    ),
)


def _driest(facts: Facts) -> str:
    return f"each button draws back by {facts.up_to('edge_narrowing')} and still holds"


def _dampest(facts: Facts) -> str:
    return f"each button moves outward by {facts.up_to('edge_widening')} and clears the rail"


BUTTONS = Construction(
    key="buttons",
    name="buttons or slotted screws to a base",
    holds=False,
    keeps_border=False,
    numbers=numbers,
    rules=RULES,
    driest=_driest,
    dampest=_dampest,
    reasons=("The base holds the top down but not across its grain, so the top slides on the buttons.",),
    kinds=("table top", "seat"),
    states=(
        CutRule("hold of a button in the driest month", (fixed("hold"),), "down", "it draws back with the edge"),
        CutRule(
            "hold of a button in the dampest month",
            (fixed("hold"), travel("edge_narrowing"), travel("edge_widening")),
            "down",
            "it moves outward with the edge",
        ),
    ),
    change="Rails too thin for a groove would ask for slotted blocks or figure-eight fasteners instead.",
    steps=(
        "Fix the top at the middle of each cross rail with one screw in a round hole.",
        "Set the buttons along the long rails with the gap given; grain of a button runs along its tongue.",
        "Where a rail crosses the grain, screw through slots instead.",
        "Cut the slots across the grain of the top, not along it.",
    ),
)
