"""Ranges: fixed samples, first order, and what they must agree on."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.movement.board import Board
from woodlib.movement.spread import (
    NO_DOUBTS,
    Doubts,
    Movement,
    first_order_range,
    lattice,
    quantile_range,
    sample_points,
    sampled_range,
    star_points,
    width_movement,
)
from woodlib.movement.wood import Wood

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
moistures = st.floats(2, 20)


def test_lattice_rows_are_even_and_uncorrelated():
    points = lattice(8)
    assert np.all(np.sort(points, axis=1) == (np.arange(1021) + 0.5) / 1021)
    assert np.abs(np.corrcoef(points)[:5, :5] - np.eye(5)).max() < 0.01
    assert np.abs(np.corrcoef(lattice(23)) - np.eye(23)).max() < 0.10
    assert points[:5].min(axis=1).max() < 1e-3 and points[:5].sum(axis=0).min() > 0.2


def test_points_have_the_spread_that_was_asked_for():
    points = sample_points(Doubts(0.15, 10, 1.0, 0.5))
    assert points.factor.std() == pytest.approx(0.15, rel=0.01)
    assert np.degrees(np.abs(points.ring_rad).max()) == pytest.approx(10, abs=0.02)
    for percent, values in ((1.0, points.stock_percent), (0.5, points.dry_air_percent), (0.5, points.damp_air_percent)):
        assert np.quantile(values, 0.95) == pytest.approx(percent, rel=0.01)
    assert star_points(NO_DOUBTS).factor.tolist() == [1.0] * 10


def test_species_scatter_alone_gives_the_normal_quantiles():
    # Only the 15 % scatter: 5 and 95 % lie at mid * (1 -+ 1.645 * 0.15) = mid * (0.753, 1.247). 4 points, 0.00274.
    low, mid, high = sampled_range(ASH, 0.0, 0.0, 8, 12, Doubts(0.15, 0, 0, 0))
    assert mid == pytest.approx(0.01096, abs=1e-12)
    assert (low, high) == pytest.approx((0.75326 * 0.01096, 1.24674 * 0.01096), rel=2e-3)


def test_species_and_meter_add_in_squares():
    # The product of two normal numbers leans up: four million random draws give a 95 % quantile of 0.01503.
    # Scatter 0.15 * 0.01096 = 0.001644; meter 1/1.645 * 0.00274 = 0.001666 per sd; root 0.002340; * 1.645: 0.003850.
    low, mid, high = first_order_range(ASH, 0.0, 0.0, 8, 12, Doubts(0.15, 0, 1, 0))
    assert high - mid == pytest.approx(0.003850, abs=5e-6)
    assert sampled_range(ASH, 0.0, 0.0, 8, 12, Doubts(0.15, 0, 1, 0))[2] == pytest.approx(0.01503, rel=0.005)


def test_a_flatsawn_board_can_only_move_less_when_its_rings_tilt():
    low, mid, high = sampled_range(ASH, 0.0, 0.0, 8, 12, Doubts(0.0, 20, 0, 0))
    assert high == mid and low < mid
    assert first_order_range(ASH, 0.0, 0.0, 8, 12, Doubts(0.0, 20, 0, 0))[0] == pytest.approx(mid)


@given(moistures, moistures, st.floats(0, np.pi / 2))
def test_no_doubt_no_range(start, end, ring):
    for method in (sampled_range, first_order_range):
        low, mid, high = method(ASH, ring, 0.0, start, end, NO_DOUBTS)
        assert low == pytest.approx(mid, abs=1e-15) and high == pytest.approx(mid, abs=1e-15)


@given(moistures, moistures, st.floats(0.2, 1.2))
def test_both_methods_agree_where_the_doubts_are_small(start, end, ring):
    small = Doubts(0.03, 2, 0.1, 0.1)
    sampled, first = (np.array(m(ASH, ring, 0.0, start, end, small)) for m in (sampled_range, first_order_range))
    assert np.abs(sampled - first).max() < 0.05 * (first[2] - first[0]) + 1e-7


@given(moistures, moistures, st.floats(0, 90), st.floats(0, 1))
def test_more_doubt_never_narrows_the_range(start, end, ring, share):
    angle = np.radians(ring)
    narrow = sampled_range(ASH, angle, 0.0, start, end, Doubts(0.10, 0, 0.5, 0.5), share)
    wide = sampled_range(ASH, angle, 0.0, start, end, Doubts(0.20, 0, 1.0, 1.0), share)
    assert wide[2] - wide[0] >= narrow[2] - narrow[0] - 1e-12


@given(moistures, moistures, st.floats(0.05, 1.0), st.floats(0, 90))
def test_movement_is_ordered_finite_and_scales_with_width(start, end, width, ring):
    one = width_movement(Board(ASH, width, 0.02, 1.0, ring), start, end)
    two = width_movement(Board(ASH, 2 * width, 0.02, 1.0, ring), start, end)
    assert one.low_m <= one.mid_m <= one.high_m and np.isfinite([one.low_m, one.high_m]).all()
    assert two.high_m == pytest.approx(2 * one.high_m, abs=1e-12)


def test_large_tables_broadcast():
    low, mid, high = first_order_range(ASH, 0.0, 0.0, np.linspace(6, 9, 50)[:, None], np.linspace(4, 14, 40), Doubts())
    assert low.shape == mid.shape == high.shape == (50, 40)


@given(st.floats(-0.02, 0.02), st.lists(st.floats(-0.02, 0.02), min_size=3, max_size=30))
def test_a_range_always_holds_its_best_guess(mid, samples):
    low, middle, high = quantile_range(mid, np.array(samples))
    assert low <= middle <= high


def test_movement_in_words_and_as_quantities():
    movement = Movement(0.0030, 0.0048, 0.0063)
    assert movement.text() == "about 3/16 in (5 mm), could be 1/8 to 1/4 in (3 to 6 mm)"
    assert movement.mid.to("mm").magnitude == pytest.approx(4.8)
    assert movement.low < movement.mid < movement.high
    assert movement.times(-0.5) == Movement(-0.00315, -0.0024, -0.0015)
