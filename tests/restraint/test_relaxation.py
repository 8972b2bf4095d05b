"""Relaxation: exact against small steps, bounded, and independent of glue-up in the end."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from references.relaxation import many_season_peak_pa

from woodlib.restraint.relaxation import (
    relaxation_factor,
    relaxed_path_pa,
    season_stress,
    several_years,
    turning_points,
)

moistures = st.lists(st.floats(4, 16), min_size=2, max_size=12)
rates, shares = st.floats(0.05, 1.5), st.floats(0, 0.8)


@given(st.floats(0, 20), rates, shares)
def test_factor_starts_at_the_undelayed_share_and_falls(change, rate, share):
    factor = relaxation_factor(change, rate, share)
    assert 0 < factor <= 1 / (1 + share) + 1e-12
    assert relaxation_factor(change + 1, rate, share) < factor
    assert relaxation_factor(0.0, rate, share) == pytest.approx(1 / (1 + share))


def test_one_leg_is_the_factor_and_equals_small_steps():
    path = np.array([12.0, 7.0])
    end = relaxed_path_pa(path, 0.00264 * (path - 12), 786e6, 0.47, 0.4)[-1]
    assert end == pytest.approx(786e6 * 0.0132 * relaxation_factor(5.0, 0.47, 0.4))
    stress, step = 0.0, 5.0 / 20000
    for _ in range(20000):
        stress += 786e6 * 0.00264 * step / 1.4 - 0.47 * stress * step
    assert end == pytest.approx(stress, rel=2e-4)


@given(moistures, rates, shares)
def test_a_leg_in_two_pieces_is_the_same_leg(path, rate, share):
    path = np.array(path)
    halves = np.sort(np.concatenate([np.arange(path.size), np.arange(path.size - 1) + 0.5]))
    fine = np.interp(halves, np.arange(path.size), path)
    whole = relaxed_path_pa(path, 0.002 * (path - path[0]), 1e9, rate, share)
    assert np.allclose(relaxed_path_pa(fine, 0.002 * (fine - path[0]), 1e9, rate, share)[::2], whole, atol=1.0)


@given(moistures, rates, shares)
def test_relaxed_tension_never_exceeds_the_bound(path, rate, share):
    path = np.array(path)
    strain = 0.002 * (path - path[0])
    bound = 1e9 * (np.maximum.accumulate(strain) - strain)
    assert (relaxed_path_pa(path, strain, 1e9, rate, share) <= bound + 1.0).all()


@given(st.floats(5, 14), st.floats(5, 14), st.floats(0.2, 1.0), shares)
def test_after_years_the_moisture_at_glue_up_no_longer_matters(first, second, rate, share):
    peaks = []
    for start in (first, second):
        path = several_years(start, [12.0, 7.0], 12)
        peaks.append(relaxed_path_pa(path, 0.00264 * (path - start), 786e6, rate, share)[-1])
    assert peaks[0] == pytest.approx(peaks[1], rel=1e-3)
    assert peaks[0] == pytest.approx(many_season_peak_pa(786e6 * 0.00264, 5.0, rate, share), rel=1e-3)


def test_glued_dry_is_pulled_apart_only_in_the_second_half_of_the_year():
    """One leg would say there is no tension at all."""
    path = several_years(7.0, [12.0, 7.0], 8)
    result = season_stress(path, 0.00264 * (path - 7.0), 786e6)
    assert result.elastic_pa == 0 and result.path_pa[1] < 0 < 2e6 < result.relaxed_pa < result.bound_pa
    assert result.remarks and "permanent set" in result.remarks[0]
    assert result.relaxed_low_pa < result.relaxed_pa < result.relaxed_high_pa


@given(moistures)
def test_turning_points_keep_ends_and_extremes(path):
    kept = turning_points(path)
    assert kept[0] == 0 and kept[-1] == len(path) - 1
    assert max(path) == max(path[i] for i in kept) and min(path) == min(path[i] for i in kept)


def test_broadcasts_over_draws():
    path = np.array([9.0, 12, 7])
    assert relaxed_path_pa(path, 0.002 * path, 1e9, np.full((3, 1), 0.4), np.full(5, 0.3)).shape == (3, 3, 5)
