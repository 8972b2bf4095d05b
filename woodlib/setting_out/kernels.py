"""Smooth numbers of setting out: plain sums and products that take floats, arrays, exact fractions and decided numbers.

No larger-of, no rounding, no limits: these come where the numbers are used.
"""

from __future__ import annotations


def rest_each_side(whole, part):
    """What is left on each side of a part centred in a whole.

    >>> rest_each_side(455, 160)
    147.5
    """
    return (whole - part) / 2


def pair_about(middle, centres):
    """Two places about a middle, ``centres`` apart.

    >>> pair_about(10.0, 4.0)
    (8.0, 12.0)
    """
    return middle - centres / 2, middle + centres / 2


def place_in_row(length, end, number, count):
    """Place ``number`` (0 first) of ``count`` evenly spaced places whose outermost lie ``end`` from each end.

    >>> [place_in_row(10.0, 1.0, number, 3) for number in range(3)]
    [1.0, 5.0, 9.0]
    """
    return end + (length - 2 * end) * number / (count - 1)


def clear_before(middle, half_size, low):
    """How far something about ``middle`` ends before a cut that begins at ``low``; negative where it does not."""
    return low - middle - half_size


def clear_after(middle, half_size, high):
    """How far something about ``middle`` begins after a cut that ends at ``high``; negative where it does not."""
    return middle - half_size - high


def blank_length(pieces, kerf, trim, count):
    """Length of a blank for ``count`` pieces of total length ``pieces``: a kerf at each end of each, trim at both ends.

    >>> blank_length(1000.0, 3.0, 25.0, 3)
    1062.0
    """
    return pieces + (count + 1) * kerf + 2 * trim


def hole_for_screw(screw, marking, drilling):
    """Hole that a screw passes when two of them may each be off by marking and drilling at their worst.

    >>> hole_for_screw(4.0, 0.5, 0.25)
    5.5
    """
    return screw + 2 * (marking + drilling)


def error_allowed(hole, screw):
    """How far off each of two screws may be and still enter its hole.

    >>> error_allowed(4.5, 4.0)
    0.25
    """
    return (hole - screw) / 2


def slot_length(screw, distance, swelling_strain, shrinkage_strain, allowance):
    """Slot for a screw at a distance from the fixed one: the screw, the travel both ways, and room to fit.

    ``swelling_strain`` 0 or more, ``shrinkage_strain`` 0 or less.

    >>> round(slot_length(4.0, 200.0, 0.004, -0.008, 1.5), 9)
    7.9
    """
    return screw + distance * (swelling_strain - shrinkage_strain) + allowance


def gravity_at(gravity_12, volumetric_shrinkage, mc_percent, fibre_saturation_percent):
    """Specific gravity (dry mass over volume at this moisture) from that at 12 %; shrinkage as a fraction.

    The dry mass stays and the volume is that of green wood times 1 - S (1 - M/F), for M up to fibre saturation.

    >>> round(gravity_at(0.68, 0.163, 12.0, 30.0), 6)
    0.68
    """
    at_12 = 1 - volumetric_shrinkage * (1 - 12 / fibre_saturation_percent)
    now = 1 - volumetric_shrinkage * (1 - mc_percent / fibre_saturation_percent)
    return gravity_12 * at_12 / now


def mass_kg(volume_m3, gravity, mc_percent):
    """Mass of wood, kg: dry mass and the water in it, 1000 G V (1 + M/100).

    >>> round(mass_kg(0.01, 0.5, 12.0), 9)
    5.6
    """
    return 1000 * gravity * volume_m3 * (1 + mc_percent / 100)
