"""scikit-fem, a general finite-element library, on the same problem.

Where the polynomials are the same the answers must agree to round-off (1e-8 allowed); on its own squares to 1 %.
"""

import sys
from pathlib import Path

import numpy as np
import pytest
from skfem import ElementQuad2

sys.path[:0] = [str(Path(__file__).parent), str(Path(__file__).parents[1] / "restraint")]
from plane_by_scikit_fem import lobatto_element, restraint_factor_by_scikit_fem, solve_by_scikit_fem  # noqa: E402
from random_panels import ASH_PANEL, random_panels  # noqa: E402

from woodlib.restraint.field import plane_lines, solve_plane  # noqa: E402
from woodlib.restraint.field_readings import restraint_factor_of  # noqa: E402

SOURCE = "scikit-fem 12"


def full_energy(plane):
    return 0.5 * plane.panel.stiffness()[0] * plane.width_m / 2 * plane.depth_m


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("order", [2, 3, 5])
def test_same_polynomials_same_energy(outside, order):
    x, y, *_ = plane_lines(ASH_PANEL)
    solved = solve_by_scikit_fem(ASH_PANEL, x.breaks, [*y.breaks, 0.263], lobatto_element(order), 2 * order + 1)
    got = solve_plane(ASH_PANEL, order).energy_j_per_m / (full_energy(ASH_PANEL) - 0.5 * solved.work)
    outside(SOURCE, f"strain energy on the same mesh, order {order} (ratio)", 1.0, got, 1e-8)


@pytest.mark.parametrize("number", range(4))
def test_own_squares(outside, number):
    plane = [plane for plane in random_panels(40, seed=2) if plane.ends == 2][number]
    y = np.concatenate([np.linspace(0, plane.depth_m, 31), plane.depth_m + np.linspace(0, plane.strip_m, 6)[1:]])
    solved = solve_by_scikit_fem(plane, np.linspace(0, plane.width_m / 2, 31), y, ElementQuad2())
    expected = restraint_factor_by_scikit_fem(plane, solved)
    got = restraint_factor_of(solve_plane(plane))
    outside(SOURCE, f"restraint factor, random panel {number + 1}, 30 x 35 squares", expected, got, 0.01 * expected)
