"""Bad inputs to the air and moisture functions: one sentence each, naming what was wrong and what is accepted."""

from __future__ import annotations

import runpy
from pathlib import Path

import numpy as np
import pytest

from woodlib.air import psychrometrics as air
from woodlib.air.climates import find_climate, year_from_climate
from woodlib.air.hygrometer_log import read_hygrometer_log
from woodlib.air.indoors import indoors, seasonal_moisture_gain_g_m3
from woodlib.air.log_times import read_times
from woodlib.air.weather_file import read_weather_file
from woodlib.air.year import Year
from woodlib.errors import InputError, WoodlibError
from woodlib.moisture.equilibrium import (
    air_for_meter_reading,
    emc_percent,
    emc_slope,
    hysteresis_band,
    rh_percent_for_emc,
)

_EPW = runpy.run_path(str(Path(__file__).parents[1] / "air" / "epw.py"))
HOUSE = Year.steady(20, 45)

NUMBERS = [
    (lambda: emc_percent(20, 101), r"rh_percent is 101 %; it must be 0 to 100 %"),
    (lambda: emc_percent(20, -1), "rh_percent is -1 %"),
    (lambda: emc_percent(20, float("nan")), "rh_percent is nan %"),
    (lambda: emc_percent(20, float("inf")), "rh_percent is inf %"),
    (lambda: emc_percent(-41, 50), r"temperature_c is -41 degC; it must be -40 to 100 degC"),
    (lambda: emc_percent("-3 kelvin", 50), "temperature_c is"),
    (lambda: emc_percent("20 mm", 50), "temperature_c"),
    (lambda: emc_percent("warm", 50), "temperature_c"),
    (lambda: emc_percent(None, 50), "temperature_c is None, which is not a number"),
    (lambda: emc_percent(True, 50), "temperature_c is True, which is not a number"),
    (lambda: emc_percent(20, [40, 50, 140, 150]), r"value 3 of 4; 2 in all"),
    (lambda: emc_percent(20, ["a", "b"]), "which is not a number"),
    (lambda: emc_percent(20, [[1, 2], [3]]), "which is not a number"),
    (lambda: emc_percent(20, []), "rh_percent is empty"),
    (lambda: emc_percent(20, 3 + 4j), "which is not a number"),
    (lambda: emc_percent(20, np.ma.masked_array([40.0, 50.0], [False, True])), "value 2 of 2"),
    (lambda: emc_percent([1, 2, 3], [40, 50]), r"do not fit together: temperature_c \(3,\), rh_percent \(2,\)"),
    (lambda: emc_slope(20, 100.5), "rh_percent is 100.5 %"),
    (lambda: rh_percent_for_emc(20, 29), r"mc_percent is 29 %, wetter than saturated air keeps wood \(28.8 %"),
    (lambda: rh_percent_for_emc(20, [8, 60]), "mc_percent is 60 %"),
    (lambda: rh_percent_for_emc([20, 30], [8, 9, 10]), "do not fit together"),
    (lambda: hysteresis_band(20, 50, 0.2), "ratio is 0.2"),
    (lambda: hysteresis_band([20, 30], 50, [0.8, 0.85, 0.9]), "do not fit together"),
    (lambda: air_for_meter_reading(-1, 20), "mc_percent is -1 %"),
    (lambda: air_for_meter_reading([8, 9], 20), "one reading at a time"),
    (lambda: air_for_meter_reading(8, 20, 99), "meter_error_percent is 99 %"),
    (lambda: air.saturation_pressure_pa(-300), r"temperature_c is -300 degC; it must be -100 to 200 degC"),
    (lambda: air.saturation_pressure_over_ice_pa(5), "no ice above 0.01 degC"),
    (lambda: air.dew_point_c(20, 0), r"rh_percent is 0 %; it must be above 0 and up to 100 %: perfectly dry air"),
    (lambda: air.dew_point_of_pressure_c(0), "vapour_pressure_pa is 0 Pa"),
    (lambda: air.humidity_ratio(20, 50, 101.325), "pressure_pa is 101.325 Pa"),
    (lambda: air.absolute_humidity_g_m3(20, 150), "rh_percent is 150 %"),
    (lambda: air.indoor_rh_percent(0, 80, 21, 300), "moisture_gain_g_m3 is 300 g/m3"),
    (lambda: air.rh_percent_from_dew_point(20, 999), "dew_point_c is 999 degC"),
    (lambda: seasonal_moisture_gain_g_m3(999, 3), "outdoor_temperature_c is 999 degC"),
    (lambda: emc_percent(21, "25 % MC"), "rh_percent is '25 % MC', a moisture content and not a relative humidity"),
    (
        lambda: rh_percent_for_emc(21, "45% RH"),
        "mc_percent is '45% RH', a relative humidity and not a moisture content",
    ),
]

