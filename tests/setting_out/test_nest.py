"""Blanks on boards: nothing overlaps, nothing leaves its board, a kerf between any two; what fits is not bought."""

from fractions import Fraction
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from woodlib.brief import read_brief
from woodlib.commission import commission_of, setting_out_of
from woodlib.commission.ready import stock_ready
from woodlib.commission.shop import weight_and_wood
from woodlib.data_files import data_path
from woodlib.setting_out.blank import blank_for, strip_blank
from woodlib.setting_out.boards import StockBoard
from woodlib.setting_out.buying import to_buy
from woodlib.setting_out.nest import nest
from woodlib.setting_out.panel_boards import strips_of
from woodlib.setting_out.practice import ShopPractice
from woodlib.units.exact import MILLIMETRE

METRIC = ShopPractice.of("metric")
DEMO = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")


def part(name, long, wide, thick):
    sizes = tuple(size * MILLIMETRE for size in (long, wide, thick))
    return strip_blank(name, sizes, rule="1 mm", practice=METRIC)


def apart(one, other, kerf):
    """Whether a kerf lies between two blanks, along the board or across it."""
    return any(
        a[1] + kerf <= b[0] or b[1] + kerf <= a[0] for a, b in ((one.along, other.along), (one.across, other.across))
    )


def test_by_hand():
    # Panel 400 x 300 x 20: blank 400 + 2 x (25 + 3) = 456 long, 318 wide, 22 thick. Board 170 x 1400: a strip of 168, and
    # three lengths: 3 x 456 + 2 x 3 = 1374. Two strips reach. A rail 350 x 40: 406 x (40 + 2 + 3 = 45); the third length
    # takes three of them beside each other, 3 x 45 + 2 x 3 = 141 of 170; a fourth has to be bought.
    panel, rail = blank_for("400 mm", "300 mm", "20 mm", rule="1 mm", practice=METRIC), part("rail", 350, 40, 20)
    stock = [StockBoard("A", "170 mm", "1400 mm", "27 mm")]
    boards, _ = strips_of(panel, stock, "1 mm", METRIC)
    found = nest(boards, panel, [("rail", rail, 4)], stock, METRIC)
    assert [one.piece for one in found.laid] == ["strip 1", "strip 2", "rail", "rail", "rail"]
    assert found.laid[1].along == (459 * MILLIMETRE, 915 * MILLIMETRE)
    assert [one.across[0] / MILLIMETRE for one in found.laid[2:]] == [0, 48, 96]
    assert [(name, count) for name, _, count in found.missing] == [("rail", 1)]


SIZES = st.tuples(st.integers(100, 900), st.integers(20, 90), st.integers(8, 40), st.integers(1, 4))
BOARDS = st.tuples(st.integers(60, 300), st.integers(300, 3000), st.integers(10, 60), st.integers(1, 3))


@given(st.lists(SIZES, min_size=1, max_size=5), st.lists(BOARDS, min_size=1, max_size=4))
def test_nothing_overlaps_or_leaves_its_board(parts, boards):
    stock = [
        StockBoard(f"board {n}", *(Fraction(size, 1000) for size in sizes), count)
        for n, (*sizes, count) in enumerate(boards)
    ]
    blanks = [(f"part {n}", part(f"part {n}", *sizes), count) for n, (*sizes, count) in enumerate(parts)]
    found = nest(None, None, blanks, stock, METRIC)
    whole = {board.name: board for board in stock}
    for one in found.laid:
        board = whole[one.board]
        assert (
            0 <= one.along[0] < one.along[1] <= board.length_m and 0 <= one.across[0] < one.across[1] <= board.width_m
        )
        assert 1 <= one.copy <= board.count
    for one, other in combinations(found.laid, 2):
        if (one.board, one.copy) == (other.board, other.copy):
            assert apart(one, other, METRIC.saw_kerf_m)
    for name, _, count in blanks:
        lacking = sum(missing for other, _, missing in found.missing if other == name)
        assert sum(one.piece == name for one in found.laid) + lacking == count
    for name, blank, _ in found.missing:  # what is missing fits on no untouched board
        empty = [board for board in stock if not any(one.board == board.name for one in found.laid)]
        assert not any(
            board.thickness_m >= blank.thickness.total_m
            and board.length_m >= blank.length.total_m
            and board.width_m >= blank.width.total_m
            for board in empty
        ), name


def test_strips_lie_as_they_were_chosen_and_what_fits_is_not_bought(tmp_path):
    plan = setting_out_of(commission_of(read_brief(data_path("briefs/reading_nook_seat.toml")), "frame_panel"))
    strips = [one for one in plan.nested.laid if one.piece.startswith("strip")]
    assert sorted((one.piece, one.board) for one in strips) == [
        (f"strip {n}", strip.board) for n, strip in enumerate(plan.boards.strips, 1)
    ]
    assert not plan.nested.missing and not plan.purchases
    assert "The boards on hand give it all." in str(weight_and_wood(plan))


def test_only_what_found_no_place_is_bought(tmp_path):
    (tmp_path / "seat.toml").write_text(DEMO.replace("count = 3", "count = 1"), encoding="utf-8")
    plan = setting_out_of(commission_of(read_brief(tmp_path / "seat.toml"), "frame_panel"))
    lacks = [(name, count) for name, _, count in plan.nested.missing]
    assert lacks and len(plan.purchases) == 1
    said = ", ".join(f"{count} x {name}" for name, count in lacks)
    assert f"bought is only {said}." in str(weight_and_wood(plan))


def test_a_long_board_with_little_left_is_bought_thicker():
    # 1 in finished and 2 x 1/32 for planing: 1-1/16 in, of 5/4 3/16 is left: enough. 15/16 needs 1 in, of 4/4 nothing is left.
    assert to_buy(blank_for("60 in", "12 in", "1 in")).rough.called == "5/4"
    thin = to_buy(blank_for("60 in", "12 in", "15/16 in"))
    assert thin.rough.called == "5/4" and "4/4 would leave 0 in (0 mm) beside planing" in thin.says
    # Short boards bow little, and what was measured is counted already.
    assert to_buy(blank_for("20 in", "12 in", "15/16 in")).rough.called == "4/4"
    assert to_buy(blank_for("60 in", "12 in", "7/8 in", out_of_flat="1/16 in")).rough.called == "4/4"


def test_boards_on_hand_that_are_barely_thick_enough_are_told(tmp_path):
    # The seat needs 15/16 in; boards of 31/32 leave 1/32, less than 1/16: 4/4 is safer (1 in leaves 1/16).
    (tmp_path / "seat.toml").write_text(
        DEMO.replace('\nthickness = "1 in"', '\nthickness = "31/32 in"'), encoding="utf-8"
    )
    assert 'thickness = "31/32 in"' in (tmp_path / "seat.toml").read_text(encoding="utf-8")
    said = str(stock_ready(commission_of(read_brief(tmp_path / "seat.toml"))))
    assert "For boards so long that is little: 4/4 is safer." in said
