"""Every assumed number, stated a second time with the reason: whoever changes one has to say why here, too."""

import numpy as np
import pytest
from scipy.stats import norm

from woodlib.air.seasons import year_from_seasons
from woodlib.moisture import diffusivity
from woodlib.movement import board, coefficients, measured_piece, spread, wood
from woodlib.restraint import elastic, fasteners
from woodlib.restraint.assumptions import all_assumptions
from woodlib.restraint.fasteners import slot_plan
from woodlib.species import find_species

STATED = {
    "yield_strain": ((0.004, 0.004, 0.004), "printed limit of elastic strain across the grain"),
    "failure_strain": ((0.009, 0.009, 0.009), "printed strain from which wood starts to fail"),
    "compression_set_strain": ((0.005, 0.0075, 0.010), "printed as 0.5 to 1 %, middle halfway"),
    "relaxation_rate": (
        (0.25, 1.5 / 10**0.5, 0.9),
        "creep cycles in abstracts; middle near the geometric mean of the ends",
    ),
    "delayed_share": ((0.2, 0.4, 0.6), "assumed, spread evenly about the middle"),
    "strength_variation": ((0.25, 0.25, 0.25), "handbook's table of variation, from memory"),
    "demand_variation": ((0.22, 0.22, 0.22), "close to the handbook's variation of stiffness alone"),
    "calibrated_strength_factor": ((0.8, 1.0, 1.2), "set by two rigidly held oak panels, spread evenly"),
    "duration_factor": ((0.6, 0.725, 0.85), "assumed, spread evenly"),
    "size_exponent": ((5, 5, 5), "1/5 = 0.2, the exponent that the standards print"),
    "reference_volume": ((25e-3 * 51e-3 * 25e-3,) * 3, "handbook specimen of 25 by 51 by 25 mm"),
    "check_depth": ((0.006, 0.006, 0.006), "assumed depth of an end check, about 1/4 in"),
    "check_depth_spread": ((0.6, 0.6, 0.6), "assumed: one check in six is 1.8 times as deep"),
    "toughness": ((0.40e6, 0.475e6, 0.55e6), "oak, maple and poplar of the handbook lie inside, from memory"),
    "edge_crack_factor": ((0.55, 0.6, 0.64), "plane field of three panels with checks"),
    "creep_most": ((5, 10, 10), "abstract: 5 times the elastic strain after one cycle, 10 after several"),
    "split_energy_share": ((0.068, 0.072, 0.073), "plane field of split panels of three widths"),
    "shear_across_share": ((0.25, 1 / 3, 0.4), "report of 1945: about a third for woods that cross"),
    "glue_share": ((0.75, 0.85, 1), "assumed: from opening at the ends to expected to open"),
    "border_strain": ((0.004, 0.006, 0.008), "strength over stiffness along the grain, from memory"),
    "estimated_strength_variation": ((0.35, 0.35, 0.35), "0.25 with the scatter of woods about a density rule"),
}


@pytest.mark.parametrize("key", STATED)
def test_an_assumption_is_what_it_is_said_to_be(key):
    found, (numbers, why) = all_assumptions()[key], STATED[key]
    assert (found.low, found.middle, found.high) == pytest.approx(numbers, rel=1e-9), why


def test_every_assumption_is_stated():
    assert set(STATED) == set(all_assumptions())


def test_a_slot_holds_the_screw_both_travels_and_the_allowance():
    # 0.20 m from the tight one: 0.8 mm out, 1.6 mm in; 4 + 0.8 + 1.6 + 1.5 = 7.9 mm, its middle 0.4 mm towards the tight one.
    slot = slot_plan([0.05, 0.25], 0.004, -0.008, 0.004, fixed=0.05).slots[0]
    assert (slot.outward_m, slot.inward_m, slot.length_m) == pytest.approx((0.0008, 0.0016, 0.0079), rel=1e-12)
    assert slot.middle_offset_m == pytest.approx(-0.0004, rel=1e-12)


def test_seasons_are_joined_by_half_a_cosine():
    # January 31 days, July begins at day 181: the way between is 150 days, a quarter of it 37.5 days: (1 - cos 45 deg) / 2.
    year = year_from_seasons({"winter": (20, 20), "summer": (20, 60)})
    for day, share in ((31 + 37.5, 0.25), (31 + 75 + 0.5, 0.5 + 0.5 / 150), (31 + 112.5, 0.75)):
        expected = 20 + 40 * (1 - np.cos(np.pi * share)) / 2
        assert np.interp(day, year.day, year.rh_percent) == pytest.approx(expected, abs=0.01)


def test_vapour_diffuses_in_warmer_air_by_the_power_it_is_published_with():
    # D of vapour in air: 2.2e-5 m2/s at 0 degC, times (T/273.15)^1.75. What else changes with temperature is divided out.
    ratio = diffusivity._lumen_m2_s(10.0, 60.0) / diffusivity._lumen_m2_s(10.0, 0.0)
    pressure = diffusivity.saturation_pressure_pa.kernel(60.0) / diffusivity.saturation_pressure_pa.kernel(0.0)
    slope = diffusivity.rh_per_moisture(10.0, 60.0) / diffusivity.rh_per_moisture(10.0, 0.0)
    assert ratio / pressure / slope == pytest.approx((333.15 / 273.15) ** 0.75, rel=1e-9)


@pytest.mark.parametrize(
    ("found", "stated", "why"),
    [
        (
            spread.NINETY_PERCENT_HALF_WIDTH,
            norm.ppf(0.95),
            "a twentieth of a normal number lies beyond it on each side",
        ),
        (wood.LONGITUDINAL_SHRINKAGE, 0.0015, "middle of 0.1 to 0.2 %"),
        (wood.DISAGREEMENT, 0.10, "a tenth is more than the rounding of two printed figures"),
        (coefficients.FIBRE_SATURATION_PERCENT, 30.0, "the handbook's working value"),
        ((coefficients.LINEAR_FROM_PERCENT, coefficients.LINEAR_TO_PERCENT), (6.0, 14.0), "the range of equation 13-2"),
        (elastic._MOE_TO_LENGTHWISE, 1.10, "the handbook adds 10 % to a modulus from bending"),
        (fasteners.FITTING_ALLOWANCE_M, 0.0015, "1 to 2 mm, common practice"),
        (measured_piece.WITHIN_BOARD, 0.05, "judgement: one board is more alike than its species, 0.15"),
        (measured_piece.RULER_M, 0.0002, "good calipers"),
        (board.STEEPEST_GRAIN_DEG, 45.0, "steeper, along and across change places"),
    ],
)
def test_a_number_in_the_code_is_what_it_is_said_to_be(found, stated, why):
    assert found == pytest.approx(stated, rel=1e-12), why


def test_a_stiffness_along_the_grain_is_a_tenth_above_that_of_bending():
    ash = find_species("white ash")
    bending = ash.require("modulus_of_elasticity_pa").number
    assert elastic.elastic_constants(ash).number("modulus_lengthwise_pa") == pytest.approx(1.1 * bending, rel=1e-12)
