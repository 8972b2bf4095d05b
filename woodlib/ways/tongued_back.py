"""A solid back of tongued boards in rebates, each fixed at its middle."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Mark, corners
from .drawn import Drawn, end_wood, hollow, shape
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .loose_boards import (
    BOARDS,
    COARSE,
    EDGE_GAP,
    GAP,
    ORDER,
    REACH,
    REBATE,
    STEPS,
    board_words,
    boarded,
    numbers,
    plan,
    states,
)
from .made import MadePiece, Section
from .making import ZERO
from .rules import down, fixed, up
from .way import Opening, Way

RULES = (
    BOARDS,
    GAP,
    EDGE_GAP,
    down("tongue_length", "tongue, length", REACH, "in the driest month it must still sit in its groove"),
    up(
        "groove_depth",
        "groove for the tongue, depth",
        REACH,
        "in the dampest month the tongue must not reach the bottom",
    ),
    down("tongue_thickness", "tongue, thickness", (fixed("thickness", 1 / 3),), "a third of the board"),
    REBATE,
)


def make(given: Given) -> MadePiece:
    """Boards with a tongue in the next one."""
    reach, thick = given.cut("tongue_length"), given.thickness.exact_m
    tongue = given.cut("tongue_thickness").exact_m

    def section(begins: list[Fraction], face: Fraction) -> list[Section]:
        """Every board, and its tongue in the next one."""
        middle = (thick - tongue) / 2, (thick + tongue) / 2
        boards = [Section("board", (at, at + face), (ZERO, thick)) for at in begins]
        ends = [at + face for at in begins[:-1]]
        return [*boards, *(Section("tongue", (end, end + reach.exact_m), middle, loose=True) for end in ends)]

    return boarded(given, reach, "tongue", section)


def joint(d: Drawn) -> list[Mark]:
    """A board's tongue in the next one's groove, in this month."""
    px, mid = d.px, 180.0
    half, thin = 0.5 * px(d.piece["thickness"]), 0.5 * px(d.sizes["tongue_thickness"])
    gap = d.sizes["gap_today"] - d.moved("board")
    edge, depth = CENTRE + px(gap), px(d.sizes["groove_depth"])
    return [
        *end_wood(corners(LEFT, mid - half, CENTRE, mid + half), "wood"),
        *end_wood(corners(edge, mid - half, RIGHT, mid + half), "border-wood"),
        *hollow(corners(edge, mid - thin - 1.0, edge + depth, mid + thin + 1.0)),
        *shape(corners(CENTRE, mid - thin, CENTRE + px(d.sizes["tongue_length"]), mid + thin), "wood"),
        *board_words(d, mid, half, edge, gap),
    ]


WAY = Way(
    key="tongued_back",
    name="back of tongued boards",
    short="tongued boards",
    built_as="a back of boards with tongues and grooves",
    means="The boards reach into each other without glue, so that each moves by itself.",
    also=("tongued boards in rebates",),
    kinds=("back",),
    usual_for=("back",),
    boarded=True,
    numbers=numbers,
    cuts=RULES,
    states=states("tongue kept in its groove", "tongue_length"),
    part="back, all boards together,",
    opens=Opening("gap", "between two boards", "gap_driest", "gap_dampest", "gap_today"),
    make=make,
    order=ORDER,
    plan=plan,
    joint=joint,
    shows="A back of upright boards, each fixed along its own middle: every board narrows and widens by itself. "
    "Below, a tongue in its groove, and the gap between two boards.",
    main_cuts=("gap_today", "tongue_length"),
    driest="each gap between boards opens by {board_narrowing} and stays covered",
    dampest="each gap between boards closes by {board_widening} and stays open",
    reasons=("Every board moves about its own middle, and tongues without glue keep the boards in line.",),
    steps=("Put no glue on the tongues.", *STEPS),
    notes=(COARSE,),
    change="Boards thick enough to stay flat alone would do with laps, which are easier to cut.",
    cautions=("Loose boards brace nothing: fix a tall case to the wall.",),
    watch="inside a board",
)
