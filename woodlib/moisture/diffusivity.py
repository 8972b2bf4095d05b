"""How easily moisture moves through wood: published forms of the diffusion coefficient, side by side.

All share one call shape, ``form(mc_percent, temperature_c, specific_gravity)`` in m2/s across the grain, on the
moisture-content basis: flux (kg/(m2 s)) = -D * (dry mass per volume) * d(moisture fraction)/dx. They differ by
about a factor of three, so every answer built on them is given as a range.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..air.psychrometrics import saturation_pressure_pa
from ..door import Limits, door
from .equilibrium import emc_percent, emc_slope, humidity_for_moisture
from .rates import rate

GAS_CONSTANT = 8.314462618  # J/(mol K), exact since the 2019 SI
WATER_DENSITY = 1000.0  # kg/m3
SATURATED_PERCENT = 30.0  # working fibre saturation point, Wood Handbook ch. 4

MOISTURE = Limits(
    0.0, SATURATED_PERCENT, "%", "write moisture content below fibre saturation, for example 8", "percent", share="mc"
)
TEMPERATURE = Limits(-40.0, 110.0, "degC", "write the temperature in degrees Celsius")
GRAVITY = Limits(0.1, 1.2, "", "write specific gravity, for example 0.68 for white oak", "dimensionless")


@door(mc_percent=MOISTURE, temperature_c=TEMPERATURE, specific_gravity=GRAVITY)
def siau_m2_s(mc_percent: Any, temperature_c: Any, specific_gravity: Any) -> Any:
    """Transverse diffusion coefficient from cell-wall and lumen diffusion in series and parallel.

    Parameters
    ----------
    mc_percent : moisture content, %, 0 to 30; any shape that broadcasts
    temperature_c : degC, -40 to 110
    specific_gravity : oven-dry mass over present volume; held fixed with moisture

    Returns
    -------
    m2/s, broadcast shape

    >>> round(siau_m2_s(10.0, 20.0, 0.60) * 1e11, 2)
    2.59

    Cell wall 7e-6 exp(-(38500 - 290 M)/(R T)); lumens by the diffusion of vapour in air with the slope of the
    sorption curve; geometry by the porosity. Above the moisture that saturated air can give, the slope at saturation
    is kept. Source: Siau, Transport Processes in Wood (1984); the cell-wall constants were seen quoted, the rest is
    from memory. Fits published data within about a factor of three.
    """
    kelvin = temperature_c + 273.15
    wall = 7e-6 * np.exp(-(38500.0 - 290.0 * mc_percent) / (GAS_CONSTANT * kelvin))
    lumen = _lumen_m2_s(mc_percent, temperature_c)
    porosity = 1.0 - specific_gravity * (0.667 + 0.01 * mc_percent)
    side = np.sqrt(np.maximum(porosity, 0.0))
    return wall * lumen / ((1.0 - side**2) * (wall + lumen * (1.0 - side)))


def _lumen_m2_s(mc_percent: Any, temperature_c: Any) -> Any:
    """Vapour diffusion in the cell lumens, on the basis of the moisture held by the wall around them."""
    kelvin = temperature_c + 273.15
    in_air = 2.2e-5 * (kelvin / 273.15) ** 1.75
    wall_gravity = 1.53 / (1.0 + 0.0153 * mc_percent)
    slope = rh_per_moisture(mc_percent, temperature_c)
    return (
        0.018
        * in_air
        * saturation_pressure_pa.kernel(temperature_c)
        * slope
        / (wall_gravity * WATER_DENSITY * GAS_CONSTANT * kelvin)
    )


def rh_per_moisture(mc_percent: Any, temperature_c: Any) -> Any:
    """Slope of the sorption curve, d(relative humidity)/d(moisture content), both as fractions; broadcasts.

    >>> round(float(rh_per_moisture(10.0, 20.0)), 2)
    5.87
    """
    mc_percent, temperature_c = np.broadcast_arrays(np.asarray(mc_percent, float), np.asarray(temperature_c, float))
    most = emc_percent.kernel(temperature_c, 100.0)
    rh_percent = humidity_for_moisture(temperature_c, np.minimum(mc_percent, most))
    return 1.0 / emc_slope.kernel(temperature_c, rh_percent)


@door(mc_percent=MOISTURE, temperature_c=TEMPERATURE, specific_gravity=GRAVITY)
def steep_m2_s(mc_percent: Any, temperature_c: Any, specific_gravity: Any) -> Any:
    """The level of :func:`siau_m2_s` at 10 % moisture with the steeper moisture dependence measured on aspen.

    Parameters and result as :func:`siau_m2_s`.

    >>> round(steep_m2_s(10.0, 20.0, 0.60) * 1e11, 2)
    2.59

    D = D(10 %) exp(0.134 (M - 10)), an eightfold rise from 2.5 to 18 %: Simpson 1974, abstract.
    """
    level = siau_m2_s.kernel(10.0, temperature_c, specific_gravity)
    return level * np.exp(rate("aspen_exponent").mid * (mc_percent - 10.0))


@door(mc_percent=MOISTURE, temperature_c=TEMPERATURE, specific_gravity=GRAVITY)
def spruce_m2_s(mc_percent: Any, temperature_c: Any, specific_gravity: Any) -> Any:
    """The form often used for spruce near room temperature; density and temperature do not enter.

    Parameters and result as :func:`siau_m2_s`.

    >>> round(spruce_m2_s(10.0, 20.0, 0.40) * 1e11, 2)
    11.93

    D = 8e-11 exp(4 u), u as a fraction: spruce models after Hanhijarvi, from memory. Use it for softwoods of about
    0.4 specific gravity only.
    """
    mc_percent, _, _ = np.broadcast_arrays(mc_percent, temperature_c, specific_gravity)
    return rate("spruce_level_m2_s").mid * np.exp(rate("spruce_exponent").mid * mc_percent / 100.0)


@dataclass(frozen=True)
class Form:
    """One way to compute the diffusion coefficient, and how a result names it."""

    function: Callable[..., Any]
    says: str


FORMS = {
    "siau": Form(siau_m2_s, "wall-and-lumen form (Siau 1984) from density, temperature and moisture"),
    "steep": Form(
        steep_m2_s, "wall-and-lumen level at 10 % with the moisture dependence measured on aspen (Simpson 1974)"
    ),
    "spruce": Form(spruce_m2_s, "exponential form for spruce near room temperature (from memory)"),
}
