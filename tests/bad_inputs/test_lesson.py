"""An author gets one sentence for a question nobody could answer; so does whoever asks for what is not there."""

from __future__ import annotations

import pytest

from woodlib.errors import WoodlibError
from woodlib.lesson import Question, check, kept, predict, read_typed
from woodlib.lesson.solutions import exercises
from woodlib.studies import find_study

BAD = [
    (lambda: predict("a", "Which?"), "has 0 options; give at least two"),
    (lambda: predict("a", "Which?", ["one"]), "has 1 options; give at least two"),
    (lambda: predict("a", "Which?", ["one", "one"]), "has 1 options; give at least two"),
    (lambda: predict("a", "How long?", kind="lenght"), "has kind 'lenght'"),
    (lambda: predict("a", "How long?", ["1", "2"], kind="length"), "2 options; give options alone"),
    (lambda: check("a", "How long?", "1 in", kind="length"), "has tolerance 0"),
    (lambda: check("a", "How long?", "1 in", kind="length", tolerance="-1 mm"), "has tolerance -0.001"),
    (lambda: check("a", "How long?", "1 in", kind="length", tolerance="a bit"), "not a length"),
    (lambda: check("a", "How long?", "one", kind="length", tolerance="1 mm"), "not a length"),
    (lambda: check("a", "How long?", "1 in", kind="length", tolerance="1 mm", misses={"x": "y"}), "not a length"),
    (lambda: check("a", "Which?", "three", options=("one", "two")), "choose one of: one, two"),
    (lambda: check("a", "Which?", "one", options=("one", "two"), misses={"three": "y"}), "choose one of: one, two"),
    (lambda: check("the-air-of-a-house/garage"), "Did you mean 'the-air-of-a-house/garage-workshop'?"),
    (lambda: check("moisture-from-water/garage"), "There are no exercises for 'moisture-from-water'"),
    (lambda: exercises(""), "There are no exercises for ''"),
    (lambda: Question("a", "b", "humidity").read("50 to 60 %"), "write it like 45 %"),
    (lambda: Question("a", "b", "humidity").read(float("nan")), "write one finite number"),
    (lambda: Question("a", "b", "length").read("2"), "without a unit"),
    (lambda: read_typed("1/0", "count"), "not a number"),
    (lambda: kept.commit("never-asked", "1"), "Nothing was asked under 'never-asked'"),
    (lambda: find_study("moisture-from-the-air"), "Did you mean 'moisture-from-air'?"),
    (lambda: find_study("moisture-from-air").answer(outdoor_c=40), "this study goes from"),
    (lambda: find_study("moisture-from-air").answer(outdoor_rh="120 %"), "this study goes from 40 % RH to 95 % RH"),
    (lambda: find_study("moisture-from-air").answer(gain="ghosts"), "choose one of: none, some, much"),
    (lambda: find_study("moisture-by-month").answer(winters=3), "Did you mean 'winter'?"),
]


@pytest.mark.parametrize(("call", "sentence"), BAD, ids=range(len(BAD)))
def test_one_sentence_says_what_is_wrong(call, sentence):
    with pytest.raises(WoodlibError) as caught:
        call()
    assert sentence in str(caught.value) and "\n" not in str(caught.value)
