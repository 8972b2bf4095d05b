"""Read a frozen table the way the page does, and hold it against full redraws before anything is written.

The comparison is made at states that took no part in the sampling, on places where the sliders can really stand:
every word and role must be the same, every printed number the same to its last digit, every coordinate within half
a px. The states of a case are redrawn at once; some of them are also redrawn alone, as a notebook does it, and their
texts written out. Where a number stands so close to the edge between two digits, or between two words, that the table's
own error reaches across, either is right; such ties are counted.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.polynomial.chebyshev import chebvander

from ..study.inputs import Choice, Span
from ..study.study import Study
from ..units import FORMATS
from .asking import FreezeError, Progress, ask_alone, ask_at_once, spans_of, told
from .freeze import Frozen, freeze
from .record import ATTRIBUTE, CLASS, PATH, Recording, made_numbers
from .sampling import PIXEL_TOLERANCE

STATES = 2000
ALONE = 24  # of these are also redrawn alone
LINE_LIMIT = 0.5  # px
TIE = 1e-3  # of the last shown digit
_LEANS = (1e-6, -1e-6)  # of a number that is compared with an edge
_SLACK = 1e-6  # of a step, as in page.js
_REFINEMENTS = 3


class TableError(FreezeError):
    """A frozen table differs from the study's own answers; a finer one may not."""


@dataclass(frozen=True)
class Checked:
    """A frozen study that passed: states compared, worst coordinate error in px, texts compared, ties."""

    frozen: Frozen
    states: int
    worst_px: float
    texts: int
    ties: int

    def report(self) -> str:
        """One line on how the frozen study was checked."""
        plan = self.frozen.plan
        ties = f", {self.ties} of them at the very edge between two" if self.ties else ""
        return (
            f"{self.frozen.study.key}: {plan.size} states asked, {self.states} others compared with full redraws: "
            f"lines within {self.worst_px:.2f} px, {self.texts} words and numbers the same{ties}; a bound from "
            f"the rate at which the terms of the table fall is {plan.rest * PIXEL_TOLERANCE:.1f} px."
        )


@dataclass(frozen=True)
class Read:
    """What a frozen table says at some states of a case: shape, words, and leaves of shape (states, leaves)."""

    shape: dict[str, Any]
    words: list[str]
    leaves: np.ndarray


def read(payload: dict[str, Any], case: int, places: np.ndarray) -> Read:
    """A frozen table at places of the spans, -1 to 1, shape (states, spans), as the page's script reads it."""
    basis = np.ones((len(places), len(payload["products"])))
    for axis, (_, _, _, count) in enumerate(payload["spans"]):
        basis *= chebvander(places[:, axis], count - 1)[:, np.array(payload["products"])[:, axis]]
    number, place = payload["cases"][case]
    shape = payload["shapes"][number]
    leaves = np.zeros((len(places), shape["leaves"]))
    leaves[:, shape["still"][0]] = shape["still"][1]
    leaves[:, shape["columns"]] = _sums(shape["exact"], place, basis)
    for leaf, source, scale, shift in shape["echoes"]:
        leaves[:, leaf] = scale * leaves[:, source] + shift
    if shape["motions"]:
        amounts = _sums(shape["common"], place, basis) * np.array(shape["units"])
        leaves[:, shape["motions"]] = np.array(shape["mean"]) + amounts @ np.array(shape["modes"])
    return Read(shape, shape["words"][place], leaves)


def _sums(table: dict[str, Any], place: int, basis: np.ndarray) -> np.ndarray:
    dense = np.zeros((basis.shape[1], len(table["quantum"])))
    for column, sparse in enumerate(table["cases"][place]):
        dense[np.cumsum(sparse[::2], dtype=int) - 1, column] = sparse[1::2]
    return (basis @ dense) * np.array(table["quantum"])


def steps_of(shape: dict[str, Any]) -> list[tuple[str, int, int]]:
    """The steps of a frozen shape, with slots as in a recording."""
    names, which, first, second = shape["steps"]
    return [
        (names[name], *(slot if slot >= 0 else -1 - slot - number for slot in operands))
        for number, (name, *operands) in enumerate(zip(which, first, second, strict=True))
    ]


def _say(part: Any, numbers: np.ndarray, words: list[str]) -> str:
    """A part of a sentence at one state."""
    if isinstance(part, str):
        return part
    if part[0] == "w":
        return words[part[1]]
    if part[0] == "n":
        return FORMATS[part[2]].text(float(numbers[part[1]]), rounding=part[3])
    if part[0] == "k":
        return _say(part[2][round(numbers[part[1]])], numbers, words)
    return "".join(_say(inner, numbers, words) for inner in part[1:])


