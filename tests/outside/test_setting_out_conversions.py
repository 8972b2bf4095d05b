"""Board feet, weights and pressures against published factors; figures recalled from memory where it says so."""

import pytest

from woodlib.setting_out.buying import BOARD_FOOT_M3, board_feet
from woodlib.setting_out.kernels import mass_kg
from woodlib.setting_out.practice import ShopPractice
from woodlib.units import registry

SP811 = "NIST SP 811, App. B.8 (from memory)"
DENSITY = "Wood Handbook, 1000 G (1 + M/100), from memory"


def test_board_foot(outside):
    # Seven digits are printed: half a unit of the last.
    outside(SP811, "board foot", 2.359737e-3, float(BOARD_FOOT_M3), 5e-10, "m3")
    outside("definition: 144 cubic inches, exact", "board foot", 0.002359737216, float(BOARD_FOOT_M3), 0.0, "m3")
    pint = registry.Quantity(1, "board_foot").to("m^3").magnitude
    outside("pint, unit board_foot", "board foot", pint, float(BOARD_FOOT_M3), 1e-17, "m3")


@pytest.mark.parametrize(
    ("sizes", "expected"),
    [
        (("1 in", "12 in", "1 ft"), 1.0),
        (("2 in", "6 in", "10 ft"), 10.0),  # 2*6*10/12
        (("1-1/4 in", "8 in", "9 ft"), 7.5),  # 1.25*8*9/12
        (("1 in", "7 in", "96 in"), 14.0 / 3.0),  # 7*96/144
    ],
)
def test_board_feet(outside, sizes, expected):
    outside(
        "thickness in x width in x length ft / 12", " x ".join(sizes), expected, float(board_feet(*sizes)), 1e-12, "bf"
    )


def test_glue_pressure(outside):
    # 1 lbf/in2 is printed as 6.894757E+03 Pa; half a unit of its last digit times 150.
    got = float(ShopPractice().glue_pressure_pa)
    outside(SP811, "150 lbf per square inch", 150 * 6894.757, got, 150 * 5e-4 + 0.1, "Pa")


# specific gravity, moisture %, density worked out by hand: dry mass and its water
@pytest.mark.parametrize(
    ("gravity", "moisture", "expected"), [(0.50, 12, 560), (0.60, 8, 648), (0.40, 0, 400), (0.70, 20, 840)]
)
def test_density_at_moisture(outside, gravity, moisture, expected):
    outside(DENSITY, f"gravity {gravity}, {moisture} % MC", expected, mass_kg(1.0, gravity, moisture), 0.5, "kg/m3")
