"""What holds for every test: no window is opened, and properties are searched the same way on every machine.

Hypothesis measures no time here, so a slow or busy machine cannot turn a right answer into a failure, and its search
starts from the same place in every run. ``python3 -m woodlib test search`` looks somewhere new and further
(``WOODLIB_SEARCH`` holds the seed).

Linear algebra runs in one thread: the matrices are small, and the tests run on every processor already. With two
threads that wait for each other, 320 random panels took 170 s on a busy machine, and 2 s in one.

One reference program, SfePy, has to be compiled where it is installed, so it is not among the packages that every
machine can have. Where it is missing its files are not collected, and the end of the run says so.
"""

from __future__ import annotations

import os
import tempfile
from importlib.util import find_spec

from hypothesis import HealthCheck, settings

os.environ["MPLBACKEND"] = "Agg"
_STATE = tempfile.TemporaryDirectory()  # predictions made in tests are nobody's
os.environ["XDG_STATE_HOME"] = _STATE.name
for library in ("OPENBLAS", "OMP", "MKL"):  # read when NumPy is loaded, here and in the kernels of notebooks
    os.environ.setdefault(f"{library}_NUM_THREADS", "1")

settings.register_profile(
    "usual", deadline=None, derandomize=True, database=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("search", settings.get_profile("usual"), derandomize=False, max_examples=1000)
settings.load_profile("search" if os.environ.get("WOODLIB_SEARCH") else "usual")

LEFT_OUT: list[str] = []


def pytest_ignore_collect(collection_path) -> bool | None:
    """Leave out the files that need SfePy where it is missing."""
    if "sfepy" in collection_path.name and find_spec("sfepy") is None:
        LEFT_OUT.append(collection_path.name)
        return True
    return None


def pytest_terminal_summary(terminalreporter) -> None:
    """Say what was left out, and how to bring it in."""
    if LEFT_OUT:
        terminalreporter.write_line(
            "Left out: the comparison with SfePy, which needs a C compiler to install. To run it too: "
            "pip install --require-hashes -r woodlib/lock/compiled.txt"
        )
