"""What the solver hands back: moisture over time, and the ledger of what went through each face."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np


@dataclass(frozen=True)
class History:
    """What happened inside one or more boards.

    time_s (n,); mean_percent (n, boards); tilt_percent (n, boards): the face-to-face difference of the straight
    profile that would bend the board as much, second face minus first; flux (n, boards, 2): % m/s into each face
    during the step that ends at that time; emc_percent (n, boards, 2) or broadcastable; profiles at profile_time_s:
    (m, boards, cells), the cells counted from the first face.
    """

    time_s: np.ndarray
    mean_percent: np.ndarray
    tilt_percent: np.ndarray
    flux: np.ndarray
    emc_percent: np.ndarray
    thickness_m: np.ndarray
    surface_m_s: np.ndarray
    profile_time_s: np.ndarray
    profile_percent: np.ndarray

    @property
    def days(self) -> np.ndarray:
        """Times in days."""
        return self.time_s / 86400.0

    @property
    def depth_m(self) -> np.ndarray:
        """Depth of each cell's middle below the first face, (boards, cells)."""
        cells = self.profile_percent.shape[-1]
        return self.thickness_m[:, np.newaxis] * (np.arange(cells) + 0.5) / cells

    @cached_property
    def surface_percent(self) -> np.ndarray:
        """Moisture at the wood's own surface under the finish, (n, boards, 2); the start takes the first step's."""
        surface = self.emc_percent - self.flux / self.surface_m_s
        surface[0] = surface[1]
        return surface

    @cached_property
    def gained_percent_m(self) -> np.ndarray:
        """Moisture let in through each face since the start, % times m of thickness, (n, boards, 2).

        Times dry density (1000 * specific gravity) over 100 it is kg/m2. Start + gained = present, to round-off.
        """
        steps = np.diff(self.time_s)
        gained = np.zeros_like(self.flux)
        change = np.zeros_like(self.flux[0])
        for n, (first, second, _) in enumerate(step_weights(steps)):
            change = (steps[n] * self.flux[n + 1] + second * change) / first
            gained[n + 1] = gained[n] + change
        return gained


def step_weights(steps: np.ndarray) -> list[tuple[float, float, float]]:
    """Weights of each step: a0, a2 and the ratio to the step before; the first step is backward Euler."""
    ratios = np.concatenate([[0.0], steps[1:] / steps[:-1]])
    return [((1 + 2 * r) / (1 + r), r * r / (1 + r), r) for r in ratios]
