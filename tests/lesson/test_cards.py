"""Predictions and exercises, driven from code as a learner would drive them with the mouse."""

from __future__ import annotations

import json

import pytest

from woodlib.lesson import QUESTION_MIME, check, kept, predict, recall, seen
from woodlib.lesson.cards import TRIES_BEFORE_WAY
from woodlib.live import still


@pytest.fixture(autouse=True)
def a_new_kernel():
    kept.__init__()


@pytest.fixture
def shown(monkeypatch):
    """What a card hands to the notebook."""
    bundles = []
    monkeypatch.setattr(still, "display", lambda bundle, **_: bundles.append(bundle))

    def handed(card):
        """Its still, and of the widget after it that there is one."""
        card._ipython_display_()
        assert list(bundles[-1]) == ["application/vnd.jupyter.widget-view+json"]
        return bundles[-2]

    return handed


def press(card):
    card._button.click()


def test_a_prediction_is_kept_and_stands():
    card = predict("gap", "How wide is the gap?", kind="length")
    card._field.value = "3/16"
    press(card)
    assert kept.commitments["gap"].value == pytest.approx(0.0047625)
    assert "3/16 in (5 mm)" in card.said and card._field.disabled and card._button.disabled
    assert card.commit("1 in") == "Kept: you said “3/16”, read as 3/16 in (5 mm). Now try it."
    assert kept.commitments["gap"].value == pytest.approx(0.0047625)


def test_a_prediction_survives_running_its_cell_again():
    predict("way", "Which way?", ["wider", "narrower"]).commit("wider")
    again = predict("way", "Which way?", ["wider", "narrower"])
    assert again._field.value == "wider" and again._field.disabled


def test_another_question_under_the_same_key_starts_afresh():
    predict("way", "Which way?", ["wider", "narrower"]).commit("wider")
    assert not predict("way", "Which way in winter?", ["wider", "narrower"])._field.disabled


@pytest.mark.parametrize("nonsense", ["", "   ", "wide", "18", "3 kg", "1/0", "nan in", None, "\x00"])
def test_nonsense_gets_one_sentence_and_is_not_kept(nonsense):
    card = predict("gap", "How wide?", kind="length")
    sentence = card.commit(nonsense)
    assert sentence and "\n" not in sentence and "Traceback" not in sentence and " mm" in sentence
    assert "gap" not in kept.commitments and not card._field.disabled


def test_an_unknown_option_is_answered_with_the_options():
    assert "choose one of: wider, narrower" in predict("way", "Which way?", ["wider", "narrower"]).commit("sideways")


def test_what_was_seen_waits_for_the_prediction_and_then_stands_beside_it():
    card = predict("air", "How humid?", kind="humidity")
    result = seen("air", 19.66, "Dry as a desert.", close="5 %")
    assert "not predicted yet" in result.shown and "20 %" not in result.shown
    card.commit("60 %")
    for part in ("<dd>60 %</dd>", "20 % RH", "Not what you said", "Dry as a desert."):
        assert part in result.shown


def test_a_close_prediction_counts_as_said_rightly():
    predict("air", "How humid?", kind="humidity").commit("about 22 % RH")
    assert "As you said." in seen("air", 19.66, close="5 %").shown
    assert "Not what you said" in seen("air", 19.66, close=2.0).shown


def test_recall_shows_the_prediction_alone():
    card, shows = predict("way", "Which way?", ["wider", "narrower"]), recall("way")
    assert "not predicted yet" in shows.shown
    card.commit("wider")
    assert "wider" in shows.shown and "You saw" not in shows.shown


def test_seen_before_its_question_was_asked_says_so_and_recovers():
    result = seen("air", "20 %", close="3 %")
    assert "first run the cell" in result.shown and "first run the cell" in result.still()[0]
    predict("air", "How humid?", kind="humidity").commit("20 %")
    assert "As you said." in result.shown


def test_answers_are_escaped():
    predict("a", "Is <b>2 < 3</b>?", ["<script>", "no"]).commit("<script>")
    for html in (recall("a").shown, seen("a", "no", "<i>").shown, seen("a", "no", "<i>").still()[1]):
        assert "<script>" not in html and "<i>" not in html and "<b>" not in html


def test_an_exercise_explains_a_known_miss_and_leads_to_the_answer():
    card = check(
        "half",
        "Half an inch in mm?",
        "1/2 in",
        kind="length",
        tolerance="0.3 mm",
        misses={"5 mm": "That is half a centimetre."},
        why="An inch is 25.4 mm.",
        way="25.4 / 2 = 12.7",
    )
    card._field.value = "5mm"
    press(card)
    assert card.last.right is False and "half a centimetre" in card.said and card._way.disabled
    assert card.answer("20 mm") == "Not yet: 20 mm is too high."
    assert card.tries == TRIES_BEFORE_WAY and not card._way.disabled
    card._way.click()
    assert "25.4 / 2" in card.said
    assert card.answer("1/2") == "Right: 1/2 in (12.5 mm). An inch is 25.4 mm." and card.last.right


def test_nonsense_is_no_try():
    card = check("n", "How many?", 4, kind="count", tolerance=0.1)
    assert "not a number" in card.answer("a few") and "no answer yet" in card.answer("")
    assert card.tries == 0 and card.last.right is None


def test_an_answer_at_the_edge_of_the_tolerance_is_right():
    card = check("n", "How many?", 0.3, kind="count", tolerance=0.1)
    assert card.answer("0.4").startswith("Right") and card.answer("0.41").startswith("Not yet")


def test_an_exercise_with_options():
    ways = ("wider", "narrower", "not at all")
    card = check("w", "Which way?", "wider", options=ways, misses={"narrower": "It drinks."})
    assert card.answer("Narrower") == "Not yet. It drinks." and "is not it" in card.answer("not at all")
    assert card.answer("wider").startswith("Right: wider.")


def test_a_card_shows_as_a_still_and_as_a_record(shown):
    bundle = shown(predict("gap", "How wide?", kind="length"))
    assert {QUESTION_MIME, "text/html", "text/plain"} <= set(bundle)
    assert bundle[QUESTION_MIME]["role"] == "prediction" and bundle[QUESTION_MIME]["kind"] == "length"
    assert "Run All Cells" in bundle["text/html"] and "3/16 in" in bundle["text/plain"]
    assert "answer" not in bundle[QUESTION_MIME]


def test_the_still_of_what_was_seen_is_folded_away_and_recorded(shown):
    predict("air", "How humid?", kind="humidity")
    bundle = shown(seen("air", 19.6559, "Dry.", close="5 %"))
    assert "<details>" in bundle["text/html"] and "Seen: 20 % RH." in bundle["text/plain"]
    record = bundle[QUESTION_MIME]
    assert (record["role"], record["answer"], record["number"], record["close"]) == ("seen", "20 % RH", 19.6559, 5.0)


def test_the_still_of_an_exercise_does_not_give_its_answer_away(shown):
    bundle = shown(check("the-air-of-a-house/garage-workshop"))
    assert "38" not in bundle["text/html"] and "38" not in bundle["text/plain"]
    record = json.loads(json.dumps(bundle[QUESTION_MIME]))
    assert record["answer"] == "38 % RH" and record["tolerance"] == 2.0 and len(record["misses"]) == 3
