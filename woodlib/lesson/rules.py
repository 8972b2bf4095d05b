"""How an exercise is read and judged, as plain data: a page without Python follows the same tables.

Nothing is stated twice. The bands are those that judge in Python; what a unit is worth is asked of the reader itself,
and the forms of a number are the reader's own patterns.
"""

from __future__ import annotations

import re
from typing import Any

from ..errors import InputError
from ..units import FORMATS
from ..units.reading import FEET_AND_INCHES, LONGEST_M, ONE_NUMBER
from ..units.spelling import AMBIGUOUS, LONGEST_TEXT, NUMBER, PLAIN_MARKS, UNIT_OF_SPELLING
from .exercise import Exercise
from .question import ASK_SIGN, ASK_UNIT, DAYS, LOOSE_START, NAME_OF_PERCENT, OPTION, SHARES, Question

TRIES_BEFORE_WAY = 2
UNREAD = "{given} cannot be read as an answer here."
BARE = "{given} of what? The unit is missing."
_LARGEST = 1e15


def exercise_rules(exercise: Exercise) -> dict[str, Any]:
    """All that a page needs to judge an exercise as :meth:`Exercise.judge` does, ready for JSON.

    >>> half = Exercise(Question("half", "Half an inch in mm?", "length"), lambda: 0.0127, 0.0003)
    >>> [(band["right"], band["words"][-1]) for band in exercise_rules(half)["bands"]]
    [(False, ' is too low.'), (True, 'Right: 1/2 in (12.5 mm).'), (False, ' is too high.')]
    """
    question = exercise.question
    rules = {"how": question.how, "way": exercise.way, "tries": TRIES_BEFORE_WAY, "unread": UNREAD, "bare": BARE}
    if question.kind == OPTION:
        return rules | {"choices": {option: list(said) for option, said in exercise.choices.items()}}
    bands = [
        {"up_to": None if band.up_to == float("inf") else band.up_to, "right": band.right, "words": list(band.words)}
        for band in exercise.bands
    ]
    return rules | {
        "answer": exercise.answer,
        "bands": bands,
        "format": FORMATS[question.kind].as_table(),
        **reading_rules(question.kind),
    }


def prediction_rules(question: Question) -> dict[str, Any]:
    """What a page needs to read a typed prediction, ready for JSON; nothing where one chooses. It is never judged."""
    if question.kind == OPTION:
        return {}
    silent: dict[str, Any] = {"up_to": None, "right": None, "words": []}
    rules = {"how": question.how, "unread": UNREAD, "bare": BARE, "answer": 0.0, "bands": [silent]}
    return rules | {"format": FORMATS[question.kind].as_table(), **reading_rules(question.kind)}


def reading_rules(kind: str) -> dict[str, Any]:
    """How a typed quantity of a kind is read: the forms of a number, and for each unit [worth of one, where its zero is].

    >>> reading_rules("length")["units"]["mm"], reading_rules("temperature")["units"]["degf"]
    ([0.001, 0.0], [0.555555555556, -17.777777778])
    """
    spellings = ["", *UNIT_OF_SPELLING, *(name + s for name in DAYS for s in ("", "s"))]
    if kind == "count":
        units = {"": [1.0, 0.0]}
    else:
        units = {spelling: line for spelling in spellings if (line := _line(kind, spelling))}
    half = _read(kind, "1/2") if "" not in units else None
    return {
        "units": units,
        "bare_fraction": None if half is None else 2.0 * half,
        "most": LONGEST_M if kind in ("length", "movement", "fine_length") else _LARGEST,
        "longest": LONGEST_TEXT,
        "marks": PLAIN_MARKS,
        "loose": _for_script(LOOSE_START),
        "named": _for_script(NAME_OF_PERCENT),
        "one_number": _for_script(ONE_NUMBER),
        "feet_and_inches": _for_script(FEET_AND_INCHES) if kind in ("length", "movement", "fine_length") else "",
        "number": NUMBER,
        "ambiguous": AMBIGUOUS.pattern,
        "ask_sign": _slots(ASK_SIGN) if kind in SHARES else "",
        "ask_unit": _slots(ASK_UNIT) if kind == "stress" else "",
    }


def _line(kind: str, spelling: str) -> list[float] | None:
    """What one of a unit is worth, and where its zero is; None where the reader does not take it."""
    ten, twenty = (_read(kind, f"{number} {spelling}".strip()) for number in (10, 20))
    if ten is None or twenty is None:
        return None
    return [float(f"{(twenty - ten) / 10:.12g}"), round(2 * ten - twenty, 9)]


def _read(kind: str, text: str) -> float | None:
    try:
        return float(Question("asked", "Asked.", kind).read(text))
    except InputError:
        return None


def _for_script(pattern: re.Pattern[str]) -> str:
    """A pattern as a page's script writes it."""
    return pattern.pattern.replace("(?P<", "(?<")


def _slots(sentence: str) -> str:
    """A sentence with plain slots: how a value is written in them is the script's."""
    return re.sub(r"\{(\w+)[^}]*\}", r"{\1}", sentence)
