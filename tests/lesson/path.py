"""The notebooks of the course, as the tests of the course read them."""

from __future__ import annotations

import re
from pathlib import Path

import nbformat

NOTEBOOKS = sorted((Path(__file__).resolve().parents[2] / "notebooks").glob("*.ipynb"))
BOOKS = {path.stem[3:]: nbformat.read(path, as_version=4) for path in NOTEBOOKS}
"""Lesson, the notebook's name without its number -> the notebook."""
LESSONS = [name for name in BOOKS if name != "start-here"]


def prose(book) -> str:
    """All that is written in a notebook."""
    return "\n".join(cell.source for cell in book.cells if cell.cell_type == "markdown")


def code(book) -> list[str]:
    """The code of its cells, in order."""
    return [cell.source for cell in book.cells if cell.cell_type == "code"]


def called(book, name: str) -> list[str]:
    """The keys with which a notebook calls a function."""
    return [key for source in code(book) for key in re.findall(rf'\b{name}\("([\w/-]+)"', source)]
