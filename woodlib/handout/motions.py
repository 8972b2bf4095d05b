"""Coordinates of a picture share a few common motions, since most of a picture moves together: a low-rank table."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

_SOME_ROWS = 300  # states from which the common motions are found; all are held against them
_LEFT_OVER = 0.5  # of a tolerance, what the common motions may leave out of a coordinate
_MODE_ERROR = 0.25  # of a tolerance, twice the most that rounding a motion may add


@dataclass(frozen=True)
class Motions:
    """A mean picture, a few motions of it in whole numbers of a unit each, and how much of each every state holds."""

    mean: np.ndarray
    modes: list[list[int]]
    units: np.ndarray
    amounts: np.ndarray


def common_motions(values: np.ndarray, allowed: np.ndarray) -> Motions:
    """The common motions of coordinates, shape (cases, states, coordinates), to their tolerances."""
    cases, states, count = values.shape
    if not count:
        return Motions(np.zeros(0), [], np.zeros(0), np.zeros((cases, states, 0)))
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
    return Motions(mean, whole[told].astype(int).tolist(), units[told], amounts.reshape(cases, states, -1))


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
