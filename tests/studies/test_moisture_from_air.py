"""Heated air and the wood in it: right at known places, in the right direction everywhere, told in words, freezable."""

from __future__ import annotations

import re

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.moisture.equilibrium import hysteresis_band
from woodlib.picture.scene import Words
from woodlib.picture.svg import svg
from woodlib.studies import find_study
from woodlib.studies.moisture_from_air import BOUGHT_PERCENT
from woodlib.words.say import plain_text

psychrolib.SetUnitSystem(psychrolib.SI)
STUDY = find_study("moisture-from-air")
SPANS = {entry.key: st.floats(entry.low, entry.high) for entry in STUDY.inputs[:3]}
STATES = st.fixed_dictionaries({**SPANS, "gain": st.sampled_from(["none", "some", "much"])})


def room_and_wood(**values):
    """Relative humidity of the room and moisture of the wood, as numbers, %."""
    readings = STUDY.answer(**values).readings
    return float(readings[0].value.value), float(readings[1].value.value)


def test_cold_air_at_80_percent_is_20_percent_in_the_room():
    # PsychroLib: vapour pressure at 0 degC and 80 % over saturation at 21 degC, 19.65 %. Wood Handbook FPL-GTR-190
    # (2010) Table 4-2, 70 degF: 4.5 % moisture at 20 %.
    expected = 80 * psychrolib.GetSatVapPres(0.0) / psychrolib.GetSatVapPres(21.0)
    room, wood = room_and_wood()
    assert room == pytest.approx(expected, abs=0.05) and wood == pytest.approx(4.5, abs=0.1)
    assert plain_text(STUDY.answer().headline) == (
        "80 % RH outdoors becomes 20 % RH in the room, and the wood comes to rest at 4.4 % MC."
    )


def test_every_corner_is_finite_and_the_room_is_never_past_saturation():
    for corner in STUDY.corners():
        answer = STUDY.answer(**corner)
        assert all(abs(leaf) < 1e4 for leaf in record(answer).leaves.ravel())
        room, wood = room_and_wood(**corner)
        assert 0 < room < 95 and 0 < wood < 28, corner
        for mark in answer.picture.marks:
            if isinstance(mark, Words):
                assert 0 <= float(mark.x) <= 720 and 12 <= float(mark.y) <= 438 and mark.size >= 14


@given(STATES)
def test_damper_outdoors_or_more_people_make_the_wood_moister_and_a_warmer_room_drier(state):
    room, wood = room_and_wood(**state)
    for key, sign in (("outdoor_c", 1), ("outdoor_rh", 1), ("room_c", -1)):
        entry = next(each for each in STUDY.inputs if each.key == key)
        moved = state[key] + 0.5
        if moved <= entry.high:
            other_room, other_wood = room_and_wood(**{**state, key: moved})
            assert (other_room - room) * sign > 0 and (other_wood - wood) * sign > 0
    assert room_and_wood(**{**state, "gain": "none"})[1] < room_and_wood(**{**state, "gain": "much"})[1]


@given(STATES)
def test_the_words_agree_with_the_numbers(state):
    answer = STUDY.answer(**state)
    room, wood = room_and_wood(**state)
    board = plain_text(answer.readings[2].value)
    assert board.startswith("takes up" if wood >= BOUGHT_PERCENT else "gives off")
    assert f"{abs(wood - BOUGHT_PERCENT):.1f}" in board or abs(wood * 10 % 1 - 0.5) < 1e-6
    band = hysteresis_band(state["room_c"], room)
    low, high = (float(part.value) for part in answer.readings[1].words.parts if not isinstance(part, str))
    assert (low, high) == (pytest.approx(band.adsorption_percent), pytest.approx(band.desorption_percent))
    assert room < state["outdoor_rh"] or state["gain"] != "none"


def test_the_water_stands_at_the_same_level_in_both_jars_of_an_empty_house():
    for state in ({}, {"outdoor_c": -20.0, "outdoor_rh": 95.0}, {"outdoor_c": 10.0, "room_c": 25.0}):
        areas = [mark for mark in STUDY.answer(**state).picture.marks if getattr(mark, "role", "") == "damp"]
        outdoors, indoors = areas[0].points[0][1], areas[1].points[0][1]
        assert outdoors == pytest.approx(indoors)


def test_the_picture_is_drawn_and_told_in_words_with_its_numbers():
    answer = STUDY.answer(outdoor_c="14 degF", gain="some")
    drawn, told = svg(answer.picture, answer.alt_text()), answer.alt_text()
    for number in ("80 % RH", "20 % RH", "4.5 % MC", "14 °F (-10 °C)"):
        assert number in told and re.search(rf">{re.escape(number)}<", drawn), number
    assert answer.picture.width == 720 and answer.picture.height <= 460


def test_it_can_be_frozen():
    checked = freeze_checked(STUDY)
    assert checked.worst_px < 0.5 and checked.texts > 1000
