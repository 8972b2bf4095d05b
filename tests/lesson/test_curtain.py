"""The curtain before a study, and predictions that outlive their kernel."""

from __future__ import annotations

import json

import pytest

from woodlib import live
from woodlib.lesson import curtain, kept, predict
from woodlib.lesson.curtain import SAY_FIRST
from woodlib.lesson.diary import Diary
from woodlib.live import show
from woodlib.studies import find_study


@pytest.fixture(autouse=True)
def diary(tmp_path):
    """A new kernel with a diary of its own."""
    kept.__init__(Diary(tmp_path / "state" / "predictions.jsonl"))
    return kept.diary


@pytest.fixture
def panel():
    return show(find_study("moisture-from-air"))


def new_kernel() -> None:
    kept.__init__(Diary(kept.diary.path))


def ask():
    return predict("air", "How humid?", kind="humidity"), predict("way", "Which way?", ["wider", "narrower"])


def test_the_study_opens_when_its_predictions_are_given(panel):
    air, way = ask()
    shown = curtain(panel, "air", "way")
    assert panel not in shown.children and SAY_FIRST in shown._told.value and "How humid?" in shown._told.value
    air.commit("60 %")
    assert not shown.is_open and "Which way?" in shown._told.value and "How humid?" not in shown._told.value
    way.commit("narrower")
    assert shown.children == (panel,) and "60 %" not in shown._told.value


def test_it_opens_without_and_takes_up_what_is_said_later(panel):
    air, _ = ask()
    shown = curtain(panel, "air", "way")
    shown._without.click()
    assert shown.children == (panel,) and "You said" not in panel.picture
    air.commit("60 %")
    assert "You said: 60 %" in panel.picture and shown.is_open


def test_before_its_questions_were_asked_it_says_so_and_still_opens(panel):
    shown = curtain(panel, "air")
    assert "Run the cells above first" in shown._told.value
    predict("air", "How humid?", kind="humidity").commit("60 %")
    assert shown.is_open


def test_in_a_fresh_kernel_it_knows_what_its_lesson_asks(panel):
    shown = curtain(panel, "the-air-of-a-house/kiln-dried")
    assert not shown.is_open and "kiln-dried" in shown._told.value


def test_a_quantity_is_marked_on_the_gauge_and_everything_is_told(panel):
    air, way = ask()
    curtain(panel, "air", "way")
    before = panel.picture
    air.commit("about 60 %"), way.commit("wider")
    # The chart of this study runs from 506 to 706 px for 0 to 100 %.
    assert 'class="l l-said"' in panel.picture and "M626,354 626,66" in panel.picture
    assert "You said: about 60 %" in panel.picture and "You said: wider" in panel.picture
    assert "You said: about 60 %." in panel.picture.partition("</desc>")[0]
    panel.controls["outdoor_c"].index = 3
    assert "M626,354 626,66" in panel.picture and panel.picture != before


def test_a_number_beyond_the_picture_is_told_in_words_alone():
    panel = show(find_study("panel-movement"))
    curtain(panel, "far")
    predict("far", "How far?", kind="movement").commit("3 in")
    assert "You said: 3 in" in panel.picture and 'l-said" ' not in panel.picture


def test_a_prediction_outlives_its_kernel(panel):
    ask()[0].commit("about 60 %")
    new_kernel()
    again, _ = ask()
    assert kept.commitments["air"].text == "about 60 %" and again._field.disabled and "about 60 %" in again.said
    assert curtain(panel, "air").is_open


def test_another_question_under_the_same_key_is_not_answered_by_the_old_one(diary):
    ask()[0].commit("60 %")
    new_kernel()
    predict("air", "How humid is it in summer?", kind="humidity")
    assert "air" not in kept.commitments


def test_an_answer_that_is_no_option_any_more_is_passed_over(diary):
    predict("way", "Which way?", ["wider", "narrower"]).commit("wider")
    new_kernel()
    predict("way", "Which way?", ["up", "down"])
    assert "way" not in kept.commitments


def test_nothing_in_the_diary_is_lost_or_changed(diary):
    diary.path.parent.mkdir()
    diary.path.write_bytes(b'not a line of ours \xff\n[1, 2]\n{"key": "air", "question": "How humid?", "said": [1]}\n')
    before = diary.path.read_bytes()
    air, _ = ask()
    assert not air._field.disabled
    air.commit("60 %")
    kept.start_over()
    assert diary.path.read_bytes().startswith(before) and "60 %" in diary.path.read_text(errors="replace")
    assert not air._field.disabled and "air" not in kept.commitments
    new_kernel()
    assert not ask()[0]._field.disabled


def test_a_folder_that_cannot_be_written_is_said_and_the_prediction_stands(tmp_path):
    (tmp_path / "file").write_text("in the way")
    kept.__init__(Diary(tmp_path / "file" / "predictions.jsonl"))
    air, _ = ask()
    sentence = air.commit("60 %")
    assert (
        "until the kernel stops" in sentence
        and "cannot be written" in sentence
        and kept.commitments["air"].text == "60 %"
    )


def test_the_still_is_covered_too_and_the_record_names_its_predictions(panel, monkeypatch):
    sent = []
    for module in (live, live.still):
        monkeypatch.setattr(module, "display", lambda data, **how: sent.append(data))
    curtain(panel, "air", "way")._ipython_display_()
    still, _, record = sent
    assert "<details><summary>Say first" in still["text/html"] and live.BRING_TO_LIFE in still["text/html"]
    assert json.loads(json.dumps(record[live.STUDY_MIME]))["after"] == ["air", "way"]


def test_enter_answers():
    air, way = ask()
    air._field.value = "60%"
    air._field._handle_custom_msg({"event": "submit"}, [])
    assert kept.commitments["air"].typed == "60%" and "“60%”" in air.said
