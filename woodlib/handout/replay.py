"""Read a frozen table the way the page does, and hold it against full redraws before anything is written.

The comparison is made at states that took no part in the sampling, on places where the sliders can really stand:
every word and role must be the same, every printed number the same to its last digit, every coordinate within half
a px. A number that Python itself would round this way or that (closer to a tick's edge than a millionth of a step)
may be written either way, and is counted.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from ..study.inputs import Choice, Span
from ..units import FORMATS
from ..words.steps import STEPS
from .asking import Progress, without_collection
from .freeze import Frozen, freeze
from .record import ATTRIBUTE, CLASS, PATH, Recording
from .sampling import PIXEL_TOLERANCE, FreezeError, ask

STATES = 300
LINE_LIMIT = 0.5  # px
EDGE = 3e-6  # of a step
_REFINEMENTS = 3


@dataclass(frozen=True)
class Checked:
    """A frozen study that passed: states compared, worst coordinate error in px, texts compared, even roundings."""

    frozen: Frozen
    states: int
    worst_px: float
    texts: int
    even: int

    def report(self) -> str:
        """One line on how the frozen study was checked."""
        plan = self.frozen.plan
        even = f", {self.even} of them rounded at the very edge" if self.even else ""
        return (
            f"{self.frozen.study.key}: {plan.size} states asked, {self.states} others compared with full redraws: "
            f"lines within {self.worst_px:.2f} px, {self.texts} words and numbers the same{even}; a bound from "
            f"the rate at which the terms of the table fall is {plan.rest * PIXEL_TOLERANCE:.1f} px."
        )


def numbers(
    payload: dict[str, Any], state: dict[str, Any]
) -> tuple[dict[str, Any], list[str], list[float], list[float]]:
    """Shape, words, leaves and made numbers of a frozen study at a state (SI spans, option values)."""
    which, basis = 0, np.ones(len(payload["products"]))
    for entry in payload["inputs"]:
        if "options" in entry:
            value = state[entry["key"]]
            which += entry["stride"] * (int(value) if isinstance(value, bool) else entry["values"].index(value))
    for (place, low, high, count), orders in zip(payload["spans"], np.transpose(payload["products"]), strict=True):
        x = 2 * (state[payload["inputs"][place]["key"]] - low) / (high - low) - 1
        basis = basis * np.polynomial.chebyshev.chebvander(x, count - 1)[0, orders]
    number, place = payload["cases"][which]
    shape = payload["shapes"][number]
    leaves = np.zeros(shape["leaves"])
    leaves[shape["still"][0]] = shape["still"][1]
    leaves[shape["columns"]] = _sums(shape["exact"], place, basis)
    for leaf, source, scale, shift in shape["echoes"]:
        leaves[leaf] = scale * leaves[source] + shift
    amounts = _sums(shape["common"], place, basis)
    if len(shape["motions"]):
        leaves[shape["motions"]] = np.array(shape["mean"]) + (amounts * shape["units"]) @ np.array(shape["modes"])
    return shape, shape["words"][place], leaves.tolist(), made_numbers(shape["steps"], leaves)


def _sums(table: dict[str, Any], place: int, basis: np.ndarray) -> np.ndarray:
    sums = []
    for sparse, quantum in zip(table["cases"][place], table["quantum"], strict=True):
        places = np.cumsum(sparse[::2]) - 1 if sparse else np.zeros(0, int)
        sums.append(float(basis[places.astype(int)] @ np.array(sparse[1::2], float)) * quantum)
    return np.array(sums)


def made_numbers(steps: list[Any], leaves: Any) -> list[float]:
    """The decided numbers from the leaves, in order."""
    made: list[float] = []
    for name, first, second in steps:
        operands = [leaves[slot] if slot >= 0 else made[-1 - slot] for slot in (first, second)]
        made.append(float(STEPS[name].python(*operands)))
    return made


class _Teller:
    """Says parts from numbers and words; lists the numbers it wrote, for the even-rounding rule."""

    def __init__(self, leaves: Any, made: list[float], words: list[str]) -> None:
        self.leaves, self.made, self.words = leaves, made, words

    def at(self, slot: int) -> float:
        return self.leaves[slot] if slot >= 0 else self.made[-1 - slot]

    def say(self, part: Any) -> str:
        if isinstance(part, str):
            return part
        if part[0] == "w":
            return self.words[part[1]]
        if part[0] == "n":
            return FORMATS[part[2]].text(self.at(part[1]), rounding=part[3])
        if part[0] == "k":
            return self.say(part[2][round(self.at(part[1]))])
        return "".join(self.say(inner) for inner in part[1:])

    def even(self, part: Any) -> bool:
        """Whether a number in this part stands so close to an edge that either rounding is right."""
        if not isinstance(part, list) or part[0] == "w":
            return False
        if part[0] == "n":
            return any(_at_edge(self.at(part[1]), piece, part[3]) for piece in FORMATS[part[2]].parts)
        if part[0] == "k":
            return self.even(part[2][round(self.at(part[1]))])
        return any(self.even(inner) for inner in part[1:])

    def coordinates(self, slots: list[int]) -> list[float]:
        if len(slots) == 2:
            return [self.leaves[slots[0] + k] for k in range(-slots[1])]
        return [self.at(slot) for slot in slots]


def _at_edge(number: float, part: Any, rounding: str) -> bool:
    steps = (number * float(part.scale) + part.offset) * part.steps_per_unit
    edge = 0.5 if rounding == "nearest" else 0.0
    return abs((steps - edge + 0.5) % 1.0 - 0.5) < EDGE


def check(frozen: Frozen, states: int = STATES, seed: int = 1) -> Checked:
    """Compare a frozen study with full redraws at random slider places; raises :class:`FreezeError` at a mismatch."""
    noise = np.random.Generator(np.random.PCG64(seed))
    worst, texts, even = 0.0, 0, 0
    for _ in range(states):
        state = random_state(frozen.study, noise)
        truth = ask(frozen.study, state)
        shape, words, leaves, made = numbers(frozen.payload, state)
        told = _Teller(leaves, made, words)
        drawn = _Teller(truth.leaves, made_numbers(truth.steps, truth.leaves), truth.words)
        away, said, toss = _compare(frozen, truth, shape, told, drawn, state)
        worst, texts, even = max(worst, away), texts + said, even + toss
    return Checked(frozen, states, worst, texts, even)


def random_state(study: Any, noise: np.random.Generator) -> dict[str, Any]:
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


def _compare(
    frozen: Frozen, truth: Recording, shape: dict, told: _Teller, drawn: _Teller, state: dict
) -> tuple[float, int, int]:
    where = f"The frozen study {frozen.study.key!r} differs from its own answer at " + ", ".join(
        f"{entry.label} {entry.text(state[entry.key])}" for entry in frozen.study.inputs
    )
    by_place = {(update[0], update[1], update[2] if update[0] == ATTRIBUTE else ""): update for update in truth.updates}
    worst, texts, even = 0.0, 0, 0
    for update in shape["updates"]:
        true = by_place[(update[0], update[1], update[2] if update[0] == ATTRIBUTE else "")]
        if update[0] in (PATH, ATTRIBUTE):
            slots = ([update[3]], [true[3]]) if update[0] == ATTRIBUTE else (None, None)
            got = told.coordinates(update[3]) if slots[0] is None else [told.at(update[3])]
            want = drawn.coordinates(true[3]) if slots[1] is None else [drawn.at(true[3])]
            worst = max(worst, float(np.abs(np.subtract(got, want)).max()))
            if not worst <= LINE_LIMIT:
                raise FreezeError(f"{where}: a line is off by {worst:.2f} px.")
            continue
        pairs = zip(update[2 if update[0] != CLASS else 3 :], true[2 if true[0] != CLASS else 3 :], strict=True)
        for part, true_part in pairs:
            texts += 1
            got, want = told.say(part), drawn.say(true_part)
            if got != want and not drawn.even(true_part):
                raise FreezeError(f"{where}: the page would say {got!r} where Python says {want!r}.")
            even += got != want
    return worst, texts, even


def freeze_checked(study: Any, progress: Progress | None = None) -> Checked:
    """Freeze a study, check it, refine it where the check fails, and refuse it when that does not help."""
    for finer in range(_REFINEMENTS):
        try:
            with without_collection():
                return check(freeze(study, finer, progress))
        except FreezeError as error:
            if "frozen study" not in str(error) or finer == _REFINEMENTS - 1:
                raise
    raise AssertionError("unreachable: the last refinement returns or raises")
