"""The pages of a commission in a browser: nothing fetched, nothing wrong, sound for everybody, short on paper."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from browser.handout_pages import NAMED, TAKEN, TYPED, UNTAKEN, write_hostile_pages
from commissions.matrix import brief_text

from woodlib.commission import checked_commission
from woodlib.data_files import data_path
from woodlib.handout.client_page import client_page, shop_page

SIZES = {"phone": {"width": 390, "height": 844}, "laptop": {"width": 1366, "height": 768}}
SMALL = {"width": 320, "height": 640}
ENLARGED = {"width": 683, "height": 384}  # a laptop at 200 %
MOST_SCREENS = 6  # of a phone, before a folded part is opened
LEAST_LETTERS = 12.0  # px, as seen
PAINTED = '[finish]\nname = "enamel paint"\n[wood]'
PIECES = {  # round; upright and painted
    "turned": brief_text("turned part", 2, "inches", "dry winters", "sugar maple"),
    "door": brief_text("door panel", 1, "millimetres", "dry winters", "yellow-poplar").replace("[wood]", PAINTED),
}
READY = "html[data-ready]"
SEEN = """() => [...document.querySelectorAll("[data-input]")].map((control) => {
  control.focus({ preventScroll: true }), control.scrollIntoView({ block: "nearest" });
  const box = control.getBoundingClientRect(), picture = control.closest("section").querySelector("svg").getBoundingClientRect();
  const seen = Math.min(picture.bottom, innerHeight) - Math.max(picture.top, 0);
  return { name: control.id, whole: seen >= picture.height - 1, control: box.top >= 0 && box.bottom <= innerHeight + 1 };
})"""
LETTERS = """() => Math.min(...[...document.querySelectorAll("main svg text")].filter((text) => text.getBoundingClientRect().width)
  .map((text) => parseFloat(getComputedStyle(text).fontSize) * Math.abs(text.getScreenCTM().a)))"""


@pytest.fixture(scope="module")
def pages(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("pages")
    commission = checked_commission(data_path("briefs/reading_nook_seat.toml"))
    (folder / "client.html").write_text(client_page(commission), encoding="utf-8")
    (folder / "shop.html").write_text(shop_page(commission), encoding="utf-8")
    for name, text in PIECES.items():
        (folder / f"{name}.toml").write_text(text, encoding="utf-8")
        made = client_page(checked_commission(folder / f"{name}.toml"))
        (folder / f"{name}.html").write_text(made, encoding="utf-8")
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
    page.wait_for_selector(READY)
    assert page.evaluate("document.documentElement.scrollHeight") <= MOST_SCREENS * SIZES["phone"]["height"]
    page.locator("details.part > summary", has_text="What if").click()
    before = page.locator("#what-if [data-readings]").inner_text()
    page.locator("#what-if-way").select_option(index=2)
    page.wait_for_function(
        "before => document.querySelector('#what-if [data-readings]').innerText !== before", arg=before
    )
    assert page.locator("#what-if .trial").is_visible()
    page.locator("#what-if [data-back]").click()
    assert (
        page.locator("#what-if .trial").is_hidden() and page.locator("#what-if [data-readings]").inner_text() == before
    )


@pytest.mark.parametrize("name", ["client", *PIECES])
def test_the_picture_stays_in_sight_while_a_slider_moves(pages, offline, name):
    watched = offline(viewport=SMALL)
    page = watched.page
    page.goto((pages / f"{name}.html").as_uri())
    page.wait_for_selector(READY)
    assert page.evaluate("document.documentElement.scrollHeight / innerHeight") <= MOST_SCREENS
    page.evaluate("document.querySelectorAll('details.part').forEach((part) => { part.open = true; })")
    for size in (SMALL, *SIZES.values(), ENLARGED):
        page.set_viewport_size(size)
        page.evaluate("scrollTo(0, 0)")
        found = page.evaluate(SEEN)
        assert len(found) >= 4 and [each for each in found if not (each["whole"] and each["control"])] == [], size
        assert page.evaluate(LETTERS) >= LEAST_LETTERS, size
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), size
    assert watched.errors == [] and watched.requests == []


def shown(page) -> str:
    """What a page shows, the pictures too."""
    return page.locator("main").inner_text()


@pytest.mark.parametrize(("name", "own", "other"), [("client", "in", "mm"), ("door", "mm", "in")])
def test_one_switch_changes_every_size_and_without_script_the_briefs_own_are_shown(pages, offline, name, own, other):
    address = (pages / f"{name}.html").as_uri()
    sizes = {"in": re.compile(r"/\d+ in\b"), "mm": re.compile(r"\d mm\b")}  # odds too are so many in so many
    for script in (True, False):
        page = offline(viewport=SIZES["phone"], java_script_enabled=script).page
        page.goto(address)
        if script:
            page.wait_for_selector(READY)
            page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        assert sizes[own].search(shown(page)) and not sizes[other].search(shown(page))
        assert page.locator("#through-the-year svg").is_visible()
        assert page.locator("input:visible, select:visible, button:visible").count() == 0 or script
        if script:
            page.locator("#units").get_by_label("mm" if other == "mm" else "inches").check()
            assert sizes[other].search(shown(page)) and not sizes[own].search(shown(page))


@pytest.mark.parametrize("name", ["client", *PIECES])
def test_pair_verdict_and_care_card_print_on_one_sheet(pages, offline, name):
    page = offline(viewport=SIZES["laptop"]).page
    page.goto((pages / f"{name}.html").as_uri())
    page.wait_for_selector(READY)
    assert [page.pdf(format=paper).count(b"/Type /Page\n") for paper in ("A4", "Letter")] == [1, 1]
    page.emulate_media(media="print")
    assert page.locator(".kept").is_visible() and page.locator("header .trial").is_hidden()
    page.emulate_media(media="screen")
    page.locator("#through-the-year-month").press("End")
    page.emulate_media(media="print")
    assert "A trial, not your piece: Month December" in page.locator("header").inner_text()


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
