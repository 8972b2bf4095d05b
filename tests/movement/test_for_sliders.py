"""Movement for sliders: the same numbers as the plain law, and margins that hold against chance drawn at large."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.movement.board import Board
from woodlib.movement.coefficients import movement_strain
from woodlib.movement.for_sliders import decided_strain, moment_margins
from woodlib.movement.spread import NINETY_PERCENT_HALF_WIDTH, Doubts
from woodlib.movement.through_year import movement_through_year
from woodlib.movement.wood import wood_of

OAK = wood_of("white oak")
DRAWS = 400_000


@given(
    st.floats(0.0005, 0.005),
    st.floats(0.01, 0.15),
    st.floats(0, 60),
    st.floats(0, 60),
    st.sampled_from([22.0, 26.0, 30.0]),
)
def test_the_decided_strain_is_the_strain(coefficient, shrinkage, start, end, saturation):
    arguments = coefficient, shrinkage, start, end, saturation
    assert float(decided_strain(*arguments)) == pytest.approx(float(movement_strain(*arguments)), rel=1e-12, abs=1e-15)


@pytest.mark.parametrize("ring_deg", [0, 20, 45, 70, 90])
@pytest.mark.parametrize("difference", [0.0, 0.5, 2.0, 5.0, 12.0])
def test_margins_hold_against_draws_from_the_same_doubts(ring_deg, difference):
    # Standard error of a 5 % quantile from this many draws: 0.35 % of the standard deviation; 2 % of the half range here.
    noise, doubts = np.random.default_rng(5), Doubts()
    ring, air = math.radians(ring_deg), math.sqrt(2) * doubts.air_percent
    tilted = ring + np.radians(doubts.ring_angle_deg) * noise.uniform(-1, 1, DRAWS)
    coefficients = OAK.tangential_coefficient * np.cos(tilted) ** 2 + OAK.radial_coefficient * np.sin(tilted) ** 2
    board = 1 + doubts.species_share * noise.standard_normal(DRAWS)
    points = difference + air / NINETY_PERCENT_HALF_WIDTH * noise.standard_normal(DRAWS)
    low, high = np.quantile(board * coefficients * points, (0.05, 0.95))
    mid = (OAK.tangential_coefficient * math.cos(ring) ** 2 + OAK.radial_coefficient * math.sin(ring) ** 2) * difference
    below, above = moment_margins(OAK, ring, difference, air)
    assert below == pytest.approx(mid - low, abs=0.02 * (high - low) / 2)
    assert above == pytest.approx(high - mid, abs=0.02 * (high - low) / 2)


@pytest.mark.parametrize("ring_deg, dry, damp", [(0, 6.5, 11.0), (30, 7.0, 13.0), (90, 4.5, 9.0), (45, 6.0, 15.0)])
def test_margins_agree_with_the_swing_of_a_year(ring_deg, dry, damp):
    # Another way to the same range: fixed samples through the joined law. Outside 6-14 % MC the law is a little steeper.
    board = Board("white oak", 0.5, 0.02, 1.0, ring_deg)
    swing = movement_through_year(board, dry, [dry] * 6 + [damp] * 6).swing
    below, above = (0.5 * float(x) for x in moment_margins(OAK, math.radians(ring_deg), damp - dry, math.sqrt(2)))
    half = 0.5 * (swing.high_m - swing.low_m)
    assert swing.mid_m - below == pytest.approx(swing.low_m, abs=0.08 * half)
    assert swing.mid_m + above == pytest.approx(swing.high_m, abs=0.08 * half)


@given(st.floats(0, math.pi / 2), st.floats(-15, 15), st.floats(0.1, 3))
def test_with_doubt_of_the_air_alone_the_margins_are_that_doubt(ring, difference, air):
    margins = moment_margins(OAK, ring, difference, air, Doubts(0.0, 0.0, 0.0, air))
    coefficient = OAK.tangential_coefficient * math.cos(ring) ** 2 + OAK.radial_coefficient * math.sin(ring) ** 2
    assert [float(margin) for margin in margins] == pytest.approx([coefficient * air] * 2, rel=1e-4)


@given(st.floats(0, math.pi / 2), st.floats(0, 15), st.floats(0.2, 3), st.floats(0.0, 0.25), st.floats(0, 20))
def test_margins_are_finite_and_hold_the_best_guess(ring, difference, air, share, tilt):
    margins = moment_margins(OAK, ring, difference, air, Doubts(share, tilt, 1.0, 1.0))
    assert all(math.isfinite(margin) and margin > 0 for margin in map(float, margins))


@given(st.floats(0.05, 1.5), st.floats(0.5, 12), st.floats(0.3, 2.5), st.floats(0.02, 0.2))
def test_more_doubt_makes_a_wider_range(ring, difference, air, share):
    span = sum(moment_margins(OAK, ring, difference, air, Doubts(share, 10.0)))
    assert sum(moment_margins(OAK, ring, difference, 1.1 * air, Doubts(share, 10.0))) > span
    assert sum(moment_margins(OAK, ring, difference, air, Doubts(1.1 * share, 10.0))) > span


def test_rings_that_tilt_can_only_take_from_a_flatsawn_board():
    with_tilt, without = (moment_margins(OAK, 0.0, 5.0, 1e-6, Doubts(0.001, tilt)) for tilt in (20.0, 0.0))
    assert with_tilt[0] > 10 * without[0]
    assert with_tilt[1] == pytest.approx(without[1], abs=0.1 * with_tilt[0])


def test_margins_broadcast():
    shape = np.shape(moment_margins(OAK, np.zeros((3, 1)), np.ones(4), 1.0)[0])
    assert shape == (3, 4)
