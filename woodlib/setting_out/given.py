"""What a piece is set out from: the sizes typed in the brief, and the verdict's cuts as they are written."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..brief import Brief
from ..errors import InputError
from ..units import both, exact_metres
from ..ways.made import TYPED, Size
from ..ways.verdict import Verdict
from .glue import clamp_places
from .practice import ShopPractice

SAME_M = 1e-6  # a verdict worked out in floats for the sizes of a brief agrees with them far closer than this


@dataclass(frozen=True)
class Given:
    """Typed sizes of the whole piece and its border, the verdict, and the shop's practice."""

    length: Size
    width: Size
    thickness: Size
    border: Size
    border_thickness: Size
    verdict: Verdict
    first: str
    practice: ShopPractice

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
        return exact_metres(round(self.verdict.quantities[name], 9), default_unit="meter", name=name)

    def between(self, whole: Size) -> Size:
        """A whole size less two borders."""
        return whole.less(2 * self.border.exact_m, "less two borders")

    def clamps(self, length_m: Fraction) -> int:
        """Clamps along a glue line."""
        return len(clamp_places(length_m, self.practice.clamp_end_m, self.practice.clamp_spacing_m))


def given_of(brief: Brief, verdict: Verdict, practice: ShopPractice) -> Given:
    """The sizes of a brief beside a verdict on it; raises :class:`InputError` where the two do not belong together."""
    length, width, thickness = (_typed(brief, entry) for entry in ("length", "width", "thickness"))
    border = _border(brief, verdict)
    _check_same(brief, verdict, {"width": width, "length": length, "border_width": border})
    own = "piece.border_thickness" in brief.typed
    border_thickness = _typed(brief, "border_thickness") if own else thickness
    return Given(length, width, thickness, border, border_thickness, verdict, brief.first, practice)


def _typed(brief: Brief, entry: str) -> Size:
    return Size(brief.exact_m(f"piece.{entry}"), TYPED)


def _border(brief: Brief, verdict: Verdict) -> Size:
    """The border of the brief; where it asks for none, the usual width that the verdict was worked out with."""
    if "piece.border_width" in brief.typed:
        return _typed(brief, "border_width")
    usual = exact_metres(round(verdict.quantities["border"], 9), default_unit="meter", name="border")
    return Size(usual, "usual width, as the brief gives no border")


def _check_same(brief: Brief, verdict: Verdict, sizes: dict[str, Size]) -> None:
    worked = {"width": "finished_width", "length": "finished_length", "border_width": "border"}
    for entry, size in sizes.items():
        other = verdict.quantities[worked[entry]]
        if abs(other - float(size.exact_m)) > SAME_M:
            raise InputError(
                f"{brief.where(f'piece.{entry}')}the verdict is for a piece whose {entry.replace('_', ' ')} is "
                f"{both(other, 64, 0.1)}, but the brief's is {both(size.exact_m, 64, 0.1)}; judge this brief's piece "
                "and set out from that verdict."
            )
