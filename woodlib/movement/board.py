"""Change of size and shape of one board when its moisture changes."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from ..door import check_length, check_moisture, check_number
from ..errors import Problems, WoodlibError
from ..species import Species
from .wood import Wood, rotated_strains, wood_of

STEEPEST_GRAIN_DEG = 45.0


@dataclass(frozen=True)
class BoardChange:
    """What one change of moisture does to a board: metres for sizes, radians for the corners."""

    width_m: float
    thickness_m: float
    length_m: float
    end_out_of_square_rad: float  # right angle between width and thickness: the end becomes a diamond
    face_out_of_square_rad: float  # right angle between length and width: slope of grain
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True)
class Board:
    """One board: species, sizes and how it was cut from the log.

    ``species`` name, catalogue entry or :class:`Wood`; sizes in metres, or text such as ``"20 in"``; ``ring_angle_deg``
    0 flatsawn to 90 quartersawn; ``grain_slope_deg`` 0 to 45, grain against the board's length seen on its face.
    Raises :class:`InputError` with a sentence for each bad input.

    >>> board = Board("white ash", "8 in", "3/4 in", "30 in", ring_angle_deg=45)
    >>> change = board.change(12, 7)
    >>> round(change.width_m * 1000, 2), round(math.degrees(change.end_out_of_square_rad), 2)
    (-2.25, -0.3)
    """

    species: Species | Wood | str
    width_m: float
    thickness_m: float
    length_m: float
    ring_angle_deg: float = 0.0
    grain_slope_deg: float = 0.0
    wood: Wood = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        problems = Problems()
        for name in ("width", "thickness", "length"):
            object.__setattr__(self, f"{name}_m", check_length(problems, f"board {name}", getattr(self, f"{name}_m")))
        check_ring_angle(problems, self.ring_angle_deg)
        slope_fix = "measure the grain against the long edge; steeper stock is cross-grained"
        check_number(problems, "slope of grain", self.grain_slope_deg, "degrees", 0, STEEPEST_GRAIN_DEG, slope_fix)
        object.__setattr__(self, "wood", check_wood(problems, self.species))
        problems.raise_if_any()

    def strains(self, mc_from, mc_to, factor=1.0):
        """Strains (length, width, thickness) and shears of the board; see :func:`rotated_strains`. Broadcasts."""
        ring, slope = math.radians(self.ring_angle_deg), math.radians(self.grain_slope_deg)
        along, radial, tangential = self.wood.axis_strains(mc_from, mc_to, factor)
        return rotated_strains(along, radial, tangential, ring, slope)

    def change(self, mc_from: float, mc_to: float) -> BoardChange:
        """Change of size and squareness from one moisture content to another, both in %."""
        problems = Problems()
        check_moisture(problems, "moisture content at the start", mc_from)
        check_moisture(problems, "moisture content at the end", mc_to)
        problems.raise_if_any()
        length, width, thickness, end, face, _ = (float(strain) for strain in self.strains(mc_from, mc_to))
        sizes = width * self.width_m, thickness * self.thickness_m, length * self.length_m
        return BoardChange(*sizes, end, face, self.wood.remarks + moisture_remarks(self.wood, mc_from, mc_to))


def check_ring_angle(problems: Problems, value: object, name: str = "ring angle") -> float:
    """Return a ring angle in degrees, or add a sentence and return nan."""
    return check_number(problems, name, value, "degrees", 0, 90, "0 is flatsawn, 90 is quartersawn")


def check_wood(problems: Problems, species: Any) -> Any:
    """Return the wood of a species, or add the sentence that says why not and return None."""
    if not isinstance(species, str | Species | Wood):
        problems.add(f"species is {species!r}; it must be a species name such as white oak, or a catalogue entry.")
        return None
    try:
        return wood_of(species)
    except WoodlibError as error:
        problems.add(str(error))
    return None


def moisture_remarks(wood: Wood, *moistures) -> tuple[str, ...]:
    """Sentences for moistures where the movement law changes."""
    highest, lowest = max(np.max(m) for m in moistures), min(np.min(m) for m in moistures)
    remarks = []
    if highest > wood.fibre_saturation_percent:
        limit = wood.fibre_saturation_percent
        remarks.append(f"above fibre saturation ({limit:g} % MC here) the wood does not change in size")
    if lowest < 6.0 or highest > 14.0:
        remarks.append("outside 6 to 14 % MC the total-shrinkage form is used")
    return tuple(remarks)
