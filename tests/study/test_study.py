"""Studies: declared once, read from text, refused in sentences, swept at every corner."""

from __future__ import annotations

import pytest
from example_study import example, example_answer

from woodlib.errors import InputError
from woodlib.study import Choice, Span, Switch, study


def test_start_and_text_inputs_give_the_same_answer():
    typed = example.answer(wood="White Oak", width="20 in", dry="35 % RH", held="no")
    assert typed.lines() == example.answer().lines()
    assert "A white oak panel" in typed.lines()[0]


def test_every_corner_answers():
    corners = list(example.corners())
    assert len(corners) == 2 * 2 * 2 * 2
    for corner in corners:
        assert example.answer(**corner).alt_text().startswith("A panel ")


def test_starting_moves_the_start_and_nothing_else():
    own = example.starting(width="18-1/8 in", held=True)
    assert own.start["width"] == pytest.approx(0.460375) and own.start["held"] is True
    assert example.start["width"] == 0.508 and own.key == example.key


def test_all_bad_inputs_are_reported_at_once():
    with pytest.raises(InputError) as caught:
        example.answer(wood="whte oak", width="9 ft", dri=30, held="perhaps")
    assert len(caught.value.problems) == 4
    text = str(caught.value)
    for fragment in (
        "Did you mean 'white oak'",
        "goes from 4 in (102 mm) to 48 in (1219 mm)",
        "Did you mean 'dry'",
        "yes or no",
    ):
        assert fragment in text


def test_an_input_the_function_does_not_take_is_refused():
    with pytest.raises(InputError, match="same names in the same order"):
        study("x", "?", [Switch("a", "A")])(lambda b: b)


def test_a_start_outside_its_span_is_refused_at_once():
    with pytest.raises(InputError, match="goes from"):
        study("x", "?", [Span("a", "Size", "length", 0.1, 0.2, 0.01, 0.3)])(lambda a: a)
    with pytest.raises(InputError, match="choose one of"):
        study("x", "?", [Choice("a", "Wood", ("oak",), "ash")])(lambda a: a)


def test_the_alternative_text_carries_the_numbers():
    text = example.answer().alt_text("metric")
    assert "508 mm" in text and "Movement: " in text and "% MC" in text
    assert example_answer("cherry", 0.3, 20, False).alt_text() != text
