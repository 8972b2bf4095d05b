"""Pictures of the ways to build: the piece from above in its driest and its dampest month, and its joint close up.

Left the driest month, right the dampest. Above, one end of the piece, with the movement drawn larger than it is by a
stated number; below, the joint true to its numbers, at the careful end of the range. A sheet never rescales itself:
:class:`Scales` is fixed for a piece before a slider moves.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from ..construction.verdict import risk_levels
from ..figures.scene import Area, Circle, Line, Mark, Picture, Window, Words, box
from ..figures.wood import grain_lines
from ..reading.decided import pick
from .ways_close_ups import CLOSE_UPS
from .ways_sheet import BOARDS, COLUMN, COLUMNS, EXAGGERATIONS, HEIGHT, PLAN_HEIGHT, PLAN_TOP, WIDTH, Scales, State


def scales_for(widest_m: float, furthest: float, border_m: float, close_m: float, longest_strain: float) -> Scales:
    """Scales for a piece: ``furthest`` the largest strain that a slider can reach, ``close_m`` what a close-up has."""
    fitting = [times for times in EXAGGERATIONS if times * furthest <= 0.4]
    times = fitting[0] if fitting else 1
    plan_px = PLAN_HEIGHT / (widest_m * (1.0 + times * furthest))
    return Scales(plan_px, times, (COLUMN - 30.0) / close_m, longest_strain, border_m)


def draw(state: State, scales: Scales, title: str) -> Picture:
    """The whole sheet."""
    marks: list[Mark] = []
    for name, left, way in (("Driest month", COLUMNS[0], "narrowing"), ("Dampest month", COLUMNS[1], "widening")):
        role = "dry" if way == "narrowing" else "damp"
        marks.append(Words(left + COLUMN / 2, 22, name, role, 17, bold=True))
        marks += _plan(state, scales, left, way)
        marks += CLOSE_UPS[state.key](state, scales, left, way)
    marks.append(Words(WIDTH / 2, 240, _caption(state.key, scales), "quiet", 14))
    marks += _verdict(state)
    return Picture(title, WIDTH, HEIGHT, tuple(marks))


def _caption(key: str, scales: Scales) -> str:
    if key == "frame_panel":
        return f"From above: movement drawn {scales.exaggeration} times its size, the line {_LINE_TIMES} times"
    return f"From above: today dashed, movement drawn {scales.exaggeration} times its size"


def _verdict(state: State) -> list[Mark]:
    words = [f"{risk.word}: {meaning}" for risk, meaning in zip(risk_levels(), _SHORT, strict=True)]
    tone = pick(state.level, [1.0, 2.0], ["fine", "watch", "stop"])
    swatch = box(COLUMNS[0], 424, 40, 22)
    return [
        Area(swatch, tone),
        Line([*swatch, swatch[0]], "edge", 1.2),
        Words(COLUMNS[0] + 50, 441, pick(state.level, [1.0, 2.0], words), "ink", 16, "start", bold=True),
    ]


_SHORT = ("the wood is free enough", "it may crack over the years", "expect a crack")


# --- the piece from above -------------------------------------------------------------------------------------------


def _plan(state: State, scales: Scales, left: float, way: str) -> list[Mark]:
    middle = PLAN_TOP + PLAN_HEIGHT / 2
    numbers, px = state.numbers, scales.plan_px
    today = numbers.get("whole_width", numbers["width"]) * px
    change = numbers[f"{way}_mid"] * px * scales.exaggeration * (-1.0 if way == "narrowing" else 1.0)
    border = min(scales.border_m * px, 80.0)
    end = left + COLUMN - 6.0 - (border if state.key not in ("battens", "buttons", "same_grain_border") else 0.0)
    return _PLANS[state.key](state, _Plan(left, end, middle, today, change, border, px, way))


@dataclass(frozen=True)
class _Plan:
    """A plan in px: a panel from ``left``, broken off, to ``end``, about ``middle``, ``today`` wide, to change."""

    left: float
    end: float
    middle: float
    today: float
    change: float
    border: float
    px: float
    way: str

    @property
    def now(self) -> float:
        return self.today + self.change

    def top(self, height: float) -> float:
        return self.middle - 0.5 * height


def _panel(plan: _Plan, width: float) -> list[Mark]:
    return [*_face(plan, width), *_broken_off(plan, width)]


def _face(plan: _Plan, width: float) -> list[Mark]:
    """The face of the panel, glued from boards; fewer lines than a picture of wood alone, to keep a page small."""
    outline = box(plan.left, plan.top(width), plan.end - plan.left, width)
    return [
        Area(outline, "wood"),
        Window(outline, tuple(_boards(plan, width))),
        Line([*outline, outline[0]], "edge", 1.8),
    ]


def _boards(plan: _Plan, width: float) -> list[Mark]:
    marks: list[Mark] = []
    for k in range(BOARDS):
        strip = box(plan.left, plan.top(width) + width * k / BOARDS, plan.end - plan.left, width / BOARDS)
        marks += grain_lines(strip, "x", 3, seed=k + 1)
        marks += [Line([strip[0], strip[1]], "edge", 0.8)] if k else []
    return marks


def _broken_off(plan: _Plan, width: float) -> list[Mark]:
    """A wavy edge of paper: the piece goes on to the left."""
    steps = np.linspace(-0.04, 1.04, 15)
    wave = [(plan.left + 5.0 + 4.0 * float(np.sin(9.0 * s)), plan.top(width) + width * float(s)) for s in steps]
    outside = [(plan.left - 3.0, plan.top(width) + width * 1.04), (plan.left - 3.0, plan.top(width) - width * 0.04)]
    return [Area([*wave, *outside], "paper"), Line(wave, "quiet", 1.2)]


def _today_lines(plan: _Plan) -> list[Mark]:
    """Where the edges are today."""
    today = plan.today
    return [Line([(plan.left, y), (plan.end, y)], "today", 1.4, "5 4") for y in (plan.top(today), plan.top(-today))]


def _cross_piece(plan: _Plan, height: float, role: str = "border-wood") -> list[Mark]:
    """A piece across the end: its grain runs across the panel's."""
    outline = box(plan.end, plan.top(height), plan.border, height)
    return [
        Area(outline, role),
        Window(outline, tuple(grain_lines(outline, "y", 4, seed=31))),
        Line([*outline, outline[0]], "edge", 1.8),
    ]


