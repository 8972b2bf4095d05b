"""Bad inputs to setting out: each gives one clear sentence; several at once give one each."""

import math
from fractions import Fraction

import pytest

from woodlib.brief import read_brief
from woodlib.data_files import data_path
from woodlib.errors import InputError, WoodlibError
from woodlib.setting_out.blank import blank_for
from woodlib.setting_out.boards import StockBoard, boards_for
from woodlib.setting_out.buying import board_feet, rough_for, to_buy
from woodlib.setting_out.continuity import grain_run
from woodlib.setting_out.glue import area_of_lines_m2, glue_lines
from woodlib.setting_out.holes import hole_fit, hole_pair, markings
from woodlib.setting_out.joints import joint_row
from woodlib.setting_out.later_cuts import LaterCut
from woodlib.setting_out.lists import cut_rows, write_csv
from woodlib.setting_out.order import Step, cut_order
from woodlib.setting_out.plan import set_out
from woodlib.setting_out.practice import ShopPractice
from woodlib.setting_out.sheets import sheets
from woodlib.setting_out.slots import grain_slots
from woodlib.setting_out.weight import weight_of
from woodlib.units.exact import centred, mark

BLANK = blank_for("44 in", "20 in", "7/8 in")
BOARD = StockBoard("A", "6 in", "8 ft", "1 in")
PAIR = hole_pair("20 in", "128 mm")
BRIEF = read_brief(data_path("briefs/reading_nook_seat.toml"))
PLAN = set_out(BRIEF)
BORE = Step("bore", ["square edge"])

CASES = [
    (lambda: centred("160 mm", "455 mm"), "part is 17-29/32 in (455 mm), longer than the whole"),
    (lambda: centred("wide", "455 mm"), "whole is 'wide'"),
    (lambda: mark("20 in", "1/10 in"), "rule is '1/10 in'; it must be one of 1/16 in"),
    (lambda: mark("20 in", direction="out"), "direction of rounding is 'out'"),
    (lambda: mark(math.nan), "length is nan"),
    (lambda: mark(10**30), "beyond anything a workshop meets"),
    (lambda: blank_for("-44 in", "20 in", "7/8 in"), "finished length is '-44 in'"),
    (lambda: blank_for("44 in", 20, "7/8 in"), "finished width is 20"),
    (lambda: blank_for("44 in", "20 in", "2 ft"), "finished thickness is '2 ft'"),
    (lambda: blank_for("44 in", "20 in", "7/8 in", end_pieces="3 kg"), "end pieces is '3 kg'"),
    (lambda: blank_for("44 in", "20 in", "7/8 in", out_of_flat="2 ft"), "out of flat is '2 ft'"),
    (lambda: blank_for("44 in", "20 in", "7/8 in", practice="wide kerf"), "practice is 'wide kerf'"),
    (lambda: ShopPractice(saw_kerf_m="1 in"), "saw kerf is '1 in'"),
    (lambda: ShopPractice(saw_kerf_m=None), "saw kerf is None"),
    (lambda: ShopPractice(buying_waste="a lot"), "buying waste is 'a lot'"),
    (lambda: ShopPractice(buying_waste=True), "buying waste is True"),
    (lambda: ShopPractice(glue_pressure_pa=math.inf), "glue pressure is inf"),
    (lambda: grain_run([]), "pieces is []"),
    (lambda: grain_run(["panel"]), "write a list of 1 to 40 pairs"),
    (lambda: grain_run([("panel", "44 in")], corner="tenon"), "corner is 'tenon'"),
    (lambda: grain_run([("a", "4 in"), ("b", "4 in")], closes=True), "cannot close a ring"),
    (lambda: StockBoard("", "6 in", "8 ft", "1 in"), "name of the board is ''"),
    (lambda: StockBoard("A", "6 in", "8 ft", "1 in", 0), "number of boards A is 0"),
    (lambda: StockBoard("A", "6 in", "80 ft", "1 in"), "length of board A is '80 ft'"),
    (lambda: boards_for(BLANK, [BOARD]), "add boards"),
    (lambda: boards_for(BLANK, ["A"]), "board 1 of the stock is 'A'"),
    (lambda: boards_for(BLANK, []), "stock holds 0 boards"),
    (lambda: boards_for(BLANK, [BOARD] * 4, widest="0 in"), "widest strip is '0 in'"),
    (lambda: boards_for("blank", [BOARD]), "blank is 'blank'"),
    (lambda: Step("bore", "square edge"), "needs of 'bore' is 'square edge'"),
    (lambda: Step("bore", [], ["edge"], ["edge"]), "both makes and removes 'edge'"),
    (lambda: cut_order([BORE], ["flat face"]), "bore needs the square edge, which no step makes"),
    (lambda: cut_order([BORE, BORE], ["square edge"]), "steps hold 'bore' twice"),
    (lambda: cut_order([], ["square edge"]), "steps is []"),
    (
        lambda: cut_order(
            [Step("bevel", removes=["square edge"], needs=["hole"]), Step("bore", ["square edge", "bevel"], ["hole"])],
            ["square edge"],
        ),
        "which no step makes",
    ),
    (lambda: LaterCut("kerf", "3 in", "2 in"), "give the nearer end first"),
    (lambda: LaterCut("kerf", "2 in", "3 in", depth="deep"), "depth of cut kerf is 'deep'"),
    (lambda: joint_row("20 in", ["kerf"]), "cut 1 is 'kerf'"),
    (lambda: joint_row("20 in", kind="nail"), "kind is 'nail'"),
    (lambda: joint_row("20 in", positions=["5 in", "4 in"]), "positions are not in order"),
    (lambda: joint_row("20 in", positions=["25 in"]), "position 1 is '25 in'"),
    (lambda: joint_row("20 in", positions=[]), "positions is []"),
    (lambda: joint_row("20 in", depth="1/8 in"), "it breaks out"),
    (lambda: joint_row("20 in", margin="-1 in"), "margin is '-1 in'"),
    (lambda: hole_pair("4 in", "128 mm"), "use narrower centres or move its middle"),
    (lambda: hole_pair("20 in", "128 mm", count=1), "count of holes is 1"),
    (lambda: hole_pair("20 in", "128"), "centres is '128'"),
    (lambda: markings("pull"), "pair is 'pull'"),
    (lambda: hole_fit("5 mm", hole="4 mm"), "smaller than the screw"),
    (lambda: hole_fit("5 mm", marking="-1 mm"), "marking tolerance is '-1 mm'"),
    (lambda: hole_fit("5 mm", first="imperial"), "first is 'imperial'"),
    (lambda: grain_slots(PAIR, -0.01, -0.01), "swelling strain is -0.01"),
    (lambda: grain_slots(PAIR, 0.01, -0.01, rule="fine"), "rule is 'fine'"),
    (lambda: grain_slots("pull", 0.01, -0.01), "pair is 'pull'"),
    (lambda: weight_of("iron", 0.01, 8), "iron"),
    (lambda: weight_of("white oak", -0.01, 8), "volume is -0.01 m3"),
    (lambda: weight_of("white oak", 0.01, "dry"), "moisture content is 'dry'"),
    (lambda: weight_of(7, 0.01, 8), "species is 7"),
    (lambda: glue_lines(0, "44 in", "1 in"), "number of boards is 0"),
    (lambda: area_of_lines_m2(["44 in"]), "glue line 1 is '44 in'"),
    (lambda: board_feet("1 in", "x", "8 ft"), "width is 'x'"),
    (lambda: rough_for("9 in"), "glue it up from two layers"),
    (lambda: to_buy(BLANK, waste=-1), "buying waste is -1"),
    (lambda: to_buy(BLANK, count=0), "count of blanks is 0"),
    (lambda: to_buy(BLANK, system="old"), "system is 'old'"),
    (lambda: set_out("seat.toml"), "brief is 'seat.toml'"),
    (lambda: set_out(BRIEF, out_of_flat="flat"), "out of flat is 'flat'"),
    (lambda: cut_rows("plan"), "plan is 'plan'"),
    (lambda: sheets(None), "plan is None"),
    (lambda: write_csv(cut_rows(PLAN), "list.txt"), "its name must end in .csv"),
    (lambda: write_csv(cut_rows(PLAN), "/no/such/folder/list.csv"), "cannot be written"),
]


