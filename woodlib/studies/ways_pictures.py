"""A way to build in its two months: the driest on the left, the dampest on the right, from above and in section.

The drawings are those of :mod:`woodlib.picture.ways`; here two of them share one sheet, and below them stands the
verdict. A sheet never rescales itself: :class:`Sheet` is fixed for a way before a slider moves.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import product

from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Window, Words, box, flatten_points, placed, walk
from ..picture.ways.drawing import DRAWINGS, measures_of, usual_scale
from ..picture.ways.sheet import BOTTOM, TOP, Drawn, Scale
from ..ways.risk import risk_levels
from ..words.decided import Pick, pick, smaller
from ..words.say import say, strain
from .ways_bench import Bench, State

WIDTH, HEIGHT = 720.0, 558.0
COLUMNS, COLUMN = (10.0, 374.0), 336.0
PLAN_TOP, PLAN_HEIGHT = 34.0, 178.0
JOINT_TOP, JOINT_HEIGHT = 262.0, 214.0
_LETTER = 7.4  # usual width of a letter at the size of a label, px

Fit = tuple[float, float, float]


@dataclass(frozen=True)
class Sheet:
    """What stays put while sliders move: the scale of a way's drawing, and where plan and joint stand in a column."""

    scale: Scale
    plan: Fit
    joint: Fit


def sheet_for(bench: Bench, way: str) -> Sheet:
    """The sheet on which every state that the sliders reach has room."""
    dry, damp = bench.travels.driest, bench.travels.dampest
    airs = (dry.lowest_percent, dry.highest_percent), (damp.lowest_percent, damp.highest_percent)
    widths = bench.lowest_width_m, bench.highest_width_m
    states = [(width, bench.state(way, width, *air)) for width, *air in product(widths, *airs)]
    scales = [
        usual_scale(state.way, state.numbers, measures_of(replace(bench.piece, width_m=width)))
        for width, state in states
    ]
    flatter = PLAN_HEIGHT / (BOTTOM - TOP)
    scale = Scale(
        flatter * min(s.plan_px for s in scales), min(s.times for s in scales), min(s.section_px for s in scales)
    )
    reached: tuple[list[Mark], list[Mark]] = [], []
    for (width, state), month in product(states, ("driest", "dampest")):
        drawn = _drawn(bench, scale, state, width, month)
        for marks, part in zip(reached, DRAWINGS[way], strict=True):
            marks += part(drawn)
    plan, joint = (
        _fit(marks, top, height)
        for marks, top, height in zip(reached, (PLAN_TOP, JOINT_TOP), (PLAN_HEIGHT, JOINT_HEIGHT), strict=True)
    )
    return Sheet(scale, plan, joint)


def _drawn(bench: Bench, scale: Scale, state: State, width: float, month: str) -> Drawn:
    measures = measures_of(bench.piece) | {"width": width}
    return Drawn(state.way, state.numbers, state.sizes, measures, scale, month)


def _fit(marks: list[Mark], top: float, height: float) -> Fit:
    """How large, and where, marks fill their room in a column that begins at 0."""
    xs, ys = zip(*_corners(marks), strict=True)
    times = min((COLUMN - 6.0) / (max(xs) - min(xs)), height / (max(ys) - min(ys)), 1.05)
    return times, 3.0 - min(xs) * times, top + 0.5 * (height - (max(ys) - min(ys)) * times) - min(ys) * times


def _corners(marks: Iterable[Mark]) -> Iterable[tuple[float, float]]:
    """Where marks reach to; what a window cuts off does not count."""
    inside = {id(inner) for mark in walk(marks) if isinstance(mark, Window) for inner in walk(mark.marks)}
    for mark in walk(marks):
        if id(mark) in inside:
            continue
        if isinstance(mark, Circle):
            x, y, r = float(mark.x), float(mark.y), float(mark.radius)
            yield from ((x - r, y - r), (x + r, y + r))
        elif isinstance(mark, Words):
            # Their letters keep their size, so only the place counts in full; labels are short or stand at an edge.
            yield float(mark.x), float(mark.y) - 14.0
        else:
            values = [float(value) for value in flatten_points(mark.points)]
            yield from zip(values[::2], values[1::2], strict=True)


def draw(bench: Bench, sheet: Sheet, state: State, width: float, title: str) -> Picture:
    """The whole sheet."""
    marks: list[Mark] = []
    for name, month, left in (("Driest month", "driest", COLUMNS[0]), ("Dampest month", "dampest", COLUMNS[1])):
        marks.append(Words(left + COLUMN / 2, 22, name, "dry" if month == "driest" else "damp", 17, bold=True))
        drawn = _drawn(bench, sheet.scale, state, width, month)
        for part, (times, right, down) in zip(DRAWINGS[state.way.key], (sheet.plan, sheet.joint), strict=True):
            marks += placed(part(drawn), times, left + right, down)
    below = (
        "hardly anything moves outside"
        if state.way.still_outside
        else (f"today dashed, movement drawn {sheet.scale.times} times its size")
    )
    notes = f"Above: {below}.", "Below: the joint with the most movement to be ready for, true to size."
    for number, note in enumerate(notes):
        marks.append(Words(WIDTH / 2, PLAN_TOP + PLAN_HEIGHT + 19 + 19 * number, note, "quiet", 14))
    return Picture(title, WIDTH, HEIGHT, (*marks, *_verdict(state)))


def _verdict(state: State) -> list[Mark]:
    """The step of risk; for what is held, also where its stretch stands between the steps."""
    words = [f"{risk.word}: {meaning}" for risk, meaning in zip(risk_levels(), _SHORT, strict=True)]
    tone = pick(state.level, [1.0, 2.0], ["fine", "watch", "stop"])
    swatch = box(COLUMNS[0], 494, 40, 22)
    return [
        Area(swatch, tone),
        Line([*swatch, swatch[0]], "edge", 1.2),
        Words(COLUMNS[0] + 50, 511, pick(state.level, [1.0, 2.0], words), "ink", 16, "start", bold=True),
        *(_gauge(state, tone) if state.numbers["held_share"] else ()),
    ]


_GAUGE = Frame(100.0, 526.0, 420.0, 10.0, 0.0, 0.018, 0.0, 1.0)


def _gauge(state: State, tone: Pick) -> list[Mark]:
    """The most the wood is stretched, on a scale with the steps of risk."""
    end = _GAUGE.x(smaller(state.pull[1], _GAUGE.x_high))
    bar = box(_GAUGE.left, _GAUGE.top, end - _GAUGE.left, _GAUGE.height)
    marks: list[Mark] = [Area(bar, tone), Line([*_GAUGE.outline, _GAUGE.outline[0]], "edge", 1.2)]
    for risk in risk_levels()[1:]:
        x = _GAUGE.x(risk.from_strain)
        marks.append(Line([(x, _GAUGE.top - 4), (x, _GAUGE.top + _GAUGE.height + 4)], "ink", 1.6))
        marks.append(Words(x, _GAUGE.top + 26, say("{limit}", limit=strain(risk.from_strain)), "quiet", 14))
    marks.append(Words(_GAUGE.left - 8, _GAUGE.top + 11, "stretch", "quiet", 14, "end"))
    return marks


_SHORT = ("the wood is free enough", "it may crack over the years", "a real danger of cracks")
