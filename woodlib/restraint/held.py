"""One door to held movement: a solid panel with a cross-grain member glued to its end, through the years."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

import numpy as np

from ..movement.wood import Wood, wood_of
from ..species import Species
from .assumptions import Assumption, all_assumptions, assumption
from .chance import CrackChance, HeldLoad, crack_chance
from .closed_forms import OneLineRestraint, one_line_restraint, restraint_factor
from .elastic import ElasticConstants, elastic_constants
from .field import HeldPlane, PlaneField, solve_plane
from .field_readings import (
    EdgeAverage,
    FieldPicture,
    edge_average,
    effective_stress_pa,
    field_picture,
    restraint_factor_of,
)
from .fracture import split_cost_j_m2
from .held_inputs import HeldInputs, check_held
from .measures import chance_sentence
from .relaxation import SeasonStress, season_stress, several_years

_YEARS = 8  # the peak settles by the second year, by the fifth when relaxation is slow


@dataclass(frozen=True)
class Ranged:
    """A number with its range."""

    number: float
    low: float
    high: float


@dataclass(frozen=True)
class HeldPanel:
    """What happens to a held panel: smooth numbers, their ranges, what they rest on, and the words to say.

    ``restraint`` share of the free movement that is held back (plane field); ``season`` the tension through the years;
    ``held_back_strain`` strain that the wood gathers in tension, with its range; ``effective_stress_pa`` the
    relaxed weakest-link stress; ``edge`` mean stress at the end of the glue line over the board's thickness, relaxed;
    ``edge_per_strain`` the same per strain that still stands.
    """

    inputs: HeldInputs
    restraint: Ranged
    one_line: OneLineRestraint
    season: SeasonStress
    held_back_strain: float
    held_back_low: float
    held_back_high: float
    effective_stress_pa: float
    edge: EdgeAverage
    edge_per_strain: EdgeAverage
    strength_pa: float
    shear_strength_pa: float
    chance: CrackChance
    free_movement_m: float
    remarks: tuple[str, ...]
    provenance: tuple[tuple[str, str, str, str, str], ...] = field(repr=False)
    assumptions: tuple[Assumption, ...] = field(repr=False)
    plane_field: PlaneField = field(repr=False)
    woods: tuple[Wood, Wood] = field(repr=False)

    @property
    def chance_sentence(self) -> str:
        """The chance of a crack in words."""
        return f"Chance of a crack in the first years: {chance_sentence(self.chance)}."

    def chances(self, glue_up_mc_percent, year_mc_percent) -> CrackChance:
        """Chance of a crack of the same panel for many glue-ups and years at once; takes no checks of its own.

        ``glue_up_mc_percent`` (cases,), ``year_mc_percent`` (moments of a year, cases), both % MC.
        """
        years = np.tile(np.asarray(year_mc_percent, float), (self.inputs.years, 1))
        glue_up = np.broadcast_to(glue_up_mc_percent, years.shape[1:])
        path = np.concatenate([glue_up[None], years])
        factor, size_effect = _solved(self.plane_field.plane, self.inputs.thickness_m)[1:3]
        stiffness = self.plane_field.plane.panel.modulus_x_pa * factor
        misfit = _misfit(self.inputs.ring_angle_rad, self.woods, glue_up, path)
        panel = self.plane_field.plane.panel
        cost = split_cost_j_m2(panel)
        load = HeldLoad(path, misfit, stiffness, size_effect, panel.modulus_x_pa, self.inputs.width_m, cost)
        return crack_chance(load, self.strength_pa, _properties(self.inputs.species)[0].strength_variation)

    def picture(self, mc_percent: float | None = None, stress_pa: float | None = None, **size: int) -> FieldPicture:
        """The field for drawing, at a moisture (default: the driest) with its tension at the middle of the glue line.

        ``stress_pa`` defaults to the relaxed peak; ``columns``, ``rows`` and ``strip_rows`` set the grid.
        """
        moisture = float(self.season.mc_percent.min()) if mc_percent is None else mc_percent
        peak = self.season.relaxed_pa if stress_pa is None else stress_pa
        panel, strip, along, across = _four_strains(self.inputs, self.woods, moisture)
        misfit = panel - strip
        elastic = -misfit * self.restraint.number * self.plane_field.plane.panel.modulus_x_pa
        scale = peak / elastic if abs(elastic) > 1.0 else 1.0
        return field_picture(self.plane_field, misfit, strip, along, across, scale, **size)


@lru_cache(maxsize=512)
def _solved(plane: HeldPlane, thickness_m: float) -> tuple[PlaneField, float, float, EdgeAverage]:
    """Field, restraint factor, weakest-link stress over peak stress, and mean stress at the end of the glue."""
    solved = solve_plane(plane)
    factor = restraint_factor_of(solved)
    volume, exponent = assumption("reference_volume").middle, assumption("size_exponent").middle
    effective = effective_stress_pa(solved, thickness_m, volume, exponent)
    edge = edge_average(solved, min(thickness_m, 0.25 * plane.glued_or_width_m))
    return solved, factor, effective / (factor * plane.panel.modulus_x_pa), edge


@lru_cache(maxsize=256)
def _properties(species: Species) -> tuple[ElasticConstants, Wood]:
    return elastic_constants(species), wood_of(species)


def _across(wood: Wood, ring_angle_rad: float, mc_from, mc_to):
    """Free strain across the width and along the grain."""
    along, radial, tangential = wood.axis_strains(mc_from, mc_to)
    return tangential * np.cos(ring_angle_rad) ** 2 + radial * np.sin(ring_angle_rad) ** 2, along


def _misfit(ring_angle_rad: float, woods: tuple[Wood, Wood], glue_up, path):
    """Free strain of the panel across its grain less that of the strip along its own, since glue-up."""
    return _across(woods[0], ring_angle_rad, glue_up, path)[0] - woods[1].axis_strains(glue_up, path)[0]


def _four_strains(inputs: HeldInputs, woods: tuple[Wood, Wood], moisture: float) -> tuple[float, float, float, float]:
    panel, panel_along = _across(woods[0], inputs.ring_angle_rad, inputs.glue_up_mc_percent, moisture)
    strip_across, strip = _across(woods[1], inputs.strip_ring_angle_rad, inputs.glue_up_mc_percent, moisture)
    return float(panel), float(strip), float(panel_along), float(strip_across)


def held_panel(
    species: Species | str,
    *,
    width_m: float,
    length_m: float,
    thickness_m: float,
    strip_width_m: float,
    glue_up_mc_percent: float,
    year_mc_percent: Sequence[float],
    strip_thickness_m: float | None = None,
    strip_species: Species | str | None = None,
    ring_angle_deg: float = 0.0,
    strip_ring_angle_deg: float = 0.0,
    ends: int = 2,
    glued_width_m: float | None = None,
    glue_thickness_m: float = 0.0,
    glue_shear_pa: float | None = None,
    years: int = _YEARS,
) -> HeldPanel:
    """What happens to a solid panel whose end (or ends) carries a cross-grain strip glued to it.

    Parameters
    ----------
    species, strip_species : Species or str
        Wood of the panel and of the strip (the same when not given).
    width_m, length_m, thickness_m : float
        Panel: across its grain, along it, and thick; metres or text such as "18 in".
    strip_width_m, strip_thickness_m : float
        Strip: its width along the panel's grain, and thickness (the panel's when not given).
    glue_up_mc_percent : float
        Moisture content of the wood on the day it is glued.
    year_mc_percent : sequence of float
        Moisture contents of the wood through a year, in order: two (dampest, driest), twelve months, or more.
    ring_angle_deg, strip_ring_angle_deg : float
        0 flatsawn, 90 quartersawn.
    ends : 1 or 2
        How many ends carry a strip.
    glued_width_m : float, optional
        Glued middle part of the joint; the whole width when not given.
    glue_thickness_m, glue_shear_pa : float
        A glue layer that gives: its thickness and shear modulus.
    years : int
        How many years are run, 2 or more; the whole year is always run.

    Returns
    -------
    HeldPanel
        Numbers with ranges, remarks, provenance, and the field for drawing.

    Raises
    ------
    InputError
        A sentence for each bad input.
    MissingDataError
        When the species has no stiffness or no shrinkage at all.

    Examples
    --------
    >>> held = held_panel("white ash", width_m=0.457, length_m=0.457, thickness_m=0.022, strip_width_m=0.038,
    ...                   glue_up_mc_percent=9.5, year_mc_percent=[12, 7])
    >>> round(held.restraint.number, 2), round(held.season.relaxed_pa / 1e6, 1)
    (0.74, 2.7)

    Notes
    -----
    Uniform moisture, straight grain, stiff or softened glue, no buckling and no contact where the joint is not glued.
    Use the wood's own yearly swing, slowed by its finish, not the air's.
    """
    inputs = check_held(
        species=species,
        width_m=width_m,
        length_m=length_m,
        thickness_m=thickness_m,
        strip_width_m=strip_width_m,
        glue_up_mc_percent=glue_up_mc_percent,
        year_mc_percent=year_mc_percent,
        strip_thickness_m=strip_thickness_m,
        strip_species=strip_species,
        ring_angle_deg=ring_angle_deg,
        strip_ring_angle_deg=strip_ring_angle_deg,
        ends=ends,
        glued_width_m=glued_width_m,
        glue_thickness_m=glue_thickness_m,
        glue_shear_pa=glue_shear_pa,
        years=years,
    )
    (elastic, wood), (strip_elastic, strip_wood) = _properties(inputs.species), _properties(inputs.strip_species)
    plane = _plane_of(inputs, elastic, strip_elastic)
    solved, factor, size_effect, edge = _solved(plane, inputs.thickness_m)
    modulus = plane.panel.modulus_x_pa
    path = several_years(inputs.glue_up_mc_percent, inputs.year_mc_percent, inputs.years)
    panel_strain, _ = _across(wood, inputs.ring_angle_rad, inputs.glue_up_mc_percent, path)
    misfit = _misfit(inputs.ring_angle_rad, (wood, strip_wood), inputs.glue_up_mc_percent, path)
    season = season_stress(path, misfit, modulus * factor)
    strength = elastic.strength_across_pa(inputs.ring_angle_rad)
    load = HeldLoad(path, misfit, modulus * factor, size_effect, modulus, inputs.width_m, split_cost_j_m2(plane.panel))
    unit = season.relaxed_pa / (modulus * factor)
    return HeldPanel(
        inputs,
        _restraint_range(_without_moisture(inputs), factor),
        one_line_restraint(
            plane.glued_or_width_m, plane.depth_m, plane.strip_m, plane.panel, plane.strip, plane.thickness_ratio
        ),
        season,
        factor * season.gathered,
        factor * season.gathered_range[0],
        factor * season.gathered_range[1],
        size_effect * season.relaxed_pa,
        EdgeAverage(edge.shear_pa * unit, edge.opening_pa * unit, edge.length_m),
        edge,
        strength,
        elastic.shear_parallel.number,
        crack_chance(load, strength, elastic.strength_variation),
        float(panel_strain.max() - panel_strain.min()) * inputs.width_m,
        _remarks(inputs, elastic, strip_elastic, wood, season),
        _provenance(inputs, elastic, strip_elastic),
        tuple(all_assumptions().values()),
        solved,
        (wood, strip_wood),
    )


def _plane_of(inputs: HeldInputs, panel: ElasticConstants, strip: ElasticConstants) -> HeldPlane:
    """The plane problem of these inputs."""
    give = inputs.glue_thickness_m / inputs.glue_shear_pa if inputs.glue_shear_pa else 0.0
    return HeldPlane(
        inputs.width_m,
        inputs.length_m,
        inputs.strip_width_m,
        panel.panel(inputs.ring_angle_rad),
        strip.strip(inputs.strip_ring_angle_rad),
        inputs.strip_thickness_m / inputs.thickness_m,
        inputs.ends,
        inputs.glued_width_m,
        give,
        0.0,
    )


def _without_moisture(inputs: HeldInputs) -> HeldInputs:
    return replace(inputs, glue_up_mc_percent=0.0, year_mc_percent=())


@lru_cache(maxsize=512)
def _restraint_range(inputs: HeldInputs, factor: float) -> Ranged:
    """Range of the restraint factor when estimated constants lie one spread off, by the one-line formula."""
    panel, strip = _properties(inputs.species)[0], _properties(inputs.strip_species)[0]
    if not panel.estimated(inputs.ring_angle_rad) and not strip.estimated(inputs.strip_ring_angle_rad):
        return Ranged(factor, factor, factor)
    steps = (-1.0, 0.0, 1.0)
    panels = [panel.varied(step).panel(inputs.ring_angle_rad) for step in steps]
    strips = [strip.varied(step).strip(inputs.strip_ring_angle_rad) for step in steps]
    plane = _plane_of(inputs, panel, strip)

    def one_line(wood, holder) -> float:
        return restraint_factor(
            plane.glued_or_width_m,
            plane.depth_m,
            plane.strip_m,
            wood.modulus_x_pa,
            wood.shear_pa,
            holder.modulus_x_pa,
            holder.shear_pa,
            plane.thickness_ratio,
        )

    ratios = [float(one_line(wood, holder) / one_line(panels[1], strips[1])) for wood in panels for holder in strips]
    return Ranged(factor, factor * min(ratios), min(1.0, factor * max(ratios)))


def _remarks(inputs, elastic, strip_elastic, wood, season) -> tuple[str, ...]:
    sentences = [*elastic.remarks(inputs.ring_angle_rad), *wood.remarks, *season.remarks]
    if inputs.strip_species is not inputs.species:
        sentences += strip_elastic.estimate_remarks(inputs.strip_ring_angle_rad)
    ratio = inputs.strip_thickness_m / inputs.thickness_m
    if not 0.4 <= ratio <= 1.6:
        sentences.append(
            f"The strip is {ratio:.2g} times as thick as the panel; the field was proved for 0.4 to 1.6 times."
        )
    if inputs.glued_width_m is not None and inputs.glued_width_m < inputs.width_m:
        sentences.append("Where the joint is not glued, panel and strip are taken to slide freely past each other.")
        if inputs.glued_width_m < 0.25 * inputs.width_m:
            sentences.append(
                "Less than a quarter of the width is glued; the restraint factor is then good to 2 %, not 1 %."
            )
    dry, damp = season.mc_percent.min(), season.mc_percent.max()
    if dry < 6.0 or damp > 14.0:
        sentences.append("Outside 6 to 14 % moisture the total-shrinkage form is used and the relaxation is less sure.")
    sentences.append(
        "Average clear wood: uneven moisture in the first weeks, knots, poor glue joints and thin panels "
        "that buckle are "
        "not in these numbers."
    )
    return tuple(dict.fromkeys(sentences))


def _provenance(inputs: HeldInputs, panel: ElasticConstants, strip: ElasticConstants):
    rows = [("panel", *row) for row in panel.provenance()]
    for name in ("radial", "tangential"):
        value = inputs.species.get(f"{name}_coefficient_per_percent") or inputs.species.get(f"{name}_shrinkage_percent")
        if value is not None:
            rows.append(("panel", f"{name} movement", value.status, value.source, value.note))
    if inputs.strip_species is not inputs.species:
        rows += [("strip", *row) for row in strip.provenance()]
    return tuple(rows)
