"""Unit factors against NIST Special Publication 811 (2008), Appendix B.8; figures recalled from memory.

The publication rounds to seven digits, so half a unit of the last digit is allowed; the inch, foot and yard are exact.
"""

import pytest

from woodlib.units import exact_metres, number_in

SOURCE = "NIST SP 811, App. B.8 (from memory)"
FACTORS = [
    ("1 psi", "Pa", 6894.757, 5e-4),
    ("1 lb", "kg", 0.4535924, 5e-8),
    ("1 oz", "kg", 0.02834952, 5e-9),
    ("1 lb/ft3", "kg/m^3", 16.01846, 5e-6),
    ("1 lbf", "N", 4.448222, 5e-7),
    ("212 degF", "degC", 100.0, 1e-9),
    ("32 degF", "degC", 0.0, 1e-9),
]


@pytest.mark.parametrize(("text", "unit", "expected", "tolerance"), FACTORS)
def test_factor(outside, text, unit, expected, tolerance):
    outside(SOURCE, text, expected, number_in(text, unit, name=text), tolerance, unit)


@pytest.mark.parametrize(("text", "expected"), [("1 in", 0.0254), ("1 ft", 0.3048), ("1 yd", 0.9144)])
def test_exact_length(outside, text, expected):
    outside(SOURCE, text, expected, float(exact_metres(text)), 0.0, "m")
