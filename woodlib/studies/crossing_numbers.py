"""The numbers of crossing the grain as sliders need them: the plane field, the years and the chance, made smooth.

The plane field is solved once for each place of a small grid of panel widths and rim widths, the years and the chance
once for each place of a grid of humidities, and polynomials carry both in between. That keeps every number smooth (a
mesh changes its make-up in tiny jumps) and costs next to nothing per move. The tests hold these numbers against
:func:`woodlib.restraint.held.held_panel`.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache

import numpy as np
from numpy.polynomial.chebyshev import chebvander
from scipy.special import ndtri

from ..air.sorption import sorption_percent
from ..movement.wood import Wood, wood_of
from ..restraint.assumptions import assumption
from ..restraint.chance import HeldLoad, crack_chance
from ..restraint.elastic import ElasticConstants, elastic_constants
from ..restraint.field_readings import across_stress_pa, field_picture
from ..restraint.held import held_panel
from ..restraint.relaxation import relaxed_path_pa

INCH_M = 0.0254
LENGTH_M, THICKNESS_M = 44 * INCH_M, 0.875 * INCH_M
WIDTHS_M, RIMS_M = (10 * INCH_M, 30 * INCH_M), (1 * INCH_M, 5 * INCH_M)
DRIEST_RH, DAMPEST_RH = (15.0, 45.0), (50.0, 80.0)
ROOM_C = 21.0
RING_ANGLES_DEG = {"flatsawn": 0.0, "quartersawn": 90.0}

# The half of the panel that is drawn, from mid-length to the glue line: places of the cell borders, in inches, closer
# where the stress changes faster; and how many cells half the width has.
ROWS_M = np.array([0.0, 6.0, 11.0, 14.5, 17.0, 19.0, 20.5, 22.0]) * INCH_M
HALF_COLUMNS = 6
SHAPES = 4  # patterns of stress that are mixed into one picture
CHANCES = ("calibrated", "likely", "careful", "checked")

_GEOMETRY_NODES, _AIR_NODES, _MOISTURE_ORDER = (7, 6), (7, 7), 6
_MC_RANGE = (2.5, 18.0)


def _places(count: int) -> np.ndarray:
    return np.cos(np.pi * (np.arange(count) + 0.5) / count)


def _scaled(places, ends: tuple[float, float]):
    return ends[0] + (ends[1] - ends[0]) * 0.5 * (places + 1.0)


@dataclass(frozen=True)
class _Surface:
    """A polynomial in two numbers for many columns at once; coefficients of shape (first, second, columns)."""

    ends: tuple[tuple[float, float], tuple[float, float]]
    coefficients: np.ndarray

    def __call__(self, first: float, second: float) -> np.ndarray:
        parts = [
            chebvander(2.0 * (value - low) / (high - low) - 1.0, count - 1)[0]
            for value, (low, high), count in zip((first, second), self.ends, self.coefficients.shape, strict=False)
        ]
        return np.einsum("i,j,ijk->k", *parts, self.coefficients)


def _surface(ends, values: np.ndarray, drawn: int = 0) -> _Surface:
    """The polynomial through values at Chebyshev places, shape (first, second, columns); the last ``drawn`` columns are
    only looked at, and get half the orders."""
    fits = []
    for count in values.shape[:2]:
        fit = 2.0 / count * np.cos(np.outer(np.arange(count), np.pi * (np.arange(count) + 0.5) / count))
        fit[0] /= 2.0
        fits.append(fit)
    # High orders in both numbers together are left out: they carry next to nothing and would cost a page most.
    high = np.add.outer(*(np.arange(count) / (count - 1) for count in values.shape[:2]))
    coefficients = np.einsum("ia,jb,abk->ijk", *fits, values)
    coefficients[high > 1.0 + 1e-9] = 0.0
    coefficients[high > 0.55, values.shape[2] - drawn :] = 0.0
    return _Surface(ends, coefficients)


@dataclass(frozen=True)
class Geometry:
    """What width and rim decide. Stresses and displacements are per unit of strain that does not fit.

    ``restraint`` with its range; ``log_restraint`` and ``log_spread`` (weakest-link stress over peak stress) for the
    chance; ``shear``, ``opening`` at the corner over the peak tension; ``pull`` amounts of the stress :func:`patterns`;
    ``across_m``, ``along_m`` displacement of the panel's grid, shape (columns, rows); ``rim_m`` of the rim's two long
    edges, shape (2, columns, 2) as across and along.
    """

    restraint: float
    restraint_low: float
    restraint_high: float
    log_restraint: float
    log_spread: float
    shear: float
    opening: float
    pull: np.ndarray
    across_m: np.ndarray
    along_m: np.ndarray
    rim_m: np.ndarray


@dataclass(frozen=True)
class Season:
    """What the air decides: moistures in %, free strains from glue-up to the driest month, and the year's tension.

    ``swing`` is what panel and rim differ by from the dampest to the driest month, ``panel_swing`` the panel's own;
    ``relaxed`` with its range: tension per unit of stiffness; ``chance`` coefficients per kind of chance, None without
    a printed strength.
    """

    dry_mc: float
    damp_mc: float
    across: float
    along: float
    swing: float
    panel_swing: float
    relaxed: float
    relaxed_low: float
    relaxed_high: float
    chance: np.ndarray | None


@dataclass(frozen=True, eq=False)
class HeldWood:
    """One wood, cut one way, glued across its own grain."""

    species: str
    ring_angle_deg: float
    elastic: ElasticConstants
    wood: Wood
    modulus_pa: float
    strength_pa: float | None
    remarks: tuple[str, ...]
    _geometry: _Surface
    _season: _Surface

    def geometry(self, width_m: float, rim_m: float) -> Geometry:
        """The smooth numbers of one panel."""
        values = self._geometry(width_m, rim_m)
        points, rows = HALF_COLUMNS + 1, len(ROWS_M)
        parts = np.split(values[7 + SHAPES :], [points * rows, 2 * points * rows])
        return Geometry(
            *values[:7].tolist(),
            values[7 : 7 + SHAPES],
            parts[0].reshape(points, rows),
            parts[1].reshape(points, rows),
            parts[2].reshape(2, points, 2),
        )

    def season(self, driest_rh: float, dampest_rh: float) -> Season:
        """The smooth numbers of one house."""
        values = self._season(driest_rh, dampest_rh)
        dry, damp = moistures(driest_rh, dampest_rh)
        chance = values[7:].reshape(len(CHANCES), -1) if values.size > 7 else None
        return Season(dry, damp, *values[:7].tolist(), chance)


def moistures(driest_rh: float, dampest_rh: float) -> tuple[float, float]:
    """Moisture of the wood in the driest and the dampest month, %; it is glued up halfway between."""
    return tuple(float(curve(rh)) for curve, rh in zip(_moisture_curves(), (driest_rh, dampest_rh), strict=True))


@cache
def _moisture_curves() -> tuple[np.polynomial.Chebyshev, np.polynomial.Chebyshev]:
    """The sorption curve over the two spans as short polynomials, within 0.001 % MC: they cost a page little."""

    def curve(ends: tuple[float, float]) -> np.polynomial.Chebyshev:
        humidity = _scaled(_places(_MOISTURE_ORDER + 1), ends)
        return np.polynomial.Chebyshev.fit(humidity, sorption_percent(ROOM_C, humidity), _MOISTURE_ORDER, domain=ends)

    return curve(DRIEST_RH), curve(DAMPEST_RH)


@lru_cache(maxsize=32)
def held_wood(species: str, rings: str) -> HeldWood:
    """All that is worked out once for a wood: a few tenths of a second."""
    angle = RING_ANGLES_DEG[rings]
    elastic, wood = elastic_constants(species), wood_of(species)
    strength = elastic.tension_perpendicular.number if elastic.tension_perpendicular else None
    numbers, stress, moved = _panels(species, angle)
    pulls = np.linalg.lstsq(patterns().reshape(SHAPES, -1).T, stress.reshape(-1, stress.shape[2]).T, rcond=None)[0].T
    together = [numbers, pulls.reshape(*stress.shape[:2], SHAPES), moved]
    modulus = elastic.panel(np.radians(angle)).modulus_x_pa
    season = _season_surface(wood, np.radians(angle), modulus, strength, numbers)
    remarks = (*elastic.remarks(np.radians(angle)), *wood.remarks)
    return HeldWood(
        species,
        angle,
        elastic,
        wood,
        modulus,
        strength,
        remarks,
        _surface((WIDTHS_M, RIMS_M), np.concatenate(together, axis=2), moved.shape[2]),
        season,
    )


@cache
def patterns() -> np.ndarray:
    """Patterns of stress that every wood's is mixed from, shape (SHAPES, half columns, rows): those of white oak.

    The same for all woods, so that a page needs them once. Woods differ in how deep the stress reaches, and so do
    widths.
    """
    _, stress, _ = _panels("white oak", 0.0)
    found = np.linalg.svd(stress.reshape(-1, stress.shape[2]), full_matrices=False)[2][:SHAPES]
    return np.round(found, 4).reshape(SHAPES, HALF_COLUMNS, -1)


@lru_cache(maxsize=32)
def _panels(species: str, ring_angle_deg: float) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Numbers, cell stresses and displacements at the grid of widths and rims, each of shape (widths, rims, ...)."""
    widths, rims = (
        _scaled(_places(count), ends) for count, ends in zip(_GEOMETRY_NODES, (WIDTHS_M, RIMS_M), strict=True)
    )
    found = [[_panel(species, ring_angle_deg, width, rim) for rim in rims] for width in widths]
    return tuple(np.array([[panel[part] for panel in row] for row in found]) for part in range(3))


