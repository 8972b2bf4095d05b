"""A handout in Firefox, opened from disk: the same words, numbers and lines as the library, by key and by mouse."""

from __future__ import annotations

import re

import numpy as np
import pytest
from browser.firefox import NO_FIREFOX, find_firefox, running_firefox
from browser.handout_pages import (
    MOVE_AND_READ,
    READ,
    STUDIES,
    TAKEN,
    UNITS,
    UNTAKEN,
    differences,
    expected,
    random_places,
    slider_places,
    write_handout_page,
    write_hostile_pages,
)

from woodlib.commission import DEMO, checked_commission
from woodlib.data_files import data_path
from woodlib.handout.client_page import client_page
from woodlib.study import Choice, Span

STATES = {"example": 130, "moisture-by-month": 80}


@pytest.fixture(scope="module")
def firefox(tmp_path_factory):
    if find_firefox() is None:
        pytest.fail(f"The handout cannot be tried in Firefox: {NO_FIREFOX}.", pytrace=False)
    with running_firefox(tmp_path_factory.mktemp("firefox")) as running:
        yield running


@pytest.fixture(scope="module")
def address(tmp_path_factory):
    return write_handout_page(tmp_path_factory.mktemp("handout"))


@pytest.fixture
def page(firefox, address):
    """The handout, freshly opened; it must neither complain nor ask the network for anything."""
    firefox.size(1280, 900)
    open_page(firefox, address)
    yield firefox
    assert firefox.errors == [] and firefox.requests == []


def open_page(firefox, address: str) -> None:
    firefox.open("about:blank")
    firefox.open(address)
    firefox.run(
        "async () => { while (!document.documentElement.dataset.ready) await new Promise((done) => setTimeout(done, 20)); }"
    )


@pytest.mark.parametrize("name", STATES)
def test_picture_and_numbers_are_the_library_s_at_random_states(page, name):
    noise = np.random.default_rng(6)
    for _ in range(STATES[name]):
        places, state = random_places(STUDIES[name], noise)
        for units, shown in zip(UNITS, page.run(MOVE_AND_READ, [name, places]), strict=True):
            assert differences(shown, expected(STUDIES[name], state, units)) == [], f"{state} in {units}"


@pytest.mark.parametrize("name", STATES)
def test_every_control_moves_by_key(page, name):
    state = dict(STUDIES[name].start)
    for entry in STUDIES[name].inputs:
        control = f"[id='{name}-{entry.key}']"
        if isinstance(entry, Span):
            page.press(control, "Home", "ArrowRight", "ArrowRight", "ArrowRight")
            state[entry.key] = slider_places(entry)[3]
        elif isinstance(entry, Choice):
            page.press(control, "ArrowDown")
            state[entry.key] = list(entry.labels)[1]
        else:
            page.press(control, "Space")
            state[entry.key] = not entry.start
        assert differences(page.run(READ, name), expected(STUDIES[name], state, "both")) == [], entry.key


def test_sliders_switches_and_units_move_by_mouse(page):
    study, state = STUDIES["example"], dict(STUDIES["example"].start)
    for key in ("width", "dry"):
        page.drag(f"#example-{key}", 0.2, 0.7)
        place = page.run("key => Number(document.getElementById(`example-${key}`).value)", key)
        places = slider_places(next(entry for entry in study.inputs if entry.key == key))
        assert 0.6 < place / len(places) < 0.8
        state[key] = places[place]
    page.drag("#example-held", 0.5, 0.5)
    page.drag("[name=units][value=inch]", 0.5, 0.5)
    assert differences(page.run(READ, "example"), expected(study, state | {"held": True}, "inch")) == []


def test_a_link_restores_and_back_returns(page, address):
    open_page(page, address + "#example.dry=50&nonsense=1&example.width=-3")
    study = STUDIES["example"]
    assert differences(page.run(READ, "example"), expected(study, {**study.start, "dry": 60.0}, "both")) == []
    page.drag("#example [data-back]", 0.5, 0.5)
    assert differences(page.run(READ, "example"), expected(study, study.start, "both")) == []


def test_nothing_sticks_out_of_a_phone(page):
    page.size(390, 800)
    assert page.run("() => document.documentElement.scrollWidth") <= 390


def test_the_clients_page_moves_and_changes_its_units(firefox, tmp_path):
    path = tmp_path / "client.html"
    path.write_text(client_page(checked_commission(data_path(DEMO))), encoding="utf-8")
    firefox.size(390, 844)
    open_page(firefox, path.as_uri())
    shown = "() => document.querySelector('main').innerText"
    assert " in " in firefox.run(shown) and " mm" not in firefox.run(shown)
    before = firefox.run("() => document.querySelector('#through-the-year [data-marks]').textContent")
    firefox.press("#through-the-year-month", "End")
    assert firefox.run("() => document.querySelector('#through-the-year [data-marks]').textContent") != before
    assert firefox.run("() => document.documentElement.hasAttribute('data-trial')")
    firefox.run("() => scrollTo(0, 0)")
    firefox.drag("[name=units][value=metric]", 0.5, 0.5)
    assert " mm" in firefox.run(shown) and not re.search(r"/\d+ in\b", firefox.run(shown))
    firefox.run("() => { document.querySelectorAll('details.part').forEach((part) => { part.open = true; }); }")
    assert firefox.run("() => document.documentElement.scrollWidth") <= 390
    assert firefox.errors == [] and firefox.requests == []


def test_hostile_words_of_a_brief_stay_words(firefox, tmp_path):
    for file in write_hostile_pages(tmp_path):
        firefox.open(file.as_uri())
        assert firefox.run(TAKEN) == UNTAKEN, file.name
    assert firefox.errors == [] and firefox.requests == []
