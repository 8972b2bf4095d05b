"""Logs that must not be read as they stand: each is refused with one sentence that quotes what was found and names
the key that settles it. All are invented. Shapes that were read wrongly before: a humidity in g/m3 named "abs hum", and
outdoor sensors named in Greek and Romanian."""

from __future__ import annotations

import datetime

import numpy as np
import pytest

from woodlib.air.hygrometer_log import read_hygrometer_log
from woodlib.errors import InputError

START = datetime.datetime(2024, 1, 1)


def _log(heading: str, row: str, count: int = 48, step: datetime.timedelta = datetime.timedelta(hours=1)) -> str:
    """``row`` formatted with t (time), n (number), e and o (0 or 1 in turn)."""
    lines = [row.format(t=START + number * step, n=number, o=number % 2) for number in range(count)]
    return "\n".join([heading, *lines])


T = "{t:%Y-%m-%d %H:%M}"
SENSORS = [
    (_log("time,temp,temp 2,rh", T + ",20,5,40"), r"'temp' .20 to 20., 'temp 2' .5 to 5."),
    (_log("time,T kitchen,T hall,RH kitchen,RH hall", T + ",20,18,40,45"), r"'T kitchen' .20 to 20..*say which sensor"),
    (_log("time,T in,T out,RH", T + ",20,5,40"), r"'T in' .20 to 20., 'T out' .5 to 5."),
    (_log("time,temp out,rh", T + ",20,40"), r"names 'temp out' .20 to 20. as outdoor air.*log_sensor"),
    (_log("time,outdoor temp,indoor humidity", T + ",5,40"), r"'outdoor temp' .5 to 5. as outdoor air"),
    (_log("Zeit;Außentemperatur;Feuchte", T + ";5;40"), "'Außentemperatur' .* as outdoor air"),
    (_log("time,temp,rh ext", T + ",5,40"), "'rh ext' .* as outdoor air"),
    (_log("Horodatage,Température extérieure,Humidité extérieure", T + ",5,40"), "as outdoor air"),
    (_log("Fecha,Temperatura exterior,Humedad", T + ",5,40"), "as outdoor air"),
    (_log("Data,Temperatura esterna,Umidità", T + ",5,40"), "as outdoor air"),
    (_log("Tijd,Temperatuur buiten,Vochtigheid", T + ",5,40"), "as outdoor air"),
    (_log("Tid,Temperatur ute,Fuktighet", T + ",5,40"), "as outdoor air"),
    (_log("Aika,Ulkolämpötila,Kosteus", T + ",5,40").replace("Ulkolä", "Ulko lä"), "as outdoor air"),
    (_log("Czas,Temperatura zewnętrzna,Wilgotność", T + ",5,40"), "as outdoor air"),
    (_log("日時,外気 温度,湿度", T + ",5,40"), "as outdoor air"),
    (_log("Ώρα;Θερμοκρασία έξω;Υγρασία έξω", T + ";5;40"), "as outdoor air"),
    (_log("Data;Temperatura afară;Umiditate afară", T + ";5;40"), "as outdoor air"),
    (_log("Čas;Teplota vonku;Vlhkosť vonku", T + ";5;40"), "as outdoor air"),
    (_log("Aika;Lämpötila piha;Kosteus piha", T + ";5;40"), "as outdoor air"),
    (_log("Czas;Temperatura na dworze;Wilgotność", T + ";5;40"), "as outdoor air"),
    (_log("time,TempOut,RH", T + ",5,40"), "as outdoor air"),
    (_log("time,garden temperature,humidity", T + ",5,40"), "as outdoor air"),
    (_log("time,kitchen temp,bedroom rh", T + ",20,40"), "seem to be of two sensors: 'kitchen temp' .20 to 20."),
    (_log(";Wohnen;;Keller;\nZeit;T;rF;T;rF", T + ";20;40;14;70"), r"'Wohnen T' .20 to 20., 'Keller T' .14 to 14."),
    (
        _log("time,sensor,temp,rh", T + ",s{o},20,4{o}"),
        r"rows .* are of several sensors: s0 .20 to 20 degC, 40 to 40 %.*log_sensor",
    ),
    (
        _log("time,location,temp,rh", T + ",outdoors,5,80"),
        r"are of outdoors .5 to 5 degC, 80 to 80 %., named as outdoor",
    ),
    (_log("time,device,temp,rh", T + ",dev{n},20,40", 9), "several sensors: dev0.*and more"),
    (_log("time,temp,rh", "2024-01-{t:%d} 00:00,2{o},4{o}").replace(",21,41", ",5,85"), "twice with different air"),
    (
        _log("time,temp,rh", T + ",2{o},40").replace(",21,", ",4,"),
        r"jumps by more than 8 degC .*reading 2 has '4' after 20",
    ),
    (
        _log("time,temp,rh", T + ",20,4{o}").replace(",41", ",90"),
        r"humidity .*jumps by more than 30 %.*reading 2 has '90'",
    ),
    (
        _log("time,Temp C,Temp F,rh", T + ",20,75,40"),
        r"two temperatures .* do not agree in 48 rows: reading 1 has '20' and '75'",
    ),
]
TIMES = [
    (_log("time,temp,rh", "{n}00000,20,40", 60), r"reading 1 has '000000' as its time.*log_time_column"),
    (_log("Time (ms),temp,rh", "{n}0000000,20,40", 60), "60 with an unreadable time"),
    (_log("elapsed,temp,rh", "{n},20,40"), "has no time column among 'elapsed', 'temp', 'rh'"),
    (_log("time,temp,rh", "{n},20,40"), r"no usable reading among 48 rows .48 with an unreadable time"),
    (_log("time,temp,rh", "{t:%H:%M},20,40"), r"reading 1 has '00:00' as its time: write times like 2024-01-31 13:45"),
    (_log("time,temp,rh", "day {n},20,40"), "'day 0' as its time"),
    (_log("time,temp,rh", "{t:%d/%m},20,40"), "'01/01' as its time"),
    (_log("time,temp,rh", "32/{n}/2024,20,40", 12), "'32/0/2024' as its time"),
    (
        _log("time,temp,rh", T + ",20,40").replace("2024-", "1970-"),
        "begins in 1970.*a logger whose clock was never set",
    ),
    (_log("time,temp,rh", "2024-W01-{o},20,40"), "'2024-W01-0' as its time"),
    (
        _log("time,temp,rh", "{t:%Y-%j},20,40"),
        "'2024-001' as its time: write times like 2024-01-31 13:45, or say which column",
    ),
    (_log("month,temp,rh", "{t:%B},20,40"), "no time column among 'month'"),
    (_log("time,temp,rh", "{t:%Y-%m-%d} 27:00,20,40"), "27:00' as its time"),
    (_log("time,temp,rh", "{t:%Y-%m-%d} 10:75,20,40"), "10:75' as its time"),
    (_log("time,temp,rh", "29/02/2023 {t:%H:%M},20,40"), "'29/02/2023 00:00' as its time"),
    (
        _log("time,temp,rh", T + ",20,40") + "\n1986-01-01 00:00,20,40",
        r"would last 38 years.*reading 49 has '1986-01-01 00:00'",
    ),
    (_log("time,temp,rh", T + ",20,40") + "\n2099-01-01 00:00,20,40", r"would last 75 years.*'2099-01-01 00:00'"),
    (_log("time,temp,rh", "{t:%d/%m/%Y},20,40", 5, datetime.timedelta(days=1)), r'"day first" or "month first"'),
    (
        _log("time,temp,rh", "0{n}/01/2024 08:00,20,40", 9).replace("00/01", "10/01"),
        r"more than one order.*log_date_order",
    ),
    (_log("time,temp,rh", "01/02/03 {t:%H:%M},20,40", 20), '"day first" or "month first" or "year first"'),
]
CELLS = [
    (
        _log("time,temp,rh", T + ",20,4{o}").replace(",41", ",ERR"),
        r"only 24 usable readings among 48 .*reading 2 has 'ERR' as its humidity",
    ),
    (
        _log("time,temp,rh", T + ",20,{n}") + "\n" + "\n".join(f"broken {n},20,40" for n in range(20)),
        "reading 49 has 'broken 0'",
    ),
    (_log("time,temp,rh", T + ",2{o},40").replace(",21,", ",,"), "reading 2 has '' as its temperature"),
    (_log("time,temp,rh", T + ",2{o},40").replace(",21,", ",NaN,"), "'NaN' as its temperature"),
    (_log("time,temp,rh", T + ",20,-1"), r"48 with a relative humidity outside 1 to 100 %.*reading 1 has '-1'"),
    (_log("time,temp,rh", T + ",20,450"), "'450' as its humidity.*log_humidity_column"),
    (
        _log("time,temp C,rh", T + ",-273,45"),
        "outside -40 to 85 degC.*'-273' as its temperature.*log_temperature_column",
    ),
    (_log("time,A,B", T + ",20,45"), None),
    (_log("time,temp,value", T + ",20,45"), r"no relative humidity column .*its other numbers: 'value' .45 to 45."),
    (_log("time,temp,battery %", T + ",20,97"), r"no relative humidity column .*'battery %' .97 to 97."),
    (_log("time,dew point °C,rh", T + ",7,45"), r"no temperature column .*'dew point °C' .7 to 7."),
    (_log("time,temp,absolute humidity g/m³", T + ",20,7"), "no relative humidity column"),
    (_log("time,temp,abs hum", T + ",20,7"), "no relative humidity column"),
    (_log("time,dry bulb,wet bulb", T + ",20,14"), "no relative humidity column"),
    (_log("time,temp,moisture", T + ",20,9"), "no relative humidity column"),
    (_log("time,quantity,value", T + ",temperature,20\n" + T + ",humidity,45"), "no temperature column"),
    (
        _log("entity_id,state,time", "sensor.t,20," + T + "\nsensor.rh,45," + T),
        "no relative humidity column|no temperature",
    ),
    (_log("time,Tmin,Tmax,RHmin,RHmax", T + ",18,22,40,50"), "no temperature column .*'Tmin' .18 to 18."),
    (_log("time,temp (K),rh", T + ",293.6,45"), "middle value 293.6 tells nothing"),
    (_log("time,temp,rh", T + ",205,455"), "middle value 205 tells nothing"),
    (_log("time,temp (F),rh", T + ",20.6,45"), "20.6 as its middle value under 'temp .F.', colder than any room.*degF"),
    (_log("time,temp,rh", T + ",20.6 °F,45"), "colder than any room"),
    (_log("time,temp C,rh", T + ",43,21"), "43 as its middle value under 'temp C', hotter than any room"),
    (_log("time,temp,rh", T + ",20,4{o}").replace(",41", ",0"), "24 with a relative humidity outside 1 to 100 %"),
    (
        _log("time,temp,rh", T + ",20,40") + "\n" + _log("time,rh,temp", T + ",40,20"),
        "columns in another order: one begins 'time,temp,rh', another 'time,rh,temp'",
    ),
    (_log("time,temp,rh,max temp", T + ",70,45,71").replace("time,temp,", "time,temp °C,"), "hotter than any room"),
    (_log("time,temp,rh", T + ",42,45"), "does not name the unit of 'temp'"),
    (_log("", T + ";20;45").lstrip(), r"has no heading.*or say which is which: .column 1."),
    (_log("time;temp;rh", "{t:%Y-%m-%d %H:%M} 20 45"), "one column only|no usable|unreadable"),
    (_log("time,temp,rh", T + ",20,5,45,5"), "comma both between columns and in numbers"),
    (b"<html><table><tr><td>time</td></tr></table></html>", "one column only"),
    (b'[{"time":"2024-01-01","temp":20,"rh":40},\n{"time":"2024-01-02","temp":20,"rh":40}]', "no time column"),
    (b"%PDF-1.4 log", "is a spreadsheet or document"),
]
ASKED = [
    ({"sensor": "attic"}, "sensor 'attic' is in none of the temperature columns .* 'T shelf' .20 to 20."),
    ({"temperature_column": "T attic"}, "temperature_column 'T attic' is not in the log; its columns are 'time', "),
    ({"temperature_column": "T shelf"}, "several columns could be the relative humidity"),
    ({"temperature_column": "T shelf", "rh_column": "column 9"}, "rh_column 'column 9' is not in the log"),
    ({"sensor": "shelf", "date_order": "dmy"}, "date_order is 'dmy'; write"),
    ({"sensor": "shelf", "temperature_unit": "K"}, "temperature_unit is 'K'; write"),
    ({"sensor": "shelf", "time_column": ["time", "clock"]}, "time_column 'clock' is not in the log"),
]


