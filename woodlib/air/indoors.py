"""Outdoor air brought indoors: warmed or cooled to its set points, with the moisture people add."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..door import Limits, door, read_values
from ..errors import InputError, Problems
from .checks import MOISTURE_GAIN_G_M3, TEMPERATURE_C
from .psychrometrics import gained_pressure_pa, saturation_pressure_pa
from .year import Year

SET_POINT_C = Limits(0.0, 45.0, "degC", 'rooms are usually kept between 18 and 26 degC; for Fahrenheit write "70 degF"')
HELD_RH_PERCENT = Limits(
    1.0, 100.0, "%", "humidifiers usually hold 35 to 45 %, dehumidifiers 50 to 60 %", "percent", share="rh"
)
_COMFORT_RH_PERCENT = 65.0  # ventilation standards ask for less (ASHRAE 62.1-2016, as quoted in an ASHRAE FAQ)


@door(outdoor_temperature_c=TEMPERATURE_C, winter_gain_g_m3=MOISTURE_GAIN_G_M3)
def seasonal_moisture_gain_g_m3(outdoor_temperature_c: Any, winter_gain_g_m3: Any) -> Any:
    """Moisture gain of a home that opens its windows in warm weather, from the outdoor temperature.

    outdoor_temperature_c: degC, any shape; winter_gain_g_m3: the gain of the closed house, g/m3.
    Returns g/m3, broadcast shape: the full gain at 0 degC and colder, none at 20 degC and warmer, in a straight
    line between (the form used in European moisture design, from memory). Raises InputError.

    >>> [float(gain) for gain in seasonal_moisture_gain_g_m3([-5.0, 10.0, 25.0], 3.0)]
    [3.0, 1.5, 0.0]
    """
    return winter_gain_g_m3 * np.clip((20.0 - outdoor_temperature_c) / 20.0, 0.0, 1.0)


def indoors(
    outdoor_year: Year,
    heating_set_point_c: Any,
    cooling_set_point_c: Any,
    moisture_gain_g_m3: Any,
    *,
    humidifier_holds_percent: Any = None,
    dehumidifier_holds_percent: Any = None,
    label: str = "",
) -> Year:
    """Indoor air of a house standing in the given outdoor air.

    outdoor_year: :class:`Year`. heating_set_point_c, cooling_set_point_c: degC; outdoor air between the two comes
    in at its own temperature; None as cooling set point: no cooling. moisture_gain_g_m3: what people, cooking and
    plants add, per m3 of room air, one number or one per reading; homes 2 to 4 in winter (from memory), an empty
    house 0; :func:`seasonal_moisture_gain_g_m3` lets it fade in summer. humidifier_holds_percent,
    dehumidifier_holds_percent: the relative humidity a device keeps the room above, or below.
    Returns a :class:`Year` whose remarks tell what was assumed. Raises InputError with every problem found.

    >>> outdoors = Year([15, 196], [0.0, 26.0], [80.0, 70.0], "two days outdoors")
    >>> [round(float(rh)) for rh in indoors(outdoors, 21, 24, 2.0).rh_percent]
    [31, 88]

    Vapour pressure indoors = outdoors + gain x 461.52 J/(kg K) x room temperature (K); the rest is saturation.
    Cooling takes water out only when the air would otherwise be past saturation; then exactly that excess goes, and
    a remark says so. Real air conditioners dry further, which dehumidifier_holds_percent stands for.
    """
    heat, cool, gain, dry_limit, damp_limit = _read(
        outdoor_year,
        heating_set_point_c,
        cooling_set_point_c,
        moisture_gain_g_m3,
        humidifier_holds_percent,
        dehumidifier_holds_percent,
    )
    temperature = np.clip(outdoor_year.temperature_c, heat, cool)
    vapour = outdoor_year.vapour_pressure_pa + gained_pressure_pa(temperature, gain)
    humidity = 100.0 * vapour / saturation_pressure_pa.kernel(temperature)
    if bool(np.any(humidity < 0.0)):
        raise InputError(
            f"moisture_gain_g_m3 is as low as {np.min(gain):g} g/m3, more water than the air holds in "
            f"{int(np.sum(humidity < 0.0))} of {humidity.size} readings; give a gain nearer to zero."
        )
    remarks = [*outdoor_year.remarks, _settings(heat, cool, gain)]
    humidity = _hold(humidity, temperature, cool, dry_limit, damp_limit, remarks)
    name = label or f"{outdoor_year.label.removesuffix(', outdoors') or 'outdoor air'}, indoors"
    return Year(outdoor_year.day, temperature, humidity, name, tuple(remarks))


def _read(year: Any, heating: Any, cooling: Any, gain: Any, humidifier: Any, dehumidifier: Any) -> tuple[Any, ...]:
    """Everything checked: heating, cooling (infinite: none), gain, humidity held above and below."""
    problems = Problems()
    if not isinstance(year, Year):
        raise InputError(f'outdoor_year is {year!r}; give a Year, for example year_from_climate("Chicago").')
    heat = _one(heating, SET_POINT_C, "heating_set_point_c", problems)
    cool = np.inf if cooling is None else _one(cooling, SET_POINT_C, "cooling_set_point_c", problems)
    added = read_values(gain, MOISTURE_GAIN_G_M3, name="moisture_gain_g_m3", problems=problems)
    if np.shape(added) not in ((), year.day.shape):
        problems.add(
            f"moisture_gain_g_m3 has {np.size(added)} values and the year {year.day.size} readings; "
            "give one number, or one per reading."
        )
    above = 0.0 if humidifier is None else _one(humidifier, HELD_RH_PERCENT, "humidifier_holds_percent", problems)
    below = (
        100.0 if dehumidifier is None else _one(dehumidifier, HELD_RH_PERCENT, "dehumidifier_holds_percent", problems)
    )
    if cool < heat:
        problems.add(
            f"cooling_set_point_c is {cool:g} degC, below heating_set_point_c {heat:g} degC; "
            "cool to the heating set point or above it."
        )
    if above > below:
        problems.add(
            f"humidifier_holds_percent is {above:g} %, above dehumidifier_holds_percent {below:g} %; "
            "the two devices would fight: lower the first."
        )
    problems.raise_if_any()
    return heat, cool, added, above, below


def _one(value: Any, limits: Limits, name: str, problems: Problems) -> float:
    number = read_values(value, limits, name=name, problems=problems)
    if np.ndim(number):
        problems.add(f"{name} holds {np.size(number)} values; give one number.")
        return float("nan")
    return float(number)


def _settings(heat: float, cool: float, gain: Any) -> str:
    cooled = "not cooled" if np.isinf(cool) else f"cooled to {cool:.4g} degC when warmer outdoors"
    low, high = float(np.min(gain)), float(np.max(gain))
    amount = f"{low:g}" if low == high else f"{low:.1f} to {high:.1f}"
    return (
        f"Indoor air is outdoor air heated to {heat:.4g} degC when colder and {cooled}, "
        f"with a moisture gain of {amount} g/m3."
    )


def _hold(
    humidity: np.ndarray, temperature: np.ndarray, cool: float, dry_limit: float, damp_limit: float, remarks: list[str]
) -> np.ndarray:
    """Let devices and saturation act on the humidity, each with its remark."""
    size, dry, damp = humidity.size, humidity < dry_limit, humidity > damp_limit
    past = humidity > 100.0
    if dry.any():
        remarks.append(
            f"A humidifier is assumed to hold {dry_limit:g} % in {int(dry.sum())} of {size} readings "
            f"(without it down to {humidity.min():.0f} %)."
        )
    if damp_limit < 100.0 and damp.any():
        remarks.append(
            f"A dehumidifier or air conditioner is assumed to hold {damp_limit:g} % in "
            f"{int(damp.sum())} of {size} readings (without it up to {humidity.max():.0f} %)."
        )
    elif past.any():
        cooled = bool(np.any(past & (temperature >= cool)))
        taken = "the cooling is assumed to take out" if cooled else "cold surfaces are assumed to take out"
        remarks.append(
            f"In {int(past.sum())} of {size} readings the air indoors would be past saturation (up to "
            f"{humidity.max():.0f} %): {taken} just the excess, which leaves 100 %; give "
            "what a dehumidifier holds for a device that dries further."
        )
    held = np.clip(humidity, dry_limit, damp_limit)
    if np.isfinite(cool) and bool(np.any(held > _COMFORT_RH_PERCENT)):
        remarks.append(
            f"The dampest reading is {held.max():.0f} %, damper than cooled rooms usually are (50 to 60 %, common "
            "practice, no source): monthly means hide the hot hours in which an air conditioner dries; a log of the "
            "room, or what a dehumidifier holds, tells better."
        )
    return held
