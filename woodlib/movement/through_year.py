"""Movement across the width month by month, counted from the moisture the stock has today."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..air.year import Year
from ..errors import Problems
from .board import Board
from .inputs import check_kind, check_moisture
from .months import MonthlyMoisture, check_months
from .spread import USUAL_DOUBTS, Doubts, Movement, check_doubts, quantile_range, sample_points, sampled_strain
from .wood import width_strain


@dataclass(frozen=True)
class YearMovement:
    """Movement of a width from today's moisture to each month, and between the driest and the dampest month."""

    months: MonthlyMoisture
    stock_mc_percent: float
    movements: tuple[Movement, ...]
    swing: Movement
    remarks: tuple[str, ...]

    @property
    def driest(self) -> Movement:
        """Movement from today to the driest month."""
        return self.movements[self.months.driest]

    @property
    def dampest(self) -> Movement:
        """Movement from today to the dampest month."""
        return self.movements[self.months.dampest]


def movement_through_year(
    board: Board, stock_mc_percent: float, air: Year | MonthlyMoisture | Sequence[float], doubts: Doubts = USUAL_DOUBTS
) -> YearMovement:
    """Movement across a board's width in every month of a year, relative to the stock's moisture today.

    ``stock_mc_percent`` in %; ``air`` a ``Year`` or twelve moisture contents. Steady equilibrium: the wood is taken to
    reach each month's moisture content in full. One board value drives all months, so what they share cancels in the
    swing; the doubts of dry and of damp air are independent.

    >>> board = Board("white oak", "20 in", "3/4 in", "44 in")
    >>> year = movement_through_year(board, 8, [5.5, 5.5, 6, 7, 9, 11, 12, 12, 10, 8, 7, 6])
    >>> round(1000 * year.driest.mid_m, 1), round(1000 * year.dampest.mid_m, 1), round(1000 * year.swing.mid_m, 1)
    (-4.6, 7.4, 12.1)
    """
    problems = Problems()
    check_kind(problems, "board", board, Board, "Board('white oak', '20 in', '3/4 in', '44 in')")
    check_doubts(problems, doubts)
    check_moisture(problems, "moisture content of the stock", stock_mc_percent)
    months = check_months(problems, air)
    problems.raise_if_any()
    angles = np.radians(board.ring_angle_deg), np.radians(board.grain_slope_deg)
    mids = width_strain(board.wood, *angles, stock_mc_percent, months.mc_percent)
    samples = sampled_strain(
        board.wood, *angles, stock_mc_percent, months.mc_percent, months.share_of_damp(), sample_points(doubts)
    )
    remarks = board.wood.remarks + months.remarks
    dry, damp = months.driest, months.dampest
    return YearMovement(
        months,
        float(stock_mc_percent),
        tuple(_movements(mids, samples, board.width_m)),
        *_movements(mids[damp : damp + 1] - mids[dry], samples[damp : damp + 1] - samples[dry], board.width_m),
        remarks,
    )


def _movements(mids: np.ndarray, samples: np.ndarray, width_m: float) -> list[Movement]:
    ranges = zip(*quantile_range(mids, samples), strict=True)
    return [Movement(*(float(strain) * width_m for strain in strains)) for strains in ranges]
