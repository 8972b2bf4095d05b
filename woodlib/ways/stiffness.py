"""Stiffness of a piece's two woods, or of a usual hardwood where the tables have none, and that said."""

from __future__ import annotations

from math import radians

from ..errors import MissingDataError
from ..movement.wood import Wood
from ..restraint.elastic import elastic_constants, kindred_ratio
from ..restraint.field import PlaneWood
from ..species import Species
from .piece import Piece

USUAL_PA = 12.0e9  # along the grain, middle of common hardwoods; from memory. Only ratios to it count here.
_POISSON = 0.4  # along to across, middle of common hardwoods; from memory


def panel_and_strip(piece: Piece) -> tuple[PlaneWood, PlaneWood, tuple[str, ...]]:
    """Constants of the panel across a glue line, of a strip along it, and what was estimated.

    >>> panel, strip, remarks = panel_and_strip(Piece("white ash", "450 mm", "450 mm", "20 mm", "38 mm"))
    >>> round(strip.modulus_x_pa / panel.modulus_x_pa, 1)
    12.5
    """
    panel, own = _wood(piece.species, piece.ring_angle_deg)
    _, strip = _wood(piece.border_species, piece.ring_angle_deg)
    return panel[0], strip[0], tuple(dict.fromkeys((*panel[1], *own[1], *strip[1])))


def _wood(wood: Species | Wood | str, ring_angle_deg: float):
    ring = radians(ring_angle_deg)
    try:
        if isinstance(wood, Wood):
            raise MissingDataError(wood.name)
        found = elastic_constants(wood)
    except MissingDataError:
        return _usual(wood if isinstance(wood, str) else wood.name, ring_angle_deg)
    return (found.panel(ring), found.estimate_remarks(ring)), (found.strip(ring), ())


def _usual(name: str, ring_angle_deg: float):
    """Ratios of the median hardwood; the quartersawn side from half-way on."""
    flat = ring_angle_deg < 45.0
    across = USUAL_PA * kindred_ratio("ratio_et_el" if flat else "ratio_er_el", "hardwood").number
    shear = USUAL_PA * kindred_ratio("ratio_glt_el" if flat else "ratio_glr_el", "hardwood").number
    said = (f"no table has the stiffness of {name}; the ratios of a middling hardwood stand in",)
    panel = PlaneWood(across, USUAL_PA, shear, _POISSON * across / USUAL_PA)
    return (panel, said), (PlaneWood(USUAL_PA, across, shear, _POISSON), said)
