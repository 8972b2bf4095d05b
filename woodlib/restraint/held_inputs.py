"""What a held panel is given, checked once: every bad input gets its sentence, all of them at once."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..door import check_length, check_number
from ..errors import Problems, WoodlibError
from ..species import Species, find_species
from ..units import both, shown

_WIDEST_M = 6.0


@dataclass(frozen=True)
class HeldInputs:
    """Checked inputs of a held panel, SI."""

    species: Species
    strip_species: Species
    width_m: float
    length_m: float
    thickness_m: float
    strip_width_m: float
    strip_thickness_m: float
    ring_angle_rad: float
    strip_ring_angle_rad: float
    ends: int
    glued_width_m: float | None
    glue_thickness_m: float
    glue_shear_pa: float | None
    glue_up_mc_percent: float
    year_mc_percent: tuple[float, ...]
    years: int


def _length(problems: Problems, name: str, value: object) -> float:
    """A length above 0; plain floats take the short way because sliders call this often."""
    if type(value) is float and 0.0 < value <= _WIDEST_M:
        return value
    number = check_length(problems, name, value)
    if number > _WIDEST_M:
        problems.add(
            f"{name} is {both(number)}; it must be at most {both(_WIDEST_M)}: write metres, or a unit with it."
        )
        return math.nan
    return number


def _species(problems: Problems, name: str, value: Any) -> Species | None:
    if isinstance(value, Species):
        return value
    try:
        return find_species(value)
    except (WoodlibError, AttributeError, TypeError) as error:
        problems.add(
            f"{name}: {error}"
            if isinstance(error, WoodlibError)
            else f"{name} is {shown(value)}; write a name such as white oak."
        )
        return None


def _moisture(problems: Problems, name: str, value: object, saturation: float) -> float:
    above = f"wood above fibre saturation ({saturation:g} %) does not move, and wet wood is not glued"
    fix = f"{above}; give percent of dry mass"
    return check_number(problems, name, value, "% MC", 0.0, saturation, fix)


def _year(problems: Problems, value: object, saturation: float) -> tuple[float, ...]:
    try:
        numbers = np.asarray(value, float).ravel()
    except (TypeError, ValueError):
        numbers = np.zeros(0)
    if numbers.size < 2:
        problems.add(
            f"moisture through the year is {shown(value)}; give at least two moisture contents in order, for "
            f"example 12 then 7."
        )
        return ()
    if not np.isfinite(numbers).all() or numbers.min() < 0.0 or numbers.max() > saturation:
        worst = next(n for n in numbers if not (np.isfinite(n) and 0.0 <= n <= saturation))
        _moisture(problems, "moisture through the year", float(worst), saturation)
    return tuple(numbers.tolist())


def _saturation(*species: Species | None) -> float:
    return min((wood.fibre_saturation_percent for wood in species if wood is not None), default=30.0)


def check_held(**given: Any) -> HeldInputs:
    """Check everything a held panel is given; raises ``InputError`` with one sentence per bad input."""
    problems = Problems()
    species = _species(problems, "panel species", given["species"])
    strip_species = species
    if given["strip_species"] is not None:
        strip_species = _species(problems, "strip species", given["strip_species"])
    sizes = {
        name: _length(problems, name.removesuffix("_m").replace("_", " "), given[name])
        for name in ("width_m", "length_m", "thickness_m", "strip_width_m")
    }
    thickness = given["strip_thickness_m"]
    sizes["strip_thickness_m"] = (
        sizes["thickness_m"] if thickness is None else _length(problems, "strip thickness", thickness)
    )
    _check_proportions(problems, sizes)
    glued = _glued(problems, given["glued_width_m"], sizes["width_m"])
    glue = _glue(problems, given["glue_thickness_m"], given["glue_shear_pa"])
    cut = "0 is flatsawn, 90 is quartersawn"
    angles = [
        math.radians(
            check_number(problems, name.replace("_", " ").removesuffix(" deg"), given[name], "degrees", 0, 90, cut)
        )
        for name in ("ring_angle_deg", "strip_ring_angle_deg")
    ]
    if given["ends"] not in (1, 2):
        problems.add(f"ends is {shown(given['ends'])}; it must be 1 or 2: how many ends carry a strip.")
    if not isinstance(given["years"], int) or not 2 <= given["years"] <= 100:
        problems.add(
            f"years is {shown(given['years'])}; it must be a whole number from 2 to 100, so that every season "
            f"comes again."
        )
    saturation = _saturation(species, strip_species)
    start = _moisture(problems, "moisture at glue-up", given["glue_up_mc_percent"], saturation)
    year = _year(problems, given["year_mc_percent"], saturation)
    problems.raise_if_any()
    assert species is not None and strip_species is not None
    return HeldInputs(
        species,
        strip_species,
        **sizes,
        ring_angle_rad=angles[0],
        strip_ring_angle_rad=angles[1],
        ends=given["ends"],
        glued_width_m=glued,
        glue_thickness_m=glue[0],
        glue_shear_pa=glue[1],
        glue_up_mc_percent=start,
        year_mc_percent=year,
        years=given["years"],
    )


def _check_proportions(problems: Problems, sizes: dict[str, float]) -> None:
    width, strip = sizes["width_m"], sizes["strip_width_m"]
    if strip > width:
        problems.add(
            f"strip width is {both(strip)}, wider than the panel ({both(width)}); a strip or lip is narrower than "
            f"the panel: "
            "check that width is across the panel's grain and strip width along it."
        )
    for name in ("thickness_m", "strip_thickness_m"):
        if sizes[name] > width:
            problems.add(
                f"{name.removesuffix('_m').replace('_', ' ')} is {both(sizes[name])}, more than the panel's width "
                f"({both(width)}); check which size is which."
            )


def _glued(problems: Problems, value: object, width_m: float) -> float | None:
    if value is None:
        return None
    glued = _length(problems, "glued width", value)
    if glued > width_m:
        problems.add(
            f"glued width is {both(glued)}, more than the panel's width ({both(width_m)}); glue at most the width."
        )
    return None if glued == width_m else glued


def _glue(problems: Problems, thickness: object, shear: object) -> tuple[float, float | None]:
    thick = check_number(
        problems, "glue thickness", thickness, "m", 0.0, 0.005, "0 for a tight joint, 0.0001 for 0.1 mm"
    )
    if shear is None:
        if thick > 0:
            problems.add(
                f"glue thickness is {thick:g} m but its shear modulus is missing; give glue_shear_pa, or thickness 0."
            )
        return thick, None
    return thick, check_number(problems, "glue shear modulus", shear, "Pa", 0.0, 1e11, "for example 3e8", above=True)