YEARS = [
    (lambda: Year.from_seasons(winter=(20, 30), spring=(20, 40), summer=(25, 60)), r"3 seasons were given .*give two"),
    (lambda: Year.from_seasons(), "0 seasons were given"),
    (lambda: Year.from_seasons(winter=(20, 30)), "1 season was given .winter.; give two"),
    (
        lambda: Year.from_seasons(winter=(20, "8 % MC"), summer=(25, 60)),
        "a moisture content and not a relative humidity",
    ),
    (lambda: Year.from_seasons(wintr=(20, 30), summer=(25, 60)), "did you mean winter"),
    (lambda: Year.from_seasons(winter=(20, 30), January=(25, 60)), "falls in January, which is given already"),
    (lambda: Year.from_seasons(autumn=(20, 30), fall=(25, 60)), "given already"),
    (
        lambda: Year.from_seasons(winter=30, summer=(25, 60)),
        r"winter is 30; write its temperature and relative humidity",
    ),
    (lambda: Year.from_seasons(winter={"temp": 20}, summer=(25, 60)), "winter is"),
    (lambda: Year.from_seasons(winter=(20, 130), summer=(25, 60)), "winter relative humidity is 130 %"),
    (lambda: Year.from_seasons(winter=(200, 30), summer=(25, 60)), "winter temperature is 200 degC"),
    (lambda: Year.from_seasons(winter=([20, 21], 30), summer=(25, 60)), "winter holds a list"),
    (lambda: Year.from_seasons(hemisphere="east", winter=(20, 30), summer=(25, 60)), "hemisphere is 'east'"),
    (lambda: Year([1, 2], [20], [40, 50]), "have 2, 1 and 2 values"),
    (lambda: Year([2, 1], [20, 20], [40, 50]), "day does not rise"),
    (lambda: Year([-5, 1], [20, 20], [40, 50]), "day is -5 days"),
    (lambda: Year([1.0, 2.0], [20, 21], []), "rh_percent is empty"),
    (lambda: Year([1.0], [20], [40], vapour_pressure_pa=[-3]), "vapour_pressure_pa is -3 Pa"),
    (lambda: Year([1.0, 2.0], [20, 21], [40, 41], vapour_pressure_pa=[900.0]), "vapour_pressure_pa has 1 value"),
    (lambda: Year.steady(20, 120), "rh_percent is 120 %"),
    (lambda: Year.steady([20, 21], 40), "temperature_c holds 2 values"),
    (lambda: find_climate("Atlantis"), "did you mean Atlanta"),
    (lambda: find_climate("Qqqqq"), "is not carried; write one of Aberdeen, "),
    (lambda: find_climate("New York"), "fits 2 places: New York Central Park, New York airport"),
    (lambda: year_from_climate(""), "place is ''"),
    (lambda: year_from_climate(7), "place is 7"),
    (lambda: indoors("Chicago", 20, 25, 2), "outdoor_year is 'Chicago'; give a Year"),
    (lambda: indoors(HOUSE, 25, 20, 2), r"cooling_set_point_c is 20 degC, below heating_set_point_c 25 degC"),
    (lambda: indoors(HOUSE, 20, 25, [1, 2, 3]), "moisture_gain_g_m3 has 3 values and the year 12 readings"),
    (lambda: indoors(HOUSE, 20, 25, -15), "more water than the air holds"),
    (lambda: indoors(HOUSE, 20, 25, 2, humidifier_holds_percent=60, dehumidifier_holds_percent=40), "would fight"),
    (lambda: indoors(HOUSE, [20, 21], 25, 2), "heating_set_point_c holds 2 values"),
    (lambda: indoors(HOUSE, 70, None, 2), "heating_set_point_c is 70 degC.*for Fahrenheit"),
    (lambda: read_times(["01/02/2024"], "backwards"), "date_order is 'backwards'"),
]

