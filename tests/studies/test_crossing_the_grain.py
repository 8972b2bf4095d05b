"""Crossing the grain: true to the held panel, finite, right in direction, drawn to scale, frozen whole."""

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import ndtr

from woodlib.figures.scene import Area, Line, Window, Words, flatten_points, walk
from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.reading.decided import chosen
from woodlib.reading.say import plain_text
from woodlib.restraint.field_readings import across_stress_pa
from woodlib.restraint.held import held_panel
from woodlib.restraint.measures import ODDS_WORDS
from woodlib.studies import find_study
from woodlib.studies.crossing_numbers import (
    DAMPEST_RH,
    DRIEST_RH,
    HALF_COLUMNS,
    INCH_M,
    LENGTH_M,
    RIMS_M,
    ROWS_M,
    THICKNESS_M,
    WIDTHS_M,
    held_wood,
    moistures,
    patterns,
    terms,
)
from woodlib.studies.crossing_pictures import HEIGHT_PX, PX_PER_M, ROLES, TIMES, WIDTH_PX
from woodlib.studies.crossing_the_grain import WOODS, crossing_the_grain

WOODS_CUT = [(name.partition(", ")[0], name.partition(", ")[2] or "flatsawn") for name in WOODS]
sizes = {"width": st.floats(*WIDTHS_M), "rim": st.floats(*RIMS_M)}
airs = {"driest": st.floats(*DRIEST_RH), "dampest": st.floats(*DAMPEST_RH)}
woods = st.sampled_from(list(WOODS))


def reading(answer, label):
    return next(entry for entry in answer.readings if entry.label == label)


def share_held(answer):
    return float(reading(answer, "Held back at the end").value.chosen.parts[1].value)


def strain_held(answer):
    return float(reading(answer, "Strain rule").value.value)


def pull(answer):
    return float(reading(answer, "Stress model").value.parts[1].value)


def odds(answer):
    """Place of the likely odds among all odds."""
    words = reading(answer, "Chance of a crack").value.chosen.parts[0].chosen.removeprefix("about ")
    return ODDS_WORDS.index(words)


def held(species, rings, width, rim, dry, damp):
    angle = {"flatsawn": 0, "quartersawn": 90}[rings]
    return held_panel(
        species,
        width_m=width,
        length_m=LENGTH_M,
        thickness_m=THICKNESS_M,
        strip_width_m=rim,
        ring_angle_deg=angle,
        strip_ring_angle_deg=angle,
        glue_up_mc_percent=(dry + damp) / 2,
        year_mc_percent=(damp, dry),
    )


def test_it_is_found_by_its_key():
    assert find_study("crossing-the-grain") is crossing_the_grain


@pytest.mark.parametrize(("species", "rings"), WOODS_CUT)
@pytest.mark.parametrize("seed", range(6))
def test_the_smooth_numbers_are_those_of_the_held_panel(species, rings, seed):
    noise = np.random.default_rng(seed)
    width, rim, driest, dampest = (noise.uniform(*ends) for ends in (WIDTHS_M, RIMS_M, DRIEST_RH, DAMPEST_RH))
    wood = held_wood(species, rings)
    geometry, season = wood.geometry(width, rim), wood.season(driest, dampest)
    truth = held(species, rings, width, rim, *moistures(driest, dampest))
    stiffness = wood.modulus_pa * geometry.restraint
    assert geometry.restraint == pytest.approx(truth.restraint.number, rel=5e-3)
    assert geometry.restraint * season.swing == pytest.approx(truth.held_back_strain, rel=0.012)
    for mine, theirs in (
        (season.relaxed, truth.season.relaxed_pa),
        (season.relaxed_low, truth.season.relaxed_low_pa),
        (season.relaxed_high, truth.season.relaxed_high_pa),
    ):
        assert stiffness * mine == pytest.approx(theirs, rel=0.012)
    assert geometry.shear * truth.season.relaxed_pa == pytest.approx(truth.edge.shear_pa, rel=0.01)
    if truth.chance is None:
        assert season.chance is None and wood.strength_pa is None
    else:
        chances = ndtr(season.chance @ np.array([1.0, *terms(geometry.log_restraint, geometry.log_spread)]))
        assert chances == pytest.approx([*truth.chance.sound, truth.chance.checked.likely], abs=0.02)


