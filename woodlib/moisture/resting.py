"""How long stock must rest, and what storage does to it: answers in days and percent, each with its range."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..door import Limits, read_values
from ..errors import InputError, Problems
from .diffusivity import MOISTURE
from .drive import Drive, in_turn, steady_air
from .following import Followed, follow
from .rates import Likely, readiness_limit
from .stock import Stock

MARGIN = Limits(0.05, 10.0, "%", "write how near to rest is near enough, for example 1", "percent", share="mc")
DAYS = Limits(0.0, 36500.0, "days", "write a number of days")
LENGTH = Limits(0.0, 20.0, "m", "write the length of the board in metres", "metre", above_low=True)


@dataclass(frozen=True)
class Resting:
    """How a board comes to rest in steady air.

    days: until its mean moisture is within the margin of the air (0 when it is already); after_week_percent: mean
    moisture after seven days; home_percent: where it will come to rest; followed: the whole course.
    """

    days: Likely
    after_week_percent: Likely
    home_percent: float
    margin_percent: float
    followed: Followed

    @property
    def form_says(self) -> str:
        """Which diffusion coefficient ran."""
        return "; ".join(self.followed.form_says)


def resting(
    stock: Stock, temperature_c: Any, rh_percent: Any, start_percent: Any, margin_percent: Any = None
) -> Resting:
    """Days until a board is within a margin of its new home, and its moisture after one week there.

    Parameters
    ----------
    stock : the board, both faces open to the air unless a finish says otherwise
    temperature_c, rh_percent : steady air of the new home, degC and %
    start_percent : moisture all through at the start, %, 0 to 30
    margin_percent : how near is near enough, %; from ``numbers.csv`` when left out

    >>> rest = resting(Stock(0.019, 0.60), 20, 70, start_percent=7.7)
    >>> [round(value) for value in rest.days]
    [8, 22, 37]
    >>> round(rest.home_percent, 1)
    13.1
    """
    problems = Problems()
    if margin_percent is None:
        margin_percent = readiness_limit("margin_percent")
    start = read_values(start_percent, MOISTURE, name="start_percent", problems=problems)
    margin = float(read_values(margin_percent, MARGIN, name="margin_percent", problems=problems))
    _need_stock(stock, problems)
    try:
        home = steady_air(temperature_c, rh_percent, days=1.0).start_emc_percent()
    except InputError as error:
        problems.absorb(error)
    problems.raise_if_any()
    middle = min((home + float(start)) / 2.0, MOISTURE.high)
    length = max(8.0, stock.slow_days(middle, float(temperature_c)) * (2.0 + np.log1p(abs(home - start) / margin)))
    followed = follow(
        stock, steady_air(temperature_c, rh_percent, days=length), start, step_hours=min(240.0, length * 24 / 500)
    )
    days = Likely.of(*(_first_within(followed.days, followed.mean_percent[:, k] - home, margin) for k in range(3)))
    return Resting(days, followed.at(7.0), home, margin, followed)


def _need_stock(stock: Any, problems: Problems) -> None:
    if not isinstance(stock, Stock):
        problems.add(
            f"stock is {type(stock).__name__}; write Stock(thickness_m=0.019, specific_gravity=0.68) or Stock.of."
        )


def _first_within(days: np.ndarray, difference: np.ndarray, margin: float) -> float:
    """Day at which the difference is down to the margin, by straight lines between steps; NaN when it never is."""
    inside = np.flatnonzero(np.abs(difference) <= margin)
    if len(inside) == 0:
        return float("nan")
    n = int(inside[0])
    if n == 0:
        return 0.0
    before, after = abs(difference[n - 1]), abs(difference[n])
    return float(days[n - 1] + (days[n] - days[n - 1]) * (before - margin) / (before - after))


@dataclass(frozen=True)
class StorageEnd:
    """A board at the end of one stay: day, mean moisture, face-to-face tilt, and the air's EMC at that time."""

    label: str
    day: float
    mean_percent: Likely
    tilt_percent: Likely
    emc_percent: float


def storage(
    stock: Stock, stays: Sequence[Drive], start_percent: Any = None, step_hours: float = 12.0
) -> tuple[StorageEnd, ...]:
    """Moisture of a board at the end of each stay, for example a winter in the shop before a damp house.

    stays: air of each place in turn; start_percent: at rest in the first air when left out.

    >>> stays = [steady_air(16, 35, 120, "shop in winter"), steady_air(21, 65, 30, "seaside flat")]
    >>> ends = storage(Stock(0.025, 0.68), stays)
    >>> [(end.label, round(end.mean_percent.mid, 1), round(end.emc_percent, 1)) for end in ends]
    [('shop in winter', 7.0, 7.0), ('seaside flat', 10.2, 12.0)]
    """
    drive = in_turn(list(stays))
    followed = follow(stock, drive, start_percent, step_hours=step_hours)
    ends, day = [], 0.0
    for stay in stays:
        day += stay.length_days
        n = int(np.argmin(np.abs(followed.days - day)))
        ends.append(
            StorageEnd(
                stay.label,
                day,
                Likely.of(*followed.mean_percent[n]),
                Likely.of(*followed.tilt_percent[n]),
                float(followed.emc_percent[n]),
            )
        )
    return tuple(ends)
