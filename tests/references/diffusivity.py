"""A diffusion coefficient that never changes, for series solutions."""

from __future__ import annotations

from typing import Any

import numpy as np

from woodlib.moisture.diffusivity import Form
from woodlib.moisture.rates import rate


def constant_form(diffusivity_m2_s: float) -> Form:
    """A form that always gives the same coefficient, for comparison with closed solutions.

    >>> constant_form(2.5e-10).says
    'constant 2.5e-10 m2/s'
    """

    def constant(mc_percent: Any, temperature_c: Any, specific_gravity: Any) -> Any:
        shape = np.broadcast_shapes(np.shape(mc_percent), np.shape(temperature_c), np.shape(specific_gravity))
        return np.full(shape, float(diffusivity_m2_s))

    return Form(constant, f"constant {diffusivity_m2_s:g} m2/s")


def end_grain_m2_s(transverse_m2_s: Any) -> tuple[Any, Any, Any]:
    """Diffusion coefficient along the grain (low, mid, high) from the one across it, m2/s.

    >>> tuple(f"{value:.1e}" for value in end_grain_m2_s(2.6e-11))
    ('2.6e-10', '3.1e-10', '3.9e-10')
    """
    return tuple(factor * transverse_m2_s for factor in rate("end_grain_factor"))
