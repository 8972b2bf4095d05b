"""Words of the ways to build that hang on sliders: what each month does, how firmly it holds, why it is chosen."""

from __future__ import annotations

from collections.abc import Mapping

from ..ways.risk import risk_levels
from ..ways.rules import Facts
from ..words.decided import Pick, larger, pick, size_of
from ..words.say import Said, length, movement, say, strain
from .ways_bench import State


class SlidingFacts(Facts):
    """What the words on a month may use, for a slider: places in a sentence, with what goes there kept in ``said``."""

    def __init__(self, quantities: Mapping[str, float]) -> None:
        super().__init__(quantities)
        object.__setattr__(self, "said", {})

    def up_to(self, name: str) -> str:
        return self._kept(f"up_to_{name}", up_to(self.quantities[name]))

    def at_least(self, name: str) -> str:
        return self._kept(f"at_least_{name}", length(self.quantities[name], "down"))

    def either(self, name: str, moving: str, still: str) -> str:
        options = [say(text, **self.said) for text in (still, moving)]
        return self._kept(f"whether_{name}", pick(self.quantities[name], [1e-6], options))

    def _kept(self, name: str, words) -> str:
        self.said[name] = words
        return f"{{{name}}}"


def up_to(travel: float) -> Pick:
    """The most a travel can need, rounded up; "nothing" where it goes the other way."""
    return pick(travel, [1e-6], ["nothing", say("up to {size}", size=length(larger(travel, 0.0), "up"))])


def month_words(state: State, way: str) -> Said:
    """What the driest (``narrowing``) or the dampest (``widening``) month does to this way to build."""
    facts = SlidingFacts(state.numbers)
    template = (state.way.driest if way == "narrowing" else state.way.dampest)(facts)
    return say(template, **facts.said)


def lead_words(state: State, way: str):
    """How the width stands against today, or would if nothing held it."""
    lead = _against_today(state.numbers, way)
    return say("would be {lead} if it were free", lead=lead) if state.way.holds_width else lead


def _against_today(numbers: Mapping[str, float], way: str) -> Pick:
    mid = numbers[f"{way}_mid"]
    hardly = 0.0008  # half of 1/16 in: written as nothing otherwise
    wanted, opposite = ("narrower", "wider") if way == "narrowing" else ("wider", "narrower")
    size = length(size_of(mid))
    sides = [say("about {size} {side} than today", size=size, side=side) for side in (opposite, wanted)]
    return pick(mid, [-hardly, hardly], [sides[0], "about as wide as today", sides[1]])


def range_words(numbers: Mapping[str, float], name: str) -> Said:
    """A movement with the range that holds nine cases in ten."""
    sizes = (larger(numbers[f"{name}_{end}"], 0.0) for end in ("low", "mid", "high"))  # no distance is below nothing
    low, mid, high = map(movement, sizes)
    return say("about {mid}, could be {low} to {high}", low=low, mid=mid, high=high)


def reason(state: State) -> Pick:
    """The sentence that decides, by the step of risk reached."""
    sentences = []
    for step in range(len(risk_levels())):
        limit = risk_levels()[max(step, 1)].from_strain
        sentence = state.way.reasons[min(step, len(state.way.reasons) - 1)]
        sizes_said = {name: length(rule.size(state.numbers), rule.rounding) for name, rule in state.way.reason_sizes}
        values = {"held": strain(state.pull[0]), "most": strain(state.pull[1]), "limit": strain(limit)}
        sentences.append(say(sentence, **values, **sizes_said))
    by_strain = pick(state.level, [1.0, 2.0], sentences)
    return pick(state.only_stress_warns, [1.0], [by_strain, f"The strain rule would let it pass, but {STRESS_WARNS}"])


STRESS_WARNS = "by the stress model the chance of a crack is 1 in 20 or more; the careful side counts."
