"""Bad inputs of held movement: each one sentence that says what was wrong, what is accepted and how to fix it."""

import math

import pytest

from woodlib.errors import InputError, WoodlibError
from woodlib.restraint.elastic import elastic_constants
from woodlib.restraint.fasteners import slot_plan
from woodlib.restraint.held import held_panel
from woodlib.species import Species, Value, find_species

GOOD = {
    "species": "white oak",
    "width_m": 0.5,
    "length_m": 1.1,
    "thickness_m": 0.022,
    "strip_width_m": 0.038,
    "glue_up_mc_percent": 9.0,
    "year_mc_percent": [11.5, 6.5],
}
OAK = find_species("white oak")


def species_with(**numbers):
    values = dict(OAK.values) | {key: Value(number, "", "own", "my-wood.csv") for key, number in numbers.items()}
    return Species("pear", "Pyrus", "hardwood", False, values)


def without(*words):
    return Species(
        "pear", "Pyrus", "hardwood", False, {k: v for k, v in OAK.values.items() if not any(w in k for w in words)}
    )


CASES = [
    ({"width_m": 0.0}, "width is 0"),
    ({"width_m": -0.4}, "width is -0.4"),
    ({"length_m": math.nan}, "length is"),
    ({"thickness_m": "thick"}, "thickness is"),
    ({"width_m": 18.0}, "at most"),
    ({"width_m": "18 stone"}, "width"),
    ({"strip_width_m": 0.6}, "wider than the panel"),
    ({"strip_width_m": 0.0}, "strip width is 0"),
    ({"strip_thickness_m": -0.01}, "strip thickness is -0.01"),
    ({"thickness_m": 0.7, "strip_thickness_m": 0.02}, "more than the panel's width"),
    ({"glued_width_m": 0.7}, "glued width is"),
    ({"glued_width_m": 0.0}, "glued width is 0"),
    ({"ends": 3}, "ends is 3; it must be 1 or 2"),
    ({"years": 1}, "years is 1"),
    ({"years": 101}, "years is 101"),
    ({"ring_angle_deg": 120}, "ring angle is 120 degrees"),
    ({"strip_ring_angle_deg": -5}, "strip ring angle is -5 degrees"),
    ({"glue_up_mc_percent": 35.0}, "moisture at glue-up is 35 % MC"),
    ({"glue_up_mc_percent": -1.0}, "moisture at glue-up is -1 % MC"),
    ({"glue_up_mc_percent": "dry"}, "moisture at glue-up is"),
    ({"year_mc_percent": [45.0, 7.0]}, "fibre saturation"),
    ({"year_mc_percent": [12.0, math.nan]}, "moisture through the year is"),
    ({"year_mc_percent": 12.0}, "give at least two moisture contents"),
    ({"year_mc_percent": "all year"}, "give at least two moisture contents"),
    ({"glue_thickness_m": 0.0002}, "shear modulus is missing"),
    ({"glue_thickness_m": 0.0002, "glue_shear_pa": 0.0}, "glue shear modulus is 0 Pa"),
    ({"species": "oak tree of doom"}, "is not in the tables"),
    ({"species": None}, "panel species"),
    ({"strip_species": "mapel"}, "strip species"),
    ({"species": without("modulus")}, "pear has no modulus of elasticity"),
    ({"species": without("radial", "tangential")}, "pear has neither"),
    ({"species": species_with(poisson_lt=9.0)}, "do not belong to a stable material"),
    # Each pair by itself is stable (0.42, 0.29, 0.36 below 1); all three leave 1 - 0.42 - 0.29 - 0.36 - 0.41, below 0.
    ({"species": species_with(poisson_lr=1.6, poisson_lt=2.0, poisson_rt=0.9)}, "do not belong to a stable material"),
    ({"species": species_with(ratio_et_el=-0.1)}, "must be above 0 Pa"),
]


@pytest.mark.parametrize(("change", "fragment"), CASES, ids=[str(case[1])[:40] for case in CASES])
def test_one_sentence(change, fragment):
    with pytest.raises(WoodlibError) as caught:
        held_panel(**GOOD | change)
    message = str(caught.value)
    assert fragment in message and "\n" not in message and message.endswith((".", "?")), message


def test_all_bad_inputs_at_once():
    with pytest.raises(InputError) as caught:
        held_panel(
            **GOOD | {"width_m": -1.0, "thickness_m": 0.0, "ends": 0, "glue_up_mc_percent": 99.0, "ring_angle_deg": 91}
        )
    assert len(caught.value.problems) == 5


SLOTS = [
    (([0.1],), {}, "two or more different distances"),
    (([0.1, 0.1],), {}, "two or more different distances"),
    (([0.1, math.nan],), {}, "two or more different distances"),
    (([0.1, 0.3],), {"swelling_strain": -0.01}, "swelling strain is -0.01"),
    (([0.1, 0.3],), {"shrinkage_strain": 0.01}, "shrinkage strain is 0.01"),
    (([0.1, 0.3],), {"screw_m": 0.0}, "screw diameter is 0 m"),
    (([0.1, 0.3],), {"allowance_m": -0.001}, "fitting allowance is -0.001 m"),
    (([0.1, 0.3],), {"fixed": "left"}, "fixed is 'left'"),
    (([0.1, 0.3],), {"fixed": 0.2}, "fixed is 0.2"),
    (([0.1, 0.3],), {"part_m": 0.006}, "longer than the part"),
    (([0.1, 0.3],), {"part_m": 0.0}, "length of the slotted part is 0 m"),
    (([0.1, 0.9, 0.91],), {"fixed": "edge"}, "the next fastener is only"),
]


@pytest.mark.parametrize(("places", "change", "fragment"), SLOTS, ids=[case[2] for case in SLOTS])
def test_slots(places, change, fragment):
    with pytest.raises(InputError) as caught:
        slot_plan(*places, **{"swelling_strain": 0.01, "shrinkage_strain": -0.01, "screw_m": 0.004} | change)
    assert fragment in str(caught.value) and "\n" not in str(caught.value)


def test_unknown_species_of_elastic_constants():
    with pytest.raises(InputError, match="not in the tables"):
        elastic_constants("unobtainium")
