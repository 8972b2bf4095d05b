"""Every decision about a way to build, in one place: larger-of, thresholds, rounding, and the words they choose.

The ways to build hand over smooth numbers (``Quantities``) and rules declared as data (:class:`CutRule`, the table of
risk levels). Decisions are made with ``larger`` and ``level`` of ``words.decided``, so that a page without Python can
repeat them from frozen smooth numbers.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from types import MappingProxyType

from ..data_files import data_path
from ..movement.spread import Movement
from ..restraint.assumptions import assumption
from ..restraint.held import HeldPanel
from ..restraint.measures import WORRYING_CHANCE, agreement_sentence, chance_sentence, strain_words
from ..units import both, write
from ..words.decided import Decided, larger, level
from .held import Held
from .parts import FINISHED, whole_sizes
from .piece import Allowances, Piece
from .rules import Cut, CutRule, Facts, NoteRule, room
from .travel import RANGE, Quantities, movement_of


@dataclass(frozen=True)
class RiskLevel:
    """One step of risk: the restrained strain from which it holds, our word for it and what it means."""

    from_strain: float
    word: str
    meaning: str


@cache
def risk_levels() -> tuple[RiskLevel, ...]:
    """The three steps of risk, mildest first; their edges are sourced in the table of held movement.

    >>> [(risk.word, risk.from_strain) for risk in risk_levels()]
    [('safe', 0.0), ('strained', 0.004), ('cracking', 0.009)]
    """
    with open(data_path("risk_levels.csv"), encoding="utf-8", newline="") as table:
        rows = list(csv.DictReader(table))
    edges = [assumption(row["reached_at"]).middle if row["reached_at"] else 0.0 for row in rows]
    return tuple(RiskLevel(edge, row["word"], row["meaning"]) for edge, row in zip(edges, rows, strict=True))


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


def allowed_swing_percent(quantities: Mapping[str, float]) -> float:
    """Swing of moisture content, in points, within which a glued border would stay elastic at its careful end.

    The year is shrunk or stretched about today's moisture until ``held_strain`` meets the first edge; infinite where
    no swing would strain it.
    """
    edge, set_from = risk_levels()[1].from_strain, assumption("compression_set_strain").low
    pull, swing = (quantities["held_share"] * quantities[f"{name}_high"] for name in ("stretch", "swing_strain"))
    scales = [limit / strain for limit, strain in ((edge, pull), (edge + set_from, swing)) if strain > 0.0]
    points = quantities["dampest_mc"] - quantities["driest_mc"]
    return min(scales) * points if scales and points else float("inf")


def risk_level(strain: float | Decided) -> Decided:
    """0, 1 or 2: which step of ``risk_levels`` a restrained strain reaches.

    >>> [float(risk_level(strain)) for strain in (0.0039, 0.004, 0.0089, 0.009)]
    [0.0, 1.0, 1.0, 2.0]
    """
    return level(strain, [risk.from_strain for risk in risk_levels()[1:]])


@dataclass(frozen=True)
class Construction:
    """One way to build: smooth numbers, rules for cuts, and words.

    ``numbers(travels, piece, allowances)`` returns the smooth numbers; ``holds`` says that the border takes movement
    away; ``keeps_border`` that a border across the ends remains to be seen. ``driest``, ``dampest`` finish the sentence
    on the month; ``reasons`` has one sentence per risk level, or one for all, with ``{held}``, ``{most}`` and
    ``{limit}`` to be filled with strains; ``remarks`` always hold, ``notes`` hang on sizes.

    ``outside`` the sizes of the whole piece, or of the opening; ``parts`` those of its parts, beside them;
    ``reason_sizes`` sizes that ``reasons`` name in braces.

    ``kinds`` of piece it serves; ``states`` sizes as they will stand in a month, never negative; ``change`` one
    sentence on what would turn the advice over; ``holding(piece, held, allowances)`` turns the share of an edge-glued
    border into its own; ``opens_when_damp`` says that growth pulls on the joint as shrinking does; ``part`` names what
    moves; ``solid`` that it is solid wood through and through; ``keeps_flat`` that it keeps the panel flat by itself;
    ``usual_for`` kinds of piece for which the trade takes it first (common practice, no source).
    """

    key: str
    name: str
    holds: bool
    keeps_border: bool
    numbers: Callable[[Quantities, Piece, Allowances], Quantities]
    rules: tuple[CutRule, ...]
    driest: Callable[[Facts], str]
    dampest: Callable[[Facts], str]
    reasons: tuple[str, ...]
    steps: tuple[str, ...]
    remarks: tuple[str, ...] = ()
    notes: tuple[NoteRule, ...] = ()
    kinds: tuple[str, ...] = ()
    states: tuple[CutRule, ...] = ()
    parts: tuple[CutRule, ...] = ()
    outside: tuple[CutRule, ...] = FINISHED
    reason_sizes: tuple[tuple[str, CutRule], ...] = ()
    change: str = ""
    holding: Callable[[Piece, Held, Allowances], Held] | None = None
    opens_when_damp: bool = False
    part: str = "panel"
    solid: bool = True
    keeps_flat: bool = False
    usual_for: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()


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
    ``states`` sizes as they will stand in a month; ``would_change`` what would turn the advice over;
    ``level`` and ``risk`` the step of risk and its word, by the careful end of the restrained strain, ``likely_level``
    by its best guess; ``allowed`` whether the kit advises it: only at the mildest step; ``quantities`` the smooth
    numbers. ``panel`` is the stress model of a glued border, ``measures`` what strain rule and stress model say, and
    what to make of it where they differ.
    """

    key: str
    construction: str
    moves: Movement
    cuts: tuple[Cut, ...]
    driest_month: str
    dampest_month: str
    driest: str
    dampest: str
    reason: str
    steps: tuple[str, ...]
    level: int
    risk: str
    likely_level: int
    restrained_strain: StrainRange
    allowed: bool
    keeps_border: bool
    cautions: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    quantities: Mapping[str, float] = field(default_factory=dict, repr=False)
    states: tuple[Cut, ...] = ()
    parts: tuple[Cut, ...] = ()
    would_change: str = ""
    solid: bool = True
    keeps_flat: bool = False
    panel: HeldPanel | None = field(default=None, repr=False)
    measures: tuple[str, ...] = ()

    def cut(self, name: str) -> Cut:
        """The cut of this name, or the size as it will stand."""
        return next(cut for cut in (*self.cuts, *self.states) if cut.name == name)


