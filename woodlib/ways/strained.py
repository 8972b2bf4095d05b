"""How hard a way that holds strains the wood, from the travels of its panel: pulled, squeezed, along the border, in the glue.

One law for all of them (:mod:`restraint.gathered`). Every number may slide.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from ..restraint.assumptions import assumption
from ..restraint.gathered import first_share, first_stress_share, settled_share, settled_stress_share
from ..words.decided import Decided, Sliding, larger, level, reached, smaller
from .held import Held
from .risk import risk_level
from .rules import room
from .travel import RANGE
from .way import Way

Three = tuple[Sliding, Sliding, Sliding]


@dataclass(frozen=True)
class Strained:
    """What is held back, each as low, likely and careful.

    ``pulled`` strain that the panel gathers in tension, ``squeezed`` growth that it never gets back; ``border`` along
    the grain of the border that follows the panel; ``glue`` stress at the end of the glue line over what it
    bears, 0 without a glued edge. ``splits`` 0 where a split would not set free what it costs, 1 where it might, 2
    where it does or where that is not known; ``whole_m`` widths up to which it surely, and perhaps, would not.
    """

    pulled: Three
    squeezed: Three
    border: Three
    glue: Three
    splits: Sliding
    whole_m: tuple[Sliding, Sliding] = (0.0, 0.0)

    @property
    def levels(self) -> tuple[Decided, ...]:
        """The step of risk by each way to fail, at its careful end; what is too narrow to split is not torn by the pull."""
        limits = assumption("compression_set_strain")
        along = assumption("border_strain")
        glue = assumption("glue_share")
        return (
            smaller(risk_level(self.pulled[2]), self.splits),
            level(self.squeezed[2], [limits.low, limits.high]),
            level(self.border[2], [along.low, along.high]),
            level(self.glue[2], [glue.low, glue.high]),
        )


NOTHING = Strained((0.0,) * 3, (0.0,) * 3, (0.0,) * 3, (0.0,) * 3, 0.0)


def strained(numbers: Mapping[str, Sliding], held: Held, way: Way) -> Strained:
    """What is held back of the travels in ``numbers`` where ``held`` says how firmly.

    A joint that opens when damp is pulled by growth as by shrinking, like a mitre at its outside corner. Only
    what keeps the panel's own width squeezes it and strains a border along its grain.
    """
    pulled = _each(lambda place: _pulled(numbers, place, held.share))
    if way.opens_when_damp:
        growing = _each(lambda place: held.share * numbers[f"widening_{RANGE[place]}"] / numbers["width"])
        pulled = _each(lambda place: larger(pulled[place], growing[place]))
    if not way.holds_width:
        return replace(NOTHING, pulled=pulled, splits=2.0)
    squeezed = _each(lambda place: _squeezed(numbers, place, held.share))
    follows = (1.0 - held.share) / larger(held.share, _LEAST)
    border = _each(lambda place: follows * larger(pulled[place], squeezed[place]))
    if held.edge is None:
        return Strained(pulled, squeezed, border, NOTHING.glue, 2.0)
    edge, standing = held.edge, _each(lambda place: _standing(numbers, place))
    glue = _each(lambda place: edge.glue_per_strain * standing[place])
    drive = [larger(held.share * each, _STILL) ** 2 for each in standing]
    whole = edge.split_low_m / drive[2], edge.split_high_m / drive[1]
    splits = reached(numbers["width"], whole[0]) + reached(numbers["width"], whole[1])
    return Strained(pulled, squeezed, border, glue, splits, whole)


def _each(function: Callable[[int], Sliding]) -> Three:
    """Low, likely and careful."""
    return function(0), function(1), function(2)


_STILL = 1e-6  # a strain that is none
_LEAST = 1e-3  # of a share: a border that holds nothing follows in full


def _pulling(numbers: Mapping[str, Sliding], end: str) -> tuple[Sliding, Sliding, Sliding]:
    """The first drying from the dampest moment, today or a month: its strain, its points, and the points grown before."""
    grown = room(numbers["dampest_mc"] - numbers["stock_mc"])
    strain = numbers[f"stretch_{end}"] + room(numbers["swing_strain_mid"] - numbers["stretch_mid"])
    return strain, numbers["stock_mc"] - numbers["driest_mc"] + grown, grown


def _settled(numbers: Mapping[str, Sliding], end: str, rate: float) -> Sliding:
    """Free strain that is gathered one way in a year that repeats itself."""
    swing = numbers["dampest_mc"] - numbers["driest_mc"]
    return numbers[f"swing_strain_{end}"] * settled_share(swing, rate)


def _pulled(numbers: Mapping[str, Sliding], place: int, share: Sliding) -> Decided:
    """Strain gathered in tension, in the first winter or in a settled year, whichever is more."""
    end, rate = RANGE[place], _ends_of("relaxation_rate")[place]
    strain, points, grown = _pulling(numbers, end)
    return room(share * larger(strain * first_share(points, grown, rate), _settled(numbers, end, rate)))


def _squeezed(numbers: Mapping[str, Sliding], place: int, share: Sliding) -> Decided:
    """Growth that no season gives back: the first, less what a settled year squeezes and lets go again."""
    end, rate = RANGE[place], _ends_of("relaxation_rate")[place]
    return room(share * (numbers[f"widening_{end}"] / numbers["width"] - _settled(numbers, end, rate)))


def _standing(numbers: Mapping[str, Sliding], place: int) -> Decided:
    """Elastic strain that still stands when the pull is greatest, as if nothing gave: what stress and energy go by."""
    end = RANGE[place]  # the careful end is where least is let go
    rate, delayed = (_ends_of(key)[2 - place] for key in ("relaxation_rate", "delayed_share"))
    strain, points, grown = _pulling(numbers, end)
    swing = numbers["dampest_mc"] - numbers["driest_mc"]
    settled = numbers[f"swing_strain_{end}"] * settled_stress_share(swing, rate, delayed)
    return room(larger(strain * first_stress_share(points, grown, rate, delayed), settled))


def _ends_of(key: str) -> tuple[float, float, float]:
    found = assumption(key)
    return found.low, found.middle, found.high
