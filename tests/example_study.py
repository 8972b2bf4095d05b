"""A small study with everything a study may hold: choice, spans, switch, kinks, picks, windows and sentences."""

from __future__ import annotations

import numpy as np

from woodlib.picture.scene import Area, Circle, Frame, Line, Picture, Window, Words, box
from woodlib.study import Answer, Choice, Reading, Span, Switch, study
from woodlib.words.decided import larger, pick
from woodlib.words.say import length, moisture, movement, percent, say

COEFFICIENT = {"white oak": 0.00376, "cherry": 0.00248}
SWEEP = np.linspace(0.0, 1.0, 25)


def example_answer(wood, width, dry, held):
    """Made-up but smooth: not wood data."""
    move = width * COEFFICIENT[wood] * (12.0 - 6.0 * np.tanh((dry - 40.0) / 30.0))
    gap = larger(move - 0.004, 0.0015)
    frame = Frame(60, 60, 300, 120, 0, 1, 0, 0.06)
    curve = frame.points(SWEEP, move * (0.5 - 0.5 * np.cos(2 * np.pi * SWEEP)))
    marks = [
        *frame.axes([(0, "start"), (1, "end")], [(0, "0"), (0.06, "60 mm")], "year"),
        Window(frame.outline, (Line(curve, "damp", 2.0), Circle(200, 100, 400 * width, "late-wood"))),
        Area(box(60, 250, gap * 4000.0, 14), pick(move, [0.01, 0.02], ["fine", "watch", "stop"])),
        Words(80, 240, say("gap {gap}", gap=length(gap, "up")), shown=pick(move, [0.006], [False, True])),
    ]
    if held:
        marks.append(Line(box(60, 60, 300, 120), "glue", 3.0))
    verdict = pick(move, [0.01, 0.02], ["lies quiet", say("needs {gap}", gap=length(gap, "up")), "must not be held"])
    return Answer(
        Picture("A panel over the year", 420, 300, tuple(marks)),
        say("A {wood} panel {verdict}.", wood=wood, verdict=verdict),
        (
            Reading("Movement", movement(move), verdict, pick(move, [0.01, 0.02], ["fine", "watch", "stop"])),
            Reading("Share of width", percent(100 * move / width)),
            Reading("Driest", moisture(dry * 0.2)),
        ),
        say("A panel {width} wide and its movement over a year.", width=length(width)),
        ("Made-up coefficients, for tests only.",),
    )


@study(
    "example",
    "How far does the example move?",
    [
        Choice("wood", "Species", ("white oak", "cherry"), "white oak"),
        Span("width", "Width", "length", 0.1016, 1.2192, 0.00635, 0.508),
        Span("dry", "Driest air", "humidity", 10, 60, 1, 35),
        Switch("held", "Held by glue"),
    ],
)
def example(wood, width, dry, held):
    """The study of the tests."""
    return example_answer(wood, width, dry, held)
