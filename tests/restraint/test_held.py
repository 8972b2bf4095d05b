"""The one door: limits, directions, what it carries, and smoothness."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodlib.errors import MissingDataError
from woodlib.restraint.assumptions import all_assumptions
from woodlib.restraint.held import held_panel
from woodlib.species import Species, all_species, find_species

SEAT = {
    "width_m": 0.508,
    "length_m": 1.118,
    "thickness_m": 0.022,
    "strip_width_m": 0.038,
    "glue_up_mc_percent": 9.0,
    "year_mc_percent": [11.5, 6.5],
}


@settings(max_examples=25, deadline=None)
@given(
    st.floats(0.2, 0.9),
    st.floats(0.2, 1.8),
    st.floats(0.02, 0.12),
    st.floats(0, 90),
    st.floats(7, 11),
    st.sampled_from([1, 2]),
)
def test_any_panel_is_finite_and_consistent(width, length, strip, angle, glue_up, ends):
    held = held_panel(
        "white oak",
        width_m=width,
        length_m=length,
        thickness_m=0.02,
        strip_width_m=strip,
        ring_angle_deg=angle,
        glue_up_mc_percent=glue_up,
        year_mc_percent=[11.5, 6.5],
        ends=ends,
    )
    assert 0 < held.restraint.low <= held.restraint.number <= held.restraint.high <= 1.0
    assert (
        held.season.relaxed_low_pa
        <= held.season.relaxed_pa
        <= held.season.relaxed_high_pa
        <= held.season.bound_pa * 1.000001
    )
    assert 0 <= held.held_back_low <= held.held_back_strain <= held.held_back_high < 0.03
    assert np.isfinite(held.picture().stress_pa).all()
    assert held.effective_stress_pa > 0 and held.chance.sound.low <= held.chance.sound.high


def test_wider_swing_more_of_everything():
    small, large = (held_panel("white oak", **SEAT | {"year_mc_percent": year}) for year in ([10.0, 8.0], [12.0, 6.5]))
    assert large.season.relaxed_pa > small.season.relaxed_pa and large.chance.sound.likely > small.chance.sound.likely
    assert large.restraint == small.restraint  # the field is linear in the misfit


def test_quartersawn_is_strained_less():
    flat, quarter = (held_panel("white oak", **SEAT, ring_angle_deg=angle) for angle in (0, 90))
    assert quarter.held_back_strain < 0.65 * flat.held_back_strain


def test_twelve_months_and_their_extremes_agree():
    months = [9.5, 10.5, 11.2, 11.5, 11.0, 10.0, 9.0, 8.0, 7.0, 6.5, 7.2, 8.4]
    year = held_panel("white ash", **SEAT | {"year_mc_percent": months})
    pair = held_panel("white ash", **SEAT)
    assert year.season.relaxed_pa == pytest.approx(pair.season.relaxed_pa, rel=0.02)


def test_a_strength_that_no_table_prints_is_worked_out_and_said():
    held = held_panel("sugar maple", **SEAT)
    known = next(row for row in held.provenance if row[1] == "strength in tension across the grain")
    assert known[2] == "estimated" and "from memory" in known[3] and "specific gravity" in known[4]
    assert any("worked out from the density" in remark for remark in held.remarks)


def test_every_wood_gets_numbers_or_one_sentence():
    answered = 0
    for wood in all_species():
        try:
            held = held_panel(wood, **SEAT)
        except MissingDataError as error:
            assert "\n" not in str(error) and wood.name.split(",")[0].split(" (")[0] in str(error)
            continue
        answered += 1
        assert np.isfinite(held.season.relaxed_pa) and all(row[2] for row in held.provenance)
    assert answered > 100


def test_provenance_of_the_strip_is_added_when_it_is_another_wood():
    held = held_panel("white oak", **SEAT, strip_species="black walnut")
    assert {row[0] for row in held.provenance} == {"panel", "strip"}


def test_picture_shows_the_peak_it_reports():
    held = held_panel("white oak", **SEAT)
    picture = held.picture()
    assert picture.stress_pa[0, -1] == pytest.approx(held.season.relaxed_pa, rel=1e-6)
    damp = held.picture(11.5, -1.0e6)
    assert damp.stress_pa[0, -1] == pytest.approx(-1.0e6) and damp.panel_across_m[-1, 0] > 0
    assert held.picture(9.0).stress_pa == pytest.approx(0.0, abs=1.0)


def test_gluing_less_holds_less_movement():
    """The glued part is held as before, but the rest moves free: the widest held strain stays, the free ends move."""
    whole, part = held_panel("white oak", **SEAT), held_panel("white oak", **SEAT, glued_width_m=0.15)
    assert any("slide freely" in remark for remark in part.remarks)
    assert part.season.relaxed_pa > 0 and part.one_line.panel_working_depth_m < whole.one_line.panel_working_depth_m
    assert part.effective_stress_pa < whole.effective_stress_pa


def test_soft_glue_holds_less():
    stiff, soft = (
        held_panel("white oak", **SEAT),
        held_panel("white oak", **SEAT, glue_thickness_m=0.001, glue_shear_pa=1e6),
    )
    assert soft.restraint.number < 0.8 * stiff.restraint.number


def test_sentences_are_said():
    held = held_panel("white oak", **SEAT)
    assert held.chance_sentence.startswith("Chance of a crack in the first years: about")
    assert set(all_assumptions()) == {row.key for row in held.assumptions}


def test_smooth_in_the_width():
    """Values on a fine slider bend little between neighbours."""
    values = [held_panel("white oak", **SEAT | {"width_m": 0.4 + 0.01 * k}).restraint.number for k in range(12)]
    assert np.abs(np.diff(values, 2)).max() < 0.002


def test_a_wood_without_stiffness_is_a_sentence():
    oak = find_species("white oak")
    bare = Species("pear", "Pyrus", "hardwood", False, {k: v for k, v in oak.values.items() if "modulus" not in k})
    with pytest.raises(MissingDataError, match="pear has no modulus of elasticity"):
        held_panel(bare, **SEAT)


def test_chances_of_many_years_are_those_of_each_panel():
    size = {"width_m": 0.457, "length_m": 0.457, "thickness_m": 0.022, "strip_width_m": 0.038}
    panel = held_panel("white oak", **size, glue_up_mc_percent=9.0, year_mc_percent=(11.0, 7.0))
    glue_up, years = np.array([8.0, 9.5]), np.array([[12.0, 13.5], [7.0, 5.5]])
    found = panel.chances(glue_up, years)
    for k in range(2):
        one = held_panel("white oak", **size, glue_up_mc_percent=glue_up[k], year_mc_percent=years[:, k]).chance
        assert [part[k] for part in (*found.sound, *found.checked)] == pytest.approx([*one.sound, *one.checked])


@pytest.mark.parametrize(("strip", "said"), [(0.0079, True), (0.0081, False), (0.0319, False), (0.0321, True)])
def test_a_strip_outside_the_thicknesses_that_were_proved_is_said(strip, said):
    held = held_panel("white oak", **SEAT | {"thickness_m": 0.020, "strip_thickness_m": strip})
    assert any("the field was proved" in remark for remark in held.remarks) == said


@pytest.mark.parametrize(("year", "said"), [((14.0, 6.0), False), ((14.2, 6.0), True), ((14.0, 5.9), True)])
def test_a_year_outside_the_coefficients_is_said(year, said):
    held = held_panel("white oak", **SEAT | {"year_mc_percent": list(year), "glue_up_mc_percent": 10.0})
    assert any("Outside 6 to 14" in remark for remark in held.remarks) == said
