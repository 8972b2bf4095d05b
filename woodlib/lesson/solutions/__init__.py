"""Exercises with their solutions, one module per lesson, out of a learner's way.

An exercise is declared on the function that solves it, in the module named after its lesson:

>>> find_exercise("moisture-from-air/meter-reading").question.kind
'humidity'
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from difflib import get_close_matches
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from ...errors import InputError
from ..exercise import Exercise, Solution
from ..question import OPTION, Question


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
    if lesson not in lessons():
        raise InputError(f"There are no exercises for {lesson!r}; there are some for: {', '.join(lessons())}.")
    module = import_module(f".{lesson.replace('-', '_')}", __name__)
    return {value.question.key: value for value in vars(module).values() if isinstance(value, Exercise)}


def find_exercise(key: str) -> Exercise:
    """An exercise by ``lesson/name``."""
    known = exercises(key.partition("/")[0])
    if key not in known:
        near = get_close_matches(key, known, 1)
        hint = f" Did you mean {near[0]!r}?" if near else ""
        raise InputError(f"There is no exercise {key!r}; there are: {', '.join(known)}.{hint}")
    return known[key]
