"""Every committed notebook is in the form that the notebook tests need; no kernel is started here."""

from __future__ import annotations

from pathlib import Path

import nbformat
import pytest
from notebook_rules import faults

NOTEBOOKS = sorted((Path(__file__).resolve().parent.parent / "notebooks").glob("*.ipynb"))


def test_there_are_notebooks_and_their_names_start_with_their_number():
    assert NOTEBOOKS
    assert [path.name[:2] for path in NOTEBOOKS] == [f"{number:02d}" for number in range(len(NOTEBOOKS))]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_is_in_order(path):
    notebook = nbformat.read(path, as_version=4)
    nbformat.validate(notebook)
    assert faults(notebook) == []
