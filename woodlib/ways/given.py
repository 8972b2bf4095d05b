"""What a piece is set out from: the sizes typed in the brief, and the verdict's cuts as they are written."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..units import both, exact_metres
from ..units.exact import even_row
from .made import Size
from .verdict import Verdict


@dataclass(frozen=True)
class Given:
    """Typed sizes of the whole piece and its border, the verdict on it, and what the shop usually does.

    ``first`` the leading system; ``tenon_m`` how far a rail goes into a stile; ``clamp_row`` and ``batten_row`` how far
    from the ends the outermost sit, and how far apart at most.
    """

    length: Size
    width: Size
    thickness: Size
    border: Size
    border_thickness: Size
    verdict: Verdict
    first: str
    tenon_m: Fraction
    clamp_row: tuple[Fraction, Fraction]
    batten_row: tuple[Fraction, Fraction]

    @property
    def rule(self) -> str:
        """The rule that is marked with in the shop's leading system."""
        return "1 mm" if self.first == "metric" else "1/16 in"

    def cut(self, key: str) -> Size:
        """A cut of the verdict as it is written in the leading system: what leaves the shop, exactly."""
        cut = self.verdict.cut(key)
        return Size(cut.written_m(self.first), f'cut list, "{cut.label}"', cut.rounding)

    def allowance(self, name: str) -> Fraction:
        """An allowance that the verdict was worked out with, exactly as the shop's table has it."""
        return exact_metres(round(float(self.verdict.quantities[name]), 9), default_unit="meter", name=name)

    def between(self, whole: Size) -> Size:
        """A whole size less two borders."""
        return whole.less(2 * self.border.exact_m, "less two borders")

    def clamps(self, length_m: Fraction) -> int:
        """Clamps along a glue line."""
        return len(even_row(length_m, *self.clamp_row))

    def written(self, exact_m: Fraction, direction: str = "nearest") -> str:
        """A length in words, the leading system first."""
        return both(exact_m, 64, 0.1, direction, self.first)
