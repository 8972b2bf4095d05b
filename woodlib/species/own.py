"""Woods of your own, from a CSV file with the columns of the kit's own table."""

from __future__ import annotations

import csv
import difflib
import io
import math
import re
from pathlib import Path

from ..errors import InputError, Problems
from ..files import MEGABYTE, check_size, put
from .catalogue import all_species
from .doubts import doubts_of_species
from .names import normal
from .quantities import Column, columns
from .record import Species
from .value import Value

_TEXT_COLUMNS = ("name", "scientific_name", "kind", "origin")
_LONGEST_CELL = 1000  # characters
_LARGEST_BYTES = 5 * MEGABYTE
_KINDS = ("hardwood", "softwood")
# Usual headings that no likeness of letters would lead to the right column.
_MEANT = {
    "species": "name",
    "wood": "name",
    "timber": "name",
    "latin_name": "scientific_name",
    "latin": "scientific_name",
    "botanical_name": "scientific_name",
    "type": "kind",
}


def read_own_species(path: str | Path) -> tuple[Species, ...]:
    """Woods from a CSV file; every value gets the status ``own``.

    The first row names the columns: ``name`` and any of the columns of ``data/quantities.csv``; stiffness and strength
    may be in psi or in MPa and GPa, the column name says which. A cell left blank stays missing. Files with semicolons
    between cells may use decimal commas.

    Raises :class:`InputError` with one sentence per bad cell, all at once. What is possible but unusual, such as
    tangential shrinkage below radial, is kept and named in ``doubts``.
    """
    file = Path(path) if isinstance(path, (str, Path)) else None
    if file is None:
        raise InputError(f"species file {path!r} is not a path; give the name of a CSV file.")
    text = _text(file)
    delimiter = ";" if ";" in text.splitlines()[0] else ","
    rows = _rows(text, delimiter, file.name)
    if not rows:
        raise _empty(file)
    problems = Problems()
    header = _header(rows[0][1], problems)
    if len(rows) < 2:
        problems.add(f"species file {file.name} has column names but no woods; add one row per wood.")
    problems.raise_if_any()
    taken = {normal(wood.name): wood.name for wood in all_species()}
    own = [_row(number, cells, header, file.name, delimiter == ";", taken, problems) for number, cells in rows[1:]]
    problems.raise_if_any()
    return tuple(wood for wood in own if wood is not None)


def write_own_species_template(path: str | Path) -> Path:
    """Write an empty species file with every column name, ready to fill in; an existing file is not overwritten."""
    file = Path(path)
    return put((",".join((*_TEXT_COLUMNS, *columns())) + "\n").encode(), file)


def _text(file: Path) -> str:
    try:
        if file.exists() and not file.is_dir():
            check_size(file, "species file", _LARGEST_BYTES)
        raw = file.read_bytes()
    except InputError:
        raise
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "not a file name"
        raise InputError(f"species file {str(file)!r} cannot be read ({reason}); name a CSV file.") from None
    if b"\0" in raw:
        raise InputError(f"species file {file.name} is not plain text; save the sheet as CSV (UTF-8).")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise InputError(f"species file {file.name} is not UTF-8 text; save the sheet as CSV (UTF-8).") from None
    if not text.strip(" \t\r\n,;"):
        raise _empty(file)
    return text


def _empty(file: Path) -> InputError:
    return InputError(f"species file {file.name} is empty; its first row must name the columns, for example name.")


def _rows(text: str, delimiter: str, name: str) -> list[tuple[int, list[str]]]:
    """Rows that hold anything, with the row number a sheet shows; cells with single spaces and no line breaks."""
    try:
        rows = list(enumerate(csv.reader(io.StringIO(text, newline=None), delimiter=delimiter), start=1))
    except csv.Error as error:
        raise InputError(f"species file {name} is not a CSV table ({error}); save the sheet as CSV (UTF-8).") from None
    if any(len(cell) > _LONGEST_CELL for _, cells in rows for cell in cells):
        raise InputError(f"species file {name} is not a CSV table (a cell is too long); save the sheet as CSV (UTF-8).")
    tidy = [(number, [" ".join(cell.split()) for cell in cells]) for number, cells in rows]
    return [(number, cells) for number, cells in tidy if any(cells)]


