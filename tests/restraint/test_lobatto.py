"""Lines of high-order elements: exact on polynomials, and of the order they claim."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.restraint.lobatto import Line, reference_element

breaks = st.lists(st.floats(0.05, 3.0), min_size=1, max_size=4).map(
    lambda steps: tuple(np.concatenate([[0.0], np.cumsum(steps)]))
)


@given(breaks, st.integers(1, 8))
def test_matrices_integrate_polynomials_exactly(places, order):
    line = Line(places, order)
    power = line.nodes**order
    end = places[-1]
    assert np.isclose(power @ line.mass @ power, end ** (2 * order + 1) / (2 * order + 1), rtol=1e-9)
    assert np.isclose(power @ line.stiffness @ power, order**2 * end ** (2 * order - 1) / (2 * order - 1), rtol=1e-8)
    assert np.isclose(power @ line.mixed @ power, end ** (2 * order) / 2, rtol=1e-8)


@given(breaks, st.integers(1, 8), st.floats(0, 1))
def test_values_and_slopes_of_a_polynomial_are_exact(places, order, share):
    line = Line(places, order)
    place = np.array([share * places[-1]])
    value, slope = line.at(place)
    assert np.allclose(value @ line.nodes**order, place**order, atol=1e-9 * places[-1] ** order)
    assert np.allclose(slope @ line.nodes, 1.0, atol=1e-9)
    assert np.allclose(slope.sum(axis=1), 0.0, atol=1e-7 / min(line.lengths))


def test_gauss_points_agree_with_the_mass_matrix():
    line = Line((0.0, 0.3, 1.0), 5)
    value, slope, weight = line.gauss(8)
    assert np.allclose((value.T * weight) @ value, line.mass, atol=1e-14)
    assert np.allclose((slope.T * weight) @ slope, line.stiffness, atol=1e-11)


def test_mass_of_the_first_elements_only():
    line = Line((0.0, 0.3, 1.0), 4)
    ones = np.ones(line.size)
    assert np.isclose(ones @ line.mass_of(1) @ ones, 0.3)


@pytest.mark.parametrize("order", [1, 2, 3, 4])
def test_energy_error_of_a_bar_falls_with_twice_the_order(order):
    """-u'' = sin on a bar: energy error falls as h^(2p), the known order of the method."""
    errors = []
    for count in (4, 8):
        line = Line(tuple(np.linspace(0, np.pi, count + 1)), order)
        value, _, weight = line.gauss(12)
        load = (value.T * weight) @ np.sin(
            np.concatenate(
                [
                    np.polynomial.legendre.leggauss(12)[0] * np.pi / count / 2 + np.pi / count * (k + 0.5)
                    for k in range(count)
                ]
            )
        )
        inner = slice(1, -1)
        answer = np.linalg.solve(line.stiffness[inner, inner], load[inner])
        errors.append(abs(np.pi / 2 - answer @ load[inner]))
    assert np.log2(errors[0] / errors[1]) == pytest.approx(2 * order, abs=0.35)


def test_nodes_are_symmetric_and_include_the_ends():
    for order in range(1, 10):
        nodes = reference_element(order).nodes
        assert nodes[0] == -1 and nodes[-1] == 1 and np.allclose(nodes, -nodes[::-1])
