"""Values carry unit, status and source; blanks stay missing; estimates say their rule."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import InputError, MissingDataError
from woodlib.species import STATUSES, Species, Value, all_species, estimates_used, find_species
from woodlib.species.catalogue import _provenance_of
from woodlib.species.estimates import has_rule
from woodlib.species.quantities import keys
from woodlib.species.shrinkage import (
    coefficient_from_shrinkage,
    radial_from_volumetric,
    shrinkage_from_coefficient,
    volumetric_from_both,
    volumetric_from_gravity,
)

WOODS = all_species()
wood = st.sampled_from(WOODS)


def test_every_value_is_finite_positive_and_has_its_origin():
    for each in WOODS:
        for key, value in each.values.items():
            assert key in keys() and value.status in STATUSES and value.source
            assert math.isfinite(value.number) and value.number > 0.0


def test_recalled_values_name_the_table_they_are_recalled_from():
    value = find_species("sugar maple").require("ratio_glr_el")
    assert value.status == "recalled" and value.source == "from memory (Wood Handbook Table 5-1)"


def test_blank_stays_missing():
    maple = find_species("sugar maple")
    assert maple.get("tension_perpendicular_pa") is None
    with pytest.raises(MissingDataError, match="sugar maple has no tension_perpendicular_pa.*is black maple"):
        maple.require("tension_perpendicular_pa")
    with pytest.raises(MissingDataError, match="is not estimated"):
        maple.estimate("tension_perpendicular_pa")


def test_borrowing_happens_only_on_request_and_says_so():
    maple, lender = find_species("sugar maple"), find_species("black maple")
    lent = maple.borrow("tension_perpendicular_pa", lender)
    assert lent.number == lender.require("tension_perpendicular_pa").number
    assert lent.status == "estimated" and "borrowed from black maple" in lent.note
    with pytest.raises(InputError, match="has its own"):
        lender.borrow("tension_perpendicular_pa", lender)


@given(wood, st.sampled_from(keys()))
def test_require_gives_a_value_or_one_sentence(each, key):
    try:
        assert each.require(key) is each.values[key]
    except MissingDataError as error:
        assert key not in each.values
        assert "\n" not in str(error) and each.name in str(error) and key in str(error)


@given(wood, st.sampled_from(keys()))
def test_estimate_is_marked_with_its_rule_or_refused(each, key):
    try:
        value = each.estimate(key)
    except MissingDataError as error:
        assert "\n" not in str(error) and each.name in str(error)
    else:
        assert has_rule(key)
        assert value.status == "estimated" and value.note and math.isfinite(value.number) and value.number > 0.0


@pytest.mark.parametrize("key", ["modulus_of_elasticity_pa", "shear_parallel_pa", "tension_perpendicular_pa"])
def test_strength_and_stiffness_are_never_estimated(key):
    assert not has_rule(key)


def test_a_chain_of_estimates_says_every_step():
    value = find_species("bitternut hickory").estimate("tangential_coefficient_per_percent")
    assert all(part in value.note for part in ("26.5 times", "twice radial", "C = S/(F-(F-10)S)"))
    assert estimates_used({"tangential coefficient": value})[0].startswith("tangential coefficient is estimated: ")
    assert estimates_used((find_species("white ash").require("specific_gravity_12"),)) == ()


def test_split_of_an_estimated_volume_adds_up_again():
    hickory = find_species("bitternut hickory")
    radial, tangential = (hickory.estimate(f"{way}_shrinkage_percent").number for way in ("radial", "tangential"))
    assert tangential == pytest.approx(2.0 * radial)
    assert volumetric_from_both(radial, tangential) == pytest.approx(26.5 * 0.60)


def test_lenders_are_other_woods_of_the_genus_that_have_the_value():
    lenders = find_species("black maple").lenders("tension_perpendicular_pa")
    assert [wood.name for wood in lenders] == ["bigleaf maple", "silver maple"]


def test_shrinkage_of_apple_follows_from_its_printed_coefficients():
    apple = find_species("apple")
    assert apple.get("radial_shrinkage_percent") is None
    assert round(apple.estimate("radial_shrinkage_percent").number, 1) == 5.9
    assert round(apple.value_or_estimate("tangential_shrinkage_percent").number, 1) == 10.5


def test_value_or_estimate_prefers_the_table():
    ash = find_species("white ash")
    assert ash.value_or_estimate("tangential_coefficient_per_percent").status == "printed"


@given(st.floats(0.01, 60.0), st.floats(15.0, 40.0))
def test_coefficient_and_shrinkage_are_inverse(shrinkage, saturation):
    coefficient = coefficient_from_shrinkage(shrinkage, saturation)
    assert shrinkage_from_coefficient(coefficient, saturation) == pytest.approx(shrinkage, rel=1e-12)


@given(st.floats(0.01, 59.0), st.floats(0.01, 1.0), st.floats(15.0, 40.0))
def test_more_shrinkage_means_more_movement_and_more_saturation_less(shrinkage, more, saturation):
    coefficient = coefficient_from_shrinkage(shrinkage, saturation)
    assert coefficient_from_shrinkage(shrinkage + more, saturation) > coefficient
    assert coefficient_from_shrinkage(shrinkage, saturation + more) < coefficient


@given(st.floats(0.01, 50.0), st.floats(1.0, 3.0))
def test_split_of_volume_gives_the_volume_back(volume, ratio):
    radial = radial_from_volumetric(volume, ratio)
    assert volumetric_from_both(radial, ratio * radial) == pytest.approx(volume, rel=1e-9)


@given(st.floats(0.05, 1.4), st.floats(0.01, 0.1))
def test_denser_wood_is_taken_to_shrink_more(gravity, more):
    assert volumetric_from_gravity(gravity + more) > volumetric_from_gravity(gravity)


@pytest.mark.parametrize("name", ["teak", "old-growth redwood", "western redcedar", "true mahogany", "keruing"])
def test_some_woods_rest_on_another_fibre_saturation(name):
    assert find_species(name).fibre_saturation_percent == 22.0
    assert "22%" in " ".join(find_species(name).doubts)


def test_others_rest_on_the_usual_fibre_saturation():
    assert find_species("white ash").get("fibre_saturation_percent") is None
    assert find_species("white ash").fibre_saturation_percent == 30.0


def test_values_are_read_only():
    with pytest.raises(TypeError):
        find_species("white ash").values["specific_gravity_12"] = Value(1.0, "", "own", "")


def test_species_can_be_built_by_hand():
    gravity = Value(0.69, "", "own", "scale")
    pear = Species("pear", "Pyrus communis", "hardwood", False, {"specific_gravity_12": gravity})
    assert pear.require("specific_gravity_12").number == 0.69
    assert pear.lenders("tension_perpendicular_pa") == ()


def test_a_value_without_its_provenance_is_told_to_whoever_adds_a_wood():
    with pytest.raises(
        InputError, match="species_provenance.csv has no row for it; add a row 'new oak,specific_gravity_12"
    ):
        _provenance_of({}, "new oak", "specific_gravity_12")
