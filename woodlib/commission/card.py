"""A text to show: HTML for a page, plain text for a terminal, everything from a brief escaped."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from html import escape

from ..units import FORMATS
from ..words.decided import Pick
from ..words.say import Number, Said


@dataclass(frozen=True)
class Card:
    """``html`` and ``text`` say the same; ``settings`` tell a handout its title and its units."""

    html: str
    text: str
    settings: Mapping[str, str] = field(default_factory=dict)

    def _repr_mimebundle_(self, include=None, exclude=None):
        return {"text/html": self.html, "text/plain": self.text}, {
            "woodlib": dict(self.settings)
        } if self.settings else {}

    def __str__(self) -> str:
        return self.text


def told(words, first: str = "customary") -> str:
    """Anything sayable as text, with the system that is written ``first``: customary or metric.

    >>> from woodlib.words.say import length, say
    >>> told(say("leave {gap}", gap=length(0.0061, "up")), "metric")
    'leave 7 mm (1/4 in)'
    """
    if isinstance(words, Number):
        return FORMATS[words.kind].text(float(words.value), first=first, rounding=words.rounding)
    if isinstance(words, Pick):
        return told(words.chosen, first)
    if isinstance(words, Said):
        return "".join(told(part, first) for part in words.parts)
    return str(words)


def paragraphs(*texts: str) -> Card:
    """Plain paragraphs; empty ones are left out."""
    kept = [text for text in texts if text]
    return Card("".join(f"<p>{escape(text)}</p>" for text in kept), "\n".join(kept))


def listed(items: Sequence[str], ordered: bool = False) -> Card:
    """A list, numbered where the order matters."""
    tag = "ol" if ordered else "ul"
    marks = (f"{number}." for number in range(1, len(items) + 1)) if ordered else ("-" for _ in items)
    html = f"<{tag}>" + "".join(f"<li>{escape(item)}</li>" for item in items) + f"</{tag}>"
    return Card(html, "\n".join(f"{mark} {item}" for mark, item in zip(marks, items, strict=True)))


def table(head: Sequence[str], rows: Sequence[Sequence[str]], caption: str) -> Card:
    """A table with a caption; the first cell of every row names the row."""
    left = 'style="text-align:left"'  # a notebook would set them right
    top = "".join(f'<th scope="col" {left}>{escape(cell)}</th>' for cell in head)
    body = "".join(
        f'<tr><th scope="row" {left}>{escape(row[0])}</th>'
        + "".join(
            f'<td data-head="{escape(name)}" {left}>{escape(cell)}</td>'
            for name, cell in zip(head[1:], row[1:], strict=True)
        )
        + "</tr>"
        for row in rows
    )
    width = "wide" if len(head) > 3 else "narrow"  # a phone shows a wide table as a list
    inside = f"<caption>{escape(caption)}</caption><thead><tr>{top}</tr></thead><tbody>{body}</tbody>"
    html = f'<table class="{width}">{inside}</table>'
    return Card(html, "\n".join([caption, *(" | ".join(row) for row in (head, *rows))]))


def folded(summary: str, inside: Card) -> Card:
    """A card that a reader opens; paper shows it open."""
    html = f'<details class="wl"><summary>{escape(summary)}</summary>{inside.html}</details>'
    return Card(html, f"{summary}\n{inside.text}", inside.settings)


def heading(text: str, rank: int = 3) -> Card:
    """A heading of a rank."""
    return Card(f"<h{rank}>{escape(text)}</h{rank}>", text)


def joined(*cards: Card) -> Card:
    """Several cards as one."""
    settings = {name: value for card in cards for name, value in card.settings.items()}
    return Card("".join(card.html for card in cards), "\n".join(card.text for card in cards), settings)
