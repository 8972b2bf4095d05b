"""The solver against closed solutions of the plate.

Source: Crank, The Mathematics of Diffusion, ch. 4 (series for a plane sheet, without and with surface evaporation;
from memory). The roots and times below were worked out apart from the kit, and the first roots agree with that book's
table as remembered (0.8603 for Bi 1). Tolerances: rounding of the tabulated figures for the closed series; the
truncation error of 60 cells and of the steps for the solver, largest while the change is still close to the faces.
"""

from __future__ import annotations

import numpy as np
import pytest
from references.diffusivity import constant_form
from references.plate import fraction_with_resistance, fraction_without_resistance, roots
from scipy.integrate import trapezoid

from woodlib.moisture.diffusion import march
from woodlib.moisture.drive import _graded
from woodlib.moisture.lookup import Lookup
from woodlib.moisture.plate import swing_response

CRANK = "Crank, Mathematics of Diffusion, ch. 4"
D = 2.6e-11
THICK = 0.019
HALF = THICK / 2


def step_response(surface_m_s: float, times_s: np.ndarray, cells: int = 60, d: float = D) -> np.ndarray:
    """Part of the final change at the given times, from the solver on steps that end at them."""
    lookup = Lookup([(constant_form(d), 0.6, 1.0)], 20.0, 20.0)
    last = float(times_s[-1])
    grid = np.concatenate([[0.0], _graded(last / 86400, last / 86400 / 4000, 0) * 86400])
    history = march(
        grid,
        np.full(len(grid), 11.0),
        np.full(len(grid), 20.0),
        np.array([6.0]),
        np.array([THICK]),
        lookup,
        np.zeros(1, int),
        np.full((1, 2), surface_m_s),
        cells,
    )
    return np.interp(times_s, grid, (history.mean_percent[:, 0] - 6.0) / 5.0)


@pytest.mark.parametrize(
    ("fourier_of_thickness", "expected"),
    [
        (0.001, 0.07136),
        (0.005, 0.15958),
        (0.01, 0.22568),
        (0.02, 0.31915),
        (0.1, 0.69788),
        (0.2, 0.88740),
        (0.3, 0.95803),
    ],
)
def test_series_without_resistance(outside, fourier_of_thickness, expected):
    outside(
        CRANK,
        f"closed series, D t/L2 = {fourier_of_thickness}",
        expected,
        float(fraction_without_resistance(4 * fourier_of_thickness)),
        6e-6,
    )


@pytest.mark.parametrize(
    ("biot", "first_root", "half", "ninety"),
    [
        (0.1, 0.31105, 7.1618, 23.796),
        (1.0, 0.86033, 0.91755, 3.0920),
        (5.0, 1.31384, 0.34908, 1.2812),
        (10.0, 1.42887, 0.27422, 1.0620),
        (100.0, 1.55525, 0.20463, 0.86914),
    ],
)
def test_series_with_resistance(outside, biot, first_root, half, ninety):
    outside(CRANK, f"first root, Bi = {biot:g}", first_root, float(roots(biot, 1)[0]), 6e-6)
    outside(CRANK, f"closed series at D t50/l2, Bi = {biot:g}", 0.5, float(fraction_with_resistance(half, biot)), 1e-5)
    outside(
        CRANK, f"closed series at D t90/l2, Bi = {biot:g}", 0.9, float(fraction_with_resistance(ninety, biot)), 1e-5
    )


def test_solver_without_resistance(outside):
    fourier = np.array([0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.3])
    got = step_response(np.inf, fourier * THICK**2 / D, cells=120)
    for place, value in zip(fourier, got, strict=True):
        outside(
            CRANK,
            f"solver, no surface resistance, D t/L2 = {place}",
            float(fraction_without_resistance(4 * place)),
            float(value),
            4e-4,
        )


@pytest.mark.parametrize("biot", [0.1, 1.0, 5.0, 10.0, 100.0])
def test_solver_with_resistance(outside, biot):
    times = (
        np.array(
            [
                {0.1: 7.1618, 1.0: 0.91755, 5.0: 0.34908, 10.0: 0.27422, 100.0: 0.20463}[biot],
                {0.1: 23.796, 1.0: 3.0920, 5.0: 1.2812, 10.0: 1.0620, 100.0: 0.86914}[biot],
            ]
        )
        * HALF**2
        / D
    )
    got = step_response(biot * D / HALF, times)
    outside(CRANK, f"solver at t50, Bi = {biot:g}", 0.5, float(got[0]), 3e-4)
    outside(CRANK, f"solver at t90, Bi = {biot:g}", 0.9, float(got[1]), 3e-4)


@pytest.mark.parametrize(
    ("name", "period_days", "surface", "thick"),
    [
        ("year, bare", 365.0, 1e-7, 0.019),
        ("year, varnished", 365.0, 6e-9, 0.019),
        ("year, thick", 365.0, 1e-7, 0.050),
        ("week, bare", 7.0, 1e-7, 0.019),
        ("day, bare", 1.0, 1e-7, 0.019),
    ],
)
def test_sinusoidal_response(outside, name, period_days, surface, thick):
    """Second-order steps, 400 to a period: error near (2 pi/400)^2 = 2.5e-4 of the swing and of the phase."""
    expected = swing_response(thick / 2, D, surface, period_days * 86400.0)
    settle = max(3, int(np.ceil(6 * (thick / 2) ** 2 / D / 2.0 / (period_days * 86400))))
    turns = min(settle, 60) + 1
    per = 400
    time = np.arange(turns * per + 1) * period_days * 86400 / per
    turn = 2 * np.pi * time / (period_days * 86400)
    lookup = Lookup([(constant_form(D), 0.6, 1.0)], 20.0, 20.0)
    history = march(
        time,
        8 + 2 * np.sin(turn),
        np.full(len(time), 20.0),
        np.array([8.0]),
        np.array([thick]),
        lookup,
        np.zeros(1, int),
        np.full((1, 2), surface),
        120,
    )
    mean, phase = history.mean_percent[-per - 1 :, 0], turn[-per - 1 :]
    got = trapezoid((mean - 8) * np.exp(-1j * phase), phase) / np.pi * 1j / 2
    outside("closed sine response of a plate (own derivation)", f"swing kept, {name}", abs(expected), abs(got), 2e-3)
    outside(
        "closed sine response of a plate (own derivation)",
        f"delay, {name}",
        -np.angle(expected) * period_days / 2 / np.pi,
        -np.angle(got) * period_days / 2 / np.pi,
        0.01 * period_days / 2 / np.pi + 1e-3 * period_days,
        "days",
    )
