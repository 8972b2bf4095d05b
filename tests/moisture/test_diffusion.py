"""The solver: order, conservation, stability, batches, symmetry, direction."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from references.diffusivity import constant_form
from references.plate import fraction_with_resistance

from woodlib.moisture.diffusion import GREATEST_STEP_RATIO, march
from woodlib.moisture.drive import _graded
from woodlib.moisture.lookup import Lookup

DAY = 86400.0


def run(
    time_s,
    emc,
    start=8.0,
    boards=1,
    cells=40,
    thickness=0.019,
    surface=1e-7,
    celsius=20.0,
    kinds=(("siau", 0.6, 1.0),),
    profiles=None,
):
    temperature = np.broadcast_to(np.asarray(celsius, float), np.shape(time_s))
    lookup = Lookup(list(kinds), float(temperature.min()), float(temperature.max()))
    return march(
        time_s,
        emc,
        temperature,
        np.broadcast_to(np.asarray(start, float), (boards,)),
        np.broadcast_to(np.asarray(thickness, float), (boards,)),
        lookup,
        np.arange(boards) % len(kinds),
        np.broadcast_to(np.asarray(surface, float), (boards, 2)),
        cells,
        profiles,
    )


def year(steps_a_day=1, mean=8.5, swing=2.5):
    time = np.arange(365 * steps_a_day + 1) * DAY / steps_a_day
    return time, mean + swing * np.sin(2 * np.pi * time / (365 * DAY))


def test_second_order_in_space():
    """Against the series with resistance at both faces; halving the cells must quarter the error."""
    form, biot_surface, thick = constant_form(2.6e-11), 1e-7, 0.019
    end = 8 * DAY
    exact = fraction_with_resistance(2.6e-11 * end / (thick / 2) ** 2, biot_surface * thick / 2 / 2.6e-11)
    grid = np.concatenate([[0.0], _graded(8.0, 8.0 / 6000, 0) * DAY])
    errors = [
        abs(
            (run(grid, np.full(len(grid), 11.0), 6.0, cells=cells, kinds=[(form, 0.6, 1.0)]).mean_percent[-1, 0] - 6)
            / 5
            - exact
        )
        for cells in (8, 16, 32)
    ]
    orders = np.log2(np.divide(errors[:-1], errors[1:]))
    assert np.all((orders > 1.85) & (orders < 2.3)), (errors, orders)


def test_second_order_in_time():
    """Smooth year, moisture-dependent coefficient, changing temperature; against 16 steps a day."""

    def final(steps_a_day):
        time, emc = year(steps_a_day)
        history = run(time, emc, celsius=20 + 4 * np.sin(2 * np.pi * time / (365 * DAY)))
        return np.array(
            [history.mean_percent[-1, 0], history.mean_percent[len(time) // 2, 0], history.profile_percent[-1, 0, 20]]
        )

    finest = final(16)
    errors = [np.abs(final(steps) - finest).max() for steps in (0.4, 0.8, 1.6)]
    orders = np.log2(np.divide(errors[:-1], errors[1:]))
    assert np.all(orders > 1.7), (errors, orders)


@given(
    step_days=st.floats(0.01, 200.0),
    swing=st.floats(0.0, 8.0),
    thick=st.floats(0.002, 0.08),
    surface=st.floats(1e-10, 1e-5),
)
@settings(max_examples=40, deadline=None)
def test_mass_balance_to_round_off(step_days, swing, thick, surface):
    time = np.arange(60) * step_days * DAY
    emc = np.column_stack([10 + swing * np.sin(np.arange(60)), np.full(60, 10.0)])[:, np.newaxis, :]
    history = run(time, emc, start=12.0, thickness=thick, surface=surface)
    inside = (history.mean_percent[:, 0] - 12.0) * thick
    # Fluxes are small differences times a conductance, of the face or between cells: round-off of that, 60 steps.
    conductance = step_days * DAY * (surface + 1e-10 * 40 / thick)
    round_off = 60 * 1e-15 * 12.0 * (10.0 * thick + conductance)
    assert np.abs(inside - history.gained_percent_m[:, 0].sum(axis=1)).max() < round_off


@given(
    step_days=st.floats(0.001, 2000.0), low=st.floats(0.0, 10.0), high=st.floats(12.0, 29.0), seed=st.integers(0, 99)
)
@settings(max_examples=40, deadline=None)
def test_stable_at_any_step(step_days, low, high, seed):
    """Air that jumps at every step, far beyond any sensible step: moisture must stay bounded and finite."""
    emc = np.where(np.random.default_rng(seed).random(200) < 0.5, low, high)
    history = run(np.arange(200) * step_days * DAY, emc, start=low)
    assert np.isfinite(history.mean_percent).all()
    reach = 1.3 * (high - low)
    assert history.mean_percent.min() > low - reach and history.mean_percent.max() < high + reach


@given(
    start=st.floats(1.0, 28.0), emc=st.floats(1.0, 28.0), thick=st.floats(0.003, 0.06), surface=st.floats(1e-9, 1e-6)
)
@settings(max_examples=40, deadline=None)
def test_mean_runs_from_start_to_air_and_never_past(start, emc, thick, surface):
    """With 500 steps to the board's own time, as the answers take them; second-order steps may overshoot a little."""
    days = 6 * ((thick / 2) ** 2 / 1e-11 + thick / 2 / surface) / DAY
    grid = np.concatenate([[0.0], _graded(days, days / 500, 0) * DAY])
    mean = run(grid, np.full(len(grid), emc), start, thickness=thick, surface=surface).mean_percent[:, 0]
    slack = 2e-3 * abs(emc - start) + 1e-9
    assert np.all(np.diff(mean) * np.sign(emc - start) >= -slack)
    assert min(start, emc) - slack <= mean.min() and mean.max() <= max(start, emc) + slack


