"""Lessons are written for somebody who has left school early: grade 6 or below, and no section far above."""

from __future__ import annotations

import re
from pathlib import Path

import nbformat
import pytest
from lesson.reading_level import grade, prose, sentences

NOTEBOOKS = sorted((Path(__file__).resolve().parents[2] / "notebooks").glob("*.ipynb"))
HARDEST_LESSON, HARDEST_SECTION, ENOUGH_WORDS = 6.0, 7.0, 40


def sections(path: Path) -> list[str]:
    """The sections of a lesson in its own words, without its list of sources."""
    cells = [cell.source for cell in nbformat.read(path, as_version=4).cells if cell.cell_type == "markdown"]
    return [part for part in re.split(r"\n(?=## )", "\n\n".join(cells)) if not part.startswith("## Sources")]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_lesson_is_plain_to_read(path):
    parts = sections(path)
    assert grade(prose("\n\n".join(parts))) <= HARDEST_LESSON
    long = [part for part in parts if sum(map(len, sentences(prose(part)))) >= ENOUGH_WORDS]
    hard = {part.splitlines()[0]: round(grade(prose(part)), 1) for part in long if grade(prose(part)) > HARDEST_SECTION}
    assert hard == {}


def test_longer_sentences_and_longer_words_are_harder():
    easy = "Wood moves. It grows in damp air. It shrinks in dry air."
    longer = "Wood moves, and it grows in damp air, and it shrinks in dry air."
    heavier = "Humidity determines equilibrium. Dimensional variation necessarily follows."
    assert grade(easy) < grade(longer) < grade(heavier)


def test_a_passage_counted_by_hand():
    """Six words and five, twelve syllables (only "winter" has two): 0.39 x 5.5 + 11.8 x 12 / 11 - 15.59."""
    text = "The board is dry in winter. Leave it on the rack."
    assert grade(text) == pytest.approx(2.145 + 12.873 - 15.59, abs=0.001)


def test_what_is_no_running_text_is_left_out():
    text = prose(
        "# A heading\n\n| a | table |\n\nSee [this page](http://x.example/y). `code` stays out.\n\n1. One step\n2. Next"
    )
    assert "heading" not in text and "table" not in text and "http" not in text and "code" not in text
    assert sentences(text) == [["See", "this", "page"], ["stays", "out"], ["One", "step"], ["Next"]]
