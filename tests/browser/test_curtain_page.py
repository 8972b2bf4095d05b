"""The curtain on a page without Python: it opens when its predictions are given, keeps them, and draws them in."""

from __future__ import annotations

import pytest

from woodlib.handout.page import curtained, page, question_html
from woodlib.handout.sections import section
from woodlib.lesson.cards import Prediction
from woodlib.lesson.question import Question
from woodlib.lesson.rules import prediction_rules
from woodlib.studies import find_study

AIR = Question("air", "How humid is the room?", "humidity")
WAY = Question("way", "Which way does it go?", options=("wider", "narrower"))


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """A page with two questions and the study behind its curtain."""
    asked = [question_html(Prediction(each).record() | {"rules": prediction_rules(each)}) for each in (AIR,)]
    asked.append(question_html(Prediction(WAY).record()))
    study = curtained(section(find_study("moisture-from-air")).html("study"), ["air", "way"])
    path = tmp_path_factory.mktemp("page") / "page.html"
    path.write_text(page("A lesson", [*asked, study], scripts=("judge.js",)), encoding="utf-8")
    return path


def opened(watched, path):
    watched.page.goto(path.as_uri())
    watched.page.wait_for_selector("html[data-ready]")
    return watched.page


def predict_all(page):
    page.get_by_role("textbox").fill("about  60 %")
    page.get_by_role("textbox").press("Enter")
    page.get_by_label("narrower").check()
    page.get_by_role("button", name="Keep my answer").last.click()


def foretold(page):
    return [text.text_content() for text in page.locator("#study [data-foretold] text").all()]


def test_it_opens_when_both_are_given_and_they_stand_in_the_picture(offline_page, made):
    page = opened(offline_page, made)
    study = page.locator("#study")
    assert study.is_hidden() and page.get_by_text("Say first what you expect").is_visible()
    page.get_by_role("textbox").fill("60 elephants")
    page.get_by_role("textbox").press("Enter")
    assert "cannot be read" in page.locator("[data-question] [role=status]").first.inner_text() and study.is_hidden()
    predict_all(page)
    assert study.is_visible() and page.get_by_text("Say first what you expect").is_hidden()
    assert foretold(page) == ["You said: about 60 %", "You said: narrower"]
    line = page.locator("#study [data-foretold] path").first
    # The chart of this study runs from 506 to 706 px for 0 to 100 %.
    assert line.get_attribute("d") == "M626,354 626,66"
    assert page.get_by_role("textbox").is_disabled() and page.get_by_label("wider").is_disabled()
    words = page.locator("#study [data-foretold] text").last.bounding_box()
    assert (
        words["y"] + words["height"]
        <= page.locator("#study svg").bounding_box()["y"] + page.locator("#study svg").bounding_box()["height"]
    )
    assert offline_page.errors == [] and offline_page.requests == []


def test_what_was_said_outlives_the_page(offline_page, made):
    predict_all(opened(offline_page, made))
    page = opened(offline_page, made)
    assert page.get_by_role("textbox").input_value() == "about 60 %" and page.get_by_label("narrower").is_checked()
    assert page.locator("#study").is_visible() and foretold(page) == ["You said: about 60 %", "You said: narrower"]


def test_it_opens_without(offline_page, made):
    page = opened(offline_page, made)
    page.get_by_role("button", name="Open without").click()
    assert page.locator("#study").is_visible() and foretold(page) == []
    page.locator("#study select").select_option(index=2)  # another make-up of the picture still finds its places
    assert (
        "cooking" in page.locator("#study desc").text_content() or page.locator("#study [data-marks] path").count() > 5
    )
    assert offline_page.errors == []


def test_without_its_script_and_on_paper_everything_is_seen(offline, made):
    plain = offline(java_script_enabled=False).page
    plain.goto(made.as_uri())
    assert plain.locator("#study").is_visible() and plain.get_by_role("button", name="Open without").is_hidden()
    printed = offline().page
    printed.goto(made.as_uri())
    printed.wait_for_selector("html[data-ready]")
    printed.emulate_media(media="print")
    assert printed.locator("#study").is_visible()
