"""What must hold for every way, whatever the piece, the stock and the air; each gap as it is cut, in every month."""

from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodlib.movement.spread import NO_DOUBTS
from woodlib.movement.wood import Wood, width_strain
from woodlib.units import rounded_steps
from woodlib.ways.held import Held
from woodlib.ways.index import compare, verdict_for
from woodlib.ways.piece import Allowances, Piece
from woodlib.ways.registry import every_way, kinds, way_of, ways_for

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
OAK = Wood("white oak", 0.00180, 0.00365, 0.052, 0.102)
woods = st.sampled_from([ASH, OAK])
widths = st.floats(0.15, 1.2)
rings = st.floats(0, 90)
stocks = st.floats(5, 13)
years = st.lists(st.floats(4, 16), min_size=12, max_size=12)
keys = st.sampled_from([way.key for way in every_way()])
few = settings(max_examples=30, deadline=None)
LEAST, SIZES = Allowances().least_gap_m, Allowances()


def piece(wood=ASH, width=0.5, ring=0.0):
    return Piece(wood, width, 1.0, 0.02, 0.06, ring_angle_deg=ring)


def as_cut(verdict):
    """What leaves the shop: every cut as it is read off in inches."""
    sizes = {}
    for cut in verdict.cuts:
        steps = 32 if cut.fine else 16
        sizes[cut.label] = float(Fraction(rounded_steps(cut.metres / 0.0254, steps, cut.rounding), steps)) * 0.0254
    return sizes


def strains(thing, stock, months):
    return width_strain(thing.wood, np.radians(thing.ring_angle_deg), 0.0, stock, np.array(months))


@few
@given(woods, widths, rings, stocks, years)
def test_doors_and_drawers_clear_in_every_month(wood, width, ring, stock, months):
    thing = piece(wood, width, ring)
    grown = 1.0 + strains(thing, stock, months)
    for key, name in (
        ("drawer_front", "drawer front, height"),
        ("drawer_side", "drawer side, height"),
        ("inset_panel", "panel, width across the grain"),
    ):
        cut = as_cut(verdict_for(key, thing, stock, months, doubts=NO_DOUBTS))
        assert np.all(width - cut[name] * grown >= LEAST - 1e-9)


@few
@given(woods, widths, rings, stocks, years)
def test_back_boards_never_push_and_never_show_light(wood, width, ring, stock, months):
    thing = piece(wood, width, ring)
    change = SIZES.back_board_m * strains(thing, stock, months)
    for key, reach in (("lapped_back", "lap on each edge, width"), ("tongued_back", "tongue, length")):
        cut = as_cut(verdict_for(key, thing, stock, months, doubts=NO_DOUBTS))
        gap = cut["gap between boards today"] - change
        assert np.all(gap >= LEAST - 1e-9)
        assert np.all(cut[reach] - gap > 0.0)
        assert np.all(cut["gap between the outer boards and the case today"] - 0.5 * change >= LEAST - 1e-9)
        if key == "tongued_back":
            assert np.all(cut["groove for the tongue, depth"] >= cut[reach] - gap)


@few
@given(woods, widths, rings, stocks, years)
def test_bottom_covers_the_back_and_slides_past_its_screw(wood, width, ring, stock, months):
    thing = piece(wood, width, ring)
    strain = strains(thing, stock, months)
    cut = as_cut(verdict_for("drawer_bottom", thing, stock, months, doubts=NO_DOUBTS))
    wanted = SIZES.groove_cover_m + width + thing.border_thickness_m
    assert np.all(cut["bottom, width from front to back"] * (1.0 + strain) >= wanted - 1e-9)
    slide = strain * (SIZES.groove_cover_m + width + 0.5 * thing.border_thickness_m)
    backward = cut["screw slot below the back, backward from the screw's centre"]
    forward = cut["screw slot below the back, forward from the screw's centre"]
    assert np.all(backward + slide >= 0.5 * SIZES.screw_diameter_m - 1e-9)
    assert np.all(forward - slide >= 0.5 * SIZES.screw_diameter_m - 1e-9)


