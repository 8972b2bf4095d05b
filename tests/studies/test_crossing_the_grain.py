"""Crossing the grain: true to the held panel, finite, right in direction, drawn to scale, frozen whole."""

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import ndtr

from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.movement.wood import wood_of
from woodlib.picture.scene import Area, Line, Words, flatten_points, walk
from woodlib.restraint.field_readings import across_stress_pa, field_picture
from woodlib.restraint.held import held_panel
from woodlib.restraint.measures import ODDS_WORDS
from woodlib.studies import find_study
from woodlib.studies.crossing_chance import CHANCES, scores
from woodlib.studies.crossing_numbers import (
    BORDER_THICKNESSES_M,
    BORDERS_M,
    DAMPEST_RH,
    DRIEST_RH,
    INCH_M,
    LENGTH_M,
    RINGS_DEG,
    THICKNESS_M,
    WIDTHS_M,
    cut_wood,
    moistures,
)
from woodlib.studies.crossing_panels import HALF_COLUMNS, ROWS, held_wood, patterns
from woodlib.studies.crossing_sheet import HEIGHT_PX, MIDDLE_Y, PX_PER_M, ROLES, TIMES, WIDTH_PX
from woodlib.studies.crossing_the_grain import RINGS, WOODS, crossing_the_grain
from woodlib.words.decided import chosen
from woodlib.words.say import plain_text

WOODS_CUT = list(itertools.product(WOODS, RINGS))
sizes = {
    "width": st.floats(*WIDTHS_M),
    "border": st.floats(*BORDERS_M),
    "thickness": st.floats(*BORDER_THICKNESSES_M),
}
airs = {"driest": st.floats(*DRIEST_RH), "dampest": st.floats(*DAMPEST_RH)}
woods = {"wood": st.sampled_from(list(WOODS)), "rings": st.sampled_from(list(RINGS))}


def reading(answer, label):
    return next(entry for entry in answer.readings if entry.label == label)


def share_held(answer):
    return float(reading(answer, "Held back at the end").value.chosen.parts[1].value)


def strain_held(answer):
    return float(reading(answer, "Strain rule").value.value)


def pull(answer):
    return float(reading(answer, "Stress model").value.parts[1].value)


def movement_of(answer):
    return float(reading(answer, "The panel wants to move").value.options[-1].value)


def odds(answer):
    """Place of the likely odds among all odds."""
    words = reading(answer, "Chance of a crack").value.parts[0].chosen.removeprefix("about ")
    return ODDS_WORDS.index(words)


def held(species, rings, width, border, thickness, dry, damp):
    angle = RINGS_DEG[rings]
    return held_panel(
        species,
        width_m=width,
        length_m=LENGTH_M,
        thickness_m=THICKNESS_M,
        strip_width_m=border,
        strip_thickness_m=thickness,
        ring_angle_deg=angle,
        strip_ring_angle_deg=angle,
        glue_up_mc_percent=(dry + damp) / 2,
        year_mc_percent=(damp, dry),
    )


def test_it_is_found_by_its_key():
    assert find_study("crossing-the-grain") is crossing_the_grain


def test_everything_a_maker_chooses_is_a_control():
    keys = [entry.key for entry in crossing_the_grain.inputs]
    assert keys == ["wood", "rings", "joint", "width", "border", "thickness", "driest", "dampest"]


