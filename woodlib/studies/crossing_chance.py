"""The chance of a crack as sliders need it: few numbers in, a normal score out, by steps that a page repeats.

For one wood and cut a chance hangs on four things: the expected pull over the strength, how the stress is spread over the
panel, how far the moisture goes (the further, the wider the range of what relaxation leaves), and the width, whose
energy a split sets free. Its normal score is nearly a plane in their logarithms; a short polynomial fitted to
:func:`woodlib.restraint.chance.crack_chance` stands in for it.
"""

from __future__ import annotations

import itertools
from functools import cache, lru_cache, reduce
from operator import mul
from typing import Any

import numpy as np

from ..restraint.assumptions import assumption
from ..restraint.chance import HeldLoad, crack_chance
from ..restraint.fracture import split_cost_j_m2
from ..restraint.normal import normal_score
from ..words.decided import Decided, Sliding, larger
from .crossing_numbers import (
    SWINGS_PERCENT,
    WIDTHS_M,
    CutWood,
    Season,
    half_year,
    left_after,
    places,
    polynomial,
    powers,
    scaled,
)
from .crossing_panels import Panel

CHANCES = ("low", "likely", "careful", "checked")
_LOG_PULL, _LOG_SPREAD = (-2.6, 0.3), (0.15, 1.0)  # a panel pulled less than the first is taken to be pulled so much
_RESTRAINTS, _SPREADS = (0.3, 0.9), (1.15, 2.75)
_LOG_WIDTH = float(np.log(WIDTHS_M[0])), float(np.log(WIDTHS_M[1]))
_NODES = (7, 3, 4, 4)
_POWERS = [
    p
    for p in itertools.product(range(4), range(3), range(3), range(3))
    if sum(p) <= 2 or p in ((3, 0, 0, 0), (2, 0, 0, 1))
]


def scores(wood: CutWood, width: Sliding, panel: Panel, season: Season) -> dict[str, Decided]:
    """Normal score of every chance of a panel of a width."""
    stiff = float(np.log(wood.modulus_pa * wood.misfit_per_percent / wood.strength_pa))
    slope = season.swing / (season.swing_percent * wood.misfit_per_percent)  # close to 1
    swing = polynomial(season.swing_percent, _log_left())
    pull = polynomial(panel.restraint, _logarithm(_RESTRAINTS, 4)) + swing + (slope + (stiff - 1.0))
    spread = polynomial(panel.spread, _logarithm(_SPREADS, 3))
    terms = _terms(
        _evened(larger(pull, _LOG_PULL[0]), _LOG_PULL),
        _evened(spread, _LOG_SPREAD),
        _evened(season.swing_percent, SWINGS_PERCENT),
        _evened(np.log(width), _LOG_WIDTH),
    )
    return {name: _weighted(terms, row) for name, row in _rows(wood).items()}


def _evened(number: Any, ends: tuple[float, float]) -> Any:
    return (number - (ends[0] + ends[1]) / 2) * (2.0 / (ends[1] - ends[0]))


def _terms(*numbers: Any) -> list[Any]:
    """Products of powers, in the order of ``_POWERS``; numbers, arrays or decided numbers."""
    tables = [{1: number, 2: number * number} for number in numbers]
    tables[0][3] = tables[0][2] * numbers[0]
    terms = []
    for part in _POWERS:
        factors = [table[power] for table, power in zip(tables, part, strict=True) if power]
        terms.append(reduce(mul, factors) if factors else 1.0)
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


@lru_cache(maxsize=64)
def _rows(wood: CutWood) -> dict[str, tuple[float, ...]]:
    """Weights of the terms for every chance, closest where a chance is neither nothing nor certain."""
    spans = (_LOG_PULL, _LOG_SPREAD, SWINGS_PERCENT, _LOG_WIDTH)
    grids = [scaled(places(count), ends) for count, ends in zip(_NODES, spans, strict=True)]
    states = np.array(list(itertools.product(*grids))).T
    design = np.column_stack(np.broadcast_arrays(*_terms(*map(_evened, states, spans))))
    rows: dict[str, tuple[float, ...]] = {}
    for name, column in zip(CHANCES, _scores_at(wood, *states), strict=True):
        weight = np.exp(-0.5 * column**2) + 0.02
        fit = np.linalg.lstsq(design * weight[:, None], column * weight, rcond=None)[0]
        rows[name] = tuple(float(part) for part in np.round(np.asarray(fit), 6))
    return rows


def _scores_at(wood: CutWood, log_pull, log_spread, points, log_width) -> list[np.ndarray]:
    """The true scores at many places."""
    path = np.stack([half_year(each) for each in points], axis=1)
    rate, share = assumption("relaxation_rate").middle, assumption("delayed_share").middle
    left = np.array([float(left_after(each, rate, share)) for each in points])
    stiffness = np.exp(log_pull) * wood.strength_pa / left
    cost = split_cost_j_m2(wood.elastic.panel(np.radians(wood.ring_angle_deg)))
    load = HeldLoad(
        path, (path - path[0]) / points, stiffness, np.exp(log_spread), wood.modulus_pa, np.exp(log_width), cost
    )
    chance = crack_chance(load, wood.strength_pa, wood.elastic.strength_variation)
    score = np.vectorize(normal_score, otypes=[float])
    return [
        np.maximum(score(np.clip(part, 1e-12, 1.0 - 1e-12)), -6.0) for part in (*chance.sound, chance.checked.likely)
    ]
