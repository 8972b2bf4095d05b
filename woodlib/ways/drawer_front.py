"""A solid drawer front set into its opening; width across the grain is the height of the opening."""

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
    """Growth and shrinkage of a front that stands on its runners and just clears the rail above, careful ends."""
    return {
        **in_opening(travels, "gap", travels["width"], allowances.least_gap_m),
        "opening": travels["width"],
        "opening_length": piece.length_m,
        "least": allowances.least_gap_m,
    }


RULES = (
    *front_rules("front"),
    down(
        "length",
        "drawer front, length",
        (fixed("opening_length"), fixed("least", -2.0)),
        "along the grain it hardly moves; the same small gap at both ends",
        fine=True,
    ),
)


def make(given: Given) -> MadePiece:
    """The front as cut: lower than its opening by the gap above it."""
    height, length = given.cut("height"), given.cut("length")
    opening, along = given.width.exact_m, given.length.exact_m
    sums = (
        Sum(
            "height of the opening", ((1, "front", height.exact_m), (1, "gap above", opening - height.exact_m)), opening
        ),
        Sum(
            "length of the opening",
            ((1, "front", length.exact_m), (2, "gap at each end", (along - length.exact_m) / 2)),
            along,
        ),
    )
    return fitted(given, "drawer front", length, height, sums)


def _joint(d: Drawn) -> list[Mark]:
    return joint(d, "drawer front", "rail above")


WAY = Way(
    key="drawer_front",
    name="solid front with room above",
    short="solid front",
    built_as="a solid front with room to grow above it",
    means="It fills its opening but for a small gap above, where it can grow.",
    also=("solid front set into its opening",),
    kinds=("drawer front",),
    fitted=True,
    numbers=numbers,
    cuts=RULES,
    states=front_states("front"),
    part="front",
    stopped_by=Limit(("gap_driest",), 0.25 * INCH_M, "the gap above it opens wider than {limit}"),
    opens=Opening("gap", "above the front", "gap_driest", "gap_dampest", "gap_today"),
    make=make,
    plan=plan,
    joint=_joint,
    shows="A drawer front in its opening: it stands on its lower edge and grows upward. Below, the gap to the rail "
    "above.",
    main_cuts=("height", "length"),
    driest="the gap above opens by {gap_shrink}",
    dampest="the gap above closes by {gap_growth} and stays open",
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
