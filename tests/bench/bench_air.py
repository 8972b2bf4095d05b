"""How long air takes: a year of hours beside PsychroLib called hour by hour (ratios), and a log of a million rows.

Run: python tests/bench/bench_air.py
"""

from __future__ import annotations

import datetime
import resource
import tempfile
import time
import timeit
from pathlib import Path

import numpy as np
import psychrolib

from woodlib.air import psychrometrics as air
from woodlib.air.hygrometer_log import read_hygrometer_log
from woodlib.moisture.equilibrium import emc_percent, rh_percent_for_emc


def best(function, number: int = 3) -> float:
    """Seconds of the fastest of five rounds."""
    return min(timeit.repeat(function, number=number, repeat=5)) / number


def main() -> None:
    """Print one line per quantity."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    hours = np.arange(8760)
    t, rh = 12 - 10 * np.cos(2 * np.pi * hours / 8760), 60 + 25 * np.sin(2 * np.pi * hours / 24)
    pairs = list(zip(t.tolist(), (rh / 100).tolist(), strict=True))
    rows = (
        (
            "saturation pressure",
            lambda: air.saturation_pressure_pa(t),
            lambda: [psychrolib.GetSatVapPres(a) for a, _ in pairs],
        ),
        (
            "dew point",
            lambda: air.dew_point_c(t, rh),
            lambda: [psychrolib.GetTDewPointFromRelHum(a, b) for a, b in pairs],
        ),
        (
            "humidity ratio",
            lambda: air.humidity_ratio(t, rh),
            lambda: [psychrolib.GetHumRatioFromRelHum(a, b, 101325) for a, b in pairs],
        ),
    )
    for name, ours, theirs in rows:
        fast, slow = best(ours), best(theirs, 1)
        beside = f"PsychroLib, hour by hour {1e3 * slow:8.2f} ms   ratio {slow / fast:6.0f}"
        print(f"{name:22} 8760 hours {1e3 * fast:8.2f} ms   {beside}")
    moisture = emc_percent(t, rh)
    forward, back = best(lambda: emc_percent(t, rh)), best(lambda: rh_percent_for_emc(t, moisture))
    beside = f"and back {1e3 * back:8.2f} ms   ratio {back / forward:6.1f}"
    print(f"{'moisture from air':22} 8760 hours {1e3 * forward:8.2f} ms   {beside}")
    for form, heading in (
        ("{t:%Y-%m-%d %H:%M:%S},{c:.1f},{h:.1f}", "time,temperature C,humidity"),
        ("{t:%d.%m.%Y};{t:%H:%M:%S};{c:.1f} C;{h:.1f} %", "Datum;Uhrzeit;Temperatur;Feuchte"),
    ):
        seconds, megabytes = long_log(form, heading)
        print(
            f"log of 1,000,000 rows   {seconds:5.2f} s of processor (limit 4)   {megabytes:4.0f} MB at most (limit 400)"
        )


def long_log(form: str, heading: str) -> tuple[float, float]:
    """Processor seconds of reading a million rows, and the most memory this process has held, in MB."""
    start, step = datetime.datetime(2023, 1, 1), datetime.timedelta(seconds=30)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "log.csv"
        with path.open("w", encoding="utf-8") as file:
            file.write(heading + "\n")
            for row in range(1_000_000):
                values = {"t": start + row * step, "c": 20 + row // 7 % 50 / 10, "h": 40 + row // 9 % 90 / 10}
                file.write(form.format(**values) + "\n")
        begun = time.process_time()
        read_hygrometer_log(path)
        spent = time.process_time() - begun
    return spent, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0


if __name__ == "__main__":
    main()
