"""Decided numbers: they compute what plain numbers compute, and never let a branch slip by."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import InputError
from woodlib.words.decided import Decided, Pick, larger, level, pick, reached, size_of, smaller

numbers = st.floats(-1e6, 1e6, allow_nan=False)


@given(numbers, numbers)
def test_larger_smaller_and_size_are_max_min_and_abs(a, b):
    assert float(larger(a, b)) == max(a, b)
    assert float(smaller(a, b)) == min(a, b)
    assert float(size_of(a)) == abs(a)


@given(numbers, numbers, st.floats(0.1, 10))
def test_arithmetic_keeps_the_value(a, b, c):
    kinked = larger(a, b)
    assert float(2.0 * kinked - 1.0 + c) == 2.0 * max(a, b) - 1.0 + c
    assert float((1.0 - kinked) / c) == (1.0 - max(a, b)) / c
    assert float(-kinked) == -max(a, b)


steps = st.integers(-4000, 4000).map(lambda k: k / 4)


@given(steps, st.lists(steps, min_size=1, max_size=4, unique=True).map(sorted))
def test_level_counts_the_edges_reached(number, edges):
    assert float(level(number, edges)) == sum(number >= edge for edge in edges)
    assert pick(number, edges, list(range(len(edges) + 1))).chosen == sum(number >= edge for edge in edges)


def test_an_edge_belongs_to_the_upper_side():
    assert float(reached(0.004, 0.004)) == 1.0


@pytest.mark.parametrize(
    "compare", [lambda d: d < 1, lambda d: d > 1, lambda d: d <= 1, lambda d: d >= 1, lambda d: d == 1]
)
def test_a_branch_on_a_decided_number_is_refused_with_the_remedy(compare):
    with pytest.raises(InputError, match=r"pick\(number"):
        compare(larger(1.0, 2.0))


def test_pick_wants_one_option_more_than_edges():
    with pytest.raises(InputError, match="2 edges and 2 options"):
        pick(1.0, [0.5, 2.0], ["a", "b"])
    with pytest.raises(InputError, match="options 0 to 1"):
        Pick(2.0, ("a", "b"))


def test_the_record_holds_the_steps():
    made = larger(1.0, 2.0) * 3.0
    assert isinstance(made, Decided) and made.step == "*" and made.first.step == "larger"


@pytest.mark.parametrize(
    "compute",
    [
        lambda x, y: np.minimum(np.maximum(x, y), 3.0) / np.sqrt(2.0 + x * x) - np.square(y),
        lambda x, y: np.clip(x, -1.0, y) + np.abs(y) ** 1.5 + (-x) ** 3 + abs(x),
        lambda x, y: np.exp(0.1 * x) * np.log(2.0 + np.abs(y)) + np.cos(np.radians(x)) - np.sin(y),
        lambda x, y: np.sum(np.array([1.0, 2.0, 3.0]) * np.maximum(x, y)) - np.float64(2.0) * x,
        lambda x, y: np.max(np.stack([np.array([x, y]) * 2.0 + np.arange(2) * x, np.arange(2) - y])[:, 1]),
    ],
)
@given(st.floats(-5, 5), st.floats(-5, 5))
def test_numpy_s_functions_keep_the_record(compute, x, y):
    made = compute(Decided("+", x, 0.0), Decided("+", y, 0.0))
    assert isinstance(made, Decided) and float(made) == pytest.approx(float(compute(x, y)), rel=1e-12, abs=1e-12)


def test_functions_that_a_page_cannot_repeat_are_refused_by_name():
    with pytest.raises(InputError, match=r"np\.arctan\(\)"):
        np.arctan(larger(1.0, 2.0))
    with pytest.raises(InputError, match=r"pick\(number"):
        np.less(np.array([1.0, 2.0]), larger(1.0, 2.0))


def test_nothing_is_worked_out_before_it_is_asked_for():
    assert larger("not", "looked at").step == "larger"
