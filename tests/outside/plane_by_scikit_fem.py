"""The held panel solved by scikit-fem, a general finite-element library, on any mesh and element."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from skfem import Basis, BilinearForm, ElementQuadP, ElementVector, LinearForm, MeshQuad, condense, solve
from skfem.element import Element
from skfem.helpers import grad


class Solved(NamedTuple):
    """Basis, displacements, and the work of the load on them (per metre of thickness, unit drying strain)."""

    basis: Basis
    displacement: np.ndarray
    work: float


@BilinearForm
def hold(u, v, w):
    """Plane stress: strain : Q : test strain."""
    e, f = grad(u), grad(v)
    normal = w.q[0] * e[0, 0] * f[0, 0] + w.q[1] * e[1, 1] * f[1, 1]
    return (
        normal + w.q[2] * (e[0, 0] * f[1, 1] + e[1, 1] * f[0, 0]) + w.q[3] * (e[0, 1] + e[1, 0]) * (f[0, 1] + f[1, 0])
    )


@LinearForm
def dry(v, w):
    """Load of a free strain -1 of the panel across its grain."""
    f = grad(v)
    return -w.panel * (w.q[0] * f[0, 0] + w.q[2] * f[1, 1])


def lobatto_element(order: int) -> Element:
    """Quadrilateral whose shape functions span the same polynomials as the kit's."""
    return ElementQuadP(order)


def solve_by_scikit_fem(plane, x_breaks, y_breaks, element: Element, quadrature: int | None = None) -> Solved:
    """Both ends held, glued over the full width, quarter of the piece."""
    mesh = MeshQuad.init_tensor(np.asarray(x_breaks, float), np.asarray(y_breaks, float))
    basis = Basis(mesh, ElementVector(element), intorder=quadrature)
    in_panel = mesh.p[1][mesh.t].mean(axis=0) < plane.depth_m
    panel, strip = np.array(plane.panel.stiffness()), plane.thickness_ratio * np.array(plane.strip.stiffness())
    shape = (mesh.nelements, basis.X.shape[1])
    q = np.broadcast_to(np.where(in_panel, panel[:, None], strip[:, None])[..., None], (4, *shape))
    matrix = hold.assemble(basis, q=q)
    load = dry.assemble(basis, q=q, panel=np.broadcast_to(in_panel[:, None] * 1.0, shape))
    held = []
    for axis, component in ((0, "^1"), (1, "^2")):
        dofs = basis.get_dofs(lambda place, axis=axis: np.isclose(place[axis], 0.0))
        held.append(dofs.all([name for name in dofs.obj.element.dofnames if name.endswith(component)]))
    answer = solve(*condense(matrix, load, D=np.unique(np.concatenate(held))))
    return Solved(basis, answer, float(load @ answer))


def restraint_factor_by_scikit_fem(plane, solved: Solved) -> float:
    """Tension at the middle of the glue line, panel side, over full restraint."""
    mesh = solved.basis.mesh
    centre = mesh.p[:, mesh.t].mean(axis=1)
    beside = np.flatnonzero(centre[1] < plane.depth_m)
    here = beside[np.argmax(centre[1, beside] - 1e-3 * centre[0, beside])]
    corner = (
        np.array([[[0.0]], [[1.0]]])
        if mesh.p[1, mesh.t[3, here]] > mesh.p[1, mesh.t[0, here]]
        else np.array([[[1.0]], [[0.0]]])
    )
    fields = [
        solved.basis.elem.gbasis(mesh.mapping(), corner, i, tind=np.array([here])) for i in range(solved.basis.Nbfun)
    ]
    gradient = sum(
        solved.displacement[solved.basis.element_dofs[i, here]] * part[0].grad[:, :, 0, 0]
        for i, part in enumerate(fields)
    )
    q11, _, q12, _ = plane.panel.stiffness()
    return float(q11 * (gradient[0, 0] + 1.0) + q12 * gradient[1, 1]) / plane.panel.modulus_x_pa
