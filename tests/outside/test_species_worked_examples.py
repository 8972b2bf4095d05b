"""Worked examples from flooring trade writing (2016, 2017), which use the handbook's group rows, and a handbook one."""

import pytest

from woodlib.species import find_species


@pytest.mark.parametrize(
    ("source", "name", "width_in", "change_percent", "printed_in", "tolerance"),
    [
        ("flooring trade writing", "red oak", 5.0, 3.0, 0.055, 5e-4),
        ("flooring trade writing", "white oak", 5.0, 3.0, 0.055, 5e-4),
        ("flooring trade writing", "red oak", 5.0, 4.8, 0.08856, 5e-7),
        ("Wood Handbook ch. 13, from memory", "white fir", 9.15, 3.0, 0.0673, 1e-4),
    ],
)
def test_change_of_width(outside, source, name, width_in, change_percent, printed_in, tolerance):
    coefficient = find_species(name).require("tangential_coefficient_per_percent").number
    outside(
        source,
        f"{name}, flatsawn {width_in} in, {change_percent} points of moisture",
        printed_in,
        width_in * coefficient * change_percent,
        tolerance,
        "in",
    )


def test_white_fir_thickness_coefficient(outside):
    outside(
        "Wood Handbook ch. 13, from memory",
        "white fir, radial coefficient",
        0.00112,
        find_species("white fir").require("radial_coefficient_per_percent").number,
        0.0,
        "per %",
    )
