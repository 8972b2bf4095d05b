"""Why the wood of a piece moves, in its own numbers, and why glue does not stop it."""

from __future__ import annotations

from ..movement.spread import Movement
from ..units import length_range, write
from ..words.say import Said, length, movement, say
from .card import Card, Paragraph, Words, heading, joined, paragraphs
from .judged import Commission
from .seasons import airs_of, likely, months_of

_HOW = (
    "Wood never stops trading water with the air. In damp air its fibres take water up and grow thicker, in dry air they "
    "give it off and grow thinner. They hardly change in length. So a board becomes wider and narrower across its grain, "
    "year after year, and stays as long as it was."
)
_BUT = (
    (
        '"A strong glue will hold it."',
        "It will, and that is what breaks the wood. A border whose grain runs across the panel keeps its length while the "
        "panel's width wants to change. Held fast in the dry months, the wood is pulled apart across its grain, the "
        "direction in which it is weakest. It can be stretched by about 0.4 % and come back unharmed; from about 0.9 % it "
        "starts to fail. A damp summer makes it worse: squeezed too hard, wood keeps a set, and next winter starts from a "
        "shorter panel. A border is not rigid either: it holds back about three quarters of what the end of the panel "
        "wants to do. The stretch given with the verdict counts both, the border's grip and the set.",
    ),
    (
        '"It was well dried, and a finish will seal it."',
        "Drying brings the wood to the moisture of one day; the room decides about all the others. A finish slows the "
        "trade with the air from days to weeks and months, which evens out a wet weekend. It does not even out a winter.",
    ),
    (
        '"Then make it narrower."',
        "A narrower panel moves less, so gaps become smaller. But it is also less wood to share the pull: the stretch, as "
        "a share of its width, stays nearly the same.",
    ),
)
_SO = "So the question is never how to stop the wood. It is where to let it go, so that it looks meant and nothing breaks."


def why_it_moves(commission: Commission) -> Card:
    """How wood moves, how far this piece does, and what is said against it."""
    return joined(
        heading("Why wood moves, and why glue does not stop it", 2),
        paragraphs(_HOW, *_numbers(commission)),
        Card(tuple(Paragraph(words, lead) for lead, words in _BUT)),
        paragraphs(_SO),
        first=commission.first,
    )


def _numbers(commission: Commission) -> tuple[str, Said]:
    """Air, moisture in the wood, width; and along the grain for comparison."""
    built, numbers = commission.built, commission.built.quantities
    (driest, dampest), months = airs_of(commission), months_of(commission)
    along = commission.piece.wood.axis_strains(numbers["driest_mc"], numbers["dampest_mc"])[0]
    longer = abs(float(along)) * commission.piece.length_m
    air = (
        f"Air of {driest}, as in {months[0]}, "
        f"draws the wood of this piece down to {write(numbers['driest_mc'], 'moisture')}; "
        f"air of {dampest}, as in {months[1]}, brings it up to {write(numbers['dampest_mc'], 'moisture')}. "
        f"Today it stands at {write(numbers['stock_mc'], 'moisture')}."
    )
    change = "would change its width, if it were free" if built.way.holds_width else "changes its width"
    width = say(
        "Between those two the {part}, {wide} wide, {change}: {range}. Its length, along the grain, changes by {longer}. "
        "The range is there because no two boards are alike; it holds nine times in ten.",
        part="loose panel" if "opening" in numbers else built.way.part,
        wide=length(numbers["width"]),
        change=change,
        range=_range(built.moves, commission.first),
        longer=length_range(longer, longer, longer, commission.first),
    )
    return air, width


def _range(moves: Movement, first: str) -> Words:
    if moves.low_m < 0.0:  # a year that hardly swings: only the doubts are left
        return say("{mid}, at most by {high}", mid=likely(moves.mid_m), high=movement(moves.high_m, "up"))
    return moves.text(first)
