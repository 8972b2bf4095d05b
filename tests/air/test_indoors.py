"""Outdoor air brought indoors, and the climates it comes from."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air.climates import all_climates, find_climate, year_from_climate
from woodlib.air.indoors import indoors, seasonal_moisture_gain_g_m3
from woodlib.air.psychrometrics import vapour_pressure_pa
from woodlib.air.year import MID_MONTH, Year

places = st.sampled_from([climate.place for climate in all_climates()])


@given(places, st.floats(15, 24), st.floats(0, 6), st.floats(0, 6))
def test_gain_never_dries_a_house(place, heat, one, more):
    outdoors = year_from_climate(place)
    low, high = (indoors(outdoors, heat, 26, gain) for gain in sorted((one, more)))
    assert np.all(low.rh_percent <= high.rh_percent + 1e-9)
    for house in (low, high):
        assert np.all((house.temperature_c >= heat) & (house.temperature_c <= 26))
        assert np.all((house.rh_percent >= 0) & (house.rh_percent <= 100))
        assert any("moisture gain" in remark for remark in house.remarks)


@given(places, st.floats(15, 22), st.floats(0.5, 5))
def test_a_warmer_room_is_a_drier_room(place, heat, warmer):
    outdoors = year_from_climate(place)
    cool_room, warm_room = (indoors(outdoors, temperature, None, 0.0) for temperature in (heat, heat + warmer))
    assert np.all(warm_room.rh_percent <= cool_room.rh_percent + 1e-9)


@given(places)
def test_water_is_kept_when_nothing_condenses(place):
    outdoors = year_from_climate(place)
    house = indoors(outdoors, 21, None, 0.0)
    free = house.rh_percent < 100
    assert house.vapour_pressure_pa[free] == pytest.approx(outdoors.vapour_pressure_pa[free])
    assert np.all(house.vapour_pressure_pa <= outdoors.vapour_pressure_pa + 1e-9)


def test_between_the_set_points_the_windows_are_open():
    outdoors = Year(MID_MONTH, np.linspace(0, 33, 12), np.full(12, 50.0))
    house = indoors(outdoors, 20, 25, 0.0)
    between = (outdoors.temperature_c > 20) & (outdoors.temperature_c < 25)
    assert between.any()
    assert house.rh_percent[between] == pytest.approx(outdoors.rh_percent[between])
    assert house.temperature_c.min() == 20 and house.temperature_c.max() == 25
    assert indoors(outdoors, 20, None, 0.0).temperature_c.max() == 33


def test_cooling_past_saturation_is_told_and_counted():
    outdoors = Year(MID_MONTH, np.full(12, 32.0), np.array([80.0] * 5 + [30.0] * 7), "hot")
    house = indoors(outdoors, 20, 24, 0.0)
    assert house.rh_percent[:5] == pytest.approx(100.0)
    expected = 80 * vapour_pressure_pa(32, 100) / vapour_pressure_pa(24, 100)
    told = [remark for remark in house.remarks if "past saturation" in remark]
    assert len(told) == 1 and "In 5 of 12" in told[0] and f"{expected:.0f} %" in told[0] and "cooling" in told[0]
    assert house.rh_percent[5:] == pytest.approx(30 * vapour_pressure_pa(32, 100) / vapour_pressure_pa(24, 100))
    dried = indoors(outdoors, 20, 24, 0.0, dehumidifier_holds_percent=55)
    assert dried.rh_percent.max() == 55 and any("hold 55 %" in remark for remark in dried.remarks)
    assert not any("past saturation" in remark for remark in dried.remarks)


def test_damp_cooled_rooms_are_questioned():
    outdoors = year_from_climate("Chicago")
    plain = indoors(outdoors, 21, 24, 0.0)
    assert plain.label == "Chicago, USA, indoors"
    assert plain.rh_percent.max() > 65 and any("air conditioner dries" in remark for remark in plain.remarks)
    for quiet in (indoors(outdoors, 21, None, 0.0), indoors(outdoors, 21, 24, 0.0, dehumidifier_holds_percent=55)):
        assert not any("air conditioner dries" in remark for remark in quiet.remarks)


def test_condensation_without_cooling_blames_cold_surfaces():
    house = indoors(Year([10.0], [22.0], [95.0]), 20, None, 5.0)
    assert house.rh_percent.tolist() == [100.0] and "cold surfaces" in house.remarks[-1]


def test_humidifier_holds_the_winter():
    outdoors = year_from_climate("Helsinki")
    bare, held = (indoors(outdoors, 21, None, 2.0, humidifier_holds_percent=level) for level in (None, 35))
    assert bare.rh_percent.min() < 35 <= held.rh_percent.min()
    damp = bare.rh_percent > 35
    assert np.array_equal(bare.rh_percent[damp], held.rh_percent[damp])
    assert any("humidifier" in remark for remark in held.remarks)


def test_gain_per_month_and_text_set_points():
    outdoors = year_from_climate("Chicago")
    gain = seasonal_moisture_gain_g_m3(outdoors.temperature_c, 3.0)
    faded, steady = indoors(outdoors, "70 degF", "76 degF", gain), indoors(outdoors, "70 degF", "76 degF", 3.0)
    assert faded.temperature_c.min() == pytest.approx(21.1111, abs=1e-3)
    assert faded.rh_percent[0] == pytest.approx(steady.rh_percent[0])
    assert faded.rh_percent[6] < steady.rh_percent[6]


def test_hours_and_their_means_tell_nearly_the_same_house(epw, tmp_path):
    """Monthly means keep the mean vapour pressure, so heated air agrees whether hours or months are brought indoors."""
    from woodlib.air.weather_file import read_weather_file

    hours = read_weather_file(epw["write_epw"](tmp_path / "year.epw"))
    by_hour, by_month = indoors(hours, 30, None, 2.0).monthly(), indoors(hours.monthly(), 30, None, 2.0)
    assert by_month.rh_percent == pytest.approx(by_hour.rh_percent, abs=1e-6)


@pytest.mark.parametrize(
    ("typed", "place"),
    [
        ("chicago", "Chicago"),
        ("  CHICAGO ", "Chicago"),
        ("Zürich", "Zurich"),
        ("Zuerich", "Zurich"),
        ("lisboa", "Lisbon"),
        ("Sevilla", "Seville"),
        ("Delhi", "New Delhi"),
        ("JFK", "New York airport"),
        ("Tokyo", "Tokyo"),
        ("Bogotá", "Bogota"),
        ("London, United Kingdom", "London"),
        ("tucson arizona", "Tucson"),
        ("finland", "Helsinki"),
    ],
)
def test_forgiving_look_up(typed, place):
    assert find_climate(typed).place == place


def test_climate_year_carries_its_source_and_caution():
    year = year_from_climate("Barrow")
    assert "700260.epw" in year.remarks[0] and "derived" in year.remarks[0] and "colder" in year.remarks[1]
    assert year.emc_remarks()
    assert not year.partial and year.day.size == 12


def test_every_climate_is_whole_and_possible():
    for climate in all_climates():
        assert len(climate.temperature_c) == len(climate.rh_percent) == len(climate.vapour_pressure_pa) == 12
        assert -90 <= climate.latitude_deg <= 90 and climate.status == "derived" and "weather file" in climate.source
        warmest = int(np.argmax(climate.temperature_c)) + 1
        if abs(climate.latitude_deg) > 30:  # beyond the tropics the calendar tells the hemisphere
            assert (warmest in (6, 7, 8, 9)) == (climate.latitude_deg > 0), climate.place
