"""What the kit's job costs in this working copy and in another one, measured in turn in one run, side by side.

Run with ``python3 -m woodlib bench commits --against FOLDER``, where FOLDER is a checkout of another commit; ``--tests``
adds the whole test command of both, which takes as long as both do. Both run in this Python with these packages, so that only
the kit differs. What takes seconds is measured in turn and the smallest counts, since other work on the machine only ever
adds; what takes a minute is measured once. Times are by the clock and, in brackets, of all processors. Whatever the kit keeps goes to a folder that is
thrown away.
"""

from __future__ import annotations

import argparse
import json
import os
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from bench.bench_live import in_jupyterlab, key_to_picture
from bench.page_work import MOVE, work
from browser.conftest import ARGUMENTS
from playwright.sync_api import sync_playwright

from woodlib.testing import find_browser

PROJECT = Path(__file__).resolve().parents[2]
BRIEF = "data/briefs/reading_nook_seat.toml"
ROUNDS, MOVES, STEPS = 3, 60, 40
SLID = "panel-movement"

# Run a command of the kit in the Python that runs this: the other copy needs no environment of its own.
COMMAND = """\
import sys
from woodlib import environment
from woodlib.__main__ import main
environment.enter = lambda extra, arguments: None
sys.exit(main(sys.argv[1:]))"""
# Before the kit had a command for the verdicts they were asked of the library.
VERDICTS = """\
import sys
from woodlib import command_line, environment
environment.enter = lambda extra, arguments: None
if hasattr(command_line, "show_verdicts"):
    sys.exit(command_line.run(["verdicts", sys.argv[1]]))
from woodlib.commission import checked_brief, commission_of
for verdict in commission_of(checked_brief(sys.argv[1])).verdicts:
    print(verdict)"""
# As a command of the kit does, which settles how many threads linear algebra takes before NumPy is loaded.
STUDIES = """\
import json, time
import woodlib.__main__
from woodlib.handout.replay import freeze_checked
from woodlib.studies import STUDIES, find_study
taken = {}
for key in STUDIES:
    study = find_study(key)
    study.answer()
    start = time.perf_counter(), time.process_time()
    freeze_checked(study)
    taken[key] = time.perf_counter() - start[0], time.process_time() - start[1]
print(json.dumps(taken))"""
PANEL = f"""\
import woodlib.__main__
from woodlib.studies import find_study
study = find_study({SLID!r})
try:
    from woodlib.live import show
    panel = show(study)
except ImportError:
    panel = study.show()
panel"""


@dataclass(frozen=True)
class Spent:
    """Seconds by the clock, and of all processors that worked for it."""

    clock: float
    processor: float

    def __str__(self) -> str:
        return f"{self.clock:8.2f} ({self.processor:.2f}) s"


def run(project: Path, code: str, *arguments: str, cache: Path) -> tuple[Spent, str]:
    """Run a piece of Python in a working copy, and say what it took and printed; ends all when it fails."""
    given = {**os.environ, "PYTHONPATH": str(project), "XDG_CACHE_HOME": str(cache), "LOCALAPPDATA": str(cache)}
    start, before = time.perf_counter(), os.times()
    done = subprocess.run(
        [sys.executable, "-c", code, *arguments], cwd=project, env=given, capture_output=True, text=True
    )
    after = os.times()
    if done.returncode:
        sys.exit(f"In {project} this failed:\n{code}\n{' '.join(arguments)}\n{done.stdout}{done.stderr}")
    processor = after.children_user + after.children_system - before.children_user - before.children_system
    return Spent(time.perf_counter() - start, processor), done.stdout


class Table:
    """Rows of two measurements, printed as they come."""

    def __init__(self) -> None:
        print(f"{'':44}{'the other':>22}{'this':>22}{'ratio':>8}", flush=True)

    def seconds(self, label: str, other: Spent, this: Spent) -> None:
        """A row of times; the ratio is that of the processors' seconds, which a busy machine disturbs least."""
        print(f"{label:44}{other!s:>22}{this!s:>22}{other.processor / this.processor:8.1f}", flush=True)

    def numbers(self, label: str, other: float, this: float, unit: str) -> None:
        """A row of any other number."""
        print(f"{label:44}{f'{other:.1f} {unit}':>22}{f'{this:.1f} {unit}':>22}{other / this:8.1f}", flush=True)


