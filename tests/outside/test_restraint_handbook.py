"""Wood Handbook (FPL-GTR-190 and -282): constants of white ash and what follows from them.

Elastic ratios of ash, toughness and the 25 mm specimen are from memory; tolerances are the printed digits.
"""

import numpy as np
import pytest
from references.closed_forms import full_restraint_stress_pa
from references.fracture import averaging_length_m, critical_check_depth_m

from woodlib.movement.wood import rotated_strains, wood_of
from woodlib.restraint.closed_forms import transverse_modulus_pa
from woodlib.restraint.elastic import elastic_constants
from woodlib.restraint.fracture import fracture_energy_j_per_m2

SOURCE = "Wood Handbook Tables 5-1, 5-3, 5-10, 13-5"
ASH = elastic_constants("white ash")


def test_white_ash(outside):
    wood = wood_of("white ash")
    outside(SOURCE, "white ash, radial coefficient", 0.00169, wood.radial_coefficient, 1e-9, "1/%")
    outside(SOURCE, "white ash, tangential coefficient", 0.00274, wood.tangential_coefficient, 1e-9, "1/%")
    outside(
        SOURCE,
        "white ash, lengthwise modulus with 10 % added",
        13.2,
        ASH.number("modulus_lengthwise_pa") / 1e9,
        0.06,
        "GPa",
    )
    outside(SOURCE, "white ash, tangential modulus", 1056, ASH.number("modulus_tangential_pa") / 1e6, 5, "MPa")
    outside(SOURCE, "white ash, tension across the grain", 6.48, ASH.tension_perpendicular.number / 1e6, 0.01, "MPa")
    outside(
        SOURCE,
        "white ash, shear modulus LT over E_L",
        0.077,
        ASH.number("shear_lt_pa") / ASH.number("modulus_lengthwise_pa"),
        1e-9,
    )
    outside(SOURCE, "white ash, Poisson ratio TL by reciprocity (printed)", 0.051, ASH.number("poisson_tl"), 0.02)


def test_restrained_bar(outside):
    got = float(full_restraint_stress_pa(1056e6, -0.00274 * 5)) / 1e6
    outside("restrained bar, E C dM by hand", "white ash, 5 % drying, nothing may move", 14.4672, got, 1e-9, "MPa")


@pytest.mark.parametrize(
    ("wood", "ratio"),
    [
        ("yellow birch", 1.07),
        ("black walnut", 1.16),
        ("true mahogany", 1.24),
        ("yellow-poplar", 0.85),
        ("coast Douglas-fir", 0.49),
        ("Sitka spruce", 0.26),
    ],
)
def test_stiffness_of_rift_stock(outside, wood, ratio):
    """Hand rotation of the handbook's ratios; 0.03 allowed for the choice of Poisson ratio."""
    constants = elastic_constants(wood)
    names = ("modulus_tangential_pa", "modulus_radial_pa", "shear_rt_pa", "poisson_tr")
    got = transverse_modulus_pa(*(constants.number(name) for name in names), np.pi / 4)
    outside(SOURCE, f"{wood}: modulus at 45 deg over tangential", ratio, float(got) / constants.number(names[0]), 0.03)


def test_rotated_strain_of_rift_ash(outside):
    _, width, _, shear, *_ = rotated_strains(0.0, 0.00169, 0.00274, np.pi / 4, 0.0)
    outside(SOURCE, "white ash at 45 deg, width per %", 0.00221, float(width), 6e-6)
    outside(SOURCE, "white ash at 45 deg, shear per %", 0.00105, float(shear), 1e-6)


@pytest.mark.parametrize(("toughness", "energy"), [(0.41, 99), (0.48, 135), (0.52, 159)])
def test_fracture_energy(outside, toughness, energy):
    got = fracture_energy_j_per_m2(toughness * 1e6, 13200e6, 1056e6, 0.44, 0.077 * 13200e6)
    outside(SOURCE, f"energy of a split at K = {toughness}", energy, float(got), 1.0, "J/m2")


@pytest.mark.parametrize(("toughness", "depth"), [(0.41, 8), (0.50, 12)])
def test_critical_check(outside, toughness, depth):
    got = 1e3 * float(critical_check_depth_m(toughness * 1e6, 2.3e6))
    outside(SOURCE, f"end check that runs at 2.3 MPa, K = {toughness}", depth, got, 0.5, "mm")


def test_averaging_length(outside):
    got = 1e3 * float(averaging_length_m(0.45e6, 6.48e6))
    outside(SOURCE, "averaging length (2.5 to 3.8 mm)", 3.15, got, 0.65, "mm")
