"""Every decision about a way to build, in one place: larger-of, thresholds, rounding, and the words they choose.

The ways to build hand over smooth numbers (``Quantities``) and rules declared as data (:class:`CutRule`, the table of
risk levels). Decisions are made with ``larger`` and ``level`` of ``words.decided``, so that a page without Python can
repeat them from frozen smooth numbers.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from ..errors import InputError
from ..movement.spread import Movement
from ..restraint.assumptions import assumption
from ..restraint.held import HeldPanel
from ..restraint.measures import WORRYING_CHANCE, agreement_sentence, chance_sentence, strain_words
from ..units import both, shown, write
from ..words.decided import Decided, larger
from .held import Held
from .parts import whole_sizes
from .piece import Allowances, Piece
from .risk import risk_level, risk_levels
from .rules import Cut, Facts, room
from .travel import RANGE, Quantities, movement_of
from .way import Way

CAUTIONS = (
    "Saws, routers and drills take fingers: guards on, work held down, the machine's own instructions first.",
    "Wear eye and ear protection, draw off the dust, and let oily rags dry flat outdoors.",
    "Local codes and licensed practice come before anything said here.",
)


def held_strain(quantities: Mapping[str, float], end: str = "mid") -> Decided:
    """Strain that counts against the wood where its movement is held: the pull of the driest month after a full year.

    The first dry month pulls by ``stretch``. Pushing beyond 0.5 % in the dampest month leaves a permanent set, and the
    next dry month pulls harder by that set: the whole swing less 0.5 %. The larger of the two counts, and nothing where
    both are below zero. Strains are multiplied by the share that is held; ``push_share`` is that of a
    joint which growth opens as well, like a mitre at its outside corner. ``end`` is low, mid or high.
    """
    share = quantities["held_share"]
    after_set = share * quantities[f"swing_strain_{end}"] - assumption("compression_set_strain").low
    pull = larger(share * quantities[f"stretch_{end}"], after_set)
    if "push_share" in quantities:
        pull = larger(pull, quantities["push_share"] * quantities[f"widening_{end}"] / quantities["width"])
    return room(pull)


@dataclass(frozen=True)
class StrainRange:
    """Restrained strain (metre per metre): best guess and the range that holds nine cases in ten."""

    low: float
    mid: float
    high: float


@dataclass(frozen=True)
class Verdict:
    """The answer for one way to build; every way gives the same fields.

    ``moves`` change of the panel's width from the driest to the dampest month; ``cuts`` dimensions to cut today;
    ``parts`` the finished size and the sizes of the parts, where no movement is added;
    ``states`` sizes as they will stand in a month;
    ``level`` and ``risk`` the step of risk and its word, by the careful end of the restrained strain, ``likely_level``
    by its best guess; ``allowed`` whether the kit advises it: only at the mildest step; ``quantities`` the smooth
    numbers. ``panel`` is the stress model of a glued border, ``measures`` what strain rule and stress model say, and
    what to make of it where they differ.
    """

    way: Way
    moves: Movement
    cuts: tuple[Cut, ...]
    states: tuple[Cut, ...]
    parts: tuple[Cut, ...]
    driest_month: str
    dampest_month: str
    driest: str
    dampest: str
    reason: str
    level: int
    risk: str
    likely_level: int
    restrained_strain: StrainRange
    allowed: bool
    remarks: tuple[str, ...]
    quantities: Mapping[str, float] = field(repr=False)
    panel: HeldPanel | None = field(default=None, repr=False)
    measures: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """The key of the way."""
        return self.way.key

    @property
    def cautions(self) -> tuple[str, ...]:
        """Where building it this way can hurt."""
        return self.way.seat_cautions + self.way.cautions + CAUTIONS

    def cut(self, key: str) -> Cut:
        """The cut of this key, or the size as it will stand.

        Raises :class:`InputError` with the keys there are.
        """
        sizes = {cut.key: cut for cut in (*self.cuts, *self.states)}
        if key not in sizes:
            raise InputError(f"size is {shown(key)}; this way has {', '.join(sizes) or 'none'}.")
        return sizes[key]


def decide(
    way: Way,
    piece: Piece,
    travels: Quantities,
    allowances: Allowances,
    held: Held,
    months: tuple[str, str],
) -> Verdict:
    """Turn the smooth numbers of one way to build into its verdict; ``months`` names the driest and the dampest."""
    held = way.holding(piece, held, allowances) if way.holding else held
    share = held.share if way.holds else 0.0
    quantities = travels | whole_sizes(piece, travels["width"]) | way.numbers(travels, piece, allowances)
    quantities |= {"held_share": share}
    quantities |= {"push_share": share} if way.opens_when_damp else {}
    facts = Facts(quantities)
    strain = StrainRange(*(float(held_strain(quantities, end)) + 0.0 for end in RANGE))  # + 0.0: no minus zero
    likely, step = (int(float(risk_level(x))) for x in (strain.mid, strain.high))
    return Verdict(
        way=way,
        moves=movement_of(quantities, "swing"),
        cuts=tuple(rule.cut(quantities) for rule in way.cuts),
        states=tuple(rule.cut(quantities) for rule in way.states),
        parts=tuple(rule.cut(quantities) for rule in way.outside + way.parts),
        driest_month=months[0],
        dampest_month=months[1],
        driest=_month(way.part, months[0], quantities, "narrowing", way.driest(facts)),
        dampest=_month(way.part, months[1], quantities, "widening", way.dampest(facts)),
        reason=_reason(way, step, strain, quantities),
        level=step,
        risk=risk_levels()[step].word,
        likely_level=likely,
        restrained_strain=strain,
        allowed=step == 0,
        remarks=_remarks(way, piece, held, quantities),
        quantities=MappingProxyType(quantities),
    )


def with_stress(verdict: Verdict, panel: HeldPanel) -> Verdict:
    """The verdict with the stress model beside the strain rule; where only the stress model warns, its side is taken.

    From a likely chance of ``WORRYING_CHANCE`` on a way is not at the mildest step, whatever the strain rule says.
    """
    likely = panel.chance.sound.likely if panel.chance else None
    strain = verdict.restrained_strain.high
    rule = f"Strain rule: up to {write(strain, 'strain')} is held back, so the wood {strain_words(strain)}."
    together = agreement_sentence(strain, likely)
    verdict = replace(verdict, panel=panel, measures=(rule, panel.chance_sentence, together))
    if likely is None or likely < WORRYING_CHANCE or verdict.level:
        return verdict
    refused = (
        "Glue is refused, though the strain rule would allow it: the chance of a crack by the stress model is "
        f"{chance_sentence(panel.chance)}."
    )
    return replace(verdict, level=1, risk=risk_levels()[1].word, allowed=False, reason=refused)


def _reason(way: Way, step: int, strain: StrainRange, quantities: Quantities) -> str:
    """The sentence that belongs to a step of risk, with its numbers; limit: the edge reached, or the first one."""
    limit = risk_levels()[max(step, 1)].from_strain
    values = {"held": strain.mid, "most": strain.high, "limit": limit}
    sentence = way.reasons[min(step, len(way.reasons) - 1)]
    lengths = {name: rule.cut(quantities).text() for name, rule in way.reason_sizes}
    return sentence.format(**{name: write(value, "strain") for name, value in values.items()}, **lengths)


def _remarks(way: Way, piece: Piece, held: Held, quantities: Quantities) -> tuple[str, ...]:
    notes = tuple(dict.fromkeys(note.sentence for note in way.notes if note.said(quantities)))
    return way.remarks + notes + (held.remarks if way.holds else ()) + piece.wood.remarks


def _month(part: str, month: str, quantities: Mapping[str, float], way: str, consequence: str) -> str:
    """One sentence on a month: how the width stands against today, and what that does here."""
    opposite = {"narrowing": "wider", "widening": "narrower"}[way]
    wanted = {"narrowing": "narrower", "widening": "wider"}[way]
    size = movement_of(quantities, way)
    if size.low_m == size.high_m == 0.0:
        return f"{month}: the {part} stays as wide as today; {consequence}."
    if size.low_m < 0.0 < size.high_m:  # the careful end matters in the shop
        most = both(size.high_m, rounding="up")
        return f"{month}: the {part} is about as wide as today, {wanted} by up to {most}; {consequence}."
    word = wanted if size.mid_m > 0.0 else opposite
    return f"{month}: the {part} is {word} than today by {size.text()}; {consequence}."
