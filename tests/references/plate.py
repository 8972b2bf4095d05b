"""Closed solutions for a board whose diffusion coefficient is constant: a step of air, and a steady swing.

They fit finishes to their published figures and check the step-by-step solver. Source of the series: Crank, The
Mathematics of Diffusion, ch. 4 (plane sheet, surface evaporation), from memory; the tests compare with tabulated roots
and times.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from woodlib.door import Limits, door
from woodlib.moisture.plate import POSITIVE, swing_response

AT_LEAST_ZERO = Limits(0.0, np.inf, "", "write zero or a number above it", "dimensionless")

_TERMS = 400
_SHORT = 0.01  # below this Fourier number (half thickness) the free-surface series needs too many terms


@door(half_thickness_m=POSITIVE, diffusivity_m2_s=POSITIVE, surface_m_s=POSITIVE, period_s=POSITIVE)
def swing_kept(half_thickness_m: Any, diffusivity_m2_s: Any, surface_m_s: Any, period_s: Any) -> Any:
    """Part of a steady swing of the air's EMC that the board's mean moisture follows, 0 to 1; broadcasts.

    >>> round(swing_kept(0.0095, 2.6e-11, 6e-9, 365 * 86400.0), 3)  # three coats of urethane varnish
    0.871
    """
    return np.abs(swing_response(half_thickness_m, diffusivity_m2_s, surface_m_s, period_s))


@door(half_thickness_m=POSITIVE, diffusivity_m2_s=POSITIVE, surface_m_s=POSITIVE, period_s=POSITIVE)
def swing_delay_s(half_thickness_m: Any, diffusivity_m2_s: Any, surface_m_s: Any, period_s: Any) -> Any:
    """How long the board's mean moisture runs behind a steady swing of the air, s; broadcasts.

    >>> round(swing_delay_s(0.0095, 2.6e-11, 6e-9, 365 * 86400.0) / 86400)
    29
    """
    return -np.angle(swing_response(half_thickness_m, diffusivity_m2_s, surface_m_s, period_s)) * period_s / (2 * np.pi)


def roots(biot: float, count: int = _TERMS) -> np.ndarray:
    """First roots of b tan b = Bi, (count,), for Bi above zero.

    >>> [round(float(root), 5) for root in roots(1.0, 2)]
    [0.86033, 3.42562]
    """
    low = np.arange(count) * np.pi
    high = low + np.pi / 2.0
    for _ in range(54):  # halving: one root lies in each bracket, and 54 halvings reach round-off
        middle = (low + high) / 2.0
        below = (middle * np.sin(middle) - biot * np.cos(middle)) * np.cos(low + 1e-9) < 0.0
        low, high = np.where(below, middle, low), np.where(below, high, middle)
    return (low + high) / 2.0


@door(fourier=AT_LEAST_ZERO)
def fraction_without_resistance(fourier: Any) -> Any:
    """Part of the final change of mean moisture after a step, both faces at once in the new air's equilibrium.

    fourier: D t / (half thickness)^2, any shape. Returns 0 to 1, same shape.

    >>> round(fraction_without_resistance(0.848085), 4)
    0.9
    """
    fourier = np.asarray(fourier, float)
    odd = (2.0 * np.arange(_TERMS) + 1.0).reshape(-1, *[1] * fourier.ndim)
    series = 1.0 - np.sum(8.0 / (np.pi * odd) ** 2 * np.exp(-((odd * np.pi / 2.0) ** 2) * fourier), axis=0)
    return np.where(fourier < _SHORT, 2.0 * np.sqrt(fourier / np.pi), series)


@door(fourier=AT_LEAST_ZERO)
def fraction_with_resistance(fourier: Any, biot: float) -> Any:
    """Part of the final change of mean moisture after a step, with the same resistance at both faces.

    fourier: D t / (half thickness)^2, any shape; biot: S (half thickness) / D. Returns 0 to 1, same shape. At time
    zero the 400 terms leave up to 1e-3 for very large biot, and nothing that matters from fourier = 1e-4 on.

    >>> round(fraction_with_resistance(0.91755, biot=1.0), 4)
    0.5
    """
    fourier = np.asarray(fourier, float)
    root = roots(biot).reshape(-1, *[1] * fourier.ndim)
    share = 2.0 * biot**2 / (root**2 * (root**2 + biot**2 + biot))
    return 1.0 - np.sum(share * np.exp(-(root**2) * fourier), axis=0)