@pytest.mark.parametrize(("species", "rings"), WOODS_CUT)
@pytest.mark.parametrize("seed", range(4))
def test_the_smooth_numbers_are_those_of_the_held_panel(species, rings, seed):
    noise = np.random.default_rng([seed, WOODS_CUT.index((species, rings))])
    width, border, thickness, driest, dampest = (
        noise.uniform(*ends) for ends in (WIDTHS_M, BORDERS_M, BORDER_THICKNESSES_M, DRIEST_RH, DAMPEST_RH)
    )
    wood, panel = cut_wood(species, rings), held_wood(species, rings).panel(width, border, thickness)
    season = wood.season(driest, dampest)
    truth = held(species, rings, width, border, thickness, *moistures(driest, dampest))
    assert float(panel.restraint) == pytest.approx(truth.restraint.number, rel=7e-3)
    assert float(panel.restraint_low) == pytest.approx(truth.restraint.low, rel=0.025)
    assert float(panel.restraint_high) == pytest.approx(truth.restraint.high, rel=0.025)
    assert float(panel.restraint * season.gathered) == pytest.approx(truth.held_back_strain, rel=0.02)
    assert float(season.panel_swing * width) == pytest.approx(truth.free_movement_m, rel=0.012)
    for mine, theirs in (
        (season.relaxed[0], truth.season.relaxed_pa),
        (season.relaxed[1], truth.season.relaxed_low_pa),
        (season.relaxed[2], truth.season.relaxed_high_pa),
    ):
        assert wood.modulus_pa * float(panel.restraint * mine) == pytest.approx(theirs, rel=0.012)
    peak = truth.season.relaxed_pa
    assert float(panel.shear) * peak == pytest.approx(truth.edge.shear_pa, rel=0.012)
    assert float(panel.opening) == pytest.approx(truth.edge.opening_pa / peak, abs=0.03)
    found = scores(wood, width, panel, season)
    chances = [float(ndtr(float(found[name]))) for name in CHANCES]
    assert chances == pytest.approx([*truth.chance.sound, truth.chance.checked.likely], abs=0.035)


@pytest.mark.parametrize(("species", "rings"), WOODS_CUT)
def test_cells_and_shape_are_those_of_the_plane_field(species, rings):
    for width, border, thickness in itertools.product((0.3, 0.5, 0.75), (0.03, 0.1), (0.014, 0.03)):
        panel = held_wood(species, rings).panel(width, border, thickness)
        amounts, grip = np.array([float(amount) for amount in panel.shapes]), float(panel.restraint)
        field = held(species, rings, width, border, thickness, 6.0, 11.0).plane_field
        rows = np.concatenate([[0.0], LENGTH_M / 2 - ROWS * width])
        middles = (np.arange(HALF_COLUMNS) + 0.5) / HALF_COLUMNS * width / 2
        truth = across_stress_pa(field, middles, (rows[1:] + rows[:-1]) / 2) / field.plane.panel.modulus_x_pa
        off = np.abs(grip * np.tensordot(amounts, patterns().stress, 1) - truth)
        assert off.max() < 0.12 and np.sqrt(np.mean(off**2)) < 0.03
        drawn = field_picture(field, -1.0, columns=HALF_COLUMNS + 1, rows=2, strip_rows=2)
        out = (drawn.panel_across_m[1:, -1] + drawn.x_m[1:]) / (width / 2)  # how far the end is kept out
        assert grip * np.tensordot(amounts, patterns().across[:, :, -2], 1) == pytest.approx(out, abs=0.05)


@pytest.mark.parametrize(("species", "rings"), WOODS_CUT)
def test_every_corner(species, rings):
    corners = [state for state in crossing_the_grain.corners() if (state["wood"], state["rings"]) == (species, rings)]
    assert len(corners) == 3 * 2**5
    for state in corners:
        answer = crossing_the_grain.answer(**state)
        assert np.isfinite(record(answer).leaves).all()
        for mark in walk(answer.picture.marks):
            if hasattr(mark, "points"):
                points = placed(mark)
                assert np.isfinite(points).all(), (state, mark)
                assert (points >= 0).all() and (points <= (WIDTH_PX, HEIGHT_PX)).all(), (state, mark)
        told = answer.alt_text()
        assert f"drawn {TIMES} times too large" in told and "% MC" in told
        assert all(plain_text(entry.value) in told for entry in answer.readings)


@given(st.fixed_dictionaries({**woods, **sizes, **airs}), st.floats(0.05, 1))
@settings(max_examples=50, deadline=None)
def test_a_harder_year_pulls_harder(state, share):
    here = crossing_the_grain.answer(**state)
    for key, end in (("driest", DRIEST_RH[0]), ("dampest", DAMPEST_RH[1])):
        harder = crossing_the_grain.answer(**{**state, key: state[key] + share * (end - state[key])})
        assert strain_held(harder) >= strain_held(here) - 1e-7 and pull(harder) >= pull(here) - 1e3
        assert odds(harder) >= odds(here)


