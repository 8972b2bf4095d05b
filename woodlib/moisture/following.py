"""Boards followed through any air: the public way to the solver.

Every answer comes three times - slow, mid and fast - because published diffusion coefficients differ by about a
factor of three; the three run side by side in one pass.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..door import Limits, read_values
from ..errors import InputError, Problems
from .diffusion import march
from .diffusivity import MOISTURE
from .drive import Drive
from .history import History
from .lookup import Lookup
from .rates import Likely
from .stock import Stock

TOLERANCE = Limits(1e-6, 5.0, "%", "write the moisture error you accept, for example 0.02", "percent")
STEP_HOURS = Limits(0.01, 240.0, "h", "write the longest step in hours, for example 6", "hour")
SPEEDS = ("slow", "mid", "fast")
_MOST_HALVINGS = 6


@dataclass(frozen=True)
class Followed:
    """Moisture of boards over time; the last axis is always slow, mid, fast.

    days (n,); emc_percent (n,); mean_percent, tilt_percent (n, boards, 3); surface_percent (n, boards, 2, 3);
    profile_percent (m, boards, cells, 3) at profile_days (m,); error_percent: bound on the error of the mean from
    halving the steps; form_says, remarks: which coefficients ran and what to know. With a single Stock the axis of
    the boards is left out.
    """

    days: np.ndarray
    emc_percent: np.ndarray
    mean_percent: np.ndarray
    tilt_percent: np.ndarray
    surface_percent: np.ndarray
    profile_days: np.ndarray
    profile_percent: np.ndarray
    error_percent: float
    form_says: tuple[str, ...]
    remarks: tuple[str, ...]

    def at(self, day: float) -> Likely:
        """Mean moisture on a day, low, mid and high; for a single board.

        Raises InputError for a day outside the course, and for many boards.
        """
        if self.mean_percent.ndim != 2:
            raise InputError("at gives the moisture of one board; follow one Stock, or read mean_percent of the many.")
        if not 0.0 <= day <= self.days[-1]:
            raise InputError(f"day is {day:g}; the course runs from day 0 to day {self.days[-1]:g}: ask within it.")
        return Likely.of(*(float(np.interp(day, self.days, self.mean_percent[:, k])) for k in range(3)))


def follow(
    stock: Stock | Sequence[Stock],
    drive: Drive,
    start_percent: Any = None,
    *,
    cells: int = 60,
    step_hours: float = 6.0,
    tolerance_percent: float | None = None,
    profile_days: Sequence[float] | np.ndarray = (),
) -> Followed:
    """Moisture inside one board or many while the air does what ``drive`` says.

    Parameters
    ----------
    stock : Stock, or a sequence of them
    drive : the air, see ``drive``
    start_percent : moisture all through at the start, %, one or (boards,); at rest in the first air when left out
    cells : cells through the thickness, 4 to 2000
    step_hours : longest step; steps are far shorter after a sharp change of air
    tolerance_percent : when given, all steps are halved until the mean and the tilt of every board change by less
        than this; the change is the bound that the result carries
    profile_days : days whose whole profile is kept, straight lines between steps; start and end when empty

    Raises
    ------
    InputError
        with every bad input; also when the tolerance cannot be met.

    >>> from woodlib.moisture.drive import steady_air
    >>> week = follow(Stock(0.019, 0.60), steady_air(20, 70, days=7), start_percent=7.7)
    >>> [round(value, 1) for value in week.at(7)]
    [9.7, 10.3, 12.0]
    """
    single = isinstance(stock, Stock)
    stocks = [stock] if isinstance(stock, Stock) else list(stock)
    checked = _check(stocks, drive, start_percent, cells, step_hours, tolerance_percent, profile_days)
    run = _Run(stocks, drive, checked["start_percent"], int(cells), checked["step_hours"], checked["profile_days"])
    history, bound = run.within(checked["tolerance_percent"])
    return _followed(history, bound, stocks, drive, run, single)


def _check(
    stocks: list[Stock], drive: Any, start: Any, cells: Any, step: Any, tolerance: Any, profile_days: Any
) -> dict[str, Any]:
    problems = Problems()
    if not stocks or not all(isinstance(stock, Stock) for stock in stocks):
        problems.add("stock is not a Stock; write for example Stock(thickness_m=0.019, specific_gravity=0.68).")
    if not isinstance(drive, Drive):
        problems.add(f"drive is {type(drive).__name__}; write the air with steady_air, air_log or air_of_year.")
    if isinstance(cells, bool) or not isinstance(cells, int | np.integer) or not 4 <= cells <= 2000:
        problems.add(f"cells is {cells!r}; accepted are whole numbers from 4 to 2000, 60 is usual.")
    values = {
        "step_hours": read_values(step, STEP_HOURS, name="step_hours", problems=problems),
        "tolerance_percent": None,
    }
    if tolerance is not None:
        values["tolerance_percent"] = read_values(tolerance, TOLERANCE, name="tolerance_percent", problems=problems)
    last = drive.length_days if isinstance(drive, Drive) else np.inf
    wanted = Limits(0.0, last, "days", "ask for days within the air given")
    values["profile_days"] = np.zeros(0)
    if np.size(profile_days):
        values["profile_days"] = read_values(profile_days, wanted, name="profile_days", problems=problems)
    if start is None and isinstance(drive, Drive):
        start = min(drive.start_emc_percent(), MOISTURE.high)
    values["start_percent"] = read_values(start, MOISTURE, name="start_percent", problems=problems)
    if np.ndim(values["start_percent"]) and np.shape(values["start_percent"]) != (len(stocks),):
        problems.add(
            f"start_percent has {np.size(start)} values for {len(stocks)} board(s); give one, or one for each."
        )
    problems.raise_if_any()
    return values


class _Run:
    """The same case on finer and finer steps."""

    def __init__(
        self,
        stocks: list[Stock],
        drive: Drive,
        start: Any,
        cells: int,
        step_hours: float,
        profile_days: np.ndarray,
    ) -> None:
        self.drive, self.cells, self.step_days = drive, cells, step_hours / 24.0
        self.profile_days = np.atleast_1d(profile_days) if np.size(profile_days) else np.array([0.0, drive.length_days])
        boards = len(stocks)
        self.start = np.repeat(np.broadcast_to(start, (boards,)).astype(float), 3)
        self.thickness = np.repeat([stock.thickness_m for stock in stocks], 3)
        self.time, self.emc, self.temperature = drive.on_grid(self.step_days)
        kinds: dict[tuple[Any, float, float], int] = {}
        keys = [(stock.form, stock.specific_gravity, factor) for stock in stocks for factor in stock.factors]
        self.kind = np.array([kinds.setdefault(key, len(kinds)) for key in keys])
        self.lookup = Lookup(list(kinds), float(self.temperature.min()), float(self.temperature.max()))
        self.surface = self._surface(stocks)

    def _surface(self, stocks: list[Stock]) -> np.ndarray:
        """Surface coefficients (boards * 3, 2); a film's depends on the span of moisture that its board sees."""
        low, high, celsius = float(self.emc.min()), float(self.emc.max()), float(self.temperature.mean())
        known: dict[tuple[Any, ...], np.ndarray] = {}
        keys = [
            (stock.specific_gravity, stock.first_finish, stock.second_finish, min(low, start), max(high, start))
            for stock, start in zip(stocks, self.start[::3].tolist(), strict=True)
        ]
        for stock, key in zip(stocks, keys, strict=True):
            if key not in known:
                known[key] = stock.surface_m_s(celsius, *key[-2:])
        return np.concatenate([known[key] for key in keys])

    def once(self, halvings: int) -> History:
        """One march; profiles are kept at the steps on both sides of each wanted day."""
        time, emc, temperature = (
            (self.time, self.emc, self.temperature) if halvings == 0 else self.drive.on_grid(self.step_days, halvings)
        )
        after = np.clip(np.searchsorted(time, self.profile_days * 86400.0), 1, len(time) - 1)
        wanted = sorted({*after.tolist(), *(after - 1).tolist()})
        return march(
            time, emc, temperature, self.start, self.thickness, self.lookup, self.kind, self.surface, self.cells, wanted
        )

    def profiles(self, history: History) -> np.ndarray:
        """Profiles on the wanted days, (days, boards * 3, cells)."""
        wanted, kept = self.profile_days * 86400.0, history.profile_time_s
        right = np.clip(np.searchsorted(kept, wanted), 1, len(kept) - 1)
        part = (wanted - kept[right - 1]) / (kept[right] - kept[right - 1])
        before, after = history.profile_percent[right - 1], history.profile_percent[right]
        return before + np.clip(part, 0.0, 1.0)[:, np.newaxis, np.newaxis] * (after - before)

    def within(self, tolerance: float | None) -> tuple[History, float]:
        """The coarsest run whose bound is within the tolerance, read at the unhalved times."""
        history = self.once(0)
        if tolerance is None:
            return history, float("nan")
        for halvings in range(1, _MOST_HALVINGS + 1):
            finer = self.once(halvings)
            bound = _difference(history, finer)
            history = finer
            if bound <= tolerance:
                return history, bound
        raise InputError(
            f"tolerance_percent is {tolerance:g} %, and {_MOST_HALVINGS} halvings of the steps still leave "
            f"{bound:.2g} %; allow a larger error or give a shorter step_hours."
        )


