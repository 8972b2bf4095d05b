"""Pictures of crossing the grain: half a panel with its border, from above, as it stands in the driest month.

Drawn to scale from mid-length to the end, with the movement enlarged by a stated factor, and the same from the side.
Where the border is glued, cells carry the pull across the grain, from the plane field; a crack is drawn where it would
start and the way it would run. Coordinates are decided numbers: a page works them out from the few numbers that move.
"""

from __future__ import annotations

from typing import Any

from ..picture.scene import Area, Circle, Line, Mark, Picture, Words
from ..words.decided import Decided, in_sight, pick
from .crossing_panels import HALF_COLUMNS, ROWS, Panel, mixed, patterns
from .crossing_sheet import (
    CUT_X,
    END_X,
    HEIGHT_PX,
    MIDDLE_Y,
    PX_PER_M,
    ROLES,
    SHARES,
    TIMES,
    WIDTH_PX,
    Drawn,
    Point,
    head,
    pull_legend,
    rectangle,
    says,
)

OUTER_PIN = 0.74  # share of the half width at which the outer pins sit; common practice, no source
_CRACK_PX = 74.0
_SIDES = range(-HALF_COLUMNS, HALF_COLUMNS + 1)


class Grid:
    """Places of a panel in px: ``at(column, row)`` with columns counted from the middle of the width.

    Row 0 is mid-length, the next are those of ``ROWS``; the last is the outer edge of the border.
    """

    def __init__(self, x: list[list[Any]], off: list[list[Any]]) -> None:
        self._x = x
        self._above = [[MIDDLE_Y - value for value in row] for row in off]
        self._below = [[value + MIDDLE_Y for value in row] for row in off]
        self.glue, self.outer = len(x[0]) - 2, len(x[0]) - 1

    def at(self, column: int, row: int) -> Point:
        """One place."""
        if column == 0:
            return self._x[0][row], MIDDLE_Y
        side = self._above if column < 0 else self._below
        return self._x[abs(column)][row], side[abs(column) - 1][row]

    def along(self, column: int, start: int, stop: int) -> list[Point]:
        """Places along the grain, from one row to another, either way."""
        step = 1 if stop >= start else -1
        return [self.at(column, row) for row in range(start, stop + step, step)]

    def across(self, row: int, reach: int = HALF_COLUMNS) -> list[Point]:
        """Places across the grain, from one side to the other."""
        return [self.at(column, row) for column in range(-reach, reach + 1)]


def _held_grid(drawn: Drawn, panel: Panel) -> Grid:
    """The panel and border, glued: the free shape, and what the border keeps from happening."""
    season, shape = drawn.season, patterns()
    grown = season.across * float(TIMES) + 1.0
    free, held = drawn.half_px * grown, drawn.half_px * (season.misfit * panel.restraint * float(TIMES))
    amounts = tuple(held * amount for amount in panel.shapes)
    rows = [END_X - drawn.half_px * (2.0 * share) if share else END_X for share in ROWS.tolist()]
    rows.append(drawn.border * PX_PER_M * grown + END_X)
    x: list[list[Any]] = [
        [CUT_X, *(mixed(amounts, shape.along[:, column, row]) + place for row, place in enumerate(rows))]
        for column in range(HALF_COLUMNS + 1)
    ]
    off: list[list[Any]] = []
    for column in range(HALF_COLUMNS):
        side = free * ((column + 1) / HALF_COLUMNS)
        off.append([side, *(mixed(amounts, shape.across[:, column, row]) + side for row in range(len(rows)))])
    return Grid(x, off)


def glued_picture(drawn: Drawn, panel: Panel, shade: Decided, warning: Decided, legend: tuple[Any, ...]) -> Picture:
    """A border glued all the way: stress, bent shape, crack, and the way the load takes.

    ``shade`` turns the grip into what the shades are shares of; ``warning`` is 1 where a crack is drawn; ``legend`` has
    a heading and words for the six shades.
    """
    grid = _held_grid(drawn, panel)
    marks = [
        *head(drawn, "The glued border holds the end; further in it is free."),
        *_cells(grid, panel, shade),
        *_grain(grid),
        *_held_border(grid),
        *_crack(grid, warning),
        *_load_path(grid),
        *pull_legend(warning, legend),
    ]
    return Picture("A panel with a border glued across its end, in the driest month", WIDTH_PX, HEIGHT_PX, tuple(marks))


def _cells(grid: Grid, panel: Panel, shade: Decided) -> list[Mark]:
    """Cells of pull across the grain, both sides of the middle as one.

    Each reaches under those drawn after it, towards the middle and the glue line, so that no paper shines through.
    """
    amounts = tuple(amount * shade for amount in panel.shapes)
    edges = [in_sight(share) for share in SHARES]
    marks: list[Mark] = []
    for row in range(grid.glue):
        for column in reversed(range(HALF_COLUMNS)):
            reach = column + 1
            # Only the last row shows where it ends: at the glue line, bent.
            hidden = [grid.at(reach, row + 2), grid.at(-reach, row + 2)] if row + 2 <= grid.glue else []
            seen = grid.across(row + 1, reach)[::-1]
            points = [*grid.across(row, reach), *([seen[0], *hidden, seen[-1]] if hidden else seen)]
            marks.append(Area(points, pick(mixed(amounts, patterns().stress[:, column, row]), edges, ROLES)))
    return marks


def _grain(grid: Grid) -> list[Mark]:
    return [Line(grid.along(column, 0, grid.glue), "late-wood", 0.7) for column in _SIDES[1:-1:2]]


