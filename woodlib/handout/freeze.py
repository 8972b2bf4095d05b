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
from .motions import common_motions
from .program import program
from .record import Recording
from .sampling import PIXEL_TOLERANCE, Plan, plan

Solver = Callable[[np.ndarray], np.ndarray]


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
    # The page has the drawing of the shape that it starts with.
    start = layout.cases.index({entry.key: entry.start for entry in layout.switches})
    tables = [_table(shape, layout, solve, start not in shape.cases) for shape in shapes]
    order: list[Any] = [0] * len(layout.cases)
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


def _table(shape: _Shape, layout: Plan, solve: Solver, drawn: bool) -> dict[str, Any]:
    needed = program(shape.first, np.array(shape.values), shape.words)
    values, allowed, exact = needed.values, needed.allowed, needed.exact
    columns, motions = np.flatnonzero(needed.moving & exact), np.flatnonzero(needed.moving & ~exact)
    columns, echoes = _own_columns(columns, values.reshape(values.shape[0] * values.shape[1], values.shape[2]), allowed)
    common = common_motions(values[:, :, motions], allowed[motions])
    still = np.flatnonzero(~needed.moving)
    table = {
        "exact": _columns(values[:, :, columns], allowed[columns] / 2, solve),
        "common": _columns(common.amounts, np.full(len(common.units), 0.5), solve),
        "leaves": values.shape[2],
        "still": [still.tolist(), [_short(values[0, 0, leaf], exact[leaf]) for leaf in still]],
        "columns": columns.tolist(),
        "echoes": echoes,
        "motions": motions.tolist(),
        "mean": [round(float(number), 2) for number in common.mean],
        "modes": common.modes,
        "units": [float(f"{PIXEL_TOLERANCE * unit:.8g}") for unit in common.units],
        "steps": _in_columns(needed.steps),
        "updates": needed.updates,
        "words": needed.words,
        "svg": "",
        "readings": "",
    }
    if drawn:
        answer = layout.study.ask(shape.state)
        table |= {"svg": svg_body(answer.picture, clip="CLIP"), "readings": readings_html(answer)}
    return table


def _in_columns(steps: list[tuple[str, int, int]]) -> list[list[Any]]:
    """Steps as a page reads them: names, and per step its name and operands, steps among these counted back from it."""
    names = sorted({name for name, _, _ in steps})
    back = [[slot if slot >= 0 else -1 - slot - number for slot in step[1:]] for number, step in enumerate(steps)]
    return [names, [names.index(name) for name, _, _ in steps], [row[0] for row in back], [row[1] for row in back]]


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
