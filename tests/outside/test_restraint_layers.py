"""Two layers and mitres: Timoshenko 1925 (printed form from memory), laminate theory, and geometry."""

import numpy as np
import pytest
from references.layers import Ply, lay_up
from references.shape import mitre_angle_change_rad, mitre_gap_m

from woodlib.restraint.layers import two_layer_curvature_per_m

SOURCE = "Timoshenko 1925, two layers"


@pytest.mark.parametrize(("n", "expected"), [(1.0, 1.5), (2.0, 24 / 16.5), (0.5, 24 / 16.5)])
def test_equal_thickness(outside, n, expected):
    got = float(two_layer_curvature_per_m(0.5, 0.5, n, 1.0, 1.0))
    outside(SOURCE, f"curvature x h / strain, stiffness ratio {n:g}", expected, got, 1e-9)


def test_unequal_layers(outside):
    got = float(two_layer_curvature_per_m(19.0, 6.0, 1056.0, 13200.0, 0.01))
    outside(SOURCE, "19 mm and 6 mm, 1056 and 13200 MPa, 0.01", 5.98669e-4, got, 6e-9, "1/mm")


def test_unequal_layers_by_lamination(outside):
    plies = [Ply(0.019, 1056e6, 1.0, 1.0, 0.0, 0.0, 0.01), Ply(0.006, 13200e6, 1.0, 1.0, 0.0)]
    got = 1e-3 * float(lay_up(plies).curvature_per_m[0])
    outside("finite elements and lamination theory", "the same by lamination theory", 5.98669e-4, got, 6e-9, "1/mm")


def test_mitre(outside):
    """Ash 75 mm wide, 4 % drying, flatsawn; small-angle figures, 1 % allowed for the exact form."""
    across, along = -0.00274 * 4, -0.0001 * 4
    outside("mitre by hand", "gap", 1.12, -1e3 * float(mitre_gap_m(0.075, across, along)), 0.012, "mm")
    outside(
        "mitre by hand",
        "angle of one joint",
        0.61,
        -2 * np.degrees(float(mitre_angle_change_rad(across, along))),
        0.006,
        "deg",
    )
