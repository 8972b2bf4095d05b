"""Strain that held wood gathers in tension, by stepping through the years: the reference for ``restraint.gathered``."""

from __future__ import annotations

import numpy as np


def gathered_by_steps(path_percent, rate: float, steps: int = 4000) -> tuple[float, float]:
    """Most points of drying gathered while pulled along a path of moisture, and the most stress, per unit of E R C.

    ds = -dw - m s |dw|, one small step at a time; what is gathered starts anew whenever the stress has been a push.
    """
    stress = gathered = 0.0
    most, peak = 0.0, 0.0
    for start, end in zip(path_percent, path_percent[1:], strict=False):
        for change in np.full(steps, (end - start) / steps):
            stress += -change - rate * stress * abs(change)
            gathered = gathered - change if stress > 0.0 else 0.0
            most, peak = max(most, gathered), max(peak, stress)
    return most, peak
