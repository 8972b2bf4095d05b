"""The panels of the lessons, moved as a learner moves them: what a lesson says of a slider is what the slider does."""

from __future__ import annotations

import re

import pytest
from lesson.path import BOOKS, code

from woodlib.lesson.solutions import find_exercise
from woodlib.live import show
from woodlib.studies import STUDIES, find_study


def test_every_study_stands_in_some_lesson():
    shown = {
        key for book in BOOKS.values() for source in code(book) for key in re.findall(r'find_study\("([\w-]+)"', source)
    }
    assert shown == set(STUDIES)


def test_start_here():
    panel = show(find_study("moves-and-pulls"))
    wide = panel.answer_now.lines()
    narrow = panel.set(width="10 in").lines()
    assert "7/16 in" in wide[1] and "7/32 in" in narrow[1] and "1.37 %" in wide[2] and "1.38 %" in narrow[2]
    free = panel.set(glued=False).lines()
    assert free[1] == narrow[1] and free[2].startswith("It pulls: nothing") and not panel.error


def test_reading_a_board():
    panel = show(find_study("reading-a-board"))
    flat, slant, upright = (panel.set(rings=angle).lines() for angle in (0, 45, 90))
    assert "9/32 in" in flat[1] and "7/32 in" in slant[1] and "5/32 in" in upright[1]
    assert "a diamond" in slant[3] and "stays square" in flat[3] and "stays square" in upright[3]


def test_the_air_of_a_house():
    panel, months = show(find_study("moisture-from-air")), show(find_study("moisture-by-month"))
    dry_room = panel.set(outdoor_c="14 degF", gain="some").lines("metric")[1]
    assert dry_room.startswith("Air in the room: 20 % RH") and ">20 % RH<" in panel.picture, dry_room
    assert "from 8.0 % MC" in months.set(winter="42 %").lines()[0] and not months.error


def test_how_far_it_moves():
    panel = show(find_study("panel-movement"), driest="25 %", dampest="62 %")
    assert "about 7/32 in, could be 5/32 in to 5/16 in" in panel.set(ring_angle=90).lines("inch")[1]
    assert "9.5 mm" in panel.set(species="black cherry", width="26 in", ring_angle=0).lines()[1] and not panel.error
    assert ">26 in (660 mm) wide<" in panel.picture and "black cherry" in panel.readings


def test_is_it_ready_and_what_a_finish_buys():
    panel = show(find_study("a-week-in-the-shop"))
    on_stickers = panel.set(bottom="bare").lines()
    assert "about 28 days, could be 10 days to 47 days" in on_stickers[2] and ">10.3 % MC<" in panel.picture, (
        on_stickers
    )
    assert "about 71 days" in panel.set(top="varnish", bottom="varnish").lines()[2] and not panel.error


def test_laying_boards():
    panel = show(find_study("laying-boards"))
    seat = panel.set(width="4", dries=3).lines("metric")
    assert "out of flat by 2.5 mm" in seat[3] and "not to be felt" in seat[4] and "whole" in seat[5], seat
    assert "crowned" in panel.set(dries=-4).alt_text() and not panel.error
    assert "hollow on the pith side" in panel.set(width="8", pith_below="3-1/2 in").lines()[1]


def test_crossing_the_grain():
    panel = show(find_study("crossing-the-grain"), driest=33, dampest=54)
    grips = [panel.set(border=b, thickness=t).lines()[2][28:32] for b, t in (("4 in", "7/8 in"), ("2 in", "1/2 in"))]
    assert grips == ["77.9", "68.6"]
    assert "density" in panel.set(wood="sugar maple").lines()[4] and "nothing" in panel.set(joint="slotted").lines()[2]


def test_ways_out_and_metal():
    ways, metal = (
        show(find_study("ways-out"), driest=33, dampest=54),
        show(find_study("hardware-across-the-grain"), driest=33, dampest=54),
    )
    rows = ways.set(width="40 in").lines("inch")
    held = [ways.set(width=width).lines()[2].split(" held")[0] for width in ("20 in", "10 in")]
    assert any("up to 40-7/8 in" in row for row in rows) and held[0] == held[1]
    thin, thick = (metal.set(shank=shank).lines("metric") for shank in ("4 mm", "6 mm"))
    assert thin[2].split(" - ")[0] == thick[2].split(" - ")[0] and thin[1] != thick[1] and not metal.error


def test_setting_out():
    blank = show(find_study("setting-out"))
    assert "saw goes into" in blank.set(dowel="34 in").lines()[1] and "keeps" in blank.set(dowel="33-1/2 in").lines()[1]
    assert "which is enough" in blank.set(rule="0.5 mm", hole="6 mm").lines()[7] and not blank.error


@pytest.mark.parametrize(
    ("key", "wrong", "part", "right"),
    [
        ("the-air-of-a-house/garage-workshop", "90%", "outdoors", "38 %"),
        ("how-far-it-moves/which-number-to-cut", "1/4 in", "Not yet. That serves", "3/8 in"),
        ("is-it-ready/thick-leg", "56 days", "near four times", "16 weeks"),
        ("laying-boards/ripped-in-two", "1/16 in", "square", "1/32"),
        ("crossing-the-grain/full-grip", "1056 MPa", "modulus", "11.6 MPa"),
        ("drawers-doors-backs-and-metal/hinge-strip", "12 mm", "tight at one end", "9 mm"),
        ("setting-out/last-dowel", "31-3/4 in", "half its thickness", "31-9/16 in"),
        ("start-here/which-slider", "Wood", "both readings", "Width"),
    ],
)
def test_a_learner_is_told_what_was_wrong_and_what_is_right(key, wrong, part, right):
    exercise = find_exercise(key)
    assert part in exercise.judge(wrong).sentence and exercise.judge(right).right is True
