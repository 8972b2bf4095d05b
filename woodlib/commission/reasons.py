"""Why the wood of a piece moves, in its own numbers, and why glue does not stop it."""

from __future__ import annotations

from ..movement.spread import Movement
from ..units.exact import INCH_M
from ..words.say import Said, length, movement, percent, say, small_length
from .card import Card, Paragraph, Words, heading, joined, paragraphs
from .judged import Commission
from .seasons import air_of, likely, months_of

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
        "starts to fail. A damp summer makes it worse: squeezed too hard, wood stays shorter, and the next winter pulls "
        "it further.",
    ),
    (
        '"It was well dried, and a finish will seal it."',
        "Drying brings the wood to the moisture of one day; the room decides about all the others. A finish slows the "
        "trade with the air from days to weeks and months, which evens out a wet weekend. It does not even out a winter.",
    ),
    (
        '"Then make it narrower."',
        "A narrower panel moves less, so gaps become smaller. But it is also less wood to share the pull: glued, it is "
        "stretched nearly as hard. Only a very narrow one is safe from splitting through.",
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


def _numbers(commission: Commission) -> tuple[Said, Said]:
    """Air, moisture in the wood, width; and along the grain for comparison."""
    built, numbers = commission.built, commission.built.quantities
    months = months_of(commission)
    along = commission.piece.wood.axis_strains(numbers["driest_mc"], numbers["dampest_mc"])[0]
    longer = abs(float(along)) * commission.piece.length_m
    air = say(
        "The air of your house is {air}. The wood of this piece follows slowly: its moisture is down to "
        f"{{driest}} of its dry weight in {months[0]} and up to {{dampest}} in {months[1]}; when it is cut it is {{stock}}.",
        air=say("{air} humidity", air=air_of(commission)),
        **{name: percent(numbers[f"{name}_mc"]) for name in ("driest", "dampest", "stock")},
    )
    change = "would change its width, if it were free" if built.way.holds_width else "changes its width"
    width = say(
        "Between those two the {part}, {wide} wide, {change}: {range}. Its length, along the grain, changes by {longer}. "
        "The range is there because no two boards are alike; it holds nine times in ten.",
        part="loose panel" if "opening" in numbers else built.way.part,
        wide=length(numbers["width"]),
        change=change,
        range=_range(built.moves),
        longer=likely(longer),
    )
    return air, width


def _range(moves: Movement) -> Words:
    if moves.low_m < 0.0:  # a year that hardly swings: only the doubts are left
        return say("{mid}, at most by {high}", mid=likely(moves.mid_m), high=movement(moves.high_m, "up"))
    if moves.high_m < INCH_M / 32:
        return "hardly at all"
    step = movement if moves.low_m >= INCH_M / 16 else small_length  # a small range would fall on one tick
    low, mid, high = (step(size) for size in (moves.low_m, moves.mid_m, moves.high_m))
    return say("about {mid}, could be {low} to {high}", low=low, mid=mid, high=high)
