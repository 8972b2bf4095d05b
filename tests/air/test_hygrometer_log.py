"""Hygrometer logs in the many shapes loggers and spreadsheets write them."""

from __future__ import annotations

import datetime

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air.hygrometer_log import calendar_day, read_hygrometer_log
from woodlib.air.log_columns import kinds_of
from woodlib.air.log_times import read_times

PLAIN = "time,temperature,humidity\n2024-01-30 12:00,20.5,35\n2024-01-31 12:00,21.0,34.5\n2024-02-01 12:00,21.5,36\n"


def test_plain_log(write_log):
    year = read_hygrometer_log(write_log(PLAIN))
    assert year.temperature_c.tolist() == [20.5, 21.0, 21.5]
    assert year.rh_percent.tolist() == [35.0, 34.5, 36.0]
    assert year.day == pytest.approx([29.5, 30.5, 31 + 0.5 * 28 / 29])
    assert year.missing_months == tuple(range(3, 13)) and year.partial
    assert any("no readings in March" in remark for remark in year.remarks)


@pytest.mark.parametrize(
    "content",
    [
        PLAIN.replace(",", ";"),
        PLAIN.replace(",", "\t"),
        PLAIN.replace(",", "|"),
        PLAIN.replace(",", ";").replace(".", ","),
        PLAIN.replace(",", "\t").replace(".", ","),
        PLAIN.replace("\n", "\r\n"),
        PLAIN.replace("\n", "\n\n"),
        PLAIN.replace("\n", ",\n"),
        PLAIN.replace("humidity\n", "humidity\nyyyy-mm-dd,°C,%\n").replace("yyyy-mm-dd", ""),
        "Logger 7\nSerial: 12345\nInterval 1 day, started 2024\n\n" + PLAIN,
        PLAIN.replace("time,temperature,humidity", "Date/Time,Temp (°C),RH (%)"),
        PLAIN.replace("time,temperature,humidity", "Zeit,Temperatur [°C],rel. Luftfeuchte [%]"),
        PLAIN.replace("time,temperature,humidity", "Horodatage,Température,Humidité relative"),
        PLAIN.replace("time,temperature,humidity", "Fecha,Temperatura,Humedad"),
        PLAIN.replace("time,temperature,humidity", "Data,Temperatura,Umidità"),
        PLAIN.replace("time,temperature,humidity", "Tijd,Temperatuur,Luchtvochtigheid"),
        PLAIN.replace("time,temperature,humidity", "Tid,Temperatur,Luftfuktighet"),
        PLAIN.replace("time,temperature,humidity", "Aika,Lämpötila,Kosteus"),
        PLAIN.replace("time,temperature,humidity", "Czas,Temperatura,Wilgotność"),
        PLAIN.replace("time,temperature,humidity", "日時,温度,湿度"),
        PLAIN.replace("humidity", "humidity,dew point (°C)")
        .replace("35\n", "35,4\n")
        .replace("34.5\n", "34.5,4\n")
        .replace("36\n", "36,5\n"),
        PLAIN.replace("2024-01-30 12:00", "2024-01-30T12:00:00Z").replace(
            "2024-01-31 12:00", "2024-01-31T12:00:00+01:00"
        ),
        PLAIN.replace("2024-01-30", "30.01.2024")
        .replace("2024-01-31", "31.01.2024")
        .replace("2024-02-01", "01.02.2024"),
        PLAIN.replace("2024-01-30", "01/30/2024")
        .replace("2024-01-31", "01/31/2024")
        .replace("2024-02-01", "02/01/2024"),
        PLAIN.replace("2024-01-30", "30/01/24").replace("2024-01-31", "31/01/24").replace("2024-02-01", "01/02/24"),
        PLAIN.replace("2024-01-30", "24/01/30").replace("2024-01-31", "24/01/31").replace("2024-02-01", "24/02/01"),
        PLAIN.replace("2024-01-30 12:00", "Jan 30 2024 12:00 PM")
        .replace("2024-01-31 12:00", "31-Jan-2024 12:00")
        .replace("2024-02-01 12:00", "1 February 2024 12:00"),
        PLAIN.replace("2024-01-30 12:00", "1706616000")
        .replace("2024-01-31 12:00", "1706702400")
        .replace("2024-02-01 12:00", "1706788800"),
        PLAIN.replace("2024-01-30 12:00", "1706616000000")
        .replace("2024-01-31 12:00", "1706702400000")
        .replace("2024-02-01 12:00", "1706788800000"),
        PLAIN.replace("2024-01-30 12:00", "45321.5")
        .replace("2024-01-31 12:00", "45322.5")
        .replace("2024-02-01 12:00", "45323.5"),
        PLAIN.replace("2024-01-30 12:00", "20240130 1200")
        .replace("2024-01-31 12:00", "20240131T120000")
        .replace("2024-02-01 12:00", "202402011200"),
        PLAIN.replace("time,", "date,clock time,").replace(" 12:00", ",12:00"),
        PLAIN.replace("time,", "Datum,Uhrzeit,").replace(" 12:00", ",12:00:00"),
        PLAIN.replace("20.5", "68.9")
        .replace("21.0", "69.8")
        .replace("21.5", "70.7")
        .replace("temperature", "Temperature (°F)"),
        PLAIN.replace("20.5", "68.9").replace("21.0", "69.8").replace("21.5", "70.7"),
        PLAIN.replace(",35\n", ",0.35\n").replace("34.5", "0.345").replace(",36\n", ",0.36\n"),
        PLAIN.replace("20.5", "20.5 °C").replace("34.5", "34.5 %"),
        "\n".join(
            ",".join(f'"{cell}"' for cell in line.replace(".", ",").split(";"))
            for line in PLAIN.replace(",", ";").splitlines()
        ),
        "\n".join(reversed(PLAIN.strip().split("\n")[1:])).join(["time,temperature,humidity\n", "\n"]),
    ],
)
def test_the_same_three_readings_in_many_shapes(write_log, content):
    year = read_hygrometer_log(write_log(content))
    assert year.temperature_c == pytest.approx([20.5, 21.0, 21.5])
    assert year.rh_percent == pytest.approx([35.0, 34.5, 36.0])
    assert year.day == pytest.approx([29.5, 30.5, 31 + 0.5 * 28 / 29], abs=1e-6)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
