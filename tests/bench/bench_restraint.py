"""How quick and how right the plane field of a held panel is, beside a general finite-element library.

Run: python tests/bench/bench_restraint.py. Everything is measured in this one run, on this machine, on one thread
and in processor time, so that a busy machine favours neither.
"""

from __future__ import annotations

import os
import sys
import time
from pathlib import Path

os.environ.update(OPENBLAS_NUM_THREADS="1", OMP_NUM_THREADS="1")

import numpy as np
from skfem import ElementQuad2

sys.path[:0] = [
    str(Path(__file__).parents[1]),
    str(Path(__file__).parents[1] / "outside"),
    str(Path(__file__).parents[1] / "restraint"),
    str(Path(__file__).parents[2]),
]

from plane_by_scikit_fem import lobatto_element, restraint_factor_by_scikit_fem, solve_by_scikit_fem  # noqa: E402
from random_panels import ASH_PANEL, random_panels  # noqa: E402
from references.drawn_chance import sampled_chance  # noqa: E402

from woodlib.restraint.chance import HeldLoad, crack_chance  # noqa: E402
from woodlib.restraint.field import plane_lines, solve_plane  # noqa: E402
from woodlib.restraint.field_readings import restraint_factor_of  # noqa: E402
from woodlib.restraint.held import held_panel  # noqa: E402
from woodlib.restraint.relaxation import several_years  # noqa: E402
from woodlib.species import find_species  # noqa: E402


def median_ms(call, repeats: int = 60) -> float:
    """Median processor time of a call, milliseconds."""
    times = []
    for _ in range(repeats):
        start = time.process_time()
        call()
        times.append(time.process_time() - start)
    return 1e3 * float(np.median(times))


def accuracy(count: int = 400) -> None:
    """Restraint factor of random panels against a refined solution."""
    errors, times = [], []
    for plane in random_panels(count):
        start = time.process_time()
        factor = restraint_factor_of(solve_plane(plane))
        times.append(time.process_time() - start)
        errors.append(abs(factor / restraint_factor_of(solve_plane(plane, 7, 1)) - 1))
    print(
        f"{count} random panels: restraint factor within {100 * max(errors):.2f} % of refined, 95 in 100 within "
        f"{100 * np.quantile(errors, 0.95):.2f} %; solve and read {1e3 * np.median(times):.2f} ms (median)"
    )


def against_library() -> None:
    """The same panel by scikit-fem on several meshes."""
    plane = ASH_PANEL
    refined = restraint_factor_of(solve_plane(plane, 9, 2))

    def own() -> float:
        return restraint_factor_of(solve_plane(plane))

    own_ms, own_error = median_ms(own, 200), abs(own() / refined - 1)
    print(f"\n{'program and mesh':44} {'unknowns':>8} {'ms':>8} {'error %':>8} {'times slower':>12}")
    print(f"{'woodlib':44} {solve_plane(plane).unknowns:8d} {own_ms:8.2f} {100 * own_error:8.3f} {1.0:12.1f}")
    x_line, panel_line, _, *_ = plane_lines(plane)
    top = plane.depth_m + plane.strip_m
    meshes = [("scikit-fem, the same mesh, order 5", x_line.breaks, [*panel_line.breaks, top], lobatto_element(5), 10)]
    for across, along, strip in ((3, 3, 1), (5, 5, 1), (8, 8, 2), (12, 12, 2), (18, 18, 3), (26, 26, 4), (40, 40, 6)):
        y = np.concatenate([np.linspace(0, plane.depth_m, along + 1), np.linspace(plane.depth_m, top, strip + 1)[1:]])
        name = f"scikit-fem, {across} x {along + strip} squares, order 2"
        meshes.append((name, np.linspace(0, plane.width_m / 2, across + 1), y, ElementQuad2(), None))
    rows = []
    for name, x, y, element, quadrature in meshes:

        def library(x=x, y=y, element=element, quadrature=quadrature) -> float:
            return restraint_factor_by_scikit_fem(plane, solve_by_scikit_fem(plane, x, y, element, quadrature))

        solved = solve_by_scikit_fem(plane, x, y, element, quadrature)
        row = (name, solved.basis.N, median_ms(library, 12), abs(library() / refined - 1))
        rows.append(row)
        print(f"{row[0]:44} {row[1]:8d} {row[2]:8.2f} {100 * row[3]:8.3f} {row[2] / own_ms:12.1f}")
    loose = min(row[2] for row in rows if row[3] <= 0.01)
    equal = min(row[2] for row in rows if row[3] <= max(own_error, 1e-12) * 1.02)
    print(
        f"woodlib is {loose / own_ms:.0f} times quicker than the library's quickest mesh within 1 %, "
        f"{equal / own_ms:.0f} times quicker than its quickest at least as accurate"
    )


def whole_answer() -> None:
    """The door that sliders use, and the chance of a crack."""
    wood = find_species("white oak")
    rest = {"length_m": 1.118, "thickness_m": 0.022, "strip_width_m": 0.038, "glue_up_mc_percent": 9.0}
    widths = iter(np.linspace(0.3, 0.7, 500))
    ms = median_ms(
        lambda: held_panel(wood, width_m=float(next(widths)), year_mc_percent=[11.5, 6.5], **rest).picture(), 100
    )
    swings = iter(np.linspace(5.5, 8.0, 500))
    again = median_ms(
        lambda: held_panel(wood, width_m=0.5, year_mc_percent=[11.5, float(next(swings))], **rest).picture(), 100
    )
    path = several_years(9.5, [12, 7], 8)
    load = HeldLoad(path, 0.00264 * (path - 9.5), 0.744 * 1056e6, 1.7)
    print(
        f"\nheld_panel with chance and picture: {ms:.2f} ms for a new panel, {again:.2f} ms when only moisture changes"
    )
    print(
        f"chance: {median_ms(lambda: crack_chance(load, 6.48e6)):.2f} ms on fixed nodes, "
        f"{median_ms(lambda: sampled_chance(load, 6.48e6), 5):.0f} ms for 131,072 drawn panels over eight years"
    )


if __name__ == "__main__":
    accuracy()
    against_library()
    whole_answer()
