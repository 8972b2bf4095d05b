"""The section of a joint, true to its numbers: where it lies, and what several share."""

from __future__ import annotations

from ..picture.scene import Line, Mark, corners
from .drawn import SECTION_LEFT, SECTION_WIDTH, Drawn, Number, end_wood, label, sized, wood

LEFT, RIGHT = SECTION_LEFT, SECTION_LEFT + SECTION_WIDTH


CENTRE = 0.5 * (LEFT + RIGHT)


def beside(d: Drawn, part: str, neighbour: str, gap: Number) -> list[Mark]:
    """A part and what stands beside it, with the gap between them in this month."""
    px, mid = d.px, 180.0
    half = 0.5 * px(d.piece["thickness"])
    face = CENTRE + 60.0
    edge = face - px(gap)
    return [
        *end_wood(corners(LEFT, mid - half, edge, mid + half), "wood"),
        *end_wood(corners(face, mid - 1.6 * half, RIGHT, mid + 1.6 * half), "border-wood"),
        label(LEFT + 6.0, mid - half - 8.0, part),
        label(RIGHT, mid - 1.6 * half - 8.0, neighbour, "end"),
        *sized((edge, mid + 1.6 * half + 20.0), (face, mid + 1.6 * half + 20.0), gap, "nearest", offset=8.0),
    ]


def beside_wall(d: Drawn) -> list[Mark]:
    """The outer edge of the piece and the space to a wall or frame."""
    gap = d.sizes["space_beside"] - d.moved("edge")
    return beside(d, "edge of the piece", "wall or frame", gap)


def layers(d: Drawn, layers: list[tuple[str, Number, str, str]]) -> list[Mark]:
    """Layers one on another from the top: name, thickness in px, role, ``along`` or ``end`` of the grain."""
    y: Number = 130.0
    marks: list[Mark] = []
    for k, (name, thick, role, grain) in enumerate(layers):
        outline = corners(LEFT, y, RIGHT, y + thick)
        marks += end_wood(outline, role) if grain == "end" else wood(outline, role, count=3)
        marks += [Line([(LEFT, y), (RIGHT, y)], "glue", 3.0)] if k else []
        marks.append(label(LEFT + 6.0, y - 6.0 if not k else y + 0.5 * thick + 5.0, name))
        y = y + thick
    return marks
