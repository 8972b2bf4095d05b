"""Warp as a shape: arcs, outlines, twist, glued strips."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from references.shape import cup_from_faces_m, diamond_angle_rad
from references.warp import (
    arc_depth_m,
    bow_m,
    crook_of_turning_grain_m,
    cup_over_time_m,
    even_outline,
    fourth_corner_m,
    passing_cup_m,
    passing_curvature_per_m,
    section_outline,
    strain_at_slope,
    twist_rad,
    warped_face,
)

from woodlib.errors import InputError
from woodlib.moisture.drive import steady_air
from woodlib.moisture.finishes import CLOSED
from woodlib.moisture.following import follow
from woodlib.moisture.readiness import out_of_flat_m
from woodlib.moisture.stock import Stock
from woodlib.movement.glue_up import glue_up, panel_line
from woodlib.movement.shape import cup_m


@given(width=st.floats(0.01, 2.0), curvature=st.floats(-1.0, 1.0))
@settings(max_examples=80, deadline=None)
def test_arc_depth_is_the_sagitta(width, curvature):
    expected = (1 - np.cos(curvature * width / 2)) / curvature if abs(curvature) > 1e-4 else width**2 * curvature / 8
    assert float(arc_depth_m(width, curvature)) == pytest.approx(expected, abs=1e-10)


def test_passing_cup_agrees_with_the_straight_gradient():
    assert float(passing_cup_m(1.0, 0.2, 0.019, 0.00369)) == pytest.approx(
        cup_from_faces_m(0.2, 0.019, 0.00369, 1.0), rel=1e-4
    )


def test_passing_curvature_of_any_profile_against_strips():
    """A stack of thin layers that must share one plane section: least squares gives the curvature of least energy."""
    cells, thick, coefficient = 200, 0.019, 0.0037
    z = (np.arange(cells) + 0.5) / cells * thick - thick / 2
    moisture = 8 + 3 * np.exp(-(z + thick / 2) / 0.002)
    slope = np.polyfit(z, coefficient * moisture, 1)[0]
    tilt = 12 * np.mean(moisture * (z / thick)) / (1 - 1 / cells**2)
    assert float(passing_curvature_per_m(tilt, thick, coefficient)) == pytest.approx(slope, rel=1e-9)


def test_board_lying_on_a_bench_cups_and_comes_back():
    course = follow(Stock(0.019, 0.6, second_finish=CLOSED), steady_air(20, 35, 300), 10.0)
    cup = cup_over_time_m(course.mean_percent, course.tilt_percent, 10.0, 0.2, 0.019, 0.0018, 0.0037)
    worst = np.abs(cup[:, 1]).max()
    assert cup[np.argmax(np.abs(cup[:, 1])), 1] > 0.001  # first face dries, shrinks, goes hollow
    assert abs(cup[-1, 1]) < 0.1 * worst


def test_ring_cup_stays_when_the_passing_cup_has_gone():
    cup = cup_over_time_m(
        np.array([10.0, 7.0]), np.array([0.0, 0.0]), 10.0, 0.2, 0.019, 0.0018, 0.0037, pith_distance_m=0.1
    )
    assert cup[0] == 0.0
    assert cup[1] == pytest.approx(float(cup_m(0.2, 0.1, -0.0054, -0.0111)))
    other = cup_over_time_m(7.0, 0.0, 10.0, 0.2, 0.019, 0.0018, 0.0037, pith_distance_m=0.1, bark_side_first=False)
    assert other == pytest.approx(-cup[1])


def test_section_cups_as_the_closed_form_on_both_faces():
    outline = section_outline(0.2, 0.02, 0.0, 0.11, -0.0100, -0.0215, points=41)
    bottom, top = outline.height_m[:41], outline.height_m[82:123]
    assert bottom[0] - bottom[20] == pytest.approx(float(cup_m(0.2, 0.10, -0.0100, -0.0215)), abs=1e-12)
    assert top[0] - top[20] == pytest.approx(float(cup_m(0.2, 0.12, -0.0100, -0.0215)), abs=1e-12)
    down = section_outline(0.2, 0.02, 0.0, -0.11, -0.0100, -0.0215, points=41)
    assert down.height_m[:41][0] < down.height_m[:41][20]


def test_no_change_no_shape():
    outline = section_outline(0.2, 0.02, 0.03, 0.11, 0.0, 0.0)
    assert np.allclose(outline.height_m, outline.height_before_m, atol=1e-12)
    assert np.allclose(outline.across_m, outline.across_before_m, atol=1e-12)


def test_square_becomes_the_diamond_of_the_closed_form():
    corners = np.array([[1, 1], [-1, 1], [-1, -1], [1, -1]]).T * 0.025
    outline = even_outline(*corners, -0.0107, -0.0229, np.radians(45))
    side = np.array([outline.across_m[1] - outline.across_m[0], outline.height_m[1] - outline.height_m[0]])
    other = np.array([outline.across_m[3] - outline.across_m[0], outline.height_m[3] - outline.height_m[0]])
    angle = np.arccos(side @ other / np.linalg.norm(side) / np.linalg.norm(other))
    closed = float(diamond_angle_rad(-0.0107, -0.0229))
    assert min(abs(angle - closed), abs(np.pi - angle - closed)) < 1e-12


def test_bow_and_crook_signs_and_size():
    shrunk = strain_at_slope(np.radians(10), -0.0003, -0.02)
    assert -0.02 < shrunk < -0.0003
    assert float(bow_m(1.2, 0.019, shrunk, -0.0003)) > 0.0  # the shrunken first face goes hollow
    assert float(bow_m(1.2, 0.019, shrunk, shrunk)) == 0.0
    wide, narrow = bow_m(1.2, 0.2, shrunk, 0.0), bow_m(1.2, 0.1, shrunk, 0.0)
    assert float(narrow) == pytest.approx(2 * float(wide), rel=1e-3)


def test_crook_of_turning_grain_by_integration():
    """The centre line follows the shear: integrate it along the board and take the bulge from the chord."""
    along, across, length = -0.0003, -0.02, 1.2
    x = np.linspace(0, length, 4001)
    slope = np.radians(-4) + np.radians(8) * x / length
    shear = (across - along) * np.sin(2 * slope)
    line = np.concatenate([[0], np.cumsum((shear[1:] + shear[:-1]) / 2 * np.diff(x))])
    bulge = line - line[-1] * x / length
    got = float(crook_of_turning_grain_m(length, np.radians(-4), np.radians(4), along, across))
    assert abs(got) == pytest.approx(np.abs(bulge).max(), rel=0.01)


def test_twist_grows_towards_the_pith_and_vanishes_without_spiral():
    assert abs(twist_rad(1.2, 0.05, 0.05, 0.0, -0.02)) == pytest.approx(2 * abs(twist_rad(1.2, 0.10, 0.05, 0.0, -0.02)))
    assert twist_rad(1.2, 0.1, 0.0, 0.0, -0.02) == 0.0


def test_twist_of_a_shell_by_mapping_it():
    """A cylinder shell whose grain spirals, unrolled, shrunk across the grain and rolled up again, without linearising.

    The map of the flat sheet is turned until hoops are level once more; a line drawn along the log then leans, and
    its lean over the new radius is the twist. The kit's form is first order in the strain: within 5 % at 2 % strain.
    """
    angle, shrink, radius, length = np.radians(4.0), -0.02, 0.1, 1.0
    side = np.array([np.cos(angle), -np.sin(angle)])  # across the grain, on (hoop, log axis)
    sheet = np.eye(2) + shrink * np.outer(side, side)
    hoop = sheet @ [1.0, 0.0]
    back = np.array([[hoop[0], hoop[1]], [-hoop[1], hoop[0]]]) / np.hypot(*hoop)
    line = back @ sheet @ [0.0, length]
    turn = line[0] / (radius * np.hypot(*hoop))
    assert abs(float(twist_rad(length, radius, angle, 0.0, shrink))) == pytest.approx(abs(turn), rel=0.05)


def test_warped_face_is_out_of_flat_as_the_closed_form():
    for cup, bow, twist in ((0.003, 0.002, 0.004), (0.003, -0.002, 0.001), (0.0, 0.0, 0.004)):
        _, _, height = warped_face(1.2, 0.2, cup, bow, twist, points=201)
        assert np.ptp(height) == pytest.approx(float(out_of_flat_m(cup, bow, twist)), abs=1e-6)
    corners = warped_face(1.2, 0.2, twist_m=0.004)[2][[0, 0, -1, -1], [0, -1, 0, -1]]
    assert corners[0] - corners[1] - corners[2] + corners[3] == pytest.approx(0.004)  # lift of the fourth corner
    assert float(fourth_corner_m(0.2, 0.02)) == pytest.approx(0.004, rel=1e-3)


@given(strips=st.integers(1, 9), width=st.floats(0.03, 0.2), curvature=st.floats(0.001, 0.3))
@settings(max_examples=40, deadline=None)
def test_all_one_way_is_one_arc(strips, width, curvature):
    line = panel_line([width] * strips, [curvature] * strips)
    assert line.out_of_flat_m == pytest.approx(float(arc_depth_m(strips * width, curvature)), rel=1e-3)


@pytest.mark.parametrize("strips", [4, 6, 8])
def test_in_turn_is_a_ripple_of_two_strip_cups(strips):
    """Joints lie on a line, strips bulge to both sides by their own cup: w^2 k / 4 from crest to hollow.

    Two strips alone lie flatter, as an S can be tilted; from four on the joints decide.
    """
    width, curvature = 0.1, 0.1
    line = panel_line([width] * strips, [curvature * (-1) ** n for n in range(strips)])
    assert line.out_of_flat_m == pytest.approx(width**2 * curvature / 4, rel=2e-2)


def test_ripple_is_far_smaller_than_the_arc():
    panel = glue_up([0.1] * 6, [0.08] * 6, -0.0054, -0.0110)
    assert panel.same_way.out_of_flat_m / panel.in_turn.out_of_flat_m == pytest.approx(36 / 2, rel=0.03)
    assert panel.same_way.across_m[-1] == pytest.approx(0.6, rel=1e-3)


@pytest.mark.parametrize(
    ("widths", "piths", "fragment"),
    [
        ([], [], "0 widths"),
        ([0.1], [0.1, 0.1], "1 widths and 2 pith"),
        ([0.0], [0.1], "width of strip 1 is 0 m"),
        ([0.1], [float("nan")], "pith distance of strip 1 is nan m"),
    ],
)
def test_glue_up_refuses(widths, piths, fragment):
    with pytest.raises(InputError, match=fragment):
        glue_up(widths, piths, -0.005, -0.01)
