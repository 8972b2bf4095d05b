"""One question at the bench, one line back: how far does this board move, and what if its ends are held?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sin

from .brief.values import RING_ANGLES_DEG
from .errors import InputError, Problems
from .moisture.equilibrium import emc_percent
from .movement.board import Board
from .movement.coefficients import LINEAR_FROM_PERCENT, LINEAR_TO_PERCENT
from .movement.spread import USUAL_DOUBTS, Movement, width_movement
from .units import metres, number_in, shown, write

ROOM_C = 21.0
"""Temperature of the room where none is given; a change of 5 K moves the answer by about 0.2 % MC."""
DRIEST_ROOM_PERCENT = 20.0
"""Below this no room stays for weeks, so both numbers are more likely meant as moisture of the wood."""
THICKNESS_M, SHAPE = 0.019, 2.0
"""Of a panel whose ends are glued, where they are not given: 3/4 in, and twice as long as it is wide."""


@dataclass(frozen=True)
class Question:
    """A board of a wood and the two moistures (%) between which it goes; ``air_percent`` the two humidities they come from."""

    wood: str
    board: Board
    mc_percent: tuple[float, float]
    air_percent: tuple[float, float] | None
    temperature_c: float


def read_question(words: Sequence[str], temperature: str = "", thickness: str = "", length: str = "") -> Question:
    """The question in ``WIDTH WOOD CUT FROM TO``, with ``MC`` or ``RH`` behind any of the last two, or behind both.

    Raises :class:`InputError` with a sentence for each word that cannot be taken.

    >>> read_question(["18 in", "white ash", "flatsawn", "8%", "12%", "MC"]).mc_percent
    (8.0, 12.0)
    """
    parts = [part for word in words for part in _split_share(word)]
    share = {part.casefold() for part in parts if part.casefold() in ("mc", "rh")}
    given = [part for part in parts if part.casefold() not in ("mc", "rh")]
    if len(given) != 5 or len(share) > 1:
        raise InputError(
            f"move takes five things and got {len(given)}: width, wood, cut, from, to; for example "
            '"18 in" "white ash" flatsawn 35% 65%, or 8% 12% MC for moisture of the wood instead of air.'
        )
    width, wood, cut, *ends = given
    problems = Problems()
    room = _read(problems, lambda: number_in(temperature, "degC", name="temperature") if temperature else ROOM_C)
    wide = _read(problems, lambda: metres(width, name="width", positive=True))
    angle = _read(problems, lambda: _ring_angle(cut))
    start, end = (
        _read(problems, lambda text=text, name=name: number_in(text, "percent", name=name, default_unit="percent"))
        for name, text in zip(("from", "to"), ends, strict=True)
    )
    thick = _read(problems, lambda: metres(thickness, name="thickness", positive=True) if thickness else THICKNESS_M)
    long = _read(problems, lambda: metres(length, name="length", positive=True) if length else SHAPE * (wide or 1.0))
    problems.raise_if_any()
    board = Board(wood, wide, thick, long, ring_angle_deg=angle)
    if share == {"mc"}:
        return Question(wood, board, (start, end), None, room)
    if not share and max(start, end) < DRIEST_ROOM_PERCENT:
        raise InputError(
            f"{ends[0]} and {ends[1]} would be drier air than any room keeps; for moisture of the wood write "
            f"{ends[0]} {ends[1]} MC, for air write RH behind them."
        )
    return Question(wood, board, _resting(room, start, end), (start, end), room)


def _resting(temperature_c: float, first_rh: float, second_rh: float) -> tuple[float, float]:
    """The moistures at which wood comes to rest in two airs, %."""
    return float(emc_percent(temperature_c, first_rh)), float(emc_percent(temperature_c, second_rh))


def _split_share(word: str) -> list[str]:
    """``12% MC`` typed as one word means the same as two."""
    text = word.strip()
    for share in ("MC", "RH"):
        if text.casefold().endswith(share.casefold()) and text[: -len(share)].strip().endswith("%"):
            return [text[: -len(share)].strip(), share]
    return [text]


def _ring_angle(cut: str) -> float:
    wanted = cut.strip().casefold()
    if wanted in RING_ANGLES_DEG:
        return RING_ANGLES_DEG[wanted]
    try:
        return number_in(cut, "degree", name="cut")
    except InputError:
        known = ", ".join(RING_ANGLES_DEG)
        raise InputError(
            f"cut is {shown(cut)}; it must be {known}, or the angle of the rings, for example 30 deg."
        ) from None


def _read(problems: Problems, reading):
    try:
        return reading()
    except InputError as error:
        problems.absorb(error)
        return None


def answer(question: Question, why: bool = False, ends: str = "") -> list[str]:
    """The answer in lines: the movement, then what held ends would do, then the steps.

    ``ends`` the width of a border glued across both ends, for example ``2 in``; empty for free ends.

    >>> answer(read_question(["18 in", "white ash", "flatsawn", "35%", "65%"]))
    ['about 1/4 in (6.5 mm) wider, could be 3/16 to 3/8 in (5 to 9.5 mm)']
    """
    move = width_movement(question.board, *question.mc_percent, USUAL_DOUBTS)
    lines = [_moved(move)]
    if ends:
        lines += _held(question, ends)
    if why:
        lines += _steps(question, move)
    return lines


def _moved(move: Movement) -> str:
    about, comma, spread = move.text().partition(",")
    if not move.mid_m or about.startswith("less"):
        return move.text()
    return f"{about} {'wider' if move.mid_m > 0 else 'narrower'}{comma}{spread}"


def _held(question: Question, ends: str) -> list[str]:
    """The pull on a panel whose ends are glued to a border, and its odds; glued half-way between the two moistures."""
    from .restraint.held import held_panel

    board, moistures = question.board, question.mc_percent
    border = metres(ends, name="border of the glued ends", positive=True)
    held = held_panel(
        question.wood,
        width_m=board.width_m,
        length_m=max(board.length_m - 2.0 * border, 0.25 * board.width_m),
        thickness_m=board.thickness_m,
        strip_width_m=border,
        ring_angle_deg=board.ring_angle_deg,
        glue_up_mc_percent=0.5 * sum(moistures),
        year_mc_percent=(max(moistures), min(moistures)),
    )
    middle = write(0.5 * sum(moistures), "moisture")
    pull = write(held.season.relaxed_pa, "stress")
    return [
        f"ends glued to a border {write(border, 'length')} wide at {middle}: pulled by about {pull} in the driest month",
        held.chance_sentence,
    ]


def _steps(question: Question, move: Movement) -> list[str]:
    board, (start, end) = question.board, question.mc_percent
    wood = board.wood
    turn = radians(board.ring_angle_deg)
    coefficient = wood.tangential_coefficient * cos(turn) ** 2 + wood.radial_coefficient * sin(turn) ** 2
    by_hand = 1000.0 * board.width_m * coefficient * (end - start)
    outside = min(start, end) < LINEAR_FROM_PERCENT or max(start, end) > LINEAR_TO_PERCENT
    lines = []
    if question.air_percent:
        dry, damp = (write(percent, "humidity") for percent in question.air_percent)
        lines.append(
            f"  air of {dry} at {write(question.temperature_c, 'temperature')} brings wood to {start:.2f} % MC, "
            f"{damp} to {end:.2f} % MC (Wood Handbook FPL-GTR-190, eq. 4-5)"
        )
    lines += [
        f"  {wood.name} with its rings at {write(board.ring_angle_deg, 'angle')} moves {100 * coefficient:.3f} % of its "
        "width for each % of moisture (the same, chapter 13)",
        f"  {write(board.width_m, 'length')} x {100 * coefficient:.3f} % x {end - start:+.2f} = {by_hand:+.1f} mm",
        *(
            [f"  beyond 6 to 14 % MC the total shrinkage takes over: {1000 * move.mid_m:+.1f} mm in all"]
            if outside
            else []
        ),
        f"  the range holds nine boards in ten: boards of one wood differ by {100 * USUAL_DOUBTS.species_share:.0f} %, "
        f"the rings by {USUAL_DOUBTS.ring_angle_deg:.0f} degrees, each moisture by {USUAL_DOUBTS.meter_percent:.0f} point",
        *(f"  {remark}" for remark in move.remarks),
    ]
    return lines
