"""A year of air from a hygrometer's log: any delimited text file with a time, a temperature and a humidity column."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

import numpy as np

from ..errors import InputError, Problems
from .log_columns import choose, heading_score, unit_in
from .log_table import LogTable, read_log_table
from .log_times import read_times
from .year import DAYS, MONTH_LENGTHS, MONTH_NAMES, MONTH_STARTS, Year

SENSOR_TEMPERATURE_C = (-40.0, 85.0)  # range of common digital hygrometers; common practice, no source
_HOTTEST_ROOM_C = 45.0  # no room people live in is hotter; common practice, no source
_SPIKE_RH_PERCENT = 20.0
_SPIKE_TEMPERATURE_C = 8.0
_UNITS = {"degc": "degC", "c": "degC", "celsius": "degC", "degf": "degF", "f": "degF", "fahrenheit": "degF"}
_COUNTED = re.compile(r"[-+−]?\d+(?:[.,]\d+)?(?:[eE][-+]?\d+)?")
_UNIT_TAIL = re.compile(r"\s*(?:%|°\s*[CF]|[CF]|℃|℉|%\s*r\.?[hHfF]\.?)\s*$")


def read_hygrometer_log(
    path: Any,
    *,
    time_column: Any = None,
    temperature_column: str | None = None,
    rh_column: str | None = None,
    temperature_unit: str | None = None,
    date_order: str | None = None,
    label: str = "",
) -> Year:
    """Indoor air from a logger's CSV or text export.

    path: file. Separator, decimal comma, encoding, lines above the heading, a row of units and the usual names of
    columns in a dozen languages are recognised; what cannot be told for sure is asked for in the error:
    time_column (a name, or a date and a time-of-day column as two names), temperature_column, rh_column,
    temperature_unit ("degC" or "degF"), date_order ("day first", "month first", "year first").
    Returns a :class:`Year`: readings in order of time, one per time, ``partial`` when months are missing. What was
    left out (unreadable or impossible readings), averaged (doubles), or only noticed (gaps, spikes, thin months) is in
    its remarks; nothing is filled in. Raises InputError.

    >>> import tempfile, pathlib
    >>> log = pathlib.Path(tempfile.mkdtemp()) / "log.csv"
    >>> lines = ["Zeit;Temperatur [°C];Luftfeuchte [%]", "31.01.2024 12:00;20,5;35", "01.02.2024 12:00;21;34,5"]
    >>> _ = log.write_text(chr(10).join(lines), encoding="utf-8")
    >>> year = read_hygrometer_log(log)
    >>> year.rh_percent.tolist(), year.partial
    ([35.0, 34.5], True)
    """
    named = [name for name in _listed(time_column) + [temperature_column, rh_column] if isinstance(name, str)]
    table = read_log_table(path, lambda cells: heading_score(cells, named))
    problems = Problems()
    if temperature_unit is not None and str(temperature_unit).lower().strip("° ") not in _UNITS:
        problems.add(f'temperature_unit is {temperature_unit!r}; write "degC" or "degF".')
    time_at = choose("time", table.heading, time_column, problems, several=True)
    temperature_at = choose("temperature", table.heading, temperature_column, problems)
    humidity_at = choose("humidity", table.heading, rh_column, problems)
    problems.raise_if_any()
    units, rows = _split_units(table, time_at)
    _check_width(table, rows)
    times, remarks = read_times(_time_texts(rows, time_at), date_order)
    humidity, percent_remark = _percent(_numbers(rows, humidity_at[0]))
    temperature, unit_remark = _celsius(
        _numbers(rows, temperature_at[0]),
        temperature_unit,
        table.name,
        table.heading[temperature_at[0]],
        _cell(units, temperature_at[0]),
    )
    notes = [*remarks, *percent_remark, *unit_remark]
    times, temperature, humidity = _usable(times, temperature, humidity, table.name, notes)
    times, temperature, humidity = _in_order(times, temperature, humidity, notes)
    if times.size < 2:
        raise InputError(
            f"hygrometer log {table.name!r} has {times.size} usable reading; a log needs at least two, and "
            "a year of them to show the driest and the dampest month."
        )
    _notice(times, temperature, humidity, notes)
    _notice_heat(times, temperature, notes)
    return Year(calendar_day(times), temperature, humidity, label or f"log {table.name}", tuple(notes))


def _listed(value: Any) -> list[Any]:
    return [] if value is None else [value] if isinstance(value, str) else list(value)


def _cell(row: Sequence[str], index: int) -> str:
    return row[index] if index < len(row) else ""


def _split_units(table: LogTable, time_at: Sequence[int]) -> tuple[Sequence[str], list[tuple[str, ...]]]:
    """A row below the heading that holds no digits is a row of units, not a reading."""
    rows = list(table.rows)
    if rows and not any(character.isdigit() for index in time_at for character in _cell(rows[0], index)):
        return rows[0], rows[1:]
    return (), rows


def _check_width(table: LogTable, rows: Sequence[Sequence[str]]) -> None:
    if not rows:
        raise InputError(f"hygrometer log {table.name!r} has a heading and no readings below it; export it again.")
    wide = sum(any(row[len(table.heading) :]) for row in rows)
    if wide > len(rows) // 2 and table.separator == "commas":
        raise InputError(
            f"hygrometer log {table.name!r} has {len(table.heading)} names above {len(rows[0])} fields: it "
            "seems to use the comma both between columns and in numbers; export it with semicolons."
        )


def _time_texts(rows: Sequence[Sequence[str]], time_at: Sequence[int]) -> list[str]:
    """Text of the time: one column if it holds date and clock, else the date column and the clock column joined."""
    if len(time_at) == 1:
        return [_cell(row, time_at[0]) for row in rows]
    first = [_cell(rows[0], index) for index in time_at]
    whole = [index for index, text in zip(time_at, first, strict=True) if re.search(r"\d[-/. ].*\d:\d", text)]
    if whole:
        return [_cell(row, whole[0]) for row in rows]
    clocks = [
        index for index, text in zip(time_at, first, strict=True) if re.match(r"\d{1,2}[:.h]\d{2}([:. ]|$)", text)
    ]
    dates = [index for index in time_at if index not in clocks]
    if not dates:
        return [_cell(row, time_at[0]) for row in rows]
    pair = [dates[0], *clocks[:1]]
    return [" ".join(_cell(row, index) for index in pair).strip() for row in rows]


def _numbers(rows: Sequence[Sequence[str]], index: int) -> np.ndarray:
    """(n,) numbers of a column with point or comma, with or without a unit behind; NaN where there is none."""
    return np.array([_number(_cell(row, index)) for row in rows])


def _number(text: str) -> float:
    bare = _UNIT_TAIL.sub("", text)
    if not _COUNTED.fullmatch(bare):
        return np.nan
    return float(bare.replace(",", ".").replace("−", "-"))


def _percent(humidity: np.ndarray) -> tuple[np.ndarray, list[str]]:
    """Humidity in percent; a whole log at or below 1 is a fraction, for no room is that dry."""
    known = humidity[np.isfinite(humidity)]
    if known.size > 1 and 0.0 < known.max() <= 1.0:
        return 100.0 * humidity, ["Relative humidity is never above 1, so it is read as a fraction and not as percent."]
    return humidity, []


def _celsius(
    values: np.ndarray, asked: str | None, file: str, heading: str, units: str
) -> tuple[np.ndarray, list[str]]:
    """Temperature in degC, by the unit asked for, written in the heading, or plain from the values."""
    unit = _UNITS[asked.lower().strip("° ")] if asked else unit_in(heading) or unit_in(units)
    remarks: list[str] = []
    if unit == "degC" and not asked:
        _check_for_fahrenheit(values, file, heading)
    if unit is None:
        middle = float(np.nanmedian(values)) if np.isfinite(values).any() else 0.0
        if 35.0 < middle < 50.0 or middle > 130.0:
            raise InputError(
                f"hygrometer log {file!r} does not name the unit of {heading!r}, and its middle value {middle:g} "
                'tells nothing; say "degC" or "degF" (log_temperature_unit in a brief, temperature_unit from Python).'
            )
        unit = "degC" if middle <= 35.0 else "degF"
        remarks.append(
            f"The unit of temperature is not written in the log; with a middle value of {middle:.0f} it is "
            f"taken as {unit}."
        )
    return (values if unit == "degC" else (values - 32.0) / 1.8), remarks


def _check_for_fahrenheit(values: np.ndarray, file: str, heading: str) -> None:
    middle = float(np.nanmedian(values)) if np.isfinite(values).any() else 0.0
    if middle > _HOTTEST_ROOM_C:
        raise InputError(
            f"hygrometer log {file!r} has {middle:g} as its middle value under {heading!r}, hotter than any room; if "
            'the numbers are Fahrenheit, correct the heading or say "degF", if they are right, "degC" '
            "(log_temperature_unit in a brief, temperature_unit from Python)."
        )


def _usable(
    times: np.ndarray, temperature: np.ndarray, humidity: np.ndarray, file: str, notes: list[str]
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Without the rows that have no time, no number, or a number no sensor can mean."""
    size = times.size
    low, high = SENSOR_TEMPERATURE_C
    reasons = (
        (np.isnat(times), "an unreadable time"),
        (~np.isfinite(temperature), "no temperature"),
        (~np.isfinite(humidity), "no relative humidity"),
        ((humidity < 0.0) | (humidity > 100.0), "a relative humidity outside 0 to 100 %"),
        ((temperature < low) | (temperature > high), f"a temperature outside {low:g} to {high:g} degC"),
    )
    bad = np.zeros(size, dtype=bool)
    told = []
    for mask, words in reasons:
        fresh = mask & ~bad
        if fresh.any():
            told.append(f"{int(fresh.sum())} with {words}")
        bad |= mask
    if bad.all():
        raise InputError(
            f"hygrometer log {file!r} has no usable reading among {size} rows ({', '.join(told)}); "
            "check the columns and the time format, for example 2024-01-31 13:45."
        )
    if told:
        notes.append(f"{int(bad.sum())} of {size} rows are left out: {', '.join(told)}.")
    return times[~bad], temperature[~bad], humidity[~bad]


