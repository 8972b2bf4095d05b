"""The nearest places for a row that keep clear of what is forbidden: exact, with the least shifting altogether."""

from __future__ import annotations

from fractions import Fraction
from math import lcm

Span = tuple[Fraction, Fraction]


def free_spans(low: Fraction, high: Fraction, forbidden: list[Span]) -> list[Span]:
    """What is left of ``low`` to ``high`` when open spans are taken out; touching a forbidden span is allowed.

    >>> kerf = Fraction(2), Fraction(3)
    >>> [tuple(map(float, span)) for span in free_spans(Fraction(0), Fraction(9), [kerf])]
    [(0.0, 2.0), (3.0, 9.0)]
    """
    free, at = [], low
    for begins, ends in sorted(forbidden):
        if begins >= high:
            break
        if begins >= at:
            free.append((at, begins))
        at = max(at, ends)
    if at <= high:
        free.append((at, high))
    return free


def nearest_places(wanted: list[Fraction], free: list[Span], apart: Fraction) -> list[Fraction] | None:
    """Places in the free spans, in order and at least ``apart``, with the least sum of shifts; None if there are none.

    On a tie the later place is taken. In the best row every place is held by something: it is where it was wanted, at
    the end of a free span, or ``apart`` from a neighbour that is; so these are all the places that need to be tried.

    >>> free = [(Fraction(0), Fraction(3, 2)), (Fraction(5), Fraction(9))]
    >>> [float(place) for place in nearest_places([Fraction(1), Fraction(4)], free, Fraction(1))]
    [1.0, 5.0]
    """
    if not wanted or not free:
        return [] if not wanted else None
    scale = lcm(*(n.denominator for n in (*wanted, apart, *(end for span in free for end in span))))
    aims, gap = [int(place * scale) for place in wanted], int(apart * scale)
    spans = [(int(low * scale), int(high * scale)) for low, high in free]
    found = _least_shifts(aims, _candidates(aims, spans, gap), gap)
    return None if found is None else [Fraction(place, scale) for place in found]


def _candidates(aims: list[int], spans: list[tuple[int, int]], gap: int) -> list[int]:
    anchors = {*aims, *(end for span in spans for end in span)}
    steps = range(-len(aims), len(aims) + 1) if gap else range(1)
    reached = {anchor + step * gap for anchor in anchors for step in steps}
    return sorted(place for place in reached if any(low <= place <= high for low, high in spans))


def _least_shifts(aims: list[int], places: list[int], gap: int) -> list[int] | None:
    """One place per aim, left to right: least cost up to each place, built on the best that is far enough back."""
    costs: list[float] = [0.0] * len(places)
    back: list[list[int]] = []
    for number, aim in enumerate(aims):
        now, came, best, behind = [], [], -1, 0
        for k, place in enumerate(places):
            while number and behind < k and places[behind] <= place - gap:
                if best < 0 or costs[behind] <= costs[best]:
                    best = behind
                behind += 1
            before = 0 if number == 0 else (costs[best] if best >= 0 else float("inf"))
            now.append(before + abs(place - aim) if before != float("inf") else before)
            came.append(best)
        costs, back = now, [*back, came]
    least = min(costs, default=float("inf"))
    if least == float("inf"):
        return None
    at = max(k for k, cost in enumerate(costs) if cost == least)
    chosen = [places[at]]
    for number in range(len(aims) - 1, 0, -1):
        at = back[number][at]
        chosen.append(places[at])
    return chosen[::-1]
