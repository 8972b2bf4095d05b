"""What would turn the verdict on the border glued across the ends over, from that verdict and no other judgement."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import radians

import numpy as np

from ..movement.months import MonthlyMoisture
from ..movement.spread import Doubts
from ..restraint.measures import WORRYING_CHANCE
from ..units import write
from .held import Held
from .judge import held_strain
from .piece import Piece
from .risk import risk_levels
from .travel import travel_quantities
from .verdict import Verdict

_MOST_SHARE = 4.0  # of the year's swing: a house beyond that is another one
_PLACES, _HALVINGS = 8, 8
_POSSIBLE_PERCENT = 0.0, 25.0  # moisture of wood in rooms


@dataclass(frozen=True)
class _Year:
    """The year of a house drawn together, or apart, about today's moisture, and judged anew, doubts and all."""

    piece: Piece
    stock_mc_percent: float
    months: MonthlyMoisture
    doubts: Doubts
    held: Held

    @property
    def swing_percent(self) -> float:
        """How far the wood swings over the year as it is, in points of moisture content."""
        return float(self.months.mc_percent[self.months.dampest] - self.months.mc_percent[self.months.driest])

    def strain(self, share: float) -> float:
        """The most that the border could stretch the panel in a year of that share."""
        mc, piece = self._moisture(share), self.piece
        travels = travel_quantities(
            piece.wood,
            piece.border_wood,
            radians(piece.ring_angle_deg),
            piece.width_m,
            self.stock_mc_percent,
            float(mc[self.months.driest]),
            float(mc[self.months.dampest]),
            self.doubts,
        )
        return float(held_strain({**travels, "held_share": self.held.share}, "high"))

    def bears(self, share: float) -> bool:
        """Whether both measures let the border be glued in a year of that share."""
        if self.strain(share) >= risk_levels()[1].from_strain:
            return False
        if self.held.through_year is None:
            return True
        chance = self.held.through_year(self.stock_mc_percent, self._moisture(share).tolist()).chance
        return chance is None or chance.sound.likely < WORRYING_CHANCE

    def most_borne(self, allowed: bool) -> float | None:
        """The largest share that is borne, looked for beyond the year where it is ``allowed`` and within it where not."""
        places = np.linspace(_MOST_SHARE if allowed else 1.0, 1.0 if allowed else 0.0, _PLACES + 1).tolist()
        for too_much, less in zip(places, places[1:], strict=False):
            if (allowed and less == 1.0) or self.bears(less):
                return self._between(less, too_much)
        return None

    def _between(self, borne: float, too_much: float) -> float:
        if self.bears(too_much):
            return too_much
        for _ in range(_HALVINGS):
            middle = 0.5 * (borne + too_much)
            borne, too_much = (middle, too_much) if self.bears(middle) else (borne, middle)
        return borne

    def _moisture(self, share: float) -> np.ndarray:
        moved = self.stock_mc_percent + share * (np.asarray(self.months.mc_percent) - self.stock_mc_percent)
        return moved if share == 1.0 else np.clip(moved, *_POSSIBLE_PERCENT)


def what_would_change(
    glued: Verdict,
    piece: Piece,
    stock_mc_percent: float,
    months: MonthlyMoisture,
    doubts: Doubts,
    held: Callable[[Piece], Held],
) -> str:
    """What would turn the verdict ``glued`` on the border glued across the ends over, in a sentence or two."""
    year = _Year(piece, stock_mc_percent, months, doubts, held(piece))
    now = write(year.swing_percent, "moisture")
    if glued.allowed:
        return f"The glued border is allowed in this house: the wood swings by {now} in a year; {_until(year)}."
    most = year.most_borne(False)
    if most is None:
        strain = year.strain(0.0)
        changed = (
            "No house makes the glued border safe to promise: even in air that never changed, the doubts about meter, "
            f"air and board alone could stretch it by {write(strain, 'strain')}, {_against_limit(strain)}."
        )
    else:
        changed = f"A glued border would need a house that holds the wood within about {_points(year, most)} over the year (now {now})."
    narrower = "A narrower panel hardly helps: the stretch, as a share of its width, stays nearly the same."
    return f"{changed} {_quartered(year, most, held)} {narrower}"


def _until(year: _Year) -> str:
    beyond = "a drier winter or a damper summer would turn that over"
    most = year.most_borne(True) if year.swing_percent > 0.0 else None
    if most is None or most >= _MOST_SHARE:
        return beyond
    return f"it stays allowed up to about {_points(year, most)}; {beyond}"


def _points(year: _Year, share: float) -> str:
    return write(share * year.swing_percent, "moisture", rounding="down")


def _against_limit(strain: float) -> str:
    """How the most it could be stretched stands to the least step of risk."""
    edge = risk_levels()[1].from_strain
    limit = write(edge, "strain")
    if strain < edge:
        return "and the stress model warns even there"
    return f"already at the limit of {limit}" if write(strain, "strain") == limit else f"beyond the limit of {limit}"


def _quartered(year: _Year, as_cut: float | None, held: Callable[[Piece], Held]) -> str:
    if year.piece.ring_angle_deg == 90.0:
        return "Quartersawn stock, which moves least, is already chosen."
    piece = replace(year.piece, ring_angle_deg=90.0)
    turned = replace(year, piece=piece, held=held(piece))
    if turned.bears(1.0):
        return "Quartersawn stock would be enough."
    most = turned.most_borne(False)
    if most is None:
        return "Quartersawn stock alone would not be enough."
    if as_cut is not None and most <= as_cut:
        return "Quartersawn stock would be no help here: it moves less, but it is stiffer across."
    return f"Quartersawn stock would need a house that holds it within about {_points(year, most)}."
