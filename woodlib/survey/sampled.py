"""Boards and houses, drawn once and for all: the same luck for every wood, place and width, so that they compare fairly."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np
from scipy.special import ndtr

from ..air.climates import find_climate
from ..air.house_year import MODEL_SD_PERCENT
from ..air.rooms import CONSTANTS, SPREADS, air_of_constants, all_kinds
from ..air.sorption import sorption_percent
from ..moisture.finishes import find_finish
from ..moisture.hysteresis import swing_factor
from ..moisture.stock import Stock
from ..moisture.swing import swing_reach
from ..movement.spread import NINETY_PERCENT_HALF_WIDTH, USUAL_DOUBTS
from ..movement.wood import Wood, width_strain
from ..ways.travel import RANGE, Quantities


@dataclass(frozen=True)
class Houses:
    """The air of sampled houses in one place as wood would come to it: driest, dampest and mean month, % MC, (samples,)."""

    driest: np.ndarray
    dampest: np.ndarray
    mean: np.ndarray
    temperature_c: float


@cache
def luck(samples: int) -> np.ndarray:
    """(12, samples) normal numbers: the tree, its rings, the meter, what the wood heads for, how much of the air's swing
    it follows and rests between, the house's four constants, what these miss of the two ends."""
    return np.random.default_rng(1).standard_normal((12, samples))


@cache
def houses_of(place: str, samples: int) -> Houses:
    """Sampled houses of the usual kind in a place."""
    climate, room = find_climate(place), all_kinds()[0]
    drawn = luck(samples)
    set_point, warmer, winter, summer = (
        (getattr(room, name) + getattr(room, sd) * z)[:, None]
        for name, sd, z in zip(CONSTANTS, SPREADS, drawn[6:10], strict=True)
    )
    outdoors = np.array(climate.temperature_c), np.array(climate.vapour_pressure_pa)
    warm, humid = air_of_constants(*outdoors, room, set_point, warmer, winter, summer)
    emc = sorption_percent(warm, humid)
    driest, dampest = (end + MODEL_SD_PERCENT * z for end, z in zip((emc.min(1), emc.max(1)), drawn[10:], strict=True))
    return Houses(np.minimum(driest, dampest), np.maximum(driest, dampest), emc.mean(1), float(warm.mean()))


def moistures(houses: Houses, gravity: float, thickness_m: float, coats: int, samples: int) -> tuple[np.ndarray, ...]:
    """Moisture at the cut, in the driest and in the dampest month inside sampled boards, % MC; (samples,) each.

    The stock has come to rest in the middle house and is measured by a meter. A board follows a share of the air's swing,
    by thickness and finish and between the branches of the isotherm, each share with its range.
    """
    finish = find_finish("urethane varnish", coats) if coats else find_finish("bare")
    stock = Stock(thickness_m, gravity, first_finish=finish, second_finish=finish)
    middle = float(np.median(houses.mean))
    kept = swing_reach(stock, middle, houses.temperature_c)["year"].kept
    rests = swing_factor(float(np.median(houses.driest)), float(np.median(houses.dampest)))
    drawn = luck(samples)
    follows = np.ones(samples)
    for (low, likely, high), z in zip((kept, rests), drawn[4:6], strict=True):
        step = np.where(z > 0.0, high - likely, likely - low) / NINETY_PERCENT_HALF_WIDTH
        follows = follows * np.clip(likely + step * z, 0.0, 1.0)
    doubt = 1.0 / NINETY_PERCENT_HALF_WIDTH
    heads = USUAL_DOUBTS.air_percent * doubt * drawn[3]
    ends = (houses.mean + follows * (end - houses.mean) + heads for end in (houses.driest, houses.dampest))
    return middle + USUAL_DOUBTS.meter_percent * doubt * drawn[2], *(np.maximum(end, 0.0) for end in ends)


def strains_of(wood: Wood, ring_angle_rad: float, at: tuple[np.ndarray, ...], samples: int) -> Quantities:
    """What ``ways.travel`` says of a width of one metre, for sampled boards: low, mid and high are the board's own."""
    drawn = luck(samples)
    factor = np.maximum(1.0 + USUAL_DOUBTS.species_share * drawn[0], 0.2)
    rings = ring_angle_rad + np.radians(USUAL_DOUBTS.ring_angle_deg) * (2.0 * ndtr(drawn[1]) - 1.0)
    stock, driest, dampest = at

    def free(start, end) -> np.ndarray:
        return width_strain(wood, rings, 0.0, start, end, factor)

    def along(start, end) -> np.ndarray:
        return wood.axis_strains(start, end)[0]

    to_driest, to_dampest, swing = free(stock, driest), free(stock, dampest), free(stock, dampest) - free(stock, driest)
    found = {
        "to_driest": to_driest,
        "to_dampest": to_dampest,
        "swing": swing,
        "narrowing": -to_driest,
        "widening": to_dampest,
        "stretch": along(stock, driest) - to_driest,
        "swing_strain": swing - along(stock, dampest) + along(stock, driest),
    }
    ends = {f"{name}_{end}": value for name, value in found.items() for end in RANGE}
    return ends | {"stock_mc": stock, "driest_mc": driest, "dampest_mc": dampest}
