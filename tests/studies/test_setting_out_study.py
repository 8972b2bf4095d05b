"""The study of setting out: held against the exact rows and fits of the library, at every corner, frozen whole."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.setting_out.holes import hole_fit, hole_pair, markings
from woodlib.setting_out.joints import even_row, joint_row
from woodlib.setting_out.later_cuts import LaterCut
from woodlib.setting_out.practice import ShopPractice
from woodlib.studies.setting_out_study import (
    BLANK_M,
    CENTRES_M,
    DOWEL_M,
    FIXED_DOWELS_M,
    RULES,
    clearances,
    marked,
    setting_out_study,
)
from woodlib.words.decided import chosen
from woodlib.words.say import plain_text

EIGHTH = Fraction("0.003175")  # 1/8 in
QUARTER_MM = Fraction(1, 4000)
PRACTICE = ShopPractice()


def places(low_in: float, high_in: float):
    """Exact places on the grid of eighths that the sliders have."""
    return some.integers(int(low_in * 8), int(high_in * 8)).map(lambda number: number * EIGHTH)


states = some.fixed_dictionaries(
    {
        "rule": some.sampled_from(list(RULES)),
        "cut": places(30, 40),
        "pull": places(14, 24),
        "dowel": places(26.5, 41.5),
        "hole": some.integers(16, 28).map(lambda number: number * QUARTER_MM),
    }
)


def answered(state):
    return setting_out_study.answer(**{key: value if key == "rule" else float(value) for key, value in state.items()})


def exact_plan(state):
    """The same blank by the exact row of the library."""
    kerf = LaterCut("cut between the fronts", state["cut"], state["cut"] + PRACTICE.saw_kerf_m)
    pair = hole_pair("44 in", "128 mm", middle=state["pull"])
    holes = [
        LaterCut(f"hole {at}", place - state["hole"] / 2, place + state["hole"] / 2)
        for at, place in enumerate(pair.holes_m)
    ]
    fixed = [Fraction(number) * 8 * EIGHTH for number in (2, 10, 18, 26)]
    row = [*fixed, state["dowel"], Fraction(42) * 8 * EIGHTH]
    return joint_row("44 in", [kerf, *holes], positions=row)


def test_the_row_is_the_even_row_of_the_library():
    row = even_row(Fraction(44) * 8 * EIGHTH, PRACTICE.dowel_end_m, PRACTICE.dowel_spacing_m)
    assert [float(place) for place in (*row[:4], row[5])] == pytest.approx(list(FIXED_DOWELS_M))
    start = setting_out_study.start
    assert start["dowel"] == pytest.approx(float(row[4])) and pytest.approx(44 * 0.0254) == BLANK_M


@given(states)
@settings(max_examples=60, deadline=None)
def test_it_warns_exactly_where_the_exact_row_conflicts(state):
    conflicts = exact_plan(state).conflicts
    tones = {reading.label: chosen(reading.tone) for reading in answered(state).readings}
    for label, start in (
        ("Dowels and the cut", "cut between"),
        ("Dowels and the pull's holes", "hole"),
        ("Dowels and their neighbours", "neighbour"),
    ):
        own = [conflict for conflict in conflicts if conflict.cut.startswith(start)]
        wanted = "fine" if not own else "stop" if min(conflict.clear_m for conflict in own) < 0 else "watch"
        assert tones[label] == wanted, label


@given(states)
@settings(max_examples=40, deadline=None)
def test_the_clearances_are_those_of_the_exact_conflicts(state):
    floats = {key: value if key == "rule" else float(value) for key, value in state.items()}
    clear = clearances(**floats)
    conflicts = exact_plan(state).conflicts
    for number in range(1, 7):
        own = [float(conflict.clear_m) for conflict in conflicts if conflict.number == number]
        if own:
            assert float(clear.by_dowel[number - 1]) <= min(own) + 1e-12
    if conflicts:
        least = min(float(value) for value in clear.by_dowel)
        assert least == pytest.approx(min(float(conflict.clear_m) for conflict in conflicts), abs=1e-12)


@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("hole", ["4 mm", "5 mm", "5.75 mm", "6 mm", "6.75 mm"])
def test_screws_fit_where_the_library_says_so(rule, hole):
    way = markings(hole_pair("34 in", "128 mm"), rule)[1]
    fit = hole_fit(rounding_error=way.misfit_m, hole=hole)
    answer = setting_out_study.answer(rule=rule, hole=hole)
    reading = next(reading for reading in answer.readings if reading.label.startswith("Hole"))
    assert (chosen(reading.tone) == "fine") is fit.fits
    assert float(reading.value.value) == pytest.approx(float(fit.needs_m), abs=1e-12)


def test_metric_centres_on_an_inch_rule_by_hand():
    """64 mm is 2.5197 in: 2-1/2 in on sixteenths, 0.5 mm short each way, so 1 mm between the holes.

    Each screw is then off by 0.5 mm of rounding and 1/64 in each of marking and drilling, 1.29 mm together; the hole it
    needs is 4 + 2 x 1.29 = 6.59 mm.
    """
    assert float(marked("1/16 in").centres_error_m) == pytest.approx(0.001)
    assert float(marked("0.5 mm").centres_error_m) == 0.0
    clear = clearances("1/16 in", 0.8636, 0.4318, 0.8636, 0.005)
    assert clear.needs == pytest.approx(0.0065875, abs=1e-9)
    words = "\n".join(setting_out_study.answer().lines())
    assert "2-1/2 in and 2-1/2 in" in words and "3/64 in (1 mm) off their distance" in words


def test_a_dowel_under_the_saw_by_hand():
    """Dowel 5 at 34 in, 3/8 in thick: it reaches 3/16 in past where the 1/8 in cut begins."""
    clear = clearances("1/16 in", 34 * 0.0254, 17 * 0.0254, 34 * 0.0254, 0.005)
    assert float(clear.dowels_cut) == pytest.approx(-3 / 16 * 0.0254)
    words = setting_out_study.answer().lines()[1]
    assert "overlap of 3/16 in (4.8 mm)" in words and "the saw goes into a dowel" in words
    room = next(line for line in setting_out_study.answer().lines() if line.startswith("Dowel 5"))
    assert "up to 33-9/16 in" in room and "from 34-9/16 in" in room
    for dowel in ("33-1/2 in", "34-5/8 in"):
        assert "keeps the margin" in setting_out_study.answer(dowel=dowel).lines()[1]


@pytest.mark.parametrize(
    ("pull", "words"), [("17 in", "in the middle"), ("16-7/8 in", "left of"), ("17-1/8 in", "right of")]
)
def test_it_tells_where_the_pull_sits(pull, words):
    ends = next(line for line in setting_out_study.answer(pull=pull).lines() if line.startswith("From the holes"))
    assert words in ends


def test_a_margin_that_is_met_exactly_is_kept():
    """Dowel 5 at 41-3/8 in leaves 42 - 41-3/8 - 3/8 = 1/4 in to its neighbour, the margin itself."""
    line = setting_out_study.answer(dowel="41-3/8 in").lines()[3]
    assert line.startswith("Dowels and their neighbours: 1/4 in") and "keeps the margin" in line


def test_every_corner_is_finite_and_stays_on_its_sheet():
    for corner in setting_out_study.corners():
        answer = setting_out_study.function(**corner)
        assert all(math.isfinite(leaf) for leaf in record(answer).leaves.ravel()), corner
        alt = answer.alt_text()
        assert "Dowels and the cut" in alt and " mm)" in alt
        for mark in answer.picture.marks:
            for x, y in getattr(mark, "points", ()):
                assert 0 <= float(x) <= answer.picture.width and 0 <= float(y) <= answer.picture.height


@given(states)
@settings(max_examples=30, deadline=None)
def test_a_larger_hole_never_fits_worse_and_leaves_less_wood(state):
    floats = {key: value if key == "rule" else float(value) for key, value in state.items()}
    here, larger = clearances(**floats), clearances(**{**floats, "hole": floats["hole"] + 0.0005})
    assert larger.needs == here.needs
    assert float(larger.dowels_holes) <= float(here.dowels_holes)
    assert float(larger.holes_cut) <= float(here.holes_cut)


def test_the_headline_names_both():
    said = plain_text(setting_out_study.answer(dowel="32 in", rule="0.5 mm", hole="6 mm").headline)
    assert said == "Everything keeps the margin, and the screws go in at the worst."
    assert CENTRES_M == 0.128 and pytest.approx(0.009525) == DOWEL_M


def test_it_freezes_and_the_page_says_what_python_says():
    checked = freeze_checked(setting_out_study)
    assert checked.states >= 300 and checked.worst_px < 0.5 and checked.frozen.plan.size < 3000
