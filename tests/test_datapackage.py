"""The data folder is a valid Frictionless data package, and every value in it has its origin."""

import csv
import json

import pytest
from frictionless import Package, system

from woodlib.data_files import data_path

DESCRIPTOR = json.loads(data_path("datapackage.json").read_text(encoding="utf-8"))
RESOURCES = {resource["name"]: resource for resource in DESCRIPTOR["resources"]}


def rows(name):
    with open(data_path(name), encoding="utf-8", newline="") as handle:
        return list(csv.DictReader(handle))


@pytest.fixture(scope="module")
def report():
    with system.use_context(trusted=True):
        return Package(str(data_path("datapackage.json"))).validate()


def test_package_is_valid(report):
    assert report.valid, report.flatten(["name", "rowNumber", "fieldName", "note"])
    assert len(report.tasks) == len(RESOURCES)


def test_every_table_of_the_folder_is_described():
    described = {resource["path"] for resource in RESOURCES.values()}
    assert {file.name for file in data_path().glob("*.csv")} == described


@pytest.mark.parametrize("name", RESOURCES)
def test_every_column_is_described_in_words(name):
    resource = RESOURCES[name]
    fields = resource["schema"]["fields"]
    assert [field["name"] for field in fields] == list(rows(resource["path"])[0])
    assert all(field.get("description") for field in fields)
    assert all("unit" in field for field in fields if field["type"] == "number")


def test_every_filled_cell_of_the_species_table_has_one_origin():
    told = {"name", "table_name", "kind", "origin", "is_group", "coefficient_row"}
    cells = [(row["name"], column, text) for row in rows("species.csv") for column, text in row.items()]
    filled = {(name, column) for name, column, text in cells if text and column not in told}
    origins = [(row["species"], row["column"]) for row in rows("species_provenance.csv")]
    assert len(origins) == len(set(origins))
    assert set(origins) == filled


def test_second_sources_exist():
    known = {row["id"] for row in rows("sources.csv")}
    assert {row["also_seen_in"] for row in rows("species_provenance.csv")} - {""} <= known


def test_quantities_are_the_columns_of_the_species_table():
    shipped = [row["column"] for row in rows("quantities.csv") if row["table"]]
    assert list(rows("species.csv")[0])[7:] == shipped


def test_a_wrong_table_is_caught(tmp_path):
    """The check itself can fail: one value out of range and one unknown source must both be reported."""
    for file in data_path().glob("*.*"):
        (tmp_path / file.name).write_bytes(file.read_bytes())
    species = tmp_path / "species.csv"
    species.write_bytes(species.read_bytes().replace(b",4.9,7.8,13.3,", b",4.9,780,13.3,", 1))
    variation = tmp_path / "strength_variation.csv"
    variation.write_bytes(variation.read_bytes().replace(b",memory,", b",hearsay,", 1))
    with system.use_context(trusted=True):
        report = Package(str(tmp_path / "datapackage.json")).validate()
    kinds = {kind for _, kind in report.flatten(["name", "type"])}
    assert {"constraint-error", "foreign-key"} <= kinds
