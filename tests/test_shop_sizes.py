"""Sizes that exist: each in its own system, exact, each way of looking one up the safe way."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import MissingDataError
from woodlib.setting_out.holes import hole_fit
from woodlib.setting_out.practice import ShopPractice
from woodlib.shop_sizes import TABLES, TOOLS, at_least, at_most, nearest, sold
from woodlib.tables import rows
from woodlib.units.exact import INCH, MILLIMETRE


@pytest.mark.parametrize("system", TABLES)
@pytest.mark.parametrize("tool", TOOLS)
def test_sizes_are_read_off_a_rule_of_their_own_system(tool, system):
    step = MILLIMETRE / 2 if system == "metric" else INCH / 64
    sizes = sold(tool, system)
    assert all(size.size_m % step == 0 and size.text.endswith("mm" if system == "metric" else "in") for size in sizes)
    assert [size.size_m for size in sizes] == sorted({size.size_m for size in sizes})
    known = {row["status"] for row in rows("statuses.csv")}
    assert {row["status"] for row in rows(TABLES[system])} <= known and all(
        row["source"] for row in rows(TABLES[system])
    )


def test_a_tool_that_no_table_has_is_said():
    with pytest.raises(MissingDataError, match="has no tool 'spanner'"):
        sold("spanner")


@given(st.fractions(Fraction(2, 1000), Fraction(24, 1000), max_denominator=10**6), st.sampled_from(list(TABLES)))
def test_the_safe_size_is_taken(wanted, system):
    sizes = sold("drill", system)
    up, down = at_least(sizes, wanted), at_most(sizes, wanted)
    assert up.size_m >= wanted >= down.size_m and nearest(sizes, wanted) in (up, down)
    assert not any(down.size_m < size.size_m < up.size_m for size in sizes)


def test_a_bit_of_the_shop_is_taken_before_one_that_is_bought():
    # 4 mm screw, off by 0.25 + 0.25: 5 mm are needed. 5.5 is at hand; 8 would be far too loose.
    errors = {"marking": "0.25 mm", "drilling": "0.25 mm", "first": "metric"}
    assert hole_fit("4 mm", **errors, practice=ShopPractice(drills_m=("5.5 mm", "8 mm"))).drill.text == "5.5 mm"
    assert hole_fit("4 mm", **errors, practice=ShopPractice(drills_m=("4 mm", "8 mm"))).drill.text == "5 mm"


def test_a_hole_beyond_all_bits_is_opened_up():
    assert hole_fit("24.6 mm", marking="1 mm", drilling=0, first="metric").drill.text == "27 mm"
