"""How long a year of hours takes: woodlib's arrays beside PsychroLib called hour by hour. Prints ratios.

Run: python tests/bench/bench_air.py
"""

from __future__ import annotations

import timeit

import numpy as np
import psychrolib

from woodlib.air import psychrometrics as air
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


if __name__ == "__main__":
    main()
