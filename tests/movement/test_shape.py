"""Cup, diamond, oval and mitre in closed form."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from references import shape as closed
from scipy.integrate import quad

from woodlib.movement import shape

strain = st.floats(-0.06, 0.06)
width = st.floats(0.02, 0.5)
depth = st.floats(0.03, 2.0)


@given(width, depth, strain)
def test_equal_strains_only_scale(w, d, e):
    assert shape.cup_m(w, d, e, e) == pytest.approx(0.0, abs=1e-12)
    assert shape.wedge_width_change_m(-w / 2, w / 2, d, e, e) == pytest.approx(e * w, abs=1e-12)
    assert np.degrees(closed.diamond_angle_rad(e, e)) == pytest.approx(90.0, abs=1e-9)
    assert closed.mitre_gap_m(w, e, e) == pytest.approx(0.0, abs=1e-12)


@given(width, depth, strain, strain)
def test_drying_hollows_the_bark_side_and_wetting_reverses_it(w, d, radial, tangential):
    assume(abs(radial - tangential) > 1e-6)
    assert np.sign(shape.cup_m(w, d, radial, tangential)) == np.sign(radial - tangential)
    assert np.sign(shape.cup_small_angle_m(w, d, radial, tangential)) == np.sign(radial - tangential)


@given(width, strain, strain)
def test_exact_cup_tends_to_the_small_angle_form_far_from_the_pith(w, radial, tangential):
    assume(abs(radial - tangential) > 1e-4)
    far = 20 * w
    exact, simple = (form(w, far, radial, tangential) for form in (shape.cup_m, shape.cup_small_angle_m))
    assert exact == pytest.approx(simple, rel=0.10)


@given(width, depth, st.floats(-0.2, 0.2), st.floats(-0.03, 0.03), st.floats(-0.03, 0.03))
def test_closed_width_integral_is_the_rotated_strain_summed_across_the_width(w, d, offset, radial, tangential):
    def local(x):
        cos2 = d**2 / (d**2 + x**2)
        return tangential * cos2 + radial * (1 - cos2)

    left, right = offset - w / 2, offset + w / 2
    summed = quad(local, left, right, epsabs=1e-12)[0]
    first = closed.wedge_width_change_first_order_m(left, right, d, radial, tangential)
    assert first == pytest.approx(summed, abs=1e-9)
    # The exact map differs by squares of the strain: below 1.5 e^2 (w + the turn of the board) here.
    exact = shape.wedge_width_change_m(left, right, d, radial, tangential)
    assert exact == pytest.approx(first, abs=2.0 * max(abs(radial), abs(tangential)) ** 2 * (w + 1.0) + 1e-12)


@given(strain, strain, st.floats(0, np.pi / 2))
def test_out_of_square_agrees_with_the_diamond_and_vanishes_flat_and_quartered(radial, tangential, ring):
    at45 = closed.out_of_square_rad(radial, tangential, np.pi / 4)
    assert np.pi / 2 + at45 == pytest.approx(closed.diamond_angle_rad(radial, tangential), abs=1e-12)
    assert closed.out_of_square_rad(radial, tangential, 0.0) == pytest.approx(0.0, abs=1e-15)
    assert abs(closed.out_of_square_rad(radial, tangential, ring)) <= abs(at45) + 1e-12


@given(width, strain, strain, st.floats(0.2, 1.3))
def test_mitre_change_is_the_small_angle_form_for_small_strain(w, across, along, cut):
    exact = closed.mitre_angle_change_rad(across / 100, along / 100, cut)
    assert exact == pytest.approx(0.5 * np.sin(2 * cut) * (across - along) / 100, abs=2e-6)
    assert closed.mitre_gap_m(w, across, along, cut) * (across - along) >= -1e-15


@given(width, st.floats(0.005, 0.1), st.floats(0.0005, 0.005), st.floats(-5, 5))
def test_cup_from_faces_turns_over_with_the_sign_of_the_difference(w, t, c, difference):
    assert closed.cup_from_faces_m(w, t, c, difference) == -closed.cup_from_faces_m(w, t, c, -difference)
    assert closed.cup_from_faces_m(2 * w, t, c, 1.0) == pytest.approx(4 * closed.cup_from_faces_m(w, t, c, 1.0))


@given(st.floats(0.003, 0.1), strain, strain)
def test_oval_is_round_only_when_the_strains_agree(diameter, radial, tangential):
    small, large = closed.oval_m(diameter, radial, tangential)
    assert large - small == pytest.approx(diameter * (radial - tangential), abs=1e-15)
