"""The chance of a crack as sliders need it: few numbers in, a normal score out, by steps that a page repeats.

A chance hangs on three things: the expected pull over the strength, how the stress is spread over the panel, and how
far the moisture goes (the further, the wider the range of what relaxation leaves). Its normal score is nearly a plane
in their logarithms; a short polynomial fitted to :func:`woodlib.restraint.chance.crack_chance` stands in for it, within
0.03 of every chance.
"""

from __future__ import annotations

import itertools
from functools import cache, lru_cache
from typing import Any

import numpy as np

from ..restraint.assumptions import assumption
from ..restraint.chance import HeldLoad, crack_chance
from ..restraint.normal import normal_score
from ..words.decided import Decided, larger
from .crossing_numbers import SWINGS_PERCENT, CutWood, Season, half_year, left_after, places, polynomial, powers, scaled
from .crossing_panels import Panel

CHANCES = ("calibrated", "likely", "careful", "checked")
_LOG_PULL, _LOG_SPREAD = (-2.6, 0.3), (0.15, 1.0)  # a panel pulled less than the first is taken to be pulled so much
_RESTRAINTS, _SPREADS = (0.3, 0.9), (1.15, 2.75)
_ANY_STRENGTH_PA = 5e6  # the chances of a sound panel hang on the pull over the strength alone
_NODES = (6, 4, 5)
_POWERS = [part for part in itertools.product(range(4), range(3), range(3)) if sum(part) <= 2 or part == (3, 0, 0)]


def scores(wood: CutWood, panel: Panel, season: Season) -> dict[str, Decided]:
    """Normal score of every chance; without a printed strength they mean nothing, and nothing shows them."""
    strength = wood.strength_pa or _ANY_STRENGTH_PA
    stiff = float(np.log(wood.modulus_pa * wood.misfit_per_percent / strength))
    slope = season.swing / (season.swing_percent * wood.misfit_per_percent)  # close to 1
    swing = polynomial(season.swing_percent, _log_left())
    pull = polynomial(panel.restraint, _logarithm(_RESTRAINTS, 4)) + swing + (slope + (stiff - 1.0))
    spread = polynomial(panel.spread, _logarithm(_SPREADS, 3))
    terms = _terms(
        _evened(larger(pull, _LOG_PULL[0]), _LOG_PULL),
        _evened(spread, _LOG_SPREAD),
        _evened(season.swing_percent, SWINGS_PERCENT),
    )
    rows = {**_sound_rows(), "checked": _rows(strength)["checked"]}
    return {name: _weighted(terms, rows[name]) for name in CHANCES}


def _evened(number: Any, ends: tuple[float, float]) -> Any:
    return (number - (ends[0] + ends[1]) / 2) * (2.0 / (ends[1] - ends[0]))


def _terms(pull: Any, spread: Any, swing: Any) -> list[Any]:
    """Products of powers, in the order of ``_POWERS``; numbers, arrays or decided numbers."""
    squares = [{1: number, 2: number * number} for number in (pull, spread, swing)]
    squares[0][3] = squares[0][2] * pull
    terms = []
    for part in _POWERS:
        factors = [table[power] for table, power in zip(squares, part, strict=True) if power]
        terms.append(factors[0] * factors[1] if len(factors) == 2 else factors[0] if factors else 1.0)
    return terms


def _weighted(terms: list[Any], row: tuple[float, ...]) -> Any:
    total: Any = row[0]
    for term, weight in zip(terms[1:], row[1:], strict=True):
        total = term * weight + total
    return total


@lru_cache
def _logarithm(ends: tuple[float, float], order: int) -> tuple[float, ...]:
    numbers = scaled(places(24), ends)
    return powers(numbers, np.log(numbers), order)


@cache
def _log_left() -> tuple[float, ...]:
    """Logarithm of the points of moisture that tension is left for, against all points of the swing."""
    swing = scaled(places(40), SWINGS_PERCENT)
    rate, share = assumption("relaxation_rate").middle, assumption("delayed_share").middle
    return powers(swing, np.log([points * left_after(points, rate, share) for points in swing]), 8)


@cache
def _sound_rows() -> dict[str, tuple[float, ...]]:
    rows = _rows(_ANY_STRENGTH_PA)
    return {name: rows[name] for name in CHANCES[:3]}


@lru_cache(maxsize=64)
def _rows(strength_pa: float) -> dict[str, tuple[float, ...]]:
    """Weights of the terms for every chance, closest where a chance is neither nothing nor certain."""
    grids = [
        scaled(places(count), ends)
        for count, ends in zip(_NODES, (_LOG_PULL, _LOG_SPREAD, SWINGS_PERCENT), strict=True)
    ]
    states = np.array(list(itertools.product(*grids)))
    found = np.array([_scores_at(*state) for state in np.column_stack([states, np.full(len(states), strength_pa)])])
    evened = [
        _evened(column, ends) for column, ends in zip(states.T, (_LOG_PULL, _LOG_SPREAD, SWINGS_PERCENT), strict=True)
    ]
    design = np.column_stack(np.broadcast_arrays(*_terms(*evened)))
    rows: dict[str, tuple[float, ...]] = {}
    for name, column in zip(CHANCES, found.T, strict=True):
        weight = np.exp(-0.5 * column**2) + 0.02
        fit = np.linalg.lstsq(design * weight[:, None], column * weight, rcond=None)[0]
        rows[name] = tuple(float(part) for part in np.round(np.asarray(fit), 6))
    return rows


def _scores_at(log_pull: float, log_spread: float, points: float, strength_pa: float) -> list[float]:
    """The true scores at one place."""
    path = half_year(points)
    left = left_after(points, assumption("relaxation_rate").middle, assumption("delayed_share").middle)
    load = HeldLoad(path, (path - path[0]) / points, np.exp(log_pull) * strength_pa / left, np.exp(log_spread))
    chance = crack_chance(load, strength_pa)
    return [
        max(normal_score(min(max(float(part), 1e-12), 1.0 - 1e-12)), -6.0)
        for part in (*chance.sound, chance.checked.likely)
    ]
