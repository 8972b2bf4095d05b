"""The one judge: from the smooth numbers of a way to what is said of it, for a verdict and for a slider alike.

Numbers may slide: every decision is made with ``larger``, ``level`` and ``pick`` of ``words.decided``, so that a page
without Python can repeat it, and every sentence keeps its numbers until somebody reads it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from string import Formatter

from ..restraint.assumptions import assumption
from ..words.decided import Pick, Sliding, larger, pick, size_of
from ..words.say import Said, length, movement, say, strain
from .piece import Allowances, Piece
from .risk import risk_level, risk_levels
from .rules import CutRule, room
from .travel import RANGE, Quantities
from .way import Way

STRESS_WARNS = "by the stress model the chance of a crack is 1 in 20 or more; the careful side counts."
HARDLY_M = 0.0008  # half of 1/16 in: written as nothing otherwise
_NOTHING_M = 1e-6
_LEAST = "at_least_"
_TONES = ("fine", "watch", "stop")


def numbers_of(way: Way, piece: Piece, travels: Quantities, allowances: Allowances, held_share: Sliding) -> Quantities:
    """The smooth numbers of one way: how far the width goes, the whole size, its own, and the share that it holds."""
    held = {"held_share": held_share} | ({"push_share": held_share} if way.opens_when_damp else {})
    whole = {"finished_width": travels["width"], "finished_length": piece.length_m, "border": piece.border_width_m}
    return travels | whole | way.numbers(travels, piece, allowances) | held


def held_strain(numbers: Mapping[str, Sliding], end: str = "mid") -> Sliding:
    """Strain that counts against the wood where its movement is held: the pull of the driest month after a full year.

    The first dry month pulls by ``stretch``. Pushing beyond 0.5 % in the dampest month leaves a permanent set, and the
    next dry month pulls harder by that set: the whole swing less 0.5 %. The larger of the two counts, and nothing where
    both are below zero. Strains are multiplied by the share that is held; ``push_share`` is that of a
    joint which growth opens as well, like a mitre at its outside corner. ``end`` is low, mid or high.
    """
    share = numbers["held_share"]
    after_set = share * numbers[f"swing_strain_{end}"] - assumption("compression_set_strain").low
    pull = larger(share * numbers[f"stretch_{end}"], after_set)
    if "push_share" in numbers:
        pull = larger(pull, numbers["push_share"] * numbers[f"widening_{end}"] / numbers["width"])
    return room(pull)


@dataclass(frozen=True)
class Judgement:
    """What one way comes to at one state of its numbers.

    ``sizes`` to cut and as they will stand, by key; ``pull`` the held strain, low, likely and careful; ``level`` the
    step of risk; ``only_stress_warns`` 1 where the stress model warns and the strain rule does not. ``towards`` in its
    sentences is ``narrowing``, to the driest month, or ``widening``, to the dampest.
    """

    way: Way
    numbers: Mapping[str, Sliding]
    sizes: Mapping[str, Sliding]
    pull: tuple[Sliding, Sliding, Sliding]
    level: Sliding
    only_stress_warns: Sliding

    def of_level(self, options: tuple) -> Pick:
        """One of three options, by the step of risk."""
        return pick(self.level, [1.0, 2.0], options)

    @property
    def tone(self) -> Pick:
        """The colour of its step of risk."""
        return self.of_level(_TONES)

    @property
    def most(self) -> Sliding:
        """The held strain at its careful end."""
        return self.pull[2]

    def size(self, key: str):
        """A size as it is written, rounded the safe way."""
        return written(self.way.sizes[key], self.sizes[key])

    def month(self, towards: str) -> Said | Pick:
        """What the driest or the dampest month does to it."""
        way = self.way
        sentence, still = (way.driest, way.driest_still) if towards == "narrowing" else (way.dampest, way.dampest_still)
        names = [name for _, name, _, _ in Formatter().parse(sentence) if name]
        said = say(sentence, **{name: self._told(name) for name in names})
        return pick(self.numbers[f"{towards}_high"], [_NOTHING_M], [still, said]) if still else said

    def _told(self, name: str):
        if name.startswith(_LEAST):
            return length(self.numbers[name.removeprefix(_LEAST)], "down")
        return up_to(self.numbers[name])

    def against_today(self, towards: str) -> Said | Pick:
        """How the width stands against today, or would if nothing held it."""
        mid, sides = self.numbers[f"{towards}_mid"], ("narrower", "wider")
        wanted, opposite = sides if towards == "narrowing" else sides[::-1]
        size = length(size_of(mid))
        said = [say("about {size} {side} than today", size=size, side=side) for side in (opposite, wanted)]
        lead = pick(mid, [-HARDLY_M, HARDLY_M], [said[0], "about as wide as today", said[1]])
        return say("would be {lead} if it were free", lead=lead) if self.way.holds_width else lead

    def seen(self) -> Said:
        """What a client will see of it over the year, in a sentence."""
        opens = self.way.opens
        if self.way.holds_width:
            return say("Nothing opens while the glue holds; a fine line across an end would be a split.")
        if opens is None:
            towards = {name: up_to(self.numbers[f"{name}_high"]) for name in ("narrowing", "widening")}
            return say("No line opens: its width draws in by {narrowing} and grows by {widening}.", **towards)
        bound = {"up": "up to", "down": "at least"}
        driest, dampest = (self.way.sizes[key] for key in (opens.driest, opens.dampest))
        today = {"today": self.size(opens.today)} if opens.today else {}
        return say(
            f"The {opens.name} is {'{today} today, ' if today else ''}{bound[driest.rounding]} {{driest}} in the driest "
            f"month and {bound[dampest.rounding]} {{dampest}} in the dampest.",
            driest=self.size(driest.key),
            dampest=self.size(dampest.key),
            **today,
        )

    def reason(self) -> Pick:
        """The sentence that decides, by the step of risk reached."""
        reasons = self.way.reasons
        keys = {name for text in reasons for _, name, _, _ in Formatter().parse(text) if name in self.way.sizes}
        sizes = {key: self.size(key) for key in keys}
        sentences = []
        for step in range(len(risk_levels())):
            limit = strain(risk_levels()[max(step, 1)].from_strain)
            sentence = reasons[min(step, len(reasons) - 1)]
            sentences.append(say(sentence, held=strain(self.pull[1]), most=strain(self.pull[2]), limit=limit, **sizes))
        warned = f"The strain rule would let it pass, but {STRESS_WARNS}"
        return pick(self.only_stress_warns, [1.0], [self.of_level(tuple(sentences)), warned])


def judge(way: Way, numbers: Mapping[str, Sliding], stress_warns: Sliding = 0.0) -> Judgement:
    """The judgement on a way at its numbers; ``stress_warns`` is 1 where the stress model warns of it."""
    low, mid, high = (held_strain(numbers, end) for end in RANGE)
    strained = risk_level(high)
    level = larger(strained, stress_warns)
    sizes = {key: rule.size(numbers) for key, rule in way.sizes.items()}
    return Judgement(way, numbers, sizes, (low, mid, high), level, level - strained)


def written(rule: CutRule, size: Sliding):
    """A size to show, rounded as its rule asks."""
    return (movement if rule.fine else length)(size, rule.rounding)


def up_to(travel: Sliding) -> Pick:
    """The most a travel can need, rounded up; "nothing" where it goes the other way."""
    return pick(travel, [_NOTHING_M], ["nothing", say("up to {size}", size=length(room(travel), "up"))])


def range_words(numbers: Mapping[str, Sliding], name: str) -> Said:
    """A movement with the range that holds nine cases in ten."""
    sizes = (room(numbers[f"{name}_{end}"]) for end in RANGE)  # no distance is below nothing
    low, mid, high = map(movement, sizes)
    return say("about {mid}, could be {low} to {high}", low=low, mid=mid, high=high)
