"""Days of a step of air: how far they are from the full solver, and their kinks."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodlib.air.sorption import sorption_percent
from woodlib.moisture.drive import steady_air
from woodlib.moisture.finishes import BARE, CLOSED, film_coefficient_m_s, find_finish
from woodlib.moisture.following import follow
from woodlib.moisture.resting import resting
from woodlib.moisture.step_days import (
    DAY_S,
    STEPS_PERCENT,
    USUAL_PERCENT,
    USUAL_RH_PERCENT,
    days_of_steps,
    decided_days,
    slow_mid_fast,
    usual_film_m_s,
)
from woodlib.moisture.stock import Stock
from woodlib.moisture.two_faces import step_inside

ROOM_C = 21.0
FINISHES = {"bare": BARE, "varnish": find_finish("urethane varnish", 3), "bench": CLOSED}
steps = [(25, 75), (75, 25), (40, 65), (65, 40), (30, 50)]


def test_usual_moisture_and_usual_air_belong_together():
    assert float(sorption_percent(ROOM_C, USUAL_RH_PERCENT)) == pytest.approx(USUAL_PERCENT, abs=0.2)


@pytest.mark.parametrize("gravity", [0.35, 0.5, 0.68])
@pytest.mark.parametrize("thickness", [0.016, 0.019, 0.044])
@pytest.mark.parametrize("top, bottom", [("bare", "bare"), ("bare", "bench"), ("varnish", "varnish")])
def test_mean_and_days_against_the_full_solver(gravity, thickness, top, bottom):
    stock = Stock(thickness, gravity, FINISHES[top], FINISHES[bottom])
    runs = slow_mid_fast(thickness, gravity, (FINISHES[top], FINISHES[bottom]), ROOM_C)
    for before, after in steps:
        start, home = (float(sorption_percent(ROOM_C, rh)) for rh in (before, after))
        full = resting(stock, ROOM_C, after, start)
        mine = sorted(home + (start - home) * float(run.mean(7 * DAY_S)) for run in runs)
        assert mine == pytest.approx(sorted(full.after_week_percent), abs=0.15 * abs(home - start))
        days = [float(decided_days(days_of_steps(run), home - start)) for run in runs[::-1]]
        assert days == pytest.approx(list(full.days), rel=0.4)


def test_the_tilt_that_cups_a_board_on_a_bench_against_the_full_solver():
    runs = slow_mid_fast(0.019, 0.68, (BARE, CLOSED), ROOM_C)
    course = follow(Stock(0.019, 0.68, BARE, CLOSED), steady_air(ROOM_C, 40, 60), 12.0)
    home = float(course.emc_percent[-1])
    for day in (3.0, 7.0, 28.0):
        n = int(np.argmin(np.abs(course.days - day)))
        mine = (12.0 - home) * float(runs[1].tilt(course.days[n] * DAY_S))
        assert mine == pytest.approx(course.tilt_percent[n, 1], rel=0.1)


@pytest.mark.parametrize("name", ["linseed oil", "urethane varnish", "shellac"])
@pytest.mark.parametrize("gravity", [0.35, 0.68])
def test_the_film_is_the_film_of_the_tables_in_usual_air(name, gravity):
    finish = find_finish(name, 3)
    exact = film_coefficient_m_s(finish, gravity, ROOM_C, USUAL_PERCENT - 1.5, USUAL_PERCENT + 1.5)
    assert usual_film_m_s(finish, gravity, ROOM_C) == pytest.approx(exact, rel=0.03)


@given(st.floats(0.005, 0.05), st.floats(1e-11, 2e-10), st.floats(1e-9, 3e-7), st.floats(-9.5, 9.5))
@settings(max_examples=100, deadline=None)
def test_days_joined_by_lines_are_near_the_days_themselves(thickness, diffusivity, surface, change):
    inside = step_inside(thickness, diffusivity, surface, surface)
    exact = float(inside.time_s(1 / abs(change))) / DAY_S if abs(change) > 1 else 0.0
    longest = days_of_steps(inside)[-1]
    assert float(decided_days(days_of_steps(inside), change)) == pytest.approx(
        exact, rel=0.03, abs=0.0025 * longest + 0.12
    )


@given(st.floats(-9.0, 9.0), st.floats(0.0, 0.5))
@settings(max_examples=60, deadline=None)
def test_a_larger_step_takes_longer_and_its_sign_does_not_matter(change, more):
    days = days_of_steps(step_inside(0.019, 2.6e-11, 1.7e-7, 1.7e-7))
    further = change + more if change >= 0 else change - more
    assert float(decided_days(days, further)) >= float(decided_days(days, change)) >= 0
    assert float(decided_days(days, -change)) == float(decided_days(days, change))
    assert (float(decided_days(days, change)) > 0) == (abs(change) > 1)


def test_a_wider_margin_is_a_smaller_step():
    days = days_of_steps(step_inside(0.019, 2.6e-11, 1.7e-7, 1.7e-7))
    assert float(decided_days(days, 6.0, 2.0)) == pytest.approx(float(decided_days(days, 3.0)))


def test_days_of_steps_rise():
    for pair in itertools.product(FINISHES.values(), repeat=2):
        if pair == (CLOSED, CLOSED):
            continue  # nothing ever happens
        for run in slow_mid_fast(0.019, 0.68, pair, ROOM_C):
            assert (np.diff(days_of_steps(run)) > 0).all() and len(days_of_steps(run)) == len(STEPS_PERCENT)
