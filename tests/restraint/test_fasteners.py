"""Slots and holes: they let through exactly the movement, and the plan says which stays tight."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from references.fasteners import movement_between_m, round_hole_diameter_m, tight_holes_strain

from woodlib.restraint.fasteners import slot_plan

swell, shrink = st.floats(0, 0.02), st.floats(-0.02, 0)
spacings = st.lists(st.floats(0.05, 0.3), min_size=1, max_size=5)


@given(spacings, swell, shrink, st.sampled_from(["middle", "edge"]))
def test_each_slot_lets_the_movement_through(steps, swelling, shrinkage, fixed):
    places = [0.02 + sum(steps[:count]) for count in range(len(steps) + 1)]
    plan = slot_plan(places, swelling, shrinkage, 0.004, fixed, allowance_m=0.0)
    assert len(plan.slots) == len(places) - 1 and plan.fixed_m in places
    for slot in plan.slots:
        free = abs(slot.position_m - plan.fixed_m)
        assert slot.length_m == pytest.approx(0.004 + free * (swelling - shrinkage))
        assert slot.middle_offset_m == pytest.approx(free * (swelling + shrinkage) / 2, abs=1e-12)


@given(swell, shrink)
def test_fixed_in_the_middle_halves_the_slots(swelling, shrinkage):
    places = [0.05, 0.25, 0.45]
    middle, edge = (
        slot_plan(places, swelling, shrinkage, 0.004, fixed, allowance_m=0.0) for fixed in ("middle", "edge")
    )
    assert edge.longest_m - 0.004 == pytest.approx(2 * (middle.longest_m - 0.004), abs=1e-12)


@given(st.floats(0.05, 1), swell, shrink)
def test_round_hole_is_at_least_as_long_as_the_slot(distance, swelling, shrinkage):
    hole = round_hole_diameter_m(0.004, distance, swelling, shrinkage)
    assert hole >= 0.004 + distance * (swelling - shrinkage) - 1e-12
    assert hole >= 0.004 + 2 * abs(movement_between_m(distance, shrinkage)) - 1e-12


@given(shrink, st.floats(1e5, 1e9), st.floats(1e5, 1e9))
def test_softer_metal_holds_less(strain, metal, wood):
    assert 0 <= tight_holes_strain(strain, metal, wood) <= tight_holes_strain(strain) == -strain


def test_a_position_can_be_fixed():
    assert slot_plan([0.1, 0.2, 0.3], 0.01, -0.01, 0.004, 0.1).fixed_m == 0.1
