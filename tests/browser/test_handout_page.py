"""A handout in Chromium, opened from disk without a network: right at every state, by every way to move it, for everybody."""

from __future__ import annotations

import re

import numpy as np
import pytest
from axe_playwright_python.sync_playwright import Axe
from browser.handout_pages import (
    HOSTILE,
    MOVE_AND_READ,
    READ,
    STUDIES,
    UNITS,
    differences,
    expected,
    random_places,
    slider_places,
    write_handout_page,
)

from woodlib.study import Choice, Span

STATES = {"example": 120, "moisture-by-month": 80, "plain-words": 8}
SETTLED_MS = 700  # a page speaks half a second after a control comes to rest
# Do something as soon as a page's controls can be moved, which is before its tables are unpacked.
WHEN_LIVE = """new MutationObserver(() => { if (!window.was_live) { window.was_live = true; %s } })
  .observe(document, { attributes: true, attributeFilter: ["data-live"], subtree: true });"""
LAPTOP = {"viewport": {"width": 1280, "height": 900}}
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}


@pytest.fixture(scope="module")
def address(tmp_path_factory):
    return write_handout_page(tmp_path_factory.mktemp("handout"))


@pytest.fixture
def opened(offline, address):
    """Open the handout; whatever is tried with it, it must neither complain nor ask the network for anything."""
    pages = []

    def make(fragment: str = "", when_live: str = "", **options):
        watched = offline(**(options or LAPTOP))
        pages.append(watched)
        watched.page.add_init_script(WHEN_LIVE % when_live)
        watched.page.goto(address + fragment)
        if options.get("java_script_enabled", True):
            watched.page.wait_for_selector("html[data-ready]")
        return watched.page

    yield make
    for watched in pages:
        assert watched.errors == [] and watched.requests == []
        assert watched.page.title() == "A lift-up seat"


def state_of(name: str, **changes):
    return {**STUDIES[name].start, **changes}


@pytest.mark.parametrize("name", STATES)
def test_picture_and_numbers_are_the_library_s_at_random_states(opened, name):
    page, noise = opened(), np.random.default_rng(4)
    for _ in range(STATES[name]):
        places, state = random_places(STUDIES[name], noise)
        for units, shown in zip(UNITS, page.evaluate(MOVE_AND_READ, [name, places]), strict=True):
            assert differences(shown, expected(STUDIES[name], state, units)) == [], f"{state} in {units}"


def test_nothing_is_drawn_again_on_opening(opened):
    page = opened(
        when_live="""window.drawn = []; for (const part of document.querySelectorAll("[data-marks],[data-readings],.value"))
      new MutationObserver((records) => drawn.push(...records.map((record) => record.target.outerHTML)))
        .observe(part, { attributes: true, childList: true, characterData: true, subtree: true });"""
    )
    assert page.evaluate("drawn") == []
    page.locator("#example-dry").press("ArrowRight")
    assert len(page.evaluate("drawn")) > 5


def test_a_control_moved_before_its_table_is_unpacked_is_answered(opened):
    page = opened(
        when_live="""window.early = document.documentElement.dataset.ready !== "yes";
      const dry = document.getElementById("example-dry"); dry.value = 50; dry.dispatchEvent(new Event("input"));"""
    )
    assert page.evaluate("early")
    assert (
        differences(page.evaluate(READ, "example"), expected(STUDIES["example"], state_of("example", dry=60.0), "both"))
        == []
    )
    page.wait_for_timeout(SETTLED_MS)
    assert page.evaluate("location.hash") == "#example.dry=50"


def test_sources_that_were_unfolded_stay_so_when_the_drawing_changes_its_make_up(opened):
    page = opened()
    for unfolded in (True, False):
        sources = page.locator("#example details")
        sources.locator("summary").click()
        page.evaluate("document.querySelector('#example [data-marks]').firstElementChild.id = 'before'")
        page.locator("#example-held").click()
        assert page.locator("#before").count() == 0
        assert sources.evaluate("details => details.open") == unfolded


@pytest.mark.parametrize("name", ["example", "moisture-by-month"])
def test_every_control_moves_by_key(opened, name):
    page, state = opened(), state_of(name)
    for entry in STUDIES[name].inputs:
        page.locator(f'[id="{name}-{entry.key}"]').focus()
        if isinstance(entry, Span):
            places = slider_places(entry)
            page.keyboard.press("ArrowRight")
            page.keyboard.press("ArrowRight")
            state[entry.key] = places[places.index(min(places, key=lambda place: abs(place - entry.start))) + 2]
        elif isinstance(entry, Choice):
            page.keyboard.press("ArrowDown")
            state[entry.key] = list(entry.labels)[list(entry.labels).index(entry.start) + 1]
        else:
            page.keyboard.press("Space")
            state[entry.key] = not entry.start
        assert differences(page.evaluate(READ, name), expected(STUDIES[name], state, "both")) == [], entry.key


