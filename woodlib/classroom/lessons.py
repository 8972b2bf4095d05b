"""The lessons as pages: every notebook there is, in the order of its name, live, judged on the page, linked, offline."""

from __future__ import annotations

import copy
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from html import escape
from pathlib import Path
from typing import Any

import nbformat
from nbformat import NotebookNode
from traitlets.config import Config

from ..errors import InputError
from ..handout.exporter import QUESTION_MIME, HandoutExporter
from ..lesson.question import OPTION, Question
from ..lesson.rules import exercise_rules, prediction_rules
from ..lesson.solutions import exercises, lessons
from ..live import STUDY_MIME

_LINK = re.compile(r"\]\(([^)#\s]+)\.ipynb(#[^)\s]*)?\)")


@dataclass(frozen=True)
class Lesson:
    """One notebook on its way to a page."""

    path: Path

    @cached_property
    def notebook(self) -> NotebookNode:
        """The notebook as it is stored."""
        try:
            return nbformat.read(self.path, as_version=4)
        except (OSError, ValueError, nbformat.ValidationError):
            raise InputError(f"{self.path.name} cannot be read as a notebook; get the kit again.") from None

    @property
    def file(self) -> str:
        """The name of its page."""
        return f"{self.path.stem}.html"

    @cached_property
    def title(self) -> str:
        """The first heading."""
        found = re.search(r"^#\s+(.+)$", self._prose, re.MULTILINE)
        return re.sub(r"[*_`]", "", found[1]).strip() if found else self.path.stem

    @cached_property
    def decides(self) -> str:
        """What it is for: the first line in italics, where there is one."""
        found = re.search(r"^\*([^*\n]+)\*\s*$", self._prose, re.MULTILINE)
        return found[1].strip() if found else ""

    @property
    def _prose(self) -> str:
        return "\n".join(cell.source for cell in self.notebook.cells if cell.cell_type == "markdown")

    @cached_property
    def shown(self) -> frozenset[str]:
        """Keys of the studies it shows, of its exercises and predictions, and of the lessons these belong to."""
        keys = {record["study"] for record in self._records(STUDY_MIME)}
        asked = {record["key"] for record in self._records(QUESTION_MIME)}
        return frozenset(keys | asked | {key.partition("/")[0] for key in asked})

    def _records(self, kind: str) -> Iterator[Mapping[str, Any]]:
        for cell in self.notebook.cells:
            for output in cell.get("outputs", ()):
                if kind in output.get("data", {}):
                    yield output["data"][kind]

    def _readings(self) -> dict[str, Any]:
        """How its typed predictions are read, by key."""
        records = [record for record in self._records(QUESTION_MIME) if record["role"] == "prediction"]
        asked = [
            Question(record["key"], record["question"], record["kind"], tuple(record["options"])) for record in records
        ]
        return {question.key: prediction_rules(question) for question in asked if question.kind != OPTION}

    def page(self, before: str = "", after: str = "") -> str:
        """The page: no code, every exercise judged, links to notebooks turned into links to pages.

        ``before`` and ``after`` are HTML that stands round the lesson.
        """
        notebook = copy.deepcopy(self.notebook)
        for cell in notebook.cells:
            if cell.cell_type == "markdown":
                cell.source = _LINK.sub(r"](\1.html\2)", cell.source)
        config = Config(
            {
                "HandoutExporter": {"exclude_input": True},
                # Unlike a client's page, a lesson keeps the cells that are for a learner alone.
                "TagRemovePreprocessor": {"remove_cell_tags": {"remove-cell"}},
            }
        )
        wanted = {
            "rules": _rules(self.shown) | self._readings(),
            "title": self.title,
            "before": before,
            "after": after,
            "scripts": ("judge.js", "slides.js"),
        }
        resources = {"metadata": {"name": self.path.stem, "path": str(self.path.parent)}, "woodlib": wanted}
        html, _ = HandoutExporter(config=config).from_notebook_node(notebook, resources)
        return html


def all_lessons(folder: Path) -> tuple[Lesson, ...]:
    """Every notebook of a folder, in the order of its name; raises :class:`InputError` for none."""
    found = tuple(Lesson(path) for path in sorted(folder.glob("*.ipynb")))
    if not found:
        raise InputError(f"There is no notebook in {folder}; get the kit again.")
    return found


def beside(lessons_: tuple[Lesson, ...], number: int, where: str) -> str:
    """Links from a lesson to the one before, the class and the next, as HTML; ``where`` they stand, "above" or "below"."""
    links = ['<a href="../index.html">All lessons</a>']
    if number > 0:
        links.insert(
            0, f'<a href="{escape(lessons_[number - 1].file)}">\u2190 {escape(lessons_[number - 1].title)}</a>'
        )
    if number + 1 < len(lessons_):
        links.append(f'<a href="{escape(lessons_[number + 1].file)}">{escape(lessons_[number + 1].title)} \u2192</a>')
    between = " \u00b7 ".join(links)
    return f'<nav class="quiet" aria-label="Lessons, {where}">{between}</nav>'


def _rules(shown: frozenset[str]) -> dict[str, Any]:
    """How the exercises of a lesson are judged, by key."""
    known = {key: found for lesson in lessons() if lesson in shown for key, found in exercises(lesson).items()}
    return {key: exercise_rules(found) for key, found in known.items() if key in shown}
