"""Panels of several boards."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.movement.board import Board
from woodlib.movement.panel import Panel, PanelBoard
from woodlib.movement.spread import NO_DOUBTS, Doubts, width_movement
from woodlib.movement.wood import Wood

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
rings = st.lists(st.floats(0, 90), min_size=1, max_size=6)
moistures = st.floats(4, 18)


def panel(angles, likeness=1.0):
    return Panel(ASH, [PanelBoard(0.1, ring_angle_deg=angle) for angle in angles], likeness)


def test_hand_worked_panel():
    # Boards of 100 mm at 0 and 90 deg, 8 -> 12 %: 100*4*(0.00274 + 0.00169) = 1.772 mm.
    assert 1000 * panel([0, 90]).change_m(8, 12) == pytest.approx(1.772, abs=1e-9)


@given(rings, moistures, moistures)
def test_a_panel_is_the_sum_of_its_boards_and_of_its_equivalent_ring_angle(angles, start, end):
    whole = panel(angles)
    parts = sum(Board(ASH, 0.1, 0.02, 1.0, angle).change(start, end).width_m for angle in angles)
    assert whole.change_m(start, end) == pytest.approx(parts, abs=1e-12)
    equal = Board(ASH, whole.width_m, 0.02, 1.0, whole.ring_angle_deg).change(start, end).width_m
    assert equal == pytest.approx(parts, abs=1e-9)


@given(st.floats(0.05, 0.3), st.floats(0.03, 1.0), st.floats(-0.2, 0.2), moistures, moistures)
def test_a_board_near_its_pith_moves_less_than_a_flatsawn_one(width, depth, offset, start, end):
    near = Panel(ASH, [PanelBoard(width, pith_depth_m=depth, pith_offset_m=offset)])
    _, radial, tangential = ASH.axis_strains(start, end)
    bounds = sorted((radial * width, tangential * width))
    slack = 3 * tangential**2 * (width + 0.5) + 1e-12
    assert bounds[0] - slack <= near.change_m(start, end) <= bounds[1] + slack


def test_far_from_the_pith_a_board_is_flatsawn():
    far = Panel(ASH, [PanelBoard(0.2, pith_depth_m=100.0)])
    assert far.change_m(12, 8) == pytest.approx(-0.2 * 0.01096, rel=1e-5)
    assert far.ring_angle_deg < 0.1


def test_one_alike_board_has_the_range_of_a_board():
    doubts = Doubts(0.15, 0, 1, 1)
    one, board = panel([30]).change(8, 12, doubts), width_movement(Board(ASH, 0.1, 0.02, 1, 30), 8, 12, doubts)
    assert one.low_m == pytest.approx(board.low_m, rel=0.03) and one.high_m == pytest.approx(board.high_m, rel=0.03)


def test_different_trees_make_a_panel_surer():
    only_species = Doubts(0.15, 0, 0, 0)
    alike, mixed = (panel([0] * 4, likeness).change(8, 12, only_species) for likeness in (1.0, 0.0))
    # Four independent boards: half the scatter.
    assert mixed.high_m - mixed.mid_m == pytest.approx(0.5 * (alike.high_m - alike.mid_m), rel=0.05)


@given(rings, moistures, moistures, st.floats(0, 1))
def test_range_holds_the_best_guess_and_closes_without_doubts(angles, start, end, likeness):
    whole = panel(angles, likeness)
    movement = whole.change(start, end)
    assert movement.low_m <= movement.mid_m <= movement.high_m
    sure = whole.change(start, end, NO_DOUBTS)
    assert np.ptp([sure.low_m, sure.mid_m, sure.high_m]) < 1e-12
