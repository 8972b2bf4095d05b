"""What the numbers of a commission rest on, what was assumed, and their limits."""

from __future__ import annotations

from collections.abc import Iterator

from ..restraint.held import HeldPanel
from ..restraint.measures import STATUS_WORDS, known_sentences
from ..units import both
from .card import Card, heading, joined, listed
from .judged import Commission

_SOURCES = (
    "Moisture of wood in air: Wood Handbook FPL-GTR-190 (2010), eq. 4-5. Movement: the same, eq. 13-2, and total "
    "shrinkage outside 6 to 14 % MC.",
    "When held wood takes a set (0.40 %) and starts to fail (0.90 %): The Structural Conservation of Panel "
    "Paintings, Getty 1998.",
    "Play, pins, cover and the advice on care: common practice, no source.",
)
_ASSUMED = (
    "relaxation_rate",
    "strength_variation",
    "demand_variation",
    "calibrated_strength_factor",
    "duration_factor",
)


def small_print(commission: Commission) -> Card:
    """What the numbers rest on, what was assumed, and their limits."""
    said = [f"{text[:1].upper()}{text[1:].rstrip('.')}." for text in _said(commission)]
    return joined(heading("Sources and small print", 2), listed([*_SOURCES, *said]))


def _said(commission: Commission) -> Iterator[str]:
    yield from commission.piece.wood.remarks
    yield from commission.months.remarks
    if not commission.brief.piece.border_width_m:
        width = both(commission.piece.border_width_m, first=commission.first)
        yield f"No border is asked for; an end or frame piece is taken {width} wide"
    glued = commission.glued
    if glued is not None and glued.panel:
        yield from _stress_sources(glued.panel)


def _stress_sources(panel: HeldPanel) -> Iterator[str]:
    """How well the numbers behind the chance of a crack are known, and what was assumed."""
    statuses = {name: status for piece, name, status, *_ in panel.provenance if piece == "panel"}
    yield from known_sentences(statuses, panel.inputs.species.name)
    assumed = "; ".join(
        f"{row.meaning}, {STATUS_WORDS[row.status].lower()}" for row in panel.assumptions if row.key in _ASSUMED
    )
    yield f"Chance of a crack: a judgement between two views. Assumed: {assumed}"
