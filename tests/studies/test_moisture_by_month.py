"""A year of a house and of its wood: the same as the year of the library, in words and in numbers."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air.year import Year
from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.picture.scene import Circle
from woodlib.studies import find_study
from woodlib.studies.moisture_by_month import _WOOD, ROOM_C, SEASONS
from woodlib.words.say import plain_text

STUDY = find_study("moisture-by-month")
STATES = st.fixed_dictionaries({season: st.floats(15, 85) for season in SEASONS})


def year_of(state):
    """The same year from the library."""
    return Year.from_seasons(**{season: (ROOM_C[season], state[season]) for season in SEASONS})


@given(STATES)
def test_months_and_ends_are_those_of_the_library(state):
    answer, year = STUDY.answer(**state), year_of(state)
    dots = [mark for mark in answer.picture.marks if isinstance(mark, Circle)][12:]
    drawn = [_WOOD.y_low + (_WOOD.top + _WOOD.height - dot.y) * _WOOD.y_high / _WOOD.height for dot in dots]
    assert drawn == pytest.approx(year.monthly().emc_percent().tolist(), abs=1e-9)
    driest, dampest = (float(answer.readings[k].value.value) for k in (0, 1))
    # Between two seasons of like moisture the temperature may carry a month past both by a hair.
    assert driest == pytest.approx(year.driest().emc_percent, abs=0.03)
    assert dampest == pytest.approx(year.dampest().emc_percent, abs=0.03)


@given(STATES)
def test_the_seasons_named_are_the_driest_and_the_dampest(state):
    rest = {season: year_of({**state}).months()[k].emc_percent for season, k in zip(SEASONS, (0, 3, 6, 9), strict=True)}
    said = plain_text(STUDY.answer(**state).headline)
    dry, damp = said.split(" in ")[1].split(" to ")[0], said.split(" in ")[2].rstrip(".")
    assert rest[dry] == pytest.approx(min(rest.values())) and rest[damp] == pytest.approx(max(rest.values()))


def test_the_invented_house_of_the_lesson():
    # Wood Handbook FPL-GTR-190 (2010) Table 4-2: 70 degF, 25 %: 5.4 %; between 60 and 65 % at 80 degF: 10.8 and 11.7 %.
    lines = STUDY.answer().lines()
    assert lines[0] == "The wood swings from 5.4 % MC in winter to 11.2 % MC in summer."
    assert lines[4].startswith("Build at about: 8.3 % MC")


@given(STATES, st.sampled_from(SEASONS), st.floats(0.5, 5))
def test_a_damper_season_never_makes_any_month_drier(state, season, more):
    moister = {**state, season: min(85.0, state[season] + more)}
    before, after = (year_of(each).monthly().emc_percent() for each in (state, moister))
    assert np.all(after >= before - 1e-9)
    ends = [[float(reading.value.value) for reading in STUDY.answer(**each).readings[:2]] for each in (state, moister)]
    assert ends[1][0] >= ends[0][0] - 1e-9 and ends[1][1] >= ends[0][1] - 1e-9


def test_every_corner_is_finite_and_told_with_its_numbers():
    for corner in STUDY.corners():
        answer = STUDY.answer(**corner)
        assert all(abs(leaf) < 1e4 for leaf in record(answer).leaves.ravel())
        assert plain_text(answer.readings[0].value) in answer.alt_text() and answer.picture.height <= 460
        low, high, swing, middle = (float(reading.value.value) for reading in answer.readings)
        assert 0 < low <= middle <= high < 20 and swing == pytest.approx(high - low)


def test_equal_seasons_have_no_swing_worth_a_word():
    assert STUDY.answer(winter=45.0, spring=45.0, summer=45.0, autumn=45.0).readings[2].words.chosen == "a small swing"


def test_it_can_be_frozen():
    checked = freeze_checked(STUDY)
    assert checked.worst_px < 0.5 and checked.texts > 1000
