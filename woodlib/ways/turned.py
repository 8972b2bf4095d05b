"""Turned parts. The piece's width is the diameter; a round goes oval, as it moves more along its rings than across."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians

import numpy as np

from ..picture.scene import Area, Circle, Line, Mark, Window, box
from ..picture.wood import grain_lines
from .drawn import MIDDLE, PLAN_LEFT, PLAN_WIDTH, Drawn, Number, label
from .given import Given
from .joint_drawing import CENTRE, LEFT
from .made import Place, Section, Size, WoodPart
from .making import ZERO
from .piece import Allowances, Piece
from .plan_drawing import wood_round
from .rules import travel, up
from .steps import TOGETHER, Step
from .travel import Quantities

FIT_M = 0.0002  # glue and hand pressure; common practice, no source


def radial_share(piece: Piece) -> float:
    """Radial coefficient over that of the piece's width: what a tenon wants in the direction that the seat forbids.

    >>> round(radial_share(Piece("white ash", "25 mm", "50 mm", "25 mm", "40 mm")), 2)
    0.62
    """
    square = cos(radians(piece.ring_angle_deg)) ** 2
    radial, tangential = piece.wood.radial_coefficient, piece.wood.tangential_coefficient
    return min(1.0, radial / (tangential * square + radial * (1.0 - square)))


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Change of the two diameters, careful ends, and how far the round goes oval."""
    radial = radial_share(piece)
    named = {}
    for way in ("narrowing", "widening"):
        named[f"large_{way}"] = travels[f"{way}_high"]
        named[f"small_{way}"] = radial * travels[f"{way}_high"]
        named[f"oval_{way}"] = (1.0 - radial) * travels[f"{way}_high"]
    return {
        **named,
        "diameter": travels["width"],
        "least": allowances.least_gap_m,
        "fit": FIT_M,
        "tenon_length": piece.length_m,
    }


OVAL = (
    up("oval_driest", "out of round in the driest month", (travel("oval_narrowing"),), "long one way", fine=True),
    up(
        "oval_dampest", "out of round in the dampest month", (travel("oval_widening"),), "long the other way", fine=True
    ),
)


def turned(given: Given, name: str, length: Size) -> tuple[WoodPart, tuple[Place, ...], tuple[Section, ...]]:
    wide = given.width.exact_m
    part = WoodPart(name, 1, length, given.width, replace(given.width), "turned")
    return part, (Place(name, (ZERO, length.exact_m), (ZERO, wide)),), (Section(name, (ZERO, wide), (ZERO, wide)),)


ORDER = (
    Step("plane the blank square", ["rough face", "rough edge"], ["square blank"], ["rough face", "rough edge"]),
    Step("cut the blank to length, waste and all", ["square blank"], ["blank ends"]),
    Step("mark the middle of both ends", ["blank ends"], ["centres"]),
    Step("turn to size", ["centres"], ["turned"], ["square blank"]),
    Step("part off the waste", ["turned", "centres"], [TOGETHER], ["centres", "blank ends"]),
)


def plan(d: Drawn) -> list[Mark]:
    """A round and what it becomes: its rings stay, its outline goes oval."""
    middle = PLAN_LEFT + 0.5 * PLAN_WIDTH
    ways = [d.moved(name) / d.piece["width"] * d.scale.times for name in ("large", "small")]
    turn = np.linspace(0.0, 2.0 * np.pi, 49)
    outline = [
        (middle + 120.0 * (1.0 + ways[0]) * float(np.cos(a)), MIDDLE + 120.0 * (1.0 + ways[1]) * float(np.sin(a)))
        for a in turn
    ]
    rings = tuple(grain_lines(box(middle - 180.0, MIDDLE - 180.0, 360.0, 360.0), "x", 16, 7))
    today = [(middle + 120.0 * float(np.cos(a)), MIDDLE + 120.0 * float(np.sin(a))) for a in turn]
    return [*wood_round(outline, rings), Line(today, "today", 1.4, "5 4")]


def joint(d: Drawn, hole: Number, around: str) -> list[Mark]:
    """End grain of a round in its hole or ring, in this month; gaps true to size."""
    px, y = d.px, 200.0
    across, along = (0.5 * px(d.numbers["diameter"] + d.moved(name)) for name in ("large", "small"))
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
        label(LEFT, 350.0, around),
    ]
