"""The chance of a crack by drawing panels: the reference for the closed integration of ``restraint.chance``."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from scipy.special import ndtri
from scipy.stats import qmc

from woodlib.restraint.assumptions import assumption
from woodlib.restraint.chance import _USED as USED
from woodlib.restraint.chance import CrackChance, HeldLoad, Probability, _log_peak, _log_spread


def sampled_chance(load: HeldLoad, strength_pa: float, count: int = 131072, seed: int = 20240229) -> CrackChance:
    """The same by drawing ``count`` panels with every scatter (scrambled Sobol points, fixed seed).

    ``count`` is best a power of two. Used to check ``crack_chance``; the two agree within the sampling error.
    """
    draws = _Draws.from_points(qmc.Sobol(10, seed=seed).random(count))
    peak = _log_peak(load, draws.rate, draws.share) + draws.board
    median = strength_pa * np.exp(-(_log_spread(assumption("strength_variation").middle) ** 2) / 2)
    strength = np.log(median) + draws.strength
    low, high = np.log(load.split_cost_j_m2)
    share = assumption("split_energy_share").middle
    released = 2.0 * peak + np.log(share * load.width_m / load.modulus_pa)
    released = released > (low + high) / 2.0 + draws.cost * (high - low) / (2.0 * 1.6448536269514722)
    calibrated = released & (peak > strength + np.log(draws.calibrated))
    strong = released & (peak > strength + np.log(assumption("calibrated_strength_factor").high))
    size = np.log(load.effective_over_peak) * draws.size_share
    careful = released & (peak + size > strength + np.log(draws.duration))
    intensity = peak + draws.log_root_depth + np.log(assumption("edge_crack_factor").middle)
    runs = released & (intensity > np.log(draws.toughness))
    runs_slowly = released & (intensity > np.log(draws.toughness * draws.duration))
    sound = Probability(strong.mean(), calibrated.mean(), careful.mean())
    checked = Probability((strong | runs).mean(), (calibrated | runs).mean(), (careful | runs_slowly).mean())
    return CrackChance(sound, checked, tuple(assumption(key) for key in USED))


class _Draws(NamedTuple):
    rate: np.ndarray
    share: np.ndarray
    board: np.ndarray
    strength: np.ndarray
    calibrated: np.ndarray
    size_share: np.ndarray
    duration: np.ndarray
    toughness: np.ndarray
    log_root_depth: np.ndarray
    cost: np.ndarray

    @classmethod
    def from_points(cls, points: np.ndarray) -> _Draws:
        """One panel per row of even points in (0, 1)."""

        def even(column: int, key: str) -> np.ndarray:
            limits = assumption(key)
            return limits.low + (limits.high - limits.low) * points[:, column]

        rate = assumption("relaxation_rate")
        board = _log_spread(assumption("demand_variation").middle)
        strength = _log_spread(assumption("strength_variation").middle)
        depth, depth_spread = assumption("check_depth").middle, assumption("check_depth_spread").middle
        normal = ndtri(np.clip(points, 1e-12, 1 - 1e-12))
        return cls(
            rate.low * (rate.high / rate.low) ** points[:, 0],
            even(1, "delayed_share"),
            board * normal[:, 2] - board**2 / 2,
            strength * normal[:, 3],
            even(4, "calibrated_strength_factor"),
            points[:, 5],
            even(6, "duration_factor"),
            even(7, "toughness"),
            0.5 * np.log(np.pi * depth) + 0.5 * depth_spread * normal[:, 8],
            normal[:, 9],
        )
