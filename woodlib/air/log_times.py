"""Times as loggers write them: numeric dates in any order, month names, epoch seconds, spreadsheet day numbers."""

from __future__ import annotations

import re
from collections.abc import Sequence

import numpy as np

from ..errors import InputError

_CLOCK = r"(?P<hour>\d{1,2})[:.h](?P<minute>\d{2})(?:[:.](?P<second>\d{2})(?:[.,]\d+)?)?"
_HALF = r"\s*(?P<half>[ap])?\.?(?:m\.?)?\s*(?:Z|UTC|GMT)?\s*(?:[+-]\d{2}:?(?:\d{2})?)?"
_TAIL = rf"(?:[T\s,]+{_CLOCK}{_HALF})?"
_NUMERIC = re.compile(
    rf"(?:[^\W\d]{{2,10}}[,.]?\s+)?(?P<a>\d{{1,4}})(?P<mark>[-/.])(?P<b>\d{{1,2}})[-/.](?P<c>\d{{1,4}})\.?{_TAIL}",
    re.IGNORECASE,
)
_DAY_NAME = re.compile(
    rf"(?:[^\W\d]{{2,10}}[,.]?\s+)?(?P<a>\d{{1,2}})[\s.-]+(?P<b>[A-Za-z]{{3,9}})\.?[\s,.-]+(?P<c>\d{{4}}|\d{{2}}){_TAIL}",
    re.IGNORECASE,
)
_NAME_DAY = re.compile(
    rf"(?:[^\W\d]{{2,10}}[,.]?\s+)?(?P<b>[A-Za-z]{{3,9}})\.?\s+(?P<a>\d{{1,2}})(?:st|nd|rd|th)?[\s,]+(?P<c>\d{{4}}){_TAIL}",
    re.IGNORECASE,
)
_COMPACT = re.compile(r"(\d{4})(\d{2})(\d{2})(?:[T\s]?(\d{2}):?(\d{2}):?(\d{2})?)?Z?")
_NUMBER = re.compile(r"\d{5}(?:[.,]\d+)?|\d{10}(?:\.\d+)?|\d{13}")
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
ORDERS = {"day first": "dmy", "month first": "mdy", "year first": "ymd"}
_NOTHING = (-1, -1, -1, 0, 0, 0, "")


def read_times(texts: Sequence[str], date_order: str | None = None) -> tuple[np.ndarray, tuple[str, ...]]:
    """Clock times of a log from their text.

    texts: (n,) as written; date_order: "day first", "month first", "year first" or None to find out.
    Returns datetime64[s] (n,), not-a-time where unreadable, and remarks. Time zones are dropped: the kit needs the
    season, and a house keeps its own clock. Raises InputError when the order of day and month cannot be told.

    >>> times, remarks = read_times(["31.01.2024 23:00", "01.02.2024 00:00"])
    >>> str(times[1]), remarks
    ('2024-02-01T00:00:00', ())
    """
    if date_order is not None and date_order not in ORDERS:
        raise InputError(f'date_order is {date_order!r}; write "day first", "month first" or "year first".')
    rows = [_fields(text) for text in texts]
    a, b, c, hour, minute, second = (np.array(column, dtype=np.int64) for column in list(zip(*rows, strict=True))[:6])
    marks = np.array([row[6] for row in rows])
    seconds = 3600 * hour + 60 * minute + second
    settled = np.isin(marks, ("settled", "number"))
    times = _assemble(a, b, c, seconds)
    times[~settled] = np.datetime64("NaT")
    numbers = marks == "number"
    times[numbers] = np.datetime64(0, "s") + a[numbers]
    open_rows = np.isin(marks, ("-", "/", "."))
    if not open_rows.any():
        return times, ()
    order, remarks = _order(a[open_rows], b[open_rows], c[open_rows], seconds[open_rows], marks[open_rows], date_order)
    times[open_rows] = _assemble(*_ordered(order, a[open_rows], b[open_rows], c[open_rows]), seconds[open_rows])
    return times, remarks


def _fields(text: str) -> tuple[int, int, int, int, int, int, str]:
    """Three date fields, hour, minute, second and how sure the date fields are year, month, day."""
    text = text.strip()
    if _NUMBER.fullmatch(text):
        return _number(text.replace(",", "."))
    if match := _NUMERIC.fullmatch(text):
        a, b, c = (int(match[name]) for name in "abc")
        return a, b, c, *_clock(match), "settled" if len(match["a"]) == 4 else match["mark"]
    if match := _COMPACT.fullmatch(text):
        year, month, day, *clock = (int(group or 0) for group in match.groups())
        return year, month, day, clock[0], clock[1], clock[2], "settled"
    for pattern in (_DAY_NAME, _NAME_DAY):
        match = pattern.fullmatch(text)
        if match and match["b"][:3].lower() in _MONTHS:
            month = _MONTHS.index(match["b"][:3].lower()) + 1
            return _full_year(int(match["c"])), month, int(match["a"]), *_clock(match), "settled"
    return _NOTHING


