"""The numbers that held movement rests on and no species table holds: each with range, status and source."""

from __future__ import annotations

from ..tables import Number, number, numbers

Assumption = Number


def all_assumptions() -> dict[str, Assumption]:
    """Every assumption by key, in the order of the table.

    >>> all_assumptions()["yield_strain"].middle
    0.004
    """
    return numbers("held movement")


def assumption(key: str) -> Assumption:
    """One assumption of the table."""
    return number("held movement", key)
