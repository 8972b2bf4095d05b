"""Points of a series with their labels: what was found, what is said of them, and how far apart they lie, as a picture."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

import numpy as np

from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Words, box
from ..picture.svg import picture_address


@dataclass(frozen=True)
class Series:
    """Points with a label each: what was measured or printed, and what the kit or a rule says, in ``unit``."""

    title: str
    unit: str
    found: str  # "printed", "measured"
    told: str  # "by the kit", "by the rule"
    labels: tuple[str, ...]
    measured: tuple[float, ...]
    predicted: tuple[float, ...]
    source: str
    note: str
    places: int = 1

    @property
    def differences(self) -> np.ndarray:
        """What the kit says more than what was measured, of the numbers as they are written, shape (points,)."""
        said, was = (
            np.array([float(f"{value:.{self.places}f}") for value in values])
            for values in (self.predicted, self.measured)
        )
        return np.round(said - was, self.places) + 0.0

    def __str__(self) -> str:
        p = self.places
        lines = [
            f"{label}: {self.found} {was:.{p}f}, {self.told} {said:.{p}f}, {off:+.{p}f}"
            for label, was, said, off in zip(self.labels, self.measured, self.predicted, self.differences, strict=True)
        ]
        return "\n".join([f"{self.title} ({self.unit})", *lines, self.summary, f"Source: {self.source}", self.note])

    @property
    def summary(self) -> str:
        """How far off, on average and at worst."""
        off = np.abs(self.differences)
        worst = self.labels[int(off.argmax())]
        return f"Off by {off.mean():.{self.places}f} on average, by {off.max():.{self.places}f} at worst ({worst})."

    def _repr_mimebundle_(self, include=None, exclude=None) -> dict[str, str]:
        picture = series_picture(self)
        words = "".join(f"<p>{escape(line)}</p>" for line in (self.summary, f"Source: {self.source}", self.note))
        return {"text/plain": str(self), "text/html": scrolling(picture, str(self), self.title) + words}


def scrolling(picture: Picture, told: str, title: str) -> str:
    """A picture as HTML that scrolls sideways where the page is narrow, with keys too; ``told`` says what it shows."""
    image = f'<img alt="{escape(told, quote=True)}" src="{picture_address(picture, title)}"'
    return (
        f'<div style="overflow-x:auto" tabindex="0" role="group" aria-label="{escape(picture.title, quote=True)}">{image} '
        f'style="width:100%;min-width:560px;max-width:{picture.width:g}px"></div>'
    )


def series_picture(series: Series) -> Picture:
    """Two marks for each label, and below them the difference as a bar from zero."""
    count, p = len(series.labels), series.places
    top, low = _scale([*series.measured, *series.predicted]), 0.0
    far = _scale(np.abs(series.differences))
    upper = Frame(left=64, top=70, width=640, height=170, x_low=-0.5, x_high=count - 0.5, y_low=low, y_high=top)
    lower = Frame(left=64, top=322, width=640, height=70, x_low=-0.5, x_high=count - 0.5, y_low=-far, y_high=far)
    lifted = 20 if count > 6 else 0  # long rows of labels stand on two levels
    marks: list[Mark] = [
        Words(14, 20, series.title, "ink", 15, "start", bold=True),
        Circle(70, 38, 5, "dry", filled=True),
        Words(82, 43, f"{series.found}", "ink", 14, "start"),
        Circle(300, 38, 6, "damp", 2.4),
        Words(312, 43, f"{series.told}, {series.unit}", "ink", 14, "start"),
        *upper.axes([], [(value, f"{value:.{p}f}") for value in (0.0, 0.5 * top, top)]),
        *lower.axes([], [(-far, f"-{far:.{p}f}"), (0.0, "0"), (far, f"+{far:.{p}f}")]),
        Words(64, 312, "difference: above the line, the ring says more", "quiet", 14, "start"),
        Line([(64, lower.y(0.0)), (704, lower.y(0.0))], "quiet", 1.2),
    ]
    for k, (label, was, said) in enumerate(zip(series.labels, series.measured, series.predicted, strict=True)):
        x = upper.x(k)
        marks += [
            Line([(x, upper.y(was)), (x, upper.y(said))], "quiet", 1.5),
            Circle(x, upper.y(was), 5, "dry", filled=True),
            Circle(x, upper.y(said), 6, "damp", 2.4),
            Area(box(x - 9, lower.y(max(said - was, 0.0)), 18, lower.y(0.0) - lower.y(abs(said - was))), "range"),
            Words(x, 260 + lifted * (k % 2), label, "quiet", 13),
        ]
    return Picture(series.title, 720, 404, tuple(marks))


def _scale(values: Sequence[float] | np.ndarray) -> float:
    """A round number above all of them."""
    most = max(float(np.max(values)), 1e-9)
    step = 10.0 ** np.floor(np.log10(most))
    return float(
        next(part * step for part in (1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0) if part * step >= 0.999 * most)
    )