@pytest.mark.parametrize(("species", "rings"), WOODS_CUT)
def test_the_cells_are_those_of_the_plane_field(species, rings):
    for width, rim in itertools.product((0.3, 0.5, 0.75), (0.03, 0.1)):
        geometry = held_wood(species, rings).geometry(width, rim)
        field = held(species, rings, width, rim, 6.0, 11.0).plane_field
        places = (np.arange(HALF_COLUMNS) + 0.5) / HALF_COLUMNS * width / 2
        truth = across_stress_pa(field, places, (ROWS_M[1:] + ROWS_M[:-1]) / 2) / field.plane.panel.modulus_x_pa
        assert np.tensordot(geometry.pull, patterns(), 1) == pytest.approx(truth, abs=0.05)


@pytest.mark.parametrize(
    "state", list(crossing_the_grain.corners()), ids=lambda state: "-".join(map(str, state.values()))
)
def test_every_corner(state):
    answer = crossing_the_grain.answer(**state)
    assert np.isfinite(record(answer).leaves).all()
    for mark in walk(answer.picture.marks):
        if hasattr(mark, "points"):
            points = np.array([float(value) for value in flatten_points(mark.points)]).reshape(-1, 2)
            assert (points >= 0).all() and (points <= (WIDTH_PX, HEIGHT_PX)).all(), mark
    told = answer.alt_text()
    assert f"drawn {TIMES} times too large" in told and "% MC" in told
    assert all(plain_text(entry.value) in told for entry in answer.readings)


@given(st.fixed_dictionaries({"wood": woods, **sizes, **airs}), st.floats(0.05, 1))
@settings(max_examples=50, deadline=None)
def test_a_harder_year_pulls_harder(state, share):
    here = crossing_the_grain.answer(**state)
    for key, end in (("driest", DRIEST_RH[0]), ("dampest", DAMPEST_RH[1])):
        harder = crossing_the_grain.answer(**{**state, key: state[key] + share * (end - state[key])})
        assert strain_held(harder) >= strain_held(here) - 1e-7 and pull(harder) >= pull(here) - 1e3
        if state["wood"] != "sugar maple":
            assert odds(harder) >= odds(here)


@given(st.fixed_dictionaries({"wood": woods, **sizes, **airs}))
@settings(max_examples=50, deadline=None)
def test_the_grip_stays_between_free_and_rigid_and_the_ranges_hold_their_middle(state):
    answer = crossing_the_grain.answer(**state)
    mid, low, high = (
        float(number.value) for number in reading(answer, "Stress model").value.parts if not isinstance(number, str)
    )
    assert 40 < share_held(answer) < 100 and 0 < low <= mid <= high
    bound = float(reading(answer, "Stress model").words.parts[1].value)
    assert mid < bound  # relaxed is the expectation, elastic the upper bound


@pytest.mark.parametrize("wood", WOODS)
def test_a_rim_wider_than_a_tenth_of_the_panel_adds_next_to_nothing(wood):
    grips = [
        share_held(crossing_the_grain.answer(wood=wood, width="20 in", rim=rim)) for rim in ("1 in", "3 in", "5 in")
    ]
    assert grips[1] - grips[0] > 3.0 and abs(grips[2] - grips[1]) < 1.5


def test_quartersawn_oak_moves_half_as_far_and_is_pulled_as_hard():
    flat, quarter = (crossing_the_grain.answer(wood=f"white oak{cut}") for cut in ("", ", quartersawn"))
    assert strain_held(quarter) < 0.5 * strain_held(flat)
    assert pull(quarter) == pytest.approx(pull(flat), rel=0.1)


@given(st.fixed_dictionaries({"wood": woods, **sizes, **airs}), st.sampled_from(["slotted", "same-grain"]))
@settings(max_examples=30, deadline=None)
def test_what_slides_or_runs_with_the_grain_is_not_held(state, joint):
    answer = crossing_the_grain.answer(**state, joint=joint)
    assert reading(answer, "Held back at the end").value == "nothing"
    assert not any(getattr(mark, "role", "") in ROLES for mark in walk(answer.picture.marks))


def test_the_corners_of_a_slotted_rim_take_up_the_whole_movement():
    answer = crossing_the_grain.answer(joint="slotted")
    wood = held_wood("white oak", "flatsawn")
    season = wood.season(25.0, 62.0)
    corners = [float(reading(answer, f"Corner in the {end} month").value.chosen.value) for end in ("driest", "dampest")]
    assert sum(corners) == pytest.approx(season.swing * 0.508 / 2, rel=1e-9)
    assert corners[0] == pytest.approx(corners[1], rel=0.1)


