"""From a key on a slider to the new picture in JupyterLab: our panel against stock ``interactive_output`` with inline figures,
and against a slider that only writes its own number, which is what JupyterLab's messages cost by themselves.

Run with ``python tests/bench/bench_live.py [STUDY]``. All stand in one notebook and are moved in turn, so that other work
on the machine hits all alike. Ours and the stock one draw the same picture and write the same readings; the stock one draws it with
matplotlib, as a notebook usually does. Times end when the picture is in the page (ours) or loaded (stock).
"""

from __future__ import annotations

import secrets
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import nbformat
import numpy as np
from nbformat.v4 import new_code_cell, new_notebook

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from browser.conftest import ARGUMENTS, PROJECT, JupyterServer, keep_quiet, server_command, server_settings, wait_for
from browser.lab import run_all
from playwright.sync_api import sync_playwright

from woodlib.studies import find_study
from woodlib.study import Span
from woodlib.testing import find_browser

STEPS, BURST = 30, 40
OURS = """\
from woodlib.live import show
from woodlib.studies import find_study
panel = show(find_study({key!r}))
panel"""
STOCK = """\
%matplotlib inline
import ipywidgets
from IPython.display import display
from woodlib.picture.printed import figure
study = find_study({key!r})
slider = ipywidgets.IntSlider(20, 0, 200, description="stock")
def draw(place):
    entry = next(entry for entry in study.inputs if entry.key == {span!r})
    answer = study.answer(**{{entry.key: entry.at(place % entry.positions)}})
    display(figure(answer.picture, dots_per_inch=96))
    print(*answer.lines(), sep="\\n")
ipywidgets.VBox([slider, ipywidgets.interactive_output(draw, {{"place": slider}})])"""
BARE = """\
bare, number = ipywidgets.IntSlider(20, 0, 200, description="bare"), ipywidgets.HTML("<i class='bare'>20</i>")
bare.observe(lambda change: setattr(number, "value", f"<i class='bare'>{change.new}</i>"), "value")
ipywidgets.VBox([bare, number])"""
# Every key and every new picture leaves its time: a changed drawing is one of ours, a loaded image one of the stock panel.
LISTEN = """() => {
  window.keys = []; window.ours = []; window.stock = []; window.bare = [];
  addEventListener("keydown", () => keys.push(performance.now()), true);
  const drawing = document.querySelector(".widget-html:has(svg.wl)");
  new MutationObserver(() => ours.push(performance.now())).observe(drawing, { childList: true, subtree: true });
  const number = document.querySelector(".widget-html-content:has(.bare)");
  if (number) new MutationObserver(() => bare.push(performance.now())).observe(number, { childList: true, subtree: true });
  document.addEventListener("load", (event) => event.target.localName === "img" && stock.push(performance.now()), true);
}"""


def step(page, slider, key: str, kind: str) -> float:
    """Press a key once and wait for the picture; ms."""
    before = page.evaluate(f"window.{kind}.length")
    slider.press(key)
    page.wait_for_function(f"() => window.{kind}.length > {before}", timeout=20_000)
    page.wait_for_timeout(120)
    return page.evaluate(f"window.{kind}[{before}] - keys[keys.length - 1]")


def burst(page, slider, kind: str) -> tuple[float, int]:
    """Forty keys at once: ms from the last key to the last picture, and how many pictures there were."""
    before = page.evaluate(f"window.{kind}.length")
    slider.focus()
    for turn in range(BURST):
        page.keyboard.press("ArrowLeft" if turn % 10 > 6 else "ArrowRight")
    page.wait_for_timeout(2500)
    return page.evaluate(
        f"[window.{kind}[window.{kind}.length - 1] - keys[keys.length - 1], window.{kind}.length - {before}]"
    )


@contextmanager
def in_jupyterlab(browser, cells: list[str], project: Path = PROJECT) -> Iterator:
    """A page of JupyterLab with these cells run by a kernel that has the library of ``project``."""
    with tempfile.TemporaryDirectory() as place:
        home = Path(place)
        folder = home / "notebooks"
        folder.mkdir()
        kernel = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
        notebook = new_notebook(cells=[new_code_cell(cell) for cell in cells], metadata=kernel)
        nbformat.write(notebook, folder / "speed.ipynb")
        keep_quiet(home / "settings")
        token, log = secrets.token_hex(16), home / "server.log"
        settings = {**server_settings(home), "PYTHONPATH": str(project)}
        with log.open("w") as written:
            server = subprocess.Popen(
                server_command(folder, token), cwd=folder, env=settings, stdout=written, stderr=written
            )
        try:
            address = JupyterServer(wait_for(server, home / "runtime", token, log), token, folder).url("speed.ipynb")
            page = browser.new_page(viewport={"width": 1280, "height": 2400})
            page.goto(address)
            run_all(page)
            yield page
            page.close()
        finally:
            server.terminate()
            server.wait(timeout=60)


def key_to_picture(page, steps: int) -> list[float]:
    """Milliseconds from a key on the first slider to its picture, step by step, for a panel alone in its notebook."""
    page.evaluate(LISTEN)
    slider = page.get_by_role("slider").first
    return [step(page, slider, "ArrowLeft" if turn % 2 else "ArrowRight", "ours") for turn in range(steps)]


def measure(page, key: str) -> None:
    page.locator(".jp-OutputArea img:not([src^='data:image/svg'])").last.wait_for(timeout=60_000)
    page.locator("svg.wl [data-marks] path").first.wait_for(state="attached", timeout=60_000)
    sliders = {"ours": page.get_by_role("slider").first}
    sliders["stock"], sliders["bare"] = page.get_by_role("slider").all()[-2:]
    page.evaluate(LISTEN)
    times: dict[str, list[float]] = {kind: [] for kind in sliders}
    for turn in range(STEPS):
        direction = "ArrowLeft" if turn % 2 else "ArrowRight"
        for kind, slider in sliders.items():
            times[kind].append(step(page, slider, direction, kind))
    for kind, values in times.items():
        print(
            f"{kind:6} key to picture: median {np.median(values):6.1f} ms  p95 {np.percentile(values, 95):6.1f} ms  most {max(values):6.1f} ms"
        )
    pairs = np.array(times["stock"]) / np.array(times["ours"])
    print(f"stock takes {np.median(pairs):.1f} times as long (median of {STEPS} pairs), study {key}")
    for kind, slider in sliders.items():
        last, pictures = burst(page, slider, kind)
        print(f"{kind:6} burst of {BURST} keys: last picture {last:6.1f} ms after the last key, {pictures} pictures")


def main() -> None:
    key = sys.argv[1] if len(sys.argv) > 1 else "panel-movement"
    span = next(entry.key for entry in find_study(key).inputs if isinstance(entry, Span))
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_browser(), args=ARGUMENTS)
        with in_jupyterlab(browser, [OURS.format(key=key), STOCK.format(key=key, span=span), BARE]) as page:
            measure(page, key)
        browser.close()


if __name__ == "__main__":
    main()
