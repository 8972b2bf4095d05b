"""What is screwed on, by kind: bolts through the wood, wood screws with a pilot hole, or metal that is slotted itself."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..shop_sizes import nearest
from ..tables import number
from ..units import both
from ..units.exact import exact_text
from .holes import HoleFit
from .practice import ShopPractice

BOLT, SCREW, SLOTTED = "bolt through", "wood screw", "slotted metal"
DENSE = 0.5  # specific gravity from which a wood counts as hard to drive a screw into (common practice, no source)
CLEARANCE_M = Fraction(1, 2000)
"""By how much a clearance hole is wider than its screw (common practice, no source)."""


@dataclass(frozen=True)
class Pilot(HoleFit):
    """The pilot hole of a wood screw: ``drill`` as wide as its core allows, so that the thread finds wood."""

    dense: bool = False

    @property
    def says(self) -> str:
        """What to bore, in a sentence."""
        first = self.drill.first
        share = number("fasteners", "pilot_dense" if self.dense else "pilot_light").middle
        kind = "dense" if self.dense else "light"
        return (
            f"Wood screws of {exact_text(self.screw_m, first)}: bore a pilot hole of {self.drill.text} ({100 * share:.0f} % of the "
            f"screw's core, for {kind} wood), and a clearance hole of {both(self.screw_m + CLEARANCE_M, 64, 0.1, 'up', first)} "
            "in wood that is screwed on; the first turns of a brass screw are cut by a steel one."
        )


def pilot(fit: HoleFit, specific_gravity: float, practice: ShopPractice | None = None) -> Pilot:
    """The pilot hole of a screw, for a wood of a density.

    >>> from .holes import hole_fit
    >>> pilot(hole_fit("4 mm", first="metric"), 0.68).drill.text, pilot(hole_fit("4 mm", first="metric"), 0.40).drill.text
    ('2.5 mm', '2 mm')
    """
    dense = specific_gravity >= DENSE
    core = number("fasteners", "screw_core").exact * fit.screw_m
    bore = core * number("fasteners", "pilot_dense" if dense else "pilot_light").exact
    drill = nearest((practice or ShopPractice()).sizes("drill", fit.drill.first), bore)
    return Pilot(fit.screw_m, fit.off_m, bore, drill, None, None, dense)
