"""Study: a board comes into other air. How fast does its moisture follow, does it cup on the way, and when is it ready?

The two airs hold still, at one temperature, so that the film of the board's inside is a short sum of fading shapes
(:mod:`woodlib.moisture.two_faces`) and costs a slider next to nothing.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from ..air.sorption import sorption_percent
from ..moisture.finishes import CLOSED, Finish, find_finish
from ..moisture.rates import rate, readiness_limit
from ..moisture.step_days import USUAL_PERCENT, decided_days, slow_mid_fast
from ..movement.shape import cup_m
from ..movement.wood import wood_of
from ..species import find_species
from ..study import Answer, Choice, Reading, Span, study
from ..units.exact import INCH_M
from ..words.decided import Decided, Pick, Sliding, pick, size_of
from ..words.many import at_each
from ..words.say import Said, count, days, fine_length, length, moisture, say, small_length
from .week_pictures import CUP_TIMES, FILM_DAYS, Curves, Film, curves, film_picture

WOODS = ("white oak", "black cherry", "eastern white pine")
ROOM_TEMPERATURE_C = 21.0
WIDTH_M, PITH_DISTANCE_M = 8 * INCH_M, 4 * INCH_M
TOPS = {"bare": "bare", "oil": "linseed oil, 3 coats", "varnish": "urethane varnish, 3 coats"}
BOTTOMS = {"bare": "bare", "varnish": "urethane varnish, 3 coats", "bench": "lies flat on the bench"}
_FINISHES = {"bare": ("bare", None), "oil": ("linseed oil", 3), "varnish": ("urethane varnish", 3)}
_MARGIN = readiness_limit("margin_percent")
_FLAT = readiness_limit("flat_within_m")


@study(
    "a-week-in-the-shop",
    "A board comes into other air. How fast does its inside follow, and does it cup on the way?",
    [
        Choice("species", "Wood", WOODS, "white oak"),
        Span("thickness", "Thickness", "length", 0.625 * INCH_M, 1.75 * INCH_M, INCH_M / 8, 0.75 * INCH_M),
        Span("before", "Air it comes from", "humidity", 25.0, 75.0, 1.0, 65.0),
        Span("after", "Air it comes into", "humidity", 25.0, 75.0, 1.0, 40.0),
        Choice("top", "Upper face", TOPS, "bare"),
        Choice("bottom", "Lower face", BOTTOMS, "bench"),
    ],
    more=("species",),
)
def week_in_the_shop(species: str, thickness: float, before: float, after: float, top: str, bottom: str) -> Answer:
    """Moisture inside after one week, days until ready, and the cup that passes and that stays."""
    start, home = (sorption_percent(ROOM_TEMPERATURE_C, rh) for rh in (before, after))
    # Each number of the answer is put together from numbers that hang on one slider each: a page keeps those small.
    drop = Decided("-", start, home)
    board = Curves(*at_each(lambda thick: _curves(species, thick, top, bottom), thickness))
    means = [_moisture(home, drop, left) for left in board.film_means]
    slow, fast = (_moisture(home, drop, board.week_left[speed]) for speed in (0, 2))
    week = [slow, means[FILM_DAYS.index(7)], fast]
    ready = [decided_days(each, drop, _MARGIN) for each in board.days]
    cups = Cups(drop * board.week_cup, drop * board.staying)
    headline = say(
        "After one week the board is at about {week}; its new home is {home}.",
        week=moisture(week[1]),
        home=moisture(home),
    )
    picture = film_picture(Film(board, start, home, thickness, top, bottom, means))
    return Answer(
        picture,
        headline,
        _readings(start, home, board, week, ready, cups),
        _told(start, home, means, cups),
        _fine_print(species),
    )


def _moisture(home: Sliding, drop: Decided, left: Sliding) -> Decided:
    return drop * left + home


@dataclass(frozen=True)
class Cups:
    """Cup after one week, and what the rings leave of it at rest; above zero hollow on the upper face, m."""

    week: Decided
    staying: Decided


@lru_cache(maxsize=4096)
def _curves(species: str, thickness: float, top: str, bottom: str) -> tuple[Any, ...]:
    """The fields of :class:`Curves` for one board."""
    wood, gravity = wood_of(species), find_species(species).value_or_estimate("specific_gravity_12").number
    inside = slow_mid_fast(thickness, gravity, (_finish(top), _finish(bottom)), ROOM_TEMPERATURE_C)
    # What is left of a step has the sign of the step turned round; so has its tilt.
    per_tilt = WIDTH_M**2 * wood.tangential_coefficient / (8.0 * thickness)
    rings = float(cup_m(WIDTH_M, PITH_DISTANCE_M, -wood.radial_coefficient, -wood.tangential_coefficient))
    return tuple(vars(curves(inside, per_tilt, rings)).values())


@lru_cache
def _finish(name: str) -> Finish:
    return CLOSED if name == "bench" else find_finish(*_FINISHES[name])


def _readings(
    start: Sliding, home: Sliding, board: Curves, week: list[Decided], ready: list[Decided], cups: Cups
) -> tuple[Reading, ...]:
    slow, mid, fast = week
    off = size_of(cups.week - cups.staying)
    return (
        Reading(
            "Moisture after one week",
            say(
                "about {mid}; slow wood {slow}, fast wood {fast}",
                mid=moisture(mid),
                slow=moisture(slow),
                fast=moisture(fast),
            ),
            say(
                "{part} % of the way from {start} to {home}",
                part=count(100.0 - Decided("*", 100.0, board.week_left[1])),
                start=moisture(start),
                home=moisture(home),
            ),
        ),
        Reading("Ready, within 1 % MC of its new home", *_ready_words(ready)),
        Reading(
            f"Cup after one week, {WIDTH_M / INCH_M:.0f} in (200 mm) wide",
            small_length(size_of(cups.week)),
            _side(cups.week),
        ),
        Reading("Cup that stays, from the rings", small_length(size_of(cups.staying)), _side(cups.staying)),
        Reading(
            "Flattened after that week, it would end",
            say("{off} out of flat", off=small_length(off)),
            pick(off, [_FLAT, 4 * _FLAT], _FLATTEN),
            pick(off, [_FLAT, 4 * _FLAT], ["fine", "watch", "stop"]),
        ),
    )


_FLATTEN = (
    "flat enough: by then nearly all the cup it has is the cup it keeps",
    "better wait until it is ready: part of the cup goes by itself",
    "wait until it is ready: planing a passing cup away cuts the opposite cup into the board",
)


def _ready_words(ready: list[Decided]) -> tuple[Pick, Pick]:
    slow, mid, fast = ready
    number = say("about {mid}, could be {fast} to {slow}", mid=days(mid), fast=days(fast), slow=days(slow))
    words = (
        "it is there already",
        "a week or two on stickers will do",
        "some weeks on stickers, air all round",
        "longer than most jobs wait: use thinner stock, or bring the shop's air nearer to the house's",
    )
    return pick(slow, [0.5], ["now", number]), pick(mid, [0.5, 14.5, 60.5], words)


def _side(cup: Decided) -> Pick:
    """Where a cup is hollow; under 1/64 in it counts as flat."""
    return pick(
        cup,
        [-_FLAT, _FLAT],
        ["hollow below, the upper face is crowned", "flat, as far as a straightedge tells", "hollow on the upper face"],
    )


def _told(start: Sliding, home: Sliding, means: list[Decided], cups: Cups) -> Said:
    return say(
        "Six cuts through a board, from the start to four weeks, with the moisture of every depth; below each its end, "
        f"the cup drawn {CUP_TIMES} times too large. Two curves over eight weeks: mean moisture with its range, and "
        "cup. The mean goes from {start} to {week} after one week and {later} after four; the new home is {home}; of "
        "the cup {staying} stays.",
        start=moisture(start),
        week=moisture(means[FILM_DAYS.index(7)]),
        later=moisture(means[-1]),
        home=moisture(home),
        staying=small_length(size_of(cups.staying)),
    )


@lru_cache
def _fine_print(name: str) -> tuple[str | Said, ...]:
    gravity = find_species(name).value_or_estimate("specific_gravity_12")
    factor = rate("diffusivity_factor")
    return (
        f"{name}: specific gravity {gravity.number:.2f} at 12 % MC ({gravity.status}: {gravity.source}).",
        "Speed: wall-and-lumen form of the diffusion coefficient (Siau 1984, partly from memory) at "
        f"{USUAL_PERCENT:g} % MC; in dry air the wood is slower, in damp air faster, by up to 40 %. Published forms "
        f"differ by about three times, so slow wood has {factor.low:g} and fast wood {factor.high:g} times that.",
        "Finishes: films fitted to the moisture-excluding effectiveness of Wood Handbook FPL-GTR-190, Table 16-3. The "
        "lower face on the bench lets next to nothing through.",
        say(
            "Cup: free board, flatsawn, bark side up, flat at the start, pith {pith} below its upper face, at the mid "
            "speed; handbook coefficients, also a little below 6 % MC. Margins of 1 % MC and {flat}: common practice, "
            "no source.",
            pith=length(PITH_DISTANCE_M),
            flat=fine_length(_FLAT),
        ),
        "Both airs hold still at 70 °F (21 °C). End grain works several times faster, in the last hand's breadth of a "
        "board.",
        "Days are read between a few sizes of the step: within 5 %, or a day.",
    )
