"""Outdoor air heated to room temperature, against stored results of two programs and the Magnus form.

From 0 degC down the two programs are over ice, so the Magnus column (over water, within 0.25 %) is the one to meet.
CoolProp: 0.03 % of the value (another steam equation) and its rounding.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from woodlib.air.psychrometrics import indoor_rh_percent
from woodlib.moisture.equilibrium import emc_percent


def _rows() -> list[dict[str, float]]:
    with Path(__file__).with_name("data").joinpath("heated_air.csv").open(newline="") as file:
        return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(file)]


@pytest.mark.parametrize(
    "row",
    _rows(),
    ids=lambda r: f"{r['outdoor_temperature_c']:g}C-{r['outdoor_rh_percent']:g}-{r['indoor_temperature_c']:g}C",
)
def test_heated_air(row, outside):
    cold, rh, warm = (row[name] for name in ("outdoor_temperature_c", "outdoor_rh_percent", "indoor_temperature_c"))
    state = f"{cold:g} degC {rh:g} % heated to {warm:g} degC"
    got = indoor_rh_percent(cold, rh, warm, 0.0)
    if cold > 0.01:
        outside("PsychroLib 2.5.0, stored", f"RH of {state}", row["rh_psychrolib_percent"], got, 0.0051, "%")
        outside("CoolProp 8.0.0, stored", f"RH of {state}", row["rh_coolprop_percent"], got, 3e-4 * got + 0.006, "%")
        outside(
            "separate program, handbook eq. 4-5",
            f"EMC of {state}",
            row["emc_indoors_percent"],
            emc_percent(warm, got),
            0.0051 + 0.0051 * (got > 90),
            "% MC",
        )
    outside("Magnus form of 1996", f"RH of {state}", row["rh_magnus_percent"], got, 0.004 * got + 0.005, "%")
