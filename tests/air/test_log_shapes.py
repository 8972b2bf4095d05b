"""Logs in the shapes loggers, apps and spreadsheets write them, each with the answer it must give. All are invented."""

from __future__ import annotations

import datetime

import numpy as np
import pytest

from woodlib.air.hygrometer_log import read_hygrometer_log

START = datetime.datetime(2024, 4, 5, 9, 0)
AIR = [(18.7, 45.2), (19.1, 44.0), (19.6, 43.5), (18.2, 47.0), (18.9, 46.1)]
TIMES = [START + datetime.timedelta(hours=7 * step) for step in range(len(AIR))]  # 9:00, 16:00, 23:00, 6:00, 13:00
ISO = [f"{time:%Y-%m-%d %H:%M}" for time in TIMES]


def _rows(form: str, *, heading: str) -> str:
    """Fields t (datetime), c, f, h, n in a format, one line per reading."""
    lines = [
        form.format(
            t=time, c=c, f=1.8 * c + 32, h=h, n=number, e=int((time - datetime.datetime(1970, 1, 1)).total_seconds())
        )
        for number, (time, (c, h)) in enumerate(zip(TIMES, AIR, strict=True), 1)
    ]
    return "\n".join([heading, *lines]) + "\n"


def _half(form: str, am: str, pm: str) -> str:
    """A twelve-hour clock with the halves of the day in some language."""
    lines = ["time,temp C,RH %"]
    for time, (c, h) in zip(TIMES, AIR, strict=True):
        clock = f"{time.hour % 12 or 12}:{time:%M}"
        lines.append(
            f"{time.strftime(form.replace('CLOCK', clock).replace('HALF', pm if time.hour > 11 else am))},{c},{h}"
        )
    return "\n".join(lines)


