"""Handouts: size, export time, time until ready, and work per move, against pictures drawn beforehand and swapped.

Run with ``python tests/bench/bench_handout.py [STUDY ...]``: the named studies, or the first six of the kit. The baseline,
measured in the same run, is the usual way to make a page move without a kernel: matplotlib draws every state, the page
swaps the pictures. Times of export are processor seconds besides seconds by the clock, so that a busy machine shows.
"""

from __future__ import annotations

import base64
import io
import os
import sys
import tempfile
import time
from math import prod
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from browser.conftest import ARGUMENTS
from playwright.sync_api import sync_playwright

from woodlib.figures.printed import figure
from woodlib.figures.svg import svg
from woodlib.handout.page import page
from woodlib.handout.replay import random_state
from woodlib.handout.sections import NAME, section
from woodlib.studies import STUDIES, find_study
from woodlib.study import Choice, Span
from woodlib.testing import find_browser

MOVES = 300
FRAMES = 12
# One control is moved at random, as a hand would; the time runs until the page is laid out again.
MOVE = """([name, count]) => {
  const section = document.getElementById(name), controls = [...section.querySelectorAll("[data-input]")], times = [];
  for (let k = 0; k < count; k++) {
    const control = controls[Math.floor(Math.random() * controls.length)];
    if (control.type === "range") control.value = Math.floor(Math.random() * (1 + Number(control.max)));
    else if (control.type === "checkbox") control.checked = !control.checked;
    else control.selectedIndex = Math.floor(Math.random() * control.options.length);
    const start = performance.now();
    control.dispatchEvent(new Event("input"));
    const worked = performance.now();
    section.getBoundingClientRect();
    times.push([worked - start, performance.now() - start]);
  }
  return times;
}"""
SWAP = """async () => {
  const image = document.querySelector("img"), times = [];
  for (let k = 0; k < 60; k++) {
    const start = performance.now();
    image.src = frames[k % frames.length];
    await image.decode();
    image.getBoundingClientRect();
    times.push([0, performance.now() - start]);
  }
  return times;
}"""
READY = """new MutationObserver(() => { window.ready_at ??= performance.now(); })
  .observe(document, { attributes: true, attributeFilter: ["data-ready"], subtree: true });"""


def timed(call):
    """What a call gives, and its seconds by the clock and by the processors."""
    before, clock = os.times(), time.perf_counter()
    result = call()
    after = os.times()
    return result, time.perf_counter() - clock, sum(after[:4]) - sum(before[:4])


def drawn(study, state, kind: str) -> bytes:
    """One state drawn by matplotlib in full."""
    target = io.BytesIO()
    figure(study.function(**state).picture, dots_per_inch=96).savefig(target, format=kind)
    return target.getvalue()


def exports(names: list[str]) -> dict[str, str]:
    """Freeze every study twice, print what it costs, and return the sections."""
    print(
        f"{'study':26}{'figure kB':>10}{'first s':>9}{'cpu s':>7}{'second s':>9}{'states asked':>13}{'ms each':>8}"
        f"{'redraw ms':>10}{'ratio':>7}{'frames would be':>17}"
    )
    sections = {}
    for name in names:
        study = find_study(name)
        first, clock, processor = timed(lambda study=study: section(study))
        _, again, _ = timed(lambda study=study: section(study))
        asked = int(first["report"].split(": ")[1].split(" states")[0]) + 300
        noise = np.random.default_rng(1)
        states = [random_state(study, noise) for _ in range(FRAMES)]
        frames, _, redraw = timed(lambda study=study, states=states: [drawn(study, state, "svg") for state in states])
        size = float(np.median([len(drawn(study, state, "png")) for state in states[:4]]))
        places = prod(entry.positions if isinstance(entry, Span) else len(entry.labels) if isinstance(entry, Choice) else 2
                      for entry in study.inputs)  # fmt: skip
        each, whole = processor / asked, redraw / len(frames)
        print(
            f"{name:26}{len(first['html']) / 1000:10.1f}{clock:9.1f}{processor:7.1f}{again:9.2f}{asked:13}{1e3 * each:8.2f}"
            f"{1e3 * whole:10.1f}{whole / each:7.0f}{places * size * 4 / 3 / 1e6:14.0f} MB",
            flush=True,
        )
        sections[name] = first["html"].replace(NAME, name)
    return sections


