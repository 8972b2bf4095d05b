"""A logger's text file as a table: encoding, separator, heading, units row and rows."""

from __future__ import annotations

import codecs
import csv
import os
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ..errors import InputError

_SEPARATORS = {";": "semicolons", "\t": "tabs", "|": "bars", ",": "commas"}
_HEADING_WITHIN = 60  # loggers write a serial number and settings above the heading, never this many lines


@dataclass(frozen=True)
class LogTable:
    """Heading cells, the rows below it as text, the line number of each row, and the separator in words."""

    name: str
    heading: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    lines: tuple[int, ...]
    separator: str


def read_bytes(path: Any, what: str) -> tuple[str, bytes]:
    """Name and content of a file, or an InputError that says why not."""
    if not isinstance(path, str | os.PathLike):
        raise InputError(f"path of the {what} is {path!r}; give the name of a file.")
    place = Path(path)
    if not place.exists():
        raise InputError(f"{what} {str(place)!r} is not there; check the folder and the spelling of the file name.")
    if place.is_dir():
        raise InputError(f"{what} {str(place)!r} is a folder; give the name of a file in it.")
    try:
        content = place.read_bytes()
    except OSError as error:
        raise InputError(
            f"{what} {str(place)!r} cannot be opened ({error.strerror}); check its permissions."
        ) from error
    if not content.strip(b"\x00 \t\r\n\xef\xbb\xbf\xff\xfe"):
        raise InputError(f"{what} {place.name!r} is empty; save or export it again.")
    return place.name, content


def decode(content: bytes) -> str:
    """Text of a file in UTF-8 or UTF-16 (marked or not), else in the western 8-bit code of older loggers.

    >>> decode("Zeit;°C".encode("utf-16")), decode("°C".encode("cp1252"))
    ('Zeit;°C', '°C')
    """
    if content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return content.decode("utf-16", errors="replace")
    sample = content[:400]
    if sample.count(0) > len(sample) // 4:
        big_endian = sample[0::2].count(0) > sample[1::2].count(0)
        return content.decode("utf-16-be" if big_endian else "utf-16-le", errors="replace")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return content.decode("cp1252", errors="replace")


def read_log_table(path: Any, is_heading: Callable[[tuple[str, ...]], int]) -> LogTable:
    """Read a delimited text file and find its heading.

    path: file. is_heading: scores a row of cells; the first row with the highest score above 0 is the heading.
    Returns :class:`LogTable` without empty rows. Raises InputError when there is no table in the file.
    """
    name, content = read_bytes(path, "hygrometer log")
    if content.startswith((b"PK\x03\x04", b"\xd0\xcf\x11\xe0", b"%PDF")):
        raise InputError(f"hygrometer log {name!r} is a spreadsheet or document, not text; export it as CSV.")
    text = decode(content).replace("\x00", "")
    separator = _separator(text)
    rows = [(number, tuple(cell.strip() for cell in row)) for number, row in _numbered_rows(text, separator)]
    rows = [(number, row) for number, row in rows if any(row)]
    scores = [is_heading(row) for _, row in rows[:_HEADING_WITHIN]]
    best = max(scores, default=0)
    if best <= 0:
        first = separator.join(rows[0][1])[:60] if rows else ""
        raise InputError(
            f"hygrometer log {name!r} has no heading with a time, a temperature or a relative humidity "
            f"(it begins {first!r}); put names above the columns, for example time, temperature, humidity."
        )
    start = scores.index(best)
    below = rows[start + 1 :]
    return LogTable(
        name,
        _trim(rows[start][1]),
        tuple(row for _, row in below),
        tuple(number for number, _ in below),
        _SEPARATORS[separator],
    )


def _numbered_rows(text: str, separator: str) -> list[tuple[int, list[str]]]:
    reader = csv.reader(text.splitlines(), delimiter=separator)
    try:
        return [(reader.line_num, row) for row in reader]
    except csv.Error as error:
        raise InputError(
            f"hygrometer log cannot be split into columns at line {reader.line_num} ({error}); export it again as CSV."
        ) from error


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


def _trim(cells: tuple[str, ...]) -> tuple[str, ...]:
    """Without the empty cells that a trailing separator leaves."""
    last = max(index for index, cell in enumerate(cells) if cell)
    return cells[: last + 1]