def _refused(path, fragment: str | None, **options) -> None:
    with pytest.raises(InputError, match=fragment) as caught:
        read_hygrometer_log(path, **options)
    for sentence in caught.value.problems:
        assert "\n" not in sentence and sentence.endswith(".") and len(sentence) < 600, sentence


@pytest.mark.parametrize(("content", "fragment"), SENSORS + TIMES + CELLS)
def test_refused_with_one_sentence(write_log, content, fragment):
    _refused(write_log(content), fragment)


@pytest.mark.parametrize(("options", "fragment"), ASKED)
def test_what_is_asked_for_must_be_there(write_log, options, fragment):
    text = _log("time,T shelf,RH shelf,T loft,RH loft", T + ",20,40,25,30")
    _refused(write_log(text), fragment, **options)


def test_a_fifth_is_the_limit(write_log):
    rows = [f"{START + datetime.timedelta(hours=hour)},20,{'ERR' if hour % 5 == 0 else 40}" for hour in range(100)]
    year = read_hygrometer_log(write_log("time,temp,rh\n" + "\n".join(rows)))
    assert year.day.size == 80
    _refused(write_log("time,temp,rh\n" + "\n".join(rows[:96] + rows[:1])), "20 with no relative humidity|'ERR'")


def test_air_that_changes_quickly_now_and_then_is_believed(write_log):
    """A door opened in winter, once a day, is no second sensor; every hour it would be."""
    hours = np.arange(240)
    cold = np.where(hours % 24 == 7, 9.0, 20.0)
    rows = [
        f"{START + datetime.timedelta(hours=int(hour))},{value},45" for hour, value in zip(hours, cold, strict=True)
    ]
    with pytest.raises(InputError, match="jumps"):
        read_hygrometer_log(write_log("time,temp,rh\n" + "\n".join(rows)))
    rows = [f"{START + datetime.timedelta(hours=int(h))},{9 if h % 120 == 7 else 20},45" for h in hours]
    year = read_hygrometer_log(write_log("time,temp,rh\n" + "\n".join(rows)))
    assert any("2 readings stand more than 8 degC off" in remark for remark in year.remarks)


