"""Exercises on a page without Python say what the library says, whatever is typed."""

from __future__ import annotations

import numpy as np
import pytest

from woodlib.handout.page import page, question_html
from woodlib.lesson import ExerciseCard
from woodlib.lesson.exercise import Exercise
from woodlib.lesson.rules import exercise_rules
from woodlib.lesson.solutions import exercises, lessons
from woodlib.units import FORMATS

EVERY = {key: exercise for lesson in lessons() for key, exercise in exercises(lesson).items()}
ODD = (
    "",
    "   ",
    "?",
    "three",
    "1/0 in",
    "12",
    "1,500 mm",
    "-3 mm",
    "0.38",
    ".5 %",
    "4 months",
    "1 year",
    "2 weeks",
    "1\u00bd\u2033",
    "1\u2019 6\u2013\u215c\u201d",
    "1\u00b3\u2044\u2081\u2086 in",
    "about 9 mm",
    "~ 3/8",
    "3/8",
    "38mm",
    '1-1/2"',
    "45 % RH",
    "9 % mc",
    "11.6",
    "4 MPa",
    "600 psi",
    "20 C",
    "68\u00b0F",
    "1e3 mm",
    "5 cm",
    "0,4 cm",
    "2 ft",
    "9999999 m",
    "<b>9 mm</b>",
    "NaN",
    "Infinity",
    "constructor",
    "1 toString",
    "5 kg",
    "9 mm 3",
    "x" * 90 + " mm",
)


def typed(exercise: Exercise, noise: np.random.Generator) -> list[str]:
    """Answers that tell: near every edge, written in every way that the kind of number has, and odd ones."""
    question = exercise.question
    if question.options:
        return list(question.options)
    answer, reach = float(exercise.answer), exercise.tolerance
    near = [answer, *map(float, exercise.known_misses)]
    values = [value + share * reach for value in near for share in (-1.4, -1, -0.6, -0.15, 0, 0.15, 0.6, 1, 1.4)]
    values += [answer * share for share in noise.uniform(-0.5, 3, 20)]
    parts = FORMATS[question.kind].parts
    return [*ODD, *(part.text(value) for value in values for part in parts)]


@pytest.fixture(scope="module")
def address(tmp_path_factory):
    cards = [question_html(ExerciseCard(each).record() | {"rules": exercise_rules(each)}) for each in EVERY.values()]
    file = tmp_path_factory.mktemp("judged") / "page.html"
    file.write_text(page("Exercises", cards, slides=False, scripts=("judge.js",)))
    return file.as_uri()


def test_a_page_judges_as_the_library_does(offline_page, address):
    page, noise = offline_page.page, np.random.default_rng(7)
    page.goto(address)
    asked = {key: typed(exercise, noise) for key, exercise in EVERY.items()}
    found = page.evaluate(
        """asked => Object.fromEntries(Object.entries(asked).map(([key, given]) => {
          const form = document.querySelector(`[data-exercise="${key}"]`);
          const rules = JSON.parse(form.querySelector("[data-rules]").textContent);
          return [key, given.map((one) => judge(one, rules))]; }))""",
        asked,
    )
    apart = []
    for key, given in asked.items():
        for text, page_says in zip(given, found[key], strict=True):
            judged = EVERY[key].judge(text)
            same_words = judged.right is None or judged.sentence == page_says["sentence"]
            if page_says["right"] is not judged.right or not same_words:
                apart.append((key, text, judged, page_says))
    assert apart == []
    assert sum(one["right"] is True for said in found.values() for one in said) > 3 * len(EVERY)
    assert offline_page.errors == [] and offline_page.requests == []


def test_a_miss_is_explained_and_the_way_opens_after_two_tries(offline_page, address):
    page = offline_page.page
    page.goto(address)
    key, exercise = next((key, each) for key, each in EVERY.items() if not each.question.options and each.way)
    card = page.locator(f'[data-exercise="{key}"]')
    way = card.get_by_role("button", name="Show me a way")
    for miss in ("", "?", *2 * list(exercise.known_misses)):
        assert way.is_disabled()
        card.get_by_role("textbox").fill(exercise.question.text(miss) if isinstance(miss, float) else miss)
        card.get_by_role("textbox").press("Enter")
        assert card.get_by_role("status").inner_text()
        if way.is_enabled():
            break
    way.click()
    assert exercise.way in card.get_by_role("status").inner_text()
