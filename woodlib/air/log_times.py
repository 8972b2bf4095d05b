"""Times as loggers write them, read by their layout and judged by all rows together."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from ..errors import InputError
from .log_layout import BLANKS, DIGITS, LAYOUT_KINDS, Layout, layout_of

ORDERS = {"day first": "dmy", "month first": "mdy", "year first": "ymd"}
_SETTLED, _OPEN, _DOTTED, _NUMBER = (LAYOUT_KINDS.index(kind) for kind in ("settled", "open", "dotted", "number"))
_MIDDLE_DAY = 15  # of a month that is written alone
_NO_TIME = np.datetime64("NaT", "s")
# What a column of bare numbers may count, with the numbers of the years 2000 to 2040.
_COUNTED_FROM = {"seconds": 1.0, "milliseconds": 1e3, "microseconds": 1e6}
_YEARS_S = (946_684_800.0, 2_208_988_800.0)
_SPREADSHEET_DAYS = (36_526.0, 51_136.0)  # days since 30 December 1899


class TimeColumn:
    """Collects the texts of a time column chunk by chunk; :meth:`times` then reads all of them in one order."""

    def __init__(self) -> None:
        self._kinds: list[np.ndarray] = []
        self._fields: list[np.ndarray] = []
        self._numbers: list[np.ndarray] = []

    def add(self, texts: list[str]) -> None:
        """Take the next texts, in the order of the file."""
        joined = "\n".join(texts).translate(BLANKS)
        patterns = joined.translate(DIGITS).split("\n")
        plain = joined.split("\n")
        if len(patterns) != len(texts):  # a line break inside a cell
            plain = [text.replace("\n", " ").translate(BLANKS) for text in texts]
            patterns = [text.translate(DIGITS) for text in plain]
        kinds = np.full(len(texts), -1, dtype=np.int8)
        fields = np.zeros((4, len(texts)), dtype=np.int32)
        numbers = np.full(len(texts), np.nan)
        for pattern, rows in _rows_by_pattern(patterns):
            layout = layout_of(pattern)
            if layout is None:
                continue
            chosen = plain if len(rows) == len(plain) else [plain[row] for row in rows]
            kinds[rows] = LAYOUT_KINDS.index(layout.kind)
            if layout.kind == "number":
                numbers[rows] = [float(text.replace(",", ".")) for text in chosen]
            else:
                fields[:, rows] = _read(layout, chosen)
        self._kinds.append(kinds)
        self._fields.append(fields)
        if LAYOUT_KINDS.index("number") in kinds:
            self._numbers.append(numbers)
        else:
            self._numbers.append(np.broadcast_to(np.nan, numbers.shape))

    def times(self, date_order: str | None = None) -> tuple[np.ndarray, tuple[str, ...]]:
        """datetime64[s] of every row, not-a-time where unreadable, and remarks; see :func:`read_times`."""
        if date_order is not None and date_order not in ORDERS:
            raise InputError(f'date_order is {date_order!r}; write "day first", "month first" or "year first".')
        kinds, (a, b, c, seconds) = np.concatenate(self._kinds), np.concatenate(self._fields, axis=1)
        times = np.full(kinds.size, _NO_TIME)
        settled = kinds == _SETTLED
        times[settled] = _assemble(a[settled], b[settled], c[settled], seconds[settled])
        counted = kinds == _NUMBER
        if counted.any():
            times[counted] = _from_numbers(np.concatenate(self._numbers)[counted])
        open_rows = (kinds == _OPEN) | (kinds == _DOTTED)
        if not open_rows.any():
            return times, ()
        day = [field if open_rows.all() else field[open_rows] for field in (a, b, c, seconds)]
        dotted = bool(np.all(kinds[open_rows] == _DOTTED))
        order, remarks = _order(day[0], day[1], day[2], day[3], dotted, date_order)
        times[open_rows] = _in_order(order, day[0], day[1], day[2], day[3])
        return times, remarks


def read_times(texts: Sequence[str], date_order: str | None = None) -> tuple[np.ndarray, tuple[str, ...]]:
    """Clock times of a log from their text.

    texts: (n,) as written; date_order: "day first", "month first", "year first" or None to find out.
    Returns datetime64[s] (n,), not-a-time where unreadable, and remarks. Time zones are dropped: the kit needs the
    season, and a house keeps its own clock. Raises InputError when the order of day and month cannot be told.

    >>> times, remarks = read_times(["31.01.2024 23:00", "01.02.2024 00:00"])
    >>> str(times[1]), remarks
    ('2024-02-01T00:00:00', ())
    """
    column = TimeColumn()
    column.add([text.strip() for text in texts])
    return column.times(date_order)


def _rows_by_pattern(patterns: list[str]) -> list[tuple[str, np.ndarray]]:
    places = {pattern: number for number, pattern in enumerate(dict.fromkeys(patterns))}
    if len(places) == 1:
        return [(patterns[0], np.arange(len(patterns)))]
    which = np.fromiter(map(places.__getitem__, patterns), dtype=np.int32, count=len(patterns))
    by_place = np.argsort(which, kind="stable")
    starts = np.searchsorted(which[by_place], np.arange(len(places) + 1))
    return [(pattern, by_place[starts[number] : starts[number + 1]]) for pattern, number in places.items()]


def _read(layout: Layout, texts: list[str]) -> np.ndarray:
    """(4, n) date fields a, b, c and seconds of the day, all texts of one layout at once."""
    letters = np.array(texts, dtype=f"U{layout.length}").view(np.uint32).reshape(len(texts), layout.length)
    digits = letters.astype(np.int32) - ord("0")

    def value(span: tuple[int, int] | None, default: int = 0) -> np.ndarray:
        found = np.full(len(texts), default, dtype=np.int32)
        if span is not None:
            found[:] = 0
            for place in range(*span):
                found = 10 * found + digits[:, place]
        return found

    date = [value(span, _MIDDLE_DAY if place == 2 else 0) for place, span in enumerate(layout.date)]
    if layout.month:
        date[1] = np.full(len(texts), layout.month, dtype=np.int32)
    if layout.kind == "settled":
        date[0] = np.where(date[0] < 100, date[0] + 2000, date[0])
    hour, minute, second = (value(span) for span in layout.clock)
    if layout.half:
        hour = np.where((hour >= 1) & (hour <= 12), hour % 12 + (12 if layout.half == "pm" else 0), hour)
    impossible = (minute > 59) | (second > 59)
    return np.stack([*date, np.where(impossible, -1, 3600 * hour + 60 * minute + second)])


def _from_numbers(numbers: np.ndarray) -> np.ndarray:
    """Times of bare numbers, by the only thing that all of them can count; not-a-time where nothing fits."""
    for divisor in _COUNTED_FROM.values():
        seconds = numbers / divisor
        if _nearly_all(seconds, *_YEARS_S):
            return _rounded(seconds)
    if _nearly_all(numbers, *_SPREADSHEET_DAYS):
        return _rounded((numbers - 25_569.0) * 86_400.0)
    return np.full(numbers.size, _NO_TIME)


def _nearly_all(values: np.ndarray, low: float, high: float) -> bool:
    return bool(np.mean((values >= low) & (values <= high)) >= 0.95)


def _rounded(seconds: np.ndarray) -> np.ndarray:
    good = (seconds >= _YEARS_S[0]) & (seconds <= _YEARS_S[1])
    times = np.rint(np.where(good, seconds, 0.0)).astype(np.int64).astype("M8[s]")
    times[~good] = _NO_TIME
    return times


def _in_order(order: str, a: np.ndarray, b: np.ndarray, c: np.ndarray, seconds: np.ndarray) -> np.ndarray:
    """Times of three fields in the given order; two-digit years are of this century."""
    fields = dict(zip(order, (a, b, c), strict=True))
    return _assemble(np.where(fields["y"] < 100, fields["y"] + 2000, fields["y"]), fields["m"], fields["d"], seconds)


def _assemble(year: np.ndarray, month: np.ndarray, day: np.ndarray, seconds: np.ndarray) -> np.ndarray:
    """datetime64[s]; not-a-time for a date or clock that does not exist."""
    possible = (year >= 1970) & (year < 2200) & (month >= 1) & (month <= 12) & (day >= 1) & (day <= 31)
    possible &= (seconds >= 0) & (seconds <= 86_400)
    month_number = np.where(possible, 12 * (year - 1970) + month - 1, 0)
    first = month_number.astype("M8[M]")
    date = first.astype("M8[D]") + (np.where(possible, day, 1) - 1)
    times = date.astype("M8[s]") + np.where(possible, seconds, 0)
    times[~possible | (date.astype("M8[M]") != first)] = _NO_TIME
    return times


def _order(
    a: np.ndarray, b: np.ndarray, c: np.ndarray, seconds: np.ndarray, dotted: bool, date_order: str | None
) -> tuple[str, tuple[str, ...]]:
    """The order of the date fields: as asked for, or the only one that the file as a whole allows."""
    if date_order is not None:
        return ORDERS[date_order], ()
    names = ["day first", "month first"] + (["year first"] if bool(np.all(c < 100)) else [])
    readings = {name: _in_order(ORDERS[name], a, b, c, seconds) for name in names}
    readable = {name: int(np.sum(~np.isnat(times))) for name, times in readings.items()}
    left = [name for name in names if readable[name] == max(readable.values())]
    if len(left) == 1 or max(readable.values()) == 0:
        return ORDERS[left[0]], ()
    steps = {name: np.diff(readings[name][~np.isnat(readings[name])]).astype(np.int64) for name in left}
    forward = [name for name in left if bool(np.all(steps[name] >= 0) or np.all(steps[name] <= 0))] or left
    proven = forward if len(forward) == 1 else _smoothest({name: steps[name] for name in forward})
    if not proven:
        proven = _first_of_every_month(a, b)
    if proven:
        return ORDERS[proven[0]], (
            f"Dates are read {proven[0]}, the only order in which the readings follow one another without jumps.",
        )
    if dotted and "day first" in forward:
        return "dmy", (
            "Dates with full stops are read day first, as they are usually written; their run does not tell.",
        )
    mark = "." if dotted else "/"
    raise InputError(
        f"the dates of the log ({a[0]}{mark}{b[0]}{mark}{c[0]} and so on) can be read in more than one order; say "
        f"which: {' or '.join(repr(name).replace(chr(39), chr(34)) for name in forward)} "
        "(log_date_order in a brief, date_order from Python)."
    )


def _smoothest(steps: dict[str, np.ndarray]) -> list[str]:
    """The one order whose longest step is at most a fifth of any other's, or none.

    One reading per date proves nothing: twelve firsts of a month look like twelve days read the other way.
    """
    if all(int(np.abs(step).min(initial=86_400)) >= 86_400 for step in steps.values()):
        return []
    longest = {name: int(np.abs(step).max(initial=0)) for name, step in steps.items()}
    best, following = sorted(longest, key=lambda name: longest[name])[:2]
    return [best] if 5 * longest[best] <= longest[following] and longest[following] > 0 else []


def _first_of_every_month(a: np.ndarray, b: np.ndarray) -> list[str]:
    """Dates that differ by one field running from 1 to 12, and again in the next year, are the months."""
    for name, still, runs in (("day first", a, b), ("month first", b, a)):
        steps = np.diff(runs)
        if runs.size >= 12 and bool(np.all(still == still[0])) and bool(np.all((steps == 1) | (steps == -11))):
            return [name]
    return []
