"""A step of air in a board with unlike faces: against the plate's series, the full solver, and its own limits."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from references.diffusivity import constant_form
from references.plate import fraction_with_resistance

from woodlib.moisture.drive import steady_air
from woodlib.moisture.finishes import BARE, CLOSED, find_finish
from woodlib.moisture.following import follow
from woodlib.moisture.stock import Stock
from woodlib.moisture.two_faces import step_inside

DAY_S = 86400.0
boards = st.tuples(st.floats(0.005, 0.06), st.floats(1e-11, 2e-10), st.floats(1e-9, 3e-7), st.floats(1e-9, 3e-7))


@given(st.floats(0.005, 0.06), st.floats(1e-11, 2e-10), st.floats(1e-9, 3e-7), st.floats(1e-3, 5.0))
@settings(max_examples=60, deadline=None)
def test_alike_faces_are_the_plate_of_the_tables(thickness, diffusivity, surface, fourier):
    """Crank's plane sheet with surface evaporation (plate.fraction_with_resistance, checked on tabulated roots)."""
    half = thickness / 2
    left = step_inside(thickness, diffusivity, surface, surface).mean(fourier * half**2 / diffusivity)
    assert 1 - float(left) == pytest.approx(
        float(fraction_with_resistance(fourier, surface * half / diffusivity)), abs=2e-6 if fourier > 0.01 else 2e-5
    )


def test_a_closed_face_is_half_of_a_board_twice_as_thick():
    times = DAY_S * np.array([1.0, 7.0, 60.0])
    closed, double = step_inside(0.019, 2.6e-11, 1.7e-7, 0.0), step_inside(0.038, 2.6e-11, 1.7e-7, 1.7e-7)
    assert closed.mean(times) == pytest.approx(double.mean(times), abs=2e-7)
    assert closed.profile(times, [0.5])[:, 0] == pytest.approx(double.profile(times, [0.25])[:, 0], abs=2e-6)


@pytest.mark.parametrize("second", [CLOSED, find_finish("urethane varnish", 3)])
def test_unlike_faces_against_the_solver_with_a_constant_coefficient(second):
    stock = Stock(0.019, 0.60, BARE, second, form=constant_form(2.6e-11))
    course = follow(stock, steady_air(20, 70, 60), 8.0, cells=120, step_hours=2.0, profile_days=[7.0])
    films = stock.surface_m_s(20.0, 8.0, float(course.emc_percent[0]))[1]
    inside = step_inside(0.019, 2.6e-11, *films)
    home = float(course.emc_percent[-1])
    for day in (1.0, 7.0, 30.0, 60.0):
        n = int(np.argmin(np.abs(course.days - day)))
        at = course.days[n] * DAY_S
        assert home + (8.0 - home) * float(inside.mean(at)) == pytest.approx(course.mean_percent[n, 1], abs=0.01)
        assert (8.0 - home) * float(inside.tilt(at)) == pytest.approx(course.tilt_percent[n, 1], abs=0.02)
    depth = (np.arange(120) + 0.5) / 120
    profile = home + (8.0 - home) * inside.profile(7 * DAY_S, depth)
    assert profile == pytest.approx(course.profile_percent[0, :, 1], abs=0.02)


@given(boards)
@settings(max_examples=60, deadline=None)
def test_what_is_left_falls_from_one_to_nothing(board):
    inside = step_inside(*board)
    left = inside.mean(np.concatenate([[0.0], np.geomspace(1e-3, 5.0, 40) / inside.rate_s.min()]))
    assert left[0] == pytest.approx(1.0, abs=1e-12) and left[-1] < 0.02
    assert (np.diff(left) < 0).all() and (left > 0).all()
    assert (inside.rate_s > 0).all()


@given(boards, st.floats(0.02, 0.95))
@settings(max_examples=60, deadline=None)
def test_days_and_part_left_are_each_other_turned_round(board, left):
    inside = step_inside(*board)
    assert float(inside.mean(inside.time_s(left))) == pytest.approx(left, rel=1e-9)


@given(boards)
@settings(max_examples=40, deadline=None)
def test_faces_changed_over_turn_the_profile_over(board):
    thickness, diffusivity, first, second = board
    one, other = step_inside(*board), step_inside(thickness, diffusivity, second, first)
    time, depth = 0.3 / one.rate_s.min(), np.linspace(0, 1, 7)
    assert one.profile(time, depth) == pytest.approx(other.profile(time, depth)[::-1], abs=1e-9)
    assert float(one.tilt(time)) == pytest.approx(-float(other.tilt(time)), abs=1e-9)
    assert (float(one.tilt(time)) > 0) == (first > second) or abs(float(one.tilt(time))) < 1e-9
