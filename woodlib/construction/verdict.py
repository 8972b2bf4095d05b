"""Every decision about a way to build, in one place: larger-of, thresholds, rounding, and the words they choose.

The ways to build hand over smooth numbers (``Quantities``) and rules declared as data (:class:`CutRule`, the table of
risk levels). Decisions are made with ``larger`` and ``level`` of ``reading.decided``, so that a page without Python can
repeat them from frozen smooth numbers.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cache
from types import MappingProxyType

from ..data_files import data_path
from ..movement.spread import Movement
from ..reading.decided import Decided, larger, level
from ..restraint.assumptions import assumption
from ..units import both, write
from .held import Held
from .piece import Allowances, Piece
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
    [('quiet', 0.0), ('strained', 0.004), ('cracking', 0.009)]
    """
    with open(data_path("risk_levels.csv"), encoding="utf-8", newline="") as table:
        rows = list(csv.DictReader(table))
    edges = [assumption(row["reached_at"]).middle if row["reached_at"] else 0.0 for row in rows]
    return tuple(RiskLevel(edge, row["word"], row["meaning"]) for edge, row in zip(edges, rows, strict=True))


def room(travel: float | Decided) -> Decided:
    """Room that a travel needs: its size where it happens, nothing where it goes the other way."""
    return larger(travel, 0.0)


def held_strain(quantities: Mapping[str, float], end: str = "mid") -> Decided:
    """Strain that counts against the wood where its movement is held: the pull of the driest month after a full year.

    The first dry month pulls by ``stretch``. Pushing beyond 0.5 % in the dampest month leaves a permanent set, and the
    next dry month pulls harder by that set: the whole swing less 0.5 %. The larger of the two counts, and nothing where
    both are below zero. Strains are multiplied by the share that is held. ``end`` is low, mid or high.
    """
    share = quantities["held_share"]
    after_set = share * quantities[f"swing_strain_{end}"] - assumption("compression_set_strain").low
    return room(larger(share * quantities[f"stretch_{end}"], after_set))


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
class Term:
    """``times`` a named quantity; ``only_room`` counts it as nothing where it is negative."""

    name: str
    times: float = 1.0
    only_room: bool = False


def total(terms: tuple[Term, ...], quantities: Mapping[str, float]) -> Decided:
    """Sum of terms, remembered with its decisions.

    >>> float(total((fixed("pin"), travel("outward"), travel("inward")), {"pin": 10.0, "outward": -3.0, "inward": 2.0}))
    12.0
    """
    together = Decided("+", 0.0, 0.0)
    for term in terms:
        value = quantities[term.name]
        together = together + term.times * (room(value) if term.only_room else value)
    return together


@dataclass(frozen=True)
class CutRule:
    """A dimension to cut today as a sum of terms; gaps round up, tongues and panels round down."""

    name: str
    terms: tuple[Term, ...]
    rounding: str
    why: str

    def size(self, quantities: Mapping[str, float]) -> Decided:
        """The dimension in metres, remembered with its decisions."""
        return total(self.terms, quantities)


def fixed(name: str, times: float = 1.0) -> Term:
    """A size that is there whatever the wood does."""
    return Term(name, times)


def travel(name: str, times: float = 1.0) -> Term:
    """Room for a travel, counted only where it happens."""
    return Term(name, times, only_room=True)


@dataclass(frozen=True)
class Cut:
    """One dimension to cut today, in metres, and which way it may be rounded."""

    name: str
    metres: float
    rounding: str
    why: str

    def text(self, first: str = "customary") -> str:
        """The dimension as the shop reads it, rounded the safe way.

        >>> Cut("slot", 0.0131, "up", "").text()
        '9/16 in (14 mm)'
        """
        return both(self.metres, rounding=self.rounding, first=first)


@dataclass(frozen=True)
class NoteRule:
    """A remark that is said where the sum of its terms is above zero."""

    terms: tuple[Term, ...]
    sentence: str

    def said(self, quantities: Mapping[str, float]) -> bool:
        """Whether the remark holds for these numbers."""
        return float(total(self.terms, quantities)) > 0.0


