"""Pictures of crossing the grain: half a panel with its rim, from above, as it stands in the driest month.

Drawn to scale from mid-length to the end, with the movement enlarged by a stated factor. Where the rim is glued, cells
carry the pull across the grain, from the plane field; a crack is drawn where it would start and the way it would run.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from ..figures.scene import Area, Circle, Line, Mark, Picture, Words, box
from ..reading.decided import Decided, pick
from ..reading.say import length, say
from .crossing_numbers import HALF_COLUMNS, INCH_M, ROWS_M, Geometry, Season, patterns

WIDTH_PX, HEIGHT_PX = 720.0, 452.0
TIMES = 12  # movement is drawn this many times too large
PX_PER_M = 9.6 / INCH_M
MIDDLE_Y, CUT_X = 228.0, 26.0  # middle of the width, and where the panel is cut at mid-length
OUTER_PIN = 0.84  # share of the half width at which the outer pins sit; common practice, no source
ROLES = ("squeezed", "at-rest", "pull-1", "pull-2", "pull-3", "pull-4")
SHARES = (-0.02, 0.05, 0.2, 0.35, 0.5)  # of the strength, between the roles
_COLUMN_X = 318.0
_CRACK_PX = 74.0
_SIDES = np.arange(-HALF_COLUMNS, HALF_COLUMNS + 1)


@dataclass(frozen=True)
class Drawn:
    """What every picture shows: the sizes of panel and rim, and the smooth numbers of both and of the year."""

    width_m: float
    rim_m: float
    geometry: Geometry
    season: Season


def glued_picture(drawn: Drawn, shade: Decided, warning: Decided, legend: tuple[Any, ...]) -> Picture:
    """A rim glued all the way: stress, bent shape, crack, and the way the load takes.

    ``shade`` turns the stress of the patterns into what the shades are shares of; ``warning`` is 1 where a crack is
    drawn; ``legend`` has words for the six shades.
    """
    grid = _glued_grid(drawn)
    marks = [
        *_head(drawn, "The glued rim holds the end; further in the panel is free."),
        *_cells(drawn, grid, shade),
        *_grain(grid),
        *_rim(drawn),
        _outline(grid),
        *_crack(grid, warning),
        *_load_path(grid),
        *_legend(warning, legend),
    ]
    return Picture("A panel with a rim glued across its end, in the driest month", WIDTH_PX, HEIGHT_PX, tuple(marks))


def slotted_picture(drawn: Drawn) -> Picture:
    """A rim on slotted pins: the panel slides past it."""
    season, half = drawn.season, drawn.width_m / 2
    grid = _free_grid(drawn.width_m, season)
    travels = [OUTER_PIN * half * (1.0 + TIMES * move) for move in (season.across, season.across + season.panel_swing)]
    middle = _x(ROWS_M[-1]) + PX_PER_M * 0.4 * drawn.rim_m
    marks = [
        *_head(drawn, "The panel slides past the rim; nothing is held."),
        Area(_ring(grid), "wood"),
        *_grain(grid),
        *_rim_free(drawn),
        _outline(grid),
    ]
    for side in (-1.0, 1.0):
        ends = [(middle, MIDDLE_Y + side * PX_PER_M * travel) for travel in travels]
        marks += [Line(ends, "edge", 10.0), Line(ends, "gap", 7.0), Circle(*ends[0], 3.2, "metal", filled=True)]
    marks += [
        Circle(middle, MIDDLE_Y, 3.2, "metal", filled=True),
        *_says(
            (
                ("Pins through the rim:", True),
                ("the middle one is fast in a round hole,", False),
                ("the outer ones slide in slots.", False),
                ("", False),
                ("Dashed: as it was glued up.", False),
                ("In the driest month the rim stands out", False),
                ("past the panel at both corners.", False),
            )
        ),
    ]
    return Picture("A panel with a rim on slotted pins, in the driest month", WIDTH_PX, HEIGHT_PX, tuple(marks))


def same_grain_picture(drawn: Drawn) -> Picture:
    """Strips along the long edges, grain with the panel's: all of it moves together."""
    season, whole = drawn.season, drawn.width_m + 2.0 * drawn.rim_m
    grid = _free_grid(whole, season)
    panel = _free_grid(drawn.width_m, season)
    seams = [Line(panel[k], "edge", 1.4) for k in (0, -1)]
    marks = [
        *_head(drawn, "Grain with grain: all of it moves together.", whole),
        Area(_ring(grid), "border-wood"),
        Area(_ring(panel), "wood"),
        *_grain(grid),
        *seams,
        _outline(grid),
        *_says(
            (
                ("Strips along the long edges,", True),
                ("their grain running with the panel's.", False),
                ("", False),
                ("Nothing is held back. The ends show", False),
                ("end grain; leave room beside the edges.", False),
                ("", False),
                ("Dashed: as it was glued up.", False),
            )
        ),
    ]
    return Picture("A panel with strips along its long edges, in the driest month", WIDTH_PX, HEIGHT_PX, tuple(marks))


