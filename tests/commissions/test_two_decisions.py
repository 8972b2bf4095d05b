"""What the ends get and what the base is are two decisions; each holds the panel fast on a line, and two lines fight."""

from pathlib import Path

import pytest

from woodlib.brief import read_brief
from woodlib.commission import commission_of
from woodlib.commission.base import base_step, fast_lines, fight_share, fights, held_to_its_base
from woodlib.commission.card import told
from woodlib.commission.checked import checked_brief
from woodlib.commission.deciding import decision
from woodlib.errors import InputError
from woodlib.ways.registry import every_way
from woodlib.words.say import movement, say

TOP = Path(__file__).with_name("named") / "top.toml"


def said_of(commission) -> str:
    return " ".join(told(line, commission.first) for line in fast_lines(commission))


def top(tmp_path, *lines):
    text = TOP.read_text(encoding="utf-8").replace("[wood]", "\n".join((*lines, "[wood]")), 1)
    path = tmp_path / "top.toml"
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize(("holds", "share"), [("front", 0.5), ("back", 0.5)])
def test_two_fast_lines_fight_and_the_year_between_them_is_said(tmp_path, holds, share):
    """The walnut top of 1016 mm moves by 8.6 mm a year: half of it, 4.3 mm, lies between its middle and either edge."""
    found = commission_of(
        read_brief(top(tmp_path, 'ends = "breadboard end"', 'base = "buttons"', f'base_holds = "{holds}"'))
    )
    assert found.built.key == "breadboard" and found.base.key == "buttons" and fights(found)
    assert not any(verdict.way.on_a_base for verdict in found.verdicts)
    between = 1000 * share * found.whole_moves.mid_m
    assert between == pytest.approx(4.3, abs=0.3)
    said = said_of(found)
    assert (
        "Two fast lines fight" in said
        and told(say("{m}", m=movement(0.001 * between)), found.first) in said
        and 'base_holds = "middle"' in said
    )
    assert "Two fast lines fight" in str(decision(found))


def test_one_fast_line_is_said_to_be_one(tmp_path):
    found = commission_of(read_brief(top(tmp_path, 'base = "slotted blocks"')))
    assert not fights(found) and "on one line, in the middle" in said_of(found)
    card = str(held_to_its_base(found))
    assert "at the middle of each end rail" in card and found.base.cut("long_apron_slot").text() in card
    assert str(held_to_its_base(commission_of(read_brief(TOP)))).count("base") == 0


def test_a_top_fast_at_the_back_moves_twice_as_far_at_the_front(tmp_path):
    """Nothing but the base holds a plain panel: fast at the back, its front goes the whole way. Buttons need twice the travel,
    the play of 1.6 mm once: gap 1.6 + 2 t where it was 1.6 + t."""
    middle, back = (
        commission_of(read_brief(top(tmp_path, 'ends = "plain panel"', 'base = "buttons"', f'base_holds = "{line}"')))
        for line in ("middle", "back")
    )
    gaps = [1000 * found.base.cut("shoulder_gap").metres for found in (middle, back)]
    assert gaps[1] - 1.6 == pytest.approx(2 * (gaps[0] - 1.6), rel=1e-6)
    assert not fights(back) and "comes out at the front" in said_of(back)


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        (('base = "breadboard end"',), "piece.base is 'breadboard end', which is none of them"),
        (('ends = "buttons"',), "piece.ends is 'buttons', which is none of them"),
        (('base_holds = "front"',), "piece.base_holds is given without piece.base"),
        (('base = "clips in a kerf"', 'lifts = "yes"'), "for a piece that lifts"),
        (('base = "glue"',), "the ways to build are"),
    ],
)
def test_a_wrong_name_is_told_at_its_line(tmp_path, lines, says):
    with pytest.raises(InputError, match=says.replace(".", r"\.")):
        checked_brief(top(tmp_path, *lines))


def test_every_way_on_a_base_has_its_fast_line_and_shares_add_up():
    for way in every_way():
        assert way.fast_at in ("", "front", "middle", "back") and bool(base_step(way, "middle")) == way.on_a_base
        assert not (way.on_a_base and way.fast_at)
    assert [fight_share("middle", line) for line in ("front", "middle", "back")] == [0.5, 0.0, 0.5]


def test_a_base_that_does_not_fit_is_told_with_those_that_would_and_the_fight_beside_it(tmp_path):
    """A slot of 20 mm is the longest sold: fast at the back, 1016 mm of walnut ask for more. In a metric brief the sizes are
    metric first."""
    path = top(tmp_path, 'ends = "breadboard end"', 'base = "slotted metal angles"', 'base_holds = "back"')
    path.write_text(
        path.read_text(encoding="utf-8").replace('units = "inches"', 'units = "millimetres"'), encoding="utf-8"
    )
    found = commission_of(read_brief(path))
    said = said_of(found)
    assert "Buy metal" not in str(held_to_its_base(found))  # what does not fit is not told how to build
    assert "it takes at most 20 mm (" in said and "What would do: buttons" in said and "Two fast lines fight" in said


def test_a_framed_top_moves_no_more_on_its_base_than_its_stiles(tmp_path):
    """Two stiles of 3-1/2 in against 40 in of panel: the travel of a button is 7/40 of that of the panel, its play the same."""
    framed, plain = (
        commission_of(read_brief(top(tmp_path, f'ends = "{ends}"', 'base = "buttons"')))
        for ends in ("frame with a floating panel", "plain panel")
    )
    travel = [1000 * found.base.cut("shoulder_gap").metres - 1.6 for found in (framed, plain)]
    assert travel[0] == pytest.approx(travel[1] * 7 / 40, rel=1e-6)
