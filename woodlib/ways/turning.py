"""What would turn the verdict on the border glued across the ends over, from that verdict and no other judgement."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property
from math import radians

import numpy as np

from ..movement.months import MonthlyMoisture
from ..movement.spread import Doubts
from ..restraint.measures import WORRYING_CHANCE
from ..units import both, write
from .held import Held
from .judge import Judgement, judge, numbers_of
from .piece import Allowances, Piece
from .risk import risk_levels
from .travel import travel_quantities
from .verdict import Verdict
from .way import Way

_MOST_SHARE = 4.0  # of the year's swing: a house beyond that is another one
_PLACES, _HALVINGS = 8, 8
_STEADY_PERCENT = 0.3  # a house as steady as that could not be steadier
_WELL_METERED_PERCENT = 0.3  # a slice weighed and oven-dried; common practice, no source
_STEADIEST_PERCENT = 0.5  # of moisture over a year: a museum case (an assumption of ours)
_POSSIBLE_PERCENT = 0.0, 25.0  # moisture of wood in rooms


@dataclass(frozen=True)
class _Year:
    """The year of a house drawn together, or apart, about today's moisture, and judged anew, doubts and all."""

    way: Way
    piece: Piece
    stock_mc_percent: float
    months: MonthlyMoisture
    doubts: Doubts
    holding: Callable[[Piece], Held]

    @cached_property
    def held(self) -> Held:
        """How firmly the border holds this piece."""
        return self.holding(self.piece)

    @property
    def swing_percent(self) -> float:
        """How far the wood swings over the year as it is, in points of moisture content."""
        return float(self.months.mc_percent[self.months.dampest] - self.months.mc_percent[self.months.driest])

    def judged(self, share: float) -> Judgement:
        """The judgement in a year of that share, by the one judge, before the stress model is asked."""
        mc, piece = self._moisture(share), self.piece
        driest, dampest = float(mc[self.months.driest]), float(mc[self.months.dampest])
        ring = radians(piece.ring_angle_deg)
        travels = travel_quantities(
            piece.wood, piece.border_wood, ring, piece.width_m, self.stock_mc_percent, driest, dampest, self.doubts
        )
        return judge(self.way, numbers_of(self.way, piece, travels, Allowances(), self.held), self.held)

    def bears(self, share: float) -> bool:
        """Whether the border may be glued in a year of that share."""
        calm = round(float(self.judged(share).level)) == 0
        if not calm or self.held.through_year is None:
            return calm
        chance = self.held.through_year(self.stock_mc_percent, self._moisture(share).tolist()).chance
        return chance.sound.likely < WORRYING_CHANCE

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
    if glued.unfit:
        return "No house and no other stock would make the glued border fit; its size would."
    year = _Year(glued.way, piece, stock_mc_percent, months, doubts, held)
    now = write(year.swing_percent, "moisture")
    if glued.allowed:
        return f"The glued border is allowed in this house: the wood swings by {now} in a year; {_until(year)}."
    most = _that_a_house_can_be(year, year.most_borne(False))
    rested = _rested(year)
    if most is None and rested:
        changed = "It is not the house: the way there from the moisture of today is what is held."
    elif year.swing_percent <= _STEADY_PERCENT:
        changed = f"It is not the house, steady within {now}: the way there from the moisture of today is what is held."
    elif most is None:
        steady = year.judged(0.0)
        changed = (
            "No house makes the glued border safe to promise: even in air that never changed, the doubts about meter, "
            f"air and board alone could stretch it by {write(float(steady.most), 'strain')}, {_against_limit(float(steady.most))}."
        )
    else:
        changed = f"A glued border would need a house that holds the wood within about {_points(year, most)} over the year (now {now})."
    metered = _metered(year)
    house = (metered,) if metered else (changed, rested, _quartered(year, most))
    return " ".join(filter(None, (*house, _narrower(year))))


def _that_a_house_can_be(year: _Year, share: float | None) -> float | None:
    """A share of the year that some house keeps; no house holds wood within a few tenths of a point."""
    return share if share is not None and share * year.swing_percent >= _STEADIEST_PERCENT else None


def _metered(year: _Year) -> str:
    """Where the doubt of the meter, and not the house, uses up the room: a better reading would do."""
    if year.doubts.meter_percent <= _WELL_METERED_PERCENT:
        return ""
    if not replace(year, doubts=replace(year.doubts, meter_percent=_WELL_METERED_PERCENT)).bears(1.0):
        return ""
    return (
        f"The doubt of the meter, {write(year.doubts.meter_percent, 'percent')}, uses up the room of a glued border, not the house: the same "
        f"moisture known to {write(_WELL_METERED_PERCENT, 'percent')}, from a slice weighed and dried in an oven, would be enough."
    )


def _rested(year: _Year) -> str:
    """Where stock at the middle of the house's year would do."""
    middle = float(np.mean(year.months.mc_percent))
    if not replace(year, stock_mc_percent=middle).bears(1.0):
        return ""
    return f"Stock rested to about {write(middle, 'moisture')} before it is glued would be enough."


def _narrower(year: _Year) -> str:
    """Up to what width a split would not set free what it costs: the number of "then make it narrower"."""
    surely, perhaps = (float(width) for width in year.judged(1.0).strained.whole_m)
    if surely >= year.piece.width_m or not perhaps:
        return ""
    least = both(surely, 4, 1, "down")
    return (
        f"A glued end is sure not to split only up to about {least} wide, where it does not set free what a split costs; it is "
        "strained all the same, and its glue with it."
    )


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


def _quartered(year: _Year, as_cut: float | None) -> str:
    if year.piece.ring_angle_deg == 90.0:
        return "Quartersawn stock, which moves least, is already chosen."
    turned = replace(year, piece=replace(year.piece, ring_angle_deg=90.0))
    if turned.bears(1.0):
        return "Quartersawn stock would be enough."
    most = _that_a_house_can_be(turned, turned.most_borne(False))
    if most is None:
        return "Quartersawn stock alone would not be enough."
    if as_cut is not None and most <= as_cut:
        return "Quartersawn stock would be no help here: it moves less, but it is stiffer across."
    return f"Quartersawn stock would need a house that holds it within about {_points(turned, most)}."
