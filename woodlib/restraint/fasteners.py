"""Screws, pulls, hinges and other things fixed across the grain: what tight holes do, and how long a slot must be."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..errors import Problems
from ..units import both

FITTING_ALLOWANCE_M = 0.0015  # on top of the travel, 1 to 2 mm: common practice, no source


@dataclass(frozen=True)
class Slot:
    """One slot: where, how long, and where its middle lies off the screw (positive: away from the fixed point)."""

    position_m: float
    distance_m: float
    outward_m: float
    inward_m: float
    length_m: float
    middle_offset_m: float


@dataclass(frozen=True)
class SlotPlan:
    """Slots for fasteners across the grain, with the one that stays tight."""

    fixed_m: float
    slots: tuple[Slot, ...]
    remarks: tuple[str, ...]

    @property
    def longest_m(self) -> float:
        """Length of the longest slot, m."""
        return max((slot.length_m for slot in self.slots), default=0.0)


def slot_plan(
    positions_m: Sequence[float],
    swelling_strain: float,
    shrinkage_strain: float,
    screw_m: float,
    fixed: str | float = "middle",
    part_m: float | None = None,
    allowance_m: float = FITTING_ALLOWANCE_M,
) -> SlotPlan:
    """How long each slot must be when one fastener is fixed and the others let the wood move.

    Parameters
    ----------
    positions_m : sequence of float
        Where the fasteners sit across the grain, from one edge, m.
    swelling_strain, shrinkage_strain : float
        Free strain from glue-up to the dampest (0 or more) and to the driest (0 or less).
    screw_m : float
        Diameter of the screw's shank, m.
    fixed : "middle", "edge" or a position in metres
        Which stays tight: the fastener nearest the middle, the first one, or the one at that position.
    part_m : float, optional
        Length of the metal or wooden part the slots are cut in, for the check that they fit.
    allowance_m : float
        Added to each slot for fitting.

    Returns
    -------
    SlotPlan
        One slot per fastener that is not fixed.

    Raises
    ------
    InputError
        With a sentence for each bad input, and when slots run into each other or off the part.

    Examples
    --------
    >>> plan = slot_plan([0.05, 0.25, 0.45], 0.004, -0.008, 0.004)
    >>> [round(1e3 * slot.length_m, 1) for slot in plan.slots], plan.fixed_m
    ([7.9, 7.9], 0.25)
    """
    places = _checked_positions(positions_m, swelling_strain, shrinkage_strain, screw_m, part_m, allowance_m)
    tight = _fixed_place(places, fixed)
    slots = tuple(
        _slot(place, tight, swelling_strain, shrinkage_strain, screw_m, allowance_m)
        for place in places
        if place != tight
    )
    _check_fit(places, slots, screw_m, part_m)
    remarks = ["One fastener stays tight and the others slide; fixed in the middle, every slot is half as long."]
    return SlotPlan(tight, slots, tuple(remarks))


def _slot(place, tight, swelling, shrinkage, screw_m, allowance_m) -> Slot:
    distance = abs(place - tight)
    outward, inward = distance * swelling, -distance * shrinkage
    return Slot(place, distance, outward, inward, screw_m + outward + inward + allowance_m, (outward - inward) / 2)


def _fixed_place(places: tuple[float, ...], fixed: str | float) -> float:
    problems = Problems()
    if fixed == "edge":
        return places[0]
    if fixed == "middle":
        middle = (places[0] + places[-1]) / 2
        return min(places, key=lambda place: abs(place - middle))
    if not isinstance(fixed, str) and any(abs(place - fixed) < 1e-9 for place in places):
        return min(places, key=lambda place: abs(place - fixed))
    listed = ", ".join(both(place) for place in places)
    problems.add(f"fixed is {fixed!r}; it must be 'middle', 'edge' or one of the fastener positions ({listed}).")
    problems.raise_if_any()
    return places[0]


def _checked_positions(positions_m, swelling, shrinkage, screw_m, part_m, allowance_m) -> tuple[float, ...]:
    problems = Problems()
    numbers = np.asarray(positions_m, float).ravel()
    if numbers.size < 2 or not np.isfinite(numbers).all() or np.unique(numbers).size != numbers.size:
        problems.add(
            "fastener positions must be two or more different distances from one edge, for example 2 in and 7 in."
        )
    if not (np.isfinite(swelling) and 0 <= swelling < 0.3):
        problems.add(
            f"swelling strain is {swelling:g}; it must be 0 to 0.3, the growth from glue-up to the dampest time."
        )
    if not (np.isfinite(shrinkage) and -0.3 < shrinkage <= 0):
        problems.add(
            f"shrinkage strain is {shrinkage:g}; it must be -0.3 to 0, the shrinking from glue-up to the driest time."
        )
    if not (np.isfinite(screw_m) and screw_m > 0):
        problems.add(f"screw diameter is {screw_m:g} m; it must be above 0, for example 5/32 in (4 mm).")
    if part_m is not None and not (np.isfinite(part_m) and part_m > 0):
        problems.add(f"length of the slotted part is {part_m:g} m; it must be above 0.")
    if not (np.isfinite(allowance_m) and allowance_m >= 0):
        problems.add(f"fitting allowance is {allowance_m:g} m; it must be 0 or more, usually 1 to 2 mm.")
    problems.raise_if_any()
    return tuple(float(number) for number in np.sort(numbers))


def _check_fit(places, slots, screw_m: float, part_m: float | None) -> None:
    problems = Problems()
    gap = min(np.diff(places))
    longest = max(slots, key=lambda slot: slot.length_m)
    if longest.length_m >= gap:
        problems.add(
            f"the slot at {both(longest.position_m)} would be {both(longest.length_m)} long, but the next "
            f"fastener is only "
            f"{both(gap)} away; use fewer fasteners or fix one nearer to it."
        )
    if part_m is not None and longest.length_m >= part_m:
        problems.add(
            f"the slot at {both(longest.position_m)} would be {both(longest.length_m)} long, longer than the part "
            f"it is cut in "
            f"({both(part_m)}); use a longer part or fix a nearer fastener."
        )
    problems.raise_if_any()
