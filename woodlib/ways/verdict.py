"""The answer for one way to build, made plain: its judgement with every size rounded and every sentence written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from ..errors import InputError
from ..movement.spread import Movement
from ..restraint.held import HeldPanel
from ..restraint.measures import WORRYING_CHANCE, agreement_sentence, strain_words
from ..units import both, shown, write
from ..words.say import plain_text
from .fitting import unfit
from .held import Held
from .judge import Judgement, judge, numbers_of
from .piece import Allowances, Piece
from .risk import risk_level, risk_levels
from .rules import Cut, cuts_of
from .travel import Quantities, movement_of
from .way import Way

CAUTIONS = (
    "Saws, routers and drills take fingers: guards on, work held down, the machine's own instructions first.",
    "Wear eye and ear protection, draw off the dust, and let oily rags dry flat outdoors.",
    "Local codes and licensed practice come before anything said here.",
)


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
    ``states`` sizes as they will stand in a month;
    ``level`` and ``risk`` the step of risk and its word, by the careful end of the restrained strain, ``likely_level``
    by its best guess; ``allowed`` whether the kit advises it: only at the mildest step; ``judged`` the
    judgement it puts in plain words; ``unfit`` why it does not fit the piece, where it does not. ``panel`` is the stress
    model of a glued border, ``measures`` what strain rule and stress model say, and what to make of it where they differ.
    """

    way: Way
    moves: Movement
    cuts: tuple[Cut, ...]
    states: tuple[Cut, ...]
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
    judged: Judgement = field(repr=False)
    unfit: str = ""
    panel: HeldPanel | None = field(default=None, repr=False)
    measures: tuple[str, ...] = ()

    @property
    def quantities(self) -> Mapping[str, float]:
        """Its smooth numbers."""
        return self.judged.numbers

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
    panel: HeldPanel | None = None,
    first: str = "customary",
) -> Verdict:
    """The judgement on a way in plain words; ``months`` names the driest and the dampest, ``first`` the system that is
    marked in.

    ``panel`` is the stress model, where it judges too: from a likely chance of ``WORRYING_CHANCE`` on a way is not at
    the mildest step, whatever the strain rule says.
    """
    held = way.holding(piece, allowances) if way.holding else held
    numbers = numbers_of(way, piece, travels, allowances, held)
    judged = judge(way, numbers, held, float(panel is not None and panel.chance.sound.likely >= WORRYING_CHANCE))
    cuts = cuts_of(way.sizes, numbers)
    judged = replace(judged, marked={key: cut.number(first) for key, cut in cuts.items()})
    strain = StrainRange(*(float(end) + 0.0 for end in judged.pull))  # + 0.0: no minus zero
    level = round(float(judged.level))
    wrong = unfit(way, piece, {key: float(size) for key, size in judged.sizes.items()}, allowances.first)
    return Verdict(
        way=way,
        moves=movement_of(numbers, "swing"),
        cuts=tuple(cuts[rule.key] for rule in way.cuts),
        states=tuple(cuts[rule.key] for rule in way.states),
        driest_month=months[0],
        dampest_month=months[1],
        driest=_month(judged, months[0], "narrowing"),
        dampest=_month(judged, months[1], "widening"),
        reason=wrong or plain_text(judged.reason()),
        level=level,
        risk="does not fit" if wrong else risk_levels()[level].word,
        likely_level=int(float(risk_level(strain.mid))),
        restrained_strain=strain,
        allowed=level == 0 and not wrong,
        remarks=_remarks(way, piece, held, numbers),
        judged=judged,
        unfit=wrong,
        panel=panel,
        measures=_measures(strain.high, panel) if panel else (),
    )


def _measures(strain: float, panel: HeldPanel) -> tuple[str, ...]:
    """What the strain rule and the stress model say, and what to make of both."""
    rule = f"Strain rule: up to {write(strain, 'strain')} is held back, so the wood {strain_words(strain)}."
    return rule, panel.chance_sentence, agreement_sentence(strain, panel.chance.sound.likely)


def _remarks(way: Way, piece: Piece, held: Held, numbers: Quantities) -> tuple[str, ...]:
    notes = tuple(dict.fromkeys(note.sentence for note in way.notes if note.said(numbers)))
    return way.remarks + notes + (held.remarks if way.holds else ()) + piece.wood.remarks


def _month(judged: Judgement, month: str, towards: str) -> str:
    """One sentence on a month: how the width stands against today, with its range, and what that does here."""
    part, consequence = judged.way.part, plain_text(judged.month(towards))
    wanted, opposite = ("narrower", "wider") if towards == "narrowing" else ("wider", "narrower")
    size = movement_of(judged.numbers, towards)
    if size.low_m == size.high_m == 0.0:
        return f"{month}: the {part} stays as wide as today; {consequence}."
    if size.low_m < 0.0 < size.high_m:  # the careful end matters in the shop
        most = both(size.high_m, rounding="up")
        return f"{month}: the {part} is about as wide as today, {wanted} by up to {most}; {consequence}."
    word = wanted if size.mid_m > 0.0 else opposite
    return f"{month}: the {part} is {word} than today by {size.text()}; {consequence}."
