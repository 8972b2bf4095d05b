"""sfepy, an independent finite-element program, on the same mesh and order: displacements agree to round-off."""

import sys
from pathlib import Path

import numpy as np
import pytest

sys.path[:0] = [str(Path(__file__).parent), str(Path(__file__).parents[1] / "restraint")]
from plane_by_sfepy import solve_by_sfepy  # noqa: E402
from random_panels import ASH_PANEL  # noqa: E402

from woodlib.restraint.field import plane_lines, solve_plane  # noqa: E402


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize(
    "plane", [ASH_PANEL, ASH_PANEL._replace(thickness_ratio=0.6, length_m=0.9)], ids=["square", "thin strip"]
)
@pytest.mark.parametrize("order", [2, 5])
def test_same_mesh_same_displacements(outside, plane, order):
    x, y, *_ = plane_lines(plane)
    places, expected = solve_by_sfepy(plane, x.breaks, [*y.breaks, plane.depth_m + plane.strip_m], order)
    field = solve_plane(plane, order)
    across = field.x_line.at(places[:, 0])[0]
    got = np.zeros_like(expected)
    in_panel = places[:, 1] <= plane.depth_m + 1e-12
    for here, block, line, start in (
        (in_panel, field.panel, field.panel_line, 0.0),
        (~in_panel, field.strip, field.strip_line, plane.depth_m),
    ):
        along = line.at(places[here, 1] - start)[0]
        for component in (0, 1):
            got[here, component] = np.einsum("ni,ij,nj->n", across[here], block[component], along)
    difference = np.abs(got - expected).max() / np.abs(expected).max()
    outside(
        "sfepy 2026",
        f"largest difference of displacement, order {order}, {plane.thickness_ratio:g}",
        0.0,
        difference,
        1e-8,
    )
