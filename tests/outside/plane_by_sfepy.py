"""The held panel solved by sfepy, an independent finite-element program, on any mesh and order."""

from __future__ import annotations

import logging

import numpy as np


def solve_by_sfepy(plane, x_breaks, y_breaks, order: int) -> tuple[np.ndarray, np.ndarray]:
    """Coordinates of the nodes and their displacements, per unit drying strain; both ends held, glued full width."""
    from sfepy.base.base import output
    from sfepy.discrete import Equation, Equations, FieldVariable, Integral, Material, Problem
    from sfepy.discrete.conditions import Conditions, EssentialBC
    from sfepy.discrete.fem import FEDomain, Field, Mesh
    from sfepy.solvers.ls import ScipyDirect
    from sfepy.solvers.nls import Newton
    from sfepy.terms import Term

    output.set_output(quiet=True)
    logging.getLogger("sfepy").setLevel(logging.ERROR)
    x, y = np.asarray(x_breaks, float), np.asarray(y_breaks, float)
    points = np.stack(np.meshgrid(x, y, indexing="ij"), axis=-1).reshape(-1, 2)
    column, row = np.meshgrid(np.arange(x.size - 1), np.arange(y.size - 1), indexing="ij")
    first = (column * y.size + row).ravel()
    cells = np.stack([first, first + y.size, first + y.size + 1, first + 1], axis=1).astype(np.int32)
    mesh = Mesh.from_data("panel", points, None, [cells], [np.zeros(len(cells), np.int32)], ["2_4"])
    domain = FEDomain("panel", mesh)
    whole = domain.create_region("whole", "all")
    middle = domain.create_region("middle", f"vertices in x < {1e-9}", "facet")
    root = domain.create_region("root", f"vertices in y < {1e-9}", "facet")
    field = Field.from_args("displacement", np.float64, "vector", whole, approx_order=order)
    u, v = FieldVariable("u", "unknown", field), FieldVariable("v", "test", field, primary_var_name="u")
    panel, strip = np.array(plane.panel.stiffness()), plane.thickness_ratio * np.array(plane.strip.stiffness())

    def constants(ts, coordinates, mode=None, **kwargs):
        if mode != "qp":
            return None
        in_panel = coordinates[:, 1] < plane.depth_m
        q = np.where(in_panel[:, None], panel, strip)
        stiffness = np.zeros((len(q), 3, 3))
        stiffness[:, 0, 0], stiffness[:, 1, 1], stiffness[:, 2, 2] = q[:, 0], q[:, 1], q[:, 3]
        stiffness[:, 0, 1] = stiffness[:, 1, 0] = q[:, 2]
        stress = np.stack([q[:, 0], q[:, 2], 0 * q[:, 0]], axis=1) * in_panel[:, None]
        return {"stiffness": stiffness, "stress": stress[:, :, None]}

    wood = Material("wood", function=constants)
    integral = Integral("i", order=2 * order)
    hold = Term.new("dw_lin_elastic(wood.stiffness, v, u)", integral, whole, wood=wood, v=v, u=u)
    dry = Term.new("dw_lin_prestress(wood.stress, v)", integral, whole, wood=wood, v=v)
    problem = Problem("held", equations=Equations([Equation("balance", hold + dry)]))
    problem.set_bcs(ebcs=Conditions([EssentialBC("m", middle, {"u.0": 0.0}), EssentialBC("r", root, {"u.1": 0.0})]))
    problem.set_solver(Newton({"eps_a": 1e-6, "eps_r": 1e-14, "i_max": 1}, lin_solver=ScipyDirect({})))
    state = problem.solve(save_results=False, verbose=False)
    values = state()
    return field.get_coor(), values.reshape(-1, 2)
