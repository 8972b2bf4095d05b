"""The joints of the ways to build, close up and true to their numbers, at the careful end of the range."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np

from ..construction.verdict import risk_levels
from ..figures.scene import Area, Circle, Line, Mark, Window, Words, box, dimension_line
from ..figures.wood import grain_lines
from ..reading.decided import larger
from ..reading.say import Said, length, say, strain
from ..restraint.assumptions import assumption
from .ways_sheet import CLOSE_TOP, COLUMN, Number, Quantities, Scales, State


def close_up_room(key: str, numbers: Quantities, cuts: Mapping[str, Number]) -> float:
    """Metres that the close-up of a way must be able to show at these numbers."""
    if key in ("breadboard", "battens"):
        reach = float(cuts["outer slots, length"])
        return reach + abs(numbers["outer_narrowing"]) + abs(numbers["outer_widening"])
    if key == "frame_panel":
        return 2.6 * float(cuts["groove in the stiles, depth"])
    if key == "buttons":
        return 2.4 * float(cuts["button tongue, length"])
    if key == "same_grain_border":
        return 2.6 * float(cuts["space to leave beside each long edge"])
    return 0.0


def _shift(numbers: Quantities, name: str, way: str) -> float:
    """How far the panel has moved outward from today, careful end, metres."""
    return numbers[f"{name}_{way}"] * (1.0 if way == "widening" else -1.0)


def _slotted(left_end: Number, right_end: Number, middle: float, half: float) -> list[Mark]:
    """A slot with round ends from ``left_end`` to ``right_end``, px."""
    turn = np.linspace(0.0, np.pi, 9)
    right = [(right_end - half + half * float(np.sin(a)), middle - half * float(np.cos(a))) for a in turn]
    far = [(left_end + half - half * float(np.sin(a)), middle + half * float(np.cos(a))) for a in turn]
    return [Area([*right, *far], "gap"), Line([*right, *far, right[0]], "edge", 1.6)]


def _breadboard_close(state: State, scales: Scales, left: float, way: str) -> list[Mark]:
    """The pin stays, the tongue with its slot slides."""
    moved = _shift(state.numbers, "outer", way)
    return _slot_close(state, scales, left, slot_moves=moved, pin_moves=0.0, pin=state.numbers["pin"], turned=True)


def _batten_close(state: State, scales: Scales, left: float, way: str) -> list[Mark]:
    """The slot stays in the batten, the screw goes with the panel."""
    moved = _shift(state.numbers, "outer", way)
    return _slot_close(state, scales, left, slot_moves=0.0, pin_moves=moved, pin=state.numbers["screw"], turned=False)


def _slot_close(
    state: State, scales: Scales, left: float, slot_moves: float, pin_moves: float, pin: float, turned: bool
) -> list[Mark]:
    px, middle, y = scales.close_px, left + COLUMN / 2, CLOSE_TOP + 78.0
    name = "pin" if turned else "screw"
    outward, inward = (
        state.cuts[f"outer slots, {side} from the {name}'s centre"] for side in ("outward", "inward")
    )
    low, high = middle + (slot_moves - inward) * px, middle + (outward + slot_moves) * px
    half = min(0.5 * pin * px + 1.5, 26.0)
    strip = box(left + 2, y - 42, COLUMN - 4, 84)
    reaches = say("{inward} + {outward}", inward=length(inward, "up"), outward=length(outward, "up"))
    return [
        Area(strip, "wood"),
        Window(strip, tuple(grain_lines(strip, "y" if turned else "x", 7, seed=5))),
        Line([*strip, strip[0]], "edge", 1.4),
        *_slotted(low, high, y, half),
        Circle(middle + pin_moves * px, y, half - 1.5, "metal", filled=True),
        Circle(middle + pin_moves * px, y, half - 1.5, "edge", 1.4),
        *dimension_line((low, y - 50), (high, y - 50), reaches, size=15),
        Words(left + 4, y + 62, f"outer {name}", "quiet", 14, "start"),
        Words(left + COLUMN - 4, y + 62, "outward \u2192", "quiet", 14, "end"),
    ]


def _frame_close(state: State, scales: Scales, left: float, way: str) -> list[Mark]:
    """The tongue of the panel in its groove; the shoulder stops short of the stile by the line."""
    numbers, px, y = state.numbers, scales.close_px, CLOSE_TOP + 62.0
    depth, cover = state.cuts["groove in the stiles, depth"], numbers["cover"]
    shrinks, grows = 0.5 * larger(numbers["panel_shrink"], 0.0), 0.5 * larger(numbers["panel_growth"], 0.0)
    line = state.cuts["line between shoulder and stile today, each side"]
    moved = -0.5 * numbers["panel_shrink"] if way == "narrowing" else 0.5 * numbers["panel_growth"]
    deep = shrinks + cover + moved
    face = left + COLUMN - 30.0 - (COLUMN - 30.0) * 0.5
    stile = box(face, y - 56, COLUMN - 2 - (face - left), 112)
    groove = box(face, y - 22, depth * px, 44)
    shoulder, tip = face - (line - moved) * px, face + deep * px
    panel = [
        (left + 2, y - 54),
        (shoulder, y - 54),
        (shoulder, y - 20),
        (tip, y - 20),
        (tip, y + 20),
        (shoulder, y + 20),
        (shoulder, y + 54),
        (left + 2, y + 54),
    ]
    at_most = line + shrinks if way == "narrowing" else line - grows
    return [
        Area(stile, "border-wood"),
        Line([*stile, stile[0]], "edge", 1.6),
        Area(groove, "gap"),
        Line([groove[0], groove[1], groove[2], groove[3]], "edge", 1.4),
        Area(panel, "wood"),
        Line([*panel, panel[0]], "edge", 1.6),
        Words(left + 10, y + 6, "panel", "ink", 15, "start"),
        Words(left + COLUMN - 10, y - 36, "frame", "ink", 15, "end"),
        Words(left + 4, y + 73, _frame_words(way, deep, depth - deep), "ink", 15, "start"),
        Words(left + 4, y + 95, say("line beside it {line}", line=length(at_most, _SAFE[way])), "ink", 15,
              "start"),
    ]  # fmt: skip


_SAFE = {"narrowing": "up", "widening": "down"}


def _frame_words(way: str, deep: Number, spare: Number) -> Said:
    if way == "narrowing":
        return say("{deep} deep", deep=length(deep, "down"))
    return say("{spare} to spare", spare=length(spare, "down"))


def _button_close(state: State, scales: Scales, left: float, way: str) -> list[Mark]:
    numbers, px, y = state.numbers, scales.close_px, CLOSE_TOP + 62.0
    moved = _shift(numbers, "edge", way)
    gap, tongue = state.cuts["gap between button shoulder and rail"], state.cuts["button tongue, length"]
    depth = state.cuts["groove for the buttons, depth"]
    rail = left + COLUMN * 0.52
    shoulder = rail + (moved - gap) * px
    tip = rail + (moved - gap + tongue) * px
    body = [
        (left + 30, y - 16),
        (shoulder, y - 16),
        (shoulder, y + 4),
        (tip, y + 4),
        (tip, y + 22),
        (shoulder, y + 22),
        (shoulder, y + 40),
        (left + 30, y + 40),
    ]
    leg = box(rail, y - 16, left + COLUMN - 2 - rail, 72)
    groove = box(rail, y + 2, depth * px, 22)
    top = box(left + 2, y - 52, COLUMN - 4, 34)
    return [
        Area(top, "wood"),
        Line([*top, top[0]], "edge", 1.6),
        Area(leg, "wood-end"),
        Line([*leg, leg[0]], "edge", 1.6),
        Area(groove, "gap"),
        Line(groove, "edge", 1.4),
        Area(body, "border-wood"),
        Line([*body, body[0]], "edge", 1.6),
        Words(left + 10, y - 29, "top", "ink", 15, "start"),
        Words(left + 40, y + 18, "button", "ink", 15, "start"),
        Words(left + COLUMN - 8, y + 48, "rail", "ink", 15, "end"),
        Words(left + 4, y + 80, _button_words(way, tongue - gap + moved, gap - moved), "ink", 15, "start"),
    ]


def _button_words(way: str, hold: Number, gap: Number) -> Said:
    if way == "narrowing":
        return say("holds {hold} deep", hold=length(hold, "down"))
    return say("{gap} to spare", gap=length(gap, "down"))


def _same_grain_close(state: State, scales: Scales, left: float, way: str) -> list[Mark]:
    numbers, px, y = state.numbers, scales.close_px, CLOSE_TOP + 66.0
    gap, moved = state.cuts["space to leave beside each long edge"], _shift(numbers, "edge", way)
    wall = left + COLUMN - 40.0
    edge = wall + (moved - gap) * px
    strip = box(left + 2, y - 42, edge - left - 2, 84)
    stone = box(wall, y - 56, 38, 112)
    return [
        Area(strip, "border-wood"),
        Window(strip, tuple(grain_lines(box(left + 2, y - 42, COLUMN - 50, 84), "y", 7, seed=9))),
        Line([*strip, strip[0]], "edge", 1.6),
        Area(stone, "ghost"),
        Line([*stone, stone[0]], "edge", 1.4),
        Words(left + 10, y + 5, "edge of the piece", "ink", 15, "start"),
        Words(left + 4, y + 78, say("{gap} left", gap=length(gap - moved, "down")), "ink", 15, "start"),
    ]


def _glued_close(state: State, scales: Scales, left: float, way: str) -> list[Mark]:
    """A gauge of what is held back: pull in the driest month, push in the dampest."""
    pulling = way == "narrowing"
    likely, most = state.pull if pulling else state.push
    edges = [risk.from_strain for risk in risk_levels()[1:]] if pulling else [assumption("compression_set_strain").low]
    roles = ("fine", "watch", "stop") if pulling else ("fine", "watch")
    px, x, y = (COLUMN - 24.0) / scales.longest_strain, left + 8.0, CLOSE_TOP + 74.0
    marks: list[Mark] = []
    for low, high, role in zip([0.0, *edges], [*edges, scales.longest_strain], roles, strict=True):
        marks.append(Area(box(x + low * px, y, (high - low) * px, 24), role))
    outline = box(x, y, scales.longest_strain * px, 24)
    marks.append(Line([*outline, outline[0]], "edge", 1.4))
    for edge, anchor in zip(edges, ("end", "start"), strict=False):  # the two edges lie close together
        marks.append(
            Words(
                x + edge * px + (10.0 if anchor == "end" else 0.0),
                y + 42,
                say("{edge}", edge=strain(edge)),
                "quiet",
                14,
                anchor,
            )
        )
    marks.append(Line([(x + likely * px, y - 10), (x + most * px, y - 10)], "ink", 5.0))
    marks.append(Circle(x + likely * px, y - 10, 6.0, "ink", filled=True))
    says = "pulled apart" if pulling else "squeezed"
    marks.append(Words(left + 4, y - 46, says, "ink", 15, "start", bold=True))
    marks.append(
        Words(
            left + 4,
            y - 26,
            say("{likely}, at most {most}", likely=strain(likely), most=strain(most)),
            "ink",
            15,
            "start",
        )
    )
    return marks


CLOSE_UPS: dict[str, Callable[[State, Scales, float, str], list[Mark]]] = {
    "glued_border": _glued_close,
    "breadboard": _breadboard_close,
    "frame_panel": _frame_close,
    "battens": _batten_close,
    "buttons": _button_close,
    "same_grain_border": _same_grain_close,
}
