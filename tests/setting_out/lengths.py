"""Lengths as makers type them, in inches and millimetres, for the property tests."""

from fractions import Fraction

from hypothesis import strategies as st

INCH = Fraction(254, 10_000)


def lengths(low_mm: int, high_mm: int):
    """Exact lengths in metres, in half millimetres or in 64ths of an inch."""
    metric = st.integers(2 * low_mm, 2 * high_mm).map(lambda halves: Fraction(halves, 2000))
    low, high = (int(Fraction(mm, 1000) / (INCH / 64)) for mm in (low_mm, high_mm))
    return metric | st.integers(low + 1, high).map(lambda ticks: ticks * INCH / 64)
