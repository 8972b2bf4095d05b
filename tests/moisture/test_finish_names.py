"""Finishes as makers say them: understood, or asked back; never taken for house paint."""

import pytest

from woodlib.errors import InputError
from woodlib.moisture.finishes import find_finish, finish_names
from woodlib.tables import rows


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("wax", "Furniture wax"),
        ("Hardwax oil", "Linseed oil"),
        ("hard-wax  oil", "Linseed oil"),
        ("food-safe oil", "bare wood"),
        ("bare", "bare wood"),
        ("polyurethane", "Urethane varnish"),
        ("LACQUER", "Nitrocellulose lacquer"),
        ("enamel", "Enamel paint"),
    ],
)
def test_a_makers_name_means_what_a_maker_means(said, meant):
    assert find_finish(said).label.startswith(meant)


@pytest.mark.parametrize("said", ["oil", "Oiled", "paint"])
def test_an_ambiguous_name_is_asked_back(said):
    with pytest.raises(InputError, match="can mean several; write "):
        find_finish(said)


def test_every_name_leads_to_the_table_and_none_to_house_paint_unasked():
    for row in rows("finish_names.csv"):
        assert not row["finish"] or row["finish"] in finish_names()
        assert "paint" not in row["finish"].lower()
