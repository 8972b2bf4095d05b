"""Moisture through the thickness of a board, step by step: implicit, conservative finite volumes.

dM/dt = d/dx(D(M, T) dM/dx) between two faces where the flux is S (EMC - M_surface). Cells of equal width; the
flux through a cell wall uses the mean of its neighbours' coefficients; half a cell, the finish and the air film act
in series at each face. In time the second backward difference with variable steps: linear in each step, because D
is taken at moistures extrapolated from the last two. With equal steps that is stable for every step size and every
positive D (G-stability: the matrix is symmetric and positive definite); steps may grow by up to 1.8 times.
Second order in space and time; where a step is longer than the board's own time, the mean may run past the air by a
few thousandths of the change before it settles. Source of the method: Hairer and Wanner, Solving Ordinary
Differential Equations II, ch. V; step-ratio limit 1.868 of Becker 1998 (both from memory; the tests measure order
and stability).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

import numpy as np

from .history import History, step_weights
from .lookup import BINS, BINS_PER_PERCENT, Lookup

GREATEST_STEP_RATIO = 1.8
_FEW = 128  # boards below which one long banded solve beats sweeping over cells
_AT_ONCE = 1200  # boards per pass, so that the working arrays stay in the cache


def march(
    time_s: np.ndarray,
    emc_percent: np.ndarray,
    temperature_c: np.ndarray,
    start_percent: np.ndarray,
    thickness_m: np.ndarray,
    lookup: Lookup,
    kind: np.ndarray,
    surface_m_s: np.ndarray,
    cells: int = 60,
    profiles_at: Sequence[int] | None = None,
) -> History:
    """Moisture of many boards at once over the given times; arrays are taken as good (see ``following.follow``).

    Parameters
    ----------
    time_s : (n,) s, rising; a step may be at most 1.8 times the one before
    emc_percent : (n,), (n, boards) or (n, boards, 2): moisture each face would come to, at the end of each step
    temperature_c : (n,) degC, shared by all boards
    start_percent : (boards,) or (boards, cells)
    thickness_m : (boards,)
    lookup, kind : coefficients, and which kind each board is, (boards,) of integers
    surface_m_s : (boards, 2) emission and finish in series; infinity for no resistance
    profiles_at : step numbers whose profiles are kept; first and last when left out

    Returns
    -------
    History
    """
    boards = len(thickness_m)
    emc = _per_face(np.asarray(emc_percent, float))
    parts = [
        _March(
            time_s,
            emc if emc.shape[1] == 1 else emc[:, part],
            temperature_c,
            start_percent[part],
            thickness_m[part],
            lookup,
            kind[part],
            surface_m_s[part],
            cells,
            profiles_at,
        ).run()
        for part in _parts(boards)
    ]
    return parts[0] if len(parts) == 1 else _joined(parts)


def _parts(boards: int) -> list[slice]:
    count = -(-boards // _AT_ONCE)
    edges = np.linspace(0, boards, count + 1).astype(int)
    return [slice(a, b) for a, b in zip(edges[:-1], edges[1:], strict=True)]


def _per_face(emc: np.ndarray) -> np.ndarray:
    return emc[:, np.newaxis, np.newaxis] if emc.ndim == 1 else emc[:, :, np.newaxis] if emc.ndim == 2 else emc


def _joined(parts: list[History]) -> History:
    def all_of(name: str, axis: int) -> np.ndarray:
        return np.concatenate([getattr(part, name) for part in parts], axis=axis)

    shared_air = parts[0].emc_percent.shape[1] == 1
    return replace(
        parts[0],
        mean_percent=all_of("mean_percent", 1),
        tilt_percent=all_of("tilt_percent", 1),
        flux=all_of("flux", 1),
        thickness_m=all_of("thickness_m", 0),
        surface_m_s=all_of("surface_m_s", 0),
        emc_percent=parts[0].emc_percent if shared_air else all_of("emc_percent", 1),
        profile_percent=all_of("profile_percent", 1),
    )


class _Buffer:
    """One working array (boards, cells) with the views of it that every step needs."""

    def __init__(self, shape: tuple[int, int], order: Literal["C", "F"]) -> None:
        self.all = np.zeros(shape, order=order)
        self.left, self.others = self.all[:, :-1], self.all[:, 1:]
        self.ends = self.all[:, :: shape[1] - 1]
        self.flat = self.all.reshape(-1, order="A")
        self.by_cell = list(self.all.T)


def _place(mc_percent: np.ndarray) -> np.ndarray:
    """Moisture as its place in the table of coefficients."""
    return 1.0 + BINS_PER_PERCENT * np.asarray(mc_percent, float)


class _March:
    """One pass: the arrays are made once and reused, as most of a small step is the cost of making arrays.

    Inside, moisture is carried as the table's place x = 1 + 4 M: the equation is the same for x, and the place in
    the table needs no further arithmetic.
    """

    def __init__(
        self,
        time_s: np.ndarray,
        emc: np.ndarray,
        temperature_c: np.ndarray,
        start_percent: np.ndarray,
        thickness_m: np.ndarray,
        lookup: Lookup,
        kind: np.ndarray,
        surface_m_s: np.ndarray,
        cells: int,
        profiles_at: Sequence[int] | None,
    ) -> None:
        boards = len(thickness_m)
        shape = boards, cells
        order: Literal["C", "F"] = "C" if boards <= _FEW else "F"
        self.time_s, self.emc, self.temperature_c, self.lookup = time_s, emc, temperature_c, lookup
        self.thickness_m, self.surface_m_s = thickness_m, surface_m_s
        self.cell_m = (thickness_m / cells)[:, np.newaxis]
        self.row = None if lookup.kinds == 1 else (np.asarray(kind) * BINS)[:, np.newaxis]
        self.solve = self._solve_in_one if order == "C" else self._sweep
        self.place, self.conduct, self.diagonal, self.beside = (_Buffer(shape, order) for _ in range(4))
        self.now, self.before, self.right = (_Buffer(shape, order) for _ in range(3))
        self.now.all[:] = self.before.all[:] = _place(np.reshape(start_percent, (boards, -1)))
        self.bin = np.zeros(shape, dtype=np.intp, order=order)
        self.spare = np.empty(boards)
        self.profiles_at = sorted(set(profiles_at if profiles_at is not None else (0, len(time_s) - 1)))
        self.moments = _moments(cells)

    def run(self) -> History:
        """March through all the steps and gather the history."""
        steps, emc = np.diff(self.time_s), _place(self.emc)
        summary = np.empty((len(steps) + 1, len(self.thickness_m), 2))
        flux = np.zeros_like(summary)
        wanted, profiles, step_before = set(self.profiles_at), [], 0.0
        np.matmul(self.now.all, self.moments, out=summary[0])
        if 0 in wanted:
            profiles.append(self.now.all.copy())
        for n, (first, second, ratio) in enumerate(step_weights(steps), start=1):
            if steps[n - 1] != step_before:
                step_before = steps[n - 1]
                self._rescale(step_before)
            self._extrapolate(first, second, ratio)
            self._look_up(self.lookup.at(self.temperature_c[n]))
            inward = self._assemble(first, emc[n])
            self.solve()
            self.before, self.now, self.right = self.now, self.right, self.before
            np.subtract(emc[n], self.now.ends, out=flux[n])
            np.multiply(flux[n], inward, out=flux[n])
            np.matmul(self.now.all, self.moments, out=summary[n])
            if n in wanted:
                profiles.append(self.now.all.copy())
        flux[1:] *= self.cell_m[np.newaxis] / steps[:, np.newaxis, np.newaxis] / BINS_PER_PERCENT
        mean, tilt = (summary[..., 0] - 1.0) / BINS_PER_PERCENT, summary[..., 1] / BINS_PER_PERCENT
        return History(
            self.time_s,
            mean,
            tilt,
            flux,
            self.emc,
            self.thickness_m,
            self.surface_m_s,
            self.time_s[self.profiles_at],
            (np.array(profiles) - 1.0) / BINS_PER_PERCENT,
        )

    def _rescale(self, step_s: float) -> None:
        """Factors that depend on the step alone."""
        self.minus_half_fourier = -step_s / (2.0 * self.cell_m**2)
        self.face_resistance = self.cell_m / (step_s * self.surface_m_s)

    def _extrapolate(self, first: float, second: float, ratio: float) -> None:
        """Moistures for the coefficients, x + r (x - x_before); right-hand side a0 x + a2 (x - x_before)."""
        place, right, now = self.place.all, self.right.all, self.now.all
        np.subtract(now, self.before.all, out=right)
        np.multiply(right, ratio, out=place)
        np.add(place, now, out=place)
        np.multiply(right, second, out=right)
        np.multiply(now, first, out=self.diagonal.all)
        np.add(right, self.diagonal.all, out=right)

    def _look_up(self, lines: np.ndarray) -> None:
        """Minus half the Fourier number of each cell, -D step/(2 cell^2), into ``conduct``."""
        place, conduct, spare = self.place.all, self.conduct.all, self.diagonal.all
        if self.row is None:
            np.copyto(self.bin, place, casting="unsafe")
        else:
            np.clip(place, 0.0, BINS - 1.0, out=place)
            np.add(place, self.row, out=self.bin, casting="unsafe")
        bins = self.bin.reshape(-1, order="A")
        lines[1].take(bins, out=self.conduct.flat, mode="clip")
        np.multiply(conduct, place, out=conduct)
        lines[0].take(bins, out=self.diagonal.flat, mode="clip")
        np.add(conduct, spare, out=conduct)
        np.multiply(conduct, self.minus_half_fourier, out=conduct)

    def _assemble(self, first: float, emc: np.ndarray) -> np.ndarray:
        """Matrix and right-hand side; returns the conductance between air and the outer cells, per step."""
        beside, diagonal = self.beside, self.diagonal
        np.add(self.conduct.left, self.conduct.others, out=beside.left)
        diagonal.all.fill(first)
        np.subtract(diagonal.left, beside.left, out=diagonal.left)
        np.subtract(diagonal.others, beside.left, out=diagonal.others)
        inward = np.divide(-0.25, self.conduct.ends)
        inward += self.face_resistance
        np.divide(1.0, inward, out=inward)
        np.add(diagonal.ends, inward, out=diagonal.ends)
        np.add(self.right.ends, inward * emc, out=self.right.ends)
        return inward

    def _solve_in_one(self) -> None:
        """All boards as one long system: a zero beside the last cell of each keeps them apart."""
        from scipy.linalg.lapack import dptsv  # late: loading SciPy's linear algebra takes a quarter of a second

        dptsv(self.diagonal.flat, self.beside.flat[:-1], self.right.flat, 1, 1, 1)

    def _sweep(self) -> None:
        """Elimination and back substitution over the cells, all boards of the pass side by side."""
        diagonal, right = self.diagonal.by_cell, self.right.by_cell
        beside, ratio, spare = self.beside.by_cell, self.place.by_cell, self.spare
        for i in range(1, len(right)):
            np.divide(beside[i - 1], diagonal[i - 1], out=ratio[i])
            np.multiply(ratio[i], beside[i - 1], out=spare)
            np.subtract(diagonal[i], spare, out=diagonal[i])
            np.multiply(ratio[i], right[i - 1], out=spare)
            np.subtract(right[i], spare, out=right[i])
        np.divide(self.right.all, self.diagonal.all, out=self.right.all)
        for i in range(len(right) - 2, -1, -1):
            np.multiply(ratio[i + 1], right[i + 1], out=spare)
            np.subtract(right[i], spare, out=right[i])


def _moments(cells: int) -> np.ndarray:
    """Weights that turn a profile into its mean and its tilt, (cells, 2).

    The tilt is 12 times the integral of M (x - 1/2) over 0 to 1: the moment that bends the board; cell averages of
    a straight profile need the divisor 1 - 1/cells^2 to give back its full difference.
    """
    middle = (np.arange(cells) + 0.5) / cells - 0.5
    tilt = 12.0 * middle / cells / (1.0 - 1.0 / cells**2)
    return np.column_stack([np.full(cells, 1.0 / cells), tilt])
