"""Pictures as data: scales, axes, measured lengths, and the order of marks."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.picture.scene import (
    Area,
    Circle,
    Frame,
    Line,
    Picture,
    Window,
    Words,
    box,
    dimension_line,
    flatten_points,
    walk,
)
from woodlib.words.decided import Decided, larger
from woodlib.words.say import length, plain_text, say

numbers = st.floats(-1000, 1000)
FRAME = Frame(left=60, top=20, width=600, height=300, x_low=0, x_high=12, y_low=-2, y_high=6)


def test_a_frame_puts_its_ends_on_its_edges():
    assert (FRAME.x(0), FRAME.x(12)) == (60, 660)
    assert (FRAME.y(-2), FRAME.y(6)) == (320, 20)  # data grow upward, the sheet downward
    assert FRAME.outline == [(60, 20), (660, 20), (660, 320), (60, 320)]


@given(numbers, numbers, st.floats(0, 1))
def test_a_frame_is_straight(first, second, share):
    between = first + share * (second - first)
    for scale in (FRAME.x, FRAME.y):
        assert scale(between) == pytest.approx(scale(first) + share * (scale(second) - scale(first)), abs=1e-6)


def test_a_frame_takes_arrays_and_decided_numbers():
    points = FRAME.points([0, 6, 12], [0, 1, 2])
    assert points.shape == (3, 2) and points[1].tolist() == [FRAME.x(6), FRAME.y(1)]
    place = FRAME.x(larger(3.0, 4.0))
    assert isinstance(place, Decided) and float(place) == FRAME.x(4.0)


def test_axes_say_what_they_show():
    marks = FRAME.axes([(0, "Jan"), (6, "Jul")], [(0, "0"), (4, "1/2 in")], "month", "wider by")
    words = {mark.text: mark for mark in marks if isinstance(mark, Words)}
    assert set(words) == {"Jan", "Jul", "0", "1/2 in", "month", "wider by"}
    assert words["Jul"].x == FRAME.x(6) and words["Jul"].y > 320
    grid = [mark for mark in marks if isinstance(mark, Line) and mark.role == "grid"]
    assert [line.points[0][1] for line in grid] == [FRAME.y(0), FRAME.y(4)]
    assert all((line.points[0][0], line.points[1][0]) == (60, 660) for line in grid)


def test_a_dimension_line_measures_from_end_to_end_and_carries_its_number():
    marks = dimension_line((10.0, 50.0), (110.0, 50.0), say("{w}", w=length(0.508)))
    lines, words = marks[:3], marks[3]
    assert lines[0].points == [(10.0, 50.0), (110.0, 50.0)]
    assert all(bar.points[0][0] == bar.points[1][0] for bar in lines[1:])  # bars stand across the line
    assert plain_text(words.text) == "20 in (508 mm)" and words.x == 60.0 and words.y < 50


def test_an_upright_dimension_line_has_its_number_beside_it():
    marks = dimension_line((10.0, 50.0), (10.0, 150.0), "x", offset=8.0)
    assert all(bar.points[0][1] == bar.points[1][1] for bar in marks[1:3])
    assert (marks[3].x, marks[3].anchor) == (18.0, "start")


@given(numbers, numbers, st.floats(0.1, 500), st.floats(0.1, 500))
def test_a_box_has_four_upright_corners(x, y, width, height):
    corners = np.array(box(x, y, width, height))
    assert corners.shape == (4, 2)
    assert np.ptp(corners[:, 0]) == pytest.approx(width) and np.ptp(corners[:, 1]) == pytest.approx(height)


def test_flattened_points_keep_decided_numbers():
    place = larger(1.0, 2.0)
    flat = flatten_points([(place, 3)])
    assert flat[0] is place and flat[1] == 3.0
    assert flatten_points(np.array([[1, 2], [3, 4]])) == [1, 2, 3, 4]


def test_walk_meets_every_mark_in_drawing_order():
    inner, ring = Line([(0, 0), (1, 1)]), Circle(1, 2, 3)
    window = Window(box(0, 0, 5, 5), (ring, inner))
    picture = Picture("three marks", 10, 10, (Area(box(0, 0, 1, 1)), window, Words(1, 1, "end")))
    assert [type(mark) for mark in walk(picture.marks)] == [Area, Window, Circle, Line, Words]
