"""Blackboard formulas: limits, directions, agreement with each other."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from random_panels import ASH_PANEL
from references.closed_forms import (
    free_end_movement_m,
    full_restraint_stress_pa,
    peak_tension_pa,
    plane_restraint_stress_pa,
)
from references.series import series_stress_pa

from woodlib.restraint.closed_forms import (
    held_strain,
    one_line_restraint,
    restraint_factor,
    transverse_modulus_pa,
    working_depth_m,
)

lengths, moduli, ratios = st.floats(0.02, 2.0), st.floats(1e8, 3e10), st.floats(0.2, 3.0)
ASH = (1056e6, 1016.4e6, 13200e6, 1016.4e6)


@given(moduli, moduli, st.floats(1e7, 1e9), st.floats(0.0, 0.4))
def test_modulus_across_at_the_two_ends(tangential, radial, rolling, poisson):
    assert transverse_modulus_pa(tangential, radial, rolling, poisson, 0.0) == pytest.approx(tangential)
    assert transverse_modulus_pa(tangential, radial, rolling, poisson, np.pi / 2) == pytest.approx(radial)


@given(moduli, st.floats(0.01, 0.45), st.floats(0, np.pi / 2))
def test_modulus_across_of_an_isotropic_wood_has_no_direction(modulus, poisson, angle):
    got = transverse_modulus_pa(modulus, modulus, modulus / 2 / (1 + poisson), poisson, angle)
    assert got == pytest.approx(modulus)


@given(moduli, st.floats(-0.1, 0.1), st.floats(0, 1))
def test_plane_restraint_falls_back_to_the_bar(modulus, strain, relaxation):
    nu, along = 0.03, 12e9
    rest = 1 - nu * nu * along / modulus if nu * nu * along < modulus else None
    if rest is None:
        return
    q11, q22, q12 = modulus / rest, along / rest, nu * along / rest
    free_along = -q12 * strain / q22  # the strain along the grain at which nothing pulls along it
    stress = plane_restraint_stress_pa((q11, q22, q12, 1e9), strain, free_along, 0.0, relaxation)
    assert stress.across_pa == pytest.approx(full_restraint_stress_pa(modulus, strain, relaxation), rel=1e-9, abs=1e-3)
    assert abs(stress.along_pa) < 1e-6 * modulus


@given(lengths, moduli, moduli, lengths)
def test_working_depth_is_at_most_the_depth_and_the_reach(width, modulus, shear, depth):
    got = working_depth_m(width, modulus, shear, depth)
    assert 0 < got <= min(depth, width / np.pi * np.sqrt(shear / modulus)) * (1 + 1e-12)


@given(lengths, lengths, lengths, ratios)
def test_restraint_is_between_free_and_rigid_and_grows_with_the_strip(width, depth, strip, ratio):
    factor = restraint_factor(width, depth, strip, *ASH, ratio)
    assert 0 < factor < 1
    assert restraint_factor(width, depth, strip, *ASH, ratio * 1.1) > factor
    assert restraint_factor(width, depth, strip * 1.1, *ASH, ratio) >= factor * (1 - 1e-12)
    assert restraint_factor(width, depth * 1.1, strip, *ASH, ratio) <= factor * (1 + 1e-12)


@given(st.floats(0, 1), st.floats(-0.05, 0.05))
def test_stress_is_modulus_times_held_strain(restraint, misfit):
    assert peak_tension_pa(restraint, 1e9, misfit) == pytest.approx(1e9 * held_strain(restraint, misfit), abs=1e-6)


@given(lengths, st.floats(0, 1), st.floats(-0.05, 0.05))
def test_free_ends_share_the_unglued_movement(width, share, misfit):
    assert 2 * free_end_movement_m(width, share * width, misfit) == pytest.approx(
        (1 - share) * width * misfit, abs=1e-12
    )


def test_one_line_result_carries_its_limits():
    wide_and_thin = one_line_restraint(0.3, 0.2, 0.1, ASH_PANEL.panel, ASH_PANEL.strip, 0.5)
    assert len(wide_and_thin.remarks) == 3
    assert len(one_line_restraint(0.45, 0.2, 0.03, ASH_PANEL.panel, ASH_PANEL.strip, 1.0).remarks) == 1


def test_first_term_of_the_series_is_the_one_line_factor():
    stress = series_stress_pa(0.0, 0.225, 0.45, 0.225, 0.038, ASH_PANEL.panel, ASH_PANEL.strip, -1.0, terms=1)
    damped = 4 / np.pi * np.sinc(0.5)  # size of the first term of a constant, and its damping
    assert stress / 1056e6 / damped == pytest.approx(restraint_factor(0.45, 0.225, 0.038, *ASH), rel=1e-9)


@given(st.floats(0.2, 0.8), st.floats(0.1, 0.6), st.floats(-0.02, 0.02))
def test_series_is_linear_even_and_softened_by_glue(width, depth, misfit):
    rest = (width, depth, 0.03, ASH_PANEL.panel, ASH_PANEL.strip)
    x, y = np.array([-0.1, 0.1]) * width, np.array([depth / 2, depth / 2])
    stress = series_stress_pa(x, y, *rest, misfit)
    assert stress[0] == pytest.approx(stress[1], abs=1e-6)
    assert np.allclose(series_stress_pa(x, y, *rest, 2 * misfit), 2 * stress)
    stiff, soft = (series_stress_pa(0.0, depth, *rest, -0.01, glue_shear_m_per_pa=g) for g in (0.0, 1e-9))
    assert 0 < soft < stiff


def test_series_is_finite_for_a_very_long_panel():
    assert np.isfinite(series_stress_pa(0.0, 20.0, 0.1, 20.0, 0.01, ASH_PANEL.panel, ASH_PANEL.strip, -0.01))
