"""How stiff a species is in each direction, and how well each of those numbers is known."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from math import exp, log

import numpy as np

from ..errors import InputError, MissingDataError
from ..species import Species, Value, all_species, find_species
from ..tables import rows
from .assumptions import assumption
from .closed_forms import transverse_modulus_pa
from .field import PlaneWood

_MOE_TO_LENGTHWISE = 1.10  # Wood Handbook: add 10 % to the centre-loaded bending modulus (span 14 depths)
_RATIOS = {
    "modulus_radial_pa": "ratio_er_el",
    "modulus_tangential_pa": "ratio_et_el",
    "shear_lr_pa": "ratio_glr_el",
    "shear_lt_pa": "ratio_glt_el",
    "shear_rt_pa": "ratio_grt_el",
}
_POISSONS = ("poisson_lr", "poisson_lt", "poisson_rt")
# Dependent ratios by the one rule nu_ji = nu_ij E_j / E_i, from the larger and better measured of each pair.
_DEPENDENT = {
    "poisson_rl": ("poisson_lr", "modulus_radial_pa", "modulus_lengthwise_pa"),
    "poisson_tl": ("poisson_lt", "modulus_tangential_pa", "modulus_lengthwise_pa"),
    "poisson_tr": ("poisson_rt", "modulus_tangential_pa", "modulus_radial_pa"),
}
_NAMES = {
    "modulus_lengthwise_pa": "stiffness along the grain",
    "modulus_radial_pa": "radial stiffness",
    "modulus_tangential_pa": "tangential stiffness",
    "shear_lr_pa": "shear stiffness, lengthwise-radial",
    "shear_lt_pa": "shear stiffness, lengthwise-tangential",
    "shear_rt_pa": "rolling-shear stiffness",
    "poisson_lr": "Poisson ratio LR",
    "poisson_lt": "Poisson ratio LT",
    "poisson_rt": "Poisson ratio RT",
    "poisson_rl": "Poisson ratio RL",
    "poisson_tl": "Poisson ratio TL",
    "poisson_tr": "Poisson ratio TR",
    "tension_perpendicular_pa": "strength in tension across the grain",
}


@dataclass(frozen=True)
class ElasticConstants:
    """Moduli (Pa) and Poisson ratios of one species at 12 % MC, each a ``Value`` with status and source.

    ``values`` has every constant; ``tension_perpendicular`` and ``shear_parallel`` are strengths, worked out from the density
    where no table prints them; ``radial_over_tangential`` strength across the grain pulled radially over tangentially.
    """

    species: str
    kind: str
    values: Mapping[str, Value] = field(repr=False)
    tension_perpendicular: Value
    shear_parallel: Value
    radial_over_tangential: float

    def strength_across_pa(self, ring_angle_rad: float) -> float:
        """Mean strength in tension across a board, Pa; what is printed is taken as the mean of both directions."""
        tangential = 2.0 / (1.0 + self.radial_over_tangential)
        turned = np.cos(ring_angle_rad) ** 2 + self.radial_over_tangential * np.sin(ring_angle_rad) ** 2
        return float(self.tension_perpendicular.number * tangential * turned)

    @property
    def strength_variation(self) -> float:
        """Coefficient of variation of that strength; wider where it is worked out."""
        worked_out = self.tension_perpendicular.status == "estimated"
        return assumption("estimated_strength_variation" if worked_out else "strength_variation").middle

    def number(self, name: str) -> float:
        """One constant as a float in SI."""
        return self.values[name].number

    def across(self, ring_angle_rad):
        """Modulus across, shear modulus (Pa) and Poisson ratio (along, across) of a board; broadcasts.

        Ring angle 0 flatsawn, pi/2 quartersawn. Tensor rotation about the grain.
        """
        c2, s2 = np.cos(ring_angle_rad) ** 2, np.sin(ring_angle_rad) ** 2
        modulus = transverse_modulus_pa(
            self.number("modulus_tangential_pa"),
            self.number("modulus_radial_pa"),
            self.number("shear_rt_pa"),
            self.number("poisson_tr"),
            ring_angle_rad,
        )
        shear = 1.0 / (c2 / self.number("shear_lt_pa") + s2 / self.number("shear_lr_pa"))
        poisson = c2 * self.number("poisson_lt") + s2 * self.number("poisson_lr")
        return modulus, shear, poisson

    def panel(self, ring_angle_rad: float) -> PlaneWood:
        """Constants of a panel whose grain runs away from the glue line."""
        modulus, shear, poisson = (float(value) for value in self.across(ring_angle_rad))
        lengthwise = self.number("modulus_lengthwise_pa")
        return PlaneWood(modulus, lengthwise, shear, poisson * modulus / lengthwise)

    def strip(self, ring_angle_rad: float) -> PlaneWood:
        """Constants of a strip whose grain runs along the glue line."""
        modulus, shear, poisson = (float(value) for value in self.across(ring_angle_rad))
        return PlaneWood(self.number("modulus_lengthwise_pa"), modulus, shear, poisson)

    def estimated(self, ring_angle_rad: float = 0.0) -> tuple[str, ...]:
        """Names of the estimated constants that count at this ring angle (rolling shear does not at 0 or 90 deg)."""
        tilted = abs(np.sin(2.0 * ring_angle_rad)) > 1e-6
        unused = {"poisson_rt"} if tilted else {"poisson_rt", "shear_rt_pa"}
        return tuple(k for k, value in self.values.items() if value.status == "estimated" and k not in unused)

    def estimate_remarks(self, ring_angle_rad: float = 0.0) -> tuple[str, ...]:
        """A sentence about what is estimated, if anything is."""
        names = "; ".join(_NAMES[key] for key in self.estimated(ring_angle_rad))
        if not names:
            return ()
        stands_in = f"the median of the {self.kind}s that are in the tables stands in"
        return (f"No table gives these constants of {self.species}, and {stands_in}: {names}.",)

    def remarks(self, ring_angle_rad: float = 0.0) -> tuple[str, ...]:
        """Sentences about what is estimated."""
        if self.tension_perpendicular.status != "estimated":
            return self.estimate_remarks(ring_angle_rad)
        worked_out = (
            f"No table prints the strength of {self.species} in tension across the grain: it is worked out from the density, "
            "and the chance of a crack is less sure."
        )
        return (*self.estimate_remarks(ring_angle_rad), worked_out)

    def varied(self, log_steps: float) -> ElasticConstants:
        """The same with every estimated modulus moved by this many spreads of its estimate (up or down)."""
        moved = dict(self.values)
        for name, key in _RATIOS.items():
            if moved[name].status == "estimated":
                factor = exp(log_steps * estimate_spread(key, self.kind))
                moved[name] = replace(moved[name], number=moved[name].number * factor)
        return replace(self, values=moved)

    def provenance(self) -> tuple[tuple[str, str, str, str], ...]:
        """Name, status, source and note of every constant, for the fine print."""
        rows = [(_NAMES[key], value.status, value.source, value.note) for key, value in self.values.items()]
        strength = self.tension_perpendicular
        rows.append((_NAMES["tension_perpendicular_pa"], strength.status, strength.source, strength.note))
        return tuple(rows)


@cache
def kindred_ratio(key: str, kind: str) -> Value:
    """Median of one ratio over all single species of a kind in the tables, with its measured spread in the note.

    A stand-in for a wood whose own value is printed nowhere. Used only where nothing better exists, and always said.

    >>> round(kindred_ratio("ratio_glt_el", "hardwood").number, 3)
    0.066
    """
    found = [species.get(key) for species in all_species() if species.kind == kind and not species.is_group]
    numbers = np.array([value.number for value in found if value is not None])
    if numbers.size < 3:
        raise MissingDataError(f"{key} is known for {numbers.size} {kind}s only, too few to estimate it for another.")
    low, middle, high = np.quantile(numbers, (1 / 6, 1 / 2, 5 / 6))
    note = f"median of {numbers.size} {kind}s in the tables; two in three lie between {low:.3g} and {high:.3g}"
    return Value(float(middle), "", "estimated", "woodlib, median of the kind", note)


@cache
def estimate_spread(key: str, kind: str) -> float:
    """How far a species' own ratio lies from the median of its kind: standard deviation of the logarithm."""
    values = (wood.get(key) for wood in all_species() if wood.kind == kind and not wood.is_group)
    numbers = [value for value in values if value is not None]
    return float(np.std([log(value.number / kindred_ratio(key, kind).number) for value in numbers]))