def _number(text: str) -> tuple[int, int, int, int, int, int, str]:
    """Epoch seconds of a bare number: 13 digits milliseconds, 10 seconds, 5 a spreadsheet's days since 30 Dec 1899."""
    digits = len(text.partition(".")[0])
    value = float(text)
    epoch = {13: value / 1000.0, 10: value, 5: (value - 25569.0) * 86400.0}[digits]
    return round(epoch), 0, 0, 0, 0, 0, "number"


def _clock(match: re.Match[str]) -> tuple[int, int, int]:
    """Hour, minute, second; an impossible clock comes back as hour 99, which no date accepts."""
    if match["hour"] is None:
        return 0, 0, 0
    hour, minute, second = int(match["hour"]), int(match["minute"]), int(match["second"] or 0)
    half = (match["half"] or "").lower()
    if half and 1 <= hour <= 12:
        hour = hour % 12 + (12 if half == "p" else 0)
    return (99, 0, 0) if max(minute, second) > 59 else (hour, minute, second)


def _full_year(year: int) -> int:
    return year + 2000 if year < 100 else year


def _ordered(order: str, a: np.ndarray, b: np.ndarray, c: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Year, month and day out of three fields in the given order; two-digit years are of this century."""
    fields = dict(zip(order, (a, b, c), strict=True))
    return np.where(fields["y"] < 100, fields["y"] + 2000, fields["y"]), fields["m"], fields["d"]


def _assemble(year: np.ndarray, month: np.ndarray, day: np.ndarray, seconds: np.ndarray) -> np.ndarray:
    """datetime64[s]; not-a-time for a date or clock that does not exist."""
    possible = (year >= 1970) & (year < 2200) & (month >= 1) & (month <= 12) & (day >= 1) & (day <= 31)
    possible &= (seconds >= 0) & (seconds <= 86_400)
    safe_year, safe_month = np.where(possible, year, 2000), np.where(possible, month, 1)
    first = (safe_year - 1970).astype("M8[Y]").astype("M8[M]") + (safe_month - 1)
    date = first.astype("M8[D]") + (np.where(possible, day, 1) - 1)
    times = date.astype("M8[s]") + np.where(possible, seconds, 0)
    times[~possible | (date.astype("M8[M]") != first)] = np.datetime64("NaT")
    return times


def _order(
    a: np.ndarray, b: np.ndarray, c: np.ndarray, seconds: np.ndarray, marks: np.ndarray, date_order: str | None
) -> tuple[str, tuple[str, ...]]:
    """The order of the date fields: as asked for, or the only one that the file as a whole allows."""
    if date_order is not None:
        return ORDERS[date_order], ()
    names = ["day first", "month first"] + (["year first"] if bool(np.all(c < 100)) else [])
    readings = {name: _assemble(*_ordered(ORDERS[name], a, b, c), seconds) for name in names}
    readable = {name: int(np.sum(~np.isnat(times))) for name, times in readings.items()}
    best = max(readable.values())
    left = [name for name in names if readable[name] == best]
    if "day first" in left and bool(np.all(marks == ".")):
        return "dmy", ()  # dates with full stops are written day first
    if len(left) == 1:
        return ORDERS[left[0]], ()
    forward = [name for name in left if _runs_forward(readings[name])] or left
    proven = forward if len(forward) == 1 else _smoothest({name: readings[name] for name in forward})
    if proven:
        return ORDERS[proven[0]], (
            f"Dates are read {proven[0]}, the only order in which the readings follow one another without jumps.",
        )
    left = forward
    sample = f"{a[0]}{marks[0]}{b[0]}{marks[0]}{c[0]}"
    choices = " or ".join(f'"{name}"' for name in left)
    raise InputError(
        f"the dates of the log ({sample} and so on) can be read in more than one order; say which: {choices} "
        "(log_date_order in a brief, date_order from Python)."
    )


def _runs_forward(times: np.ndarray) -> bool:
    steps = np.diff(times[~np.isnat(times)]).astype(np.int64)
    return bool(np.all(steps >= 0) or np.all(steps <= 0))


def _smoothest(readings: dict[str, np.ndarray]) -> list[str]:
    """The one order whose longest step is at most a fifth of any other's, or none."""
    longest = {
        name: int(np.abs(np.diff(times[~np.isnat(times)]).astype(np.int64)).max(initial=0))
        for name, times in readings.items()
    }
    best, following = sorted(longest, key=lambda name: longest[name])[:2]
    return [best] if 5 * longest[best] <= longest[following] and longest[following] > 0 else []
