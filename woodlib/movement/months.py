"""The moisture content the wood heads for in each month, from a year of air or given as numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..air.year import MONTH_NAMES, Year
from ..door import check_moistures
from ..errors import InputError, Problems

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


def check_months(problems: Problems, air: Year | MonthlyMoisture | Sequence[float]) -> MonthlyMoisture | None:
    """Return the monthly moisture, or add the sentences that say why not and return None."""
    try:
        return monthly_moisture(air)
    except InputError as error:
        problems.absorb(error)
        return None
