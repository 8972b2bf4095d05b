"""A solid back of loose boards in rebates: lapped (shiplapped) or tongued, each board fixed at its middle."""

from __future__ import annotations

from .parts import OPENING
from .piece import Allowances, Piece
from .registry import register
from .rules import CutRule, Facts, NoteRule, fixed, travel
from .travel import Quantities, at_fixing
from .way import Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of one board over its whole width, careful end; the number of boards does not matter to the joints."""
    return {
        **at_fixing(travels, "board", allowances.back_board_m),
        "board": allowances.back_board_m,
        "lap": allowances.lap_cover_m,
        "least": allowances.least_gap_m,
        "thickness": piece.thickness_m,
    }


GAP = CutRule(
    "gap_today",
    "gap between boards today",
    (fixed("least"), travel("board_widening")),
    "up",
    "in the dampest month the boards must not push each other and the case apart",
    fine=True,
)
EDGE_GAP = CutRule(
    "edge_gap_today",
    "gap between the outer boards and the case today",
    (fixed("least"), travel("board_widening", 0.5)),
    "up",
    "half a board's growth, because each board is fixed at its middle",
    fine=True,
)
REBATE = CutRule(
    "rebate_width",
    "rebate in the case, width",
    (fixed("lap"), fixed("least"), travel("board_widening", 0.5), travel("board_narrowing", 0.5)),
    "up",
    "in the driest month the outer boards must still be covered",
)
BOARDS = CutRule("board_width", "boards, face width", (fixed("board"),), "down", "narrow boards keep every gap small")
_REACH = (fixed("lap"), fixed("least"), travel("board_widening"), travel("board_narrowing"))

LAPPED_RULES = (
    BOARDS,
    GAP,
    EDGE_GAP,
    CutRule(
        "lap_width", "lap on each edge, width", _REACH, "up", "in the driest month the laps must still cover each other"
    ),
    CutRule("lap_thickness", "lap, thickness", (fixed("thickness", 0.5),), "down", "half the board"),
    REBATE,
)
TONGUED_RULES = (
    BOARDS,
    GAP,
    EDGE_GAP,
    CutRule("tongue_length", "tongue, length", _REACH, "down", "in the driest month it must still sit in its groove"),
    CutRule(
        "groove_depth",
        "groove for the tongue, depth",
        _REACH,
        "up",
        "in the dampest month the tongue must not reach the bottom",
    ),
    CutRule("tongue_thickness", "tongue, thickness", (fixed("thickness", 1 / 3),), "down", "a third of the board"),
    REBATE,
)


def _states(kept: str) -> tuple[CutRule, ...]:
    return (
        CutRule(
            "gap_driest",
            "gap between boards in the driest month",
            (fixed("least"), travel("board_widening"), travel("board_narrowing")),
            "up",
            "every board is at its narrowest",
            fine=True,
        ),
        CutRule(
            "gap_dampest",
            "gap between boards in the dampest month",
            (fixed("least"),),
            "down",
            "it stays open",
            fine=True,
        ),
        CutRule(
            "kept_driest", f"{kept} in the driest month", (fixed("lap"),), "down", "no light shows through", fine=True
        ),
    )


def _driest(facts: Facts) -> str:
    return f"each gap between boards opens by {facts.up_to('board_narrowing')} and stays covered"


def _dampest(facts: Facts) -> str:
    return f"each gap between boards closes by {facts.up_to('board_widening')} and stays open"


_COARSE = NoteRule(
    (fixed("board"), fixed("width", -0.5)),
    "fewer than two boards make up this back; choose narrower boards, or a frame and panel",
)
_STEPS = (
    "Fix each board at the middle of its width, one screw or nail at each end, never one at each edge.",
    "Set the gaps with slips of card or veneer; take the slips out.",
    "Finish laps and tongues before they go in, so that no bare line shows in the driest month.",
    "Such a back does not brace the case: it needs good corner joints, and a tall case is fixed to the wall.",
)

LAPPED_BACK = register(
    Way(
        key="lapped_back",
        name="back of lapped boards",
        short="lapped boards",
        built_as="a back of boards that lap",
        also=("lapped boards in rebates",),
        kinds=("back",),
        usual_for=("back",),
        boarded=True,
        numbers=numbers,
        cuts=LAPPED_RULES,
        states=_states("lap kept"),
        outside=OPENING,
        part="back, all boards together,",
        shows=(
            "A back of upright boards, each fixed along its own middle: every board narrows and widens by itself. "
            "Below, two boards that lap, and the gap between them."
        ),
        main_cuts=("gap_today", "lap_width"),
        driest=_driest,
        dampest=_dampest,
        reasons=("Every board moves about its own middle, and the laps hide gaps that open and close.",),
        steps=_STEPS,
        notes=(_COARSE,),
        change="Boards that have to stay in line with each other, thin ones above all, would ask for tongues.",
        cautions=("Loose boards brace nothing: fix a tall case to the wall.",),
        watch="inside a board",
    )
)

TONGUED_BACK = register(
    Way(
        key="tongued_back",
        name="back of tongued boards",
        short="tongued boards",
        built_as="a back of boards with tongues and grooves",
        also=("tongued boards in rebates",),
        kinds=("back",),
        usual_for=("back",),
        boarded=True,
        numbers=numbers,
        cuts=TONGUED_RULES,
        states=_states("tongue kept in its groove"),
        outside=OPENING,
        part="back, all boards together,",
        shows=(
            "A back of upright boards, each fixed along its own middle: every board narrows and widens by itself. "
            "Below, a tongue in its groove, and the gap between two boards."
        ),
        main_cuts=("gap_today", "tongue_length"),
        driest=_driest,
        dampest=_dampest,
        reasons=("Every board moves about its own middle, and tongues without glue keep the boards in line.",),
        steps=("Put no glue on the tongues.", *_STEPS),
        notes=(_COARSE,),
        change="Boards thick enough to stay flat alone would do with laps, which are easier to cut.",
        cautions=("Loose boards brace nothing: fix a tall case to the wall.",),
        watch="inside a board",
    )
)