def test_encodings(write_log, encoding):
    text = PLAIN.replace("temperature", "Température °C")
    assert read_hygrometer_log(write_log(text, encoding)).rh_percent.tolist() == [35.0, 34.5, 36.0]


def test_named_columns_and_unit(write_log):
    text = (
        PLAIN.replace("time,temperature,humidity", "when,A,B")
        .replace("20.5", "45")
        .replace("21.0", "46")
        .replace("21.5", "47")
    )
    year = read_hygrometer_log(
        write_log(text), time_column="when", temperature_column="a", rh_column="B", temperature_unit="F"
    )
    assert year.temperature_c == pytest.approx([(t - 32) / 1.8 for t in (45, 46, 47)])


def test_two_sensors_are_asked_for_and_then_read(write_log):
    heading = "time,temperature room,temperature shed,RH room,RH shed\n"
    text = heading + "2024-01-01 00:00,20,5,40,80\n2024-01-02 00:00,21,6,41,81\n"
    year = read_hygrometer_log(write_log(text), temperature_column="temperature shed", rh_column="RH shed")
    assert year.rh_percent.tolist() == [80.0, 81.0]


def _hourly(days: int, start: datetime.datetime, form: str) -> list[str]:
    return [
        f"{(start + datetime.timedelta(hours=hour)).strftime(form)},{20 + hour % 3},{40 + hour % 5}"
        for hour in range(24 * days)
    ]


