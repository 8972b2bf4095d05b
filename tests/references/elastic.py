"""A published density rule for hardwoods, for comparison."""

from __future__ import annotations

from math import exp, log


def guitard_hardwood_ratio(key: str, density_kg_m3: float) -> float:
    """Ratio to the lengthwise modulus by a published density rule for hardwoods, for comparison.

    Power laws about 650 kg/m3 (Guitard & El Amri 1987, numbers from memory).

    >>> round(guitard_hardwood_ratio("ratio_et_el", 650.0), 3)
    0.072
    """
    coefficient, power = {
        "ratio_er_el": (1810.0, 1.30),
        "ratio_et_el": (1030.0, 1.74),
        "ratio_glr_el": (1260.0, 1.14),
        "ratio_glt_el": (971.0, 1.26),
        "ratio_grt_el": (366.0, 1.74),
    }[key]
    return coefficient / 14400.0 * exp((power - 1.03) * log(density_kg_m3 / 650.0))
