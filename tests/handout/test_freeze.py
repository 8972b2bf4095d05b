"""Frozen tables: right at states nobody sampled, and refused by name where they cannot be right."""

from __future__ import annotations

import copy
import json
import math

import numpy as np
import pytest
from example_study import COEFFICIENT, example, example_answer

from woodlib.errors import InputError
from woodlib.handout.asking import FreezeError, ask_alone, ask_at_once
from woodlib.handout.freeze import freeze
from woodlib.handout.record import record
from woodlib.handout.replay import check, freeze_checked, random_state, read
from woodlib.handout.sampling import coefficients, leja_points, plan
from woodlib.picture.scene import Frame, Line, Picture, Words
from woodlib.study import Answer, Choice, Reading, Span, Switch, study
from woodlib.words.decided import pick
from woodlib.words.say import length, say


@pytest.fixture(scope="module")
def frozen():
    return freeze(example)


def test_two_thousand_held_out_states_agree(frozen):
    checked = check(frozen)
    assert checked.states == 2000 and checked.texts > 20_000
    assert checked.worst_px < 0.15
    assert "2000 others compared" in checked.report()


def read_at(frozen, state):
    """What the table says at one state."""
    case = frozen.plan.cases.index({entry.key: state[entry.key] for entry in frozen.plan.switches})
    places = [2 * (state[span.key] - span.low) / (span.high - span.low) - 1 for span in frozen.plan.spans]
    return read(frozen.payload, case, np.array([places]))


def test_smooth_numbers_reach_their_tolerance(frozen):
    noise = np.random.Generator(np.random.PCG64(9))
    for _ in range(40):
        state = random_state(example, noise)
        leaves = read_at(frozen, state).leaves[0]
        move = state["width"] * COEFFICIENT[state["wood"]] * (12.0 - 6.0 * np.tanh((state["dry"] - 40.0) / 30.0))
        assert np.abs(leaves - move).min() < 1e-9


def test_all_states_at_once_are_the_states_one_by_one():
    noise = np.random.Generator(np.random.PCG64(4))
    for case in plan(example).cases:
        states = [random_state(example, noise) | case for _ in range(6)]
        at_once = ask_at_once(example, case, np.array([[state["width"], state["dry"]] for state in states]))
        for number, state in enumerate(states):
            alone = ask_alone(example, state)
            assert alone.is_made_like(at_once) and alone.words == at_once.words
            np.testing.assert_allclose(at_once.leaves[number], alone.leaves[0], rtol=1e-13)


def test_a_wrong_table_does_not_pass_the_check(frozen):
    broken = copy.deepcopy(frozen)
    for shape in broken.payload["shapes"]:
        for case in shape["exact"]["cases"]:
            for column in case:
                if column:
                    column[1] += 40_000
    with pytest.raises(FreezeError, match="the page would say"):
        check(broken)


def test_a_bent_picture_does_not_pass_the_check(frozen):
    broken = copy.deepcopy(frozen)
    for shape in broken.payload["shapes"]:
        shape["mean"] = [number + 3.0 for number in shape["mean"]]
    with pytest.raises(FreezeError, match="a line is off by"):
        check(broken)


def test_sliders_that_enter_in_the_first_order_cost_two_states(frozen):
    assert frozen.plan.counts[0] == 2


def test_far_fewer_states_than_a_full_grid():
    def two(first, second):
        curve = np.exp(first) / (1.5 + np.sin(second))
        return _answer([Line([(0, 0), (20 * curve, 10)])], say("{x}", x=length(curve)))

    inputs = (Span("first", "First", "length", 0, 1, 0.1, 0.5), Span("second", "Second", "length", 0, 1, 0.1, 0.5))
    layout = freeze_checked(study("trial", "?", inputs)(two)).frozen.plan
    assert min(layout.counts) > 5 and len(layout.orders) < 0.7 * np.prod(layout.counts)


def test_a_slider_that_multiplies_hides_nothing_of_what_the_others_do():
    # The width by itself moves the end far more than the others do, and still carries all that they do together.
    def three(width, first, second):
        return _answer([Line([(0, 0), (500 * width * (1 + 0.1 * np.exp(first - second)), 10)])])

    inputs = (WIDTH, *(Span(key, key, "length", 0, 1, 0.02, 0.5) for key in ("first", "second")))
    assert check(freeze(study("trial", "?", inputs)(three))).worst_px < 0.3


def test_the_table_is_plain_data_and_always_the_same(frozen):
    text = json.dumps(frozen.payload)
    assert json.dumps(freeze(example).payload) == text


def test_recordings_differ_in_leaves_alone_while_sliders_move():
    first, second = record(example.answer(width=0.3)), record(example.answer(width=0.9))
    assert first.signature() == second.signature() and first.words == second.words
    assert (first.leaves != second.leaves).any()


def test_coefficients_of_a_polynomial_are_found():
    points = np.cos(np.pi * (np.arange(8) + 0.5) / 8)
    values = np.column_stack([np.polynomial.chebyshev.chebval(points, [1.0, -2.0, 0.5]), points])
    found = coefficients(values)
    assert np.allclose(found[:3, 0], [1.0, -2.0, 0.5], atol=1e-14) and np.allclose(found[3:], 0, atol=1e-14)