SAME = {
    "iso with offset": _rows("{t:%Y-%m-%dT%H:%M:%S}+02:00,{c},{h}", heading="timestamp,temperature,humidity"),
    "iso with fraction and Z": _rows("{t:%Y-%m-%dT%H:%M:%S}.000Z,{c},{h}", heading="timestamp,temperature,humidity"),
    "epoch seconds": _rows("{e},{c},{h}", heading="ts,temperature_C,humidity").replace("ts,", "timestamp,"),
    "epoch milliseconds": _rows("{e}000,{c},{h}", heading="time,temp,hum"),
    "epoch seconds with fraction": _rows("{e}.25,{c},{h}", heading="time,temp,hum"),
    "date and clock apart": _rows("{t:%d/%m/%Y},{t:%H:%M:%S},{c},{h}", heading="Date,Time,Temp °C,RH %"),
    "date and clock apart with full stops": _rows(
        "{t:%d.%m.%Y};{t:%H.%M.%S};{c};{h}", heading="Datum;Zeit;Temperatur °C;rF %"
    ),
    "clock column before the date": _rows("{t:%H:%M};{t:%d.%m.%Y};{c};{h}", heading="Zeit;Datum;Temp °C;rF %"),
    "clock before date in one cell": _rows("{t:%H:%M:%S} {t:%d/%m/%Y},{c},{h}", heading="time,temp,rh"),
    "clock before a written date": _rows("{t:%H:%M} {t:%d %B %Y},{c},{h}", heading="time,temp,rh"),
    "two-digit year": _rows("{t:%d.%m.%y} {t:%H:%M},{c},{h}", heading="time,temp,rh"),
    "two-digit year first": _rows("{t:%y/%m/%d} {t:%H:%M},{c},{h}", heading="time,temp,rh"),
    "two-digit year, date and clock apart": _rows(
        "{t:%d.%m.%y};{t:%H.%M};{c};{h}", heading="Datum;Uhrzeit;Temperatur;Feuchte"
    ),
    "am and pm": _half("%m/%d/%Y CLOCK HALF", "AM", "PM"),
    "a. m. and p. m. with a narrow blank": _half("%d/%m/%Y CLOCK\u202fHALF", "a.\u00a0m.", "p.\u00a0m."),
    "vorm. and nachm.": _half("%d.%m.%Y CLOCK HALF", "vorm.", "nachm."),
    "Greek halves": _half("%d/%m/%Y CLOCK HALF", "π.μ.", "μ.μ."),
    "Japanese halves before the clock": _half("%Y/%m/%d HALFCLOCK", "午前", "午後"),
    "Korean": _half("%Y. %m. %d. HALF CLOCK", "오전", "오후"),
    "Hungarian halves": _half("%Y.%m.%d. HALF CLOCK", "de.", "du."),
    "Chinese date": _rows("{t:%Y}年{t:%m}月{t:%d}日 {t:%H:%M},{c},{h}", heading="时间,温度,湿度"),
    "German month": _rows("{t.day}. Apr. 2024 {t:%H:%M};{c};{h}", heading="Zeit;Temperatur;Feuchte"),
    "French month": _rows("{t.day} avr. 2024 {t:%H:%M};{c};{h}", heading="Horodatage;Température;Humidité"),
    "Spanish month": _rows("{t.day} de abril de 2024 {t:%H:%M};{c};{h}", heading="Fecha;Temperatura;Humedad"),
    "Polish month": _rows("{t.day} kwi 2024 {t:%H:%M};{c};{h}", heading="Czas;Temperatura;Wilgotność"),
    "weekday in front": _rows("Fri. {t:%d.%m.%Y} {t:%H:%M:%S},{c},{h}", heading="time,temp,rh"),
    "dash between date and clock": _rows("{t:%d/%m/%Y} - {t:%H:%M},{c},{h}", heading="time,temp,rh"),
    "compact date, clock apart": _rows("{t:%Y%m%d},{t:%H:%M},{c},{h}", heading="date,time,temp,rh"),
    "compact to the minute": _rows("{t:%Y%m%d%H%M},{c},{h}", heading="time,temp,rh"),
    "spreadsheet days": "time,temp,rh\n"
    + "\n".join(
        f"{(time - datetime.datetime(1899, 12, 30)) / datetime.timedelta(days=1):.6f},{c},{h}"
        for time, (c, h) in zip(TIMES, AIR, strict=True)
    ),
    "units in cells": _rows("{t:%Y-%m-%d %H:%M},{c}*C,{h}%", heading="time,temp,rh"),
    "units in cells, nothing in the heading": _rows("{t:%Y-%m-%d %H:%M};{c} °C;{h} %rF", heading="time;A;B"),
    "Fahrenheit in cells": _rows("{t:%Y-%m-%d %H:%M},{f:.2f} °F,{h} % RH", heading="time,temp,rh"),
    "both degrees": _rows("{t:%Y-%m-%d %H:%M},{c},{f:.1f},{h}", heading="time,Temperature (°C),Temperature (°F),RH"),
    "Fahrenheit column first": _rows("{t:%Y-%m-%d %H:%M},{f:.0f},{c},{h}", heading="time,Temp F,Temp C,RH"),
    "row-name field without a name": _rows('"{n}","{t:%Y-%m-%d %H:%M}",{c},{h}', heading='"time","temp","rh"'),
    "counter with a name": _rows("{n},{t:%Y-%m-%d %H:%M},{c},{h}", heading="#,time,temp,rh"),
    "two heading rows": ";Wohnzimmer;\n" + _rows("{t:%Y-%m-%d %H:%M};{c};{h}", heading="Zeit;T;rF"),
    "units row": _rows("{t:%Y-%m-%d %H:%M};{c};{h}", heading="Zeit;Temperatur;Feuchte\n;°C;%"),
    "units alone in the heading": _rows("{t:%Y-%m-%d %H:%M};{c};{h}", heading="Zeit;Kanal 1 [°C];Kanal 1 [%]"),
    "hint of the separator": "sep=;\n" + _rows("{t:%Y-%m-%d %H:%M};{c};{h}", heading="time;temp;rh"),
    "time column without a known name": _rows("{t:%d.%m.%Y %H:%M};{c};{h}", heading="Messung;Temperatur;Feuchte"),
    "epoch beside a written time": _rows("{e},{t:%Y-%m-%d %H:%M},{c},{h}", heading="timestamp,time,temp,rh"),
    "written time beside a zone": _rows("{t:%Y-%m-%d %H:%M},UTC,{c},{h}", heading="time,time zone,temp,rh"),
    "extremes beside the mean": _rows(
        "{t:%Y-%m-%d %H:%M},{c},{f:.1f},{c},{h},{h}", heading="time,temp,max temp,min temp,rh,max rh"
    ),
    "dew point and absolute humidity beside": _rows(
        "{t:%Y-%m-%d %H:%M},{c},{h},7.0,7.9", heading="time,temp °C,rh %,dew point °C,absolute humidity g/m³"
    ),
    "quoted with decimal commas": _rows('"{t:%d.%m.%Y %H:%M}","{c}","{h}"', heading='"Zeit","Temp","rF"').replace(
        '.2","', ',2","'
    ),
    "lone sensor's name in every row": _rows("{t:%Y-%m-%d %H:%M},Shelf,{c},{h}", heading="time,sensor,temp,rh"),
    "battery beside": _rows("{t:%Y-%m-%d %H:%M},{c},{h},97 %", heading="time,temp,rh,battery"),
    "outdoor pair beside the room's": _rows(
        "{t:%Y-%m-%d %H:%M},{c},{h},7.5,81",
        heading="time,Indoor temperature,Indoor humidity,Outdoor temperature,Outdoor humidity",
    ),
    "outdoor humidity beside the room's": _rows("{t:%Y-%m-%d %H:%M},{c},{h},88", heading="time,T in,RH in,RH out"),
    "outdoor pair, German": _rows(
        "{t:%Y-%m-%d %H:%M};3.1;88;{c};{h}", heading="Zeit;T außen;rF außen;T innen;rF innen"
    ),
    "serial lines above": "Logger: 17\nStarted: 5 April 2024\nInterval;7 h\n\n"
    + _rows("{t:%d.%m.%Y %H:%M};{c};{h}", heading="Datum/Uhrzeit;Temp [°C];r.F. [%]"),
    "blanks round every cell": _rows(" {t:%Y-%m-%d %H:%M} , {c} , {h} ", heading=" time , temp , rh "),
    "separator behind": _rows("{t:%Y-%m-%d %H:%M};{c};{h};", heading="time;temp;rh;"),
}


