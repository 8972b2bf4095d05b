"""Hole centres, their marks, their clearance, and slots across the grain."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from setting_out.lengths import INCH, lengths

from woodlib.restraint.fasteners import FITTING_ALLOWANCE_M
from woodlib.setting_out.holes import best_marking, hole_fit, hole_pair, markings, shared_middles
from woodlib.setting_out.kernels import rest_each_side, slot_length
from woodlib.setting_out.slots import grain_slots
from woodlib.units.exact import RULES

MM = Fraction(1, 1000)


def test_metric_centres_on_inch_work_by_hand():
    # 20 in = 508 mm, centres 128 mm: holes at 254 - 64 = 190 and 318 mm. In sixteenths 119.685 and 200.315: marked 120
    # (190.5, 0.5 more) and 200 (317.5, 0.5 less): centres 1 mm short, each hole 0.5 mm off. From the centre line 64 mm
    # is a whole millimetre: no error at all.
    pair = hole_pair("20 in", "128 mm")
    assert pair.holes_m == (190 * MM, 318 * MM) and pair.rest_m == (190 * MM, 190 * MM)
    left, middle = markings(pair, "1/16 in")
    assert [mark.error_m for mark in left.marks] == [MM / 2, -MM / 2]
    assert (left.centres_error_m, left.misfit_m, left.aside_m) == (MM, MM / 2, 0)
    rule, way = best_marking(pair)
    assert (rule, way.start, way.worst_m, way.middle) == ("0.5 mm", "the centre line", 0, None)


def test_two_pulls_share_an_edge_by_hand():
    # 44 in: middles at 11 and 33 in. Left pull: 279.4 -+ 64 = 215.4 and 343.4 mm. Its centre line is read off as 11 in.
    middles = shared_middles(44 * INCH, 2)
    assert middles == (11 * INCH, 33 * INCH)
    pair = hole_pair("44 in", "128 mm", middle=middles[0])
    assert [float(hole / MM) for hole in pair.holes_m] == [215.4, 343.4]
    _, way = best_marking(pair)
    assert way.middle.text == "11 in" and way.aside_m == 0


def test_clearance_by_hand():
    # Marks 0.4 mm off, drill 0.3 mm off, marks rounded 0.1 mm: each screw 0.8 mm off, two apart by up to 1.6 mm.
    # A 4 mm screw needs 4 + 1.6 = 5.6 mm; the next half-millimetre bit is 6 mm. A 5 mm hole allows (5 - 4)/2 = 0.5 mm.
    fit = hole_fit("4 mm", marking="0.4 mm", drilling="0.3 mm", rounding_error="0.1 mm", hole="5 mm", first="metric")
    assert (fit.off_m, fit.needs_m, fit.allows_m) == (MM * 8 / 10, MM * 56 / 10, MM / 2)
    assert fit.drill.text == "6 mm" and not fit.fits and "open the hole to 6 mm" in fit.says
    assert hole_fit("4 mm", marking="0.4 mm", drilling="0.1 mm", hole="5 mm").says.endswith("which is enough.")


def test_slot_by_hand():
    # Centres 300 mm across the grain; from today +0.6 % to the dampest and -1.0 % to the driest month.
    # Travel 300 * 0.016 = 4.8 mm; slot 4 + 4.8 + 1.5 to fit = 10.3 mm, cut 10.5 mm.
    slots = grain_slots(hole_pair("400 mm", "300 mm"), 0.006, -0.010, screw="4 mm")
    assert slots.plan.longest_m == pytest.approx(0.0103, abs=1e-12)
    assert slots.lengths[0].text == "10.5 mm" and slots.lengths[0].exact_m == MM * 103 / 10
    assert "up to 27/64 in (10.5 mm) long" in slots.says
    # The wood shrinks 3.0 mm inward and grows 1.8 mm outward past the screw, which stays with the hardware: the slot
    # reaches 3.0 mm out and 1.8 mm in, its middle (3.0 - 1.8)/2 = 0.6 mm further out than the mark.
    assert slots.middles[0].text == "0.6 mm" and slots.at(slots.pair.holes_m[0]) is None
    assert slots.at(slots.pair.holes_m[1]) == (slots.lengths[0], slots.middles[0])


@given(lengths(200, 3000), lengths(10, 190), st.integers(2, 4))
def test_rows_lie_in_the_middle_to_the_exact_half(work, centres, count):
    if centres * (count - 1) >= work:
        return
    pair = hole_pair(work, centres, count=count)
    assert pair.mirrored and pair.rest_m[0] == pair.rest_m[1] == rest_each_side(work, centres * (count - 1))
    assert all(b - a == centres for a, b in zip(pair.holes_m, pair.holes_m[1:], strict=False))


@given(lengths(400, 3000), lengths(10, 190), st.sampled_from(list(RULES)))
def test_marks_are_off_by_half_a_step_at_most(work, centres, rule):
    pair, step = hole_pair(work, centres), RULES[rule]
    for way in markings(pair, rule):
        assert way.worst_m <= step / 2 and way.centres_error_m <= step
        assert way.misfit_m <= way.worst_m
        assert 2 * way.misfit_m == way.centres_error_m
    best = best_marking(pair, [rule])[1]
    assert best.centres_error_m == min(way.centres_error_m for way in markings(pair, rule))


@given(lengths(400, 3000), lengths(10, 190), st.sampled_from(list(RULES)))
def test_marks_from_the_middle_stay_mirrored(work, centres, rule):
    marks = markings(hole_pair(work, centres), rule)[1].marks
    assert marks[0].marked_m == -marks[1].marked_m


@given(lengths(2, 12), lengths(0, 3), lengths(0, 3), st.sampled_from(["customary", "metric"]))
def test_the_drill_named_always_takes_the_screws(screw, marking, drilling, first):
    fit = hole_fit(screw, marking=marking, drilling=drilling, first=first)
    again = hole_fit(screw, marking=marking, drilling=drilling, hole=fit.drill.size_m)
    assert again.fits and again.allows_m >= marking + drilling
    assert fit.needs_m >= screw


@given(lengths(400, 1200), lengths(20, 190), st.floats(0, 0.03), st.floats(-0.03, 0), st.floats(0, 0.02))
def test_a_wider_year_never_narrows_a_slot(work, centres, swelling, shrinkage, more):
    pair = hole_pair(work, centres)
    narrow = grain_slots(pair, swelling, shrinkage, screw="4 mm")
    wide = grain_slots(pair, swelling + more, shrinkage - more, screw="4 mm")
    assert wide.lengths[0].marked_m >= narrow.lengths[0].marked_m
    assert float(narrow.lengths[0].marked_m) >= narrow.plan.longest_m - 1e-6
    kernel = slot_length(0.004, float(centres), swelling, shrinkage, FITTING_ALLOWANCE_M)
    assert kernel == pytest.approx(narrow.plan.longest_m, abs=1e-12)
