"""Moist air: saturation, dew point, what heating does to outdoor air.

Every function takes single numbers or arrays, combines them by NumPy's broadcasting, and checks them once at the
door; ``function.kernel`` is the same formula without the check.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from ..door import Limits, door
from .checks import MOISTURE_GAIN_G_M3, PRESSURE_PA, RH_ABOVE_ZERO, RH_PERCENT, TEMPERATURE_C, VAPOUR_PRESSURE_PA

KELVIN = 273.15
STANDARD_PRESSURE_PA = 101_325.0
VAPOUR_GAS_CONSTANT = 461.52  # J/(kg K): 8.31446 J/(mol K) over 18.0153 g/mol
WATER_TO_AIR_MASS = 0.621945  # ratio of molar masses; ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 20
_ICE_C = Limits(-100.0, 0.01, "degC", "there is no ice above 0.01 degC; use saturation_pressure_pa")


@door(temperature_c=TEMPERATURE_C)
def saturation_pressure_pa(temperature_c: Any) -> Any:
    """Saturation vapour pressure over liquid water, from temperature; over water below freezing as well.

    temperature_c: any shape, degC, -100 to 200. Returns Pa, same shape. Raises InputError outside the range.

    >>> round(saturation_pressure_pa(20.0), 1)
    2338.8

    Hyland and Wexler 1983, ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 6; fitted for 0 to 200 degC. Below 0 degC
    it is continued over supercooled water, because weather stations and hygrometers state humidity relative to
    water at every temperature: at -20 degC the ice curve is 18 % lower. Down to -40 degC the continuation stays
    within 0.5 % of the Magnus form of Alduchov and Eskridge 1996.
    """
    return np.exp(_log_saturation(temperature_c + KELVIN))


def _log_saturation(kelvin: Any) -> Any:
    return (
        -5.8002206e3 / kelvin
        + 1.3914993
        - 4.8640239e-2 * kelvin
        + 4.1764768e-5 * kelvin**2
        - 1.4452093e-8 * kelvin**3
        + 6.5459673 * np.log(kelvin)
    )


def _log_saturation_slope(kelvin: Any) -> Any:
    return (
        5.8002206e3 / kelvin**2
        - 4.8640239e-2
        + 2 * 4.1764768e-5 * kelvin
        - 3 * 1.4452093e-8 * kelvin**2
        + 6.5459673 / kelvin
    )


@door(temperature_c=_ICE_C)
def saturation_pressure_over_ice_pa(temperature_c: Any) -> Any:
    """Saturation vapour pressure over ice, for frost; nothing in the kit switches to it by itself.

    temperature_c: any shape, degC, -100 to 0.01. Returns Pa, same shape. Raises InputError outside the range.

    >>> round(saturation_pressure_over_ice_pa(-10.0), 1)
    259.9

    Hyland and Wexler 1983, ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5.
    """
    kelvin = temperature_c + KELVIN
    return np.exp(
        -5.6745359e3 / kelvin
        + 6.3925247
        - 9.677843e-3 * kelvin
        + 6.2215701e-7 * kelvin**2
        + 2.0747825e-9 * kelvin**3
        - 9.484024e-13 * kelvin**4
        + 4.1635019 * np.log(kelvin)
    )


@door(temperature_c=TEMPERATURE_C, rh_percent=RH_PERCENT)
def vapour_pressure_pa(temperature_c: Any, rh_percent: Any) -> Any:
    """Pressure of the water vapour in air, from temperature and relative humidity (over water).

    temperature_c: degC; rh_percent: %. Returns Pa, broadcast shape. Raises InputError.

    >>> round(vapour_pressure_pa(20.0, 50.0), 1)
    1169.4
    """
    return rh_percent / 100.0 * saturation_pressure_pa.kernel(temperature_c)


@door(temperature_c=TEMPERATURE_C, rh_percent=RH_ABOVE_ZERO)
def dew_point_c(temperature_c: Any, rh_percent: Any) -> Any:
    """Temperature at which air begins to leave dew, from its temperature and relative humidity.

    temperature_c: degC; rh_percent: %, above 0. Returns degC (over water, also below freezing). Raises InputError.

    >>> round(dew_point_c(21.0, 60.0), 2)
    12.95
    """
    return dew_point_of_pressure_c.kernel(vapour_pressure_pa.kernel(temperature_c, rh_percent))


@door(vapour_pressure_pa=VAPOUR_PRESSURE_PA)
def dew_point_of_pressure_c(vapour_pressure_pa: Any) -> Any:
    """Dew point from vapour pressure: the inverse of :func:`saturation_pressure_pa`.

    vapour_pressure_pa: Pa, above 0 and up to 2e6. Returns degC, same shape. Raises InputError.

    >>> round(dew_point_of_pressure_c(2338.8), 2)
    20.0

    Newton steps on the logarithm of pressure against the inverse of temperature, where the curve is almost a
    straight line; at most 12 steps, and 4 usually reach round-off.
    """
    target = np.log(vapour_pressure_pa)
    inverse = 1.0 / (KELVIN + 20.0) - (target - np.log(2338.8)) / 5300.0
    for _ in range(12):
        kelvin = 1.0 / inverse
        step = (_log_saturation(kelvin) - target) / (_log_saturation_slope(kelvin) * kelvin**2)
        inverse = inverse + step
        if bool(np.all(np.abs(step) <= 1e-15 * inverse)):
            break
    return 1.0 / inverse - KELVIN


@door(temperature_c=TEMPERATURE_C, dew_point_c=TEMPERATURE_C)
def rh_percent_from_dew_point(temperature_c: Any, dew_point_c: Any) -> Any:
    """Relative humidity from temperature and dew point; above 100 when the dew point is above the temperature.

    temperature_c, dew_point_c: degC. Returns %, broadcast shape. Raises InputError.

    >>> round(rh_percent_from_dew_point(21.0, 12.95), 1)
    60.0
    """
    return 100.0 * saturation_pressure_pa.kernel(dew_point_c) / saturation_pressure_pa.kernel(temperature_c)


@door(temperature_c=TEMPERATURE_C, rh_percent=RH_PERCENT, pressure_pa=PRESSURE_PA)
def humidity_ratio(temperature_c: Any, rh_percent: Any, pressure_pa: Any = STANDARD_PRESSURE_PA) -> Any:
    """Mass of water per mass of dry air, from temperature, relative humidity and pressure.

    temperature_c: degC, rh_percent: %, pressure_pa: Pa. Returns kg/kg, broadcast shape; infinite where the vapour
    pressure reaches the pressure of the air (boiling). Raises InputError.

    >>> round(humidity_ratio(20.0, 50.0), 5)
    0.00726

    ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 20; ideal gases, without the enhancement factor (below 0.5 %).
    """
    vapour = vapour_pressure_pa.kernel(temperature_c, rh_percent)
    dry_air = pressure_pa - vapour
    boiling = dry_air <= 0
    return np.where(boiling, np.inf, WATER_TO_AIR_MASS * vapour / np.where(boiling, 1.0, dry_air))


@door(temperature_c=TEMPERATURE_C, rh_percent=RH_PERCENT)
def absolute_humidity_g_m3(temperature_c: Any, rh_percent: Any) -> Any:
    """Mass of water vapour in a cubic metre of air, from temperature and relative humidity.

    temperature_c: degC, rh_percent: %. Returns g/m3, broadcast shape. Raises InputError.

    >>> round(absolute_humidity_g_m3(20.0, 50.0), 2)
    8.64

    Ideal gas: concentration = vapour pressure / (461.52 J/(kg K) x absolute temperature).
    """
    return _concentration_g_m3(vapour_pressure_pa.kernel(temperature_c, rh_percent), temperature_c)


def _concentration_g_m3(pressure_pa: Any, temperature_c: Any) -> Any:
    return 1000.0 * pressure_pa / (VAPOUR_GAS_CONSTANT * (temperature_c + KELVIN))


def gained_pressure_pa(temperature_c: Any, moisture_gain_g_m3: Any) -> Any:
    """Vapour pressure added by a moisture gain in a room at ``temperature_c`` (degC): Pa; a kernel, unchecked."""
    return moisture_gain_g_m3 / 1000.0 * VAPOUR_GAS_CONSTANT * (temperature_c + KELVIN)


@door(
    outdoor_temperature_c=TEMPERATURE_C,
    outdoor_rh_percent=RH_PERCENT,
    indoor_temperature_c=TEMPERATURE_C,
    moisture_gain_g_m3=MOISTURE_GAIN_G_M3,
)
def indoor_rh_percent(
    outdoor_temperature_c: Any, outdoor_rh_percent: Any, indoor_temperature_c: Any, moisture_gain_g_m3: Any
) -> Any:
    """Relative humidity of outdoor air brought to room temperature, plus the moisture that people add.

    outdoor_temperature_c, indoor_temperature_c: degC; outdoor_rh_percent: %; moisture_gain_g_m3: g per m3 of room
    air, 0 for an empty house. Returns %, broadcast shape. Above 100 the room cannot hold the water: it condenses,
    which :func:`woodlib.air.indoors.indoors` settles and reports; below 0 a negative gain asks for more than the
    air holds. Raises InputError.

    >>> round(indoor_rh_percent(0.0, 80.0, 21.0, 0.0), 2)
    19.66
    >>> round(indoor_rh_percent(0.0, 80.0, 21.0, 3.0), 1)
    36.0

    Heating at constant pressure keeps the vapour pressure; the gain adds its own, as in building physics
    (indoor vapour = outdoor vapour + moisture excess). Residential excess in winter 2 to 4 g/m3, from memory.
    """
    vapour = vapour_pressure_pa.kernel(outdoor_temperature_c, outdoor_rh_percent) + gained_pressure_pa(
        indoor_temperature_c, moisture_gain_g_m3
    )
    return 100.0 * vapour / saturation_pressure_pa.kernel(indoor_temperature_c)
