"""One line at the bench: worked by hand, both ways of asking, and every slip answered with a sentence."""

from __future__ import annotations

import pytest

from woodlib.command_line import run
from woodlib.errors import InputError
from woodlib.quick_answer import answer, read_question

ASH = ["18 in", "white ash", "flatsawn"]


def test_moisture_of_the_wood_by_hand():
    # Wood Handbook FPL-GTR-190, table 13-5: tangential coefficient of white ash 0.00274; 457.2 x 0.00274 x 4 = 5.01 mm.
    lines = answer(read_question([*ASH, "8%", "12%", "MC"]), why=True)
    assert lines[0].startswith("about 3/16 in (5 mm) wider, could be ")
    assert "18 in (457 mm) x 0.274 % x +4.00 = +5.0 mm" in "\n".join(lines)
    assert "total shrinkage" not in "\n".join(lines)


def test_quartersawn_moves_by_the_radial_coefficient():
    # The same table: radial 0.00169; 457.2 x 0.00169 x 4 = 3.09 mm.
    lines = answer(read_question(["18 in", "white ash", "quartersawn", "8%", "12%", "MC"]), why=True)
    assert "x 0.169 % x +4.00 = +3.1 mm" in "\n".join(lines)


@pytest.mark.parametrize("spelling", [["8%", "12%", "MC"], ["8%", "12% MC"], ["8% MC", "12% MC"], ["8", "12", "mc"]])
def test_the_unit_may_stand_behind_either_number(spelling):
    assert read_question([*ASH, *spelling]).mc_percent == (8.0, 12.0)


def test_air_is_taken_unless_moisture_is_said():
    question = read_question([*ASH, "65%", "35%"])
    # Wood Handbook table 4-2 at 70 degF: 35 % gives 6.9, 65 % gives 12.0 % MC.
    assert question.mc_percent == pytest.approx((12.0, 6.9), abs=0.06)
    assert " narrower, could be " in answer(question)[0]


def test_dry_wood_leaves_the_window_and_says_so():
    lines = answer(read_question([*ASH, "5%", "9%", "MC"]), why=True)
    assert any("beyond 6 to 14 % MC" in line for line in lines)


def test_glued_ends_get_a_pull_and_odds():
    lines = answer(read_question([*ASH, "35%", "65%"]), ends="2 in")
    assert lines[1].startswith("ends glued to a border 2 in (51 mm) wide at 9.5 % MC: pulled by about ")
    assert lines[2].startswith("Chance of a crack in the first years: about 1 in ")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ([*ASH, "8%", "12%"], "write 8% 12% MC"),
        ([*ASH, "35%"], "takes five things and got 4"),
        (["18", "white ash", "flatsawn", "35%", "65%"], "width is '18', a plain number without a unit"),
        (["18 in", "white ash", "sideways", "35%", "65%"], "cut is 'sideways'; it must be flatsawn, riftsawn"),
        (["18 in", "whit ash", "flatsawn", "35%", "65%"], "white ash"),
        ([*ASH, "35%", "65 degF"], "to is '65 degF'"),
        ([*ASH, "35%", "165%"], "165"),
        (["-3 in", "white ash", "flatsawn", "35%", "65%"], "width"),
    ],
)
def test_a_slip_is_answered_with_a_sentence(words, said):
    with pytest.raises(InputError, match=".") as refused:
        answer(read_question(words))
    assert said in str(refused.value)


def test_the_command_prints_it(capsys, monkeypatch):
    monkeypatch.setattr("woodlib.environment.enter", lambda extra, arguments: None)
    assert run(["move", *ASH, "35%", "65%"]) == 0
    assert capsys.readouterr().out == "about 1/4 in (6.5 mm) wider, could be 3/16 to 3/8 in (5 to 9.5 mm)\n"
    assert run(["move", *ASH, "8%", "12%"]) == 1
    assert "MC" in capsys.readouterr().err
