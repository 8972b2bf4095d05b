"""A text to show, as data: headings, paragraphs, lists, tables, figures; a template makes HTML of it, a terminal gets lines.

Words are anything sayable: text, a number to show, a pick, or a sentence of these; the reader's own system stands first.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import Any, ClassVar

from markupsafe import Markup, escape

from ..picture.palette import ROLES
from ..picture.scene import Picture
from ..picture.svg import picture_address
from ..templates import template
from ..units import FORMATS
from ..words.decided import Pick, now
from ..words.say import Number, Said, plain_text

Words = str | Number | Said | Pick
_STROKES = {"fine": "solid", "watch": "double", "stop": "dashed"}


@dataclass(frozen=True)
class Heading:
    """A heading of a rank; ``new_page`` where paper begins a sheet."""

    kind: ClassVar[str] = "heading"
    words: Words
    rank: int = 3
    new_page: bool = False


@dataclass(frozen=True)
class Paragraph:
    """A paragraph; ``lead`` is what stands out at its beginning."""

    kind: ClassVar[str] = "paragraph"
    words: Words
    lead: Words = ""


@dataclass(frozen=True)
class List:
    """A list, numbered where the order matters; ``ticks`` gives every item a box to tick, on screen and on paper."""

    kind: ClassVar[str] = "list"
    items: tuple[Words, ...]
    ordered: bool = False
    ticks: bool = False


@dataclass(frozen=True)
class Table:
    """A table with a caption; the first cell of every row names the row."""

    kind: ClassVar[str] = "table"
    head: tuple[Words, ...]
    rows: tuple[tuple[Words, ...], ...]
    caption: Words


@dataclass(frozen=True)
class Figure:
    """A drawing as a still, which any viewer shows; on a narrow screen it is scrolled rather than shrunk, unless ``small``."""

    kind: ClassVar[str] = "figure"
    picture: Picture
    words: Words
    small: bool = False

    def address(self, told: Callable[[Words], str]) -> str:
        """The drawing as a ``data:`` address."""
        return picture_address(self.picture, told(self.words))


@dataclass(frozen=True)
class Folded:
    """Blocks that a reader opens; paper shows them open."""

    kind: ClassVar[str] = "folded"
    summary: Words
    inside: tuple[Block, ...]


@dataclass(frozen=True)
class Judged:
    """Blocks with the mark of a judgement beside them: ``tone`` fine, watch or stop."""

    kind: ClassVar[str] = "judged"
    tone: str
    inside: tuple[Block, ...]

    @property
    def stroke(self) -> str:
        """How the mark is drawn, so that it is told apart without colour."""
        return _STROKES[self.tone]

    @property
    def colour(self) -> str:
        """The colour of the mark where no style sheet of the kit is at hand."""
        return ROLES[self.tone].light


def _lines(block: Block, tell: Callable[[Words], str]) -> Iterator[str]:
    """A block as plain text."""
    match block:
        case Heading():
            yield tell(block.words)
        case Paragraph():
            yield " ".join(text for text in (tell(block.lead), tell(block.words)) if text)
        case List():
            for number, item in enumerate(block.items, 1):
                yield f"{f'{number}.' if block.ordered else '-'} {'[ ] ' if block.ticks else ''}{tell(item)}"
        case Table():
            yield tell(block.caption)
            yield from (" | ".join(map(tell, row)) for row in (block.head, *block.rows))
        case Figure():
            yield from (block.picture.title, tell(block.words))
        case Folded() | Judged():
            if isinstance(block, Folded):
                yield tell(block.summary)
            for inner in block.inside:
                yield from _lines(inner, tell)


Block = Heading | Paragraph | List | Table | Figure | Folded | Judged


@dataclass(frozen=True)
class Card:
    """Blocks to show one after the other; ``settings`` tell a page its title and its units."""

    blocks: tuple[Block, ...] = ()
    first: str = "customary"
    settings: Mapping[str, str] = field(default_factory=dict)

    @property
    def html(self) -> str:
        """The card as HTML, everything in it escaped."""
        tell = partial(told, first=self.first)
        return template("commission/templates/card.html").render(blocks=self.blocks, told=tell, plain=tell)

    @property
    def switched_html(self) -> str:
        """The card as HTML for a page that shows one system at a time and can change it; see :func:`switched`."""
        return template("commission/templates/card.html").render(blocks=self.blocks, told=switched, plain=self._in_one)

    def _in_one(self, words: Words) -> str:
        """Words in the reader's own system alone."""
        return plain_text(words, "inch" if self.first == "customary" else "metric")

    @property
    def text(self) -> str:
        """The card as plain text."""
        tell = partial(told, first=self.first)
        return "\n".join(line for block in self.blocks for line in _lines(block, tell))

    def _repr_mimebundle_(self, include: Any = None, exclude: Any = None):
        return {"text/html": self.html, "text/plain": self.text}, {
            "woodlib": dict(self.settings)
        } if self.settings else {}

    def __str__(self) -> str:
        return self.text


