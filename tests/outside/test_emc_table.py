"""Equilibrium moisture content against the Wood Handbook's Table 4-2 and spot values.

The handbook calculated its table from the equation, so this tests the code. Tolerance 0.06 % MC: half a unit of the
last printed digit (0.05) plus the difference between the handbook's degF and degC coefficients (0.013 at most).
"""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest

from woodlib.moisture.equilibrium import emc_percent, hysteresis_band

TABLE = "Wood Handbook FPL-GTR-190 Table 4-2"
_DATA = Path(__file__).with_name("data")


def _table() -> np.ndarray:
    with (_DATA / "emc_table.csv").open(newline="") as file:
        rows = [
            [float(row[name]) for name in ("temperature_f", "rh_percent", "emc_percent")]
            for row in csv.DictReader(file)
        ]
    return np.array(rows)


_ROWS = _table()


@pytest.mark.parametrize("fahrenheit", sorted(set(_ROWS[:, 0])))
def test_every_cell_of_the_table(fahrenheit, outside):
    rows = _ROWS[_ROWS[:, 0] == fahrenheit]
    assert len(rows) == 19
    got = emc_percent((rows[:, 0] - 32) / 1.8, rows[:, 1])
    assert np.all(np.abs(got - rows[:, 2]) < 0.06)
    assert np.all(np.abs(np.round(got, 1) - rows[:, 2]) < 0.1001)
    worst = int(np.argmax(np.abs(got - rows[:, 2])))
    outside(
        TABLE,
        f"EMC, worst of 19 cells at {fahrenheit:g} degF: {rows[worst, 1]:g} % RH",
        rows[worst, 2],
        got[worst],
        0.06,
        "% MC",
    )


def test_table_as_a_whole():
    got = emc_percent((_ROWS[:, 0] - 32) / 1.8, _ROWS[:, 1])
    off = got - _ROWS[:, 2]
    assert len(_ROWS) == 342
    assert abs(off.mean()) < 0.005 and np.abs(off).mean() < 0.026
    assert np.sum(np.round(got, 1) == _ROWS[:, 2]) >= 330


def test_misprinted_coefficient_would_be_found():
    """K's square term printed with 1e-7 in place of 1e-6 leaves the table far behind, so the check can fail."""
    t, h = (200 - 32) / 1.8, 0.95
    k_right, k_wrong = (0.805 + 0.000736 * t - c * t**2 for c in (2.73e-6, 2.73e-7))
    table = _ROWS[(_ROWS[:, 0] == 200) & (_ROWS[:, 1] == 95), 2][0]
    w, k1, k2 = (
        349 + 1.29 * t + 0.0135 * t**2,
        6.27 - 0.00938 * t - 0.000303 * t**2,
        1.91 + 0.0407 * t - 0.000293 * t**2,
    )

    def emc(k: float) -> float:
        x = k * h
        return 1800 / w * (x / (1 - x) + (k1 * x + 2 * k1 * k2 * x * x) / (1 + k1 * x + k1 * k2 * x * x))

    assert abs(emc(k_right) - table) < 0.06 < 0.5 < abs(emc(k_wrong) - table)


@pytest.mark.parametrize(
    ("celsius", "humidity", "expected"),
    [
        (21.1111, 30, 6.170),
        (21.1111, 40, 7.699),
        (21.1111, 50, 9.242),
        (21.1111, 60, 10.965),
        (21.1111, 65, 11.958),
        (21.1111, 70, 13.088),
        (21.1111, 80, 15.989),
        (20, 30, 6.188),
        (20, 40, 7.722),
        (20, 50, 9.271),
        (20, 60, 11.000),
        (20, 65, 11.996),
        (20, 70, 13.129),
        (20, 80, 16.037),
        (-30, 50, 8.30),
        (-30, 80, 14.90),
    ],
)
def test_spot_values_of_another_program(celsius, humidity, expected, outside):
    """Computed separately from the same equation; tolerance: half a unit of the last digit given."""
    tolerance = 0.0051 if celsius < 0 else 0.00051
    outside(
        "handbook eq. 4-5, separate program",
        f"EMC at {celsius:.2f} degC, {humidity} % RH",
        expected,
        emc_percent(celsius, humidity),
        tolerance,
        "% MC",
    )


def test_published_range_of_hysteresis(outside):
    """Handbook wording: adsorption over desorption about 0.85 (from memory); 20 degC, 65 %: 11.0, 12.0, 13.0."""
    band = hysteresis_band(20, 65)
    outside(
        "handbook A/D 0.85 (from memory)",
        "adsorption over desorption",
        0.85,
        band.adsorption_percent / band.desorption_percent,
        1e-12,
    )
    for name, expected in (("adsorption", 11.0), ("table", 12.0), ("desorption", 13.0)):
        outside(
            "handbook A/D 0.85 (from memory)",
            f"{name} branch, 20 degC, 65 % RH",
            expected,
            getattr(band, f"{name}_percent"),
            0.05,
            "% MC",
        )
