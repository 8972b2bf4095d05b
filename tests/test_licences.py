"""Every package that the kit brings in is listed with the licence that the package itself names."""

import csv
import importlib.metadata
import re
from pathlib import Path

import woodlib

LOCK = Path(woodlib.__file__).parent / "lock"


def locked():
    return set(re.findall(r"^([\w.-]+)==", (LOCK / "kit.txt").read_text(encoding="utf-8"), re.MULTILINE))


def licence_of(package):
    """What a package says of itself: an expression, its classifiers, or the first line of a text."""
    told = importlib.metadata.metadata(package)
    kinds = [kind.split(" :: ")[-1] for kind in told.get_all("Classifier", []) if kind.startswith("License")]
    return told.get("License-Expression") or "; ".join(kinds) or (told.get("License") or "").split("\n")[0]


def test_every_locked_package_is_listed_with_its_own_word():
    with (LOCK / "licences.csv").open(encoding="utf-8", newline="") as file:
        listed = {row["package"]: row for row in csv.DictReader(file)}
    assert set(listed) == locked() and len(listed) > 50
    for package, row in listed.items():
        try:
            found = licence_of(package)
        except importlib.metadata.PackageNotFoundError:  # one for another system
            assert row["licence"] and row["seen"] == "from memory", package
            continue
        assert row["licence"] == found and row["seen"] in ("package", "from memory"), package


def test_no_licence_asks_that_what_is_made_with_the_kit_be_opened():
    text = (LOCK / "licences.csv").read_text(encoding="utf-8")
    assert not re.search(r"\b(A?GPL|GNU)", text)
