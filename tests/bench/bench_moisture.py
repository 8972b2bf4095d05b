"""Time of moisture through the thickness, as ratios taken side by side.

Run with ``python tests/bench/bench_moisture.py``. Prints: one board through one year (60 cells, 6-hour steps); the same
for 1,000 boards per board; FiPy on the same grid and steps, with the error of both against a far finer run; and how
the cost grows with boards, cells and steps. Times of a pair are taken in turn, so that other work hits both alike.
"""

from __future__ import annotations

import time
from collections.abc import Callable

import numpy as np

from woodlib.moisture.diffusion import march
from woodlib.moisture.diffusivity import siau_m2_s
from woodlib.moisture.history import History
from woodlib.moisture.lookup import Lookup

DAY = 86400.0
YEAR_STEPS = 1460
THICK, GRAVITY, SURFACE = 0.019, 0.60, 1e-7


def seconds(call: Callable[[], object]) -> float:
    start = time.perf_counter()
    call()
    return time.perf_counter() - start


def paired(one: Callable[[], object], other: Callable[[], object], pairs: int) -> tuple[float, float, float]:
    """Least time of each (the least disturbed run) and the median ratio of other over one."""
    one(), other()
    times = np.array([(seconds(one), seconds(other)) for _ in range(pairs)])
    return times[:, 0].min(), times[:, 1].min(), float(np.median(times[:, 1] / times[:, 0]))


def air(steps: int, days: float = 365.0) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Times, EMC and temperature of a year with a yearly and a weekly swing."""
    day = np.linspace(0.0, days, steps + 1)
    turn = 2 * np.pi * day / 365.0
    return day * DAY, 8.5 + 2.5 * np.sin(turn) + 0.5 * np.sin(turn * 52), 21.0 + 3.0 * np.sin(turn)


def kit(steps: int = YEAR_STEPS, boards: int = 1, cells: int = 60, days: float = 365.0) -> History:
    at, emc, celsius = air(steps, days)
    lookup = Lookup([("siau", GRAVITY, 1.0)], float(celsius.min()), float(celsius.max()))
    return march(
        at,
        emc,
        celsius,
        np.full(boards, 8.5),
        np.full(boards, THICK),
        lookup,
        np.zeros(boards, int),
        np.full((boards, 2), SURFACE),
        cells,
    )


def fipy(steps: int, days: float, cells: int = 60) -> np.ndarray:
    """Mean moisture at each step from FiPy: implicit diffusion, backward Euler, one sweep, same coefficients."""
    from fipy import CellVariable, DiffusionTerm, FaceVariable, Grid1D, ImplicitSourceTerm, TransientTerm

    at, emc, celsius = air(steps, days)
    dx = THICK / cells
    mesh = Grid1D(nx=cells, dx=dx)
    moisture = CellVariable(mesh=mesh, value=8.5, hasOld=True)
    conduct = FaceVariable(mesh=mesh, value=0.0)
    exchange, supply = CellVariable(mesh=mesh, value=0.0), CellVariable(mesh=mesh, value=0.0)
    equation = TransientTerm() == DiffusionTerm(coeff=conduct) - ImplicitSourceTerm(coeff=exchange) + supply
    mean = np.empty(steps + 1)
    mean[0] = 8.5
    for n in range(1, steps + 1):
        moisture.updateOld()
        d = table_of_form(moisture.value, celsius[n])
        conduct.setValue(np.concatenate([[0.0], (d[1:] + d[:-1]) / 2, [0.0]]))
        ends = np.zeros(cells)
        ends[[0, -1]] = 1 / (1 / SURFACE + dx / 2 / d[[0, -1]]) / dx
        exchange.setValue(ends)
        supply.setValue(ends * emc[n])
        equation.sweep(var=moisture, dt=at[n] - at[n - 1])
        mean[n] = moisture.value.mean()
    return mean


_MOISTURE = np.linspace(0.0, 30.0, 121)
_CELSIUS = np.linspace(17.0, 25.0, 17)
_TABLE = siau_m2_s(_MOISTURE[None, :], _CELSIUS[:, None], GRAVITY)


def table_of_form(mc_percent: np.ndarray, celsius: float) -> np.ndarray:
    """The same table of coefficients for FiPy, so that both pay the same for the form."""
    row = min(int((celsius - 17.0) * 2), 15)
    part = (celsius - _CELSIUS[row]) * 2
    return np.interp(mc_percent, _MOISTURE, (1 - part) * _TABLE[row] + part * _TABLE[row + 1])


def growth(label: str, sizes: list[int], call: Callable[[int], object]) -> None:
    """Cost per unit at growing size, over the cost per unit at the first; 1 is linear, below 1 cheaper."""
    call(sizes[0])
    cost = [min(seconds(lambda size=size: call(size)) for _ in range(3)) / size for size in sizes]
    line = ", ".join(f"{size}: {value / cost[0]:.2f}" for size, value in zip(sizes, cost, strict=True))
    print(f"cost per {label}, over the first: {line}")


def main() -> None:
    alone, many, ratio = paired(kit, lambda: kit(boards=1000), 5)
    print(f"one board, one year, 60 cells, 6-hour steps: {alone * 1e3:.1f} ms (target 60 ms)")
    print(
        f"1,000 boards at once: {many:.2f} s, {alone * 1000 / many:.1f} times cheaper per board, "
        f"median of pairs {1000 / ratio:.1f} (target 20)"
    )
    days, steps = 30.0, 120
    ours, theirs, ratio = paired(lambda: kit(steps, days=days), lambda: fipy(steps, days), 3)
    print(f"FiPy, 30 days of the same steps: {theirs:.2f} s against {ours * 1e3:.2f} ms: {ratio:.0f} times (target 50)")
    fine = kit(steps * 64, days=days).mean_percent[::64, 0]
    ours_off = np.abs(kit(steps, days=days).mean_percent[:, 0] - fine).max()
    theirs_off = np.abs(fipy(steps, days) - fine).max()
    print(f"error of mean moisture against 64 times finer steps: woodlib {ours_off:.2e} %, FiPy {theirs_off:.2e} %")
    growth("board", [1000, 2000, 4000], lambda boards: kit(146, boards))
    growth("cell, 1,000 boards", [60, 120, 240], lambda cells: kit(73, 1000, cells))
    growth("step", [1460, 2920, 5840], lambda count: kit(count))


if __name__ == "__main__":
    main()
