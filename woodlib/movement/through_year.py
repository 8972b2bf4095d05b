"""Movement across the width month by month, counted from the moisture the stock has today."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..air.year import Year
from ..door import check_kind, check_moisture
from ..errors import Problems
from .board import Board
from .months import MonthlyMoisture, check_months
from .spread import USUAL_DOUBTS, Doubts, Movement, check_doubts, end_effect, spread_about, strain_range


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
    assert months is not None
    angles = np.radians(board.ring_angle_deg), np.radians(board.grain_slope_deg)
    strains = strain_range(board.wood, *angles, stock_mc_percent, months.mc_percent, doubts)
    of_air = end_effect(board.wood, *angles, stock_mc_percent, months.mc_percent, doubts.air_percent)
    dry, damp = months.driest, months.dampest
    between = strains[1][damp] - strains[1][dry]
    swing = spread_about(between, (of_air[dry], of_air[damp]), board.wood, angles[0], doubts)
    remarks = board.wood.remarks + months.remarks
    return YearMovement(
        months,
        float(stock_mc_percent),
        tuple(_movement(three, board.width_m) for three in zip(*strains, strict=True)),
        _movement(swing, board.width_m),
        remarks,
    )


def _movement(strains: Sequence[float], width_m: float) -> Movement:
    low, mid, high = (float(strain) * width_m for strain in strains)
    return Movement(low, mid, high)