def _panel(species: str, ring_angle_deg: float, width_m: float, rim_m: float):
    """Numbers, stress at the middle of each cell over the modulus, and displacements of one panel, per unit strain."""
    held = held_panel(
        species,
        width_m=float(width_m),
        length_m=LENGTH_M,
        thickness_m=THICKNESS_M,
        strip_width_m=float(rim_m),
        ring_angle_deg=ring_angle_deg,
        strip_ring_angle_deg=ring_angle_deg,
        glue_up_mc_percent=9.0,
        year_mc_percent=(12.0, 6.0),
    )
    peak, modulus = held.season.relaxed_pa, held.plane_field.plane.panel.modulus_x_pa
    numbers = (
        held.restraint.number,
        held.restraint.low,
        held.restraint.high,
        np.log(held.restraint.number),
        np.log(held.effective_stress_pa / peak),
        held.edge.shear_pa / peak,
        held.edge.opening_pa / peak,
    )
    columns = (np.arange(HALF_COLUMNS) + 0.5) / HALF_COLUMNS * width_m / 2
    stress = across_stress_pa(held.plane_field, columns, (ROWS_M[1:] + ROWS_M[:-1]) / 2) / modulus
    fine = 2 * round(ROWS_M[-1] / INCH_M) + 1
    drawn = field_picture(held.plane_field, -1.0, columns=HALF_COLUMNS + 1, rows=fine, strip_rows=2)
    rows = np.rint(2 * ROWS_M / INCH_M).astype(int)
    rim = np.stack([np.stack([drawn.strip_across_m[:, k], drawn.strip_along_m[:, k]], -1) for k in (0, 1)])
    moved = [drawn.panel_across_m[:, rows].ravel(), drawn.panel_along_m[:, rows].ravel(), rim.ravel()]
    return numbers, stress.ravel(), np.concatenate(moved)


