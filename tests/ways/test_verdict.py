"""Decisions: levels of risk, room, totals, and that a page could repeat them."""

import re

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import MissingDataError
from woodlib.movement.spread import NO_DOUBTS
from woodlib.movement.wood import Wood
from woodlib.tables import number
from woodlib.ways import breadboard
from woodlib.ways.held import Held, full_restraint, one_line_restraint, plane_field
from woodlib.ways.index import compare, suitability, verdict_for
from woodlib.ways.judge import judge
from woodlib.ways.piece import Allowances, Piece
from woodlib.ways.registry import reference_way, way_of, ways_for
from woodlib.ways.risk import risk_level, risk_levels
from woodlib.ways.rules import Cut, fixed, room, total, travel
from woodlib.ways.travel import at_fixing, movement_of, travel_quantities
from woodlib.ways.verdict import CAUTIONS
from woodlib.words.decided import Decided
from woodlib.words.say import plain_text

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
SEAT = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")
YEAR = [5.5, 5.5, 6, 7, 9, 10, 11, 11, 10, 8, 7, 6]
CALM = [7.6, 7.6, 7.8, 8, 8, 8.2, 8.4, 8.4, 8.2, 8, 7.8, 7.6]


@given(st.lists(st.floats(0, 0.03), min_size=2, max_size=5))
def test_risk_never_falls_with_strain(strains):
    levels = [float(risk_level(strain)) for strain in sorted(strains)]
    assert levels == sorted(levels) and set(levels) <= {0.0, 1.0, 2.0}


@given(st.floats(-1, 1), st.floats(-1, 1))
def test_room_and_totals_are_decisions_a_page_can_repeat(first, second):
    answer = total((fixed("a", 2.0), travel("b", 0.5)), {"a": first, "b": second})
    assert isinstance(answer, Decided) and isinstance(room(first), Decided)
    assert float(answer) == pytest.approx(2 * first + 0.5 * max(second, 0.0))


def test_three_levels_in_words():
    assert len(risk_levels()) == 3 and len({risk.word for risk in risk_levels()}) == 3
    assert all(risk.meaning for risk in risk_levels())


@given(st.floats(0.1, 1.5), st.floats(4, 14), st.floats(4, 9), st.floats(9, 16), st.floats(0, 1.5))
def test_travels_are_smooth_numbers_that_belong_together(width, stock, driest, dampest, ring):
    q = travel_quantities(ASH, ASH, ring, width, stock, driest, dampest)
    assert all(isinstance(value, float) and np.isfinite(value) for value in q.values())
    assert q["narrowing_mid"] == -q["to_driest_mid"] and q["narrowing_high"] == -q["to_driest_low"]
    assert q["swing_mid"] == pytest.approx(q["narrowing_mid"] + q["widening_mid"], abs=1e-12)
    nudged = travel_quantities(ASH, ASH, ring, width * (1 + 1e-9), stock, driest, dampest)
    assert all(abs(nudged[name] - q[name]) < 1e-8 for name in q)
    assert movement_of(q, "swing", 0.5).mid_m == pytest.approx(0.5 * q["swing_mid"])


@given(st.floats(0.01, 0.5))
def test_travel_grows_evenly_from_the_middle(distance):
    q = {"width": 1.0, "narrowing_high": 0.004, "widening_high": 0.006}
    near, far = at_fixing(q, "x", distance), at_fixing(q, "x", 2 * distance)
    assert far["x_widening"] == pytest.approx(2 * near["x_widening"])


def test_a_calm_house_allows_glue_and_a_swinging_one_refuses_it():
    calm, swinging = (compare(SEAT, 8, months, doubts=NO_DOUBTS) for months in (CALM, YEAR))
    assert calm["glued_border"].allowed and "stays allowed up to" in calm.would_change
    assert not swinging["glued_border"].allowed and "would need a house" in swinging.would_change
    assert swinging[-1].key == "glued_border" and swinging[0].way.keeps_border


def test_the_restraint_can_be_swapped_in_one_place():
    seat = Piece("white ash", "450 mm", "450 mm", "20 mm", "38 mm")
    rigid, softer, free = (
        verdict_for("glued_border", seat, 8, YEAR, held=rule)
        for rule in (full_restraint, one_line_restraint, lambda piece: Held(0.0))
    )
    assert free.restrained_strain.high == 0.0 < softer.restrained_strain.high < rigid.restrained_strain.high
    assert any("rigid" in remark for remark in rigid.remarks) and any("one-line" in remark for remark in softer.remarks)


def test_the_plane_field_is_the_rule_and_brings_the_stress_model():
    verdict, rigid = (verdict_for("glued_border", SEAT, 8, YEAR, **rule) for rule in ({}, {"held": full_restraint}))
    panel = verdict.panel
    assert verdict.quantities["held_share"] == panel.restraint.number < 1.0
    assert verdict.restrained_strain.mid < rigid.restrained_strain.mid
    assert panel.inputs.glue_up_mc_percent == 8 and panel.season.mc_percent.min() == min(YEAR)
    assert panel.season.relaxed_pa < panel.season.bound_pa
    rule, chance, together = verdict.measures
    assert rule.startswith("Strain rule: up to ") and "fail" in rule
    assert chance.startswith("Chance of a crack") and " in " in chance and together.startswith("Both measures warn")
    assert rigid.panel is None and rigid.measures == ()
    assert all(other.panel is None for other in compare(SEAT, 8, YEAR) if other.key != "glued_border")