@few
@given(woods, widths, rings, stocks, years)
def test_batten_and_its_housing_stay_apart_and_hidden(wood, width, ring, stock, months):
    thing = piece(wood, width, ring)
    strain = strains(thing, stock, months)
    cut = as_cut(verdict_for("sliding_dovetail", thing, stock, months, doubts=NO_DOUBTS))
    edge = 0.5 * width * strain
    assert np.all(cut["gap between the batten's front end and the stop"] + edge >= 0.0)
    assert np.all(cut["batten, set back from the back edge"] + edge >= SIZES.edge_cover_m - 1e-9)
    assert np.all(cut["slack across the dovetail, housing over batten"] - thing.border_width_m * strain >= -1e-9)


@few
@given(woods, widths, rings, stocks, years)
def test_screws_plates_and_rings_never_bind(wood, width, ring, stock, months):
    thing = piece(wood, width, ring)
    strain = strains(thing, stock, months)
    blocks = as_cut(verdict_for("slotted_blocks", thing, stock, months, doubts=NO_DOUBTS))
    found = verdict_for("battens", thing, stock, months, doubts=NO_DOUBTS)
    battens, out = as_cut(found), found.quantities["outer_distance"] / width
    for cut, slots, share in (
        (blocks, "slots in the blocks of the long aprons", 0.5),
        (battens, "outer slots", out),
        (battens, "halfway slots", 0.5 * out),
    ):
        slide = share * width * strain
        assert np.all(cut[f"{slots}, outward from the screw's centre"] - slide >= 0.5 * SIZES.screw_diameter_m)
        assert np.all(cut[f"{slots}, inward from the screw's centre"] + slide >= 0.5 * SIZES.screw_diameter_m)
    plates = as_cut(verdict_for("figure_plates", thing, stock, months, doubts=NO_DOUBTS))
    swing = np.ptp(np.append(0.42 * width * strain, 0.0))
    assert plates["recess in the end aprons, width along the apron"] >= SIZES.plate_width_m + swing
    hole = as_cut(verdict_for("loose_ring", thing, stock, months, doubts=NO_DOUBTS))["ring, inside diameter"]
    for post in (strain, 0.0 * strain):  # the ring's hole shrinks across its grain, and not along it
        for ring_hole in (strain, 0.0 * strain):
            assert np.all(hole * (1.0 + ring_hole) - width * (1.0 + post) >= LEAST)


@few
@given(woods, widths, rings, stocks, years)
def test_framed_panel_neither_rattles_out_nor_blows_out(wood, width, ring, stock, months):
    thing = piece(wood, width, ring)
    for key in ("frame_panel", "mitred_frame"):
        found = verdict_for(key, thing, stock, months, doubts=NO_DOUBTS)
        cut = as_cut(found)
        opening = width - 2.0 * thing.border_width_m
        deep = 0.5 * (cut["panel, width across the grain"] * (1.0 + strains(thing, stock, months)) - opening)
        assert np.all(cut["groove in the stiles, depth"] - deep >= 0.0) and np.all(deep > 0.0)
        assert cut["play of the panel's edge across its groove today"] >= found.quantities["tongue_widening"]


@few
@given(keys, woods, widths, rings, stocks, years, st.floats(0, 3), st.floats(0, 3))
def test_a_wider_range_of_moisture_never_narrows_a_gap(key, wood, width, ring, stock, months, drier, damper):
    wider = list(months)
    wider[int(np.argmin(months))] -= drier
    wider[int(np.argmax(months))] += damper
    here, there = (verdict_for(key, piece(wood, width, ring), stock, m) for m in (months, wider))
    for narrow, wide in zip((*here.cuts, *here.states), (*there.cuts, *there.states), strict=True):
        if narrow.rounding == "up":
            assert wide.metres >= narrow.metres - 1e-12, narrow.name
    assert there.level >= here.level or max(months) == min(months)


@few
@given(keys, woods, widths, rings, stocks, years, st.floats(1.0, 1.5))
def test_a_wider_panel_never_gets_a_smaller_slot(key, wood, width, ring, stock, months, factor):
    here, there = (verdict_for(key, piece(wood, w, ring), stock, months) for w in (width, factor * width))
    for small, large in zip((*here.cuts, *here.states), (*there.cuts, *there.states), strict=True):
        assert large.metres >= small.metres - 1e-12, small.name


