"""The moisture content the wood heads for in each month, from a year of air or given as numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..air.year import MONTH_NAMES, Year
from ..door import check_moistures
from ..errors import InputError, Problems
from ..moisture.hysteresis import swing_factor
from ..moisture.stock import Stock
from ..moisture.swing import swing_reach
from ..units import write

STEADY_REMARK = (
    "the wood is taken to reach each month's moisture content in full; thick or well finished wood moves less"
)
PARTIAL_REMARK = "some months are missing from the air given, so the driest or dampest may not have been seen"


@dataclass(frozen=True, eq=False)
class MonthlyMoisture:
    """Moisture content in % for each month named; ``rh_percent`` where the air is known."""

    names: tuple[str, ...]
    mc_percent: np.ndarray
    rh_percent: np.ndarray | None = None
    remarks: tuple[str, ...] = ()

    @property
    def driest(self) -> int:
        """Place of the month with the lowest moisture content."""
        return int(np.argmin(self.mc_percent))

    @property
    def dampest(self) -> int:
        """Place of the month with the highest moisture content."""
        return int(np.argmax(self.mc_percent))


def monthly_moisture(air: Year | MonthlyMoisture | Sequence[float]) -> MonthlyMoisture:
    """Moisture content per month from a ``Year`` of air, or from twelve numbers in % starting with January.

    Steady equilibrium: the wood is taken to reach the equilibrium moisture content of the month's mean air.
    Raises :class:`InputError` when there are not twelve numbers or one is not a moisture content.

    >>> months = monthly_moisture([5, 5, 6, 7, 9, 11, 12, 12, 10, 8, 6, 5.5])
    >>> months.names[months.driest], months.names[months.dampest]
    ('January', 'July')
    """
    if isinstance(air, MonthlyMoisture):
        return air
    if isinstance(air, Year):
        found = air.months()
        remarks = (STEADY_REMARK, *air.remarks, *((PARTIAL_REMARK,) if air.partial else ()))
        return MonthlyMoisture(
            tuple(month.name for month in found),
            np.array([month.emc_percent for month in found]),
            np.array([month.rh_percent for month in found]),
            remarks,
        )
    problems = Problems()
    numbers = check_moistures(problems, "monthly moisture", air, 12)
    problems.raise_if_any()
    return MonthlyMoisture(MONTH_NAMES, numbers, None, (STEADY_REMARK,))


_MONTH_DAYS = 365.0 / 12.0


def months_inside(air: Year, stock: Stock) -> tuple[MonthlyMoisture, float]:
    """The wood's own months, not the air's, and how far off each may be beside other doubts, points (nine in ten).

    A board follows the year by the share that its thickness and its finish leave, and late (closed form, one yearly sine);
    and a swing rides between the branches of the isotherm, so it is smaller than the table says. Both shares carry their
    range. A year of which months are missing is taken as it is.

    >>> from ..moisture.finishes import find_finish
    >>> air, varnish = Year.from_seasons(winter=(20, 25), summer=(24, 62)), find_finish("urethane varnish", 3)
    >>> months, doubt = months_inside(air, Stock(0.022, 0.68, first_finish=varnish, second_finish=varnish))
    >>> round(float(np.ptp(monthly_moisture(air).mc_percent)), 1), round(float(np.ptp(months.mc_percent)), 1), round(doubt, 1)
    (5.9, 3.3, 0.4)
    """
    outside = monthly_moisture(air)
    mc = np.asarray(outside.mc_percent, float)
    if air.partial or np.ptp(mc) <= 0.0:
        return outside, 0.0
    reach = swing_reach(stock, float(mc.mean()), float(np.mean(air.temperature_c)))["year"]
    branches = [float(factor) for factor in swing_factor(float(mc.min()), float(mc.max()))]
    low, likely, high = (kept * factor for kept, factor in zip(reach.kept, branches, strict=True))
    late = np.interp(np.arange(12.0) - reach.delay_days.mid / _MONTH_DAYS, np.arange(-12.0, 24.0), np.tile(mc, 3))
    inside = mc.mean() + likely * (late - mc.mean()) * np.ptp(mc) / max(float(np.ptp(late)), 1e-9)
    said = (
        f"the wood follows {write(100.0 * likely, 'whole_percent')} of the air's swing (could be {write(100.0 * low, 'whole_percent')} to "
        f"{write(100.0 * high, 'whole_percent')}): its thickness and finish slow it, and it rests damper when it dries than when it wets"
    )
    remarks = (said, *(remark for remark in outside.remarks if remark != STEADY_REMARK))
    doubt = 0.25 * float(np.ptp(mc)) * (high - low)
    return MonthlyMoisture(outside.names, inside, outside.rh_percent, remarks), doubt


def check_months(problems: Problems, air: Year | MonthlyMoisture | Sequence[float]) -> MonthlyMoisture | None:
    """Return the monthly moisture, or add the sentences that say why not and return None."""
    try:
        return monthly_moisture(air)
    except InputError as error:
        problems.absorb(error)
        return None
