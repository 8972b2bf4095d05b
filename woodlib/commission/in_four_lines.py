"""The answer in four lines for somebody who has never thought about wood: we build, why, you will see, you do; and the odds."""

from __future__ import annotations

from ..picture.scene import Area, Line, Mark, Picture, box
from ..restraint.measures import odds_of
from ..studies.through_the_year import HARDLY_M, Month
from ..ways.judge import DECIDERS
from ..ways.verdict import Verdict
from ..words.say import Said, length, say
from .card import Card, Figure, Paragraph, Words, joined, sentences
from .judged import Commission
from .pair import about_odds, glued_odds, piece_year
from .seasons import air_of, months_of

STILL_RH = 10.0
"""A house whose air changes by no more is called steady, %; an assumption of ours."""

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
        better = f" and would build {commission.advised.way.built_as}" if commission.advised.allowed else ""
        return f"{built.way.built_as}, in {wood}, because it was asked for; we advise against it{better}."
    kept = ", with the border you wanted" if brief.piece.border_width_m and built.way.keeps_border else ""
    return sentences(f"{built.way.built_as}, in {wood}{kept}.", built.way.means)


def why(commission: Commission) -> Words:
    """What the air of the house does to the wood, and what would come of holding it."""
    driest, dampest = months_of(commission)
    if commission.whole_moves.mid_m < HARDLY_M:
        if commission.year.partial:
            hardly = "in the months that were measured the wood hardly moves; the others may move it, so room is left for them."
            return sentences(hardly, if_glued(commission) if commission.glued else "")
        air = commission.year.dampest().rh_percent - commission.year.driest().rh_percent
        return f"{'a piece this small' if air > STILL_RH else 'in air as steady as that of your house, wood'} hardly moves."
    moves = say(
        f"wood swells in damp air and shrinks in dry. In your house this piece moves by about {{wide}} from {driest}, its "
        f"driest month, to {dampest}.",
        wide=length(commission.whole_moves.mid_m),
    )
    return sentences(moves, if_glued(commission))


def if_glued(commission: Commission) -> str:
    """What the border would do if it were glued across the ends, by its verdict."""
    glued = commission.glued
    if glued is None:
        return "Room is left for that, so nothing is forced."
    if glued.allowed:
        return "That is little enough for a border that is glued on."
    if glued.judged.not_known:
        return "Whether a border may be glued across its ends cannot be said before the missing months are known."
    told = glued_odds(commission)
    lead = "Glued across its ends, a border would not let it: "
    if told is None:
        return f"{lead}in time it could split."
    return f"{lead}{about_odds(told.likely)} would split in the first years{besides(glued, told.likely)}."


def besides(glued: Verdict, likely: float) -> str:
    """What else speaks against a border that is glued, to follow its odds; nothing where the odds say enough."""
    return _BESIDES.get(DECIDERS[round(float(glued.judged.decides))], "") if likely < _SELDOM else ""


_SELDOM = 0.08
"""Chance below which odds alone are no reason to a client; an assumption of ours."""
_BESIDES = {
    "pulled": ", and each winter it is pulled further than wood can bear",
    "squeezed": ", and the wood, which grows after it is glued, is crushed for good",
    "border": ", and so thin or narrow a border gives way itself",
    "glue": ", and the ends of the glue line may open first",
}
"""What else speaks against a glued border where the odds of a split are low, by what decides."""


def you_will_see(commission: Commission) -> Words:
    """What opens and closes, by how much and when: the likely sizes."""
    opens, (driest, dampest) = commission.built.way.opens, months_of(commission)
    if commission.built.way.holds_width:
        return "nothing, while the glue holds; a fine line along the grain would be a split."
    said = {"dry": stands_in(commission, driest), "damp": stands_in(commission, dampest)}
    if opens is None and said["dry"] == said["damp"]:
        return "nothing that opens: it hardly moves."
    if opens is None:
        return say(f"nothing that opens. In {driest} {{dry}} In {dampest} {{damp}}", **said)
    year = piece_year(commission)
    sizes = {name: _open(_at(year.months, month), "about ") for name, month in (("dry", driest), ("damp", dampest))}
    return say(f"a {opens.name}: in {driest} {{dry}}, in {dampest} {{damp}}. It is meant to be there.", **sizes)


def stands_in(commission: Commission, name: str) -> Words:
    """How the piece stands in a month, in a sentence: its line, or else its width beside that of the day it was made."""
    here, built = _at(piece_year(commission).months, name), commission.built
    if built.way.holds_width:
        return "it keeps its width, held by its glue."
    if built.way.opens is not None:
        return say(f"the {built.way.opens.name} is {{line}}.", line=_open(here, "about ", " wide"))
    what, width = "it", commission.piece.width_m
    if built.way.framed:
        what, width = "the panel in its frame", built.quantities["width"]
    moved = here.goes * width
    if not built.way.solid or abs(moved) < HARDLY_M:
        return f"{what} is as wide as on the day it was made."
    return say(
        f"{what} is about {{moved}} {'wider' if moved > 0 else 'narrower'} than on the day it was made.",
        moved=length(abs(moved)),
    )


def _open(month: Month, about: str, wide: str = "") -> Words:
    """An opening in a month, or that it is not seen."""
    return say(f"{about}{{line}}{wide}", line=length(month.line)) if month.line >= HARDLY_M else "hardly to be seen"


def _at(months: tuple[Month, ...], name: str) -> Month:
    return next(month for month in months if month.name == name)


def you_do(commission: Commission) -> Said:
    """What the client does: the air to keep, and what to stay away from."""
    known = "as it was measured" if commission.year.partial else "as it is now"
    return say(
        f"keep the air of the room {{air}} humidity, {known}, and the piece away from heaters and sun.",
        air=air_of(commission),
    )


def the_odds(commission: Commission) -> Card:
    """The odds of the glued border as a row of pieces, so many of them split; nothing where there are none to tell."""
    told = glued_odds(commission)
    if told is None:
        return Card()
    few, of = odds_of(told.likely)
    words = f"Of {of} such pieces with their borders glued across, about {few} would split in the first years."
    if of > MOST_DRAWN:
        return Card()
    return Card((Figure(row_of_pieces(few, of), words, small=True), Paragraph(words)))


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
            marks += [Area(panel, "past-limit"), Area(split, "split")]
        marks += [Line([*panel, panel[0]], "edge", 1.2), Line([*border, border[0]], "edge", 1.2)]
    rows = -(-of // across)
    return Picture(f"{few} of {of} pieces split", across * (one + gap), rows * (tall + gap), tuple(marks))
