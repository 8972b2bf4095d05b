"""The year of air in a room whose house is known by its kind, how far houses of a kind differ, and what a log of a few
weeks in the room settles."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import numpy as np

from ..errors import InputError
from .rooms import CONSTANTS, SPREADS, Room, air_of_constants, room_air
from .sorption import sorption_percent
from .year import MID_MONTH, MONTH_NAMES, Year

MODEL_SD_PERCENT = 0.4  # % MC the four constants miss even when fitted to a house: swing and ends, five public logs
_DRAWS = 2000
_NINE_IN_TEN = (0.05, 0.95)
# How far a four-week mean in the room strays from the model: outdoor air of the same days, or of a typical year.
_LOG_SD = {"same days": (0.8, 3.0), "typical year": (1.2, 5.0)}  # K, % RH; residuals of five public logs; judgement
_ENOUGH_DAYS = 15


@dataclass(frozen=True)
class HouseBand:
    """Nine houses in ten of a kind: (low, middle, high) in % MC of the yearly swing and its two ends."""

    swing: tuple[float, float, float]
    driest: tuple[float, float, float]
    dampest: tuple[float, float, float]

    def at_the_ends(self) -> tuple[float, float]:
        """Nine houses in ten lie within this of the driest and of the dampest month, % MC."""
        driest, dampest = (0.5 * (high - low) for low, _, high in (self.driest, self.dampest))
        return driest, dampest

    def in_words(self) -> str:
        """One sentence on the three ranges."""
        ranges = [f"{low:.1f} to {high:.1f}" for low, _, high in (self.driest, self.dampest, self.swing)]
        return (
            f"Houses differ: in nine of ten such houses the driest month asks for {ranges[0]} % MC, the dampest for "
            f"{ranges[1]} %, and they lie {ranges[2]} points apart."
        )


@dataclass(frozen=True, eq=False)
class Narrowed:
    """The constants a log leaves: the room with them, and their covariance (4, 4)."""

    room: Room
    covariance: np.ndarray


def house_year(outdoor: Year, room: Room, label: str = "") -> Year:
    """Twelve months of air in a room of the given house standing in the outdoor air.

    outdoor: a :class:`Year` of twelve months, or readings that are averaged to them. The remarks say what was assumed,
    how far such houses differ, and what four weeks of a log would do to it. Raises InputError for a year with months missing.

    >>> from .climates import year_from_climate
    >>> from .rooms import all_kinds
    >>> year = house_year(year_from_climate("Chicago"), all_kinds()[0])
    >>> [(month.name, round(month.emc_percent, 1)) for month in (year.driest(), year.dampest())]
    [('February', 5.9), ('July', 11.1)]
    """
    months = _whole(outdoor)
    temperature, humidity = room_air(months.temperature_c, months.vapour_pressure_pa, room)
    name = label or f"{outdoor.label.removesuffix(', outdoors') or 'outdoor air'}, indoors"
    year = Year(MID_MONTH, temperature, humidity, name)
    band = between_houses(outdoor, room)
    remarks = (
        *outdoor.remarks,
        room.in_words(),
        band.in_words(),
        _what_a_log_does(months, room, year),
    )
    return replace(year, remarks=remarks, houses_differ_percent=max(band.at_the_ends()))


def between_houses(outdoor: Year, room: Room, covariance: np.ndarray | None = None) -> HouseBand:
    """How far houses of this kind differ in this climate.

    covariance: of the four constants, where a log has moved them; else their spread in the table, each by itself. The
    numbers are drawn once and for all, so that the same house always gives the same band.
    """
    months = _whole(outdoor)
    middle = sorption_percent(*room_air(months.temperature_c, months.vapour_pressure_pa, room))
    luck = _luck()
    spread = np.diag([getattr(room, name) for name in SPREADS]) if covariance is None else _root(covariance)
    constants = np.array([getattr(room, name) for name in CONSTANTS]) + luck[:, :4] @ spread.T
    drawn = air_of_constants(
        months.temperature_c, months.vapour_pressure_pa, room, *(constants[:, [place]] for place in range(4))
    )
    emc = sorption_percent(*drawn)
    low, high = emc.min(axis=1), emc.max(axis=1)
    held = room.rh_at_least_percent > 0.0, room.rh_at_most_percent < 100.0
    ends = (
        (high - low, np.ptp(middle), False),
        (low, middle.min(), held[0]),
        (high, middle.max(), held[1]),
    )
    found = []
    for place, (values, centre, device) in enumerate(ends):
        missed = MODEL_SD_PERCENT * luck[:, 4 + place]
        below, above = np.quantile(values + missed, _NINE_IN_TEN)
        if device:  # a device holds its end only as well as it works: the form's own doubt on both sides of it
            below, above = min(below, centre - MODEL_SD_PERCENT), max(above, centre + MODEL_SD_PERCENT)
        found.append((max(float(below), 0.0), float(centre), float(above)))
    return HouseBand(*found)


def months_to_log(outdoor: Year, room: Room) -> tuple[str, str]:
    """The two months in which four weeks of a log tell most: the driest and the dampest indoors in this climate."""
    months = _whole(outdoor)
    emc = sorption_percent(*room_air(months.temperature_c, months.vapour_pressure_pa, room))
    return MONTH_NAMES[int(np.argmin(emc))], MONTH_NAMES[int(np.argmax(emc))]


def narrowed(outdoor: Year, log: Year, room: Room, *, same_days: bool = False) -> Narrowed:
    """What a log of some weeks says about the constants of its house, beside what is known of the kind.

    outdoor: outdoor air; log: air in the room, its months used as means; same_days: True where the outdoor air is of the
    days of the log and not of a typical year. One log settles its own end of the year and hardly the other.
    Weighted least squares of kind and log (Gauss-Newton, half steps, because the formula has kinks).
    """
    months, inside = _whole(outdoor), log.monthly()
    at = inside.month - 1
    sd_k, sd_rh = _LOG_SD["same days" if same_days else "typical year"]
    start = np.array([getattr(room, name) for name in CONSTANTS])
    spread = np.array([max(getattr(room, name), 1e-3) for name in SPREADS])  # a constant that is said stays

    def miss(constants: np.ndarray) -> np.ndarray:
        warm, humid = air_of_constants(months.temperature_c[at], months.vapour_pressure_pa[at], room, *constants)
        parts = (warm - inside.temperature_c) / sd_k, (humid - inside.rh_percent) / sd_rh, (constants - start) / spread
        return np.concatenate(parts)

    best, slope = start.copy(), np.empty((0, 4))
    for _ in range(30):
        here = miss(best)
        slope = np.stack([(miss(best + step) - here) / 0.01 for step in 0.01 * np.eye(4)], axis=1)
        best = best - 0.5 * np.linalg.lstsq(slope, here, rcond=None)[0]
    covariance = np.linalg.inv(slope.T @ slope)
    moved: dict[str, Any] = dict(zip(CONSTANTS, map(float, best), strict=True))
    left: dict[str, Any] = dict(zip(SPREADS, np.sqrt(np.diag(covariance)).tolist(), strict=True))
    return Narrowed(replace(room, **moved, **left), covariance)


def filled(outdoor: Year, log: Year, room: Room) -> Year:
    """A year from a log that lacks months: the log's months as logged, the rest from the outdoor air and its house.

    The house's constants are moved by the log as far as it deserves; the remarks name what was filled in.
    """
    logged = [month for month in range(1, 13) if _days(log, month) >= min(_ENOUGH_DAYS, _most_days(log))]
    missing = [month for month in range(1, 13) if month not in logged]
    if not missing:
        return log
    moved = narrowed(outdoor, log, room)
    year = house_year(outdoor, moved.room, log.label)
    temperature, humidity = year.temperature_c.copy(), year.rh_percent.copy()
    inside = log.monthly()
    for month, warm, humid in zip(inside.month, inside.temperature_c, inside.rh_percent, strict=True):
        if month in logged:
            temperature[month - 1], humidity[month - 1] = warm, humid
    names = ", ".join(MONTH_NAMES[month - 1] for month in missing)
    where = outdoor.label.removesuffix(", outdoors")
    told = tuple(remark for remark in log.remarks if not remark.startswith(("Part of a year", "Thin months")))
    band = between_houses(outdoor, moved.room, moved.covariance)
    remarks = (
        *told,
        f"The log has no more than a few days of {names}: these months are filled from the outdoor air of {where} and "
        "a house whose constants fit the rest of the log.",
        moved.room.in_words(),
        band.in_words(),
    )
    made = Year(MID_MONTH, temperature, humidity, log.label, remarks)
    open_ends = [
        within
        for month, within in zip((made.driest(), made.dampest()), band.at_the_ends(), strict=True)
        if month.number in missing
    ]
    return replace(made, houses_differ_percent=max(open_ends, default=0.0))


def _what_a_log_does(months: Year, room: Room, year: Year) -> str:
    """What four weeks of log in the driest and the dampest month would leave of the band, if the middle house is right."""
    dry, damp = months_to_log(months, room)
    if dry == damp:
        return "The air of such a room hardly changes through the year."
    at = np.array(sorted(MONTH_NAMES.index(name) for name in {dry, damp}))
    log = Year(MID_MONTH[at], year.temperature_c[at], year.rh_percent[at])
    after = narrowed(months, log, room)
    low, _, high = between_houses(months, after.room, after.covariance).swing
    return (
        f"A hygrometer in that room for four weeks of {dry} and four of {damp} narrows this most: if it reads as expected, "
        f"they lie {low:.1f} to {high:.1f} points apart; one log alone settles its own end of the year."
    )


def _whole(outdoor: Year) -> Year:
    if not isinstance(outdoor, Year):
        raise InputError(f'outdoor_year is {outdoor!r}; give a Year, for example year_from_climate("Chicago").')
    months = outdoor.monthly()
    if months.partial:
        names = ", ".join(MONTH_NAMES[month - 1] for month in months.missing_months)
        raise InputError(
            f"the outdoor air has no readings in {names}; a house needs all twelve months, so give a whole year."
        )
    return months


def _days(log: Year, month: int) -> int:
    return int(np.unique(np.floor(log.day[log.month == month])).size)


def _most_days(log: Year) -> int:
    """Days of the month that is held best: a log of monthly means holds one day of each."""
    return max(_days(log, month) for month in range(1, 13))


def _root(covariance: np.ndarray) -> np.ndarray:
    values, vectors = np.linalg.eigh(covariance)
    return vectors * np.sqrt(np.maximum(values, 0.0))


@cache
def _luck() -> np.ndarray:
    """(draws, 7) standard normal numbers, always the same: four constants, and what the form misses of three ends."""
    return np.random.default_rng(1).standard_normal((_DRAWS, 7))
