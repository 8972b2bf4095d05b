"""Is it ready: predictions and exercises on how long wood rests."""

from __future__ import annotations

from ...moisture.drive import steady_air
from ...moisture.equilibrium import emc_percent
from ...moisture.finishes import CLOSED
from ...moisture.following import follow
from ...moisture.resting import resting
from ...moisture.stock import Stock
from . import exercise, prediction

_ROOM_C, _THIN_M, _THICK_M = 21.0, 0.0191, 0.0381


@prediction(
    "is-it-ready/oak-week",
    "An oak board, 3/4 in (19 mm) thick, at 12 % moisture, stands free in air in which wood comes to rest at 7.7 %. What is "
    "its moisture, on average, after one week?",
    kind="moisture",
    close="0.4 %",
)
def oak_week() -> tuple[float, str]:
    """The middle speed, both faces open."""
    rest = resting(Stock.of("white oak", _THIN_M), _ROOM_C, 40.0, emc_percent(_ROOM_C, 65.0))
    return rest.after_week_percent.mid, (
        "Less than half of the way. The first tenth of an inch is there; the middle has hardly heard of it."
    )


@prediction(
    "is-it-ready/on-the-bench",
    "The same board lies flat on the bench instead, planed flat, bare, in the dry shop. After a week?",
    options=("Still flat", "Its upper face is hollow", "Its upper face is crowned"),
)
def on_the_bench() -> tuple[str, str]:
    """The sign of the tilt after a week with the lower face closed: above zero hollow on the closed face."""
    board = Stock.of("white oak", _THIN_M, second_finish=CLOSED)
    tilt = follow(board, steady_air(_ROOM_C, 40.0, days=7.0), float(emc_percent(_ROOM_C, 65.0))).tilt_percent[-1, 1]
    words = "Only the upper face can dry, so only it shrinks, and pulls the edges up. A damp underside and a dry top make a dish."
    return ("Its upper face is hollow" if tilt > 0 else "Its upper face is crowned"), words


def _oak_days(thickness_m: float) -> float:
    return resting(Stock.of("white oak", thickness_m), _ROOM_C, 40.0, emc_percent(_ROOM_C, 65.0)).days.mid


@exercise(
    "is-it-ready/thick-leg",
    "The oak boards of this lesson, 3/4 in (19 mm) thick, need about four weeks on stickers. How many days do the "
    "1-1/2 in (38 mm) planks for a table top need in the same air?",
    kind="days",
    tolerance=12.0,
    misses={
        28.0: "That is for the boards. Water in the middle of the plank has twice as far to go, through more wood that "
        "is in its way.",
        56.0: "Twice the way takes more than twice the time: with twice as much water and half the fall, near four "
        "times.",
    },
    why="Twice as thick, nearly four times as long: about sixteen weeks, could be five to twenty-seven.",
    way="Put the thickness of the study at 1-1/2 in, both faces bare, and read the days.",
)
def thick_leg() -> float:
    """Days of the thick blank at the middle speed."""
    return _oak_days(_THICK_M)


@exercise(
    "is-it-ready/pine-first",
    "Pine and oak boards of one thickness come into the same air. Which is ready first?",
    options=("The oak", "The pine", "Both on the same day"),
    misses={
        "The oak": "Oak is the denser wood: more wall for water to creep through, and more water in every inch.",
        "Both on the same day": "They come to rest at the same moisture, but not in the same time.",
    },
    why="Pine of half the density is about three times as fast. Where a wood rests is the air's doing, how soon is "
    "its own.",
    way="Change the wood in the study and watch the days.",
)
def pine_first() -> str:
    """Days of a pine board against days of an oak board."""
    pine = resting(Stock.of("eastern white pine", _THIN_M), _ROOM_C, 40.0, emc_percent(_ROOM_C, 65.0)).days.mid
    return "The pine" if pine < _oak_days(_THIN_M) else "The oak"


@exercise(
    "is-it-ready/planed-too-soon",
    "A board lies on the bench, damp below and dry above, its upper face hollow. You plane it flat and put it on stickers. What "
    "does its upper face do as it comes to rest?",
    options=("It stays flat", "It goes hollow again", "It crowns"),
    misses={
        "It stays flat": "It was flat only while its faces were unlike; on stickers they become alike.",
        "It goes hollow again": "It went hollow while the lower face was damper. Now the lower face dries and shrinks as well.",
    },
    why="The cup from unlike faces goes by itself. Planed away, it comes back the other way round.",
    way="Ask which face still has to shrink.",
)
def planed_too_soon() -> str:
    """What the tilt does from the bench to the end: it was above zero when planed, and goes back to none."""
    bench = Stock.of("white oak", _THIN_M, second_finish=CLOSED)
    damp = follow(bench, steady_air(_ROOM_C, 40.0, days=7.0), float(emc_percent(_ROOM_C, 65.0))).tilt_percent[-1, 1]
    return "It crowns" if damp > 0 else "It goes hollow again"
