"""Predictions with what comes out and exercises with their solutions, one module per lesson, out of a learner's way.

Each is declared on the function that answers it, in the module named after its lesson:

>>> find_exercise("the-air-of-a-house/meter-reading").question.kind
'humidity'
>>> find_prediction("the-air-of-a-house/kiln-dried").outcome()[0]
'It gives off water'
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from ...errors import InputError
from ..exercise import Exercise, Solution
from ..question import OPTION, Question


@dataclass(frozen=True)
class Foretold:
    """A question to answer before anything moves, and its ``outcome``: what comes out, and a sentence about it.

    ``close``: how far off a typed prediction may be and still count as said rightly, as text.
    """

    question: Question
    outcome: Callable[[], tuple[float | str, str]]
    close: str = ""


def prediction(
    key: str, question: str, kind: str = OPTION, options: tuple[str, ...] = (), close: str = ""
) -> Callable[[Callable[[], tuple[float | str, str]]], Foretold]:
    """Turn the function that tells its outcome into a :class:`Foretold`; ``key`` is ``lesson/name``."""
    return lambda outcome: Foretold(Question(key, question, kind, options), outcome, close)


def exercise(
    key: str,
    question: str,
    kind: str = OPTION,
    options: tuple[str, ...] = (),
    tolerance: float = 0.0,
    safe: str = "",
    misses: Mapping[Any, str] | None = None,
    why: str = "",
    way: str = "",
) -> Callable[[Solution], Exercise]:
    """Turn the function that solves it into an :class:`Exercise`; ``key`` is ``lesson/name``."""

    def declare(solution: Solution) -> Exercise:
        return Exercise(Question(key, question, kind, options), solution, tolerance, misses or {}, why, way, safe)

    return declare


def lessons() -> tuple[str, ...]:
    """The lessons that have exercises here."""
    return tuple(sorted(module.name.replace("_", "-") for module in iter_modules(__path__)))


def exercises(lesson: str) -> dict[str, Exercise]:
    """The exercises of a lesson by their keys, in the order in which they are declared."""
    return {value.question.key: value for value in _declared(lesson) if isinstance(value, Exercise)}


def predictions(lesson: str) -> dict[str, Foretold]:
    """The predictions of a lesson by their keys, in the order in which they are declared."""
    return {value.question.key: value for value in _declared(lesson) if isinstance(value, Foretold)}


def _declared(lesson: str) -> list[Any]:
    if lesson not in lessons():
        raise InputError(f"There are no exercises for {lesson!r}; there are some for: {', '.join(lessons())}.")
    return list(vars(import_module(f".{lesson.replace('-', '_')}", __name__)).values())


def find_exercise(key: str) -> Exercise:
    """An exercise by ``lesson/name``."""
    return _found(key, exercises(key.partition("/")[0]), "exercise")


def find_prediction(key: str) -> Foretold:
    """A prediction by ``lesson/name``."""
    return _found(key, predictions(key.partition("/")[0]), "prediction")


def _found(key: str, known: Mapping[str, Any], what: str) -> Any:
    if key not in known:
        near = get_close_matches(key, known, 1)
        hint = f" Did you mean {near[0]!r}?" if near else ""
        raise InputError(f"There is no {what} {key!r}; there are: {', '.join(known)}.{hint}")
    return known[key]
