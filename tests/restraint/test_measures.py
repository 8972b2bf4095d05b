"""Words at their edges, and the two measures together."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.restraint.chance import CrackChance, Probability
from woodlib.restraint.measures import (
    ODDS_EDGES,
    ODDS_WORDS,
    agreement_sentence,
    band,
    chance_sentence,
    odds_words,
    strain_words,
)


def test_tables_of_words_fit_their_edges():
    assert len(ODDS_WORDS) == len(ODDS_EDGES) + 1 and list(ODDS_EDGES) == sorted(ODDS_EDGES)


@given(st.floats(0.004, 0.94))
def test_odds_said_are_near_the_chance(chance):
    low, high = (float(part) for part in odds_words(chance).split(" in ")) if " in " in odds_words(chance) else (1, 1)
    if "less" not in odds_words(chance):
        assert low / high == pytest.approx(chance, rel=0.55)


@pytest.mark.parametrize(("number", "words"), [(0.003, "stays elastic"), (0.004, "can take"), (0.009, "reaches")])
def test_strain_rule_edges(number, words):
    assert strain_words(number).startswith(words)


def test_the_range_is_said_in_words():
    chance = CrackChance(Probability(0.012, 0.119, 0.226), Probability(0.32, 0.37, 0.63), ())
    said = chance_sentence(chance)
    assert said == (
        "about 1 in 8 (could be 1 in 100 to 1 in 4) for a sound panel; about 1 in 3 (could be up to 2 in 3) if its ends "
        "already have checks"
    )
    never = chance_sentence(CrackChance(Probability(0, 0, 0), Probability(0, 0, 0), ()))
    assert never.startswith("less than 1 in 200 for a sound panel;")


@pytest.mark.parametrize(
    ("strain", "chance", "words"),
    [
        (0.002, 0.0, "Both measures are calm"),
        (0.006, 0.01, "stress model is calm"),
        (0.006, 0.2, "stress model warns"),
        (0.0098, 0.01, "disagree: the strain rule warns"),
        (0.002, 0.3, "disagree: the strain rule sees no danger"),
        (0.012, 0.3, "Both measures warn"),
    ],
)
def test_every_pair_of_measures_has_its_sentence(strain, chance, words):
    assert words in agreement_sentence(strain, chance)


@given(st.floats(0, 1))
def test_band_counts_edges(value):
    assert band(value, (0.25, 0.5)) == (value >= 0.25) + (value >= 0.5)
