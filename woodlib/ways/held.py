"""How much of the panel's movement a glued border takes away: the one place where the restraint factor enters.

Every rule here is a function from a piece to :class:`Held`; hand another one to ``compare(..., held=...)`` to swap it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import radians

from ..errors import InputError, MissingDataError
from ..movement.wood import Wood
from ..restraint import closed_forms
from ..restraint.assumptions import assumption
from ..restraint.elastic import elastic_constants
from ..restraint.fracture import split_cost_j_m2
from ..restraint.held import HeldPanel, held_panel
from ..words.decided import Sliding
from .piece import Piece


@dataclass(frozen=True)
class GluedEdge:
    """What a glued edge bears, per strain that still stands in the wood, by value.

    ``glue_per_strain`` mean shear at the end of the glue line over what a joint across the grain bears; a split sets free
    what it costs once (share x standing strain)^2 x width reaches ``split_low_m`` (brittle) to ``split_high_m`` (tough).
    """

    glue_per_strain: float
    split_low_m: float
    split_high_m: float


@dataclass(frozen=True)
class Held:
    """Share of the free strain that is held back, 0 free to 1 rigid, and what to know about it.

    ``edge`` what the glued edge bears, where the panel is held by one and the numbers of its wood are known.
    ``through_year(glue_up_mc_percent, year_mc_percent)`` gives the second measure, the stress model, where the rule
    has one; its ``panel`` at a usual year answers for many years at once (:meth:`HeldPanel.chances`).
    """

    share: Sliding
    remarks: tuple[str, ...] = ()
    edge: GluedEdge | None = None
    through_year: Callable[[float, Sequence[float]], HeldPanel] | None = None
    panel: HeldPanel | None = None


def plane_field(piece: Piece) -> Held:
    """The plane field of the panel with its border on both ends, and the stress through the years with it.

    A wood whose stiffness no table has is held as by :func:`full_restraint`, the careful side, and that is said.

    >>> held = plane_field(Piece("white ash", "450 mm", "450 mm", "20 mm", "38 mm"))
    >>> round(held.share, 2), held.through_year(9.5, [12, 7]).chance is not None
    (0.75, True)
    """
    panel_wood, strip_wood = piece.species, piece.border_species
    if isinstance(panel_wood, Wood) or isinstance(strip_wood, Wood):
        return _rigid_for("no table has the stiffness of the wood of the piece")

    def through_year(glue_up_mc_percent: float, year_mc_percent: Sequence[float]) -> HeldPanel:
        return held_panel(
            panel_wood,
            width_m=piece.width_m,
            thickness_m=piece.thickness_m,
            length_m=piece.length_m - 2.0 * piece.border_width_m,
            strip_width_m=piece.border_width_m,
            strip_thickness_m=piece.border_thickness_m,
            strip_species=strip_wood,
            ring_angle_deg=piece.ring_angle_deg,
            strip_ring_angle_deg=piece.ring_angle_deg,
            glue_up_mc_percent=glue_up_mc_percent,
            year_mc_percent=year_mc_percent,
        )

    try:
        panel = through_year(9.0, (11.0, 7.0))  # the share does not hang on the moistures
    except MissingDataError:
        return _rigid_for(
            f"no table has the stiffness of {' or '.join(dict.fromkeys((str(panel_wood), str(strip_wood))))}"
        )
    except InputError:
        return _rigid_for("the plane field does not fit a piece of this shape")
    return Held(panel.restraint.number, _estimates(panel), _edge(panel), through_year, panel)


def _edge(panel: HeldPanel) -> GluedEdge:
    """From the plane field, the toughness of wood and the strength of its joints across the grain."""
    modulus, energy = panel.plane_field.plane.panel.modulus_x_pa, assumption("split_energy_share").middle
    low, high = (cost / (energy * modulus) for cost in split_cost_j_m2(panel.plane_field.plane.panel))
    bears = assumption("shear_across_share").middle * panel.shear_strength_pa
    return GluedEdge(abs(panel.edge_per_strain.shear_pa) / bears, low, high)


def _rigid_for(reason: str) -> Held:
    return Held(1.0, (f"{reason}, so the border is taken as rigid, which is the careful side",))


def _estimates(panel: HeldPanel) -> tuple[str, ...]:
    low, mid, high = (100.0 * share for share in (panel.restraint.low, panel.restraint.number, panel.restraint.high))
    span = f"could be {low:.0f} to {high:.0f} %, " if high - low > 1.0 else ""
    return (f"the border holds back about {mid:.0f} % of the movement at the panel's end ({span}by the plane field)",)


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
    0.75
    """
    ring = radians(piece.ring_angle_deg)
    panel_wood, strip_wood = piece.species, piece.border_species
    if isinstance(panel_wood, Wood) or isinstance(strip_wood, Wood):
        raise InputError("the wood of the piece has no stiffness; name a catalogue species or use full_restraint.")
    panel, strip = elastic_constants(panel_wood), elastic_constants(strip_wood)
    answer = closed_forms.one_line_restraint(
        piece.width_m,
        0.5 * piece.length_m - piece.border_width_m,
        piece.border_width_m,
        panel.panel(ring),
        strip.strip(ring),
        piece.border_thickness_m / piece.thickness_m,
    )
    return Held(answer.factor, answer.remarks + panel.remarks(ring))
