"""A handout on paper, A4 and Letter: values in the place of sliders, sources unfolded, no figure cut by a page's edge."""

from __future__ import annotations

import re
import shutil
import subprocess

import pytest
from browser.handout_pages import STUDIES, write_handout_page

MARGIN_MM, PX_PER_MM = 14.0, 96 / 25.4
PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
MOST_PAGES = 5


@pytest.fixture
def printed(offline, tmp_path, request):
    """The handout as a page prepared for print, in the width of the paper's text."""
    width, height = ((side - 2 * MARGIN_MM) * PX_PER_MM for side in PAPERS[request.param])
    watched = offline(viewport={"width": int(width), "height": int(height)})
    watched.page.goto(write_handout_page(tmp_path))
    watched.page.wait_for_selector("html[data-ready]")
    watched.page.emulate_media(media="print")
    yield watched.page, request.param, height
    assert watched.errors == [] and watched.requests == []


on_both_papers = pytest.mark.parametrize("printed", PAPERS, indirect=True)


@on_both_papers
def test_values_stand_in_the_place_of_sliders(printed):
    page, _, _ = printed
    page.locator("#example-dry").evaluate("slider => { slider.value = 50; slider.dispatchEvent(new Event('input')); }")
    assert page.locator("input[type=range]:visible, select:visible, button:visible, #units:visible").count() == 0
    for name in ("example", "moisture-by-month"):
        for entry in STUDIES[name].inputs:
            wanted = "60 % RH" if entry.key == "dry" else entry.text(entry.start)
            assert page.locator(f"#{name} [data-value={entry.key}]:visible").inner_text() == wanted
    assert page.get_by_text("Made-up coefficients, for tests only.").is_visible()


@on_both_papers
def test_every_figure_fits_a_page_and_asks_not_to_be_cut(printed):
    page, _, height = printed
    for figure in page.locator("svg[role=img]").all():
        assert 60 < figure.bounding_box()["height"] < 0.6 * height
        assert figure.evaluate("figure => getComputedStyle(figure).breakInside") == "avoid"
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


@on_both_papers
def test_the_printed_file_has_whole_figures_on_few_pages(printed, tmp_path):
    page, paper, _ = printed
    target = tmp_path / "handout.pdf"
    page.pdf(path=target, format=paper)
    content = target.read_bytes()
    sheets = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", content)
    assert 1 < len(sheets) <= MOST_PAGES
    for sheet in sheets:
        assert [float(side) / 72 * 25.4 for side in sheet] == pytest.approx(PAPERS[paper], abs=0.5)
    if reader := shutil.which("pdftotext"):
        told = subprocess.run(
            [reader, "-layout", target, "-"], capture_output=True, text=True, check=True
        ).stdout.split("\f")
        for first, last in (("60 mm", "gap 3/4 in (19 mm)"), ("air in the room", "driest:")):
            assert any(first in sheet and last in sheet for sheet in told)


def test_dark_screens_print_dark_on_light(offline, tmp_path):
    watched = offline(color_scheme="dark")
    watched.page.goto(write_handout_page(tmp_path))
    watched.page.wait_for_selector("html[data-ready]")
    watched.page.emulate_media(media="print", color_scheme="dark")
    colours = watched.page.evaluate("""() => [getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor,
      getComputedStyle(document.querySelector('.a-paper')).fill, getComputedStyle(document.querySelector('.w-ink')).fill]""")
    assert colours == ["rgb(0, 0, 0)", "rgb(255, 255, 255)", "rgb(255, 255, 255)", "rgb(29, 36, 41)"]