def test_at_rest_nothing_moves():
    time, _ = year()
    history = run(time, np.full(len(time), 8.0), 8.0)
    assert np.abs(history.mean_percent - 8.0).max() < 1e-12
    assert np.abs(history.tilt_percent).max() < 1e-12
    assert np.abs(history.flux).max() < 1e-20


def test_turning_the_board_over_turns_the_tilt():
    time, emc = year()
    faces = np.stack([emc, np.full_like(emc, 8.0)], axis=-1)[:, np.newaxis, :]
    one, other = run(time, faces), run(time, faces[..., ::-1])
    assert np.allclose(one.mean_percent, other.mean_percent, atol=1e-12)
    assert np.allclose(one.tilt_percent, -other.tilt_percent, atol=1e-12)
    assert np.allclose(one.profile_percent, other.profile_percent[..., ::-1], atol=1e-12)


@pytest.mark.parametrize("boards", [7, 128, 129, 1500])
def test_a_batch_is_the_same_as_its_boards(boards):
    """Few boards take one long solve, many a sweep over cells, very many go in parts: all the same numbers."""
    time, emc = year(1)
    time, emc = time[:40], emc[:40]
    kinds = [("siau", 0.4, 1.0), ("siau", 0.7, 3.0), ("steep", 0.6, 1.0)]
    thick = np.linspace(0.006, 0.05, boards)
    surface = np.stack([np.geomspace(1e-9, 1e-6, boards), np.full(boards, 1e-7)], axis=1)
    many = run(time, emc, 11.0, boards, thickness=thick, surface=surface, kinds=kinds, profiles=[3, 39])
    for b in (0, boards // 2, boards - 1):
        alone = run(time, emc, 11.0, 1, thickness=thick[b], surface=surface[b], kinds=[kinds[b % 3]], profiles=[3, 39])
        assert np.allclose(many.mean_percent[:, b], alone.mean_percent[:, 0], atol=1e-11)
        assert np.allclose(many.profile_percent[:, b], alone.profile_percent[:, 0], atol=1e-11)
        assert np.allclose(many.surface_percent[:, b], alone.surface_percent[:, 0], atol=1e-9)


def test_each_board_may_have_its_own_air():
    time, emc = year(1)
    two = np.column_stack([emc, emc[::-1]])
    both = run(time, two, boards=2)
    assert np.allclose(both.mean_percent[:, 1], run(time, emc[::-1]).mean_percent[:, 0], atol=1e-12)


def test_tilt_of_a_straight_profile_is_its_difference():
    """A steady flow between two airs gives a straight profile when D is constant: tilt equals the faces' difference."""
    time = np.arange(400) * 5 * DAY
    faces = np.broadcast_to(np.array([6.0, 12.0]), (400, 1, 2))
    history = run(time, faces, 9.0, surface=np.inf, kinds=[(constant_form(5e-11), 0.6, 1.0)])
    assert history.tilt_percent[-1, 0] == pytest.approx(6.0, abs=1e-6)
    assert history.surface_percent[-1, 0] == pytest.approx([6.0, 12.0], abs=1e-9)


def test_lookup_meets_the_form():
    """Straight lines 0.25 % and 0.5 K apart: within 3e-4 of the form everywhere."""
    from woodlib.moisture.diffusivity import siau_m2_s

    lookup = Lookup([("siau", 0.55, 1.0)], 5.0, 35.0)
    for celsius in (5.0, 11.3, 20.2, 34.9):
        level, slope = lookup.at(celsius)
        moisture = np.linspace(0.0, 29.9, 500)
        place = 1 + 4 * moisture
        got = level[place.astype(int)] + slope[place.astype(int)] * place
        assert np.allclose(got, siau_m2_s(moisture, celsius, 0.55), rtol=3e-4)


@given(length=st.floats(0.01, 3000.0), step=st.floats(0.001, 20.0))
@settings(max_examples=80, deadline=None)
def test_graded_steps_end_right_and_grow_gently(length, step):
    if length / step > 2e5:
        step = length / 2e5
    days = _graded(length, step, 0)
    steps = np.diff(np.concatenate([[0.0], days]))
    assert days[-1] == pytest.approx(length, rel=1e-12)
    assert steps.max() <= step * 1.3 + 1e-12
    assert np.all(steps[1:] <= GREATEST_STEP_RATIO * steps[:-1])
