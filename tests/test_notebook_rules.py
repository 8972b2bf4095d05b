"""The rules for notebooks, tried on a notebook that is in order and on one spoilt in each way in turn."""

from __future__ import annotations

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook, new_output
from notebook_rules import IGNORED, SECTIONS, WIDGET_VIEW, faults, hidden_errors, normalise


def printed(text: str):
    return new_output("stream", name="stdout", text=text)


def lesson():
    """A notebook in order: all sections, a thousand words, three numbers."""
    prose = [f"## {section}\n" + "wood " * 80 for section in SECTIONS]
    code = [
        new_code_cell(
            f"# Worked out\nprint({number})",
            execution_count=number,
            outputs=[printed(f"{number}/16 in")],
            metadata={"jupyter": {"source_hidden": True}},
        )
        for number in (1, 2, 3)
    ]
    return new_notebook(cells=[new_markdown_cell(text) for text in prose] + code)


def spoil_counts(book):
    book.cells[-1].execution_count = 7


def spoil_state(book):
    book.metadata["widgets"] = {}


def spoil_length(book):
    book.cells[-1].source = "# Long\n" + "x = 1\n" * 11


def spoil_fold(book):
    book.cells[-1].metadata["jupyter"]["source_hidden"] = False


def spoil_first_line(book):
    book.cells[-1].source = "print(3)"


def spoil_silence(book):
    book.cells[-1].source = "1 + 1;"


def spoil_ignored(book):
    book.cells[-1].metadata["tags"] = [IGNORED]


def spoil_address(book):
    book.cells[-1].outputs = [printed("<Axes at 0x7f0a1b2c3d4e> 3")]


def spoil_path(book):
    book.cells[-1].outputs = [printed("3 from /home/someone/data.csv")]


def spoil_drive(book):
    book.cells[-1].outputs = [printed("3 from C:\\shop\\data.csv")]


def spoil_process(book):
    book.cells[-1].outputs = [printed("3 ipykernel_4711")]


def spoil_view(book):
    book.cells[-1].outputs = [new_output("display_data", data={WIDGET_VIEW: {}, "text/plain": "3"})]


def spoil_error(book):
    book.cells[-1].outputs = [new_output("error", ename="ValueError", evalue="3", traceback=[])]


def spoil_numbers(book):
    book.cells[-1].outputs = [printed("a little")]


def spoil_section(book):
    book.cells[3].source = book.cells[3].source.replace("## why", "## because")


def spoil_order(book):
    book.cells[0], book.cells[5] = book.cells[5], book.cells[0]


def spoil_words(book):
    book.cells[0].source += " wood" * 600


SPOILT = [
    (spoil_counts, "numbered [1, 2, 7]"),
    (spoil_state, "state of its widgets"),
    (spoil_length, "12 lines"),
    (spoil_fold, "shows its code"),
    (spoil_first_line, "say there what it is"),
    (spoil_silence, "semicolon"),
    (spoil_ignored, "yet has outputs"),
    (spoil_address, "memory address"),
    (spoil_path, "absolute path"),
    (spoil_drive, "absolute path"),
    (spoil_process, "process id"),
    (spoil_view, "only lived in one run"),
    (spoil_error, "ValueError: 3"),
    (spoil_numbers, "2 outputs hold a number"),
    (spoil_section, "no section 'why'"),
    (spoil_order, "no section 'slide'"),
    (spoil_words, "words"),
]


def test_a_notebook_in_order_has_no_faults():
    assert faults(lesson()) == []


@pytest.mark.parametrize(("spoil", "words"), SPOILT, ids=[spoil.__name__ for spoil, _ in SPOILT])
def test_each_fault_is_found_and_named(spoil, words):
    book = lesson()
    spoil(book)
    found = faults(book)
    assert any(words in sentence for sentence in found), found


def test_the_bytes_of_a_picture_are_no_path():
    book = lesson()
    page = '<img src="data:image/svg+xml;base64,AAAA/tmp/BBBB" alt="5 mm">'
    book.cells[-1].outputs = [new_output("display_data", data={"text/html": page})]
    assert faults(book) == []


def test_normalising_keeps_stills_and_drops_what_lived_in_one_run():
    book = lesson()
    book.metadata["widgets"] = {"state": {}}
    book.cells[-1].metadata.update(execution={"t": 1}, tags=["remove-cell"], jupyter={"source_hidden": True})
    still = {"text/html": "<p>5 mm</p>", "text/plain": "5 mm"}
    book.cells[-1].outputs = [
        new_output("display_data", data={WIDGET_VIEW: {"model_id": "a"}, **still}),
        new_output("display_data", data={WIDGET_VIEW: {"model_id": "b"}}),
    ]
    book.cells[-2].metadata["tags"] = [IGNORED]
    normalise(book)
    assert book.metadata.keys() == {"kernelspec", "language_info"}
    assert book.cells[-1].metadata == {"tags": ["remove-cell"], "jupyter": {"source_hidden": True}}
    assert [dict(output["data"]) for output in book.cells[-1].outputs] == [still]
    assert book.cells[-2].outputs == []
    nbformat.validate(book)


def test_an_error_inside_a_widget_is_found():
    book = lesson()
    error = {"output_type": "error", "ename": "ValueError", "evalue": "too wide", "traceback": []}
    model = {"state": {"outputs": [error]}}
    book.metadata["widgets"] = {"application/vnd.jupyter.widget-state+json": {"state": {"a": model}}}
    assert hidden_errors(book) == ["ValueError: too wide"]
