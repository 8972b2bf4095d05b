"""How much room a text takes, for whoever lays out a sheet without asking a typeface."""

from __future__ import annotations

NARROW, WIDE, CAPITAL, OTHER = 0.4, 0.98, 0.76, 0.64
"""Widths of letters as shares of their height, rounded up over the typefaces that pages and PDFs use."""


def wide(text: str, size: float) -> float:
    """How much room a text takes at most, px.

    >>> round(wide("7/8 in", 10.0))
    31
    """
    shares = (
        NARROW if c in "ijl.,:;'|!ftr()/- \u00a0" else WIDE if c in "mwMW%@" else CAPITAL if c.isupper() else OTHER
        for c in text
    )
    return size * sum(shares)
