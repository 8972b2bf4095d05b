"""Exercises of the lesson on moisture in time: how long wood rests, and what a finish does about it."""

from __future__ import annotations

from ...air.year import Year
from ...moisture.drive import steady_air
from ...moisture.equilibrium import emc_percent
from ...moisture.finishes import find_finish
from ...moisture.following import follow
from ...moisture.resting import resting
from ...moisture.stock import Stock
from ...moisture.swing import year_inside
from . import exercise

_ROOM_C, _THIN_M, _THICK_M = 21.0, 0.0191, 0.0381


def _oak_days(thickness_m: float) -> float:
    return resting(Stock.of("white oak", thickness_m), _ROOM_C, 40.0, emc_percent(_ROOM_C, 65.0)).days.mid


@exercise(
    "a-week-in-the-shop/thick-leg",
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
    "a-week-in-the-shop/varnished-top",
    "A table top at 7 % has three coats of varnish above and bare wood below. It is delivered to a damp seaside flat "
    "(invented). "
    "What does it do in the first weeks?",
    options=("Its upper face goes hollow", "It stays flat", "Its upper face crowns"),
    misses={
        "It stays flat": "The two faces let water in at unlike speed, so that for a while one face is larger than the "
        "other.",
        "Its upper face crowns": "That would be so if the upper face took up water first; here the lower one is open.",
    },
    why="The bare underside takes up water first and grows, and the top dishes. Finish both faces alike.",
    way="Set the air from 35 % to 65 %, varnish above, bare below, and look at the six ends.",
)
def varnished_top() -> str:
    """The sign of the tilt after two weeks: above zero hollow on the first face."""
    top = Stock.of("white oak", _THIN_M, first_finish=find_finish("urethane varnish", 3))
    tilt = follow(top, steady_air(22.0, 65.0, days=14.0), 7.0).tilt_percent[-1, 1]
    return "Its upper face goes hollow" if tilt > 0 else "Its upper face crowns"


@exercise(
    "a-week-in-the-shop/oiled-year",
    "In the invented house the air asks a swing of 5.9 % MC of the wood each year. How large a swing does a seat of "
    "3/4 in (19 mm) oak make with three coats of linseed oil on both faces?",
    kind="moisture",
    tolerance=0.4,
    misses={
        0.0: "No finish of the table stops water; oil hardly slows it.",
        4.1: "That is what three coats of varnish leave. Oil lets through far more.",
        5.9: "Close, but even bare wood of this thickness does not follow the air all the way.",
    },
    why="Bare wood makes 5.4 %, oiled wood the same to the tenth: oil is for the hand and the eye.",
    way="Take the cell that lists the coats and write linseed oil in it.",
)
def oiled_year() -> float:
    """The yearly swing inside, both faces oiled."""
    oil = find_finish("linseed oil", 3)
    seat = Stock.of("white oak", _THIN_M, first_finish=oil, second_finish=oil)
    house = Year.from_seasons(winter=(20, 25), spring=(21, 42), summer=(24, 62), autumn=(21, 48))
    return year_inside(seat, house).swing_percent.mid


@exercise(
    "a-week-in-the-shop/pine-first",
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
