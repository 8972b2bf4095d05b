"""The path from the start page to the commission: every piece is there once, in its place, and each cell runs by itself."""

from __future__ import annotations

import re

import pytest
from lesson.path import BOOKS, LESSONS, called, code, prose

from woodlib.lesson.case import FACTS
from woodlib.lesson.measured import SERIES
from woodlib.lesson.refuted import IDEAS
from woodlib.lesson.solutions import exercises, lessons, predictions

ASKING = ("predict", "seen", "check")


def test_lessons_facts_series_and_ideas_go_in_one_order():
    assert list(FACTS) == list(SERIES) == list(IDEAS) == LESSONS
    assert sorted(BOOKS) == sorted(lessons())


@pytest.mark.parametrize("lesson", BOOKS)
def test_a_lesson_asks_what_is_declared_for_it_once_each(lesson):
    book = BOOKS[lesson]
    assert called(book, "predict") == called(book, "seen") == list(predictions(lesson))
    assert called(book, "check") == list(exercises(lesson))


@pytest.mark.parametrize("lesson", LESSONS)
def test_every_prediction_of_a_lesson_opens_a_curtain(lesson):
    behind = [source for source in code(BOOKS[lesson]) if "curtain(" in source]
    opening = {key for source in behind for key in re.findall(rf'"({lesson}/[\w-]+)"', source)}
    assert opening == set(predictions(lesson)) and behind


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_lesson_has_its_wrong_idea_its_series_and_its_case(lesson):
    for name in ("refuted", "held_against", "case_so_far"):
        assert called(BOOKS[lesson], name) == [lesson]


@pytest.mark.parametrize("lesson", BOOKS)
def test_no_answer_stands_in_a_cell_that_is_seen_and_the_last_cell_is_words(lesson):
    book = BOOKS[lesson]
    assert book.cells[-1].cell_type == "markdown"
    assert not [cell for cell in book.cells if "remove-cell" in cell.metadata.get("tags", ())]
    for source in code(book):
        for name in ASKING:
            if f"import {name}\n" in source:
                assert re.fullmatch(
                    rf'# [^\n]+\nfrom woodlib.lesson import {name}\n{name}\("{lesson}/[\w-]+"\)', source
                ), source


@pytest.mark.parametrize("lesson", [name for name in BOOKS if name != "the-commission"])
def test_each_cell_runs_by_itself(lesson):
    """In a namespace of its own, as in a fresh kernel; the commission's cells work on one commission and say so."""
    for source in code(BOOKS[lesson]):
        exec(compile(source, lesson, "exec"), {"__name__": "__main__"})


def test_links_lead_to_notebooks_that_are_there_and_the_start_page_to_all():
    files = {f"{number:02d}-{name}.ipynb" for number, name in enumerate(BOOKS)}
    for name, book in BOOKS.items():
        linked = set(re.findall(r"\]\(([\w-]+\.ipynb)", prose(book)))
        assert linked <= files, name
        if name == "start-here":
            assert linked == files - {"00-start-here.ipynb"}


def test_the_start_page_says_first_what_to_press_and_has_three_doors():
    first = BOOKS["start-here"].cells[0].source.splitlines()[0]
    assert "Shift and Enter" in first
    for door in ("I have a commission", "I teach", "I learn"):
        assert f"**{door}.**" in prose(BOOKS["start-here"])


def test_only_the_last_lesson_decides_how_the_seat_is_built():
    built = re.compile(r"build (?:both|it|the seat) as|the seat is built as|we build it as", re.IGNORECASE)
    for lesson in LESSONS[:-1]:
        assert not built.search(prose(BOOKS[lesson])), lesson
    assert "Decided" in FACTS["the-commission"][0]
