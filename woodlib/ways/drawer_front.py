"""A solid drawer front set into its opening; width across the grain is the height of the opening."""

from __future__ import annotations

from .parts import OPENING
from .piece import Allowances, Piece
from .registry import register
from .rules import INCH_M, CutRule, Facts, fixed, travel
from .travel import Quantities, in_opening
from .way import Limit, Way


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
            "height",
            f"drawer {part}, height",
            (fixed("opening"), fixed("least", -1.0), travel("front_growth", -1.0)),
            "down",
            "in the dampest month it must still clear the rail above",
            fine=True,
        ),
        CutRule(
            "gap_today",
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
            "gap_driest",
            f"gap above the {part} in the driest month",
            (fixed("least"), travel("front_growth"), travel("front_shrink")),
            "up",
            "it is at its lowest",
            fine=True,
        ),
        CutRule(
            "gap_dampest",
            f"gap above the {part} in the dampest month",
            (fixed("least"),),
            "down",
            "it still clears",
            fine=True,
        ),
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
        "length",
        "drawer front, length",
        (fixed("opening_length"), fixed("least", -2.0)),
        "down",
        "along the grain it hardly moves; the same small gap at both ends",
        fine=True,
    ),
)

DRAWER_FRONT = register(
    Way(
        key="drawer_front",
        name="solid front with room above",
        short="solid front",
        built_as="a solid front with room to grow above it",
        also=("solid front set into its opening",),
        kinds=("drawer front",),
        fitted=True,
        numbers=numbers,
        cuts=RULES,
        states=front_states("front"),
        outside=OPENING,
        part="front",
        stopped_by=Limit(("gap_driest",), 0.25 * INCH_M, "the gap above it opens wider than {limit}"),
        shows=(
            "A drawer front in its opening: it stands on its lower edge and grows upward. Below, the gap to the rail "
            "above."
        ),
        main_cuts=("height", "gap_today"),
        driest=driest,
        dampest=dampest,
        reasons=("The front stands on its runners and grows upward into a gap that is left for it.",),
        steps=(
            "Fit the front to its opening first, at the moisture it has today, then cut the joints.",
            "Let the grain of front, sides and back all run round the box: their heights then move together.",
            "Number front and opening; no two openings are alike.",
            "Wax sides and runners; a stop at the back keeps the front flush.",
        ),
        change="A gap that is too wide for the eye would ask for quartersawn stock, a lower front, or one that overlays.",
        cautions=("A chest tips when full drawers are open: fix it to the wall and fit stops.",),
    )
)
