"""From a finish's published moisture-excluding effectiveness to the resistance of its film.

Effectiveness is what the coated sample gained less than the bare one, in percent of the bare one's gain, after 1, 7
and 14 days in damp air. A film that resists like a surface coefficient S_f, on a sample with constant D, explains all
three figures with one number; the bare sample is taken as free of surface resistance, which the fit prefers.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from references.plate import fraction_with_resistance, fraction_without_resistance
from scipy.optimize import minimize_scalar

from woodlib.air.psychrometrics import saturation_pressure_pa
from woodlib.moisture.equilibrium import emc_percent
from woodlib.moisture.rates import rate

_LOWEST, _HIGHEST = 1e-11, 1e-5  # m/s, far outside any film of the table


class Fit(NamedTuple):
    """Film coefficient (m/s, basis of the test's wood), root mean square residual (points) and the residuals."""

    film_m_s: float
    rms_points: float
    residual_points: tuple[float, ...]


def excluded_percent(film_m_s: float, days: Sequence[float], diffusivity_m2_s: float | None = None) -> np.ndarray:
    """Moisture-excluding effectiveness that a film of given coefficient would show after each time, %.

    >>> [round(float(value)) for value in excluded_percent(5.9e-9, [1, 7, 14])]
    [91, 65, 43]
    """
    diffusivity = diffusivity_m2_s or rate("finish_test_diffusivity_m2_s").mid
    half_m = rate("finish_test_thickness_m").mid / 2.0
    fourier = diffusivity * 86400.0 * np.asarray(days, float) / half_m**2
    coated = fraction_with_resistance(fourier, biot=film_m_s * half_m / diffusivity)
    return 100.0 * (1.0 - coated / fraction_without_resistance(fourier))


def fit_film(days: Sequence[float], published_percent: Sequence[float], diffusivity_m2_s: float | None = None) -> Fit:
    """Film coefficient that meets the published figures best, least squares over the days that have one.

    >>> fit = fit_film([1, 7, 14], [90, 64, 44])
    >>> f"{fit.film_m_s:.2e}, off by {fit.rms_points:.1f} points"
    '5.93e-09, off by 1.1 points'
    """
    published = np.asarray(published_percent, float)

    def misfit(log_film: float) -> float:
        return float(np.sum((excluded_percent(np.exp(log_film), days, diffusivity_m2_s) - published) ** 2))

    # The misfit is flat far from the answer: start from the best point of a coarse grid.
    grid = np.linspace(np.log(_LOWEST), np.log(_HIGHEST), 57)
    best = int(np.argmin([misfit(point) for point in grid]))
    low, high = grid[max(best - 1, 0)], grid[min(best + 1, len(grid) - 1)]
    film = float(np.exp(minimize_scalar(misfit, bounds=(low, high), method="bounded", options={"xatol": 1e-6}).x))
    residual = excluded_percent(film, days, diffusivity_m2_s) - published
    return Fit(film, float(np.sqrt(np.mean(residual**2))), tuple(float(value) for value in residual))


def film_permeance(film_m_s: float) -> float:
    """Permeance of a film from its coefficient in the published test, kg/(m2 s Pa).

    >>> f"{film_permeance(5.93e-9):.2e}"
    '1.56e-10'

    Same flow written with vapour pressure instead of moisture content: S rho0 dM = W dp over the test's change of air.
    """
    celsius = rate("finish_test_temperature_c").mid
    dry, damp = rate("finish_test_rh_before_percent").mid, rate("finish_test_rh_after_percent").mid
    moisture = (emc_percent(celsius, damp) - emc_percent(celsius, dry)) / 100.0
    pressure = saturation_pressure_pa(celsius) * (damp - dry) / 100.0
    return film_m_s * 1000.0 * rate("finish_test_specific_gravity").mid * moisture / pressure