def _held_border(grid: Grid) -> list[Mark]:
    """The glued border, bent with the panel's end, and the outline of the panel, open where it goes on."""
    inner, outer = grid.across(grid.glue), grid.across(grid.outer)
    lines = [
        Line([_between(a, b, share) for a, b in zip(inner[::2], outer[::2], strict=True)], "late-wood", 0.8)
        for share in (0.3, 0.7)
    ]
    ring = [*inner, *outer[::-1]]
    panel = [*grid.along(-HALF_COLUMNS, 0, grid.glue), *inner[1:-1], *grid.along(HALF_COLUMNS, grid.glue, 0)]
    return [Area(ring, "border-wood"), *lines, Line([*ring, ring[0]], "edge", 1.8), Line(panel, "edge", 1.8)]


def _between(first: Point, second: Point, share: float) -> Point:
    return tuple((b - a) * share + a for a, b in zip(first, second, strict=True))


def _crack(grid: Grid, warning: Decided) -> list[Mark]:
    """Where a crack would start, which way it would run, and where the joint may open; seen where a measure warns."""
    x, y = grid.at(0, grid.glue)
    jag = (0.0, 2.2, -1.5, 2.0, -1.8, 1.2, -1.2, 0.8, 0.0)
    points = [(x - _CRACK_PX * number / 8, y + off) for number, off in enumerate(jag)]
    shown = pick(warning, [1.0], [False, True])
    marks: list[Mark] = [Line(points, "paper", 5.5, shown=shown), Line(points, "ink", 2.6, shown=shown)]
    for corner, towards in ((grid.at(-HALF_COLUMNS, grid.glue), 20.0), (grid.at(HALF_COLUMNS, grid.glue), -20.0)):
        marks.append(Line([corner, (corner[0], corner[1] + towards)], "glue", 4.5, shown=shown))
    return marks


def _load_path(grid: Grid) -> list[Mark]:
    """The steps of the load path as numbers in the picture, told beside it."""
    middle_x, middle_y = grid.at(0, grid.glue)
    corner_x, corner_y = grid.at(-HALF_COLUMNS, grid.glue)
    outer_x, _ = grid.at(0, grid.outer)
    marks: list[Mark] = []
    for number, (x, y) in enumerate(
        (
            ((middle_x + outer_x) * 0.5, middle_y - 22.0),
            (corner_x - 24.0, corner_y + 20.0),
            (middle_x - 30.0, middle_y + 22.0),
        ),
        1,
    ):
        marks += [
            Circle(x, y, 9.5, "paper", filled=True),
            Circle(x, y, 9.5, "ink", 1.4),
            Words(x, y + 5.0, str(number), "ink", 14, bold=True),
        ]
    return marks


def _free_wood(half: Any, end: Any = END_X, role: str = "wood") -> list[Mark]:
    """A panel that nothing holds, with grain, open where it goes on."""
    ring = rectangle(CUT_X, end, half)
    shares = [column / HALF_COLUMNS for column in _SIDES[1:-1:2]]
    lines = [
        Line([(CUT_X, half * share + MIDDLE_Y), (end, half * share + MIDDLE_Y)], "late-wood", 0.7) for share in shares
    ]
    return [Area(ring, role), *lines, Line(ring, "edge", 1.8)]


def slotted_picture(drawn: Drawn) -> Picture:
    """A border on slotted pins: the panel slides past it."""
    season, half = drawn.season, drawn.half_px
    dry, damp = (swing * float(TIMES) + 1.0 for swing in (season.across, season.across + season.panel_swing))
    outer = drawn.border * PX_PER_M + END_X
    ring = rectangle(END_X, outer, half * (season.along * float(TIMES) + 1.0))
    middle = (outer - END_X) * 0.4 + END_X
    marks = [
        *head(drawn, "The panel slides past the border; nothing is held."),
        *_free_wood(half * dry),
        Area(ring, "border-wood"),
        *(
            Line([_between(ring[0], ring[1], share), _between(ring[3], ring[2], share)], "late-wood", 0.8)
            for share in (0.25, 0.75)
        ),
        Line([*ring, ring[0]], "edge", 1.8),
    ]
    for side in (-OUTER_PIN, OUTER_PIN):
        ends = [(middle, half * travel * side + MIDDLE_Y) for travel in (dry, damp)]
        marks += [Line(ends, "edge", 7.0), Line(ends, "gap", 4.6), Circle(*ends[0], 2.6, "metal", filled=True)]
    marks += [
        Circle(middle, MIDDLE_Y, 2.6, "metal", filled=True),
        *says(
            (
                ("Pins through the border:", True),
                ("the middle one is fast in a round hole,", False),
                ("the outer ones slide in slots.", False),
                ("", False),
                ("Dashed: as it was put together.", False),
                ("In the driest month the border stands", False),
                ("out past the panel at both corners.", False),
            )
        ),
    ]
    return Picture("A panel with a border on slotted pins, in the driest month", WIDTH_PX, HEIGHT_PX, tuple(marks))


def same_grain_picture(drawn: Drawn) -> Picture:
    """Strips along the long edges, grain with the panel's: all of it moves together."""
    dry = drawn.season.across * float(TIMES) + 1.0
    strip = drawn.border * PX_PER_M
    whole = drawn.half_px + strip
    panel = drawn.half_px * dry
    marks = [
        *head(drawn, "Grain with grain: all of it moves together.", whole),
        *_free_wood(whole * dry, role="border-wood"),
        *_free_wood(panel),
        *says(
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
