"""The steps of a way to build, beside those of its panel, put in an order that never needs a face that is gone."""

from __future__ import annotations

from ..ways.made import MadePiece
from ..ways.steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from .order import USUAL_PRESENT, CutOrder, cut_order, usual_steps

BORE = "bore for hardware"


def order_for(
    piece: MadePiece,
    dowels: bool,
    hardware: bool,
    *,
    glued_up: bool = True,
    lifts: bool = False,
    sections: bool = False,
) -> CutOrder:
    """An order of all steps that works, with its reasons.

    ``dowels`` whether glue lines of the panel have them; ``hardware`` whether there is any to bore for: then the holes
    come once the piece is together, or, for a part alone, while its edge and ends are square; ``glued_up`` whether
    the panel takes more than one board; ``lifts`` whether the piece is hung on hinges; ``sections`` whether
    the panel is glued up in sections.
    """
    own = piece.way.order
    base: tuple[Step, ...] = ()
    if piece.panel is not None:
        usual = usual_steps(
            end_pieces=piece.own_ends_m is not None, dowels=dowels, glued_up=glued_up, sections=sections
        )
        base = tuple(step for step in usual if step.name != BORE)
    return cut_order((*base, *own, *_at_the_end(own, hardware, lifts)), USUAL_PRESENT)


def _at_the_end(own: tuple[Step, ...], hardware: bool, lifts: bool) -> tuple[Step, ...]:
    """Boring, finishing and hanging, once the piece is together or its ends are square."""
    whole = [TOGETHER] if _assembled(own) else [SQUARE_EDGE, SQUARE_ENDS]
    bore = (Step(BORE, whole, ["hardware holes"]),) if hardware else ()
    finish = Step("finish all faces alike, ends too", [*whole, *(["hardware holes"] if hardware else [])], ["finish"])
    return (*bore, finish, *((Step("hang it on its hinges", ["finish"]),) if lifts else ()))


def _assembled(steps: tuple[Step, ...]) -> bool:
    return any(TOGETHER in step.makes for step in steps)
