"""A solid back of lapped (shiplapped) boards in rebates, each fixed at its middle."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Mark
from .drawn import Drawn, shape
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
    up("lap_width", "lap on each edge, width", REACH, "in the driest month the laps must still cover each other"),
    down("lap_thickness", "lap, thickness", (fixed("thickness", 0.5),), "half the board"),
    REBATE,
)


def make(given: Given) -> MadePiece:
    """Boards with a lap under the next one."""
    reach, thick = given.cut("lap_width"), given.thickness.exact_m
    lap = given.cut("lap_thickness").exact_m

    def section(begins: list[Fraction], face: Fraction) -> list[Section]:
        """Every board in two steps: what is seen, and below it what reaches under the next board."""
        found = []
        for number, at in enumerate(begins, start=1):
            low = at if number == 1 else at + reach.exact_m
            high = at + face + (reach.exact_m if number < len(begins) else ZERO)
            found += [
                Section("board", (at, at + face), (ZERO, thick - lap)),
                Section("board", (low, high), (thick - lap, thick)),
            ]
        return found

    return boarded(given, reach, "lap", section)


def joint(d: Drawn) -> list[Mark]:
    """Two boards that lap, in this month."""
    px, mid = d.px, 180.0
    half = 0.5 * px(d.piece["thickness"])
    gap = d.sizes["gap_today"] - d.moved("board")
    lap = d.sizes["lap_width"]
    edge = CENTRE + px(gap)
    left = [
        (LEFT, mid - half),
        (CENTRE, mid - half),
        (CENTRE, mid - 1.0),
        (CENTRE + px(lap), mid - 1.0),
        (CENTRE + px(lap), mid + half),
        (LEFT, mid + half),
    ]
    low = CENTRE + px(lap) + px(gap)
    right = [
        (edge, mid - half),
        (RIGHT, mid - half),
        (RIGHT, mid + half),
        (low, mid + half),
        (low, mid - 1.0),
        (edge, mid - 1.0),
    ]
    return [*shape(left, "wood"), *shape(right, "border-wood"), *board_words(d, mid, half, edge, gap)]


WAY = Way(
    key="lapped_back",
    name="back of lapped boards",
    short="lapped boards",
    built_as="a back of boards that lap",
    means="The boards overlap without glue, so that each moves by itself.",
    also=("lapped boards in rebates",),
    kinds=("back",),
    usual_for=("back",),
    boarded=True,
    numbers=numbers,
    cuts=RULES,
    states=states("lap kept", "lap_width"),
    part="back, all boards together,",
    opens=Opening("gap", "between two boards", "gap_driest", "gap_dampest", "gap_today"),
    make=make,
    order=ORDER,
    plan=plan,
    joint=joint,
    shows="A back of upright boards, each fixed along its own middle: every board narrows and widens by itself. "
    "Below, two boards that lap, and the gap between them.",
    main_cuts=("gap_today", "lap_width"),
    driest="each gap between boards opens by {board_narrowing} and stays covered",
    dampest="each gap between boards closes by {board_widening} and stays open",
    reasons=("Every board moves about its own middle, and the laps hide gaps that open and close.",),
    steps=STEPS,
    notes=(COARSE,),
    change="Boards that have to stay in line with each other, thin ones above all, would ask for tongues.",
    cautions=("Loose boards brace nothing: fix a tall case to the wall.",),
    watch="inside a board",
)