HEAD = "time,temperature,humidity\n"
ROWS = "2024-01-30 12:00,20,35\n2024-01-31 12:00,21,36\n"
LOGS = [
    ("", {}, "is empty"),
    ("   \n\n", {}, "is empty"),
    (HEAD, {}, "has a heading and no readings"),
    (HEAD + "2024-01-30 12:00,20,35\n", {}, "has 1 usable reading; a log needs at least two"),
    ("hello\nworld\n", {}, "one column only"),
    (ROWS, {}, "has no heading with a time"),
    ("time,temperature\n2024-01-30 12:00,20\n", {}, "has no relative humidity column among 'time', 'temperature'"),
    ("time,humidity\n2024-01-30 12:00,20\n", {}, "has no temperature column"),
    ("temperature,humidity\n20,40\n", {}, "has no time column"),
    (
        "time,temp in,temp out,rh\n2024-01-30,1,2,3\n2024-01-31,1,2,3\n",
        {},
        r"several columns could be the temperature: 'temp in' .1 to 1., 'temp out' .2 to 2.; say which sensor",
    ),
    (HEAD + ROWS, {"rh_column": "RH"}, "rh_column 'RH' is not in the log; its columns are"),
    (HEAD + ROWS, {"temperature_unit": "kelvin"}, "temperature_unit is 'kelvin'"),
    (HEAD + ROWS, {"date_order": "ymd"}, "date_order is 'ymd'"),
    (
        HEAD + "01/02/2024 00:00,20,35\n01/02/2024 01:00,21,36\n",
        {},
        r"can be read in more than one order; say which: \"day first\" or \"month first\" .log_date_order in a brief",
    ),
    (HEAD + "yesterday,20,35\ntoday,21,36\n", {}, "no usable reading among 1 rows|no usable reading among 2 rows"),
    (HEAD + "2024-01-30 12:00,20,135\n2024-01-31 12:00,21,136\n", {}, "outside 1 to 100 %"),
    (HEAD + "2024-01-30 12:00,x,35\n2024-01-31 12:00,y,36\n", {}, "2 with no temperature"),
    (HEAD + "2024-01-30 12:00,40,35\n2024-01-31 12:00,41,36\n", {}, "does not name the unit of 'temperature'"),
    (
        HEAD + "2024-01-30 12:00,20,5,35,5\n2024-01-31 12:00,21,5,36,5\n",
        {},
        "comma both between columns and in numbers",
    ),
    (b"PK\x03\x04 spreadsheet", {}, "is a spreadsheet or document"),
    (
        HEAD + "2024-01-30 12:00,293,35\n2024-01-31 12:00,294,36\n",
        {},
        "tells nothing; say .degC. or .degF. .log_temperature_unit in a brief",
    ),
    (
        "time,temp (C),humidity\n2024-01-30 12:00,70,35\n2024-01-31 12:00,72,36\n",
        {},
        "has 71 as its middle value under 'temp .C.'",
    ),
    ("time,temp,humidity\n,degC,%\n2024-01-30 12:00,70,35\n2024-01-31 12:00,72,36\n", {}, "hotter than any room"),
    (HEAD + "\n".join(["2024-01-30 12:00,20,35"] * 5), {}, "has 1 usable reading"),
]


def _cut(rows):
    return rows[:5000]


