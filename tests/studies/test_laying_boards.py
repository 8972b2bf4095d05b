"""Laying boards: the study at every corner, against the map of the rings and the glued panel, and its frozen table."""

import math
from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from references.shape import out_of_square_rad
from references.warp import section_outline

from woodlib.handout.replay import freeze_checked
from woodlib.moisture.readiness import flattening
from woodlib.movement.glue_up import glue_up
from woodlib.movement.shape import cup_m
from woodlib.picture.scene import Area, Circle, Words, flatten_points, walk
from woodlib.picture.svg import svg
from woodlib.studies import find_study
from woodlib.studies.laying_boards import (
    INCH_M,
    JOINTER_M,
    MOST_DRIED,
    WANTED_M,
    WIDTHS,
    WOODS,
    _strains,
    board_shape,
    laying_boards,
)
from woodlib.studies.laying_pictures import (
    _END_PX_PER_M,
    _PANEL_PX_PER_M,
    BOARD_TIMES,
    BOARDS,
    PANEL_TIMES,
    THICKNESS_M,
)
from woodlib.words.decided import Pick, chosen
from woodlib.words.say import Number, plain_text

states = st.fixed_dictionaries(
    {
        "species": st.sampled_from(WOODS),
        "pith_below": st.floats(3.5 * INCH_M, 8 * INCH_M),
        "pith_aside": st.floats(0, 3 * INCH_M),
        "width": st.sampled_from(WIDTHS),
        "dries": st.floats(-4, MOST_DRIED),
    }
)
corners = list(laying_boards.corners())


def sizes(answer):
    """Cup of one board, lean, panel all one way, panel in turn; m."""
    one, lean, same, turned = answer.readings[:4]
    shown = (one.value, lean.value, *_parts(same.value, Number), *_parts(turned.value, Pick))
    return tuple(float((part.options[1] if isinstance(part, Pick) else part).value) for part in shown)


def _parts(words, kind):
    return [part for part in words.parts if isinstance(part, kind)]


def exact(state):
    return board_shape(
        state["pith_below"],
        state["pith_aside"],
        float(state["width"]) * INCH_M,
        *_strains(state["species"], state["dries"]),
    )


def test_it_is_found_by_its_key():
    assert find_study("laying-boards") is laying_boards


@pytest.mark.parametrize("state", corners, ids=lambda state: "-".join(str(value)[:5] for value in state.values()))
def test_every_corner(state):
    answer = laying_boards.answer(**state)
    one, lean, same, turned = sizes(answer)
    assert (
        0 <= one < 0.003 and 0 <= lean < 0.002 and turned == pytest.approx(2 * one) and same == pytest.approx(25 * one)
    )
    for mark in walk(answer.picture.marks):
        if isinstance(mark, Circle):
            continue  # rings reach beyond the board on purpose and are seen through it
        points = [mark.x, mark.y] if isinstance(mark, Words) else flatten_points(mark.points)
        xy = np.array([float(value) for value in points]).reshape(-1, 2)
        assert np.isfinite(xy).all() and (xy >= 0).all() and (xy <= (720, 456)).all(), mark
    ElementTree.fromstring(svg(answer.picture, answer.alt_text()))


@given(states)
@settings(max_examples=60, deadline=None)
def test_cup_and_lean_are_those_of_the_rings(state):
    """The exact map at the ends of the slider, in proportion between: within a percent of the most it can do."""
    one, lean, _, _ = sizes(laying_boards.answer(**state))
    cup, tilted = exact(state)
    most = [abs(size) for size in exact({**state, "dries": MOST_DRIED})]
    assert one == pytest.approx(abs(cup), abs=0.01 * most[0] + 1e-9)
    assert lean == pytest.approx(abs(tilted), abs=0.01 * most[1] + 1e-9)


@given(st.floats(0.05, 0.3), st.floats(0.05, 0.25), st.floats(-0.03, 0.01), st.floats(-0.06, 0.02))
@settings(max_examples=60, deadline=None)
def test_over_the_pith_the_cup_is_the_closed_form(pith, width, radial, tangential):
    cup, lean = board_shape(pith, 0.0, width, radial, tangential)
    assert cup == pytest.approx(float(cup_m(width, pith + THICKNESS_M / 2, radial, tangential)), rel=1e-9, abs=1e-12)
    assert lean == pytest.approx(0.0, abs=1e-12)


def test_far_from_the_pith_the_lean_is_that_of_straight_rings():
    for turn in (20.0, 45.0, 70.0):
        below, aside = 50 * math.cos(math.radians(turn)), 50 * math.sin(math.radians(turn))
        _, lean = board_shape(below, aside, 0.1, -0.01, -0.0215)
        square = abs(float(out_of_square_rad(-0.01, -0.0215, math.radians(turn))))
        assert abs(lean) == pytest.approx(THICKNESS_M * square, rel=0.05)