@given(st.fixed_dictionaries({**woods, **sizes, **airs}))
@settings(max_examples=50, deadline=None)
def test_the_grip_stays_between_free_and_rigid_and_the_ranges_hold_their_middle(state):
    answer = crossing_the_grain.answer(**state)
    mid, low, high = (
        float(number.value) for number in reading(answer, "Stress model").value.parts if not isinstance(number, str)
    )
    assert 25 < share_held(answer) < 100 and 0 < low <= mid <= high
    bound = float(reading(answer, "Stress model").words.parts[1].value)
    assert mid < bound  # relaxed is the expectation, elastic the upper bound


@pytest.mark.parametrize("wood", WOODS)
def test_a_border_wider_than_a_tenth_of_the_panel_adds_next_to_nothing(wood):
    grips = [
        share_held(crossing_the_grain.answer(wood=wood, width="20 in", border=border))
        for border in ("1 in", "3 in", "5 in")
    ]
    assert grips[1] - grips[0] > 3.0 and abs(grips[2] - grips[1]) < 1.5


@given(st.fixed_dictionaries({**woods, **sizes, **airs}), st.floats(0.05, 1))
@settings(max_examples=50, deadline=None)
def test_a_thicker_border_holds_more_pulls_harder_and_moves_nothing(state, share):
    here = crossing_the_grain.answer(**state)
    more = state["thickness"] + share * (BORDER_THICKNESSES_M[1] - state["thickness"])
    thicker = crossing_the_grain.answer(**{**state, "thickness": more})
    assert share_held(thicker) >= share_held(here) - 1e-9 and pull(thicker) >= pull(here) - 1.0
    assert movement_of(thicker) == movement_of(here)


def test_a_thin_border_spares_the_panel_little_and_loads_its_own_glue_line_as_before():
    thin, same, thick = (crossing_the_grain.answer(thickness=size) for size in ("1/2 in", "7/8 in", "1-1/4 in"))
    assert 5 < share_held(same) - share_held(thin) < 15 and 2 < share_held(thick) - share_held(same) < 8
    shear = [float(reading(answer, "Glue line at each corner").value.value) for answer in (thin, same)]
    assert shear[0] > 1.3 * shear[1]  # less glue carries nearly the same force
    assert "1/2 in (12.5 mm) high" in plain_text(reading(thin, "Glue line at each corner").words)
    assert "7/8 in (22 mm) high" in plain_text(reading(thick, "Glue line at each corner").words)


@given(st.fixed_dictionaries({"wood": woods["wood"], **sizes, **airs}))
@settings(max_examples=30, deadline=None)
def test_the_more_upright_the_rings_the_less_it_moves_in_every_wood(state):
    flat, rift, quarter = (crossing_the_grain.answer(**state, rings=cut) for cut in RINGS)
    assert strain_held(quarter) < strain_held(rift) < strain_held(flat)
    for joint in ("slotted", "same-grain"):
        assert [
            movement_of(crossing_the_grain.answer(**{**state, "driest": 20.0, "dampest": 70.0}, rings=cut, joint=joint))
            for cut in ("quartersawn", "flatsawn")
        ] == sorted(
            movement_of(crossing_the_grain.answer(**{**state, "driest": 20.0, "dampest": 70.0}, rings=cut, joint=joint))
            for cut in ("quartersawn", "flatsawn")
        )


@pytest.mark.parametrize("wood", WOODS)
def test_the_cut_changes_movement_as_the_printed_coefficients_do(wood):
    flat, quarter = (crossing_the_grain.answer(wood=wood, rings=cut) for cut in ("flatsawn", "quartersawn"))
    printed = wood_of(wood)
    ratio = printed.radial_coefficient / printed.tangential_coefficient
    assert movement_of(quarter) / movement_of(flat) == pytest.approx(ratio, rel=0.04)


def test_the_boards_end_shows_its_rings():
    ends = {cut: rings_drawn(crossing_the_grain.answer(rings=cut)) for cut in RINGS}
    middle = rings_drawn(crossing_the_grain.answer(joint="slotted"))
    assert ends["flatsawn"] == middle  # whatever the joint
    (flat_x, flat_y), (rift_x, rift_y), (quarter_x, quarter_y) = (ends[cut] for cut in RINGS)
    assert flat_y > rift_y > quarter_y and flat_x > rift_x > quarter_x  # the pith wanders from below to the side


