"""Hardware that spans the grain: one hole stays round, the others become slots as long as the year needs."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..errors import Problems
from ..movement.inputs import check_kind, check_number
from ..movement.through_year import YearMovement
from ..restraint.fasteners import FITTING_ALLOWANCE_M, SlotPlan, slot_plan
from ..units import both
from .exact import Rounding, read_exact
from .holes import HolePair
from .kernels import slot_length
from .practice import ShopPractice, check_practice


@dataclass(frozen=True)
class GrainSlots:
    """The slots of one piece of hardware: the plan of the held-movement model and the lengths to cut, rounded up."""

    pair: HolePair
    plan: SlotPlan
    lengths: tuple[Rounding, ...]

    @property
    def says(self) -> str:
        """What to cut, in a sentence."""
        longest = max(rounding.marked_m for rounding in self.lengths)
        return (
            f"{self.pair.name} spans the grain: drill one hole round, and slot the others across the grain up to "
            f"{both(longest, 64, 0.5, 'up')} long, with a washer under each head."
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
    problems.raise_if_any()
    plan = slot_plan([float(hole) for hole in pair.holes_m], swelling, shrinking, float(screw_m), fixed)
    lengths = tuple(
        Rounding(slot_length_m(pair, slot.distance_m, swelling, shrinking, screw_m), rule, "up") for slot in plan.slots
    )
    return GrainSlots(pair, plan, lengths)


def slot_length_m(pair: HolePair, distance_m: float, swelling: float, shrinking: float, screw_m: Fraction) -> Fraction:
    """Length of a slot to the nearest micrometre, as a fraction: strains are measured, so no more is meant."""
    length = slot_length(float(screw_m), distance_m, swelling, shrinking, FITTING_ALLOWANCE_M)
    return Fraction(round(length * 1e6), 10**6)


def slot_rounding(slots: GrainSlots) -> tuple[str, ...]:
    """Each slot's length with its rounding in words.

    >>> from woodlib.setting_out.holes import hole_pair
    >>> slot_rounding(grain_slots(hole_pair("20 in", "128 mm"), 0.008, -0.012, screw="4 mm"))
    ('slot 1: 8.06 mm marked as 8.5 mm, 0.44 mm more',)
    """
    return tuple(f"slot {number}: {rounding.says}" for number, rounding in enumerate(slots.lengths, start=1))
