"""Equilibrium moisture content: directions, limits, round trips, bands, remarks."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air.sorption import outside_table, sorption_percent, sorption_slope
from woodlib.moisture.equilibrium import (
    air_for_meter_reading,
    emc_percent,
    emc_remarks,
    emc_slope,
    humidity_for_moisture,
    hysteresis_band,
    rh_percent_for_emc,
)

temperatures = st.floats(-40, 100).map(np.asarray)  # a table's temperature, not one that may be in degF
humidities = st.floats(0, 100)


@given(temperatures)
def test_dry_air_leaves_no_moisture(t):
    assert emc_percent(t, 0.0) == 0.0


@given(temperatures, humidities, humidities)
def test_damper_air_never_gives_drier_wood(t, one, other):
    low, high = sorted((one, other))
    assert 0.0 <= emc_percent(t, low) <= emc_percent(t, high) < 30.0


@given(st.floats(-1.1, 93.0).map(np.asarray), st.floats(0, 20), st.floats(5, 95))
def test_warmer_air_of_the_same_humidity_gives_drier_wood_above_freezing(t, rise, rh):
    warm = np.minimum(t + rise, [93.0])
    assert emc_percent(warm, rh) <= emc_percent(t, rh) + 0.12  # the handbook curves rise by 0.1 up to about 5 degC


@given(st.floats(15, 93.0).map(np.asarray), st.floats(0.1, 20), st.floats(5, 95))
def test_warmer_air_gives_drier_wood_at_room_temperature_and_above(t, rise, rh):
    assert emc_percent(np.minimum(t + rise, [95.0]), rh) <= emc_percent(t, rh)


@given(temperatures, humidities)
def test_round_trip_from_air_to_wood_and_back(t, rh):
    assert rh_percent_for_emc(t, emc_percent(t, rh)) == pytest.approx(rh, abs=1e-9)


@given(temperatures, st.floats(0, 1))
def test_round_trip_from_wood_to_air_and_back(t, share):
    mc = share * emc_percent(t, 100.0)
    assert emc_percent(t, rh_percent_for_emc(t, mc)) == pytest.approx(mc, abs=1e-9)


def test_round_trip_over_the_whole_range_at_once():
    t, rh = np.meshgrid(np.linspace(-40, 100, 57), np.linspace(0, 100, 201))
    assert np.max(np.abs(rh_percent_for_emc(t, emc_percent(t, rh)) - rh)) < 1e-9


def test_ends_of_the_inverse():
    assert rh_percent_for_emc(20, 0) == 0.0
    assert rh_percent_for_emc(20, emc_percent(20, 100)) == pytest.approx(100, abs=1e-9)
    assert np.shape(humidity_for_moisture(np.zeros((2, 1)), np.ones(3))) == (2, 3)


@given(temperatures, st.floats(0.5, 99.5))
def test_slope_is_the_derivative(t, rh):
    step = 1e-3
    central = (sorption_percent(t, rh + step) - sorption_percent(t, rh - step)) / (2 * step)
    assert emc_slope(t, rh) == pytest.approx(central, rel=1e-5)
    assert sorption_slope(t, rh) > 0


@given(temperatures, humidities, st.floats(0.51, 1.0))
def test_hysteresis_band_holds_the_table_in_its_middle(t, rh, ratio):
    band = hysteresis_band(t, rh, ratio)
    assert band.adsorption_percent <= band.table_percent <= band.desorption_percent
    assert (band.adsorption_percent + band.desorption_percent) / 2 == pytest.approx(band.table_percent, rel=1e-12)
    assert band.adsorption_percent == pytest.approx(ratio * band.desorption_percent, rel=1e-12)


def test_hysteresis_factors():
    band = hysteresis_band(20, np.array([40.0, 65.0]))
    assert band.adsorption_percent / band.table_percent == pytest.approx([0.919, 0.919], abs=5e-4)
    assert band.desorption_percent / band.table_percent == pytest.approx([1.081, 1.081], abs=5e-4)
    assert band.status == "derived" and "memory" in band.source


@given(st.floats(0, 40), st.floats(0, 22), st.floats(0, 3), st.floats(0.6, 1.0))
def test_meter_reading_lies_in_its_range(t, mc, error, ratio):
    home = air_for_meter_reading(mc, t, error, ratio)
    assert 0 <= home.lowest_rh_percent <= home.rh_percent + 1e-9 <= home.highest_rh_percent + 2e-9 <= 100 + 3e-9
    assert all(math.isfinite(value) for value in (home.lowest_rh_percent, home.highest_rh_percent))


def test_larger_doubt_widens_the_range():
    sharp, usual = air_for_meter_reading(9, 20, 0.0), air_for_meter_reading(9, 20, 1.0)
    history = air_for_meter_reading(9, 20, 1.0, 0.85)
    assert sharp.lowest_rh_percent == pytest.approx(sharp.highest_rh_percent)
    assert history.lowest_rh_percent < usual.lowest_rh_percent < sharp.rh_percent
    assert sharp.rh_percent < usual.highest_rh_percent < history.highest_rh_percent
    assert emc_percent(20, usual.lowest_rh_percent) == pytest.approx(8.0)
    assert emc_percent(20, history.highest_rh_percent) == pytest.approx(10.0 * 1.85 / 1.7)


def test_meter_range_that_ends_early_says_so():
    dry, wet = air_for_meter_reading(0.5, 20), air_for_meter_reading(28.5, 20)
    assert dry.lowest_rh_percent == 0 and any("begins at 0 %" in remark for remark in dry.remarks)
    assert wet.highest_rh_percent == pytest.approx(100) and any("ends at 100 %" in remark for remark in wet.remarks)
    assert air_for_meter_reading(0, 20).rh_percent == 0.0
    assert not air_for_meter_reading(9, 20).remarks


def test_extrapolation_is_told():
    assert emc_remarks(20, 50) == ()
    assert emc_remarks(-1.1, 95) == ()
    assert "below -1.1 degC" in emc_remarks(-10, 50)[0]
    assert "above 93 degC" in emc_remarks("99 degC", 50)[0]
    assert outside_table([20, 20, 20], [50, 96, 99])[0].startswith("2 of 3")
    assert "below -1.1 degC" in air_for_meter_reading(9, -10).remarks[0]


def test_shapes_text_and_quantities():
    from woodlib.units import Quantity

    assert isinstance(emc_percent(20, 50), float)
    assert emc_percent(np.zeros((3, 1)) + 20, np.array([30.0, 60.0])).shape == (3, 2)
    assert emc_percent("68 degF", "50 percent") == emc_percent(20.0, 50.0)
    assert emc_percent(Quantity(68, "degF"), 50) == pytest.approx(emc_percent(20.0, 50.0))
    assert emc_percent([20, 21], [30, 40]).tolist() == emc_percent((20, 21), (30, 40)).tolist()


def test_a_reading_too_small_for_the_curve_still_gives_an_answer():
    home = air_for_meter_reading(4.4e-197, 31.0, 0.0, 1.0)
    assert home.rh_percent == pytest.approx(0.0, abs=1e-6)
