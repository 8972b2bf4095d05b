"""The live panel in JupyterLab: a still before it runs, a steady picture while it moves, a notebook that remembers."""

from __future__ import annotations

import json
import re
import time
from pathlib import Path

import nbformat
import pytest
from browser.handout_pages import READ, differences, expected
from browser.lab import WAIT, run_all
from example_study import example
from nbformat.v4 import new_code_cell, new_notebook

from woodlib.live import BRING_TO_LIFE, STUDY_MIME

TESTS = Path(__file__).resolve().parent.parent
KERNEL = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
PANEL = """\
import sys
sys.path.insert(0, {tests!r})
from example_study import example
from woodlib.live import show
show(example)
"""
BUTTON = """\
from woodlib.handout.button import handout_button
handout_button("for-the-client.html")
"""
# What the panel shows, in the form in which a page is read.
READ_PANEL = READ.replace("document.getElementById(name)", "document.querySelector(name)")
# At every frame: whether there is a picture, and how high its box and the whole panel are.
WATCH_FRAMES = """() => {
  window.frames_seen = [];
  const look = () => {
    const box = document.querySelector(".jp-OutputArea .widget-html:has(svg.wl)"), svg = box && box.querySelector("[data-marks] path");
    window.frames_seen.push([Boolean(svg), box ? Math.round(box.getBoundingClientRect().height) : 0]);
    requestAnimationFrame(look);
  };
  look();
}"""


@pytest.fixture(scope="module")
def notebook(jupyter_server):
    """A notebook with one panel and the handout button, in the server's folder."""
    path = jupyter_server.folder / "my-own.ipynb"
    cells = [new_code_cell(PANEL.format(tests=str(TESTS))), new_code_cell(BUTTON)]
    nbformat.write(new_notebook(cells=cells, metadata=KERNEL), path)
    return path


def test_a_notebook_that_was_not_run_shows_stills_and_says_how_to_bring_them_to_life(jupyter_server, browser_page):
    page = browser_page.page
    page.goto(jupyter_server.url("03-how-far-it-moves.ipynb"))
    page.get_by_text("Say first what you expect, then open this.").first.click(timeout=WAIT)
    page.get_by_text(BRING_TO_LIFE).first.wait_for(timeout=WAIT)
    still = page.locator(".jp-OutputArea img[src^='data:image/svg']").first
    assert still.evaluate("image => image.complete && image.naturalWidth") > 100 and still.bounding_box()["width"] > 400
    assert "wide, moves about" in still.get_attribute("alt")
    assert page.get_by_role("slider").count() == 0
    assert browser_page.errors == []


def test_the_panel_moves_steadily_remembers_and_makes_a_handout(jupyter_server, browser_page, notebook, offline):
    page, span = browser_page.page, example.inputs[2]
    page.goto(jupyter_server.url(notebook.name))
    run_all(page)
    slider = page.get_by_role("slider").nth(1)
    slider.wait_for(timeout=WAIT)
    state = dict(example.start)

    def shown() -> list[str]:
        seen = page.evaluate(READ_PANEL, ".jp-OutputArea")
        wanted = expected(example, state, "both")
        return differences({**wanted, "marks": seen["marks"], "said": seen["said"], "words": seen["words"]}, wanted)

    def shows_soon() -> bool:
        end = time.monotonic() + 20
        while shown() and time.monotonic() < end:
            page.wait_for_timeout(50)
        return shown() == []

    page.get_by_role("button", name="More readings").click()
    assert shows_soon()
    page.evaluate(WATCH_FRAMES)
    slider.press("ArrowRight")
    state["dry"] = span.at(span.place(state["dry"]) + 1)
    assert shows_soon()
    for turn in range(40):
        page.keyboard.press("ArrowLeft" if turn % 8 == 7 else "ArrowRight")
    state["dry"] = span.at(span.positions - 2)  # the end was reached, and the last key turned back from it
    assert shows_soon()
    frames = page.evaluate("frames_seen")
    assert len(frames) > 10 and all(picture for picture, _ in frames)
    assert len({height for _, height in frames}) == 1

    page.wait_for_timeout(1000)  # the position is written into the notebook once the slider rests
    page.keyboard.press("Control+s")
    assert eventually(lambda: recorded(notebook) == state)
    assert exporters(page) == 1

    page.get_by_role("button", name="Write the handout").click()
    page.get_by_text(re.compile("Wrote for-the-client.html")).wait_for(timeout=WAIT)
    handout = offline()
    handout.page.goto((notebook.parent / "for-the-client.html").as_uri())
    handout.page.wait_for_selector("html[data-ready]")
    assert differences(handout.page.evaluate(READ, "example"), expected(example, state, "both")) == []
    assert handout.errors == [] and handout.requests == [] and browser_page.errors == []


def eventually(holds, seconds: float = 15.0) -> bool:
    """Whether something comes true within some time."""
    end = time.monotonic() + seconds
    while not (true := holds()) and time.monotonic() < end:
        time.sleep(0.2)
    return true


def recorded(notebook) -> dict:
    """Where the sliders of a saved notebook stand."""
    for cell in json.loads(notebook.read_text())["cells"]:
        for output in cell["outputs"]:
            if STUDY_MIME in output.get("data", {}):
                return output["data"][STUDY_MIME]["values"]
    return {}


def exporters(page) -> int:
    """How often the export menu offers a handout."""
    page.get_by_role("menuitem", name="File", exact=True).click()
    page.locator(".lm-Menu-itemLabel", has_text=re.compile("export notebook as", re.IGNORECASE)).click()
    offered = page.locator(".lm-Menu-itemLabel", has_text=re.compile("handout", re.IGNORECASE))
    offered.first.wait_for(timeout=WAIT)
    number = offered.count()
    page.keyboard.press("Escape")
    page.keyboard.press("Escape")
    return number