@pytest.mark.parametrize("shape", SAME)
def test_five_readings_in_many_shapes(write_log, shape):
    year = read_hygrometer_log(write_log(SAME[shape]))
    first = 31 + 28 + 31 + 4  # days before 5 April on a calendar of 365
    assert year.temperature_c == pytest.approx([c for c, _ in AIR], abs=0.03)
    assert year.rh_percent == pytest.approx([h for _, h in AIR])
    assert year.day == pytest.approx([first + (9 + 7 * step) / 24 for step in range(5)], abs=1e-5)


MANY = {
    "by sensor in the heading": (
        _rows("{t:%Y-%m-%d %H:%M},{c},{h},24,30", heading="time,T shelf,RH shelf,T attic,RH attic"),
        {"sensor": "shelf"},
    ),
    "by a number": (
        _rows("{t:%Y-%m-%d %H:%M},24,30,{c},{h}", heading="time,Temp1,Hum1,Temp2,Hum2"),
        {"sensor": "2"},
    ),
    "by the upper of two heading rows": (
        ";Küche;;Diele;\n" + _rows("{t:%Y-%m-%d %H:%M};24;30;{c};{h}", heading="Zeit;T;rF;T;rF"),
        {"sensor": "Diele"},
    ),
    "outdoors when asked for": (
        _rows("{t:%Y-%m-%d %H:%M},21,40,{c},{h}", heading="time,temp in,rh in,temp out,rh out"),
        {"sensor": "out"},
    ),
    "row by row": (
        _rows(
            "{t:%Y-%m-%d %H:%M},kitchen,{c},{h}\n{t:%Y-%m-%d %H:%M},balcony,4,90",
            heading="time,sensor,temperature,humidity",
        ),
        {"sensor": "kitchen"},
    ),
    "by columns": (
        _rows("{t:%Y-%m-%d %H:%M},{c},24,30,{h}", heading="when,A,B,C,D"),
        {"time_column": "when", "temperature_column": "A", "rh_column": "D"},
    ),
    "by numbers of columns without a heading": (
        _rows("{t:%Y-%m-%d %H:%M},{c},{h}", heading="").lstrip(),
        {"time_column": "column 1", "temperature_column": "column 2", "rh_column": "column 3"},
    ),
}


@pytest.mark.parametrize("shape", MANY)
def test_the_sensor_that_is_asked_for(write_log, shape):
    text, options = MANY[shape]
    year = read_hygrometer_log(write_log(text), **options)
    assert year.temperature_c == pytest.approx([c for c, _ in AIR], abs=0.03)
    assert year.rh_percent == pytest.approx([h for _, h in AIR])


def _dated(dates: list[str]) -> str:
    return "\n".join(["time,temp,rh", *(f"{date},20,{40 + number % 7}" for number, date in enumerate(dates))])


def _hours(days: int, form: str, start: datetime.datetime = datetime.datetime(2024, 4, 1)) -> list[str]:
    return [(start + datetime.timedelta(hours=hour)).strftime(form) for hour in range(24 * days)]