@pytest.mark.parametrize("name", ["example", "moisture-by-month"])
def test_every_control_moves_by_mouse(opened, name):
    page, state = opened(), state_of(name)
    for entry in STUDIES[name].inputs:
        control = page.locator(f'[id="{name}-{entry.key}"]')
        control.scroll_into_view_if_needed()
        if isinstance(entry, Span):
            box = control.bounding_box()
            y, start = box["y"] + box["height"] / 2, box["x"] + 0.1 * box["width"]
            page.mouse.move(start, y)
            page.mouse.down()
            page.mouse.move(start + 0.4 * box["width"], y, steps=5)
            page.mouse.up()
            place = int(control.input_value())
            assert 0.4 < place / (len(slider_places(entry)) - 1) < 0.6
            state[entry.key] = slider_places(entry)[place]
        elif isinstance(entry, Choice):
            control.select_option(index=1)
            state[entry.key] = list(entry.labels)[1]
        else:
            control.click()
            state[entry.key] = not entry.start
        assert differences(page.evaluate(READ, name), expected(STUDIES[name], state, "both")) == [], entry.key


def test_tab_reaches_every_control_in_the_order_of_the_page(opened):
    page = opened()
    wanted = page.evaluate(
        "[...document.querySelectorAll('input,select,button,summary')].map(e => e.id || e.value || e.textContent)"
    )
    met = []
    for _ in range(len(wanted) + 3):
        page.keyboard.press("Tab")
        met.append(page.evaluate("(e => e.id || e.value || e.textContent)(document.activeElement)"))
    groups = {"inch", "metric", HOSTILE}  # of radio buttons the tab stops at one; arrows reach the others
    assert [each for each in wanted if each not in met and each not in groups] == []


def test_units_switch_everywhere_at_once(opened):
    page = opened()
    for way, units in (("inches", "inch"), ("mm", "metric"), ("inches and mm", "both")):
        page.get_by_label(way, exact=True).check()
        for name, study in STUDIES.items():
            assert differences(page.evaluate(READ, name), expected(study, study.start, units)) == []


def test_back_to_your_piece(opened):
    page, start = opened(), STUDIES["example"].start
    page.evaluate(MOVE_AND_READ, ["example", [1, 3, 40, True]])
    page.get_by_label("inches and mm", exact=True).check()
    assert differences(page.evaluate(READ, "example"), expected(STUDIES["example"], start, "both"))
    page.locator("#example [data-back]").click()
    assert differences(page.evaluate(READ, "example"), expected(STUDIES["example"], start, "both")) == []
    assert start["width"] == pytest.approx(0.460375)  # between two steps: the maker's own size


def test_the_address_keeps_a_position_that_a_link_restores(opened):
    page = opened()
    page.locator("#example-dry").focus()
    page.keyboard.press("End")
    page.locator("#example-held").check()
    page.wait_for_timeout(SETTLED_MS)
    fragment = page.evaluate("location.hash")
    wanted = expected(STUDIES["example"], state_of("example", dry=60.0, held=True), "both")
    assert fragment == "#example.dry=50&example.held=1"
    assert differences(opened(fragment).evaluate(READ, "example"), wanted) == []


@pytest.mark.parametrize(
    "fragment",
    [
        "#",
        "#nonsense",
        "#example.dry=",
        "#example.dry=9999&example.dry=-1",
        "#example.width=1.5",
        "#example.wood=length",
        "#x.y=1&example.held=7",
        "#example.dry=%3Cscript%3E",
        "#example.__proto__=1",
        "#%E0%A4%A",
        "#example.dry=NaN",
    ],
)
def test_nonsense_in_the_address_is_ignored(opened, fragment):
    page = opened(fragment)
    for name, study in STUDIES.items():
        assert differences(page.evaluate(READ, name), expected(study, study.start, "both")) == []


def test_an_address_changed_while_the_page_is_open(opened):
    page = opened()
    page.evaluate("location.hash = '#example.dry=0'")
    page.wait_for_function("() => document.querySelector('#example-dry').value === '0'")
    wanted = expected(STUDIES["example"], state_of("example", dry=10.0), "both")
    assert differences(page.evaluate(READ, "example"), wanted) == []


def test_without_its_script_the_page_tells_everything_of_the_start(opened):
    page = opened(java_script_enabled=False, **LAPTOP)
    text = page.locator("main").inner_text()
    for study in (STUDIES["example"], STUDIES["moisture-by-month"]):
        answer = study.answer()
        for line in answer.lines():
            for part in re.split(r": | - ", line):
                assert part in text
        for entry in study.inputs:
            assert f"{entry.text(entry.start)}" in text
    assert page.locator("#example svg path").count() > 3 and page.locator("#example svg").bounding_box()["height"] > 100
    assert page.locator("input:visible, select:visible, button:visible").count() == 0
    assert page.get_by_text("The sliders of this page need its script").is_visible()


def test_hostile_words_stay_words(opened):
    page = opened()
    assert page.locator("#plain-words h3").text_content() == HOSTILE
    assert page.locator("img").count() == 0
    assert page.locator("script").count() == 1 + len(STUDIES)
    page.locator("#plain-words select").select_option(index=1)
    assert page.evaluate("document.querySelector('#plain-words desc').textContent").startswith(HOSTILE)


