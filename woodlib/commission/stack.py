"""What meter readings over time say of a stack: how fast this one dries, beside the usual, and when it will be ready."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np

from ..moisture.equilibrium import rh_percent_for_emc
from ..moisture.rates import Likely, readiness_limit
from ..moisture.resting import Resting, resting
from ..moisture.stock import Stock
from ..movement.spread import NINETY_PERCENT_HALF_WIDTH
from ..units import write
from .judged import Commission

_REST_C, _REST_RH = 20.0, (10.0, 90.0)  # where the brief does not say what air the stack lies in
_LONGEST_DAYS = 3650
_BELIEVED = 2.5  # standard deviations of the speed; beyond, it is the air that is wrong
_LEAST_ERROR = 0.5  # % MC, of a course that is worked out; judgement, no source


@dataclass(frozen=True)
class Stack:
    """The readings of a stack and what they come to.

    days (n,) since the first, readings (n,) in % MC, ``error_percent`` nine in ten; ``words`` says it. ``rest`` the usual
    course from the first reading on, ``speed`` of this stack over the usual, ``ready`` the day: None where no course is
    worked out, or none is needed.
    """

    first: date
    days: np.ndarray
    readings: np.ndarray
    error_percent: float
    words: str
    rest: Resting | None = None
    speed: Likely | None = None
    ready: Likely | None = None

    def day(self, after: float) -> date:
        """The calendar day so many days after the first reading."""
        return date.fromordinal(self.first.toordinal() + round(min(after, _LONGEST_DAYS)))

    def usual_at(self, days: np.ndarray) -> np.ndarray:
        """(n, 3) moisture of such boards, slow, mid and fast, %."""
        assert self.rest is not None
        followed = self.rest.followed
        return np.column_stack([np.interp(days, followed.days, column) for column in followed.mean_percent.T])

    def this_at(self, days: np.ndarray) -> np.ndarray:
        """(n,) moisture of this stack at its likely speed, %."""
        assert self.speed is not None
        return self.usual_at(self.speed.mid * days)[:, 1]


def stack_of(commission: Commission, notes: Sequence[tuple[date, float]]) -> Stack:
    """The stack of a brief by its readings (day, % MC), the earliest first; at least one."""
    brief, (first, begin), (last, now) = commission.brief, notes[0], notes[-1]
    days = np.array([(day - first).days for day, _ in notes], float)
    found = np.array([moisture for _, moisture in notes])
    stock, margin = brief.stock, readiness_limit("margin_percent")
    middle, warm, humid = float(commission.months.mc_percent.mean()), stock.shop_temperature_c, stock.shop_rh_percent
    if warm is None or humid is None:
        warm, humid = _REST_C, float(rh_percent_for_emc(_REST_C, middle))
    lead = f"{len(notes)} reading{'s' * (len(notes) > 1)}, the last {write(now, 'moisture')} on {last}."

    def told(words: str, *course) -> Stack:
        return Stack(first, days, found, stock.meter_error_percent, f"{lead} {words}", *course)

    if not _REST_RH[0] <= humid <= _REST_RH[1] or not begin <= 30.0:
        return told("From there a course of drying is not worked out: it begins at 30 % or less, in air of 10 to 90 %.")
    thick = max([board.thickness_m for board in brief.boards], default=commission.piece.thickness_m)
    rest = resting(Stock.of(brief.species(), thick), warm, humid, begin)
    home = rest.home_percent
    air = f"{write(warm, 'temperature')} and {write(humid, 'humidity')} (comes to {write(home, 'moisture')})"
    if abs(now - home) <= margin:
        return told(f"That is within {write(margin, 'percent')} of rest in air of {air}: ready.", rest)
    if abs(begin - home) <= margin:
        return told(
            f"It moves away from the rest that air of {air} leads to: the stack lies in other air, so measure that."
        )
    followed = rest.followed
    speed, ready = days_left(followed.days, followed.mean_percent, home, days, found, margin, stock.meter_error_percent)
    made = told("", rest, speed, ready)
    unlike = abs(np.log(speed.mid)) > _BELIEVED * _spread(followed.days, followed.mean_percent, home)
    if unlike or abs(now - made.this_at(days[-1:])[0]) > 2.0 * max(stock.meter_error_percent, _LEAST_ERROR):
        by_then = dict.fromkeys(write(end, "moisture") for end in np.sort(made.usual_at(days[-1:])[0])[[0, 2]])
        return told(
            f"In air of {air} such boards would be at {' to '.join(by_then)} by then, so that is not the air this stack lies in, "
            "or no air comes between its boards: lay a hygrometer beside it, and put it on stickers.",
            rest,
        )
    course = "as fast as" if 0.95 < speed.mid < 1.05 else f"{speed.mid:.1f} times as fast as"
    goes = "dries" if begin > home else "takes up water"
    low, mid, high = map(made.day, ready)
    return told(
        f"In air of {air} this stack {goes} {course} such boards usually do (could be {speed.low:.1f} to "
        f"{speed.high:.1f}) and is ready about {mid}, could be {low} to {high}.",
        rest,
        speed,
        ready,
    )


def days_left(
    times: np.ndarray,
    course: np.ndarray,
    home: float,
    days: np.ndarray,
    readings: np.ndarray,
    margin: float,
    error: float,
) -> tuple[Likely, Likely]:
    """How fast a stack dries beside the usual one, and the day at which it is within ``margin`` of its home.

    times (n), course (n, 3): a board of the kind, slow, mid, fast; days, readings: of the stack, ``error`` nine in ten.
    All of drying scales with one speed where its rates do; the speed has the kind's own range as its prior (lognormal), the
    first moisture the meter's, and both are weighed on a grid.
    """
    share, spread = (course - home) / (course[0] - home), _spread(times, course, home)
    sd = max(error, 0.1) / NINETY_PERCENT_HALF_WIDTH
    speed = np.exp(np.linspace(-4.0, 4.0, 161) * spread)[:, None]
    first = readings[0] + np.linspace(-3.0, 3.0, 61)[None, :] * sd
    at = np.interp(speed[:, :, None] * (days - days[0]), times, share[:, 1])
    miss = (home + (first[:, :, None] - home) * at - readings) / sd
    weight = np.exp(-0.5 * (np.sum(miss**2, axis=-1) + (np.log(speed) / spread) ** 2))
    near = margin / np.maximum(np.abs(first - home), margin)
    ready = np.interp(1.0 - near, 1.0 - share[:, 1], times) / speed
    return _quantiles(speed + 0.0 * first, weight), _quantiles(ready, weight)


def _spread(times: np.ndarray, course: np.ndarray, home: float) -> float:
    """One standard deviation of the logarithm of the speed, between boards of a kind: by their half times."""
    share = (course - home) / (course[0] - home)
    half = [np.interp(0.5, 1.0 - share[:, k], times) for k in range(3)]
    return float(abs(np.log(half[0] / half[2]))) / (2.0 * NINETY_PERCENT_HALF_WIDTH)


def _quantiles(values: np.ndarray, weight: np.ndarray) -> Likely:
    order = np.argsort(values, axis=None)
    cumulated = np.cumsum(weight.ravel()[order])
    return Likely.of(*np.interp([0.05, 0.5, 0.95], cumulated / cumulated[-1], values.ravel()[order]))
