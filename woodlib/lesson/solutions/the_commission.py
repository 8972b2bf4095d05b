"""The commission: predictions and exercises, from a brief to a decision."""

from __future__ import annotations

from functools import cache

from ...commission import Commission, chosen_brief, commission_of
from ...data_files import data_path
from ...units import write
from ...ways.verdict import Verdict
from . import exercise, prediction


@cache
def _demo(name: str) -> Commission:
    return commission_of(chosen_brief(data_path(f"briefs/{name}.toml")))


@prediction(
    "the-commission/glued-border",
    "The border is glued across both ends with the best glue there is. What happens in the first winters?",
    options=("The glue holds, so nothing happens", "The panel cracks or the joint opens", "The border bends and gives"),
)
def glued_border() -> tuple[str, str]:
    """Whether the kit would glue it."""
    glued = _demo("reading_nook_seat").glued
    options = glued_border.question.options
    return options[0] if glued is None or glued.allowed else options[1], (
        "Good glue is the trouble here: it is stronger than the wood beside it, and what cannot slide and cannot shrink "
        "tears."
    )


@prediction(
    "the-commission/over-the-year",
    "How far does the width of the seat, 20 in (508 mm), change over a year in this house?",
    kind="length",
    close="1/8 in",
)
def over_the_year() -> tuple[float, str]:
    """The whole seat, by the wood's own months."""
    moves = _demo("reading_nook_seat").whole_moves
    return float(moves.mid_m), f"With its honest range: {moves.text()}."


@exercise(
    "the-commission/half-as-wide",
    "The client of the seat (invented) would accept a panel half as wide, if only the border may be glued across "
    "its ends. "
    "What do you answer?",
    options=(
        "Half as wide moves half as far, so glue it",
        "It pulls just as hard, so no",
        "It pulls half as hard, so perhaps",
    ),
    misses={
        "Half as wide moves half as far, so glue it": "It does move half as far. But what breaks wood is the "
        "share of its "
        "width that it is kept from moving, and that share stays nearly the same.",
        "It pulls half as hard, so perhaps": "Slide the width with the glued border chosen: the stretch hardly "
        "changes.",
    },
    why="Strain is movement over width; halve both and nothing has changed. Width sets the size of a gap, not the risk "
    "of glue.",
    way="Choose the border glued across the ends in the study, slide the width, and watch the stretch.",
)
def half_as_wide() -> str:
    """The held-back strain at the brief's width and at the narrowest that its study has."""
    sliding = _demo("reading_nook_seat").sliding
    airs = sliding.driest.rh_percent, sliding.dampest.rh_percent
    wide, narrow = (float(sliding.at(*airs).judged("glued_border", width).most) for width in reversed(sliding.widths_m))
    return "It pulls just as hard, so no" if narrow > 0.99 * wide else "It pulls half as hard, so perhaps"


@exercise(
    "the-commission/slot-of-the-seat",
    "You build the seat with a breadboard end after all. How long is each outer slot, cut today?",
    kind="length",
    tolerance=0.0024,
    safe="up",
    misses={
        0.0095: "That is the pin alone; it needs room to travel both ways, and a little play.",
        0.0118: "That leaves room for the likely movement of an average board; a slot is cut for the careful end.",
    },
    why="Pin 3/8 in, play 1/16 in, and the tongue's travel past the pin, outward in July and inward in January; the "
    "sum is rounded up.",
    way="Choose the breadboard end in the study and add the two reaches of the outer slots.",
)
def slot_of_the_seat() -> float:
    """The first size of the breadboard's cut list."""
    return next(v for v in _demo("reading_nook_seat").verdicts if v.key == "breadboard").cut("outer_slot").metres


@exercise(
    "the-commission/serving-board",
    "The second brief: a riftsawn cherry serving board, 11 in (280 mm) wide, for a seaside flat (all invented). "
    "About how far does its width change over the year?",
    kind="movement",
    tolerance=0.0006,
    misses={
        0.006: "That is the seat. The board is little more than half as wide, of a wood that moves less, in air that "
        "swings less.",
        0.0033: "Flatsawn it would move more; these boards are riftsawn, halfway between flatsawn and quartersawn.",
    },
    why="Narrower, riftsawn, cherry, and a house by the sea: each makes it less.",
    way='Write chosen_brief("serving_board.toml") in the first cell and run the notebook again; or go back to lesson 2 '
    "and slide cherry, riftsawn, 9.0 to 12.6 %.",
)
def serving_board_moves() -> float:
    """Movement of the second demonstration over its year."""
    return _demo("serving_board").built.moves.mid_m


def _most() -> str:
    """The most that the serving board is stretched."""
    return write(float(_serving_board_glued().judged.most), "strain")


def _serving_board_glued() -> Verdict:
    return next(v for v in _demo("serving_board").verdicts if v.key == "glued_border")


@exercise(
    "the-commission/serving-board-border",
    "May the border be glued across the ends of that serving board?",
    options=(
        "Yes, it hardly moves",
        "No, it takes a set and may crack over the years",
        "No, it cracks in the first winter",
    ),
    misses={
        "Yes, it hardly moves": f"Little movement on a little width is the same share. The border stretches it by "
        f"up to {_most()}, and wood stays elastic only below 0.40 %.",
        "No, it cracks in the first winter": f"Wood starts to fail from 0.90 %, and here the stretch is at most {_most()}: "
        "it is strained rather than torn.",
    },
    why="Between 0.40 and 0.90 % wood keeps a set each damp summer and is pulled harder each dry winter. Shops do glue "
    "such boards, and some of them last; that is luck you cannot sell.",
    way="Compare the most that it is stretched with the two edges, 0.40 % and 0.90 %.",
)
def serving_board_border() -> str:
    """The step of risk of the glued border on the second demonstration."""
    level = _serving_board_glued().level
    return (
        "Yes, it hardly moves",
        "No, it takes a set and may crack over the years",
        "No, it cracks in the first winter",
    )[level]
