"""Sections of edges, laps, layers and rounds, true to their numbers."""

from __future__ import annotations

import numpy as np

from ..scene import Area, Circle, Line, Mark, Window, box, corners
from ..wood import grain_lines
from .joints import CENTRE, LEFT, RIGHT
from .sheet import Drawn, Number, end_wood, hollow, label, shape, sized, wood


def _beside(d: Drawn, part: str, neighbour: str, gap: Number) -> list[Mark]:
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
    return _beside(d, "edge of the piece", "wall or frame", gap)


def own_blank(d: Drawn) -> list[Mark]:
    """Along the grain: end piece against the panel with a loose tongue across the joint, grain running through."""
    px, mid = d.px, 180.0
    half = 0.5 * px(d.piece["border_thickness"])
    tongue = 0.5 * px(d.sizes["loose_tongue_thickness"])
    joint = CENTRE + 10.0
    width = d.sizes["end_piece_width"]
    end = joint + px(width)
    return [
        *wood(corners(LEFT, mid - half, joint, mid + half)),
        *wood(corners(joint, mid - half, end, mid + half), "border-wood"),
        *wood(corners(joint - 2.2 * tongue, mid - tongue, joint + 2.2 * tongue, mid + tongue), "wood", count=2),
        Line([(joint, mid - half), (joint, mid + half)], "glue", 3.0),
        label(LEFT + 6.0, mid - half - 8.0, "panel"),
        label(end, mid - half - 8.0, "end piece", "end"),
        *sized((joint, mid + half + 18.0), (end, mid + half + 18.0), width, offset=8.0),
        label(LEFT, 320.0, "the grain runs through"),
    ]


def in_opening(d: Drawn) -> list[Mark]:
    """The free edge of a door, lid or drawer part, and what it must clear."""
    name = "free" if d.way.key == "inset_panel" else "front"
    today = d.sizes["gap_today"]
    gap = today - d.either(0.0, -d.numbers[f"{name}_shrink"], d.numbers[f"{name}_growth"])
    part = "door or lid" if d.way.key == "inset_panel" else d.way.key.replace("_", " ")
    return _beside(d, part, "frame" if d.way.key == "inset_panel" else "rail above", gap)


def glued_edge(d: Drawn) -> list[Mark]:
    """Along the grain: panel, glue line, border with its grain across."""
    px, mid = d.px, 180.0
    half, border = 0.5 * px(d.piece["thickness"]), 0.5 * px(d.piece["border_thickness"])
    joint = CENTRE + 10.0
    end = joint + px(d.piece["border_width"])
    return [
        *wood(corners(LEFT, mid - half, joint, mid + half)),
        *end_wood(corners(joint, mid - border, end, mid + border), "border-wood"),
        Line([(joint, mid - half), (joint, mid + half)], "glue", 3.0),
        label(LEFT + 6.0, mid - half - 8.0, "panel"),
        label(end, mid - border - 8.0, "border", "end"),
        label(LEFT, 320.0, "glue holds both to one width"),
    ]


def _layers(d: Drawn, layers: list[tuple[str, Number, str, str]]) -> list[Mark]:
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


def face_rim(d: Drawn) -> list[Mark]:
    """Across the panel: the rim lies on it, its grain across the panel's, glue all along."""
    bow = d.either(0.0, d.sizes["bow_driest"], d.sizes["bow_dampest"])
    return [
        *_layers(
            d,
            [
                ("rim", d.px(d.piece["border_thickness"]), "border-wood", "along"),
                ("panel", d.px(d.piece["thickness"]), "wood", "end"),
            ],
        ),
        label(LEFT, 300.0, "bow across the whole width, if free:"),
        *sized((LEFT + 80.0, 326.0), (LEFT + 80.0 + d.px(bow), 326.0), bow, offset=8.0),
    ]


def veneered(d: Drawn) -> list[Mark]:
    """A core between two veneers."""
    veneer, core = d.px(d.sizes["veneer_thickness"]), d.px(d.piece["thickness"])
    return [
        *_layers(
            d,
            [
                ("veneer", veneer, "border-wood", "along"),
                ("stable sheet", core, "grid", "end"),
                ("", veneer, "border-wood", "along"),
            ],
        ),
        label(LEFT, 320.0, "same veneer on both faces"),
    ]


def edged(d: Drawn) -> list[Mark]:
    """The edge of a sheet with its solid edging, whose own thickness and width still move."""
    px, mid = d.px, 180.0
    half = 0.5 * px(d.piece["thickness"])
    joint = CENTRE
    end = joint + px(d.piece["border_width"] + d.moved("edging"))
    proud, width = 0.5 * px(d.moved("step")), d.piece["border_width"] + d.moved("edging")
    return [
        *end_wood(corners(LEFT, mid - half, joint, mid + half), "grid"),
        *end_wood(corners(joint, mid - half - proud, end, mid + half + proud), "border-wood"),
        Line([(joint, mid - half), (joint, mid + half)], "glue", 3.0),
        label(LEFT + 6.0, mid - half - 8.0, "stable sheet"),
        label(end, mid - half - 12.0, "edging", "end"),
        *sized((joint, mid + half + 24.0), (end, mid + half + 24.0), width, "nearest", offset=8.0),
    ]