ORDERS = {
    "twelve firsts are twelve months": ([f"01/{month:02}/2024" for month in range(1, 13)], list(range(1, 13))),
    "twelve firsts, month first": ([f"{month}/1/2024" for month in range(1, 13)], list(range(1, 13))),
    "months alone": ([f"2024-{month:02}" for month in range(1, 13)], list(range(1, 13))),
    "months by name": (
        [
            f"{name} 2024"
            for name in [
                "Jan.",
                "Feb.",
                "März",
                "April",
                "May",
                "June",
                "July",
                "Aug.",
                "Sept.",
                "Okt.",
                "Nov.",
                "dez.",
            ]
        ],
        list(range(1, 13)),
    ),
    "two years of firsts": (
        [f"01/{month:02}/{year}" for year in (2023, 2024) for month in range(1, 13)],
        list(range(1, 13)),
    ),
    "month first with full stops": (_hours(9, "%m.%d.%Y %H:%M"), [4]),
    "day first with full stops": (_hours(9, "%d.%m.%Y %H:%M"), [4]),
    "month first, eight days of April": (_hours(8, "%m/%d/%Y %I:%M %p"), [4]),
    "newest first": (_hours(9, "%m/%d/%y %H:%M")[::-1], [4]),
    "a 13th far down": ([*_hours(20, "%d/%m/%Y %H:%M")], [4]),
    "across a month": (_hours(9, "%m/%d/%Y %H:%M", datetime.datetime(2024, 6, 27)), [6, 7]),
}


@pytest.mark.parametrize("case", ORDERS)
def test_dates_are_judged_by_all_rows(write_log, case):
    dates, months = ORDERS[case]
    assert sorted(set(read_hygrometer_log(write_log(_dated(dates))).month.tolist())) == months


def test_part_of_a_year_names_what_is_missing(write_log):
    days = [datetime.date(2023, 5, 1) + datetime.timedelta(days=day) for day in range(153)]
    year = read_hygrometer_log(write_log(_dated([f"{day}" for day in days])))
    assert year.partial and year.missing_months == (1, 2, 3, 4, 10, 11, 12)
    assert any("no readings in January, February, March, April, October" in remark for remark in year.remarks)
    assert [month.name for month in year.months()] == ["May", "June", "July", "August", "September"]


def test_a_year_without_february_keeps_its_months(write_log):
    days = [datetime.date(2023, 1, 1) + datetime.timedelta(days=day) for day in range(365)]
    text = "\n".join(["time,temp,rh", *(f"{day},20,{30 + day.month}" for day in days if day.month != 2)])
    year = read_hygrometer_log(write_log(text))
    assert year.missing_months == (2,) and [month.name for month in year.months()][4:6] == ["June", "July"]
    assert year.monthly().rh_percent == pytest.approx([31, *range(33, 43)])


def test_years_are_folded_and_their_spread_told(write_log):
    days = [datetime.date(2022, 1, 1) + datetime.timedelta(days=day) for day in range(730)]
    text = "\n".join(
        ["time,temp,rh", *(f"{day},20,{30 if day.year == 2022 else 50 if day.month == 3 else 32}" for day in days)]
    )
    year = read_hygrometer_log(write_log(text))
    told = next(remark for remark in year.remarks if "2.0 years" in remark)
    assert "3.1 % MC apart (March)" in told  # 20 degC: 9.2-9.3 % at 50 % RH, 6.2 % at 30 %, Wood Handbook Table 4-2
    assert year.monthly().rh_percent[2] == pytest.approx(40.0)


def test_what_was_left_out_is_told(write_log):
    year = read_hygrometer_log(write_log(SAME["outdoor pair beside the room's"]))
    assert any("'Outdoor temperature' is named as outdoor air and left out" in remark for remark in year.remarks)


def test_a_log_longer_than_a_chunk(write_log):
    """A cell of another shape, and a missing one, far down a long log are read where they stand."""
    start = datetime.datetime(2023, 1, 1)
    rows = [f"{start + datetime.timedelta(minutes=step)},20.{step % 3},45" for step in range(120_000)]
    rows[110_000] = rows[110_000].rsplit(",", 1)[0] + ",46 %"
    rows[70_000] = rows[70_000].split(",")[0]
    year = read_hygrometer_log(write_log("time,temp C,rh\n" + "\n".join(rows)))
    assert year.day.size == 119_999 and np.flatnonzero(year.rh_percent == 46.0).tolist() == [109_999]
    assert any("1 of 120000 rows" in remark and "1 with no temperature" in remark for remark in year.remarks)
