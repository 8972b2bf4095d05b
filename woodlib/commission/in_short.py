"""How a page begins: the title; and what was agreed: the people, the piece, the wood, the house."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from ..brief import Hardware
from ..units import write
from ..words.say import Said, fine_length, length, percent, say
from .card import Card, Words, heading, joined, paragraphs, sentences, table
from .judged import Commission
from .seasons import air_of, months_of
from .shop import setting_out_of

_RINGS = {
    0.0: "boards whose rings lie flat (flatsawn)",
    45.0: "boards whose rings lie slantwise (riftsawn)",
    90.0: "boards whose rings stand upright (quartersawn)",
}


def opening(commission: Commission) -> Card:
    """The people, and what was agreed."""
    brief = commission.brief
    people = sentences(brief.client and f"For {brief.client}.", brief.maker and f"From {brief.maker}.")
    agreed = table(("What", "As ordered"), list(_facts(commission)), "The brief, as it was written down")
    return joined(paragraphs(people), agreed, first=commission.first)


def title(commission: Commission) -> Card:
    """What the piece is called, what of its house is not known, and what a page needs to know of it."""
    settings = {"title": commission.brief.title, "units": commission.page_units}
    known = paragraphs(commission.year.not_known)
    return joined(heading(commission.brief.title, 1), known, first=commission.first, settings=settings)


def _facts(commission: Commission) -> Iterator[tuple[Words, Words]]:
    brief = commission.brief
    piece = brief.piece
    yield (
        "Piece",
        say(
            "{kind}, {width} across the grain, {long} along it, {thick} thick when finished",
            kind=piece.kind,
            width=length(piece.width_m),
            long=length(piece.length_m),
            thick=length(piece.thickness_m),
        ),
    )
    wide = piece.border_width_m
    yield "Border", say("{wide} wide, within that size", wide=length(wide)) if wide else "none asked for"
    yield (
        "Wood",
        say(
            f"{brief.stock.species}, {_rings(piece.ring_angle_deg)}, its moisture {{stock}} of its dry weight when it is cut",
            stock=percent(brief.stock.moisture_percent()),
        ),
    )
    finish = brief.table_finish()  # an ordered finish keeps its name, whatever kind it is reckoned as
    yield "Finish", (replace(finish, name=brief.finish.name) if finish.coats else finish).label
    driest, dampest = months_of(commission)
    measured = "in the months that were measured, " if commission.year.partial else ""
    yield (
        "Your house",
        say(
            f"{measured}air {{air}} humidity; the wood follows slowly and is driest in {driest}, dampest in {dampest}",
            air=air_of(commission),
        ),
    )
    if brief.hardware:
        for item, place in zip(brief.hardware, setting_out_of(commission).hardware, strict=True):
            yield f"Hardware: {item.name}", _hardware(item, commission, place.slots is not None)
    if brief.notes.strip():
        yield "What you asked for", " ".join(brief.notes.split())


def _rings(angle_deg: float) -> str:
    return _RINGS.get(angle_deg, f"rings at {write(angle_deg, 'angle')} to the face")


def _hardware(item: Hardware, commission: Commission, spans: bool) -> Said:
    """What sits in a part whose grain runs with it does not notice the year."""
    apart = length(item.centres_m)
    if not spans and item.runs == "across the grain":
        return say(
            "screws {apart} apart, in a part whose own grain runs that way: a distance that hardly changes", apart=apart
        )
    if item.runs == "along the grain":
        return say("screws {apart} apart along the grain, a distance that hardly changes", apart=apart)
    share = item.centres_m / commission.built.quantities["width"]
    return say(
        "screws {apart} apart across the grain, a distance that changes by up to {most}: one hole becomes a slot",
        apart=apart,
        most=fine_length(share * commission.built.moves.high_m, "up"),
    )
