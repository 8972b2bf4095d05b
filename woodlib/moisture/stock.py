"""A board as moisture sees it, followed through any air: the public way to the solver.

Every answer comes three times - slow, mid and fast - because published diffusion coefficients differ by about a
factor of three; the three run side by side in one pass.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..air.checks import Limits, read_values
from ..errors import InputError, Problems
from ..species import find_species
from .diffusion import march
from .diffusivity import FORMS, GRAVITY, MOISTURE, Form
from .drive import Drive
from .finishes import BARE, Finish, film_coefficient_m_s, find_finish, surface_coefficient_m_s
from .history import History
from .lookup import Lookup
from .rates import Likely, rate

THICKNESS = Limits(1e-4, 0.5, "m", "write the thickness of the board in metres, for example 0.019", "metre")
TOLERANCE = Limits(1e-6, 5.0, "%", "write the moisture error you accept, for example 0.02", "percent")
STEP_HOURS = Limits(0.01, 240.0, "h", "write the longest step in hours, for example 6", "hour")
SPEEDS = ("slow", "mid", "fast")
_MOST_HALVINGS = 6


@dataclass(frozen=True)
class Stock:
    """A board that trades moisture through its two faces.

    thickness_m: m; specific_gravity: oven-dry mass over volume at 12 %; first_finish, second_finish: bare wood unless
    given; form: which published diffusion coefficient, a name in ``FORMS`` or a Form; note: where the numbers come
    from. Raises InputError with everything that is wrong.

    >>> round(Stock.of("white oak", 0.019, first_finish="shellac").specific_gravity, 2)
    0.67
    """

    thickness_m: float
    specific_gravity: float
    first_finish: Finish = BARE
    second_finish: Finish = BARE
    form: str | Form = "siau"
    note: str = ""

    def __post_init__(self) -> None:
        problems = Problems()
        thickness = read_values(self.thickness_m, THICKNESS, name="thickness_m", problems=problems)
        gravity = read_values(self.specific_gravity, GRAVITY, name="specific_gravity", problems=problems)
        for name in ("first_finish", "second_finish"):
            self._settle_finish(name, problems)
        if isinstance(self.form, str) and self.form not in FORMS:
            problems.add(f"form is {self.form!r}; choose one of {', '.join(FORMS)}.")
        problems.raise_if_any()
        object.__setattr__(self, "thickness_m", float(thickness))
        object.__setattr__(self, "specific_gravity", float(gravity))

    def _settle_finish(self, name: str, problems: Problems) -> None:
        finish = getattr(self, name)
        if isinstance(finish, Finish):
            return
        try:
            object.__setattr__(self, name, find_finish(finish))
        except InputError as error:
            problems.absorb(error, f"{name}: ")

    @classmethod
    def of(cls, species: Any, thickness_m: Any, **more: Any) -> Stock:
        """Stock of a species of the catalogue; its specific gravity at 12 % moisture, or an estimate that is said."""
        wood = find_species(species) if isinstance(species, str) else species
        gravity = wood.value_or_estimate("specific_gravity_12")
        note = f"{wood.name}: specific gravity {gravity.number:g} ({gravity.status}, {gravity.source})"
        return cls(thickness_m, gravity.number, note=note, **more)

    @property
    def form_says(self) -> str:
        """The diffusion coefficient in words."""
        return (FORMS[self.form] if isinstance(self.form, str) else self.form).says

    def diffusivity_m2_s(self, mc_percent: float, temperature_c: float) -> Likely:
        """Diffusion coefficient at one state: slow, mid, fast, m2/s.

        >>> f"{Stock(0.019, 0.60).diffusivity_m2_s(10.0, 20.0).mid:.2e}"
        '2.59e-11'
        """
        form = FORMS[self.form] if isinstance(self.form, str) else self.form
        mid = float(form.function(mc_percent, temperature_c, self.specific_gravity))
        return Likely(*(factor * mid for factor in rate("diffusivity_factor")))

    def slow_days(self, mc_percent: float, temperature_c: float) -> float:
        """Days in which the slow case loses most of a difference from the air, l^2/D + l/S: how long to run."""
        half_m, slow = self.thickness_m / 2.0, self.diffusivity_m2_s(mc_percent, temperature_c).low
        surface = self.surface_m_s(temperature_c, mc_percent, mc_percent)[0].min()
        return float(half_m**2 / slow + half_m / max(surface, 1e-10)) / 86400.0

    def surface_m_s(self, temperature_c: float, mc_low: float, mc_high: float) -> np.ndarray:
        """Finish and air film in series, (3, 2) m/s: slow, mid and fast for the first and the second face."""
        films = [
            film_coefficient_m_s(finish, self.specific_gravity, temperature_c, mc_low, mc_high)
            for finish in (self.first_finish, self.second_finish)
        ]
        return np.column_stack([surface_coefficient_m_s(film) for film in films])


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
        """Mean moisture on a day, low, mid and high; for a single board."""
        return Likely.of(*(float(np.interp(day, self.days, self.mean_percent[:, k])) for k in range(3)))


def follow(
    stock: Stock | Sequence[Stock],
    drive: Drive,
    start_percent: Any = None,
    *,
    cells: int = 60,
    step_hours: float = 6.0,
    tolerance_percent: float | None = None,
    profile_days: Sequence[float] = (),
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
    profile_days : days whose whole profile is kept; start and end when empty

    Raises
    ------
    InputError
        with every bad input; also when the tolerance cannot be met.

    >>> from woodlib.moisture.drive import steady
    >>> week = follow(Stock(0.019, 0.60), steady(20, 70, days=7), start_percent=7.7)
    >>> [round(value, 1) for value in week.at(7)]
    [9.7, 10.3, 12.0]
    """
    single = isinstance(stock, Stock)
    stocks = [stock] if single else list(stock)
    checked = _check(stocks, drive, start_percent, cells, step_hours, tolerance_percent)
    run = _Run(stocks, drive, checked["start_percent"], int(cells), checked["step_hours"], profile_days)
    history, bound = run.within(checked["tolerance_percent"])
    return _followed(history, bound, stocks, drive, run.emc, single)


