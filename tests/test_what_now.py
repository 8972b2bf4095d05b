"""Mishaps: what is left, what is lost, and whether it still comes out, worked by hand for the demonstration and tried everywhere.

The seat by hand: 7/8 in wanted, planing takes 1/32 in off each face, so strips are glued at 15/16 in. A step of s takes
one face and planing the other, so it leaves 15/16 - s - 1/32 in: enough up to 1/32 in. Boards are 1 in thick.
A joint sawn out loses the kerf of 1/8 in and two jointings of 1/32 in.
"""

import pytest
from commissions.matrix import matrix

from woodlib import command_line
from woodlib.brief import read_brief
from woodlib.commission import chosen_brief, commission_of
from woodlib.commission.what_now import MISHAPS, mishaps, what_now
from woodlib.errors import InputError

SEAT = commission_of(chosen_brief(), "frame_panel")


@pytest.mark.parametrize(
    ("mishap", "value", "says"),
    [
        (
            "step",
            "1/32 in",
            "7/8 in (22.2 mm) is left of the 15/16 in (23.8 mm) that was glued, where 7/8 in (22.2 mm) is wanted, so nothing",
        ),
        ("step", "1/64 in", "7/8 in (22.2 mm) is left"),  # planing takes more than that anyway
        ("step", "1/16 in", "1/32 in (0.8 mm) short. Saw the joint out"),
        ("step", "1/8 in", "3/16 in (4.8 mm) of the width goes into kerf and jointing"),
        ("moved", "1/8 in", "1/16 in (1.6 mm) short. Rip it at the glue line"),
        ("short", "1/8 in", "Still enough"),
        ("short", "4 in", "misses 2 in (50.8 mm)"),
        ("narrow", "1/4 in", "so 1/4 in (6.4 mm) is left for them"),
        ("hole", "1/64 in", "own play"),
        ("hole", "3/64 in", "open the hole to 1/4 in (6.4 mm)"),  # 4 mm + 2 x 1.19 mm = 6.4 mm, below a head of 7.2 mm
        ("hole", "1/8 in", "glue in a plug"),
        ("knot", "1/4 in", "before the last thicknessing"),
        ("moisture", "8 %", "every size of the cut list stays as it is"),
        ("moisture", "10 %", "instead of"),
    ],
)
def test_the_answer_is_the_one_worked_by_hand(mishap, value, says):
    assert says in " ".join(what_now(SEAT, mishap, value))


def test_a_wetter_panel_is_cut_wider_and_left_less_room_to_grow():
    """White oak, flatsawn, moves 0.365 % of its width for each point of moisture: 16-3/4 in by 2 points 1/8 in (3.1 mm)."""
    cuts = {mc: {cut.key: cut.metres for cut in _at(mc).cuts} for mc in (8.0, 10.0)}
    assert cuts[10.0]["panel_width"] - cuts[8.0]["panel_width"] == pytest.approx(0.0031, abs=0.001)


def _at(moisture):
    from dataclasses import replace

    stock = replace(SEAT.brief.stock, mc_percent=moisture)
    return commission_of(replace(SEAT.brief, stock=stock), "frame_panel").built


@pytest.mark.parametrize("text", [text for _, text in list(matrix())[::17]])
def test_every_mishap_has_an_answer_for_every_piece(tmp_path, text):
    path = tmp_path / "b.toml"
    path.write_text(text, encoding="utf-8")
    commission = commission_of(read_brief(path))
    told = str(mishaps(commission))
    assert told.count(" | ") == len(MISHAPS) + 1
    for mishap in MISHAPS:
        answer = " ".join(mishap.answer(commission, mishap.usual(commission)))
        assert (
            answer.endswith((".", "board."))
            and " -" not in answer
            and "None" not in answer
            and " 0 in (0 mm)" not in answer
        )


@pytest.mark.parametrize(
    ("mishap", "value"), [("dropped", "1 in"), ("step", "far"), ("step", "-1 in"), ("moisture", "90 %")]
)
def test_what_is_no_mishap_is_refused_in_a_sentence(mishap, value):
    with pytest.raises(InputError):
        what_now(SEAT, mishap, value)


def test_the_command_answers_one_or_all(capsys, tmp_path):
    brief = str(SEAT.brief.path)
    assert command_line.run(["what-now", brief, "step", "1/32 in"]) == 0
    assert "Plane it flush" in capsys.readouterr().out
    assert command_line.run(["what-now", brief]) == 0
    assert "What now?" in capsys.readouterr().out
    assert command_line.run(["what-now", brief, "step", "a bit"]) == 1


def test_a_pilot_hole_is_never_opened_up_and_a_year_never_moves_by_less_than_nothing(tmp_path):
    text = SEAT.brief.path.read_text(encoding="utf-8").replace(
        'centres = "128 mm"', 'centres = "128 mm"\nfixing = "wood screw"'
    )
    path = tmp_path / "seat.toml"
    path.write_text(
        text.replace('humidity = "62 %"', 'humidity = "27 %"').replace('"48 %"', '"26 %"').replace('"42 %"', '"26 %"')
    )
    commission = commission_of(read_brief(path), "frame_panel")
    said = " ".join(what_now(commission, "hole", "1/64 in"))
    assert "thread in sound wood" in said and "open the hole" not in said
    assert commission.whole_moves.low_m == 0.0 < commission.whole_moves.mid_m
