"""Moist air against PsychroLib and CoolProp, live and as stored, and against the Magnus forms.

PsychroLib codes the same ASHRAE equations, so it must agree to round-off where both are over water. CoolProp's steam
equation (IAPWS-95) is independent: Hyland-Wexler lies within 0.03 % of it from 0 to 90 degC.
Below 0.01 degC PsychroLib and CoolProp switch to ice, and weather data do not; there only the water forms compare.
"""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import psychrolib
import pytest
from CoolProp.CoolProp import PropsSI
from CoolProp.HumidAirProp import HAPropsSI

from woodlib.air import psychrometrics as air
from woodlib.moisture.equilibrium import emc_percent

_DATA = Path(__file__).with_name("data")


@pytest.fixture(autouse=True)
def _si_units():
    psychrolib.SetUnitSystem(psychrolib.SI)


def _rows(name: str) -> list[dict[str, float]]:
    with (_DATA / name).open(newline="") as file:
        return [{key: float(value) if value else np.nan for key, value in row.items()} for row in csv.DictReader(file)]


@pytest.mark.parametrize("row", _rows("saturation_pressure.csv"), ids=lambda row: f"{row['temperature_c']:g}C")
def test_stored_saturation_pressures(row, outside):
    t = row["temperature_c"]
    got = air.saturation_pressure_pa(t)
    if t > 0.0:
        liquid = t > 0.01
        expected = row["psychrolib_pa"]
        # at 0.01 degC PsychroLib is still on ice: water and ice meet there within 0.02 %
        outside(
            "PsychroLib 2.5.0, stored",
            f"saturation pressure at {t:g} degC",
            expected,
            got,
            0.0006 if liquid else 0.0002 * expected,
            "Pa",
        )
        outside(
            "CoolProp 8.0.0, stored",
            f"saturation pressure at {t:g} degC",
            row["coolprop_liquid_pa"],
            got,
            3e-4 * got,
            "Pa",
        )
    else:
        ice = air.saturation_pressure_over_ice_pa(t)
        outside(
            "PsychroLib 2.5.0, stored",
            f"saturation pressure over ice at {t:g} degC",
            row["psychrolib_pa"],
            ice,
            0.0006,
            "Pa",
        )
    # published distance of the Magnus forms from Hyland-Wexler: 0.24 % and 0.29 % from 0 to 40 degC
    outside(
        "Magnus form of 1996",
        f"saturation pressure over water at {t:g} degC",
        row["magnus_1996_pa"],
        got,
        2.5e-3 * got,
        "Pa",
    )
    outside(
        "Magnus form of the WMO",
        f"saturation pressure over water at {t:g} degC",
        row["magnus_wmo_pa"],
        got,
        3e-3 * got,
        "Pa",
    )
    outside("Buck 1996", f"saturation pressure over water at {t:g} degC", row["buck_1996_pa"], got, 2e-3 * got, "Pa")
    outside(
        "MetPy 1.7.1, stored", f"saturation pressure over water at {t:g} degC", row["metpy_pa"], got, 4.5e-3 * got, "Pa"
    )


@pytest.mark.parametrize("t", [0.5, 10.0, 21.0, 35.0, 60.0, 90.0, 150.0])
def test_saturation_pressure_live(t, outside):
    got = air.saturation_pressure_pa(t)
    expected = psychrolib.GetSatVapPres(t)
    outside("PsychroLib, live", f"saturation pressure at {t:g} degC", expected, got, 1e-12 * expected, "Pa")
    outside(
        "CoolProp (IAPWS-95), live",
        f"saturation pressure at {t:g} degC",
        PropsSI("P", "T", t + 273.15, "Q", 0, "Water"),
        got,
        7e-4 * got,
        "Pa",
    )


@pytest.mark.parametrize("t", [-90.0, -40.0, -20.0, -5.0])
def test_ice_live(t, outside):
    expected = psychrolib.GetSatVapPres(t)
    outside(
        "PsychroLib, live",
        f"saturation pressure over ice at {t:g} degC",
        expected,
        air.saturation_pressure_over_ice_pa(t),
        1e-12 * expected,
        "Pa",
    )


