"""Freeze a study: turn its answers into one small table that a page can read without Python.

Smooth numbers become Chebyshev coefficients in whole numbers of a small quantum. Numbers that are printed or decide
something keep a column of their own, fine enough that no shown digit changes; coordinates share a few common
motions (a low-rank table), since most of a picture moves together. Kinks, words and roles stay as steps that the
page repeats (:mod:`woodlib.handout.record`).
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..picture.svg import svg_body
from ..study.readings import readings_html
from ..study.study import Study
from ..units import FORMATS
from .asking import Progress, ask_at_once, state_at
from .controls import input_tables
from .record import ATTRIBUTE, PATH, Recording
from .sampling import PIXEL_TOLERANCE, Plan, plan, tolerances

Solver = Callable[[np.ndarray], np.ndarray]
_SOME_ROWS = 300  # states from which the common motions are found; all are held against them
_LEFT_OVER = 0.5  # of a tolerance, what the common motions may leave out of a coordinate
_MODE_ERROR = 0.25  # of a tolerance, twice the most that rounding a motion may add


@dataclass(frozen=True)
class Frozen:
    """A study as data for a page, the plan it took, and per case the make-up of its answers with the leaves as asked."""

    study: Study
    payload: dict[str, Any]
    plan: Plan
    made: tuple[Recording, ...]


@dataclass
class _Shape:
    first: Recording
    state: dict[str, Any]
    cases: list[int]
    values: list[np.ndarray]
    words: list[list[str]]


def freeze(study: Study, finer: int = 0, progress: Progress | None = None) -> Frozen:
    """Sample a study and write its table; raises :class:`FreezeError` with the remedy when it cannot be frozen."""
    layout = plan(study, finer)
    made = tuple(_ask_all(layout, progress))
    shapes = _shapes(layout, made)
    solve = layout.solver()
    tables = [_table(shape, layout, solve) for shape in shapes]
    order = [0] * len(layout.cases)
    for number, shape in enumerate(shapes):
        for place, case in enumerate(shape.cases):
            order[case] = [number, place]
    inputs = input_tables(study.inputs)
    kinds = json.dumps([tables, inputs])
    payload = {
        "inputs": inputs,
        "spans": [
            [study.inputs.index(span), span.low, span.high, count]
            for span, count in zip(layout.spans, layout.counts, strict=True)
        ],
        "products": layout.orders.tolist(),
        "cases": order,
        "shapes": tables,
        "formats": {kind: entry.as_table() for kind, entry in FORMATS.items() if f'"{kind}"' in kinds},
    }
    return Frozen(study, payload, layout, made)


def _ask_all(layout: Plan, progress: Progress | None) -> Iterator[Recording]:
    values = layout.values()
    for number, case in enumerate(layout.cases, start=1):
        yield ask_at_once(layout.study, case, values)
        if progress:
            progress(number, len(layout.cases))


def _shapes(layout: Plan, made: tuple[Recording, ...]) -> list[_Shape]:
    shapes: dict[tuple, _Shape] = {}
    for number, (case, recording) in enumerate(zip(layout.cases, made, strict=True)):
        state = state_at(layout.study, case, layout.values()[0])
        shape = shapes.setdefault(recording.signature(), _Shape(recording, state, [], [], []))
        shape.cases.append(number)
        shape.values.append(recording.leaves)
        shape.words.append(recording.words)
    return list(shapes.values())


def _table(shape: _Shape, layout: Plan, solve: Solver) -> dict[str, Any]:
    values = np.array(shape.values)  # (cases, states, leaves)
    low, high = values.min(axis=(0, 1)), values.max(axis=(0, 1))
    allowed = tolerances(shape.first, low, high)
    moving = high - low > allowed * 0.01
    exact = np.array(shape.first.exact)
    columns, motions = np.flatnonzero(moving & exact), np.flatnonzero(moving & ~exact)
    columns, echoes = _own_columns(columns, values.reshape(-1, values.shape[2]), allowed)
    common = _common_motions(values[:, :, motions], allowed[motions])
    updates = _updates(shape, moving)
    needed = _leaves_needed([updates["updates"], [["n", slot] for _, *slots in shape.first.steps for slot in slots]])
    still = {leaf: _short(values[0, 0, leaf], exact[leaf]) for leaf in sorted(needed) if not moving[leaf]}
    table = {
        "exact": _columns(values[:, :, columns], allowed[columns] / 2, solve),
        "common": _columns(common.amounts, np.full(len(common.units), 0.5), solve),
        "leaves": values.shape[2],
        "still": [list(still), list(still.values())],
        "columns": columns.tolist(),
        "echoes": echoes,
        "motions": motions.tolist(),
        "mean": [round(float(number), 2) for number in common.mean],
        "modes": common.modes,
        "units": [float(f"{PIXEL_TOLERANCE * unit:.8g}") for unit in common.units],
        "steps": [list(step) for step in shape.first.steps],
        **updates,
    }
    answer = layout.study.ask(shape.state)
    table["svg"], table["readings"] = svg_body(answer.picture, clip="CLIP"), readings_html(answer)
    return table


def _own_columns(columns: np.ndarray, rows: np.ndarray, allowed: np.ndarray) -> tuple[np.ndarray, list[list[float]]]:
    """Columns that need a table of their own, and the echoes: [leaf, leaf it follows, scale, shift].

    The same number is often said in several places, drawn, and judged; all but one of these follow from that one. The
    one with the finest tolerance for its size carries the table.
    """
    size = np.ptp(rows[:, columns], axis=0)
    own: list[int] = []
    echoes: list[list[float]] = []
    for leaf in columns[np.argsort(allowed[columns] / size)]:
        for source in own:
            followed = rows[:, source]
            top, bottom = int(np.argmax(followed)), int(np.argmin(followed))
            scale = (rows[top, leaf] - rows[bottom, leaf]) / (followed[top] - followed[bottom])
            shift = rows[top, leaf] - scale * followed[top]
            if np.abs(scale * followed + shift - rows[:, leaf]).max() < 0.02 * allowed[leaf]:
                echoes.append([int(leaf), source, float(scale), float(shift)])
                break
        else:
            own.append(int(leaf))
    return np.array(sorted(own), dtype=int), echoes


def _short(number: float, exact: bool) -> float:
    return float(number) if exact else round(float(number), 2)


def _columns(values: np.ndarray, quantum: np.ndarray, solve: Solver) -> dict[str, Any]:
    """Coefficients of each column as whole quanta, per case: [gap, number, gap, number ...] over the non-zero ones."""
    rows = [[_sparse(column) for column in np.rint(solve(case) / quantum).T] for case in values]
    return {"quantum": quantum.tolist(), "cases": rows}


def _sparse(column: np.ndarray) -> list[int]:
    kept = np.flatnonzero(column)
    return np.column_stack([np.diff(kept, prepend=-1), column[kept]]).astype(np.int64).ravel().tolist()


@dataclass
class _Motions:
    """A mean picture, a few motions of it in whole numbers of a unit each, and how much of each every state holds."""

    mean: np.ndarray
    modes: list[list[int]]
    units: np.ndarray
    amounts: np.ndarray


def _common_motions(values: np.ndarray, allowed: np.ndarray) -> _Motions:
    cases, states, count = values.shape
    if not count:
        return _Motions(np.zeros(0), [], np.zeros(0), np.zeros((cases, states, 0)))
    flat = values.reshape(-1, count)
    mean = np.round(flat.mean(axis=0), 2)
    scaled = (flat - mean) / allowed
    directions = _main_directions(scaled)
    # A motion is rounded as coarsely as its largest amount allows: small motions need few digits. The amounts are
    # fitted to the rounded motions, so that rounding costs little.
    units = _MODE_ERROR / np.abs(scaled @ directions.T).max(axis=0)
    whole = np.rint(directions / units[:, None])
    told = whole.any(axis=1)
    rounded = whole[told] * units[told, None]
    amounts = scaled @ np.linalg.solve(rounded @ rounded.T, rounded).T
    return _Motions(mean, whole[told].astype(int).tolist(), units[told], amounts.reshape(cases, states, -1))


def _main_directions(rows: np.ndarray) -> np.ndarray:
    """As few directions as hold nearly all of the rows, shape (directions, coordinates)."""
    spanned = _spanned(rows)
    within = rows @ spanned.T
    directions = np.linalg.eigh(within.T @ within)[1].T[::-1] @ spanned
    most = _directions_needed(rows[:: max(1, len(rows) // _SOME_ROWS)], directions)
    while most < len(directions) and _left_over(rows, directions[:most]).max() >= _LEFT_OVER:
        most += 1 + most // 10
    return directions[:most]


def _spanned(rows: np.ndarray) -> np.ndarray:
    """Directions that hold all rows, found by taking again and again the row that is held worst."""
    rest = rows[:: max(1, len(rows) // _SOME_ROWS)].copy()
    found = np.empty((0, rows.shape[1]))
    while len(found) < rows.shape[1]:
        away = np.abs(rest).max(axis=1)
        worst = int(np.argmax(away))
        if away[worst] < 0.5 * _LEFT_OVER:
            rest = rows - (rows @ found.T) @ found
            away = np.abs(rest).max(axis=1)
            if away.max() < 0.5 * _LEFT_OVER:
                break
            rest = rest[np.argsort(away)[::-1][:_SOME_ROWS]]
            continue
        taken = rest[worst] - (rest[worst] @ found.T) @ found
        found = np.concatenate([found, taken[None] / np.linalg.norm(taken)])
        rest -= np.outer(rest @ found[-1], found[-1])
    return found


def _directions_needed(rows: np.ndarray, directions: np.ndarray) -> int:
    """How many of the directions are enough for these rows, by halving."""
    fewest, most = 1, len(directions)
    while fewest < most:
        middle = (fewest + most) // 2
        if _left_over(rows, directions[:middle]).max() < _LEFT_OVER:
            most = middle
        else:
            fewest = middle + 1
    return most


def _left_over(rows: np.ndarray, kept: np.ndarray) -> np.ndarray:
    """The most that the kept directions leave out of each row, in tolerances."""
    return np.abs(rows - (rows @ kept.T) @ kept).max(axis=1)


def _leaves_needed(part: Any) -> set[int]:
    """The leaves that any update or step reads; what only stands still in the drawing is not among them."""
    if not isinstance(part, list):
        return set()
    if len(part) >= 4 and part[0] == PATH and isinstance(part[3], list):
        slots = part[3]
        run = range(slots[0], slots[0] - slots[1]) if len(slots) == 2 else slots
        return {slot for slot in run if slot >= 0}
    if len(part) == 4 and part[0] == ATTRIBUTE and isinstance(part[2], str):
        return {part[3]} if part[3] >= 0 else set()
    own = {part[1]} if part and part[0] in ("n", "k") and part[1] >= 0 else set()
    return own.union(*(_leaves_needed(inner) for inner in part))


def _updates(shape: _Shape, moving: np.ndarray) -> dict[str, Any]:
    """The updates that can ever change, with words that never differ written in place."""
    words = np.array(shape.words, dtype=object)
    same = [len(set(column)) == 1 for column in words.T]
    differing = [place for place, is_same in enumerate(same) if not is_same]
    rank = {place: number for number, place in enumerate(differing)}

    def resolve(part: Any) -> Any:
        if isinstance(part, list) and part and part[0] == "w":
            return shape.first.words[part[1]] if same[part[1]] else ["w", rank[part[1]]]
        return [resolve(inner) for inner in part] if isinstance(part, list) else part

    # The last update tells the picture in words, which the page joins to the readings; it is always needed.
    *shown, told = shape.first.updates
    kept = [resolve(update) for update in shown if _can_change(update, moving, same)] + [resolve(told)]
    return {"updates": kept, "words": [[row[place] for place in differing] for row in shape.words]}


def _can_change(update: list[Any], moving: np.ndarray, same: list[bool]) -> bool:
    if update[0] == 0:
        slots = update[3]
        if len(slots) == 2:  # an unbroken run: first leaf, minus the count
            return bool(moving[slots[0] : slots[0] - slots[1]].any())
        return any(slot < 0 or moving[slot] for slot in slots)
    if update[0] == 1:
        return update[3] < 0 or bool(moving[update[3]])
    return any(_says_something_new(part, moving, same) for part in update[2:])


def _says_something_new(part: Any, moving: np.ndarray, same: list[bool]) -> bool:
    if not isinstance(part, list):
        return False
    if part[0] == "w":
        return not same[part[1]]
    if part[0] in ("n", "k") and (part[1] < 0 or moving[part[1]]):
        return True
    if part[0] == "n":  # a fixed number is written anew when the reader changes the units
        return len(FORMATS[part[2]].parts) > 1
    inner = part[2] if part[0] == "k" else part[1:]
    return any(_says_something_new(piece, moving, same) for piece in inner)
