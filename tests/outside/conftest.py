"""The checks against the outside world, and the table they print: ``python3 -m woodlib proof``.

``outside(source, quantity, expected, got, tolerance, unit)`` asserts and keeps a row. What kind of evidence a source is,
whether the model was fitted to it, and why the tolerance is what it is, stands once for each source in ``kinds.csv``.
"""

from __future__ import annotations

import csv
import math
from collections import Counter
from pathlib import Path

import pytest

KINDS = ("measured", "published table", "worked example", "other program", "closed form", "practice")
with (Path(__file__).parent / "kinds.csv").open(encoding="utf-8", newline="") as table:
    EVIDENCE = tuple(csv.DictReader(table))


def evidence(file: str, source: str, quantity: str) -> dict[str, str]:
    """The first row of ``kinds.csv`` for a check: its file, and what its source and quantity begin with."""
    for row in EVIDENCE:
        if row["file"] == file and source.startswith(row["source"]) and quantity.startswith(row["quantity"]):
            return row
    raise AssertionError(f"kinds.csv has no row for {source!r} in {file}; say what kind of evidence it is, and why.")


@pytest.fixture
def outside(request):
    """Compare one number with an outside source; ``tolerance`` is absolute, in the unit given."""
    file = request.node.path.stem.removeprefix("test_")

    def check(source: str, quantity: str, expected: float, got: float, tolerance: float, unit: str = "") -> None:
        row = evidence(file, source, quantity)
        numbers = (float(expected), float(got), float(tolerance))
        assert row["kind"] in KINDS and row["why"]
        request.node.user_properties.append(("outside", (file, source, quantity, *numbers, unit)))
        assert math.isfinite(got), f"{quantity} ({source}): got {got}"
        assert abs(got - expected) <= tolerance, (
            f"{quantity}: {source} gives {expected:.6g} {unit}, woodlib gives {got:.6g}, "
            f"allowed difference {tolerance:.3g}"
        )

    return check


def pytest_terminal_summary(terminalreporter) -> None:
    """Print every outside check, from every worker, and how many there are of each kind."""
    reports = [each for kept in terminalreporter.stats.values() for each in kept if getattr(each, "when", "") == "call"]
    rows = [row for report in reports for name, row in report.user_properties if name == "outside"]
    if not rows:
        return
    write = terminalreporter.write_line
    terminalreporter.section(f"checks against the outside world: {len(rows)}")
    write(
        f"{'source':44}  {'quantity':62}  {'expected':>12}  {'got':>12}  {'difference':>10}  {'allowed':>8}  unit, kind"
    )
    counts: Counter[tuple[str, bool]] = Counter()
    why: dict[tuple[str, str], str] = {}
    for file, source, quantity, expected, got, tolerance, unit in rows:
        found = evidence(file, source, quantity)
        fitted = found["in_sample"] == "yes"
        counts[found["kind"], fitted] += 1
        why[source, found["why"]] = f"{source}: {found['why']}"
        kind = f"{found['kind']}{', in sample' if fitted else ''}"
        numbers = f"{expected:12.6g}  {got:12.6g}  {got - expected:+10.2e}  {tolerance:8.1e}"
        write(f"{source[:44]:44}  {quantity[:62]:62}  {numbers}  {unit}{', ' if unit else ''}{kind}")
    terminalreporter.section("why each difference is allowed")
    for sentence in dict.fromkeys(why.values()):
        write(sentence)
    outside_sample = sum(count for (_, fitted), count in counts.items() if not fitted)
    terminalreporter.section(f"outside: {outside_sample}; in sample: {len(rows) - outside_sample}")
    for kind in KINDS:
        write(f"{kind:16} {counts[kind, False]:5} outside {counts[kind, True]:5} in sample")
