"""What must hold for every way to build, whatever the piece, the stock and the air."""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodlib.movement.spread import NO_DOUBTS, Doubts
from woodlib.movement.wood import Wood
from woodlib.units import rounded_steps
from woodlib.ways.index import compare, verdict_for
from woodlib.ways.piece import Allowances, Piece
from woodlib.ways.registry import ways_for

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
OAK = Wood("white oak", 0.00180, 0.00365, 0.052, 0.102)
SIXTEENTH_M = 0.0254 / 16
woods = st.sampled_from([ASH, OAK])
widths = st.floats(0.15, 1.2)
rings = st.floats(0, 90)
stocks = st.floats(5, 13)
years = st.lists(st.floats(4, 16), min_size=12, max_size=12)
keys = st.sampled_from([way.key for way in ways_for()])
few = settings(max_examples=40)


def piece(wood=ASH, width=0.5, ring=0.0):
    return Piece(wood, width, 1.0, 0.02, 0.06, ring_angle_deg=ring)


def cut_to_a_sixteenth(verdict):
    """What leaves the shop: every cut as it is read off in inches."""
    sixteenths = {cut.key: rounded_steps(cut.metres / 0.0254, 16, cut.rounding) for cut in verdict.cuts}
    return {name: float(Fraction(number, 16)) * 0.0254 for name, number in sixteenths.items()}


def widening_by_month(thing, stock, months):
    from woodlib.movement.wood import width_strain

    return thing.width_m * width_strain(thing.wood, np.radians(thing.ring_angle_deg), 0.0, stock, np.array(months))


@few
@given(woods, widths, rings, stocks, years)
def test_no_gap_closes_and_no_tongue_leaves_its_groove_in_any_month(wood, width, ring, stock, months):
    thing, sizes = piece(wood, width, ring), Allowances()
    change = widening_by_month(thing, stock, months)
    assert_breadboard_slides(thing, stock, months, change, sizes)
    assert_panel_stays_in_frame(thing, stock, months, change)
    assert_buttons_hold_and_clear(thing, stock, months, change)


def assert_breadboard_slides(thing, stock, months, change, sizes):
    verdict = verdict_for("breadboard", thing, stock, months, doubts=NO_DOUBTS)
    cut = cut_to_a_sixteenth(verdict)
    for name in ("outer", "halfway"):
        slide = change * verdict.quantities[f"{name}_distance"] / thing.width_m  # tongue outward past the pin
        assert np.all(cut[f"{name}_slot_inward"] - slide >= 0.5 * sizes.pin_diameter_m)
        assert np.all(cut[f"{name}_slot_outward"] + slide >= 0.5 * sizes.pin_diameter_m)
        assert cut[f"{name}_slot"] >= sizes.pin_diameter_m + np.ptp(np.append(slide, 0.0))
    outward = verdict.quantities["outer_distance"] + verdict.cut("outer_slot_outward").metres
    wall = 0.5 * verdict.cut("tongue_width").metres - outward
    assert wall >= sizes.least_wall_m - 1e-9 or any("least wall" in remark for remark in verdict.remarks)
    stop = cut["groove_stop"]
    groove = thing.width_m - 2 * stop
    tongue = cut["tongue_width"] * (1 + change / thing.width_m)
    assert np.all(tongue <= groove + 1e-9)
    assert np.all(stop + 0.5 * change >= 0)


def assert_panel_stays_in_frame(thing, stock, months, change):
    cut = cut_to_a_sixteenth(verdict_for("frame_panel", thing, stock, months, doubts=NO_DOUBTS))
    panel = cut["panel_width"] * (1 + change / thing.width_m)
    opening = thing.width_m - 2.0 * thing.border_width_m
    in_each_groove = 0.5 * (panel - opening)
    assert np.all(in_each_groove >= Allowances().groove_cover_m - SIXTEENTH_M)
    assert np.all(in_each_groove <= cut["stile_groove_depth"])
    between_shoulders = panel - 2.0 * cut["edge_shoulder"]
    assert np.all(between_shoulders <= opening), "the shoulders never push the stiles"


def assert_buttons_hold_and_clear(thing, stock, months, change):
    cut = cut_to_a_sixteenth(verdict_for("buttons", thing, stock, months, doubts=NO_DOUBTS))
    gap = cut["shoulder_gap"] - 0.5 * change
    inside = cut["tongue_length"] - gap
    assert np.all(gap >= 0)
    assert np.all(inside > 0) and np.all(inside <= cut["groove_depth"])


