"""The picture of setting out: the blank from above, a bar for each clearance, the screws in their holes."""

from __future__ import annotations

from collections.abc import Mapping

from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Window, Words, box
from ..picture.wood import grain_lines
from ..words.decided import Decided, larger, pick, smaller
from ..words.say import fine_length, length, say

_WIDTH, _HEIGHT = 720.0, 456.0
_LEFT, _TOP, _TALL = 20.0, 40.0, 128.0
_PX_PER_M = 680.0 / (44 * 0.0254)
_GLUE = _TOP + 72.0  # the glue line, where the holes lie too
_LONGEST_M, _SHORTEST_M = 2 * 0.0254, -0.5 * 0.0254
_BARS = Frame(268.0, 224.0, 240.0, 4 * 27.0, _SHORTEST_M, _LONGEST_M, 0.0, 1.0)
_TONES = ("stop", "watch", "fine")
_CLOSE_PX = 8500.0  # px per metre of the screws in their holes


def draw(state: Mapping, margin: float) -> Picture:
    """The whole sheet; ``state`` as the study hands it over, lengths in metres."""
    marks = [*_blank(state, margin), *_bars(state, margin), *_screws(state)]
    return Picture("Setting out: two fronts from one blank", _WIDTH, _HEIGHT, tuple(marks))


def _x(place: float) -> float:
    return _LEFT + place * _PX_PER_M


def _blank(state: Mapping, margin: float) -> list[Mark]:
    outline = box(_LEFT, _TOP, state["blank"] * _PX_PER_M, _TALL)
    marks: list[Mark] = [
        Area(outline, "wood"),
        Window(outline, tuple(grain_lines(outline, "x", 9, seed=5))),
        Line([*outline, outline[0]], "edge", 1.8),
        Line([(_LEFT, _GLUE), (_x(state["blank"]), _GLUE)], "glue", 2.0),
        Words(_LEFT + 10, _TOP + _TALL - 10, "first front", "ink", 15, "start"),
        Words(_x(state["blank"]) - 6, _TOP + _TALL - 10, "second", "ink", 15, "end"),
    ]
    for number, (place, clear) in enumerate(zip(state["dowels"], state["by_dowel"], strict=True), start=1):
        marks += _dowel(state, number, place, pick(clear, [0.0, margin], _TONES), margin)
    kerf = box(_x(state["cut"]), _TOP - 8, state["kerf"] * _PX_PER_M, _TALL + 16)
    cut = pick(smaller(state["dowels_cut"], state["holes_cut"]), [0.0, margin], _TONES)
    marks += [Area(kerf, "gap"), Line([*kerf, kerf[0]], cut, 1.6)]
    marks.append(
        Words(_x(state["cut"]), _TOP + _TALL + 24, say("cut at {cut}", cut=length(state["cut"])), cut, 15, "end")
    )
    return [*marks, *_pull(state, margin)]


def _dowel(state: Mapping, number: int, place: float, tone, margin: float) -> list[Mark]:
    wide, tall = state["dowel_size"] * _PX_PER_M, 2 * state["reach"] * _PX_PER_M
    around = margin * _PX_PER_M
    body = box(_x(place) - wide / 2, _GLUE - tall / 2, wide, tall)
    zone = box(_x(place) - wide / 2 - around, _GLUE - tall / 2, wide + 2 * around, tall)
    return [
        Area(body, tone),
        Line([*body, body[0]], "edge", 1.2),
        Line([*zone, zone[0]], tone, 1.2, "4 3"),
        Words(_x(place), _GLUE - tall / 2 - 6, f"{number}", "ink", 15, bold=number == 5),
    ]