def _difference(coarse: History, fine: History) -> float:
    """Greatest change of mean and tilt from one run to the next, at the times of the coarse one, %."""
    return float(
        max(np.abs(getattr(coarse, name) - getattr(fine, name)[::2]).max() for name in ("mean_percent", "tilt_percent"))
    )


def _followed(history: History, bound: float, stocks: list[Stock], drive: Drive, run: _Run, single: bool) -> Followed:
    boards = len(stocks)

    def split(values: np.ndarray) -> np.ndarray:
        """Boards and speeds on axes of their own, speeds last, no axis for a single board."""
        apart = np.moveaxis(values.reshape(values.shape[0], boards, 3, *values.shape[2:]), 2, -1)
        return apart[:, 0] if single else apart

    halved = (len(history.time_s) - 1) // (len(run.emc) - 1)
    finishes = [finish for stock in stocks for finish in (stock.first_finish, stock.second_finish)]
    remarks = (
        *(stock.note for stock in stocks if stock.note),
        *(remark for finish in finishes for remark in finish.remarks),
        *drive.remarks,
    )
    return Followed(
        history.days[::halved],
        run.emc,
        split(history.mean_percent)[::halved],
        split(history.tilt_percent)[::halved],
        split(history.surface_percent)[::halved],
        run.profile_days,
        split(run.profiles(history)),
        bound,
        tuple(dict.fromkeys(stock.form_says for stock in stocks)),
        tuple(dict.fromkeys(remarks)),
    )
