"""How sure a commission is of what it tells a client: the ranges, what they rest on, and their limits."""

from __future__ import annotations

from collections.abc import Iterator

from ..restraint.measures import odds_words
from ..words.say import say
from .card import Card, Words, heading, joined, listed
from .judged import Commission
from .pair import glued_odds
from .seasons import months_of


def how_sure(commission: Commission) -> Card:
    """The ranges behind the likely sizes, and where they come from."""
    return joined(heading("How sure we are", 2), listed(list(_said(commission))), first=commission.first)


def _said(commission: Commission) -> Iterator[Words]:
    built, opens = commission.built, commission.built.way.opens
    yield "Sizes on this page are the likely ones. No two boards are alike, and a single one can be well off."
    if opens is not None:
        rule = built.way.sizes[opens.driest]
        bound = {"up": "at most", "down": "at least"}[rule.rounding]
        wide = built.judged.size(opens.driest)
        yield say(
            f"The {opens.name} will be {bound} {{wide}} wide in {months_of(commission)[0]}, nine times in ten.",
            wide=wide,
        )
    told = glued_odds(commission)
    if told is not None:
        yield (
            f"Of pieces with their border glued across, {odds_words(told.likely)} is our best guess at those that split in the "
            f"first years; it could be {odds_words(told.low)} to {odds_words(told.high)}."
        )
    yield from (f"{text[:1].upper()}{text[1:].rstrip('.')}." for text in commission.months.remarks)
    yield (
        "Moisture and movement of wood: Wood Handbook FPL-GTR-190 (2010), equations 4-5 and 13-2. How far held wood can be "
        "stretched: The Structural Conservation of Panel Paintings, Getty 1998. Advice on care: common practice, no source."
    )
