"""EPW weather files, with a synthetic year written by the tests."""

from __future__ import annotations

import numpy as np
import pytest

from woodlib.air.psychrometrics import rh_percent_from_dew_point
from woodlib.air.weather_file import read_weather_file


@pytest.mark.parametrize(
    ("leap", "per_hour", "rows"), [(False, 1, 8760), (True, 1, 8784), (False, 2, 17520), (True, 4, 35136)]
)
def test_whole_years(epw, tmp_path, leap, per_hour, rows):
    year = read_weather_file(epw["write_epw"](tmp_path / "year.epw", leap=leap, per_hour=per_hour))
    assert year.day.size == rows and not year.partial
    assert 0 < year.day[0] < 1 / 24 and 365 - 1 / 24 < year.day[-1] < 365
    days_held = [np.unique(np.floor(year.day[year.month == month])).size for month in range(1, 13)]
    assert days_held == [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
    assert year.label == "Invented Harbour, outdoors" and f"{rows} readings" in year.remarks[0]


def test_values_and_their_place_in_the_year(epw, tmp_path):
    rows = epw["synthetic_year"]()
    year = read_weather_file(epw["write_epw"](tmp_path / "year.epw", rows), label="harbour")
    assert year.temperature_c[4000] == float(rows[4000][6]) and year.rh_percent[4000] == float(rows[4000][8])
    assert year.day[4000] == pytest.approx((4000 + 0.5) / 24)
    assert year.label == "harbour"
    july = [float(row[8]) for row in rows if row[1] == "7"]
    assert year.monthly().rh_percent[6] == pytest.approx(np.mean(july))
    assert year.monthly_mean_of_emc().shape == (12,)


def test_missing_values(epw, tmp_path):
    rows = epw["synthetic_year"]()
    rows[10][6] = "99.9"
    rows[20][8] = "999"
    rows[30][8], rows[30][7] = "999", "99.9"
    rows[40][8] = "108"
    year = read_weather_file(epw["write_epw"](tmp_path / "year.epw", rows))
    assert year.day.size == 8758
    assert np.min(np.abs(year.day - 10.5 / 24)) > 0.04 and np.min(np.abs(year.day - 30.5 / 24)) > 0.04
    at = int(np.argmin(np.abs(year.day - 20.5 / 24)))
    assert year.rh_percent[at] == pytest.approx(rh_percent_from_dew_point(float(rows[20][6]), float(rows[20][7])))
    assert year.rh_percent[int(np.argmin(np.abs(year.day - 40.5 / 24)))] == 100.0
    told = " ".join(year.remarks)
    assert "missing in 1 readings" in told
    assert "1 readings above 100 %" in told and "108 %" in told
    assert "2 of 8760 readings lack" in told


def test_a_month_without_values_makes_the_year_partial(epw, tmp_path):
    rows = epw["synthetic_year"]()
    for row in rows:
        if row[1] == "3":
            row[6] = "99.9"
    year = read_weather_file(epw["write_epw"](tmp_path / "year.epw", rows))
    assert year.missing_months == (3,) and year.partial


def test_marked_and_sixteen_bit_files(epw, tmp_path):
    path = epw["write_epw"](tmp_path / "year.epw")
    text = path.read_text()
    expected = read_weather_file(path)
    for content in (text.encode("utf-8-sig"), text.encode("utf-16"), text.replace("\n", "\r\n").encode()):
        path.write_bytes(content)
        assert np.array_equal(read_weather_file(path).rh_percent, expected.rh_percent)


def test_very_cold_places_can_be_read(epw, tmp_path):
    from woodlib.air.indoors import indoors

    rows = epw["synthetic_year"]()
    rows[0][6], rows[0][7] = "-58.0", "-60.0"
    year = read_weather_file(epw["write_epw"](tmp_path / "year.epw", rows))
    assert year.temperature_c[0] == -58.0
    assert indoors(year, 20, None, 2.0).driest().emc_percent > 0
