"""The sorption equation as bare kernels: what moisture content a state of air asks of wood.

It sits with the air because a year of air is judged by it; the checked functions, the inverse and the bands are in
:mod:`woodlib.moisture.equilibrium`.

Two-hydrate Hailwood-Horrobin form with the coefficients in degC, Wood Handbook FPL-GTR-190 (2010) eq. 4-5 (form seen
in the handbook, coefficients in public sources quoting it, confirmed here against the cells of its Table 4-2).
The square term of K is -2.73e-6; printings with -2.73e-7 are wrong and miss the table by up to 0.6 % MC.
"""

from __future__ import annotations

from typing import Any

import numpy as np

TABLE_TEMPERATURE_C = (-1.2, 93.4)  # 30 to 200 degF, the rows of Table 4-2 that were checked, with their rounding
TABLE_RH_PERCENT = (5.0, 95.0)


def _constants(temperature_c: Any) -> tuple[Any, Any, Any, Any]:
    t = temperature_c
    return (
        349.0 + 1.29 * t + 0.0135 * t**2,
        0.805 + 0.000736 * t - 0.00000273 * t**2,
        6.27 - 0.00938 * t - 0.000303 * t**2,
        1.91 + 0.0407 * t - 0.000293 * t**2,
    )


def sorption_percent(temperature_c: Any, rh_percent: Any) -> Any:
    """Equilibrium moisture content (%) from temperature (degC) and relative humidity (%); no checks."""
    w, k, k1, k2 = _constants(temperature_c)
    x = k * rh_percent / 100.0
    one, two = k1 * x, k1 * k2 * x**2
    return 1800.0 / w * (x / (1.0 - x) + (one + 2.0 * two) / (1.0 + one + two))


def sorption_slope(temperature_c: Any, rh_percent: Any) -> Any:
    """Slope of the isotherm: % moisture content per % relative humidity, exact derivative; no checks."""
    w, k, k1, k2 = _constants(temperature_c)
    x = k * rh_percent / 100.0
    one, two = k1 * x, k1 * k2 * x**2
    one_slope, two_slope = k1, 2.0 * k1 * k2 * x
    hydrates = ((one_slope + 2.0 * two_slope) * (1.0 + one + two) - (one + 2.0 * two) * (one_slope + two_slope)) / (
        1.0 + one + two
    ) ** 2
    return 18.0 / w * k * (1.0 / (1.0 - x) ** 2 + hydrates)


def outside_table(temperature_c: Any, rh_percent: Any) -> tuple[str, ...]:
    """Sentences for the part of the air that lies outside the handbook table; empty when all is inside.

    >>> outside_table(20.0, 50.0)
    ()
    >>> outside_table([-12.0, 3.0], 50.0)
    ('1 of 2 moisture contents are extrapolated below -1.1 degC, where the handbook table begins.',)
    """
    temperature, humidity = np.broadcast_arrays(temperature_c, rh_percent)
    cases = (
        (temperature < TABLE_TEMPERATURE_C[0], "below -1.1 degC, where the handbook table begins"),
        (temperature > TABLE_TEMPERATURE_C[1], "above 93 degC, where the checked table ends"),
        (humidity > TABLE_RH_PERCENT[1], "above 95 % relative humidity, where the handbook table ends"),
    )
    return tuple(
        f"{int(case.sum())} of {case.size} moisture contents are extrapolated {words}."
        for case, words in cases
        if case.any()
    )
