"""Draw a picture with matplotlib: PNG for viewers without SVG, PDF for the shop wall, figures for a teacher's own use."""

from __future__ import annotations

import numpy as np

from ..words.decided import chosen
from ..words.say import plain_text
from .palette import ROLES
from .scene import Area, Circle, Line, Picture, Window, flatten_points

_POINTS_PER_PX = 0.75  # CSS px at 96 per inch, matplotlib points at 72 per inch
_ANCHOR = {"start": "left", "middle": "center", "end": "right"}


def _array(points) -> np.ndarray:
    return np.array([float(value) for value in flatten_points(points)]).reshape(-1, 2)


def _dashes(dash: str, width: float):
    return (0, [float(part) / max(width, 0.1) for part in dash.split()]) if dash else "solid"


def _artist(mark, units: str):
    from matplotlib.lines import Line2D
    from matplotlib.patches import Circle as Disc
    from matplotlib.patches import Polygon
    from matplotlib.text import Text

    role = ROLES[chosen(mark.role)]
    visible = bool(chosen(mark.shown))
    if isinstance(mark, Line):
        x, y = _array(mark.points).T
        return Line2D(
            x,
            y,
            color=role.light,
            linewidth=mark.width * _POINTS_PER_PX,
            visible=visible,
            linestyle=_dashes(mark.dash, mark.width),
            solid_capstyle="round",
        )
    if isinstance(mark, Area):
        hatch = "////" if role.hatch else None
        return Polygon(
            _array(mark.points),
            closed=True,
            facecolor=role.light,
            edgecolor=ROLES["paper"].light,
            linewidth=0,
            alpha=role.opacity,
            hatch=hatch,
            visible=visible,
        )
    if isinstance(mark, Circle):
        face, edge = (role.light, "none") if mark.filled else ("none", role.light)
        return Disc(
            (float(mark.x), float(mark.y)),
            float(mark.radius),
            facecolor=face,
            edgecolor=edge,
            linewidth=mark.width * _POINTS_PER_PX,
            visible=visible,
        )
    return Text(
        float(mark.x),
        float(mark.y),
        plain_text(mark.text, units),
        color=role.light,
        visible=visible,
        fontsize=mark.size * _POINTS_PER_PX,
        ha=_ANCHOR[mark.anchor],
        va="baseline",
        rotation=mark.turn,
        rotation_mode="anchor",
        fontweight="bold" if mark.bold else "normal",
        parse_math=False,
    )


def figure(picture: Picture, units: str = "both", dots_per_inch: float = 192.0):
    """A matplotlib ``Figure`` of the picture, true to size at 96 px an inch.

    Parameters: ``picture``; ``units`` "both", "inch" or "metric" for the numbers in it; ``dots_per_inch`` for PNG.
    """
    from matplotlib.figure import Figure
    from matplotlib.patches import Polygon

    sheet = Figure(figsize=(picture.width / 96, picture.height / 96), dpi=dots_per_inch, facecolor=ROLES["paper"].light)
    axes = sheet.add_axes((0, 0, 1, 1))
    axes.set_xlim(0, picture.width)
    axes.set_ylim(picture.height, 0)
    axes.set_axis_off()

    def draw(marks, outlines) -> None:
        for mark in marks:
            if isinstance(mark, Window):
                draw(mark.marks, [*outlines, _array(mark.points)])
                continue
            artist = axes.add_artist(_artist(mark, units))
            if outlines:
                artist.set_clip_path(Polygon(outlines[-1], closed=True, transform=axes.transData))

    draw(picture.marks, [])
    return sheet