@few
@given(keys, woods, widths, rings, stocks, years)
def test_every_verdict_is_complete_and_nothing_is_below_zero(key, wood, width, ring, stock, months):
    verdict = verdict_for(key, piece(wood, width, ring), stock, months)
    assert all(np.isfinite(value) for value in verdict.quantities.values())
    assert all(cut.metres > 0 for cut in verdict.cuts if not cut.label.startswith("slack"))
    assert all(state.metres >= 0 for state in verdict.states)
    assert verdict.restrained_strain.low <= verdict.restrained_strain.mid <= verdict.restrained_strain.high
    assert verdict.allowed == (verdict.level == 0 and not verdict.unfit)
    words = (verdict.driest, verdict.dampest, verdict.reason, verdict.way.change, *verdict.way.steps, *verdict.cautions)
    for sentence in words:
        assert sentence.endswith(".") and "{" not in sentence and "\n" not in sentence
    names = [cut.label for cut in (*verdict.cuts, *verdict.states)]
    assert len(set(names)) == len(names)


@few
@given(keys, woods, st.floats(5, 12))
def test_a_steady_house_strains_nothing(key, wood, moisture):
    verdict = verdict_for(key, piece(wood), moisture, [moisture] * 12, doubts=NO_DOUBTS)
    assert verdict.restrained_strain.high == 0.0 and (verdict.allowed or verdict.unfit)
    assert verdict.moves.mid_m == pytest.approx(0.0, abs=1e-12)


@few
@given(st.sampled_from(kinds()), woods, widths, stocks, years)
def test_a_kind_is_compared_with_all_that_serve_it(kind, wood, width, stock, months):
    comparison = compare(piece(wood, width), stock, months, kind=kind, held=lambda piece: Held(1.0))
    assert {verdict.key for verdict in comparison} == {way.key for way in ways_for(kind)}
    order = [(not v.allowed, bool(v.unfit), v.level, not v.way.solid) for v in comparison]
    assert order == sorted(order)
    assert comparison.recommendation.endswith(".") and comparison.would_change.endswith(".")
    assert comparison[0].way.built_as in comparison.recommendation


def test_no_kind_means_the_usual_six_as_before():
    months = [6, 6, 7, 8, 9, 10, 11, 11, 10, 8, 7, 6]
    assert {verdict.key for verdict in compare(piece(), 8, months)} == {way.key for way in ways_for()}
    assert len(ways_for()) == 6


def test_the_readme_says_how_many_ways_there_are():
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    assert f"{len(every_way())} ways to end, frame or fix a panel" in readme


def test_thinner_veneer_and_thinner_rims_are_strained_less():
    months = [6, 6, 7, 8, 9, 10, 11, 11, 10, 8, 7, 6]
    thin, thick = (Allowances(veneer_thickness_m=size) for size in ("0.5 mm", "2 mm"))
    found = [verdict_for("veneered_sheet", piece(), 8, months, allowances=sizes) for sizes in (thin, thick)]
    assert found[0].restrained_strain.high < found[1].restrained_strain.high
    rims = [Piece(ASH, 0.5, 1.0, 0.02, 0.06, border_thickness_m=size) for size in (0.005, 0.02)]
    found = [verdict_for("glued_face_rim", rim, 8, months) for rim in rims]
    assert found[0].restrained_strain.high < found[1].restrained_strain.high


def test_every_way_says_what_it_serves_and_rounds_the_safe_way():
    loose = ("slot", "groove", "gap", "space", "set back", "slack", "recess", "rebate", "reveal", "play", "ring,")
    for way in every_way():
        assert way.kinds and set(way.kinds) <= set(kinds()) and way.change.endswith(".")
        assert way_of(way.key) is way
        for rule in way.cuts:
            if rule.label.startswith(loose):
                assert rule.rounding == "up", rule.label
            if rule.label.split(",")[0] in ("panel", "tongue", "drawer front", "drawer side", "batten"):
                assert rule.rounding == "down" or "set back" in rule.label, rule.label