@pytest.mark.parametrize("species", WOODS)
@pytest.mark.parametrize("width, pith", [("4", 4.0), ("6", 4.5), ("8", 6.0)])
def test_the_panel_is_the_glued_panel(species, width, pith):
    answer = laying_boards.answer(
        species=species, width=width, pith_below=pith * INCH_M, pith_aside=0, dries=MOST_DRIED
    )
    panel = glue_up(
        [float(width) * INCH_M] * BOARDS, [pith * INCH_M + THICKNESS_M / 2] * BOARDS, *_strains(species, MOST_DRIED)
    )
    _, _, same, turned = sizes(answer)
    assert same == pytest.approx(panel.same_way.out_of_flat_m, rel=0.01)
    assert turned == pytest.approx(panel.in_turn.out_of_flat_m, rel=0.01)


@given(states, st.floats(0.02, 1))
@settings(max_examples=60, deadline=None)
def test_directions(state, share):
    state = {**state, "dries": abs(state["dries"])}
    one, _, same, turned = sizes(laying_boards.answer(**state))
    assert same >= turned >= one
    towards = {"pith_below": (8 * INCH_M, -1), "dries": (MOST_DRIED, 1)}
    for key, (end, sign) in towards.items():
        if key == "pith_below" and state["pith_aside"] > 0.4 * state["pith_below"]:
            continue  # far to the side the rings stand up as the board comes nearer to the pith, and the cup shrinks
        moved = {**state, key: state[key] + share * (end - state[key])}
        assert sign * (sizes(laying_boards.answer(**moved))[0] - one) >= -2e-6, key
    wider = WIDTHS[min(WIDTHS.index(state["width"]) + 1, len(WIDTHS) - 1)]
    assert sizes(laying_boards.answer(**{**state, "width": wider}))[0] >= one - 1e-9


def test_drying_hollows_the_bark_side_and_wetting_crowns_it():
    dry, damp = (laying_boards.answer(dries=by, width="8") for by in (6, -4))
    assert "hollow on the bark side" in plain_text(dry.readings[0].words)
    assert "hollow on the pith side" in plain_text(damp.readings[0].words)
    assert (
        "is hollow" in dry.alt_text()
        and "is crowned" in damp.alt_text()
        and "is flat" in laying_boards.answer(dries=0).alt_text()
    )


@given(states)
@settings(max_examples=60, deadline=None)
def test_the_advice_on_ripping_is_that_of_flattening(state):
    answer = laying_boards.answer(**state)
    one = sizes(answer)[0]
    plan = flattening(
        THICKNESS_M,
        float(state["width"]) * INCH_M,
        1.0,
        cup_m=one,
        jointer_width_m=JOINTER_M,
        wanted_thickness_m=WANTED_M,
    )
    assert float(answer.readings[4].value.value) == pytest.approx(plan.plans[0].thickness_m, abs=1e-12)
    words = plain_text(answer.readings[4].words)
    strips = plan.choice.strips if plan.choice else 3
    assert ("whole" in words, "in two first" in words, "thicker stock" in words) == (
        strips == 1,
        strips == 2,
        strips > 2,
    )
    assert chosen(answer.readings[4].tone) == ("fine", "watch", "stop")[min(strips, 3) - 1]


def test_the_end_is_drawn_by_the_map_of_its_rings():
    answer = laying_boards.answer(width="6", pith_below=4 * INCH_M, pith_aside=0, dries=MOST_DRIED)
    after = next(
        np.array(mark.points)
        for mark in answer.picture.marks
        if isinstance(mark, Area) and len(flatten_points(mark.points)) == 52
    )
    strains = [BOARD_TIMES * strain for strain in _strains("white oak", MOST_DRIED)]
    outline = section_outline(6 * INCH_M, THICKNESS_M, 0.0, 4 * INCH_M, *strains)
    assert np.ptp(after[:, 0]) / _END_PX_PER_M == pytest.approx(np.ptp(outline.across_m), rel=1e-6)
    assert np.ptp(after[:, 1]) / _END_PX_PER_M == pytest.approx(np.ptp(outline.height_m), rel=1e-3)


def test_the_panels_are_drawn_as_far_out_of_flat_as_they_say():
    answer = laying_boards.answer(width="8", dries=MOST_DRIED)
    _, _, same, turned = sizes(answer)
    boards = [mark for mark in answer.picture.marks if isinstance(mark, Area) and len(mark.points) == 14]
    assert len(boards) == 2 * BOARDS
    for panel, size in ((boards[:BOARDS], same), (boards[BOARDS:], turned)):
        upper = [float(y) for board in panel for _, y in board.points[:7]]
        assert (max(upper) - min(upper)) / _PANEL_PX_PER_M / PANEL_TIMES == pytest.approx(size, rel=1e-6)


@given(states)
@settings(max_examples=30, deadline=None)
def test_who_cannot_see_the_picture_is_told_its_numbers(state):
    answer = laying_boards.answer(**state)
    told = answer.alt_text()
    assert all(plain_text(reading.value) in told for reading in answer.readings)


def test_it_freezes_and_the_page_says_what_python_says():
    checked = freeze_checked(laying_boards)
    assert checked.states >= 300 and checked.worst_px < 0.5
