"""A solid door or lid set into an opening with a reveal, hung along one long edge."""

from __future__ import annotations

from ..picture.scene import Mark
from .drawn import Drawn
from .given import Given
from .made import MadePiece, Sum
from .opening import fitted, joint, plan
from .piece import Allowances, Piece
from .rules import INCH_M, down, fixed, travel, up
from .travel import Quantities, in_opening
from .way import Limit, Opening, Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Growth and shrinkage of a panel that is held by hinges along one edge and just clears at the other."""
    return {
        **in_opening(travels, "gap", travels["width"], 2.0 * allowances.least_gap_m),
        "opening": travels["width"],
        "opening_length": piece.length_m,
        "least": allowances.least_gap_m,
    }


RULES = (
    down(
        "panel_width",
        "panel, width across the grain",
        (fixed("opening"), fixed("least", -2.0), travel("gap_growth", -1.0)),
        "in the dampest month it must still clear at the free edge",
        chain=((1, "opening"), (-1, "hinged_gap"), (-1, "least")),
        moves=(travel("gap_growth", -1.0),),
    ),
    down(
        "panel_length",
        "panel, length along the grain",
        (fixed("opening_length"), fixed("least", -2.0)),
        "along the grain it hardly moves; the same small gap at both ends",
        fine=True,
    ),
    up("hinged_gap", "reveal at the hinged edge", (fixed("least"),), "hinges hold this edge where it is", fine=True),
    up(
        "gap_today",
        "reveal at the free edge today",
        (fixed("least"), travel("gap_growth")),
        "all of the movement shows here",
        chain=((1, "opening"), (-1, "panel_width"), (-1, "hinged_gap")),
    ),
)


STATES = (
    up(
        "gap_driest",
        "reveal at the free edge in the driest month",
        (fixed("least"), travel("gap_growth"), travel("gap_shrink")),
        "the panel is at its narrowest",
        chain=((1, "gap_today"),),
        moves=(travel("gap_shrink"),),
    ),
    down(
        "gap_dampest",
        "reveal at the free edge in the dampest month",
        (fixed("least"),),
        "it still clears",
        chain=((1, "gap_today"),),
        moves=(travel("gap_growth", -1.0),),
    ),
)


def make(given: Given) -> MadePiece:
    """A door or lid as cut: less than its opening by the reveals."""
    width, length = given.cut("panel_width"), given.cut("panel_length")
    hinged, opening = given.cut("hinged_gap").exact_m, given.width.exact_m
    free = opening - width.exact_m - hinged
    sums = (
        Sum(
            "across the opening",
            ((1, "hinged reveal", hinged), (1, "panel", width.exact_m), (1, "free reveal today", free)),
            opening,
        ),
        Sum(
            "along the opening",
            ((1, "panel", length.exact_m), (2, "reveal at each end", (given.length.exact_m - length.exact_m) / 2)),
            given.length.exact_m,
        ),
    )
    return fitted(given, "panel", length, width, sums)


def _joint(d: Drawn) -> list[Mark]:
    return joint(d, "door or lid", "frame")


WAY = Way(
    key="inset_panel",
    name="plain panel set into an opening",
    short="panel in an opening",
    built_as="a plain panel set into an opening with room on one side",
    means="It sits in its opening with a small gap on one side, where it can grow.",
    also=("solid door or lid set into an opening",),
    kinds=("lid", "seat", "door panel"),
    fitted=True,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(("gap_driest",), 0.5 * INCH_M, "its gap opens wider than {limit}"),
    opens=Opening("gap", "at the free edge", "gap_driest", "gap_dampest", "gap_today"),
    make=make,
    plan=plan,
    joint=_joint,
    shows="A panel in its opening: it keeps its hinged edge and grows towards the free one. Below, the gap at the "
    "free edge.",
    main_cuts=("hinged_gap", "panel_length"),
    driest="the reveal at the free edge opens by {gap_shrink}",
    dampest="the reveal at the free edge closes by {gap_growth} and stays open",
    reasons=("Hung along one edge, the panel grows and shrinks at the other, into a reveal that is left for it.",),
    steps=(
        "Fit the hinged edge and both ends first, then plane the free edge to the reveal given.",
        "Give the catch the same travel as the reveal: a slotted strike, or a magnet on the frame.",
        "Keep the panel flat with battens in slots; hinges do not.",
        "A lid needs a stay and room for fingers: it falls.",
    ),
    remarks=("a reveal that is even all round today will be uneven in other months; a small bead hides it",),
    change="A reveal that is too wide for the eye would ask for a frame and panel: only its two stiles move.",
    cautions=(
        "A lid falls: fit a stay that holds it open by itself, and leave room for fingers at the hinges.",
        "A tall case with a heavy door is fixed to the wall, as local codes ask.",
    ),
)
