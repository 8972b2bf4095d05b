"""The log beside a brief: appended only, read back, and what it says of a stack and of a delivered piece."""

from __future__ import annotations

from datetime import date

import numpy as np
import pytest

from woodlib import __main__, command_line
from woodlib.brief import read_brief
from woodlib.commission.card import told
from woodlib.commission.contents import living_with_it
from woodlib.commission.judged import commission_of
from woodlib.commission.notes import add_note, drawn_stack, note_lines, notes_path, read_note, read_notes
from woodlib.commission.ready import stock_ready
from woodlib.commission.stack import days_left, stack_of
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.moisture.meter import metered_percent
from woodlib.moisture.resting import resting
from woodlib.moisture.stock import Stock
from woodlib.movement.spread import NINETY_PERCENT_HALF_WIDTH
from woodlib.picture.scene import Circle, Line


@pytest.fixture(scope="module")
def seat(tmp_path_factory):
    path = tmp_path_factory.mktemp("notes") / "seat.toml"
    path.write_bytes(data_path("briefs/reading_nook_seat.toml").read_bytes())
    return commission_of(read_brief(path))


@pytest.fixture(autouse=True)
def no_notes_yet(seat):
    notes_path(seat.brief.path).unlink(missing_ok=True)


def said_of(commission):
    return " ".join(told(words, commission.first) for words in note_lines(commission))


def note(commission, *words):
    return add_note(commission.brief.path, read_note(words))


def test_notes_are_appended_and_never_rewritten(seat):
    note(seat, "9.1%", "2026-03-02")
    path = notes_path(seat.brief.path)
    before = path.read_bytes()
    note(seat, "gap", "3/16 in", "2026-02-01")
    assert path.read_bytes().startswith(before)
    found = read_notes(seat.brief.path)
    assert [(entry.day, entry.what) for entry in found] == [(date(2026, 2, 1), "gap"), (date(2026, 3, 2), "moisture")]
    assert found[0].value == pytest.approx(0.0047625) and found[1].value == 9.1


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["9.1%", "at", "dawn"], "write a meter reading"),
        (["9.1%", "at", "400 degF"], "write a meter reading"),
        (["width", "507 mm", "at", "50 degF"], "write a meter reading"),
        (["soup"], "write a meter reading"),
        (["0.2 %"], "1 to 60 %"),
        (["9.1%", "2026-13-02"], "write it like"),
        (["width", "wide"], "width"),
        (["gap", "3"], "gap"),
        ([], "write a meter reading"),
    ],
)
def test_a_note_that_is_none_is_told_and_not_written(seat, words, said):
    with pytest.raises(InputError, match=said):
        note(seat, *words)
    assert not notes_path(seat.brief.path).exists()


def test_a_reading_in_cold_wood_is_corrected_and_kept_as_it_was_written(seat):
    note(seat, "9.1%", "at", "50 degF", "2026-03-02")
    note(seat, "9.1%", "2026-03-03")
    cold, plain = read_notes(seat.brief.path)
    assert cold.value == pytest.approx(float(metered_percent(9.1, 10.0))) and cold.text == "9.1% at 50 degF"
    assert cold.value > plain.value + 0.5 and "9.1% at 50 degF" in notes_path(seat.brief.path).read_text()


def test_a_log_that_cannot_be_read_is_told_with_its_line_and_kept(seat):
    path = notes_path(seat.brief.path)
    path.write_text("date,what,value\n2026-03-02,moisture\n")
    with pytest.raises(InputError, match="line 2: it has 2 cells"):
        note(seat, "9.1%")
    assert path.read_text().count("\n") == 2


def test_the_speed_of_a_stack_is_found_and_its_range_holds_nine_in_ten():
    """Stacks drawn from the kind's own range, four readings by a meter good to 0.5: 80 to 98 of 100 within their range."""
    rest = resting(Stock(0.025, 0.68), 20, 44, 14.0)
    times, course, home = rest.followed.days, rest.followed.mean_percent, rest.home_percent
    half = [np.interp(0.5, 1 - (course[:, k] - home) / (14 - home), times) for k in range(3)]
    spread = abs(np.log(half[0] / half[2])) / (2 * NINETY_PERCENT_HALF_WIDTH)
    draw, days = np.random.default_rng(3), np.array([0.0, 8.0, 16.0, 30.0])
    held, widths = [], []
    for _ in range(100):
        true = np.exp(spread * draw.standard_normal())
        seen = np.interp(true * days, times, course[:, 1]) + draw.normal(0, 0.5 / NINETY_PERCENT_HALF_WIDTH, 4)
        speed, ready = days_left(times, course, home, days, seen, 1.0, 0.5)
        near = 1.0 / (14.0 - home)
        truly = np.interp(1 - near, 1 - (course[:, 1] - home) / (14 - home), times) / true
        held.append((speed.low <= true <= speed.high, ready.low <= truly <= ready.high))
        widths.append(np.log(speed.high / speed.low) / (2 * NINETY_PERCENT_HALF_WIDTH))
    assert all(80 <= count <= 98 for count in np.sum(held, axis=0))
    assert np.mean(widths) < 0.6 * spread


