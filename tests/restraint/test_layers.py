"""Layers: the two-layer formula against lamination theory, balance, and equilibrium."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from references.layers import Ply, core_tension_pa, edge_shear, face_batten, lay_up

from woodlib.restraint.layers import bow_m, two_layer_curvature_per_m

thicknesses, moduli, strains = st.floats(0.001, 0.05), st.floats(5e8, 2e10), st.floats(-0.02, 0.02)


def beam_ply(thickness, modulus, strain):
    """A layer that is stressed in one direction only."""
    return Ply(thickness, modulus, modulus * 1e-9, modulus * 1e-9, 0.0, 0.0, strain, 0.0)


@given(thicknesses, thicknesses, moduli, moduli, strains)
def test_two_layers_agree_with_lamination_theory(lower, upper, lower_pa, upper_pa, strain):
    plate = lay_up([beam_ply(lower, lower_pa, strain), beam_ply(upper, upper_pa, 0.0)])
    expected = two_layer_curvature_per_m(lower, upper, lower_pa, upper_pa, strain)
    assert plate.curvature_per_m[0] == pytest.approx(expected, rel=1e-6, abs=1e-9)


@given(thicknesses, thicknesses, moduli, moduli, strains)
def test_swapping_the_layers_bends_the_other_way(lower, upper, lower_pa, upper_pa, strain):
    one = two_layer_curvature_per_m(lower, upper, lower_pa, upper_pa, strain)
    other = two_layer_curvature_per_m(upper, lower, upper_pa, lower_pa, -strain)
    assert one == pytest.approx(-other, rel=1e-9, abs=1e-12)


@given(st.lists(st.tuples(thicknesses, st.floats(0, np.pi), strains, strains), min_size=1, max_size=4))
def test_any_free_plate_is_in_balance_and_a_mirrored_one_stays_flat(layers):
    half = [Ply(t, 12e9, 1e9, 0.9e9, 0.4, a, along, across) for t, a, along, across in layers]
    for plies in (half, [*half, *reversed(half)]):
        plate = lay_up(plies)
        force = sum(ply.thickness_m * stress.mean(axis=0) for ply, stress in zip(plies, plate.stress_pa, strict=True))
        assert np.abs(force).max() < 1e-6 * max(np.abs(plate.stress_pa).max(), 1.0)
    assert np.abs(plate.curvature_per_m).max() < 1e-9


@given(thicknesses, thicknesses, moduli, moduli, st.floats(-0.02, -1e-4))
def test_core_tension_agrees_with_lamination_theory(face, core, face_pa, core_pa, strain):
    plate = lay_up([beam_ply(face, face_pa, 0.0), beam_ply(core, core_pa, strain), beam_ply(face, face_pa, 0.0)])
    assert plate.stress_pa[1, 0, 0] == pytest.approx(
        core_tension_pa(core_pa, core, face_pa, 2 * face, strain), rel=1e-6
    )


@given(thicknesses, thicknesses, moduli, moduli, st.floats(1e-4, 0.02), st.floats(0.01, 2.0))
def test_edge_shear_carries_the_force_of_the_middle(lower, upper, lower_pa, upper_pa, strain, length):
    edge = edge_shear(lower, upper, lower_pa, upper_pa, 8e8, 8e8, strain, length)
    assert edge.peak_shear_pa > 0 and edge.middle_force_n_per_m >= 0
    assert (
        edge_shear(lower, upper, lower_pa, upper_pa, 8e8, 8e8, strain, length, 1e-3, 1e7).peak_shear_pa
        < edge.peak_shear_pa
    )
    flat = edge_shear(lower, upper, lower_pa, upper_pa, 8e8, 8e8, strain, 50.0, held_flat=True)
    q = 3.0 / flat.transfer_length_m
    assert flat.peak_shear_pa / q == pytest.approx(flat.middle_force_n_per_m, rel=1e-6)  # shear adds up to the force


def test_face_batten_limits():
    rest = (0.45, 0.02, 1.0)
    assert face_batten(*rest, 1.0, 0.02, 1e9, 1e9, 12e9, -0.01).working_width_m == pytest.approx(1.0)
    narrow, wide = (face_batten(*rest, w, 0.02, 1e9, 1e9, 12e9, -0.01) for w in (0.02, 0.08))
    assert narrow.working_width_m < wide.working_width_m < 1.0
    assert wide.bow_m == pytest.approx(bow_m(wide.curvature_per_m, 0.45))
