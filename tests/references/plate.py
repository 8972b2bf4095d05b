"""A yearly swing in the middle of a board in closed form."""

from __future__ import annotations

from typing import Any

import numpy as np

from woodlib.door import door
from woodlib.moisture.plate import POSITIVE, swing_response


@door(half_thickness_m=POSITIVE, diffusivity_m2_s=POSITIVE, surface_m_s=POSITIVE, period_s=POSITIVE)
def swing_kept(half_thickness_m: Any, diffusivity_m2_s: Any, surface_m_s: Any, period_s: Any) -> Any:
    """Part of a steady swing of the air's EMC that the board's mean moisture follows, 0 to 1; broadcasts.

    >>> round(swing_kept(0.0095, 2.6e-11, 6e-9, 365 * 86400.0), 3)  # three coats of urethane varnish
    0.871
    """
    return np.abs(swing_response(half_thickness_m, diffusivity_m2_s, surface_m_s, period_s))


@door(half_thickness_m=POSITIVE, diffusivity_m2_s=POSITIVE, surface_m_s=POSITIVE, period_s=POSITIVE)
def swing_delay_s(half_thickness_m: Any, diffusivity_m2_s: Any, surface_m_s: Any, period_s: Any) -> Any:
    """How long the board's mean moisture runs behind a steady swing of the air, s; broadcasts.

    >>> round(swing_delay_s(0.0095, 2.6e-11, 6e-9, 365 * 86400.0) / 86400)
    29
    """
    return -np.angle(swing_response(half_thickness_m, diffusivity_m2_s, surface_m_s, period_s)) * period_s / (2 * np.pi)
