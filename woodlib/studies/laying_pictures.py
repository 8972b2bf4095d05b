"""The picture of laying boards: a log with a board in it, that board's end before and after, five boards glued up."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from ..picture.scene import Area, Circle, Line, Mark, Picture, Window, Words, box
from ..picture.wood import end_outline, moved_end, pith_direction
from ..units.exact import INCH_M
from ..words.decided import Decided, Sliding

THICKNESS_M = INCH_M
BOARDS = 5
BOARD_TIMES, PANEL_TIMES = 6, 3

_LOG_X, _LOG_Y, _LOG_PX_PER_M = 146.0, 158.0, 11.0 / INCH_M
_LOG_RINGS_M = INCH_M * np.arange(0.5, 11.5, 0.5)
_END_X, _END_Y, _END_PX_PER_M = 506.0, 158.0, 46.0 / INCH_M
_END_RINGS_M = INCH_M * np.arange(2.5, 11.6, 0.25)
_PANEL_X, _PANEL_PX_PER_M = 444.0, 13.0 / INCH_M
_SAME_Y, _TURNED_Y = 350.0, 438.0
_POINTS = 7
_RING_STEPS_M = INCH_M * np.array([-0.6, -0.3, 0.0, 0.3])


@dataclass(frozen=True)
class Laid:
    """A board in the log (m), its strains, and its cup (m), above zero where the bark side is hollow."""

    pith_below: Sliding
    pith_aside: Sliding
    width: float
    radial_strain: Sliding
    tangential_strain: Sliding
    cup: Decided

    @property
    def pith_distance(self) -> Sliding:
        """From the pith to the board's middle, m."""
        return np.hypot(self.pith_below, self.pith_aside)

    @property
    def turn_deg(self) -> Sliding:
        """Ring angle in the board's middle: 0 with the pith straight below."""
        return np.degrees(np.arctan2(self.pith_aside, self.pith_below))


def laying_picture(laid: Laid) -> Picture:
    """The whole sheet."""
    marks = [
        Words(14, 20, "The board in its log", "ink", 15, "start", bold=True),
        *_log(laid),
        Words(312, 20, f"Its end, moved {BOARD_TIMES} times too far", "ink", 15, "start", bold=True),
        Words(312, 40, "dashed: as it was; bark side up", "quiet", 14, "start"),
        *_end(laid),
        Words(14, 312, f"Five glued up, cup drawn {PANEL_TIMES} times too large", "ink", 15, "start", bold=True),
        Words(14, _SAME_Y + 5, "all bark up", "quiet", 14, "start"),
        *_panel(laid, [1.0] * BOARDS, _SAME_Y),
        Words(14, _TURNED_Y + 5, "turned in turn", "quiet", 14, "start"),
        *_panel(laid, [1.0, -1.0] * (BOARDS // 2) + [1.0], _TURNED_Y),
    ]
    return Picture("A board in its log, its shape, and a panel of five", 720, 456, tuple(marks))


def _log(laid: Laid) -> list[Mark]:
    scale = _LOG_PX_PER_M
    rings = [Circle(_LOG_X, _LOG_Y, float(radius) * scale, "late-wood", 0.9) for radius in _LOG_RINGS_M]
    left = _LOG_X + (laid.pith_aside - 0.5 * laid.width) * scale
    top = _LOG_Y - (laid.pith_below + 0.5 * THICKNESS_M) * scale
    board = box(left, top, laid.width * scale, THICKNESS_M * scale)
    return [
        Circle(_LOG_X, _LOG_Y, 11.5 * INCH_M * scale, "wood", filled=True),
        *rings,
        Circle(_LOG_X, _LOG_Y, 11.5 * INCH_M * scale, "edge", 5.0),
        Circle(_LOG_X, _LOG_Y, 3.0, "edge", filled=True),
        Area(board, "range"),
        Line([*board, board[0]], "ink", 2.2),
    ]


def _end(laid: Laid) -> list[Mark]:
    scale, middle = _END_PX_PER_M, (_END_X, _END_Y)
    width, thickness, distance = laid.width * scale, THICKNESS_M * scale, laid.pith_distance * scale
    before = end_outline(_END_X - 0.5 * width, _END_Y - 0.5 * thickness, width, thickness)
    radial, tangential = BOARD_TIMES * laid.radial_strain, BOARD_TIMES * laid.tangential_strain
    after = moved_end(before, middle, laid.turn_deg, distance, radial, tangential)
    across, down = pith_direction(laid.turn_deg)
    x, y = (start + part * (1.0 + radial) * distance for start, part in zip(middle, (across, down), strict=True))
    rings = [
        Circle(x, y, (1.0 + radial) * float(radius) * scale, "late-wood", 1.6 if k % 2 else 0.8)
        for k, radius in enumerate(_END_RINGS_M)
    ]
    return [
        Area(after, "wood-end"),
        Window(after, tuple(rings)),
        Line(np.concatenate([after, after[:1]]), "edge", 1.8),
        Line(np.concatenate([before, before[:1]]), "ghost", 1.6, "5 4"),
    ]


def _panel(laid: Laid, turns: list[float], y: float) -> list[Mark]:
    """Boards with their bark side up (1) or down (-1), bent to their arcs, with both ends of the panel at one height.

    Arcs this shallow are parabolas, so that every height is the board's cup times a number: one bow of the whole panel
    where all lie alike, a bow of each board where they turn.
    """
    one_way, half = len(set(turns)) == 1, 0.5 * THICKNESS_M * _PANEL_PX_PER_M
    board = laid.width * _PANEL_PX_PER_M
    along = np.linspace(-0.5, 0.5, _POINTS)
    marks: list[Mark] = []
    for k, turn in enumerate(turns):
        place = k - 0.5 * (BOARDS - 1)
        bow = (BOARDS**2 - 4.0 * (place + along) ** 2) if one_way else turn * (1.0 - 4.0 * along**2)
        x = (_PANEL_X + board * (place + along)).tolist()
        middle = [laid.cup * (PANEL_TIMES * _PANEL_PX_PER_M * float(part)) + y for part in bow]
        outline = [
            *zip(x, [level - half for level in middle], strict=True),
            *zip(x[::-1], [level + half for level in middle[::-1]], strict=True),
        ]
        marks += [
            Area(outline, "wood-end"),
            Window(outline, tuple(_rings(laid, x[_POINTS // 2], middle[_POINTS // 2], turn))),
            Line([*outline, outline[0]], "edge", 1.2),
        ]
    return marks


def _rings(laid: Laid, x: float, y: Decided, turn: float) -> list[Mark]:
    """The rings next to the middle of a board of the panel: circles about its pith, below it or turned above it."""
    aside, below = turn * laid.pith_aside * _PANEL_PX_PER_M, turn * laid.pith_below * _PANEL_PX_PER_M
    return [
        Circle(x - aside, y + below, (laid.pith_distance + step) * _PANEL_PX_PER_M, "late-wood", 1.2)
        for step in _RING_STEPS_M
    ]
