"""The picture of a panel over a year: one board's end with its rings, and the whole panel from above, month by month.

Both are drawn to scale, the board larger than the panel, with the movement enlarged by the same stated factor. In the
panel time runs down the sheet: its right edge stands where the panel's edge stands in that month.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from ..picture.scene import Area, Gauge, Line, Mark, Picture, Words, dimension_line, gauge_mark
from ..picture.wood import board_end, end_outline, moved_end
from ..words.say import Number, length, say

WIDTH_PX, HEIGHT_PX = 720.0, 452.0
TIMES = 10  # movement is drawn this many times too large
BOARD_WIDTH_M, BOARD_THICKNESS_M, PITH_DISTANCE_M = 0.127, 0.022225, 0.25
MONTHS = np.linspace(0.0, 12.0, 25)  # places on the time scale, in months from New Year

_BOARD_PX_PER_M, _BOARD_LEFT, _BOARD_MIDDLE = 3000.0, 40.0, 110.0
_PANEL_PX_PER_M, _PANEL_LEFT, _PANEL_TOP, _PANEL_BOTTOM = 400.0, 62.0, 240.0, 414.0
_DOWN = _PANEL_TOP + MONTHS / 12.0 * (_PANEL_BOTTOM - _PANEL_TOP)
_GAUGE_M = 0.05  # as far as a guess of the movement can be marked
_JULY = int(np.argmin(np.abs(MONTHS - 6.5)))
_BOARDS, _LINES_PER_BOARD = 4, 3
_MONTH_NAMES = ((0.5, "Jan"), (2.5, "Mar"), (4.5, "May"), (6.5, "Jul"), (8.5, "Sep"), (10.5, "Nov"))

_BOARD_WORDS = (
    Words(12, 22, "One board of it, seen from its end", "ink", 16, "start", bold=True),
    Words(565, 22, "solid: driest month", "ink", 14, "end"),
    Words(708, 22, "dashed: dampest", "damp", 14, "end"),
)
_PANEL_WORDS = (
    Words(12, 206, "The panel from above, month by month", "ink", 16, "start", bold=True),
    Words(430, 206, "driest", "dry", 14, "end"),
    Words(500, 206, "dampest", "damp", 14, "end"),
    Words(708, 206, "shaded: nine boards in ten", "quiet", 14, "end"),
    *(
        Words(_PANEL_LEFT - 8, _PANEL_TOP + at / 12.0 * (_PANEL_BOTTOM - _PANEL_TOP) + 5, name, "quiet", 14, "end")
        for at, name in _MONTH_NAMES
    ),
)


@dataclass(frozen=True)
class YearOfPanel:
    """What the picture shows, glued up from ``strips``. Strains count from the driest month; arrays run along ``MONTHS``."""

    width_m: float
    strips: int
    ring_angle_deg: float
    radial_strain: float
    tangential_strain: float
    strain: np.ndarray
    below: np.ndarray
    above: np.ndarray
    movement: Number


def year_picture(year: YearOfPanel) -> Picture:
    """The board's end above, the panel's year below."""
    gauge = Gauge("movement", 0.0, _GAUGE_M)
    return Picture("A panel over a year", WIDTH_PX, HEIGHT_PX, (*_board(year), *_panel(year)), gauge)


def _board(year: YearOfPanel) -> list[Mark]:
    width, thickness = BOARD_WIDTH_M * _BOARD_PX_PER_M, BOARD_THICKNESS_M * _BOARD_PX_PER_M
    top, pith = _BOARD_MIDDLE - thickness / 2, PITH_DISTANCE_M * _BOARD_PX_PER_M
    before = _board_before(top, width, thickness)
    strains = TIMES * year.radial_strain, TIMES * year.tangential_strain
    after = moved_end(before, (_BOARD_LEFT + width / 2, _BOARD_MIDDLE), year.ring_angle_deg, pith, *strains)
    after = _laid_level(after[:-2], after[-2], after[-1], before[-2])
    return [
        *_BOARD_WORDS,
        Area(after, "range"),
        *board_end(_BOARD_LEFT, top, width, thickness, year.ring_angle_deg, pith),
        Line(np.vstack([after, after[0]]), "damp", 2.2, "7 5"),
    ]


@lru_cache
def _board_before(top: float, width: float, thickness: float) -> np.ndarray:
    """The board's outline in the driest month, and last the middles of its left and right edge; px, shape (n, 2)."""
    edges = [(_BOARD_LEFT, _BOARD_MIDDLE), (_BOARD_LEFT + width, _BOARD_MIDDLE)]
    return np.vstack([end_outline(_BOARD_LEFT, top, width, thickness), *edges])


