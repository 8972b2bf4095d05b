"""A stable sheet with thin edging, veneered on both faces, its border drawn as a band of veneer."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from ..picture.scene import Mark, corners
from . import veneered_sheet
from .drawn import Drawn, end_wood, label, sized, wood
from .frame import frame_places
from .given import Given
from .joint_drawing import CENTRE, LEFT
from .made import MadePiece, Size, Sum, WoodPart
from .making import ACROSS, ALONG
from .piece import Allowances, Piece
from .rules import down, fixed, up
from .stable_sheet import FLUSH
from .steps import TOGETHER, Step
from .travel import Quantities

OVERSIZE = Fraction(
    1, 100
)  # of a metre: what veneer is cut larger by and trimmed after pressing; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """As a veneered sheet, and the field that the band leaves."""
    band = piece.border_width_m
    return {
        **veneered_sheet.thin_edged(travels, piece, allowances),
        "band": band,
        "field": travels["width"] - 2.0 * band,
        "field_long": piece.length_m - 2.0 * band,
    }


RULES = (
    *veneered_sheet.WAY.cuts,
    up(
        "edging_width",
        "edging, width",
        (fixed("edging"),),
        "thin, so that its line does not show through the veneer",
        fine=True,
    ),
    down("band_width", "band, width at the finished edge", (fixed("band"),), "the border that is wanted", fine=True),
    down("field_width", "field, width between the bands", (fixed("field"),), "its edges meet the bands", fine=True),
    down(
        "field_length", "field, length between the bands", (fixed("field_long"),), "its ends meet the bands", fine=True
    ),
)


def make(given: Given) -> MadePiece:
    """A veneered sheet whose face veneer is a field within a mitred band."""
    sheet = veneered_sheet.make(given)
    band, field_wide, field_long = given.border, given.cut("field_width"), given.cut("field_length")
    long, wide = given.length.exact_m, given.width.exact_m
    thin = next(part for part in sheet.parts if part.role == "veneer").thickness
    note = "no solid wood; cut larger and trimmed after pressing"

    def veneer(name: str, count: int, length: Size, width: Size, said: str = note) -> WoodPart:
        return WoodPart(name, count, length, width, thin, "veneer", note=said)

    parts = (
        *(part for part in sheet.parts if part.role != "veneer"),
        veneer("veneer of the field", 2, field_long, field_wide),
        veneer("band along the grain", 4, given.length, band, "length over its mitres"),
        veneer("band across the grain", 4, given.width, band, "length over its mitres"),
    )
    sums = (
        Sum(
            f"the face, {ACROSS}",
            ((2, "band", (wide - field_wide.exact_m) / 2), (1, "field", field_wide.exact_m)),
            wide,
        ),
        Sum(
            f"the face, {ALONG}", ((2, "band", (long - field_long.exact_m) / 2), (1, "field", field_long.exact_m)), long
        ),
    )
    places = tuple(
        replace(place, part="field") if place.part == "panel" else place
        for place in frame_places(given, "band along the grain", "band across the grain")
    )
    return replace(sheet, parts=parts, sums=(*sheet.sums, *sums), places=places)


def joint(d: Drawn) -> list[Mark]:
    """The edge in section: sheet, thin edging, veneer over both, where the band meets the field."""
    px, mid = d.px, 170.0
    half, veneer = 0.5 * px(d.piece["thickness"]), max(4.0, px(d.numbers["veneer"]))
    end = CENTRE + 120.0
    inner = end - px(d.numbers["edging"])
    meet = end - px(d.numbers["band"])
    return [
        *end_wood(corners(LEFT, mid - half, inner, mid + half), "grid"),
        *end_wood(corners(inner, mid - half, end, mid + half), "border-wood"),
        *(
            mark
            for top in (mid - half - veneer, mid + half)
            for mark in (
                *wood(corners(LEFT, top, meet, top + veneer), count=1),
                *wood(corners(meet, top, end, top + veneer), "border-wood", count=1),
            )
        ),
        label(LEFT + 6.0, mid - half - veneer - 10.0, "field"),
        label(LEFT + 6.0, mid + 5.0, "stable sheet"),
        *sized((meet, mid - half - veneer - 10.0), (end, mid - half - veneer - 10.0), d.sizes["band_width"], "nearest"),
        label(end, mid + half + veneer + 22.0, "thin edging", "end"),
        label(LEFT, 320.0, "bands and field on both faces"),
    ]


WAY = replace(
    veneered_sheet.WAY,
    key="banded_sheet",
    name="stable sheet with thin edging and a veneered band",
    short="veneered band",
    built_as="a stable sheet with thin edging, its border a band of veneer",
    also=("thin edging with a veneered band", "banded sheet"),
    kinds=("table top", "lid", "door panel"),
    keeps_border=True,
    all_round=True,
    wants_border=True,
    means="A made board that hardly moves, with thin real wood on both faces; the border is a band of it.",
    numbers=numbers,
    cuts=RULES,
    make=make,
    order=(
        *veneered_sheet.WAY.order[:-2],
        Step(FLUSH, ["edged sheet"], ["flush faces"]),
        Step("cut field and bands, mitre the bands at the corners, and tape the joints", makes=["taped faces"]),
        Step("veneer both faces on one day", ["flush faces", "taped faces"], [TOGETHER], ["flush faces"]),
    ),
    joint=joint,
    shows="A sheet that hardly moves, a band of veneer round its field. Below, its edge in section.",
    main_cuts=("sheet_width", "band_width", "space_beside"),
    steps=(
        "Keep the edging thin and flush before veneering: wide solid wood under veneer moves in thickness and shows its line.",
        "Let the grain of the bands run along each edge, or across it as crossbanding: on a stable core it may run any way.",
        "Veneer both faces alike, bands too, on the same day; one face alone pulls the sheet hollow.",
        "Press at the moisture of the driest months: veneer pressed damp checks in the first winter.",
    ),
    change="A client who wants solid wood through and through would ask for a frame, or for a breadboard end.",
)
