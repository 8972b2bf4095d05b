"""Numbers at many states: what is computed with all at once is what each state computes, and nothing that a page could not
follow slips by."""

from __future__ import annotations

import math

import numpy as np
import pytest

from woodlib.errors import InputError
from woodlib.movement.coefficients import movement_strain
from woodlib.movement.wood import wood_of
from woodlib.words.decided import Decided, Pick, larger, level, now, pick, reached, size_of, smaller
from woodlib.words.many import Many, Unsteady
from woodlib.words.say import length, plain_text
from woodlib.words.steps import STEPS

DRAWS = np.random.Generator(np.random.PCG64(11))
NUMBER, OTHER = DRAWS.normal(size=(2, 7))
ROW, TABLE = DRAWS.normal(size=(7, 3)), DRAWS.normal(size=(7, 3, 2))
PLAIN = DRAWS.normal(size=(3, 2))
UNEVEN = Many(np.array([0.2, 0.5, 0.7]))

# Each is computed for all states at once and for every state alone; n and m are numbers, r has 3 of them, t has 3 x 2.
SAME = {
    "arithmetic": lambda n, m, r, t: (n + 2.0 * m - r) / (1.0 + t[:, 0] ** 2),
    "operators from the other side": lambda n, m, r, t: 1.0 - n * np.array([1.0, 2.0]) / (3.0 + np.abs(m)),
    "power": lambda n, m, r, t: abs(n) ** 1.5,
    "ufuncs": lambda n, m, r, t: np.maximum(np.sqrt(np.abs(r)), n) + np.hypot(n, m),
    "matrix by vector": lambda n, m, r, t: PLAIN.T @ r,
    "vector by matrix": lambda n, m, r, t: r @ PLAIN,
    "vector by vector": lambda n, m, r, t: r @ t[:, 1],
    "matrix by matrix": lambda n, m, r, t: t.T @ PLAIN,
    "outer": lambda n, m, r, t: np.multiply.outer(r, r) + np.outer(r, r) + np.multiply.outer(n, r),
    "sums and extremes": lambda n, m, r, t: np.sum(t, axis=0) + t.max(axis=0) - np.min(t, axis=-2) + t.sum() + np.mean(r),
    "cumsum and flip": lambda n, m, r, t: np.cumsum(r)[::-1] + np.flip(r),
    "reduce and accumulate": lambda n, m, r, t: np.add.reduce(t) + np.multiply.reduce(r) + np.maximum.accumulate(t)[2],
    "stack": lambda n, m, r, t: np.stack([n, 1.0, r[0]]) + np.stack([r, r], axis=-1)[:, 0],
    "stack by broadcasting": lambda n, m, r, t: np.column_stack([r, np.ones(3), t]),
    "concatenate": lambda n, m, r, t: np.concatenate([r, [1.0, 2.0], t[:, 0]]),
    "concatenate along": lambda n, m, r, t: np.concatenate([t, PLAIN], axis=1),
    "vstack": lambda n, m, r, t: np.vstack([t, [0.0, 1.0], t[0]]),
    "where and clip": lambda n, m, r, t: np.where(r > n, r, 0.0) + np.clip(t[:, 0], -0.5, n + 5.0),
    "lists of numbers": lambda n, m, r, t: np.concatenate([[n, m, 1.0], r]),
    "tuples of numbers": lambda n, m, r, t: t + (0.0, n) - [1.0, 2.0],
    "interpolation": lambda n, m, r, t: np.interp(r, [-1.0, 0.0, 1.0], [3.0, 5.0, 4.0]),
    "interpolation in what slides": lambda n, m, r, t: np.interp(0.1, np.sort(r), t[:, 1]),
    "broadcast": lambda n, m, r, t: np.broadcast_to(r[:, None], (3, 2)) + np.broadcast_to(n, (3, 2)),
    "any other function": lambda n, m, r, t: np.trapezoid(t, axis=0),
    "shapes": lambda n, m, r, t: t.reshape(2, 3) @ r + np.ravel(t)[: t.shape[1]] * np.ndim(t) * np.size(t) * len(t),
    "iteration": lambda n, m, r, t: sum(row[0] * row[1] for row in t),
    "remainders": lambda n, m, r, t: np.divmod(r, 0.3)[1] + np.modf(n)[0],
    "sinc": lambda n, m, r, t: np.sinc(r) * np.radians(n),
}  # fmt: skip


@pytest.mark.parametrize("name", SAME)
def test_all_states_at_once_give_what_each_gives_alone(name):
    got = SAME[name](*map(Many, (NUMBER, OTHER, ROW, TABLE)))
    assert isinstance(got, Many)
    for state in range(len(NUMBER)):
        alone = SAME[name](NUMBER[state], OTHER[state], ROW[state], TABLE[state])
        np.testing.assert_allclose(got.values[state], alone, rtol=1e-14, atol=1e-15)
        assert np.shape(alone) == got.shape


