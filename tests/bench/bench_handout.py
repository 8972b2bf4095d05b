"""Handouts: size, export time, time until ready, and work per move, against pictures drawn beforehand and swapped.

Run with ``python tests/bench/bench_handout.py [STUDY ...]``: the named studies, or the first six of the kit. The baseline,
measured in the same run, is the usual way to make a page move without a kernel: matplotlib draws every state, the page
swaps the pictures. Times of export are processor seconds besides seconds by the clock, so that a busy machine shows.

A page is ready when its script has unpacked every study and each answers its controls; its controls can be moved earlier,
which is told beside it. Both are times by the clock from the start of the navigation: once in a tab of a browser that has
been open for a while, once in a new window, whose own making (a browser's processes, its own pages) is part of the time.

A move is measured in two ways. By the clock: the handler's script and the layout that it asks for, forced; painting is not
in it. As work: every task of the page's main thread until the new picture is handed on, painting included, in processor
milliseconds (see :mod:`page_work`). The emulation of a slower processor stops the thread many thousand times a second
by the clock, so on a busy machine it stretches time far more than it says: what it does to plain arithmetic in the same
page is printed, and the work of a processor four times slower is four times the work, without emulation.
"""

from __future__ import annotations

import base64
import io
import os
import re
import sys
import tempfile
import time
from math import prod
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from browser.conftest import ARGUMENTS
from page_work import LOOP, MOVE, NOTHING, SWAP, Work, spread, work
from playwright.sync_api import sync_playwright

from woodlib.handout.page import page
from woodlib.handout.replay import STATES, random_state
from woodlib.handout.sections import section
from woodlib.picture.printed import figure
from woodlib.picture.svg import svg
from woodlib.studies import STUDIES, find_study
from woodlib.study import Choice, Span
from woodlib.testing import find_browser

MOVES, WORKED = 300, 100
FRAMES, OPENED = 12, 9
SETTLED_MS = 3000  # a browser's own start is over by then
# One control is moved at random, as a hand would; the time runs until the page is laid out again. A study out of sight is
# laid out only when it comes into sight, so it is brought there first, as for a reader.
CLOCKED = """async ([name, count]) => {
  const section = document.getElementById(name), controls = [...section.querySelectorAll("[data-input]")], times = [];
  section.scrollIntoView();
  for (let k = 0; k < 3; k++) await new Promise(requestAnimationFrame);
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
CLOCKED_SWAP = """async () => {
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
READY = """new MutationObserver((records) => records.forEach((record) => { window[record.attributeName] ??= performance.now(); }))
  .observe(document, { attributes: true, attributeFilter: ["data-live", "data-ready"], subtree: true });"""
READ_TIMES = "[window['data-live'], window['data-ready']]"


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
        asked = int(re.search(r"(\d+) states asked", first.report)[1]) + STATES
        noise = np.random.default_rng(1)
        states = [random_state(study, noise) for _ in range(FRAMES)]
        frames, _, redraw = timed(lambda study=study, states=states: [drawn(study, state, "svg") for state in states])
        size = float(np.median([len(drawn(study, state, "png")) for state in states[:4]]))
        places = prod(
            entry.positions if isinstance(entry, Span) else len(entry.labels) if isinstance(entry, Choice) else 2
            for entry in study.inputs
        )
        each, whole = processor / asked, redraw / len(frames)
        print(
            f"{name:26}{len(first.html(name)) / 1000:10.1f}{clock:9.1f}{processor:7.1f}{again:9.2f}{asked:13}{1e3 * each:8.2f}"
            f"{1e3 * whole:10.1f}{whole / each:7.0f}{places * size * 4 / 3 / 1e6:14.0f} MB",
            flush=True,
        )
        sections[name] = first.html(name)
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
    script = f"const frames = {images!r}; document.documentElement.dataset.ready = 1"
    target.write_text(f"<!DOCTYPE html><html><body><img src='{images[0]}'><script>{script}</script></body></html>")
    return target.as_uri()


def main() -> None:
    names = sys.argv[1:] or list(STUDIES)[:6]
    with tempfile.TemporaryDirectory() as place:
        os.environ["XDG_CACHE_HOME"] = place  # nothing kept from an earlier run
        folder = Path(place)
        sections = exports(names)
        alone, together = folder / "one.html", folder / "all.html"
        alone.write_text(page("One", [sections[names[-1]]]))
        together.write_text(page("All", ["<h1>All</h1>", *sections.values()]))
        print(
            f"\nfile with {len(names)} studies: {together.stat().st_size / 1000:.0f} kB; with {names[-1]} alone: "
            f"{alone.stat().st_size / 1000:.0f} kB"
        )
        baseline = frames_page(names[-1], folder)
        still = min(timed(lambda: svg(find_study(names[-1]).answer().picture, ""))[1] for _ in range(20))
        print(f"the library's own drawing of a state, without matplotlib: {1e3 * still:.2f} ms")
        pages = {"one study": alone.as_uri(), f"{len(names)} studies": together.as_uri()}
        with sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=find_browser(), args=ARGUMENTS)
            browser.new_page().wait_for_timeout(SETTLED_MS)
            for slower in (1, 4):
                print(f"\nprocessor {'as it is' if slower == 1 else f'{slower} times slower by emulation'}")
                for label, address in pages.items():
                    print(f"  {label:11} {opening(browser, slower, address)}")
                by_clock(browser, slower, together.as_uri(), baseline, names)
            print("\nwork of the page's main thread per move, painting included, processor as it is")
            by_work(browser, together.as_uri(), baseline, names)
            browser.close()


