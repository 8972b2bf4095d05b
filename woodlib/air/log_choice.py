"""Which columns of a log are the time, the temperature and the humidity of one sensor in the room.

Headings are asked first and cells where headings say nothing. Where several sensors speak nothing is guessed: the
sentence lists what is there with its range, and the key that settles it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

import numpy as np

from ..errors import InputError, Problems
from .log_columns import kinds_of, names_a_sensor, outdoors, sensor_of, unit_in, words_of
from .log_file import LogFile, Row
from .log_layout import BLANKS, DIGITS, is_clock, layout_of
from .log_numbers import numbers_of, unit_of

CALLED = {"time": "time", "temperature": "temperature", "humidity": "relative humidity"}
PARAMETER = {"time": "time_column", "temperature": "temperature_column", "humidity": "rh_column"}
BRIEF_KEY = {"time": "log_time_column", "temperature": "log_temperature_column", "humidity": "log_humidity_column"}
_INDOORS = {
    "in",
    "indoor",
    "indoors",
    "inside",
    "room",
    "innen",
    "raum",
    "int",
    "interior",
    "interieur",
    "binnen",
    "inne",
}
_DEGREES = re.compile(r"(?:[*°º˚]|deg\.?)?\s*([CF])|([℃℉])")


@dataclass(frozen=True)
class Wanted:
    """What the caller says about a log: columns by name, and a sensor by the words that set it apart."""

    columns: dict[str, list[str]] = field(default_factory=dict)
    sensor: str = ""


@dataclass(frozen=True)
class Choice:
    """Places of the columns; ``time`` may be a date and a clock. ``check`` is the same temperature in another unit,
    ``sensors`` the column that says which sensor a row is from, ``unit`` of the temperature where cells or headings
    tell it."""

    time: list[int]
    temperature: int
    humidity: int
    unit: str | None = None
    check: int | None = None
    sensors: int | None = None
    remarks: tuple[str, ...] = ()


def choose_columns(file: LogFile, wanted: Wanted, units: Row) -> Choice:
    """The columns of one sensor. units: a row of units or further names below the heading, or nothing.

    Raises InputError with a sentence for each column that cannot be told.
    """
    return _Chooser(file, wanted, units).choice()


class _Chooser:
    def __init__(self, file: LogFile, wanted: Wanted, units: Row) -> None:
        self.file, self.wanted, self.problems = file, wanted, Problems()
        below = [units[index] if index < len(units) else "" for index in range(len(file.heading))]
        self.heading = [f"{name} {unit}".strip() for name, unit in zip(file.heading, below, strict=True)]
        self.columns = [[row[i] if i < len(row) else "" for row in file.sample] for i in range(len(self.heading))]
        self.cell_units = [_common_unit(cells) for cells in self.columns]
        self.remarks: list[str] = []

    def choice(self) -> Choice:
        time = self._time()
        temperature, check = self._one_of("temperature")
        humidity, _ = self._one_of("humidity")
        self.problems.raise_if_any()
        if not self.wanted.sensor:
            places = {"temperature": temperature, "humidity": humidity}
            self._in_the_room([place for kind, place in places.items() if kind not in self.wanted.columns])
            if not {"temperature", "humidity"} & set(self.wanted.columns):
                self._one_room(temperature, humidity)
        unit = _degrees(self.cell_units[temperature]) or unit_in(self.heading[temperature])
        return Choice(
            time, temperature, humidity, unit, check, self._sensors([*time, temperature, humidity]), tuple(self.remarks)
        )

    def _named(self, kind: str) -> list[int] | None:
        """Places of the columns that the caller named; None where there is nothing named."""
        names = self.wanted.columns.get(kind)
        if names is None:
            return None
        lowered = [cell.lower() for cell in self.file.heading]
        places = []
        for name in names:
            plain = name.strip().lower()
            number = plain.removeprefix("column ")
            if plain in lowered:
                places.append(lowered.index(plain))
            elif plain.startswith("column ") and number.isdigit() and 1 <= int(number) <= len(lowered):
                places.append(int(number) - 1)
            else:
                listed = ", ".join(map(repr, self.file.heading))
                self.problems.add(f"{PARAMETER[kind]} {name!r} is not in the log; its columns are {listed}.")
                return []
        return places

    def _time(self) -> list[int]:
        """One column that holds date and clock, else a date and a clock."""
        found = self._named("time")
        if found is not None and len(found) != 1:
            return found
        if found is None:
            found = [index for index, cell in enumerate(self.heading) if "time" in kinds_of(cell)]
        dates = [index for index in found if _share(self.columns[index], _is_date) > 0.5]
        if not dates and "time" not in self.wanted.columns:
            free = [index for index, cell in enumerate(self.heading) if not kinds_of(cell)]
            dates = [index for index in free if _share(self.columns[index], _is_written_date) > 0.8]
        if not found and not dates:
            self.problems.add(
                f"the log has no time column among {self._listed()}; rename the column that holds it to time, or say "
                f"which it is ({BRIEF_KEY['time']} in a brief, {PARAMETER['time']} from Python)."
            )
            return []
        if not dates:
            return found[:1]
        written = [index for index in dates if _share(self.columns[index], _is_written_date) > 0.5] or dates
        whole = [index for index in written if _share(self.columns[index], _has_clock) > 0.5]
        counted = _share(self.columns[written[0]], _is_written_date) <= 0.5
        if whole or counted or "time" in self.wanted.columns:
            return [(whole or written)[0]]
        date = min(written, key=lambda index: _share(self.columns[index], is_clock))
        others = [index for index in [*found, *range(len(self.heading))] if index != date]
        clocks = [index for index in dict.fromkeys(others) if _share(self.columns[index], is_clock) > 0.5]
        return [date, *clocks[:1]]

    def _one_of(self, kind: str) -> tuple[int, int | None]:
        """The column of a quantity, and a second one that holds the same temperature in the other unit."""
        named = self._named(kind)
        if named is not None:
            return (named[0] if named else 0), None
        found = [index for index, cell in enumerate(self.heading) if kind in kinds_of(cell)]
        if not found:
            found = self._by_cells(kind)
        if not found:
            numbers = self._with_ranges(
                [i for i, cell in enumerate(self.heading) if not kinds_of(cell) and self._is_number(i)]
            )
            there = f" (its other numbers: {numbers})" if numbers else ""
            self.problems.add(
                f"the log has no {CALLED[kind]} column among {self._listed()}{there}; rename the column that holds it to "
                f"{kind}, or say which it is ({BRIEF_KEY[kind]} in a brief, {PARAMETER[kind]} from Python)."
            )
            return 0, None
        if self.wanted.sensor:
            found = self._of_the_sensor(kind, found)
        elif len(found) > 1:
            inside = [index for index in found if not outdoors(self.heading[index])]
            if inside and self._speaks_for_itself(inside):
                left_out = ", ".join(repr(self.heading[i]) for i in found if i not in inside)
                if left_out:
                    self.remarks.append(f"{left_out} is named as outdoor air and left out.")
                found = inside
        if len(found) == 2 and kind == "temperature":
            by_unit = {unit_in(self.heading[index]): index for index in found}
            same = sensor_of(self.heading[found[0]]) == sensor_of(self.heading[found[1]])
            if same and set(by_unit) == {"degC", "degF"}:
                return by_unit["degC"], by_unit["degF"]
        if len(found) > 1:
            self._ask(kind, found)
        return (found[0] if found else 0), None

    def _speaks_for_itself(self, inside: list[int]) -> bool:
        """Only columns of the room are left, and the humidity beside them is not nameless between two sensors."""
        sensors = {sensor_of(self.heading[index]) for index in inside}
        humid = [i for i, cell in enumerate(self.heading) if "humidity" in kinds_of(cell)]
        humid = [index for index in humid if not outdoors(self.heading[index])]
        warm = [i for i, cell in enumerate(self.heading) if "temperature" in kinds_of(cell)]
        warm = [index for index in warm if not outdoors(self.heading[index])]
        return len(sensors) == 1 and {sensor_of(self.heading[i]) for i in humid} == {
            sensor_of(self.heading[i]) for i in warm
        }

    def _ask(self, kind: str, found: list[int]) -> None:
        self.problems.add(
            f"several columns could be the {CALLED[kind]}: {self._with_ranges(found)}; say which sensor stands in the "
            f"room, or name the column (log_sensor or {BRIEF_KEY[kind]} in a brief, sensor or {PARAMETER[kind]} from "
            "Python)."
        )

    def _of_the_sensor(self, kind: str, found: list[int]) -> list[int]:
        words = set(words_of(self.wanted.sensor))
        chosen = [index for index in found if words <= set(words_of(self.heading[index]))]
        if len(chosen) > 1:  # "1" is also in "1 outdoors": the whole name wins
            plain = " ".join(words_of(self.wanted.sensor))
            chosen = [i for i in chosen if sensor_of(self.heading[i]) == plain] or chosen
        if not chosen and len(found) > 1:
            self.problems.add(
                f"sensor {self.wanted.sensor!r} is in none of the {CALLED[kind]} columns of the log; there are "
                f"{self._with_ranges(found)}."
            )
        return chosen or found[:1]

    def _by_cells(self, kind: str) -> list[int]:
        """Columns without a heading that helps, by the units in their cells or by a lone percent sign above them."""
        free = [index for index, cell in enumerate(self.heading) if not kinds_of(cell) and self._is_number(index)]
        if kind == "temperature":
            return [index for index in free if _degrees(self.cell_units[index])]
        written = [index for index in free if self.cell_units[index].startswith("%")]
        lone = [i for i in free if "%" in self.heading[i] and all(map(_says_nothing, words_of(self.heading[i])))]
        return written or (lone if len(lone) == 1 else [])

    def _in_the_room(self, places: list[int]) -> None:
        """No column that is named as outdoor air, unless it was asked for."""
        outside = [index for index in places if outdoors(self.heading[index])]
        if outside:
            raise InputError(
                f"the log names {self._with_ranges(outside)} as outdoor air, which is not the room's; give a log of the "
                "room, or say that this sensor stands in it (log_sensor in a brief, sensor from Python)."
            )

    def _one_room(self, temperature: int, humidity: int) -> None:
        """Temperature and humidity are of one sensor by their names."""
        if not (kinds_of(self.heading[temperature]) and kinds_of(self.heading[humidity])):
            return  # told by their cells
        warm, humid = (set(words_of(sensor_of(self.heading[index]))) for index in (temperature, humidity))
        if warm and humid and not warm & humid and not (warm <= _INDOORS and humid <= _INDOORS):
            raise InputError(
                f"temperature and humidity of the log seem to be of two sensors: "
                f"{self._with_ranges([temperature, humidity])}; if they stand in one room, name both columns "
                "(log_temperature_column and log_humidity_column in a brief, temperature_column and rh_column from "
                "Python)."
            )

    def _sensors(self, taken: list[int]) -> int | None:
        """The column that tells sensors apart row by row, if there is one."""
        for index, cell in enumerate(self.heading):
            if index not in taken and names_a_sensor(cell):
                values = set(self.columns[index]) - {""}
                if 1 <= len(values) <= 50:
                    return index
        return None

    def _is_number(self, index: int) -> bool:
        return bool(np.isfinite(numbers_of(self.columns[index])).mean() > 0.5) if self.columns[index] else False

    def _listed(self) -> str:
        return ", ".join(map(repr, self.file.heading))

    def _with_ranges(self, places: Sequence[int]) -> str:
        parts = []
        for index in places[:8]:
            values = [
                numbers_of([row[index] if index < len(row) else "" for row in rows]) for rows in self.file.chunks()
            ]
            parts.append(
                f"{self.heading[index]!r} ({range_of(np.concatenate(values))})" if values else repr(self.heading[index])
            )
        return ", ".join(parts) + (" and more" if len(places) > 8 else "")


def _says_nothing(word: str) -> bool:
    return word.isdigit() or word in ("sensor", "channel", "kanal", "ch", "probe")


def range_of(values: np.ndarray) -> str:
    """Ends of what a column holds, in words."""
    known = values[np.isfinite(values)]
    return f"{known.min():g} to {known.max():g}" if known.size else "no numbers"


def _common_unit(cells: Sequence[str]) -> str:
    units = [unit_of(cell) for cell in cells]
    best = max(set(units), key=units.count, default="")
    return best if units.count(best) > len(units) // 2 else ""


def _degrees(unit: str) -> str | None:
    """Unit of temperature written behind a number: "*C" gives "degC"."""
    found = _DEGREES.fullmatch(unit)
    return None if found is None else "degF" if "F" in unit or "℉" in unit else "degC"


def _share(cells: Sequence[str], test: Callable[[str], bool]) -> float:
    filled = [cell for cell in cells if cell]
    return sum(map(test, filled)) / len(filled) if filled else 0.0


def _is_date(cell: str) -> bool:
    return layout_of(cell.translate(BLANKS).translate(DIGITS)) is not None


def _is_written_date(cell: str) -> bool:
    layout = layout_of(cell.translate(BLANKS).translate(DIGITS))
    return layout is not None and layout.kind != "number"


def _has_clock(cell: str) -> bool:
    layout = layout_of(cell.translate(BLANKS).translate(DIGITS))
    return layout is not None and layout.clock[0] is not None
