"""The plane field: patch test, free swelling, rigid holding, symmetry of scale, convergence, random panels."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from random_panels import ASH_PANEL, random_panels

from woodlib.errors import InputError
from woodlib.restraint.closed_forms import restraint_factor
from woodlib.restraint.field import HeldPlane, PlaneWood, plane_lines, solve_plane
from woodlib.restraint.field_readings import across_stress_pa, restraint_factor_of


def full_matrix(line_x, line_y, wood):
    """Energy of a rectangle as a dense matrix, written out independently of the solver's assembly."""
    q11, q22, q12, q66 = wood.stiffness()
    uu = np.kron(line_x.stiffness, q11 * line_y.mass) + np.kron(line_x.mass, q66 * line_y.stiffness)
    vv = np.kron(line_x.mass, q22 * line_y.stiffness) + np.kron(line_x.stiffness, q66 * line_y.mass)
    uv = np.kron(line_x.mixed, q12 * line_y.mixed.T) + np.kron(line_x.mixed.T, q66 * line_y.mixed)
    return np.block([[uu, uv], [uv.T, vv]])


def test_patch_linear_displacement_gives_exact_energy_and_no_inner_force():
    x, y, *_ = plane_lines(ASH_PANEL)
    wood = ASH_PANEL.panel
    strain = np.array([0.01, -0.003, 0.002])  # x, y, shear
    place_x, place_y = (grid.ravel() for grid in np.meshgrid(x.nodes, y.nodes, indexing="ij"))
    moved = np.concatenate([strain[0] * place_x + strain[2] * place_y, strain[1] * place_y])
    matrix = full_matrix(x, y, wood)
    q11, q22, q12, q66 = wood.stiffness()
    energy = 0.5 * (
        q11 * strain[0] ** 2 + q22 * strain[1] ** 2 + 2 * q12 * strain[0] * strain[1] + q66 * strain[2] ** 2
    )
    area = x.breaks[-1] * y.breaks[-1]
    assert 0.5 * moved @ matrix @ moved == pytest.approx(energy * area, rel=1e-12)
    forces = (matrix @ moved).reshape(2, x.size, y.size)
    assert np.abs(forces[:, 1:-1, 1:-1]).max() < 1e-10 * np.abs(forces).max()


def test_strip_without_stiffness_leaves_free_swelling_without_stress():
    weak = PlaneWood(*(value * 1e-13 for value in ASH_PANEL.strip[:3]), ASH_PANEL.strip.poisson_xy)
    field = solve_plane(ASH_PANEL._replace(strip=weak))
    stress = across_stress_pa(field, np.linspace(0, 0.2, 9), np.linspace(0, 0.225, 9))
    assert np.abs(stress).max() < 1e-9 * ASH_PANEL.panel.modulus_x_pa
    assert np.allclose(field.panel.across, -field.x_line.nodes[:, None], rtol=1e-9)


def test_short_panel_on_a_stiff_strip_is_a_restrained_bar():
    stiff = PlaneWood(1e16, 1e16, 1e16, 0.0)
    short = ASH_PANEL._replace(length_m=0.002, strip=stiff)
    assert restraint_factor_of(solve_plane(short)) == pytest.approx(1.0, abs=2e-3)


def test_energy_balance_of_the_whole_piece():
    """Energy from the displacements equals energy from the load: the solver balances to round-off."""
    field = solve_plane(ASH_PANEL)
    plane = field.plane
    total = 0.0
    for block, line, wood, load in (
        (field.panel, field.panel_line, plane.panel, 1.0),
        (field.strip, field.strip_line, plane.strip, 0.0),
    ):
        moved = np.concatenate([block.across.ravel(), block.along.ravel()])
        total += 0.5 * moved @ full_matrix(field.x_line, line, wood) @ moved
        if load:
            q11, _, q12, _ = wood.stiffness()
            gx = field.x_line.mixed.sum(1) @ block.across @ line.mass.sum(1)
            gy = field.x_line.mass.sum(1) @ block.along @ line.mixed.sum(1)
            total += q11 * gx + q12 * gy + 0.5 * q11 * plane.width_m / 2 * plane.depth_m
    assert total == pytest.approx(field.energy_j_per_m, rel=1e-10)


@pytest.mark.parametrize("plane", [ASH_PANEL, ASH_PANEL._replace(ends=1), ASH_PANEL._replace(glued_m=0.2)])
def test_energy_falls_towards_a_limit_as_elements_are_added(plane):
    energies = [
        solve_plane(plane, order, layers).energy_j_per_m for order, layers in ((3, 0), (5, 0), (5, 1), (6, 2), (7, 3))
    ]
    drops = -np.diff(energies)
    assert (drops > 0).all() and (drops[1:] < drops[:-1]).all()


