"""One table: every target of speed beside its named baseline, with its spread, and how cost grows with the work.

Run: python tests/bench/bench_targets.py. The two of a pair are timed in turn, in processor time of one thread, so that a busy
machine hits both alike; the ratio is the median of the pairs, the spread holds the middle half. What needs a browser has
its own comparisons (``bench handout``, ``bench live``). Growth is a straight line through the logarithms of cost and size:
an exponent of 1 is cost in proportion, 0 is cost that does not grow. The targets are the project's own.
"""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path

os.environ.update(OPENBLAS_NUM_THREADS="1", OMP_NUM_THREADS="1")
sys.path[:0] = [str(Path(__file__).parents[1] / name) for name in ("", "outside", "restraint")]

import numpy as np  # noqa: E402
import psychrolib  # noqa: E402
from bench.bench_moisture import fipy, kit  # noqa: E402
from bench.bench_movement import bare_expression, full_law  # noqa: E402
from plane_by_scikit_fem import restraint_factor_by_scikit_fem, solve_by_scikit_fem  # noqa: E402
from random_panels import ASH_PANEL  # noqa: E402
from skfem import ElementQuad2  # noqa: E402

from woodlib.air.psychrometrics import saturation_pressure_pa  # noqa: E402
from woodlib.air.year import Year  # noqa: E402
from woodlib.restraint.field import solve_plane  # noqa: E402
from woodlib.restraint.field_readings import restraint_factor_of  # noqa: E402
from woodlib.survey.part import rows_of, settings_of  # noqa: E402
from woodlib.ways.registry import every_way  # noqa: E402

Call = Callable[[], object]


def spent(call: Call) -> float:
    """Processor seconds of a call, those of programs that it started included."""
    start = _clock()
    call()
    return _clock() - start


def _clock() -> float:
    children = resource.getrusage(resource.RUSAGE_CHILDREN)
    return time.process_time() + children.ru_utime + children.ru_stime


def row(what: str, own: Call, baseline: str, other: Call, target: float, pairs: int = 7, each: float = 1.0) -> bool:
    """Print a target, how many times the baseline's cost over the kit's it asks for; returns whether it is met.

    ``each`` how many times the work of the baseline the kit does in one call.
    """
    own(), other()
    times = np.array([(spent(own), spent(other)) for _ in range(pairs)])
    ratio = times[:, 1] / np.maximum(times[:, 0], 1e-9) * each
    low, middle, high = np.quantile(ratio, (0.25, 0.5, 0.75))
    ours, theirs = 1e3 * np.median(times, axis=0)
    met = middle >= target
    print(
        f"{what:34} {ours:9.2f} ms   {baseline:38} {theirs:9.2f} ms   {middle:7.2f} ({low:.2f} to {high:.2f}) times   "
        f"target {target:g}: {'met' if met else 'MISSED'}"
    )
    return bool(met)


def growth(what: str, sizes: Sequence[int], call: Callable[[int], object]) -> None:
    """Print the exponent with which cost grows, and how well a power of the size tells it."""
    call(sizes[0])
    cost = [min(spent(lambda size=size: call(size)) for _ in range(3)) for size in sizes]
    x, y = np.log(sizes), np.log(np.maximum(cost, 1e-9))
    slope, start = np.polyfit(x, y, 1)
    off = float(np.exp(np.abs(y - slope * x - start).max()) - 1)
    listed = ", ".join(f"{size}: {1e3 * each:.1f} ms" for size, each in zip(sizes, cost, strict=True))
    print(f"{what:34} exponent {slope:5.2f}, within {off:.0%}   ({listed})")


def python(code: str) -> Call:
    """A fresh Python that runs some code."""
    return lambda: subprocess.run([sys.executable, "-c", code], cwd=Path(__file__).parents[2], check=True)


def main() -> int:
    """Print both tables; 1 when a target is missed."""
    rng, count = np.random.default_rng(20), 1_000_000
    width, coefficient = rng.uniform(0.05, 0.6, count), rng.uniform(0.001, 0.0045, count)
    start, end = rng.uniform(6.0, 14.0, (2, count))
    law = lambda: full_law(width, coefficient, 30.0 * coefficient, start, end)  # noqa: E731
    hours = 12.0 - 10.0 * np.cos(2 * np.pi * np.arange(8760) / 8760)
    psychrolib.SetUnitSystem(psychrolib.SI)
    by_hour = lambda: [psychrolib.GetSatVapPres(each) for each in hours.tolist()]  # noqa: E731
    x, y = (np.linspace(0.0, top, 13) for top in (ASH_PANEL.width_m / 2, ASH_PANEL.depth_m))
    y = np.concatenate([y, y[-1] + ASH_PANEL.strip_m * np.array([0.5, 1.0])])

    def library() -> float:
        return restraint_factor_by_scikit_fem(ASH_PANEL, solve_by_scikit_fem(ASH_PANEL, x, y, ElementQuad2(), None))

    met = [
        row("import woodlib", python("import woodlib"), "import numpy", python("import numpy"), 1.0),
        row("year of hours, saturation", lambda: saturation_pressure_pa(hours), "PsychroLib, hour by hour", by_hour, 5),
        row(
            "movement of 1,000,000 boards",
            law,
            "bare D C dM in NumPy",
            lambda: bare_expression(width, coefficient, start, end),
            0.33,
        ),
        row(
            "1,000 boards, a month",
            lambda: kit(120, 1000, days=30),
            "one board, 1,000 times as often",
            lambda: kit(120, days=30),
            20,
            each=1000,
        ),
        row(
            "a board, 30 days",
            lambda: kit(120, days=30),
            "FiPy, same grid and steps",
            lambda: fipy(120, 30.0),
            50,
            pairs=3,
        ),
        row(
            "plane field of a held panel",
            lambda: restraint_factor_of(solve_plane(ASH_PANEL)),
            "scikit-fem, 12 x 14 squares, order 2",
            library,
            10,
        ),
    ]
    print()
    growth("boards followed at once", (500, 1000, 2000, 4000), lambda boards: kit(60, boards))
    growth("steps of time", (365, 730, 1460, 2920), lambda steps: kit(steps, 50))
    growth("cells through the thickness", (30, 60, 120, 240), lambda cells: kit(60, 500, cells))
    growth(
        "unknowns, by order of the field",
        (4, 5, 6, 7, 8),
        lambda order: [solve_plane(ASH_PANEL, order, 1) for _ in range(5)],
    )
    growth("readings of a year's air", (8760, 35040, 140160), _monthly)
    keys = [way.key for way in every_way()]
    growth("ways judged", (4, 8, 16), lambda ways: _surveyed(keys[:ways], 2000))
    growth("sampled boards and houses", (2000, 8000, 32000), lambda boards: _surveyed(keys[:6], boards))
    return 0 if all(met) else 1


def _monthly(readings: int) -> object:
    day = np.linspace(0.0, 364.9, readings)
    return Year(day, np.full(readings, 21.0), 45.0 + 10.0 * np.sin(day / 58.0), "room").monthly()


def _surveyed(keys: list[str], boards: int) -> object:
    settings = settings_of(["white oak"], ["Chicago"], ["24 in"], keys, samples=boards)
    return rows_of(settings.parts[0])


if __name__ == "__main__":
    sys.exit(main())
