"""What is cut after a joint is glued, as blocks that dowels and loose tongues must keep clear of."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..errors import Problems
from ..units import both, shown
from ..units.exact import LONGEST_M, read_exact, read_name
from .division import Division


@dataclass(frozen=True)
class LaterCut:
    """Something cut after the joint is glued: from ``low`` to ``high`` along the joint.

    ``across`` from the glue line (negative on one side of it) and ``depth`` from the show face, as (low, high); None
    where it goes all the way. Lengths exact, m.

    >>> LaterCut("pull recess", "10 in", "12 in", depth=("1/2 in", "7/8 in")).low_m
    Fraction(127, 500)
    """

    name: str
    low_m: Fraction
    high_m: Fraction
    across: tuple[Fraction, Fraction] | None = None
    depth: tuple[Fraction, Fraction] | None = None

    def __post_init__(self) -> None:
        problems = Problems()
        object.__setattr__(self, "name", read_name(problems, "name of the cut", self.name, 240))
        low, high = _read_span(problems, f"cut {self.name}", (self.low_m, self.high_m))
        object.__setattr__(self, "low_m", low)
        object.__setattr__(self, "high_m", high)
        for entry in ("across", "depth"):
            if getattr(self, entry) is not None:
                span = _read_span(problems, f"{entry} of cut {self.name}", getattr(self, entry))
                object.__setattr__(self, entry, span)
        problems.raise_if_any()


def _read_span(problems: Problems, name: str, span: object) -> tuple[Fraction, Fraction]:
    if not isinstance(span, list | tuple) or len(span) != 2:
        problems.add(
            f"{name} is {shown(span)}; give where it begins and where it ends, for example ('1/2 in', '7/8 in')."
        )
        return Fraction(0), Fraction(0)
    said = len(problems.sentences)
    low, high = (
        read_exact(problems, f"{end} of {name}", value, low=-LONGEST_M, above=False)
        for end, value in zip(("begin", "end"), span, strict=True)
    )
    if len(problems.sentences) == said and low > high:
        problems.add(
            f"{name} begins at {both(low, 64, 0.1)} and ends at {both(high, 64, 0.1)}; give the nearer end first."
        )
    return low, high


def cuts_of(division: Division, first: str = "customary") -> tuple[LaterCut, ...]:
    """The kerfs and the wood trimmed off a blank, as cuts across every glue line that runs along it."""
    waste = [
        (part, low, high)
        for part, low, high in division.spans()
        if part.kind in ("kerf", "trim", "spare") and high > low
    ]
    return tuple(LaterCut(f"{part.name} at {both(low, first=first)}", low, high) for part, low, high in waste)
