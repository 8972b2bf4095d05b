"""Lengths and other quantities as the shop writes them, read exactly and written back as fractions and mm.

``spelling`` knows the written forms, ``reading`` turns them into numbers, ``writing`` turns numbers into text.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from .reading import check_share, exact_metres, metres, number_in, read_length, read_quantity
from .spelling import exact_number, shown
from .writing import (
    FORMATS,
    Format,
    Part,
    both,
    inch_fraction,
    length_range,
    millimetres,
    rounded_steps,
    write,
)

if TYPE_CHECKING:
    from .pint_registry import Quantity, registry

__all__ = [
    "FORMATS",
    "Format",
    "Part",
    "Quantity",
    "both",
    "check_share",
    "exact_metres",
    "exact_number",
    "inch_fraction",
    "length_range",
    "metres",
    "millimetres",
    "number_in",
    "read_length",
    "read_quantity",
    "registry",
    "rounded_steps",
    "shown",
    "write",
]


def __getattr__(name: str) -> Any:
    """``registry`` and ``Quantity``, made on first use."""
    if name in ("registry", "Quantity"):
        from . import pint_registry as module

        return getattr(module, name)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
