"""The one judge: from the smooth numbers of a way to what is said of it, for a verdict and for a slider alike.

Numbers may slide: every decision is made with ``larger``, ``level`` and ``pick`` of ``words.decided``, so that a page
without Python can repeat it, and every sentence keeps its numbers until somebody reads it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from string import Formatter

from ..restraint.assumptions import assumption
from ..words.decided import Pick, Sliding, larger, pick, reached, size_of, smaller
from ..words.say import Number, Said, length, movement, say, strain, whole_percent
from .held import Held
from .piece import Allowances, Piece
from .risk import risk_level, risk_levels
from .rules import room
from .strained import NOTHING, Strained, Three, strained
from .travel import RANGE, Quantities
from .way import Way

STRESS_WARNS = "by the stress model the chance of a crack is 1 in 20 or more; the careful side counts."
HARDLY_M = 0.0008  # half of 1/16 in: written as nothing otherwise
_NOTHING_M = 1e-6
_LEAST = "at_least_"
_TONES = ("fine", "watch", "stop")


def numbers_of(way: Way, piece: Piece, travels: Quantities, allowances: Allowances, held: Held) -> Quantities:
    """The smooth numbers of one way: how far the width goes, the whole size, its own, and the share that it holds."""
    whole = {"finished_width": travels["width"], "finished_length": piece.length_m, "border": piece.border_width_m}
    share = held.share if way.holds else 0.0
    return travels | whole | way.numbers(travels, piece, allowances) | {"held_share": share}


@dataclass(frozen=True)
class Judgement:
    """What one way comes to at one state of its numbers.

    ``sizes`` to cut and as they will stand, by key; ``strained`` what is held back; ``level`` the step of risk and
    ``decides`` the way to fail that sets it: a place in ``DECIDERS``. ``not_known`` says what of the year is not, where that
    is all that speaks against it. ``towards`` in its sentences is ``narrowing``, to the driest month, or ``widening``, to
    the dampest. ``marked`` the sizes as the shop marks them, for a verdict; what slides has none.
    """

    way: Way
    numbers: Mapping[str, Sliding]
    sizes: Mapping[str, Sliding]
    strained: Strained
    level: Sliding
    decides: Sliding
    not_known: str = ""
    marked: Mapping[str, Number] = field(default_factory=dict)

    @property
    def pull(self) -> Three:
        """The strain that is gathered in tension: low, likely, careful."""
        return self.strained.pulled

    def of_level(self, options: tuple) -> Pick:
        """One of three options, by the step of risk."""
        return pick(self.level, [1.0, 2.0], options)

    def of_risk(self, options: tuple, unknown) -> Pick:
        """The same, and ``unknown`` where months that were not measured decide."""
        known = self.of_level(options)
        return pick(self.decides, [_UNKNOWN], [known, unknown]) if self.not_known else known

    @property
    def tone(self) -> Pick:
        """The colour of its step of risk."""
        return self.of_level(_TONES)

    @property
    def most(self) -> Sliding:
        """The held strain at its careful end."""
        return self.pull[2]

    def size(self, key: str):
        """A size as it is marked, where that is known; else as it slides, rounded the safe way.

        What follows from marked sizes is told as "about" or "at least" while it slides, because nothing is marked yet.
        """
        rule, size = self.way.sizes[key], self.sizes[key]
        if key in self.marked:
            return self.marked[key]
        if rule.moves:
            return say("about {size}", size=movement(size))
        if rule.chain:
            bound, safe = ("at least", "down") if rule.rounding == "up" else ("at most", "up")
            return say(f"{bound} {{size}}", size=movement(size, safe))
        return (movement if rule.fine else length)(size, rule.rounding)

    def month(self, towards: str) -> Said | Pick:
        """What the driest or the dampest month does to it."""
        way = self.way
        sentence, still = (way.driest, way.driest_still) if towards == "narrowing" else (way.dampest, way.dampest_still)
        names = [name for _, name, _, _ in Formatter().parse(sentence) if name]
        said = say(sentence, **{name: self._told(name) for name in names})
        return pick(self.numbers[f"{towards}_high"], [_NOTHING_M], [still, said]) if still else said

    def _told(self, name: str):
        if name in self.way.sizes:
            up_to_it = say("up to {size}", size=self.size(name))
            return pick(self.sizes[name], [_NOTHING_M], ["nothing", up_to_it])
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
        """The sentence that decides, by the way to fail and the step of risk reached."""
        if self.not_known:
            known, unknown = replace(self, not_known="").reason(), f"{NOT_YET} {self.not_known}"
            return pick(self.decides, [_UNKNOWN], [known, unknown])
        pulled = self.of_level(tuple(self._pulled(step) for step in range(len(risk_levels()))))
        if not self.way.holds_width:
            gaps = (pulled, f"The strain rule would let it pass, but {STRESS_WARNS}", self._gap())
            return pick(self.decides, [1.0, 5.0], gaps if self.way.hidden_below else gaps[:2] + gaps[1:2])
        narrow = say(
            "Glue is allowed here: the border stretches the panel by at most {most} of its width, but a panel this narrow does not "
            "set free the energy that a split costs.",
            most=strain(self.pull[2]),
        )
        spared = smaller(risk_level(self.pull[2]), 1.0) - smaller(self.strained.splits, 1.0)
        calm = pick(larger(spared - self.level, 0.0), [1.0], [pulled, narrow])
        return pick(self.decides, [1.0, 2.0, 3.0, 4.0], [calm, *self._otherwise()])

    def _gap(self) -> Said | str:
        """Why a joint that the strain would let pass is not safe: it would open so far that it is seen."""
        keys = self.way.hidden_below
        if not keys:
            return ""
        sizes = {key: self.size(key) for key in keys}
        wanted = " and ".join(f"{{{key}}} ({'driest' if 'driest' in key else 'dampest'} month)" for key in keys)
        return say(
            f"The strain would let it pass, but where the glue gives way the joint opens by {wanted}; the eye sees {{seen}}.",
            seen=movement(self.numbers["visible"], "nearest"),
            **sizes,
        )

    def _pulled(self, step: int) -> Said:
        reasons = self.way.reasons
        sentence = reasons[min(step, len(reasons) - 1)]
        sizes = {key: self.size(key) for _, key, _, _ in Formatter().parse(sentence) if key in self.way.sizes}
        limit = strain(risk_levels()[max(step, 1)].from_strain)
        return say(sentence, held=strain(self.pull[1]), most=strain(self.pull[2]), limit=limit, **sizes)

    def _otherwise(self) -> tuple[Said | Pick | str, ...]:
        """Why a glued edge is refused by anything but the pull, in the order of ``DECIDERS``."""
        squeezed, border = (
            [strain(end) for end in three[1:]] for three in (self.strained.squeezed, self.strained.border)
        )
        set_limits, along = assumption("compression_set_strain"), assumption("border_strain")
        squeeze = say(
            "Glue is refused: the wood grows after it is glued, more than any season gives back: held, it is squeezed by about "
            "{held} of its width, at most {most}; from {limit} it is crushed for good, bows, and is pulled apart in a dry spell.",
            held=squeezed[0],
            most=squeezed[1],
            limit=strain(set_limits.low),
        )
        follows = say(
            "Glue is refused: a border this thin or narrow cannot hold the panel and is strained along its own grain by about "
            "{held}, at most {most}; from {limit} it yields.",
            held=border[0],
            most=border[1],
            limit=strain(along.low),
        )
        opens = say(
            "Glue is refused: the ends of its glue line are sheared by about {likely} of what such a joint bears, at most {most}; "
            "from {limit} one may open.",
            likely=whole_percent(100.0 * self.strained.glue[1]),
            most=whole_percent(100.0 * self.strained.glue[2]),
            limit=whole_percent(100.0 * assumption("glue_share").low),
        )
        return f"The strain rule would let it pass, but {STRESS_WARNS}", squeeze, follows, opens


DECIDERS = ("pulled", "stress", "squeezed", "border", "glue", "gap", "unknown")
"""What can set the step of risk: the pull, the stress model, the other ways to fail, a gap that is seen, and months of
which nothing is known."""
_UNKNOWN = float(DECIDERS.index("unknown"))
NOT_KNOWN = "not known: months are missing"
NOT_YET = "Whether it may be glued cannot be said yet; in the months that were measured it would be safe."


def not_yet(judged: Judgement, not_known: str) -> Judgement:
    """The judgement on part of a year: what holds the panel is not called safe, for the missing months may split it."""
    if not not_known or not judged.way.holds:
        return judged
    calm = 1.0 - reached(judged.level, 1.0)
    decides = judged.decides + calm * (_UNKNOWN - judged.decides)
    return replace(judged, level=larger(judged.level, 1.0), decides=decides, not_known=not_known)


def judge(way: Way, numbers: Mapping[str, Sliding], held: Held, stress_warns: Sliding = 0.0) -> Judgement:
    """The judgement on a way at its numbers; ``stress_warns`` is 1 where the stress model warns of it."""
    found = strained(numbers, held, way) if way.holds else NOTHING
    pulled, squeezed, border, glue = found.levels
    level: Sliding = pulled
    decides: Sliding = 0.0
    sizes = {key: rule.size(numbers) for key, rule in way.sizes.items()}
    gap: Sliding = 0.0
    for key in way.hidden_below:
        gap = larger(gap, reached(sizes[key] - numbers["visible"], 0.0))
    for place, other in enumerate((stress_warns, squeezed, border, glue, gap), 1):
        more = reached(other - level, 0.5)
        decides = decides + more * (place - decides)
        level = larger(level, other)
    return Judgement(way, numbers, sizes, found, level, decides)


def up_to(travel: Sliding) -> Pick:
    """The most a travel can need, rounded up; "nothing" where it goes the other way."""
    return pick(travel, [_NOTHING_M], ["nothing", say("up to {size}", size=length(room(travel), "up"))])


def range_words(numbers: Mapping[str, Sliding], name: str) -> Said:
    """A movement with the range that holds nine cases in ten."""
    sizes = (room(numbers[f"{name}_{end}"]) for end in RANGE)  # no distance is below nothing
    low, mid, high = map(movement, sizes)
    return say("about {mid}, could be {low} to {high}", low=low, mid=mid, high=high)
