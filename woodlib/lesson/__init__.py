"""Lessons: predict before you look, see it beside what you said, try an exercise and learn from a miss.

>>> guess = predict("drawer-in-summer", "Which way does a drawer front move in a damp summer?", ["wider", "narrower"])
>>> guess.commit("wider")
'Kept: you said “wider”. Now try it.'
>>> check("half-inch", "Half an inch in mm?", "1/2 in", kind="length", tolerance="0.3 mm").answer("12 mm")
'Not yet: 12 mm is too low.'
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from .cards import QUESTION_MIME, ExerciseCard, Prediction, Seen
from .curtain import Curtain, curtain
from .exercise import Exercise, Judgement
from .kept import kept
from .question import EXAMPLES, OPTION, Question, read_typed
from .solutions import find_exercise, find_prediction

__all__ = [
    "EXAMPLES",
    "QUESTION_MIME",
    "Curtain",
    "Exercise",
    "ExerciseCard",
    "Judgement",
    "Prediction",
    "Question",
    "Seen",
    "check",
    "curtain",
    "kept",
    "predict",
    "recall",
    "seen",
]


def predict(key: str, question: str = "", options: Sequence[str] = (), kind: str = OPTION) -> Prediction:
    """Ask for a prediction: ``options`` to choose from, or a ``kind`` of quantity to type ("length", "humidity" ...).

    ``predict("lesson/name")`` takes the question from :mod:`woodlib.lesson.solutions`. The learner commits with a button
    (or code with ``.commit``); the answer is kept under ``key``, also when the cell is run again and in the next kernel.
    Raises InputError for a question that nobody could answer.
    """
    return Prediction(Question(key, question, kind, tuple(options)) if question else find_prediction(key).question)


def recall(key: str) -> Seen:
    """Show again what was predicted under ``key``; it appears as soon as somebody commits."""
    return Seen(key)


def seen(key: str, answer: Any = None, words: str = "", close: Any = 0.0) -> Seen:
    """Show what was predicted beside what was seen; the latter waits until there is a prediction.

    ``seen("lesson/name")`` takes what comes out from :mod:`woodlib.lesson.solutions`, where a learner does not stumble
    over it. Otherwise: ``answer`` an option, or a quantity in SI or as text; ``words`` what to say about it; ``close`` how far off a typed
    prediction may be and still count as said rightly, in SI or as text.
    """
    if answer is None:
        foretold = find_prediction(key)
        kept.ask(foretold.question)  # the cell may be the first to run
        return Seen(key, *foretold.outcome(), foretold.close or 0.0)
    return Seen(key, answer, words, close)


def check(
    key: str,
    question: str = "",
    answer: Any = None,
    kind: str = OPTION,
    tolerance: Any = 0.0,
    misses: Mapping[Any, str] | None = None,
    options: Sequence[str] = (),
    why: str = "",
    way: str = "",
) -> ExerciseCard:
    """An exercise that explains a miss.

    ``check("lesson/name")`` takes question, solution and misses from :mod:`woodlib.lesson.solutions`, where a learner
    does not stumble over them. Otherwise: ``answer`` in SI, as text, or a function that computes it; ``tolerance`` in
    SI or as text; ``misses`` wrong answer -> sentence; ``why`` is said with a right answer, ``way`` shows the road to
    it after two tries. Raises InputError for an exercise that nobody could solve.
    """
    if not question:
        return ExerciseCard(find_exercise(key))
    solution: Callable[[], Any] = answer if callable(answer) else lambda: answer
    allowed = 0.0 if kind == OPTION else read_typed(tolerance, kind)
    asked = Question(key, question, kind, tuple(options))
    exercise = Exercise(asked, solution, allowed, misses or {}, why, way)
    _ = exercise.answer, exercise.known_misses  # a mistake of the author shows here, not when somebody answers
    return ExerciseCard(exercise)
