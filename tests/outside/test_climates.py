"""The shipped climates against moisture contents worked out from the same hourly files by another program.

Tolerances: the table carries temperature and humidity to 0.1, which moves EMC by up to 0.02 % MC in dry air and 0.08 in
air above 85 % RH. Heated RH was stored to 0.1 % and worked out with a Magnus form, which lies 0.24 % of the value
above the kit's saturation pressure at 21 degC: so 0.05 + 0.0027 RH, and EMC follows by the slope of the isotherm.
"""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest

from woodlib.air.climates import all_climates, find_climate, year_from_climate
from woodlib.air.indoors import indoors
from woodlib.moisture.equilibrium import emc_percent, emc_slope

SOURCE = "hourly weather files, separate program"


def _rows() -> dict[str, list[dict[str, str]]]:
    with Path(__file__).with_name("data").joinpath("climate_emc.csv").open(newline="") as file:
        rows = list(csv.DictReader(file))
    return {place: [row for row in rows if row["place"] == place] for place in {row["place"] for row in rows}}


_ROWS = _rows()


@pytest.mark.parametrize("place", sorted(_ROWS))
def test_moisture_contents_of_the_monthly_means(place, outside):
    year = year_from_climate(place)
    expected = np.array([float(row["emc_of_means_percent"]) for row in _ROWS[place]])
    allowed = 0.006 + 0.06 * emc_slope(year.temperature_c, year.rh_percent) + 0.003
    got = year.emc_percent()
    assert np.all(np.abs(got - expected) < allowed)
    worst = int(np.argmax(np.abs(got - expected)))
    outside(
        SOURCE,
        f"EMC of monthly means, {place}, worst month {worst + 1}",
        expected[worst],
        got[worst],
        allowed[worst],
        "% MC",
    )


@pytest.mark.parametrize("place", sorted(_ROWS))
def test_air_heated_to_21_degrees(place, outside):
    outdoors = year_from_climate(place)
    house = indoors(outdoors, 21, None, 0.0)
    heated = [index for index, row in enumerate(_ROWS[place]) if row["rh_heated_21c_percent"]]
    for index in heated:
        row, got = _ROWS[place][index], float(house.rh_percent[index])
        assert house.temperature_c[index] == 21.0
        allowed = 0.051 + 0.0027 * got
        assert abs(got - float(row["rh_heated_21c_percent"])) < allowed
        assert abs(emc_percent(21, got) - float(row["emc_heated_21c_percent"])) < 0.006 + allowed * emc_slope(21, got)
    if heated:
        index = heated[0]
        outside(
            SOURCE,
            f"RH heated to 21 degC, {place}, month {index + 1}",
            float(_ROWS[place][index]["rh_heated_21c_percent"]),
            float(house.rh_percent[index]),
            0.051 + 0.0027 * float(house.rh_percent[index]),
            "%",
        )


def test_mean_of_hours_is_above_emc_of_means_nearly_always():
    """The isotherm curves upward in damp air; 90 % of all months show it."""
    pairs = [
        (float(row["mean_of_hourly_emc_percent"]), float(row["emc_of_means_percent"]))
        for rows in _ROWS.values()
        for row in rows
    ]
    assert np.mean([hours > means for hours, means in pairs]) > 0.9


@pytest.mark.parametrize(
    ("place", "low", "high"),
    [
        ("Chicago", 11.4, 14.9),
        ("Denver", 7.9, 11.6),
        ("Tucson", 3.2, 13.2),
        ("London", 13.5, 20.2),
        ("Helsinki", 11.6, 20.0),
        ("Singapore", 16.6, 19.2),
        ("New Delhi", 6.6, 15.1),
        ("Sydney", 10.8, 14.8),
    ],
)
def test_range_over_the_year(place, low, high, outside):
    year = year_from_climate(place)
    outside(SOURCE, f"driest month outdoors, {place}", low, year.driest().emc_percent, 0.06, "% MC")
    outside(SOURCE, f"dampest month outdoors, {place}", high, year.dampest().emc_percent, 0.06, "% MC")


def test_vapour_pressure_belongs_to_the_same_air():
    """Mean of hours against that of the means: less where dry days are hot, more where cold spells bend the curve."""
    for climate in all_climates():
        year = year_from_climate(climate.place)
        of_means = year.rh_percent * 6.1094 * np.exp(17.625 * year.temperature_c / (243.04 + year.temperature_c))
        ratio = year.vapour_pressure_pa / of_means
        assert np.all((ratio > 0.84) & (ratio < 1.30)), climate.place


def test_every_place_of_the_check_table_is_carried():
    assert set(_ROWS) == {climate.place for climate in all_climates()}
    assert all(find_climate(place).place == place for place in _ROWS)
