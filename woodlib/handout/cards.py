"""Predictions and exercises of a lesson on a page: ask first, keep what was said, open what was seen."""

from __future__ import annotations

from html import escape
from itertools import count
from typing import Any

QUESTION_MIME = "application/vnd.woodlib.question+json"
_numbers = count(1)


def card_html(record: dict[str, Any]) -> str:
    """The card for a record made by :mod:`woodlib.lesson`: a prediction, what was seen, or an exercise."""
    return {"prediction": _prediction, "seen": _seen, "exercise": _exercise}[record["role"]](record)


def _prediction(record: dict[str, Any]) -> str:
    key, name = escape(record["key"], quote=True), f"question-{next(_numbers)}"
    if record["options"]:
        fields = "".join(
            f'<label><input type="radio" name="{name}" value="{escape(option, quote=True)}"> {escape(option)}</label> '
            for option in record["options"]
        )
    else:
        fields = f'<label>{escape(record["how"])} <input type="text" name="{name}" autocomplete="off"></label> '
    return (
        f'<div class="card" hidden><fieldset data-question="{key}"><legend>{escape(record["question"])}</legend>{fields}'
        f'<button type="button">Keep my answer</button><p role="status"></p></fieldset></div>'
    )


def _seen(record: dict[str, Any]) -> str:
    if not record.get("answer"):
        return ""
    return (
        f'<details class="card"><summary>What you said, and what there is to see</summary>'
        f'<p data-said="{escape(record["key"], quote=True)}"></p><p>Seen: {escape(record["answer"])}. {escape(record["words"])}</p></details>'
    )


def _exercise(record: dict[str, Any]) -> str:
    return (
        f'<details class="card"><summary>{escape(record["question"])}</summary><p>{escape(record["answer"])}. '
        f"{escape(record.get('why') or '')} {escape(record.get('way') or '')}</p></details>"
    )
