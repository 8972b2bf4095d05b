"""What stands on the pages of a commission, in its order: the one place that the client's page, the shop's and the
notebook follow.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from ..study.study import Study
from .card import Card, heading, joined, paragraphs, sentences
from .care import care_note
from .in_four_lines import four_lines, the_odds
from .in_short import opening, title
from .judged import Commission
from .notes import piece_lines
from .pair import below_the_pair, the_pair
from .ready import stock_ready
from .reasons import why_it_moves
from .shop import shop_cards
from .sources import small_print
from .sure import how_sure
from .what_if import asking, ways_told
from .what_now import mishaps
from .workshop import cautions, cut_list

Entry = Callable[[Commission], Card | Study]


def through_the_year(commission: Commission) -> Card:
    """What is to be seen in the picture of the piece."""
    return joined(
        heading("The piece through the year", 2),
        paragraphs(
            "Left is the driest month of the house, right the dampest. Above, one end of the piece seen from above; below, "
            "its joint in section. The first control changes the way it is built (the glued border, and the ways that suit "
            "this piece best), the others its width and the air of the house."
        ),
    )


def ways_to_slide(commission: Commission) -> Study:
    """The piece built this way or that, with sliders."""
    return commission.study()


def ways_side_by_side(commission: Commission) -> Study:
    """Every way that is compared, with sliders."""
    return commission.compared()


def living_with_it(commission: Commission) -> Card:
    """The care of the piece, and whether it moves as foretold where that was measured."""
    return joined(heading("Living with it", 2), care_note(commission), paragraphs(*piece_lines(commission)))


def for_the_workshop(commission: Commission) -> Card:
    """How the shop's page begins."""
    brief = commission.brief
    people = sentences(brief.client and f"For {brief.client}.", brief.maker and f"From {brief.maker}.")
    return joined(
        heading(f"For the workshop: {brief.title}", 1),
        paragraphs(people, commission.year.not_known, f"Built as {commission.built.way.built_as}."),
        heading("What to cut today", 2),
    )


def setting_out(commission: Commission) -> Card:
    """Parts, blanks, holes, order of cuts and drawings."""
    return joined(heading("Set out, to the last hole", 2), shop_cards(commission))


@dataclass(frozen=True)
class Fold:
    """Entries that a page shows folded, under a summary."""

    summary: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True)
class Kept:
    """Entries that are cut out of the print and kept."""

    entries: tuple[Entry, ...]


@dataclass(frozen=True)
class First:
    """What a page begins with: a study whose picture leads, what stands below it, and the entries beside it."""

    study: Callable[[Commission], Study]
    below: Callable[[Commission], Card]
    entries: tuple[Entry, ...]


CLIENT: tuple[Entry | First | Kept | Fold, ...] = (
    title,
    First(the_pair, below_the_pair, (four_lines, the_odds)),
    Kept((living_with_it,)),
    Fold("What if ...?", (ways_told, asking)),
    Fold("What was agreed", (opening,)),
    Fold("Why wood moves, and how sure we are", (why_it_moves, how_sure)),
)
"""The client's page."""

SHOP: tuple[Entry, ...] = (for_the_workshop, stock_ready, cut_list, setting_out, mishaps, cautions, small_print)
"""The shop's page."""


def entries(contents: Iterable[Entry | First | Kept | Fold]) -> Iterator[Entry]:
    """Every entry of a page in its order, those of its parts among them."""
    for part in contents:
        if isinstance(part, First):
            yield from (part.study, part.below)
        yield from part.entries if isinstance(part, First | Kept | Fold) else (part,)
