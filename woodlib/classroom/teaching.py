"""A sheet for the teacher to each lesson: what students believe, the board, a demonstration, questions, timing, care.

The texts are in ``data/teaching``, one file a sheet; the numbers in them are the kit's own, computed when a sheet is
made. A lesson finds its sheet by the exercises and studies that it shows, so that a notebook may be called anything.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from ..data_files import data_path
from ..errors import InputError
from ..handout.page import page
from ..picture.paper import Paper
from ..picture.pdf import sheets_pdf
from ..picture.scene import Picture
from ..picture.svg import svg
from ..templates import template
from . import demonstrations
from .sketch import sketch

_SLOT = re.compile(r"\{(\w+)\}")
_SMALL = 12.2  # px: a sheet is one page


@dataclass(frozen=True)
class Sheet:
    """What a teacher needs for one lesson; ``believe`` and ``ask`` are pairs of a belief and an answer, or question and answer."""

    key: str
    goes_with: tuple[str, ...]
    title: str
    believe: tuple[tuple[str, str], ...]
    board: str
    sketch: tuple[str, ...]
    bring: str
    demonstration: tuple[str, ...]
    ask: tuple[tuple[str, str], ...]
    in_45: tuple[str, ...]
    in_90: tuple[str, ...]
    caution: str

    @property
    def picture(self) -> Picture:
        """The board sketch."""
        return sketch(self.board, self.sketch)


@cache
def all_sheets() -> tuple[Sheet, ...]:
    """Every sheet, its numbers filled in."""
    return tuple(_read(path) for path in sorted(data_path("teaching").glob("*.toml")))


def sheet_for(shown: Collection[str]) -> Sheet | None:
    """The sheet that goes with a lesson, by the keys of exercises and studies it shows; None where there is none yet.

    The first key that a sheet names counts most, so that a study shown in two lessons does not decide.

    >>> sheet_for({"panel-movement"}).title
    'How far it moves'
    """
    fits = [(rank, sheet.key) for sheet in all_sheets() for rank, key in enumerate(sheet.goes_with) if key in shown]
    return next((sheet for sheet in all_sheets() if fits and sheet.key == min(fits)[1]), None)


def _read(path: Path) -> Sheet:
    written = tomllib.loads(path.read_text(encoding="utf-8"))

    def filled(value):
        if isinstance(value, list):
            return tuple(filled(part) for part in value)
        return _SLOT.sub(lambda slot: _number(slot[1], path.name), value)

    return Sheet(path.stem, **{key: filled(value) for key, value in written.items()})


def _number(name: str, where: str) -> str:
    if name not in demonstrations.names():
        raise InputError(f"{where} asks for a number {name!r}; there are: {', '.join(demonstrations.names())}.")
    return demonstrations.said(name)


def sheets_on_paper(sheets: Sequence[Sheet]) -> bytes:
    """The sheets as a PDF, a page each."""
    paper = Paper(
        "For the teacher",
        foot="woodlib \u00b7 for the teacher \u00b7 numbers are the kit's own; a single board can be well off",
    )
    for number, sheet in enumerate(sheets):
        if number:
            paper.new_page()
        paper.text(f"For the teacher: {sheet.title}", 17.0, bold=True)
        paper.heading("What students believe", 13.0)
        paper.items([f"\u201c{belief}\u201d {answer}" for belief, answer in sheet.believe], size=_SMALL)
        paper.heading("On the board", 13.0)
        paper.text(sheet.board, _SMALL)
        paper.picture(sheet.picture, 380.0, 16.0)
        paper.heading("At the bench", 13.0)
        paper.text(f"Bring: {sheet.bring}", _SMALL)
        paper.items(sheet.demonstration, "1", _SMALL)
        paper.heading("Four questions", 13.0)
        paper.items([f"{question} {answer}" for question, answer in sheet.ask], "1", _SMALL)
        paper.heading("Minutes", 13.0)
        paper.text(f"In 45: {'; '.join(sheet.in_45)}.", _SMALL)
        paper.text(f"In 90: {'; '.join(sheet.in_90)}.", _SMALL)
        paper.heading("Take care", 13.0)
        paper.text(sheet.caution, _SMALL)
    return sheets_pdf(paper.finish())


def sheet_page(sheet: Sheet, lesson: str, lesson_title: str) -> str:
    """A sheet as a page, with a link to its lesson."""
    body = template("classroom/templates/teaching.html").render(
        sheet=sheet,
        lesson=lesson,
        lesson_title=lesson_title,
        picture=svg(sheet.picture, sheet.board, name="board", styled=False, hatched=False),
    )
    return page(f"For the teacher: {sheet.title}", [body], slides=False)