def _x(along_m):
    return CUT_X + PX_PER_M * along_m


def _mirrored(quarter: np.ndarray, odd: bool) -> np.ndarray:
    """Half the width made whole, shape (columns, ...)."""
    other = -quarter if odd else quarter
    return np.concatenate([other[:0:-1], quarter])


def _placed(x_m: np.ndarray, across_m: np.ndarray, y_m: np.ndarray, along_m: np.ndarray) -> np.ndarray:
    """Points in px from places and their movement, shape (..., 2)."""
    return np.stack([_x(y_m + TIMES * along_m), MIDDLE_Y + PX_PER_M * (x_m + TIMES * across_m)], -1)


def _glued_grid(drawn: Drawn) -> np.ndarray:
    """The panel's grid in px, shape (columns, rows, 2)."""
    season, geometry = drawn.season, drawn.geometry
    misfit = season.along - season.across
    x = (_SIDES / HALF_COLUMNS * drawn.width_m / 2)[:, None]
    across = season.along * x + misfit * _mirrored(geometry.across_m, odd=True)
    along = season.along * ROWS_M + misfit * _mirrored(geometry.along_m, odd=False)
    return _placed(np.broadcast_to(x, across.shape), across, np.broadcast_to(ROWS_M, across.shape), along)


def _free_grid(width_m: float, season: Season) -> np.ndarray:
    x = np.broadcast_to((_SIDES / HALF_COLUMNS * width_m / 2)[:, None], (_SIDES.size, ROWS_M.size))
    y = np.broadcast_to(ROWS_M, x.shape)
    return _placed(x, season.across * x, y, season.along * y)


def _ring(grid: np.ndarray) -> np.ndarray:
    return np.concatenate([grid[0], grid[1:-1, -1], grid[-1, ::-1]])


def _outline(grid: np.ndarray) -> Line:
    # Open at mid-length, where the panel goes on.
    return Line(_ring(grid), "edge", 1.8)


def _cells(drawn: Drawn, grid: np.ndarray, shade: Decided) -> list[Mark]:
    """Cells of pull across the grain; the two halves of the width share their decisions."""
    amounts = [Decided("+", amount, 0.0) for amount in drawn.geometry.pull.tolist()]
    edges = [Decided("+", share, 0.0) for share in SHARES]
    # Half a px of overlap, so that no paper shines through between cells.
    corners = np.stack([grid[:-1, :-1], grid[:-1, 1:], grid[1:, 1:], grid[1:, :-1]], axis=2)
    corners = corners + np.array([(0.0, 0.0), (0.6, 0.0), (0.6, 0.6), (0.0, 0.6)])
    marks: list[Mark] = []
    for column, rows in enumerate(np.moveaxis(patterns(), 0, -1).tolist()):
        for row, pattern in enumerate(rows):
            total: Any = amounts[0] * pattern[0]
            for amount, part in zip(amounts[1:], pattern[1:], strict=True):
                total = total + amount * part
            role = pick(total * shade, edges, ROLES)
            marks += [Area(corners[place, row], role) for place in (HALF_COLUMNS + column, HALF_COLUMNS - 1 - column)]
    return marks


def _grain(grid: np.ndarray) -> list[Mark]:
    return [Line(grid[column], "late-wood", 0.9 if column % 4 else 0.5) for column in range(1, len(grid) - 1, 2)]


def _rim(drawn: Drawn) -> list[Mark]:
    """The glued rim, bent with the panel's end."""
    season, geometry = drawn.season, drawn.geometry
    misfit = season.along - season.across
    x = _SIDES / HALF_COLUMNS * drawn.width_m / 2
    edges = []
    for place, quarter in zip((0.0, drawn.rim_m), geometry.rim_m, strict=True):
        across = season.along * x + misfit * _mirrored(quarter[:, 0], odd=True)
        along = season.along * ROWS_M[-1] + season.across * place + misfit * _mirrored(quarter[:, 1], odd=False)
        edges.append(_placed(x, across, np.full(x.shape, ROWS_M[-1] + place), along))
    return _rim_marks(*edges)


def _rim_free(drawn: Drawn) -> list[Mark]:
    season = drawn.season
    x = _SIDES / HALF_COLUMNS * drawn.width_m / 2
    edges = [
        _placed(
            x,
            season.along * x,
            np.full(x.shape, ROWS_M[-1] + place),
            np.full(x.shape, season.along * ROWS_M[-1] + season.across * place),
        )
        for place in (0.0, drawn.rim_m)
    ]
    return _rim_marks(*edges)


def _rim_marks(inner: np.ndarray, outer: np.ndarray) -> list[Mark]:
    ring = np.concatenate([inner, outer[::-1]])
    lines = [Line(inner + (outer - inner) * share, "late-wood", 0.8) for share in (0.2, 0.4, 0.6, 0.8)]
    return [Area(ring, "border-wood"), *lines, Line([*ring, ring[0]], "edge", 1.8)]