def _short_row(rows):
    rows[7] = rows[7][:4]
    return rows


def _letters(rows):
    rows[9][6] = "warm"
    return rows


def _disorder(rows):
    rows[100], rows[200] = rows[200], rows[100]
    return rows


def _month_13(rows):
    rows[-1][1] = "13"
    return rows


def _nothing_known(rows):
    return [[*row[:6], "99.9", "99.9", "999", *row[9:]] for row in rows]


def _bad_month(rows):
    rows[5][1] = "nan"
    return rows


WEATHER = [
    (_cut, "holds 5000 data rows, where a year has 8760"),
    (_short_row, "has 4 fields in data row 8"),
    (_letters, "'warm' as dry bulb in data row 10"),
    (_disorder, "out of order at data row"),
    (_month_13, "out of order at data row 8760 .month 13"),
    (_nothing_known, "has no hour with both"),
    (_bad_month, "out of order at data row 6"),
    (lambda rows: [], "holds 0 data rows|ends within its 8"),
]


def _one_sentence(error: InputError) -> str:
    text = str(error)
    assert isinstance(error, WoodlibError) and isinstance(error, ValueError)
    assert len(error.problems) == 1 and "\n" not in text and text.endswith((".", "?")), text
    assert len(text) < 500
    return text


@pytest.mark.parametrize(("call", "fragment"), NUMBERS + YEARS)
def test_one_sentence_for_one_bad_value(call, fragment):
    with pytest.raises(InputError, match=fragment) as caught:
        call()
    _one_sentence(caught.value)


@pytest.mark.parametrize(("content", "options", "fragment"), LOGS)
def test_logs_that_cannot_be_used(tmp_path, content, options, fragment):
    path = tmp_path / "log.csv"
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    with pytest.raises(InputError, match=fragment) as caught:
        read_hygrometer_log(path, **options)
    _one_sentence(caught.value)


@pytest.mark.parametrize(("spoil", "fragment"), WEATHER)
def test_weather_files_that_cannot_be_used(tmp_path, spoil, fragment):
    path = _EPW["write_epw"](tmp_path / "year.epw", spoil(_EPW["synthetic_year"]()))
    with pytest.raises(InputError, match=fragment) as caught:
        read_weather_file(path)
    _one_sentence(caught.value)


@pytest.mark.parametrize("reader", [read_hygrometer_log, read_weather_file])
@pytest.mark.parametrize(
    ("path", "fragment"),
    [("nowhere.csv", "is not there; check the folder"), (".", "is a folder"), (None, "give the name of a file")],
)
def test_files_that_are_not_there(reader, path, fragment):
    with pytest.raises(InputError, match=fragment) as caught:
        reader(path)
    _one_sentence(caught.value)


@pytest.mark.parametrize(
    "content", ["LOCATION,Nowhere\nDESIGN CONDITIONS,0\n", "time,temp,rh\n" * 20, "\n\nLOCATION,X\n" * 9]
)
def test_text_that_is_no_weather_file(tmp_path, content):
    path = tmp_path / "year.epw"
    path.write_text(content)
    with pytest.raises(InputError, match="header lines|begins LOCATION") as caught:
        read_weather_file(path)
    _one_sentence(caught.value)


def test_all_problems_are_told_at_once():
    with pytest.raises(InputError) as caught:
        emc_percent(500, 101)
    assert len(caught.value.problems) == 2
    with pytest.raises(InputError) as caught:
        Year.from_seasons(hemisphere="east", wintr=(20, 30), summer=(25, 160), spring=5)
    assert len(caught.value.problems) == 5
    with pytest.raises(InputError) as caught:
        indoors(HOUSE, 99, -40, 400, humidifier_holds_percent=200)
    assert len(caught.value.problems) >= 4


def test_log_without_two_columns_names_both(tmp_path):
    path = tmp_path / "log.csv"
    path.write_text("time,battery\n2024-01-01,5\n")
    with pytest.raises(InputError) as caught:
        read_hygrometer_log(path)
    assert len(caught.value.problems) == 2
