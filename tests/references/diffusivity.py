"""A diffusion coefficient that never changes, for series solutions."""

from __future__ import annotations

from typing import Any

import numpy as np

from woodlib.moisture.diffusivity import Form


def constant_form(diffusivity_m2_s: float) -> Form:
    """A form that always gives the same coefficient, for comparison with closed solutions.

    >>> constant_form(2.5e-10).says
    'constant 2.5e-10 m2/s'
    """

    def constant(mc_percent: Any, temperature_c: Any, specific_gravity: Any) -> Any:
        shape = np.broadcast_shapes(np.shape(mc_percent), np.shape(temperature_c), np.shape(specific_gravity))
        return np.full(shape, float(diffusivity_m2_s))

    return Form(constant, f"constant {diffusivity_m2_s:g} m2/s")
