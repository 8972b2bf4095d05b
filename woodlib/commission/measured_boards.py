"""What the test pieces of a brief did to its numbers: before and after, in words."""

from __future__ import annotations

from dataclasses import replace

from ..movement.spread import Doubts
from ..ways.index import free_movement
from .judged import Commission


def measured_words(commission: Commission) -> str:
    """How far these boards move by their test pieces, and how far their kind would; nothing without a piece."""
    brief, learned = commission.brief, commission.brief.learned()
    if learned is None:
        return ""
    kind = replace(commission.piece, species=brief.kind_of_wood())
    doubts = replace(commission.doubts, species_share=Doubts.species_share)
    before = free_movement(kind, brief.stock.moisture_percent(), commission.months, doubts)
    first = commission.first
    return (
        f"{learned.in_words()} As wide as the whole piece and free they move by {commission.whole_moves.text(first)} over the "
        f"year; by the table alone it was {before.text(first)}."
    )
