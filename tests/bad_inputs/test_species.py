"""What the catalogue cannot use is refused in one sentence per fault, all faults at once."""

import pytest
from references.small_tables import coefficient_of_variation, fracture_toughness_pa_sqrt_m

from woodlib.errors import InputError, MissingDataError, WoodlibError
from woodlib.species import Value, find_species, read_own_species, write_own_species_template

ASH = find_species("white ash")

CALLS = [
    (lambda: find_species(""), "species '' is not a name"),
    (lambda: find_species("  ,;  "), "is not a name"),
    (lambda: find_species(None), "species None is not a name"),
    (lambda: find_species(7), "species 7 is not a name"),
    (lambda: find_species("whte ash"), "did you mean 'white ash'"),
    (lambda: find_species("mapel"), "sugar maple"),
    (lambda: find_species("qqqq"), "write its common English or its scientific name"),
    (lambda: find_species("Eiche"), "write its common English or its scientific name"),
    (lambda: find_species("whte oak"), "did you mean 'white oak'?"),
    (lambda: find_species("white oak, quartersawn veneer"), "is not in the tables"),
    (lambda: find_species("x" * 500), "is not in the tables"),
    (lambda: find_species("oak"), "can mean several woods; choose one of 'red oak, species unknown'"),
    (lambda: find_species("Quercus"), "can mean several woods"),
    (lambda: ASH.get("tangential_shrinkage"), "did you mean tangential_shrinkage_percent?"),
    (lambda: ASH.require("colour of the moon"), "the keys are: radial_shrinkage_percent"),
    (lambda: ASH.get(None), "key None is not a quantity"),
    (lambda: ASH.get(["a"]), "is not a quantity"),
    (lambda: ASH.require("ratio_grt_el"), "white ash has no ratio_grt_el"),
    (lambda: ASH.estimate("ratio_grt_el"), "no published rule"),
    (lambda: find_species("apple").estimate("specific_gravity_12"), "the rule needs specific_gravity_basic"),
    (lambda: find_species("cocobolo").estimate("specific_gravity_basic"), "the rule needs specific_gravity_12"),
    (lambda: Value(1.0, "", "guessed", "nowhere"), "status 'guessed' is not known"),
    (lambda: coefficient_of_variation("luck"), "scatter of 'luck'"),
    (lambda: fracture_toughness_pa_sqrt_m("oak", "I", "LT"), "plane 'LT' is not in the fracture table"),
    (lambda: read_own_species(None), "species file None is not a path"),
    (lambda: read_own_species("no-such-file.csv"), "'no-such-file.csv' cannot be read (No such file or directory)"),
    (lambda: read_own_species("a\0b.csv"), "cannot be read (not a file name)"),
    (lambda: write_own_species_template("no-such-folder/own.csv"), "cannot be written (No such file or directory)"),
    (lambda: read_own_species("."), "cannot be read (Is a directory)"),
]


@pytest.mark.parametrize(("call", "fragment"), CALLS, ids=[fragment for _, fragment in CALLS])
def test_call_is_refused_in_one_sentence(call, fragment):
    with pytest.raises((InputError, MissingDataError)) as caught:
        call()
    assert fragment in str(caught.value)
    assert "\n" not in str(caught.value) and str(caught.value).endswith((".", "?"))


