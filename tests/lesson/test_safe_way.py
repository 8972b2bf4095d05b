"""Exercises round the safe way and say so; what people type in other units is understood, or asked back."""

import pytest

from woodlib.errors import InputError
from woodlib.lesson.exercise import Exercise
from woodlib.lesson.question import Question, read_typed

SLOT = Exercise(Question("slot", "How long is the slot?", "length"), lambda: 0.01812, 0.0024, safe="up")
PANEL = Exercise(Question("panel", "How wide is the panel?", "length"), lambda: 0.4250, 0.0024, safe="down")


def test_a_slot_may_be_longer_and_never_shorter():
    """18.12 mm: 11/16 in is 17.5 mm and binds; 3/4 in is 19.05 mm and safe."""
    assert SLOT.judge("3/4 in").right and SLOT.judge("3/4 in").sentence.startswith("Right: 3/4 in (19 mm)")
    short = SLOT.judge("11/16 in")
    assert short.right is False and "binds before the year is over" in short.sentence
    long = SLOT.judge("1 in")
    assert long.right is False and "is safe, but" in long.sentence and "more than needed" in long.sentence


def test_a_panel_may_be_narrower_and_never_wider():
    assert PANEL.judge("423.5 mm").right and not PANEL.judge("427 mm").right


@pytest.mark.parametrize(
    ("typed", "kind", "days"), [("4 months", "days", 121.6), ("2 weeks", "days", 14), ("1 year", "days", 365)]
)
def test_other_ways_to_say_it_are_understood(typed, kind, days):
    assert read_typed(typed, kind) == pytest.approx(days)


@pytest.mark.parametrize(
    ("typed", "kind", "says"), [("0.38", "humidity", "could be 0.38 % or 38 %"), ("11.6", "stress", "psi")]
)
def test_what_can_mean_two_things_is_asked_back(typed, kind, says):
    with pytest.raises(InputError, match=says):
        read_typed(typed, kind)
