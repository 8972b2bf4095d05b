"""A way to build in its two months: the driest on the left, the dampest on the right, from above and in section.

The one drawing for verdicts and sliders. A sheet never rescales itself: :class:`Sheet` is fixed before a slider moves.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Window, Words, box, flatten_points, placed, walk
from ..words.decided import Pick, smaller
from ..words.say import say, strain
from .drawn import BOTTOM, TOP, Drawn, Scale, scale_for
from .judge import NOT_KNOWN, Judgement
from .piece import Piece
from .risk import risk_levels
from .verdict import Verdict

WIDTH, HEIGHT = 720.0, 558.0
COLUMNS, COLUMN = (10.0, 374.0), 336.0
PLAN_TOP, PLAN_HEIGHT = 34.0, 178.0
JOINT_TOP, JOINT_HEIGHT = 262.0, 214.0
MONTHS = ("driest", "dampest")
_SHORT = ("the wood is free enough", "it may crack over the years", "a real danger of cracks")
_GAUGE = Frame(100.0, 526.0, 420.0, 10.0, 0.0, 0.018, 0.0, 1.0)

Fit = tuple[float, float, float]
State = tuple[Judgement, Mapping[str, float]]
"""A judgement, and the sizes of its piece as drawings take them."""


@dataclass(frozen=True)
class Sheet:
    """What stays put while sliders move: the scale of a way's drawing, and where plan and joint stand in a column."""

    scale: Scale
    plan: Fit
    joint: Fit


def measures_of(piece: Piece) -> dict[str, float]:
    """The sizes of a piece as the drawings take them, metres."""
    names = ("width", "length", "thickness", "border_width", "border_thickness")
    return {name: getattr(piece, f"{name}_m") for name in names}


def usual_scale(judged: Judgement, piece: Mapping[str, float]) -> Scale:
    """A scale that holds this state."""
    numbers = judged.numbers
    furthest = max(abs(float(numbers[f"{towards}_mid"])) / numbers["width"] for towards in ("narrowing", "widening"))
    if judged.way.round:
        return scale_for(piece["width"], furthest, 1.6 * piece["width"] + 0.02)
    tallest = piece["thickness"] + piece["border_thickness"]
    section = max(2.0 * piece["border_width"], 2.4 * tallest, 0.06)
    travel = max(abs(float(numbers[f"{towards}_high"])) for towards in ("narrowing", "widening"))
    return scale_for(piece["width"], furthest, section + 2.0 * travel, 0.03)


def sheet_for(states: Sequence[State]) -> Sheet:
    """The sheet on which every one of some states of a way has room."""
    scales = [usual_scale(*state) for state in states]
    flatter = PLAN_HEIGHT / (BOTTOM - TOP)
    scale = Scale(
        flatter * min(s.plan_px for s in scales), min(s.times for s in scales), min(s.section_px for s in scales)
    )
    drawn = [Drawn(*state, scale, month) for state in states for month in MONTHS]
    plan = [mark for d in drawn for mark in d.way.plan(d)]
    joint = [mark for d in drawn for mark in d.way.joint(d)]
    return Sheet(scale, _fit(plan, PLAN_TOP, PLAN_HEIGHT), _fit(joint, JOINT_TOP, JOINT_HEIGHT))


def _fit(marks: list[Mark], top: float, height: float) -> Fit:
    """How large, and where, marks fill their room in a column that begins at 0."""
    xs, ys = zip(*_corners(marks), strict=True)
    times = min((COLUMN - 6.0) / (max(xs) - min(xs)), height / (max(ys) - min(ys)), 1.05)
    return times, 3.0 - min(xs) * times, top + 0.5 * (height - (max(ys) - min(ys)) * times) - min(ys) * times


def _corners(marks: Sequence[Mark]) -> Iterable[tuple[float, float]]:
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


def draw(sheet: Sheet, state: State, title: str) -> Picture:
    """The whole sheet."""
    judged = state[0]
    marks: list[Mark] = []
    for month, role, left in zip(MONTHS, ("dry", "damp"), COLUMNS, strict=True):
        marks.append(Words(left + COLUMN / 2, 22, f"{month.capitalize()} month", role, 17, bold=True))
        drawn = Drawn(*state, sheet.scale, month)
        for part, (times, right, down) in ((judged.way.plan, sheet.plan), (judged.way.joint, sheet.joint)):
            marks += placed(part(drawn), times, left + right, down)
    below = (
        "hardly anything moves outside"
        if judged.way.still_outside
        else f"today dashed, movement drawn {sheet.scale.times} times its size"
    )
    notes = f"Above: {below}.", "Below: the joint with the most movement to be ready for, true to size."
    for number, note in enumerate(notes):
        marks.append(Words(WIDTH / 2, PLAN_TOP + PLAN_HEIGHT + 19 + 19 * number, note, "quiet", 14))
    return Picture(title, WIDTH, HEIGHT, (*marks, *_risk(judged)))


def draw_verdict(verdict: Verdict, piece: Piece) -> Picture:
    """The drawing of a verdict."""
    state = verdict.judged, measures_of(piece)
    return draw(sheet_for([state]), state, verdict.way.title)


def _risk(judged: Judgement) -> list[Mark]:
    """The step of risk; for what is held, also where its stretch stands between the steps."""
    words = tuple(f"{risk.word}: {meaning}" for risk, meaning in zip(risk_levels(), _SHORT, strict=True))
    swatch = box(COLUMNS[0], 494, 40, 22)
    return [
        Area(swatch, judged.tone),
        Line([*swatch, swatch[0]], "edge", 1.2),
        Words(COLUMNS[0] + 50, 511, judged.of_risk(words, NOT_KNOWN), "ink", 16, "start", bold=True),
        *(_gauge(judged, judged.tone) if judged.way.holds else ()),
    ]


def _gauge(judged: Judgement, tone: Pick) -> list[Mark]:
    """The most the wood is stretched, on a scale with the steps of risk."""
    end = _GAUGE.x(smaller(judged.pull[2], _GAUGE.x_high))
    bar = box(_GAUGE.left, _GAUGE.top, end - _GAUGE.left, _GAUGE.height)
    marks: list[Mark] = [Area(bar, tone), Line([*_GAUGE.outline, _GAUGE.outline[0]], "edge", 1.2)]
    for risk in risk_levels()[1:]:
        x = _GAUGE.x(risk.from_strain)
        marks.append(Line([(x, _GAUGE.top - 4), (x, _GAUGE.top + _GAUGE.height + 4)], "ink", 1.6))
        marks.append(Words(x, _GAUGE.top + 26, say("{limit}", limit=strain(risk.from_strain)), "quiet", 14))
    marks.append(Words(_GAUGE.left - 8, _GAUGE.top + 11, "stretch", "quiet", 14, "end"))
    return marks
