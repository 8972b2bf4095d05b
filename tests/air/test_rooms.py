"""Rooms from the outdoor air: what each constant does, kinds of house, the band between houses, logs of a few weeks."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air.climates import all_climates, year_from_climate
from woodlib.air.house_year import between_houses, filled, house_year, months_to_log, narrowed
from woodlib.air.rooms import CONSTANTS, all_kinds, find_kind, room_air, with_settings
from woodlib.air.year import MID_MONTH, MONTH_NAMES, Year
from woodlib.errors import InputError

USUAL = all_kinds()[0]
EMPTY = with_settings(USUAL, winter_gain_g_m3=0.0)
places = st.sampled_from([climate.place for climate in all_climates()])
kinds = st.sampled_from(all_kinds())


@given(places, kinds)
def test_every_kind_gives_a_possible_year_everywhere(place, kind):
    year = house_year(year_from_climate(place), kind)
    assert np.all((year.rh_percent > 0) & (year.rh_percent <= kind.rh_at_most_percent))
    assert np.all(year.rh_percent >= kind.rh_at_least_percent)
    assert np.all((year.temperature_c >= kind.set_point_c - 1e-9) & (year.temperature_c < 45))
    band = between_houses(year_from_climate(place), kind)
    for low, middle, high in (band.swing, band.driest, band.dampest):
        assert 0 <= low <= middle < high


def test_an_empty_house_keeps_the_vapour_of_the_outdoor_air():
    outdoors = Year(MID_MONTH, np.linspace(-15, 15, 12), np.full(12, 70.0))
    temperature, humidity = room_air(
        outdoors.temperature_c, outdoors.vapour_pressure_pa, replace(EMPTY, summer_gain_g_m3=0.0)
    )
    inside = Year(MID_MONTH, temperature, humidity)
    assert inside.vapour_pressure_pa == pytest.approx(outdoors.vapour_pressure_pa)


def test_each_constant_moves_its_own_part_of_the_year():
    cold, warm = (-10.0, 200.0), (22.0, 1600.0)
    for name, step, moves_cold, moves_warm in (
        ("set_point_c", 1.0, True, False),
        ("warmer_k", -1.0, False, True),
        ("winter_gain_g_m3", 1.0, True, False),
        ("summer_gain_g_m3", 1.0, False, True),
    ):
        other = replace(USUAL, **{name: getattr(USUAL, name) + step})
        for air, moves in ((cold, moves_cold), (warm, moves_warm)):
            change = abs(room_air(*air, other)[1] - room_air(*air, USUAL)[1])
            assert change > 1.0 if moves else change < 0.6, name


def test_gain_in_the_cold_is_the_physical_one():
    """3 g/m3 at 22 degC are 3e-3 x 461.52 x 295.15 = 409 Pa; saturation at 22 degC is 2645 Pa: 15.5 % RH.

    The straight line from 20 degC runs on to -10 degC, where the gain is half as much again as at 0 degC.
    """
    dry, lived_in = (
        replace(USUAL, set_point_c=22.0, winter_gain_g_m3=gain, summer_gain_g_m3=0.0) for gain in (0.0, 3.0)
    )
    for outdoor_c, more in ((0.0, 15.5), (-10.0, 23.2), (-15.0, 23.2), (10.0, 7.7)):
        got = room_air(outdoor_c, 150.0, lived_in)[1] - room_air(outdoor_c, 150.0, dry)[1]
        assert got == pytest.approx(more, abs=0.1)


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("lived in", "lived in, windows open in summer"),
        ("Open windows in summer", "lived in, windows open in summer"),
        ("tight and new", "tight and new"),
        ("AIR CONDITIONED", "air-conditioned"),
        ("humidified", "humidified in winter"),
        ("museum", "seldom lived in, or a public room"),
        ("wood stove", "heated by a wood stove"),
    ],
)
def test_kinds_by_any_of_their_names(typed, name):
    assert find_kind(typed).name == name


def test_devices():
    outdoors = year_from_climate("Singapore")
    open_house, cooled, dried = (
        house_year(outdoors, find_kind(kind)) for kind in ("lived in", "cooled", "dehumidified")
    )
    assert open_house.rh_percent.min() > 75
    assert cooled.temperature_c.max() == 25 and cooled.rh_percent.max() == 58 and dried.rh_percent.max() == 53
    winter = house_year(year_from_climate("Helsinki"), find_kind("humidified"))
    assert winter.rh_percent.min() == 38 < house_year(year_from_climate("Helsinki"), USUAL).rh_percent.max()
    for kind, setting, words in (
        ("dehumidified", {"rh_at_least_percent": 60}, "the two devices would fight"),
        ("lived in", {"cooled_to_c": 18}, "below the 22.3 degC that heating keeps"),
    ):
        with pytest.raises(InputError, match=words):
            with_settings(find_kind(kind), **setting)


def test_the_band_is_the_same_every_time_and_shrinks_with_what_is_known():
    outdoors = year_from_climate("Chicago")
    band = between_houses(outdoors, USUAL)
    assert band == between_houses(outdoors, USUAL)
    known = between_houses(outdoors, with_settings(USUAL, set_point_c=USUAL.set_point_c))
    assert np.ptp(known.driest) < np.ptp(band.driest)
    sure = replace(USUAL, set_point_sd_k=0, warmer_sd_k=0, winter_gain_sd_g_m3=0, summer_gain_sd_g_m3=0)
    low, _, high = between_houses(outdoors, sure).swing
    assert high - low == pytest.approx(2 * 1.645 * 0.4, abs=0.08)  # what the form itself misses is left


def _house(**constants):
    return with_settings(USUAL, **constants)


def test_two_logs_find_the_house_and_one_finds_its_own_end():
    outdoors = year_from_climate("Chicago")
    dry = _house(set_point_c=20.0, warmer_k=3.5, winter_gain_g_m3=1.6, summer_gain_g_m3=0.8)
    truth = house_year(outdoors, dry)
    names = months_to_log(outdoors, USUAL)
    assert names == ("February", "July")
    places = [MONTH_NAMES.index(name) for name in names]
    logs = [Year(MID_MONTH[at], truth.temperature_c[at], truth.rh_percent[at]) for at in ([places[0]], sorted(places))]
    before = between_houses(outdoors, USUAL)
    one, two = (narrowed(outdoors, log, USUAL, same_days=True) for log in logs)
    after_one, after_two = (between_houses(outdoors, found.room, found.covariance) for found in (one, two))
    assert (
        abs(after_two.swing[1] - np.ptp(truth.emc_percent()))
        < 0.5
        < abs(before.swing[1] - np.ptp(truth.emc_percent())) + 1
    )
    assert np.ptp(after_one.driest) < 0.75 * np.ptp(before.driest)
    assert np.ptp(after_one.dampest) > 0.8 * np.ptp(before.dampest)
    assert np.ptp(after_two.swing) < 0.75 * np.ptp(before.swing)


def test_a_whole_year_of_log_gives_the_constants_back():
    outdoors = year_from_climate("Stockholm")
    truth = {"set_point_c": 20.5, "warmer_k": 5.5, "winter_gain_g_m3": 2.2, "summer_gain_g_m3": -0.4}
    log = house_year(outdoors, replace(USUAL, **truth))
    vague = replace(USUAL, set_point_sd_k=50, warmer_sd_k=50, winter_gain_sd_g_m3=50, summer_gain_sd_g_m3=50)
    found = narrowed(outdoors, log, vague, same_days=True).room
    assert [getattr(found, name) for name in CONSTANTS] == pytest.approx(list(truth.values()), abs=0.02)


def test_missing_months_are_filled_and_named():
    outdoors = year_from_climate("Chicago")
    whole = house_year(outdoors, _house(winter_gain_g_m3=1.5))
    summer = Year(whole.day[4:9], whole.temperature_c[4:9], whole.rh_percent[4:9], "my room")
    year = filled(outdoors, summer, USUAL)
    assert not year.partial and np.array_equal(year.rh_percent[4:9], whole.rh_percent[4:9])
    assert any("no more than a few days of January, February, March, April, October" in told for told in year.remarks)
    assert filled(outdoors, whole, USUAL) is whole


def test_remarks_say_what_was_taken_and_what_a_log_would_do():
    told = " ".join(house_year(year_from_climate("Chicago"), USUAL).remarks)
    for words in (
        "taken as lived in",
        "heated to 22.3 degC",
        "Houses differ",
        "four weeks of February and four of July",
    ):
        assert words in told


def test_outdoor_air_must_be_a_whole_year():
    with pytest.raises(InputError, match="no readings in January, February"):
        house_year(Year(MID_MONTH[2:], np.full(10, 5.0), np.full(10, 80.0)), USUAL)
    with pytest.raises(InputError, match="give a Year"):
        house_year("Chicago", USUAL)  # type: ignore[arg-type]
