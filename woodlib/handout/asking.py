"""Ask a study for its answer: at many states of a case at once, or at one state as a notebook does.

Whatever is wrong names the study, the input, the place and the remedy.
"""

from __future__ import annotations

import traceback
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np

from ..errors import WoodlibError
from ..study.inputs import Span
from ..study.study import Study
from ..words.many import Many, Unsteady
from .record import Recording, record

Progress = Callable[[int, int], None]


class FreezeError(WoodlibError, ValueError):
    """A study cannot be frozen as it is; the sentence names the study, the input and the remedy."""


def spans_of(study: Study) -> tuple[Span, ...]:
    """The inputs that slide."""
    return tuple(entry for entry in study.inputs if isinstance(entry, Span))


def state_at(study: Study, case: dict[str, Any], row: np.ndarray) -> dict[str, Any]:
    """One state of a case, from the values of its spans."""
    return case | {span.key: float(value) for span, value in zip(spans_of(study), row, strict=True)}


def told(study: Study, state: dict[str, Any]) -> str:
    """A state in words."""
    return ", ".join(f"{entry.label} {entry.text(state[entry.key])}" for entry in study.inputs)


def ask_alone(study: Study, state: dict[str, Any]) -> Recording:
    """The answer at one state, taken apart."""
    return _asked(study, state, 1, lambda _: state)


def ask_at_once(study: Study, case: dict[str, Any], values: np.ndarray) -> Recording:
    """The answers of a case at all ``values`` of its spans, shape (states, spans), from one run of its function."""
    many = {
        span.key: Many(np.ascontiguousarray(column)) for span, column in zip(spans_of(study), values.T, strict=True)
    }
    try:
        return _asked(study, case | many, len(values), lambda number: state_at(study, case, values[number]))
    except Unsteady as error:
        raise _branched(study, case, values, error) from error


def _asked(study: Study, state: dict[str, Any], states: int, at: Callable[[int], dict[str, Any]]) -> Recording:
    try:
        with np.errstate(all="ignore"):  # what is not finite is told below
            recording = record(study.ask({entry.key: state[entry.key] for entry in study.inputs}), states)
    except Unsteady:
        raise
    except WoodlibError as error:
        raise FreezeError(f"The study {study.key!r} gives no answer at {told(study, at(0))}: {error}") from error
    except Exception as error:  # a study is anybody's own function: whatever it raises is to reach them as a sentence
        raise FreezeError(
            f"The study {study.key!r} stopped{_place(error)} with {type(error).__name__}: {error or 'no more is known'}. "
            "Its function must take arrays of numbers where its sliders give one: compute with NumPy, without math, "
            "caches by a number, or writing into an array."
        ) from error
    wrong = ~np.isfinite(recording.leaves).all(axis=1)
    if wrong.any():
        state = at(int(np.argmax(wrong)))
        raise FreezeError(f"The study {study.key!r} gives a number that is not finite at {told(study, state)}.")
    return recording


def _place(error: BaseException) -> str:
    """Where in the study's own code it went wrong."""
    kit = Path(__file__).parent.parent
    others = {kit / "words", kit / "handout", Path(np.__file__).parent}
    frames = [
        frame for frame in traceback.extract_tb(error.__traceback__) if not others & set(Path(frame.filename).parents)
    ]
    return f" ({Path(frames[-1].filename).name}, line {frames[-1].lineno}: {frames[-1].line})" if frames else ""


def _branched(study: Study, case: dict[str, Any], values: np.ndarray, error: Unsteady) -> FreezeError:
    """What to say of a number that a study used as if it were the same at all states.

    Of the states that part, the nearest two tell which slider it is, and where.
    """
    spans = spans_of(study)
    places = (values - [span.low for span in spans]) / [span.high - span.low for span in spans]
    other = error.values != error.values[0]
    away = np.abs(places[~other][:, None] - places[other][None]).sum(axis=2)
    first, second = np.unravel_index(np.argmin(away), away.shape)
    pair = values[~other][first], values[other][second]
    for row in pair:
        ask_alone(study, state_at(study, case, row))  # where it refuses an input, that is what is to be said
    moved = int(np.argmax(np.abs(places[~other][first] - places[other][second])))
    span, near = spans[moved], 0.5 * (pair[0][moved] + pair[1][moved])
    return FreezeError(
        f"The study {study.key!r} cannot be frozen: {error.reason}. It is {span.label} that moves, near "
        f"{span.text(near)}{_place(error)}."
    )