def test_where_only_the_stress_model_warns_its_side_is_taken():
    calm = verdict_for("glued_border", SEAT, 8, CALM, doubts=NO_DOUBTS)
    assert calm.allowed
    held = plane_field(SEAT)
    warned = judge(reference_way(), calm.quantities, held, 1.0)
    assert float(warned.level) == 1 and "strain rule would let it pass" in plain_text(warned.reason())


def test_what_would_change_counts_both_measures():
    quartered = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in", ring_angle_deg=90)
    rules = {}, {"held": lambda piece: Held(0.6)}
    both, rule = (compare(quartered, 8, YEAR, doubts=NO_DOUBTS, **more) for more in rules)
    swings = [float(re.search(r"about ([0-9.]+) %", found.would_change)[1]) for found in (both, rule)]
    assert swings[0] < swings[1]
    share = swings[0] / 5.5
    inside, outside = (
        verdict_for("glued_border", quartered, 8, [8 + part * share * (emc - 8) for emc in YEAR], doubts=NO_DOUBTS)
        for part in (0.97, 1.10)
    )
    assert inside.allowed and not outside.allowed


def test_a_wood_without_stiffness_is_held_as_if_rigid_and_that_is_said():
    for species in ("apple", ASH):
        held = plane_field(Piece(species, "450 mm", "450 mm", "20 mm", "38 mm"))
        assert held.share == 1.0 and held.through_year is None and "no table has the stiffness" in held.remarks[0]


def test_a_wood_whose_strength_no_table_prints_is_judged_by_its_density():
    maple = Piece("sugar maple", "20 in", "44 in", "7/8 in", "2 in")
    verdict = verdict_for("glued_border", maple, 8, YEAR)
    assert verdict.measures[2].startswith("Both measures warn")
    assert any("worked out from the density" in remark for remark in verdict.panel.remarks)


def test_a_wood_without_stiffness_is_said():
    with pytest.raises(MissingDataError, match="modulus of elasticity"):
        one_line_restraint(Piece("apple", "450 mm", "450 mm", "20 mm", "38 mm"))


def test_notes_appear_where_sizes_call_for_them():
    narrow = Piece("white oak", "48 in", "60 in", "7/8 in", "1 in")
    assert any("more than half of the border" in r for r in verdict_for("frame_panel", narrow, 8, YEAR).remarks)
    assert not any("more than half" in r for r in verdict_for("frame_panel", SEAT, 8, CALM).remarks)
    slip = Piece("white oak", "2 in", "10 in", "1/2 in", "1 in")
    assert any("half the width" in r for r in verdict_for("breadboard", slip, 8, YEAR).remarks)
    mixed = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in", border_species="black walnut")
    assert any("different woods" in r for r in verdict_for("same_grain_border", mixed, 8, YEAR).remarks)


def test_cautions_and_steps_come_with_every_verdict():
    for verdict in compare(SEAT, 8, YEAR):
        assert set(CAUTIONS) <= set(verdict.cautions) and len(verdict.way.steps) >= 3
        assert suitability(verdict)[0] is (not verdict.allowed)


def test_cuts_round_the_safe_way():
    assert Cut("gap", "gap", 0.00501, "up", "").text() == "1/4 in (6.5 mm)"
    assert Cut("tongue", "tongue", 0.00799, "down", "").text() == "5/16 in (8 mm)"
    for way in ways_for():
        for rule in way.cuts:
            loose = any(word in rule.label for word in ("slot", "groove", "gap", "space", "set back", "line"))
            loose = loose or rule.key == "tongue_length" and way.key == "buttons"  # follows from its marked gap
            assert rule.rounding == ("up" if loose else "down"), rule.label


def test_allowances_come_from_the_table_and_can_be_changed():
    assert Allowances().pin_diameter_m == number("allowances", "pin_diameter").middle
    stout = Piece("white oak", "20 in", "44 in", "1 in", "3 in")
    thick = verdict_for("breadboard", stout, 8, YEAR, allowances=Allowances(pin_diameter_m="1/2 in"))
    thin = verdict_for("breadboard", stout, 8, YEAR)
    grown = thick.cut("outer_slot").metres - thin.cut("outer_slot").metres
    # The outer pin sits half of what it is thicker further in, and travels a little less for it.
    inward = thin.quantities["outer_distance"] - thick.quantities["outer_distance"]
    assert inward == pytest.approx((0.0127 - 0.009525) / 2)
    less = inward / 0.508 * (thin.quantities["narrowing_high"] + thin.quantities["widening_high"])
    assert grown == pytest.approx(0.0127 - 0.009525 - less)


def test_lookups():
    assert way_of("breadboard") is breadboard.WAY
    assert compare(SEAT, 8, YEAR)["breadboard"].way is breadboard.WAY
