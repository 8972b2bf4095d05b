"""Shop drawings from the same numbers as the lists: the blank with cuts and dowels, the finished piece with holes.

Drawn to one scale that fits the sheet; the picture is data (``picture.scene``) and is written as SVG or PDF.
"""

from __future__ import annotations

import io
from itertools import zip_longest
from os import PathLike
from pathlib import Path

from ..errors import InputError
from ..picture.scene import Area, Circle, Line, Mark, Picture, Words, box, dimension_line
from ..picture.wood import grain_lines
from .drawing_marks import (
    HEIGHT,
    LEFT,
    TOP,
    WIDTH,
    head,
    holes,
    holes_text,
    middles,
    scale_for,
    scale_text,
    upright,
)
from .lists import check_plan, size_text, written
from .plan import SettingOut
from .way_drawing import way_drawing, way_in_words


def blank_drawing(plan: SettingOut) -> Picture:
    """The blank seen from the show face: waste, kerfs, numbered pieces, glue lines and dowels."""
    _check_blank(plan)
    length, width = plan.glued_blank.length.total_m, plan.glued_blank.width.total_m
    scale = scale_for(length, width)
    marks: list[Mark] = [Area(box(LEFT, TOP, float(length) * scale, float(width) * scale), "grid")]
    marks += _pieces(plan, scale)
    marks += _glue_lines(plan, scale)
    marks += _along(plan, scale)
    marks += upright(LEFT - 14, TOP, width, scale, plan.first)
    marks.append(Words(LEFT - 72, TOP + float(width) * scale + 18, plan.edge, "quiet", 14, "start"))
    title = f"{plan.title}: the blank"
    notes = (
        plan.glued_blank.text(plan.first),
        "Number the pieces on the show face before the first cut.",
        scale_text(scale),
    )
    tall = min(HEIGHT, TOP + float(width) * scale + 60.0 + 20.0 * len(notes))
    return Picture(title, WIDTH, tall, (*head(title, notes, tall), *marks))


def shop_drawing(plan: SettingOut) -> Picture:
    """The finished piece in plan and in section, with its holes and their distances: as it is built, or the plain panel."""
    check_plan(plan)
    if plan.made:
        return way_drawing(plan)
    long, wide, thick = plan.panel_m
    scale = scale_for(long, wide)
    marks: list[Mark] = []
    outline = box(LEFT, TOP, float(long) * scale, float(wide) * scale)
    marks += [Area(outline, "wood"), *grain_lines(outline, "x", 9, seed=3), Line([*outline, outline[0]], "edge", 1.8)]
    marks += holes(plan, scale)
    bottom = TOP + float(wide) * scale
    marks += dimension_line(
        (LEFT, TOP - 14), (LEFT + float(long) * scale, TOP - 14), size_text(long, plan.first), size=14
    )
    marks += upright(LEFT - 14, TOP, wide, scale, plan.first)
    marks.append(Words(LEFT + 8, bottom - 8, plan.edge, "quiet", 14, "start"))
    marks += middles(plan, scale, bottom + 70)
    marks += _section(plan, scale, bottom + 96)
    title = f"{plan.title}: the panel"
    return Picture(title, WIDTH, HEIGHT, (*head(title, (holes_text(plan), scale_text(scale))), *marks))


def drawing_in_words(plan: SettingOut) -> str:
    """The drawing of the piece, and of its blank where there is one, as a text that carries their numbers.

    >>> from woodlib.commission import chosen_brief
    >>> from woodlib.setting_out.plan import set_out
    >>> drawing_in_words(set_out(chosen_brief(), ())).split(". ")[0]
    'Blank 50-1/2 in (1283 mm) long, 20-3/4 in (527 mm) wide, at least 15/16 in (24 mm) thick'
    """
    check_plan(plan)
    sentences = [blank_in_words(plan).removesuffix(".")] if plan.blank else []
    if plan.made:
        sentences += way_in_words(plan)
    else:
        long, wide, thick = (size_text(size, plan.first) for size in plan.panel_m)
        sentences.append(f"Panel {long} by {wide}, {thick} thick")
    for item in plan.hardware:
        at = " and ".join(size_text(place, plan.first) for place in item.pair.holes_m)
        sentences.append(f"{item.pair.name}: holes at {at} {item.runs}, {size_text(item.inset_m, plan.first)} in")
    return ". ".join(sentences) + "."