def decide(
    construction: Construction,
    piece: Piece,
    travels: Quantities,
    allowances: Allowances,
    held: Held,
    months: tuple[str, str],
) -> Verdict:
    """Turn the smooth numbers of one way to build into its verdict; ``months`` names the driest and the dampest."""
    held = construction.holding(piece, held, allowances) if construction.holding else held
    share = held.share if construction.holds else 0.0
    quantities = travels | whole_sizes(piece, travels["width"]) | construction.numbers(travels, piece, allowances)
    quantities |= {"held_share": share}
    quantities |= {"push_share": share} if construction.opens_when_damp else {}
    cuts = tuple(rule.cut(quantities) for rule in construction.rules)
    facts = Facts(quantities)
    strain = StrainRange(*(float(held_strain(quantities, end)) + 0.0 for end in RANGE))  # + 0.0: no minus zero
    likely, step = (int(float(risk_level(x))) for x in (strain.mid, strain.high))
    return Verdict(
        construction.key,
        construction.name,
        movement_of(quantities, "swing"),
        cuts,
        *months,
        _month(construction.part, months[0], quantities, "narrowing", construction.driest(facts)),
        _month(construction.part, months[1], quantities, "widening", construction.dampest(facts)),
        _reason(construction, step, strain, quantities),
        construction.steps,
        step,
        risk_levels()[step].word,
        likely,
        strain,
        step == 0,
        construction.keeps_border,
        construction.cautions,
        _remarks(construction, piece, held, quantities),
        MappingProxyType(quantities),
        tuple(rule.cut(quantities) for rule in construction.states),
        tuple(rule.cut(quantities) for rule in construction.outside + construction.parts),
        construction.change,
        solid=construction.solid,
        keeps_flat=construction.keeps_flat,
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


def _reason(construction: Construction, step: int, strain: StrainRange, quantities: Quantities) -> str:
    """The sentence that belongs to a step of risk, with its numbers; limit: the edge reached, or the first one."""
    limit = risk_levels()[max(step, 1)].from_strain
    values = {"held": strain.mid, "most": strain.high, "limit": limit}
    sentence = construction.reasons[min(step, len(construction.reasons) - 1)]
    lengths = {name: rule.cut(quantities).text() for name, rule in construction.reason_sizes}
    return sentence.format(**{name: write(value, "strain") for name, value in values.items()}, **lengths)


def _remarks(construction: Construction, piece: Piece, held: Held, quantities: Quantities) -> tuple[str, ...]:
    notes = tuple(dict.fromkeys(note.sentence for note in construction.notes if note.said(quantities)))
    return construction.remarks + notes + (held.remarks if construction.holds else ()) + piece.wood.remarks


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
