"""Predictions and exercises in a notebook: a labelled field, a button, one sentence back; all drivable from code.

A card also shows as a still (a question on paper) in a notebook that has not been run, and carries a machine-readable
record, so that a page without Python can ask the same.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from html import escape
from typing import Any

import ipywidgets as widgets

from ..errors import InputError
from ..live.controls import GONE_CSS
from ..live.still import hidden_while_live, show_with_still
from ..picture.palette import style_sheet
from .exercise import Exercise, Judgement
from .kept import Commitment, kept
from .question import OPTION, Question, read_typed
from .rules import TRIES_BEFORE_WAY

QUESTION_MIME = "application/vnd.woodlib.question+json"
COME_TO_LIFE = "To answer here, run the notebook: menu Run, then Run All Cells."

CARD_CSS = (
    ".wl-card{max-width:700px;line-height:1.45;border-left:.45em solid var(--w-quiet);padding:.2em 0 .2em .8em}"
    ".wl-ask{font-weight:600;line-height:1.4;margin:.3em 0}.wl-card p{margin:.2em 0}"
    ".wl-card dl{display:grid;grid-template-columns:minmax(6em,max-content) 1fr;gap:.2em 1em;margin:.3em 0}"
    ".wl-card dt{font-weight:600}.wl-card dt,.wl-card dd{float:none;width:auto;margin:0}"
    ".wl-card-fine{border-color:var(--w-fine)}"
    ".wl-card-watch{border-color:var(--w-watch);border-left-style:double}"
)
_WIDE = {"width": "100%", "max_width": "700px"}


def paragraphs(*sentences: str, tone: str = "") -> str:
    """Sentences as one block of HTML; ``tone`` is "", "fine" or "watch"."""
    shown = "".join(f"<p>{escape(sentence)}</p>" for sentence in sentences if sentence)
    return f'<div class="wl wl-card wl-card-{tone}" role="status">{shown}</div>' if shown else ""


class Card(widgets.VBox):
    """Something asked or shown: live in a running notebook, a still elsewhere, a record for other programs."""

    name = ""
    """What tells its still from others."""

    @property
    def style(self) -> str:
        """The style sheet of a live card, which puts its still away."""
        return f"<style>{style_sheet()}{CARD_CSS}{GONE_CSS}{hidden_while_live(self.name)}</style>"

    def record(self) -> dict[str, Any]:
        """What another program needs to ask the same."""
        raise NotImplementedError

    def still(self) -> tuple[str, str]:
        """The card on paper: as plain text and as HTML."""
        raise NotImplementedError

    def _ipython_display_(self) -> None:
        text, html = self.still()
        show_with_still(self, self.name, {QUESTION_MIME: self.record(), "text/plain": text}, html, {})


class _Asked(Card):
    """A question with a field for its answer and a button."""

    def __init__(self, question: Question, button: str, *more: widgets.Widget) -> None:
        self.question, self.name = question, f"{type(self).__name__} {question.key}"
        self._button = widgets.Button(description=button, button_style="primary", layout={"width": "auto"})
        self._button.on_click(lambda _: self._pressed())
        self._said = widgets.HTML()
        head = f'{self.style}<div class="wl-ask">{escape(question.words)}</div>'
        self._field = _field(question)
        _on_enter(self._field, self._pressed)
        buttons = widgets.HBox([self._button, *more])
        super().__init__([widgets.HTML(head, layout=_WIDE), self._field, buttons, self._said])
        self.add_class("wl-whole")

    @property
    def said(self) -> str:
        """What the card says now, as HTML."""
        return self._said.value

    def _pressed(self) -> None:
        raise NotImplementedError

    def still(self) -> tuple[str, str]:
        """The question with its options, or with how to type an answer."""
        question = self.question
        lines = [f"( ) {option}" for option in question.options] or [question.how]
        listed = "".join(f"<li>{escape(option)}</li>" for option in question.options)
        choices = f"<ul>{listed}</ul>" if listed else f"<p>{escape(question.how)}</p>"
        html = f"<p><strong>{escape(question.words)}</strong></p>{choices}<p><em>{COME_TO_LIFE}</em></p>"
        return "\n".join([question.words, *lines]), f"<div>{html}</div>"


def _field(question: Question) -> widgets.ValueWidget:
    if question.kind == OPTION:
        return widgets.RadioButtons(options=question.options, value=None, layout={**_WIDE, "height": "auto"})
    return widgets.Text(placeholder=question.how, description="Your answer", layout={**_WIDE, "max_width": "480px"})


def _on_enter(field: widgets.ValueWidget, act: Callable[[], object]) -> None:
    """Let the Enter key in a typed field do what the button does."""
    if isinstance(field, widgets.Text):
        field.on_msg(lambda _, content, __: act() if content.get("event") == "submit" else None)


def _asked_record(question: Question, role: str) -> dict[str, Any]:
    return {
        "role": role,
        "key": question.key,
        "question": question.words,
        "kind": question.kind,
        "options": list(question.options),
        "how": question.how,
    }


class Prediction(_Asked):
    """A question to commit to before anything moves."""

    def __init__(self, question: Question) -> None:
        super().__init__(question, "I commit to this")
        kept.ask(question)
        kept.listen(question.key, self._look)
        self._look()

    def commit(self, given: Any = None) -> str:
        """Keep an answer (that of the field when none is given); returns what is said about it."""
        try:
            kept.commit(self.question.key, self._field.value if given is None else given)
        except InputError as error:
            self._said.value = paragraphs(str(error), tone="watch")
            return str(error)
        return _kept_sentence(self.question.key)

    def _pressed(self) -> None:
        self.commit()

    def _look(self) -> None:
        commitment = kept.commitments.get(self.question.key)
        self._button.disabled = self._field.disabled = commitment is not None
        if commitment is not None:
            self._field.value = commitment.value if self.question.kind == OPTION else commitment.text
        self._said.value = paragraphs(_kept_sentence(self.question.key)) if commitment else ""

    def record(self) -> dict[str, Any]:
        """The question; its answer stands in the record of what was seen."""
        return _asked_record(self.question, "prediction")


def _kept_sentence(key: str) -> str:
    lost = f" It is kept until the kernel stops: {kept.not_kept}." if kept.not_kept else ""
    commitment = kept.commitments[key]
    bare = (
        bool(commitment.typed)
        and commitment.question.kind != "count"
        and not re.search(r"[^\d\s.,/-]", commitment.typed)
    )
    read = f", read as {commitment.question.text(commitment.value)}" if bare else ""
    return f"Kept: you said \u201c{commitment.text}\u201d{read}.{lost} Now try it."


class Seen(Card):
    """What was predicted, and beside it what was seen; waits for the prediction."""

    def __init__(self, key: str, answer: Any = None, words: str = "", close: Any = 0.0) -> None:
        self.name = f"Seen {key}"
        self.key, self._answer, self.words, self._close = key, answer, words, close
        self._shown = widgets.HTML(layout=_WIDE)
        style = widgets.HTML(self.style)
        kept.listen(key, self._look)
        self._look()
        super().__init__([style, self._shown])
        self.add_class("wl-whole")

    @property
    def shown(self) -> str:
        """What is shown now, as HTML."""
        return self._shown.value

    @property
    def seen_text(self) -> str:
        """What was seen, as it is written; empty when nothing is to be compared."""
        question = kept.questions.get(self.key)
        return "" if question is None or self._answer is None else question.text(question.read(self._answer))

    @property
    def allowed(self) -> float:
        """How far off a typed prediction may be and still count as said rightly, in SI."""
        if isinstance(self._close, str):
            return read_typed(self._close, kept.questions[self.key].kind)
        return float(self._close)

    def _look(self) -> None:
        commitment = kept.commitments.get(self.key)
        if self.key not in kept.questions:
            self._shown.value = paragraphs(self._missing(), tone="watch")
        elif commitment is None:
            waits = "" if self._answer is None else " What was seen waits here until you have committed to an answer."
            self._shown.value = paragraphs(f"You have not predicted yet: go back to the question.{waits}")
        else:
            self._shown.value = self._beside(commitment)

    def _missing(self) -> str:
        return f"Nothing was asked under {self.key!r} yet; first run the cell further up that asks for a prediction."

    def _beside(self, commitment: Commitment) -> str:
        said = f"<dt>You said</dt><dd>{escape(commitment.text)}</dd>"
        question = f"<p>{escape(commitment.question.words)}</p>"
        if self._answer is None:
            return f'<div class="wl wl-card" role="status">{question}<dl>{said}</dl></div>'
        right = self._as_seen(commitment)
        compared = "As you said." if right else "Not what you said: here is something to find out."
        what = f"<dt>You saw</dt><dd>{escape(self.seen_text)}</dd>"
        after = "".join(f"<p>{escape(sentence)}</p>" for sentence in (compared, self.words) if sentence)
        tone = "fine" if right else "watch"
        return f'<div class="wl wl-card wl-card-{tone}" role="status">{question}<dl>{said}{what}</dl>{after}</div>'

    def _as_seen(self, commitment: Commitment) -> bool:
        answer = commitment.question.read(self._answer)
        if isinstance(answer, str) or isinstance(commitment.value, str):
            return answer == commitment.value
        return abs(answer - commitment.value) <= max(self.allowed, 1e-9 * abs(answer))

    def record(self) -> dict[str, Any]:
        """The key of the question and what was seen."""
        return {"role": "seen", "key": self.key, "answer": self.seen_text, "words": self.words, **self._close_record()}

    def _close_record(self) -> dict[str, Any]:
        question = kept.questions.get(self.key)
        if question is None or question.kind == OPTION or self._answer is None:
            return {}
        return {"number": _short(question.read(self._answer)), "close": self.allowed}

    def still(self) -> tuple[str, str]:
        """What was seen, folded away in HTML until a reader opens it."""
        question = kept.questions.get(self.key)
        if question is None:
            return self._missing(), f"<p>{escape(self._missing())}</p>"
        if self._answer is None:
            text = f"{question.words}\nYour prediction appears here."
            return text, f"<p>{escape(question.words)}<br><em>Your prediction appears here. {COME_TO_LIFE}</em></p>"
        text = "\n".join(filter(None, [question.words, f"Seen: {self.seen_text}.", self.words]))
        return text, (
            f"<details><summary>{escape(question.words)} Say it first, then open this.</summary>"
            f"<p>Seen: {escape(self.seen_text)}. {escape(self.words)}</p></details>"
        )


class ExerciseCard(_Asked):
    """An exercise with a field, a button, and after some tries a way to the answer."""

    def __init__(self, exercise: Exercise) -> None:
        self.exercise, self.tries, self.last = exercise, 0, Judgement(None, "")
        self._way = widgets.Button(
            description="Show me a way",
            disabled=True,
            layout={"width": "auto"},
            tooltip=f"after {TRIES_BEFORE_WAY} tries",
        )
        self._way.on_click(lambda _: self.show_way())
        super().__init__(exercise.question, "Check my answer", *([self._way] if exercise.way else []))

    def answer(self, given: Any = None) -> str:
        """Judge an answer (that of the field when none is given); returns what is said about it."""
        self.last = self.exercise.judge(self._field.value if given is None else given)
        self.tries += self.last.right is not None
        self._way.disabled = self.tries < TRIES_BEFORE_WAY and not self.last.right
        self._said.value = paragraphs(self.last.sentence, tone="fine" if self.last.right else "watch")
        return self.last.sentence

    def show_way(self) -> str:
        """A way to the answer, below the last judgement."""
        way = f"One way: {self.exercise.way}"
        self._said.value = paragraphs(self.last.sentence, way, tone="fine" if self.last.right else "watch")
        return way

    def _pressed(self) -> None:
        self.answer()

    def record(self) -> dict[str, Any]:
        """The question with its answer, its tolerance and its explained misses."""
        return exercise_record(self.exercise)


def exercise_record(exercise: Exercise) -> dict[str, Any]:
    """An exercise as a page needs it to be asked, without a panel."""
    text = exercise.question.text
    return {
        **_asked_record(exercise.question, "exercise"),
        "answer": text(exercise.answer),
        "number": _short(exercise.answer),
        "tolerance": exercise.tolerance,
        "misses": [[_short(value), text(value), why] for value, why in exercise.known_misses.items()],
        "why": exercise.why,
        "way": exercise.way,
    }


def _short(value: float | str) -> float | str:
    # Eight digits: far finer than any tolerance, and the same on every machine.
    return value if isinstance(value, str) else float(f"{value:.8g}")
