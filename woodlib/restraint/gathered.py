"""What a year leaves in held wood, in closed form by the law of :mod:`relaxation`: strain gathered while pulled, and stress.

On a drying by D points after a turn at which the wood was pushed together by ``turned`` points of growth, the push has to
be taken back first: ln(2 - exp(-m turned))/m points. Only what follows is gathered in tension. In a settled year
of swing D it is D - ln(1 + tanh(m D/2))/m, and the stress is that of a strain D tanh(m D/2)/(m D (1 + phi)).
All arguments broadcast, and may slide.
"""

from __future__ import annotations

import numpy as np

from ..words.decided import Sliding, larger

_LEAST_PERCENT = 1e-6  # a house that never changes; there is nothing to divide by


def settled_share(swing_percent: Sliding, rate: float) -> Sliding:
    """Share of a settled year's swing that is gathered in tension, from 1/2 for none to 1.

    >>> round(float(settled_share(4.7, 0.4743)), 3)
    0.735
    """
    worn = rate * larger(swing_percent, _LEAST_PERCENT)
    return 1.0 - np.log1p(np.tanh(0.5 * worn)) / worn


def settled_stress_share(swing_percent: Sliding, rate: float, delayed_share: float) -> Sliding:
    """Share of a settled year's swing that still pulls at its end, as elastic strain.

    >>> round(float(settled_stress_share(5.0, 0.47, 0.4)) * 5.0 * 2.07, 3)
    2.598
    """
    worn = rate * larger(swing_percent, _LEAST_PERCENT)
    return np.tanh(0.5 * worn) / (worn * (1.0 + delayed_share))


def first_share(change_percent: Sliding, turned_percent: Sliding, rate: float) -> Sliding:
    """Share of the first change by ``change_percent`` that is gathered, after ``turned_percent`` the other way; may be negative.

    >>> round(float(first_share(5.0, 0.0, 0.47)), 3), round(float(first_share(5.0, 5.0, 0.47)), 3)
    (1.0, 0.726)
    """
    worn = rate * larger(change_percent, _LEAST_PERCENT)
    return 1.0 - np.log(2.0 - np.exp(-rate * turned_percent)) / worn


def first_stress_share(change_percent: Sliding, turned_percent: Sliding, rate: float, delayed_share: float) -> Sliding:
    """Share of the first change that still pulls at its end, as elastic strain; negative where it only lets go.

    >>> round(float(first_stress_share(5.0, 0.0, 0.47, 0.4)), 3)  # as relaxation_factor
    0.275
    """
    worn = rate * larger(change_percent, _LEAST_PERCENT)
    return (1.0 - np.exp(-worn) * (2.0 - np.exp(-rate * turned_percent))) / (worn * (1.0 + delayed_share))