def told(times, column: int = 1) -> str:
    values = np.array(times)[:, column]
    return f"median {np.median(values):6.2f}  p95 {np.percentile(values, 95):6.2f}  most {values.max():6.2f} ms"


def frames_page(name: str, folder: Path) -> str:
    """The baseline: one image, and pictures drawn beforehand."""
    study, noise = find_study(name), np.random.default_rng(2)
    images = [
        f"data:image/png;base64,{base64.b64encode(drawn(study, random_state(study, noise), 'png')).decode()}"
        for _ in range(FRAMES)
    ]
    target = folder / "frames.html"
    target.write_text(
        f"<img src='{images[0]}'><script>const frames = {images!r};document.documentElement.dataset.ready = 1</script>"
    )
    return target.as_uri()


def main() -> None:
    names = sys.argv[1:] or list(STUDIES)[:6]
    with tempfile.TemporaryDirectory() as place:
        os.environ["XDG_CACHE_HOME"] = place  # nothing kept from an earlier run
        folder = Path(place)
        sections = exports(names)
        alone, together = folder / "one.html", folder / "all.html"
        alone.write_text(page("One", sections[names[-1]]))
        together.write_text(page("All", "<h1>All</h1>" + "".join(sections.values())))
        print(
            f"\nfile with {len(names)} studies: {together.stat().st_size / 1000:.0f} kB; with {names[-1]} alone: "
            f"{alone.stat().st_size / 1000:.0f} kB"
        )
        baseline = frames_page(names[-1], folder)
        still = min(timed(lambda: svg(find_study(names[-1]).answer().picture, ""))[1] for _ in range(20))
        print(f"the library's own drawing of a state, without matplotlib: {1e3 * still:.2f} ms")
        with sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=find_browser(), args=ARGUMENTS)
            for slower in (1, 4):
                print(f"\nprocessor {'as it is' if slower == 1 else f'{slower} times slower'}")
                in_browser(
                    browser,
                    slower,
                    {"one study": alone.as_uri(), f"{len(names)} studies": together.as_uri()},
                    baseline,
                    names,
                )
            browser.close()


def in_browser(browser, slower: int, pages: dict[str, str], baseline: str, names: list[str]) -> None:
    """Open and move pages, and swap the baseline's pictures, on a processor slowed down."""
    opened = None
    for label, address in pages.items():
        ready = []
        for _ in range(5):
            opened = browser.new_page()
            opened.add_init_script(READY)
            opened.context.new_cdp_session(opened).send("Emulation.setCPUThrottlingRate", {"rate": slower})
            opened.goto(address)
            opened.wait_for_selector("html[data-ready]")
            ready.append(opened.evaluate("window.ready_at"))
        print(f"  {label:11} ready after {np.median(ready):.0f} ms (least {min(ready):.0f})")
    every = []
    for name in names:
        times = opened.evaluate(MOVE, [name, MOVES])
        every += times
        print(f"  {name:26} script {told(times, 0)}   with layout {told(times)}")
    swapping = browser.new_page()
    swapping.context.new_cdp_session(swapping).send("Emulation.setCPUThrottlingRate", {"rate": slower})
    swapping.goto(baseline)
    swapped = swapping.evaluate(SWAP)
    ratio = np.median(np.array(swapped)[:, 1]) / np.median(np.array(every)[:, 1])
    print(f"  {'all moves':26} script {told(every, 0)}   with layout {told(every)}")
    print(f"  {'swapping pictures':26} decoded and laid out {told(swapped)}: {ratio:.1f} times a move of ours")


if __name__ == "__main__":
    main()
