"""The shop as it is: strips that fit the jointer, sections that pass the thicknesser, clamps that reach, glue in time."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.brief import Shop, read_brief
from woodlib.commission import commission_of, setting_out_of
from woodlib.commission.in_the_shop import gluing_up, the_shop
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.setting_out.blank import blank_for
from woodlib.setting_out.boards import BoardsPlan, StockBoard, Strip, boards_for
from woodlib.setting_out.panel_boards import strips_of
from woodlib.setting_out.practice import ShopPractice
from woodlib.setting_out.sections import glue_up
from woodlib.units.exact import INCH, MILLIMETRE

DEMO = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")


def seat(folder, own="", beside=""):
    """The demonstration with a shop of its own, or with a file of the shop beside it."""
    (folder / "seat.toml").write_text(f"{DEMO}\n{own}", encoding="utf-8")
    if beside:
        (folder / "shop.toml").write_text(beside, encoding="utf-8")
    return read_brief(folder / "seat.toml")


def panel(*widths_mm):
    strips = tuple(Strip("A", Fraction(width, 1000)) for width in widths_mm)
    return BoardsPlan(strips, sum(strip.width_m for strip in strips), (), ())


def test_what_a_brief_says_of_its_shop_goes_before_the_file_beside_it(tmp_path):
    both = seat(tmp_path, '[shop]\njointer = "6 in"', '[shop]\njointer = "12 in"\nclamps = 6\nopen_time = 8')
    practice = ShopPractice.of(both.first, both.shop)
    assert (practice.jointer_m, practice.clamps, practice.glue_open_min) == (6 * INCH, 6, 8)
    assert practice.thicknesser_m == 12 * INCH  # the usual one, as neither names it
    assert both.shop.told_in == "shop.toml and seat.toml"


def test_a_file_of_the_shop_can_be_named(tmp_path):
    (tmp_path / "ours.toml").write_text('[shop]\nkerf = "3/32 in"\ndrills = ["1/4 in", "5 mm"]', encoding="utf-8")
    practice = ShopPractice.of("customary", seat(tmp_path, '[shop]\nfile = "ours.toml"').shop)
    assert practice.saw_kerf_m == INCH * 3 / 32
    assert [size.text for size in practice.sizes("drill", "customary")] == ["5 mm", "1/4 in"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            '[shop]\njoiner = "8 in"',
            "shop.toml, line 2: 'shop.joiner' is not a key of a brief; did you mean shop.jointer?",
        ),
        ('[shop]\nthicknesser = "13 ft"', "shop.toml, line 2: shop.thicknesser is '13 ft'; it must be at most"),
        ("[shop]\nopen_time = 600", "shop.toml, line 2: shop.open_time is 600; write a whole number from 1 to 120."),
        ('[shop]\ncutters = "1/4 in"', "shop.toml, line 2: shop.cutters is '1/4 in'; write a list of 1 to 50 sizes"),
        ("[shop]\ndrills = []", "shop.toml, line 2: shop.drills is []; write a list of 1 to 50 sizes"),
        ('[saw]\nkerf = "3 mm"', "shop.toml must hold one table, [shop], and nothing else; 'saw' stands outside it."),
        ("", "shop.toml must hold one table, [shop], and nothing else; it has none."),
        ('[shop]\nfile = "x.toml"', "shop.toml names another file; write the shop itself here."),
        ("[shop", "shop.toml, line 1: this line cannot be read as TOML"),
    ],
)
def test_mistakes_in_a_file_of_the_shop_are_told_with_its_name(tmp_path, text, said):
    with pytest.raises(InputError) as refused:
        seat(tmp_path, beside=text or "# nothing\n")
    assert len(refused.value.problems) == 1 and refused.value.problems[0].startswith(said)


def test_strips_fit_the_jointer():
    # 11 in on a 6 in jointer: two strips of (11 - 1/8)/2 = 5-7/16, jointed 5-3/8. Four of them make 21-1/2, 20-3/4 is needed.
    blank, wide = blank_for("44 in", "20 in", "7/8 in"), [StockBoard("A", "11 in", "12 ft", "1 in", 1)]
    six, fifteen = (ShopPractice(jointer_m=size) for size in ("6 in", "15 in"))
    assert [strip.width_m / INCH for strip in strips_of(blank, wide, "1/16 in", six)[0].strips] == [Fraction(43, 8)] * 4
    assert len(strips_of(blank, wide, "1/16 in", fifteen)[0].strips) == 2


def test_a_board_just_too_wide_is_ripped_down_and_not_in_two():
    # 210 mm on a jointer of 200: one strip of 198, not two of 101.5.
    blank = blank_for("2106 mm", "380 mm", "27 mm", rule="1 mm", practice=ShopPractice.of("metric"))
    strips = boards_for(
        blank,
        [StockBoard("K", "210 mm", "2300 mm", "34 mm", 3)],
        widest="200 mm",
        rule="1 mm",
        practice=ShopPractice.of("metric"),
    ).strips
    assert [strip.width_m / MILLIMETRE for strip in strips] == [198, 198, 198]


def test_boards_that_do_not_reach_when_ripped_stay_whole_and_it_is_said():
    # 10-1/2 twice makes 20-7/8 jointed; ripped for a 6 in jointer 2 x (10-1/2 - 1/8) - 8/32 = 20-1/2, under 20-3/4.
    blank = blank_for("44 in", "20 in", "7/8 in")
    stock = [StockBoard("A", "10-1/2 in", "50 in", "1 in", 2)]
    plan, short = strips_of(blank, stock, "1/16 in", ShopPractice(jointer_m="6 in"))
    assert len(plan.strips) == 2 and not short and "flattened by hand" in plan.remarks[0]


def test_a_panel_that_passes_the_thicknesser_is_glued_at_once():
    plan = glue_up(panel(95, 95, 95), Fraction(1), ShopPractice.of("metric"), "metric")
    assert plan.last is None and plan.by_hand == 0 and len(plan.goes) == 1 and not plan.remarks


def test_sections_are_as_alike_as_the_strips_allow():
    # Five strips of 120 and a thicknesser of 300: two, two and one; 240, 240, 120, then two joints by hand.
    plan = glue_up(panel(120, 120, 120, 120, 120), Fraction(1), ShopPractice.of("metric"), "metric")
    assert [part.strips for part in plan.sections] == [(1, 2), (3, 4), (5, 5)] and plan.by_hand == 2
    assert [one.name for one in plan.goes] == ["section 1", "section 2", "the sections together"]
    # 1 m: clamps 50 mm from the ends and at most 200 apart: 900/200, six of them. 650 mm between the jaws.
    assert plan.last.clamps == 6 and plan.last.opens_m == Fraction(650, 1000)
    # Pairs of cauls at most 400 apart: 900/400, four of them. Two lines of 1 m at 0.75 min, six clamps at 0.5: 4.5 min.
    assert plan.last.cauls == 4 and plan.last.minutes == Fraction(9, 2)


def test_glue_that_does_not_stay_open_splits_a_panel_that_would_pass():
    # Six strips of 48 mm, 1 m long: five lines take 3.75 min, clamps at most 96 mm apart, eleven of them, 5.5; 9.25 of 8 min.
    plan = glue_up(panel(*[48] * 6), Fraction(1), ShopPractice.of("metric", Shop(open_time=8)), "metric")
    assert plan.last is not None and plan.by_hand == 0
    assert all(part.minutes <= 8 for part in plan.sections)


def test_what_is_beyond_the_shop_is_said():
    small = ShopPractice(longest_clamp_m="500 mm", clamps=3, glue_open_min=2, thicknesser_m="150 mm")
    said = " ".join(glue_up(panel(200, 200, 200), Fraction(1), small, "metric").remarks)
    assert all(words in said for words in ("wider than the thicknesser", "do not reach", "shop has 3", "two people"))


@given(st.lists(st.integers(40, 190), min_size=2, max_size=14), st.integers(200, 600), st.integers(300, 2500))
def test_no_section_is_wider_than_the_thicknesser_or_slower_than_the_glue(widths, thicknesser, long):
    practice = ShopPractice(thicknesser_m=Fraction(thicknesser, 1000))
    plan = glue_up(panel(*widths), Fraction(long, 1000), practice, "metric")
    runs = [part.strips for part in plan.sections]
    assert [n for low, high in runs for n in range(low, high + 1)] == list(range(1, len(widths) + 1))
    assert all(part.width_m <= practice.thicknesser_m for part in plan.sections)
    assert all(part.lines <= 1 or part.minutes <= practice.glue_open_min or len(runs) == 1 for part in plan.sections)
    assert sum(part.lines for part in plan.goes) == len(widths) - 1


def test_the_sheet_says_what_was_named_and_what_is_usual(tmp_path):
    plan = setting_out_of(
        commission_of(seat(tmp_path, '[shop]\nthicknesser = "24 in"\ncutters = ["1/4 in"]'), "breadboard")
    )
    said = str(the_shop(plan))
    assert "24 in (610 mm) | named in seat.toml" in said and "8 in (203 mm) | usual, not named" in said
    assert "passes the thicknesser, 24 in (610 mm), as a whole" in str(gluing_up(plan))
    assert "glue up each section" not in plan.order.names


def test_the_order_has_the_sections_before_the_last_joints(tmp_path):
    plan = setting_out_of(commission_of(seat(tmp_path), "breadboard"))
    names = plan.order.names
    places = [
        names.index(name) for name in ("glue up each section", "glue the sections together", "rip the panel to width")
    ]
    assert places == sorted(places) and "pass every section through the thicknesser at one setting" in names


def test_strips_of_which_no_two_pass_the_thicknesser_are_glued_at_once(tmp_path):
    # Strips of 5 to 6-1/4 in and a thicknesser of 8 in: each goes through by itself, and nothing is glued twice.
    plan = setting_out_of(commission_of(seat(tmp_path, '[shop]\nthicknesser = "8 in"'), "breadboard"))
    assert (
        len(plan.glue_up.goes) == 1 and "glue up" in plan.order.names and "glue up each section" not in plan.order.names
    )
    assert "No two strips together pass the thicknesser" in str(gluing_up(plan))
