"""A back of loose boards, each fixed at its middle: what laps and tongues share."""

from __future__ import annotations

from math import ceil

from ..picture.scene import Circle, Mark, corners
from ..units.exact import INCH, MILLIMETRE
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, PLAN_WIDTH, Drawn, Number, end_wood, label, sized, wood
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import JointLine, MadePiece, Place, Size, Sum, WoodPart
from .making import ACROSS, ZERO, made
from .piece import Allowances, Piece
from .plan_drawing import sheet_box
from .rules import CutRule, NoteRule, down, fixed, travel, up
from .steps import CROSSCUT, SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from .travel import Quantities, at_fixing


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of one board over its whole width, careful end; the number of boards does not matter to the joints."""
    return {
        **at_fixing(travels, "board", allowances.back_board_m),
        "board": allowances.back_board_m,
        "lap": allowances.lap_cover_m,
        "least": allowances.least_gap_m,
        "thickness": piece.thickness_m,
    }


GAP = up(
    "gap_today",
    "gap between boards today",
    (fixed("least"), travel("board_widening")),
    "in the dampest month the boards must not push each other and the case apart",
    fine=True,
)


EDGE_GAP = up(
    "edge_gap_today",
    "gap between the outer boards and the case today",
    (fixed("least"), travel("board_widening", 0.5)),
    "half a board's growth, because each board is fixed at its middle",
    fine=True,
)


REBATE = up(
    "rebate_width",
    "rebate in the case, width",
    (fixed("lap"), fixed("least"), travel("board_widening", 0.5), travel("board_narrowing", 0.5)),
    "in the driest month the outer boards must still be covered",
)


BOARDS = down("board_width", "boards, face width", (fixed("board"),), "narrow boards keep every gap small")


REACH = (fixed("lap"), fixed("least"), travel("board_widening"), travel("board_narrowing"))


def states(kept: str, reach: str) -> tuple[CutRule, ...]:
    return (
        up(
            "gap_driest",
            "gap between boards in the driest month",
            (fixed("least"), travel("board_widening"), travel("board_narrowing")),
            "every board is at its narrowest",
            chain=((1, "gap_today"),),
            moves=(travel("board_narrowing"),),
        ),
        down(
            "gap_dampest",
            "gap between boards in the dampest month",
            (fixed("least"),),
            "it stays open",
            chain=((1, "gap_today"),),
            moves=(travel("board_widening", -1.0),),
        ),
        down(
            "kept_driest",
            f"{kept} in the driest month",
            (fixed("lap"),),
            "no light shows through",
            chain=((1, reach), (-1, "gap_today")),
            moves=(travel("board_narrowing", -1.0),),
        ),
    )


COARSE = NoteRule(
    (fixed("board"), fixed("width", -0.5)),
    "fewer than two boards make up this back; choose narrower boards, or a frame and panel",
)


STEPS = (
    "Fix each board at the middle of its width, one screw or nail at each end, never one at each edge.",
    "Set the gaps with slips of card or veneer; take the slips out.",
    "Finish laps and tongues before they go in, so that no bare line shows in the driest month.",
    "Such a back does not brace the case: it needs good corner joints, and a tall case is fixed to the wall.",
)


ORDER = (
    CROSSCUT,
    Step("number the boards and mark the show face", makes=["numbers"]),
    Step("flatten one face", ["rough lengths", "rough face"], ["flat face"], ["rough face"]),
    Step("joint one edge", ["flat face", "rough edge"], ["jointed edge"], ["rough edge"]),
    Step("plane to thickness", ["flat face"], ["parallel face"]),
    Step("rip to width", ["jointed edge", "parallel face"], [SQUARE_EDGE]),
    Step("cut to length", [SQUARE_EDGE], [SQUARE_ENDS]),
    Step("cut laps or tongues and grooves", [SQUARE_EDGE, SQUARE_ENDS], ["laps"], [SQUARE_EDGE]),
    Step("finish the boards, laps and all", ["laps"], ["finished boards"]),
    Step("fix each board at its middle, gaps as given", ["finished boards"], [TOGETHER]),
)


def boarded(given: Given, reach: Size, joint: str, section) -> MadePiece:
    """Boards that fill the opening exactly with their gaps: as many as keep each no wider than the cut list's."""
    opening, long = given.width.exact_m, given.length.exact_m
    gap = given.cut("gap_today").exact_m
    edge = given.cut("edge_gap_today").exact_m
    widest = given.cut("board_width").exact_m
    count = max(1, ceil((opening - 2 * edge + gap) / (widest + gap)))
    step = MILLIMETRE / 2 if given.first == "metric" else INCH / 64
    rest = opening - 2 * edge - (count - 1) * gap
    face = rest / count // step * step  # as it can be marked; the last board takes what is left
    ends = rest - (count - 1) * face
    why = f"the opening less its gaps, shared by {count} boards"
    board = WoodPart(
        "board",
        count - 1,
        given.length,
        Size(face + reach.exact_m, f"{why}, with the {joint} of the cut list", "down"),
        given.thickness,
        "strip",
        (long, face),
        f"face and {joint}",
    )
    last = WoodPart(
        "last board",
        1,
        given.length,
        Size(ends, f"{why}: what the others leave", "down"),
        given.thickness,
        note=f"without a {joint}",
    )
    begins = [edge + number * (face + gap) for number in range(count)]
    names = ["board"] * (count - 1) + ["last board"]
    faces = [face] * (count - 1) + [ends]
    terms = (
        (count - 1, "face of a board", face),
        (1, "face of the last board", ends),
        (count - 1, "gap", gap),
        (2, "gap at the case", edge),
    )
    return made(
        given,
        [part for part in (board, last) if part.count],
        (Sum(ACROSS, terms, opening),),
        (Place(name, (ZERO, long), (at, at + wide)) for name, at, wide in zip(names, begins, faces, strict=True)),
        section(begins, face),
        lines=tuple(
            JointLine(f"gap {n}", "along", at - gap / 2, at - gap, at - gap + reach.exact_m, True)
            for n, at in enumerate(begins[1:], 1)
        ),
    )


def plan(d: Drawn) -> list[Mark]:
    """Four boards upright in a case, each about its own middle."""
    change = d.width_change / d.piece["width"] * d.scale.times
    pitch = (PLAN_WIDTH - 28.0) / 4.0
    top, low = MIDDLE - 110.0, MIDDLE + 110.0
    sides = [corners(x, top, x + 14.0, low) for x in (PLAN_LEFT, PLAN_RIGHT - 14.0)]
    marks = [*end_wood(sides[0], from_above=True), *end_wood(sides[1], from_above=True)]
    for k in range(4):
        middle, half = PLAN_LEFT + 14.0 + pitch * (k + 0.5), 0.5 * pitch * 0.7 * (1.0 + change)
        marks += wood(
            corners(middle - half, top, middle + half, low),
            along="y",
            seed=k + 1,
            within=sheet_box(middle - 0.5 * pitch, middle + 0.5 * pitch),
        )
        marks += [Circle(middle, y, 3.0, "metal", filled=True) for y in (top + 12.0, low - 12.0)]
    return marks


def board_words(d: Drawn, mid: float, half: Number, edge: Number, gap: Number) -> list[Mark]:
    return [
        label(LEFT + 6.0, mid - half - 8.0, "board"),
        label(RIGHT, mid - half - 8.0, "next board", "end"),
        *sized((CENTRE, mid - half - 26.0), (edge, mid - half - 26.0), gap, "nearest"),
    ]
