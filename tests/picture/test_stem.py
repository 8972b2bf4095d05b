"""Grain on the face and arcs on the end are one set of rings."""

from __future__ import annotations

import numpy as np
import pytest

from woodlib.picture.scene import Circle, Line
from woodlib.picture.stem import RING_M, Stem, end_arcs, face_grain, stems

PX, WIDE, THICK = 1000.0, 0.12, 0.02


def crossings(stem):
    """Where the rings of the end meet its upper face, m from the board's middle: from the circles that are drawn."""
    found = []
    for arc in end_arcs(stem, (0.0, 0.0), WIDE, THICK, PX):
        assert isinstance(arc, Circle)
        up = -0.5 * THICK * PX - arc.y
        if arc.radius > abs(up):
            half = np.sqrt(arc.radius**2 - up**2)
            found += [arc.x - half, arc.x + half]
    return np.sort(np.array(found)) / PX


@pytest.mark.parametrize("angle", [0, 15, 30, 45, 60, 75, 90])
@pytest.mark.parametrize("lean", [-0.02, 0.0, 0.02])
def test_every_line_of_the_face_runs_over_the_edge_into_a_ring(angle, lean):
    stem = Stem(angle, 0.07, lean)
    lines = face_grain(stem, -0.5 * WIDE * PX, 0.0, WIDE, THICK, 0.5, PX, most=1000)
    starts = [point[0] / PX for line in lines for point in line.points if point[1] == 0.0]
    inside = [x for x in starts if abs(x) < 0.5 * WIDE]
    assert inside
    rings = crossings(stem)
    assert all(np.abs(rings - x).min() < 1e-9 for x in inside)


def test_flatsawn_shows_arches_and_quartersawn_lines():
    flat = face_grain(Stem(0, 0.07), 0.0, 0.0, WIDE, THICK, 0.5, PX)
    arches = [line for line in flat if line.points[0][1] == line.points[-1][1] == 0.0]
    assert arches
    quarter = face_grain(Stem(90, 0.07), 0.0, 0.0, WIDE, THICK, 0.5, PX)
    spreads = [np.ptp([x for x, _ in line.points]) for line in quarter if isinstance(line, Line)]
    assert np.median(spreads) < 0.02 * WIDE * PX


def test_the_hollow_side_of_an_arc_faces_the_pith():
    stem = Stem(0, 0.07)
    arcs = end_arcs(stem, (0.0, 0.0), WIDE, THICK, PX)
    # The pith lies below the end (y grows downward), so the top of every circle is the highest point seen: a hill.
    assert all(arc.y == pytest.approx(70.0) and arc.x == pytest.approx(0.0) for arc in arcs)
    assert {round(b.radius - a.radius, 6) for a, b in zip(arcs, arcs[1:], strict=False)} == {RING_M * PX}


def test_a_stack_is_the_same_every_time_and_its_boards_differ():
    assert stems(4, 30.0) == stems(4, 30.0)
    assert len({stem.pith_m for stem in stems(4, 30.0)}) == 4
    assert all(0.0 <= stem.ring_angle_deg <= 90.0 for angle in (0, 45, 90) for stem in stems(6, angle))