def _six_hours(cells: list[tuple[float, float]]) -> str:
    rows = [f"{START + datetime.timedelta(hours=6 * place)},{c},{h}" for place, (c, h) in enumerate(cells)]
    return "\n".join(["time,temp C,rh", *rows])


@pytest.mark.parametrize(
    ("cells", "told", "kept"),
    [
        (
            [(0.0, 0.0) if n % 7 == 3 else (20.6, 43.0 + n % 3) for n in range(200)],
            "a relative humidity outside 1",
            171,
        ),
        ([(85.0 if n % 20 == 3 else 20.6, 43.0 + n % 3) for n in range(200)], "a temperature outside -40 to 85", 190),
        ([(20.6, 100.0 if n % 10 == 3 else 43.0 + n % 3) for n in range(200)], "20 readings stand more than 40 %", 200),
        ([(20.6, 50.0)] * 200, "stands still at 50 % for 50 days", 200),
        ([(20.6 if n % 3 else 1.0, 50.0 + n % 3) for n in range(200)], "67 readings are below 5 degC", 200),
        ([(20.6, 1.2 if n % 50 == 3 else 0.43 + n % 3 / 100) for n in range(200)], "hardly ever above 1", 196),
    ],
)
def test_failing_sensors_are_told(write_log, cells, told, kept):
    """Read without a word before, at readings so far apart that no step looked too quick."""
    year = read_hygrometer_log(write_log(_six_hours(cells)))
    assert any(told in remark for remark in year.remarks), year.remarks
    assert year.day.size == kept and (kept == 200 or year.rh_percent.mean() == pytest.approx(44.0, abs=0.2))