@pytest.mark.parametrize(("call", "fragment"), CASES, ids=[fragment for _, fragment in CASES])
def test_one_clear_sentence(call, fragment):
    with pytest.raises(WoodlibError) as caught:
        call()
    assert fragment in str(caught.value)
    assert "\n" not in str(caught.value) and str(caught.value).endswith((".", "?"))


def test_all_bad_inputs_are_reported_at_once():
    with pytest.raises(InputError) as caught:
        blank_for("-44 in", "x", 0, end_pieces="2 kg", out_of_flat=-1, rule="1 in", practice=7)
    assert len(caught.value.problems) == 7
    with pytest.raises(InputError) as caught:
        StockBoard(" ", "0 in", "x", -1, -2)
    assert len(caught.value.problems) == 5
    with pytest.raises(InputError) as caught:
        hole_fit("0 mm", marking="x", drilling=-1, hole="2 kg", first="both")
    assert len(caught.value.problems) == 5


def test_hardware_too_wide_for_the_piece_names_the_line_of_the_brief(tmp_path):
    text = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")
    path = tmp_path / "wide.toml"
    path.write_text(text.replace('centres = "128 mm"', 'centres = "900 mm"'), encoding="utf-8")
    with pytest.raises(InputError) as caught:
        set_out(read_brief(path))
    assert len(caught.value.problems) == 2
    assert all(sentence.startswith("wide.toml, line ") for sentence in caught.value.problems)


def test_end_pieces_without_a_border_in_the_brief(tmp_path):
    lines = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8").splitlines()
    path = tmp_path / "plain.toml"
    path.write_text("\n".join(line for line in lines if not line.startswith("border_")), encoding="utf-8")
    with pytest.raises(InputError, match="piece.border_width is not given"):
        set_out(read_brief(path), end_pieces=True)
    assert set_out(read_brief(path)).end_piece_m is None


def test_strips_too_unlike_for_equal_widths():
    uneven = [StockBoard("W", "19 in", "50 in", "1 in"), StockBoard("N", "2-1/2 in", "50 in", "1 in")]
    with pytest.raises(InputError, match="leave equal_widths out"):
        boards_for(BLANK, uneven, equal_widths=True)


def test_floats_with_binary_noise_stay_what_was_typed():
    assert blank_for(0.9, 0.455, 0.02).finished_width_m == Fraction(455, 1000)
