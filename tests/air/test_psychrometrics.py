"""Moist air: directions, limits and round trips over the whole accepted range."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air import psychrometrics as air
from woodlib.air.indoors import seasonal_moisture_gain_g_m3

temperatures = st.floats(-100, 200)
weather = st.floats(-60, 60)
humidities = st.floats(0, 100)
some_humidity = st.floats(0.01, 100)


@given(temperatures, temperatures)
def test_saturation_pressure_rises(one, other):
    low, high = sorted((one, other))
    assert 0 < air.saturation_pressure_pa(low) <= air.saturation_pressure_pa(high) < 2e6


@given(st.floats(-100, -0.1))
def test_ice_holds_less_vapour_than_supercooled_water(t):
    assert air.saturation_pressure_over_ice_pa(t) < air.saturation_pressure_pa(t)


def test_ice_and_water_meet_at_the_triple_point():
    assert air.saturation_pressure_over_ice_pa(0.01) == pytest.approx(air.saturation_pressure_pa(0.01), rel=2e-4)


def test_the_curve_never_switches_to_ice():
    t = np.linspace(-40, 10, 5001)
    slope = np.diff(np.log(air.saturation_pressure_pa(t)))
    assert np.all(np.diff(slope) < 0)  # smooth through freezing: no kink


@given(temperatures)
def test_dew_point_is_the_inverse_of_saturation(t):
    assert air.dew_point_of_pressure_c(air.saturation_pressure_pa(t)) == pytest.approx(t, abs=1e-9)


@given(st.floats(1e-6, 1e6))
def test_saturation_at_the_dew_point_gives_the_pressure(pressure):
    dew = air.dew_point_of_pressure_c(pressure)
    if -100 <= dew <= 200:
        assert air.saturation_pressure_pa(dew) == pytest.approx(pressure, rel=1e-11)


@given(weather, some_humidity)
def test_dew_point_is_never_above_the_air(t, rh):
    dew = air.dew_point_c(t, rh)
    assert dew <= t + 1e-9
    if dew > -100:
        assert air.rh_percent_from_dew_point(t, dew) == pytest.approx(rh, rel=1e-9)


@given(weather)
def test_saturated_air_is_at_its_dew_point(t):
    assert air.dew_point_c(t, 100) == pytest.approx(t, abs=1e-9)


@given(weather, humidities, humidities)
def test_more_humidity_more_water(t, one, other):
    low, high = sorted((one, other))
    for quantity in (air.vapour_pressure_pa, air.humidity_ratio, air.absolute_humidity_g_m3):
        assert 0 <= quantity(t, low) <= quantity(t, high)


def test_dry_air_holds_nothing():
    assert air.vapour_pressure_pa(20, 0) == air.humidity_ratio(20, 0) == air.absolute_humidity_g_m3(20, 0) == 0.0


def test_humidity_ratio_at_boiling_is_infinite_not_negative():
    assert air.humidity_ratio(120, 100) == np.inf
    assert air.humidity_ratio([20.0, 120.0], 100)[0] > 0


def test_thin_air_holds_more_water_per_mass():
    assert air.humidity_ratio(20, 50, 84_000) > air.humidity_ratio(20, 50)


@given(st.floats(-30, 20), humidities, st.floats(0, 20))
def test_heating_dries_the_air(cold, rh, rise):
    assert air.indoor_rh_percent(cold, rh, cold + rise, 0.0) <= rh + 1e-9


@given(st.floats(-30, 30), humidities)
def test_same_temperature_without_gain_changes_nothing(t, rh):
    assert air.indoor_rh_percent(t, rh, t, 0.0) == pytest.approx(rh, rel=1e-12)


@given(st.floats(-30, 30), humidities, st.floats(10, 30), st.floats(0, 10))
def test_gain_adds_its_grams(cold, rh, warm, gain):
    dry, moist = (air.indoor_rh_percent(cold, rh, warm, amount) for amount in (0.0, gain))
    added = (moist - dry) / 100 * air.absolute_humidity_g_m3(warm, 100)
    assert added == pytest.approx(gain, abs=1e-9)


@given(st.floats(-40, 40), st.floats(0, 10))
def test_seasonal_gain_fades_with_warmth(t, gain):
    got = seasonal_moisture_gain_g_m3(t, gain)
    assert 0 <= got <= gain
    if t <= 0:
        assert got == gain
    assert seasonal_moisture_gain_g_m3(t + 1, gain) <= got


def test_kernels_give_the_same_as_the_checked_functions():
    t, rh = np.linspace(-30, 40, 15), np.linspace(5, 95, 15)
    for checked in (air.vapour_pressure_pa, air.dew_point_c, air.humidity_ratio, air.absolute_humidity_g_m3):
        assert np.array_equal(checked(t, rh), checked.kernel(t, rh))


def test_arrays_of_another_kind_keep_their_kind():
    """An array type that follows NumPy's protocols passes through the door and the formula unconverted."""

    class Tagged(np.lib.mixins.NDArrayOperatorsMixin):
        def __init__(self, values):
            self.values = np.asarray(values)

        def __array__(self, dtype=None, copy=None):
            return self.values

        def __array_ufunc__(self, ufunc, method, *inputs, **kwargs):
            plain = [item.values if isinstance(item, Tagged) else item for item in inputs]
            return Tagged(getattr(ufunc, method)(*plain, **kwargs))

        def __array_function__(self, function, types, args, kwargs):
            plain = [item.values if isinstance(item, Tagged) else item for item in args]
            return function(*plain, **kwargs)

    got = air.saturation_pressure_pa(Tagged([0.0, 20.0]))
    assert isinstance(got, Tagged)
    assert np.array_equal(got.values, air.saturation_pressure_pa([0.0, 20.0]))
