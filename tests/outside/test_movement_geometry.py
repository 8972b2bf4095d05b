"""Shape changes against values worked by hand from the wedge map, the diamond and the mitre, apart from this code.

Tolerance: half a unit of the last digit kept by the hand calculation.
"""

import math

import pytest
from references import shape as closed

from woodlib.movement import shape

WEDGE = "wedge map about the pith, by hand"
HAND = "geometry by hand"


@pytest.mark.parametrize(
    "width, distance, exact, simple",
    [(100, 100, 0.265, 0.287), (200, 200, 0.530, 0.575), (200, 100, 0.899, 1.150), (200, 60, 1.181, 1.917)],
)
def test_cup(outside, width, distance, exact, simple):
    arguments = (width / 1000, distance / 1000, -0.0100, -0.0215)
    name = f"cup, {width} mm wide, {distance} mm from the pith"
    outside(WEDGE, name, exact, 1000 * shape.cup_m(*arguments), 6e-4, "mm")
    outside(WEDGE, name + ", small angle", simple, 1000 * shape.cup_small_angle_m(*arguments), 6e-4, "mm")


def test_cup_of_ash_to_first_order(outside):
    # Ash, 5 points: strain difference 5*(0.00274 - 0.00169) = 0.00525; d |de| th tan th at th = 45 deg: 0.412 mm.
    cup = shape.cup_m(0.2, 0.1, -5 * 0.00169, -5 * 0.00274)
    outside(WEDGE, "cup of ash, 200 mm, 100 mm from the pith, 5 points", 0.411, 1000 * cup, 4e-3, "mm")
    wide = shape.cup_m(0.15, 0.3, -5 * 0.00169, -5 * 0.00274)
    outside(WEDGE, "cup of ash, 150 mm, 300 mm from the pith, 5 points", 0.096, 1000 * wide, 1e-3, "mm")


def test_width_of_a_cupped_board(outside):
    change = shape.wedge_width_change_m(-0.1, 0.1, 0.1, -0.0100, -0.0215)
    outside(WEDGE, "width of 200 mm board after, 100 mm from the pith", 196.18, 200 + 1000 * change, 6e-3, "mm")


def test_cup_from_a_moisture_difference(outside):
    cup = closed.cup_from_faces_m(0.2, 0.019, 0.00369, 1.0)
    outside("bending of an evenly graded plate", "200 x 19 mm, 1 point between faces", 0.97, 1000 * cup, 5e-3, "mm")


@pytest.mark.parametrize("tangential, radial, angle", [(0.0229, 0.0107, 89.289), (0.086, 0.040, 87.19)])
def test_diamond(outside, tangential, radial, angle):
    got = math.degrees(closed.diamond_angle_rad(-radial, -tangential))
    outside(HAND, f"diamond, shrinkage {tangential} / {radial}", angle, got, 5e-3, "deg")


def test_diamond_over_a_width(outside):
    out = -closed.out_of_square_rad(-0.0107, -0.0229, math.radians(45))
    outside(HAND, "out of square over 50 mm", 0.62, 50 * math.tan(out), 5e-3, "mm")


def test_oval(outside):
    small, large = closed.oval_m(0.025, -0.0100, -0.0215)
    outside(HAND, "25 mm dowel, tangential", 24.46, 1000 * small, 5e-3, "mm")
    outside(HAND, "25 mm dowel, radial", 24.75, 1000 * large, 5e-3, "mm")


def test_mitre_of_ash(outside):
    # Ash, 75 mm members, 4 points drier, lengthwise 0.0001 per point: strains -0.01096 and -0.0004. By the small-angle
    # form sqrt(2) w (e_w - e_l) = 1.120 mm and 0.605 deg; the exact form is 0.6 % more.
    gap = closed.mitre_gap_m(0.075, -0.01096, -0.0004)
    outside(HAND, "ash mitre, 75 mm, 4 points drier, gap", -1.12, 1000 * gap, 0.01, "mm")
    angle = 2 * math.degrees(closed.mitre_angle_change_rad(-0.01096, -0.0004))
    outside(HAND, "ash mitre, opening of the joint", -0.61, angle, 5e-3, "deg")
