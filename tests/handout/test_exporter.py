"""The exporter on whole notebooks: a teacher's own study, other widgets, code folded away, nothing overwritten."""

from __future__ import annotations

import base64
import re

import nbformat
import pytest
from nbconvert.exporters import get_exporter
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook, new_output

from woodlib.errors import InputError, WoodlibError
from woodlib.handout import handout_from_notebook
from woodlib.handout.exporter import STILL_HERE, WIDGET_MIME, HandoutExporter
from woodlib.live import STUDY_MIME

TEACHERS_OWN = """
from woodlib.live import show
from woodlib.study import Answer, Reading, Span, study
from woodlib.picture.scene import Line, Picture
from woodlib.words.say import length, say

@study("my-own", "How long is my line?", [Span("size", "Size", "length", 0.1, 0.5, 0.01, 0.2)])
def mine(size):
    line = Line([(10, 10), (10 + 500 * size, 10)])
    return Answer(Picture("A line", 400, 40, (line,)), say("It is {x} long.", x=length(size)), ())
"""


def _page(*cells, given=None):
    notebook = new_notebook(cells=list(cells))
    return HandoutExporter().from_notebook_node(notebook, {"woodlib": {"sections": given or {}}})[0]


def _recorded(function="example_study:example", **values):
    state = {"wood": "white oak", "width": 0.508, "dry": 35, "held": False} | values
    record = {"study": "example", "function": function, "values": state}
    return new_output("display_data", data={STUDY_MIME: record, "text/plain": "Kept"})


def test_nbconvert_knows_the_exporter_by_its_name():
    assert get_exporter("woodlib-handout") is HandoutExporter


def test_a_recorded_study_is_frozen_where_its_sliders_stood():
    cell = new_code_cell("show(example)", outputs=[_recorded(width=0.762)])
    html = _page(new_markdown_cell("# Your bench\n\nText."), cell)
    assert html.count("data-study") == 2 and "30 in (762 mm)" in html  # once in the page, once in its script
    assert "<title>Your bench</title>" in html


def test_two_of_the_same_study_get_names_of_their_own():
    cell = new_code_cell("x", outputs=[_recorded(), _recorded(width=0.3048)])
    html = _page(cell)
    assert 'id="example"' in html and 'id="example-2"' in html


def test_a_study_made_in_the_notebook_itself_works_too():
    html = _page(new_code_cell(TEACHERS_OWN), new_code_cell("show(mine, size='12 in')"))
    assert 'id="my-own"' in html and "It is 12 in (305 mm) long." in html


def test_a_notebook_that_fails_says_why():
    with pytest.raises(WoodlibError, match="stopped at a cell that says: No such wood"):
        _page(new_code_cell("raise ValueError('No such wood')"))


def test_code_is_folded_and_author_cells_stay_out():
    hidden = new_code_cell("secret = 1", metadata={"tags": ["remove-cell"]}, outputs=[])
    shown = new_code_cell("visible = 1", outputs=[new_output("stream", name="stdout", text="hello")])
    html = _page(shown, hidden)
    assert "<summary>Show the code</summary>" in html and "visible" in html and "secret" not in html


def test_other_widgets_leave_their_still_and_a_note():
    other = new_output(
        "display_data", data={WIDGET_MIME: {"model_id": "x"}, "image/png": "iVBORw0KGgo=", "text/plain": "Dial()"}
    )
    bare = new_output("display_data", data={WIDGET_MIME: {"model_id": "y"}, "text/plain": "Dial()"})
    html = _page(new_code_cell("dial", outputs=[other, bare]))
    assert html.count(STILL_HERE) == 2 and "data:image/png" in html and "Dial()" not in html


def test_scripts_in_outputs_cannot_run():
    bad = new_output("display_data", data={"text/html": "<b>x</b><script>alert(1)</script>"})
    html = _page(new_code_cell("x", outputs=[bad]))
    policy = re.search(r'Content-Security-Policy" content="([^"]+)"', html).group(1)
    assert "unsafe-inline" not in policy.split("style-src")[0]


def test_the_notebook_given_is_left_as_it_was(tmp_path):
    notebook = new_notebook(cells=[new_code_cell("1", outputs=[_recorded()])])
    before = nbformat.writes(notebook)
    HandoutExporter().from_notebook_node(notebook)
    assert nbformat.writes(notebook) == before


@pytest.mark.parametrize(
    ("target", "fragment"),
    [("plain.txt", "ends in .html"), ("missing/x.html", "no folder"), ("mine.html", "not a handout of woodlib")],
)
def test_nothing_of_the_makers_is_overwritten(tmp_path, target, fragment):
    (tmp_path / "mine.html").write_text("<p>my own page</p>")
    source = tmp_path / "n.ipynb"
    nbformat.write(new_notebook(cells=[new_markdown_cell("# T")]), source)
    with pytest.raises(InputError, match=fragment):
        handout_from_notebook(source, tmp_path / target)
    assert (tmp_path / "mine.html").read_text() == "<p>my own page</p>"


def test_an_older_handout_is_replaced_by_a_newer_one(tmp_path):
    source = tmp_path / "n.ipynb"
    nbformat.write(new_notebook(cells=[new_markdown_cell("# First")]), source)
    target = handout_from_notebook(source, tmp_path / "out.html")
    nbformat.write(new_notebook(cells=[new_markdown_cell("# Second")]), source)
    assert "<title>Second</title>" in handout_from_notebook(source, target).read_text()
    assert [path.name for path in tmp_path.iterdir() if path.suffix == ".draft"] == []


def test_a_missing_notebook_is_a_sentence(tmp_path):
    with pytest.raises(InputError, match="save the notebook first"):
        handout_from_notebook(tmp_path / "none.ipynb", tmp_path / "out.html")


def test_the_page_says_how_its_sliders_were_checked():
    html = _page(new_code_cell("x", outputs=[_recorded()]))
    assert "How the sliders were checked" in html and "2000 others compared with full redraws" in html


def test_a_persons_own_pictures_are_carried_inside(tmp_path):
    """A page that is sent to a client has no folder beside it; a picture that is missing is no reason to fail."""
    dot = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR4nGNgYGD4DwABBAEAX+XDSwAAAABJRU5ErkJggg=="
    (tmp_path / "my bench.png").write_bytes(base64.b64decode(dot))
    text = '![bench](<my bench.png>)\n\n<img src="my bench.png" alt="again">\n\n![gone](gone.png)'
    nbformat.write(new_notebook(cells=[new_markdown_cell(text)]), tmp_path / "own.ipynb")
    html = handout_from_notebook(tmp_path / "own.ipynb", tmp_path / "own.html").read_text("utf-8")
    assert html.count(f"data:image/png;base64,{dot}") == 2 and 'src="my' not in html and str(tmp_path) not in html