def rings_drawn(answer):
    """Where the rings have their middle."""
    window = next(mark for mark in answer.picture.marks if hasattr(mark, "marks"))
    return float(window.marks[0].x), float(window.marks[0].y)


def test_quartersawn_oak_moves_half_as_far_and_is_pulled_as_hard():
    flat, quarter = (crossing_the_grain.answer(rings=cut) for cut in ("flatsawn", "quartersawn"))
    assert strain_held(quarter) < 0.5 * strain_held(flat)
    assert pull(quarter) == pytest.approx(pull(flat), rel=0.1)


@given(st.fixed_dictionaries({**woods, **sizes, **airs}), st.sampled_from(["slotted", "same-grain"]))
@settings(max_examples=30, deadline=None)
def test_what_slides_or_runs_with_the_grain_is_not_held(state, joint):
    answer = crossing_the_grain.answer(**state, joint=joint)
    assert reading(answer, "Held back at the end").value == "nothing"
    assert not any(getattr(mark, "role", "") in ROLES for mark in walk(answer.picture.marks))


def test_the_corners_of_a_slotted_border_take_up_the_whole_movement():
    answer = crossing_the_grain.answer(joint="slotted")
    season = cut_wood("white oak", "flatsawn").season(25.0, 62.0)
    corner = float(reading(answer, "Each corner, over the year").value.chosen.value)
    assert 4 * corner == pytest.approx(float(season.swing) * 0.508, rel=1e-9)  # two corners, two ways


def test_the_two_measures_are_said_together():
    calm = crossing_the_grain.answer(rings="quartersawn", driest=35, dampest=55)
    assert strain_held(calm) < 0.004 and plain_text(reading(calm, "Both together").words) == "Both measures are calm."
    calm_model = crossing_the_grain.answer(driest=40, dampest=55)
    assert plain_text(reading(calm_model, "Both together").words).startswith("The stress model is calm, but")
    both = crossing_the_grain.answer()
    assert plain_text(both.headline) == "Do not glue it: both measures warn of a crack."


def test_a_strength_from_the_density_is_said():
    answer = crossing_the_grain.answer(wood="sugar maple")
    assert "worked out from the density" in plain_text(reading(answer, "Stress model").words)
    assert any("Estimated: " in plain_text(line) for line in answer.fine_print)


@pytest.mark.parametrize(("wood", "rings"), WOODS_CUT)
def test_the_fine_print_tells_printed_recalled_and_estimated_apart(wood, rings):
    fine = " ".join(plain_text(line) for line in crossing_the_grain.answer(wood=wood, rings=rings).fine_print)
    for words in (
        "From memory, not seen in print: ",
        "Worked out: ",
        "estimated: ",
        "Wood Handbook",
        "Getty 1998",
    ):
        assert words in fine
    assert "Printed: radial stiffness" not in fine and "Printed: tangential stiffness" not in fine


def crack_lines(answer):
    return [
        mark
        for mark in answer.picture.marks
        if isinstance(mark, Line) and mark.role == "ink" and not isinstance(mark.shown, bool)
    ]


def placed(mark):
    return np.array([float(value) for value in flatten_points(mark.points)]).reshape(-1, 2)


def areas(answer, roles):
    return [mark for mark in answer.picture.marks if isinstance(mark, Area) and chosen(mark.role) in roles]


def cells(answer):
    return [mark for mark in areas(answer, ROLES) if not isinstance(mark.role, str)]


