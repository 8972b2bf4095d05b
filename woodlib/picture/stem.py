"""Wood as it was cut from the stem: the same rings seen on the end as arcs and on the face as grain.

Rings are circles about a pith. The end grain shows them as arcs, whose hollow side faces the pith. The face cuts them
at a depth that changes a little along the board, because stems lean and taper, so that a flatsawn face shows pointed
arches and a quartersawn one nearly straight lines. One :class:`Stem` draws both, so that they belong together.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin, sqrt

import numpy as np

from .scene import Area, Circle, Line, Mark, Role, Window

RING_M = 0.0034  # width of a ring; common for a furniture wood, no source
LEAN = 0.02  # change of the pith's depth along the board; a drawing's choice
_STEPS = (0.0, 0.25, 0.5, 0.7, 0.85, 0.95, 1.0)


@dataclass(frozen=True)
class Stem:
    """Where a board sat in its stem: ring angle at the middle of its end, and how far from there the pith is, m.

    The pith lies below the board, so its bark side is up, and away to the left by the ring angle.
    """

    ring_angle_deg: float
    pith_m: float
    lean: float = LEAN

    @property
    def aside_m(self) -> float:
        """From the pith to the board's middle, across the board."""
        return self.pith_m * sin(radians(self.ring_angle_deg))

    def below_m(self, thickness_m: float) -> float:
        """From the board's upper face down to the pith."""
        return self.pith_m * cos(radians(self.ring_angle_deg)) + 0.5 * thickness_m


def stems(count: int, ring_angle_deg: float, seed: int = 7) -> tuple[Stem, ...]:
    """Boards of one cut that are not alike, as from one stack; the same seed gives the same stack.

    >>> [round(stem.ring_angle_deg) for stem in stems(3, 0.0)]
    [0, 0, 6]
    """
    noise = np.random.Generator(np.random.PCG64(seed))
    found = []
    for number in range(count):
        turn = 0.0 if not number else 10.0 * (noise.random() - 0.2)
        found.append(
            Stem(
                min(max(ring_angle_deg + turn, 0.0), 90.0),
                0.05 + 0.05 * noise.random(),
                LEAN * (0.7 + 0.6 * noise.random()) * (1.0 if noise.random() < 0.5 else -1.0),
            )
        )
    return tuple(found)


def end_arcs(stem: Stem, middle: tuple[float, float], wide_m: float, thick_m: float, px: float) -> list[Mark]:
    """The rings of a board's end as circles, px; the caller shows them in the end's outline.

    ``middle`` of the end on the sheet; ``px`` per metre.
    """
    x, y = middle[0] - stem.aside_m * px, middle[1] + (stem.below_m(thick_m) - 0.5 * thick_m) * px
    reach = 0.5 * sqrt(wide_m**2 + thick_m**2)
    first, last = max(1, int((stem.pith_m - reach) / RING_M)), int((stem.pith_m + reach) / RING_M) + 1
    return [Circle(x, y, n * RING_M * px, "late-wood", 1.2 if n % 3 else 1.8) for n in range(first, last + 1)]


def face_grain(
    stem: Stem, left: float, low: float, wide_m: float, thick_m: float, long_m: float, px: float, most: int = 9
) -> list[Mark]:
    """The same rings on the board's upper face, grain running up the sheet from its end at ``low``; px.

    ``left`` of the face; no more than about ``most`` lines, evenly taken from the rings.
    """
    middle = left + 0.5 * wide_m * px
    half, below = 0.5 * wide_m, stem.below_m(thick_m)
    depths = below, max(below + stem.lean * long_m, RING_M)
    nearest = max(0.0, abs(stem.aside_m) - half)
    first = int(sqrt(min(depths) ** 2 + nearest**2) / RING_M) + 1
    last = int(sqrt(max(depths) ** 2 + (abs(stem.aside_m) + half) ** 2) / RING_M)
    every = max(1, (last - first + 1) // most)
    marks: list[Mark] = []
    for number, ring in enumerate(range(first, last + 1, every)):
        for points in _cut_by_face(stem, ring * RING_M, depths, long_m):
            seen = [(middle + (x - stem.aside_m) * px, low - y * px) for x, y in points]
            marks.append(Line(seen, "late-wood", 0.8 if number % 3 else 1.3))
    return marks


def _cut_by_face(stem: Stem, radius_m: float, depths: tuple[float, float], long_m: float):
    """Lines in which a ring meets the face: across from the pith, along from the end, m; none where it stays below."""
    begin, end = depths
    if radius_m <= min(begin, end):
        return
    slope = (end - begin) / long_m
    tip = long_m if radius_m >= max(begin, end) or not slope else (radius_m - begin) / slope
    low, high = (0.0, tip) if slope >= 0.0 or tip == long_m else (tip, long_m)
    shares = _STEPS if (slope >= 0.0) else tuple(1.0 - share for share in reversed(_STEPS))
    along = [low + (high - low) * share for share in shares]
    across = [sqrt(max(radius_m**2 - (begin + slope * y) ** 2, 0.0)) for y in along]
    right = list(zip(across, along, strict=True))
    left = [(-x, y) for x, y in right]
    if across[-1] == 0.0:  # both sides meet in the point of an arch
        yield [*left, *reversed(right)]
    elif across[0] == 0.0:
        yield [*reversed(left), *right]
    else:
        yield right
        yield left


def end_of_board(
    outline: list,
    stem: Stem,
    middle: tuple[float, float],
    wide_m: float,
    thick_m: float,
    px: float,
    role: Role = "wood-end",
) -> list[Mark]:
    """A board's end with its rings, seen inside any outline; px."""
    arcs = end_arcs(stem, middle, wide_m, thick_m, px)
    return [Area(outline, role), Window(outline, tuple(arcs)), Line([*outline, outline[0]], "edge", 1.8)]
