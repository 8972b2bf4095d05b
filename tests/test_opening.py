"""Opening the notebooks: which comes first, and copies that never replace what a reader has written."""

from __future__ import annotations

import pytest

from woodlib import opening
from woodlib.environment import SetUpError


@pytest.fixture
def source(tmp_path):
    folder = tmp_path / "kit"
    (folder / "pictures").mkdir(parents=True)
    (folder / ".ipynb_checkpoints").mkdir()
    for name in ("02-panel.ipynb", "01-air.ipynb", "pictures/panel.png", ".ipynb_checkpoints/01-air.ipynb"):
        (folder / name).write_text(f"kit {name}")
    return folder


def test_the_first_notebook_is_the_one_with_the_lowest_number(source):
    assert opening.first_notebook(source).name == "01-air.ipynb"


def test_the_notebooks_of_a_working_copy_are_opened_in_place():
    assert opening.first_notebook(opening.notebooks_folder()).name == "00-start-here.ipynb"


def test_copies_go_to_a_folder_of_ones_own_and_replace_nothing(source, tmp_path, capsys):
    own = tmp_path / "shop" / "panels"
    opening.copy_notebooks(source, own)
    assert sorted(path.relative_to(own).as_posix() for path in own.rglob("*.*")) == [
        "01-air.ipynb",
        "02-panel.ipynb",
        "pictures/panel.png",
    ]
    (own / "01-air.ipynb").write_text("my notes")
    (own / "02-panel.ipynb").unlink()
    opening.copy_notebooks(source, own)
    assert (own / "01-air.ipynb").read_text() == "my notes"
    assert (own / "02-panel.ipynb").read_text() == "kit 02-panel.ipynb"
    assert "Left as they are" in capsys.readouterr().out


def test_an_installed_kit_asks_for_a_folder(monkeypatch):
    monkeypatch.setattr(opening, "project_folder", lambda: None)
    with pytest.raises(SetUpError, match="Name a folder of your own"):
        opening.open_lab(None, [])


@pytest.mark.parametrize("trouble", ["empty", "in the way"])
def test_a_folder_that_cannot_serve_is_named(source, tmp_path, trouble):
    place = tmp_path / "place"
    if trouble == "empty":
        place.mkdir()
        with pytest.raises(SetUpError, match="no notebook in .*place"):
            opening.first_notebook(place)
    else:
        place.write_text("a file")
        with pytest.raises(SetUpError, match="cannot be copied to .*place"):
            opening.copy_notebooks(source, place)


@pytest.mark.parametrize(
    ("user", "options", "expected"),
    [(0, [], ["--allow-root"]), (0, ["--allow-root"], []), (1000, [], [])],
)
def test_root_is_told_what_that_means(monkeypatch, capsys, user, options, expected):
    monkeypatch.setattr(opening.os, "geteuid", lambda: user, raising=False)
    assert opening.root_option(options) == expected
    assert ("You are root" in capsys.readouterr().out) is bool(expected)
