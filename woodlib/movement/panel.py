"""A panel glued from several boards, each with its own rings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from ..door import check_length, check_moisture, check_number
from ..errors import Problems
from ..species import Species
from .board import check_ring_angle, check_wood
from .shape import wedge_width_change_m
from .spread import (
    NINETY_PERCENT_HALF_WIDTH,
    USUAL_DOUBTS,
    Doubts,
    Movement,
    check_doubts,
    cumulants,
    normal_moments,
    raw_moments,
    ring_moments,
    spread_of_product,
)
from .wood import Wood


@dataclass(frozen=True)
class PanelBoard:
    """One board of a panel: its width, and either a ring angle or where its pith was.

    ``pith_depth_m`` from the pith to the middle of the board's thickness, ``pith_offset_m`` across, from the pith to
    the middle of the board's width. Lengths in metres or text such as ``"5 in"``.

    >>> round(PanelBoard("5 in", ring_angle_deg=30).flatsawn_share, 2)
    0.75
    >>> round(PanelBoard("200 mm", pith_depth_m="100 mm").flatsawn_share, 4)
    0.7854
    """

    width_m: float
    ring_angle_deg: float | None = None
    pith_depth_m: float | None = None
    pith_offset_m: float = 0.0

    def __post_init__(self) -> None:
        problems = Problems()
        object.__setattr__(self, "width_m", check_length(problems, "width of a panel board", self.width_m))
        if (self.ring_angle_deg is None) == (self.pith_depth_m is None):
            given = "neither" if self.ring_angle_deg is None else "both"
            problems.add(f"a panel board was given {given} of ring angle and pith depth; it must have exactly one.")
        if self.ring_angle_deg is not None:
            check_ring_angle(problems, self.ring_angle_deg, "ring angle of a panel board")
        if self.pith_depth_m is not None:
            depth = check_length(problems, "pith depth of a panel board", self.pith_depth_m)
            object.__setattr__(self, "pith_depth_m", depth)
        check_number(problems, "pith offset", self.pith_offset_m, "m", -2, 2, "0 is a pith under the middle")
        problems.raise_if_any()

    @property
    def edges_m(self) -> tuple[float, float]:
        """Both edges, measured across from the pith."""
        return self.pith_offset_m - 0.5 * self.width_m, self.pith_offset_m + 0.5 * self.width_m

    @property
    def flatsawn_share(self) -> float:
        """Share of the tangential movement in the width, the rest is radial: the mean of cos^2 of the ring angle."""
        if self.pith_depth_m is None:
            return float(self._flatsawn(0.0))
        left, right = np.arctan2(self.edges_m, self.pith_depth_m)
        return float(self.pith_depth_m * (right - left) / self.width_m)

    def change_m(self, radial_strain, tangential_strain, ring_rad=0.0):
        """Change of width in metres from the strains of the wood; exact wedge map where the pith is known."""
        if self.pith_depth_m is not None:
            return wedge_width_change_m(*self.edges_m, self.pith_depth_m, radial_strain, tangential_strain)
        return self.width_m * (radial_strain + (tangential_strain - radial_strain) * self._flatsawn(ring_rad))

    def _flatsawn(self, ring_rad):
        angle = 0.0 if self.ring_angle_deg is None else self.ring_angle_deg
        return np.cos(np.radians(angle) + ring_rad) ** 2


@dataclass(frozen=True)
class Panel:
    """Boards of one species glued edge to edge; the panel's width is theirs together.

    ``likeness`` from 0 (boards from different trees, their deviations from the species average independent) to 1
    (all alike: the careful side, and the default).

    >>> panel = Panel("white oak", [PanelBoard("5 in", ring_angle_deg=a) for a in (0, 30, 60, 90)])
    >>> round(panel.width_m, 3), round(panel.ring_angle_deg, 1)
    (0.508, 45.0)
    >>> panel.change(8, 11).text()
    'about 3/16 in (5 mm), could be 1/16 to 1/4 in (1.5 to 6.5 mm)'
    """

    species: Species | Wood | str
    boards: Sequence[PanelBoard]
    likeness: float = 1.0
    wood: Wood = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        problems = Problems()
        object.__setattr__(self, "wood", check_wood(problems, self.species))
        object.__setattr__(self, "boards", tuple(self.boards) if isinstance(self.boards, Sequence) else ())
        if not self.boards or not all(isinstance(board, PanelBoard) for board in self.boards):
            problems.add("boards must hold at least one PanelBoard, for example PanelBoard('5 in', ring_angle_deg=30).")
        check_number(problems, "likeness of the boards", self.likeness, "", 0, 1, "1 is all from one tree")
        problems.raise_if_any()

    @property
    def width_m(self) -> float:
        """Width of the whole panel."""
        return sum(board.width_m for board in self.boards)

    @property
    def ring_angle_deg(self) -> float:
        """The one ring angle that would move the panel as far, to first order; hand it to a single-board study."""
        share = sum(board.flatsawn_share * board.width_m for board in self.boards) / self.width_m
        return float(np.degrees(np.arccos(np.sqrt(min(share, 1.0)))))

    def change_m(self, mc_from: float, mc_to: float) -> float:
        """Change of width in metres with every input at its best guess."""
        _, radial, tangential = self.wood.axis_strains(mc_from, mc_to)
        return float(sum(board.change_m(radial, tangential) for board in self.boards))

    def change(self, mc_from: float, mc_to: float, doubts: Doubts = USUAL_DOUBTS) -> Movement:
        """Change of width with its range; each board has its own ring angle doubt, the meter and the air are shared."""
        problems = Problems()
        check_doubts(problems, doubts)
        check_moisture(problems, "moisture content at the start", mc_from)
        check_moisture(problems, "moisture content at the end", mc_to)
        problems.raise_if_any()
        mid = self.change_m(mc_from, mc_to)
        meter, air = (percent / NINETY_PERCENT_HALF_WIDTH for percent in (doubts.meter_percent, doubts.air_percent))
        of_meter, of_air = (
            0.5 * (self.change_m(*above) - self.change_m(*below))
            for above, below in (
                ((mc_from + meter, mc_to), (max(mc_from - meter, 0.0), mc_to)),
                ((mc_from, mc_to + air), (mc_from, max(mc_to - air, 0.0))),
            )
        )
        spread = spread_of_product(mid, (of_meter, of_air), self._board_moments(doubts), doubts)
        low, mid, high = map(float, spread)
        return Movement(low, mid, high, self.wood.remarks)

    def _board_moments(self, doubts: Doubts) -> tuple[float, float, float, float]:
        """Raw moments of how far all boards together go over their best guess: rings and kind of tree.

        What boards add is independent of each other, so cumulants add; what all of them share multiplies.
        """
        total = np.zeros(4)
        own = whole = 0.0
        for board in self.boards:
            weight = board.width_m * self._coefficient(board)
            moments = (1.0, 1.0, 1.0, 1.0)
            if board.ring_angle_deg is not None:
                moments = ring_moments(self.wood, np.radians(board.ring_angle_deg), doubts)
            total += cumulants(moments) * weight ** np.arange(1, 5)
            own += weight**2 * moments[1]
            whole += weight
        rings = raw_moments(total / whole ** np.arange(1, 5))
        tree = normal_moments(1.0, doubts.species_share**2 * self.likeness)
        together = cumulants(tuple(a * b for a, b in zip(rings, tree, strict=True)))
        together[1] += doubts.species_share**2 * (1.0 - self.likeness) * own / whole**2
        return raw_moments(together)

    def _coefficient(self, board: PanelBoard) -> float:
        """Movement coefficient across a board, per % MC."""
        share = board.flatsawn_share
        return share * self.wood.tangential_coefficient + (1.0 - share) * self.wood.radial_coefficient
