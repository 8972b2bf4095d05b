"""What a learner types is read the way the shop writes it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import InputError
from woodlib.lesson import EXAMPLES, Question, read_typed
from woodlib.lesson.exercise import Exercise


@pytest.mark.parametrize("kind", EXAMPLES)
def test_every_example_can_be_typed(kind):
    for example in EXAMPLES[kind].split(" or "):
        question = Question("a", "b", kind)
        assert question.text(question.read(example))
        assert question.read(example) == question.read(f"about {example}")


@pytest.mark.parametrize(
    ("typed", "kind", "value"),
    [
        ("1-1/2 in", "length", 0.0381),
        ('1 1/2"', "length", 0.0381),
        ("~ 38 mm", "length", 0.038),
        ("7/8", "length", 0.022225),
        ("20%RH", "humidity", 20.0),
        ("ca. 20 percent", "humidity", 20.0),
        ("8 % moisture content", "moisture", 8.0),
        ("8,5 %", "moisture", 8.5),
        ("68 °F", "temperature", 20.0),
        ("1/2", "count", 0.5),
    ],
)
def test_shop_spellings(typed, kind, value):
    assert Question("a", "b", kind).read(typed) == pytest.approx(value)


@given(st.text(max_size=30), st.sampled_from(sorted(EXAMPLES)))
def test_whatever_is_typed_is_read_or_refused_in_one_sentence(typed, kind):
    try:
        assert abs(Question("a", "b", kind).read(typed)) < 1e15
    except InputError as error:
        assert len(error.problems) == 1 and "\n" not in error.problems[0]


@given(st.floats(0.001, 10.0), st.floats(1e-5, 0.01), st.floats(-3, 3))
def test_judging_is_right_exactly_within_the_tolerance(answer, tolerance, share):
    exercise = Exercise(Question("a", "b", "length"), lambda: answer, tolerance)
    judged = exercise.judge(answer + share * tolerance)
    if abs(abs(share) - 1) > 1e-6:
        assert judged.right is (abs(share) < 1)
        assert judged.right or ("too high" if share > 0 else "too low") in judged.sentence


@given(st.floats(0, 100))
def test_a_typed_answer_survives_a_round_trip(value):
    assert read_typed(f"{value:.9f} %", "humidity") == pytest.approx(value, abs=1e-8)
