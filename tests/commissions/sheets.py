"""What is wrong with a drawing, found from its marks: labels outside the sheet, on each other, or turned into noise."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from woodlib.picture.scene import Picture, Words, walk
from woodlib.words.decided import chosen
from woodlib.words.say import plain_text

# Widths of letters in a common sans serif, as shares of the letter height; measured on one free typeface, then rounded up.
NARROW = dict.fromkeys("ijl.,:;'|!", 0.3) | dict.fromkeys("ftr()/- \u00a0", 0.38)
WIDE = dict.fromkeys("mwMW%@", 0.92)
OTHERS, CAPITALS = 0.58, 0.68
ASCENT, DESCENT = 0.74, 0.2
SLACK = 1.0  # px by which two boxes may touch


class Label(NamedTuple):
    """A label with the box that it fills, px."""

    text: str
    left: float
    top: float
    right: float
    low: float


def wide(text: str, size: float) -> float:
    """About how wide a text is, px.

    >>> round(wide("7/8 in", 15.0))
    42
    """
    return size * sum({**NARROW, **WIDE}.get(c, CAPITALS if c.isupper() else OTHERS) for c in text)


def labels(picture: Picture, units: str = "both") -> Iterator[Label]:
    """Every label that is shown, with its box."""
    for mark in walk(picture.marks):
        if isinstance(mark, Words) and chosen(mark.shown):
            text = plain_text(mark.text, units)
            if not text.strip():
                continue
            x, y, long = float(mark.x), float(mark.y), wide(text, mark.size)
            begin = {"start": 0.0, "middle": -0.5, "end": -1.0}[mark.anchor] * long
            spread = (begin, -ASCENT * mark.size, begin + long, DESCENT * mark.size)
            if mark.turn:  # a quarter turn counter-clockwise: along becomes upward
                spread = (spread[1], -spread[2], spread[3], -spread[0])
            yield Label(text, x + spread[0], y + spread[1], x + spread[2], y + spread[3])


def faults(picture: Picture, units: str = "both") -> list[str]:
    """What a reader would stumble over, a sentence each."""
    told = list(labels(picture, units))
    found = [
        f"{label.text!r} runs off the sheet"
        for label in told
        if label.left < -SLACK
        or label.top < -SLACK
        or label.right > picture.width + SLACK
        or label.low > picture.height + SLACK
    ]
    found += [f"{one.text!r} lies on {other.text!r}" for one, other in combinations(told, 2) if _overlap(one, other)]
    return found


def _overlap(one: Label, other: Label) -> bool:
    return (
        min(one.right, other.right) - max(one.left, other.left) > SLACK
        and min(one.low, other.low) - max(one.top, other.top) > 2 * SLACK
    )
