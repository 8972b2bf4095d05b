"""Change of size and squareness of one board."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.movement.board import Board
from woodlib.movement.wood import Wood

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
moistures = st.floats(0, 40)


def board(ring=0.0, slope=0.0, width=0.2):
    return Board(ASH, width, 0.019, 0.8, ring, slope)


def test_hand_worked_board():
    # 200 x 19 x 800 mm, flatsawn, 12 -> 8 %: width 200*0.00274*-4 = -2.192, thickness 19*0.00169*-4 = -0.128 mm.
    # Length: 0.15 % over 30 points is 0.0015/(30 - 20*0.0015) = 5.005e-5 per point; 800*5.005e-5*-4 = -0.160 mm.
    change = board().change(12, 8)
    sizes = [1000 * size for size in (change.width_m, change.thickness_m, change.length_m)]
    assert sizes == pytest.approx([-2.192, -0.12844, -0.16016], abs=1e-4)
    assert change.end_out_of_square_rad == 0.0 and change.face_out_of_square_rad == 0.0


@given(moistures, moistures, st.floats(0, 90), st.floats(0, 45))
def test_change_is_finite_and_in_the_direction_of_moisture(start, end, ring, slope):
    change = board(ring, slope).change(start, end)
    sizes = np.array([change.width_m, change.thickness_m, change.length_m])
    assert np.all(np.isfinite(sizes))
    assert np.all(sizes * np.sign(min(end, 30) - min(start, 30)) >= -1e-15)


@given(moistures, moistures, st.floats(0, 90))
def test_turning_a_board_by_a_quarter_swaps_width_and_thickness(start, end, ring):
    here, turned = board(ring).strains(start, end), board(90 - ring).strains(start, end)
    assert here[1] == pytest.approx(turned[2], abs=1e-15) and here[2] == pytest.approx(turned[1], abs=1e-15)


@given(st.floats(0.02, 1.0), moistures, moistures)
def test_change_grows_with_the_width(width, start, end):
    assert abs(board(width=2 * width).change(start, end).width_m) >= abs(board(width=width).change(start, end).width_m)


def test_slope_of_grain_takes_movement_into_the_length():
    straight, sloping = board().change(12, 8), board(slope=10).change(12, 8)
    assert abs(sloping.length_m) > 2 * abs(straight.length_m)
    assert math.degrees(sloping.face_out_of_square_rad) == pytest.approx(-0.207, abs=0.01)


def test_remarks_name_what_lies_outside_the_printed_range():
    assert board().change(8, 10).remarks == ()
    assert any("6 to 14" in remark for remark in board().change(4, 10).remarks)
    assert any("fibre saturation" in remark for remark in board().change(40, 10).remarks)


def test_text_and_numbers_make_the_same_board():
    assert Board("white ash", "200 mm", "19 mm", "80 cm").width_m == board().width_m
