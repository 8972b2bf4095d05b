"""What a log must be to be believed, and what is told about one that is."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from ..errors import InputError
from .log_choice import BRIEF_KEY, PARAMETER, Choice
from .log_file import LogFile
from .sorption import sorption_percent
from .year import DAYS, MONTH_LENGTHS, MONTH_NAMES, MONTH_STARTS

SENSOR_TEMPERATURE_C = (
    -40.0,
    85.0,
)  # range of common digital hygrometers, which show 85 as they start; common practice, no source
LEAST_RH_PERCENT = 1.0  # a sensor that fails shows 0; no air that people live in is so dry
EARLIEST_YEAR = 1990  # a clock that was never set counts from 1970 or 1980
HOTTEST_ROOM_C, HOTTEST_MIDDLE_C = (
    45.0,
    40.0,
)  # no room people live in is hotter, or so hot half of the time; common practice
COLDEST_ROOM_C = 5.0  # colder, and it is hardly a room that is lived in; common practice, no source
LONGEST_YEARS = 10.0
_UNREADABLE = 0.2
_SPIKE_RH_PERCENT = 20.0
_SPIKE_TEMPERATURE_C = 8.0
_JUMP_RH_PERCENT = 30.0  # from one reading to the next, within two hours; judgement, no source
_JUMP_TEMPERATURE_C = 8.0
_JUMPY = 0.05
_QUICK_S = 7200
_STANDSTILL_DAYS, _STANDSTILL_READINGS = 7.0, 24
_DAY_S = 86_400


@dataclass(eq=False)
class Readings:
    """Times, degC and % of a log, with the number of the row each stands in."""

    time: np.ndarray
    temperature_c: np.ndarray
    rh_percent: np.ndarray
    row: np.ndarray

    def take(self, chosen: np.ndarray) -> Readings:
        """The chosen readings, by mask or by place."""
        return Readings(self.time[chosen], self.temperature_c[chosen], self.rh_percent[chosen], self.row[chosen])


def usable(readings: Readings, file: LogFile, choice: Choice, notes: list[str]) -> Readings:
    """Without the rows that have no time, no number, or a number no sensor can mean.

    Raises InputError when more than a fifth of the rows are such: then it is the reading of the file that is wrong.
    """
    low, high = SENSOR_TEMPERATURE_C
    temperature, humidity = readings.temperature_c, readings.rh_percent
    reasons = (
        ("time", np.isnat(readings.time), "an unreadable time"),
        ("temperature", ~np.isfinite(temperature), "no temperature"),
        ("humidity", ~np.isfinite(humidity), "no relative humidity"),
        (
            "humidity",
            (humidity < LEAST_RH_PERCENT) | (humidity > 100.0),
            f"a relative humidity outside {LEAST_RH_PERCENT:g} to 100 %",
        ),
        ("temperature", (temperature < low) | (temperature >= high), f"a temperature outside {low:g} to {high:g} degC"),
    )
    bad = np.zeros(humidity.size, dtype=bool)
    told: list[str] = []
    worst: tuple[int, str, np.ndarray] = (0, "", bad)
    for kind, mask, words in reasons:
        fresh = mask & ~bad
        count = int(np.count_nonzero(fresh))
        if count:
            told.append(f"{count} with {words}")
        if count > worst[0]:
            worst = (count, kind, fresh)
        bad |= mask
    lost = int(np.count_nonzero(bad))
    if lost > _UNREADABLE * bad.size:
        first = int(readings.row[np.flatnonzero(worst[2])[0]])
        columns = {"time": choice.time, "temperature": [choice.temperature], "humidity": [choice.humidity]}[worst[1]]
        share = "no usable reading among" if lost == bad.size else f"only {bad.size - lost} usable readings among"
        raise InputError(
            f"hygrometer log {file.name!r} has {share} {bad.size} rows ({', '.join(told)}); reading {first + 1} has "
            f"{file.cell(first, columns)[:40]!r} as its {worst[1]}: {_remedy(worst[1])}."
        )
    if lost:
        notes.append(f"{lost} of {bad.size} rows are left out: {', '.join(told)}.")
        return readings.take(~bad)
    return readings


def _remedy(kind: str) -> str:
    column = f"say which column holds the {kind} ({BRIEF_KEY[kind]} in a brief, {PARAMETER[kind]} from Python)"
    if kind != "time":
        return f"{column}, or export it again"
    return (
        f"write times like 2024-01-31 13:45, or {column} and in which order its dates are written (log_date_order, "
        "date_order), or export it again"
    )


def believed(readings: Readings, file: LogFile, choice: Choice) -> None:
    """Refuse a log that lasts too long for one, or that jumps as no air does."""
    time = readings.time
    span = (time[-1] - time[0]).astype(np.int64) / _DAY_S / DAYS
    if span > LONGEST_YEARS:
        middle = time[time.size // 2]
        at = 0 if middle - time[0] > time[-1] - middle else -1
        row = int(readings.row[at])
        raise InputError(
            f"hygrometer log {file.name!r} would last {span:.0f} years, longer than the {LONGEST_YEARS:g} that are "
            f"believed: reading {row + 1} has {file.cell(row, choice.time)!r} as its time, taken as "
            f"{time[at].astype('M8[D]')}; say which column holds the time or how its dates are written (log_time_column "
            "or log_date_order in a brief, time_column or date_order from Python), or cut the log."
        )
    if time[0].astype("M8[Y]").astype(int) + 1970 < EARLIEST_YEAR:
        row = int(readings.row[0])
        raise InputError(
            f"hygrometer log {file.name!r} begins in {time[0].astype('M8[Y]')}: reading {row + 1} has "
            f"{file.cell(row, choice.time)!r} as its time, as from a logger whose clock was never set, so its months are not known; "
            "put the dates right, or export it again."
        )
    quick = np.diff(time).astype(np.int64) <= _QUICK_S
    for kind, column, values, limit, unit in (
        ("temperature", choice.temperature, readings.temperature_c, _JUMP_TEMPERATURE_C, "degC"),
        ("humidity", choice.humidity, readings.rh_percent, _JUMP_RH_PERCENT, "%"),
    ):
        jumps = np.flatnonzero(quick & (np.abs(np.diff(values)) > limit))
        if jumps.size >= 3 and jumps.size > _JUMPY * quick.sum():
            row = int(readings.row[jumps[0] + 1])
            raise InputError(
                f"the {kind} in hygrometer log {file.name!r} jumps by more than {limit:g} {unit} between {jumps.size} "
                f"pairs of neighbouring readings, as no air does: reading {row + 1} has {file.cell(row, [column])!r} after "
                f"{values[jumps[0]]:.4g}; if several sensors write into it, say which stands in the room (log_sensor in a "
                f"brief, sensor from Python), or which column it is ({BRIEF_KEY[kind]}, {PARAMETER[kind]})."
            )


def in_order(readings: Readings, file: LogFile, notes: list[str]) -> Readings:
    """Sorted by time, with readings of the same time averaged."""
    steps = np.diff(readings.time).astype(np.int64)
    if bool(np.any(steps < 0)):
        notes.append("The readings were not in order of time and have been sorted.")
        readings = readings.take(np.argsort(readings.time, kind="stable"))
        steps = np.diff(readings.time).astype(np.int64)
    double = steps == 0
    if not double.any():
        return readings
    _one_sensor(readings, double, file)
    notes.append(f"{int(double.sum())} readings repeat the time of another and are averaged with it.")
    starts = np.flatnonzero(np.concatenate(([True], ~double)))
    count = np.diff(np.append(starts, readings.time.size))
    temperature, humidity = (
        np.add.reduceat(values, starts) / count for values in (readings.temperature_c, readings.rh_percent)
    )
    return Readings(readings.time[starts], temperature, humidity, readings.row[starts])


def _one_sensor(readings: Readings, double: np.ndarray, file: LogFile) -> None:
    """Refuse a file in which most times are given twice with other air: two sensors write into it."""
    apart = double & ((np.abs(np.diff(readings.temperature_c)) > 3.0) | (np.abs(np.diff(readings.rh_percent)) > 10.0))
    if apart.sum() >= 3 and apart.sum() > _UNREADABLE * readings.time.size:
        at = int(np.flatnonzero(apart)[0])
        raise InputError(
            f"hygrometer log {file.name!r} gives the time {_clock(readings.time[at])} twice with different air, as "
            f"{int(apart.sum())} others: {readings.temperature_c[at]:g} degC {readings.rh_percent[at]:g} % and "
            f"{readings.temperature_c[at + 1]:g} degC {readings.rh_percent[at + 1]:g} %; several sensors seem to write into "
            "it, so export one, or say which (log_sensor in a brief, sensor from Python)."
        )


def notice(readings: Readings, notes: list[str]) -> None:
    """Remarks on what the log lacks: gaps, spikes, heat, thin and missing months, years that differ."""
    time, steps = readings.time, np.diff(readings.time).astype(np.int64)
    usual = float(np.median(steps))
    gaps = steps > max(3.0 * usual, _QUICK_S)
    if gaps.any():
        longest = int(np.argmax(steps))
        notes.append(
            f"{int(gaps.sum())} gaps are left open; the longest, {steps[longest] / _DAY_S:.1f} days, begins "
            f"{time[longest].astype('M8[D]')}."
        )
    if usual <= _DAY_S / 2:
        slack = 1.0 if usual <= _QUICK_S else 2.0  # a room may change more in half a day
        _notice_spikes(time, readings.rh_percent, slack * _SPIKE_RH_PERCENT, "% relative humidity", notes)
        _notice_spikes(time, readings.temperature_c, slack * _SPIKE_TEMPERATURE_C, "degC", notes)
    _notice_standstill(time, readings.rh_percent, notes)
    _notice_months(readings, usual, notes)
    hot = np.flatnonzero(readings.temperature_c > HOTTEST_ROOM_C)
    if hot.size:
        notes.append(
            f"{hot.size} readings are above {HOTTEST_ROOM_C:g} degC, hotter than any room, the first "
            f"{_clock(time[hot[0]])}: sun on the sensor, or the wrong unit? They are kept as logged."
        )
    cold = np.flatnonzero(readings.temperature_c < COLDEST_ROOM_C)
    if cold.size:
        notes.append(
            f"{cold.size} readings are below {COLDEST_ROOM_C:g} degC, colder than rooms that are lived in, the first "
            f"{_clock(time[cold[0]])}: not heated, or a sensor outdoors? They are kept as logged."
        )


def _clock(time: np.datetime64) -> str:
    return str(time).replace("T", " ")


def _notice_spikes(time: np.ndarray, values: np.ndarray, limit: float, unit: str, notes: list[str]) -> None:
    """Single readings far off the middle of the five around them; told, and kept."""
    far = np.abs(np.diff(values)) > 0.5 * limit  # a spike needs a step: most logs have none, and are done here
    if values.size < 5 or not far.any():
        return
    near = np.unique(np.clip(np.flatnonzero(far)[:, None] + np.arange(-1, 3), 2, values.size - 3))
    around = np.median(values[near[:, None] + np.arange(-2, 3)], axis=1)
    spikes = near[np.abs(values[near] - around) > limit]
    if spikes.size:
        notes.append(
            f"{spikes.size} readings stand more than {limit:g} {unit} off their neighbours, the first "
            f"{_clock(time[spikes[0]])}; they are kept as logged."
        )


def _notice_standstill(time: np.ndarray, humidity: np.ndarray, notes: list[str]) -> None:
    """Humidity that stays the same to the digit for a week or more: air that is lived in does not."""
    starts = np.flatnonzero(np.concatenate(([True], np.diff(humidity) != 0.0)))
    ends = np.append(starts[1:], humidity.size) - 1
    days = (time[ends] - time[starts]).astype(np.int64) / _DAY_S
    longest = int(np.argmax(days))
    if days[longest] >= _STANDSTILL_DAYS and ends[longest] - starts[longest] >= _STANDSTILL_READINGS:
        notes.append(
            f"The humidity stands still at {humidity[starts[longest]]:g} % for {days[longest]:.0f} days from "
            f"{time[starts[longest]].astype('M8[D]')}: does the sensor still measure? It is kept as logged."
        )


def _notice_months(readings: Readings, usual_step: float, notes: list[str]) -> None:
    days = np.unique(readings.time.astype("M8[D]"))
    held = np.bincount(days.astype("M8[M]").astype(np.int64) % 12, minlength=12)
    missing = [name for name, count in zip(MONTH_NAMES, held, strict=True) if count == 0]
    thin = [f"{name} ({count})" for name, count in zip(MONTH_NAMES, held, strict=True) if 0 < count < 15]
    if missing:
        notes.append(
            f"Part of a year: no readings in {', '.join(missing)}; the driest or dampest month may be among them."
        )
    if thin and usual_step <= 2 * _DAY_S:
        notes.append(f"Thin months, with days read in brackets: {', '.join(thin)}.")
    span = (days[-1] - days[0]).astype(int) / DAYS
    if span > 1.05:
        notes.append(
            f"The log covers {span:.1f} years; each month is the mean of all its days{_between_years(readings)}."
        )


def _between_years(readings: Readings) -> str:
    """How far the same month of two years lies apart in what it asks of wood; months of 15 days and more."""
    month = readings.time.astype("M8[M]").astype(np.int64)
    day = readings.time.astype("M8[D]").astype(np.int64)
    fresh = np.flatnonzero(np.concatenate(([True], np.diff(day) > 0)))
    first = month - month[0]
    days_held = np.bincount(first[fresh])
    count = np.maximum(np.bincount(first), 1)
    means = [np.bincount(first, values) / count for values in (readings.temperature_c, readings.rh_percent)]
    whole = np.flatnonzero(days_held >= 15)
    emc = sorption_percent(means[0][whole], means[1][whole])
    of_year = (whole + month[0]) % 12
    spread = {int(m): float(np.ptp(emc[of_year == m])) for m in np.unique(of_year) if np.sum(of_year == m) > 1}
    if not spread:
        return ""
    widest = max(spread, key=lambda m: spread[m])
    return f", and the same month of two years lies up to {spread[widest]:.1f} % MC apart ({MONTH_NAMES[widest]})"


def calendar_day(times: np.ndarray) -> np.ndarray:
    """Days since 1 January of the first year, on a calendar whose years have 365 days.

    times: datetime64 (n,). Returns (n,) days. A leap February is squeezed into 28 days, so that every date keeps its
    place in the year.

    >>> calendar_day(np.array(["2024-02-29T12:00", "2024-03-01T00:00", "2025-01-01T00:00"], "M8[s]")).round(2).tolist()
    [58.52, 59.0, 365.0]
    """
    months = times.astype("M8[M]")
    number = months.astype(np.int64)
    into_month = (times.astype("M8[s]") - months.astype("M8[s]")).astype(np.int64) / _DAY_S
    length = ((months + 1).astype("M8[D]") - months.astype("M8[D]")).astype(np.int64)
    month = number % 12
    years = number // 12 - number.min() // 12
    return DAYS * years + MONTH_STARTS[month] + into_month * MONTH_LENGTHS[month] / length