@pytest.mark.parametrize(("form", "told"), [("%d/%m/%Y %H:%M", "day first"), ("%m/%d/%Y %H:%M", "month first")])
def test_order_of_day_and_month_told_by_the_run_of_the_readings(write_log, form, told):
    """Eleven days, none above 12: only one order makes the hours follow one another, also across a small gap."""
    rows = _hourly(11, datetime.datetime(2023, 3, 2), form)
    del rows[100:106]
    year = read_hygrometer_log(write_log("time,temp,rh\n" + "\n".join(rows)))
    assert set(year.month) == {3} and any(told in remark for remark in year.remarks)


def test_asked_order_wins(write_log):
    text = "time,temp,rh\n01/02/2023,20,40\n02/02/2023,20,41\n"
    assert set(read_hygrometer_log(write_log(text), date_order="day first").month) == {2}
    assert read_hygrometer_log(write_log(text), date_order="month first").month.tolist() == [1, 2]


def test_disorder_doubles_gaps_spikes_and_rubbish_are_told_and_never_filled(write_log):
    rows = _hourly(40, datetime.datetime(2023, 1, 1), "%Y-%m-%d %H:%M")
    rows[50] = rows[50].rsplit(",", 1)[0] + ",95"  # a spike
    rows[60] = rows[60].rsplit(",", 1)[0] + ",-999"  # impossible
    rows[61] = rows[61].rsplit(",", 1)[0] + ","  # blank
    rows[62] = "2023-13-45 99:00,20,40"  # no such time
    rows[63] = rows[63].split(",")[0] + ",ERR,40"  # no number
    rows[64] = rows[64].split(",")[0] + ",150,40"  # no such room
    rows.append(rows[70])  # double, and out of order
    del rows[300:400]  # a gap
    year = read_hygrometer_log(write_log("time,temp °C,rh %\n" + "\n".join(rows)))
    assert year.day.size == 24 * 40 - 100 - 5
    assert np.all(np.diff(year.day) > 0) and np.diff(year.day).max() == pytest.approx(101 / 24)
    told = " ".join(year.remarks)
    for words in (
        "5 of 861 rows are left out",
        "1 with an unreadable time",
        "1 with no temperature",
        "1 with no relative humidity",
        "outside 1 to 100 %",
        "outside -40 to 85 degC",
        "have been sorted",
        "1 readings repeat",
        "gaps are left open",
        "begins 2023-01-13",
        "1 readings stand more than 20 % relative humidity off",
        "February (9)",
        "no readings in March",
    ):
        assert words in told, words
    assert year.rh_percent.max() == 95.0


def test_clock_change_in_autumn_is_averaged(write_log):
    text = (
        "time,temp,rh\n2023-10-29 02:00,20,40\n2023-10-29 02:30,20,40\n2023-10-29 02:00,22,50\n2023-10-29 03:00,20,40\n"
    )
    year = read_hygrometer_log(write_log(text))
    assert year.rh_percent.tolist() == [45.0, 40.0, 40.0] and year.temperature_c[0] == 21.0


def test_two_years_are_averaged_month_by_month(write_log):
    start = datetime.date(2023, 1, 1)
    rows = [f"{start + datetime.timedelta(days=day)},20,{30 if day < 365 else 50}" for day in range(365 + 366)]
    year = read_hygrometer_log(write_log("date,temp,rh\n" + "\n".join(rows)))
    assert not year.partial and any("2.0 years" in remark for remark in year.remarks)
    assert year.monthly().rh_percent == pytest.approx([40.0] * 12, abs=0.2)
    assert np.all(np.diff(year.day) > 0)


def test_a_log_over_new_year_keeps_its_order(write_log):
    start = datetime.datetime(2023, 11, 1)
    year = read_hygrometer_log(write_log("time,temp,rh\n" + "\n".join(_hourly(120, start, "%d.%m.%Y %H:%M"))))
    assert np.all(np.diff(year.day) > 0) and set(year.month) == {11, 12, 1, 2}
    assert year.missing_months == tuple(range(3, 11))


