"""A swing between the branches: the loop of the library, smaller than the curve's swing, whatever the past."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air.sorption import sorption_percent
from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.moisture.hysteresis import FRESH, loop, resting_course
from woodlib.studies import find_study
from woodlib.words.say import plain_text

STUDY = find_study("there-and-back")
airs = st.tuples(st.floats(20, 50), st.floats(55, 85))


@given(airs, st.sampled_from(list(FRESH)))
def test_the_loop_is_the_course_of_the_plays(air, past):
    """The closed form against twelve plays run along the same air: a few hundredths, for want of more plays."""
    dry, damp = (float(sorption_percent(20.0, rh)) for rh in air)
    there = np.linspace(dry, damp, 9)
    begins_damp = past == "wetted"
    run = np.concatenate([there[::-1], there] if begins_damp else [there, there[::-1]])
    course = resting_course(np.concatenate([run, run]), past)[-18:]
    first, second = loop(dry, damp, there[::-1] if begins_damp else there, past)[:: -1 if begins_damp else 1]
    if past == "worn in":  # twelve plays that begin in the middle stand elsewhere than a year's: compare the shape
        first, second = first * course[0] / first[0], second * course[0] / first[0]
    assert course[:9] == pytest.approx(first, rel=0.004)
    assert course[9:] == pytest.approx(second[::-1], rel=0.004)


@given(airs)
def test_every_past_gives_a_loop_of_one_proportion_between_the_branches(air):
    dry, damp = (float(sorption_percent(20.0, rh)) for rh in air)
    course, half = np.linspace(dry, damp, 11), 0.85**0.5
    loops = {past: loop(dry, damp, course, past) for past in FRESH}
    for wetting, drying in loops.values():
        assert np.all(wetting <= drying + 1e-12)
        assert np.all(wetting >= course * half - 1e-9) and np.all(drying <= course / half + 1e-9)
    proportions = [wetting[-1] / wetting[0] for wetting, _ in loops.values()]
    assert proportions == pytest.approx([proportions[0]] * 3)
    assert proportions[0] < damp / dry


def test_the_start_says_what_the_library_says():
    """20 degC, 35 to 65 % RH: 7.0 to 12.0 %, Wood Handbook Table 4-2; 0.80 of it, see tests/outside/test_hysteresis.py."""
    lines = STUDY.answer().lines()
    assert "5.0 % MC of the curve" in lines[0] and "4.0 % MC, not" in lines[0]
    assert "moves 19/64 in (7.5 mm)" in lines[4]  # 508 mm x 0.00365 x 4.05


def test_every_corner_is_finite_and_told_with_its_numbers():
    for corner in STUDY.corners():
        answer = STUDY.answer(**corner)
        assert all(abs(leaf) < 1e4 for leaf in record(answer).leaves.ravel())
        table, swing = (float(answer.readings[place].value.value) for place in (0, 1))
        assert 0.6 * table < swing < 0.95 * table
        assert plain_text(answer.readings[1].value) in plain_text(answer.headline)


def test_it_can_be_frozen():
    checked = freeze_checked(STUDY)
    assert checked.worst_px < 0.5 and checked.texts > 500