def _header(cells: list[str], problems: Problems) -> list[str]:
    """Column names of the file; an unknown, doubled or missing one is a problem."""
    allowed = (*_TEXT_COLUMNS, *columns())
    header = ["_".join(cell.lower().split()) for cell in cells]
    for place, name in enumerate(header, start=1):
        if not name:
            problems.add(f"row 1, column {place}: the column has no name; name it or remove it.")
        elif name not in allowed:
            near = [_MEANT[name]] if name in _MEANT else difflib.get_close_matches(name, allowed, n=1, cutoff=0.4)
            hint = f"did you mean {near[0]!r}?" if near else f"the columns are: {', '.join(allowed)}."
            problems.add(f"row 1, column {place}: {cells[place - 1]!r} is not a column of a species file; {hint}")
        elif name in header[: place - 1]:
            problems.add(f"row 1, column {place}: the column {name!r} is there twice; keep one.")
    if "name" not in header and not any(_MEANT.get(column) == "name" for column in header):
        problems.add("row 1: there is no column 'name'; every wood needs a name.")
    return header


def _row(
    number: int, cells: list[str], header: list[str], file: str, comma: bool, taken: dict[str, str], problems: Problems
) -> Species | None:
    if len(cells) > len(header):
        problems.add(
            f"row {number}: {len(cells)} cells where row 1 names {len(header)} columns; a number such as 7,8 "
            "must be written 7.8 in a file with commas between cells."
        )
        return None
    cell = dict(zip(header, cells, strict=False))
    before = len(problems.sentences)
    name = _name(number, cell.get("name", ""), taken, problems)
    kind = cell.get("kind", "").lower()
    if kind and kind not in _KINDS:
        problems.add(
            f"row {number}, column kind: {cell['kind']!r} is not known; write hardwood or softwood, or leave it blank."
        )
    values = _values(number, cell, file, comma, problems)
    if len(problems.sentences) > before:
        return None
    return Species(
        name,
        cell.get("scientific_name", ""),
        kind,
        False,
        values,
        doubts_of_species(name, values),
        cell.get("origin", ""),
        name,
    )


def _name(number: int, name: str, taken: dict[str, str], problems: Problems) -> str:
    where, key = f"row {number}, column name", normal(name)
    if not key:
        problems.add(f"{where}: the wood has no name; write one, for example 'pear, my yard'.")
    elif key in taken and taken[key].startswith("row "):
        problems.add(
            f"rows {taken[key].removeprefix('row ')} and {number} are both named {name!r}; give each wood a name "
            f"of its own, for example '{name}, second batch'."
        )
    elif key in taken:
        problems.add(
            f"{where}: {name!r} is already the name of '{taken[key]}'; give yours a name of its own, "
            f"for example '{name}, my yard'."
        )
    else:
        taken[key] = f"row {number}"
    return name


def _values(number: int, cell: dict[str, str], file: str, comma: bool, problems: Problems) -> dict[str, Value]:
    values: dict[str, Value] = {}
    before = len(problems.sentences)
    for name, column in columns().items():
        if not cell.get(name):
            continue
        where = f"row {number}, column {name}"
        given = _number(where, cell[name], column, comma, problems)
        if column.key in values:
            problems.add(f"{where}: {column.key} is given in two units; keep one of the two columns.")
        elif given is not None:
            note = f"given as {cell[name]} {column.unit}".rstrip()
            values[column.key] = Value(given * column.si_per_unit, column.si_unit, "own", file, note)
    if not values and len(problems.sentences) == before:
        problems.add(
            f"row {number}: {cell.get('name') or 'the wood'} has no numbers; give at least one, for example "
            "tangential_shrinkage_percent."
        )
    return values


def _number(where: str, text: str, column: Column, comma: bool, problems: Problems) -> float | None:
    """A number within the limits of its column, or None with the reason added to ``problems``."""
    unit = f" {column.unit}" if column.unit else ""
    plain = text.removesuffix("%").strip() if column.unit == "percent" else text
    if "," in plain:
        # 1,200 may be twelve hundred or one and a fifth: only a comma that cannot part thousands is read as decimal.
        if not comma or not re.fullmatch(r"[-+]?\d+,(\d{1,2}|\d{4,})", plain):
            problems.add(
                f"{where}: {text!r} has a comma; write a decimal point and nothing between thousands, "
                "for example 7.8 or 1200."
            )
            return None
        plain = plain.replace(",", ".")
    try:
        number = float(plain)
    except ValueError:
        number = math.nan
    if not math.isfinite(number):
        problems.add(
            f"{where}: {text!r} is not a number; write one in{unit or ' plain figures'} or leave the cell blank."
        )
        return None
    if not column.lowest <= number <= column.highest:
        problems.add(
            f"{where}: {text}{unit} is outside {column.lowest:g} to {column.highest:g}{unit}; "
            "check the number and its unit."
        )
        return None
    return number