@given(
    st.datetimes(datetime.datetime(1990, 1, 1), datetime.datetime(2099, 12, 31)),
    st.sampled_from(
        [
            "%Y-%m-%d %H:%M:%S",
            "%Y/%m/%d %H:%M:%S",
            "%d.%m.%Y %H:%M:%S",
            "%d %b %Y %H:%M:%S",
            "%B %d, %Y %I:%M:%S %p",
            "%Y%m%dT%H%M%S",
            "%Y-%m-%dT%H:%M:%SZ",
            "%A %d.%m.%Y %H.%M.%S",
        ]
    ),
)
def test_times_read_back(when, form):
    when = when.replace(microsecond=0)
    times, _ = read_times([when.strftime(form)])
    assert times[0] == np.datetime64(when, "s")


@given(st.lists(st.text(max_size=25), min_size=1, max_size=5))
def test_rubbish_times_are_unreadable_not_fatal(texts):
    times, _ = read_times(texts, "day first")
    assert times.size == len(texts)


@given(st.datetimes(datetime.datetime(2000, 1, 1), datetime.datetime(2030, 12, 31)), st.integers(1, 10**7))
def test_calendar_day_rises_with_time_and_keeps_the_month(when, seconds):
    times = np.array([when, when + datetime.timedelta(seconds=seconds)], "M8[s]")
    days = calendar_day(times)
    assert days[1] > days[0] >= 0
    from woodlib.air.year import Year

    month = Year(days, [20.0, 20.0], [40.0, 40.0]).month
    assert month.tolist() == [time.astype(datetime.datetime).month for time in times]


@given(
    st.lists(st.tuples(st.floats(-30, 60), st.floats(1.1, 100)), min_size=2, max_size=30),
    st.sampled_from(";\t|"),
    st.booleans(),
)
def test_round_trip_through_a_file(tmp_path_factory, values, separator, comma):
    start = datetime.datetime(2023, 5, 1)
    lines = [separator.join(("time", "temp °C", "RH %"))]
    for index, (temperature, humidity) in enumerate(values):
        numbers = [f"{temperature:.3f}", f"{humidity:.3f}"]
        if comma:
            numbers = [number.replace(".", ",") for number in numbers]
        lines.append(separator.join((str(start + datetime.timedelta(days=index)), *numbers)))
    path = tmp_path_factory.mktemp("log") / "log.csv"
    path.write_text("\n".join(lines), encoding="utf-8")
    typed = np.array([[float(f"{number:.3f}") for number in pair] for pair in values])
    humidity = typed[:, 1]
    hot = typed[:, 0] > 45.0
    # Most of a log hotter than any room is believed only when the unit is said.
    year = read_hygrometer_log(path, temperature_unit="degC" if np.median(typed[:, 0]) > 40.0 else None)
    assert any("hotter than any room" in remark for remark in year.remarks) == bool(hot.any())
    assert year.rh_percent == pytest.approx(humidity, abs=1e-9)
    assert year.temperature_c == pytest.approx(typed[:, 0], abs=1e-9)


@pytest.mark.parametrize(
    ("cell", "kind"),
    [
        ("RH", {"humidity"}),
        ("Relative Humidity (%)", {"humidity"}),
        ("rF [%]", {"humidity"}),
        ("HR", {"humidity"}),
        ("Absolute humidity g/m3", set()),
        ("Dew Point °C", set()),
        ("Taupunkt", set()),
        ("T", {"temperature"}),
        ("Temp, °C (LGR S/N: 1, SEN S/N: 2)", {"temperature"}),
        ("Date Time, GMT-05:00", {"time"}),
        ("timestamp", {"time"}),
        ("Set temperature", set()),
        ("Battery", set()),
        ("2024-01-01 00:00", set()),
        ("Temps", {"time"}),
        ("#", set()),
    ],
)
def test_headings(cell, kind):
    assert kinds_of(cell) == kind
