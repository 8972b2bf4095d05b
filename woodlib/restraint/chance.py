"""How often a held panel cracks: the likely chance, and how far it may be off.

*Likely* is the calibrated view: peak tension against the strength in that direction times one factor for size and duration
together, set by two outside anchors (a rigidly held oak panel); *low* takes the upper end of that factor. *High* is the
careful view, an upper bound: the full weakest-link size effect to none of it, with a season's load taking its share
of strength; alone it is refuted by the same anchors.

A split needs stress and energy together: it runs only where it sets free what it costs, which grows with the width. And
wood gives way slowly only so far: what it is made to stretch beyond pulls in full, so the chance rises with every drying.

Strength, stiffness and movement are lognormal, so their part is integrated in closed form and the relaxation, strength
factor and toughness on fixed Gauss nodes: the answer is smooth in every input.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Any, NamedTuple

import numpy as np

from .assumptions import Assumption, assumption
from .normal import normal_share
from .relaxation import gathered_path, relaxed_path_pa

_USED = (
    "strength_variation",
    "demand_variation",
    "relaxation_rate",
    "delayed_share",
    "calibrated_strength_factor",
    "duration_factor",
    "size_exponent",
    "reference_volume",
    "check_depth",
    "check_depth_spread",
    "toughness",
    "edge_crack_factor",
    "split_energy_share",
    "creep_most",
)


class HeldLoad(NamedTuple):
    """What a panel is put through: the path of moisture and misfit, and how its stress is spread.

    ``stiffness_pa`` E R at the place of peak tension; ``effective_over_peak`` weakest-link stress over peak stress;
    ``modulus_pa`` E across; ``split_cost_j_m2`` of brittle and of tough wood. The first axis of a path is time; further
    axes, and the numbers where they are arrays, are cases side by side.
    """

    mc_percent: np.ndarray
    misfit_strain: np.ndarray
    stiffness_pa: float | np.ndarray
    effective_over_peak: float | np.ndarray
    modulus_pa: float
    width_m: float | np.ndarray
    split_cost_j_m2: tuple[float, float]


class Probability(NamedTuple):
    """Low, likely (calibrated) and high (careful) chance, 0 to 1; arrays where many cases were asked for."""

    low: Any
    likely: Any
    high: Any


@dataclass(frozen=True)
class CrackChance:
    """Chance that the panel cracks in the first years: sound, and with checks already in its ends."""

    sound: Probability
    checked: Probability
    assumptions: tuple[Assumption, ...]


def _log_spread(variation: float) -> float:
    return float(np.sqrt(np.log1p(variation**2)))


def _gauss(low: float, high: float, count: int) -> tuple[np.ndarray, np.ndarray]:
    """Nodes and weights (summing to 1) of an even spread from low to high."""
    points, weights = np.polynomial.legendre.leggauss(count)
    return (low + high) / 2 + (high - low) / 2 * points, weights / 2


class _Nodes(NamedTuple):
    rate: np.ndarray  # relaxation rate on its own axis
    log_demand: np.ndarray  # (rate, share, board) offsets of log demand, without the path
    demand_weight: np.ndarray
    calibrated: np.ndarray
    calibrated_weight: np.ndarray
    size_share: np.ndarray
    size_weight: np.ndarray
    duration: np.ndarray
    duration_weight: np.ndarray
    toughness: np.ndarray
    toughness_weight: np.ndarray


@cache
def _nodes() -> _Nodes:
    rate, share = assumption("relaxation_rate"), assumption("delayed_share")
    log_rate, rate_weight = _gauss(np.log(rate.low), np.log(rate.high), 8)
    shares, share_weight = _gauss(share.low, share.high, 3)
    normal, board_weight = np.polynomial.hermite_e.hermegauss(9)
    spread = _log_spread(assumption("demand_variation").middle)
    board = spread * normal - spread**2 / 2  # mean 1
    offsets = -np.log1p(shares)[:, None] + board
    weights = rate_weight[:, None, None] * share_weight[:, None] * (board_weight / board_weight.sum())
    factor, duration, tough = (assumption(k) for k in ("calibrated_strength_factor", "duration_factor", "toughness"))
    return _Nodes(
        np.exp(log_rate),
        np.broadcast_to(offsets, weights.shape),
        weights,
        *_gauss(factor.low, factor.high, 3),
        *_gauss(0.0, 1.0, 4),
        *_gauss(duration.low, duration.high, 3),
        *_gauss(tough.low, tough.high, 3),
    )


def _log_peak(load: HeldLoad, rate, share) -> np.ndarray:
    """Logarithm of the highest tension along the path, Pa; the cases, then the nodes of the rate."""
    mc, misfit, stiffness = (np.asarray(part)[..., None] for part in load[:3])
    path = relaxed_path_pa(mc, misfit, stiffness, rate, share)
    stretched = gathered_path(mc, misfit, path, stiffness, rate).max(axis=0)
    worn_out = (
        stiffness * stretched / (1.0 + assumption("creep_most").middle)
    )  # what slow strain no longer makes room for
    return np.log(np.maximum(np.maximum(path.max(axis=0), worn_out), 1.0))  # 1 Pa stands for none


def _strength_odds(log_demand, strength_pa: float, variation: float):
    """Chance that a lognormal strength of this mean is below the demand."""
    spread = _log_spread(variation)
    return normal_share((log_demand - np.log(strength_pa) + spread**2 / 2) / spread)


def _energy_odds(log_demand, load: HeldLoad):
    """Chance that a split sets free what it costs: share s^2/E times the width against a lognormal cost."""
    low, high = np.log(load.split_cost_j_m2)
    width = np.asarray(load.width_m)[..., None, None, None]
    released = 2.0 * log_demand + np.log(assumption("split_energy_share").middle * width / load.modulus_pa)
    spread = (high - low) / (2.0 * _NINE_IN_TEN)
    return normal_share((released - (low + high) / 2.0) / spread)


_NINE_IN_TEN = 1.6448536269514722  # spreads on either side of the middle that hold nine cases in ten


def _check_odds(log_demand, toughness):
    """Chance that a check of lognormal depth runs on under an even tension."""
    depth, spread = assumption("check_depth").middle, assumption("check_depth_spread").middle
    intensity = log_demand + np.log(assumption("edge_crack_factor").middle * np.sqrt(np.pi * depth))
    return normal_share((intensity - np.log(toughness)) / (spread / 2))


def crack_chance(load: HeldLoad, strength_pa: float, variation: float = 0.25) -> CrackChance:
    """Chance of a crack across the years of a path, smooth in every input.

    Parameters
    ----------
    load : HeldLoad
        Path of moisture and misfit strain, stiffness and stress spread.
    strength_pa, variation : float
        Mean strength in tension in that direction, and its coefficient of variation.

    Returns
    -------
    CrackChance
        Low, likely and high chance, sound and with end checks, and the assumptions behind them.

    Examples
    --------
    >>> path = np.array([9.5, 12, 7, 12, 7.0])
    >>> load = HeldLoad(path, 0.00264 * (path - 9.5), 0.744 * 1056e6, 1.6, 1056e6, 0.45, (99.0, 178.0))
    >>> chance = crack_chance(load, 6.48e6)
    >>> chance.sound.low < chance.sound.likely < chance.sound.high < 0.5
    True

    Notes
    -----
    In the careful view the demand is peak^(1-a) effective^a over the duration factor, a spread evenly from 0 to 1.
    A check in a held edge runs when 0.6 s sqrt(pi depth) reaches the toughness (the border bridges its mouth); careful
    takes the duration factor off that too.
    """
    nodes = _nodes()
    peak = _log_peak(load, nodes.rate, 0.0)  # the delayed share only divides, and is in the offsets
    demand = peak[..., None, None] + nodes.log_demand
    size = np.log(np.asarray(load.effective_over_peak)[..., None, None, None, None]) * nodes.size_share
    weakened = demand[..., None, None] + size[..., None] - np.log(nodes.duration)
    released = _energy_odds(demand, load)
    by_factor = _strength_odds(demand[..., None] - np.log(nodes.calibrated), strength_pa, variation)
    likely = released * (by_factor @ nodes.calibrated_weight)
    strong = _strength_odds(demand - np.log(assumption("calibrated_strength_factor").high), strength_pa, variation)
    careful = _strength_odds(weakened, strength_pa, variation) @ nodes.duration_weight @ nodes.size_weight * released
    runs = released * (_check_odds(demand[..., None], nodes.toughness) @ nodes.toughness_weight)
    lasting = demand[..., None] - np.log(nodes.duration)
    runs_slowly = _check_odds(lasting[..., None], nodes.toughness) @ nodes.toughness_weight @ nodes.duration_weight
    sound = (released * strong, likely, careful)
    checked = (_either(sound[0], runs), _either(likely, runs), _either(careful, released * runs_slowly))
    used = tuple(assumption(key) for key in _USED)
    return CrackChance(_mean(sound, nodes), _mean(checked, nodes), used)


def _either(first, second):
    return 1.0 - (1.0 - first) * (1.0 - second)


def _mean(chances, nodes: _Nodes) -> Probability:
    axes = tuple(range(-nodes.demand_weight.ndim, 0))
    means = (np.sum(chance * nodes.demand_weight, axis=axes) for chance in chances)
    return Probability(*(float(mean) if mean.ndim == 0 else mean for mean in means))