def _breadboard_plan(state: State, plan: _Plan) -> list[Mark]:
    pins = [
        Circle(
            plan.end + plan.border * 0.4,
            plan.middle + side * state.numbers["outer_distance"] * plan.px,
            3.5,
            "metal",
            filled=True,
        )
        for side in (-1.0, 0.0, 1.0)
    ]
    return [*_panel(plan, plan.now), *_today_lines(plan), *_cross_piece(plan, plan.today), *pins]


def _glued_plan(state: State, plan: _Plan) -> list[Mark]:
    """The border holds the end at today's width; the curve between is drawn by eye."""
    share = state.numbers["held_share"]
    steps = np.linspace(0.0, 1.0, 25)
    free = [1.0 - share * float(s * s * (3.0 - 2.0 * s)) for s in np.clip((steps - 0.3) / 0.7, 0.0, 1.0)]
    xs = [plan.left + (plan.end - plan.left) * float(s) for s in steps]
    half = [0.5 * (plan.today + plan.change * part) for part in free]
    outline = [(x, plan.middle - h) for x, h in zip(xs, half, strict=True)]
    outline += [(x, plan.middle + h) for x, h in zip(xs[::-1], half[::-1], strict=True)]
    zone = box(plan.end - 46.0, plan.top(plan.today), 46.0, plan.today)
    strained = pick(state.level, [1.0, 2.0], [False, True, True])
    tone = pick(state.level, [1.0, 2.0], ["fine", "watch", "stop"])
    cracks = [
        Line(_crack(plan, place), "stop", 2.6, shown=pick(state.level, [2.0], [False, plan.way == "narrowing"]))
        for place in (-0.22, 0.05, 0.3)
    ]
    return [
        Area(outline, "wood"),
        Window(outline, tuple(_boards(plan, plan.now))),
        Window(outline, (Area(zone, tone, shown=strained),)),
        Line([*outline, outline[0]], "edge", 1.8),
        *_broken_off(plan, plan.now),
        *_today_lines(plan),
        *_cross_piece(plan, plan.today),
        Line([(plan.end, plan.top(plan.today)), (plan.end, plan.top(-plan.today))], "glue", 3.5),
        *cracks,
    ]


