"""JupyterLab with the kit's packages opens a notebook, runs it, and a slider moved by hand reaches the kernel."""

from __future__ import annotations

import nbformat
from browser.lab import WAIT, run_all
from nbformat.v4 import new_code_cell, new_notebook

PANEL = """\
import ipywidgets
import woodlib
width = ipywidgets.IntSlider(20, 8, 40, description="width, in")
shown = ipywidgets.Label()
width.observe(lambda change: setattr(shown, "value", f"{change.new} in wide"), "value")
ipywidgets.VBox([width, shown])
"""


def test_a_slider_moved_by_key_changes_what_the_kernel_shows(jupyter_server, browser_page):
    kernel = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
    nbformat.write(new_notebook(cells=[new_code_cell(PANEL)], metadata=kernel), jupyter_server.folder / "try.ipynb")
    page = browser_page.page
    page.goto(jupyter_server.url("try.ipynb"))
    run_all(page)
    handle = page.get_by_role("slider")
    handle.focus(timeout=WAIT)
    page.keyboard.press("ArrowRight")
    page.get_by_text("21 in wide").wait_for(timeout=30_000)
    assert browser_page.errors == []


def test_a_page_without_network_keeps_what_it_asked_for(offline_page, tmp_path):
    (tmp_path / "page.html").write_text('<p>a</p><script>fetch("http://127.0.0.1:9/x").catch(() => {})</script>')
    offline_page.page.goto((tmp_path / "page.html").as_uri())
    offline_page.page.wait_for_timeout(200)
    assert offline_page.requests == ["http://127.0.0.1:9/x"]
