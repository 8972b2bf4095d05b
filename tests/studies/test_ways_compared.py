"""All ways of a brief side by side: as the verdicts judge them, for every kind of piece, and frozen whole."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from woodlib.commission import chosen_brief, commission_of
from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.studies.sliding_piece import sliding_piece_of
from woodlib.studies.ways_compared import compared, ways_compared
from woodlib.ways.registry import kinds, way_of, ways_for
from woodlib.words.decided import chosen

DEMOS = ("reading_nook_seat.toml", "serving_board.toml")


@pytest.mark.parametrize("name", DEMOS)
def test_at_the_briefs_own_air_a_held_way_is_judged_as_its_verdict_is(name):
    commission = commission_of(chosen_brief(name))
    study = commission.compared()
    shown = {reading.label: chosen(reading.tone) for reading in study.answer().readings if reading.tone}
    assert list(shown) == [verdict.way.title for verdict in commission.verdicts]
    for verdict in commission.verdicts:
        if way_of(verdict.key).holds:
            assert shown[verdict.way.title] == ("fine", "watch", "stop")[verdict.level]


def test_a_wider_piece_or_a_wilder_house_never_helps():
    sliding = commission_of(chosen_brief(DEMOS[0])).sliding
    for calm, wild in (((0.4, 30.0, 55.0), (0.6, 30.0, 55.0)), ((0.5, 32.0, 50.0), (0.5, 15.0, 75.0))):
        for before, after in zip(*(compared(sliding.at(*air), width) for width, *air in (calm, wild)), strict=True):
            assert float(after.level) >= float(before.level), before.way


@pytest.mark.parametrize("kind", kinds())
def test_every_kind_of_piece_is_compared(kind):
    commission = commission_of(chosen_brief(DEMOS[0]))
    size = 0.03 if kind == "turned part" else 0.2
    piece = replace(commission.piece, width_m=size, border_width_m=0.05)
    ways = tuple(way.key for way in ways_for(kind))
    study = ways_compared(kind, sliding_piece_of(commission.brief, piece, commission.months, commission.doubts, ways))
    for corner in study.corners():
        answer = study.function(**corner)
        assert all(math.isfinite(leaf) for leaf in record(answer).leaves.ravel())
        assert len(answer.readings) == len(ways) + 1 and "{" not in "".join(answer.lines())
        for mark in answer.picture.marks:
            for x, y in getattr(mark, "points", ()):
                assert -1 <= float(x) <= answer.picture.width and 0 <= float(y) <= answer.picture.height


def test_it_freezes_and_says_what_python_says():
    checked = freeze_checked(commission_of(chosen_brief(DEMOS[0])).compared())
    assert checked.worst_px <= 0.5
