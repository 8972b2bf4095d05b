"""The small tables for held movement are read with status and source."""

import pytest
from references.small_tables import (
    coefficient_of_variation,
    fracture_toughness_pa_sqrt_m,
    grain_angles,
    moisture_intersection_percent,
    slopes_of_grain,
    temperature_effects,
)

from woodlib.errors import InputError, MissingDataError


def test_recalled_toughness_says_so():
    value = fracture_toughness_pa_sqrt_m("Northern Red Oak")
    assert value.number == 410e3 and value.unit == "Pa sqrt(m)" and value.status == "recalled"


def test_sliding_is_much_tougher_than_opening():
    for wood, plane in (("Douglas-fir", ""), ("southern pine", ""), ("red spruce", "TL"), ("red spruce", "RL")):
        assert fracture_toughness_pa_sqrt_m(wood, "II", plane).number > 3.0 * fracture_toughness_pa_sqrt_m(wood).number


def test_missing_toughness_lists_the_woods_that_have_one():
    with pytest.raises(MissingDataError, match="fracture toughness of teak.*Douglas-fir.*red spruce"):
        fracture_toughness_pa_sqrt_m("teak")
    with pytest.raises(InputError, match="mode 'III' in plane 'TL' is not in the fracture table"):
        fracture_toughness_pa_sqrt_m("teak", "III")


def test_scatter_is_a_fraction_and_names_its_doubt():
    assert coefficient_of_variation("specific gravity").number == 0.10
    assert "may mean tension across the grain" in coefficient_of_variation("tension parallel").note
    with pytest.raises(MissingDataError, match="scatter of 'colour' is in no table"):
        coefficient_of_variation("colour")


def test_moisture_intersection_falls_back_to_the_handbook_default_and_says_so():
    listed, other = moisture_intersection_percent("loblolly pine"), moisture_intersection_percent("teak")
    assert (listed.number, other.number) == (21.0, 25.0)
    assert other.note == "row 'any other wood'"


def test_heat_weakens_and_cold_strengthens():
    effects = temperature_effects()
    assert len(effects) == 20
    for effect in effects:
        assert effect.moisture_lowest_percent <= effect.moisture_highest_percent
        assert effect.change_at_plus_50c is None or effect.change_at_plus_50c.number < 0.0
        assert effect.change_at_minus_50c is None or effect.change_at_minus_50c.number > 0.0


def test_wetter_wood_loses_more_strength_across_the_grain_when_hot():
    across = [e for e in temperature_effects() if e.quantity == "tension perpendicular"]
    losses = [effect.change_at_plus_50c.number for effect in across]
    assert losses == sorted(losses, reverse=True) and len(set(losses)) == 3


def test_steeper_grain_leaves_less_strength():
    slopes = slopes_of_grain()
    for column in ("modulus_of_rupture", "impact_bending", "compression_parallel"):
        left = [getattr(slope, column).number for slope in slopes]
        assert left == sorted(left, reverse=True) and left[-1] < left[0]


def test_grain_angle_spans():
    for angle in grain_angles():
        assert 1.5 <= angle.exponent[0].number <= angle.exponent[1].number <= 2.5
        assert 0.0 < angle.across_to_along[0].number < angle.across_to_along[1].number < 1.0
