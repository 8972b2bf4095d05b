"""The series beside the lessons: finite, told with their differences, drawn where the numbers are."""

from __future__ import annotations

import re

import numpy as np
import pytest

from woodlib.errors import InputError
from woodlib.lesson.measured import SERIES, held_against
from woodlib.lesson.refuted import IDEAS, refuted
from woodlib.lesson.self_check import self_check
from woodlib.lesson.series import series_picture
from woodlib.picture.scene import Circle, Words


@pytest.mark.parametrize("lesson", SERIES)
class TestEverySeries:
    def test_points_are_finite_labelled_and_have_a_source(self, lesson):
        series = held_against(lesson)
        assert len(series.labels) == len(set(series.labels)) == len(series.measured) == len(series.predicted) >= 3
        assert (
            np.all(np.isfinite([series.measured, series.predicted])) and series.source and series.note and series.unit
        )

    def test_the_differences_that_are_told_are_those_of_the_numbers_that_are_told(self, lesson):
        for line in str(held_against(lesson)).splitlines()[1 : len(held_against(lesson).labels) + 1]:
            *_, was, said, off = (
                float(number) for number in re.findall(r"[-+]?\d+(?:\.\d+)?", line.partition(": ")[2])
            )
            assert off == pytest.approx(said - was, abs=1e-9), line

    def test_each_point_is_drawn_inside_the_sheet(self, lesson):
        series = held_against(lesson)
        picture = series_picture(series)
        dots = [mark for mark in picture.marks if isinstance(mark, Circle)][2:]
        assert len(dots) == 2 * len(series.labels)
        assert all(0 < mark.x < picture.width and 60 < mark.y < 250 for mark in dots)
        assert {mark.text for mark in picture.marks if isinstance(mark, Words)} >= set(series.labels)


def test_a_series_or_an_idea_that_is_not_there_is_named():
    with pytest.raises(InputError, match="no series for 'air'"):
        held_against("air")
    with pytest.raises(InputError, match="no wrong idea for 'air'"):
        refuted("air")


@pytest.mark.parametrize("lesson", IDEAS)
def test_every_wrong_idea_has_its_picture(lesson):
    bundle = refuted(lesson)._repr_mimebundle_()
    assert "data:image/svg+xml" in bundle["text/html"] and bundle["text/plain"].count("\n") == 2


def test_the_self_check_can_fail(monkeypatch):
    assert self_check().startswith("Ready. ")
    monkeypatch.setattr("woodlib.lesson.self_check.PRINTED_MM", 1.9)
    assert self_check().startswith("Not ready: ") and "get the kit again" in self_check()
