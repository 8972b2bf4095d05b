"""Outdoor air from an EPW weather file, an open text format: 8 header lines, then one row for every hour of a year."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..errors import InputError
from ..files import check_lines
from .log_file import decode, read_bytes
from .psychrometrics import rh_percent_from_dew_point
from .year import DAYS, MONTH_LENGTHS, MONTH_STARTS, Year

HEADER_LINES = 8
_LONGEST_LINE = 20_000  # a header may hold many design days
_FIELDS = {"month": 1, "day": 2, "hour": 3, "minute": 4, "dry_bulb": 6, "dew_point": 7, "humidity": 8}
_MISSING = {"dry_bulb": 99.9, "dew_point": 99.9, "humidity": 999.0}
_HIGHEST_RH = 110.0  # the format lets humidity run to 110 %
_HOTTEST_C = 70.0  # and temperatures from -70 to 70 degC


@dataclass(frozen=True)
class _Columns:
    """The columns of the data rows that woodlib uses, (n,) each."""

    month: np.ndarray
    day: np.ndarray
    hour: np.ndarray
    minute: np.ndarray
    dry_bulb: np.ndarray
    dew_point: np.ndarray
    humidity: np.ndarray


def read_weather_file(path: Any, *, label: str = "") -> Year:
    """Outdoor year from an EPW weather file.

    path: file. Returns a :class:`Year` of hourly (or finer) readings, each set at the middle of its hour; bring it
    indoors with :func:`woodlib.air.indoors.indoors`. Missing temperatures (99.9) are left out, missing humidities
    (999) are worked out from the dew point where that is there, humidities from 100 to 110 % count as 100 %: each
    is told in the remarks. Raises InputError when the file is not an EPW file or does not hold a whole year.

    Columns after the published data dictionary of the format: month, day, hour, minute, flags, dry bulb (degC), dew
    point (degC), relative humidity (%) are the 2nd to 9th fields. Humidity is relative to water below freezing too.
    """
    name, content = read_bytes(path, "weather file")
    text = decode(content)
    check_lines(text, f"weather file {name!r}", _LONGEST_LINE)
    lines = text.splitlines()
    place = _place(lines, name)
    rows = [line.split(",", 9) for line in lines[HEADER_LINES:] if line.strip()]
    columns = _read_columns(rows, name)
    rows_per_hour = _check_whole_year(columns, name)
    remarks: list[str] = []
    temperature, humidity = _clean(columns, remarks)
    known = np.isfinite(temperature) & np.isfinite(humidity)
    if not known.any():
        raise InputError(f"weather file {name!r} has no hour with both temperature and humidity; use another file.")
    if not known.all():
        remarks.append(f"{int(np.sum(~known))} of {known.size} readings lack temperature or humidity and are left out.")
    day = _day(columns, rows_per_hour)
    return Year(
        day[known],
        temperature[known],
        humidity[known],
        label or f"{place}, outdoors",
        (f"Weather file {name}, {known.size} readings.", *remarks),
    )


def _place(lines: list[str], name: str) -> str:
    """Name of the place from the first header line."""
    if not lines[0].lstrip("\ufeff").upper().startswith("LOCATION,"):
        raise InputError(
            f"weather file {name!r} begins {lines[0][:40]!r}, where an EPW file begins LOCATION; give an EPW file."
        )
    if len(lines) <= HEADER_LINES:
        raise InputError(f"weather file {name!r} ends within its {HEADER_LINES} header lines; fetch it again.")
    fields = next(csv.reader([lines[0]]))
    return fields[1].strip() or name


def _read_columns(rows: list[list[str]], name: str) -> _Columns:
    """The columns as numbers; the first row that cannot be read is named."""
    needed = max(_FIELDS.values()) + 1
    for index, row in enumerate(rows):
        if len(row) < needed:
            raise InputError(
                f"weather file {name!r} has {len(row)} fields in data row {index + 1}, where at least "
                f"{needed} are needed; the file is damaged, fetch it again."
            )
    columns = {}
    for field, position in _FIELDS.items():
        texts = [row[position] for row in rows]
        try:
            columns[field] = np.array(texts, dtype=float)
        except ValueError:
            bad = next(index for index, text in enumerate(texts) if not _is_number(text))
            raise InputError(
                f"weather file {name!r} has {texts[bad]!r} as {field.replace('_', ' ')} in data row "
                f"{bad + 1}, which is not a number; fetch the file again."
            ) from None
    return _Columns(**columns)


def _is_number(text: str) -> bool:
    try:
        float(text)
    except ValueError:
        return False
    return True


def _check_whole_year(columns: _Columns, name: str) -> int:
    """Rows per hour (1, 2, 4 ...); refuses anything but whole years of 8760 or 8784 hours in order."""
    size = columns.month.size
    per_hour = next((size // hours for hours in (8760, 8784) if size and size % hours == 0), 0)
    if not 1 <= per_hour <= 60:
        raise InputError(
            f"weather file {name!r} holds {size} data rows, where a year has 8760 (leap year 8784); the file "
            "is cut short or damaged, fetch it again."
        )
    calendar = (
        np.isin(columns.month, np.arange(1, 13)) & (columns.day >= 1) & (columns.hour >= 1) & (columns.hour <= 24)
    )
    calendar[calendar] &= columns.day[calendar] <= 29 + 2 * (
        MONTH_LENGTHS[columns.month[calendar].astype(int) - 1] > 28
    )
    stamp = (columns.month * 32 + columns.day) * 24 + columns.hour
    late = np.flatnonzero(~calendar | np.concatenate(([False], np.diff(stamp) < 0)))
    if late.size:
        row = int(late[0])
        raise InputError(
            f"weather file {name!r} is out of order at data row {row + 1} (month {columns.month[row]:g}, day "
            f"{columns.day[row]:g}, hour {columns.hour[row]:g}); rows must run from 1 January to 31 December."
        )
    return per_hour


def _clean(columns: _Columns, remarks: list[str]) -> tuple[np.ndarray, np.ndarray]:
    """Temperature and humidity with NaN where they are missing, and remarks on what was done."""
    temperature, dew_point, humidity = (
        _without_missing(getattr(columns, field), field) for field in ("dry_bulb", "dew_point", "humidity")
    )
    fill = ~_possible(humidity) & np.isfinite(temperature) & np.isfinite(dew_point)
    if fill.any():
        humidity[fill] = rh_percent_from_dew_point.kernel(temperature[fill], dew_point[fill])
        remarks.append(
            f"Relative humidity is missing in {int(fill.sum())} readings and is worked out from the dew point."
        )
    humidity = np.where(_possible(humidity), humidity, np.nan)
    fog = humidity > 100.0
    if fog.any():
        remarks.append(
            f"{int(fog.sum())} readings above 100 % relative humidity (up to {np.nanmax(humidity):g} %) are "
            "taken as saturated air, 100 %."
        )
        humidity[fog] = 100.0
    return temperature, humidity


def _possible(humidity: np.ndarray) -> np.ndarray:
    return (humidity >= 0.0) & (humidity <= _HIGHEST_RH)


def _without_missing(values: np.ndarray, field: str) -> np.ndarray:
    values = np.where(values >= _MISSING[field] - 1e-9, np.nan, values)
    if field == "humidity":
        return values
    return np.where(np.abs(values) <= _HOTTEST_C, values, np.nan)


def _day(columns: _Columns, rows_per_hour: int) -> np.ndarray:
    """(n,) day of each reading on the 365-day calendar, a leap February squeezed into 28 days."""
    month = columns.month.astype(int) - 1
    leap = bool(np.any((columns.month == 2) & (columns.day == 29)))
    length = MONTH_LENGTHS[month] + (leap & (month == 1))
    within = np.arange(month.size) % rows_per_hour
    hours = columns.hour - 1.0 + (within + 0.5) / rows_per_hour
    into_month = columns.day - 1.0 + hours / 24.0
    day = MONTH_STARTS[month] + into_month * MONTH_LENGTHS[month] / length
    return np.mod(day, DAYS)