NOTHING = Card()


def told(words: Words, first: str = "customary") -> str:
    """Anything sayable as text, with the system that is written ``first``: customary or metric.

    >>> from woodlib.words.say import length, say
    >>> told(say("leave {gap}", gap=length(0.0061, "up")), "metric")
    'leave 7 mm (9/32 in)'
    """
    if isinstance(words, Number):
        return FORMATS[words.kind].text(float(now(words.value)), first=first, rounding=words.rounding)
    if isinstance(words, Pick):
        return told(words.chosen, first)
    if isinstance(words, Said):
        return "".join(told(part, first) for part in words.parts)
    return str(words)


def switched(words: Words) -> Markup:
    """Anything sayable as HTML in which a page's switch shows one of two systems; no number is broken from its unit.

    >>> from woodlib.words.say import length, say
    >>> print(switched(say("leave {gap}", gap=length(0.0061, "up"))))
    leave <span class="n inch">1/4 in</span><span class="n metric">7 mm</span>
    """
    if isinstance(words, Number):
        systems = ("",) if len(FORMATS[words.kind].parts) == 1 else ("inch", "metric")
        return Markup("").join(
            _NUMBER.format(system and f" {system}", words.text(system or "inch")) for system in systems
        )
    if isinstance(words, Pick):
        return switched(words.chosen)
    if isinstance(words, Said):
        return Markup("").join(map(switched, words.parts))
    return escape(words)


_NUMBER = Markup('<span class="n{}">{}</span>')


def paragraphs(*texts: Words) -> Card:
    """Plain paragraphs; empty ones are left out."""
    return Card(tuple(Paragraph(text) for text in texts if text))


def sentences(*parts: Words) -> Words:
    """Sentences one after the other; empty ones are left out."""
    kept = [part for part in parts if part]
    spaced = [piece for part in kept for piece in (part, " ")][:-1]
    return Said(tuple(spaced)) if kept else ""


def listed(items: Sequence[Words], ordered: bool = False, ticks: bool = False) -> Card:
    """A list, numbered where the order matters; ``ticks`` to tick off."""
    return Card((List(tuple(items), ordered, ticks),))


def table(head: Sequence[Words], rows: Sequence[Sequence[Words]], caption: Words) -> Card:
    """A table with a caption; the first cell of every row names the row."""
    return Card((Table(tuple(head), tuple(map(tuple, rows)), caption),))


def figure(picture: Picture, words: Words) -> Card:
    """A drawing, with what it shows in words."""
    return Card((Figure(picture, words),))


def folded(summary: Words, inside: Card) -> Card:
    """A card that a reader opens; paper shows it open."""
    return Card((Folded(summary, inside.blocks),), inside.first, inside.settings)


def judged(tone: str, inside: Card) -> Card:
    """A card with the mark of a judgement beside it."""
    return Card((Judged(tone, inside.blocks),), inside.first, inside.settings)


def heading(text: Words, rank: int = 3, new_page: bool = False) -> Card:
    """A heading of a rank; ``new_page`` where paper begins a sheet."""
    return Card((Heading(text, rank, new_page),))


def joined(*cards: Card, first: str = "customary", settings: Mapping[str, str] | None = None) -> Card:
    """Several cards as one; ``first`` is the system that its numbers are written in first."""
    return Card(tuple(block for card in cards for block in card.blocks), first, settings or {})
