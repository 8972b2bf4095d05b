"""What a client asks of a piece: built another way, wider or narrower, in drier or damper air; for the driest and dampest month.

Sizes are cut for the air that was agreed, and stay as they are: other air finds the same gap.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from ..picture.scene import Mark, Picture, Words
from ..study.answer import Answer, Reading
from ..study.inputs import Choice
from ..study.study import Study
from ..ways.client_held import held_cut, held_fast
from ..ways.client_parts import GAP, HALF, HEIGHT, LETTERS, RESULT_Y, WIDTH, Seen
from ..ways.client_view import view_of
from ..ways.judge import Judgement
from ..words.decided import Pick, pick
from ..words.say import Said, length, say, whole_percent
from .through_the_year import HARDLY_M, opening_words, split_words

KEY = "what-if"
QUESTION = "What if it were built another way, or the air were other?"


@dataclass(frozen=True)
class Asked:
    """One state: the judgement on a way at a width in the air that was agreed, and in the air that is asked about; how it is
    drawn; the airs that are asked about, in %; and ``line(judged, goes)``, the opening in m at a change of width, as a share."""

    agreed: Judgement
    now: Judgement
    seen: Seen
    airs: tuple[float, float]
    line: Callable[[Judgement, float], float]

    def goes(self, towards: str) -> float:
        """The likely change of width by the driest (``narrowing``) or the dampest month, as a share; below zero: narrower."""
        share = float(self.now.numbers[f"{towards}_mid"]) / float(self.now.numbers["width"])
        return -share if towards == "narrowing" else share

    @property
    def level(self) -> int:
        """0 calm, 1 pulled, 2 past its limit."""
        return round(float(self.now.level))

    def beyond(self, towards: str) -> bool:
        """Whether the wood goes further than room was left for."""
        return float(self.now.numbers[f"{towards}_mid"]) > float(self.agreed.numbers[f"{towards}_high"])


def what_if(title: str, inputs: tuple[Choice, ...], asked: Callable[[str, str, str, str], Asked]) -> Study:
    """The study of a piece; ``asked`` makes a state from the places of the inputs, which are all choices."""

    def answer(way: str, driest: str, dampest: str, width: str) -> Answer:
        state = asked(way, driest, dampest, width)
        halves = tuple(_Half(state, *entry) for entry in zip(TOWARDS, state.airs, strict=True))
        return Answer(
            Picture(f"{title}: what if", WIDTH, HEIGHT, tuple(mark for half in halves for mark in half.marks())),
            HEADLINES[state.now.way.holds][max(half.tone for half in halves)],
            tuple(Reading(half.when, half.result, half.says, half.role) for half in halves),
            f"Two drawings of {state.now.way.with_article}, from above and in the cut: left when the wood is driest, right when it is dampest.",
            (
                f"From above, movement is drawn {halves[0].seen.times} times its size; the cut has its true proportions.",
            ),
        )

    return Study(KEY, QUESTION, inputs, answer)


TOWARDS = ("narrowing", "widening")
TONES = ("fine", "watch", "stop")
HEADLINES = {
    False: (
        "It comes through the year: nothing pulls, and what opens is meant to.",
        "The wood goes a little further than room was left for.",
        "The wood goes further than room was left for: call us before it comes to that.",
    ),
    True: (
        "The glue holds here: such air hardly moves the wood.",
        "Glued, it is pulled hard and may split over the years.",
        "Glued, it is pulled past its limit and may split or open.",
    ),
}


class _Half:
    """One month of a state: left the driest, right the dampest."""

    def __init__(self, state: Asked, towards: str, air: float) -> None:
        self.state, self.air, self.dry = state, air, towards == TOWARDS[0]
        self.way, goes = state.now.way, state.goes(towards)
        pull = max(float(state.now.pull[1]), 0.0) if self.dry else 0.0
        furthest = max(abs(state.goes(other)) for other in TOWARDS)
        level = state.level if self.dry else 0
        line = state.line(state.agreed, goes)
        self.seen = replace(
            state.seen, goes=goes, furthest=furthest, line=line, split=pull * state.seen.width, level=level
        )
        if self.way.holds:
            self.tone = level
        else:
            self.tone = (1 if self.dry else 2) * state.beyond(towards)

    @property
    def when(self) -> str:
        """The month by what it does."""
        return "At its driest" if self.dry else "At its dampest"

    @property
    def result(self) -> str:
        """A word or two under the drawing."""
        if self.way.holds:
            return ("Pulled a little", "Pulled hard", "Past its limit")[self.tone] if self.dry else "Squeezed"
        return ("Nothing pulls", "Opens too far", "Room could run out")[self.tone]

    @property
    def role(self) -> Pick:
        """The colour of its result."""
        return Pick(float(self.tone), TONES)

    @property
    def says(self) -> Said | Pick | str:
        """A sentence on the month."""
        opens = self.way.opens
        if self.way.holds:
            return "the glue keeps the wood from " + ("shrinking" if self.dry else "growing")
        if opens is None:
            return opening_words(self.way, self.seen)
        wide = say(f"the {opens.name} is about {{line}} wide", line=length(self.seen.line))
        return pick(self.seen.line, [HARDLY_M], [f"the {opens.name} is shut", wide])

    def marks(self) -> list[Mark]:
        """The half as drawn."""
        left = 0.0 if self.dry else HALF + GAP
        if self.way.holds_width:
            drawn = [*held_fast(self.seen, left, True), *held_cut(self.seen, left, split_words(self.seen))]
        else:
            plan, cut = view_of(self.way)
            drawn = [*plan(self.seen, left), *cut(self.seen, left, opening_words(self.way, self.seen))]
        air = say(f"air {'down' if self.dry else 'up'} to {{air}}", air=whole_percent(self.air))
        return [
            Words(left, 15.0, self.when, "ink", LETTERS, "start", bold=True),
            Words(left, 34.0, air, "quiet", LETTERS, "start"),
            *drawn,
            Words(left, RESULT_Y, self.result, self.role, LETTERS, "start", bold=True),
        ]