FILES = [
    (b"", "is empty"),
    (b"  \r\n \n", "is empty"),
    (b"\xef\xbb\xbf", "is empty"),
    (b",,,\n,,\n", "is empty"),
    (b"name\n" + b"a" * 200_000 + b"\n", "is not a CSV table"),
    (b"PK\x03\x04\x00\x00name", "is not plain text; save the sheet as CSV"),
    ("name\nBirke".encode("utf-16"), "is not plain text"),
    ("name,specific_gravity_12\nBirnb\xe4ume,0.6\n".encode("latin-1"), "is not UTF-8 text"),
    (b"name,specific_gravity_12\n", "has column names but no woods"),
    (b"specific_gravity_12\n0.6\n", "there is no column 'name'"),
    (b"species,specific_gravity_12\npear,0.6\n", "'species' is not a column of a species file; did you mean 'name'?"),
    (b"Latin name,name,specific_gravity_12\nPyrus,pear,0.6\n", "did you mean 'scientific_name'?"),
    (b"name,tangental_shrinkage\npear,9\n", "'tangental_shrinkage' is not a column of a species file"),
    (b"name,tangental_shrinkage\npear,9\n", "did you mean 'tangential_shrinkage_percent'?"),
    (b"name,xyzzy,specific_gravity_12\npear,9,0.6\n", "'xyzzy' is not a column"),
    (b"name,,specific_gravity_12\npear,9,0.6\n", "row 1, column 2: the column has no name"),
    (b"name,name,specific_gravity_12\npear,pear,0.6\n", "'name' is there twice"),
    (b"name,specific_gravity_12\n,0.6\n", "row 2, column name: the wood has no name"),
    (b"name,specific_gravity_12\n --- ,0.6\n", "row 2, column name: the wood has no name"),
    (b"name,specific_gravity_12\nASH white,0.6\n", "'ASH white' is already the name of 'white ash'"),
    (b"name,specific_gravity_12\npear,0.6\nPears,0.7\n", "rows 2 and 3 are both named 'Pears'"),
    (b"name,kind,specific_gravity_12\npear,metal,0.6\n", "row 2, column kind: 'metal' is not known"),
    (b"name,tangential_shrinkage_percent\npear,abc\n", "column tangential_shrinkage_percent: 'abc' is not a number"),
    (b"name,tangential_shrinkage_percent\npear,nan\n", "'nan' is not a number"),
    (b"name,tangential_shrinkage_percent\npear,inf\n", "'inf' is not a number"),
    (b"name,tangential_shrinkage_percent\npear,101\n", "101 percent is outside 0 to 100 percent"),
    (b"name,tangential_shrinkage_percent\npear,-3\n", "-3 percent is outside 0 to 100 percent"),
    (b"name,tangential_coefficient_per_percent\npear,0.3\n", "0.3 1/percent is outside 0 to 0.02 1/percent"),
    (b"name,specific_gravity_12\npear,690\n", "690 is outside 0.05 to 1.5"),
    (b"name,tangential_shrinkage_percent\npear,9,1\n", "a number such as 7,8 must be written 7.8"),
    (b'name,tangential_shrinkage_percent\npear,"9,1"\n', "'9,1' has a comma; write a decimal point"),
    (b"name;shear_parallel_psi\npear;1,200\n", "'1,200' has a comma"),
    (b"name,shear_parallel_psi,shear_parallel_mpa\npear,1000,6.9\n", "shear_parallel_pa is given in two units"),
    (b"name,specific_gravity_12\npear,\n", "row 2: pear has no numbers"),
    (b"name,origin\npear,my yard\n", "pear has no numbers"),
]


@pytest.mark.parametrize(("content", "fragment"), FILES, ids=[fragment for _, fragment in FILES])
def test_species_file_is_refused_with_row_and_column(tmp_path, content, fragment):
    file = tmp_path / "own.csv"
    file.write_bytes(content)
    with pytest.raises(InputError) as caught:
        read_own_species(file)
    assert any(fragment in sentence for sentence in caught.value.problems)
    assert all("\n" not in sentence and sentence.endswith((".", "?")) for sentence in caught.value.problems)


def test_every_fault_of_a_file_is_reported_at_once(tmp_path):
    file = tmp_path / "own.csv"
    file.write_text(
        "name,kind,radial_shrinkage_percent,tangential_shrinkage_percent\n"
        ",hardwood,3,6\n"
        "white ash,hardwood,x,-1\n"
        "pear,plastic,3,200\n"
    )
    with pytest.raises(InputError) as caught:
        read_own_species(file)
    places = [sentence.split(":")[0] for sentence in caught.value.problems]
    assert places == [
        "row 2, column name",
        "row 3, column name",
        "row 3, column radial_shrinkage_percent",
        "row 3, column tangential_shrinkage_percent",
        "row 4, column kind",
        "row 4, column tangential_shrinkage_percent",
    ]


def test_template_does_not_overwrite(tmp_path):
    file = tmp_path / "own.csv"
    file.write_text("mine")
    with pytest.raises(WoodlibError, match="exists already"):
        write_own_species_template(file)
    assert file.read_text() == "mine"