def _crack(grid: np.ndarray, warning: Decided) -> list[Mark]:
    """Where a crack would start, which way it would run, and where the joint may open; seen where a measure warns."""
    x, y = grid[HALF_COLUMNS, -1]
    shares = np.linspace(0.0, 1.0, 9)
    jag = np.array([0.0, 2.2, -1.5, 2.0, -1.8, 1.2, -1.2, 0.8, 0.0])
    points = np.column_stack([x - _CRACK_PX * shares, y + jag])
    shown = pick(warning, [1.0], [False, True])
    marks: list[Mark] = [Line(points, "paper", 5.5, shown=shown), Line(points, "ink", 2.6, shown=shown)]
    for corner, towards in ((grid[0, -1], 1.0), (grid[-1, -1], -1.0)):
        marks.append(Line([corner, corner + np.array([0.0, 20.0 * towards])], "glue", 4.5, shown=shown))
    return marks


def _load_path(grid: np.ndarray) -> list[Mark]:
    """The steps of the load path as numbers in the picture, told beside it."""
    middle_x, middle_y = grid[HALF_COLUMNS, -1]
    places = [
        (middle_x + 20.0, middle_y + 22.0),
        (grid[0, -1][0] - 24.0, grid[0, -1][1] + 20.0),
        (middle_x - 30.0, middle_y - 22.0),
    ]
    marks: list[Mark] = []
    for number, (x, y) in enumerate(places, 1):
        marks += [
            Circle(x, y, 9.5, "paper", filled=True),
            Circle(x, y, 9.5, "ink", 1.4),
            Words(x, y + 5, str(number), "ink", 14, bold=True),
        ]
    return marks


def _head(drawn: Drawn, words: str, whole_m: float | None = None) -> list[Mark]:
    half = (drawn.width_m if whole_m is None else whole_m) / 2
    end = _x(ROWS_M[-1] + (drawn.rim_m if whole_m is None else 0.0))
    top, bottom = MIDDLE_Y - PX_PER_M * half, MIDDLE_Y + PX_PER_M * half
    cut = np.column_stack([CUT_X - 10.0 + 3.0 * np.sin(np.linspace(0, 5 * np.pi, 31)), np.linspace(top, bottom, 31)])
    return [
        Words(12, 24, words, "ink", 16, "start", bold=True),
        Line(cut, "quiet", 1.2),
        Line([(CUT_X, top), (end, top), (end, bottom), (CUT_X, bottom)], "ghost", 1.4, "5 4"),
        Words(
            12,
            442,
            say(f"Half a panel, {{w}} wide; movement {TIMES} times too large.", w=length(drawn.width_m)),
            "quiet",
            14,
            "start",
        ),
    ]


def _legend(warning: Decided, legend: tuple[Any, ...]) -> list[Mark]:
    marks: list[Mark] = [Words(_COLUMN_X, 62, "Pull across the grain, driest month", "ink", 15, "start", bold=True)]
    for k, (role, words) in enumerate(zip(ROLES, legend, strict=True)):
        y = 74 + 22 * k
        marks += [
            Area(box(_COLUMN_X, y, 30, 17), role),
            Line([*box(_COLUMN_X, y, 30, 17), (_COLUMN_X, y)], "quiet", 0.8),
            Words(_COLUMN_X + 40, y + 14, words, "ink", 14, "start"),
        ]
    path = (
        "1  The rim hardly changes its length.",
        "2  Glue passes that hold on as shear,",
        "    most of it near the corners.",
        "3  So across the middle the panel is",
        "    pulled apart: that is where it cracks.",
    )
    marks += [Words(_COLUMN_X, 238 + 21 * k, line, "ink", 14, "start") for k, line in enumerate(path)]
    shown = pick(warning, [1.0], [False, True])
    marks += [
        Line([(_COLUMN_X, 358), (_COLUMN_X + 30, 358)], "ink", 2.6, shown=shown),
        Words(_COLUMN_X + 40, 363, "if it cracks: here, along the grain", "ink", 14, "start", shown=shown),
        Line([(_COLUMN_X, 380), (_COLUMN_X + 30, 380)], "glue", 4.5, shown=shown),
        Words(_COLUMN_X + 40, 385, "or here, along the glue line", "ink", 14, "start", shown=shown),
        Line([(_COLUMN_X, 402), (_COLUMN_X + 30, 402)], "ghost", 1.4, "5 4"),
        Words(_COLUMN_X + 40, 407, "as it was glued up", "ink", 14, "start"),
    ]
    return marks


def _says(lines: tuple[tuple[str, bool], ...]) -> list[Mark]:
    return [
        Words(_COLUMN_X, 110 + 24 * k, words, "ink", 15, "start", bold=bold)
        for k, (words, bold) in enumerate(lines)
        if words
    ]
