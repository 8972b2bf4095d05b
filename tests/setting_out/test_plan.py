"""A whole brief set out: plan, lists, drawings."""

import csv
import io
from dataclasses import replace
from fractions import Fraction

import pytest
from setting_out.lengths import INCH

from woodlib.brief import read_brief
from woodlib.commission import commission_of
from woodlib.data_files import data_path
from woodlib.setting_out.boards import StockBoard
from woodlib.setting_out.joints import conflicts_of
from woodlib.setting_out.later_cuts import cuts_of
from woodlib.setting_out.lists import as_csv, cut_rows, dowel_rows, hole_rows, write_csv
from woodlib.setting_out.plan import set_out
from woodlib.setting_out.sheet_words import drawing_in_words
from woodlib.units import exact_metres
from woodlib.units.exact import exact_text

MM = Fraction(1, 1000)
BRIEF = read_brief(data_path("briefs/reading_nook_seat.toml"))
STOCK = [StockBoard("A", "6 in", "10 ft", "1-1/8 in", 3)]


@pytest.fixture(scope="module")
def plan():
    return set_out(BRIEF, STOCK)


def across(tmp_path, extra=""):
    """The demo brief with one pull across the grain, in millimetres."""
    text = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")
    text = text.replace('runs = "along the grain"', 'runs = "across the grain"', 1).replace(
        'units = "inches"', 'units = "millimetres"'
    )
    path = tmp_path / "across.toml"
    path.write_text(text + extra, encoding="utf-8")
    return read_brief(path)


def test_sizes_are_those_typed(plan):
    assert plan.panel_m == (44 * INCH, 20 * INCH, INCH * 7 / 8) and plan.end_piece_m == 2 * INCH
    assert [part.name for part in plan.blank.length.pieces] == ["left end", "panel", "right end"]


def test_every_dowel_keeps_clear_of_every_saw_cut(plan):
    assert len(plan.joints) == len(plan.boards.strips) - 1
    for joint in plan.joints:
        assert conflicts_of(joint.joint, joint.places_m, cuts_of(plan.blank.length), plan.practice.dowel_margin_m) == ()


def test_order_numbers_before_cutting_off(plan):
    assert plan.order.names.index("number the end pieces on the show face") < plan.order.names.index(
        "cut off the end pieces"
    )


def test_two_pulls_mirror_each_other(plan):
    left, right = plan.hardware
    assert left.pair.rest_m == right.pair.rest_m[::-1]
    assert [float(hole / MM) for hole in left.pair.holes_m] == [215.4, 343.4]


def test_hardware_across_the_grain_gets_slots(tmp_path):
    found = set_out(across(tmp_path), STOCK)
    pull = found.hardware[0]
    # 128 mm of flatsawn oak over this year: millimetres, so the slot is longer than screw and fitting, 5.5 mm.
    assert pull.slots.lengths[0].marked_m > Fraction(55, 10_000)
    assert pull.pair.work_m == 20 * INCH and pull.pair.mirrored
    rows = hole_rows(found)
    assert [bool(row["slot across the grain"]) for row in rows] == [False, True, False, False]
    # Stock at 8 % grows further (humid summer) than it shrinks (dry winter), so the slot reaches further in than out.
    assert "nearer to the round hole" in rows[1]["middle of the slot"]
    assert any("slot" in name for name, _ in found.roundings)
    assert rows[1]["slot across the grain"] == pull.slots.lengths[0].text
    # Holes in the panel itself may lie near a glue line: no dowel may sit within the margin of one.
    for joint in found.joints:
        assert joint.places_m is not None


def test_without_border_there_are_no_end_pieces():
    found = set_out(BRIEF, (), end_pieces=False)
    assert found.end_piece_m is None and found.boards is None and found.joints == ()
    assert "No glue line" in found.glue.says and "bore for dowels" not in found.order.names


def test_cautions_follow_the_job(plan):
    text = " ".join(caution.words for caution in plan.cautions)
    assert "left end" in text and "lid falls hard" in text and "rocks" not in text
    assert "rocks and grabs" in " ".join(caution.words for caution in set_out(BRIEF, out_of_flat="2 mm").cautions)
    long_ends = set_out(BRIEF, end_pieces=False)
    assert "along the grain: plane" not in " ".join(caution.words for caution in long_ends.cautions)


def test_cut_list_agrees_with_the_plan(plan):
    rows = list(csv.DictReader(io.StringIO(as_csv(cut_rows(plan)))))
    panel = next(row for row in rows if row["piece"] == "2 panel")
    assert (panel["length, inches"], panel["width, mm"], panel["rounding, inches"]) == ("44 in", "508 mm", "exact")
    # 44 in = 1117.6 mm, to the half millimetre 1117.5: 0.1 less; 7/8 in = 22.225 mm: 22 mm, 0.225 less.
    assert panel["rounding, mm"] == "length under 0.5 mm less; thickness under 0.5 mm less"
    blank = rows[0]
    assert exact_metres(blank["length, mm"]) >= plan.blank.length.total_m
    assert len(rows) == 1 + len(plan.boards.strips) + 3


