"""How much drier or damper than its year a room may become before the sizes that were cut run out of room."""

from __future__ import annotations

from math import ceil, floor

from ..moisture.equilibrium import rh_percent_for_emc
from .judged import Commission

LOWEST_RH_PERCENT, HIGHEST_RH_PERCENT = 5.0, 90.0  # a room beyond these is no room to live in
_MC_LIMITS_PERCENT = 1.0, 20.0


def safe_humidity_percent(commission: Commission) -> tuple[int, int]:
    """Lowest and highest relative humidity that a likely board bears as it was cut, whole percent.

    Slots and gaps hold the careful travel, narrowing n and widening w of the year; a likely board moves by
    k = swing/(dampest MC - driest MC) per point. So it may dry to stock MC - n/k and take up to stock MC + w/k, each
    turned into the humidity of its month. Never inside the year that was asked for; a panel that is held has no room
    beyond it.
    """
    numbers = commission.built.quantities
    dry, damp = commission.year.driest(), commission.year.dampest()
    year = ceil(dry.rh_percent), floor(damp.rh_percent)
    points = numbers["dampest_mc"] - numbers["driest_mc"]
    if numbers["held_share"] or points <= 0.0 or numbers["swing_mid"] <= 0.0:
        return year
    per_point = numbers["swing_mid"] / points
    driest = numbers["stock_mc"] - numbers["narrowing_high"] / per_point
    dampest = numbers["stock_mc"] + numbers["widening_high"] / per_point
    low = ceil(_humidity(dry.temperature_c, driest))
    high = floor(_humidity(damp.temperature_c, dampest))
    return min(low, year[0]), max(high, year[1])


def _humidity(temperature_c: float, mc_percent: float) -> float:
    """The humidity that leads to a moisture content, within what a room can have."""
    lowest, highest = _MC_LIMITS_PERCENT
    if mc_percent <= lowest:
        return LOWEST_RH_PERCENT
    if mc_percent >= highest:
        return HIGHEST_RH_PERCENT
    found = float(rh_percent_for_emc(temperature_c, mc_percent))
    return min(max(found, LOWEST_RH_PERCENT), HIGHEST_RH_PERCENT)
