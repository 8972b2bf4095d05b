"""The picture of a board in new air: cuts through it day by day, its warped end, mean moisture and cup over time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..moisture.step_days import DAY_S, days_of_steps
from ..moisture.two_faces import StepInside
from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Window, Words, box
from ..units.exact import INCH_M
from ..words.decided import Decided, Sliding
from ..words.say import length, moisture

FILM_DAYS = (0, 1, 3, 7, 14, 28)
CUP_TIMES = 4

_NAMES = ("start", "1 day", "3 days", "1 week", "2 weeks", "4 weeks")
_LEFT, _PITCH, _CUT_WIDTH = 22.0, 118.0, 96.0  # px: first cut, from one to the next, width of a cut
_CUT_MIDDLE, _DEPTH_PX_PER_M = 104.0, 2100.0
_CUT_LOW, _CUT_HIGH = 3.0, 16.0  # % at the left and right side of a cut
_END_MIDDLE, _END_PX_PER_M = 212.0, 470.0
_DEPTHS = 0.5 - 0.5 * np.cos(np.linspace(0.0, np.pi, 21))
_ACROSS = np.linspace(-1.0, 1.0, 11)
_TIMES_D = 56.0 * np.linspace(0.0, 1.0, 29) ** 2
_WEEKS = [(7.0 * week, str(week)) for week in (0, 1, 2, 4, 6, 8)]
_MOIST = Frame(left=40, top=292, width=236, height=112, x_low=0, x_high=56, y_low=4, y_high=16)
_CUP = Frame(left=420, top=292, width=288, height=112, x_low=0, x_high=56, y_low=-0.45 * INCH_M, y_high=0.45 * INCH_M)
_FACES = {"bare": "edge", "oil": "watch", "varnish": "today", "bench": "metal"}
_BOARD_WIDTH_M = 8 * INCH_M


@dataclass(frozen=True)
class Curves:
    """All that hangs on the board alone, for a step of 1 % MC down: what is left of it, days, and cups in m.

    profiles (6, 21), film_means (6,), means (3, 29) slow, mid, fast; film_cups (6,), cups and rings (29,), week_cup;
    staying: the cup at rest; week_left (3,); days (3, steps) until ready for each size of step.
    """

    profiles: Any
    film_means: Any
    means: Any
    film_cups: Any
    cups: Any
    rings: Any
    week_cup: Sliding
    staying: Sliding
    week_left: Any
    days: Any


@dataclass(frozen=True)
class Film:
    """What the picture shows: the curves, moistures at the start, at home and on the days of the film."""

    curves: Curves
    start: Sliding
    home: Sliding
    thickness: Sliding
    top: str
    bottom: str
    means: Sequence[Decided]

    @property
    def drop(self) -> Sliding:
        """From the new home up to the start; the curves are scaled by it."""
        return self.start - self.home


def curves(inside: Sequence[StepInside], passing_per_tilt: float, rings_per_percent: float) -> Curves:
    """The curves of a board; cups are those of a loss of 1 % MC, in m."""
    mid, film_s, times_s, week_s = inside[1], DAY_S * np.array(FILM_DAYS, float), DAY_S * _TIMES_D, 7 * DAY_S
    profiles = mid.profile(film_s, _DEPTHS)
    profiles[0] = 1.0  # before the step, not in its first moment

    def rings(time_s):
        return rings_per_percent * (1.0 - mid.mean(time_s))

    def cups(time_s):
        return passing_per_tilt * mid.tilt(time_s) + rings(time_s)

    return Curves(
        profiles,
        mid.mean(film_s),
        np.array([run.mean(times_s) for run in inside]),
        cups(film_s),
        cups(times_s),
        rings(times_s),
        float(cups(week_s)),
        rings_per_percent,
        np.array([run.mean(week_s) for run in inside]),
        np.array([days_of_steps(run) for run in inside]),
    )


def film_picture(film: Film) -> Picture:
    """The whole sheet."""
    gauge, mark = _MOIST.gauge("moisture", "y")
    marks = [
        mark,
        Words(
            _LEFT,
            20,
            f"Cut through the board: moisture of every depth, {_CUT_LOW:.0f} to {_CUT_HIGH:.0f} %",
            "quiet",
            14,
            "start",
        ),
        *_cuts(film),
        Words(_LEFT, 252, f"Its end, 8 in (200 mm) wide, cup drawn {CUP_TIMES} times too large", "quiet", 14, "start"),
        *_means(film),
        *_cup_curves(film),
    ]
    return Picture("Days of a board in other air", 720, 456, tuple(marks), gauge)


def _cut_x(percent):
    return (percent - _CUT_LOW) * (_CUT_WIDTH / (_CUT_HIGH - _CUT_LOW))


def _cuts(film: Film) -> list[Mark]:
    height = film.thickness * _DEPTH_PX_PER_M
    top = _CUT_MIDDLE - 0.5 * height
    inside = film.home + film.drop * film.curves.profiles
    home = _cut_x(film.home)
    faces = _FACES[film.top], _FACES[film.bottom]
    marks: list[Mark] = []
    for k, name in enumerate(_NAMES):
        left = _LEFT + k * _PITCH
        depth = np.column_stack([left + _cut_x(inside[k]), top + height * _DEPTHS])
        right = left + _CUT_WIDTH
        marks += [
            Words(left + _CUT_WIDTH / 2, 44, name, "ink", 15, bold=True),
            Area(box(left, top, _CUT_WIDTH, height), "wood-end"),
            Area([(left, top), *depth, (left, top + height)], "damp"),
            Line([(left + home, top - 3), (left + home, top + height + 3)], "ink", 1.4, "4 3"),
            Line([(left, top), (right, top)], faces[0], 3.0),
            Line([(left, top + height), (right, top + height)], faces[1], 3.0),
            Words(left + _CUT_WIDTH / 2, 174, moisture(film.means[k]), "damp", 15, bold=True),
            *_end(left + _CUT_WIDTH / 2, film.thickness, film.drop * film.curves.film_cups[k]),
        ]
    return marks


def _end(middle: float, thickness: Sliding, cup: Sliding) -> list[Mark]:
    """The board's end with its cup, as an arc about its own middle; the thickness true to the width."""
    half, height = 0.5 * _BOARD_WIDTH_M * _END_PX_PER_M, thickness * _END_PX_PER_M
    rise = CUP_TIMES * cup * _END_PX_PER_M * (_ACROSS**2 - 0.5)
    upper = np.column_stack([middle + half * _ACROSS, _END_MIDDLE - 0.5 * height - rise])
    lower = upper[::-1] + (0.0, height)
    outline = np.concatenate([upper, lower, upper[:1]])
    return [Area(outline, "wood-end"), Line(outline, "edge", 1.4)]


