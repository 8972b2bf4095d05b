"""A sheet of paper at true scale: what is drawn is kept as lines, and then every label is put where nothing is.

Lines and letters are noted on a net of small squares. A label takes the first of its natural places that is free, else
the nearest free place, with a leader that crosses no letters.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np

from ..errors import InputError
from ..picture.letters import wide
from ..picture.scene import Area, Circle, Line, Mark, Picture, Words, box, corners

PX_MM = 96 / 25.4
PAPERS = {"A4": (297.0, 210.0), "Letter": (279.4, 215.9)}  # lying, mm
SCALES = {
    "metric": (10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50),
    "customary": (8, 4, 2, 1, 1 / 2, 1 / 4, 1 / 8, 1 / 16, 1 / 32),
}
MARGIN, BLOCK = 10 * PX_MM, 78.0  # of the frame; of the title block
NET, NEAR = 3.0, 14.0  # of the squares; how near a label needs no leader, px
Spot = tuple[float, float]


def scale_text(scale: float) -> str:
    """A scale as it is written.

    >>> scale_text(0.2), scale_text(2)
    ('1:5', '2:1')
    """
    return f"{scale:g}:1" if scale >= 1 else f"1:{1 / scale:g}"


def scale_in(first: str, long_m: float, room_px: float, most: float) -> float:
    """The largest standard scale at which a length fits its room, never above ``most``; an :class:`InputError` if none."""
    for scale in SCALES[first]:
        if scale <= most and long_m * 1000 * PX_MM * scale <= room_px:
            return scale
    raise InputError(
        f"A piece {long_m:g} m long does not fit a sheet at 1:{1 / SCALES[first][-1]:g}; draw it in parts."
    )


@dataclass
class Sheet:
    """One sheet while it is drawn; ``finish`` puts the labels and hands it over as a picture."""

    title: str
    paper: str = "A4"
    marks: list[Mark] = field(default_factory=list)
    queue: list[tuple[str, Spot, float, bool]] = field(default_factory=list)

    def __post_init__(self) -> None:
        if self.paper not in PAPERS:
            raise InputError(f"paper is {self.paper!r}; choose one of {', '.join(PAPERS)}.")
        self.width, self.height = (side * PX_MM for side in PAPERS[self.paper])
        shape = int(self.height / NET) + 2, int(self.width / NET) + 2
        self.lines, self.letters = np.zeros(shape, bool), np.zeros(shape, bool)
        self.left, self.top = MARGIN, MARGIN
        self.right, self.low = self.width - MARGIN, self.height - MARGIN - BLOCK
        for edge in (self.lines[: int(MARGIN / NET) + 1], self.lines[int(self.low / NET) :]):
            edge[:] = True
        self.lines[:, : int(MARGIN / NET) + 1] = self.lines[:, int(self.right / NET) :] = True
        frame = corners(self.left, self.top, self.right, self.height - MARGIN)
        self.marks.append(Line([*frame, frame[0]], "ink", 1.2))

    def line(self, points: list[Spot], role: str = "ink", width: float = 1.0, dash: str = "") -> None:
        """A line that no label may lie on."""
        self.marks.append(Line(points, role, width, dash))
        self.note(points)

    def note(self, points: list[Spot]) -> None:
        """Keep a line free of labels."""
        for begin, end in zip(points, points[1:], strict=False):
            rows, columns = _squares(begin, end)
            self.lines[rows, columns] = True

    def shape(self, outline: list[Spot], role: str, width: float = 1.6, dash: str = "") -> None:
        """A filled outline; with no role only its edge."""
        if role:
            self.marks.append(Area(outline, role))
        self.line([*outline, outline[0]], "edge" if role else "quiet", width, dash)

    def ring(self, x: float, y: float, radius: float, role: str = "ink", width: float = 1.2) -> None:
        """A circle, kept free as a square."""
        self.marks.append(Circle(x, y, radius, role, width))
        self.note([*box(x - radius, y - radius, 2 * radius, 2 * radius), (x - radius, y - radius)])

    def text(
        self, x: float, y: float, text: str, size: float = 11.0, bold: bool = False, anchor: str = "start"
    ) -> None:
        """A text at a fixed place, which the sheet keeps for it; ``y`` of its base line."""
        self.marks.append(Words(x, y, text, "ink", size, anchor, bold))
        long = wide(text, size)
        left = x - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * long
        self.letters[_slice(y - 0.8 * size, y + 0.25 * size), _slice(left, left + long)] = True

    def label(self, text: str, at: Spot, size: float = 12.0, first: bool = False) -> None:
        """A text that belongs to a place, put when all is drawn; ``first`` before those with no room at their own."""
        self.queue.append((text, at, size, first))

    def dimension(self, begin: Spot, end: Spot, text: str, witness: tuple[Spot, Spot] | None = None) -> None:
        """A measured length with ticks, and thin lines to what is measured."""
        self.line([begin, end], "ink", 0.8)
        for number, (x, y) in enumerate((begin, end)):
            self.line([(x - 3.5, y + 3.5), (x + 3.5, y - 3.5)], "ink", 1.3)
            if witness:
                self.line([witness[number], (x, y)], "quiet", 0.5)
        fits = abs(end[0] - begin[0]) > wide(text, 12.0) + 8 or abs(end[1] - begin[1]) > 20
        self.label(text, ((begin[0] + end[0]) / 2, (begin[1] + end[1]) / 2), first=fits)

    def finish(self, block: Iterable[tuple[str, str]]) -> Picture:
        """Put every label, the longest first as it has the fewest places, then the title block."""
        for text, at, size, _ in sorted(self.queue, key=lambda entry: (not entry[3], -wide(entry[0], entry[2]))):
            if not any(self._put(text, at, share * size) for share in (1.0, 0.9, 0.8, 0.7, 0.62)):
                self.text(*at, text, 0.62 * size)  # a crowded sheet is still a sheet; the lists say the same
        top = self.height - MARGIN - BLOCK
        self.marks.append(Line([(self.left, top), (self.right, top)], "ink", 1.2))
        for number, (name, said) in enumerate(block):
            x, y = (
                self.left + 10 + (self.right - self.left) * (0.5 if number > 2 else 0.0),
                top + 19 + 24 * (number % 3),
            )
            size = min(12.0, 12.0 * ((self.right - self.left) / 2 - 92) / wide(said, 12.0))
            self.marks += [Words(x, y, name, "quiet", 10, "start"), Words(x + 74, y, said, "ink", size, "start")]
        return Picture(self.title, self.width, self.height, tuple(self.marks))

    def _put(self, text: str, at: Spot, size: float) -> bool:
        """Put a text at the nearest free place from which a leader to its own crosses no letters; say whether there is one."""
        long, tall = wide(text, size), 1.05 * size
        rows, columns = int(tall / NET) + 2, int(long / NET) + 2
        taken = np.pad((self.lines | self.letters).cumsum(0, dtype=np.int32).cumsum(1), ((1, 0), (1, 0)))
        counts = taken[rows:, columns:] - taken[:-rows, columns:] - taken[rows:, :-columns] + taken[:-rows, :-columns]
        free_rows, free_columns = np.nonzero(counts == 0)
        x, y = free_columns * NET + long / 2 + NET, free_rows * NET + tall / 2 + NET
        away = np.hypot(np.maximum(abs(x - at[0]) - long / 2, 0), np.maximum(abs(y - at[1]) - tall / 2, 0))
        away = away + 0.15 * abs(x - at[0]) + (y > at[1]) * 2.0
        near = np.argsort(away, kind="stable")
        for best in (*near[:80], *near[80:2000:40], *near[2000::400]):
            middle = float(x[best]), float(y[best])
            edge = (
                min(max(at[0], middle[0] - long / 2), middle[0] + long / 2),
                min(max(at[1], middle[1] - tall / 2), middle[1] + tall / 2),
            )
            short = np.hypot(edge[0] - at[0], edge[1] - at[1]) < NEAR
            if short or not self.letters[_squares(edge, at)].any():
                if not short:
                    self.line([at, edge], "quiet", 0.6)
                self.text(middle[0], middle[1] + 0.34 * size, text, size, anchor="middle")
                return True
        return False


def _slice(low: float, high: float) -> slice:
    return slice(max(0, int(low / NET)), max(0, int(high / NET) + 1))


def _squares(begin: Spot, end: Spot) -> tuple[np.ndarray, np.ndarray]:
    steps = max(2, int(max(abs(end[0] - begin[0]), abs(end[1] - begin[1])) / NET * 2) + 2)
    columns, rows = (np.linspace(one, other, steps) / NET for one, other in zip(begin, end, strict=True))
    return rows.astype(int).clip(0), columns.astype(int).clip(0)