_BY_DENSITY = {
    ("tension_perpendicular_pa", "hardwood"): (10.1e6, 1.30),
    ("tension_perpendicular_pa", "softwood"): (6.0e6, 1.11),
    ("shear_parallel_pa", "hardwood"): (21.9e6, 1.13),
    ("shear_parallel_pa", "softwood"): (16.6e6, 0.85),
}
"""Strength at 12 % MC as a G^b of the specific gravity; Wood Handbook, table of functions of property and density, from memory."""


def _strength(species: Species, key: str) -> Value:
    """A strength as printed, or from the density, or the median of the kind."""
    gravity = species.get("specific_gravity_12") or species.get("specific_gravity_basic")
    if (own := species.get(key)) is not None or gravity is None:
        return own or kindred_ratio(key, species.kind)
    factor, power = _BY_DENSITY[key, species.kind]
    note = f"{factor / 1e6:g} G^{power:g} MPa with a specific gravity of {gravity.number:.2f}"
    return Value(
        factor * gravity.number**power, "Pa", "estimated", "Wood Handbook, functions of density, from memory", note
    )


@cache
def radial_over_tangential(species: Species) -> float:
    """Strength across the grain pulled radially over that pulled tangentially: the wood's own, else the mean of its kind.

    >>> from woodlib.species import find_species
    >>> [round(radial_over_tangential(find_species(name)), 2) for name in ("white oak", "black cherry", "sugar pine")]
    [1.3, 1.3, 1.27]
    """
    found = [row for row in rows("tension_directions.csv") if row["kind"] == species.kind]
    own = [row for row in found if row["species"] == species.name]
    ratios = [float(row["radial_psi"]) / float(row["tangential_psi"]) for row in own or found]
    return sum(ratios) / len(ratios)