def test_a_stack_says_when_it_is_ready(seat):
    for words in (("14%", "2026-02-01"), ("10.5%", "2026-02-20")):
        note(seat, *words)
    fast = said_of(seat)
    assert "ready about 2026-0" in fast and "times as fast" in fast
    note(seat, "8.5%", "2026-03-20")
    assert "ready." in said_of(seat)


def test_readings_are_drawn_on_the_curve(seat):
    """Each reading stands where its day and moisture are, with the meter's error; the bar below is when it is ready."""
    assert not drawn_stack(seat).blocks
    for words in (("14%", "2026-02-01"), ("12.1%", "2026-02-10"), ("10.5%", "2026-02-24")):
        note(seat, *words)
    stack = stack_of(seat, [(entry.day, entry.value) for entry in read_notes(seat.brief.path)])
    (figure,) = drawn_stack(seat).blocks
    dots = [mark for mark in figure.picture.marks if isinstance(mark, Circle) and mark.role == "today"]
    scale = (dots[2].x - dots[0].x) / 23.0
    assert dots[1].x - dots[0].x == pytest.approx(9.0 * scale) and dots[0].y < dots[1].y < dots[2].y
    assert (dots[1].y - dots[0].y) / (dots[2].y - dots[0].y) == pytest.approx(1.9 / 3.5)
    (bar,) = [mark for mark in figure.picture.marks if isinstance(mark, Line) and mark.role == "damp"]
    assert (bar.points[1][0] - bar.points[0][0]) / scale == pytest.approx(stack.ready.high - stack.ready.low)
    near = abs(float(stack.this_at(np.array([stack.ready.mid]))[0]) - stack.rest.home_percent)
    assert near == pytest.approx(1.0, abs=0.15)  # the margin of readiness
    assert "14.0 % MC on 2026-02-01" in figure.words and "10.5 % MC on 2026-02-24" in figure.words
    assert any(block.kind == "figure" for block in stock_ready(seat).blocks)


@pytest.mark.parametrize(
    "readings",
    [
        (("12%", "2026-01-01"), ("13.5%", "2026-02-01")),  # away from its rest
        (("13%", "2025-01-01"), ("12.5%", "2025-09-01"), ("12.2%", "2026-05-01")),  # still damp after a year
        (("28%", "2026-01-01"), ("22%", "2026-02-01"), ("19%", "2026-03-01")),  # five times as slow
        (("14%", "2016-01-01"), ("13.9%", "2026-01-08")),
    ],
)
def test_readings_that_fit_no_such_air_give_no_day(seat, readings):
    """They were told a day of readiness that was past, or a speed no board has."""
    for words in readings:
        note(seat, *words)
    assert "would be at" in said_of(seat) and "is ready about" not in said_of(seat)
    (figure,) = drawn_stack(seat).blocks
    assert not [mark for mark in figure.picture.marks if isinstance(mark, Line) and mark.role == "damp"]


def test_stock_that_is_too_dry_takes_up_water(seat):
    for words in (("5%", "2026-02-01"), ("5.6%", "2026-02-20")):
        note(seat, *words)
    assert "this stack takes up water" in said_of(seat) and drawn_stack(seat).blocks


@pytest.mark.parametrize(("july_mm", "said"), [(2.8, "inside"), (8.0, "outside"), (20.0, "outside")])
def test_a_delivered_piece_is_held_against_what_was_foretold(seat, july_mm, said):
    """508 mm of white oak swings 3.3 points here: 508 x 0.00365 x 3.3 = 6 mm from January to July with the range of it."""
    note(seat, "gap", "6 mm", "2027-01-10")
    assert "counted from" in said_of(seat)
    note(seat, "gap", f"{july_mm} mm", "2027-07-10")
    assert f"That is {said}" in said_of(seat)
    assert f"That is {said}" in str(living_with_it(seat))


def test_the_command_notes_and_says(seat, capsys, monkeypatch):
    monkeypatch.setattr(command_line.environment, "enter", lambda extra, arguments: None)
    assert __main__.main(["note", str(seat.brief.path), "9.1%", "2026-03-02"]) == 0
    said = capsys.readouterr().out
    assert "Noted in seat-notes.csv." in said and "9.1 % MC" in said
