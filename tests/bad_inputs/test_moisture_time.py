"""Everything that moisture in time refuses, and the sentence it says."""

from __future__ import annotations

import numpy as np
import pytest
from references.resting import end_grain_reach_m, fraction_with_ends

from woodlib.errors import WoodlibError
from woodlib.moisture.diffusivity import siau_m2_s
from woodlib.moisture.drive import air_log, air_of_year, in_turn, steady_air
from woodlib.moisture.finishes import find_finish
from woodlib.moisture.following import follow
from woodlib.moisture.plate import swing_depth_m
from woodlib.moisture.rates import rate, readiness_limit
from woodlib.moisture.readiness import day_to_flatten, flattening, strips_for_jointer
from woodlib.moisture.resting import resting, storage
from woodlib.moisture.stock import Stock
from woodlib.moisture.swing import coat_by_coat, swing_reach, year_inside

STOCK = Stock(0.019, 0.6)
AIR = steady_air(20, 50, 5)


class HalfYear:
    """Looks like a year, without its humidity."""

    day = np.arange(3.0)
    temperature_c = np.full(3, 20.0)


class UnevenYear(HalfYear):
    """A year whose arrays do not go together."""

    rh_percent = np.full(4, 50.0)


CASES = [
    (lambda: air_log([0, 1, 2], 20.0, [40, np.nan, 50]), "rh_percent is nan % (value 2 of 3; 1 in all are refused)"),
    (lambda: air_log([0, 1, 2], [20, None, 20], [40, 45, 50]), "temperature_c is nan degC (value 2 of 3"),
    (
        lambda: air_log([0, 1], 20.0, [40, 104]),
        "rh_percent is 104 % (value 2 of 2; 1 in all are refused); it must be 0 to 100 %",
    ),
    (lambda: steady_air(20, 101, 5), "rh_percent is 101 %; it must be 0 to 100 %"),
    (lambda: steady_air(200, 50, 5), "temperature_c is 200 degC; it must be -40 to 100 degC"),
    (lambda: steady_air(20, 50, 0), "days is 0 days; it must be above 0"),
    (lambda: steady_air(20, "damp", 5), "rh_percent"),
    (lambda: air_log([0, 1, 2], 20.0, [40, 50]), "3 days, 1 temperatures and 2 humidities"),
    (lambda: air_log([0, 2, 1], 20.0, [40, 50, 45]), "day 1 follows day 2"),
    (lambda: air_log([0], 20.0, [40]), "1 reading(s); give at least 2"),
    (lambda: air_log([0, 400], 20.0, [40, 50], years=1), "spans 400 days; a year that repeats spans less than 365"),
    (lambda: air_of_year(HalfYear()), "HalfYear, which has no rh_percent"),
    (lambda: air_of_year(UnevenYear()), "3 days, 3 temperatures and 4 humidities"),
    (lambda: air_of_year(None), "NoneType, which has no day"),
    (lambda: in_turn([]), "drives is empty"),
    (lambda: Stock(0.0, 0.6), "thickness_m is 0 m; it must be 0.0001 to 0.5 m"),
    (lambda: Stock("-3 mm", 0.6), "thickness_m"),
    (lambda: Stock(float("nan"), 0.6), "thickness_m is nan m"),
    (lambda: Stock(19.0, 0.6), "thickness_m is 19 m"),
    (lambda: Stock(0.019, 0.0), "specific_gravity is 0"),
    (lambda: Stock(0.019, 0.6, form="fick"), "form is 'fick'; choose one of siau, steep, spruce"),
    (
        lambda: Stock(0.019, 0.6, first_finish="urethene varnish"),
        "first_finish: finish is 'urethene varnish', which is not in the table; did you mean Urethane varnish",
    ),
    (lambda: find_finish("shelac"), "did you mean Shellac?"),
    (lambda: find_finish("latex"), "which fits"),
    (lambda: find_finish("xyzzy"), "not in the table; write one of: bare wood; Linseed oil; "),
    (lambda: find_finish(""), "finish is ''"),
    (lambda: find_finish(3), "finish is 3; write the name of a finish"),
    (lambda: find_finish("shellac", 9), "coats is 9 for Shellac; the table has 1, 2, 3, 4, 5, 6"),
    (lambda: find_finish("shellac", True), "coats is True for Shellac"),
    (lambda: follow(STOCK, AIR, 45.0), "start_percent is 45 %; it must be 0 to 30 %"),
    (lambda: follow(STOCK, AIR, -1.0), "start_percent is -1 %"),
    (lambda: follow(STOCK, AIR, [8.0, 9.0]), "start_percent has 2 values for 1 board(s)"),
    (lambda: follow(STOCK, AIR, 8.0, cells=1), "cells is 1; accepted are whole numbers from 4 to 2000"),
    (lambda: follow(STOCK, AIR, 8.0, cells=30.5), "cells is 30.5"),
    (lambda: follow(STOCK, AIR, 8.0, step_hours=0), "step_hours is 0 h"),
    (lambda: follow(STOCK, AIR, 8.0, tolerance_percent=0), "tolerance_percent is 0 %"),
    (lambda: follow("oak", AIR, 8.0), "stock is not a Stock"),
    (lambda: follow([], AIR, 8.0), "stock is not a Stock"),
    (lambda: follow(STOCK, 50, 8.0), "drive is int; write the air with steady"),
    (lambda: follow(STOCK, AIR, 8.0, profile_days=[1, 9]), "profile_days is 9 days (value 2 of 2"),
    (lambda: follow(STOCK, AIR, 8.0).at(30), "day is 30; the course runs from day 0 to day 5"),
    (lambda: follow([STOCK, STOCK], AIR, 8.0).at(3), "at gives the moisture of one board"),
    (lambda: Stock(0.019, 0.6, diffusivity_factor=0), "diffusivity_factor is 0"),
    (lambda: resting(STOCK, 20, 50, 8.0, 0.0), "margin_percent is 0 %; it must be 0.05 to 10 %"),
    (lambda: resting(STOCK, 20, 120, 8.0), "rh_percent is 120 %"),
    (lambda: resting("oak", 20, 50, 8.0), "stock is str"),
    (lambda: storage(STOCK, []), "drives is empty"),
    (lambda: end_grain_reach_m(STOCK, -1), "days is -1 days"),
    (lambda: fraction_with_ends(1.5, STOCK, 0.3, 14), "fraction is 1.5"),
    (lambda: year_inside(STOCK, HalfYear()), "no rh_percent"),
    (
        lambda: year_inside(
            Stock(0.4, 0.9, "paraffin wax, dipped", "paraffin wax, dipped"),
            __import__("woodlib.air.year", fromlist=["Year"]).Year.steady(20, 50),
        ),
        "years to settle",
    ),
    (lambda: coat_by_coat("shelac", STOCK, HalfYear()), "did you mean Shellac?"),
    (lambda: swing_reach(STOCK, mc_percent=60), "mc_percent is 60 %"),
    (lambda: siau_m2_s(8.0, 20.0, 2.0), "specific_gravity is 2"),
    (lambda: siau_m2_s([8.0, 9.0], [20.0, 21.0, 22.0], 0.6), "the arrays do not fit together"),
    (lambda: swing_depth_m(0.0, 86400.0), "diffusivity_m2_s is 0"),
    (lambda: rate("speed"), "no row 'speed'"),
    (lambda: readiness_limit("luck"), "no row 'luck'"),
    (lambda: flattening(0.0, 0.2, 1.0), "rough_thickness_m is 0 m; it must be above 0"),
    (lambda: flattening(0.025, 0.2, 1.0, cup_m=3.0), "cup_m is 3 m; it must be -0.5 to 0.5 m"),
    (lambda: flattening(0.025, [0.2, 0.3], 1.0), "width_m has 2 values; give one number"),
    (lambda: flattening(0.025, 0.2, 1.0, pieces=0), "pieces is 0; write how many equal lengths"),
    (lambda: flattening(0.025, 0.2, 1.0, kerf_m=-0.001), "kerf_m is -0.001 m"),
    (lambda: strips_for_jointer(0.3, 0.0), "jointer_width_m is 0 m"),
    (lambda: day_to_flatten([0, 1], np.zeros((3, 3))), "cup_m has shape (3, 3)"),
    (lambda: day_to_flatten([0, 1], np.zeros((2, 3)), -1), "flat_within_m is -1 m"),
]


@pytest.mark.parametrize(("call", "fragment"), CASES)
def test_one_clear_sentence(call, fragment):
    with pytest.raises(WoodlibError) as caught:
        call()
    assert fragment in str(caught.value)
    for sentence in str(caught.value).splitlines():
        assert sentence.endswith((".", "?")) and len(sentence) < 400


def test_all_at_once():
    with pytest.raises(WoodlibError) as caught:
        Stock(0.0, 9.0, "shelac", "latex", "fick")
    assert len(caught.value.problems) == 5
    with pytest.raises(WoodlibError) as caught:
        follow(STOCK, AIR, 90.0, cells=0, step_hours=-1, tolerance_percent=50)
    assert len(caught.value.problems) == 4
    with pytest.raises(WoodlibError) as caught:
        flattening(-1, 0, 1.0, cup_m=9, pieces=0)
    assert len(caught.value.problems) == 4
