"""Rotation of strain, and what a wood brings along from the tables."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import MissingDataError
from woodlib.movement.wood import Wood, rotated_strains, width_strain, wood_of
from woodlib.species import Value, all_species, find_species

strains = st.floats(-0.1, 0.1)
angles = st.floats(0.0, np.pi / 2)
ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)


def tensor(along, radial, tangential, ring, slope):
    """The same rotation by matrices: Q diag Q^T in the axes length, width, thickness."""
    c, s, a, b = np.cos(ring), np.sin(ring), np.cos(slope), np.sin(slope)
    grain, tang, rad = np.array([[1, 0, 0], [0, c, s], [0, -s, c]])  # L, T, R seen in length, width, thickness
    free = along * np.outer(grain, grain) + radial * np.outer(rad, rad) + tangential * np.outer(tang, tang)
    turn = np.array([[a, b, 0], [-b, a, 0], [0, 0, 1]])
    return turn @ free @ turn.T


@given(strains, strains, strains, angles, angles)
def test_closed_form_is_the_matrix_rotation(along, radial, tangential, ring, slope):
    got = np.array(rotated_strains(along, radial, tangential, ring, slope), dtype=float)
    e = tensor(along, radial, tangential, ring, slope)
    expected = [e[0, 0], e[1, 1], e[2, 2], 2 * e[1, 2], 2 * e[0, 1], 2 * e[0, 2]]
    assert np.abs(got[[0, 1, 2]] - expected[:3]).max() < 1e-15
    # The directions in which a slope or a ring leans are a matter of sign; sizes must agree.
    assert np.abs(np.abs(got[3:]) - np.abs(expected[3:])).max() < 1e-15


@given(strains, strains, strains, angles, angles)
def test_rotation_keeps_the_change_of_volume(along, radial, tangential, ring, slope):
    length, width, thickness, *_ = rotated_strains(along, radial, tangential, ring, slope)
    assert length + width + thickness == pytest.approx(along + radial + tangential, abs=1e-14)


@given(st.floats(0, 30), st.floats(0, 30), angles)
def test_width_movement_lies_between_radial_and_tangential(start, end, ring):
    _, radial, tangential = ASH.axis_strains(start, end)
    across = width_strain(ASH, ring, 0.0, start, end)
    assert min(radial, tangential) - 1e-15 <= across <= max(radial, tangential) + 1e-15


@given(st.floats(6, 14), st.floats(6, 14), st.floats(0.5, 1.5))
def test_a_board_factor_scales_the_movement(start, end, factor):
    plain, scaled = width_strain(ASH, 0.3, 0.0, start, end), width_strain(ASH, 0.3, 0.0, start, end, factor)
    assert scaled == pytest.approx(factor * plain, abs=1e-9 + 0.01 * abs(plain))


def test_every_species_of_the_catalogue_moves_or_says_what_is_missing():
    moving, silent = 0, []
    for species in all_species():
        try:
            wood = wood_of(species)
        except MissingDataError as error:
            silent.append(species.name)
            assert species.name in str(error) and "\n" not in str(error)
        else:
            moving += 1
            swelling = np.array(wood.axis_strains(6.0, 12.0))
            assert np.all((swelling > 0) & (swelling < 0.05)) and swelling[0] < swelling[1]
    assert moving > 190 and len(silent) < 15


def test_a_coefficient_that_disagrees_with_the_own_shrinkage_is_said():
    remarks = wood_of("green ash").remarks
    assert any("0.00274" in remark and "own shrinkage of 7.1" in remark for remark in remarks)


def test_a_22_percent_basis_is_taken_over():
    cedar = wood_of("western redcedar")
    assert cedar.fibre_saturation_percent == 22.0
    _, radial, tangential = cedar.axis_strains(25.0, 22.0)
    assert radial == pytest.approx(0.0, abs=1e-15) and tangential == pytest.approx(0.0, abs=1e-15)


def test_a_species_with_one_of_two_values_gets_the_other_and_says_so():
    ash = find_species("white ash")
    values = dict(ash.values)
    del values["tangential_coefficient_per_percent"], values["radial_shrinkage_percent"]
    values["tangential_shrinkage_percent"] = Value(7.8, "percent", "own", "test")
    from dataclasses import replace

    wood = wood_of(replace(ash, values=values))
    assert wood.tangential_coefficient == pytest.approx(0.00274, abs=5e-6)
    assert wood.radial_shrinkage == pytest.approx(0.049, abs=5e-4)
    assert sum("worked out" in remark for remark in wood.remarks) == 2
