"""What movement needs to know about a wood: its coefficients and shrinkages along the three axes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from ..errors import MissingDataError
from ..species import Species, coefficient_from_shrinkage, find_species, shrinkage_from_coefficient
from .coefficients import FIBRE_SATURATION_PERCENT, movement_strain

# Middle of 0.1 to 0.2 % green to oven-dry, the range for most woods (Wood Handbook FPL-GTR-190 p. 4-5, quoted);
# reaction wood, juvenile wood and cross grain go far beyond, up to 2 %.
LONGITUDINAL_SHRINKAGE = 0.0015
DISAGREEMENT = 0.10  # a coefficient further than this from the species' own shrinkage is said aloud


@dataclass(frozen=True)
class Wood:
    """Coefficients (per % MC, 6 to 14 %) and shrinkages (green to oven-dry, fraction) of one wood.

    ``fibre_saturation_percent`` is the moisture on which coefficient and shrinkage belong together: 30 % for nearly
    all, 22 % for some softwoods and imported woods whose table rows rest on that basis.
    """

    name: str
    radial_coefficient: float
    tangential_coefficient: float
    radial_shrinkage: float
    tangential_shrinkage: float
    longitudinal_shrinkage: float = LONGITUDINAL_SHRINKAGE
    fibre_saturation_percent: float = FIBRE_SATURATION_PERCENT
    remarks: tuple[str, ...] = ()

    @property
    def longitudinal_coefficient(self) -> float:
        """Strain along the grain per % MC."""
        return coefficient_from_shrinkage(100.0 * self.longitudinal_shrinkage, self.fibre_saturation_percent)

    def axis_strains(self, mc_from, mc_to, factor=1.0):
        """Strains (longitudinal, radial, tangential) for a change of moisture; all arguments broadcast.

        ``factor`` scales shrinkage and coefficient together: how this board differs from the average of its species.

        >>> white_ash = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
        >>> [round(float(strain), 5) for strain in white_ash.axis_strains(12, 8)]
        [-0.0002, -0.00676, -0.01096]
        """
        pairs = (
            (self.longitudinal_coefficient, self.longitudinal_shrinkage),
            (self.radial_coefficient, self.radial_shrinkage),
            (self.tangential_coefficient, self.tangential_shrinkage),
        )
        saturation = self.fibre_saturation_percent
        return tuple(
            movement_strain(coefficient * factor, shrinkage * factor, mc_from, mc_to, saturation)
            for coefficient, shrinkage in pairs
        )


def _direction(species: Species, direction: str, saturation: float, remarks: list[str]) -> tuple[float, float]:
    """Coefficient per % and shrinkage fraction of one direction; the missing one from the other, and said."""
    coefficient = species.get(f"{direction}_coefficient_per_percent")
    shrinkage = species.get(f"{direction}_shrinkage_percent")
    if coefficient is None:  # the catalogue fills this in for its own woods; a hand-made species may not
        if shrinkage is None:
            raise MissingDataError(
                f"{species.name} has neither {direction} shrinkage nor a {direction} movement coefficient in the "
                "tables; choose another species or give your own measured shrinkage in a species file."
            )
        remarks.append(f"{direction} coefficient of {species.name} worked out from its shrinkage, not printed")
        return coefficient_from_shrinkage(shrinkage.number, saturation), shrinkage.number / 100.0
    if shrinkage is None:
        remarks.append(f"{direction} shrinkage of {species.name} worked out from its coefficient, not printed")
        return coefficient.number, shrinkage_from_coefficient(coefficient.number, saturation) / 100.0
    own = coefficient_from_shrinkage(shrinkage.number, saturation)
    if abs(coefficient.number - own) > DISAGREEMENT * own:
        remarks.append(
            f"the table's {direction} coefficient {coefficient.number:.5f} is used for {species.name}; "
            f"its own shrinkage of {shrinkage.number:g} % would give {own:.5f}"
        )
    return coefficient.number, shrinkage.number / 100.0


def wood_of(species: Species | Wood | str) -> Wood:
    """The wood of a species, by name or as found in the catalogue.

    Where a table prints both, the coefficient is used from 6 to 14 % and the species' own shrinkage outside. A missing
    one is worked out from the other; a coefficient that disagrees with the own shrinkage (a row for a whole group, or
    a neighbour's value) stays in use and is named in ``remarks``.

    Raises :class:`MissingDataError` when the tables hold neither for a direction.

    >>> wood_of("white ash").tangential_coefficient
    0.00274
    """
    if isinstance(species, Wood):
        return species
    if isinstance(species, str):
        species = find_species(species)
    remarks = list(species.doubts)
    saturation = species.fibre_saturation_percent
    radial, radial_shrinkage = _direction(species, "radial", saturation, remarks)
    tangential, tangential_shrinkage = _direction(species, "tangential", saturation, remarks)
    return Wood(
        species.name,
        radial,
        tangential,
        radial_shrinkage,
        tangential_shrinkage,
        fibre_saturation_percent=saturation,
        remarks=tuple(remarks),
    )


def rotated_strains(along, radial, tangential, ring_angle_rad, grain_slope_rad):
    """Strain of a board from the strains of the wood: e' = Q diag(e_L, e_R, e_T) Q^T, written out.

    Ring angle: between the board's width and the tangential direction (0 flatsawn, 90 deg quartersawn), turning about
    the grain. Slope of grain: between the board's length and the grain, in the plane of length and width.
    All arguments broadcast. Returns (length, width, thickness, shear_width_thickness, shear_length_width,
    shear_length_thickness); shears are the change of a right angle in radians.
    Assumes even moisture and straight rings; small strains.

    >>> [round(float(e), 5) for e in rotated_strains(0.0, 0.00169, 0.00274, np.radians(30), 0.0)[1:4]]
    [0.00248, 0.00195, 0.00091]
    """
    c, s = np.cos(ring_angle_rad), np.sin(ring_angle_rad)
    across = tangential * c**2 + radial * s**2
    thickness = radial * c**2 + tangential * s**2
    shear = 2.0 * (tangential - radial) * s * c
    a, b = np.cos(grain_slope_rad), np.sin(grain_slope_rad)
    return (
        along * a**2 + across * b**2,
        across * a**2 + along * b**2,
        thickness + 0.0 * b,
        shear * a,
        2.0 * (across - along) * a * b,
        shear * b,
    )


def width_strain(wood: Wood, ring_angle_rad, grain_slope_rad, mc_from, mc_to, factor=1.0):
    """Strain across a board's width; kernel of everything about panels. All arguments but ``wood`` broadcast.

    >>> white_ash = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
    >>> round(float(width_strain(white_ash, 0.0, 0.0, 12, 8)), 5)
    -0.01096
    """
    along, radial, tangential = wood.axis_strains(mc_from, mc_to, factor)
    return rotated_strains(along, radial, tangential, ring_angle_rad, grain_slope_rad)[1]
