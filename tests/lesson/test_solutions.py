"""Every exercise of every lesson: the solution is accepted, every miss is explained, nothing overlaps."""

from __future__ import annotations

import math

import CoolProp.HumidAirProp as humid_air
import psychrolib
import pytest

from woodlib.errors import InputError
from woodlib.lesson.question import read_typed
from woodlib.lesson.solutions import exercises, find_exercise, find_prediction, lessons, predictions

psychrolib.SetUnitSystem(psychrolib.SI)
EVERY = [exercise for lesson in lessons() for exercise in exercises(lesson).values()]


def test_there_are_exercises():
    assert len(lessons()) == 12 and len(EVERY) >= 30


@pytest.mark.parametrize("exercise", EVERY, ids=lambda exercise: exercise.question.key)
class TestEvery:
    def test_the_solution_is_right_as_it_is_written(self, exercise):
        assert exercise.judge(exercise.answer).right is True
        assert exercise.judge(exercise.question.text(exercise.answer).split(" (")[0]).right is True

    def test_every_miss_is_wrong_and_explained_by_its_own_sentence(self, exercise):
        assert exercise.known_misses
        for miss, why in exercise.known_misses.items():
            judged = exercise.judge(miss)
            assert judged.right is False and judged.sentence == f"Not yet. {why}"

    def test_the_key_carries_the_lesson_and_a_way_is_told(self, exercise):
        assert find_exercise(exercise.question.key) is exercise and exercise.why and exercise.way


def test_the_workshop_against_a_reference_library():
    # Humid air by PsychroLib: vapour pressure outdoors over saturation indoors.
    expected = 90.0 * psychrolib.GetSatVapPres(5.0) / psychrolib.GetSatVapPres(18.0)
    assert find_exercise("the-air-of-a-house/garage-workshop").answer == pytest.approx(expected, abs=0.05)


def test_the_lived_in_winter_against_a_reference_library():
    # Outdoors: Magnus form of Alduchov and Eskridge 1996 over water, 80 %; plus 2 g/m3 of an ideal gas at 21 degC.
    # Its humidity indoors by CoolProp's humid air.
    vapour = 0.8 * 610.94 * math.exp(17.625 * -10.0 / (243.04 - 10.0)) + 0.002 * 461.52 * 294.15
    rh = 100 * humid_air.HAPropsSI("R", "T", 294.15, "P", 101325, "P_w", vapour)
    # Wood Handbook Table 4-2 at 70 degF: 4.5 % at 20 % relative humidity.
    assert rh == pytest.approx(20.1, abs=0.2)
    assert find_exercise("the-air-of-a-house/lived-in-winter").answer == pytest.approx(4.5, abs=0.1)


def test_the_meter_reading_against_the_handbook_table():
    # Wood Handbook FPL-GTR-190 (2010) Table 4-2, 70 degF: 5.4 % at 25 % and 6.2 % at 30 % relative humidity.
    between = 25.0 + 5.0 * (6.0 - 5.4) / (6.2 - 5.4)
    assert find_exercise("the-air-of-a-house/meter-reading").answer == pytest.approx(between, abs=0.6)


FORETOLD = [foretold for lesson in lessons() for foretold in predictions(lesson).values()]


@pytest.mark.parametrize("foretold", FORETOLD, ids=lambda foretold: foretold.question.key)
class TestEveryPrediction:
    def test_what_comes_out_is_an_answer_to_its_question(self, foretold):
        answer, words = foretold.outcome()
        assert foretold.question.text(foretold.question.read(answer)) and words.endswith(".")
        assert find_prediction(foretold.question.key) is foretold

    def test_a_typed_one_says_how_close_is_close(self, foretold):
        typed = not foretold.question.options
        assert bool(foretold.close) is typed
        if typed:
            assert 0 < read_typed(foretold.close, foretold.question.kind) < abs(foretold.outcome()[0])


def test_every_lesson_asks_for_a_prediction_and_has_three_exercises():
    for lesson in lessons():
        if lesson != "start-here":
            assert predictions(lesson) and len(exercises(lesson)) >= 3, lesson


def test_a_prediction_that_is_not_there_is_named():
    with pytest.raises(InputError, match="Did you mean 'laying-boards/oak-cup'"):
        find_prediction("laying-boards/oak-cups")
