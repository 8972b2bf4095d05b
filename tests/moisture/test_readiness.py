"""Flattening loss, rip first or not, when to flatten."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodlib.moisture.readiness import cup_left_m, day_to_flatten, flattening, out_of_flat_m, strips_for_jointer

warp = st.floats(-0.01, 0.01)


@given(cup=warp, bow=warp, twist=warp)
@settings(max_examples=150, deadline=None)
def test_out_of_flat_against_a_grid_of_points(cup, bow, twist):
    """Highest less lowest of the face itself on 201 x 201 points."""
    s = np.linspace(-1, 1, 201)
    x, y = np.meshgrid(s, s)
    height = cup * y**2 + bow * x**2 + twist / 4 * x * y
    assert float(out_of_flat_m(cup, bow, twist)) == pytest.approx(
        np.ptp(height), abs=2e-6
    )  # the grid misses the turning point by half a step


@given(cup=warp, bow=warp, twist=warp, a=st.floats(-0.01, 0.01), b=st.floats(-0.01, 0.01))
@settings(max_examples=80, deadline=None)
def test_no_tilt_lays_it_flatter(cup, bow, twist, a, b):
    s = np.linspace(-1, 1, 41)
    x, y = np.meshgrid(s, s)
    height = cup * y**2 + bow * x**2 + twist / 4 * x * y
    assert np.ptp(height + a * x + b * y) >= np.ptp(height) - 1e-15


def test_flat_board_loses_the_cleanup_only():
    plan = flattening("25.4 mm", "200 mm", "1 m", cleanup_per_face_m=0.0005, jointer_width_m=0.3).plans[0]
    assert plan.thickness_m == pytest.approx(0.0254 - 0.001)


@given(cup=st.floats(0.0, 0.008), strips=st.integers(1, 4))
@settings(max_examples=40, deadline=None)
def test_cup_falls_with_the_square_of_the_strip(cup, strips):
    plan = flattening(0.025, 0.3, 1.0, cup_m=cup, kerf_m=0.0, cleanup_per_face_m=0.0).plans[strips - 1]
    assert 0.025 - plan.thickness_m == pytest.approx(cup / strips**2, abs=1e-12)


@given(cup=warp, bow=warp, twist=warp)
@settings(max_examples=60, deadline=None)
def test_ripping_never_makes_a_strip_thinner_when_warp_is_of_one_kind(cup, bow, twist):
    for one in ({"cup_m": cup}, {"bow_m": bow}, {"twist_m": twist}):
        left = [plan.thickness_m for plan in flattening(0.025, 0.25, 1.2, **one).plans]
        assert np.all(np.diff(left) >= -1e-12)


def test_choice_needs_jointer_and_thickness():
    wide = flattening(0.0254, 0.30, 1.2, cup_m=0.002, jointer_width_m=0.16, wanted_thickness_m=0.019)
    assert wide.rip_first and wide.choice.strips == 2 and "wider than the jointer" in wide.reason
    cupped = flattening(0.0254, 0.20, 1.2, cup_m=0.006, jointer_width_m=0.30, wanted_thickness_m=0.021)
    assert cupped.choice.strips == 2 and "too thin" in cupped.reason
    whole = flattening(0.0254, 0.15, 1.2, cup_m=0.001, jointer_width_m=0.16, wanted_thickness_m=0.019)
    assert not whole.rip_first and whole.choice.strips == 1
    bowed = flattening(0.0254, 0.15, 2.4, bow_m=0.012, jointer_width_m=0.16, wanted_thickness_m=0.019)
    assert bowed.choice is None and "crosscut" in bowed.reason
    shorter = flattening(0.0254, 0.15, 2.4, bow_m=0.012, jointer_width_m=0.16, wanted_thickness_m=0.019, pieces=3)
    assert shorter.choice.strips == 1


@given(width=st.floats(0.05, 1.0), jointer=st.floats(0.05, 0.5), kerf=st.floats(0.0, 0.005))
@settings(max_examples=80, deadline=None)
def test_strips_for_a_jointer_fit_and_one_fewer_does_not(width, jointer, kerf):
    n = strips_for_jointer(width, jointer, kerf)
    assert (width - (n - 1) * kerf) / n <= jointer * (1 + 1e-9)
    if n > 1:
        assert (width - (n - 2) * kerf) / (n - 1) > jointer * (1 - 1e-9)


def test_flattening_a_board_cupped_for_now_cuts_the_opposite_cup():
    cup = np.array([0.0, 0.003, 0.001, 0.0])
    assert cup_left_m(cup).tolist() == [0.0, 0.003, 0.001, 0.0]


def test_day_to_flatten_is_after_the_passing_cup():
    days = np.linspace(0, 60, 121)
    cup = np.stack([0.002 * np.exp(-days / scale) for scale in (15, 8, 3)], axis=1)
    ready = day_to_flatten(days, cup, 0.0004)
    assert ready.low == pytest.approx(3 * np.log(0.002 / 0.0004), abs=0.1)
    assert ready.low < ready.mid < ready.high
    assert day_to_flatten(days, np.zeros((121, 3))) == (0.0, 0.0, 0.0)
