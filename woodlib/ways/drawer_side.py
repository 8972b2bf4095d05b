"""A solid drawer side between runner and kicker; width across the grain is the height it runs in."""

from __future__ import annotations

from ..picture.scene import Mark
from .drawn import Drawn
from .given import Given
from .made import MadePiece, Sum
from .opening import fitted, front_rules, front_states, joint, plan
from .piece import Allowances, Piece
from .rules import INCH_M, down, fixed
from .travel import Quantities, in_opening
from .way import Limit, Opening, Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """As for a front, with the play that a sliding part needs."""
    return {
        **in_opening(travels, "gap", travels["width"], allowances.slot_clearance_m),
        "opening": travels["width"],
        "least": allowances.slot_clearance_m,
        "thickness": piece.thickness_m,
    }


def make(given: Given) -> MadePiece:
    """One side as cut; the other is alike."""
    height, opening = given.cut("height"), given.width.exact_m
    sums = (
        Sum("from runner to kicker", ((1, "side", height.exact_m), (1, "play", opening - height.exact_m)), opening),
    )
    return fitted(given, "drawer side", given.length, height, sums, "A drawer has two: this is for one of them.")


def _joint(d: Drawn) -> list[Mark]:
    return joint(d, "drawer side", "rail above")


WAY = Way(
    key="drawer_side",
    name="solid side with room above",
    short="solid side",
    built_as="a solid side with room to grow above it",
    means="It leaves a small gap above, where it can grow.",
    also=("solid side between runner and kicker",),
    kinds=("drawer side",),
    fitted=True,
    numbers=numbers,
    cuts=(
        *front_rules("side"),
        down(
            "bottom_groove_depth",
            "deepest groove for the bottom",
            (fixed("thickness", 1 / 3),),
            "no more than a third of the side",
        ),
    ),
    states=front_states("side"),
    part="side",
    stopped_by=Limit(("gap_driest",), 0.25 * INCH_M, "the gap above it opens wider than {limit}"),
    opens=Opening("gap", "above the side", "gap_driest", "gap_dampest", "gap_today"),
    make=make,
    plan=plan,
    joint=_joint,
    shows="A drawer side between runner and kicker: it stands on its lower edge and grows upward. Below, the gap "
    "above.",
    main_cuts=("height", "bottom_groove_depth"),
    driest="the gap above opens by {gap_shrink}",
    dampest="the gap above closes by {gap_growth} and stays open",
    reasons=("The side grows upward into the play below the kicker, so the drawer never jams.",),
    steps=(
        "Plane the sides to height after the front is fitted, a hair lower than the front.",
        "Quartersawn stock for the sides moves least and wears best.",
        "Fit the width of the box along the sides to its case with the same small gap all the way back.",
    ),
    change="A drawer on metal slides needs no kicker; its side then only has to clear the rail above.",
)
