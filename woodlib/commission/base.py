"""What the piece is fixed to, the second decision of a commission, and whether its two fast lines fight."""

from __future__ import annotations

from collections.abc import Iterator

from ..ways.registry import ways_for
from ..ways.way import Way
from ..words.say import movement, say
from .card import Card, Words, heading, joined, listed, paragraphs, table
from .judged import Commission

AT = {"front": "at the front", "middle": "in the middle", "back": "at the back"}


def fight_share(ends_fast_at: str, base_fast_at: str) -> float:
    """How much of the panel's width lies between two fast lines.

    >>> fight_share("middle", "middle"), fight_share("middle", "back"), fight_share("front", "back")
    (0.0, 0.5, 1.0)
    """
    place = {"front": 0.0, "middle": 0.5, "back": 1.0}
    return abs(place[ends_fast_at] - place[base_fast_at])


def fast_lines(commission: Commission) -> Iterator[Words]:
    """Where the piece is held fast, and what two such lines do to each other, in sentences; none where nothing is said."""
    base, way = commission.base, commission.built.way
    if base is None:
        return
    holds = commission.piece.base_holds
    if base.allowed:
        yield say("{reason}", reason=base.judged.reason())
    else:
        yield f"{base.unfit or base.reason} {_instead(commission)}"
    if way.still_outside:
        yield "Outside it hardly moves, so the base may hold it fast on any line."
    elif not way.fast_at:
        yield f"The base alone holds it fast, {AT[holds]}; {_goes(holds)}."
    elif share := fight_share(way.fast_at, holds):
        between = commission.whole_moves.times(share)
        yield say(
            f"Two fast lines fight: its ends hold it {AT[way.fast_at]}, its base {AT[holds]}. The wood between them moves by "
            "about {mid} a year, could be {low} to {high}, and nothing lets it: one of the two gives way, or the panel cracks.",
            mid=movement(between.mid_m),
            low=movement(between.low_m),
            high=movement(between.high_m),
        )
        yield f'Let the base hold it {AT[way.fast_at]} too (base_holds = "{way.fast_at}"), or take ends that hold it nowhere.'
    else:
        yield f"Ends and base hold it fast on one line, {AT[holds]}; {_goes(holds)}."


def _instead(commission: Commission) -> str:
    """What would hold the piece to its base, where what is named does not."""
    serving = (way for way in ways_for(commission.brief.piece.kind) if way.on_a_base)
    good = [way.short for way in serving if commission.based_on(way.key).allowed]
    if not good:
        return "Nothing that the kit knows would; make the piece in two, or narrower."
    ways = f"{', '.join(good[:-1])} or {good[-1]}" if len(good) > 1 else good[0]
    return f"What would do: {ways}."


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
    lead = heading("Held to its base"), paragraphs(f"{base.way.title}.", *fast_lines(commission))
    if not base.allowed:  # sizes of what does not fit are not to be cut
        return joined(*lead)
    rows = [(cut.label, cut.text(first), cut.rounding, cut.why) for cut in base.cuts]
    return joined(
        *lead,
        table(("Cut", "Size today", "Rounded", "Why"), rows, f"What has to fit or slide: {base.way.name}"),
        listed((*base.way.steps, *base_step(base.way, holds)), ordered=True),
    )