def test_leja_points_are_distinct_and_inside():
    points = leja_points(33)
    assert len(set(points.tolist())) == 33 and np.abs(points).max() == 1.0


WIDTH = Span("width", "Width", "length", 0.1, 1.2, 0.05, 0.5)


def _study(function, *inputs):
    return study("trial", "A trial?", inputs or (WIDTH,))(function)


def _answer(marks=(), headline="x"):
    return Answer(Picture("t", 400, 200, tuple(marks)), headline, (Reading("r", "v"),))


def _kinked(width):
    return _answer([Line([(0, 0), (100 * np.maximum(width, 0.6), 10)])])


def _halved(width):
    return _answer([Line([(0, 0), (100 * max(width, 0.6), 10)])])


def _turned(width):
    return _answer([Line([(0, 0), (100 * math.cos(width), 10)])])


def _by_type(width):
    return _answer([Line([(0, 0), (100 * width + isinstance(width, float), 10)])])


def _written(width):
    points = np.zeros((2, 2))
    points[1, 0] = width
    return _answer([Line(points)])


def _hidden(width):
    return _answer([Line([(0, 0), (100 * width, 10)])] * (2 if np.size(width) and isinstance(width, float) else 1))


def _rescaled(width):
    frame = Frame(0, 0, 100, 100, 0, 1, 0, width)
    ticks = np.arange(0, width, 0.2)
    return _answer(frame.axes([], [(float(t), f"{t:.1f}") for t in ticks]))


_NOISE = np.random.default_rng(5)


def _random(width):
    return _answer([Line([(0, 0), (100 * width + _NOISE.random(), 10)])])


def _spelt(width):
    return _answer(headline=f"The panel is {width * 1000:.0f} mm wide.")


def _infinite(width):
    return _answer([Line([(0, 0), (np.where(width > 0.9, np.inf, 1.0), 10)])])


def _branching(width):
    return _answer([Words(10, 10, "wide" if width > 0.6 else "narrow")])


def _jumping(width):
    return _answer(headline=say("{x}", x=length(np.where(width < 0.7, 0.1, 0.2))))


@pytest.mark.parametrize(
    ("function", "fragment"),
    [
        (_kinked, "a kink or a jump in a coordinate of its picture as Width moves, near"),
        (_halved, "write the kink with larger(...) or smaller(...)"),
        (_halved, "It is Width that moves, near 24-9/16 in (624 mm) (test_freeze.py, line"),
        (_turned, "NumPy's functions in place of float(...), int(...), round(...), np.asarray(...) and those of math"),
        (_rescaled, "It is Width that moves"),
        (_random, "leave nothing to chance"),
        (_by_type, "gives other numbers"),
        (_hidden, "draws other marks, points or words at Width"),
        (_written, "writing into an array"),
        (_spelt, "write numbers with length(...)"),
        (_infinite, "not finite at Width"),
        (_branching, "words, roles and what is shown with pick(...)"),
        (_jumping, "a number it prints or decides by as Width moves, near"),
    ],
)
def test_what_a_page_cannot_repeat_is_refused_with_the_remedy(function, fragment):
    with pytest.raises(FreezeError) as caught:
        freeze_checked(_study(function))
    assert fragment in str(caught.value) and "'trial'" in str(caught.value)


def test_too_many_choices_are_refused():
    options = tuple(f"wood {k}" for k in range(60))
    many = study("trial", "?", (Choice("a", "A", options, "wood 0"), Choice("b", "B", options[:10], "wood 0")))(
        lambda a, b: _answer()
    )
    with pytest.raises(FreezeError, match="600 combinations of choices"):
        plan(many)


def test_kinks_kept_in_sight_are_welcome():
    def fine(width):
        return _answer([Words(10, 10, pick(width, [0.6], ["narrow", "wide"]))], pick(width, [0.6], ["narrow", "wide"]))

    assert freeze_checked(_study(fine)).worst_px <= 0.5


def test_choices_and_switches_may_change_the_structure():
    def shaped(wood, held, width):
        marks = [Line([(0, 0), (width * 100, k)]) for k in range(3 if wood == "oak" else 5)]
        return _answer(marks, say("{w}: {x}", w=wood, x=length(width)) if held else "loose")

    inputs = (Choice("wood", "Wood", ("oak", "ash"), "oak"), Switch("held", "Held"), WIDTH)
    checked = freeze_checked(study("trial", "?", inputs)(shaped))
    assert len(checked.frozen.payload["shapes"]) == 4


def test_a_study_without_spans_is_a_table_of_its_cases():
    checked = freeze_checked(
        study("trial", "?", (Switch("held", "Held"),))(lambda held: example_answer("cherry", 0.5, 30, held))
    )
    assert checked.frozen.plan.size == 2


def test_images_and_figures_of_a_plotting_library_are_refused():
    with pytest.raises(FreezeError, match="an image cannot slide"):
        freeze_checked(_study(lambda width: _answer([np.zeros((4, 4, 3))])))
    with pytest.raises(FreezeError, match="must return an Answer"):
        freeze_checked(_study(lambda width: object()))


def test_an_input_outside_its_span_is_refused():
    with pytest.raises(FreezeError, match="No such width"):
        freeze_checked(_study(_refusing))


def _refusing(width):
    if width > 1.0:
        raise InputError("No such width; choose a smaller one.")
    return _answer()
