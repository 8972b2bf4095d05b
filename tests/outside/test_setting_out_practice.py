"""Setting out against what a maker can check with a rule and pencil: exact arithmetic, common practice, no source."""

import math
from fractions import Fraction

import numpy as np
import pytest
from scipy.optimize import LinearConstraint, milp

from woodlib.setting_out.clear_places import nearest_places
from woodlib.setting_out.continuity import MITRE_WIDTH
from woodlib.setting_out.holes import hole_fit, hole_pair
from woodlib.units.exact import centred, mark

BENCH = "exact arithmetic (common practice, no source)"

# whole, part, what is left on each side in mm
SIDES = [
    ("455 mm", "160 mm", 147.5),
    ("20 in", "128 mm", 190.0),  # 508 - 128 = 380
    ("18 in", "96 mm", 180.6),  # 457.2 - 96 = 361.2
    ("17-7/8 in", "160 mm", 147.0125),  # 454.025 - 160 = 294.025
]


@pytest.mark.parametrize(("whole", "part", "expected"), SIDES)
def test_what_is_left_on_each_side(outside, whole, part, expected):
    got = float(1000 * centred(whole, part))
    outside(BENCH, f"{whole} less {part}, each side", expected, got, 0.0, "mm")
    first, _ = hole_pair(whole, part).rest_m
    outside(BENCH, f"first hole of {part} centres on {whole}", expected, float(1000 * first), 0.0, "mm")


def test_rounding_of_a_metric_half_on_an_inch_rule(outside):
    # 147.5 mm / 25.4 = 5.80709 in = 92.913 sixteenths: 93, 5-13/16 in = 147.6375 mm.
    rounding = mark("147.5 mm", "1/16 in")
    outside(BENCH, "147.5 mm on a rule in sixteenths", 147.6375, float(1000 * rounding.marked_m), 0.0, "mm")
    outside(BENCH, "its error", 0.1375, float(1000 * rounding.error_m), 0.0, "mm")


def test_clearance_by_the_rule_for_fixed_fasteners(outside):
    # Fixed-fastener formula: hole = screw + tolerance zone of both parts; with the hardware itself exact, the zone left
    # to the drilled holes is a circle of hole - screw, so each may be off by half of that.
    source = "ASME Y14.5, fixed fastener (from memory)"
    fit = hole_fit("4 mm", marking="0.25 mm", drilling=0, hole="4.5 mm")
    outside(source, "error that a 4.5 mm hole allows a 4 mm screw", 0.25, float(1000 * fit.allows_m), 0.0, "mm")
    outside(source, "hole needed for 0.25 mm of error", 4.5, float(1000 * fit.needs_m), 0.0, "mm")


def test_a_tilted_kerf(outside):
    got = float(3 * MITRE_WIDTH)
    outside("geometry of 45 degrees", "3 mm kerf on the face of a mitre", 3 * math.sqrt(2), got, 3e-4, "mm")


def shifts_by_integer_programming(wanted, free, apart):
    """Least sum of shifts by SciPy's mixed-integer solver: places x, shifts s >= |x - wanted|, one free span each."""
    n, m = len(wanted), len(free)
    x, s, z = np.arange(n), n + np.arange(n), 2 * n + np.arange(n * m).reshape(n, m)
    size, big, rows, low = 2 * n + n * m, 1000.0, [], []

    def at_least(terms, bound):
        row = np.zeros(size)
        for place, factor in terms:
            row[place] += factor
        rows.append(row)
        low.append(bound)

    for i in range(n):
        at_least([(s[i], 1), (x[i], -1)], -wanted[i])
        at_least([(s[i], 1), (x[i], 1)], wanted[i])
        at_least([(z[i, k], 1) for k in range(m)], 1)
        for k, (begins, ends) in enumerate(free):
            at_least([(x[i], 1), (z[i, k], -big)], begins - big)
            at_least([(x[i], -1), (z[i, k], -big)], -ends - big)
        if i:
            at_least([(x[i], 1), (x[i - 1], -1)], apart)
    cost, whole = np.zeros(size), np.zeros(size)
    cost[s], whole[z.ravel()] = 1, 1
    bounds = (np.zeros(size), np.where(whole == 1, 1.0, np.inf))
    found = milp(cost, constraints=LinearConstraint(np.array(rows), low, np.inf), integrality=whole, bounds=bounds)
    return found.fun


ROWS = [
    ([20, 60, 100, 140], [(0, 15), (28, 57), (63, 96), (110, 160)], 25),
    ([10, 40, 70], [(5, 30), (33, 38), (45, 66), (74, 90)], 20),
    ([30, 50, 70, 90, 110], [(0, 48), (75, 200)], 12.5),
    ([15, 16, 17], [(0, 400)], 40),
]


@pytest.mark.parametrize(("wanted", "free", "apart"), ROWS)
def test_least_shifts_against_integer_programming(outside, wanted, free, apart):
    exact = nearest_places(
        [Fraction(place) for place in wanted], [(Fraction(a), Fraction(b)) for a, b in free], Fraction(apart)
    )
    got = float(sum(abs(place - want) for place, want in zip(exact, wanted, strict=True)))
    expected = shifts_by_integer_programming(wanted, free, apart)
    outside("SciPy milp (HiGHS)", f"least shifts of {len(wanted)} dowels", expected, got, 1e-6, "mm")
