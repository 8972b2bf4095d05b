"""Wood drawn from its geometry: rings about a pith, boards that move about it, panels of several boards."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from references.shape import out_of_square_rad

from woodlib.movement.shape import cup_m
from woodlib.movement.wood import rotated_strains
from woodlib.picture.scene import Area, Circle, Line, Window, box, walk
from woodlib.picture.wood import board_end, end_outline, grain_lines, moved_end, panel_face, pith_direction, ring_marks

angles = st.floats(0, 90)
strains = st.floats(-0.05, 0.05)
MIDDLE, PITH = (200.0, 100.0), 600.0


@given(angles)
def test_the_ring_angle_is_measured_between_width_and_ring(angle):
    x, y = pith_direction(angle)
    assert math.hypot(x, y) == pytest.approx(1.0)
    tangent = (-y, x)  # a ring at the middle runs square to the way to the pith
    assert math.degrees(math.acos(min(1.0, abs(tangent[0])))) == pytest.approx(angle, abs=1e-5)


def test_flatsawn_has_its_pith_below_and_quartersawn_beside():
    assert pith_direction(0) == (pytest.approx(0), pytest.approx(1))
    assert pith_direction(90) == (pytest.approx(-1), pytest.approx(0, abs=1e-12))


@given(angles, st.floats(300, 2000), st.floats(5, 20))
def test_rings_share_one_pith_and_cover_the_board(angle, pith, spacing):
    rings = ring_marks(MIDDLE, pith, angle, 150.0, spacing)
    centres = {(ring.x, ring.y) for ring in rings}
    assert len(centres) == 1
    (x, y) = centres.pop()
    assert math.dist((x, y), MIDDLE) == pytest.approx(pith)
    radii = [ring.radius for ring in rings]
    assert np.diff(radii) == pytest.approx(spacing)
    assert radii[0] <= pith - 150.0 + 1e-9 and radii[-1] >= pith + 150.0 - 1e-9


def test_no_ring_is_drawn_on_the_far_side_of_the_pith():
    assert min(ring.radius for ring in ring_marks(MIDDLE, 50.0, 20.0, 150.0, 9.0)) > 0


@given(angles, angles)
def test_the_same_board_has_the_same_marks_at_every_ring_angle(first, second):
    one, two = (list(walk(board_end(40, 80, 381, 57, angle, 750))) for angle in (first, second))
    assert [type(mark) for mark in one] == [type(mark) for mark in two]


def test_a_board_end_shows_its_rings_only_inside_its_outline():
    area, window, edge = board_end(40, 80, 381, 57, 0, 750)
    assert isinstance(area, Area) and isinstance(window, Window) and isinstance(edge, Line)
    assert window.points == box(40, 80, 381, 57) and edge.points[0] == edge.points[-1]
    assert all(isinstance(mark, Circle) for mark in window.marks)


@given(angles, strains, strains)
def test_the_middle_of_a_moved_board_stays_and_a_board_at_rest_stays_whole(angle, radial, tangential):
    assert moved_end([MIDDLE], MIDDLE, angle, PITH, radial, tangential)[0] == pytest.approx(MIDDLE)
    outline = end_outline(100, 80, 200, 40)
    assert moved_end(outline, MIDDLE, angle, PITH, 0.0, 0.0) == pytest.approx(outline)


@given(angles, strains, strains)
def test_a_moved_board_keeps_its_rings_concentric(angle, radial, tangential):
    # Points of one ring before lie on one ring afterwards, about a pith that is where the middle asks it to be.
    towards = np.array(pith_direction(angle))
    pith = MIDDLE + PITH * towards
    turn = np.linspace(-0.3, 0.3, 7)
    way = -np.outer(np.cos(turn), towards) + np.outer(np.sin(turn), [towards[1], -towards[0]])
    moved = moved_end(pith + 580.0 * way, MIDDLE, angle, PITH, radial, tangential)
    moved_pith = MIDDLE + (1 + radial) * PITH * towards
    assert np.hypot(*(moved - moved_pith).T) == pytest.approx((1 + radial) * 580.0)


@given(angles, strains, strains)
def test_close_to_the_middle_a_board_moves_by_the_rotated_strains(angle, radial, tangential):
    _, width, thickness, shear, *_ = rotated_strains(0.0, radial, tangential, math.radians(angle), 0.0)
    step = 0.01
    points = np.array([(step, 0), (-step, 0), (0, step), (0, -step)]) + MIDDLE
    right, left, below, above = moved_end(points, MIDDLE, angle, PITH, radial, tangential)
    along, down = (right - left) / (2 * step), (below - above) / (2 * step)
    assert along[0] - 1 == pytest.approx(width, abs=1e-5) and down[1] - 1 == pytest.approx(thickness, abs=1e-5)
    assert abs(along[1] + down[0]) == pytest.approx(abs(shear), abs=1e-5)


@given(st.floats(-0.03, 0.03), st.floats(-0.03, 0.03))
def test_a_flatsawn_board_cups_as_the_closed_form_says(radial, tangential):
    left, middle, right = moved_end([(100, 100), MIDDLE, (300, 100)], MIDDLE, 0.0, PITH, radial, tangential)
    # Drying hollows the bark side: the edges move away from the pith, which lies below on the sheet.
    assert middle[1] - 0.5 * (left[1] + right[1]) == pytest.approx(cup_m(200.0, PITH, radial, tangential), abs=1e-6)


def test_a_square_at_45_degrees_becomes_a_diamond():
    points = np.array([(0.01, 0), (-0.01, 0), (0, 0.01), (0, -0.01)]) + MIDDLE
    right, left, below, above = moved_end(points, MIDDLE, 45.0, PITH, -0.0107, -0.0229)
    across, down = right - left, below - above
    corner = math.acos(across @ down / (np.hypot(*across) * np.hypot(*down)))
    assert abs(math.pi / 2 - corner) == pytest.approx(abs(out_of_square_rad(-0.0107, -0.0229, math.pi / 4)), rel=1e-3)


def test_an_end_outline_goes_round_the_board_once():
    outline = end_outline(10, 20, 120, 30, steps=4)
    assert outline.tolist()[:2] == [[10, 20], [40, 20]] and outline.tolist()[-1] == [10, 50]
    x, y = outline.T
    area = 0.5 * abs(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)))
    assert area == pytest.approx(120 * 30)


@pytest.mark.parametrize("along", ["x", "y"])
def test_grain_lines_run_along_the_board_and_are_the_same_each_time(along):
    outline = box(10.0, 20.0, 200.0, 100.0)
    lines = grain_lines(outline, along, 6, seed=3)
    again = grain_lines(outline, along, 6, seed=3)
    other = grain_lines(outline, along, 6, seed=4)
    points = [np.array([line.points for line in drawn], float) for drawn in (lines, again, other)]
    assert (points[0] == points[1]).all() and not (points[0] == points[2]).all()
    axis = 0 if along == "x" else 1
    for line in lines:
        points = np.array(line.points, float)
        assert np.ptp(points[:, axis]) == pytest.approx((200.0, 100.0)[axis])
        assert np.ptp(points[:, 1 - axis]) < 5


@pytest.mark.parametrize("along", ["x", "y"])
def test_a_panel_shows_a_seam_between_every_two_boards(along):
    area, window, edge = panel_face(10.0, 20.0, 300.0, 120.0, 4, along)
    seams = [mark for mark in window.marks if mark.role == "edge"]
    axis = 1 if along == "x" else 0
    start, size = ((20.0, 120.0), (10.0, 300.0))[1 - axis]
    assert [seam.points[0][axis] for seam in seams] == pytest.approx([start + size * k / 4 for k in (1, 2, 3)])
