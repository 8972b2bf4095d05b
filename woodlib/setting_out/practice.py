"""Allowances that the shop decides: kerf, trim, planing, clamps, dowels, tolerances."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from fractions import Fraction

from ..door import check_kind
from ..errors import Problems
from ..tables import metric_numbers, number
from ..units import exact_number, shown
from ..units.exact import read_exact


def _usual(key: str):
    return field(default_factory=lambda: number("shop practice", key).exact)


@dataclass(frozen=True)
class ShopPractice:
    """What the shop allows for each step; the defaults are common practice without a source.

    Lengths as exact metres, given as text (``"3/32 in"``), quantity or metres. ``buying_waste`` is a share of the
    blanks, ``glue_pressure_pa`` in pascal, ``glue_spread_kg_m2`` in kg per square metre.

    >>> ShopPractice(saw_kerf_m="3/32 in").saw_kerf_m
    Fraction(381, 160000)
    """

    saw_kerf_m: Fraction = _usual("saw_kerf")
    end_trim_m: Fraction = _usual("end_trim")
    edge_trim_m: Fraction = _usual("edge_trim")
    edge_jointing_m: Fraction = _usual("edge_jointing")
    face_planing_m: Fraction = _usual("face_planing")
    buying_waste: Fraction = _usual("buying_waste")
    clamp_spacing_m: Fraction = _usual("clamp_spacing")
    clamp_end_m: Fraction = _usual("clamp_end")
    glue_pressure_pa: Fraction = _usual("glue_pressure")
    glue_spread_kg_m2: Fraction = _usual("glue_spread")
    dowel_margin_m: Fraction = _usual("dowel_margin")
    dowel_end_m: Fraction = _usual("dowel_end")
    dowel_spacing_m: Fraction = _usual("dowel_spacing")
    dowel_thinnest_m: Fraction = _usual("dowel_thinnest")
    marking_tolerance_m: Fraction = _usual("marking_tolerance")
    drilling_tolerance_m: Fraction = _usual("drilling_tolerance")
    screw_diameter_m: Fraction = _usual("screw_diameter")
    hardware_inset_m: Fraction = _usual("hardware_inset")
    shortest_jointed_m: Fraction = _usual("shortest_jointed")
    tenon_length_m: Fraction = _usual("tenon_length")
    tenon_share: Fraction = _usual("tenon_share")
    batten_end_m: Fraction = _usual("batten_end")
    batten_spacing_m: Fraction = _usual("batten_spacing")
    ordinary_board_m: Fraction = _usual("ordinary_board")
    turning_allowance_m: Fraction = _usual("turning_allowance")

    @classmethod
    def of(cls, system: str) -> ShopPractice:
        """That of a shop that works in inches ("customary") or in millimetres ("metric").

        >>> ShopPractice.of("metric").batten_end_m
        Fraction(1, 10)
        """
        metric = metric_numbers("shop practice") if system == "metric" else {}
        return cls(**{f"{key}_m": value for key, value in metric.items()})

    def __post_init__(self) -> None:
        problems = Problems()
        for entry in fields(self):
            value = self._read(problems, entry.name, getattr(self, entry.name))
            object.__setattr__(self, entry.name, value)
        problems.raise_if_any()

    @staticmethod
    def _read(problems: Problems, entry: str, value: object) -> Fraction:
        key = _key_of(entry)
        row, name = number("shop practice", key), key.replace("_", " ")
        low, high = Fraction(repr(row.low)), Fraction(repr(row.high))
        if row.unit == "m":
            return read_exact(problems, name, value, low=low, high=high, above=False)
        try:
            share = Fraction(value) if isinstance(value, Fraction | int) else exact_number(str(value))
        except ValueError:
            share = None
        if isinstance(value, bool) or share is None or not low <= share <= high:
            problems.add(
                f"{name} is {shown(value)}; it must be a number from {float(low):g} to {float(high):g} {row.unit}: "
                f"{row.meaning}."
            )
        return share or Fraction(0)


def _key_of(entry: str) -> str:
    return entry.removesuffix("_kg_m2").removesuffix("_pa").removesuffix("_m")


def check_practice(problems: Problems, practice: object) -> ShopPractice:
    """The shop's practice, the usual one when None; adds a sentence when it is something else."""
    practice = ShopPractice() if practice is None else practice
    check_kind(problems, "practice", practice, ShopPractice, "ShopPractice(saw_kerf_m='3/32 in')")
    return practice if isinstance(practice, ShopPractice) else ShopPractice()
