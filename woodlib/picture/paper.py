"""Text, tables and small pictures that run down pages of paper, as pictures for :func:`woodlib.picture.pdf.sheets_pdf`.

A page is as narrow as A4 and as short as Letter, so that one file prints on both without being scaled.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from .letters import wide
from .scene import Area, Circle, Line, Mark, Picture, Window, Words

PX_MM = 96 / 25.4
WIDTH, HEIGHT, MARGIN = 210.0 * PX_MM, 279.4 * PX_MM, 15.0 * PX_MM
SIZE, LEADING = 12.6, 1.32  # of plain text, px; of its lines
TIGHT = 0.86  # of the room that a text takes at most: what the typefaces of a PDF take in fact


def lines_of(text: str, size: float, room: float) -> list[str]:
    """A text in lines that fit a room, px; a word too long for a line is broken.

    >>> lines_of("a slot is never too long", 10.0, 70.0)
    ['a slot is never', 'too long']
    """
    lines = [""]
    for word in text.split():
        while wide(word, size) * TIGHT > room:
            cut = next(n for n in range(len(word) - 1, 0, -1) if n == 1 or wide(word[:n], size) * TIGHT <= room)
            lines, word = [*lines, word[:cut]], word[cut:]
        longer = f"{lines[-1]} {word}".strip()
        if wide(longer, size) * TIGHT <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return [line for line in lines if line]


@dataclass
class Paper:
    """Pages while they are written; each part goes where the one before it ended, on a new page if it must."""

    title: str
    foot: str = ""
    pages: list[list[Mark]] = field(default_factory=list)
    y: float = 0.0

    def __post_init__(self) -> None:
        self.new_page()

    def new_page(self) -> None:
        """Go on at the top of a fresh page."""
        self.pages.append([])
        self.y = MARGIN

    def room(self, height: float) -> None:
        """See to it that so much, px, stands together on one page."""
        if self.y + height > HEIGHT - MARGIN - 14.0 and self.pages[-1]:
            self.new_page()

    def text(self, text: str, size: float = SIZE, bold: bool = False, indent: float = 0.0, after: float = 4.0) -> None:
        """A paragraph, kept together."""
        lines = lines_of(text, size, WIDTH - 2 * MARGIN - indent)
        step = size * LEADING
        self.room(step * len(lines))
        for line in lines:
            self.y += step
            self._put(Words(MARGIN + indent, self.y, line, "ink", size, "start", bold))
        self.y += after

    def heading(self, text: str, size: float = 14.5) -> None:
        """A heading, with room for what follows it."""
        self.y += 5.0 if self.pages[-1] else 0.0
        self.room(size * 4)
        self.text(text, size, True, after=2.0)

    def items(self, items: Iterable[str], sign: str = "\u2022", size: float = SIZE) -> None:
        """A list; ``sign`` "1" numbers it."""
        for number, item in enumerate(items, start=1):
            self.room(size * LEADING * 2)
            at = self.y + size * LEADING
            page = len(self.pages)
            self.text(item, size, indent=16.0, after=2.0)
            if len(self.pages) > page:
                at = MARGIN + size * LEADING
            self._put(Words(MARGIN, at, f"{number}." if sign == "1" else sign, "ink", size, "start"))
        self.y += 3.0

    def to_fill(self, label: str, share: float = 0.5) -> None:
        """A line to write on, behind its label."""
        self.y += SIZE * 1.7
        begin = MARGIN + 16.0 + wide(label, SIZE) + 4.0
        self._put(Words(MARGIN + 16.0, self.y, label, "quiet", SIZE, "start"))
        self._put(Line([(begin, self.y + 2.0), (MARGIN + share * (WIDTH - 2 * MARGIN), self.y + 2.0)], "ink", 0.7))
        self.y += 6.0

    def table(self, rows: Sequence[Sequence[str]], shares: Sequence[float] = (), size: float = 11.0) -> None:
        """Rows of short texts, the first of them the head; ``shares`` of the width for each column."""
        shares = shares or [1.0 / len(rows[0])] * len(rows[0])
        room, starts = WIDTH - 2 * MARGIN, [sum(shares[:k]) for k in range(len(shares))]
        for number, row in enumerate(rows):
            cells = [lines_of(cell, size, share * room - 6.0) for cell, share in zip(row, shares, strict=True)]
            tall = max(1, *map(len, cells)) * size * LEADING
            self.room(tall + 4.0)
            for start, lines in zip(starts, cells, strict=True):
                for k, line in enumerate(lines):
                    place = MARGIN + start * room, self.y + (k + 1) * size * LEADING
                    self._put(Words(*place, line, "ink", size, "start", number == 0))
            self.y += tall + 4.0
            self._put(Line([(MARGIN, self.y), (WIDTH - MARGIN, self.y)], "grid", 0.8))
        self.y += 6.0

    def picture(self, picture: Picture, width: float, left: float = 0.0) -> None:
        """A small picture, scaled to a width in px."""
        scale = width / picture.width
        self.room(picture.height * scale)
        self.pages[-1] += [_moved(mark, scale, MARGIN + left, self.y) for mark in picture.marks]
        self.y += picture.height * scale + 6.0

    def _put(self, mark: Mark) -> None:
        self.pages[-1].append(mark)

    def finish(self) -> list[Picture]:
        """The pages, each with the foot."""
        foot = Words(MARGIN, HEIGHT - MARGIN + 6.0, self.foot, "quiet", 9.5, "start")
        return [Picture(self.title, WIDTH, HEIGHT, (*marks, foot)) for marks in self.pages]


def _moved(mark: Mark, scale: float, left: float, top: float) -> Mark:
    """A mark scaled and put somewhere else; its numbers are plain."""
    if isinstance(mark, Window):
        moved = tuple(_moved(inner, scale, left, top) for inner in mark.marks)
        return Window([(left + scale * x, top + scale * y) for x, y in _pairs(mark.points)], moved)
    if isinstance(mark, Line | Area):
        return replace(mark, points=[(left + scale * x, top + scale * y) for x, y in _pairs(mark.points)])
    place = {"x": left + scale * float(mark.x), "y": top + scale * float(mark.y)}
    if isinstance(mark, Circle):
        return replace(mark, radius=scale * float(mark.radius), **place)  # type: ignore[arg-type]
    return replace(mark, size=scale * mark.size, **place)  # type: ignore[arg-type]


def _pairs(points: object) -> list[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in points]  # type: ignore[attr-defined]
