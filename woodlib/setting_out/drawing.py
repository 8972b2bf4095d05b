"""Shop drawings from the same numbers as the lists: the blank with cuts and dowels, the finished piece with holes.

Drawn to one scale that fits the sheet; the picture is data (``figures.scene``) and is written as SVG or PDF.
"""

from __future__ import annotations

import io
from fractions import Fraction
from os import PathLike
from pathlib import Path

from ..figures.scene import Area, Circle, Line, Mark, Picture, Words, box, dimension_line
from ..figures.wood import grain_lines
from .lists import check_plan, size_text, written
from .plan import SetHardware, SettingOut

WIDTH, HEIGHT = 720.0, 520.0
LEFT, TOP, ROOM_ALONG, ROOM_ACROSS = 92.0, 78.0, 560.0, 236.0


def blank_drawing(plan: SettingOut) -> Picture:
    """The blank seen from the show face: waste, kerfs, numbered pieces, glue lines and dowels."""
    check_plan(plan)
    length, width = plan.blank.length.total_m, plan.blank.width.total_m
    scale = _scale(length, width)
    marks: list[Mark] = [Area(box(LEFT, TOP, float(length) * scale, float(width) * scale), "grid")]
    marks += _pieces(plan, scale)
    marks += _glue_lines(plan, scale)
    marks += _along(plan, scale)
    marks += _upright(LEFT - 14, TOP, width, scale, plan.first)
    title = f"{plan.title}: the blank"
    notes = (
        plan.blank.text(plan.first),
        "Number the pieces on the show face before the first cut.",
        _scale_text(scale),
    )
    return Picture(title, WIDTH, HEIGHT, (*_head(title, notes), *marks))


def shop_drawing(plan: SettingOut) -> Picture:
    """The finished panel in plan and in section, with its holes and their distances."""
    check_plan(plan)
    long, wide, thick = plan.panel_m
    scale = _scale(long, wide)
    marks: list[Mark] = []
    outline = box(LEFT, TOP, float(long) * scale, float(wide) * scale)
    marks += [Area(outline, "wood"), *grain_lines(outline, "x", 9, seed=3), Line([*outline, outline[0]], "edge", 1.8)]
    marks += _holes(plan, scale)
    bottom = TOP + float(wide) * scale
    marks += dimension_line(
        (LEFT, TOP - 14), (LEFT + float(long) * scale, TOP - 14), size_text(long, plan.first), size=14
    )
    marks += _upright(LEFT - 14, TOP, wide, scale, plan.first)
    marks.append(Words(LEFT + 8, bottom - 8, "front edge", "quiet", 14, "start"))
    marks += _middles(plan, scale, bottom + 70)
    marks += _section(plan, scale, bottom + 96)
    title = f"{plan.title}: the panel"
    return Picture(title, WIDTH, HEIGHT, (*_head(title, (_holes_text(plan), _scale_text(scale))), *marks))


def drawing_in_words(plan: SettingOut) -> str:
    """Both drawings as a text that carries their numbers.

    >>> from woodlib.commission import chosen_brief
    >>> from woodlib.setting_out.plan import set_out
    >>> drawing_in_words(set_out(chosen_brief(), ())).split(". ")[0]
    'Blank 50-1/2 in (1283 mm) long, 20-3/4 in (528 mm) wide, at least 15/16 in (24 mm) thick'
    """
    check_plan(plan)
    sentences = [f"Blank {plan.blank.text(plan.first)}", f"Along it: {', '.join(_numbered(plan))}"]
    if plan.joints:
        sentences.append(f"{len(plan.joints)} glue lines with {len(plan.joints[0].wanted_m)} dowels each")
    long, wide, thick = (size_text(size, plan.first) for size in plan.panel_m)
    sentences.append(f"Panel {long} by {wide}, {thick} thick")
    for item in plan.hardware:
        at = " and ".join(size_text(place, plan.first) for place in item.pair.holes_m)
        sentences.append(f"{item.pair.name}: holes at {at} {item.runs}, {size_text(item.inset_m, plan.first)} in")
    return ". ".join(sentences) + "."


def write_svg(picture: Picture, description: str, path: str | PathLike) -> Path:
    """Write a drawing as SVG and return the path."""
    from ..figures.svg import svg

    return written(svg(picture, description).encode(), path, ".svg")