@pytest.mark.parametrize(
    ("act", "remedy"),
    [
        (lambda n: 1 if n > 0.4 else 2, r"pick\("),
        (lambda n: max(n, 0.4), r"larger\("),
        (lambda n: float(n), "NumPy's functions"),
        (lambda n: math.cos(n), "those of math"),
        (lambda n: round(n, 2), "round"),
        (lambda n: [1, 2][n], "int"),
        (lambda n: np.asarray(n, float), "np.asarray"),
        (lambda n: np.array([n, 1.0]), "np.asarray"),
        (lambda n: np.zeros(3).__iadd__(n), "write into no array"),
        (lambda n: f"{n:.2f}", r"length\("),
        (lambda n: {n: 1}, "dict"),
        (lambda n: plain_text(length(n)), "plain number"),
        (lambda n: pick(n, [0.4], ["a", "b"]).chosen, "plain number"),
    ],
)
def test_what_a_page_could_not_follow_is_refused_with_the_remedy(act, remedy):
    with pytest.raises(Unsteady, match=remedy):
        act(UNEVEN)


def test_what_all_states_share_may_be_used_as_any_number():
    even = Many(np.full(3, 0.5))
    assert float(even) == 0.5 and even > 0.4 and f"{even:.2f}" == "0.50" and {0.5: "half"}[even] == "half"
    assert not Many(np.array([0.2, 0.3])) > 0.4  # the numbers differ, the decision does not


def test_kinks_and_picks_hold_at_all_states():
    gap = larger(UNEVEN, 0.4) * 2.0 - smaller(UNEVEN, 0.3) + size_of(UNEVEN - 0.5)
    values = UNEVEN.values
    assert now(gap).values == pytest.approx(np.maximum(values, 0.4) * 2 - np.minimum(values, 0.3) + abs(values - 0.5))
    assert now(level(UNEVEN, [0.3, 0.5])).values.tolist() == [0.0, 2.0, 2.0]
    assert now(reached(UNEVEN, 0.5)).values.tolist() == [0.0, 1.0, 1.0]
    with pytest.raises(InputError, match="options 0 to 1"):
        Pick(Many(np.array([0.0, 2.0])), ("a", "b"))


def test_a_decided_number_beside_one_of_many_states_keeps_its_record():
    for made in (UNEVEN + larger(1.0, 2.0), larger(1.0, 2.0) + UNEVEN, np.minimum(UNEVEN, larger(0.4, 0.1))):
        assert isinstance(made, Decided) and now(made).shape == ()
    row = larger(UNEVEN, 0.4) * Many(np.outer(UNEVEN.values, [1.0, 2.0]))
    assert [now(one).values.tolist() for one in row] == [[0.2 * 0.4, 0.25, 0.7 * 0.7], [0.4 * 0.4, 0.5, 1.4 * 0.7]]


def _changes(count):
    """Random woods and moistures from bone dry to dripping."""
    draws = np.random.Generator(np.random.PCG64(3)).random((5, count))
    return draws[0] * 0.004, draws[1] * 0.13, draws[2] * 38.0, draws[3] * 38.0, 20.0 + 12.0 * draws[4]


def test_plain_movement_strain_runs_unchanged_on_decided_numbers_and_on_many_states():
    numbers = _changes(20_000)
    plain = movement_strain(*numbers)
    coefficient, shrinkage, start, end, saturation = map(Many, numbers)
    made = movement_strain(coefficient, shrinkage, larger(start, 0.0), larger(end, 0.0), saturation)
    assert isinstance(made, Decided) and np.abs(now(made).values - plain).max() <= 1e-15
    assert np.abs(movement_strain(coefficient, shrinkage, start, end, saturation).values - plain).max() <= 1e-15
    some = [
        float(movement_strain(a, b, larger(c, 0.0), larger(d, 0.0), e))
        for a, b, c, d, e in zip(*_changes(400), strict=True)
    ]
    assert np.abs(np.array(some) - movement_strain(*_changes(400))).max() <= 1e-15


def test_the_strains_of_a_wood_run_unchanged_on_decided_numbers_and_on_many_states():
    wood = wood_of("white oak")
    _, _, start, end, _ = _changes(20_000)
    plain = wood.axis_strains(start, end)
    for made in (wood.axis_strains(larger(Many(start), 0.0), Many(end)), wood.axis_strains(Many(start), Many(end))):
        for got, want in zip(made, plain, strict=True):
            assert np.abs(now(got).values - want).max() <= 1e-15


def test_every_step_stands_for_the_function_it_names():
    a, b = np.array([0.3, 2.0, 1.0]), np.array([0.7, 1.5, 1.0])
    for step in STEPS.values():
        if step.ufunc:
            ufunc = getattr(np, step.ufunc)
            assert np.array_equal(step.python(a, b), ufunc(a) if ufunc.nin == 1 else ufunc(a, b))
