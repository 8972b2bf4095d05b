"""Time of the movement kernel against the bare NumPy expression D * C * (M_to - M_from), run side by side.

Run with ``python tests/bench/bench_movement.py``. One million boards; the two are timed in turn, and the ratio is the
median of the ratios of the pairs, so that other work on the machine hits both alike.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from functools import partial

import numpy as np

from woodlib.movement.coefficients import movement_strain

CASES = 1_000_000
PAIRS = 31


def seconds(call: Callable[[], object]) -> float:
    start = time.perf_counter()
    call()
    return time.perf_counter() - start


def ratio(kernel: Callable[[], object], bare: Callable[[], object]) -> tuple[float, float, float]:
    """Median time of the kernel, of the bare expression (seconds), and median ratio."""
    kernel(), bare()
    times = np.array([(seconds(kernel), seconds(bare)) for _ in range(PAIRS)])
    return *np.median(times, axis=0), float(np.median(times[:, 0] / times[:, 1]))


def full_law(width, coefficient, shrinkage, start, end):
    return width * movement_strain(coefficient, shrinkage, start, end)


def bare_expression(width, coefficient, start, end):
    return width * coefficient * (end - start)


def main() -> None:
    rng = np.random.default_rng(20)
    width = rng.uniform(0.05, 0.6, CASES)
    coefficient = rng.uniform(0.001, 0.0045, CASES)
    shrinkage = 30.0 * coefficient / (1.0 + 20.0 * coefficient)
    for label, lowest, highest in (("all within 6..14 % MC", 6.0, 14.0), ("4..16 % MC, half outside", 4.0, 16.0)):
        start, end = rng.uniform(lowest, highest, (2, CASES))
        kernel = partial(full_law, width, coefficient, shrinkage, start, end)
        kernel_s, bare_s, times = ratio(kernel, partial(bare_expression, width, coefficient, start, end))
        print(f"{label:26} kernel {1e3 * kernel_s:6.1f} ms   bare {1e3 * bare_s:6.1f} ms   ratio {times:.2f}")


if __name__ == "__main__":
    main()
