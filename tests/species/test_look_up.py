"""Any way of writing a name finds the wood; what cannot be told apart is asked back."""

import pickle
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import InputError
from woodlib.species import Species, all_species, find_species
from woodlib.species.names import normal

WOODS = all_species()
NAMES = [(wood, text) for wood in WOODS for text in (wood.name, wood.table_name)]


def test_every_species_is_carried():
    assert sum(not wood.is_group for wood in WOODS) == 220
    assert [wood.name for wood in WOODS if wood.is_group] == [
        "red oak, species unknown",
        "water, laurel or willow oak, species unknown",
        "white oak, species unknown",
        "true hickory, species unknown",
        "meranti, species unknown",
    ]


def test_no_two_woods_share_a_name():
    written: dict[str, Species] = {}
    for wood, text in NAMES:
        assert written.setdefault(normal(text), wood) is wood


@given(
    st.sampled_from(NAMES),
    st.randoms(use_true_random=False),
    st.sampled_from([str.lower, str.upper, str.title, str.swapcase]),
    st.sampled_from([" ", ", ", " - ", "  ", "/", "; "]),
)
def test_any_word_order_case_and_punctuation_finds_the_wood(named, shuffle: random.Random, case, between):
    wood, text = named
    words = text.replace(",", " ").replace(":", " ").replace("(", " ").replace(")", " ").split()
    shuffle.shuffle(words)
    assert find_species(case(between.join(words))) is wood


PLURALS = {"oak": "oaks", "maple": "maples", "ash": "ashes", "birch": "birches", "cherry": "cherries"}


@given(st.sampled_from([wood for wood in WOODS if wood.name.split()[-1] in PLURALS]))
def test_plural_finds_the_wood(wood):
    *first, last = wood.name.split()
    assert find_species(" ".join((*first, PLURALS[last]))) is wood


@given(st.sampled_from(NAMES), st.integers(0, 40))
def test_a_missing_letter_is_found_or_asked_back_in_one_line(named, place):
    wood, text = named
    broken = text[: place % len(text)] + text[place % len(text) + 1 :]
    try:
        found = find_species(broken)
    except InputError as error:
        assert "\n" not in str(error)
        assert broken in str(error) or repr(broken) in str(error)
    else:
        assert found in WOODS or found.name in {known.name for known in WOODS}


@given(st.text(max_size=30))
def test_any_text_finds_a_wood_or_is_refused_in_one_line(text):
    try:
        assert isinstance(find_species(text), Species)
    except InputError as error:
        assert len(error.problems) == 1 and "\n" not in str(error)


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("white ash", "white ash"),
        ("Ash, white", "white ash"),
        ("WHITE OAK", "white oak, species unknown"),
        ("red oak", "red oak, species unknown"),
        ("Red Oaks", "red oak, species unknown"),
        ("white oak lumber", "white oak, species unknown"),
        ("northern red oak", "northern red oak"),
        ("Oak, white: white", "white oak (Quercus alba)"),
        ("quercus alba", "white oak (Quercus alba)"),
        ("cherry", "black cherry"),
        ("walnut", "black walnut"),
        ("English oak", "European oak"),
        ("European maple", "European sycamore"),
        ("pine, Scots", "Scots pine"),
        ("yellow poplar", "yellow-poplar"),
        ("swamp chestnut", "swamp chestnut oak"),
        ("Sitka", "Sitka spruce"),
        ("pecan", "pecan hickory"),
        ("bass wood", "American basswood"),
        ("western red cedar", "western redcedar"),
        ("okoumé", "okoume"),
        ("Gonçalo Alves", "goncalo alves"),
    ],
)
def test_what_a_maker_writes(written, name):
    assert find_species(written).name == name


@pytest.mark.parametrize(
    ("written", "choices"),
    [
        ("oak", ("'red oak, species unknown'", "'white oak, species unknown'", "more")),
        ("maple", ("'sugar maple'", "'red maple'", "'bigleaf maple'")),
        ("soft maple", ("'red maple'", "'silver maple'")),
        ("mahogany", ("'African mahogany'", "'true mahogany'")),
        ("white pine", ("'eastern white pine'", "'western white pine'")),
    ],
)
def test_a_name_of_several_woods_lists_the_choices(written, choices):
    with pytest.raises(InputError) as caught:
        find_species(written)
    assert all(choice in str(caught.value) for choice in choices)


def test_trade_name_is_marked_as_common_practice():
    wood = find_species("hard maple")
    assert wood.name == "sugar maple"
    assert wood.doubts[0] == "'hard maple' is read as sugar maple: common practice, no source."
    assert "common practice" not in " ".join(find_species("sugar maple").doubts)


def test_a_wood_finds_itself_and_survives_a_copy():
    for wood in WOODS[:5]:
        assert find_species(wood) is wood
        assert pickle.loads(pickle.dumps(wood)) == wood
