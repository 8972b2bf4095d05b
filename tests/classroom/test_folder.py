"""The folder of a class: complete, linked, the same from the same seed, harmless whatever names it is given, never over another."""

from __future__ import annotations

import re
import shutil
from html.parser import HTMLParser

import pytest

from woodlib.classroom.folder import MARK, TEACHER, class_files, write_class
from woodlib.classroom.lessons import all_lessons
from woodlib.errors import InputError
from woodlib.opening import notebooks_folder

HOSTILE = (
    '<img src=x onerror="document.title=1">',
    '"; rm -rf ~ #',
    "../../up",
    "=cmd|'/c calc'!A1",
    "$\\frac{a}{b}$",
    "{{ 7*7 }}",
)
LESSONS = all_lessons(notebooks_folder())
TWO = LESSONS[:2]


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """A class with two of the lessons, for the time it takes; what holds for all of them is asked of the notebooks."""
    school, said = tmp_path_factory.mktemp("school"), []
    (school / "notebooks").mkdir()
    for lesson in TWO:
        shutil.copy(lesson.path, school / "notebooks")
    write_class(school / "class", school / "notebooks", HOSTILE, "spring", told=said.append)
    assert len(said) == len(TWO) + 1
    return school / "class"


class Links(HTMLParser):
    def __init__(self, text: str) -> None:
        super().__init__()
        self.links: list[str] = []
        self.tags: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.links += [value for name, value in attrs if name in ("href", "src") and value]


def pages(folder):
    return sorted(folder.rglob("*.html"))


def test_everything_is_there(made):
    names = {str(path.relative_to(made)) for path in made.rglob("*") if path.is_file()}
    assert {"index.html", MARK, *(f"{TEACHER}/{name}.pdf" for name in ("worksheets", "key", "sheets"))} <= names
    assert {f"lessons/{lesson.file}" for lesson in TWO} <= names
    assert {f"students/{number:02}.html" for number in range(1, len(HOSTILE) + 1)} <= names


def test_every_link_leads_somewhere_in_the_folder(made):
    count = 0
    for path in pages(made):
        for link in Links(path.read_text()).links:
            if not link.startswith(("#", "data:")):
                count += 1
                target = (path.parent / link.partition("#")[0]).resolve()
                assert target.is_file() or target.name in {lesson.file for lesson in LESSONS}, (path.name, link)
                assert ".ipynb" not in link
    assert count > 4 * len(TWO)


def test_no_page_shows_code_or_asks_the_network(made):
    for path in pages(made / "lessons"):
        text = path.read_text()
        assert 'class="highlight' not in text and "Show the code" not in text and "from woodlib" not in text, path.name
        assert "default-src 'none'" in text


def test_names_stay_names(made):
    for path in pages(made):
        found = Links(path.read_text())
        assert "img" not in found.tags or "lessons" in path.parts, path
    assert (
        HOSTILE[0].replace('"', "&#34;").replace("<", "&lt;").replace(">", "&gt;") in (made / "index.html").read_text()
    )
    assert "49" not in re.search(r"<h1>(.*?)</h1>", (made / "students" / "06.html").read_text())[1]
    assert not (made.parent.parent / "up").exists()


def test_the_same_seed_and_names_give_the_same_bytes(made):
    again = class_files(LESSONS[:1], HOSTILE, "spring", lambda _: None)
    for name in (f"{TEACHER}/worksheets.pdf", f"{TEACHER}/key.pdf", "students/03.html", f"lessons/{LESSONS[0].file}"):
        if name != f"lessons/{LESSONS[0].file}":  # its links name the lesson after it
            assert again[name] == (made / name).read_bytes(), name
    assert again == class_files(LESSONS[:1], HOSTILE, "spring", lambda _: None)
    other = class_files(LESSONS[:1], HOSTILE, "autumn", lambda _: None)
    assert other["students/03.html"] != again["students/03.html"]


def test_a_folder_that_is_there_is_left_as_it_is(made, tmp_path):
    before = (made / "index.html").read_bytes()
    with pytest.raises(InputError, match="is there already"):
        write_class(made, notebooks_folder(), ("Ada",), "x")
    assert (made / "index.html").read_bytes() == before
    own = tmp_path / "mine"
    own.mkdir()
    (own / "index.html").write_text("mine")
    with pytest.raises(InputError, match="was not made by this command"):
        write_class(own, notebooks_folder(), ("Ada",), "x", replace=True)
    assert (own / "index.html").read_text() == "mine" and len(list(own.iterdir())) == 1


@pytest.mark.parametrize("place", ["", "no-such-folder/class"])
def test_a_place_that_cannot_be_used_is_refused(tmp_path, monkeypatch, place):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(InputError):
        write_class(tmp_path.__class__(place) if place else tmp_path.__class__("\0"), notebooks_folder(), ("Ada",), "x")
    assert list(tmp_path.iterdir()) == []


def test_told_to_replace_it_writes_its_own_files_and_leaves_others(tmp_path, monkeypatch):
    monkeypatch.setattr("woodlib.classroom.folder.all_lessons", lambda _: LESSONS[:1])
    folder = tmp_path / "class"
    write_class(folder, notebooks_folder(), ("Ada",), "one")
    (folder / "notes.txt").write_text("keep me")
    first = (folder / "students" / "01.html").read_bytes()
    write_class(folder, notebooks_folder(), ("Ada",), "two", replace=True)
    assert (folder / "notes.txt").read_text() == "keep me" and (folder / "students" / "01.html").read_bytes() != first
    assert not list(tmp_path.glob(".draft*"))
