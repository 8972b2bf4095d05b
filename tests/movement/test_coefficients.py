"""The strain laws along one axis of the wood."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.movement.coefficients import (
    _BLOCK,
    FIBRE_SATURATION_PERCENT,
    linear_strain,
    movement_strain,
    total_shrinkage_strain,
)
from woodlib.species import coefficient_from_shrinkage

shrinkages = st.floats(0.005, 0.13)
moistures = st.floats(0.0, 60.0)
window = st.floats(6.0, 14.0)


def coefficient(shrinkage):
    return coefficient_from_shrinkage(100.0 * shrinkage)


@given(shrinkages, window, window)
def test_inside_the_window_the_handbook_coefficient_is_used_to_the_last_digit(shrinkage, start, end):
    expected = coefficient(shrinkage) * (end - start)
    assert movement_strain(coefficient(shrinkage), shrinkage, start, end) == expected
    assert linear_strain(coefficient(shrinkage), shrinkage, start, end) == expected


@given(shrinkages, moistures, moistures, st.sampled_from([0.8, 1.0, 1.25]))
def test_more_moisture_at_the_end_never_shrinks_the_wood(shrinkage, start, end, ratio):
    strain = movement_strain(ratio * coefficient(shrinkage), shrinkage, start, end)
    wetter = movement_strain(ratio * coefficient(shrinkage), shrinkage, start, end + 1.0)
    assert wetter >= strain - 1e-15
    assert np.sign(strain) in (0.0, np.sign(min(end, 30.0) - min(start, 30.0)))


@pytest.mark.parametrize("seam", [6.0, 14.0, FIBRE_SATURATION_PERCENT])
@given(shrinkages, st.floats(0.0, 40.0), st.sampled_from([0.7, 1.0, 1.3]))
def test_there_is_no_jump_at_a_seam(seam, shrinkage, other, ratio):
    c, step = ratio * coefficient(shrinkage), 1e-9
    into = [movement_strain(c, shrinkage, other, seam + side * step) for side in (-1, 1)]
    out_of = [movement_strain(c, shrinkage, seam + side * step, other) for side in (-1, 1)]
    assert into[0] == pytest.approx(into[1], abs=1e-10)
    assert out_of[0] == pytest.approx(out_of[1], abs=1e-10)


@given(shrinkages, st.floats(30.0, 200.0), st.floats(30.0, 200.0))
def test_nothing_moves_above_fibre_saturation(shrinkage, start, end):
    assert movement_strain(coefficient(shrinkage), shrinkage, start, end) == pytest.approx(0.0, abs=1e-15)


@given(shrinkages, st.floats(14.0, 30.0), st.floats(14.0, 30.0))
def test_outside_the_window_the_total_shrinkage_form_is_used(shrinkage, start, end):
    joined = movement_strain(coefficient(shrinkage), shrinkage, start, end)
    assert joined == pytest.approx(total_shrinkage_strain(None, shrinkage, start, end), abs=1e-14)


@given(shrinkages, st.floats(0.0, 6.0), st.floats(0.0, 6.0), st.floats(0.0, 6.0))
def test_total_shrinkage_form_composes_and_goes_round(shrinkage, first, second, third):
    whole = total_shrinkage_strain(None, shrinkage, first, third)
    steps = [total_shrinkage_strain(None, shrinkage, a, b) for a, b in ((first, second), (second, third))]
    assert (1 + steps[0]) * (1 + steps[1]) == pytest.approx(1 + whole, abs=1e-13)


@given(shrinkages, st.floats(0.0, 6.0), window, st.floats(14.0, 30.0))
def test_a_path_is_the_product_of_its_legs(shrinkage, dry, inside, damp):
    c = 1.1 * coefficient(shrinkage)
    legs = [movement_strain(c, shrinkage, a, b) for a, b in ((dry, 6.0), (6.0, 14.0), (14.0, damp))]
    assert np.prod([1 + leg for leg in legs]) == pytest.approx(1 + movement_strain(c, shrinkage, dry, damp), abs=1e-13)
    # The handbook's own expression, inside the window, returns to within (C dM)^2 of the start.
    back = (1 + movement_strain(c, shrinkage, 6.0, inside)) * (1 + movement_strain(c, shrinkage, inside, 6.0))
    assert back == pytest.approx(1 - (c * (inside - 6.0)) ** 2, abs=1e-14)


@given(shrinkages)
def test_green_to_ovendry_gives_the_shrinkage_back_when_coefficient_and_shrinkage_agree(shrinkage):
    # The straight coefficient replaces Eq. 13-3 between 14 and 6 %, where the two differ by less than 0.08 % of size.
    assert movement_strain(coefficient(shrinkage), shrinkage, 30.0, 0.0) == pytest.approx(-shrinkage, abs=8e-4)


def test_large_arrays_give_the_same_numbers_as_single_calls():
    rng = np.random.default_rng(3)
    start, end = rng.uniform(0, 40, (2, 2 * _BLOCK + 5))
    c = rng.uniform(0.001, 0.004, start.size)
    whole = movement_strain(c, 0.08, start, end)
    for place in (0, _BLOCK - 1, _BLOCK, 2 * _BLOCK + 4):
        assert whole[place] == movement_strain(c[place], 0.08, start[place], end[place])


def test_arguments_broadcast_against_each_other_and_may_be_empty():
    grid = movement_strain(np.array([[0.002], [0.003]]), 0.08, np.linspace(4, 16, 7), 10.0)
    assert grid.shape == (2, 7)
    assert movement_strain(np.zeros(0), 0.08, np.zeros(0), 10.0).shape == (0,)


def test_other_array_types_pass_through():
    masked = np.ma.masked_array([4.0, 8.0, 20.0], mask=[False, True, False])
    strain = movement_strain(0.00365, 0.105, 10.0, masked)
    assert isinstance(strain, np.ma.MaskedArray)
