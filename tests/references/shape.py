"""Closed forms of shapes: diamond, oval and mitre, for the drawings and the ways to be held against."""

from __future__ import annotations

import numpy as np


def wedge_width_change_first_order_m(left_m, right_m, depth_m, radial_strain, tangential_strain):
    """The same for small strains: the rotated strain e_T cos^2 t + e_R sin^2 t integrated across the width.

    With tan t = x/d the integral of cos^2 t is d (atan(x1/d) - atan(x0/d)).

    >>> round(1e3 * float(wedge_width_change_first_order_m(-0.1, 0.1, 0.1, -0.0100, -0.0215)), 2)
    -3.81
    """
    tangential_part = depth_m * (np.arctan2(right_m, depth_m) - np.arctan2(left_m, depth_m))
    return radial_strain * (right_m - left_m) + (tangential_strain - radial_strain) * tangential_part


def cup_from_faces_m(width_m, thickness_m, coefficient_per_percent, mc_difference_percent):
    """Depth of cup when one face is wetter than the other by ``mc_difference_percent``: w^2 C dM / (8 t).

    Straight moisture gradient through the thickness; the drier face goes hollow.

    >>> round(1e3 * cup_from_faces_m(0.2, 0.019, 0.00369, 1.0), 2)
    0.97
    """
    return width_m**2 * coefficient_per_percent * mc_difference_percent / (8.0 * thickness_m)


def diamond_angle_rad(radial_strain, tangential_strain):
    """Corner angle of a square stick whose rings run along a diagonal: 2 atan[(1 + e_T)/(1 + e_R)].

    >>> round(float(np.degrees(diamond_angle_rad(-0.0107, -0.0229))), 3)
    89.289
    """
    return 2.0 * np.arctan2(1.0 + tangential_strain, 1.0 + radial_strain)


def out_of_square_rad(radial_strain, tangential_strain, ring_angle_rad):
    """How far a right corner is out of square afterwards, for any ring angle; radians, exact for even strain.

    Width and thickness directions are stretched along the rings and across them; the result is 90 deg less the angle
    between them, so drying gives a negative number, like the shear of ``rotated_strains``. Zero for flatsawn and
    quartersawn, largest at 45 deg, where it agrees with ``diamond_angle_rad``.

    >>> round(float(np.degrees(out_of_square_rad(-0.0107, -0.0229, np.radians(45)))), 3)
    -0.711
    """
    c, s = np.cos(ring_angle_rad), np.sin(ring_angle_rad)
    tangential, radial = 1.0 + tangential_strain, 1.0 + radial_strain
    return np.arctan2((tangential**2 - radial**2) * s * c, radial * tangential)


def oval_m(diameter_m, radial_strain, tangential_strain):
    """Smallest and largest way across a turned round afterwards: (tangential, radial) diameter in metres.

    >>> [round(1e3 * d, 2) for d in oval_m(0.025, -0.0100, -0.0215)]
    [24.46, 24.75]
    """
    return diameter_m * (1.0 + tangential_strain), diameter_m * (1.0 + radial_strain)


def mitre_angle_change_rad(width_strain, length_strain, cut_angle_rad=np.pi / 4):
    """Change of the cut angle of one mitred member, exact: atan[tan p (1 + e_w)/(1 + e_l)] - p.

    ``cut_angle_rad`` between the cut and the member's length. For small strains 0.5 sin(2p)(e_w - e_l).

    >>> round(float(np.degrees(mitre_angle_change_rad(-0.01096, -0.0004))), 3)
    -0.304
    """
    across = np.sin(cut_angle_rad) * (1.0 + width_strain)
    return np.arctan2(across, np.cos(cut_angle_rad) * (1.0 + length_strain)) - cut_angle_rad


def mitre_gap_m(member_width_m, width_strain, length_strain, cut_angle_rad=np.pi / 4):
    """Gap at one end of a mitre whose two members change alike: mitre length times twice the change of angle.

    Positive opens the outside corner (wetting), negative the inside corner (drying). Free members; a rigid panel inside
    changes who gives way.

    >>> round(1e3 * float(mitre_gap_m(0.075, -0.01096, -0.0004)), 2)  # ash, 75 mm, 4 points drier
    -1.13
    """
    mitre_length = member_width_m / np.sin(cut_angle_rad)
    return mitre_length * 2.0 * mitre_angle_change_rad(width_strain, length_strain, cut_angle_rad)