def _own_or_kindred(species: Species, key: str) -> Value:
    return species.get(key) or kindred_ratio(key, species.kind)


def elastic_constants(species: Species | str) -> ElasticConstants:
    """Elastic constants of a species, each with its status, and what is missing.

    Parameters
    ----------
    species : Species or str
        A catalogue entry, a wood of your own, or a name.

    Returns
    -------
    ElasticConstants
        Values in Pa, each with its status.

    Raises
    ------
    MissingDataError
        When no bending modulus is known, so that there is nothing to scale.
    InputError
        When the values given do not make a stable material.

    Examples
    --------
    >>> ash = elastic_constants("white ash")
    >>> round(ash.number("modulus_tangential_pa") / 1e6), ash.values["shear_rt_pa"].status
    (1056, 'estimated')

    Notes
    -----
    Lengthwise modulus = 1.10 x bending modulus; the others by the ratios of Wood Handbook Table 5-1; Poisson ratios LR,
    LT and RT of Table 5-2 are kept and the small ones derived, because printed pairs often break reciprocity.
    At 12 % MC and about 20 C; drier wood is a few percent stiffer per percent MC (from memory), not modelled.
    """
    if not isinstance(species, Species):
        species = find_species(species)
    bending = species.get("modulus_of_elasticity_pa")
    if bending is None:
        raise MissingDataError(
            f"{species.name} has no modulus of elasticity in the tables, so the stress in a held panel cannot be "
            f"worked "
            "out; choose a related species that has one, or give modulus_of_elasticity in your own species file."
        )
    lengthwise = Value(
        bending.number * _MOE_TO_LENGTHWISE, "Pa", "derived", bending.source, "1.10 times the bending modulus"
    )
    values = {"modulus_lengthwise_pa": lengthwise}
    for name, key in _RATIOS.items():
        ratio = _own_or_kindred(species, key)
        status = (
            ratio.status if ratio.status in ("recalled", "estimated") else "derived"
        )  # the product is printed nowhere
        note = ratio.note or f"{ratio.status} ratio times the stiffness along the grain"
        values[name] = Value(ratio.number * lengthwise.number, "Pa", status, ratio.source, note)
    for name in _POISSONS:
        values[name] = _own_or_kindred(species, name)
    for name, (partner, above, below) in _DEPENDENT.items():
        number = values[partner].number * values[above].number / values[below].number
        values[name] = Value(number, "", "derived", "reciprocity", f"from {_NAMES[partner]}")
    _check_stable(species.name, values)
    tension, shear = (_strength(species, key) for key in ("tension_perpendicular_pa", "shear_parallel_pa"))
    return ElasticConstants(species.name, species.kind, values, tension, shear, radial_over_tangential(species))


def _check_stable(name: str, values: Mapping[str, Value]) -> None:
    """Refuse constants that would give back more energy than was put in."""
    wrong = [_NAMES[key] for key in values if key.endswith("_pa") and not 0 < values[key].number < float("inf")]
    if wrong:
        raise InputError(f"{', '.join(wrong)} of {name} must be above 0 Pa; correct it in your species file.")
    lr, lt, rt, rl, tl, tr = (values[f"poisson_{pair}"].number for pair in ("lr", "lt", "rt", "rl", "tl", "tr"))
    rest = 1 - lr * rl - lt * tl - rt * tr - 2 * rl * tr * lt
    if min(1 - lr * rl, 1 - lt * tl, 1 - rt * tr, rest) <= 0:
        raise InputError(
            f"the Poisson ratios of {name} (LR {lr:g}, LT {lt:g}, RT {rt:g}) do not belong to a stable material "
            f"with its "
            "moduli; make them smaller in your species file."
        )
