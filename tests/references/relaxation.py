"""The stress of many seasons in closed form."""

from __future__ import annotations

import numpy as np


def many_season_peak_pa(elastic_pa_per_percent, swing_percent, rate_per_percent, delayed_share):
    """Tension at the end of every dry season once the years repeat, Pa: A tanh(m D/2), A = E R C/(m (1 + phi)).

    No longer depends on the moisture at glue-up (own derivation).

    >>> round(float(many_season_peak_pa(2.07, 5.0, 0.47, 0.4)), 3)
    2.598
    """
    asymptote = elastic_pa_per_percent / (rate_per_percent * (1.0 + delayed_share))
    return asymptote * np.tanh(rate_per_percent * swing_percent / 2.0)