def grows(cut):
    return cut.rounding == "up"


@few
@given(keys, woods, widths, rings, stocks, years, st.floats(0, 3), st.floats(0, 3))
def test_a_wider_range_of_moisture_never_narrows_a_gap(key, wood, width, ring, stock, months, drier, damper):
    wider = list(months)
    wider[int(np.argmin(months))] -= drier
    wider[int(np.argmax(months))] += damper
    here, there = (verdict_for(key, piece(wood, width, ring), stock, m) for m in (months, wider))
    for narrow, wide in zip(here.cuts, there.cuts, strict=True):
        if narrow.key == "panel_length":
            continue
        if grows(narrow) or narrow.key in ("tongue_length", "panel_width"):
            assert wide.metres >= narrow.metres - 1e-12, narrow.key
        else:
            assert wide.metres <= narrow.metres + 1e-12, narrow.key
    assert there.level >= here.level or max(months) == min(months)


@few
@given(keys, woods, widths, rings, stocks, years, st.floats(1.0, 1.5))
def test_a_wider_panel_never_gets_a_smaller_gap_and_the_same_risk(key, wood, width, ring, stock, months, factor):
    here, there = (verdict_for(key, piece(wood, w, ring), stock, months) for w in (width, factor * width))
    for small, large in zip(here.cuts, there.cuts, strict=True):
        assert large.metres >= small.metres - 1e-12, small.name
    assert there.restrained_strain.high == pytest.approx(here.restrained_strain.high, abs=1e-12)


@few
@given(keys, woods, widths, rings, stocks, years)
def test_more_doubt_never_narrows_a_gap(key, wood, width, ring, stock, months):
    sure, unsure = (
        verdict_for(key, piece(wood, width, ring), stock, months, doubts=doubts) for doubts in (NO_DOUBTS, Doubts())
    )
    for narrow, wide in zip(sure.cuts, unsure.cuts, strict=True):
        assert wide.metres >= narrow.metres - 1e-12 if grows(narrow) else True, narrow.key


@few
@given(keys, woods, widths, rings, stocks, years)
def test_every_verdict_is_complete_and_finite(key, wood, width, ring, stock, months):
    verdict = verdict_for(key, piece(wood, width, ring), stock, months)
    assert all(np.isfinite(cut.metres) and cut.metres > 0 for cut in verdict.cuts)
    assert all(np.isfinite(value) for value in verdict.quantities.values())
    assert verdict.moves.low_m <= verdict.moves.mid_m <= verdict.moves.high_m
    assert verdict.restrained_strain.low <= verdict.restrained_strain.mid <= verdict.restrained_strain.high
    assert verdict.allowed == (verdict.level == 0) and verdict.likely_level <= verdict.level
    for sentence in (verdict.driest, verdict.dampest, verdict.reason, *verdict.way.steps, *verdict.cautions):
        assert sentence.endswith(".") and "{" not in sentence and "\n" not in sentence
    assert verdict.driest.startswith(verdict.driest_month) and verdict.dampest.startswith(verdict.dampest_month)


@few
@given(woods, widths, rings, stocks, years)
def test_only_the_glued_border_holds_anything_back(wood, width, ring, stock, months):
    for verdict in compare(piece(wood, width, ring), stock, months):
        if verdict.key != "glued_border":
            assert verdict.restrained_strain.high == 0.0 and verdict.level == 0 and verdict.allowed


@few
@given(woods, widths, rings, stocks, years)
def test_comparison_is_ordered_and_advises_the_first(wood, width, ring, stock, months):
    comparison = compare(piece(wood, width, ring), stock, months)
    assert len(comparison) == len(ways_for()) and comparison[0].allowed
    flags = [verdict.allowed for verdict in comparison]
    assert flags == sorted(flags, reverse=True)
    assert comparison[0].way.built_as in comparison.recommendation
    assert comparison.recommendation.endswith(".") and comparison.would_change.endswith(".")


@few
@given(woods, rings, years)
def test_a_steady_house_at_the_moisture_of_the_stock_needs_only_play(wood, ring, months):
    steady = [months[0]] * 12
    verdict = verdict_for("battens", piece(wood, 0.5, ring), months[0], steady, doubts=NO_DOUBTS)
    sizes = Allowances()
    assert verdict.cut("outer_slot").metres == pytest.approx(sizes.screw_diameter_m + sizes.slot_clearance_m)
    assert verdict_for("glued_border", piece(wood, 0.5, ring), months[0], steady, doubts=NO_DOUBTS).allowed
