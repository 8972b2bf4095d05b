"""The panel as a top, held down by buttons in a groove of the rails, or by screws through slots."""

from __future__ import annotations

from .piece import Allowances, Piece
from .registry import register
from .rules import INCH_M, CutRule, Facts, fixed, travel
from .travel import Quantities, at_fixing
from .way import Limit, Way


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
        "shoulder_gap",
        "gap between button shoulder and rail",
        (fixed("clearance"), travel("edge_widening")),
        "up",
        "in the dampest month the button moves outward and must not push the rail",
    ),
    CutRule(
        "tongue_length",
        "button tongue, length",
        (fixed("hold"), fixed("clearance"), travel("edge_narrowing"), travel("edge_widening")),
        "down",
        "in the driest month it must still hold in the groove",
    ),
    CutRule(
        "groove_depth",
        "groove for the buttons, depth",
        (fixed("hold"), fixed("clearance"), travel("edge_narrowing"), travel("edge_widening")),
        "up",
        "in the dampest month the tongue must not reach the bottom",
    ),
    CutRule(
        "cross_rail_slot",
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


BUTTONS = register(
    Way(
        key="buttons",
        name="held to a base by buttons",
        short="buttons",
        built_as="a panel held to its base by buttons that let it slide",
        plural=True,
        also=("slotted screws", "buttons or slotted screws to a base"),
        kinds=("table top", "seat"),
        usual=True,
        on_a_base=True,
        numbers=numbers,
        cuts=RULES,
        states=(
            CutRule(
                "hold_driest",
                "hold of a button in the driest month",
                (fixed("hold"),),
                "down",
                "it draws back with the edge",
            ),
            CutRule(
                "hold_dampest",
                "hold of a button in the dampest month",
                (fixed("hold"), travel("edge_narrowing"), travel("edge_widening")),
                "down",
                "it moves outward with the edge",
            ),
        ),
        stopped_by=Limit(("tongue_length",), 0.875 * INCH_M, "a button's tongue longer than {limit} snaps"),
        shows=(
            "A panel on a base: the panel narrows and widens past it. Below, a button moves in and out of the groove "
            "in the rail."
        ),
        main_cuts=("shoulder_gap", "groove_depth"),
        driest=_driest,
        dampest=_dampest,
        reasons=("The base holds the top down but not across its grain, so the top slides on the buttons.",),
        steps=(
            "Fix the top at the middle of each cross rail with one screw in a round hole.",
            "Set the buttons along the long rails with the gap given; grain of a button runs along its tongue.",
            "Where a rail crosses the grain, screw through slots instead.",
            "Cut the slots across the grain of the top, not along it.",
        ),
        change="Rails too thin for a groove would ask for slotted blocks or figure-eight fasteners instead.",
    )
)
