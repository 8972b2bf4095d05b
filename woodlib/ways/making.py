"""What the makers of parts share: the record of a piece and a panel as large as all of it."""

from __future__ import annotations

from fractions import Fraction

from .given import Given
from .made import MadePiece, WoodPart

ALONG, ACROSS = "along the grain", "across the grain"
ZERO = Fraction(0)


def made(given: Given, parts, sums, places, section, thickness_m: Fraction | None = None, **more) -> MadePiece:
    """The record of a piece that is as long and wide outside as typed, and as thick as its section is deep."""
    section, verdict = tuple(section), given.verdict
    deepest = max(part.depth[1] for part in section)
    size = given.length.exact_m, given.width.exact_m, thickness_m or deepest
    return MadePiece(verdict.way, size, tuple(parts), tuple(sums), tuple(places), section, **more)


def whole_panel(given: Given) -> WoodPart:
    """A panel as large as the whole piece."""
    return WoodPart("panel", 1, given.length, given.width, given.thickness, "panel")
