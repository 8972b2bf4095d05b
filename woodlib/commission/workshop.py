"""The commission told to the workshop: what to cut today, in which order, how a size comes about, and cautions."""

from __future__ import annotations

from ..setting_out.plan import LIFTING
from ..units import both, write
from ..ways.rules import CutRule, room
from ..ways.verdict import CAUTIONS
from .base import base_step, held_to_its_base
from .card import Card, heading, joined, listed, paragraphs, table
from .judged import Commission


def cut_list(commission: Commission) -> Card:
    """Every size to cut today, for today's moisture, with the way it was rounded and why it is as big as it is."""
    built, first = commission.built, commission.first
    stock = write(commission.brief.stock.moisture_percent(), "moisture")
    error = write(commission.brief.stock.meter_error_percent, "percent")
    lead = (
        f"These sizes hold for wood at {stock} on the day it is cut, with a reading that may be {error} off. "
        f"Measure again on "
        "that day; if it has changed by a point, work them out anew. Each is for the careful end of the range, and "
        "rounded the safe way: a gap up, a tongue or a panel that goes into one down. Inches and millimetres are "
        "rounded each by itself, so work in one of them."
    )
    kind = commission.brief.piece.kind
    if kind in ("back", "door panel") and built.way.framed:
        lead += " The brief's size is the frame's outside: make the opening for it larger by the space given below."
    rows = [(cut.label, cut.text(first), cut.rounding, cut.why) for cut in built.cuts]
    sizes = (
        table(("Cut", "Size today", "Rounded", "Why"), rows, f"What has to fit or slide: {built.way.name}")
        if rows
        else paragraphs(
            "This way leaves nothing to be cut loose: there is no gap or slot that would let the panel move."
        )
    )
    steps = (
        heading("In the shop"),
        listed((*built.way.steps, *base_step(built.way, commission.piece.base_holds)), ordered=True),
    )
    return joined(paragraphs(lead), sizes, *steps, held_to_its_base(commission))


def cautions(commission: Commission) -> Card:
    """The usual cautions."""
    kind = commission.brief.piece.kind
    own = (
        *(_LIFTS if kind in LIFTING else ()),
        *(_TIPS if kind in _IN_A_CASE else ()),
        *(_FUMES if commission.brief.finish.name else ()),
    )
    way = commission.built.way
    carries = way.seat_cautions if kind == "seat" else ()
    return joined(heading("Cautions"), listed([*own, *carries, *way.cautions, *CAUTIONS]))


_IN_A_CASE = ("drawer front", "drawer side", "drawer bottom", "back", "door panel")
_TIPS = ("A case with its drawers or doors open can tip over on a child: fix it to the wall, heavy things low.",)
_FUMES = (
    "Finish and solvent give off fumes that harm and burn: air the room, no flame or spark, and what the can asks for.",
)
_LIFTS = ("A lid or a seat that lifts needs a stay that holds it open by itself, and room for fingers at its hinges.",)


def worked_size(commission: Commission, key: str = "") -> Card:
    """One size of the cut list, term by term, to be checked by hand; the first that a slider shows when none is named."""
    way = commission.built.way
    if not way.cuts:
        return paragraphs("This way to build has no gap or slot to work out.")
    rule = way.sizes[key or (*way.main_cuts, *way.sizes)[0]]
    numbers, first = commission.built.quantities, commission.first
    rows = [(_named(term.name), f"{term.times:g} x", _sized(_counted(term, numbers), first)) for term in rule.terms]
    total = commission.built.cut(rule.key)
    rows.append(("together", "", both(total.metres, 64, 0.1, "nearest", first)))
    rows.append((f"cut, rounded {rule.rounding}", "", total.text(first)))
    return table(("What it is made of", "Counted", "Size"), rows, _caption(rule))


def _caption(rule: CutRule) -> str:
    return f"{rule.label}: {rule.why}"


def _sized(metres: float, first: str) -> str:
    return both(metres, 64, 0.1, "nearest", first) if metres else "nothing: it only goes the other way"


def _counted(term, numbers) -> float:
    value = numbers[term.name]
    return float(room(value)) if term.only_room else value


def _named(name: str) -> str:
    return _WORDS.get(name, name.replace("_", " "))


_WORDS = {
    "clearance": "play, both ways together",
    "cover": "cover that stays in the driest month",
    "panel_shrink": "how far the panel may shrink",
    "panel_growth": "how far the panel may grow",
    "outer_narrowing": "travel inward past the outer fixing",
    "outer_widening": "travel outward past the outer fixing",
    "edge_narrowing": "how far an edge may draw in",
    "edge_widening": "how far an edge may grow out",
    "hold": "hold that stays in the driest month",
}
