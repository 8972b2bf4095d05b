"""Rows that need care say so, each by name and no others."""

import pytest

from woodlib.species import all_species, find_species
from woodlib.species.doubts import (
    PAIR_TOLERANCE,
    VOLUME_TOLERANCE_PERCENT,
    pair_disagreement,
    volume_excess_percent,
)

WOODS = all_species()


def said(name: str) -> str:
    return " ".join(find_species(name).doubts)


def test_red_oak_group_and_northern_red_oak_are_both_selectable_and_say_their_difference():
    group, northern = find_species("red oak"), find_species("northern red oak")
    key = "tangential_coefficient_per_percent"
    assert group.is_group and group.require(key).number == 0.00369 and group.require(key).status == "printed"
    assert round(northern.require(key).number, 5) == 0.00304 and northern.require(key).status == "derived"
    assert "0.00137 / 0.00304" in said("northern red oak") and "18% less tangentially" in said("northern red oak")
    assert "'red oak, species unknown' gives the row" in said("northern red oak")
    assert "northern red oak moves 18% less tangentially" in said("red oak")


def test_white_oak_group_and_white_oak_itself():
    assert find_species("white oak").require("tangential_coefficient_per_percent").number == 0.00365
    assert "0.00194 / 0.00376" in said("Quercus alba") and "3% more tangentially" in said("Quercus alba")


@pytest.mark.parametrize("name", ["cherrybark oak", "swamp white oak"])
def test_member_without_own_shrinkage_moves_by_the_group_row(name):
    assert "no shrinkage of its own" in said(name)
    assert find_species(name).require("radial_coefficient_per_percent").note.startswith("group row")


@pytest.mark.parametrize(
    ("name", "neighbour", "printed", "own"),
    [
        ("green ash", "white ash", "0.00274", "0.00248"),
        ("sweet birch", "yellow birch", "0.00338", "0.00319"),
        ("cedar elm", "winged elm", "0.00419", "0.00365"),
        ("black maple", "sugar maple", "0.00353", "0.00330"),
        ("pond pine", "loblolly pine", "0.00259", "0.00248"),
    ],
)
def test_rows_that_repeat_a_neighbour(name, neighbour, printed, own):
    assert neighbour in said(name) and printed in said(name) and own in said(name)
    mine, theirs = (find_species(n).require("tangential_coefficient_per_percent").number for n in (name, neighbour))
    assert mine == theirs == float(printed)


def test_oak_black_row_is_used_by_no_eastern_black_oak():
    assert "'Oak, black' at 0.00123 / 0.00230" in said("black oak")
    assert round(find_species("black oak").require("tangential_coefficient_per_percent").number, 5) == 0.00400
    assert find_species("California black oak").require("tangential_coefficient_per_percent").number == 0.00230


def test_mahogany_says_that_its_row_is_far_above_its_own_shrinkage():
    assert "0.00172" in said("true mahogany") and "0.00102" in said("true mahogany")


def test_volume_doubts_are_exactly_these():
    excess = {wood.name: volume_excess_percent(wood.values) for wood in WOODS if not wood.is_group}
    found = {name for name, points in excess.items() if points is not None and abs(points) > VOLUME_TOLERANCE_PERCENT}
    assert found == {
        "black ash",
        "pumpkin ash",
        "paper birch",
        "American chestnut",
        "rock elm",
        "black willow",
        "balsam fir",
        "bulletwood",
        "African mahogany",
        "mersawa",
        "mora",
        "white meranti",
        "laurel oak",
        "willow oak",
        "water oak",
        "silver maple",
        "American holly",
        "tamarack",
        "ceiba",
        "iroko",
        "karri",
        "sapele",
        "peroba rosa",
        "dark red meranti",
    }
    assert all("volumetric shrinkage" in said(name) for name in found)


def test_contradicting_poisson_pairs_are_exactly_these():
    gaps = {wood.name: pair_disagreement(wood.values) for wood in WOODS if not wood.is_group}
    found = {name for name, gap in gaps.items() if gap is not None and gap > PAIR_TOLERANCE}
    assert found == {
        "eastern cottonwood",
        "baldcypress",
        "northern white cedar",
        "subalpine fir",
        "western hemlock",
        "loblolly pine",
        "longleaf pine",
        "pond pine",
        "red pine",
        "slash pine",
        "western white pine",
    }
    assert all("the one pulled radially" in said(name) for name in found)


def test_woods_measured_at_15_percent_say_so():
    found = {wood.name for wood in WOODS if "at 15% moisture content, not 12%" in " ".join(wood.doubts)}
    assert found == {"jelutong", "white meranti", "merbau", "pau marfim", "sucupira (Bowdichia)"}


@pytest.mark.parametrize("name", ["white spruce", "sand pine", "spruce pine", "sande"])
def test_blank_on_purpose(name):
    assert find_species(name).get("tangential_shrinkage_percent") is None
    assert "left blank" in said(name)


def test_doubts_are_single_sentences():
    for wood in WOODS:
        for sentence in wood.doubts:
            assert sentence.endswith(".") and "\n" not in sentence and "  " not in sentence
