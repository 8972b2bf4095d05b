"""What a client may insist on, which ways keep it, and the hours each takes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from ..errors import InputError
from ..tables import rows
from ..units import metres, shown
from .way import Way

LOOKS: dict[str, Callable[[Way], bool]] = {
    "border all round": lambda way: way.keeps_border and way.all_round,
    "border across the ends": lambda way: way.keeps_border,
    "unbroken face": lambda way: not way.keeps_border and not way.framed and not way.boarded,
    "solid wood": lambda way: way.solid,
}
"""Each look that can be kept, and whether a way keeps it."""


@dataclass(frozen=True)
class Kept:
    """A look the client insists on; ``border_m`` how wide its border is to be, where that is said, m."""

    look: str
    border_m: float | None = None

    def by(self, way: Way) -> bool:
        """Whether a way keeps it."""
        return LOOKS[self.look](way)


def read_look(text: str, asked: str = "keep is") -> Kept:
    """A look as it is written in a brief, such as ``border all round, 3 in``.

    Raises :class:`InputError` with the looks there are.

    >>> read_look("border all round, 3 in")
    Kept(look='border all round', border_m=0.0762)
    """
    name, _, size = (part.strip() for part in text.partition(","))
    look = " ".join(name.casefold().split())
    if look not in LOOKS or (size and "border" not in look):
        known = "; ".join(f'"{known}"' for known in LOOKS)
        raise InputError(
            f'{asked} {shown(text)}; write {known}, a border with its width if you like: "border all round, 3 in".'
        )
    return Kept(look, metres(size, name="keep", minimum_m=0.001, maximum_m=1.0) if size else None)


@cache
def _hours() -> dict[str, tuple[float, float]]:
    return {row["way"]: (float(row["low_h"]), float(row["high_h"])) for row in rows("way_hours.csv")}


def extra_hours(way: Way) -> tuple[float, float] | None:
    """Hours at the bench beyond those of a plain panel of middling size, from and to; None where nobody has said.

    Common practice, no source: a shop with its machines set up for it is faster, the first time is slower.
    """
    return _hours().get(way.key)
