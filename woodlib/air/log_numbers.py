"""Numbers as loggers write them: with a decimal comma, a unit behind, or a word where a reading is missing."""

from __future__ import annotations

import re

import numpy as np

_NUMBER = re.compile(r"([-+−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d+)?)\s*([^\d.,;:/+-]{0,8})")


def numbers_of(cells: list[str]) -> np.ndarray:
    """(n,) numbers with point or comma, with or without a unit behind; NaN where there is none.

    >>> numbers_of(["20.5", "18,7*C", " 45 %", "ERR", "12:30", ""]).tolist()
    [20.5, 18.7, 45.0, nan, nan, nan]
    """
    try:
        found = np.array(list(map(float, cells)))
    except ValueError:
        read = {cell: _number(cell) for cell in set(cells)}
        return np.fromiter(map(read.__getitem__, cells), dtype=float, count=len(cells))
    found[~np.isfinite(found)] = np.nan
    return found


def unit_of(cell: str) -> str:
    """What is written behind the number of a cell: "18.7*C" gives "*C"; empty when the cell is no number."""
    found = _NUMBER.fullmatch(cell.strip())
    return found[2].strip() if found else ""


def _number(cell: str) -> float:
    found = _NUMBER.fullmatch(cell.strip())
    return float(found[1].replace(",", ".").replace("−", "-")) if found else np.nan
