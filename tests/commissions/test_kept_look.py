"""The look a client insists on: ways are ranked by what they keep, each with its price, in words that follow the odds."""

from pathlib import Path

import pytest

from woodlib.brief import read_brief
from woodlib.commission import commission_of
from woodlib.commission.checked import checked_brief
from woodlib.commission.deciding import decision
from woodlib.commission.kept_look import hours_of_it, in_a_sentence, keeping, kept_lines, odds_of_it
from woodlib.errors import InputError
from woodlib.restraint.measures import chance_range, crack_words
from woodlib.tables import rows
from woodlib.ways.looks import LOOKS, extra_hours, read_look
from woodlib.ways.registry import every_way, way_of

LID = Path(__file__).with_name("named") / "lid.toml"


def lid(tmp_path, *lines, **replaced):
    text = LID.read_text(encoding="utf-8").replace("[wood]", "\n".join((*lines, "[wood]")), 1)
    for old, new in replaced.items():
        text = text.replace(old.replace("_", " "), new)
    path = tmp_path / "lid.toml"
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize("look", list(LOOKS))
def test_what_keeps_the_look_comes_first_among_what_is_advised(tmp_path, look):
    found = commission_of(read_brief(lid(tmp_path, f'keep = "{look}"')))
    allowed = [verdict in keeping(found) for verdict in found.verdicts if verdict.allowed]
    assert allowed == sorted(allowed, reverse=True) and any(allowed)
    assert found.built in keeping(found) and look in in_a_sentence(found)


def test_the_lid_whose_border_the_client_insists_on_hears_each_price(tmp_path):
    """18 in of ash moves 4.5 mm a year: a frame keeps its 3 in border and opens a line; glued, the odds are said as odds, and
    where they are low the strain is the reason."""
    found = commission_of(read_brief(lid(tmp_path, 'keep = "border all round, 3 in"')))
    kept = {verdict.key: verdict for verdict in keeping(found)}
    assert (
        found.built.key == "frame_panel"
        and "breadboard" not in kept
        and {"glued_border", "mitred_breadboard"} <= set(kept)
    )
    glued = kept["glued_border"]
    chance = glued.panel.chance.sound
    said = odds_of_it(glued)
    assert chance_range(chance) in said and crack_words(chance.likely) in said
    assert "and the ends of the glue line may open first" in said  # 1 in 200 alone would be no reason
    assert odds_of_it(kept["frame_panel"]) == "Nothing is held, so nothing is forced."
    card = str(decision(found))
    assert "4 to 8 h" in card and found.built.cut("line_today").text() in card and "3 in" in card
    assert len(kept_lines(found)) == 1 + len(kept)


def test_where_nothing_keeps_it_that_is_said_with_what_comes_through(tmp_path):
    path = lid(tmp_path, 'keep = "border all round"', 'ends = "breadboard end"')
    text = path.read_text(encoding="utf-8")
    path.write_text('constructions = ["glued border", "breadboard end"]\n' + text, encoding="utf-8")
    said = in_a_sentence(commission_of(read_brief(path)))
    assert "Nothing that keeps it comes through" in said and "breadboard end" in said and "does not keep it" in said


def test_nothing_is_said_where_nothing_is_insisted_on():
    found = commission_of(read_brief(LID))
    assert not keeping(found) and not kept_lines(found) and "You asked for this" not in str(decision(found))


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ('keep = "the old look"', 'piece.keep is "the old look"; write "border all round"'),
        ('keep = "unbroken face, 3 in"', "a border with its width if you like"),
        ('keep = "border all round, 2 in"', 'border_width is "3 in"; write the same width in both'),
    ],
)
def test_a_look_that_nobody_knows_is_told_with_those_there_are(tmp_path, line, says):
    with pytest.raises(InputError) as refused:
        checked_brief(lid(tmp_path, line))
    assert says.replace('"', "'") in str(refused.value).replace('"', "'")


def test_hours_are_of_ways_and_every_way_with_a_border_has_some():
    table = {row["way"]: row for row in rows("way_hours.csv")}
    assert all(
        way_of(key) and 0 <= float(row["low_h"]) < float(row["high_h"]) or key == "plain_panel"
        for key, row in table.items()
    )
    assert all(extra_hours(way) for way in every_way() if way.keeps_border)
    assert all(way.keeps_border for way in every_way() if way.all_round)
    assert read_look("Border  all round").border_m is None and hours_of_it


def test_low_odds_are_not_told_as_a_danger(tmp_path):
    """In a house held from 42 to 50 % the ash hardly moves: the odds are low, and the words with them."""
    steady = {'humidity_=_"30_%"': 'humidity = "42 %"', 'humidity_=_"60_%"': 'humidity = "50 %"'}
    found = commission_of(read_brief(lid(tmp_path, 'keep = "border all round, 3 in"', **steady)))
    glued = next(verdict for verdict in keeping(found) if verdict.way.reference)
    assert glued.panel.chance.sound.likely < 0.02 and "hardly ever cracks" in odds_of_it(glued)
