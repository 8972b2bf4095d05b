"""The readings of a stack drawn on its resting curve: the usual course with its range, this stack's own, and when it is ready."""

from __future__ import annotations

from datetime import date

import numpy as np

from ..air.year import MONTH_NAMES
from ..moisture.rates import readiness_limit
from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Window, Words, box
from ..units import write
from .stack import Stack

_LEFT, _TOP, _WIDTH, _HEIGHT = 52.0, 52.0, 640.0, 260.0
_STEPS = (1, 2, 5, 7, 14, 28, 56, 91, 182, 364, 728)  # days between two dates of the scale
_MOST_DATES = 6
_LONGEST_DRAWN = 3650.0


def drawn(stack: Stack) -> Picture | None:
    """The drawing; None where the kit works out no course for the stack."""
    if stack.rest is None:
        return None
    frame = _frame(stack)
    days = np.linspace(0.0, frame.x_high, 121)
    slow, usual, fast = stack.usual_at(days).T
    home, margin = stack.rest.home_percent, readiness_limit("margin_percent")
    curves: list[Mark] = [
        Area(_band(frame, home - margin, home + margin), "wood-end"),
        Area(np.concatenate([frame.points(days, slow), frame.points(days, fast)[::-1]]), "range"),
        Line(frame.points(days, usual), "quiet", 1.8, "6 4"),
        Line([(frame.left, frame.y(home)), (frame.left + _WIDTH, frame.y(home))], "ink", 1.2, "2 4"),
    ]
    if stack.speed is not None:
        curves.append(Line(frame.points(days, stack.this_at(days)), "damp", 2.6))
    return Picture(
        "The stack by its readings",
        720,
        430,
        (
            *_scales(stack, frame),
            Window(frame.outline, tuple(curves)),
            *_readings(stack, frame),
            *_legend(stack, frame),
        ),
    )


def in_words(stack: Stack) -> str:
    """What the drawing shows, for whoever does not see it."""
    readings = ", ".join(
        f"{write(value, 'moisture')} on {stack.day(after)}"
        for after, value in zip(stack.days, stack.readings, strict=True)
    )
    return f"Readings: {readings}. The dashed line is the usual course of such boards, in its range. {stack.words}"


def _frame(stack: Stack) -> Frame:
    assert stack.rest is not None
    longest = max(stack.days[-1], 7.0, 0.0 if stack.ready is None else min(stack.ready.high, _LONGEST_DRAWN))
    error = stack.error_percent
    values = [*(stack.readings - error), *(stack.readings + error), stack.rest.home_percent]
    low, high = np.floor(min(values) - 1.0), np.ceil(max(values) + 0.5)
    return Frame(_LEFT, _TOP, _WIDTH, _HEIGHT, x_low=0.0, x_high=1.06 * longest, y_low=low, y_high=high)


def _band(frame: Frame, low: float, high: float) -> list:
    bottom, top = max(low, frame.y_low), min(high, frame.y_high)
    return box(frame.left, frame.y(top), _WIDTH, frame.y(bottom) - frame.y(top))


def _scales(stack: Stack, frame: Frame) -> list[Mark]:
    step = next((step for step in _STEPS if frame.x_high / step <= _MOST_DATES), _STEPS[-1])
    name = _month_and_year if frame.x_high > 300.0 else _short
    dates = [(float(after), name(stack.day(after))) for after in np.arange(0.0, frame.x_high, step)]
    points = 1 if frame.y_high - frame.y_low <= 8 else 2
    moistures = np.arange(np.ceil(frame.y_low / points) * points, frame.y_high + 0.1, points)
    return frame.axes(dates, [(float(mc), f"{mc:.0f}") for mc in moistures], "", "mean moisture, %", 14)


def _short(day: date) -> str:
    return f"{day.day} {MONTH_NAMES[day.month - 1][:3]}"


def _month_and_year(day: date) -> str:
    return f"{MONTH_NAMES[day.month - 1][:3]} {day.year}"


def _readings(stack: Stack, frame: Frame) -> list[Mark]:
    """Each reading with what the meter may be off."""
    marks: list[Mark] = []
    for after, value in zip(stack.days.tolist(), stack.readings.tolist(), strict=True):
        x = frame.x(after)
        ends = [(x, frame.y(value + side * stack.error_percent)) for side in (-1.0, 1.0)]
        marks += [Line(ends, "today", 2.0), Circle(x, frame.y(value), 5.0, "today", filled=True)]
    if stack.ready is None:
        return marks
    low, mid, high = (frame.x(min(day, frame.x_high)) for day in stack.ready)
    level = frame.top + frame.height - 9
    return [
        *marks,
        Line([(low, level), (high, level)], "damp", 4.0),
        Circle(mid, level, 5.5, "damp", filled=True),
        Words(mid, level - 11, "ready", "damp", 14, bold=True),
    ]


def _legend(stack: Stack, frame: Frame) -> list[Mark]:
    level = frame.top + frame.height + 52
    told = [
        ("range", "usual for such boards, in its range"),
        ("today", f"your readings, give or take {write(stack.error_percent, 'percent')}"),
        ("wood-end", f"at rest, within {write(readiness_limit('margin_percent'), 'percent')}"),
    ]
    if stack.speed is not None:
        told.append(("damp", "this stack, and when it is ready"))
    marks: list[Mark] = []
    for place, (role, words) in enumerate(told):
        left, top = frame.left + 330.0 * (place % 2), level + 26.0 * (place // 2)
        marks += [Area(box(left, top - 11, 22, 12), role), Words(left + 30, top, words, "ink", 14, "start")]
    return marks
