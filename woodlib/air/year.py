"""A year of air: temperature and relative humidity against the day, and the months that matter to wood."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import numpy as np

from ..door import Limits, read_values
from ..errors import InputError, Problems
from .checks import RH_PERCENT
from .psychrometrics import vapour_pressure_pa
from .sorption import outside_table, sorption_percent

DAYS = 365.0
MONTH_NAMES = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
MONTH_LENGTHS = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
MONTH_STARTS = np.concatenate(([0], np.cumsum(MONTH_LENGTHS)))  # day of the year, 0 to 365
MID_MONTH = MONTH_STARTS[:-1] + MONTH_LENGTHS / 2.0
COLDEST_WOOD_C = -40.0  # the sorption equation turns round below
AIR_TEMPERATURE_C = Limits(-70.0, 100.0, "degC", "write the temperature of the air in degrees Celsius")


@dataclass(frozen=True)
class Month:
    """One month of air as the wood sees it: mean temperature, mean RH, the moisture content they ask for."""

    name: str
    number: int
    temperature_c: float
    rh_percent: float
    emc_percent: float


_FROM_THE_AIR = np.empty(0)  # stands for a vapour pressure that follows from temperature and humidity


@dataclass(frozen=True, eq=False)
class Year:
    """A year of air.

    day: (n,) days since 1 January 0:00 on a calendar of 365 days, rising; a log that runs on into the next year
    has days above 365. temperature_c, rh_percent: (n,). label: a few words. remarks: what to know about it.
    vapour_pressure_pa: (n,) Pa, from temperature and humidity unless given (means of hours differ from it).
    houses_differ_percent: nine such houses in ten lie within this of the driest and the dampest month, in % MC; 0 for air
    that was measured or typed.

    >>> year = Year([15.0, 196.0], [20.0, 24.0], [30.0, 60.0], "two readings")
    >>> [month.name for month in (year.driest(), year.dampest())]
    ['January', 'July']
    >>> round(year.driest().emc_percent, 1)
    6.2
    >>> year.missing_months[:3]
    (2, 3, 4)
    """

    day: np.ndarray
    temperature_c: np.ndarray
    rh_percent: np.ndarray
    label: str = ""
    remarks: tuple[str, ...] = ()
    vapour_pressure_pa: np.ndarray = field(default_factory=lambda: _FROM_THE_AIR, repr=False)
    houses_differ_percent: float = 0.0

    def __post_init__(self) -> None:
        problems = Problems()
        day_limits = Limits(0.0, np.inf, "days", "count days from 1 January")
        for name, limits in (("day", day_limits), ("temperature_c", AIR_TEMPERATURE_C), ("rh_percent", RH_PERCENT)):
            self._store(name, read_values(getattr(self, name), limits, name=name, problems=problems))
        problems.raise_if_any()
        self._check_lengths()
        if self.vapour_pressure_pa is _FROM_THE_AIR:
            self._store("vapour_pressure_pa", vapour_pressure_pa.kernel(self.temperature_c, self.rh_percent))
        else:
            limits = Limits(0.0, 1.0e5, "Pa", "a typical indoor value is 1200 Pa")
            self._store(
                "vapour_pressure_pa",
                read_values(self.vapour_pressure_pa, limits, name="vapour_pressure_pa", problems=problems),
            )
            if self.vapour_pressure_pa.shape != self.day.shape:
                problems.add(
                    f"vapour_pressure_pa has {self.vapour_pressure_pa.size} values and day {self.day.size}; "
                    "give one pressure per day, or none."
                )
        problems.raise_if_any()
        object.__setattr__(self, "remarks", tuple(self.remarks))

    def _store(self, name: str, values: Any) -> None:
        array = np.atleast_1d(np.array(values, dtype=float))
        array.setflags(write=False)
        object.__setattr__(self, name, array)

    def _check_lengths(self) -> None:
        shapes = {self.day.shape, self.temperature_c.shape, self.rh_percent.shape}
        if len(shapes) > 1 or self.day.ndim != 1:
            raise InputError(
                f"day, temperature_c and rh_percent have {self.day.size}, {self.temperature_c.size} and "
                f"{self.rh_percent.size} values; give three lists of one length."
            )
        if bool(np.any(np.diff(self.day) <= 0)):
            raise InputError(
                "day does not rise from each value to the next; sort the readings by time, "
                "and keep one reading per time."
            )

    @property
    def month(self) -> np.ndarray:
        """(n,) month of each reading, 1 to 12."""
        return np.searchsorted(MONTH_STARTS, np.mod(self.day, DAYS), side="right")

    @property
    def missing_months(self) -> tuple[int, ...]:
        """Numbers of the months without a single reading."""
        return tuple(sorted(set(range(1, 13)) - set(self.month.tolist())))

    @property
    def partial(self) -> bool:
        """True when a month is missing, so that the driest or dampest month may not have been seen."""
        return bool(self.missing_months)

    @property
    def not_known(self) -> str:
        """What the missing months keep from view, one sentence to stand before any other; empty for a whole year.

        >>> Year([135.5, 166.0, 196.5], [20.0] * 3, [50.0] * 3).not_known
        'The air of August to April is not known: the wood may get drier or damper then than anything said here.'
        """
        if not self.partial:
            return ""
        return (
            f"The air of {_runs(self.missing_months)} is not known: the wood may get drier or damper then than anything "
            "said here."
        )

    def emc_percent(self) -> np.ndarray:
        """(n,) equilibrium moisture content (%) of each reading; refused when air is colder than -40 degC."""
        coldest = float(self.temperature_c.min())
        if coldest < COLDEST_WOOD_C:
            raise InputError(
                f"temperature_c goes down to {coldest:g} degC, and moisture content is known to "
                f"{COLDEST_WOOD_C:g} degC only; bring the air indoors first, see indoors()."
            )
        return sorption_percent(self.temperature_c, self.rh_percent)

    def emc_remarks(self) -> tuple[str, ...]:
        """Sentences on readings outside the handbook table of moisture contents."""
        return outside_table(self.temperature_c, self.rh_percent)

    def monthly(self) -> Year:
        """The means of the months: 12 values at mid-month (fewer when months are missing).

        Readings are averaged to days first and days to months, so that a stretch logged every minute weighs no
        more than one logged every hour. Wood thicker than a veneer needs days to weeks to follow the air, so it
        follows these means and not the hours; the Forest Products Laboratory's tables of outdoor moisture content
        take the same road (moisture content of the monthly means).
        """
        present = np.unique(self.month)
        means = [self._by_month(values) for values in (self.temperature_c, self.rh_percent, self.vapour_pressure_pa)]
        return Year(MID_MONTH[present - 1], means[0], means[1], self.label, self.remarks, means[2])

    def monthly_mean_of_emc(self) -> np.ndarray:
        """(months,) mean of the moisture contents (%) of the single readings, month by month.

        For hourly readings this is the mean of hours: nearly always a little above the moisture content of the
        monthly means, because the isotherm curves upward in damp air. Shown for comparison; the kit decides by
        :meth:`monthly`.
        """
        return self._by_month(self.emc_percent())

    def _by_month(self, values: np.ndarray) -> np.ndarray:
        """(months present,) means of days, then of months."""
        _, day_index = np.unique(np.floor(self.day), return_inverse=True)
        count = np.bincount(day_index)
        daily = np.bincount(day_index, values) / count
        day_month = np.zeros(count.size, dtype=int)
        day_month[day_index] = self.month
        present, month_index = np.unique(day_month, return_inverse=True)
        return np.bincount(month_index, daily, present.size) / np.bincount(month_index, minlength=present.size)

    def months(self) -> tuple[Month, ...]:
        """The months present, in calendar order, each with its means and moisture content."""
        mean = self.monthly()
        rows = zip(mean.month, mean.temperature_c, mean.rh_percent, mean.emc_percent(), strict=True)
        return tuple(
            Month(MONTH_NAMES[number - 1], int(number), float(temperature), float(humidity), float(emc))
            for number, temperature, humidity, emc in rows
        )

    def driest(self) -> Month:
        """The month that asks for the lowest moisture content, by its means."""
        return min(self.months(), key=lambda month: month.emc_percent)

    def dampest(self) -> Month:
        """The month that asks for the highest moisture content, by its means."""
        return max(self.months(), key=lambda month: month.emc_percent)

    @classmethod
    def from_seasons(cls, *, hemisphere: str = "north", label: str = "typed seasons", **seasons: Any) -> Year:
        """A year from two or four typed seasons; see :func:`woodlib.air.seasons.year_from_seasons`.

        >>> year = Year.from_seasons(winter=(20, 30), summer=(25, 60))
        >>> year.driest().name, year.driest().rh_percent, year.dampest().rh_percent
        ('January', 30.0, 60.0)
        """
        from .seasons import year_from_seasons

        return year_from_seasons(seasons, hemisphere=hemisphere, label=label)

    @classmethod
    def steady(cls, temperature_c: Any, rh_percent: Any, label: str = "steady air") -> Year:
        """A year that never changes, for a museum case or a comparison.

        >>> round(Year.steady(21, 45).dampest().emc_percent, 1)
        8.5
        """
        ones = np.ones(12)
        problems = Problems()
        temperature = read_values(temperature_c, AIR_TEMPERATURE_C, name="temperature_c", problems=problems)
        humidity = read_values(rh_percent, RH_PERCENT, name="rh_percent", problems=problems)
        for name, values in (("temperature_c", temperature), ("rh_percent", humidity)):
            if np.ndim(values):
                problems.add(f"{name} holds {np.size(values)} values; steady air has one.")
        problems.raise_if_any()
        return cls(MID_MONTH, ones * temperature, ones * humidity, label)


def _runs(months: tuple[int, ...]) -> str:
    """Months in words, those that follow each other as from-to, round New Year too: "October to April and June"."""
    first = [month for month in months if (month - 2) % 12 + 1 not in months]
    last = [month for month in months if month % 12 + 1 not in months]
    ends = [(one, next((month for month in last if month >= one), last[0])) for one in first]
    names = [
        MONTH_NAMES[one - 1] if one == other else f"{MONTH_NAMES[one - 1]} to {MONTH_NAMES[other - 1]}"
        for one, other in ends
    ]
    return ", ".join(names[:-1]) + (" and " if len(names) > 1 else "") + names[-1]
