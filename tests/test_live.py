"""The panel, driven from code without a browser."""

from __future__ import annotations

import json

import pytest
from example_study import example

from woodlib import live
from woodlib.errors import InputError
from woodlib.live import show
from woodlib.study import Answer, Span, study


@pytest.fixture
def panel():
    return show(example)


def test_moving_a_slider_changes_picture_and_readings(panel):
    before, words = panel.picture, panel.readings
    panel.controls["width"].index = 10
    assert panel.picture != before and panel.readings != words
    assert panel.values["width"] == pytest.approx(0.1016 + 10 * 0.00635)


def test_set_takes_shop_text_and_keeps_sizes_between_steps(panel):
    answer = panel.set(width="18-1/8 in", wood="Cherry")
    assert panel.values["width"] == pytest.approx(0.460375)
    assert panel.controls["width"].label == "18-1/8 in (460 mm)"
    assert "cherry" in answer.lines()[0]


def test_own_start_between_steps_has_its_place():
    panel = show(example, width="18-1/8 in")
    assert panel.values["width"] == pytest.approx(0.460375)


def test_bad_input_from_code_is_one_sentence_and_changes_nothing(panel):
    before = panel.values
    with pytest.raises(InputError, match="goes from"):
        panel.set(width="9 ft")
    assert panel.values == before


def test_an_error_while_sliding_is_a_sentence_and_the_last_picture_stays():
    @study("half", "?", [Span("a", "Size", "length", 0.1, 0.2, 0.01, 0.1)])
    def half(a):
        if a > 0.15:
            raise InputError("The groove is deeper than the rail is wide; choose a wider rail.")
        return Answer(example.answer().picture, "good", ())

    panel = show(half)
    drawn = panel.picture
    panel.controls["a"].index = 9
    assert panel.error == "The groove is deeper than the rail is wide; choose a wider rail."
    assert "deeper than the rail" in panel.readings and 'role="alert"' in panel.readings and panel.picture == drawn
    panel.controls["a"].index = 0
    assert panel.error == "" and "alert" not in panel.readings


def test_numbers_follow_the_chosen_units(panel):
    panel._units.value = "mm"
    assert " in (" not in panel.readings and " mm" in panel.readings


def test_what_a_reader_types_as_label_is_escaped():
    answer = example.answer()
    bad = "<script>alert(1)</script>"
    words = live.readings_html(Answer(answer.picture, bad, ()))
    assert "<script>" not in words and "&lt;script&gt;" in words


def test_shown_in_a_notebook_it_leaves_a_still_and_a_record(monkeypatch):
    sent = []
    for module in (live, live.still):
        monkeypatch.setattr(module, "display", lambda data, **how: sent.append((data, how)))
    show(example, width="18 in")._ipython_display_()
    (still, how), (widget, _), (record, _) = sent
    assert list(widget) == ["application/vnd.jupyter.widget-view+json"]
    assert still["text/plain"].splitlines()[0] == example.question
    assert live.BRING_TO_LIFE in still["text/html"] and 'alt="A panel ' in still["text/html"]
    assert how["metadata"]["woodlib"]["still_of"] == "example"
    kept = json.loads(json.dumps(record[live.STUDY_MIME]))
    assert (kept["study"], kept["function"]) == ("example", "example_study:example")
    assert kept["values"] == {"wood": "white oak", "width": pytest.approx(0.4572), "dry": 35.0, "held": False}
    assert record["text/plain"].startswith("Kept for the handout: Species: white oak")


def test_the_button_says_what_happened_and_errors_are_sentences():
    def fail():
        raise InputError("Save the notebook first.")

    for action, expected in ((lambda: "Wrote x.html.", "Wrote x.html."), (fail, "Save the notebook first.")):
        box = live.button("Write", action)
        box.children[0].click()
        assert expected in box.children[1].value
