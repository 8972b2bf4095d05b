"""A study: a question, a few inputs, and a pure function from them to an answer.

Declared once, a study is shown live in a notebook, frozen into a handout, printed as a still, and tested at every
corner of its inputs without a browser.
"""

from __future__ import annotations

import inspect
import itertools
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any

from ..errors import InputError, Problems
from .answer import Answer
from .inputs import Choice, Input, Span, Switch

MOST_SHOWN = 5
"""How many inputs a panel shows at once; more would not stand beside the picture on a small laptop."""


@dataclass(frozen=True)
class Study:
    """A question with inputs and the function that answers it.

    ``key`` names the study in briefs and addresses; ``answer`` takes the inputs by name, in SI. ``more`` are the keys of
    inputs that a panel keeps folded away at first; it shows :data:`MOST_SHOWN` at most.
    """

    key: str
    question: str
    inputs: tuple[Input, ...]
    function: Callable[..., Answer]
    more: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        keys = [entry.key for entry in self.inputs]
        taken = list(inspect.signature(self.function).parameters)
        if keys != taken:
            raise InputError(
                f"The study {self.key!r} declares the inputs {', '.join(keys)}, but its function takes "
                f"{', '.join(taken) or 'none'}; give both the same names in the same order."
            )
        unknown = [key for key in self.more if key not in keys]
        if unknown:
            raise InputError(f"The study {self.key!r} folds away {', '.join(unknown)}, but has no such input.")
        for entry in self.inputs:
            entry.read(entry.start)

    @property
    def shown_first(self) -> tuple[Input, ...]:
        """The inputs that a panel shows at once: those not in ``more``, the first few of them."""
        return tuple(entry for entry in self.inputs if entry.key not in self.more)[:MOST_SHOWN]

    @property
    def start(self) -> dict[str, Any]:
        """Every input at its start."""
        return {entry.key: entry.read(entry.start) for entry in self.inputs}

    def read(self, values: Mapping[str, Any]) -> dict[str, Any]:
        """All inputs from some: what is not given stays at its start; everything wrong is reported at once."""
        entries = {entry.key: entry for entry in self.inputs}
        problems = Problems()
        result = dict(self.start)
        for key, value in values.items():
            if key not in entries:
                near = get_close_matches(key, entries, 1)
                hint = f" Did you mean {near[0]!r}?" if near else ""
                problems.add(f"The study {self.key!r} has no input {key!r}; it has {', '.join(entries)}.{hint}")
                continue
            try:
                result[key] = entries[key].read(value)
            except InputError as error:
                problems.absorb(error)
        problems.raise_if_any()
        return result

    def answer(self, **values: Any) -> Answer:
        """The answer for inputs given by name, as SI numbers or as text with units."""
        return self.ask(self.read(values))

    def ask(self, state: Mapping[str, Any]) -> Answer:
        """The answer for a full state that was read already; a function that answers with something else is refused."""
        answer = self.function(**state)
        if not isinstance(answer, Answer):
            raise InputError(
                f"The study {self.key!r} answered with a {type(answer).__name__}; its function must return an Answer, with a "
                "Picture made of marks (a figure of a plotting library cannot be frozen)."
            )
        return answer

    def starting(self, **values: Any) -> Study:
        """The same study with other start values: the maker's own piece."""
        state = self.read(values)
        inputs = tuple(type(entry)(**{**vars(entry), "start": state[entry.key]}) for entry in self.inputs)
        return Study(self.key, self.question, inputs, self.function, self.more)

    def corners(self) -> Iterator[dict[str, Any]]:
        """Every combination of the ends of all inputs."""
        ends: list[list[Any]] = []
        for entry in self.inputs:
            if isinstance(entry, Choice):
                ends.append(list(entry.labels))
            elif isinstance(entry, Span):
                ends.append([entry.low, entry.high])
            elif isinstance(entry, Switch):
                ends.append([False, True])
        for combination in itertools.product(*ends):
            yield dict(zip((entry.key for entry in self.inputs), combination, strict=True))


def study(
    key: str, question: str, inputs: list[Input] | tuple[Input, ...], more: tuple[str, ...] = ()
) -> Callable[[Callable[..., Answer]], Study]:
    """Turn a function from inputs to an :class:`Answer` into a :class:`Study`."""

    def declare(function: Callable[..., Answer]) -> Study:
        return Study(key, question, tuple(inputs), function, tuple(more))

    return declare
