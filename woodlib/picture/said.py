"""What somebody foretold, drawn into the picture that shows what comes out: a line on its gauge, and the words below."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from ..words.decided import now
from .scene import Circle, Line, Mark, Picture, Words, walk

LINE_PX, SIZE_PX = 24.0, 15.0


@dataclass(frozen=True)
class Foretold:
    """What was said, as it was said; of a quantity also its ``kind`` and its number in SI."""

    words: str
    kind: str = ""
    number: float | None = None


def with_said(picture: Picture, said: Sequence[Foretold]) -> Picture:
    """The same picture with what was said: a line on the gauge for each quantity of its kind, one line of words for each.

    A number beyond the ends of the gauge is told in words alone.
    """
    if not said:
        return picture
    marks: list[Mark] = []
    for number, each in enumerate(said):
        down = picture.height + LINE_PX * (number + 0.65)
        placed = _on_gauge(picture, each)
        marks += placed
        sign = (
            Line([(12, down - 5), (34, down - 5)], "said", 2.4, "6 4")
            if placed
            else Circle(23, down - 5, 4, "said", filled=True)
        )
        marks += [sign, Words(42, down, f"You said: {each.words}", "said", SIZE_PX, "start")]
    return replace(picture, height=picture.height + LINE_PX * len(said), marks=(*picture.marks, *marks))


def _on_gauge(picture: Picture, each: Foretold) -> list[Mark]:
    gauge = picture.gauge
    if gauge is None or each.number is None or each.kind != gauge.kind or not gauge.low <= each.number <= gauge.high:
        return []
    line = next(mark for mark in walk(picture.marks) if isinstance(mark, Line) and mark.role == "said")
    (x0, y0), (x1, y1), (x2, y2) = [(float(now(x)), float(now(y))) for x, y in line.points]  # type: ignore[attr-defined]
    share = (each.number - gauge.low) / (gauge.high - gauge.low)
    x, y = x0 + share * (x1 - x0), y0 + share * (y1 - y0)
    return [Line([(x, y), (x + x2 - x1, y + y2 - y1)], "said", 2.4, "6 4")]
