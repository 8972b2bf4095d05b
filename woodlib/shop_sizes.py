"""Sizes that exist in a shop: drills, dowels, screws, cutters and rough boards of a shop in inches and of one in millimetres."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from .errors import MissingDataError
from .tables import rows
from .units import exact_metres
from .units.exact import exact_text

TABLES = {"customary": "shop_inch.csv", "metric": "shop_metric.csv"}
TOOLS = ("drill", "dowel", "screw", "cutter", "rough thickness")


@dataclass(frozen=True)
class ShopSize:
    """One size that is sold: ``text`` as it is stamped on the tool, ``name`` where the trade has one (``4/4``, ``No. 8``)."""

    text: str
    size_m: Fraction
    first: str
    name: str = ""

    @property
    def called(self) -> str:
        """Its name, or its size."""
        return self.name or self.text


@cache
def sold(tool: str, first: str = "customary") -> tuple[ShopSize, ...]:
    """Every size of a tool in the shop's leading system, smallest first.

    >>> [size.text for size in sold("dowel", "metric")]
    ['5 mm', '6 mm', '8 mm', '10 mm', '12 mm']
    """
    table = [row for row in rows(TABLES[first]) if row["tool"] == tool]
    if not table:
        raise MissingDataError(f"{TABLES[first]} has no tool {tool!r}; it has {', '.join(TOOLS)}.")
    found = [ShopSize(row["size"], exact_metres(row["size"], name=tool), first, row["name"]) for row in table]
    return tuple(sorted(found, key=lambda size: size.size_m))


def sizes_of(lengths_m: Sequence[Fraction], first: str) -> tuple[ShopSize, ...]:
    """Sizes that a shop says it has, smallest first, written in the system that each comes out even in."""
    return tuple(ShopSize(exact_text(size, first), size, first) for size in sorted(set(lengths_m)))


def at_least(sizes: Sequence[ShopSize], needed_m: Fraction) -> ShopSize | None:
    """The smallest size that is no smaller than what is needed; None where there is none.

    >>> at_least(sold("drill"), exact_metres("4.2 mm")).text
    '11/64 in'
    """
    return next((size for size in sizes if size.size_m >= needed_m), None)


def at_most(sizes: Sequence[ShopSize], most_m: Fraction) -> ShopSize | None:
    """The largest size that is no larger; None where there is none.

    >>> at_most(sold("cutter", "metric"), exact_metres("7.5 mm")).text
    '7 mm'
    """
    return next((size for size in reversed(sizes) if size.size_m <= most_m), None)


def nearest(sizes: Sequence[ShopSize], wanted_m: Fraction) -> ShopSize:
    """The size that is nearest to what is wanted, the smaller of two."""
    return min(sizes, key=lambda size: abs(size.size_m - wanted_m))
