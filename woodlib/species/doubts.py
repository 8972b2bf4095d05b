"""What a maker should know before trusting a row, in sentences."""

from __future__ import annotations

from .value import Value


def doubts_of(row: dict[str, str], own: dict[str, Value], group_name: str, group: dict[str, Value]) -> tuple[str, ...]:
    """Sentences about one row of the table, most important first."""
    return ()