def _means(film: Film) -> list[Mark]:
    slow, mid, fast = film.home + film.drop * film.curves.means
    band = np.concatenate([_MOIST.points(_TIMES_D, slow), _MOIST.points(_TIMES_D, fast)[::-1]])
    home = _MOIST.y(film.home)
    return [
        *_MOIST.axes(_WEEKS, [(value, str(value)) for value in (4, 8, 12, 16)], "weeks", "mean moisture, %", 14),
        Area(band, "range"),
        Line([(_MOIST.left, home), (_MOIST.left + _MOIST.width, home)], "ink", 1.4, "4 3"),
        Words(_MOIST.left + _MOIST.width - 2, home - 5, "new home", "ink", 14, "end"),
        Line(_MOIST.points(_TIMES_D, mid), "damp", 2.5),
        Circle(_MOIST.x(7.0), _MOIST.y(film.home + film.drop * film.curves.film_means[3]), 5.5, "today", filled=True),
    ]


def _cup_curves(film: Film) -> list[Mark]:
    quarter = 0.25 * INCH_M
    ticks = [(-quarter, length(quarter)), (0.0, "flat"), (quarter, length(quarter))]
    both, rings = (_CUP.points(_TIMES_D, film.drop * cup) for cup in (film.curves.cups, film.curves.rings))
    return [
        *_CUP.axes(_WEEKS, ticks, "weeks", "", 14),
        Words(_CUP.left, _CUP.top - 9, "cup: up is hollow on the upper face", "quiet", 14, "start"),
        Window(_CUP.outline, (Line(rings, "late-wood", 2.0, "5 4"), Line(both, "edge", 2.5))),
        Circle(_CUP.x(7.0), _CUP.y(film.drop * film.curves.week_cup), 5.5, "today", filled=True),
    ]
