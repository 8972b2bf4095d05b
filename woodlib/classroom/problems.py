"""Problems with own numbers: the question, its answer and its likely misses come from the same choice of numbers.

Each can be worked on paper with the tables of the sheet; the key is what the library itself answers. A problem is one
choice out of a list, so that no two students of a class need to have the same.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from itertools import product
from typing import Any

from ..air.psychrometrics import absolute_humidity_g_m3, indoor_rh_percent
from ..lesson.exercise import Exercise
from ..lesson.question import Question
from ..moisture.equilibrium import emc_percent
from ..moisture.resting import resting
from ..moisture.stock import Stock
from ..movement.board import Board
from ..movement.spread import width_movement
from ..movement.wood import wood_of
from ..setting_out.practice import ShopPractice
from ..units import FORMATS, both, inch_fraction, write
from .own_numbers import own

INCH_M, ROOM_C = 0.0254, 21.0
WOODS = ("white oak", "black cherry", "sugar maple", "black walnut", "white ash", "yellow-poplar")
CUTS = {"flatsawn": 0.0, "quartersawn": 90.0}
HUMIDITIES = tuple(range(20, 81, 5))
COLD_C = (-20.0, -15.0, -10.0, -5.0, 0.0, 5.0, 10.0, ROOM_C)

Make = Callable[..., Exercise]


@dataclass(frozen=True)
class Problem:
    """A kind of problem: its key, what it is about, its choices of numbers, and how an exercise is made of one."""

    key: str
    about: str
    choices: Sequence[Any]
    make: Make

    def of(self, seed: str, student: int) -> Exercise:
        """The exercise of a student, counted from 0."""
        return self.make(*own(seed, self.key, student, self.choices))


def exercises_of(seed: str, student: int) -> tuple[Exercise, ...]:
    """All exercises of a student, in the order of the lessons."""
    return tuple(problem.of(seed, student) for problem in PROBLEMS)


def _coefficient(wood: str, cut: str) -> float:
    found = wood_of(wood)
    return found.tangential_coefficient if cut == "flatsawn" else found.radial_coefficient


def _board(wood: str, width_in: float, cut: str = "flatsawn") -> Board:
    return Board(wood, width_in * INCH_M, 0.02, 1.0, CUTS[cut])


def _inches(number: float | Fraction) -> str:
    return both(float(number) * INCH_M)


def _fine(number: float | Fraction) -> str:
    return write(float(number) * INCH_M, "fine_length")


def _as_fraction(number: Fraction) -> str:
    return inch_fraction(float(number) * INCH_M, 64)


def resting_moisture(humidity: int) -> Exercise:
    """What wood comes to in a room."""
    words = f"A room is kept at {write(ROOM_C, 'temperature')} and {humidity} % relative humidity. What moisture does wood come to rest at there?"
    return Exercise(
        Question("resting-moisture", words, "moisture"),
        lambda: float(emc_percent(ROOM_C, humidity)),
        0.4,
        {
            float(
                humidity
            ): "That is the humidity of the air. Wood comes to rest far lower: look it up in the first table."
        },
        "Wood takes up only a small share of the air's humidity.",
        "First table: take the two humidities beside yours and go as far between their moistures.",
    )


def winter_air(outdoor_c: float, humidity: int) -> Exercise:
    """Cold outdoor air in a warm room."""
    holds, room = (float(absolute_humidity_g_m3(c, 100.0)) for c in (outdoor_c, ROOM_C))
    words = (
        f"Outdoors it is {write(outdoor_c, 'temperature')} and {humidity} % relative humidity. The air comes in and is "
        f"warmed to {write(ROOM_C, 'temperature')}; nobody adds water. What is its relative humidity in the room?"
    )
    return Exercise(
        Question("winter-air", words, "humidity"),
        lambda: float(indoor_rh_percent(outdoor_c, humidity, ROOM_C, 0.0)),
        3.0,
        {float(humidity): "That is outdoors. Warm air can hold far more, so the same water is a smaller share of it."},
        "The water stays the same; what the air could hold grows.",
        f"Second table: {humidity} % of {holds:.1f} g is what comes in; divide it by {room:.1f} g.",
    )


def movement(wood: str, cut: str, width_in: int, moistures: tuple[int, int]) -> Exercise:
    """How far a panel moves between two moistures."""
    begin, end = moistures
    other = next(name for name in CUTS if name != cut)
    words = f"A panel of {cut} {wood}, {_inches(width_in)} wide, goes from {begin} % to {end} % moisture. How far does it move across its width?"
    move = abs(_board(wood, width_in, cut).change(begin, end).width_m)
    return Exercise(
        Question("movement", words, "movement"),
        lambda: move,
        max(INCH_M / 32, 0.08 * move),
        {
            abs(
                _board(wood, width_in, other).change(begin, end).width_m
            ): f"That is {other}; the wood of this panel is {cut}."
        },
        "Movement is width times coefficient times points of moisture.",
        f"{width_in} in x {_coefficient(wood, cut):.5f} x {abs(end - begin)} points.",
    )


def gap_to_cut(wood: str, width_in: int, moistures: tuple[int, int]) -> Exercise:
    """How wide a gap is cut today."""
    grows = width_movement(_board(wood, width_in), moistures[0], moistures[1])
    most = float(FORMATS["movement"].parts[0].shown(grows.high_m, "up"))  # what is printed is what is judged by
    words = (
        f"A flatsawn {wood} panel, {_inches(width_in)} wide, is built at {moistures[0]} % and comes to {moistures[1]} % in "
        f"summer. It grows by {write(grows.mid_m, 'movement')} on average; nine boards in ten stay between "
        f"{write(grows.low_m, 'movement')} and {write(most, 'movement')}. How wide do you cut a gap that must never close?"
    )
    return Exercise(
        Question("gap-to-cut", words, "movement"),
        lambda: most,
        INCH_M / 16,
        {
            grows.mid_m: "That serves the average board. One board in two grows further, and then the gap is shut.",
            grows.low_m: "That is the lucky end of the range; nearly every board grows further.",
        },
        "A gap that must not close takes the end of the range that does the harm, rounded up.",
        "Take the largest of the three and round it up to the next sixteenth.",
        "up",
    )


def slot_to_cut(pin: Fraction, outward: int, inward: int) -> Exercise:
    """How long a slot is."""
    play = Fraction(1, 16)
    parts = pin, Fraction(outward, 32), Fraction(inward, 32), play
    whole = sum(parts, Fraction(0))
    words = (
        f"A pin {_fine(pin)} thick holds a breadboard end. Past it the tongue travels {write(outward * INCH_M / 32, 'movement')} "
        f"outward in summer and {write(inward * INCH_M / 32, 'movement')} inward in winter, at most. Leave {_fine(play)} of play. "
        "How long is the slot?"
    )
    return Exercise(
        Question("slot-to-cut", words, "movement"),
        lambda: float(whole) * INCH_M,
        INCH_M / 16,
        {
            float(pin + play) * INCH_M: "That holds the pin and its play; the tongue also has to travel, both ways.",
            float(pin) * INCH_M: "That is the pin alone.",
            float(whole + pin) * INCH_M: "The pin counts once.",
        },
        "Pin, both travels and the play, each once.",
        "Add pin, outward, inward and play.",
        "up",
    )


def held_share(wood: str, width_in: int, points: int) -> Exercise:
    """What a glued border holds back, as a share of the width."""
    share = 100.0 * abs(_board(wood, width_in).change(12.0, 12.0 - points).width_m) / (width_in * INCH_M)
    words = (
        f"A flatsawn {wood} panel, {_inches(width_in)} wide, dries from 12 % to {12 - points} %. A border glued across its ends "
        "does not let it shrink at all. How much would it shrink if it were free, as a share of its width?"
    )
    verdict = "under" if share < 0.4 else "beyond" if share > 0.9 else "between"
    return Exercise(
        Question("held-share", words, "percent"),
        lambda: share,
        max(0.08, 0.06 * share),
        {
            share * 2: "The share is counted once over the whole width, not for each half.",
            share / 2: "The border holds the whole width, not half of it.",
        },
        f"Wood gives way for good from about 0.40 % and fails from about 0.90 %; this is {verdict} "
        + ("them." if verdict == "between" else "both."),
        f"{_coefficient(wood, 'flatsawn'):.5f} x {points} points, as a percentage. The width falls out.",
    )


@cache
def _rest_days(wood: str, thick_in: float) -> float:
    return float(resting(Stock.of(wood, thick_in * INCH_M), ROOM_C, 40.0, 12.0).days.mid)


def thicker_stock(wood: str, thin_in: float, times: float) -> Exercise:
    """How long thicker stock needs."""
    days, words_for = _rest_days(wood, thin_in), _inches
    words = (
        f"A stack of {wood}, {words_for(thin_in)} thick, came to rest in the shop in {write(days, 'days')}. The same wood lies beside it, "
        f"{words_for(thin_in * times)} thick and as wet as the other was. When is it ready, counted in days?"
    )
    later = _rest_days(wood, thin_in * times)
    return Exercise(
        Question("thicker-stock", words, "days"),
        lambda: later,
        0.15 * later,
        {
            days
            * times: "Water has further to go and less of a slope to go down: time grows with the square of the thickness."
        },
        f"{times:g} times as thick takes nearly {times * times:g} times as long.",
        f"Multiply the days by {times:g}, and by {times:g} once more.",
    )


def last_dowel(cut_in: Fraction, dowel: Fraction) -> Exercise:
    """Where the last dowel may sit before a cut."""
    margin = Fraction(ShopPractice().dowel_margin_m) / Fraction(254, 10000)
    place = cut_in - margin - dowel / 2
    words = (
        f"A board is cut off at {_fine(cut_in)}. Dowels are {_fine(dowel)} thick, and {_fine(margin)} of sound wood stays between "
        "dowel and saw. How far from the left end may the middle of the last dowel be?"
    )
    return Exercise(
        Question("last-dowel", words, "fine_length"),
        lambda: float(place) * INCH_M,
        INCH_M / 40,
        {
            float(cut_in - margin)
            * INCH_M: "That is where the dowel may end; its middle lies half its thickness before.",
            float(cut_in - margin - dowel) * INCH_M: "From its middle only half of the dowel reaches towards the saw.",
            float(cut_in - dowel / 2) * INCH_M: "That just clears the saw; the margin has to stay as well.",
        },
        "Margin and half the dowel, counted back from the saw.",
        f"{_as_fraction(cut_in)} less {_as_fraction(margin)} less half of {_as_fraction(dowel)}.",
        "down",
    )


def first_hole(width_in: Fraction, centres_mm: int) -> Exercise:
    """Where the first hole of a metric pull is on a front in inches; the front is said to a tenth of a millimetre."""
    width_m, centres_m = float(width_in) * INCH_M, centres_mm / 1000
    words = (
        f"A pull with holes {centres_mm} mm apart goes on the middle of a drawer front {_fine(width_in)} wide. How far "
        "from the left edge is the first hole?"
    )
    return Exercise(
        Question("first-hole", words, "fine_length"),
        lambda: (width_m - centres_m) / 2,
        0.0005,
        {
            width_m / 2: "That is the middle of the front; the hole lies half the distance of the holes before it.",
            width_m / 2 - centres_m: "The whole distance was taken off; from the middle it is half of it.",
        },
        "From the middle, half the distance to each side. Stay in millimetres and nothing is rounded.",
        f"({1000 * width_m:.1f} mm - {centres_mm} mm) / 2.",
    )


_WIDTHS, _DRYING = (14, 16, 18, 20, 22, 24), ((8, 11), (7, 12), (12, 7), (11, 6), (13, 8), (9, 13))
PROBLEMS = (
    Problem("resting-moisture", "Air and wood", [(rh,) for rh in range(22, 78) if rh % 5], resting_moisture),
    Problem(
        "winter-air", "Winter air", list(product((-15.0, -10.0, -5.0, 0.0, 5.0), (60, 70, 75, 80, 90))), winter_air
    ),
    Problem("movement", "Movement", list(product(WOODS, CUTS, _WIDTHS, _DRYING)), movement),
    Problem("gap-to-cut", "The gap", list(product(WOODS, (18, 20, 22, 24), ((8, 11), (7, 11), (8, 12)))), gap_to_cut),
    Problem("thicker-stock", "Waiting", list(product(WOODS, (0.75, 1.0), (1.5, 2.0))), thicker_stock),
    Problem("held-share", "Held wood", list(product(WOODS, _WIDTHS, (2, 3, 4, 5))), held_share),
    Problem(
        "slot-to-cut",
        "The slot",
        list(product((Fraction(1, 4), Fraction(5, 16), Fraction(3, 8)), (4, 5, 6, 7), (4, 5, 6))),
        slot_to_cut,
    ),
    Problem(
        "last-dowel",
        "Dowels",
        list(product((Fraction(n, 2) for n in range(41, 72)), (Fraction(5, 16), Fraction(3, 8), Fraction(1, 2)))),
        last_dowel,
    ),
    Problem(
        "first-hole", "Holes", list(product((Fraction(n, 8) for n in range(121, 190, 4)), (96, 128, 160))), first_hole
    ),
)


def tables() -> tuple[tuple[str, list[list[str]]], ...]:
    """The tables to work with: a caption, and rows of which the first is the head."""
    air = [
        ["Air, % RH", *map(str, HUMIDITIES)],
        ["Wood, %", *(f"{float(emc_percent(ROOM_C, rh)):.1f}" for rh in HUMIDITIES)],
    ]
    cold = [
        ["Air at, \u00b0F", *(FORMATS["temperature"].parts[0].digits(c) for c in COLD_C)],
        ["Air at, \u00b0C", *(FORMATS["temperature"].parts[1].digits(c) for c in COLD_C)],
        ["holds, g", *(f"{float(absolute_humidity_g_m3(c, 100.0)):.1f}" for c in COLD_C)],
    ]
    woods = [
        ["Share of the width, each point", *WOODS],
        *([cut, *(f"{_coefficient(wood, cut):.5f}" for wood in WOODS)] for cut in CUTS),
    ]
    return (
        (f"1. What wood comes to rest at, {write(ROOM_C, 'temperature')}", air),
        ("2. How much water a cubic metre of air can hold", cold),
        ("3. How far wood moves for one point of moisture, between 6 and 14 %", woods),
    )