@pytest.mark.parametrize("size", [{}, {"width": "10 in", "border": "5 in"}, {"width": "30 in", "border": "1 in"}])
def test_the_crack_starts_in_the_middle_of_the_end_runs_along_the_grain_and_shows_only_where_something_warns(size):
    warned = crossing_the_grain.answer(**size)
    calm = crossing_the_grain.answer(rings="quartersawn", driest=45, dampest=50, **size)
    crack = placed(crack_lines(warned)[0])
    assert np.ptp(crack[:, 0]) > 10 * np.ptp(crack[:, 1])  # the grain runs from left to right
    panel = np.concatenate([placed(cell) for cell in cells(warned)])
    middle = panel[np.abs(panel[:, 1] - MIDDLE_Y) < 1.0]
    assert crack[0] == pytest.approx((middle[:, 0].max(), MIDDLE_Y), abs=0.5)  # at the glue line
    assert all(chosen(line.shown) for line in crack_lines(warned))
    assert not any(chosen(line.shown) for line in crack_lines(calm))
    told = plain_text(warned.picture_in_words)
    assert "at the end of the panel in the middle of its width, running along the grain" in told
    assert "No crack is drawn" in plain_text(calm.picture_in_words)


def test_the_pull_is_strongest_across_the_middle_of_the_glue_line():
    answer = crossing_the_grain.answer()
    shades = np.array([ROLES.index(chosen(cell.role)) for cell in cells(answer)]).reshape(ROWS.size, HALF_COLUMNS)
    shades = shades[:, ::-1]  # from the middle of the width outwards
    assert shades[-1, 0] == shades.max() == len(ROLES) - 1
    assert (np.diff(shades[:, 0]) >= 0).all() and (np.diff(shades[-1]) <= 0).all()


@pytest.mark.parametrize("joint", ["glued", "slotted", "same-grain"])
def test_the_way_of_the_load_and_the_scale_are_said(joint):
    answer = crossing_the_grain.answer(joint=joint)
    words = " ".join(plain_text(mark.text) for mark in walk(answer.picture.marks) if isinstance(mark, Words))
    assert f"movement {TIMES} times too large" in words and "20 in (508 mm)" in words
    path = ("hardly changes its length", "as shear", "near the corners", "pulled apart", "where it cracks")
    heard = plain_text(answer.picture_in_words)
    assert all((step in words) == (step in heard) == (joint == "glued") for step in path)
    assert "20 in (508 mm) wide, of flatsawn boards" in heard and "2 in (51 mm) wide and 7/8 in (22 mm) thick" in heard


@pytest.mark.parametrize("size", ["1/2 in", "1-1/4 in"])
def test_the_border_is_as_thick_from_the_side_as_it_is(size):
    answer = crossing_the_grain.answer(thickness=size)
    side = placed(areas(answer, ("border-wood",))[0])
    assert np.ptp(side[:, 1]) == pytest.approx({"1/2 in": 0.5, "1-1/4 in": 1.25}[size] * INCH_M * PX_PER_M)
    assert f"by {size}" in " ".join(plain_text(m.text) for m in answer.picture.marks if isinstance(m, Words))


def test_it_is_drawn_to_scale_with_the_stated_exaggeration():
    answer = crossing_the_grain.answer(joint="same-grain", width="20 in", border="2 in")
    across = float(cut_wood("white oak", "flatsawn").season(25.0, 62.0).across)
    whole, panel = (placed(areas(answer, (role,))[-1]) for role in ("border-wood", "wood"))
    assert np.ptp(whole[:, 1]) == pytest.approx(24 * INCH_M * PX_PER_M * (1 + TIMES * across), rel=1e-9)
    assert np.ptp(panel[:, 1]) == pytest.approx(20 * INCH_M * PX_PER_M * (1 + TIMES * across), rel=1e-9)
    # Glued, the end stays nearly as wide as it was, and mid-length narrows as if it were free.
    glued = crossing_the_grain.answer()
    ring = placed([mark for mark in glued.picture.marks if isinstance(mark, Line) and mark.role == "edge"][-1])
    wide = 20 * INCH_M * PX_PER_M
    middle, end = (ring[-1, 1] - ring[0, 1]) / wide, np.ptp(ring[:, 1]) / wide
    assert middle == pytest.approx(1 + TIMES * across, rel=1e-9) and middle < end < 1.0


def test_no_window_hides_a_cell():
    inside = [mark for window in crossing_the_grain.answer().picture.marks for mark in getattr(window, "marks", ())]
    assert not any(isinstance(mark, Area) for mark in inside)


def test_it_freezes_and_the_page_says_what_python_says():
    checked = freeze_checked(crossing_the_grain)
    assert checked.states >= 300 and checked.worst_px < 0.5