def test_hole_list_agrees_with_the_plan(plan):
    rows = hole_rows(plan)
    assert len(rows) == 4
    assert rows[0]["mark"] == "64 mm left of the centre line" and rows[0]["rounding of the mark"] == "exact"
    for row, place in zip(rows, [hole for item in plan.hardware for hole in item.pair.holes_m], strict=True):
        assert abs(exact_metres(row["from the left end, mm"]) - place) <= MM / 20
        assert abs(exact_metres(row["from the left end, inches"]) - place) <= INCH / 128


def test_dowel_list(plan, tmp_path):
    rows = dowel_rows(plan)
    assert len(rows) == sum(len(joint.wanted_m) for joint in plan.joints)
    path = write_csv(rows, tmp_path / "dowels.csv")
    assert path.read_text(encoding="utf-8").splitlines()[0].startswith("glue line,dowel,")


def test_spreadsheets_do_not_run_names(plan):
    first = plan.hardware[0]
    named = replace(first, pair=replace(first.pair, name="=1+1"))
    text = as_csv(hole_rows(replace(plan, hardware=(named,))))
    assert "'=1+1" in text and "\n=1+1" not in text


def test_the_words_carry_the_numbers(plan):
    words = drawing_in_words(plan)
    for length in (*plan.panel_m, *plan.hardware[0].pair.holes_m):
        assert f"{float(length * 1000):.1f}".rstrip("0").rstrip(".") in words
    assert exact_text(plan.end_piece_m) in words


def test_without_listed_boards_an_ordinary_width_is_taken_and_said():
    # Blank 20 + 2*1/4 + 2*1/8 = 20-3/4 in. Ordinary boards 6 in, jointed 6 - 2*1/32 = 5-15/16: 3.49, so 4 strips of
    # 20-3/4 / 4 = 5-3/16 in, nothing over.
    bare = replace(BRIEF, boards=())
    found = set_out(bare)
    assert [strip.width_m for strip in found.boards.strips] == [5 * INCH + INCH * 3 / 16] * 4
    assert found.boards.surplus_m == 0 and found.boards.assumed_m == 6 * INCH and len(found.joints) == 3
    assert any("6 in (152 mm) wide, assumed" in remark for remark in found.remarks)
    assert "assumed" in cut_rows(found)[1]["where the size comes from"] and found.glued_up
    assert not any("assumed" in remark for remark in set_out(BRIEF, STOCK).remarks)


def test_one_board_is_neither_glued_up_nor_ripped_into_strips():
    names = set_out(BRIEF, ()).order.names
    assert not any(word in name for name in names for word in ("glue up", "strips", "dowels"))
    assert names.index("rip the panel to width") < names.index("cut off the end pieces")
    names = set_out(BRIEF, STOCK).order.names
    assert {"glue the sections together", "rip the strips and joint the sawn edges"} < set(names)


def test_lists_of_a_millimetre_brief_begin_with_millimetres(tmp_path):
    found = set_out(across(tmp_path), STOCK)
    for rows in (cut_rows(found), hole_rows(found), dowel_rows(found)):
        names = list(rows[0])
        for name in (name for name in names if name.endswith(", mm")):
            assert names.index(name) < names.index(f"{name[:-4]}, inches")
    assert list(cut_rows(set_out(BRIEF, STOCK))[0])[2:4] == ["length, inches", "length, mm"]


def test_a_hole_that_has_to_be_checked_says_so_in_its_row(tmp_path):
    text = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")
    path = tmp_path / "deep.toml"
    path.write_text(text.replace('inset = "3/4 in"', 'inset = "1-1/2 in"'), encoding="utf-8")
    brief = read_brief(path)
    commission = commission_of(brief, "frame_panel")
    rows = hole_rows(set_out(brief, verdict=commission.built))
    assert all("within 1/4 in (6.4 mm) of it" in row["check"] for row in rows)
    assert {row["check"] for row in hole_rows(set_out(BRIEF, STOCK))} == {""}


@pytest.mark.parametrize(("units", "step"), [("inches", INCH / 8), ("millimetres", 5 * MM)])
def test_dowels_that_are_free_lie_on_marks_that_are_easily_read(units, step, tmp_path):
    found = set_out(BRIEF if units == "inches" else across(tmp_path), STOCK)
    for joint in found.joints:
        assert all(place % step == 0 for place in joint.wanted_m)
        free = set(range(1, len(joint.wanted_m) + 1)) - {conflict.number for conflict in joint.conflicts}
        assert free and all(joint.places_m[n - 1] == joint.wanted_m[n - 1] for n in free)
