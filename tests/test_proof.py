"""The table of checks against the outside world says how each is met, and fails when a coefficient is wrong."""

import csv
import os
import re
import subprocess
import sys
from pathlib import Path

from woodlib.testing import FURTHER

TESTS = Path(__file__).parent
FEW = ["tests/outside/test_emc_table.py", "tests/outside/test_wcag.py"]


def run(*options):
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "--tb=line", *options, *FEW]
    paths = os.pathsep.join([str(TESTS.parent), str(TESTS)])
    done = subprocess.run(
        command, cwd=TESTS.parent, capture_output=True, text=True, env=os.environ | {"PYTHONPATH": paths}
    )
    return done.returncode, done.stdout


def test_the_command_runs_every_outside_check():
    assert "tests/outside" in FURTHER["proof"]


def test_the_table_counts_by_kind_and_says_why():
    code, table = run("-n", "2")
    assert code == 0
    assert "why each difference is allowed" in table and "published table, in sample" in table
    outside, fitted = map(int, re.search(r"outside: (\d+); in sample: (\d+)", table).groups())
    assert outside >= 3 and fitted >= 3
    assert re.search(rf"published table +\d+ outside +{fitted} in sample", table)


def test_a_broken_coefficient_makes_it_fail():
    code, table = run("-p", "references.broken_coefficient")
    assert code == 1 and "allowed difference" in table


def test_every_kind_is_argued_and_every_file_has_one():
    with (TESTS / "outside" / "kinds.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    files = {path.stem.removeprefix("test_") for path in (TESTS / "outside").glob("test_*.py")}
    assert {row["file"] for row in rows} == files
    assert all(row["why"] and row["in_sample"] in ("yes", "no") for row in rows)