def test_restraint_factor_settles_on_320_random_panels():
    errors = []
    for plane in random_panels(320):
        refined = restraint_factor_of(solve_plane(plane, 6, 1))
        errors.append(abs(restraint_factor_of(solve_plane(plane)) / refined - 1))
    assert max(errors) < 0.01
    assert np.quantile(errors, 0.95) < 0.004


def test_partly_glued_and_soft_panels_settle_too():
    errors = []
    for number, plane in enumerate(random_panels(30, seed=3)):
        share = (0.25, 0.5, 0.8)[number % 3]
        held = (
            plane._replace(glued_m=share * plane.width_m)
            if number % 2
            else plane._replace(glue_shear_m_per_pa=10 ** -(11.0 + number % 3))
        )
        errors.append(abs(restraint_factor_of(solve_plane(held)) / restraint_factor_of(solve_plane(held, 7, 2)) - 1))
    assert max(errors) < 0.01


def test_very_stiff_glue_is_no_glue_layer():
    stiff = solve_plane(ASH_PANEL._replace(glue_shear_m_per_pa=1e-19, glue_opening_m_per_pa=1e-19))
    assert restraint_factor_of(stiff) == pytest.approx(restraint_factor_of(solve_plane(ASH_PANEL)), rel=1e-5)


def test_glue_over_nearly_the_whole_width_is_glue_over_the_whole_width():
    nearly = restraint_factor_of(solve_plane(ASH_PANEL._replace(glued_m=0.4499)))
    assert nearly == pytest.approx(restraint_factor_of(solve_plane(ASH_PANEL)), rel=2e-3)


sizes = st.floats(0.1, 1.0)


@settings(max_examples=30, deadline=None)
@given(sizes, st.floats(0.15, 2.0), st.floats(0.01, 0.1), st.floats(0.5, 1.5), st.floats(0.3, 3.0))
def test_scaling(width, length, strip, ratio, scale):
    """Restraint has no size: all lengths times a number, or all moduli times a number, change nothing."""
    plane = HeldPlane(width, length, min(strip, width / 2), ASH_PANEL.panel, ASH_PANEL.strip, ratio)
    factor = restraint_factor_of(solve_plane(plane))
    larger = plane._replace(width_m=width * scale, length_m=length * scale, strip_m=plane.strip_m * scale)
    panel, strip = (
        PlaneWood(w.modulus_x_pa * scale, w.modulus_y_pa * scale, w.shear_pa * scale, w.poisson_xy) for w in plane[3:5]
    )
    assert restraint_factor_of(solve_plane(larger)) == pytest.approx(factor, rel=1e-8)
    assert restraint_factor_of(solve_plane(plane._replace(panel=panel, strip=strip))) == pytest.approx(factor, rel=1e-8)
    assert 0 < factor < 1.02


@settings(max_examples=25, deadline=None)
@given(sizes, st.floats(0.01, 0.06), st.floats(0.5, 1.4))
def test_more_strip_and_stiffer_glue_hold_more(width, strip, ratio):
    plane = HeldPlane(width, 0.6, min(strip, width / 3), ASH_PANEL.panel, ASH_PANEL.strip, ratio)
    factor = restraint_factor_of(solve_plane(plane))
    assert restraint_factor_of(solve_plane(plane._replace(thickness_ratio=ratio * 1.1))) > factor
    assert restraint_factor_of(solve_plane(plane._replace(glue_shear_m_per_pa=1e-9))) < factor
    panel, strip_wood = plane.panel, plane.strip
    one_line = restraint_factor(width, 0.3, plane.strip_m, panel[0], panel[2], strip_wood[0], strip_wood[2], ratio)
    assert one_line == pytest.approx(factor, rel=0.2)


def test_a_crack_and_one_end_change_the_numbering_not_the_answer_far_away():
    tiny = solve_plane(ASH_PANEL._replace(split_m=1e-4), layers=1)
    stress = across_stress_pa(tiny, np.array([0.05]), np.array([0.1]))
    assert stress == pytest.approx(
        across_stress_pa(solve_plane(ASH_PANEL), np.array([0.05]), np.array([0.1])), rel=2e-3
    )


def test_unstable_constants_are_refused_in_one_sentence():
    with pytest.raises(InputError, match="not those of a stable material"):
        solve_plane(ASH_PANEL._replace(panel=ASH_PANEL.panel._replace(poisson_xy=0.9)))
