"""Allowances that the shop decides: kerf, trim, planing, clamps, dowels, tolerances."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from fractions import Fraction
from typing import Any

from ..brief.shop import Shop
from ..door import check_kind
from ..errors import Problems
from ..shop_sizes import ShopSize, sizes_of, sold
from ..tables import metric_numbers, number
from ..units import exact_number, shown
from ..units.exact import read_exact

_OWN = ("drills_m", "cutters_m")
NAMED = {
    "jointer_m": "jointer_m",
    "thicknesser_m": "thicknesser_m",
    "longest_clamp_m": "longest_clamp_m",
    "clamps": "clamps",
    "kerf_m": "saw_kerf_m",
    "cutters_m": "cutters_m",
    "drills_m": "drills_m",
    "open_time": "glue_open_min",
}
"""What a brief can say of its shop, by field of :class:`Shop` -> field of the practice."""
LARGEST_TOOL_M = Fraction(1, 10)


def _usual(key: str):
    return field(default_factory=lambda: number("shop practice", key).exact)


@dataclass(frozen=True)
class ShopPractice:
    """What the shop allows for each step; the defaults are common practice without a source.

    Lengths as exact metres, given as text (``"3/32 in"``), quantity or metres. ``buying_waste`` is a share of the
    blanks, ``glue_pressure_pa`` in pascal, ``glue_spread_kg_m2`` in kg per square metre; ``drills_m`` and ``cutters_m`` the
    shop's own, empty for all that are sold; ``glue_open_min`` and ``clamping_min`` (for one clamp) in minutes,
    ``spreading_min_m`` in minutes for a metre of glue line; ``clamps`` that there are, 0 for as many as it takes.

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
    jointer_m: Fraction = _usual("jointer")
    thicknesser_m: Fraction = _usual("thicknesser")
    longest_clamp_m: Fraction = _usual("longest_clamp")
    least_planing_m: Fraction = _usual("least_planing")
    long_board_m: Fraction = _usual("long_board")
    glue_open_min: Fraction = _usual("glue_open")
    spreading_min_m: Fraction = _usual("spreading")
    clamping_min: Fraction = _usual("clamping")
    caul_spacing_m: Fraction = _usual("caul_spacing")
    clamp_pads_m: Fraction = _usual("clamp_pads")
    clamps: Fraction = _usual("clamps")
    drills_m: tuple[Fraction, ...] = ()
    cutters_m: tuple[Fraction, ...] = ()

    @classmethod
    def of(cls, system: str, shop: Shop | None = None) -> ShopPractice:
        """That of a shop that works in inches ("customary") or in millimetres ("metric"), and what it says of itself.

        >>> ShopPractice.of("metric").batten_end_m
        Fraction(1, 10)
        """
        metric = metric_numbers("shop practice") if system == "metric" else {}
        usual: dict[str, Any] = {f"{key}_m": value for key, value in metric.items()}
        told = {of_practice: getattr(shop, name) for name, of_practice in NAMED.items()} if shop else {}
        return cls(**{**usual, **{name: value for name, value in told.items() if value}})

    def __post_init__(self) -> None:
        problems = Problems()
        for entry in fields(self):
            given = getattr(self, entry.name)
            read = self._own if entry.name in _OWN else self._read
            object.__setattr__(self, entry.name, read(problems, entry.name, given))
        problems.raise_if_any()

    def sizes(self, tool: str, first: str) -> tuple[ShopSize, ...]:
        """Sizes of drills or cutters that this shop has; where it names none, all that are sold."""
        own = {"drill": self.drills_m, "cutter": self.cutters_m}.get(tool)
        return sizes_of(own, first) if own else sold(tool, first)

    @staticmethod
    def _own(problems: Problems, entry: str, values: object) -> tuple[Fraction, ...]:
        listed = values if isinstance(values, list | tuple) else [values]
        return tuple(read_exact(problems, entry.removesuffix("s_m"), value, high=LARGEST_TOOL_M) for value in listed)

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
    for unit in ("_kg_m2", "_pa", "_min_m", "_min", "_m"):
        entry = entry.removesuffix(unit)
    return entry


def check_practice(problems: Problems, practice: object) -> ShopPractice:
    """The shop's practice, the usual one when None; adds a sentence when it is something else."""
    practice = ShopPractice() if practice is None else practice
    check_kind(problems, "practice", practice, ShopPractice, "ShopPractice(saw_kerf_m='3/32 in')")
    return practice if isinstance(practice, ShopPractice) else ShopPractice()
