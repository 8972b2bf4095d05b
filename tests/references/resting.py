"""What end grain adds, as the product of two plates."""

from __future__ import annotations

from typing import Any

import numpy as np
from references.diffusivity import end_grain_m2_s
from references.plate import fraction_without_resistance

from woodlib.door import Limits, read_values
from woodlib.errors import Problems
from woodlib.moisture.rates import Likely
from woodlib.moisture.resting import DAYS, LENGTH, _need_stock
from woodlib.moisture.stock import Stock

_HALF_FELT = 0.9538725  # 2 erfinv(1/2): depth over sqrt(D t) at which half a change at the end is felt


def end_grain_reach_m(stock: Stock, days: Any, mc_percent: float = 8.0, temperature_c: float = 20.0) -> Likely:
    """How far in from an open end half of a change of air is felt after some days, m; an estimate.

    >>> [round(1000 * value) for value in end_grain_reach_m(Stock(0.019, 0.60), 30)]
    [17, 25, 48]

    0.954 sqrt(D t), the half-way depth of a change at the face of a deep body, with D along the grain 10 to 15 times
    the one across.
    """
    problems = Problems()
    _need_stock(stock, problems)
    days = read_values(days, DAYS, name="days", problems=problems)
    problems.raise_if_any()
    along = _along(stock, mc_percent, temperature_c)
    return Likely(*(float(_HALF_FELT * np.sqrt(value * days * 86400.0)) for value in along))


def fraction_with_ends(
    fraction: Any, stock: Stock, length_m: Any, days: Any, mc_percent: float = 8.0, temperature_c: float = 20.0
) -> Likely:
    """Part of a change done when both bare ends help, from the part done through the faces alone.

    What is left is the product of what is left each way (constant coefficient, Newman's rule, from memory); matters
    for short pieces. fraction: 0 to 1 through the faces; length_m: m.

    >>> tuple(round(value, 2) for value in fraction_with_ends(0.5, Stock(0.019, 0.60), 0.15, 14))
    (0.59, 0.63, 0.76)
    """
    problems = Problems()
    _need_stock(stock, problems)
    part = read_values(
        fraction, Limits(0.0, 1.0, "", "write a part from 0 to 1", "dimensionless"), name="fraction", problems=problems
    )
    length = read_values(length_m, LENGTH, name="length_m", problems=problems)
    days = read_values(days, DAYS, name="days", problems=problems)
    problems.raise_if_any()
    fourier = np.array(_along(stock, mc_percent, temperature_c)) * days * 86400.0 / (length / 2.0) ** 2
    return Likely(*(float(value) for value in 1.0 - (1.0 - part) * (1.0 - fraction_without_resistance(fourier))))


def _along(stock: Stock, mc_percent: float, temperature_c: float) -> tuple[float, float, float]:
    """Slowest, middle and fastest coefficient along the grain, m2/s."""
    across = stock.diffusivity_m2_s(mc_percent, temperature_c)
    slow, mid, fast = (end_grain_m2_s(value)[k] for k, value in enumerate(across))
    return slow, mid, fast
