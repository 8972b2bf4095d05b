"""Energy release settles with the mesh and with the step, and agrees with a slope of the energy."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from random_panels import ASH_PANEL
from references.fracture import averaging_length_m, corner_opening, critical_check_depth_m, split_opening

from woodlib.restraint.fracture import fracture_energy_j_per_m2

toughness = st.floats(2e5, 1e6)


@pytest.mark.parametrize("opening", [corner_opening, split_opening])
def test_settles_with_mesh_and_step(opening):
    best = opening(ASH_PANEL, 0.011, 0.0011, 6, 3).per_unit_strain_j_per_m2
    for step, order, layers, share in ((0.0055, 5, 1, 0.05), (0.0055, 5, 2, 0.02), (0.0022, 6, 2, 0.01)):
        assert opening(ASH_PANEL, 0.011, step, order, layers).per_unit_strain_j_per_m2 == pytest.approx(best, rel=share)


@pytest.mark.parametrize("opening", [corner_opening, split_opening])
def test_release_is_positive_and_grows_with_the_square_of_the_misfit(opening):
    release = opening(ASH_PANEL, 0.011)
    assert release.at(0.01) > 0
    assert release.at(0.02) == pytest.approx(4 * release.at(0.01))
    assert release.at(0.02, 0.5) == pytest.approx(release.at(0.01))


@given(toughness, st.floats(1.05, 3))
def test_tougher_wood_costs_more_and_bears_deeper_checks(k, factor):
    ash = (13200e6, 1056e6, 0.44, 1016e6)
    assert fracture_energy_j_per_m2(k * factor, *ash) == pytest.approx(factor**2 * fracture_energy_j_per_m2(k, *ash))
    assert critical_check_depth_m(k * factor, 2e6) == pytest.approx(factor**2 * critical_check_depth_m(k, 2e6))
    assert averaging_length_m(k, 5e6 * factor) < averaging_length_m(k, 5e6)


def test_isotropic_plate_gives_the_textbook_energy():
    """For an isotropic material the formula falls back to K^2/E."""
    e, nu = 10e9, 0.3
    assert fracture_energy_j_per_m2(1e6, e, e, nu, e / 2 / (1 + nu)) == pytest.approx(1e12 / e)
