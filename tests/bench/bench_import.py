"""Time of ``import woodlib`` in a fresh Python, against ``import numpy`` in the same run. Goal: at most 150 ms.

Each is started anew and in turn, so that both meet the same disk and the same load; the time a bare Python takes to
start is measured too and taken off.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]
GOAL_MS = 150
REPEATS = 15
CODES = {
    "nothing": "pass",
    "woodlib": "import woodlib",
    "numpy": "import numpy",
    "woodlib and a look-up": "import woodlib; woodlib.find_species('white oak')",
}


def once(code: str) -> float:
    """Milliseconds from the start of a Python to its end."""
    start = time.perf_counter()
    subprocess.run([sys.executable, "-c", code], cwd=PROJECT, check=True)
    return 1e3 * (time.perf_counter() - start)


def main() -> None:
    """Print the medians, less the start of a bare Python, and their ratio to NumPy's."""
    rounds = [{name: once(code) for name, code in CODES.items()} for _ in range(REPEATS + 1)][1:]
    median = {name: statistics.median(each[name] for each in rounds) for name in CODES}
    numpy_ms = median["numpy"] - median["nothing"]
    print(f"start of a bare Python: {median['nothing']:.1f} ms (taken off below); medians of {REPEATS}")
    for name in list(CODES)[1:]:
        own = median[name] - median["nothing"]
        print(f"import {name:22} {own:7.1f} ms   {own / numpy_ms:5.2f} x import numpy")
    own = median["woodlib"] - median["nothing"]
    print(f"goal {GOAL_MS} ms: {'met' if own <= GOAL_MS else 'missed'}")


if __name__ == "__main__":
    main()