def _in_order(
    times: np.ndarray, temperature: np.ndarray, humidity: np.ndarray, notes: list[str]
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Sorted by time, with readings of the same time averaged."""
    if bool(np.any(np.diff(times).astype(np.int64) < 0)):
        notes.append("The readings were not in order of time and have been sorted.")
    unique, index = np.unique(times, return_inverse=True)
    if unique.size < times.size:
        notes.append(f"{times.size - unique.size} readings repeat the time of another and are averaged with it.")
    count = np.bincount(index)
    return unique, np.bincount(index, temperature) / count, np.bincount(index, humidity) / count


def _notice(times: np.ndarray, temperature: np.ndarray, humidity: np.ndarray, notes: list[str]) -> None:
    """Remarks on what the log lacks: gaps, spikes, thin and missing months, more than a year."""
    steps = np.diff(times).astype(np.int64)
    usual = float(np.median(steps))
    gaps = steps > max(3.0 * usual, 7200.0)
    if gaps.any():
        longest = int(np.argmax(steps))
        notes.append(
            f"{int(gaps.sum())} gaps are left open; the longest, {steps[longest] / 86400.0:.1f} days, begins "
            f"{times[longest].astype('M8[D]')}."
        )
    if usual <= 7200.0:
        _notice_spikes(times, humidity, _SPIKE_RH_PERCENT, "% relative humidity", notes)
        _notice_spikes(times, temperature, _SPIKE_TEMPERATURE_C, "degC", notes)
    _notice_months(times, usual, notes)


def _notice_heat(times: np.ndarray, temperature: np.ndarray, notes: list[str]) -> None:
    hot = np.flatnonzero(temperature > _HOTTEST_ROOM_C)
    if hot.size:
        notes.append(
            f"{hot.size} readings are above {_HOTTEST_ROOM_C:g} degC, hotter than any room, the first "
            f"{str(times[hot[0]]).replace('T', ' ')}: sun on the sensor, or the wrong unit? They are kept as logged."
        )


def _notice_spikes(times: np.ndarray, values: np.ndarray, limit: float, unit: str, notes: list[str]) -> None:
    """Single readings far off the middle of the five around them; told, and kept."""
    if values.size < 5:
        return
    middle = np.median(np.lib.stride_tricks.sliding_window_view(values, 5), axis=1)
    spikes = np.flatnonzero(np.abs(values[2:-2] - middle) > limit) + 2
    if spikes.size:
        notes.append(
            f"{spikes.size} readings stand more than {limit:g} {unit} off their neighbours, the first "
            f"{str(times[spikes[0]]).replace('T', ' ')}; they are kept as logged."
        )


def _notice_months(times: np.ndarray, usual_step: float, notes: list[str]) -> None:
    days = np.unique(times.astype("M8[D]"))
    month = days.astype("M8[M]").astype(np.int64) % 12
    held = np.bincount(month, minlength=12)
    missing = [name for name, count in zip(MONTH_NAMES, held, strict=True) if count == 0]
    thin = [f"{name} ({count})" for name, count in zip(MONTH_NAMES, held, strict=True) if 0 < count < 15]
    if missing:
        notes.append(
            f"Part of a year: no readings in {', '.join(missing)}; the driest or dampest month may be among them."
        )
    if thin and usual_step <= 2 * 86400.0:
        notes.append(f"Thin months, with days read in brackets: {', '.join(thin)}.")
    span = (days[-1] - days[0]).astype(int) / DAYS
    if span > 1.05:
        notes.append(f"The log covers {span:.1f} years; each month is the mean of all its days.")


def calendar_day(times: np.ndarray) -> np.ndarray:
    """Days since 1 January of the first year, on a calendar whose years have 365 days.

    times: datetime64 (n,). Returns (n,) days. A leap February is squeezed into 28 days, so that every date keeps its
    place in the year.

    >>> calendar_day(np.array(["2024-02-29T12:00", "2024-03-01T00:00", "2025-01-01T00:00"], "M8[s]")).round(2).tolist()
    [58.52, 59.0, 365.0]
    """
    months = times.astype("M8[M]")
    number = months.astype(np.int64)
    into_month = (times.astype("M8[s]") - months.astype("M8[s]")).astype(np.int64) / 86400.0
    length = ((months + 1).astype("M8[D]") - months.astype("M8[D]")).astype(np.int64)
    month = number % 12
    years = number // 12 - number.min() // 12
    return DAYS * years + MONTH_STARTS[month] + into_month * MONTH_LENGTHS[month] / length
