"""How far a panel moves: the study at every corner, its directions, its picture, its range, and its frozen table."""

import math
from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodlib.air.sorption import sorption_percent
from woodlib.handout.replay import freeze_checked
from woodlib.movement.board import Board
from woodlib.movement.through_year import movement_through_year
from woodlib.picture.scene import Area, Circle, Line, Words, flatten_points, walk
from woodlib.picture.svg import svg
from woodlib.studies import find_study
from woodlib.studies.panel_movement import ROOM_TEMPERATURE_C, SAW_KERF_M, WOODS, panel_movement
from woodlib.studies.panel_year import (
    _PANEL_PX_PER_M,
    BOARD_THICKNESS_M,
    BOARD_WIDTH_M,
    HEIGHT_PX,
    PITH_DISTANCE_M,
    TIMES,
    WIDTH_PX,
)
from woodlib.words.say import plain_text

INCH = 0.0254
LABELS = ["Movement", "Each foot (300 mm)", "Moisture", "In the thickness", "Along the grain"]
states = st.fixed_dictionaries(
    {
        "species": st.sampled_from(WOODS),
        "width": st.floats(6 * INCH, 36 * INCH),
        "driest": st.floats(15, 50),
        "dampest": st.floats(50, 80),
        "ring_angle": st.floats(0, 90),
    }
)


def moved(answer):
    """(mid, low, high) of an answer in metres."""
    numbers = [part for part in answer.readings[0].value.parts if not isinstance(part, str)]
    return tuple(float(number.value) for number in numbers)


def moistures(**state):
    return [float(sorption_percent(ROOM_TEMPERATURE_C, state[key])) for key in ("driest", "dampest")]


def ends(answer):
    """Right ends in px of the dashed dry and damp lines of the panel."""
    lines = [mark for mark in answer.picture.marks if isinstance(mark, Line) and mark.dash and len(mark.points) == 2]
    return {line.role: float(line.points[0][0]) for line in lines}


def test_it_is_found_by_its_key():
    assert find_study("panel-movement") is panel_movement


@pytest.mark.parametrize("state", list(panel_movement.corners()), ids=lambda state: "-".join(map(str, state.values())))
def test_every_corner(state):
    answer = panel_movement.answer(**state)
    mid, low, high = moved(answer)
    assert 0 <= low <= mid < high < 0.5 * state["width"]
    assert [reading.label for reading in answer.readings] == [*LABELS, f"Each of {state['strips']} boards"]
    for mark in walk(answer.picture.marks):
        if isinstance(mark, Circle):
            continue  # rings reach beyond the board on purpose and are seen through it
        points = [mark.x, mark.y] if isinstance(mark, Words) else flatten_points(mark.points)
        xy = np.array([float(value) for value in points]).reshape(-1, 2)
        assert np.isfinite(xy).all() and (xy >= 0).all() and (xy <= (WIDTH_PX, HEIGHT_PX)).all(), mark
    ElementTree.fromstring(svg(answer.picture, answer.alt_text()))


