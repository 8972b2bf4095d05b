"""A steady swing of the air and a board whose diffusion coefficient is constant, in closed form."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..door import Limits, door

POSITIVE = Limits(0.0, np.inf, "", "write a number above zero", "dimensionless", above_low=True)


def swing_response(half_thickness_m: Any, diffusivity_m2_s: Any, surface_m_s: Any, period_s: Any) -> Any:
    """Complex ratio of the swing of mean moisture to the swing of the air's EMC, for an endless sine.

    Arguments broadcast, SI, above zero; not checked here. The modulus is the part of the swing that the board
    follows, minus the angle over 2 pi the delay in periods.

    >>> round(float(abs(swing_response(0.0095, 2.6e-11, 1e-7, 365 * 86400.0))), 3)
    0.961

    tanh z / (z (1 + z tanh z / Bi)), z = l sqrt(2 pi i/(P D)); derived from the equation of ``diffusion``.
    """
    z = half_thickness_m * np.sqrt(2j * np.pi / (period_s * diffusivity_m2_s))
    return np.tanh(z) / (z * (1.0 + z * np.tanh(z) * diffusivity_m2_s / (surface_m_s * half_thickness_m)))


@door(diffusivity_m2_s=POSITIVE, period_s=POSITIVE)
def swing_depth_m(diffusivity_m2_s: Any, period_s: Any) -> Any:
    """Depth at which a swing has faded to 37 % of what it is at the wood's surface, sqrt(D P / pi), m.

    >>> round(swing_depth_m(2.6e-11, 86400.0) * 1000, 2)
    0.85
    """
    return np.sqrt(diffusivity_m2_s * period_s / np.pi)


def surface_response(half_thickness_m: Any, diffusivity_m2_s: Any, surface_m_s: Any, period_s: Any) -> Any:
    """Complex ratio of the swing at the wood's surface, under the finish, to the swing of the air's EMC.

    Arguments broadcast, SI, above zero; not checked here.

    >>> round(float(abs(surface_response(0.0095, 2.6e-11, 1e-7, 86400.0))), 2)
    0.74
    """
    z = half_thickness_m * np.sqrt(2j * np.pi / (period_s * diffusivity_m2_s))
    return 1.0 / (1.0 + z * np.tanh(z) * diffusivity_m2_s / (surface_m_s * half_thickness_m))