def _crack(plan: _Plan, place: float) -> list[tuple[float, float]]:
    y = plan.middle + plan.today * place
    return [(plan.end, y), (plan.end - 34, y + 2), (plan.end - 58, y - 1.5), (plan.end - 92, y + 1)]


_LINE_TIMES = 4  # the line beside a framed panel, beside which the exaggerated panel would find no room


def _frame_plan(state: State, plan: _Plan) -> list[Mark]:
    """The frame moves by its stiles alone; the line between panel and stile opens and closes."""
    numbers, sign = state.numbers, -1.0 if plan.way == "narrowing" else 1.0
    moved = sign * numbers[f"{plan.way}_mid"]
    whole = plan.today + plan.change * 2.0 * numbers["stile"] / numbers["width"]
    opening = plan.today - 2.0 * plan.border
    line = _LINE_TIMES * plan.px * (state.cuts["line between shoulder and stile today, each side"] - 0.5 * moved)
    gap = box(plan.left, plan.top(opening), plan.end - plan.left, opening)
    marks = [Area(gap, "gap"), *_face(plan, opening - 2.0 * line)]
    stile = 0.5 * (whole - opening)
    for side in (-1.0, 1.0):
        edge = plan.middle + side * opening * 0.5
        outline = box(plan.left, edge if side > 0 else edge - stile, plan.end + plan.border - plan.left, stile)
        marks += [
            Area(outline, "border-wood"),
            Window(outline, tuple(grain_lines(outline, "x", 3, seed=41))),
            Line([*outline, outline[0]], "edge", 1.8),
        ]
    marks += _cross_piece(plan, opening)
    beyond = [Line([(plan.left, y), (plan.end + plan.border, y)], "today", 1.4, "5 4")
              for y in (plan.top(plan.today), plan.top(-plan.today))]  # fmt: skip
    return [*marks, *_broken_off(plan, whole), *beyond]


def _batten_plan(state: State, plan: _Plan) -> list[Mark]:
    """Battens below, seen through the panel; the screws go with the panel."""
    outer = state.numbers["outer_distance"] * plan.px
    outline = box(plan.left, plan.top(plan.now), plan.end - plan.left, plan.now)
    marks: list[Mark] = []
    for x in (plan.end - 60.0, plan.end - 180.0):
        batten = box(x, plan.top(2.0 * outer + 22.0), 26.0, 2.0 * outer + 22.0)
        marks.append(Line([*batten, batten[0]], "edge", 1.4, "6 4"))
        screws = [plan.middle + side * outer * plan.now / plan.today for side in (-1.0, 0.0, 1.0)]
        marks += [Circle(x + 13.0, y, 3.5, "metal", filled=True) for y in screws]
    return [*_panel(plan, plan.now), *_today_lines(plan), Window(outline, tuple(marks))]


def _button_plan(state: State, plan: _Plan) -> list[Mark]:
    base = plan.today - 34.0
    outline = [
        (plan.left, plan.top(base)),
        (plan.end - 22.0, plan.top(base)),
        (plan.end - 22.0, plan.top(-base)),
        (plan.left, plan.top(-base)),
    ]
    return [*_panel(plan, plan.now), *_today_lines(plan), Line(outline, "edge", 1.4, "6 4")]


def _same_grain_plan(state: State, plan: _Plan) -> list[Mark]:
    """The strips widen and narrow with the panel, in the same proportion; together they are the whole width."""
    grown = plan.now / plan.today
    strip = plan.border * grown
    inside = plan.now - 2.0 * strip
    marks = _face(plan, inside)
    for side in (-1.0, 1.0):
        edge = plan.middle + side * inside * 0.5
        outline = box(plan.left, edge if side > 0 else edge - strip, plan.end - plan.left, strip)
        marks += [
            Area(outline, "border-wood"),
            Window(outline, tuple(grain_lines(outline, "x", 3, seed=43))),
            Line([*outline, outline[0]], "edge", 1.8),
        ]
    return [*marks, *_broken_off(plan, plan.now), *_today_lines(plan)]


_PLANS: dict[str, Callable[[State, _Plan], list[Mark]]] = {
    "glued_border": _glued_plan,
    "breadboard": _breadboard_plan,
    "frame_panel": _frame_plan,
    "battens": _batten_plan,
    "buttons": _button_plan,
    "same_grain_border": _same_grain_plan,
}