def _hanging(part: Any, kind: str) -> Iterator[list[Any]]:
    """The numbers ("n") or picks ("k") within a part, each as it is recorded."""
    if isinstance(part, list):
        if part[0] == kind:
            yield part
        for inner in part[2] if part[0] == "k" else part[1:] if part[0] == "s" else ():
            yield from _hanging(inner, kind)


def check(frozen: Frozen, states: int = STATES, seed: int = 1) -> Checked:
    """Compare a frozen study with full redraws at random slider places; raises :class:`FreezeError` at a mismatch."""
    noise = np.random.Generator(np.random.PCG64(seed))
    drawn = [random_state(frozen.study, noise) for _ in range(states)]
    if not spans_of(frozen.study):  # nothing lies between: every case is looked at, once
        drawn = list(frozen.plan.cases)
    numbers = {tuple(case.values()): number for number, case in enumerate(frozen.plan.cases)}
    groups: dict[int, list[dict[str, Any]]] = {}
    for state in drawn:
        groups.setdefault(numbers[tuple(state[entry.key] for entry in frozen.plan.switches)], []).append(state)
    alone = {id(state) for state in drawn[:ALONE]}
    worst, texts, ties = 0.0, 0, 0
    for case, members in groups.items():
        comparison = _Comparison(frozen, case, members)
        worst = max(worst, comparison.lines())
        ties += comparison.numbers()
        texts += comparison.texts([number for number, state in enumerate(members) if id(state) in alone])
    return Checked(frozen, len(drawn), worst, texts, ties)


def random_state(study: Study, noise: np.random.Generator) -> dict[str, Any]:
    """A state at random slider places."""
    state: dict[str, Any] = {}
    for entry in study.inputs:
        if isinstance(entry, Span):
            state[entry.key] = entry.at(int(noise.integers(entry.positions)))
        elif isinstance(entry, Choice):
            state[entry.key] = list(entry.labels)[int(noise.integers(len(entry.labels)))]
        else:
            state[entry.key] = bool(noise.integers(2))
    return state


def _place(update: list[Any]) -> tuple:
    """What an update writes: its kind, its element, and the attribute."""
    return update[0], update[1], update[2] if update[0] == ATTRIBUTE else ""


def _coordinates(update: list[Any]) -> list[int]:
    """The slots of an update that draws."""
    if update[0] == ATTRIBUTE:
        return [update[3]]
    run = update[3]
    return list(range(run[0], run[0] - run[1])) if len(run) == 2 else run