def test_predictions_are_kept_and_shown_beside_what_was_seen(opened):
    page = opened()
    choice, typed = page.locator("[data-question]").all()
    choice.get_by_role("button").click()
    assert "no answer yet" in choice.get_by_role("status").inner_text()
    choice.get_by_role("radio").nth(1).check()
    choice.get_by_role("button").click()
    typed.get_by_role("textbox").fill("1/4 in")
    typed.get_by_role("button").click()
    assert typed.get_by_role("status").inner_text() == "You said: 1/4 in"
    for summary in page.get_by_text("What you said").all():
        summary.click()
    assert [each.inner_text() for each in page.locator("[data-said]").all()] == [
        f"You said: {HOSTILE}",
        "You said: 1/4 in",
    ]


def test_one_polite_sentence_for_a_change(opened):
    page = opened()
    page.evaluate("""() => {
      window.heard = [];
      const live = document.querySelectorAll('[aria-live], [role=status], [role=alert], output');
      const listen = (records) => records.forEach((record) => heard.push(record.target.textContent));
      live.forEach((region) => new MutationObserver(listen).observe(region, { childList: true, characterData: true, subtree: true }));
    }""")
    page.locator("#example-dry").focus()
    for _ in range(12):
        page.keyboard.press("ArrowRight")
    page.wait_for_timeout(SETTLED_MS)
    headline = expected(STUDIES["example"], state_of("example", dry=47.0), "both")["said"][0][1]
    assert page.evaluate("heard") == [headline]


def test_each_control_has_a_name_and_speaks_with_its_unit(opened):
    page = opened()
    for name in ("example", "moisture-by-month"):
        for entry in STUDIES[name].inputs:
            control = page.locator(f'[id="{name}-{entry.key}"]')
            assert control.evaluate("control => control.labels[0].textContent") == entry.label
            if isinstance(entry, Span):
                spoken = control.get_attribute("aria-valuetext")
                assert spoken == entry.text(entry.start) and re.search(r"\d.*[^\d\s]$", spoken)
    for picture in page.locator("svg[role=img]").all():
        labelled, described = (picture.get_attribute(f"aria-{key}") for key in ("labelledby", "describedby"))
        told = page.evaluate("ids => ids.map(id => document.getElementById(id).textContent)", [labelled, described])
        assert picture.get_attribute("role") == "img" and all(told)
    ids = page.evaluate("[...document.querySelectorAll('[id]')].map(e => e.id).filter(id => !id.startsWith('h-'))")
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize(
    "look",
    [LAPTOP, LAPTOP | {"color_scheme": "dark"}, PHONE, PHONE | {"color_scheme": "dark"}],
    ids=["laptop", "laptop dark", "phone", "phone dark"],
)
def test_the_accessibility_checker_finds_nothing(opened, look):
    page = opened(bypass_csp=True, **look)
    for summary in page.locator("summary").all():
        summary.click()
    page.locator("#example-dry").press("End")
    result = Axe().run(
        page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}
    )
    assert result.violations_count == 0, result.generate_report()
    checked = {rule["id"] for rule in result.response["passes"]}
    assert {"color-contrast", "label", "svg-img-alt", "document-title", "html-has-lang"} <= checked


@pytest.mark.parametrize("width", [320, 390, 768])
def test_nothing_sticks_out_of_a_narrow_window(opened, width):
    page = opened(viewport={"width": width, "height": 800}, is_mobile=True)
    for summary in page.locator("summary").all():
        summary.click()
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    for control in page.locator("input[type=range], select, [data-back]").all():
        box = control.bounding_box()
        assert (
            box["height"] >= 24 and box["x"] >= 0 and box["x"] + box["width"] <= width
        )  # WCAG 2.2, 2.5.8: target size


def test_ten_thousand_moves_without_growth(opened):
    page = opened()
    devtools = page.context.new_cdp_session(page)
    moves = """count => {
      const [width, dry, held] = ["width", "dry", "held"].map((key) => document.getElementById(`example-${key}`));
      for (let k = 0; k < count; k++) {
        const control = [width, dry, held][k % 50 ? k % 2 : 2];
        if (control === held) held.checked = !held.checked;
        else control.value = (k * 37) % (1 + Number(control.max));
        control.dispatchEvent(new Event("input"));
      }
    }"""

    def size_after(count: int) -> tuple[float, int]:
        page.evaluate(moves, count)
        page.wait_for_timeout(SETTLED_MS)
        devtools.send("HeapProfiler.collectGarbage")
        counters = devtools.send("Memory.getDOMCounters")
        return devtools.send("Runtime.getHeapUsage")["usedSize"], counters["nodes"] + counters["jsEventListeners"]

    heap, nodes = size_after(2000)
    later_heap, later_nodes = size_after(10_000)
    assert later_heap - heap < 200_000 and later_nodes <= nodes + 20
