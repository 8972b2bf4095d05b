"""A board as moisture sees it: thickness, density, a finish on each face, and how fast moisture moves in it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from ..door import Limits, read_values
from ..errors import InputError, Problems
from ..species import find_species
from .diffusivity import FORMS, GRAVITY, Form
from .finishes import BARE, Finish, film_coefficient_m_s, find_finish, surface_coefficient_m_s
from .rates import Likely, rate

THICKNESS = Limits(1e-4, 0.5, "m", "write the thickness of the board in metres, for example 0.019", "metre")
FACTOR = Limits(0.05, 20.0, "", "write how many times faster than the form, for example 1.5", "dimensionless")


@dataclass(frozen=True)
class Stock:
    """A board that trades moisture through its two faces.

    thickness_m: m; specific_gravity: oven-dry mass over volume at 12 %; first_finish, second_finish: bare wood unless
    given; form: which published diffusion coefficient, a name in ``FORMS`` or a Form; diffusivity_factor: 1, or how
    many times faster your own weighings say the wood is; note: where the numbers come from.
    Raises InputError with everything that is wrong.

    >>> round(Stock.of("white oak", 0.019, first_finish="shellac").specific_gravity, 2)
    0.67
    """

    thickness_m: float
    specific_gravity: float
    first_finish: Finish = BARE
    second_finish: Finish = BARE
    form: str | Form = "siau"
    diffusivity_factor: float = 1.0
    note: str = ""

    def __post_init__(self) -> None:
        problems = Problems()
        thickness = read_values(self.thickness_m, THICKNESS, name="thickness_m", problems=problems)
        gravity = read_values(self.specific_gravity, GRAVITY, name="specific_gravity", problems=problems)
        factor = read_values(self.diffusivity_factor, FACTOR, name="diffusivity_factor", problems=problems)
        for name in ("first_finish", "second_finish"):
            self._settle_finish(name, problems)
        if isinstance(self.form, str) and self.form not in FORMS:
            problems.add(f"form is {self.form!r}; choose one of {', '.join(FORMS)}.")
        problems.raise_if_any()
        object.__setattr__(self, "thickness_m", float(thickness))
        object.__setattr__(self, "specific_gravity", float(gravity))
        object.__setattr__(self, "diffusivity_factor", float(factor))

    def _settle_finish(self, name: str, problems: Problems) -> None:
        finish = getattr(self, name)
        if isinstance(finish, Finish):
            return
        try:
            object.__setattr__(self, name, find_finish(finish))
        except InputError as error:
            problems.absorb(error, f"{name}: ")

    @classmethod
    def of(cls, species: Any, thickness_m: Any, **more: Any) -> Stock:
        """Stock of a species of the catalogue; its specific gravity at 12 % moisture, or an estimate that is said."""
        wood = find_species(species) if isinstance(species, str) else species
        gravity = wood.value_or_estimate("specific_gravity_12")
        note = f"{wood.name}: specific gravity {gravity.number:g} ({gravity.status}, {gravity.source})"
        return cls(thickness_m, gravity.number, note=note, **more)

    @property
    def factors(self) -> Likely:
        """Slow, mid and fast as multiples of the form's coefficient."""
        return Likely(*(self.diffusivity_factor * factor for factor in rate("diffusivity_factor")))

    @property
    def form_says(self) -> str:
        """The diffusion coefficient in words."""
        says = (FORMS[self.form] if isinstance(self.form, str) else self.form).says
        return says if self.diffusivity_factor == 1.0 else f"{says}, times {self.diffusivity_factor:g}"

    def diffusivity_m2_s(self, mc_percent: float, temperature_c: float) -> Likely:
        """Diffusion coefficient at one state: slow, mid, fast, m2/s.

        >>> f"{Stock(0.019, 0.60).diffusivity_m2_s(10.0, 20.0).mid:.2e}"
        '2.59e-11'
        """
        form = FORMS[self.form] if isinstance(self.form, str) else self.form
        mid = float(form.function(mc_percent, temperature_c, self.specific_gravity))
        return Likely(*(factor * mid for factor in self.factors))

    def slow_days(self, mc_percent: float, temperature_c: float) -> float:
        """Days in which the slow case loses most of a difference from the air, l^2/D + l/S: how long to run."""
        half_m, slow = self.thickness_m / 2.0, self.diffusivity_m2_s(mc_percent, temperature_c).low
        surface = self.surface_m_s(temperature_c, mc_percent, mc_percent)[0].min()
        return float(half_m**2 / slow + half_m / max(surface, 1e-10)) / 86400.0

    def surface_m_s(self, temperature_c: float, mc_low: float, mc_high: float) -> np.ndarray:
        """Finish and air film in series, (3, 2) m/s: slow, mid and fast for the first and the second face."""
        films = [
            film_coefficient_m_s(finish, self.specific_gravity, temperature_c, mc_low, mc_high)
            for finish in (self.first_finish, self.second_finish)
        ]
        return np.column_stack([surface_coefficient_m_s(film) for film in films])
