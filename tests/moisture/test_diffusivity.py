"""Diffusion coefficients and closed solutions: directions, limits, inverses."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from references.diffusivity import constant_form, end_grain_m2_s
from references.film_fit import excluded_percent, film_permeance, fit_film
from references.plate import fraction_with_resistance, fraction_without_resistance, roots, swing_delay_s, swing_kept

from woodlib.moisture.diffusivity import FORMS, rh_per_moisture, siau_m2_s
from woodlib.moisture.equilibrium import emc_percent
from woodlib.moisture.finishes import film_coefficient_m_s, find_finish, surface_coefficient_m_s
from woodlib.moisture.plate import swing_depth_m
from woodlib.tables import numbers

moisture = st.floats(0.0, 30.0)
celsius = st.floats(-10.0, 60.0)
gravity = st.floats(0.3, 0.9)


@pytest.mark.parametrize("name", FORMS)
@given(m=moisture, t=celsius, g=gravity)
@settings(max_examples=40, deadline=None)
def test_every_form_is_positive_and_rises_with_moisture(name, m, t, g):
    form = FORMS[name].function
    value, more = form(m, t, g), form(min(m + 1.0, 30.0), t, g)
    assert 1e-13 < value < 1e-8 and np.isfinite(value)
    assert more >= value


@given(m=moisture, t=celsius, g=gravity)
@settings(max_examples=40, deadline=None)
def test_warm_wood_is_faster_and_dense_wood_slower(m, t, g):
    assert siau_m2_s(m, t + 1.0, g) > siau_m2_s(m, t, g) > siau_m2_s(m, t, g + 0.05)


def test_forms_broadcast_alike():
    for form in (*FORMS.values(), constant_form(2e-11)):
        assert np.shape(form.function(np.full((3, 1), 8.0), np.full((1, 4), 20.0), 0.6)) == (3, 4)


@given(h=st.floats(2.0, 98.0), t=st.floats(0.0, 50.0))
@settings(max_examples=40, deadline=None)
def test_sorption_slope_against_a_difference(h, t):
    rise = (emc_percent(t, h + 0.05) - emc_percent(t, h - 0.05)) / 10.0
    assert float(rh_per_moisture(emc_percent(t, h), t)) == pytest.approx(0.01 / rise, rel=2e-3)


def test_along_the_grain_is_ten_to_fifteen_times():
    assert np.divide(end_grain_m2_s(3e-11), 3e-11) == pytest.approx([10.0, 12.0, 15.0])


@given(fourier=st.floats(1e-4, 20.0), biot=st.floats(0.01, 500.0))
@settings(max_examples=60, deadline=None)
def test_closed_steps_rise_and_resistance_slows(fourier, biot):
    free, held = fraction_without_resistance(fourier), fraction_with_resistance(fourier, biot)
    assert -1e-9 < held <= free + 2e-4 and free <= 1.0
    assert fraction_with_resistance(fourier * 1.1, biot) > held - 1e-12
    assert fraction_with_resistance(fourier, biot * 1.2) > held - 1e-6


def test_short_and_long_series_join():
    below, above = fraction_without_resistance(0.01 * (1 - 1e-9)), fraction_without_resistance(0.01 * (1 + 1e-9))
    assert below == pytest.approx(above, abs=1e-7)


@given(biot=st.floats(1e-6, 1e5))
@settings(max_examples=60, deadline=None)
def test_roots_solve_their_equation(biot):
    b = roots(biot, 12)
    assert np.allclose(b * np.sin(b), biot * np.cos(b), atol=1e-9 * (1.0 + biot))
    assert np.all(np.floor(b / np.pi) == np.arange(12))


@given(half=st.floats(0.002, 0.04), d=st.floats(1e-11, 5e-10), s=st.floats(1e-9, 1e-6), days=st.floats(0.5, 800.0))
@settings(max_examples=80, deadline=None)
def test_swings_shrink_and_lag(half, d, s, days):
    period = days * 86400.0
    kept, delay = swing_kept(half, d, s, period), swing_delay_s(half, d, s, period)
    assert 0.0 < kept < 1.0 and 0.0 < delay < period / 4.0
    assert swing_kept(half * 1.2, d, s, period) < kept < swing_kept(half, d, s * 1.5, period)
    assert swing_depth_m(d, 4 * period) == pytest.approx(2 * swing_depth_m(d, period))


@given(log_film=st.floats(np.log(5e-10), np.log(1e-7)))
@settings(max_examples=25, deadline=None)
def test_fit_gives_back_the_film(log_film):
    film = float(np.exp(log_film))
    fit = fit_film([1, 7, 14], excluded_percent(film, [1, 7, 14]))
    assert fit.film_m_s == pytest.approx(film, rel=1e-3) and fit.rms_points < 1e-2


def test_permeance_is_in_proportion():
    assert film_permeance(2e-8) == pytest.approx(2 * film_permeance(1e-8))


@given(g=gravity, t=st.floats(5.0, 35.0), low=st.floats(3.0, 9.0), span=st.floats(0.0, 8.0))
@settings(max_examples=40, deadline=None)
def test_film_on_dense_wood_slows_more(g, t, low, span):
    varnish = find_finish("urethane varnish", 3)
    film = film_coefficient_m_s(varnish, g, t, low, low + span)
    assert 1e-10 < film < 1e-7
    assert film_coefficient_m_s(varnish, 2 * g, t, low, low + span) == pytest.approx(film / 2)
    assert film_coefficient_m_s(find_finish("bare"), g, t, low, low + span) == np.inf


def test_series_of_film_and_air():
    assert np.allclose(np.divide(1.0, surface_coefficient_m_s(1e-7)), 1e7 + np.divide(1.0, [1e-7, 1.7e-7, 3e-7]))
    assert surface_coefficient_m_s(np.inf) == pytest.approx((1e-7, 1.7e-7, 3e-7))


@pytest.mark.parametrize("topic", ["moisture", "held movement", "readiness", "shop practice", "allowances"])
def test_every_number_has_order_unit_status_and_source(topic):
    assert numbers(topic)
    for row in numbers(topic).values():
        assert row.low <= row.middle <= row.high and row.middle == float(row.exact), row.key
        assert row.source and row.meaning
        assert row.status in {"printed", "quoted", "confirmed", "recalled", "derived", "estimated", "own"}
