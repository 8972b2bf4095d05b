"""A solid drawer front set into its opening; width across the grain is the height of the opening."""

from __future__ import annotations

from .parts import OPENING
from .piece import Allowances, Piece
from .rules import CutRule, Facts, fixed, travel
from .travel import Quantities, in_opening
from .verdict import Construction


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Growth and shrinkage of a front that stands on its runners and just clears the rail above, careful ends."""
    return {
        **in_opening(travels, "front", travels["width"], allowances.least_gap_m),
        "opening": travels["width"],
        "opening_length": piece.length_m,
        "least": allowances.least_gap_m,
    }


def front_rules(part: str) -> tuple[CutRule, CutRule]:
    """Height of a front or a side in its opening, and the gap that is left above it today."""
    return (
        CutRule(
            f"drawer {part}, height",
            (fixed("opening"), fixed("least", -1.0), travel("front_growth", -1.0)),
            "down",
            "in the dampest month it must still clear the rail above",
            fine=True,
        ),
        CutRule(
            f"gap above the {part} today",
            (fixed("least"), travel("front_growth")),
            "up",
            "all of the movement shows at the top, because the drawer stands on its runners",
            fine=True,
        ),
    )


def front_states(part: str) -> tuple[CutRule, CutRule]:
    """The gap above in the driest and in the dampest month."""
    return (
        CutRule(
            f"gap above the {part} in the driest month",
            (fixed("least"), travel("front_growth"), travel("front_shrink")),
            "up",
            "it is at its lowest",
            fine=True,
        ),
        CutRule(f"gap above the {part} in the dampest month", (fixed("least"),), "down", "it still clears", fine=True),
    )


def driest(facts: Facts) -> str:
    """The gap has opened."""
    return f"the gap above opens by {facts.up_to('front_shrink')}"


def dampest(facts: Facts) -> str:
    """The gap has closed to the least."""
    return f"the gap above closes by {facts.up_to('front_growth')} and stays open"


RULES = (
    *front_rules("front"),
    CutRule(
        "drawer front, length",
        (fixed("opening_length"), fixed("least", -2.0)),
        "down",
        "along the grain it hardly moves; the same small gap at both ends",
        fine=True,
    ),
)

DRAWER_FRONT = Construction(
    key="drawer_front",
    name="solid front set into its opening",
    holds=False,
    keeps_border=False,
    numbers=numbers,
    rules=RULES,
    driest=driest,
    dampest=dampest,
    reasons=("The front stands on its runners and grows upward into a gap that is left for it.",),
    steps=(
        "Fit the front to its opening first, at the moisture it has today, then cut the joints.",
        "Let the grain of front, sides and back all run round the box: their heights then move together.",
        "Number front and opening; no two openings are alike.",
        "Wax sides and runners; a stop at the back keeps the front flush.",
    ),
    kinds=("drawer front",),
    outside=OPENING,
    part="front",
    states=front_states("front"),
    cautions=("A chest tips when full drawers are open: fix it to the wall and fit stops.",),
    change="A gap that is too wide for the eye would ask for quartersawn stock, a lower front, or one that overlays.",
)