def _check(stocks: list[Stock], drive: Any, start: Any, cells: Any, step: Any, tolerance: Any) -> dict[str, Any]:
    problems = Problems()
    if not stocks or not all(isinstance(stock, Stock) for stock in stocks):
        problems.add("stock is not a Stock; write for example Stock(thickness_m=0.019, specific_gravity=0.68).")
    if not isinstance(drive, Drive):
        problems.add(f"drive is {type(drive).__name__}; write the air with steady, air_log or through_year.")
    if isinstance(cells, bool) or not isinstance(cells, int | np.integer) or not 4 <= cells <= 2000:
        problems.add(f"cells is {cells!r}; accepted are whole numbers from 4 to 2000, 60 is usual.")
    values = {
        "step_hours": read_values(step, STEP_HOURS, name="step_hours", problems=problems),
        "tolerance_percent": None,
    }
    if tolerance is not None:
        values["tolerance_percent"] = read_values(tolerance, TOLERANCE, name="tolerance_percent", problems=problems)
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
        profile_days: Sequence[float],
    ) -> None:
        self.drive, self.cells, self.step_days, self.profile_days = drive, cells, step_hours / 24.0, profile_days
        boards = len(stocks)
        self.start = np.repeat(np.broadcast_to(start, (boards,)).astype(float), 3)
        self.thickness = np.repeat([stock.thickness_m for stock in stocks], 3)
        self.time, self.emc, self.temperature = drive.on_grid(self.step_days)
        kinds: dict[tuple[Any, float, float], int] = {}
        keys = [
            (stock.form, stock.specific_gravity, factor) for stock in stocks for factor in rate("diffusivity_factor")
        ]
        self.kind = np.array([kinds.setdefault(key, len(kinds)) for key in keys])
        self.lookup = Lookup(list(kinds), float(self.temperature.min()), float(self.temperature.max()))
        self.surface = self._surface(stocks)

    def _surface(self, stocks: list[Stock]) -> np.ndarray:
        low = min(float(self.emc.min()), float(self.start.min()))
        high = max(float(self.emc.max()), float(self.start.max()))
        celsius = float(self.temperature.mean())
        known: dict[tuple[Any, ...], np.ndarray] = {}
        for stock in stocks:
            key = (stock.specific_gravity, stock.first_finish, stock.second_finish)
            if key not in known:
                known[key] = stock.surface_m_s(celsius, low, high)
        return np.concatenate(
            [known[stock.specific_gravity, stock.first_finish, stock.second_finish] for stock in stocks]
        )

    def once(self, halvings: int) -> History:
        """One march; profiles at the step that ends nearest to each wanted day."""
        time, emc, temperature = (
            (self.time, self.emc, self.temperature) if halvings == 0 else self.drive.on_grid(self.step_days, halvings)
        )
        wanted = None
        if len(self.profile_days):
            wanted = [int(np.argmin(np.abs(time - day * 86400.0))) for day in self.profile_days]
        return march(
            time, emc, temperature, self.start, self.thickness, self.lookup, self.kind, self.surface, self.cells, wanted
        )

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


def _followed(
    history: History, bound: float, stocks: list[Stock], drive: Drive, emc: np.ndarray, single: bool
) -> Followed:
    boards = len(stocks)

    def split(values: np.ndarray) -> np.ndarray:
        """Boards and speeds on axes of their own, speeds last, no axis for a single board."""
        apart = np.moveaxis(values.reshape(values.shape[0], boards, 3, *values.shape[2:]), 2, -1)
        return apart[:, 0] if single else apart

    halved = (len(history.time_s) - 1) // (len(emc) - 1)
    finishes = [finish for stock in stocks for finish in (stock.first_finish, stock.second_finish)]
    remarks = (
        *(stock.note for stock in stocks if stock.note),
        *(remark for finish in finishes for remark in finish.remarks),
        *drive.remarks,
    )
    return Followed(
        history.days[::halved],
        emc,
        split(history.mean_percent)[::halved],
        split(history.tilt_percent)[::halved],
        split(history.surface_percent)[::halved],
        history.profile_time_s / 86400.0,
        split(history.profile_percent),
        bound,
        tuple(dict.fromkeys(stock.form_says for stock in stocks)),
        tuple(dict.fromkeys(remarks)),
    )
