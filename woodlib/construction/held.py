"""How much of the panel's movement a glued border takes away: the one place where the restraint factor enters.

Every rule here is a function from a piece to :class:`Held`; hand another one to ``compare(..., held=...)`` to swap it.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import radians

from ..errors import InputError
from ..movement.wood import Wood
from ..restraint import closed_forms
from ..restraint.elastic import elastic_constants
from .piece import Piece


@dataclass(frozen=True)
class Held:
    """Share of the free strain that is held back, 0 free to 1 rigid, and what to know about it."""

    share: float
    remarks: tuple[str, ...] = ()


def full_restraint(piece: Piece) -> Held:
    """A border that does not give at all: the careful side.

    >>> full_restraint(Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")).share
    1.0
    """
    return Held(1.0, ("the border is taken as rigid, which is the careful side",))


def one_line_restraint(piece: Piece) -> Held:
    """Two springs in series, panel and border, each with the depth that shear can reach.

    Needs the stiffness of both woods; raises :class:`MissingDataError` where no table has it.

    >>> seat = Piece("white ash", "450 mm", "450 mm", "20 mm", "38 mm")
    >>> round(one_line_restraint(seat).share, 2)
    0.74
    """
    ring = radians(piece.ring_angle_deg)
    woods = piece.species, piece.border_species
    if any(isinstance(wood, Wood) for wood in woods):
        raise InputError("the wood of the piece has no stiffness; name a catalogue species or use full_restraint.")
    panel, strip = (elastic_constants(wood) for wood in woods)
    answer = closed_forms.one_line_restraint(
        piece.width_m,
        0.5 * piece.length_m,
        piece.border_width_m,
        panel.panel(ring),
        strip.strip(ring),
        piece.border_thickness_m / piece.thickness_m,
    )
    return Held(answer.factor, answer.remarks + panel.remarks(ring))
