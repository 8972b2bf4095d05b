"""The air that a board stands in, over time: steady, a year of a house, or one place after another."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from ..air.checks import RH_PERCENT
from ..door import Limits, read_values
from ..errors import InputError, Problems
from .equilibrium import emc_percent

AIR_TEMPERATURE = Limits(-40.0, 100.0, "degC", "write the temperature of the air in degrees Celsius")
DAY = Limits(-np.inf, np.inf, "days", "write the days as numbers")
LENGTH = Limits(0.0, 36500.0, "days", "write how long the air lasts, for example 30", above_low=True)
PERIOD_DAYS = 365.0
_WIDEST_GAP_DAYS = 35.0  # monthly means lie up to 31 days apart
_GROWTH = 1.25  # each step over the one before while steps grow after a change of air


@dataclass(frozen=True)
class Stage:
    """Air of one place for a while: readings at ``day`` (n,), of which the first is day 0 of the stage.

    With ``repeats`` the readings are one year that starts over; otherwise the last reading holds on.
    """

    length_days: float
    day: np.ndarray
    temperature_c: np.ndarray
    rh_percent: np.ndarray
    repeats: bool = False
    label: str = ""
    emc_percent: np.ndarray = field(init=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "emc_percent", emc_percent.kernel(self.temperature_c, self.rh_percent))

    def at(self, day: np.ndarray, window_days: float) -> tuple[np.ndarray, np.ndarray]:
        """EMC (%) and temperature (degC), averaged over a window around each day."""
        return (
            self._averaged(self.emc_percent, day, window_days),
            self._averaged(self.temperature_c, day, window_days),
        )

    def _averaged(self, values: np.ndarray, day: np.ndarray, window_days: float) -> np.ndarray:
        if len(values) == 1:
            return np.full(np.shape(day), float(values[0]))
        knots = self.day
        if self.repeats:  # three copies, so that a window may reach over both ends
            knots = np.concatenate([knots - PERIOD_DAYS, knots, knots + PERIOD_DAYS])
            values, day = np.tile(values, 3), np.mod(day, PERIOD_DAYS)
        upper, lower = (_integral(knots, values, day + side * window_days / 2.0) for side in (1.0, -1.0))
        return (upper - lower) / window_days


def _integral(knots: np.ndarray, values: np.ndarray, x: np.ndarray) -> np.ndarray:
    """Exact integral from the first knot to ``x`` of straight lines between readings, held flat beyond the ends."""
    pieces = np.concatenate([[0.0], np.cumsum(np.diff(knots) * (values[1:] + values[:-1]) / 2.0)])
    inside = np.clip(x, knots[0], knots[-1])
    left = np.clip(np.searchsorted(knots, inside, side="right") - 1, 0, len(knots) - 2)
    height = np.interp(inside, knots, values)
    within = pieces[left] + (inside - knots[left]) * (values[left] + height) / 2.0
    return within + np.minimum(x - knots[0], 0.0) * values[0] + np.maximum(x - knots[-1], 0.0) * values[-1]


@dataclass(frozen=True)
class Drive:
    """One stage of air after another; sharp changes fall between stages."""

    stages: tuple[Stage, ...]
    remarks: tuple[str, ...] = ()

    @property
    def length_days(self) -> float:
        """How long all stages last together."""
        return sum(stage.length_days for stage in self.stages)

    @property
    def label(self) -> str:
        """The stages in words."""
        return ", then ".join(stage.label for stage in self.stages)

    def then(self, other: Drive) -> Drive:
        """This air, followed by another.

        >>> steady_air(20, 40, days=7, label="shop").then(steady_air(21, 60, days=30, label="house")).label
        'shop, then house'
        """
        return in_turn([self, other])

    def start_emc_percent(self) -> float:
        """EMC of the air at the very beginning, %."""
        return float(self.stages[0].at(np.zeros(1), 1e-3)[0][0])

    def on_grid(self, step_days: float, halvings: int = 0) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Times (s), EMC (%) and temperature (degC) at the ends of steps that start small after each change of air.

        ``halvings``: how many times every step is cut in two.
        """
        times, emc, temperature = [np.zeros(1)], [], []
        for number, stage in enumerate(self.stages):
            days = _graded(stage.length_days, step_days, halvings)
            at = np.concatenate([[0.0], days]) if number == 0 else days
            stage_emc, stage_temperature = stage.at(at, step_days)
            emc.append(stage_emc)
            temperature.append(stage_temperature)
            times.append(times[-1][-1] + days)
        return np.concatenate(times) * 86400.0, np.concatenate(emc), np.concatenate(temperature)


def _graded(length_days: float, step_days: float, halvings: int) -> np.ndarray:
    """Days at which steps end: growing from a thousandth of the full step, then equal."""
    growing = step_days * 1e-3 * _GROWTH ** np.arange(1 + int(np.log(1e3) / np.log(_GROWTH)))
    rest = length_days - growing.sum()
    if rest <= 0.0:
        steps = growing * (length_days / growing.sum())
    else:
        steps = np.concatenate([growing, np.full(max(1, int(np.ceil(rest / step_days))), 0.0)])
        steps[len(growing) :] = rest / (len(steps) - len(growing))
        if len(steps) == len(growing) + 1:  # a short rest is spread over all steps, so that no step jumps
            steps = growing * (length_days / growing.sum())
    days = np.cumsum(np.repeat(steps / 2**halvings, 2**halvings))
    days[-1] = length_days
    return days


