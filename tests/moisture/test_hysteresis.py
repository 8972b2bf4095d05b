"""Swings between the branches of the isotherm."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.moisture.equilibrium import emc_percent, hysteresis_band
from woodlib.moisture.hysteresis import SHARE, resting, resting_course, swing_factor

levels = st.floats(3.0, 24.0)
shares = st.sampled_from(SHARE)


@given(levels, levels, shares)
def test_the_swing_in_closed_form_is_the_swing_of_the_course(one, other, share):
    dry, damp = sorted((one, other))
    course = resting_course([dry, damp] * 3, share=share)
    ends = resting(dry, damp, share)
    # The course has twelve plays and the closed form all of them; where the widest stand depends on the history.
    assert course[-1] / course[-2] == pytest.approx(ends[1] / ends[0], rel=4e-3)
    assert dry <= ends[0] + 1e-12 and ends[1] <= damp + 1e-12


@given(st.lists(levels, min_size=2, max_size=12), levels, shares)
def test_a_second_year_is_like_the_third(course, start, share):
    years = resting_course([start, *course * 3], share=share)
    count = len(course)
    assert years[-count:] == pytest.approx(years[-2 * count : -count])


@given(levels, levels, st.floats(0.05, 0.95), st.floats(0.05, 0.95))
def test_lesser_turns_are_wiped_out(one, other, first, second):
    dry, damp = sorted((one, other))
    inner = [dry + share * (damp - dry) for share in (first, second)]
    plain, turned = resting_course([dry, damp, dry]), resting_course([dry, damp, *inner, damp, *inner[::-1], dry])
    assert turned[-1] == pytest.approx(plain[-1])


@given(levels, st.floats(1.05, 2.0), levels)
def test_loops_between_the_same_turns_are_alike_in_proportion(low, ratio, history):
    loops = [resting_course([start, low, low * ratio, low, low * ratio])[-2:] for start in (low, low * ratio, history)]
    shapes = [loop[1] / loop[0] for loop in loops]
    assert shapes == pytest.approx([shapes[0]] * 3)


@given(st.floats(5.0, 40.0), st.floats(10.0, 90.0))
def test_long_runs_end_on_the_branches(temperature, humidity):
    emc = float(emc_percent(temperature, humidity))
    band = hysteresis_band(temperature, humidity)
    wetting, drying = resting_course([emc / 4, emc])[-1], resting_course([emc * 4, emc])[-1]
    assert [wetting, drying] == pytest.approx([emc * 0.85**0.5, emc / 0.85**0.5], rel=3e-3)
    assert [wetting, drying] == pytest.approx(
        [float(band.adsorption_percent), float(band.desorption_percent)], rel=7e-3
    )


@given(st.floats(10.0, 85.0), st.floats(10.0, 85.0))
def test_a_loop_fits_between_the_branches(one, other):
    """Whatever the domains: at most the swing of one branch, at least from the drying to the wetting one."""
    dry, damp = sorted((float(emc_percent(20, one)), float(emc_percent(20, other))))
    for share in SHARE:
        low, high = resting(dry, damp, share)
        least, most = (damp * 0.85**0.5 - dry / 0.85**0.5), damp - dry
        assert least - 1e-9 <= high - low <= most + 1e-9


def test_history_of_a_fresh_board():
    damp, worn, dry = (resting_course([10.0], history)[0] for history in ("dried", "worn in", "wetted"))
    assert dry < worn == pytest.approx(10.0) and damp > 10.0
    after = [resting_course([10.0, 24.0, 5.0], history)[-1] for history in ("dried", "worn in", "wetted")]
    assert after == pytest.approx([after[0]] * 3, rel=3e-3)  # the first full swing wears it in


def test_factor_of_no_swing_and_of_arrays():
    low, likely, high = swing_factor([8.0, 6.0], [8.0, 11.0])
    assert (low[0], likely[0], high[0]) == SHARE
    assert np.all((low < likely) & (likely < high) & (high < 1.0))


def test_many_boards_at_once():
    course = np.array([[8.0, 9.0], [12.0, 9.5], [7.0, 9.1]])
    both = resting_course(course)
    for board in range(2):
        assert both[:, board] == pytest.approx(resting_course(course[:, board]))