def least(pairs: list[tuple[Spent, Spent]]) -> tuple[Spent, Spent]:
    """The smallest of each side."""
    sides = [[pair[side] for pair in pairs] for side in (0, 1)]
    other, this = (Spent(min(one.clock for one in side), min(one.processor for one in side)) for side in sides)
    return other, this


def commands(table: Table, copies: tuple[Path, Path], place: Path) -> tuple[Path, Path]:
    """The commands of the job; returns the two pages."""
    pages = (place / "other.html", place / "this.html")

    def handout(side: int) -> Spent:
        return run(copies[side], COMMAND, "handout", BRIEF, "-o", str(pages[side]), cache=place / f"kept-{side}")[0]

    def verdicts(side: int) -> Spent:
        return run(copies[side], VERDICTS, BRIEF, cache=place / f"kept-{side}")[0]

    def setout(side: int) -> Spent:
        folder = tempfile.mkdtemp(dir=place)
        return run(copies[side], COMMAND, "setout", BRIEF, "-o", folder, cache=place / f"kept-{side}")[0]

    table.seconds("handout, nothing kept", handout(0), handout(1))
    for label, measured in (
        ("handout, second time", handout),
        ("verdicts of a brief, cold", verdicts),
        ("setout", setout),
    ):
        table.seconds(label, *least([(measured(0), measured(1)) for _ in range(ROUNDS)]))
    return pages


def studies(table: Table, copies: tuple[Path, Path], place: Path) -> None:
    """Every study that both have, frozen and checked for the first time."""
    other, this = (json.loads(run(project, STUDIES, cache=place / "unused")[1]) for project in copies)
    for key in other:
        if key in this:
            table.seconds(f"{key} frozen", Spent(*other[key]), Spent(*this[key]))


def in_a_browser(table: Table, copies: tuple[Path, Path], pages: tuple[Path, Path]) -> None:
    """Size of the pages, their work per move, and JupyterLab's time from a key to the picture."""
    table.numbers("size of the page", *(page.stat().st_size / 1000 for page in pages), "kB")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_browser(), args=ARGUMENTS)
        spent = [moves_of(browser, page) for page in pages]
        table.numbers("work per move of the page, median", *(float(np.median(each)) for each in spent), "ms")
        table.numbers("work per move of the page, p95", *(float(np.percentile(each, 95)) for each in spent), "ms")
        times = []
        for project in copies:
            with in_jupyterlab(browser, [PANEL], project) as lab:
                lab.locator("svg.wl [data-marks] path").first.wait_for(state="attached", timeout=60_000)
                times.append(key_to_picture(lab, STEPS))
        table.numbers("slider to picture in JupyterLab, median", *(float(np.median(each)) for each in times), "ms")
        table.numbers("slider to picture in JupyterLab, p95", *(float(np.percentile(each, 95)) for each in times), "ms")
        browser.close()


def moves_of(browser, page_file: Path) -> np.ndarray:
    """Processor milliseconds of moves in every study of a page."""
    page = browser.new_page(viewport={"width": 1280, "height": 900})
    page.goto(page_file.as_uri())
    page.wait_for_selector("html[data-ready]")
    page.evaluate("document.querySelectorAll('details').forEach((part) => { part.open = true; })")
    page.wait_for_timeout(2000)
    names = page.evaluate(
        "[...new Set([...document.querySelectorAll('[data-input]')].map((control) => control.closest('section[id]').id))]"
    )
    every = np.concatenate([work(browser, page, MOVE % name, MOVES).main for name in names])
    page.close()
    return every


def tests(table: Table, copies: tuple[Path, Path], place: Path) -> None:
    """The whole test command of both."""
    taken = [run(project, COMMAND, "test", cache=place / "tested")[0] for project in copies]
    table.seconds("the whole test command", *taken)


def main() -> None:
    reader = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    reader.add_argument("--against", type=Path, required=True, metavar="FOLDER", help="a checkout of another commit")
    reader.add_argument("--tests", action="store_true", help="the whole test command of both, too")
    chosen = reader.parse_args()
    copies = (chosen.against.resolve(), PROJECT)
    if not (copies[0] / "woodlib" / "__init__.py").is_file():
        sys.exit(f"{chosen.against} is no checkout of the project; make one with: git worktree add FOLDER COMMIT")
    table = Table()
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        pages = commands(table, copies, place)
        studies(table, copies, place)
        in_a_browser(table, copies, pages)
        if chosen.tests:
            tests(table, copies, place)


if __name__ == "__main__":
    main()