@given(states)
@settings(max_examples=60)
def test_the_movement_is_that_of_a_board(state):
    board = Board(state["species"], state["width"], BOARD_THICKNESS_M, 1.0, state["ring_angle"])
    change = board.change(*moistures(**state))
    assert moved(panel_movement.answer(**state))[0] == pytest.approx(change.width_m, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("species", WOODS)
@pytest.mark.parametrize("ring_angle, driest, dampest", [(0, 30, 60), (45, 20, 70), (90, 35, 65)])
def test_the_range_is_that_of_a_year(species, ring_angle, driest, dampest):
    dry, damp = moistures(driest=driest, dampest=dampest)
    board = Board(species, 0.508, BOARD_THICKNESS_M, 1.0, ring_angle)
    swing = movement_through_year(board, 8.0, [dry] * 6 + [damp] * 6).swing
    mid, low, high = moved(
        panel_movement.answer(species=species, ring_angle=ring_angle, driest=driest, dampest=dampest)
    )
    half = 0.5 * (swing.high_m - swing.low_m)
    assert (low, high) == pytest.approx((swing.low_m, swing.high_m), abs=0.08 * half)
    assert mid == pytest.approx(swing.mid_m, rel=0.01)  # the year counts from the stock, here from the driest month


@given(states, st.floats(0.02, 1))
@settings(max_examples=60)
def test_directions(state, share):
    mid = moved(panel_movement.answer(**state))[0]
    towards = {"width": (36 * INCH, 1), "driest": (15, 1), "dampest": (80, 1), "ring_angle": (90, -1)}
    for key, (end, sign) in towards.items():
        other = moved(panel_movement.answer(**{**state, key: state[key] + share * (end - state[key])}))[0]
        assert sign * (other - mid) >= -1e-12, key


@given(states)
@settings(max_examples=30)
def test_twice_the_width_moves_twice_as_far_and_a_foot_stays_a_foot(state):
    state["width"] = min(state["width"], 18 * INCH)
    one, two = (panel_movement.answer(**{**state, "width": times * state["width"]}) for times in (1, 2))
    assert moved(two)[0] == pytest.approx(2 * moved(one)[0])
    assert float(two.readings[1].value.value) == pytest.approx(float(one.readings[1].value.value))
    assert float(one.readings[1].value.value) == pytest.approx(moved(one)[0] * 0.3048 / state["width"])


def test_air_that_stays_the_same_moves_nothing():
    answer = panel_movement.answer(driest=50, dampest=50)
    mid, low, high = moved(answer)
    assert (mid, low) == (0.0, 0.0) and high > 0
    assert "no more than a sharp pencil line" in plain_text(answer.readings[0].words)


@given(states)
@settings(max_examples=40)
def test_the_panel_is_drawn_to_scale_with_the_stated_exaggeration(state):
    answer = panel_movement.answer(**state)
    ends_px = ends(answer)
    drawn_m = (ends_px["damp"] - ends_px["dry"]) / _PANEL_PX_PER_M
    assert drawn_m == pytest.approx(TIMES * moved(answer)[0], rel=1e-6, abs=1e-9)
    assert f"drawn {TIMES} times too large" in plain_text(answer.picture_in_words)
    assert any(
        f"drawn {TIMES} times too large" in plain_text(mark.text)
        for mark in answer.picture.marks
        if isinstance(mark, Words)
    )


def test_the_board_is_drawn_by_the_map_of_its_rings():
    # A flatsawn board: the straight width of the dashed outline follows from the closed form of the wedge map.
    from woodlib.movement.shape import wedge_width_change_m

    dry, damp = moistures(driest=30, dampest=60)
    answer = panel_movement.answer(driest=30, dampest=60, ring_angle=0)
    _, radial, tangential = Board("white oak", 0.1, 0.02, 1.0).wood.axis_strains(dry, damp)
    dashed = next(
        np.array(mark.points) for mark in answer.picture.marks if isinstance(mark, Line) and mark.role == "damp"
    )
    top_left, top_right = dashed[0], dashed[12]
    half, face = BOARD_WIDTH_M / 2, PITH_DISTANCE_M + BOARD_THICKNESS_M / 2
    width = BOARD_WIDTH_M + wedge_width_change_m(-half, half, face, TIMES * radial, TIMES * tangential)
    assert math.dist(top_left, top_right) / 3000 == pytest.approx(width, rel=1e-6)


@given(states)
@settings(max_examples=30)
def test_the_shade_holds_the_edge_and_the_year_turns_in_january_and_july(state):
    areas = [mark for mark in panel_movement.answer(**state).picture.marks if isinstance(mark, Area)]
    panel, band = np.array(areas[-2].points), np.array(areas[-1].points)
    edge, outer, inner = panel[:25, 0], band[:25, 0], band[25:, 0][::-1]
    assert (outer >= edge).all() and (inner <= edge).all()
    assert np.argmin(edge) in (1, 0) and np.argmax(edge) in (13, 0)  # mid January, mid July; 0 where nothing moves
    assert edge[0] == pytest.approx(edge[-1], abs=1e-6)


@given(states)
@settings(max_examples=30)
def test_who_cannot_see_the_picture_is_told_its_numbers(state):
    answer = panel_movement.answer(**state)
    for units in ("both", "inch", "metric"):
        told = answer.alt_text(units)
        wanted = [part for part in answer.readings[0].value.parts if not isinstance(part, str)]
        assert all(number.text(units) in told for number in wanted)
        assert all(f"{mc:.1f} % MC" in told for mc in moistures(**state))


@pytest.mark.parametrize(
    "inches, words",
    [
        ("1/64 in", "pencil line"),
        ("1/16 in", "less than a saw kerf"),
        ("1/8 in", "about one saw kerf"),
        ("1/2 in", "about 4 saw kerfs"),
    ],
)
def test_the_movement_is_compared_with_what_a_shop_knows(inches, words):
    from woodlib.studies.panel_movement import _compared
    from woodlib.units import metres

    assert words in plain_text(_compared(metres(inches, name="movement")))
    assert pytest.approx(metres("1/8 in", name="kerf")) == SAW_KERF_M


@pytest.mark.parametrize("species", WOODS)
def test_the_fine_print_names_sources_and_doubts(species):
    from woodlib.species import find_species

    wood = find_species(species)
    fine = [plain_text(line) for line in panel_movement.answer(species=species).fine_print]
    assert sum(wood.require("tangential_coefficient_per_percent").source in line for line in fine) >= 1
    assert all(any(doubt in line for line in fine) for doubt in wood.doubts)
    assert any("nine boards in ten" in line and "15.0 %" in line for line in fine)


def test_wood_from_memory_says_so():
    fine = " ".join(plain_text(line) for line in panel_movement.answer(species="eastern white pine").fine_print)
    assert "from memory, not seen in print" in fine


def test_it_freezes_and_the_page_says_what_python_says():
    checked = freeze_checked(panel_movement)
    assert checked.states >= 300 and checked.worst_px < 0.5


def test_a_panel_of_narrow_strips_moves_as_far_as_before():
    four, eight = (panel_movement.answer(strips=strips) for strips in ("4", "8"))
    assert moved(four) == moved(eight)
    each = [plain_text(answer.readings[-1].value) for answer in (four, eight)]
    assert each == ["3/32 in (2.2 mm)", "3/64 in (1.1 mm)"]
    joints = [sum(isinstance(mark, Line) for mark in answer.picture.marks) for answer in (four, eight)]
    assert joints[1] - joints[0] == 4
