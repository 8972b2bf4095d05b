"""Diffusion coefficients tabulated over moisture and temperature, so that the solver reads them in a few steps.

The table is linear between moistures 0.25 % apart and temperatures 0.5 K apart; both leave an error below 3e-4 of
the coefficient, four orders of magnitude under the doubt about its value. Outside 0 to 30 % the end value is kept,
which keeps the coefficient positive whatever the solver tries.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import numpy as np

from .diffusivity import FORMS, SATURATED_PERCENT, Form

BINS_PER_PERCENT = 4
TEMPERATURE_STEP_C = 0.5
BINS = int(SATURATED_PERCENT * BINS_PER_PERCENT) + 2  # one guard bin at each end


class Lookup:
    """Coefficients of one or more kinds of board over a span of temperatures.

    ``at(temperature_c)`` gives ``level`` and ``slope`` per bin, each (kinds * bins,), so that in bin ``i`` the
    coefficient is ``level[i] + slope[i] * x`` with ``x = 1 + 4 M``.

    >>> lookup = Lookup([("siau", 0.60, 1.0)], low_c=20.0, high_c=20.0)
    >>> level, slope = lookup.at(20.0)
    >>> round(float(level[41] + slope[41] * 41.0) * 1e11, 2)  # at 10 %
    2.59
    """

    def __init__(self, kinds: Sequence[tuple[str | Form, float, float]], low_c: float, high_c: float) -> None:
        first = np.floor(low_c / TEMPERATURE_STEP_C)
        count = 1 if low_c == high_c else int(np.ceil(high_c / TEMPERATURE_STEP_C) - first) + 1
        self.first_c = low_c if count == 1 else first * TEMPERATURE_STEP_C
        self.kinds = len(kinds)
        grids = [scale * _grid(form, float(gravity), float(self.first_c), count) for form, gravity, scale in kinds]
        self._lines = np.stack([_lines(grid) for grid in grids], axis=2).reshape(count, 2, -1)
        self._steps = np.diff(self._lines, axis=0)

    def at(self, temperature_c: float) -> np.ndarray:
        """Level and slope of every bin at one temperature inside the span, shape (2, kinds * bins)."""
        if len(self._steps) == 0:
            return self._lines[0]
        place = (temperature_c - self.first_c) / TEMPERATURE_STEP_C
        row = min(max(int(place), 0), len(self._steps) - 1)
        return self._lines[row] + (place - row) * self._steps[row]


@lru_cache(maxsize=256)
def _grid(form: str | Form, specific_gravity: float, first_c: float, count: int) -> np.ndarray:
    """Coefficients (temperatures, moistures) of one form."""
    function = (FORMS[form] if isinstance(form, str) else form).function
    kernel = getattr(function, "kernel", function)
    temperature_c = first_c + TEMPERATURE_STEP_C * np.arange(count)
    mc_percent = np.arange(BINS - 1) / BINS_PER_PERCENT
    return kernel(mc_percent[np.newaxis, :], temperature_c[:, np.newaxis], specific_gravity)


def _lines(grid: np.ndarray) -> np.ndarray:
    """Straight lines between the grid's moistures, flat in the guard bins; (temperatures, 2, bins)."""
    corner = np.arange(1, BINS)  # x at the left end of each bin that is not a guard
    slope = np.zeros((len(grid), BINS))
    slope[:, 1:-1] = np.diff(grid, axis=1)
    level = np.concatenate([grid[:, :1], grid], axis=1)
    level[:, 1:] -= slope[:, 1:] * corner
    return np.stack([level, slope], axis=1)