def write_pdf(picture: Picture, path: str | PathLike) -> Path:
    """Write a drawing as PDF, 7.5 in wide on paper, and return the path."""
    from ..figures.printed import figure

    buffer = io.BytesIO()
    figure(picture).savefig(buffer, format="pdf", metadata={"Title": picture.title, "CreationDate": None})
    return written(buffer.getvalue(), path, ".pdf")


def _scale(long: Fraction, wide: Fraction) -> float:
    """Pixels per metre at which the plan fits its room."""
    return min(ROOM_ALONG / float(long), ROOM_ACROSS / float(wide))


def _scale_text(scale: float) -> str:
    """The scale on paper, where the sheet prints at 96 px an inch."""
    return f"Drawn at 1 to {96 / 0.0254 / scale:.1f} where the sheet is 7-1/2 in (190 mm) wide; do not measure off it."


def _head(title: str, notes: tuple[str, ...]) -> list[Mark]:
    marks: list[Mark] = [Words(LEFT - 72, 26, title, "ink", 18, "start", bold=True)]
    for number, note in enumerate(note for note in notes if note):
        marks.append(
            Words(LEFT - 72, HEIGHT - 14 - 20 * (len([n for n in notes if n]) - 1 - number), note, "quiet", 14, "start")
        )
    return marks


def _pieces(plan: SettingOut, scale: float) -> list[Mark]:
    marks: list[Mark] = []
    low, high = plan.blank.width.span(1)
    top, tall = TOP + float(low) * scale, float(high - low) * scale
    for part, begins, ends in plan.blank.length.spans():
        if part.kind != "piece":
            continue
        outline = box(LEFT + float(begins) * scale, top, float(ends - begins) * scale, tall)
        role = "wood" if part.name == "panel" else "border-wood"
        marks += [
            Area(outline, role),
            *grain_lines(outline, "x", 7, seed=part.number),
            Line([*outline, outline[0]], "edge", 1.4),
        ]
        middle = LEFT + float(begins + ends) / 2 * scale
        marks.append(Circle(middle, top + 18, 13, "paper", filled=True))
        marks.append(Words(middle, top + 23.5, str(part.number), "ink", 16, bold=True))
    return marks


def _glue_lines(plan: SettingOut, scale: float) -> list[Mark]:
    marks: list[Mark] = []
    if plan.boards is None:
        return marks
    right = LEFT + float(plan.blank.length.total_m) * scale
    for at, joint in zip(plan.boards.joints_m, plan.joints, strict=True):
        y = TOP + float(at) * scale
        marks.append(Line([(LEFT, y), (right, y)], "glue", 1.2, dash="6 3"))
        role = "stop" if joint.places_m is None else "ink"
        for place in joint.places_m or joint.wanted_m:
            x, reach = LEFT + float(place) * scale, max(4.0, float(joint.joint.reach_m) * scale)
            marks.append(Line([(x, y - reach), (x, y + reach)], role, max(2.0, float(joint.joint.size_m) * scale)))
    return marks


def _along(plan: SettingOut, scale: float) -> list[Mark]:
    """The pieces along the blank measured above it, the whole below it; narrow pieces carry their size to one side."""
    marks: list[Mark] = []
    y = TOP - 14
    for part, begins, ends in plan.blank.length.spans():
        if part.kind != "piece":
            continue
        x0, x1 = LEFT + float(begins) * scale, LEFT + float(ends) * scale
        text = size_text(part.size_m, plan.first)
        if x1 - x0 >= 120:
            marks += dimension_line((x0, y), (x1, y), text, size=14)
        else:
            marks += dimension_line((x0, y), (x1, y), "", size=14)
            anchor = "start" if begins < plan.blank.length.total_m / 2 else "end"
            marks.append(
                Words(
                    LEFT if anchor == "start" else LEFT + float(plan.blank.length.total_m) * scale,
                    y - 9,
                    text,
                    "ink",
                    14,
                    anchor,
                )
            )
    bottom = TOP + float(plan.blank.width.total_m) * scale + 26
    total = plan.blank.length.total_m
    marks += dimension_line(
        (LEFT, bottom), (LEFT + float(total) * scale, bottom), size_text(total, plan.first), size=14
    )
    return marks


def _upright(x: float, top: float, size: Fraction, scale: float, first: str) -> list[Mark]:
    """An upright dimension with its text turned along it."""
    bottom = top + float(size) * scale
    line = dimension_line((x, top), (x, bottom), "")
    return [*line, Words(x - 8, (top + bottom) / 2, size_text(size, first), "ink", 14, turn=90)]


