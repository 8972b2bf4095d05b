"""The pages of a commission in a browser: nothing fetched, nothing wrong, sound for everybody, short on paper."""

from __future__ import annotations

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from browser.handout_pages import NAMED, TAKEN, TYPED, UNTAKEN, write_hostile_pages

from woodlib.commission import checked_commission
from woodlib.data_files import data_path
from woodlib.handout.client_page import client_page, shop_page

SIZES = {"phone": {"width": 390, "height": 844}, "laptop": {"width": 1366, "height": 768}}
MOST_SCREENS = 6  # of a phone, before a folded part is opened
MOST_SHEETS = 2


@pytest.fixture(scope="module")
def pages(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("pages")
    commission = checked_commission(data_path("briefs/reading_nook_seat.toml"))
    (folder / "client.html").write_text(client_page(commission), encoding="utf-8")
    (folder / "shop.html").write_text(shop_page(commission), encoding="utf-8")
    return folder


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ["client", "shop"])
def test_a_page_is_sound_opened_and_folded(pages, offline, name, size, scheme):
    watched = offline(viewport=SIZES[size], color_scheme=scheme)
    page = watched.page
    page.goto((pages / f"{name}.html").as_uri())
    for opened in (False, True):
        page.evaluate("opened => document.querySelectorAll('details').forEach((one) => { one.open = opened; })", opened)
        found = Axe().run(page).response["violations"]
        assert [(each["id"], each["nodes"][0]["html"][:100]) for each in found] == []
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert watched.errors == [] and watched.requests == []


def test_the_clients_page_is_short_and_its_folded_sliders_move(pages, offline):
    page = offline(viewport=SIZES["phone"]).page
    page.goto((pages / "client.html").as_uri())
    page.wait_for_selector("html[data-ready]")
    assert page.evaluate("document.documentElement.scrollHeight") <= MOST_SCREENS * SIZES["phone"]["height"]
    page.locator("details.part > summary", has_text="What if").click()
    before = page.locator("#what-if [data-readings]").inner_text()
    page.locator("#what-if-way").select_option(index=2)
    page.wait_for_function(
        "before => document.querySelector('#what-if [data-readings]').innerText !== before", arg=before
    )


def test_the_clients_page_prints_on_two_sheets(pages, offline):
    page = offline(viewport=SIZES["laptop"]).page
    page.goto((pages / "client.html").as_uri())
    sheets = page.pdf(format="A4").count(b"/Type /Page\n")
    assert 1 <= sheets <= MOST_SHEETS


def test_hostile_words_of_a_brief_stay_words(tmp_path, offline_page):
    files = write_hostile_pages(tmp_path)
    assert {file.name for file in files} >= {"client.html", "shop.html", "piece.svg", "01.html", "index.html"}
    read = ""
    for file in files:
        offline_page.page.goto(file.as_uri())
        assert offline_page.page.evaluate(TAKEN) == UNTAKEN, file.name
        read += offline_page.page.evaluate("document.documentElement.textContent")
    assert TYPED in read and NAMED in read
    assert offline_page.errors == [] and offline_page.requests == []
