"""Hardware that spans the grain: one hole stays round, the others become slots as long as the year needs."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..door import check_kind, check_number
from ..errors import Problems
from ..movement.through_year import YearMovement
from ..restraint.fasteners import FITTING_ALLOWANCE_M, SlotPlan, slot_plan
from ..units import both
from ..units.exact import Rounding, check_rule, read_exact
from .holes import HolePair
from .kernels import slot_length
from .practice import ShopPractice, check_practice


@dataclass(frozen=True)
class GrainSlots:
    """The slots of one piece of hardware: the plan of the held-movement model, and what to cut.

    ``lengths`` rounded up; ``middles`` of the slots from the marks, positive away from the round hole. The slots are
    in the wood and the screws stay with the hardware, so wood that shrinks needs its slot further out.
    """

    pair: HolePair
    plan: SlotPlan
    lengths: tuple[Rounding, ...]
    middles: tuple[Rounding, ...]
    screw_m: Fraction

    def at(self, place_m: Fraction) -> tuple[Rounding, Rounding] | None:
        """Length of the slot at a hole of the pair, and its middle from the mark; None for the round hole."""
        for slot, length, middle in zip(self.plan.slots, self.lengths, self.middles, strict=True):
            if slot.position_m == float(place_m):
                return length, middle
        return None

    @property
    def says(self) -> str:
        """What to cut, in a sentence, inches first."""
        return self.said()

    def said(self, first: str = "customary") -> str:
        """What to cut, in a sentence, with the system that is written first."""
        longest = max(rounding.marked_m for rounding in self.lengths)
        return (
            f"{self.pair.name} spans the grain: drill one hole round, and slot the others across the grain up to "
            f"{both(longest, 64, 0.5, 'up', first)} long, with a washer under each head."
        )

    def said_of_metal(self, first: str = "customary") -> str:
        """What the metal must have, in a sentence."""
        longest = max(rounding.marked_m for rounding in self.lengths)
        return (
            f"{self.pair.name} spans the grain: its metal needs one round hole and, for the others, slots at least "
            f"{both(longest, 64, 0.5, 'up', first)} long across the grain, each screw in the middle of its slot, with a washer."
        )


def year_strains(movement: YearMovement, width_m: float) -> tuple[float, float]:
    """Swelling (0 or more) and shrinkage (0 or less) from today, per metre of width, at their careful ends.

    ``width_m`` the width for which the movement was worked out.
    """
    return max(0.0, movement.dampest.high_m / width_m), min(0.0, movement.driest.low_m / width_m)


def grain_slots(
    pair: HolePair,
    swelling_strain: float,
    shrinkage_strain: float,
    *,
    screw: object = None,
    fixed: str = "edge",
    rule: str = "0.5 mm",
    practice: ShopPractice | None = None,
) -> GrainSlots:
    """Slots for hardware whose holes lie across the grain.

    Parameters
    ----------
    pair : the holes, see :func:`holes.hole_pair`
    swelling_strain, shrinkage_strain : free strain across the grain from today to the dampest and the driest month
    screw : diameter of the screw's shank; left out, the practice's
    fixed : "edge", the first hole stays round, or "middle", the one nearest the middle
    rule : step of the slot's length, rounded up

    Raises :class:`InputError` with a sentence for each bad input.

    >>> from woodlib.setting_out.holes import hole_pair
    >>> slots = grain_slots(hole_pair("20 in", "128 mm", name="pull"), 0.008, -0.012, screw="4 mm")
    >>> [mark.text for mark in slots.lengths], round(1000 * slots.plan.longest_m, 3)
    (['8.5 mm'], 8.06)
    """
    problems = Problems()
    practice = check_practice(problems, practice)
    check_kind(problems, "pair", pair, HolePair, "hole_pair('20 in', '128 mm')")
    swelling = check_number(
        problems, "swelling strain", swelling_strain, "m/m", 0.0, 0.3, "the growth to the dampest month"
    )
    shrinking = check_number(
        problems, "shrinkage strain", shrinkage_strain, "m/m", -0.3, 0.0, "the shrinking to the driest month"
    )
    screw_m = read_exact(
        problems, "screw diameter", practice.screw_diameter_m if screw is None else screw, high=Fraction(1, 20)
    )
    check_rule(problems, rule)
    problems.raise_if_any()
    plan = slot_plan([float(hole) for hole in pair.holes_m], swelling, shrinking, float(screw_m), fixed)
    middles = tuple(Rounding(_to_micrometre(-slot.middle_offset_m), "0.1 mm") for slot in plan.slots)
    lengths = tuple(
        Rounding(
            _to_micrometre(slot_length(float(screw_m), slot.distance_m, swelling, shrinking, FITTING_ALLOWANCE_M)),
            rule,
            "up",
        )
        for slot in plan.slots
    )
    return GrainSlots(pair, plan, lengths, middles, screw_m)


def _to_micrometre(length_m: float) -> Fraction:
    """A length that comes from measured strains, as a fraction: no finer than they can mean."""
    return Fraction(round(length_m * 1e6), 10**6)
