"""Held movement in closed form: what fits on a blackboard.

Free strain is positive when the wood grows, so drying is negative; tension is positive. ``relaxation`` is the share of
the elastic stress that is left after slow drying (1 = none lost); see ``relaxation``. All functions broadcast.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np


def transverse_modulus_pa(tangential_pa, radial_pa, rolling_shear_pa, poisson_tr, ring_angle_rad):
    """Modulus across a board at any ring angle (0 flatsawn, pi/2 quartersawn), Pa.

    1/E = c^4/E_T + s^4/E_R + (1/G_RT - 2 nu_TR/E_T) c^2 s^2 (rotation of the compliance about the grain).

    >>> round(float(transverse_modulus_pa(1056e6, 1650e6, 220e6, 0.36, 0.0)) / 1e6)
    1056
    """
    c2, s2 = np.cos(ring_angle_rad) ** 2, np.sin(ring_angle_rad) ** 2
    mixed = 1.0 / rolling_shear_pa - 2.0 * poisson_tr / tangential_pa
    return 1.0 / (c2**2 / tangential_pa + s2**2 / radial_pa + mixed * c2 * s2)


def working_depth_m(width_m, modulus_along_line_pa, shear_pa, depth_m):
    """Depth of wood, from the glue line, that shear can make share the load, m.

    d = (W/pi) sqrt(G/E) tanh( (pi/W) sqrt(E/G) depth ): all of a shallow piece, about W/3 of a deep one.

    >>> round(float(working_depth_m(0.45, 1056e6, 1016.4e6, 0.225)), 4)
    0.1295
    """
    reach = width_m / np.pi * np.sqrt(shear_pa / modulus_along_line_pa)
    return reach * np.tanh(depth_m / reach)


def restraint_factor(
    width_m,
    panel_depth_m,
    strip_m,
    panel_modulus_pa,
    panel_shear_pa,
    strip_modulus_pa,
    strip_shear_pa,
    thickness_ratio=1.0,
):
    """Share of the panel's free strain that a glued cross-grain strip takes away, at the middle of the glue line.

    Parameters
    ----------
    width_m : float or array
        Width of the panel across its grain; only the glued length when just a middle part is glued.
    panel_depth_m : float or array
        Half the panel's length when both ends are held, its whole length when one is.
    strip_m, thickness_ratio : float or array
        Width of the strip, and its thickness over the panel's.
    panel_modulus_pa, panel_shear_pa, strip_modulus_pa, strip_shear_pa : float or array
        Modulus in the direction of the glue line, and shear modulus in the plane.

    Returns
    -------
    float or array
        0 (free) to 1 (rigidly held).

    Examples
    --------
    >>> round(float(restraint_factor(0.45, 0.225, 0.038, 1056e6, 1016.4e6, 13200e6, 1016.4e6)), 3)
    0.74

    Notes
    -----
    Two springs in series, each with its working depth: R = E_s b r / (E_s b r + E d). It is the first term of a
    series that the tests hold. Against the plane field, one wood, both ends held: mean error -1.6 %, nine in ten panels
    within 9 %, worst 17 % (thin strip). With one end held the piece also bends: nine in ten within 22 %, worst 55 %
    (a weak strip on a short panel). Assumes a stiff glue line and uniform moisture.
    """
    strip_depth = working_depth_m(width_m, strip_modulus_pa, strip_shear_pa, strip_m)
    panel_depth = working_depth_m(width_m, panel_modulus_pa, panel_shear_pa, panel_depth_m)
    strip_spring = strip_modulus_pa * strip_depth * thickness_ratio
    return strip_spring / (strip_spring + panel_modulus_pa * panel_depth)


def held_strain(restraint, misfit_strain):
    """Strain that the wood must take up itself because the strip takes it away: -R (e_panel - e_strip).

    >>> round(held_strain(0.744, -0.0132), 5)
    0.00982
    """
    return -restraint * misfit_strain


@dataclass(frozen=True)
class OneLineRestraint:
    """The blackboard answer: restraint factor, the depths that work, and where it is good."""

    factor: float
    panel_working_depth_m: float
    strip_working_depth_m: float
    remarks: tuple[str, ...]


def one_line_restraint(width_m, panel_depth_m, strip_m, panel, strip, thickness_ratio=1.0) -> OneLineRestraint:
    """``restraint_factor`` with its working depths and validity, for two ``PlaneWood``.

    >>> from woodlib.restraint.field import PlaneWood
    >>> ash = PlaneWood(1056e6, 13200e6, 1016.4e6, 0.0352), PlaneWood(13200e6, 1056e6, 1016.4e6, 0.44)
    >>> round(one_line_restraint(0.45, 0.225, 0.038, *ash).strip_working_depth_m, 4)
    0.0295
    """
    factor = restraint_factor(
        width_m,
        panel_depth_m,
        strip_m,
        panel.modulus_x_pa,
        panel.shear_pa,
        strip.modulus_x_pa,
        strip.shear_pa,
        thickness_ratio,
    )
    remarks = [
        "The one-line factor is good to 9 % for nine panels in ten with both ends held, to 22 % with one end held; the "
        "plane field is good to 1 %."
    ]
    if strip_m > 0.15 * width_m:
        remarks.append("The strip is wider than 0.15 of the panel; the extra width adds almost nothing.")
    if thickness_ratio < 0.6:
        remarks.append("The strip is much thinner than the panel; the one-line factor can be 17 % off.")
    return OneLineRestraint(
        float(factor),
        float(working_depth_m(width_m, panel.modulus_x_pa, panel.shear_pa, panel_depth_m)),
        float(working_depth_m(width_m, strip.modulus_x_pa, strip.shear_pa, strip_m)),
        tuple(remarks),
    )
