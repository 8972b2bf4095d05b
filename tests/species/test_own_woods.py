"""Woods of your own: the same columns, status own, unusual numbers warned about and kept."""

import csv

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import InputError
from woodlib.species import find_species, read_own_species, write_own_species_template
from woodlib.species.quantities import columns


def written(folder, text, name="own.csv", encoding="utf-8"):
    file = folder / name
    file.write_bytes(text.encode(encoding))
    return file


def test_reads_a_wood(tmp_path):
    text = 'name,kind,tangential_shrinkage_percent,shear_parallel_psi\n"pear, my yard",hardwood,9.1,1000\n'
    (pear,) = read_own_species(written(tmp_path, text))
    assert pear.name == "pear, my yard" and pear.kind == "hardwood" and not pear.is_group
    shear = pear.require("shear_parallel_pa")
    assert shear.number == pytest.approx(6.894757e6, rel=1e-6)
    assert shear.status == "own" and shear.source == "own.csv" and shear.note == "given as 1000 psi"


def test_blank_cells_stay_missing_and_can_be_estimated(tmp_path):
    text = "name,tangential_shrinkage_percent,radial_shrinkage_percent\npear,9.1,\n"
    (pear,) = read_own_species(written(tmp_path, text))
    assert pear.get("radial_shrinkage_percent") is None
    assert round(pear.estimate("tangential_coefficient_per_percent").number, 5) == 0.00323


def test_metric_columns(tmp_path):
    text = "name,modulus_of_elasticity_gpa,tension_perpendicular_mpa\npear,8.9,5.1\n"
    (pear,) = read_own_species(written(tmp_path, text))
    assert pear.require("modulus_of_elasticity_pa").number == 8.9e9
    assert pear.require("tension_perpendicular_pa").number == 5.1e6


def test_semicolons_decimal_commas_percent_signs_and_byte_mark(tmp_path):
    text = "Name;Tangential shrinkage percent;specific_gravity_12\r\npear;9,1%;0,69\r\n\r\n"
    (pear,) = read_own_species(written(tmp_path, text, encoding="utf-8-sig"))
    assert pear.require("tangential_shrinkage_percent").number == 9.1
    assert pear.require("specific_gravity_12").number == 0.69


def test_tangential_below_radial_is_kept_and_said(tmp_path):
    text = "name,tangential_shrinkage_percent,radial_shrinkage_percent\npear,3,6\n"
    (pear,) = read_own_species(written(tmp_path, text))
    assert pear.require("tangential_shrinkage_percent").number == 3.0
    assert "check that the two are not swapped" in pear.doubts[0]


def test_own_woods_are_found_first(tmp_path):
    own = read_own_species(written(tmp_path, "name,specific_gravity_12\nmy cherry,0.52\n"))
    assert find_species("cherry, MY", own) is own[0]
    assert find_species("black cherry", own).name == "black cherry"


def test_template_has_every_column(tmp_path):
    file = write_own_species_template(tmp_path / "new.csv")
    header = next(csv.reader(file.open(encoding="utf-8")))
    assert header[0] == "name" and set(columns()) < set(header)


@given(
    st.lists(
        st.tuples(st.floats(0.5, 20.0), st.floats(0.5, 20.0), st.floats(0.1, 1.3), st.floats(100.0, 5000.0)),
        min_size=1,
        max_size=5,
    )
)
def test_what_is_written_is_read_back(tmp_path_factory, rows):
    names = ("radial_shrinkage_percent", "tangential_shrinkage_percent", "specific_gravity_basic", "shear_parallel_psi")
    lines = [",".join(("name", *names))]
    lines += [",".join((f"wood number {n}", *map(repr, numbers))) for n, numbers in enumerate(rows)]
    own = read_own_species(written(tmp_path_factory.mktemp("own"), "\n".join(lines)))
    for wood, numbers in zip(own, rows, strict=True):
        for name, number in zip(names, numbers, strict=True):
            column = columns()[name]
            assert wood.require(column.key).number == pytest.approx(number * column.si_per_unit, rel=1e-15)
            assert wood.require(column.key).status == "own"


@given(st.text(alphabet=st.one_of(st.sampled_from("name,;\"'\n\r\t .5%-"), st.characters(codec="utf-8")), max_size=60))
def test_any_text_is_read_or_refused_in_single_sentences(tmp_path_factory, text):
    file = written(tmp_path_factory.mktemp("any"), "name,origin,specific_gravity_12\n" + text)
    try:
        own = read_own_species(file)
    except InputError as error:
        assert error.problems and all("\n" not in sentence for sentence in error.problems)
    else:
        assert own and all(0.05 <= wood.require("specific_gravity_12").number <= 1.5 for wood in own)


def test_old_line_ends_and_quoted_line_breaks(tmp_path):
    file = written(tmp_path, 'name,specific_gravity_12\r"pear,\nmy yard",0.69\r')
    assert [wood.name for wood in read_own_species(file)] == ["pear, my yard"]
