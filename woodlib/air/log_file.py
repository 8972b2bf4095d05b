"""A logger's text file: encoding, separator, heading, and its rows in chunks, so that a long log never fills memory."""

from __future__ import annotations

import codecs
import csv
import io
import os
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import islice
from pathlib import Path
from typing import Any

from ..errors import InputError
from ..files import MEGABYTE, check_size

_SEPARATORS = {";": "semicolons", "\t": "tabs", "|": "bars", ",": "commas"}
_HEADING_WITHIN = 60  # loggers write a serial number and settings above the heading, never this many lines
_CHUNK = 50_000
_SAMPLE = 600
LARGEST_BYTES = 200 * MEGABYTE  # four years of a reading every minute, and every weather file
Row = list[str]


def read_bytes(path: Any, what: str) -> tuple[str, bytes]:
    """Name and content of a file, or an InputError that says why not."""
    if not isinstance(path, str | os.PathLike):
        raise InputError(f"path of the {what} is {path!r}; give the name of a file.")
    place = Path(path)
    if "\0" in str(place) or not os.path.exists(place):
        raise InputError(f"{what} {str(place)!r} is not there; check the folder and the spelling of the file name.")
    if place.is_dir():
        raise InputError(f"{what} {str(place)!r} is a folder; give the name of a file in it.")
    check_size(place, what, LARGEST_BYTES)
    try:
        content = place.read_bytes()
    except OSError as error:
        raise InputError(
            f"{what} {str(place)!r} cannot be opened ({error.strerror}); check its permissions."
        ) from error
    if not content.strip(b"\x00 \t\r\n\xef\xbb\xbf\xff\xfe"):
        raise InputError(f"{what} {place.name!r} is empty; save or export it again.")
    return place.name, content


def encoding_of(content: bytes) -> str:
    """UTF-8 or UTF-16 (marked or not), else the western 8-bit code of older loggers."""
    if content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return "utf-16"
    sample = content[:400]
    if sample.count(0) > len(sample) // 4:
        return "utf-16-be" if sample[0::2].count(0) > sample[1::2].count(0) else "utf-16-le"
    try:
        content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8-sig"


def decode(content: bytes) -> str:
    """Text of a file.

    >>> decode("Zeit;°C".encode("utf-16")), decode("°C".encode("cp1252"))
    ('Zeit;°C', '°C')
    """
    return content.decode(encoding_of(content), errors="replace")


@dataclass(frozen=True, eq=False)
class LogFile:
    """A delimited text: ``skip`` rows stand above the readings, ``heading`` names the columns ([] when none does)."""

    name: str
    content: bytes
    encoding: str
    separator: str
    heading: tuple[str, ...] = ()
    skip: int = 0

    def rows(self, skip: int) -> Iterator[Row]:
        """Every row below the first ``skip`` that holds anything."""
        text = io.TextIOWrapper(io.BytesIO(self.content), self.encoding, errors="replace", newline="")
        reader = csv.reader(text, delimiter=self.separator)
        try:
            yield from islice((row for row in reader if row and (row[0] or any(row))), skip, None)
        except csv.Error as error:
            raise InputError(
                f"hygrometer log {self.name!r} cannot be split into columns at line {reader.line_num} ({error}); "
                "export it again as CSV."
            ) from error

    def chunks(self) -> Iterator[list[Row]]:
        """The readings, many rows at a time."""
        rows = self.rows(self.skip)
        while chunk := list(islice(rows, _CHUNK)):
            yield chunk

    @cached_property
    def sample(self) -> list[Row]:
        """Rows from the beginning and further down, stripped: enough to see what a column holds."""
        first = list(islice(self.rows(self.skip), 40 * _SAMPLE))
        step = max(len(first) // _SAMPLE, 1)
        return [[cell.strip() for cell in row] for row in first[::step]]

    def cell(self, number: int, columns: list[int]) -> str:
        """What stands in the columns of one reading, for quoting it."""
        row = next(islice(self.rows(self.skip + number), 1), [])
        return " ".join(row[index].strip() for index in columns if index < len(row)).strip()

    def below(self, heading: tuple[str, ...], skip: int) -> LogFile:
        """The same file with its heading found, ``skip`` rows down."""
        return replace(self, heading=heading, skip=skip)


def open_log(path: Any, score: Callable[[Row], int]) -> LogFile:
    """Read a delimited text file and find its heading.

    score: how much a row looks like a heading; the first row with the highest score above 0 is taken, and none when
    no row scores. Raises InputError when there is no table in the file.
    """
    name, content = read_bytes(path, "hygrometer log")
    if content.startswith((b"PK\x03\x04", b"\xd0\xcf\x11\xe0", b"%PDF")):
        raise InputError(f"hygrometer log {name!r} is a spreadsheet or document, not text; export it as CSV.")
    encoding = encoding_of(content)
    if not encoding.startswith("utf-16") and b"\x00" in content:
        content = content.replace(b"\x00", b"")
    file = LogFile(name, content, encoding, _separator(content[:200_000].decode(encoding, errors="replace")))
    rows = [[cell.strip() for cell in row] for row in islice(file.rows(0), _HEADING_WITHIN)]
    scores = [score(row) for row in rows]
    best = max(scores, default=0)
    if best <= 0:
        return file
    start = scores.index(best)
    heading = _trim(rows[start])
    above = rows[start - 1] if start else []
    if len(set(heading)) < len(heading) and sum(map(bool, above)) > 1:
        heading = _under(above, heading)
    return file.below(tuple(heading), start + 1)


def _under(above: Row, heading: Row) -> Row:
    """Names of sensors above names of quantities: the upper cell holds until the next one."""
    names, current = [], ""
    for index, cell in enumerate(heading):
        current = (above[index] if index < len(above) else "") or current
        names.append(f"{current} {cell}".strip())
    return names


def _separator(text: str) -> str:
    """The separator that splits most lines into the same number of fields, two or more."""
    lines = [line for line in text.splitlines() if line.strip()][:400]
    shares = {}
    for separator in _SEPARATORS:
        counts = Counter(line.count(separator) for line in lines)
        counts.pop(0, None)
        shares[separator] = max(counts.values(), default=0)
    best = max(shares.values())
    if best == 0:
        raise InputError(
            "hygrometer log has one column only; separate time, temperature and humidity by semicolons, tabs or commas."
        )
    return next(separator for separator, share in shares.items() if share >= 0.9 * best)


def separator_in_words(file: LogFile) -> str:
    """The separator as a person calls it."""
    return _SEPARATORS[file.separator]


def _trim(cells: Row) -> Row:
    """Without the empty cells that a trailing separator leaves."""
    last = max((index for index, cell in enumerate(cells) if cell), default=0)
    return cells[: last + 1]
