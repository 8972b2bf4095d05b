"""The piece of a commission month by month, beside what the client had seen: the data of the first picture of a page."""

from __future__ import annotations

from math import radians

import numpy as np

from ..movement.wood import width_strain
from ..restraint.chance import Probability
from ..restraint.measures import odds_words
from ..studies.through_the_year import TODAY, Held, Month, PieceYear, through_the_year
from ..study.study import Study
from ..ways.client_parts import Seen
from ..ways.held import Held as HeldShare
from ..ways.judge import Judgement
from ..ways.registry import reference_way
from ..ways.rules import cuts_of
from ..ways.strained import strained
from .card import Card, paragraphs
from .judged import Commission

REACH_SHARE = 0.3
"""How far from a held end its grip is felt, as a share of the width: a third of it for deep panels (closed form)."""


def the_pair(commission: Commission) -> Study:
    """The client's study: held fast as first seen, and as it is built, month by month."""
    return through_the_year(piece_year(commission))


def below_the_pair(commission: Commission) -> Card:
    """What is drawn, and how much larger than life."""
    year = piece_year(commission)
    told = glued_odds(commission)
    splits = f"Left is drawn one that splits, as {about_odds(told.likely)} would. " if told and year.splits else ""
    return paragraphs(
        f"{splits}From above, movement is drawn {year.times} times its size; the cut below has its true proportions. "
        "Dotted: as wide as on the day it is cut."
    )


def about_odds(chance: float) -> str:
    """A likely chance as odds, for a sentence."""
    odds = odds_words(chance)
    return odds if odds.startswith("less") else f"about {odds}"


def glued_odds(commission: Commission) -> Probability | None:
    """The chance that a border glued across splits the piece, where it is compared and refused."""
    glued = commission.glued
    if glued is None or glued.allowed or glued.panel is None or commission.year.partial:
        return None  # odds of a few months are no odds of the year
    return glued.panel.chance.sound


def piece_year(commission: Commission) -> PieceYear:
    """What the study is drawn from."""
    piece, months, built = commission.piece, commission.months, commission.built
    stock = commission.brief.stock.moisture_percent()
    goes = width_strain(piece.wood, radians(piece.ring_angle_deg), 0.0, stock, np.asarray(months.mc_percent))
    airs = [None] * len(months.names) if months.rh_percent is None else months.rh_percent.tolist()
    lines = [opening_m(built.judged, share, commission.first) for share in (0.0, *goes.tolist())]
    named = zip(months.names, airs, months.mc_percent.tolist(), goes.tolist(), lines[1:], strict=True)
    places = [Month(*entry) for entry in named]
    return PieceYear(
        commission.brief.title,
        (Month(TODAY, None, stock, 0.0, lines[0], cut=True), *places),
        months.names[months.driest],
        built.way,
        drawn(commission, piece.width_m),
        _held(commission),
    )


def opening_m(judged: Judgement, goes: float, first: str) -> float:
    """How wide the opening that is seen stands, likely, m: what is marked today, and what the wood does to it.

    ``goes`` is the likely change of width since the day it is cut, as a share.
    """
    opens = judged.way.opens
    if opens is None:
        return 0.0
    cuts = cuts_of(judged.way.sizes, judged.numbers)
    today = float(cuts[opens.today].written_m(first)) if opens.today else 0.0
    towards, key = ("narrowing", opens.driest) if goes < 0.0 else ("widening", opens.dampest)
    furthest = judged.numbers[f"{towards}_high"] / judged.numbers["width"]
    share = abs(goes) / furthest if furthest > 0.0 else 0.0
    cut_today = cuts[opens.today].metres if opens.today else 0.0
    return max(today + share * (cuts[key].metres - cut_today), 0.0)


def drawn(commission: Commission, width_m: float) -> Seen:
    """The piece as it is drawn for the client, at a width."""
    piece, held = commission.piece, _held(commission)
    return Seen(
        width=width_m,
        length=piece.length_m,
        thickness=piece.thickness_m,
        border=piece.border_width_m,
        border_thickness=piece.border_thickness_m or piece.thickness_m,
        ring_angle_deg=piece.ring_angle_deg,
        grip=held.grip,
        reach=held.reach_m,
        painted=commission.brief.table_finish().hides_the_wood,
        agreed=piece.width_m,
    )


def _held(commission: Commission) -> Held:
    """The border glued across the ends where that is compared; else the piece held at both its edges."""
    glued = commission.glued
    judged = (commission.built if glued is None else glued).judged
    numbers, reach = judged.numbers, REACH_SHARE * commission.piece.width_m
    grip = 1.0 if glued is None else float(numbers["held_share"])
    pulled = strained(numbers, HeldShare(grip), reference_way()).pulled
    likely, careful = float(pulled[1]), float(pulled[2])
    taken_back = max(grip * float(numbers["swing_strain_mid"]) - likely, 0.0)  # what the damp months pushed
    worse = careful / likely if likely > 0.0 else 1.0
    if glued is None:
        return Held(grip, reach, taken_back, worse, False, "fast at both edges")
    return Held(grip, reach, taken_back, worse, True, "border glued on")
