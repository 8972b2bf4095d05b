"""Strips glued edge to edge into a panel, each cupped by its rings: one big arc, or a ripple.

The first face is the upper one; a cup above zero is hollow on it. Elastic and unheld; a strip's own cup is ``shape``'s.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..errors import Problems
from .shape import cup_m


@dataclass(frozen=True)
class Outline:
    """A line of points, m: across_m and height_m (n,) after the change, and where they were before."""

    across_m: np.ndarray
    height_m: np.ndarray
    across_before_m: np.ndarray
    height_before_m: np.ndarray

    @property
    def out_of_flat_m(self) -> float:
        """Height between highest and lowest point of the line laid as level as it goes."""
        from scipy.optimize import minimize_scalar

        scale = max(float(np.ptp(self.across_m)), 1e-12)

        def height(slope: float) -> float:
            return float(np.ptp(self.height_m - slope * self.across_m))

        start = (self.height_m[-1] - self.height_m[0]) / scale
        reach = 4.0 * float(np.ptp(self.height_m)) / scale + 1e-12
        found = minimize_scalar(
            height, bounds=(start - reach, start + reach), method="bounded", options={"xatol": reach * 1e-9}
        )
        return min(height(start), float(found.fun))


def panel_line(
    widths_m: Sequence[float] | np.ndarray, curvatures_per_m: Sequence[float] | np.ndarray, points: int = 41
) -> Outline:
    """Cross section of a panel glued edge to edge from strips that each curve; (strips * (points - 1) + 1,) points.

    Joints are flush and keep the direction, as glued edges do. Laid with both ends at the same height.

    >>> arc = panel_line([0.1] * 5, [0.1] * 5)  # an arc of 10 m radius is 10 (1 - cos 0.025) m deep
    >>> round(1000 * arc.out_of_flat_m, 2), round(10_000 * float(1 - np.cos(0.025)), 2)
    (3.12, 3.12)
    """
    widths, curvatures = np.asarray(widths_m, float), np.asarray(curvatures_per_m, float)
    step = np.repeat(widths / (points - 1), points - 1)
    bend = np.repeat(curvatures, points - 1) * step
    direction = np.concatenate([[0.0], np.cumsum(bend)])
    middle = (direction[1:] + direction[:-1]) / 2.0
    chord = step * np.sinc(bend / 2.0 / np.pi)
    across, height = (np.concatenate([[0.0], np.cumsum(chord * part)]) for part in (np.cos(middle), np.sin(middle)))
    tilt = np.arctan2(height[-1], across[-1])
    level = np.cos(tilt) * across + np.sin(tilt) * height, np.cos(tilt) * height - np.sin(tilt) * across
    before = np.concatenate([[0.0], np.cumsum(step)])
    return Outline(*level, before, np.zeros_like(before))


@dataclass(frozen=True)
class GlueUp:
    """One panel laid both ways: every bark side up, and bark side up and down in turn."""

    same_way: Outline
    in_turn: Outline


def glue_up(
    widths_m: Sequence[float], pith_distances_m: Sequence[float], radial_strain: float, tangential_strain: float
) -> GlueUp:
    """One big arc against a ripple: a panel of flatsawn strips with all rings one way, and with rings in turn.

    Each strip curves as its rings ask (``shape.cup_m``), pith under its middle. Raises InputError for no strips, sizes
    not above zero and lists of unequal length.

    >>> panel = glue_up([0.1] * 5, [0.08] * 5, -0.0054, -0.0110)
    >>> round(1000 * panel.same_way.out_of_flat_m, 1), round(1000 * panel.in_turn.out_of_flat_m, 2)
    (3.9, 0.31)
    """
    widths, piths = np.atleast_1d(np.asarray(widths_m, float)), np.atleast_1d(np.asarray(pith_distances_m, float))
    problems = Problems()
    if widths.size == 0 or widths.shape != piths.shape:
        problems.add(f"the panel has {widths.size} widths and {piths.size} pith distances; give one of each per strip.")
    for name, values in (("width", widths), ("pith distance", piths)):
        for number, value in enumerate(values, start=1):
            if not value >= 0.001 or not np.isfinite(value):
                problems.add(
                    f"{name} of strip {number} is {value:g} m; write it in metres, at least 0.001, for example 0.1."
                )
    problems.raise_if_any()
    curvature = 8.0 * cup_m(widths, piths, radial_strain, tangential_strain) / widths**2
    turns = np.where(np.arange(len(widths)) % 2 == 0, 1.0, -1.0)
    return GlueUp(panel_line(widths, curvature), panel_line(widths, curvature * turns))
