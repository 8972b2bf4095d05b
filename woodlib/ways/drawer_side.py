"""A solid drawer side between runner and kicker; width across the grain is the height it runs in."""

from __future__ import annotations

from .drawer_front import dampest, driest, front_rules, front_states
from .parts import OPENING
from .piece import Allowances, Piece
from .rules import CutRule, fixed
from .travel import Quantities, in_opening
from .verdict import Construction


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """As for a front, with the play that a sliding part needs."""
    return {
        **in_opening(travels, "front", travels["width"], allowances.slot_clearance_m),
        "opening": travels["width"],
        "least": allowances.slot_clearance_m,
        "thickness": piece.thickness_m,
    }


DRAWER_SIDE = Construction(
    key="drawer_side",
    name="solid side between runner and kicker",
    holds=False,
    keeps_border=False,
    numbers=numbers,
    rules=(
        *front_rules("side"),
        CutRule(
            "deepest groove for the bottom", (fixed("thickness", 1 / 3),), "down", "no more than a third of the side"
        ),
    ),
    driest=driest,
    dampest=dampest,
    reasons=("The side grows upward into the play below the kicker, so the drawer never jams.",),
    steps=(
        "Plane the sides to height after the front is fitted, a hair lower than the front.",
        "Quartersawn stock for the sides moves least and wears best.",
        "Fit the width of the box along the sides to its case with the same small gap all the way back.",
    ),
    kinds=("drawer side",),
    outside=OPENING,
    part="side",
    states=front_states("side"),
    change="A drawer on metal slides needs no kicker; its side then only has to clear the rail above.",
)