def slowed(page, slower: int):
    """A page whose processor is emulated to be slower."""
    if slower > 1:
        page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slower})
    return page


def opening(browser, slower: int, address: str) -> str:
    """When a page's controls can be moved and when all its studies answer, in a tab and in new windows."""
    tab = browser.new_page()
    tab.add_init_script(READY)
    tab.wait_for_timeout(SETTLED_MS)
    told = []
    for where in ("in a tab", "in a new window"):
        times = []
        for _ in range(OPENED):
            page = tab
            if where == "in a tab":
                page.goto("about:blank")
            else:
                page = browser.new_page()
                page.add_init_script(READY)
            slowed(page, slower).goto(address)
            page.wait_for_selector("html[data-ready]")
            times.append(page.evaluate(READ_TIMES))
            if page is not tab:
                page.close()
        live, ready = np.median(times, axis=0)
        least = np.min(times, axis=0)[1]
        told.append(f"{where}: controls live after {live:4.0f} ms, all ready after {ready:4.0f} (least {least:.0f})")
    tab.close()
    return "; ".join(told)


def opened(browser, address: str):
    """A page that is ready, and a browser that has come to rest."""
    page = browser.new_page(viewport={"width": 1280, "height": 900})
    page.goto(address)
    page.wait_for_selector("html[data-ready]")
    page.wait_for_timeout(SETTLED_MS)
    return page


def by_clock(browser, slower: int, address: str, baseline: str, names: list[str]) -> None:
    """Script and layout of moves, and the baseline's pictures swapped, by the clock."""
    page = opened(browser, address)
    plain = np.median(page.evaluate(LOOP))
    slowed(page, slower)
    if slower > 1:
        print(f"  plain arithmetic takes {np.median(page.evaluate(LOOP)) / plain:.1f} times as long")
    every = []
    for name in names:
        times = page.evaluate(CLOCKED, [name, MOVES])
        every += times
        print(f"  {name:26} script {told(times, 0)}   with layout {told(times)}")
    page.close()
    swapping = slowed(opened(browser, baseline), slower)
    swapped = swapping.evaluate(CLOCKED_SWAP)
    swapping.close()
    ratio = np.median(np.array(swapped)[:, 1]) / np.median(np.array(every)[:, 1])
    print(f"  {'all moves':26} script {told(every, 0)}   with layout {told(every)}")
    print(f"  {'swapping pictures':26} decoded and laid out {told(swapped)}: {ratio:.1f} times a move of ours")


def by_work(browser, address: str, baseline: str, names: list[str]) -> None:
    """The work of moves, of moves that change nothing, and of swapping the baseline's pictures."""
    page = opened(browser, address)
    print(f"  {'a move that changes nothing':28}{work(browser, page, NOTHING, WORKED).told()}")
    each = []
    for name in names:
        each.append(work(browser, page, MOVE % name, WORKED))
        print(f"  {name:28}{each[-1].told()}")
    page.close()
    every = Work(
        *(np.concatenate(part) for part in zip(*((one.main, one.laid_out, one.others) for one in each), strict=True))
    )
    swapping = opened(browser, baseline)
    swapped = work(browser, swapping, SWAP, WORKED)
    swapping.close()
    ratio = np.median(swapped.main) / np.median(every.main)
    print(f"  {'all moves':28}{every.told()}")
    print(f"  {'swapping pictures':28}{swapped.told()}: {ratio:.1f} times a move of ours")
    print(f"  {'four times slower':28}{spread(every.main, 4.0)}; until laid out {spread(every.laid_out, 4.0)}")


if __name__ == "__main__":
    main()