def blank_in_words(plan: SettingOut) -> str:
    """The drawing of the blank as a text that carries its numbers."""
    _check_blank(plan)
    sentences = [f"Blank {plan.glued_blank.text(plan.first)}", f"Along it: {', '.join(_numbered(plan))}"]
    if plan.joints:
        lines, dowels = len(plan.joints), len(plan.joints[0].wanted_m)
        sentences.append(
            f"{lines} glue lines with {dowels} dowels each" if lines > 1 else f"1 glue line with {dowels} dowels"
        )
    return ". ".join(sentences) + "."


def _check_blank(plan: SettingOut) -> None:
    check_plan(plan)
    if plan.blank is None:
        raise InputError(f"{plan.piece.way.built_as} has no panel that is glued up, so there is no blank to draw.")


def write_svg(picture: Picture, description: str, path: str | PathLike) -> Path:
    """Write a drawing as SVG and return the path."""
    from ..picture.svg import svg

    return written(svg(picture, description).encode(), path, ".svg")


def write_pdf(picture: Picture, path: str | PathLike) -> Path:
    """Write a drawing as PDF, 7.5 in wide on paper, and return the path."""
    return written(pdf_bytes(picture), path, ".pdf")


def pdf_bytes(picture: Picture) -> bytes:
    """A drawing as PDF; the same drawing always gives the same bytes."""
    from ..picture.printed import figure

    buffer = io.BytesIO()
    figure(picture).savefig(buffer, format="pdf", metadata={"Title": picture.title, "CreationDate": None})
    return buffer.getvalue()


def _pieces(plan: SettingOut, scale: float) -> list[Mark]:
    marks: list[Mark] = []
    low, high = plan.glued_blank.width.span(1)
    top, tall = TOP + float(low) * scale, float(high - low) * scale
    for part, begins, ends in plan.glued_blank.length.spans():
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
    right = LEFT + float(plan.glued_blank.length.total_m) * scale
    for at, joint in zip_longest(plan.boards.joints_m, plan.joints):
        y = TOP + float(plan.glued_blank.width.total_m - at) * scale  # measured from the front edge, which is below
        marks.append(Line([(LEFT, y), (right, y)], "glue", 1.2, dash="6 3"))
        if joint is None:  # too thin for dowels
            continue
        role = "stop" if joint.places_m is None else "ink"
        for place in joint.places_m or joint.wanted_m:
            x, reach = LEFT + float(place) * scale, max(4.0, float(joint.joint.reach_m) * scale)
            marks.append(Line([(x, y - reach), (x, y + reach)], role, max(2.0, float(joint.joint.size_m) * scale)))
    return marks


def _along(plan: SettingOut, scale: float) -> list[Mark]:
    """The pieces along the blank measured above it, the whole below it; narrow pieces carry their size to one side."""
    marks: list[Mark] = []
    y = TOP - 14
    for part, begins, ends in plan.glued_blank.length.spans():
        if part.kind != "piece":
            continue
        x0, x1 = LEFT + float(begins) * scale, LEFT + float(ends) * scale
        text = size_text(part.size_m, plan.first)
        if x1 - x0 >= 120:
            marks += dimension_line((x0, y), (x1, y), text, size=14)
        else:
            marks += dimension_line((x0, y), (x1, y), "", size=14)
            anchor = "start" if begins < plan.glued_blank.length.total_m / 2 else "end"
            marks.append(
                Words(
                    LEFT if anchor == "start" else LEFT + float(plan.glued_blank.length.total_m) * scale,
                    y - 9,
                    text,
                    "ink",
                    14,
                    anchor,
                )
            )
    bottom = TOP + float(plan.glued_blank.width.total_m) * scale + 26
    total = plan.glued_blank.length.total_m
    marks += dimension_line(
        (LEFT, bottom), (LEFT + float(total) * scale, bottom), size_text(total, plan.first), size=14
    )
    return marks


def _section(plan: SettingOut, scale: float, top: float) -> list[Mark]:
    """Across the grain, show face up, to the same scale."""
    _, wide, thick = plan.panel_m
    outline = box(LEFT, top, float(wide) * scale, float(thick) * scale)
    marks: list[Mark] = [Area(outline, "wood-end"), Line([*outline, outline[0]], "edge", 1.6)]
    if plan.boards:
        low, _ = plan.glued_blank.width.span(1)
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
    return [
        f"{part.number} {part.name} {size_text(part.size_m, plan.first)}" for part in plan.glued_blank.length.pieces
    ]