def _laid_level(points, left, right, at) -> np.ndarray:
    """Points turned until ``left`` and ``right`` are level, and moved until ``left`` stands ``at``; px."""
    c, s = (right - left) / np.hypot(*(right - left))
    x, y = (points - left).T
    return np.column_stack([x * c + y * s, y * c - x * s]) + at


def _panel(year: YearOfPanel) -> list[Mark]:
    def reach(strain):  # px from the fixed edge
        return year.width_m * _PANEL_PX_PER_M * (1.0 + TIMES * strain)

    def upright(across):
        return np.column_stack([_PANEL_LEFT + across, _DOWN])

    moving = reach(year.strain)
    left = np.array([(_PANEL_LEFT, _PANEL_BOTTOM), (_PANEL_LEFT, _PANEL_TOP)])
    right = upright(moving)
    dry_x, damp_x = _PANEL_LEFT + reach(0.0), right[_JULY, 0]
    shares, ripples, weights = _grain()
    grain = np.stack(
        [_PANEL_LEFT + np.multiply.outer(shares, moving) + ripples, np.broadcast_to(_DOWN, ripples.shape)], -1
    )
    band = np.vstack([upright(reach(year.strain + year.above)), upright(reach(year.strain - year.below))[::-1]])
    return [
        *_PANEL_WORDS,
        *dimension_line(
            (_PANEL_LEFT, 230.0), (dry_x, 230.0), say("{w} wide", w=length(year.width_m)), "quiet", -5.0, 14
        ),
        Area(np.vstack([right, left]), "wood"),
        *(Line(points, "late-wood", weight) for points, weight in zip(grain, weights, strict=True)),
        *(Line(upright(moving * (k / year.strips)), "edge", 0.9) for k in range(1, year.strips)),
        Area(band, "range"),
        Line(np.vstack([left, right, left[0]]), "edge", 1.8),
        gauge_mark(
            (dry_x, _PANEL_TOP),
            (dry_x + _GAUGE_M * TIMES * _PANEL_PX_PER_M, _PANEL_TOP),
            (0.0, _PANEL_BOTTOM - _PANEL_TOP),
        ),
        Line([(dry_x, _PANEL_TOP), (dry_x, _PANEL_BOTTOM + 12)], "dry", 2.0, "7 5"),
        Line([(damp_x, _PANEL_TOP), (damp_x, _PANEL_BOTTOM + 12)], "damp", 2.0, "7 5"),
        *dimension_line((dry_x, _PANEL_BOTTOM + 9), (damp_x, _PANEL_BOTTOM + 9), "", "ink"),
        Words(
            _PANEL_LEFT,
            445,
            say(f"Driest to dampest month: {{move}}. Movement drawn {TIMES} times too large.", move=year.movement),
            "ink",
            15,
            "start",
        ),
    ]


@lru_cache
def _grain() -> tuple[np.ndarray, np.ndarray, list[float]]:
    """Long-grain lines of the panel: share of the width (n,), ripple in px (n, months), weight; always the same boards."""
    noise, count = np.random.Generator(np.random.PCG64(7)), _BOARDS * _LINES_PER_BOARD
    shares = (np.arange(count) + 0.5 + 0.4 * (noise.random(count) - 0.5)) / count
    waves = np.multiply.outer(0.6 + noise.random(count), MONTHS / 12.0) + noise.random(count)[:, None]
    return shares, 1.2 * np.sin(2 * np.pi * waves), [0.7 if k % 3 else 1.2 for k in range(count)]
