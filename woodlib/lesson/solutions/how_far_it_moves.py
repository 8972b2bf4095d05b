"""How far a panel moves: predictions and exercises."""

from __future__ import annotations

from ...moisture.equilibrium import emc_percent
from ...movement.board import Board
from ...movement.spread import width_movement
from ...units import both
from . import exercise, prediction

_INCH_M = 0.0254
_ROOM_C, _WINTER_RH, _SUMMER_RH = 21.0, 25.0, 62.0
_HOUSE = tuple(float(emc_percent(_ROOM_C, humidity)) for humidity in (_WINTER_RH, _SUMMER_RH))


@prediction(
    "how-far-it-moves/seat-movement",
    "The seat is 20 in (508 mm) wide across the grain. Bare, and in step with the air, how much wider is it in the dampest "
    "month than in the driest?",
    kind="movement",
    close="1/16 in",
)
def seat_movement() -> tuple[float, str]:
    """Flatsawn, from the driest to the dampest month."""
    return _seat(), "Nearly a quarter of an inch for each foot: more than most people say."


@prediction(
    "how-far-it-moves/seat-direction",
    "The seat is 44 in (1118 mm) long and 20 in (508 mm) wide. Which size changes more over the year?",
    options=("The length", "The width", "Both by the same share"),
)
def seat_direction() -> tuple[str, str]:
    """Width against length."""
    change = Board("white oak", 20 * _INCH_M, 0.875 * _INCH_M, 44 * _INCH_M).change(*_HOUSE)
    words = (
        f"The width changes by {both(change.width_m)}, the length, more than twice as long, "
        f"by {both(change.length_m, 64, 0.1)}."
    )
    return "The width" if change.width_m > change.length_m else "The length", words


@prediction(
    "how-far-it-moves/seat-of-strips",
    "You glue the seat up from eight strips instead of four boards, all of the same oak. How far does it move?",
    options=("Less: narrow strips move less", "Less: the glue lines hold it", "As far as before"),
)
def seat_of_strips() -> tuple[str, str]:
    """Eight strips of an eighth of the width each."""
    strip = _seat(width_in=2.5)
    words = f"Each of eight strips 2-1/2 in (64 mm) wide moves {both(strip, 64, 0.1)}; eight of them together {both(8 * strip)}."
    less = 8 * strip < 0.98 * _seat()
    return "Less: narrow strips move less" if less else "As far as before", words


def _seat(ring_angle_deg: float = 0.0, width_in: float = 20.0) -> float:
    board = Board("white oak", width_in * _INCH_M, 0.875 * _INCH_M, 44 * _INCH_M, ring_angle_deg)
    return board.change(*_HOUSE).width_m


@exercise(
    "how-far-it-moves/quartersawn-seat",
    "The same house (25 % to 62 %), the same white oak, 20 in (508 mm) wide, but every board quartersawn. "
    "How far does the seat move over the year?",
    kind="movement",
    tolerance=_INCH_M / 32,
    misses={
        _seat(): "That is the flatsawn seat. Quartersawn, the width lies along the rays, and wood moves less that way.",
        0.0: "Quartersawn wood moves less, not nothing: in white oak about half as far.",
    },
    why="Half as far as flatsawn, and the boards stay flatter too: that is what the dearer stock is paid for.",
    way="Slide the rings to 90° and leave everything else as it stands.",
)
def quartersawn_seat() -> float:
    """The radial movement from the driest to the dampest month."""
    return _seat(90.0)


@exercise(
    "how-far-it-moves/twice-the-width",
    "A table top of the same flatsawn oak is 30 in (762 mm) wide instead of 20 in (508 mm). How far does it move?",
    options=("Half as far again; a foot as before", "Half as far again, and so a foot", "It moves as far as before"),
    misses={
        "Half as far again, and so a foot": "Each foot of wood sees the same air; that there are more feet beside it changes nothing for it.",
        "It moves as far as before": "The swing is the same for each foot, and there are more feet of it to add up.",
    },
    why="Movement is a share of the width, so it is enough to remember it for one foot.",
    way="Slide the width and watch the second line of the readings.",
)
def twice_the_width() -> str:
    """Compare 30 with 20 inches, whole and by the foot."""
    small, large = _seat(), _seat(width_in=30.0)
    options = twice_the_width.question.options
    if abs(large / small - 1.5) > 1e-6:
        return options[2]
    return options[0] if abs(large / 30.0 - small / 20.0) < 1e-9 else options[1]


@exercise(
    "how-far-it-moves/serving-board",
    "A flatsawn cherry serving board, 10 in (254 mm) wide and planed at 7 %, goes to a seaside flat where wood comes to "
    "rest at 12 % (both invented). How much wider does it get?",
    kind="movement",
    tolerance=_INCH_M / 32,
    misses={
        Board("black cherry", 10 * _INCH_M, 0.02, 0.35)
        .change(0, 12)
        .width_m: "It was not bone dry when it was planed: only the way from 7 % to 12 % counts.",
        Board("white oak", 10 * _INCH_M, 0.02, 0.35)
        .change(7, 12)
        .width_m: "That is white oak; cherry moves a third less.",
    },
    why="Five points of moisture, a quarter of a percent of the width for each: 1.2 % of 10 in.",
    way="Take 0.00248 of the width for each point of moisture (cherry, flatsawn), and five points.",
)
def serving_board() -> float:
    """The handbook's coefficient times width times five points."""
    return Board("black cherry", 10 * _INCH_M, 0.02, 0.35).change(7, 12).width_m


@exercise(
    "how-far-it-moves/which-number-to-cut",
    "The gap must never close. The seat grows by about 1/4 in (6.5 mm) until the dampest month, could be 1/8 to 3/8 in "
    "(3 to 9.5 mm). How wide do you cut the gap today?",
    kind="length",
    tolerance=_INCH_M / 32,
    misses={
        0.25 * _INCH_M: "That serves the average board. One board in two moves further, and then the gap is closed.",
        0.125 * _INCH_M: "That is the lucky end of the range; nearly every board moves further.",
        0.75 * _INCH_M: "Safe, but nobody wants to look at it; the range already holds nine boards in ten.",
    },
    why="A gap that must not close takes the upper end, rounded up; a tongue that must not fall out takes it too.",
    way="Ask which end of the range does the harm: here the board that grows furthest.",
)
def which_number_to_cut() -> float:
    """The upper end of the range in the dampest month of the house, from 8 %."""
    oak = Board("white oak", 20 * _INCH_M, 0.875 * _INCH_M, 44 * _INCH_M)
    return round(width_movement(oak, 8.0, 11.2).high_m / (_INCH_M / 16)) * (_INCH_M / 16)
