"""Exact lengths and their one rounding."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from setting_out.lengths import INCH, lengths

from woodlib.setting_out.practice import ShopPractice
from woodlib.tables import numbers
from woodlib.units.exact import RULES, Rounding, centred, exact_text, mark


def test_by_hand():
    # 20 in = 508 mm; 508 - 128 = 380; half of it 190 mm = 7 in and 12.2 mm = 7.480 in = 119.69 sixteenths: 120 of them
    # are 7-1/2 in = 190.5 mm, 0.5 mm more: a little over 1/64 in (0.397 mm).
    rest = mark(centred("20 in", "128 mm"), "1/16 in")
    assert (rest.text, rest.error_m, rest.change) == ("7-1/2 in", Fraction(1, 2000), "1/64 in more")


@given(lengths(1, 3000), st.sampled_from(list(RULES)), st.sampled_from(["up", "down", "nearest"]))
def test_rounding_goes_its_way_and_never_a_step(length, rule, direction):
    rounding = Rounding(length, rule, direction)
    assert (rounding.marked_m / rounding.step_m).denominator == 1
    assert abs(rounding.error_m) < rounding.step_m
    assert rounding.error_m >= 0 if direction == "up" else rounding.error_m <= 0 if direction == "down" else True
    if direction == "nearest":
        assert abs(rounding.error_m) <= rounding.step_m / 2
    assert (rounding.change == "exact") == (rounding.marked_m == length)


@given(lengths(1, 3000), st.sampled_from(list(RULES)))
def test_a_marked_length_is_marked_without_error(length, rule):
    once = Rounding(length, rule).marked_m
    assert Rounding(once, rule).error_m == 0


@given(lengths(100, 3000), lengths(1, 99))
def test_centred_leaves_the_same_on_both_sides_exactly(whole, part):
    rest = centred(whole, part)
    assert rest + part + rest == whole


@given(lengths(1, 3000))
def test_exact_text_is_read_back_as_the_same_length(length):
    from woodlib.units import exact_metres

    assert exact_metres(exact_text(length)) == length
    assert exact_text(-length) == f"-{exact_text(length)}"


def test_shop_practice_is_exact_and_every_default_lies_in_its_limits():
    practice = ShopPractice()
    assert practice.saw_kerf_m == INCH / 8 and practice.marking_tolerance_m == INCH / 64
    for row in numbers("shop practice").values():
        assert row.low <= row.exact <= row.high
        assert "common practice, no source" in row.source or "from memory" in row.source
    assert ShopPractice(saw_kerf_m="3 mm", buying_waste=0.3).buying_waste == Fraction(3, 10)


@pytest.mark.parametrize(
    ("length", "text"), [(Fraction(-1, 3000), "-1/3 mm"), (Fraction(4, 3000), "1 1/3 mm"), (0, "0 mm")]
)
def test_lengths_that_never_end(length, text):
    assert exact_text(Fraction(length)) == text


def test_exact_lengths_in_the_units_of_the_brief():
    # 1/32 in and 27/256 in are exact fractions; 128 mm is 640/127 in, and no fraction of an inch that is read off.
    assert exact_text(INCH / 32, "customary") == "1/32 in" and exact_text(-3 * INCH / 2, "customary") == "-1-1/2 in"
    assert exact_text(Fraction(128, 1000), "customary") == "128 mm" and exact_text(2 * INCH, "customary") == "2 in"
    assert exact_text(Fraction(0), "customary") == "0 mm"