@dataclass(frozen=True)
class Facts:
    """What the words on a month may use: smooth numbers and the lengths they lead to."""

    quantities: Mapping[str, float]

    def moves(self, name: str) -> bool:
        """Whether a travel happens at all at its careful end."""
        return float(room(self.quantities[name])) > 0.0

    def up_to(self, name: str) -> str:
        """The most a travel can need, as the shop reads it, rounded up."""
        return f"up to {both(float(room(self.quantities[name])), rounding='up')}" if self.moves(name) else "nothing"

    def at_least(self, name: str) -> str:
        """A size that is kept, rounded down."""
        return both(self.quantities[name], rounding="down")


@dataclass(frozen=True)
class Construction:
    """One way to build: smooth numbers, rules for cuts, and words.

    ``numbers(travels, piece, allowances)`` returns the smooth numbers; ``holds`` says that the border takes movement
    away; ``keeps_border`` that a border across the ends remains to be seen. ``driest``, ``dampest`` finish the sentence
    on the month; ``reasons`` has one sentence per risk level, or one for all, with ``{held}``, ``{most}`` and
    ``{limit}`` to be filled with strains; ``remarks`` always hold, ``notes`` hang on sizes.
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
    ``level`` and ``risk`` the step of risk and its word, by the careful end of the restrained strain, ``likely_level``
    by its best guess; ``allowed`` whether the kit advises it: only at the mildest step; ``quantities`` the smooth
    numbers.
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

    def cut(self, name: str) -> Cut:
        """The cut of this name."""
        return next(cut for cut in self.cuts if cut.name == name)


def decide(
    construction: Construction,
    piece: Piece,
    travels: Quantities,
    allowances: Allowances,
    held: Held,
    months: tuple[str, str],
) -> Verdict:
    """Turn the smooth numbers of one way to build into its verdict; ``months`` names the driest and the dampest."""
    share = held.share if construction.holds else 0.0
    quantities = travels | construction.numbers(travels, piece, allowances) | {"held_share": share}
    cuts = tuple(Cut(r.name, float(r.size(quantities)), r.rounding, r.why) for r in construction.rules)
    facts = Facts(quantities)
    strain = StrainRange(*(float(held_strain(quantities, end)) + 0.0 for end in RANGE))  # + 0.0: no minus zero
    likely, step = (int(float(risk_level(x))) for x in (strain.mid, strain.high))
    return Verdict(
        construction.key,
        construction.name,
        movement_of(quantities, "swing"),
        cuts,
        *months,
        _month(months[0], quantities, "narrowing", construction.driest(facts)),
        _month(months[1], quantities, "widening", construction.dampest(facts)),
        _reason(construction.reasons, step, strain),
        construction.steps,
        step,
        risk_levels()[step].word,
        likely,
        strain,
        step == 0,
        construction.keeps_border,
        (),
        _remarks(construction, piece, held, quantities),
        MappingProxyType(quantities),
    )


def _reason(reasons: tuple[str, ...], step: int, strain: StrainRange) -> str:
    """The sentence that belongs to a step of risk, with its strains; limit: the edge reached, or the first one."""
    limit = risk_levels()[max(step, 1)].from_strain
    values = {"held": strain.mid, "most": strain.high, "limit": limit}
    sentence = reasons[min(step, len(reasons) - 1)]
    return sentence.format(**{name: write(value, "strain") for name, value in values.items()})


def _remarks(construction: Construction, piece: Piece, held: Held, quantities: Quantities) -> tuple[str, ...]:
    notes = tuple(note.sentence for note in construction.notes if note.said(quantities))
    return construction.remarks + notes + (held.remarks if construction.holds else ()) + piece.wood.remarks


def _month(month: str, quantities: Mapping[str, float], way: str, consequence: str) -> str:
    """One sentence on a month: how the width stands against today, and what that does here."""
    opposite = {"narrowing": "wider", "widening": "narrower"}[way]
    wanted = {"narrowing": "narrower", "widening": "wider"}[way]
    size = movement_of(quantities, way)
    if size.low_m == size.high_m == 0.0:
        return f"{month}: the panel stays as wide as today; {consequence}."
    if size.low_m < 0.0 < size.high_m:  # the careful end matters in the shop
        most = both(size.high_m, rounding="up")
        return f"{month}: the panel is about as wide as today, {wanted} by up to {most}; {consequence}."
    word = wanted if size.mid_m > 0.0 else opposite
    return f"{month}: the panel is {word} than today by {size.text()}; {consequence}."
