"""Weight of a piece from the density of its wood and the moisture in it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from ..door import check_kind, check_number
from ..errors import Problems, WoodlibError
from ..movement.spread import NINETY_PERCENT_HALF_WIDTH
from ..species import Species, find_species
from ..species.value import Value
from ..tables import rows
from ..units import write
from .kernels import gravity_at, mass_kg

MOST_VOLUME_M3 = 5.0  # a solid block far beyond any furniture


@cache
def gravity_variation() -> float:
    """Coefficient of variation of specific gravity within a species, as a fraction; source in the table.

    >>> gravity_variation()
    0.1
    """
    row = next(row for row in rows("strength_variation.csv") if row["quantity"] == "specific gravity")
    return float(row["coefficient_of_variation_percent"]) / 100.0


@dataclass(frozen=True)
class Weight:
    """Mass of a piece at the moisture at which it was measured: low, mid and high hold nine boards in ten.

    ``dry_kg`` its dry wood; ``gravity`` the specific gravity it was worked out from, with its source.
    """

    low_kg: float
    mid_kg: float
    high_kg: float
    dry_kg: float
    mc_percent: float
    gravity: Value
    remarks: tuple[str, ...] = ()

    def at_kg(self, mc_percent: float) -> float:
        """Mass of the same piece once it has come to another moisture: the dry wood stays, the water changes."""
        return self.dry_kg * (1.0 + mc_percent / 100.0)

    def text(self, first: str = "customary") -> str:
        """The weight in words, with its range.

        >>> weight_of("white oak", 0.0126, 8).text()
        'about 20.7 lb (9.4 kg), could be 17.3 to 24.1 lb (7.8 to 10.9 kg)'
        """
        pounds, kilograms = (
            [write(kg, "mass", first=system).split(" (")[0] for kg in (self.low_kg, self.mid_kg, self.high_kg)]
            for system in ("customary", "metric")
        )
        (low, mid, high), (low2, mid2, high2) = (pounds, kilograms) if first == "customary" else (kilograms, pounds)
        return f"about {mid} ({mid2}), could be {low.split()[0]} to {high} ({low2.split()[0]} to {high2})"


def weight_of(species: Species | str, volume_m3: float, mc_percent: float) -> Weight:
    """The weight of a volume of wood measured at a moisture content.

    ``volume_m3`` at that moisture, for example ``float(blank.finished_volume_m3)``; ``mc_percent`` in percent of the
    dry mass. Finish and hardware are not counted. Raises :class:`InputError` and :class:`MissingDataError`.

    Specific gravity at 12 % from the table (or its published estimate, which the result says), brought to the moisture
    by volumetric shrinkage; mass 1000 G V (1 + M/100): Wood Handbook 2021 (FPL-GTR-282), chapter 4, density and
    specific gravity. Valid up to fibre saturation for the volume; beyond it the volume no longer changes.

    >>> weight = weight_of("white oak", 0.0126, 8)
    >>> round(weight.mid_kg, 2), round(weight.at_kg(12) / weight.mid_kg, 4)
    (9.38, 1.037)
    """
    problems = Problems()
    volume = check_number(
        problems, "volume", volume_m3, "m3", 0.0, MOST_VOLUME_M3, "length times width times thickness", above=True
    )
    moisture = check_number(
        problems, "moisture content", mc_percent, "% MC", 0.0, 250.0, "percent of dry mass, for example 8"
    )
    wood = _wood(problems, species)
    problems.raise_if_any()
    assert wood is not None
    gravity, shrinkage = (
        wood.value_or_estimate("specific_gravity_12"),
        wood.value_or_estimate("volumetric_shrinkage_percent"),
    )
    saturation = wood.fibre_saturation_percent
    now = gravity_at(gravity.number, shrinkage.number / 100.0, min(moisture, saturation), saturation)
    mid, spread = mass_kg(volume, now, moisture), NINETY_PERCENT_HALF_WIDTH * gravity_variation()
    remarks = tuple(
        f"{name} is estimated: {value.note}."
        for name, value in (("specific gravity", gravity), ("volumetric shrinkage", shrinkage))
        if value.status == "estimated"
    )
    return Weight(mid * (1 - spread), mid, mid * (1 + spread), mass_kg(volume, now, 0.0), moisture, gravity, remarks)


def _wood(problems: Problems, species: object) -> Species | None:
    if isinstance(species, str):
        try:
            return find_species(species)
        except WoodlibError as error:
            problems.add(str(error).replace("\n", " "))
            return None
    check_kind(problems, "species", species, Species, "find_species('white oak')")
    return species if isinstance(species, Species) else None
