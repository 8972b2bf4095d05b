"""The range in closed form, held against random draws through the movement law."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import ndtri
from scipy.stats.qmc import Sobol

from woodlib.movement.board import Board
from woodlib.movement.spread import (
    NINETY_PERCENT_HALF_WIDTH,
    NO_DOUBTS,
    Doubts,
    Movement,
    strain_range,
    width_movement,
)
from woodlib.movement.wood import Wood, width_strain
from woodlib.words.decided import larger
from woodlib.words.many import Many

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
moistures = st.floats(2, 20)


SPECIES, RINGS, START, END = Sobol(4, seed=3).random_base2(15).T
"""Evenly spread draws: their quantiles are surer than those of 200,000 plain ones, at a sixth of the work."""


def drawn(wood, ring, start, end, doubts=None):
    """The 5 and 95 % quantiles of draws of every doubt, through the movement law itself."""
    doubts = doubts or Doubts()
    factor = 1.0 + doubts.species_share * ndtri(SPECIES)
    rings = ring + np.radians(doubts.ring_angle_deg) * (2 * RINGS - 1)
    moistures = (
        np.maximum(moisture + percent / NINETY_PERCENT_HALF_WIDTH * ndtri(draws), 0.0)
        for moisture, percent, draws in ((start, doubts.meter_percent, START), (end, doubts.air_percent, END))
    )
    return np.quantile(width_strain(wood, rings, 0.0, *moistures, factor), (0.05, 0.95))


def random_woods(count, seed=1):
    """Woods, cuts and moistures all over the place."""
    noise = np.random.default_rng(seed)
    for _ in range(count):
        radial = noise.uniform(0.0008, 0.0025)
        tangential = radial * noise.uniform(1.1, 2.3)
        shrinkages = (30 * c * noise.uniform(0.9, 1.1) for c in (radial, tangential))
        wood = Wood("any", radial, tangential, *shrinkages)
        yield wood, np.radians(noise.uniform(0, 90)), noise.uniform(4, 20), noise.uniform(3, 16)


def test_the_closed_form_holds_against_random_draws():
    # Share of the half range by which an end is off. A quantile of the draws is itself uncertain by less than 0.5 %.
    off = []
    for wood, ring, start, end in random_woods(120):
        low, high = drawn(wood, ring, start, end)
        found = strain_range(wood, ring, 0.0, start, end)
        off.append(max(abs(found[0] - low), abs(found[2] - high)) / (0.5 * (high - low)))
    assert np.quantile(off, 0.9) < 0.025 and max(off) < 0.065


def test_sliders_get_the_same_range_as_plain_numbers():
    numbers = strain_range(ASH, 0.3, 0.0, 8.0, 5.2)
    decided = strain_range(ASH, 0.3, 0.0, 8.0, larger(5.2, 0.0))
    many = strain_range(ASH, 0.3, 0.0, 8.0, Many(np.array([5.2, 11.0])))
    assert [float(x) for x in decided] == pytest.approx([float(x) for x in numbers], rel=1e-12)
    assert [float(x.values[0]) for x in many] == pytest.approx([float(x) for x in numbers], rel=1e-12)


def test_species_scatter_alone_gives_the_normal_quantiles():
    # Only the 15 % scatter: 5 and 95 % lie at mid * (1 -+ 1.645 * 0.15) = mid * (0.753, 1.247). 4 points, 0.00274.
    low, mid, high = strain_range(ASH, 0.0, 0.0, 8, 12, Doubts(0.15, 0, 0, 0))
    assert mid == pytest.approx(0.01096, abs=1e-12)
    assert (low, high) == pytest.approx((0.75326 * 0.01096, 1.24674 * 0.01096), rel=2e-3)


def test_species_and_meter_multiply():
    # The product of two normal numbers leans up: four million random draws give a 95 % quantile of 0.01503.
    assert strain_range(ASH, 0.0, 0.0, 8, 12, Doubts(0.15, 0, 1, 0))[2] == pytest.approx(0.01503, rel=0.005)


def test_a_flatsawn_board_can_only_move_less_when_its_rings_tilt():
    low, mid, high = strain_range(ASH, 0.0, 0.0, 8, 12, Doubts(0.0, 20, 0, 0))
    # The expansion overshoots by half a percent, where the law has an end: no board moves more than flatsawn.
    assert high == pytest.approx(mid, rel=6e-3) and low < 0.97 * mid


@given(moistures, moistures, st.floats(0, np.pi / 2))
def test_no_doubt_no_range(start, end, ring):
    low, mid, high = strain_range(ASH, ring, 0.0, start, end, NO_DOUBTS)
    assert low == mid == high


@given(moistures, moistures, st.floats(0, 90))
def test_more_doubt_never_narrows_the_range(start, end, ring):
    angle = np.radians(ring)
    narrow = strain_range(ASH, angle, 0.0, start, end, Doubts(0.10, 0, 0.5, 0.5))
    wide = strain_range(ASH, angle, 0.0, start, end, Doubts(0.20, 0, 1.0, 1.0))
    assert wide[2] - wide[0] >= narrow[2] - narrow[0] - 1e-12


@given(moistures, moistures, st.floats(0.05, 1.0), st.floats(0, 90))
def test_movement_is_ordered_finite_and_scales_with_width(start, end, width, ring):
    one = width_movement(Board(ASH, width, 0.02, 1.0, ring), start, end)
    two = width_movement(Board(ASH, 2 * width, 0.02, 1.0, ring), start, end)
    assert one.low_m <= one.mid_m <= one.high_m and np.isfinite([one.low_m, one.high_m]).all()
    assert two.high_m == pytest.approx(2 * one.high_m, abs=1e-12)


def test_large_tables_broadcast():
    low, mid, high = strain_range(ASH, 0.0, 0.0, np.linspace(6, 9, 50)[:, None], np.linspace(4, 14, 40), Doubts())
    assert low.shape == mid.shape == high.shape == (50, 40)


def test_movement_in_words_and_as_quantities():
    movement = Movement(0.0030, 0.0048, 0.0063)
    assert movement.text() == "about 3/16 in (5 mm), could be 1/8 to 1/4 in (3 to 6.5 mm)"
    assert movement.mid.to("mm").magnitude == pytest.approx(4.8)
    assert movement.low < movement.mid < movement.high
    assert movement.times(-0.5) == Movement(-0.00315, -0.0024, -0.0015)
