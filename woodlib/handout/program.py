"""What a page needs of the answers of one shape: every number once, every step once, nothing that never changes.

A study's own record holds a number as often as it is said, drawn or worked with, and every step as often as it is made.
Here equal numbers and equal steps become one, steps between numbers that stand still become numbers, and what no element
of the page hangs on falls away.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from ..units import FORMATS
from .record import ATTRIBUTE, PATH, Recording
from .sampling import tolerances


@dataclass(frozen=True)
class Program:
    """Leaves of shape (cases, states, leaves) with their tolerances, and the steps, updates and words that use them."""

    values: np.ndarray
    allowed: np.ndarray
    moving: np.ndarray
    exact: np.ndarray
    steps: list[tuple[str, int, int]]
    updates: list[Any]
    words: list[list[str]]


def program(first: Recording, values: np.ndarray, words: list[list[str]]) -> Program:
    """The program of answers made like ``first``; ``values`` of shape (cases, states, leaves), ``words`` of each case."""
    low, high = values.min(axis=(0, 1)), values.max(axis=(0, 1))
    allowed = tolerances(first, low, high)
    moving = _moving(first, high - low > 0.01 * allowed)
    one = first.numbers[0]  # what stands still is everywhere as it is here
    same = [len(set(column)) == 1 for column in zip(*words, strict=True)]
    *shown, told = first.updates  # the last tells the picture in words, which the page joins to the readings
    kept = [update for update in shown if _can_change(update, moving, same)] + [told]
    taken = _Taken(first, values, moving, one)
    updates = [taken.resolved(update, same) for update in kept]
    sources = np.array(taken.sources, dtype=int)
    leaves, own = np.maximum(sources, 0), sources >= 0
    tight = np.where(own, allowed[leaves], 1.0)
    for leaf, group in taken.groups.items():
        tight[leaf] = allowed[group].min()
    exact = ~own | np.array(first.exact, dtype=bool)[leaves]
    differing = [[text for text, is_same in zip(row, same, strict=True) if not is_same] for row in words]
    return Program(
        np.where(own, values[:, :, leaves], one[sources]),
        tight,
        own & moving[leaves],
        exact,
        taken.steps,
        updates,
        differing,
    )


def _moving(first: Recording, leaves: np.ndarray) -> np.ndarray:
    """Which numbers move, by slot: of the steps those that hang on a leaf that moves."""
    moving = np.concatenate([leaves, np.zeros(len(first.steps), dtype=bool)])
    for number, (_, one, other) in enumerate(first.steps, start=1):
        moving[-number] = moving[one] or moving[other]
    return moving


class _Taken:
    """The leaves and steps that updates need, numbered as they are met."""

    def __init__(self, first: Recording, values: np.ndarray, moving: np.ndarray, one: np.ndarray) -> None:
        self.first, self.values, self.moving, self.one = first, values, moving, one
        self.sources: list[int] = []  # slot in the study's own record, of every leaf
        self.groups: dict[int, list[int]] = {}  # all slots that a leaf stands for
        self.steps: list[tuple[str, int, int]] = []
        self._leaves: dict[bytes, int] = {}
        self._steps: dict[tuple[str, int, int], int] = {}
        self._slots: dict[int, int] = {}

    def slot(self, slot: int) -> int:
        """The place of a number on the page."""
        waiting = [slot]
        while waiting:
            now = waiting[-1]
            if now in self._slots:
                waiting.pop()
            elif now >= 0 or not self.moving[now]:
                self._slots[now] = self._leaf(now)
            else:
                name, *operands = self.first.steps[-1 - now]
                missing = [operand for operand in operands if operand not in self._slots]
                if missing:
                    waiting += missing
                    continue
                step = (name, self._slots[operands[0]], self._slots[operands[1]])
                if step not in self._steps:
                    self.steps.append(step)
                    self._steps[step] = -len(self.steps)
                self._slots[now] = self._steps[step]
        return self._slots[slot]

    def _leaf(self, slot: int) -> int:
        if slot >= 0 and not self.first.exact[slot]:
            self.sources.append(slot)
            return len(self.sources) - 1
        key = self.values[:, :, slot].tobytes() if slot >= 0 and self.moving[slot] else self.one[slot].tobytes()
        leaf = self._leaves.setdefault(key, len(self.sources))
        if leaf == len(self.sources):
            self.sources.append(slot)
        if slot >= 0:
            self.groups.setdefault(leaf, []).append(slot)
        return leaf

    def _run(self, slots: list[int]) -> list[int]:
        if len(slots) != 2:
            return [self.slot(slot) for slot in slots]
        first = len(self.sources)
        self.sources += range(slots[0], slots[0] - slots[1])
        return [first, slots[1]]

    def resolved(self, update: list[Any], same: list[bool]) -> list[Any]:
        """An update with its numbers as they are on the page, and words that never differ written in place."""
        if update[0] == PATH:
            return [*update[:3], self._run(update[3])]
        if update[0] == ATTRIBUTE:
            return [*update[:3], self.slot(update[3])]
        rank = np.cumsum([not is_same for is_same in same]) - 1

        def part(said: Any) -> Any:
            if not isinstance(said, list):
                return said
            if said[0] == "w":
                return self.first.words[said[1]] if same[said[1]] else ["w", int(rank[said[1]])]
            if said[0] == "n":
                return ["n", self.slot(said[1]), *said[2:]]
            if said[0] == "k":
                return ["k", self.slot(said[1]), [part(option) for option in said[2]]]
            return ["s", *(part(inner) for inner in said[1:])]

        return [update[0], update[1], *(part(said) for said in update[2:])]


def _can_change(update: list[Any], moving: np.ndarray, same: list[bool]) -> bool:
    if update[0] == PATH:
        slots = update[3]
        run = range(slots[0], slots[0] - slots[1]) if len(slots) == 2 else slots
        return bool(moving[list(run)].any())
    if update[0] == ATTRIBUTE:
        return bool(moving[update[3]])
    return any(_says_something_new(part, moving, same) for part in update[2:])


def _says_something_new(part: Any, moving: np.ndarray, same: list[bool]) -> bool:
    if not isinstance(part, list):
        return False
    if part[0] == "w":
        return not same[part[1]]
    if part[0] == "n":  # a fixed number is written anew when the reader changes the units
        return bool(moving[part[1]]) or len(FORMATS[part[2]].parts) > 1
    inner = part[2] if part[0] == "k" else part[1:]
    return (part[0] == "k" and bool(moving[part[1]])) or any(_says_something_new(each, moving, same) for each in inner)
