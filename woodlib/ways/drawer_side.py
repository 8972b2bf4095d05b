"""A solid drawer side between runner and kicker; width across the grain is the height it runs in."""

from __future__ import annotations

from .drawer_front import dampest, driest, front_rules, front_states
from .parts import OPENING
from .piece import Allowances, Piece
from .registry import register
from .rules import INCH_M, CutRule, fixed
from .travel import Quantities, in_opening
from .way import Limit, Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """As for a front, with the play that a sliding part needs."""
    return {
        **in_opening(travels, "front", travels["width"], allowances.slot_clearance_m),
        "opening": travels["width"],
        "least": allowances.slot_clearance_m,
        "thickness": piece.thickness_m,
    }


DRAWER_SIDE = register(
    Way(
        key="drawer_side",
        name="solid side with room above",
        short="solid side",
        built_as="a solid side with room to grow above it",
        also=("solid side between runner and kicker",),
        kinds=("drawer side",),
        fitted=True,
        numbers=numbers,
        cuts=(
            *front_rules("side"),
            CutRule(
                "bottom_groove_depth",
                "deepest groove for the bottom",
                (fixed("thickness", 1 / 3),),
                "down",
                "no more than a third of the side",
            ),
        ),
        states=front_states("side"),
        outside=OPENING,
        part="side",
        stopped_by=Limit(("gap_driest",), 0.25 * INCH_M, "the gap above it opens wider than {limit}"),
        shows=(
            "A drawer side between runner and kicker: it stands on its lower edge and grows upward. Below, the gap "
            "above."
        ),
        main_cuts=("height", "gap_today"),
        driest=driest,
        dampest=dampest,
        reasons=("The side grows upward into the play below the kicker, so the drawer never jams.",),
        steps=(
            "Plane the sides to height after the front is fitted, a hair lower than the front.",
            "Quartersawn stock for the sides moves least and wears best.",
            "Fit the width of the box along the sides to its case with the same small gap all the way back.",
        ),
        change="A drawer on metal slides needs no kicker; its side then only has to clear the rail above.",
    )
)
