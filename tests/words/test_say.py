"""Sentences keep their numbers until somebody reads them."""

from __future__ import annotations

import pytest

from woodlib.errors import InputError
from woodlib.words.decided import pick
from woodlib.words.say import length, moisture, movement, plain_text, say, temperature


def test_the_reader_chooses_the_units():
    sentence = say("Moves {move}.", move=movement(0.0047625))
    assert plain_text(sentence) == "Moves 3/16 in (5 mm)."
    assert plain_text(sentence, "inch") == "Moves 3/16 in."
    assert plain_text(sentence, "metric") == "Moves 5 mm."


def test_rounding_goes_the_safe_way():
    assert plain_text(length(0.0121, "up"), "inch") == "1/2 in"
    assert plain_text(length(0.0121, "down"), "inch") == "7/16 in"


def test_kinds_without_a_twin_read_the_same_in_both():
    assert plain_text(moisture(8.04), "inch") == plain_text(moisture(8.04), "metric") == "8.0 % MC"
    assert plain_text(temperature(20.0)) == "68 °F (20 °C)"


def test_picks_and_sentences_nest():
    inner = pick(5.0, [4.0], ["little", say("as much as {x}", x=length(0.0254))])
    assert plain_text(say("It is {inner}.", inner=inner), "inch") == "It is as much as 1 in."


@pytest.mark.parametrize(
    ("template", "values", "fragment"),
    [
        ("Moves {move}.", {"move": 0.0047}, "bare number"),
        ("Moves {move}.", {}, "needs a value for {move}"),
        ("Moves {move:.2f}.", {"move": length(0.1)}, "needs a value for {move}"),
    ],
)
def test_bad_sentences_say_what_is_missing(template, values, fragment):
    with pytest.raises(InputError) as caught:
        say(template, **values)
    assert fragment in str(caught.value)
