"""Total shrinkage and movement coefficient: two ways to write one property of a wood."""

from __future__ import annotations

USUAL_FIBRE_SATURATION_PERCENT = 30.0
# The printed coefficients are the slope of the shrinkage line where the board is measured at 10% moisture content.
COEFFICIENT_MOISTURE_PERCENT = 10.0


def coefficient_from_shrinkage(shrinkage_percent, fibre_saturation_percent=USUAL_FIBRE_SATURATION_PERCENT):
    """Movement coefficient (1/percent) that belongs to a total shrinkage.

    C = S / (F - (F - 10) S), with S the shrinkage from green to ovendry as a fraction and F the fibre saturation
    in percent: the shrinkage line of Wood Handbook Equation (13-3) with the board measured at 10% moisture content.
    Of 75 printed coefficients with their own printed shrinkage, 68 agree to the last printed digit.
    Valid for shrinkage from 0 to below 100%; both arguments broadcast.

    >>> round(coefficient_from_shrinkage(7.8), 5)  # white ash, tangential
    0.00274
    """
    fraction = shrinkage_percent / 100.0
    return fraction / (fibre_saturation_percent - (fibre_saturation_percent - COEFFICIENT_MOISTURE_PERCENT) * fraction)


def shrinkage_from_coefficient(coefficient_per_percent, fibre_saturation_percent=USUAL_FIBRE_SATURATION_PERCENT):
    """Total shrinkage (percent) that belongs to a movement coefficient; the inverse of the relation above.

    S = F C / (1 + (F - 10) C); both arguments broadcast.

    >>> round(shrinkage_from_coefficient(0.00274), 1)
    7.8
    """
    span = fibre_saturation_percent - COEFFICIENT_MOISTURE_PERCENT
    fraction = fibre_saturation_percent * coefficient_per_percent / (1.0 + span * coefficient_per_percent)
    return 100.0 * fraction


def volumetric_from_both(radial_percent, tangential_percent):
    """Volumetric shrinkage (percent) of a block that shrinks radially and tangentially; length left out.

    V = 1 - (1 - R)(1 - T), geometry alone.

    >>> round(volumetric_from_both(4.9, 7.8), 1)
    12.3
    """
    return 100.0 * (1.0 - (1.0 - radial_percent / 100.0) * (1.0 - tangential_percent / 100.0))


def volumetric_from_gravity(specific_gravity_basic):
    """Volumetric shrinkage (percent) from basic specific gravity: V = 26.5 G.

    A trend through many species with wide scatter. Wood Handbook 2021 (FPL-GTR-282), Equation (4-12).

    >>> round(volumetric_from_gravity(0.60), 1)
    15.9
    """
    return 26.5 * specific_gravity_basic


def radial_from_volumetric(volumetric_percent, tangential_to_radial=2.0):
    """Radial shrinkage (percent) of a wood whose tangential shrinkage is a given multiple of it.

    Solves (1 - R)(1 - t R) = 1 - V. That tangential is about twice radial: Wood Handbook 2021, chapter 4; over the
    species carried here the ratio runs from 1.1 to 2.9.

    >>> round(radial_from_volumetric(14.0), 2)
    4.82
    """
    ratio, volume = tangential_to_radial, volumetric_percent / 100.0
    root = ((1.0 + ratio) ** 2 - 4.0 * ratio * volume) ** 0.5
    return 100.0 * (1.0 + ratio - root) / (2.0 * ratio)
