"""How a page begins: title, the people, the answer in short, and the brief as it was agreed."""

from __future__ import annotations

from collections.abc import Iterator

from ..brief import Hardware
from ..restraint.measures import chance_range, crack_words
from ..units import write
from ..ways.judge import DECIDERS
from ..words.say import Said, fine_length, length, say
from .card import Card, Words, heading, joined, paragraphs, sentences, table
from .judged import Commission
from .margin import safe_humidity_percent
from .seasons import airs_of, likely, months_of, outside_m
from .shop import setting_out_of

_RINGS = {0.0: "flatsawn", 45.0: "riftsawn", 90.0: "quartersawn"}


def opening(commission: Commission) -> Card:
    """The people, the answer in short, and the brief as it was agreed."""
    brief = commission.brief
    people = sentences(brief.client and f"For {brief.client}.", brief.maker and f"From {brief.maker}.")
    short = sentences(_built_as(commission), _if_glued(commission), _goes(commission), _to_do(commission))
    rows = list(_facts(commission))
    return joined(
        paragraphs(people, short),
        table(("What", "As ordered"), rows, "The brief"),
        first=commission.first,
    )


def title(commission: Commission) -> Card:
    """What the piece is called, what of its house is not known, and what a page needs to know of it."""
    settings = {"title": commission.brief.title, "units": commission.page_units}
    known = paragraphs(commission.year.not_known)
    return joined(heading(commission.brief.title, 1), known, first=commission.first, settings=settings)


def _built_as(commission: Commission) -> str:
    built, advised = commission.built, commission.advised
    if built.allowed:
        return f"We build it as {built.way.built_as}."
    instead = f" and would build {advised.way.built_as} instead" if advised.allowed else ""
    return f"It is asked for as {built.way.built_as}; we advise against that{instead}."


def _if_glued(commission: Commission) -> str:
    """What the border would do if it were glued across the ends, by its verdict; nothing where that is not compared."""
    glued = commission.glued
    if glued is None or glued.allowed:
        return ""
    if glued.judged.not_known:
        return "Whether a border may be glued across its ends cannot be said before the missing months are known."
    if glued.panel is not None:
        chance = glued.panel.chance.sound
        besides = _BESIDES[DECIDERS[round(float(glued.judged.decides))]] if chance.likely < _SELDOM else ""
        return (
            f"With a border glued across its ends such a panel {crack_words(chance.likely)} in the first years: "
            f"{chance_range(chance)}.{besides}"
        )
    if glued.level == 2:
        return "Glued across the ends, a border could crack it within a few winters."
    return "Glued across the ends, a border may crack it over the years."


_SELDOM = 0.08  # chance below which odds alone are no reason
_BESIDES = {
    "pulled": " And each year it is stretched further than wood bears without a set, so nobody can promise it.",
    "stress": "",
    "squeezed": " But the wood grows after it is glued, more than any season gives back, and is crushed.",
    "border": " But so thin or narrow a border has to follow the panel, and gives way itself.",
    "glue": " But the ends of its glue line bear more than such a joint can promise to, and may open first.",
}
"""What speaks against a glued border where the odds of a split are low, by what decides."""


def _goes(commission: Commission) -> Said:
    brief = commission.brief
    whole = say(
        "In your house {wide} of {wood} grows and shrinks by {size} over the year.",
        wide=length(brief.piece.width_m),
        wood=brief.stock.species,
        size=likely(commission.whole_moves.mid_m),
    )
    if not commission.built.way.framed:
        return whole
    return say(
        "{whole} Built this way the {kind} itself changes by {outside}; the rest happens inside it.",
        whole=whole,
        kind=brief.piece.kind,
        outside=likely(outside_m(commission)),
    )


def _to_do(commission: Commission) -> str:
    year = commission.year
    driest, dampest = round(year.driest().rh_percent), round(year.dampest().rh_percent)
    low, high = safe_humidity_percent(commission)
    short = (
        ""
        if (low, high) == (driest, dampest)
        else f" Short spells outside that do no harm; call us if it stays below {low} or above {high} % for a month."
    )
    whose = "the air that was measured" if year.partial else "your house as it is"
    return (
        f"What you do: it is made for {whose}, from {driest} to {dampest} % relative humidity (a small "
        f"hygrometer shows it); keep it so, and the piece away from heaters.{short}"
    )


def _facts(commission: Commission) -> Iterator[tuple[Words, Words]]:
    brief = commission.brief
    piece = brief.piece
    yield (
        "Piece",
        say(
            "{kind}, {width} across the grain, {long} along it, {thick} thick, finished outside",
            kind=piece.kind,
            width=length(piece.width_m),
            long=length(piece.length_m),
            thick=length(piece.thickness_m),
        ),
    )
    wide = piece.border_width_m
    yield "Border", say("{wide} wide, within that size", wide=length(wide)) if wide else "none asked for"
    stock = write(brief.stock.moisture_percent(), "moisture")
    yield (
        "Wood",
        f"{brief.stock.species}, {_rings(piece.ring_angle_deg)}, at {stock} today (MC: the water in the wood, in "
        "percent of its dry weight)",
    )
    yield "Finish", brief.table_finish().label
    airs, names = airs_of(commission), months_of(commission)
    measured = "of the months that were measured, " if commission.year.partial else ""
    yield (
        "Your house",
        f"{measured}driest in {names[0]} at {airs[0]}, dampest in {names[1]} at {airs[1]} (RH: the relative humidity of the "
        "air, which a hygrometer shows)",
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
    apart = fine_length(item.centres_m)
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
