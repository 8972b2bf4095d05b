"""Boards from the stock on hand."""

from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from setting_out.lengths import lengths

from woodlib.errors import InputError
from woodlib.setting_out.blank import blank_for
from woodlib.setting_out.boards import StockBoard, boards_for
from woodlib.setting_out.practice import ShopPractice

PLAIN = ShopPractice(
    saw_kerf_m="3 mm", end_trim_m="25 mm", edge_trim_m="6 mm", edge_jointing_m="1 mm", face_planing_m="1 mm"
)
BLANK = blank_for("900 mm", "455 mm", "20 mm", rule="1 mm", practice=PLAIN)  # 956 x 473 x 22 mm


def plan(*stock, **more):
    return boards_for(BLANK, list(stock), practice=PLAIN, **more)


def test_by_hand():
    # 473 mm wanted. Jointed: A 170 - 2 = 168, B 160 - 2 = 158, C 152 - 2 = 150. Three are needed (168 + 158 < 473).
    # A is 2 m long: (2000 + 3) // (956 + 3) = 2 lengths. Sets of three: 168+168+158 = 494, 168+168+150 = 486,
    # 168+158+150 = 476: least surplus 3 mm, 1.5 mm off each edge. Widest in the middle: C, A, B or its mirror.
    found = plan(
        StockBoard("A", "170 mm", "2 m", "25 mm"),
        StockBoard("B", "160 mm", "1 m", "25 mm"),
        StockBoard("C", "152 mm", "1 m", "25 mm"),
        StockBoard("thin", "300 mm", "2 m", "21 mm"),
        StockBoard("short", "300 mm", "955 mm", "25 mm"),
    )
    assert [strip.board for strip in found.strips] == ["C", "A", "B"]
    assert found.surplus_m == Fraction(3, 1000)
    # Glue lines: 150 - 1.5 = 148.5 and 148.5 + 168 = 316.5 mm from the edge of the blank.
    assert found.joints_m == (Fraction(1485, 10_000), Fraction(3165, 10_000))
    assert [text.split()[0] for text in found.left_out] == ["thin", "short"]


def test_equal_strips_by_hand():
    # 473 / 3 = 157.67 mm: marked 158 mm, 3*158 - 473 = 1 mm surplus.
    found = plan(StockBoard("A", "170 mm", "1 m", "25 mm", 3), equal_widths=True, rule="1 mm")
    assert [strip.width_m * 1000 for strip in found.strips] == [158] * 3 and found.surplus_m == Fraction(1, 1000)
    assert found.joints_m == tuple(sorted(BLANK.width.total_m - at for at in found.joints_m))


def test_ripped_for_the_jointer_by_hand():
    # 320 mm with no strip wider than 160 rough: (320 + 3)/(160 + 3) = 1.98: 2 strips of (320 - 3)/2 - 2 = 156.5 mm.
    found = plan(StockBoard("A", "320 mm", "1 m", "25 mm", 2), widest="160 mm")
    assert {strip.width_m * 1000 for strip in found.strips} == {Fraction(1565, 10)} and len(found.strips) == 4


@given(st.lists(lengths(60, 300), min_size=1, max_size=7))
def test_fewest_strips_and_least_surplus(widths):
    stock = [StockBoard(f"board {n}", width, "1 m", "25 mm") for n, width in enumerate(widths)]
    jointed, needed = [width - Fraction(2, 1000) for width in widths], BLANK.width.total_m
    enough = [
        (len(chosen), sum(chosen))
        for k in range(1, len(widths) + 1)
        for chosen in combinations(jointed, k)
        if sum(chosen) >= needed
    ]
    if not enough:
        with pytest.raises(InputError, match="add boards"):
            boards_for(BLANK, stock, practice=PLAIN)
        return
    found = boards_for(BLANK, stock, practice=PLAIN)
    assert (len(found.strips), found.glued_m) == min(enough)
    assert len({strip.board for strip in found.strips}) == len(found.strips)
    division = found.division
    assert division.total_m == found.glued_m and sum(part.size_m for part in division.pieces) == needed
    assert list(found.joints_m) == sorted(found.joints_m)


@given(lengths(60, 300), st.integers(1, 12))
def test_equal_strips_lie_mirrored(width, count):
    assume((width - Fraction(2, 1000)) * count >= BLANK.width.total_m + Fraction(20, 1000))
    found = boards_for(BLANK, [StockBoard("A", width, "1 m", "25 mm", count)], equal_widths=True, practice=PLAIN)
    assert found.division.mirrored
    assert found.joints_m == tuple(BLANK.width.total_m - at for at in found.joints_m[::-1])


def test_a_varied_stack_is_searched_without_end_in_sight():
    # 60 boards of 60 different widths, no two sums alike: the search stops at its limit and says so, or finishes.
    wide = blank_for("900 mm", "2 m", "20 mm", practice=PLAIN)
    stock = [StockBoard(f"board {n}", Fraction(100, 1000) + Fraction(2**n, 10**21), "1 m", "25 mm") for n in range(60)]
    found = boards_for(wide, stock, practice=PLAIN)
    assert found.surplus_m >= 0 and len(found.strips) == 21
    assert found.remarks


def test_how_many_boards_are_cut_into():
    # The blank is 46-1/4 in long: a board of 8 ft gives two lengths, one of 50 in gives one. Four strips of A come from two.
    blank = blank_for("44 in", "20 in", "7/8 in")
    plan = boards_for(blank, [StockBoard("A", "6 in", "8 ft", "1 in", 3), StockBoard("short", "6 in", "40 in", "1 in")])
    assert plan.used == (("A", 2, 4),) and dict(plan.gives) == {"A": 2}
    plan = boards_for(blank, [StockBoard("B", "7-1/4 in", "50 in", "1 in", 3)])
    assert plan.used == (("B", 3, 3),)


def test_a_surplus_beyond_the_trim_is_ripped_off_once():
    # 473 wanted. Three of 170 - 2 = 168 make 504: 31 over, more than the 6 of the trim, so it comes off the far edge:
    # glue lines at 168 and 336, and the last strip keeps 168 - 31 = 137. With 160: 474, 1 over, 0.5 off each edge.
    found = plan(StockBoard("A", "170 mm", "1 m", "25 mm", 3))
    assert found.once and found.joints_m == (Fraction(168, 1000), Fraction(336, 1000))
    assert [part.size_m * 1000 for part in found.division.pieces] == [168, 168, 137]
    close = plan(StockBoard("A", "160 mm", "1 m", "25 mm", 3))
    assert not close.once and close.joints_m[0] == Fraction(1575, 10_000)


def test_boards_are_spoken_of_in_the_units_of_the_rule():
    thin, wide = StockBoard("thin", "300 mm", "2 m", "21 mm"), StockBoard("A", "480 mm", "1 m", "25 mm")
    assert plan(thin, wide, rule="1 mm").left_out == ("thin is 21 mm (53/64 in) thick, less than 22 mm (7/8 in)",)
    with pytest.raises(InputError, match=r"stock gives 0 mm .* needs 473 mm \("):
        plan(thin, rule="1 mm")
