"""The answer in four lines for somebody who has never thought about wood: we build, why, you will see, you do; and the odds."""

from __future__ import annotations

from ..picture.scene import Area, Line, Mark, Picture, box
from ..restraint.chance import Probability
from ..restraint.measures import odds_of, odds_words
from ..studies.through_the_year import HARDLY_M, Month
from ..words.say import Said, length, say, whole_percent
from .card import Card, Figure, Paragraph, Words, joined
from .judged import Commission
from .margin import safe_humidity_percent
from .pair import piece_year
from .seasons import months_of

MOST_DRAWN = 30
"""Rarer odds are told, not drawn: nobody counts more pieces than these."""


def four_lines(commission: Commission) -> Card:
    """We build, why, you will see, you do."""
    lines = (
        ("We build", we_build(commission)),
        ("Why", why(commission)),
        ("You will see", you_will_see(commission)),
        ("You do", you_do(commission)),
    )
    return joined(Card(tuple(Paragraph(words, f"{lead}: ") for lead, words in lines)), first=commission.first)


def we_build(commission: Commission) -> Words:
    """How it is built, and whether the border that was wanted stays."""
    built, brief = commission.built, commission.brief
    wood = brief.stock.species
    if not built.allowed:
        return f"{built.way.built_as}, in {wood}, because it was asked for; we advise against it."
    kept = ", with the border you wanted" if brief.piece.border_width_m and built.way.keeps_border else ""
    return f"{built.way.built_as}, in {wood}{kept}."


def why(commission: Commission) -> Words:
    """What the air of the house does to the wood, and what would come of holding it."""
    driest, dampest = months_of(commission)
    wide = length(abs(float(commission.whole_moves.mid_m)))
    if commission.whole_moves.mid_m < HARDLY_M:
        if commission.year.partial:
            return "in the months that were measured the wood hardly moves; the others may move it, so room is left for them."
        return "the air of your house hardly changes, and so the wood hardly moves."
    glued = commission.glued
    moves = say(
        f"in your house the wood is driest in {driest} and dampest in {dampest}; between the two, it moves by "
        "about {wide}.",
        wide=wide,
    )
    if glued is None:
        return say("{moves} Room is left for that, so nothing is forced.", moves=moves)
    if glued.allowed:
        return say("{moves} That is little enough for a border that is glued on.", moves=moves)
    told = _odds(commission)
    if told is None:
        return say("{moves} A border glued across its ends would not let it.", moves=moves)
    few, of = odds_of(told.likely)
    return say(
        f"{{moves}} A border glued across its ends would not let it: about {few} in {of} split in the first years.",
        moves=moves,
    )


def you_will_see(commission: Commission) -> Words:
    """What opens and closes, by how much and when: the likely sizes."""
    year, opens = piece_year(commission), commission.built.way.opens
    driest, dampest = months_of(commission)
    if commission.built.way.holds_width:
        return "nothing, while the glue holds; a fine line along the grain would be a split."
    if opens is None:
        dry, damp = (_at(year.months, name) for name in (driest, dampest))
        framed = commission.built.way.framed
        what = "panel in its frame" if framed else "piece"
        width = commission.built.quantities["width"] if framed else commission.piece.width_m
        return say(
            f"no line that opens: the {what} is about {{dry}} narrower in {driest} and {{damp}} wider in {dampest} than on the "
            "day it is cut.",
            dry=length(max(-dry.goes, 0.0) * width),
            damp=length(max(damp.goes, 0.0) * width),
        )
    sizes = {name: length(_at(year.months, month).line) for name, month in (("dry", driest), ("damp", dampest))}
    return say(f"a {opens.name}: about {{dry}} in {driest}, {{damp}} in {dampest}. It is meant to be there.", **sizes)


def _at(months: tuple[Month, ...], name: str) -> Month:
    return next(month for month in months if month.name == name)


def you_do(commission: Commission) -> Said:
    """What the client does: the air to keep, and what to stay away from."""
    low, high = (whole_percent(percent) for percent in safe_humidity_percent(commission))
    return say(
        "keep the room as it is, between {low} and {high} on a small hygrometer, and the piece away from heaters and sun.",
        low=low,
        high=high,
    )


def the_odds(commission: Commission) -> Card:
    """The odds of the glued border as a row of pieces, so many of them split; nothing where there are none to tell."""
    told = _odds(commission)
    if told is None:
        return Card()
    few, of = odds_of(told.likely)
    words = (
        f"Of {of} such pieces with their borders glued across, about {few} would split in the first years "
        f"(it could be {odds_words(told.low)} to {odds_words(told.high)})."
    )
    if of > MOST_DRAWN:
        return Card((Paragraph(words),))
    return Card((Figure(row_of_pieces(few, of), words, small=True), Paragraph(words)))


def _odds(commission: Commission) -> Probability | None:
    glued = commission.glued
    if glued is None or glued.allowed or glued.panel is None or commission.year.partial:
        return None  # odds of a few months are no odds of the year
    return glued.panel.chance.sound


def row_of_pieces(few: int, of: int) -> Picture:
    """Small pieces in rows, the first of them split."""
    across = min(of, 10)
    one, tall, gap = 30.0, 40.0, 6.0
    marks: list[Mark] = []
    for number in range(of):
        left, top = (number % across) * (one + gap) + 2, (number // across) * (tall + gap) + 2
        panel, border = box(left, top, one, tall - 8), box(left, top + tall - 8, one, 8)
        marks += [Area(panel, "wood"), Area(border, "border-wood")]
        if number < few:
            middle, low = left + 0.5 * one, top + tall - 8
            split = [
                (middle - 3, low),
                (middle + 1, low - 11),
                (middle - 1, low - 20),
                (middle, low - 26),
                (middle + 2, low - 12),
                (middle + 3, low),
            ]
            marks += [Area(panel, "past-limit"), Area(split, "edge")]
        marks += [Line([*panel, panel[0]], "edge", 1.2), Line([*border, border[0]], "edge", 1.2)]
    rows = -(-of // across)
    return Picture(f"{few} of {of} pieces split", across * (one + gap), rows * (tall + gap), tuple(marks))