class _Comparison:
    """A frozen table at some states of one case beside the study's own answers."""

    def __init__(self, frozen: Frozen, case: int, states: list[dict[str, Any]]) -> None:
        self.study, self.states, self.case = frozen.study, states, case
        spans = spans_of(frozen.study)
        values = np.array([[state[span.key] for span in spans] for state in states]).reshape(len(states), -1)
        low, high = np.array([[span.low, span.high] for span in spans]).reshape(-1, 2).T
        self.truth = ask_at_once(frozen.study, frozen.plan.cases[case], values)
        self.read = read(frozen.payload, case, 2 * (values - low) / (high - low) - 1)
        self._made_alike(self.truth, frozen.made[case], 0)
        self.want = self.truth.numbers
        # Where an edge stands at a number's last digits, either side of it is right.
        self.wants = [self.want, *(made_numbers(self.truth.steps, self.truth.leaves, lean) for lean in _LEANS)]
        self.got = made_numbers(steps_of(self.read.shape), self.read.leaves)
        told_of = {_place(update): update for update in self.read.shape["updates"]}
        self.pairs = [(told_of[_place(true)], true) for true in self.truth.updates if _place(true) in told_of]
        still = [true for true in self.truth.updates if _place(true) not in told_of and true[0] in (PATH, ATTRIBUTE)]
        self.still = [slot for update in still for slot in _coordinates(update)]
        self.first = frozen.made[case].leaves[0]

    def _made_alike(self, one: Recording, other: Recording, number: int) -> None:
        if not (one.is_made_like(other) and one.words == other.words):
            raise FreezeError(
                f"The study {self.study.key!r} draws other marks, points or words at "
                f"{told(self.study, self.states[number])} than elsewhere while only a slider moved. Keep every mark and hide "
                "it with shown=pick(...), keep axes fixed, write numbers with length(...), moisture(...) and the like, "
                "choose words with pick(...), and leave nothing to chance."
            )

    def _differs(self, number: int, what: str) -> TableError:
        where = told(self.study, self.states[number])
        return TableError(f"The frozen study {self.study.key!r} differs from its own answer at {where}: {what}.")

    def lines(self) -> float:
        """The worst error of a coordinate, px; what the table leaves still must be so."""
        slots = [
            (mine, true)
            for got, want in self.pairs
            if got[0] in (PATH, ATTRIBUTE)
            for mine, true in zip(_coordinates(got), _coordinates(want), strict=True)
        ]
        away = np.abs(self.truth.leaves[:, self.still] - self.first[self.still])
        if slots:
            mine, true = zip(*slots, strict=True)
            away = np.concatenate([away, np.abs(self.got[:, mine] - self.want[:, true])], axis=1)
        worst = away.max(axis=1, initial=0.0)
        if not worst.max() <= LINE_LIMIT:
            raise self._differs(int(np.argmax(worst)), f"a line is off by {worst.max():.2f} px")
        return float(worst.max())

    def _said(self) -> Iterator[tuple[Any, Any]]:
        """Every part of every sentence and role, as the table and as the study has it."""
        for got, want in self.pairs:
            if got[0] not in (PATH, ATTRIBUTE):
                start = 3 if got[0] == CLASS else 2
                yield from zip(got[start:], want[start:], strict=True)

    def numbers(self) -> int:
        """Compare every number that is written and every choice of words at all states; returns how many were ties."""
        ties = 0
        for part, true in self._said():
            for mine, other in zip(_hanging(part, "k"), _hanging(true, "k"), strict=True):
                chosen = np.rint(self.got[:, mine[1]])
                differs = [chosen != np.rint(want[:, other[1]]) for want in self.wants]
                ties += self._ties(differs[0], np.all(differs, axis=0), part, true)
            for mine, other in zip(_hanging(part, "n"), _hanging(true, "n"), strict=True):
                for piece in FORMATS[mine[2]].parts:
                    got, *wants = (
                        (numbers * float(piece.scale) + piece.offset) * piece.steps_per_unit
                        for numbers in (self.got[:, mine[1]], *(want[:, other[1]] for want in self.wants))
                    )
                    differs = [_whole_steps(got, mine[3]) != _whole_steps(want, mine[3]) for want in wants]
                    wrong = [off & (np.abs(got - want) > TIE) for off, want in zip(differs, wants, strict=True)]
                    ties += self._ties(differs[0], np.all(wrong, axis=0), part, true)
        return ties

    def _ties(self, differs: np.ndarray, wrong: np.ndarray, part: Any, true: Any) -> int:
        """How many states differ without being wrong; refuses a table that is."""
        if wrong.any():
            raise self._says_otherwise(int(np.argmax(wrong)), part, true)
        return int(differs.sum())

    def _says_otherwise(self, number: int, part: Any, true: Any) -> TableError:
        got, want = self._told(number, part), _say(true, self.want[number], self.truth.words)
        return self._differs(number, f"the page would say {got!r} where Python says {want!r}")

    def _told(self, number: int, part: Any) -> str:
        return _say(part, self.got[number], self.read.words)

    def texts(self, alone: list[int]) -> int:
        """Redraw some states alone, hold them against those drawn at once, and write every text out; returns how many."""
        for number in alone:
            one = ask_alone(self.study, self.states[number])
            self._made_alike(one, self.truth, number)
            if not np.allclose(one.leaves[0], self.truth.leaves[number], rtol=1e-9, atol=1e-9):
                raise FreezeError(
                    f"The study {self.study.key!r} gives other numbers at {told(self.study, self.states[number])} when it is "
                    "asked there alone; leave nothing to chance, and take no decision by a number's type."
                )
            for part, true in self._said():
                if not any(self._same_text(number, part, true, want[number]) for want in self.wants):
                    raise self._says_otherwise(number, part, true)
        return len(self.states) * sum(1 for _ in self._said())

    def _same_text(self, number: int, part: Any, true: Any, want: np.ndarray) -> bool:
        """Whether two texts are the same, but for a number at the edge between two digits."""
        snapped = self.got[number].copy()
        for mine, other in zip(_hanging(part, "n"), _hanging(true, "n"), strict=True):
            snapped[mine[1]] = want[other[1]]
        return _say(part, snapped, self.read.words) == _say(true, want, self.truth.words)


def _whole_steps(count: np.ndarray, rounding: str) -> np.ndarray:
    """Numbers of steps as the page writes them: a number this close to a step counts as that step."""
    if rounding == "nearest":
        return np.sign(count) * np.floor(np.abs(count) + 0.5 + _SLACK)
    return np.ceil(count - _SLACK) if rounding == "up" else np.floor(count + _SLACK)


def freeze_checked(study: Study, progress: Progress | None = None) -> Checked:
    """Freeze a study, check it, refine it where the check fails, and refuse it when that does not help."""
    for finer in range(_REFINEMENTS - 1):
        try:
            return check(freeze(study, finer, progress))
        except TableError:
            continue
    return check(freeze(study, _REFINEMENTS - 1, progress))
