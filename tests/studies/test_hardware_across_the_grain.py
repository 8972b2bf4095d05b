"""Hardware across the grain: slots of the fasteners' plan, safe sides, directions, picture, frozen table."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from references.fasteners import round_hole_diameter_m

from woodlib.air.sorption import sorption_percent
from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.movement.board import Board
from woodlib.picture.scene import Circle, Line, flatten_points, walk
from woodlib.restraint.fasteners import FITTING_ALLOWANCE_M, slot_plan
from woodlib.studies import find_study
from woodlib.studies.crossing_numbers import DAMPEST_RH, DRIEST_RH
from woodlib.studies.hardware_across_the_grain import (
    HEIGHT_PX,
    RINGS_DEG,
    TIMES,
    WIDTH_PX,
    WOODS,
    hardware_across_the_grain,
)
from woodlib.words.say import plain_text

states = st.fixed_dictionaries(
    {
        "species": st.sampled_from(WOODS),
        "fixed": st.sampled_from(["end", "middle"]),
        "rings": st.sampled_from(list(RINGS_DEG)),
        "centres": st.floats(0.064, 0.512),
        "shank": st.floats(0.003, 0.006),
        "driest": st.floats(*DRIEST_RH),
        "dampest": st.floats(*DAMPEST_RH),
    }
)


def slot(answer):
    return float(answer.readings[0].value.value)


def travels(answer):
    """Travel outward and inward, in metres."""
    return [float(part.options[1].value) for part in answer.readings[2].value.parts if not isinstance(part, str)]


def strains(state):
    """Free strain from the day of fitting to the dampest and the driest month, by the board."""
    dry, damp = (sorption_percent(21.0, state[key]) for key in ("driest", "dampest"))
    board = Board(state["species"], 1.0, 0.02, 1.0, RINGS_DEG[state["rings"]])
    return [board.change((dry + damp) / 2, moisture).width_m for moisture in (damp, dry)]


def test_it_is_found_by_its_key():
    assert find_study("hardware-across-the-grain") is hardware_across_the_grain


@pytest.mark.parametrize(
    "state", list(hardware_across_the_grain.corners())[::5], ids=lambda state: "-".join(map(str, state.values()))
)
def test_corners(state):
    answer = hardware_across_the_grain.answer(**state)
    assert np.isfinite(record(answer).leaves).all() and slot(answer) > state["shank"] + FITTING_ALLOWANCE_M
    for mark in walk(answer.picture.marks):
        if hasattr(mark, "points"):
            points = np.array([float(value) for value in flatten_points(mark.points)]).reshape(-1, 2)
            assert (points >= 0).all() and (points <= (WIDTH_PX, HEIGHT_PX)).all(), mark
    assert plain_text(answer.readings[0].value) in answer.alt_text() and "times too large" in answer.alt_text()


@given(states)
@settings(max_examples=60, deadline=None)
def test_the_slot_holds_that_of_the_fasteners_plan_and_a_margin(state):
    swelling, shrinkage = strains(state)
    half = state["centres"] / 2
    places = [0.0, 2 * half] if state["fixed"] == "end" else [0.0, half, 2 * half]
    plan = slot_plan(places, swelling, shrinkage, state["shank"], "edge" if state["fixed"] == "end" else "middle")
    answer = hardware_across_the_grain.answer(**state)
    assert slot(answer) > plan.longest_m
    # The margin is what nine boards in ten stay within: less than the travel itself and two points of doubt in the air.
    distance = plan.slots[-1].distance_m
    assert slot(answer) - plan.longest_m < distance * (swelling - shrinkage + 2 * 2.0 * 0.0045)


@given(states)
@settings(max_examples=40, deadline=None)
def test_the_screw_reaches_neither_end_of_its_slot(state):
    swelling, shrinkage = strains(state)
    answer = hardware_across_the_grain.answer(**state)
    distance = state["centres"] * (0.5 if state["fixed"] == "middle" else 1.0)
    outward, inward = travels(answer)
    assert outward >= distance * swelling and inward >= -distance * shrinkage
    assert slot(answer) == pytest.approx(state["shank"] + FITTING_ALLOWANCE_M + outward + inward)


@given(states)
@settings(max_examples=40, deadline=None)
def test_directions(state):
    here = slot(hardware_across_the_grain.answer(**state))
    for key, end in (("centres", 0.512), ("shank", 0.006), ("driest", DRIEST_RH[0]), ("dampest", DAMPEST_RH[1])):
        assert slot(hardware_across_the_grain.answer(**{**state, key: end})) >= here - 1e-9, key
    middle, far = (slot(hardware_across_the_grain.answer(**{**state, "fixed": fixed})) for fixed in ("middle", "end"))
    bare = state["shank"] + FITTING_ALLOWANCE_M
    assert middle - bare == pytest.approx((far - bare) / 2)


def test_a_round_hole_is_that_of_the_fasteners():
    answer = hardware_across_the_grain.answer()
    outward, inward = travels(answer)
    expected = float(round_hole_diameter_m(0.004, 0.128, outward / 0.128, -inward / 0.128))
    assert float(answer.readings[3].value.value) == pytest.approx(expected)


def test_all_screws_tight_hold_the_whole_movement_back():
    state = {**hardware_across_the_grain.start, "species": "white ash"}
    answer = hardware_across_the_grain.answer(**state)
    dry, damp = (sorption_percent(21.0, rh) for rh in (25.0, 62.0))
    change = Board("white ash", 1.0, 0.02, 1.0).change(damp, dry).width_m
    assert float(answer.readings[4].value.value) == pytest.approx(-change, rel=1e-9)


def test_the_picture_shows_the_travel_to_the_stated_exaggeration():
    answer = hardware_across_the_grain.answer(species="white ash", centres=0.256)
    screws = [mark for mark in answer.picture.marks if isinstance(mark, Circle) and mark.role == "ink"]
    assert len(screws) == 3
    damp, _, dry = (float(mark.x) for mark in screws)
    swelling, shrinkage = strains({**hardware_across_the_grain.start, "species": "white ash"})
    assert (damp - dry) / (TIMES * 900.0) == pytest.approx(0.256 * (swelling - shrinkage), rel=1e-9)
    slots = [mark for mark in answer.picture.marks if isinstance(mark, Line) and mark.role == "gap"]
    for place, line in zip((damp, dry), (slots[0], slots[2]), strict=True):
        ends = sorted(float(x) for x, _ in line.points)
        assert ends[0] < place < ends[1]


def test_it_freezes_and_the_page_says_what_python_says():
    checked = freeze_checked(hardware_across_the_grain)
    assert checked.states >= 300 and checked.worst_px < 0.5
