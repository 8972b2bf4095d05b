"""A border across both ends, glued along its whole length with its grain across the panel's."""

from __future__ import annotations

from .parts import ENDS
from .piece import Allowances, Piece
from .registry import register
from .rules import Facts
from .travel import Quantities
from .way import Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Nothing beyond the travels: the border leaves nothing to be cut loose."""
    return {}


def _driest(facts: Facts) -> str:
    return facts.either(
        "narrowing_high",
        f"the border keeps it from shrinking by {facts.up_to('narrowing_high')}, so it is pulled apart across its "
        "grain",
        "it is no drier than today, so it is not pulled in the first year",
    )


def _dampest(facts: Facts) -> str:
    return facts.either(
        "widening_high",
        f"the border keeps it from growing by {facts.up_to('widening_high')}, so it pushes and may bow",
        "it is no damper than today, so it does not push",
    )


GLUED_BORDER = register(
    Way(
        key="glued_border",
        name="border glued across the ends",
        short="glued border",
        built_as="a panel with its border glued across the ends",
        also=("border glued all round",),
        kinds=("table top", "seat", "lid", "board"),
        usual=True,
        reference=True,
        holds_width=True,
        wants_border=True,
        holds=True,
        keeps_border=True,
        keeps_flat=True,
        numbers=numbers,
        parts=ENDS,
        held_by="Stretched by its border, at most",
        shows=(
            "A panel with a border glued across its end: the border holds the end at today's width while the rest "
            "narrows and widens. Below, panel, glue line and border from the side."
        ),
        driest=_driest,
        dampest=_dampest,
        reasons=(
            "Glue is allowed here: the border stretches the panel by at most {most} of its width, and wood stays elastic "
            "below {limit}.",
            "Glue is refused: the border stretches the panel by about {held} of its width, at most {most}, counting what "
            "damp summers have squeezed short; above {limit} wood takes a set and may crack over the years.",
            "Glue is refused: the border stretches the panel by about {held} of its width, at most {most}, counting what "
            "damp summers have squeezed short; from {limit} wood starts to fail.",
        ),
        steps=(
            "Glue a cross-grain border only where the verdict allows it.",
            "Glue up at the moisture content of the middle of the year in that house.",
            "Otherwise choose a way that lets the panel slide.",
        ),
        change="A house that holds the wood steadier, or quartersawn stock, would ease the pull; narrower stock would not.",
        watch="inside the panel, or in the glue line of the border,",
    )
)