def _holes(plan: SettingOut, scale: float) -> list[Mark]:
    """Holes from the front edge, which is drawn at the bottom, with their distance from the left end."""
    marks: list[Mark] = []
    _, wide, _ = plan.panel_m
    front = TOP + float(wide) * scale
    y_dimension = front + 24
    for item in plan.hardware:
        centres = [(LEFT + float(along) * scale, front - float(across) * scale) for along, across in item.centres_m]
        for x, y in centres:
            marks += [
                Circle(x, y, max(3.0, float(item.fit.drill.marked_m) / 2 * scale), "ink", 1.4),
                Line([(x - 7, y), (x + 7, y)], "ink", 0.8),
                Line([(x, y - 7), (x, y + 7)], "ink", 0.8),
            ]
        marks += _slots(item, centres, scale)
        (x0, y0), (x1, y1) = centres[0], centres[-1]
        text = size_text(item.pair.centres_m, plan.first)
        if item.runs == "along the grain":
            marks += dimension_line((x0, y_dimension), (x1, y_dimension), "", size=14)
            marks.append(Words((x0 + x1) / 2, y_dimension + 20, text, "ink", 14))
            middle = (x0 + x1) / 2
            marks.append(Line([(middle, y0 - 16), (middle, y_dimension + 46)], "quiet", 0.8, dash="8 3 2 3"))
        else:
            marks.append(Words(x0 + 14, (y0 + y1) / 2 + 5, text, "ink", 14, "start"))
            marks += dimension_line((x0 + 9, y0), (x1 + 9, y1), "")
    return marks


def _slots(item: SetHardware, centres: list[tuple[float, float]], scale: float) -> list[Mark]:
    """Slots across the grain as outlines about their middles; further from the round hole is away from it."""
    marks: list[Mark] = []
    for place, (x, y) in zip(item.pair.holes_m, centres, strict=True):
        found = item.slots.at(place) if item.slots else None
        if found is None:
            continue
        length, middle = (float(rounding.marked_m) * scale for rounding in found)
        wide = max(6.0, float(item.fit.drill.marked_m) * scale)
        away = -1.0 if float(place) > item.slots.plan.fixed_m else 1.0  # px grow downward, towards the front edge
        outline = box(x - wide / 2, y + away * middle - length / 2, wide, length)
        marks.append(Line([*outline, outline[0]], "dry", 1.4))
        marks.append(Words(x + 14, y - 7, f"slot {found[0].text}", "ink", 14, "start"))
    return marks


def _middles(plan: SettingOut, scale: float, y: float) -> list[Mark]:
    """A chain from the left end over the centre lines of hardware along the grain."""
    marks: list[Mark] = []
    at = Fraction(0)
    for middle in sorted(item.pair.middle_m for item in plan.hardware if item.runs == "along the grain"):
        x0, x1 = LEFT + float(at) * scale, LEFT + float(middle) * scale
        marks += dimension_line((x0, y), (x1, y), size_text(middle - at, plan.first), size=14)
        at = middle
    return marks


def _section(plan: SettingOut, scale: float, top: float) -> list[Mark]:
    """Across the grain, show face up, to the same scale."""
    _, wide, thick = plan.panel_m
    outline = box(LEFT, top, float(wide) * scale, float(thick) * scale)
    marks: list[Mark] = [Area(outline, "wood-end"), Line([*outline, outline[0]], "edge", 1.6)]
    if plan.boards:
        low, _ = plan.blank.width.span(1)
        for at in plan.boards.joints_m:
            if low < at < low + wide:
                x = LEFT + float(at - low) * scale
                marks.append(Line([(x, top), (x, top + float(thick) * scale)], "glue", 1.4))
    right = LEFT + float(wide) * scale
    marks.append(
        Words(
            right + 14,
            top + float(thick) * scale / 2 + 5,
            f"{size_text(thick, plan.first)} thick, section across the grain",
            "ink",
            14,
            "start",
        )
    )
    return marks


def _numbered(plan: SettingOut) -> list[str]:
    return [f"{part.number} {part.name} {size_text(part.size_m, plan.first)}" for part in plan.blank.length.pieces]


def _holes_text(plan: SettingOut) -> str:
    if not plan.hardware:
        return ""
    first = plan.hardware[0]
    edges = {"front edge" if item.runs == "along the grain" else "left end" for item in plan.hardware}
    inset = size_text(first.inset_m, plan.first)
    return (
        f"Holes {first.fit.drill.text}, {inset} from the {' or '.join(sorted(edges))}, marked from their centre lines."
    )
