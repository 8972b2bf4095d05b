"""What the piece is fixed to, the second decision of a commission, and whether its two fast lines fight."""

from __future__ import annotations

from collections.abc import Iterator

from ..ways.way import Way
from .card import Card, heading, joined, listed, paragraphs, table
from .judged import Commission

AT = {"front": "at the front", "middle": "in the middle", "back": "at the back"}


def fight_share(ends_fast_at: str, base_fast_at: str) -> float:
    """How much of the panel's width lies between two fast lines.

    >>> fight_share("middle", "middle"), fight_share("middle", "back"), fight_share("front", "back")
    (0.0, 0.5, 1.0)
    """
    place = {"front": 0.0, "middle": 0.5, "back": 1.0}
    return abs(place[ends_fast_at] - place[base_fast_at])


def fast_lines(commission: Commission) -> Iterator[str]:
    """Where the piece is held fast, and what two such lines do to each other, in sentences; none where nothing is said."""
    base, way = commission.base, commission.built.way
    if base is None:
        return
    holds, first = commission.piece.base_holds, commission.first
    moves = commission.whole_moves
    if way.still_outside:
        yield "Outside it hardly moves, so the base may hold it fast on any line."
    elif not way.fast_at:
        yield f"The base alone holds it fast, {AT[holds]}; {_goes(holds)}."
    elif fight_share(way.fast_at, holds):
        between = moves.times(fight_share(way.fast_at, holds)).text(first)
        yield (
            f"Two fast lines fight: its ends hold it {AT[way.fast_at]}, its base {AT[holds]}. The wood between them moves by "
            f"{between} a year, and nothing lets it: one of the two gives way, or the panel cracks."
        )
        yield f'Let the base hold it {AT[way.fast_at]} too (base_holds = "{way.fast_at}"), or take ends that hold it nowhere.'
    else:
        yield f"Ends and base hold it fast on one line, {AT[holds]}; {_goes(holds)}."


def fights(commission: Commission) -> bool:
    """Whether ends and base hold the panel fast on two lines."""
    fast_at = commission.built.way.fast_at
    return commission.base is not None and bool(fast_at) and fast_at != commission.piece.base_holds


def _goes(holds: str) -> str:
    other = {"front": "back", "back": "front"}
    return "from there both edges move" if holds == "middle" else f"all of its movement comes out at the {other[holds]}"


def base_step(way: Way, holds: str) -> tuple[str, ...]:
    """The step that makes the fast line of what is on a base."""
    if not way.on_a_base:
        return ()
    where = {"front": "to the front rail", "middle": "at the middle of each end rail", "back": "to the back rail"}[
        holds
    ]
    return (f"Fix the top {where} with screws in round holes; that is the one line that does not move.",)


def held_to_its_base(commission: Commission) -> Card:
    """Sizes and steps for what holds it to its base; nothing where the brief names no base."""
    base = commission.base
    if base is None:
        return Card()
    holds, first = commission.piece.base_holds, commission.first
    rows = [(cut.label, cut.text(first), cut.rounding, cut.why) for cut in base.cuts]
    return joined(
        heading("Held to its base"),
        paragraphs(f"{base.way.title}. {base.reason}", " ".join(fast_lines(commission))),
        table(("Cut", "Size today", "Rounded", "Why"), rows, f"What has to fit or slide: {base.way.name}"),
        listed((*base.way.steps, *base_step(base.way, holds)), ordered=True),
    )
