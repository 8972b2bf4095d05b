"""Every panel on a small laptop: controls left, picture and answer right, all of it on the screen at once."""

from __future__ import annotations

import nbformat
import pytest
from browser.lab import WAIT, run_all
from nbformat.v4 import new_code_cell, new_notebook

from woodlib.studies import STUDIES
from woodlib.study.study import MOST_SHOWN

SCREEN, HIGHEST_PX = {"width": 1366, "height": 768}, 640
KERNEL = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
LESSON = "from woodlib.live import show\nfrom woodlib.studies import find_study\nshow(find_study({key!r}))"
COMMISSION = """\
from woodlib.commission import chosen_brief, commission_of, the_pair, ways_side_by_side, ways_to_slide
from woodlib.live import show
show({study}(commission_of(chosen_brief())))"""
OF_A_COMMISSION = ("the_pair", "ways_to_slide", "ways_side_by_side")
# Where the parts of each panel lie, in px: left, top, right, bottom; nothing where nothing is shown.
LOOK = """() => [...document.querySelectorAll(".wl-panel")].map((panel) => {
  const boxes = (what) => [...panel.querySelectorAll(what)].map((node) => node.getBoundingClientRect())
    .filter((box) => box.width * box.height > 0).map((box) => [box.left, box.top, box.right, box.bottom]);
  return { panel: boxes(":scope, .wl-body")[0], controls: boxes(".wl-left .widget-inline-hbox, .wl-left .widget-checkbox"),
    picture: boxes(".wl-right svg.wl"), answer: boxes(".wl-read p, .wl-read dt, .wl-read dd"), cut: [...panel.querySelectorAll(
    ".widget-label, .widget-readout, .wl-left button")].filter((node) => node.scrollWidth > node.clientWidth + 1)
    .map((node) => node.textContent) };
})"""


@pytest.fixture
def panels(jupyter_server, browser_page):
    """The boxes of all panels of the kit, in the order of ``STUDIES``."""
    cells = [new_code_cell(LESSON.format(key=key)) for key in STUDIES]
    cells += [new_code_cell(COMMISSION.format(study=study)) for study in OF_A_COMMISSION]
    nbformat.write(new_notebook(cells=cells, metadata=KERNEL), jupyter_server.folder / "all-panels.ipynb")
    page = browser_page.page
    page.set_viewport_size(SCREEN)
    page.goto(jupyter_server.url("all-panels.ipynb"))
    run_all(page)
    page.wait_for_function(f"document.querySelectorAll('.wl-panel svg.wl').length === {len(cells)}", timeout=WAIT)
    page.wait_for_timeout(500)
    yield page, page.evaluate(LOOK)
    assert browser_page.errors == []


def test_every_panel_fits_a_small_laptop(panels):
    """At its start, and with its last slider at either end."""
    page, looked = panels
    names = (*STUDIES, *OF_A_COMMISSION)
    for name, seen in zip(names, looked, strict=True):
        assert len(seen["controls"]) - 1 <= MOST_SHOWN, name  # all but the choice of units
        fits(name, seen)
    for end in ("Home", "End"):
        for panel in page.locator(".wl-panel").all():
            sliders = panel.get_by_role("slider").filter(visible=True).all()
            for slider in sliders[-1:]:
                slider.press(end)
        page.wait_for_timeout(1500)
        for name, seen in zip(names, page.evaluate(LOOK), strict=True):
            fits(name, seen)


def fits(key: str, seen: dict) -> None:
    """Nothing is cut, the controls lie left of the rest, and all of it is on the screen at once."""
    shown = seen["controls"] + seen["picture"] + seen["answer"]
    assert seen["cut"] == [], key
    assert max(box[3] for box in shown) - min(box[1] for box in shown) <= HIGHEST_PX, key
    assert max(box[2] for box in seen["controls"]) <= min(box[0] for box in seen["picture"] + seen["answer"]), key
    assert max(box[2] for box in shown) <= SCREEN["width"], key
