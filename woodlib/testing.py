"""Run the project's tests in three parts, each in a process of its own, and add them up in one closing line."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from xml.etree import ElementTree

from .environment import say
from .errors import InputError

BESIDE = ["-n", "auto"]  # as many workers as there are processors
PARTS = {
    "library": BESIDE,
    "notebooks": [
        *BESIDE,
        "--dist=loadfile",
        "--nbval",
        "--nbval-current-env",
        "--nbval-cell-timeout=120",
        "--nbval-sanitize-with",
        "tests/nbval_sanitize.cfg",
        "notebooks",
    ],
    "browser": ["-n", "2", "--dist=loadfile", "tests/browser"],
}
FURTHER = {
    "quick": [
        *BESIDE,
        *(
            f"tests/{name}"
            for name in (
                "test_imports.py",
                "test_package.py",
                "test_units.py",
                "words",
                "species",
                "movement",
                "picture",
                "study",
                "ways/test_hand_worked.py",
            )
        ),
    ],
    "search": [*BESIDE, "tests"],
    "proof": [*BESIDE, "-q", "--no-header", "tests/outside"],
}
"""Parts that are run only when they are named: what is tried after every small change, a search from a new seed, and the table
of checks against the outside world."""
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "microsoft-edge")
BROWSER_PLACES = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
)
NO_BROWSER = (
    "no Chromium or Chrome was found on this computer. Install one (Debian and Ubuntu: sudo apt install chromium), or "
    "set WOODLIB_BROWSER to the path of one you have"
)


@dataclass(frozen=True)
class Outcome:
    """How one part went; ``code`` is the exit code of its process."""

    name: str
    passed: int
    failed: int
    seconds: float
    code: int


def find_browser() -> str | None:
    """Path of a Chromium or Chrome: the one named by ``WOODLIB_BROWSER``, or the first found; None if there is none."""
    named = os.environ.get("WOODLIB_BROWSER")
    if named:
        return shutil.which(named)
    found = (shutil.which(name) for name in (*BROWSERS, *BROWSER_PLACES))
    return next((path for path in found if path), None)


def browser_is_required() -> bool:
    """Whether leaving out the browser tests counts as a failure: in continuous integration, or when asked for."""
    return any(os.environ.get(name, "").lower() in ("1", "true") for name in ("WOODLIB_REQUIRE_BROWSER", "CI"))


def run_parts(project: Path, names: list[str]) -> int:
    """Run the named parts, or all; returns 0 when every test passed."""
    wanted = names or list(PARTS)
    if "search" in wanted:
        seed = os.environ.setdefault("WOODLIB_SEARCH", str(int.from_bytes(os.urandom(4))))
        say(f"Searching further from seed {seed}; WOODLIB_SEARCH={seed} repeats it.")
    leave_out = "browser" in wanted and find_browser() is None
    if leave_out and (browser_is_required() or names):
        say(f"The browser tests cannot run: {NO_BROWSER}.")
        return 1
    outcomes = [run_part(project, name) for name in wanted if not (leave_out and name == "browser")]
    return report(outcomes, leave_out)


def run_part(project: Path, name: str) -> Outcome:
    """Run one part in its own process and count its tests."""
    say(f"\n=== tests of the {name} ===")
    start = time.monotonic()
    with TemporaryDirectory() as folder:
        counts = Path(folder) / "counts.xml"
        seed = [f"--hypothesis-seed={os.environ['WOODLIB_SEARCH']}"] if name == "search" else []
        options = (PARTS | FURTHER)[name]
        command = [sys.executable, "-m", "pytest", *options, *seed, f"--junit-xml={counts}"]
        code = subprocess.run(command, cwd=project).returncode
        passed, failed = count(counts)
    return Outcome(name, passed, failed, time.monotonic() - start, code)


def count(path: Path) -> tuple[int, int]:
    """Passed and not passed, from the counts that pytest left behind; a test that was skipped has not passed."""
    if not path.exists():
        return 0, 0
    suite = next(ElementTree.parse(path).getroot().iter("testsuite"))
    number = {key: int(suite.attrib[key]) for key in ("tests", "failures", "errors", "skipped")}
    failed = number["failures"] + number["errors"] + number["skipped"]
    return number["tests"] - failed, failed


def report(outcomes: list[Outcome], browser_left_out: bool) -> int:
    """Print how each part went and one closing line; returns the exit code of the whole."""
    say("")
    for each in outcomes:
        note = "" if each.code == 0 else f"   (pytest ended with code {each.code})"
        say(f"{each.name:10} {each.passed:6} passed {each.failed:4} failed {each.seconds:7.1f} s{note}")
    if browser_left_out:
        say(f"browser    left out: {NO_BROWSER}.")
    passed, failed = sum(each.passed for each in outcomes), sum(each.failed for each in outcomes)
    failed += sum(1 for each in outcomes if each.code and not each.failed)
    say(f"woodlib: {passed} passed, {failed} failed")
    return 1 if failed else 0


def run_script(path: Path, arguments: list[str]) -> int:
    """Run one of the project's own scripts with this Python, from the project's folder."""
    return subprocess.run([sys.executable, str(path), *arguments]).returncode


COMMITS = "commits"


def run_speed_comparisons(folder: Path, names: list[str], against: Path | None = None, tests: bool = False) -> int:
    """Run the speed comparisons one after the other; returns the first exit code that is not 0.

    The one of two commits needs the folder of the other, ``against``; ``tests`` adds the test command of both to it.
    Raises :class:`InputError` when there is no such comparison, or no other folder for that one.
    """
    scripts = {path.stem.removeprefix("bench_"): path for path in sorted(folder.glob("bench_*.py"))}
    unknown = [name for name in names if name not in scripts]
    if unknown:
        raise InputError(f"There is no speed comparison {unknown[0]!r}; there are {', '.join(scripts)}.")
    if COMMITS in names and against is None:
        raise InputError(
            "The comparison 'commits' needs a checkout of another commit: make one with 'git worktree add FOLDER COMMIT' "
            "and add --against FOLDER."
        )
    if against is not None and names and COMMITS not in names:
        raise InputError(f"--against belongs to the comparison 'commits', and {', '.join(names)} was asked for.")
    codes = []
    for name in names or ([COMMITS] if against else [name for name in scripts if name != COMMITS]):
        say(f"\n=== {name} ===")
        options = ["--against", str(against), *(["--tests"] if tests else [])] if name == COMMITS else []
        codes.append(run_script(scripts[name], options))
    return next((code for code in codes if code), 0)
