"""Ask a study for its answer at chosen states, and find which states are enough.

On a slider the smooth numbers of an answer are described by Chebyshev coefficients, which for smooth numbers fall off
like a geometric series (Trefethen, Approximation Theory and Approximation Practice, 2013, ch. 8). Each slider is
first moved alone, at several places, to see how fast they fall; a number that does not settle has a kink or a jump
in it and is refused by name. Where several sliders move together, only those products of orders are kept that can
still be seen, and the study is asked at as many states as there are products: points of a Leja sequence on every
span, so that the two sets fit each other.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.polynomial.chebyshev import chebvander
from scipy.linalg import lu_factor, lu_solve

from ..study.inputs import Choice, Span, Switch
from ..study.study import Study
from ..units import FORMATS
from .asking import FreezeError, ask_at_once, spans_of
from .record import Recording

MOST_CASES = 400
MOST_STATES = 60_000
MOST_ORDERS = 33
_PROBES = 2
SEEN = 0.5  # of a tolerance: products below this are left out at first; every refinement looks ten times closer
PIXEL_TOLERANCE = 0.1  # px; the step that a page writes
STEP_TOLERANCE = 2e-7  # share of the last shown digit
DECISION_TOLERANCE = 1e-8  # share of the range of a number that decides something


@dataclass(frozen=True)
class Plan:
    """Which states to ask for: every case of the choices and switches, and ``orders`` of products on the spans.

    ``orders`` has shape (products, spans); ``rest`` bounds what all products left out add up to in any one leaf, in tolerances.
    """

    study: Study
    orders: np.ndarray
    rest: float = 0.0

    @property
    def spans(self) -> tuple[Span, ...]:
        """The inputs that slide."""
        return spans_of(self.study)

    @property
    def switches(self) -> tuple[Choice | Switch, ...]:
        """The inputs that switch."""
        return tuple(entry for entry in self.study.inputs if not isinstance(entry, Span))

    @property
    def cases(self) -> list[dict[str, Any]]:
        """Every combination of choices and switches, the last input changing fastest."""
        options = [list(e.labels) if isinstance(e, Choice) else [False, True] for e in self.switches]
        keys = [entry.key for entry in self.switches]
        return [dict(zip(keys, values, strict=True)) for values in itertools.product(*options)]

    @property
    def counts(self) -> tuple[int, ...]:
        """How many orders each span has."""
        return tuple(int(top) + 1 for top in self.orders.max(axis=0)) if self.orders.shape[1] else ()

    @property
    def size(self) -> int:
        """How many states the plan asks for."""
        return len(self.cases) * len(self.orders)

    def points(self) -> np.ndarray:
        """Where the spans stand at every state, on -1 to 1, shape (products, spans)."""
        return leja_points(max(self.counts, default=1))[self.orders]

    def values(self) -> np.ndarray:
        """The span values at every state of a case, shape (products, spans)."""
        low, high = np.array([[span.low, span.high] for span in self.spans]).reshape(-1, 2).T
        return low + (high - low) * (self.points() + 1) / 2

    def solver(self) -> Callable[[np.ndarray], np.ndarray]:
        """A function from values at the states, shape (products, columns), to coefficients of the products."""
        matrix = np.ones((len(self.orders),) * 2)
        for axis, points in enumerate(self.points().T):
            matrix *= chebvander(points, self.counts[axis] - 1)[:, self.orders[:, axis]]
        factors = lu_factor(matrix)
        return lambda values: lu_solve(factors, values)


@lru_cache
def leja_points(count: int) -> np.ndarray:
    """The first points of a Leja sequence on -1 to 1: each as far as can be, in product, from all before it.

    >>> leja_points(3).tolist()
    [1.0, -1.0, 0.0]
    """
    candidates = np.cos(np.linspace(0, np.pi, 2001))
    candidates[1000] = 0.0
    points, distance = [], np.ones_like(candidates)
    for _ in range(count):
        points.append(float(candidates[np.argmax(distance)]))
        distance = distance * np.abs(candidates - points[-1])
    return np.array(points)


def chebyshev_points(span: Span, count: int) -> np.ndarray:
    """Chebyshev points of the first kind on a span, shape (count,)."""
    points = np.cos(np.pi * (np.arange(count) + 0.5) / count)
    return span.low + (span.high - span.low) * (points + 1) / 2


def coefficients(values: np.ndarray) -> np.ndarray:
    """Chebyshev coefficients from values at Chebyshev points, both of shape (points, columns)."""
    count = len(values)
    transform = (2 / count) * np.cos(np.pi * np.outer(np.arange(count), np.arange(count) + 0.5) / count)
    transform[0] /= 2
    return transform @ values


def tolerances(first: Recording, low: np.ndarray, high: np.ndarray) -> np.ndarray:
    """What error each leaf may carry, shape (leaves,): px for coordinates, a share of the last digit for numbers."""
    result = np.full(len(first.exact), PIXEL_TOLERANCE)
    exact = np.array(first.exact)
    size = np.maximum(np.abs(low), np.abs(high))
    # The second term keeps the round-off of large constants from being taken for a change.
    result[exact] = np.maximum(DECISION_TOLERANCE * (high - low), 1e-11 * size + 1e-15)[exact]
    for slot, kind in _shown_numbers(first.updates):
        if slot >= 0:
            part_steps = [1 / (float(part.scale) * part.steps_per_unit) for part in FORMATS[kind].parts]
            result[slot] = STEP_TOLERANCE * min(part_steps)
    return result


def _shown_numbers(updates: list[Any]) -> Iterator[tuple[int, str]]:
    for part in updates:
        if isinstance(part, list):
            if len(part) == 4 and part[0] == "n":
                yield part[1], part[2]
            yield from _shown_numbers(part)


def plan(study: Study, finer: int = 0) -> Plan:
    """Which products of orders are needed, found by moving each slider alone; ``finer`` counts refinements."""
    draft = Plan(study, np.zeros((1, 0), int))
    if len(draft.cases) > MOST_CASES:
        raise FreezeError(
            f"The study {study.key!r} has {len(draft.cases)} combinations of choices; a page can hold {MOST_CASES}. "
            "Offer fewer options, or split the study."
        )
    falls = _falls(study, draft)
    orders, rest = _seen_products(falls, SEEN / 10**finer)
    result = Plan(study, orders, rest)
    if result.size > MOST_STATES:
        told = ", ".join(f"{span.label} {count}" for span, count in zip(draft.spans, result.counts, strict=True))
        raise FreezeError(
            f"The study {study.key!r} needs {result.size} states ({len(draft.cases)} cases; orders: {told}); a page can "
            f"hold {MOST_STATES}. Narrow a span, offer fewer choices, or take out a slider."
        )
    return result


def _falls(study: Study, draft: Plan) -> list[list[np.ndarray]]:
    """How coefficients along every span fall, in decades over the tolerance: per span and probe, shape (orders, leaves).

    At two random places of three cases each span is moved alone; one question holds all places of a case.
    """
    noise, cases, spans = np.random.Generator(np.random.PCG64(20)), draft.cases, draft.spans
    falls: list[list[np.ndarray]] = [[] for _ in spans]
    if not spans:
        return falls
    for case in {0: None, len(cases) // 2: None, len(cases) - 1: None}:
        lines = []
        for _ in range(_PROBES):
            probe = np.array([span.low + (span.high - span.low) * noise.random() for span in spans])
            for number, span in enumerate(spans):
                line = np.repeat(probe[None], MOST_ORDERS, axis=0)
                line[:, number] = chebyshev_points(span, MOST_ORDERS)
                lines.append(line)
        recording = ask_at_once(study, cases[case], np.concatenate(lines))
        for number, values in enumerate(np.split(recording.leaves, len(lines))):
            falls[number % len(spans)].append(_fall(study, spans[number % len(spans)], recording, values))
    return falls


def _fall(study: Study, span: Span, recording: Recording, values: np.ndarray) -> np.ndarray:
    """The same for one span at one place, from the leaves at its Chebyshev points; refuses what does not settle."""
    allowed = tolerances(recording, values.min(axis=0), values.max(axis=0))
    fall = np.abs(coefficients(values)) / allowed
    unsettled = fall[-3:].sum(axis=0)
    if unsettled.max(initial=0.0) > 0.5:
        raise FreezeError(_kink(study, span, recording, int(np.argmax(unsettled)), values))
    return np.log10(np.maximum.accumulate(fall[::-1])[::-1] + 1e-30)


def _seen_products(falls: list[list[np.ndarray]], seen: float) -> tuple[np.ndarray, float]:
    """Products of orders whose coefficient can exceed ``seen`` tolerances in any leaf, and the most that the others add up to.

    A coefficient of a product is taken to fall as the product of the falls along each span alone.
    """
    if not falls:
        return np.zeros((1, 0), int), 0.0
    kept, rest = np.zeros((0, len(falls)), int), 0.0
    axes = [np.arange(MOST_ORDERS)] * len(falls)
    for probe in zip(*falls, strict=True):
        size = _size(np.array([fall[1:3] for fall in probe]), np.log10(seen))
        steps_down = [np.concatenate([np.zeros_like(size)[None], np.minimum(fall[1:] - size, 0.0)]) for fall in probe]
        # Leaves that fall alike need the same products: a quarter of a decade is close enough.
        profile = np.concatenate([*steps_down, size[None]])
        coarse = np.ascontiguousarray((np.round(np.clip(profile, -20, 20) * 4) / 4).T)
        profile = np.array(list({leaf.tobytes(): leaf for leaf in coarse}.values())).T
        decades, floor = profile[-1], np.log10(seen)
        alive, lost = np.zeros((1, 0), int), np.zeros(len(decades))
        totals = decades[None]
        for axis in axes:
            steps = profile[len(axis) * alive.shape[1] :][: len(axis)]
            totals = (totals[:, None] + steps[None]).reshape(-1, len(decades))
            alive = np.column_stack([np.repeat(alive, len(axis), axis=0), np.tile(axis, len(alive))])
            visible = totals.max(axis=1) >= floor
            lost = lost + (10.0 ** totals[~visible]).sum(axis=0)
            alive, totals = alive[visible], totals[visible]
        rest = max(rest, float(lost.max(initial=0.0)))
        kept = np.unique(np.concatenate([kept, alive]), axis=0)
    return kept if len(kept) else np.zeros((1, len(falls)), int), rest


def _size(falls: np.ndarray, floor: float) -> np.ndarray:
    """Against which change of each leaf its products are measured, in decades: shape (leaves,) from (spans, 2, leaves).

    The largest change along any one span; what a leaf holds apart from change says nothing of products. A span along
    which the leaf runs straight often multiplies what the others do, however far it moves the leaf by itself: such a
    span counts only where there is no other.
    """
    change, bend = falls[:, 0], falls[:, 1]
    curved = np.where(bend >= floor, change, -np.inf).max(axis=0)
    return np.where(np.isfinite(curved), curved, change.max(axis=0))


def _kink(study: Study, span: Span, recording: Recording, leaf: int, values: np.ndarray) -> str:
    places = chebyshev_points(span, MOST_ORDERS)
    order = np.argsort(places)
    near = places[order[int(np.argmax(np.abs(np.diff(values[order, leaf], 2)))) + 1]]
    what = "a number it prints or decides by" if recording.exact[leaf] else "a coordinate of its picture"
    return (
        f"The study {study.key!r} has a kink or a jump in {what} as {span.label} moves, near {span.text(near)}; "
        "write it with larger(...), smaller(...) or pick(...)."
    )