def steady_air(temperature_c: Any, rh_percent: Any, days: Any, label: str = "") -> Drive:
    """Air that stays the same: degC, %, days. Raises InputError with everything that is wrong.

    >>> round(steady_air(20, 40, days=30).start_emc_percent(), 2)
    7.72
    """
    problems = Problems()
    temperature = read_values(temperature_c, AIR_TEMPERATURE, name="temperature_c", problems=problems)
    humidity = read_values(rh_percent, RH_PERCENT, name="rh_percent", problems=problems)
    length = read_values(days, LENGTH, name="days", problems=problems)
    problems.raise_if_any()
    words = label or f"{float(temperature):g} degC and {float(humidity):g} %"
    stage = Stage(float(length), np.zeros(1), np.atleast_1d(temperature), np.atleast_1d(humidity), label=words)
    return Drive((stage,))


def air_log(day: Any, temperature_c: Any, rh_percent: Any, *, years: float | None = None, label: str = "") -> Drive:
    """Air from arrays: day (n,) rising, temperature (n,) or one number in degC, rh (n,) in %.

    With ``years`` the readings are one year that starts over for so many years, and must span no more than 365 days;
    otherwise they run once, from the first day to the last. Raises InputError for holes, humidity beyond 0 to 100 %,
    arrays of different length and days out of order, all at once.

    >>> air_log([0, 10, 20], 20.0, [40, 50, 40]).length_days
    20.0
    """
    problems = Problems()
    days = np.atleast_1d(read_values(day, DAY, name="day", problems=problems))
    temperature = np.atleast_1d(read_values(temperature_c, AIR_TEMPERATURE, name="temperature_c", problems=problems))
    humidity = np.atleast_1d(read_values(rh_percent, RH_PERCENT, name="rh_percent", problems=problems))
    length = None if years is None else read_values(years, LENGTH, name="years", problems=problems)
    problems.raise_if_any()
    _check_log(problems, days, temperature, humidity, years is not None)
    problems.raise_if_any()
    temperature = np.broadcast_to(temperature, days.shape)
    remarks = _gap_remarks(days, years is not None)
    if length is not None:
        days = np.mod(days, PERIOD_DAYS)
        order = np.argsort(days)
        return Drive(
            (
                Stage(
                    float(length) * PERIOD_DAYS,
                    days[order],
                    temperature[order],
                    humidity[order],
                    repeats=True,
                    label=label or "a year of air",
                ),
            ),
            remarks,
        )
    stage = Stage(float(days[-1] - days[0]), days - days[0], temperature, humidity, label=label or "an air log")
    return Drive((stage,), remarks)


def _gap_remarks(day: np.ndarray, repeats: bool) -> tuple[str, ...]:
    """Say so when a straight line has to stand in for more than a month without readings."""
    gaps = np.diff(np.append(day, day[0] + PERIOD_DAYS) if repeats else day)
    widest = float(gaps.max())
    if widest <= _WIDEST_GAP_DAYS or len(day) == 1:
        return ()
    return (
        f"The air has no readings for {widest:.0f} days after day {day[int(gaps.argmax())]:.0f}; "
        "a straight line is drawn across.",
    )


def _check_log(
    problems: Problems, day: np.ndarray, temperature: np.ndarray, humidity: np.ndarray, repeats: bool
) -> None:
    if humidity.shape != day.shape or temperature.shape not in ((1,), day.shape):
        problems.add(
            f"the air has {day.size} days, {temperature.size} temperatures and {humidity.size} humidities; "
            "give one temperature and one humidity for every day."
        )
        return
    if day.ndim != 1 or len(day) < 2 and not repeats:
        problems.add(f"the air log has {day.size} reading(s); give at least 2 in one row, or use steady air.")
        return
    if np.any(np.diff(day) <= 0.0):
        first = int(np.flatnonzero(np.diff(day) <= 0.0)[0])
        problems.add(f"day {day[first + 1]:g} follows day {day[first]:g}; put the readings in order, one per time.")
    if repeats and day[-1] - day[0] >= PERIOD_DAYS:
        problems.add(
            f"the year spans {day[-1] - day[0]:g} days; a year that repeats spans less than 365: cut it to one year."
        )


def air_of_year(year: Any, years: float = 1.0) -> Drive:
    """The air of a :class:`woodlib.air.year.Year`, repeated for a number of years.

    Raises InputError when the year has holes or does not fit together.
    """
    missing = [name for name in ("day", "temperature_c", "rh_percent") if not hasattr(year, name)]
    if missing:
        raise InputError(f"year is {type(year).__name__}, which has no {' and no '.join(missing)}; give a Year of air.")
    drive = air_log(year.day, year.temperature_c, year.rh_percent, years=years, label=getattr(year, "label", ""))
    return Drive(drive.stages, (*drive.remarks, *getattr(year, "remarks", ())))


def in_turn(drives: Sequence[Drive]) -> Drive:
    """Several drives, one after another.

    >>> in_turn([steady_air(18, 35, days=60), steady_air(22, 70, days=90)]).length_days
    150.0
    """
    if not drives:
        raise InputError("drives is empty; give at least one, for example steady_air(20, 40, days=30).")
    return Drive(
        tuple(stage for drive in drives for stage in drive.stages),
        tuple(dict.fromkeys(remark for drive in drives for remark in drive.remarks)),
    )
