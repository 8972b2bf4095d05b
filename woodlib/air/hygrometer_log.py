"""A year of air from a hygrometer's log: any delimited text file with a time, a temperature and a humidity column."""

from __future__ import annotations

from collections import Counter
from typing import Any

import numpy as np

from ..errors import InputError
from .log_checks import HOTTEST_MIDDLE_C, Readings, believed, calendar_day, in_order, notice, usable
from .log_choice import Choice, Wanted, choose_columns, range_of
from .log_columns import heading_score, outdoors, words_of
from .log_file import LogFile, Row, open_log
from .log_layout import BLANKS, DIGITS, layout_of
from .log_numbers import numbers_of
from .log_times import TimeColumn
from .year import Year

_UNITS = {"degc": "degC", "c": "degC", "celsius": "degC", "degf": "degF", "f": "degF", "fahrenheit": "degF"}
_NEARLY_ALL = 0.9  # of a log in shares of one: the rest are slips
_PERHAPS_CELSIUS = (12.0, 32.0)  # degF of a middle value that no room has, and most have in degC
_SAME_DEGREES_K = 0.6  # two columns of one sensor, each rounded to a whole degree Fahrenheit


def read_hygrometer_log(
    path: Any,
    *,
    time_column: Any = None,
    temperature_column: str | None = None,
    rh_column: str | None = None,
    sensor: str | None = None,
    temperature_unit: str | None = None,
    date_order: str | None = None,
    label: str = "",
) -> Year:
    """Indoor air from a logger's CSV or text export.

    path: file. Separator, decimal comma, encoding, lines above the heading, a row of units and the usual names of
    columns in a dozen languages are recognised; what cannot be told for sure is asked for in the error:
    time_column (a name, or a date and a time-of-day column as two names), temperature_column, rh_column ("column 2"
    where there is no heading), sensor (words of the heading or of the sensor's name, where several speak),
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
    if temperature_unit is not None and str(temperature_unit).lower().strip("° ") not in _UNITS:
        raise InputError(f'temperature_unit is {temperature_unit!r}; write "degC" or "degF".')
    wanted = _wanted(time_column, temperature_column, rh_column, sensor)
    file = open_log(path, lambda cells: heading_score(cells, [n for names in wanted.columns.values() for n in names]))
    file, units = _prepared(file, wanted)
    choice = choose_columns(file, wanted, units)
    notes = list(choice.remarks)
    readings = _readings(file, choice, wanted, date_order, temperature_unit, notes)
    readings = usable(readings, file, choice, notes)
    readings = in_order(readings, file, notes)
    if readings.time.size < 2:
        raise InputError(
            f"hygrometer log {file.name!r} has {readings.time.size} usable reading; a log needs at least two, and "
            "a year of them to show the driest and the dampest month."
        )
    believed(readings, file, choice)
    notice(readings, notes)
    return Year(
        calendar_day(readings.time),
        readings.temperature_c,
        readings.rh_percent,
        label or f"log {file.name}",
        tuple(notes),
    )


def _wanted(time: Any, temperature: str | None, humidity: str | None, sensor: str | None) -> Wanted:
    named = {"time": time, "temperature": temperature, "humidity": humidity}
    columns = {
        kind: [str(name) for name in ([value] if isinstance(value, str) else value)]
        for kind, value in named.items()
        if value is not None
    }
    return Wanted(columns, sensor or "")


def _prepared(file: LogFile, wanted: Wanted) -> tuple[LogFile, Row]:
    """The file below its heading and its row of units, which is returned too; columns without names are numbered."""
    if not file.heading:
        width = Counter(map(len, file.sample)).most_common(1)[0][0]
        numbered = file.below(tuple(f"column {number + 1}" for number in range(width)), 0)
        try:
            choose_columns(numbered, wanted, [])
        except InputError as error:
            if wanted.columns:
                raise
            first = file.separator.join(file.sample[0])[:60]
            raise InputError(
                f"hygrometer log {file.name!r} has no heading with a time, a temperature or a relative humidity (it "
                f"begins {first!r}); put names above the columns, for example time, temperature, humidity, or say which "
                'is which: "column 1" (log_time_column and so on in a brief, time_column and so on from Python).'
            ) from error
        return numbered, []
    if not file.sample:
        raise InputError(f"hygrometer log {file.name!r} has a heading and no readings below it; export it again.")
    units: Row = []
    if not any(character.isdigit() for cell in file.sample[0] for character in cell):
        units, file = file.sample[0], file.below(file.heading, file.skip + 1)
        if not file.sample:
            raise InputError(f"hygrometer log {file.name!r} has a heading and no readings below it; export it again.")
    return _row_names(file), units


def _row_names(file: LogFile) -> LogFile:
    """A field more than the heading has names is the name of the row, when it counts them; else it is a mistake."""
    wider = [row for row in file.sample if any(row[len(file.heading) :])]
    if 2 * len(wider) <= len(file.sample):
        return file
    by_one = [row for row in wider if len(row) == len(file.heading) + 1 and row[0].isdigit() and len(row[0]) < 8]
    dated = [row for row in by_one if any(_dated(cell) for cell in row[1:])]
    if len(dated) == len(file.sample):
        return file.below(("row", *file.heading), file.skip)
    if file.separator == ",":
        raise InputError(
            f"hygrometer log {file.name!r} has {len(file.heading)} names above {len(file.sample[0])} fields: it "
            "seems to use the comma both between columns and in numbers; export it with semicolons."
        )
    return file


def _dated(cell: str) -> bool:
    layout = layout_of(cell.translate(BLANKS).translate(DIGITS))
    return layout is not None and (layout.kind != "number" or layout.length >= 10)


def _readings(
    file: LogFile, choice: Choice, wanted: Wanted, date_order: str | None, asked: str | None, notes: list[str]
) -> Readings:
    """Times, degC and % of every row, or of the rows of the sensor that is wanted."""
    times = TimeColumn()
    sensors: list[np.ndarray] = []
    names: dict[str, int] = {}
    columns: dict[int, list[np.ndarray]] = {choice.temperature: [], choice.humidity: []}
    if choice.check is not None:
        columns[choice.check] = []
    for rows in file.chunks():
        parts = [_cells(rows, index) for index in choice.time]
        _same_heading(parts[0], rows, file)
        times.add(parts[0] if len(parts) == 1 else [" ".join(part).strip() for part in zip(*parts, strict=True)])
        for index, found in columns.items():
            found.append(numbers_of(_cells(rows, index)))
        if choice.sensors is not None:
            cells = _cells(rows, choice.sensors)
            for cell in dict.fromkeys(cells):
                names.setdefault(cell, len(names))
            sensors.append(np.fromiter(map(names.__getitem__, cells), dtype=np.int32, count=len(cells)))
    time, remarks = times.times(date_order)
    values = {index: np.concatenate(found) for index, found in columns.items()}
    notes.extend(remarks)
    humidity = _percent(values[choice.humidity], notes)
    temperature = _celsius(values[choice.temperature], choice, asked, file, notes)
    if choice.check is not None:
        _same_degrees(temperature, (values[choice.check] - 32.0) / 1.8, file, choice)
    readings = Readings(time, temperature, humidity, np.arange(time.size))
    if choice.sensors is None:
        return readings
    return readings.take(_of_the_sensor(np.concatenate(sensors), names, readings, file, wanted))


def _same_heading(cells: list[str], rows: list[Row], file: LogFile) -> None:
    """Refuse a file put together of exports whose columns stand in another order."""
    if set(cells).isdisjoint(file.heading):
        return
    for place, cell in enumerate(cells):
        names = tuple(name.strip() for name in rows[place])
        if cell in file.heading and sorted(names) == sorted(file.heading) and names != tuple(file.heading):
            raise InputError(
                f"hygrometer log {file.name!r} is put together of exports with their columns in another order: one begins "
                f"{file.separator.join(file.heading)[:60]!r}, another {file.separator.join(names)[:60]!r}; give one of them, or "
                "put the columns in one order."
            )


def _cells(rows: list[Row], index: int) -> list[str]:
    try:
        return [row[index].strip() for row in rows]
    except IndexError:
        return [row[index].strip() if index < len(row) else "" for row in rows]


def _of_the_sensor(
    which: np.ndarray, names: dict[str, int], readings: Readings, file: LogFile, wanted: Wanted
) -> np.ndarray:
    """Mask of the rows of one sensor: the only one that speaks, or the one that is wanted."""
    asked = set(words_of(wanted.sensor))
    chosen = [name for name in names if asked and asked <= set(words_of(name))]
    exact = [name for name in chosen if set(words_of(name)) == asked]
    chosen = exact or chosen
    if len(chosen) == 1:
        return which == names[chosen[0]]
    real = [name for name in names if name]
    if not asked and len(real) <= 1 and not any(map(outdoors, real)):
        return np.ones(which.size, dtype=bool)
    told = [
        f"{name or 'without a name'} ({range_of(readings.temperature_c[which == place])} degC, "
        f"{range_of(readings.rh_percent[which == place])} %)"
        for name, place in list(names.items())[:6]
    ]
    more = " and more" if len(names) > 6 else ""
    if len(real) == 1:
        raise InputError(
            f"the rows of hygrometer log {file.name!r} are of {told[0]}, named as outdoor air; give a log of the room, or "
            "say that this sensor stands in it (log_sensor in a brief, sensor from Python)."
        )
    raise InputError(
        f"the rows of hygrometer log {file.name!r} are of several sensors: {', '.join(told)}{more}; say which stands in the "
        "room (log_sensor in a brief, sensor from Python)."
    )


def _percent(humidity: np.ndarray, notes: list[str]) -> np.ndarray:
    """Humidity in percent; a whole log at or below 1 is a fraction, for no room is that dry."""
    known = humidity[np.isfinite(humidity)]
    if known.size > 1 and 0.0 < np.quantile(known, _NEARLY_ALL) <= 1.0:
        notes.append(
            f"Relative humidity is {'hardly ever' if known.max() > 1.0 else 'never'} above 1, so it is read as a fraction and not as percent."
        )
        return 100.0 * humidity
    return humidity


def _celsius(values: np.ndarray, choice: Choice, asked: str | None, file: LogFile, notes: list[str]) -> np.ndarray:
    """Temperature in degC, by the unit asked for, written in heading or cells, or plain from the values."""
    heading = file.heading[choice.temperature]
    unit = _UNITS[asked.lower().strip("° ")] if asked else choice.unit
    middle = float(np.nanmedian(values)) if np.isfinite(values).any() else 0.0
    if unit == "degC" and not asked and middle > HOTTEST_MIDDLE_C:
        raise InputError(
            f"hygrometer log {file.name!r} has {middle:g} as its middle value under {heading!r}, hotter than any room; if "
            'the numbers are Fahrenheit, correct the heading or say "degF", if they are right, "degC" '
            "(log_temperature_unit in a brief, temperature_unit from Python)."
        )
    if unit == "degF" and not asked and _PERHAPS_CELSIUS[0] <= middle <= _PERHAPS_CELSIUS[1]:
        raise InputError(
            f"hygrometer log {file.name!r} has {middle:g} as its middle value under {heading!r}, colder than any room; if "
            'the numbers are Celsius, correct the heading or say "degC", if they are right, "degF" '
            "(log_temperature_unit in a brief, temperature_unit from Python)."
        )
    if unit is None:
        if 35.0 < middle < 50.0 or middle > 130.0:
            raise InputError(
                f"hygrometer log {file.name!r} does not name the unit of {heading!r}, and its middle value {middle:g} "
                'tells nothing; say "degC" or "degF" (log_temperature_unit in a brief, temperature_unit from Python).'
            )
        unit = "degC" if middle <= 35.0 else "degF"
        notes.append(
            f"The unit of temperature is not written in the log; with a middle value of {middle:.0f} it is "
            f"taken as {unit}."
        )
    return values if unit == "degC" else (values - 32.0) / 1.8


def _same_degrees(celsius: np.ndarray, other: np.ndarray, file: LogFile, choice: Choice) -> None:
    """Two columns of one temperature agree, or one of them is not what its heading says."""
    apart = np.flatnonzero(np.abs(celsius - other) > _SAME_DEGREES_K)
    if apart.size > 0.05 * celsius.size and choice.check is not None:
        row = int(apart[0])
        raise InputError(
            f"the two temperatures of hygrometer log {file.name!r} do not agree in {apart.size} rows: reading {row + 1} has "
            f"{file.cell(row, [choice.temperature])!r} and {file.cell(row, [choice.check])!r}; name the right one "
            "(log_temperature_column in a brief, temperature_column from Python)."
        )
