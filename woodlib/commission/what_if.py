"""What a client asks next: three ways to build the piece, and what other air or another width would do to each."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from functools import cache

from ..studies.sliding_piece import MonthAir, PieceInAir
from ..studies.what_if import Asked, what_if
from ..study.inputs import Choice
from ..study.study import Study
from ..ways.judge import Judgement
from ..ways.verdict import Verdict
from ..words.say import say
from .card import Card, Paragraph, Words, joined, sentences
from .in_four_lines import if_glued, you_will_see
from .judged import Commission
from .kept_look import in_a_sentence
from .pair import drawn, opening_m

WIDTHS = {"a quarter narrower": 0.75, "as agreed": 1.0, "a quarter wider": 1.25}
DRIEST_STEPS, DAMPEST_STEPS = (-10.0, -5.0, 0.0, 5.0, 10.0), (-10.0, 0.0, 10.0)
"""How far the air is tried at its driest and at its dampest, percent."""


def three_ways(commission: Commission) -> dict[str, Verdict]:
    """Ours, the best other one that comes through the year, and the glued border as the client had seen it."""
    built, glued = commission.built, commission.glued
    others = (v for v in commission.verdicts if v.allowed and v is not built and v is not glued)
    found = {"as we build it": built, "instead": next(others, None), "as you saw it": None if glued is built else glued}
    return {name: verdict for name, verdict in found.items() if verdict is not None}


def ways_told(commission: Commission) -> Card:
    """The three ways in words: what each is, what is seen of it, and what it costs in looks."""
    wanted = bool(commission.brief.piece.border_width_m)
    told = [Paragraph(in_a_sentence(commission))] if commission.brief.piece.keep else []
    for name, verdict in three_ways(commission).items():
        lead = f"{name[:1].upper()}{name[1:]}, {verdict.way.short}:"
        if verdict is commission.glued and verdict is not commission.built:
            told.append(Paragraph(sentences(verdict.way.means, if_glued(commission)), lead))
            continue
        seen = say("You will see {seen}", seen=you_will_see(commission.building(verdict.key)))
        looks = "" if verdict is commission.built else _looks(verdict, wanted)
        told.append(Paragraph(sentences(verdict.way.means, seen, looks), lead))
    return joined(Card(tuple(told)), first=commission.first)


def _looks(verdict: Verdict, wanted: bool) -> Words:
    """What another way costs in looks."""
    lost = []
    if wanted and not verdict.way.keeps_border:
        lost.append("the border across the ends")
    if not verdict.way.solid:
        lost.append("wood that is solid all through")
    return f"It costs you {' and '.join(lost)}." if lost else ""


def asking(commission: Commission) -> Study:
    """The client's study: one of three ways, other air, another width."""
    ways = three_ways(commission)
    sliding = commission.sliding.with_ways(tuple(verdict.key for verdict in ways.values()))
    driest, dampest = sliding.driest, sliding.dampest
    airs = [
        {_air_name(air.rh_percent, step): air.rh_percent + step for step in steps if _tried(air, step)}
        for air, steps in ((driest, DRIEST_STEPS), (dampest, DAMPEST_STEPS))
    ]
    widths = {
        name: share
        for name, share in WIDTHS.items()
        if sliding.widths_m[0] <= share * sliding.piece.width_m <= sliding.widths_m[1]
    }
    labels = {verdict.key: f"{name}: {verdict.way.short}" for name, verdict in ways.items()}
    inputs = (
        Choice("way", "Built", labels, commission.built.key),
        Choice("driest", "Air at its driest", tuple(airs[0]), _air_name(driest.rh_percent, 0.0), ordered=True),
        Choice("dampest", "Air at its dampest", tuple(airs[1]), _air_name(dampest.rh_percent, 0.0), ordered=True),
        Choice("width", "Width", tuple(widths), "as agreed", ordered=True),
    )

    @cache
    def judged(way: str, width: str, dry: str, damp: str) -> Judgement:
        found = house(dry, damp).judged(way, widths[width] * sliding.piece.width_m)
        # Every state is a choice, so its numbers stand still.
        return replace(found, numbers={name: float(number) for name, number in found.numbers.items()})

    @cache
    def house(dry: str, damp: str) -> PieceInAir:
        return sliding.at(airs[0][dry], airs[1][damp])

    def asked(way: str, dry: str, damp: str, width: str) -> Asked:
        wide, air = widths[width] * sliding.piece.width_m, (airs[0][dry], airs[1][damp])
        agreed, now = judged(way, width, inputs[1].start, inputs[2].start), judged(way, width, dry, damp)
        return Asked(
            agreed, now, drawn(commission, wide), air, lambda judged, goes: opening_m(judged, goes, commission.first)
        )

    hangs_on = repr(
        (commission.piece, commission.months, commission.doubts, commission.brief.stock, tuple(ways), airs, widths)
    )
    return what_if(
        commission.brief.title, inputs, _Asking(f"{hangs_on} {commission.first} {commission.brief.shop}", asked)
    )


@dataclass(frozen=True)
class _Asking:
    """How a state is asked for, shown as what its answers hang on: by that a page's table is kept and found again."""

    hangs_on: str
    ask: Callable[[str, str, str, str], Asked] = field(repr=False)

    def __call__(self, way: str, dry: str, damp: str, width: str) -> Asked:
        """The state at these places."""
        return self.ask(way, dry, damp, width)


def _tried(air: MonthAir, step: float) -> bool:
    return air.lowest_percent <= air.rh_percent + step <= air.highest_percent


def _air_name(rh_percent: float, step: float) -> str:
    return f"{rh_percent + step:.0f} %" + ("" if step else ", as now")
