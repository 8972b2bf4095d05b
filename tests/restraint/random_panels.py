"""Panels to try the plane field on: the ash panel of the check list, and random ones."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from woodlib.restraint.elastic import elastic_constants
from woodlib.restraint.field import HeldPlane, PlaneWood

ASH_PANEL = HeldPlane(
    0.45, 0.45, 0.038, PlaneWood(1056e6, 13200e6, 1016.4e6, 0.0352), PlaneWood(13200e6, 1056e6, 1016.4e6, 0.44)
)
ASH_MISFIT = 0.00264  # per percent of drying: tangential 0.00274 less lengthwise 0.0001

WOODS = (
    "white ash",
    "Quercus alba",
    "northern red oak",
    "black cherry",
    "sugar maple",
    "black walnut",
    "yellow-poplar",
    "coast Douglas-fir",
    "Sitka spruce",
    "true mahogany",
    "balsa",
)


def random_panels(count: int, seed: int = 7) -> Iterator[HeldPlane]:
    """Panels 150 to 1000 mm wide and 150 to 2500 mm long, strips 10 to 150 mm, 0.4 to 1.6 times as thick.

    Two woods, any of three ring orientations each, one or both ends.
    """
    rng = np.random.default_rng(seed)
    constants = [elastic_constants(name) for name in WOODS]
    for _ in range(count):
        width, length = np.exp(rng.uniform(np.log([0.15, 0.15]), np.log([1.0, 2.5])))
        strip = min(np.exp(rng.uniform(np.log(0.010), np.log(0.150))), width / 2)
        wood, holder = rng.integers(len(constants), size=2)
        angles = rng.choice([0.0, np.pi / 4, np.pi / 2], size=2)
        yield HeldPlane(
            float(width),
            float(length),
            float(strip),
            constants[wood].panel(angles[0]),
            constants[holder].strip(angles[1]),
            float(rng.uniform(0.4, 1.6)),
            int(rng.integers(1, 3)),
        )


def one_wood_panels(count: int, seed: int = 5) -> Iterator[HeldPlane]:
    """Narrower choice: one wood of seven for panel and strip, flatsawn or quartersawn, both ends held."""
    rng = np.random.default_rng(seed)
    constants = [
        elastic_constants(name)
        for name in WOODS
        if name not in ("balsa", "Quercus alba", "northern red oak", "true mahogany")
    ]
    for _ in range(count):
        width, length, strip = np.exp(rng.uniform(np.log([0.15, 0.2, 0.012]), np.log([1.0, 2.0, 0.12])))
        wood, angle = constants[rng.integers(len(constants))], rng.choice([0.0, np.pi / 2])
        yield HeldPlane(
            float(width),
            float(length),
            float(min(strip, width)),
            wood.panel(angle),
            wood.strip(angle),
            float(rng.uniform(0.5, 1.5)),
        )
