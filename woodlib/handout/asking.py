"""Ask a study at every state of a plan, on all processors where the system can divide a running program in two.

Where it cannot (Windows, macOS), the states are asked one after the other; the answers are the same.
"""

from __future__ import annotations

import gc
import multiprocessing
import os
import sys
import warnings
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import numpy as np

from .record import Recording
from .sampling import Plan, ask, same_structure

Progress = Callable[[int, int], None]
_PIECE = 100  # states a processor asks before it reports
_WORTH_DIVIDING = 1500

# A divided program inherits the plan through this name, since a study made in a notebook cannot be sent to another.
_inherited: Plan | None = None


@contextmanager
def without_collection() -> Iterator[None]:
    """Let Python look for no rings of dead objects meanwhile: answers hold none, and looking costs more than asking."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


def ask_everything(layout: Plan, progress: Progress | None = None) -> list[tuple[Recording, np.ndarray]]:
    """For every case: its first recording, and the leaves at all states, shape (states, leaves)."""
    jobs = [
        (case, start, min(start + _PIECE, len(layout.orders)))
        for case in range(len(layout.cases))
        for start in range(0, len(layout.orders), _PIECE)
    ]
    rows: list[list[np.ndarray]] = [[] for _ in layout.cases]
    firsts: list[Recording | None] = [None] * len(layout.cases)
    done = 0
    for (case, start, stop), (recording, leaves) in zip(jobs, _answers(layout, jobs), strict=True):
        firsts[case] = firsts[case] or recording
        same_structure(layout.study, firsts[case], recording, _state(layout, case, start))
        rows[case].append(leaves)
        done += stop - start
        if progress:
            progress(done, layout.size)
    return [(first, np.concatenate(pieces)) for first, pieces in zip(firsts, rows, strict=True)]


def _answers(layout: Plan, jobs: list[tuple[int, int, int]]) -> Iterator[tuple[Recording, np.ndarray]]:
    global _inherited
    processors = os.cpu_count() or 1
    if layout.size < _WORTH_DIVIDING or processors < 2 or not sys.platform.startswith("linux"):
        _inherited = layout
        yield from map(_ask_piece, jobs)
        return
    _inherited = layout
    with warnings.catch_warnings():
        # Newer Pythons warn that dividing a program with threads can hang it; the pieces use no thread of their own.
        warnings.simplefilter("ignore", DeprecationWarning)
        pool = multiprocessing.get_context("fork").Pool(min(processors, 4))
    with pool:
        yield from pool.imap(_ask_piece, jobs)


def _state(layout: Plan, case: int, number: int) -> dict:
    return {**layout.cases[case], **layout.states()[number]}


def _ask_piece(job: tuple[int, int, int]) -> tuple[Recording, np.ndarray]:
    layout = _inherited
    case, start, stop = job
    options, spans = layout.cases[case], layout.states()[start:stop]
    first, rows = None, []
    for values in spans:
        state = {**options, **values}
        recording = ask(layout.study, state)
        first = first or recording
        # The dear comparison of everything is made once a piece; what changes first is looked at every time.
        if (
            recording.words != first.words
            or len(recording.leaves) != len(first.leaves)
            or recording.steps != first.steps
        ):
            same_structure(layout.study, first, recording, state)
        rows.append(recording.leaves)
    same_structure(layout.study, first, recording, state)
    return first, np.array(rows)