def test_the_two_measures_are_said_to_differ_where_they_do():
    calm_rule = crossing_the_grain.answer(wood="white oak, quartersawn", driest=35, dampest=55)
    assert strain_held(calm_rule) < 0.004
    assert plain_text(reading(calm_rule, "Both together").words).startswith("The two measures disagree")
    assert chosen(reading(calm_rule, "Both together").tone) == "stop"
    calm_model = crossing_the_grain.answer(driest=40, dampest=50)
    assert plain_text(reading(calm_model, "Both together").words).startswith("The stress model is calm, but")
    both = crossing_the_grain.answer()
    assert plain_text(both.headline) == "Do not glue it: both measures warn of a crack."


def test_a_wood_without_a_printed_strength_gets_no_chance():
    answer = crossing_the_grain.answer(wood="sugar maple")
    assert plain_text(reading(answer, "Chance of a crack").value) == "not given"
    assert plain_text(reading(answer, "Both together").words).startswith("Only the strain rule")
    assert any("not printed" in plain_text(mark.text) for mark in answer.picture.marks if isinstance(mark, Words))
    assert any(
        "Printed nowhere: strength in tension across the grain" in plain_text(line) for line in answer.fine_print
    )


@pytest.mark.parametrize("wood", WOODS)
def test_the_fine_print_tells_printed_recalled_and_estimated_apart(wood):
    fine = " ".join(plain_text(line) for line in crossing_the_grain.answer(wood=wood).fine_print)
    for words in (
        "Printed: ",
        "From memory, not seen in print: ",
        "Worked out: ",
        "estimated: ",
        "Wood Handbook",
        "Getty 1998",
    ):
        assert words in fine


def crack_lines(answer):
    return [
        mark
        for mark in answer.picture.marks
        if isinstance(mark, Line) and mark.role == "ink" and not isinstance(mark.shown, bool)
    ]


def test_the_crack_starts_in_the_middle_of_the_end_runs_along_the_grain_and_shows_only_where_something_warns():
    warned, calm = (
        crossing_the_grain.answer(),
        crossing_the_grain.answer(wood="white oak, quartersawn", driest=45, dampest=50),
    )
    crack = np.array(crack_lines(warned)[0].points, float)
    assert np.ptp(crack[:, 0]) > 10 * np.ptp(crack[:, 1])  # the grain runs from left to right
    panel = np.concatenate(
        [
            np.array(mark.points, float)
            for mark in warned.picture.marks
            if isinstance(mark, Area) and chosen(mark.role) in ROLES[2:]
        ][:-4]
    )
    assert crack[0, 0] == pytest.approx(panel[:, 0].max(), abs=4.0) and crack[0, 1] == pytest.approx(228.0, abs=3.0)
    assert all(chosen(line.shown) for line in crack_lines(warned)) and not any(
        chosen(line.shown) for line in crack_lines(calm)
    )


def test_it_is_drawn_to_scale_with_the_stated_exaggeration():
    answer = crossing_the_grain.answer(joint="same-grain", width="20 in", rim="2 in")
    season = held_wood("white oak", "flatsawn").season(25.0, 62.0)
    outline = np.array(
        [mark for mark in answer.picture.marks if isinstance(mark, Line) and mark.role == "edge"][-1].points, float
    )
    assert np.ptp(outline[:, 1]) == pytest.approx(24 * INCH_M * PX_PER_M * (1 + TIMES * season.across), rel=1e-9)
    # Glued, the end stays nearly as wide as it was, and mid-length narrows as if it were free.
    glued = crossing_the_grain.answer()
    ring = np.array(
        [mark for mark in glued.picture.marks if isinstance(mark, Line) and mark.role == "edge"][-1].points, float
    )
    whole = 20 * INCH_M * PX_PER_M
    middle, end = (ring[-1, 1] - ring[0, 1]) / whole, (ring[-8, 1] - ring[7, 1]) / whole
    assert middle == pytest.approx(1 + TIMES * season.across, abs=0.02) and middle < end < 1.0


def test_no_window_hides_a_cell():
    assert not any(isinstance(mark, Window) for mark in crossing_the_grain.answer().picture.marks)


def test_it_freezes_and_the_page_says_what_python_says():
    checked = freeze_checked(crossing_the_grain)
    assert checked.states >= 300 and checked.worst_px < 0.5
