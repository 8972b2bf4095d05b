"""Wood drawn as wood: rings from the pith, grain lines along the board, a panel of several boards.

The rings are circles about a pith whose place follows from the ring angle, so what is drawn is what is computed.
When wood of even moisture dries, concentric rings stay concentric and only their radius changes (the stress-free
map of a ring pattern, see :mod:`woodlib.movement.shape`), so a circle per ring is not a sketch but the shape.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from ..movement.shape import wedge_map
from ..words.decided import now
from .scene import Area, Circle, Coordinate, Line, Mark, Role, Window, box


def pith_direction(ring_angle_deg: float) -> tuple[float, float]:
    """Unit vector from the middle of the end grain towards the pith, for a ring angle.

    The ring angle is that between the board's width and the tangential direction: 0 flatsawn (pith straight
    below), 90 quartersawn (pith far off to the side). y points down, as on a sheet.

    >>> [round(float(part), 3) for part in pith_direction(90)]
    [-1.0, 0.0]
    """
    angle = np.radians(ring_angle_deg)
    return -np.sin(angle), np.cos(angle)


def ring_marks(
    middle: tuple[float, float],
    pith_distance: float,
    ring_angle_deg: float,
    reach: float,
    spacing: float,
    role: Role = "late-wood",
) -> list[Mark]:
    """Circles about the pith that cross a region of radius ``reach`` about ``middle``; all in px."""
    across, down = pith_direction(ring_angle_deg)
    x, y = middle[0] + across * pith_distance, middle[1] + down * pith_distance
    radii = np.arange(pith_distance - reach, pith_distance + reach + spacing, spacing)
    # Two late-wood lines of different weight a ring read as wood even in grey print.
    return [Circle(x, y, float(radius), role, 1.6 if k % 2 else 0.8) for k, radius in enumerate(radii) if radius > 0]


def board_end(
    left: Coordinate,
    top: Coordinate,
    width: Coordinate,
    thickness: Coordinate,
    ring_angle_deg: float,
    pith_distance: float,
    spacing: float = 9.0,
    reach: float = 200.0,
    role: Role = "wood-end",
) -> list[Mark]:
    """The end grain of a board: outline, rings, edge; all in px, rings seen only inside the outline.

    ``reach`` is how far from the middle rings are drawn; it stays the same while sliders move, so that the number of
    marks does too.
    """
    outline = box(left, top, width, thickness)
    middle = (now(left + width * 0.5), now(top + thickness * 0.5))
    rings = ring_marks(middle, pith_distance, ring_angle_deg, reach, spacing)
    return [Area(outline, role), Window(outline, tuple(rings)), Line([*outline, outline[0]], "edge", 1.8)]


@lru_cache(maxsize=512)
def _grain(count: int, seed: int, wave: float) -> tuple[np.ndarray, list[float], np.ndarray]:
    """The pattern of a board: places along it, where each line lies across it (0 to 1), and its ripple in px."""
    noise = np.random.Generator(np.random.PCG64(seed))
    steps = np.linspace(0.0, 1.0, 13)
    offsets, ripples = [], []
    for k in range(count):
        offsets.append((k + 0.5 + 0.6 * (noise.random() - 0.5)) / count)
        ripples.append(wave * np.sin(2 * np.pi * (steps * (0.6 + noise.random()) + noise.random())))
    return steps, offsets, np.array(ripples)


def grain_lines(
    outline: list, along: str, count: int, seed: int, role: Role = "late-wood", wave: float = 1.6
) -> list[Mark]:
    """Long-grain lines inside an upright rectangle, ``along`` "x" or "y"; the same seed draws the same board."""
    (x0, y0), _, (x1, y1), _ = outline
    steps, offsets, ripples = _grain(count, seed, wave)
    marks: list[Mark] = []
    for k, (offset, ripple) in enumerate(zip(offsets, ripples, strict=True)):
        if along == "x":
            points = np.column_stack([steps * (x1 - x0) + x0, ripple + (y0 + (y1 - y0) * offset)])
        else:
            points = np.column_stack([ripple + (x0 + (x1 - x0) * offset), steps * (y1 - y0) + y0])
        marks.append(Line(points, role, 0.7 if k % 3 else 1.2))
    return marks


def panel_face(
    left: Coordinate,
    top: Coordinate,
    width: Coordinate,
    height: Coordinate,
    boards: int,
    along: str = "x",
    role: Role = "wood",
) -> list[Mark]:
    """The face of a panel glued from ``boards`` boards whose grain runs ``along`` the sheet's x or y axis; px."""
    outline = box(left, top, width, height)
    marks: list[Mark] = [Area(outline, role)]
    inside: list[Mark] = []
    for k in range(boards):
        low, high = k / boards, (k + 1) / boards
        if along == "x":
            strip = box(left, top + height * low, width, height * (high - low))
            seam = [strip[0], strip[1]]
        else:
            strip = box(left + width * low, top, width * (high - low), height)
            seam = [strip[0], strip[3]]
        inside += grain_lines(strip, along, 6, seed=k + 1)
        if k:
            inside.append(Line(seam, "edge", 0.8))
    return [*marks, Window(outline, tuple(inside)), Line([*outline, outline[0]], "edge", 1.8)]


def moved_end(
    points,
    middle: tuple[float, float],
    ring_angle_deg: float,
    pith_distance: float,
    radial_strain,
    tangential_strain,
):
    """Where points of a board's end go when the wood grows about its pith: shape (n, 2), px to px.

    ``middle`` of the end before, px; strains as drawn, so already exaggerated if the picture says so. Rings stay
    concentric (``movement.shape.wedge_map``) and the wood in the middle keeps its place and its direction.

    >>> moved_end([(140.0, 50.0)], (100.0, 50.0), 0.0, 500.0, 0.1, 0.2).round(1).tolist()
    [[148.0, 50.3]]
    """
    aside, down = pith_direction(ring_angle_deg)
    x, y = (np.asarray(points, float) - middle).T
    moved_across, moved_depth = wedge_map(
        x * down - y * aside, pith_distance - (x * aside + y * down), radial_strain, tangential_strain
    )
    depth = (1.0 + radial_strain) * pith_distance - moved_depth
    return np.column_stack(
        [middle[0] + moved_across * down + depth * aside, middle[1] - moved_across * aside + depth * down]
    )


def end_outline(left: float, top: float, width: float, thickness: float, steps: int = 12) -> np.ndarray:
    """The outline of a board's end with enough points on its long sides to bend, from the upper left, clockwise; px."""
    across = np.linspace(left, left + width, steps + 1)
    upper = np.column_stack([across, np.full(steps + 1, top)])
    return np.concatenate([upper, upper[::-1] + (0.0, thickness)])