@cache
def _log_size(wood: Wood, ring_angle_rad: float) -> tuple[np.polynomial.Chebyshev, np.polynomial.Chebyshev]:
    """Logarithm of the size across and along against moisture, as smooth curves: the movement law has seams."""
    moisture = _scaled(_places(60), _MC_RANGE)
    along, radial, tangential = wood.axis_strains(10.0, moisture)
    across = tangential * np.cos(ring_angle_rad) ** 2 + radial * np.sin(ring_angle_rad) ** 2
    return tuple(
        np.polynomial.Chebyshev.fit(moisture, np.log1p(strain), 7, domain=_MC_RANGE) for strain in (across, along)
    )


def _season_surface(
    wood: Wood, ring_angle_rad: float, modulus: float, strength: float | None, numbers: np.ndarray
) -> _Surface:
    spans = (_scaled(_places(count), ends) for count, ends in zip(_AIR_NODES, (DRIEST_RH, DAMPEST_RH), strict=True))
    driest, dampest = spans
    sizes = _log_size(wood, ring_angle_rad)
    values = np.array([[_year(sizes, dry, damp, modulus, strength, numbers) for damp in dampest] for dry in driest])
    return _surface((DRIEST_RH, DAMPEST_RH), values)


def _year(sizes, driest_rh: float, dampest_rh: float, modulus: float, strength: float | None, numbers: np.ndarray):
    """Free strains, tension per unit of stiffness with its range, and how the chance hangs on the panel."""
    dry, damp = moistures(driest_rh, dampest_rh)
    path = np.array([(dry + damp) / 2, damp, dry])  # the first year: later peaks are never higher when glued halfway
    across, along = (np.expm1(size(path) - size(path[0])) for size in sizes)
    misfit = across - along
    rate, share = assumption("relaxation_rate"), assumption("delayed_share")
    rates, shares = (np.array([entry.middle, entry.high, entry.low]) for entry in (rate, share))
    relaxed = relaxed_path_pa(path, misfit, 1.0, rates, shares)[-1]
    found = [across[2], along[2], misfit[1] - misfit[2], across[1] - across[2], *relaxed]
    if strength is not None:
        found += _chance_rows(path, misfit, modulus, strength, numbers).ravel().tolist()
    return found


def terms(log_restraint, log_spread) -> list:
    """What the chance is a sum of, besides a constant; numbers or decided numbers."""
    return [log_restraint, log_spread]


def _chance_rows(path, misfit, modulus: float, strength: float, numbers: np.ndarray) -> np.ndarray:
    """Coefficients of constant and ``terms`` for the normal score of each chance, shape (chances, 3)."""
    samples = numbers[::3, ::3].reshape(-1, numbers.shape[2])
    scores = []
    for restraint, spread in zip(samples[:, 0], samples[:, 4], strict=True):
        chance = crack_chance(HeldLoad(path, misfit, modulus * restraint, float(np.exp(spread))), strength)
        scores.append([*ndtri(chance.sound), ndtri(chance.checked.likely)])
    design = np.column_stack([np.ones(len(samples)), *terms(samples[:, 3], samples[:, 4])])
    return np.linalg.lstsq(design, np.array(scores), rcond=None)[0].T