@pytest.mark.parametrize(
    "row", _rows("moist_air.csv"), ids=lambda row: f"{row['temperature_c']:g}C-{row['rh_percent']:g}"
)
def test_stored_moist_air(row, outside):
    """Dew point to the stored 0.001 K, humidity ratio to the stored 1e-6; states over ice by the ice function."""
    t, rh = row["temperature_c"], row["rh_percent"]
    state = f"{t:g} degC, {rh:g} % RH"
    saturated = air.saturation_pressure_pa(t) if t > 0.01 else air.saturation_pressure_over_ice_pa(t)
    vapour = rh / 100 * saturated
    outside("PsychroLib 2.5.0, stored", f"vapour pressure, {state}", row["vapour_pressure_pa"], vapour, 0.051, "Pa")
    if t > 0.01:
        ratio = air.humidity_ratio(t, rh, row["pressure_pa"])
        outside(
            "PsychroLib 2.5.0, stored",
            f"humidity ratio, {state}",
            row["humidity_ratio_psychrolib"],
            ratio,
            6e-7,
            "kg/kg",
        )
        # CoolProp has the real-gas enhancement factor, 0.4 to 0.5 % at sea level, and at worst 1 % near boiling
        outside(
            "CoolProp 8.0.0, stored",
            f"humidity ratio, {state}",
            row["humidity_ratio_coolprop"],
            ratio,
            0.006 * ratio + 1e-6,
            "kg/kg",
        )
    dew = row["dew_point_psychrolib_c"]
    if dew > 0.01 and t > 0.01:
        outside("PsychroLib 2.5.0, stored", f"dew point, {state}", dew, air.dew_point_c(t, rh), 6e-4, "degC")
        outside(
            "CoolProp 8.0.0, stored",
            f"dew point, {state}",
            row["dew_point_coolprop_c"],
            air.dew_point_c(t, rh),
            0.02,
            "degC",
        )
    elif dew < 0.0:  # a frost point: the ice curve there must give back the vapour pressure
        frost = air.saturation_pressure_over_ice_pa(dew)
        outside(
            "PsychroLib 2.5.0, stored",
            f"vapour pressure at the frost point, {state}",
            vapour,
            frost,
            6e-5 * vapour + 0.03,
            "Pa",
        )
    outside("separate program, handbook eq. 4-5", f"EMC, {state}", row["emc_percent"], emc_percent(t, rh), 6e-4, "% MC")


@pytest.mark.parametrize(("t", "rh"), [(5, 80), (21, 25), (21, 45), (24, 60), (35, 70), (50, 20)])
def test_moist_air_live(t, rh, outside):
    dew = psychrolib.GetTDewPointFromRelHum(t, rh / 100)
    ratio = psychrolib.GetHumRatioFromRelHum(t, rh / 100, 101325)
    if dew > 0.01:  # PsychroLib iterates to 0.001 K
        outside("PsychroLib, live", f"dew point, {t} degC, {rh} % RH", dew, air.dew_point_c(t, rh), 1e-3, "degC")
    outside(
        "PsychroLib, live", f"humidity ratio, {t} degC, {rh} % RH", ratio, air.humidity_ratio(t, rh), 1e-12, "kg/kg"
    )
    outside(
        "CoolProp, live",
        f"humidity ratio, {t} degC, {rh} % RH",
        HAPropsSI("W", "T", t + 273.15, "P", 101325, "R", rh / 100),
        air.humidity_ratio(t, rh),
        6e-3 * ratio,
        "kg/kg",
    )
    outside(
        "ideal gas, PsychroLib vapour pressure",
        f"absolute humidity, {t} degC, {rh} % RH",
        psychrolib.GetVapPresFromRelHum(t, rh / 100) / (8.314462618 / 0.01801528 * (t + 273.15)) * 1000,
        air.absolute_humidity_g_m3(t, rh),
        1e-3,
        "g/m3",
    )


def test_weather_humidity_is_over_water_below_freezing(outside):
    """First hour of a published typical year of Chicago: -12.2 degC, dew point -16.1 degC, stated RH 73 %."""
    outside(
        "typical year TMY3, Chicago, hour 1",
        "RH from dew point, over water",
        73.0,
        air.rh_percent_from_dew_point(-12.2, -16.1),
        0.5,
        "%",
    )
    over_ice = 100 * air.saturation_pressure_over_ice_pa(-16.1) / air.saturation_pressure_over_ice_pa(-12.2)
    assert abs(over_ice - 73.0) > 2.0