def lapped(d: Drawn) -> list[Mark]:
    """Two boards that lap, in this month."""
    px, mid = d.px, 180.0
    half = 0.5 * px(d.piece["thickness"])
    gap = d.sizes["gap_today"] - d.moved("board")
    lap = d.sizes["lap_width"]
    edge = CENTRE + px(gap)
    left = [
        (LEFT, mid - half),
        (CENTRE, mid - half),
        (CENTRE, mid - 1.0),
        (CENTRE + px(lap), mid - 1.0),
        (CENTRE + px(lap), mid + half),
        (LEFT, mid + half),
    ]
    low = CENTRE + px(lap) + px(gap)
    right = [
        (edge, mid - half),
        (RIGHT, mid - half),
        (RIGHT, mid + half),
        (low, mid + half),
        (low, mid - 1.0),
        (edge, mid - 1.0),
    ]
    return [*shape(left, "wood"), *shape(right, "border-wood"), *_board_words(d, mid, half, edge, gap)]


def tongued(d: Drawn) -> list[Mark]:
    """A board's tongue in the next one's groove, in this month."""
    px, mid = d.px, 180.0
    half, thin = 0.5 * px(d.piece["thickness"]), 0.5 * px(d.sizes["tongue_thickness"])
    gap = d.sizes["gap_today"] - d.moved("board")
    edge, depth = CENTRE + px(gap), px(d.sizes["groove_depth"])
    return [
        *end_wood(corners(LEFT, mid - half, CENTRE, mid + half), "wood"),
        *end_wood(corners(edge, mid - half, RIGHT, mid + half), "border-wood"),
        *hollow(corners(edge, mid - thin - 1.0, edge + depth, mid + thin + 1.0)),
        *shape(corners(CENTRE, mid - thin, CENTRE + px(d.sizes["tongue_length"]), mid + thin), "wood"),
        *_board_words(d, mid, half, edge, gap),
    ]


def _board_words(d: Drawn, mid: float, half: Number, edge: Number, gap: Number) -> list[Mark]:
    return [
        label(LEFT + 6.0, mid - half - 8.0, "board"),
        label(RIGHT, mid - half - 8.0, "next board", "end"),
        *sized((CENTRE, mid - half - 26.0), (edge, mid - half - 26.0), gap, "nearest"),
    ]


def mitre(d: Drawn) -> list[Mark]:
    """From above: the corner, with the opening each mitre would show if no glue held it, true to size."""
    px, side = d.px, d.px(d.piece["border_width"])
    inside = d.either(0.0, d.sizes["mitre_driest"], 0.0)
    outside = d.either(0.0, 0.0, d.sizes["mitre_dampest"])
    x, y = CENTRE - 110.0, 60.0
    foot = y + side + 60.0
    upright = [(x, y), (x + side, y + side), (x + side, foot), (x, foot)]
    level = [(x + px(outside), y), (RIGHT, y), (RIGHT, y + side), (x + side + px(inside), y + side)]
    worst = inside + outside
    return [
        *shape(upright, "border-wood"),
        *shape(level, "wood"),
        label(LEFT, 318.0, "opening, if no glue held it:"),
        *sized((CENTRE, 332.0), (CENTRE + px(worst), 332.0), worst, "up", offset=8.0),
    ]


def round_joint(d: Drawn) -> list[Mark]:
    """End grain of a round in its hole or ring, in this month; gaps true to size."""
    px, y = d.px, 200.0
    across, along = (0.5 * px(d.numbers["diameter"] + d.moved(name)) for name in ("large", "small"))
    hole = d.sizes["hole"] if d.way.key == "round_tenon" else d.sizes["bore"]
    turn = np.linspace(0.0, 2.0 * np.pi, 49)
    outline = [(CENTRE + along * float(np.cos(a)), y + across * float(np.sin(a))) for a in turn]
    lines = tuple(grain_lines(box(CENTRE - 160.0, y - 160.0, 320.0, 320.0), "x", 18, 11))
    return [
        Circle(CENTRE, y, 0.5 * px(hole) + 22.0, "wood", filled=True),
        Circle(CENTRE, y, 0.5 * px(hole), "gap", filled=True),
        Circle(CENTRE, y, 0.5 * px(hole), "edge", 1.6),
        Area(outline, "wood-end"),
        Window(outline, lines),
        Line(outline, "edge", 1.8),
        label(LEFT, 350.0, "seat's grain left to right" if d.way.key == "round_tenon" else "ring around the post"),
    ]
