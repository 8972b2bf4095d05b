"""What is left inside a board of the swings of the air: by the year, the week and the day, and coat by coat."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from ..door import read_values
from ..errors import InputError, Problems
from .diffusivity import MOISTURE, TEMPERATURE
from .drive import PERIOD_DAYS, air_of_year
from .finishes import BARE, Finish, all_finishes, find_finish
from .following import Followed, follow
from .plate import surface_response, swing_depth_m, swing_response
from .rates import Likely
from .resting import _need_stock
from .stock import Stock

PERIODS_DAYS = {"day": 1.0, "week": 7.0, "year": PERIOD_DAYS}
_MOST_YEARS = 40


@dataclass(frozen=True)
class YearInside:
    """A settled year inside a board.

    swing_percent: driest to dampest mean moisture; air_swing_percent: the same of the air's EMC, in steps of a day;
    kept: yearly sine of the board over that of the air, NaN in air that does not swing; delay_days: how far it runs
    behind; lowest_percent, highest_percent: ends of the swing; most_tilt_percent: greatest face-to-face difference;
    followed: that year, days from 0 to 365, with a profile every twelfth of it.
    """

    swing_percent: Likely
    air_swing_percent: float
    kept: Likely
    delay_days: Likely
    lowest_percent: Likely
    highest_percent: Likely
    most_tilt_percent: Likely
    followed: Followed


def year_inside(stock: Stock, year: Any, step_hours: float = 24.0) -> YearInside:
    """The yearly swing left inside a board, and its delay, once the years repeat themselves.

    stock: the board; year: a Year of air, or anything with day, temperature_c and rh_percent. Runs as many years as
    the slow case needs to forget its start.

    >>> from woodlib.air.year import Year
    >>> inside = year_inside(Stock(0.019, 0.60), Year.from_seasons(winter=(20, 30), summer=(24, 60)))
    >>> [round(value, 2) for value in inside.kept], round(inside.air_swing_percent, 1)
    ([0.9, 0.96, 0.99], 4.7)
    """
    problems = Problems()
    _need_stock(stock, problems)
    problems.raise_if_any()
    one = air_of_year(year, years=1.0)
    _, emc, temperature = one.on_grid(1.0)
    settle = stock.slow_days(float(emc.mean()), float(temperature.mean()))
    years = int(np.ceil(3.0 * settle / PERIOD_DAYS)) + 1
    if years > _MOST_YEARS:
        raise InputError(
            f"thickness_m is {stock.thickness_m:g} m with {stock.first_finish.label} and "
            f"{stock.second_finish.label}: it needs {years} years to settle, and {_MOST_YEARS} are the most "
            "that are run; choose a thinner board or a finish that lets more through."
        )
    start = (years - 1) * PERIOD_DAYS
    followed = follow(
        stock,
        air_of_year(year, years=years),
        float(emc.mean()),
        step_hours=step_hours,
        profile_days=start + PERIOD_DAYS * np.arange(13) / 12.0,
    )
    return _settled(_last_year(followed, start, round(PERIOD_DAYS * 24.0 / step_hours)))


def _last_year(followed: Followed, start: float, steps: int) -> Followed:
    """The last year of a course at equal steps from 0 to 365, both ends included, so that it closes on itself."""
    day = np.linspace(0.0, PERIOD_DAYS, max(steps, 12) + 1)

    def at_days(values: np.ndarray) -> np.ndarray:
        flat = values.reshape(len(values), -1)
        columns = [np.interp(start + day, followed.days, column) for column in flat.T]
        return np.stack(columns, axis=1).reshape(len(day), *values.shape[1:])

    return replace(
        followed,
        days=day,
        profile_days=followed.profile_days - start,
        emc_percent=at_days(followed.emc_percent),
        mean_percent=at_days(followed.mean_percent),
        tilt_percent=at_days(followed.tilt_percent),
        surface_percent=at_days(followed.surface_percent),
    )


def _settled(year: Followed) -> YearInside:
    day, emc, mean = year.days, year.emc_percent, year.mean_percent
    ratio = [_yearly_sine(day, mean[:, k]) / _yearly_sine(day, emc) for k in range(3)]
    return YearInside(
        Likely.of(*np.ptp(mean, axis=0).tolist()),
        float(np.ptp(emc)),
        Likely.of(*(float(abs(value)) for value in ratio)),
        Likely.of(*(float(-np.angle(value)) * PERIOD_DAYS / (2 * np.pi) for value in ratio)),
        Likely.of(*mean.min(axis=0).tolist()),
        Likely.of(*mean.max(axis=0).tolist()),
        Likely.of(*np.abs(year.tilt_percent).max(axis=0).tolist()),
        year,
    )


def _yearly_sine(day: np.ndarray, values: np.ndarray) -> complex:
    """Complex amplitude of the part of ``values`` that swings once a year; NaN when it does not swing."""
    turn = np.exp(-2j * np.pi * day / PERIOD_DAYS)
    swinging = (values - values.mean()) * turn
    amplitude = np.sum((swinging[1:] + swinging[:-1]) * np.diff(day)) / PERIOD_DAYS
    return complex(amplitude) if abs(amplitude) > 1e-9 else complex(np.nan, np.nan)


@dataclass(frozen=True)
class Coated:
    """One line of what each coat changes."""

    finish: Finish
    inside: YearInside
    week_percent: Likely


def coat_by_coat(name: str, stock: Stock, year: Any, both_faces: bool = True) -> tuple[Coated, ...]:
    """Bare wood, then each number of coats of one finish that the table has: the year inside, the week's swing left.

    week_percent: swing of mean moisture in percent of a weekly swing of the air.

    >>> from woodlib.air.year import Year
    >>> year = Year.from_seasons(winter=(20, 30), summer=(24, 60))
    >>> lines = coat_by_coat("urethane varnish", Stock(0.019, 0.60), year)
    >>> [(line.finish.coats, round(line.inside.kept.mid, 2), round(line.week_percent.mid)) for line in lines][:4:3]
    [(0, 0.96, 15), (3, 0.81, 3)]
    """
    full_name = find_finish(name).name
    rows = [BARE, *(finish for finish in all_finishes() if finish.name == full_name and full_name != BARE.name)]
    return tuple(_coated(finish, stock, year, both_faces) for finish in rows)


def _coated(finish: Finish, stock: Stock, year: Any, both_faces: bool) -> Coated:
    board = replace(stock, first_finish=finish, second_finish=finish if both_faces else stock.second_finish)
    inside = year_inside(board, year)
    middle = float(inside.followed.emc_percent.mean())
    week = swing_reach(replace(board, second_finish=finish), mc_percent=middle)["week"].kept
    return Coated(finish, inside, Likely(*(100.0 * value for value in week)))


@dataclass(frozen=True)
class Reach:
    """How a steady swing of one period enters a board with the same finish on both faces.

    depth_m: where it has faded to 37 % of what it is just under the surface; kept: swing of mean moisture over swing
    of the air; surface_kept: swing just under the finish over swing of the air; delay_days: of the mean.
    """

    depth_m: Likely
    kept: Likely
    surface_kept: Likely
    delay_days: Likely


def swing_reach(stock: Stock, mc_percent: Any = 8.0, temperature_c: Any = 20.0) -> dict[str, Reach]:
    """How deep the daily, weekly and yearly swings go, and what they leave in the board's mean.

    The coefficient is taken at one moisture and temperature; faces are taken alike, with the first face's finish.

    >>> reach = swing_reach(Stock(0.019, 0.60))
    >>> {name: round(1000 * row.depth_m.mid, 1) for name, row in reach.items()}
    {'day': 0.8, 'week': 2.0, 'year': 14.7}
    """
    problems = Problems()
    _need_stock(stock, problems)
    moisture = read_values(mc_percent, MOISTURE, name="mc_percent", problems=problems)
    celsius = read_values(temperature_c, TEMPERATURE, name="temperature_c", problems=problems)
    problems.raise_if_any()
    diffusivity = np.array(stock.diffusivity_m2_s(float(moisture), float(celsius)))
    surface = stock.surface_m_s(float(celsius), float(moisture), float(moisture))[:, 0]
    return {
        name: _reach(stock.thickness_m / 2.0, diffusivity, surface, days * 86400.0)
        for name, days in PERIODS_DAYS.items()
    }


def _reach(half_m: float, diffusivity: np.ndarray, surface: np.ndarray, period_s: float) -> Reach:
    mean = swing_response(half_m, diffusivity, surface, period_s)
    under = surface_response(half_m, diffusivity, surface, period_s)
    delay = -np.angle(mean) * period_s / (2 * np.pi) / 86400.0
    return Reach(
        *(
            Likely.of(*(float(value) for value in values))
            for values in (swing_depth_m(diffusivity, period_s), np.abs(mean), np.abs(under), delay)
        )
    )
