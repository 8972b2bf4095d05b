"""A stable sheet instead of the solid panel, with solid edging around it.

The piece's finished width and length hold the sheet and its border, the solid edging. Plywood and fibreboard move
little in their plane; the figure is in the table of shop allowances.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import sqrt

from .frame import frame_places
from .given import Given
from .made import JointGlue, JointLine, MadePiece, Section, Size, Sum, WoodPart
from .making import ACROSS, ALONG, ZERO, made
from .piece import Allowances, Piece
from .rules import down, fixed, travel, up
from .steps import Step
from .travel import RANGE, Quantities, thickness_travel

DUST = "Dust of fibreboard is fine and carries binder: draw it off and wear a mask."


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Growth and shrinkage of the sheet, which stands in for the panel, and of the edging around it, careful ends."""
    whole, edging = travels["width"], piece.border_width_m
    width = whole - 2.0 * edging
    reached = {
        "narrowing": travels["stock_mc"] - travels["driest_mc"],
        "widening": travels["dampest_mc"] - travels["stock_mc"],
    }
    named = {}
    for way, points in reached.items():
        named[f"sheet_{way}"] = 0.5 * width * allowances.sheet_coefficient * points
        named[f"edging_{way}"] = edging * travels[f"{way}_high"] / whole
        named[f"mitre_{way}"] = sqrt(2.0) * named[f"edging_{way}"]
    for end in RANGE:
        named |= {f"{way}_{end}": 2.0 * named[f"sheet_{way}"] for way in reached}
        named[f"swing_{end}"] = 2.0 * (named["sheet_narrowing"] + named["sheet_widening"])
    return {
        **named,
        **thickness_travel(travels, piece, "step", piece.border_thickness_m),
        "sheet_width": width,
        "sheet_length": piece.length_m - 2.0 * edging,
        "edging": edging,
        "clearance": allowances.slot_clearance_m,
        "visible": allowances.visible_gap_m,
        "veneer": allowances.veneer_thickness_m,
    }


SPACE = up(
    "space_beside",
    "space to leave beside each edge",
    (fixed("clearance"), travel("sheet_widening"), travel("edging_widening")),
    "half the sheet's growth and all of the edging's",
    fine=True,
)


SHEET = (
    down("sheet_width", "sheet, width", (fixed("sheet_width"),), "the finished size less the edging", fine=True),
    down("sheet_length", "sheet, length", (fixed("sheet_length"),), "the finished size less the edging", fine=True),
)


def edged(given: Given, veneer: Fraction) -> MadePiece:
    """A sheet with solid edging on four sides, and veneer on both faces where there is any."""
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    along, across = given.between(given.length), given.between(given.width)
    core = given.thickness.less(2 * veneer, "less two veneers") if veneer else given.thickness
    edge = core if veneer else given.border_thickness
    parts = [
        WoodPart("sheet", 1, along, across, core, "sheet", note="no solid wood: bought as a sheet, not planed"),
        WoodPart(
            "edging along the grain",
            2,
            given.length,
            given.border,
            edge,
            "strip",
            (long - border, border),
            "length over its mitres",
        ),
        WoodPart(
            "edging across the grain",
            2,
            given.width,
            given.border,
            edge,
            "strip",
            (wide - border, border),
            "length over its mitres",
        ),
    ]
    sums = [
        Sum(ACROSS, ((2, "edging", border), (1, "sheet", across.exact_m)), wide),
        Sum(ALONG, ((2, "edging", border), (1, "sheet", along.exact_m)), long),
    ]
    glue = [
        JointGlue("edging along the grain", 2, along.exact_m, core.exact_m, given.clamps(along.exact_m)),
        JointGlue("edging across the grain", 2, across.exact_m, core.exact_m, given.clamps(across.exact_m)),
    ]
    top = veneer, veneer + core.exact_m
    section = [
        Section("edging along the grain", (ZERO, border), (veneer, veneer + edge.exact_m)),
        Section("edging along the grain", (wide - border, wide), (veneer, veneer + edge.exact_m)),
        Section("sheet", (border, wide - border), top, False),
    ]
    if veneer:
        parts.append(
            WoodPart(
                "veneer",
                2,
                given.length,
                given.width,
                Size(veneer, "shop allowance"),
                "veneer",
                note="no solid wood; cut larger and trimmed after pressing",
            )
        )
        sums.append(Sum("through", ((2, "veneer", veneer), (1, "sheet", core.exact_m)), given.thickness.exact_m))
        glue.append(JointGlue("veneer on the face", 2, long, wide, 0))
        section += [Section("veneer", (ZERO, wide), span) for span in ((ZERO, veneer), (top[1], top[1] + veneer))]
    places = frame_places(given, "edging along the grain", "edging across the grain")
    places = tuple(replace(place, part="sheet") if place.part == "panel" else place for place in places)
    lines = (
        JointLine("front edging", "along", border, border, border),
        JointLine("back edging", "along", wide - border, wide - border, wide - border),
        JointLine("left edging", "across", border, border, border),
        JointLine("right edging", "across", long - border, long - border, long - border),
    )
    return made(
        given,
        parts,
        sums,
        places,
        section,
        lines=lines,
        glue=tuple(glue),
        remarks=("The sheet is sold in thicknesses of its own: take the nearest and let the edging follow.",),
    )


FLUSH = "plane the edging flush"
ORDER = (
    Step("plane the edging to thickness", ["rough face"], ["parallel face"], ["rough face"]),
    Step("cut the sheet to size", makes=["square sheet"]),
    Step("mitre the edging around the sheet", ["parallel face", "square sheet"], ["edging"]),
    Step("glue the edging on", ["edging", "square sheet"], ["edged sheet"]),
)
