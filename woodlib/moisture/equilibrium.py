"""Equilibrium moisture content: from air to wood, and from a meter reading back to the air it belongs to."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from ..air.checks import RH_PERCENT
from ..air.sorption import outside_table, sorption_percent, sorption_slope
from ..door import Limits, check_shapes, door, plain, read_values
from ..errors import Problems

HOTTEST_AIR_C = 57.0  # hottest air on record outdoors 56.7 degC, from memory: 68 or 70 alone is a room in Fahrenheit
WOOD_TEMPERATURE_C = Limits(
    -40.0, 100.0, "degC", "the sorption equation is smooth there and nowhere else", plain_high=HOTTEST_AIR_C
)
MC_PERCENT = Limits(0.0, 40.0, "%", "moisture content is in percent of the ovendry mass", "percent", share="mc")
METER_ERROR_PERCENT = Limits(0.0, 10.0, "%", "a good meter is within 1 % moisture content", "percent", share="mc")
SORPTION_RATIO = Limits(
    0.5, 1.0, "", "the handbook's adsorption to desorption ratio is about 0.85", "dimensionless", above_low=True
)

ADSORPTION_TO_DESORPTION = 0.85  # handbook wording "about 0.85"; from memory, published values 0.80 to 0.85


@door(temperature_c=WOOD_TEMPERATURE_C, rh_percent=RH_PERCENT)
def emc_percent(temperature_c: Any, rh_percent: Any) -> Any:
    """Moisture content at which wood comes to rest in air of a given temperature and relative humidity.

    temperature_c: any shape, degC, -40 to 100; rh_percent: any shape, %, 0 to 100 (relative to water).
    Returns % of ovendry mass, broadcast shape; exactly 0 at 0 % RH. Raises InputError outside the ranges.

    >>> emc_percent(20.0, 50.0) == emc_percent(temperature_c=20, rh_percent=50)
    True
    >>> round(emc_percent(20.0, 50.0), 2)
    9.27
    >>> [round(float(mc), 1) for mc in emc_percent(21.0, [30, 45, 65])]
    [6.2, 8.5, 12.0]

    Two-hydrate equation, Wood Handbook FPL-GTR-190 (2010) eq. 4-5; it reproduces Table 4-2 (-1.1 to 93 degC, 5 to
    95 % RH) within 0.06 % MC. Outside that table it is an extrapolation: :func:`emc_remarks` says so. One curve
    for all species: real boards lie within about 1 % MC of it between 30 and 70 % RH (from memory).
    """
    return sorption_percent(temperature_c, rh_percent)


@door(temperature_c=WOOD_TEMPERATURE_C, rh_percent=RH_PERCENT)
def emc_slope(temperature_c: Any, rh_percent: Any) -> Any:
    """Change of equilibrium moisture content per change of relative humidity, the slope of the isotherm.

    temperature_c: degC; rh_percent: %. Returns % MC per % RH, broadcast shape. Raises InputError.

    >>> round(emc_slope(20.0, 50.0), 3)
    0.161
    """
    return sorption_slope(temperature_c, rh_percent)


@door(temperature_c=WOOD_TEMPERATURE_C, rh_percent=RH_PERCENT)
def emc_remarks(temperature_c: Any, rh_percent: Any) -> tuple[str, ...]:
    """What to say beside a moisture content: which part of the air lies outside the handbook table.

    Same arguments as :func:`emc_percent`. Returns sentences, none when all air is inside.

    >>> emc_remarks(20.0, 97.0)
    ('1 of 1 moisture contents are extrapolated above 95 % relative humidity, where the handbook table ends.',)
    """
    return outside_table(temperature_c, rh_percent)


def rh_percent_for_emc(temperature_c: Any, mc_percent: Any) -> Any:
    """Relative humidity at which wood of a given moisture content is at rest: the inverse of :func:`emc_percent`.

    temperature_c: any shape, degC, -40 to 100; mc_percent: any shape, % of ovendry mass, from 0 up to what
    saturated air gives (28.8 % at 20 degC). Returns %, broadcast shape, within 1e-9. Raises InputError when the
    wood is wetter than any air can keep it.

    >>> round(rh_percent_for_emc(20.0, 9.271), 2)
    50.0
    """
    problems = Problems()
    temperature = read_values(temperature_c, WOOD_TEMPERATURE_C, name="temperature_c", problems=problems)
    moisture = read_values(mc_percent, MC_PERCENT, name="mc_percent", problems=problems)
    problems.raise_if_any()
    check_shapes(problems, temperature_c=temperature, mc_percent=moisture)
    problems.raise_if_any()
    wettest = sorption_percent(temperature, 100.0)
    if bool(np.any(moisture > wettest)):
        here = np.argmax(np.asarray(moisture - wettest))
        mc, limit = (float(np.ravel(a)[here]) for a in np.broadcast_arrays(moisture, wettest))
        problems.add(
            f"mc_percent is {mc:g} %, wetter than saturated air keeps wood ({limit:.1f} % at that temperature);"
            " such wood is still green: give a reading of air-dried or kiln-dried wood."
        )
    problems.raise_if_any()
    return plain(humidity_for_moisture(temperature, moisture))


def humidity_for_moisture(temperature_c: Any, mc_percent: Any) -> Any:
    """Kernel of :func:`rh_percent_for_emc`: Newton steps kept inside a shrinking bracket, at most 80."""
    low = np.zeros(np.broadcast_shapes(np.shape(temperature_c), np.shape(mc_percent)))
    high = np.full_like(low, 100.0)
    guess = np.where(np.asarray(mc_percent) == 0.0, low, 50.0)
    for _ in range(80):
        miss = sorption_percent(temperature_c, guess) - mc_percent
        low, high = np.where(miss <= 0, guess, low), np.where(miss >= 0, guess, high)
        newton = guess - miss / sorption_slope(temperature_c, guess)
        inside = (newton >= low) & (newton <= high)
        following = np.where(inside, newton, 0.5 * (low + high))
        done = np.all(np.abs(following - guess) <= 1e-12 * (1.0 + guess))
        guess = following
        if bool(done):
            break
    return guess


@dataclass(frozen=True)
class HysteresisBand:
    """Moisture contents (%) that the same air gives to wood coming from the dry side, on average, from the wet side."""

    adsorption_percent: Any
    table_percent: Any
    desorption_percent: Any
    status: str = "derived"
    source: str = "table curve taken as the middle, adsorption/desorption ratio from memory"


def hysteresis_band(temperature_c: Any, rh_percent: Any, ratio: Any = ADSORPTION_TO_DESORPTION) -> HysteresisBand:
    """How far apart wetting and drying wood come to rest in the same air.

    temperature_c: degC; rh_percent: %; ratio: adsorption over desorption, above 0.5 and up to 1.
    Returns a :class:`HysteresisBand` in % MC, broadcast shape. Raises InputError.

    >>> band = hysteresis_band(20.0, 65.0)
    >>> [round(mc, 1) for mc in (band.adsorption_percent, band.table_percent, band.desorption_percent)]
    [11.0, 12.0, 13.0]

    With the handbook table as the mean of both branches: adsorption = 2 r/(1 + r) = 0.919 and desorption =
    2/(1 + r) = 1.081 of it at r = 0.85. These are the outer branches: a room's yearly swing runs inside them.
    """
    table = emc_percent(temperature_c, rh_percent)
    problems = Problems()
    share = read_values(ratio, SORPTION_RATIO, name="ratio", problems=problems)
    problems.raise_if_any()
    check_shapes(problems, air=table, ratio=share)
    problems.raise_if_any()
    return HysteresisBand(plain(2.0 * share / (1.0 + share) * table), table, plain(2.0 / (1.0 + share) * table))


@dataclass(frozen=True)
class HomeAir:
    """The relative humidity (%) a meter reading is at home in, its range, and what to know about it."""

    temperature_c: float
    mc_percent: float
    rh_percent: float
    lowest_rh_percent: float
    highest_rh_percent: float
    remarks: tuple[str, ...]


def air_for_meter_reading(
    mc_percent: Any, temperature_c: Any, meter_error_percent: Any = 1.0, hysteresis_ratio: Any = 1.0
) -> HomeAir:
    """Air in which a board with this meter reading would neither gain nor lose moisture.

    mc_percent: one reading, %; temperature_c: degC; meter_error_percent: half width of the reading's doubt, % MC;
    hysteresis_ratio: 1 leaves the wood's history out, 0.85 widens the range by what wetting or drying would do.
    Returns :class:`HomeAir`. Raises InputError.

    >>> home = air_for_meter_reading(8.0, 20.0)
    >>> round(home.rh_percent), round(home.lowest_rh_percent), round(home.highest_rh_percent)
    (42, 35, 48)

    A range that runs into perfectly dry or saturated air ends there, and the remarks say so.
    """
    centre = rh_percent_for_emc(temperature_c, mc_percent)
    band = hysteresis_band(temperature_c, centre, hysteresis_ratio)
    problems = Problems()
    error = read_values(meter_error_percent, METER_ERROR_PERCENT, name="meter_error_percent", problems=problems)
    if np.ndim(centre) or np.ndim(error) or np.ndim(band.adsorption_percent):
        problems.add("air_for_meter_reading takes one reading at a time; for many readings use rh_percent_for_emc.")
    problems.raise_if_any()
    temperature, moisture = (
        float(read_values(value, limits, name=name, problems=problems))
        for value, limits, name in (
            (temperature_c, WOOD_TEMPERATURE_C, "temperature_c"),
            (mc_percent, MC_PERCENT, "mc_percent"),
        )
    )
    wetted, dried = (
        side / band.table_percent if band.table_percent else 1.0
        for side in (band.adsorption_percent, band.desorption_percent)
    )
    lowest, highest = (moisture - float(error)) / dried, (moisture + float(error)) / wetted
    wettest = float(sorption_percent(temperature, 100.0))
    remarks = list(outside_table(temperature, centre)) + _meter_remarks(moisture, lowest, highest, wettest)
    low, high = humidity_for_moisture(temperature, np.array([max(lowest, 0.0), min(highest, wettest)]))
    return HomeAir(temperature, moisture, float(centre), float(low), float(high), tuple(remarks))


def _meter_remarks(moisture: float, lowest: float, highest: float, wettest: float) -> list[str]:
    cases = (
        (lowest < 0.0, "The reading less its error is below ovendry, so the range begins at 0 % relative humidity."),
        (
            highest > wettest,
            "The reading plus its error is wetter than saturated air gives, so the range ends at 100 %.",
        ),
        (
            moisture < 6.0,
            "Pin meters read poorly below about 6 % (common practice, no source): weigh an offcut, oven-dry it"
            " and weigh it again if it matters.",
        ),
    )
    return [sentence for applies, sentence in cases if applies]
