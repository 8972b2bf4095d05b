"""The driest and the dampest month of a commission in words, and how a way to build stands in them."""

from __future__ import annotations

from ..ways.verdict import Verdict
from ..words.say import Said, movement, say, whole_percent
from .card import Words, told
from .judged import Commission

_TINY_M = 0.0004


def air_of(commission: Commission) -> Said:
    """The humidity of the air over the year; the wood follows weeks later."""
    dry, damp = commission.year.driest().rh_percent, commission.year.dampest().rh_percent
    if round(dry) == round(damp):
        return say("near {air}", air=whole_percent(dry))
    return say("between {dry} and {damp}", dry=whole_percent(dry), damp=whole_percent(damp))


def months_of(commission: Commission) -> tuple[str, str]:
    """The names of the driest and of the dampest month."""
    months = commission.months
    return months.names[months.driest], months.names[months.dampest]


def month_sentence(commission: Commission, verdict: Verdict, way: str) -> str:
    """What the driest (``narrowing``) or the dampest (``widening``) month does to a way to build."""
    words = told(verdict.judged.month(way), commission.first)
    return words[:1].upper() + words[1:] + "."


def outside_m(commission: Commission) -> float:
    """How far a frame goes outside over the year, likely: its two members across are solid wood."""
    piece = commission.piece
    return float(commission.whole_moves.times(2.0 * piece.border_width_m / piece.width_m).mid_m)


def likely(metres: float) -> Words:
    """A likely size; what is too small to be seen is said to be so."""
    return "less than can be seen" if abs(metres) < _TINY_M else say("about {size}", size=movement(metres))
