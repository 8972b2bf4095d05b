"""The checks against the outside world, and the table they print.

``outside(source, quantity, expected, got, tolerance, unit)`` asserts and keeps a row; all rows are printed at
the end of the run, so that a reader sees how well each source is met and not only that it is.
"""

from __future__ import annotations

import math

import pytest

_ROWS: list[tuple[str, str, float, float, str]] = []


@pytest.fixture
def outside():
    """Compare one number with an outside source; ``tolerance`` is absolute, in the unit given."""

    def check(source: str, quantity: str, expected: float, got: float, tolerance: float, unit: str = "") -> None:
        _ROWS.append((source, quantity, float(expected), float(got), unit))
        assert math.isfinite(got), f"{quantity} ({source}): got {got}"
        assert abs(got - expected) <= tolerance, (
            f"{quantity}: {source} gives {expected:.6g} {unit}, woodlib gives {got:.6g}, "
            f"allowed difference {tolerance:.3g}"
        )

    return check


def pytest_terminal_summary(terminalreporter) -> None:
    """Print source, quantity, expected, got and difference of every outside check."""
    if not _ROWS:
        return
    write = terminalreporter.write_line
    terminalreporter.section(f"checks against the outside world: {len(_ROWS)}")
    for source, quantity, expected, got, unit in _ROWS:
        write(f"{source[:44]:44}  {quantity[:62]:62}  {expected:12.6g}  {got:12.6g}  {got - expected:+10.2e} {unit}")
