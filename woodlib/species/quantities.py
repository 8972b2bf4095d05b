"""What the tables may hold: every column with its unit, its SI key, its limits and its meaning."""

from __future__ import annotations

import difflib
from dataclasses import dataclass
from functools import cache

from ..errors import InputError
from ..tables import rows


@dataclass(frozen=True)
class Column:
    """One column of a species table; ``si_per_unit`` turns its numbers into the SI of ``key``."""

    column: str
    key: str
    unit: str
    si_unit: str
    si_per_unit: float
    lowest: float
    highest: float
    table: str
    meaning: str


@cache
def columns() -> dict[str, Column]:
    """Every number column, by its name in the table.

    >>> columns()["shear_parallel_psi"].key
    'shear_parallel_pa'
    """
    return {row["column"]: _column(row) for row in rows("quantities.csv")}


def _column(row: dict[str, str]) -> Column:
    texts = {name: row[name] for name in ("column", "key", "unit", "si_unit", "table", "meaning")}
    scale, lowest, highest = (float(row[name]) for name in ("si_per_unit", "lowest", "highest"))
    return Column(**texts, si_per_unit=scale, lowest=lowest, highest=highest)


@cache
def _meanings() -> dict[str, str]:
    meanings: dict[str, str] = {}
    for column in columns().values():
        meanings.setdefault(column.key, column.meaning)
    return meanings


def keys() -> tuple[str, ...]:
    """Every key that a species may carry, in the order of the table."""
    return tuple(_meanings())


def meaning_of(key: str) -> str:
    """What a key stands for, in words; a key that does not exist is refused with the nearest one.

    >>> meaning_of("ratio_et_el")
    'tangential stiffness over stiffness along the grain'
    """
    try:
        return _meanings()[key]
    except (KeyError, TypeError):
        near = difflib.get_close_matches(str(key), keys(), n=1, cutoff=0.5)
        hint = f"did you mean {near[0]}?" if near else f"the keys are: {', '.join(keys())}."
        raise InputError(f"key {key!r} is not a quantity of a species; {hint}") from None