def _pull(state: Mapping, margin: float) -> list[Mark]:
    tone = pick(smaller(state["holes_dowels"], state["holes_cut"]), [0.0, margin], _TONES)
    marks: list[Mark] = []
    for x in (_x(place) for place in state["holes"]):
        marks += [
            Line([(x, _GLUE - 14), (x, _GLUE + 14)], tone, 1.6),
            Line([(x - 9, _GLUE), (x + 9, _GLUE)], tone, 1.6),
            Circle(x, _GLUE, 4.0, tone, 1.8),
        ]
    first, last = (_x(place) for place in state["holes"])
    marks.append(Line([(first, _GLUE + 28), (last, _GLUE + 28)], "metal", 5.0))
    distance = say("{centres}", centres=length(state["holes"][1] - state["holes"][0]))
    marks.append(Words((first + last) / 2, _TOP - 12, distance, tone, 15))
    marks += [Line([(x, _TOP - 6), (x, _GLUE - 14)], "quiet", 1.0, "2 3") for x in (first, last)]
    return marks


def _bars(state: Mapping, margin: float) -> list[Mark]:
    rows = (
        ("Dowels and the cut", "dowels_cut"),
        ("Dowels and the holes", "holes_dowels"),
        ("Dowels, side by side", "dowels_apart"),
        ("Holes and the cut", "holes_cut"),
    )
    marks: list[Mark] = []
    for number, (label, name) in enumerate(rows):
        marks += _bar(label, state[name], margin, _BARS.top + 27.0 * number)
    for place, role, dash in ((0.0, "ink", ""), (margin, "today", "5 3")):
        x = _BARS.x(place)
        marks.append(Line([(x, _BARS.top - 4), (x, _BARS.top + _BARS.height)], role, 1.8, dash))
    marks.append(Words(_BARS.x(margin) + 4, _BARS.top - 9, say("margin {m}", m=length(margin)), "today", 14, "start"))
    return marks


def _bar(label: str, clear: Decided, margin: float, top: float) -> list[Mark]:
    tone = pick(clear, [0.0, margin], _TONES)
    end = _BARS.x(larger(smaller(clear, _LONGEST_M), _SHORTEST_M))
    zero = _BARS.x(0.0)
    bar = [(zero, top + 4), (end, top + 4), (end, top + 19), (zero, top + 19)]
    words = pick(clear, [0.0, margin], ["cut into", "too near", "clear"])
    return [
        Words(_BARS.left - 12, top + 17, label, "ink", 15, "end"),
        Area(bar, tone),
        Line([*bar, bar[0]], "edge", 1.0),
        Words(_BARS.left + _BARS.width + 12, top + 17, words, tone, 15, "start", bold=True),
    ]


def _screws(state: Mapping) -> list[Mark]:
    """Both holes close up; the screws pushed apart by the worst error that marks and bit allow."""
    off = (state["needs"] - state["screw"]) / 2
    tone = pick(state["hole"], [state["needs"]], ["watch", "fine"])
    needs = fine_length(state["needs"], "up")
    tight, fits = (say(f"needed: {{needs}}, {end}", needs=needs) for end in ("they may jam", "both go in"))
    marks: list[Mark] = [
        Words(20, 386, "Screws in their holes at the worst", "ink", 15, "start"),
        Words(20, 408, say("hole drilled: {hole}", hole=fine_length(state["hole"])), "ink", 15, "start"),
        Words(20, 430, pick(state["hole"], [state["needs"]], [tight, fits]), tone, 15, "start", bold=True),
    ]
    for x, side in ((568.0, -1.0), (660.0, 1.0)):
        marks += [
            Circle(x, 402.0, state["hole"] / 2 * _CLOSE_PX, "gap", filled=True),
            Circle(x, 402.0, state["hole"] / 2 * _CLOSE_PX, "edge", 2.0),
            Circle(x + side * off * _CLOSE_PX, 402.0, state["screw"] / 2 * _CLOSE_PX, "metal", filled=True),
            Circle(x + side * off * _CLOSE_PX, 402.0, state["screw"] / 2 * _CLOSE_PX, tone, 2.4),
        ]
    return marks
