"""A solid drawer bottom in two halves: in grooved slips along thin sides, and a muntin from front to back between them."""

from __future__ import annotations

from dataclasses import replace

from ..picture.scene import Mark, corners
from . import drawer_bottom
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, PLAN_WIDTH, Drawn, wood
from .given import Given
from .made import JointGlue, MadePiece, Place, Section, Sum, WoodPart
from .making import ZERO, made
from .piece import Allowances, Piece
from .plan_drawing import sheet_box, sizes_px
from .rules import down, fixed, up
from .steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from .travel import Quantities, thickness_travel


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """As a bottom in one, but its grooves are in slips and muntin, so the sides set no limit to its edges."""
    tongue = min(allowances.drawer_tongue_m, piece.thickness_m)
    slip, muntin = allowances.slip_width_m, allowances.muntin_width_m
    return {
        **drawer_bottom.numbers(travels, piece, allowances),
        **thickness_travel(travels, piece, "tongue", tongue),
        "tongue": tongue,
        "slip": slip,
        "muntin": muntin,
        "half": 0.5 * (piece.length_m - 2.0 * slip - muntin),
        "wall": allowances.lap_cover_m,
    }


_KEPT = ("bottom_width", "groove_depth", "edge_thickness", "groove_width", "screw_slot")
_WHY = {
    "groove_depth": ("grooves in front, slips and muntin, depth", "what holds each half all round"),
    "edge_thickness": ("edges of the bottom, thinned to", "thinned from below; the sides keep all of their wood"),
}
RULES = (
    *(
        replace(rule, label=_WHY[rule.key][0], why=_WHY[rule.key][1]) if rule.key in _WHY else rule
        for rule in drawer_bottom.RULES
        if rule.key.startswith(_KEPT)
    ),
    down(
        "half_length",
        "each half of the bottom, length from slip to muntin",
        (fixed("half"), fixed("cover", 2.0), fixed("clearance", -1.0)),
        "along the grain it hardly moves; play against the bottoms of both grooves",
    ),
    up("slip_width", "slips, width", (fixed("slip"),), "glued along the inside of each side"),
    up(
        "slip_height",
        "slips and muntin, height",
        (fixed("tongue"), fixed("wall", 2.0)),
        "the groove, with a wall above and below it",
    ),
    up(
        "muntin_width",
        "muntin, width",
        (fixed("muntin"),),
        "a groove on both sides of it, and room for a screw below the back",
    ),
)


def make(given: Given) -> MadePiece:
    """Both halves from one panel, two slips and a muntin."""
    width, half = given.cut("bottom_width"), given.cut("half_length")
    slip, muntin, high = given.cut("slip_width"), given.cut("muntin_width"), given.cut("slip_height")
    cover, back, depth, clear = (
        given.allowance("cover"),
        given.border_thickness.exact_m,
        given.width.exact_m,
        given.length.exact_m,
    )
    reach = cover + depth + back
    saw = replace(half, exact_m=2 * half.exact_m + cover, comes_from='cut list, twice "half", and room for the saw')
    panel = WoodPart(
        "drawer bottom",
        1,
        saw,
        width,
        given.thickness,
        "panel",
        (2 * half.exact_m, width.exact_m),
        f"glued up in one and crosscut into two halves {given.written(half.exact_m, 'down')} long",
    )
    slips = WoodPart("slip", 2, given.width, slip, high, note="from front to back, along each side")
    middle = WoodPart(
        "muntin",
        1,
        given.width.plus(cover + back, "with its tongue in the front's groove, and what lies below the back"),
        muntin,
        high,
    )
    seen = (clear - 2 * slip.exact_m - muntin.exact_m) / 2
    inside = (half.exact_m - seen) / 2
    left, right = slip.exact_m, clear - slip.exact_m
    behind = width.exact_m - reach
    sums = (
        Sum(
            "from front to back",
            (
                (1, "in the front's groove", cover),
                (1, "clear depth", depth),
                (1, "below the back", back),
                (1, "behind the back today", behind),
            ),
            width.exact_m,
        ),
        Sum(
            "from side to side",
            (
                (2, "slip", slip.exact_m),
                (1, "muntin", muntin.exact_m),
                (2, "half", half.exact_m),
                (-4, "half in a groove", inside),
            ),
            clear,
        ),
    )
    across = (ZERO, width.exact_m)
    places = (
        Place("drawer bottom", (left, left + seen), across),
        Place("drawer bottom", (right - seen, right), across),
        Place("slip", (ZERO, left), (cover, cover + depth), "across"),
        Place("slip", (right, clear), (cover, cover + depth), "across"),
        Place("muntin", (left + seen, right - seen), (ZERO, reach), "across"),
    )
    wall, tongue, thick = given.allowance("wall"), given.cut("edge_thickness").exact_m, given.thickness.exact_m
    sections = [
        Section("slip", (ZERO, left), (ZERO, high.exact_m)),
        Section("slip", (right, clear), (ZERO, high.exact_m)),
        Section("muntin", (left + seen, right - seen), (ZERO, high.exact_m)),
    ]
    for begin in (left, right - seen):
        sections += [
            Section("drawer bottom", (begin, begin + seen), (wall, wall + thick), False),
            Section("drawer bottom", (begin - inside, begin), (wall, wall + tongue), False, loose=True),
            Section("drawer bottom", (begin + seen, begin + seen + inside), (wall, wall + tongue), False, loose=True),
        ]
    glue = JointGlue("slip to side", 2, depth, high.exact_m, given.clamps(depth))
    whole = made(
        given,
        (panel, slips, middle),
        sums,
        places,
        sections,
        section_runs="along",
        glue=(glue,),
        remarks=("The slips stop at the drawer's back, which ends above the bottom; the muntin passes below it.",),
    )
    return replace(whole, size_m=(clear, width.exact_m, whole.size_m[2]))


def plan(d: Drawn) -> list[Mark]:
    """A drawer from below: two halves between slips and a muntin, passing the back (above)."""
    today, _, _ = sizes_px(d)
    low = MIDDLE + 0.5 * today
    slip, muntin = (max(9.0, d.numbers[name] * d.scale.plan_px) for name in ("slip", "muntin"))
    middle = PLAN_LEFT + 0.5 * PLAN_WIDTH
    found = drawer_bottom.plan(d)[:-1]
    for left, wide in (
        (PLAN_LEFT + 14.0, slip),
        (PLAN_RIGHT - 14.0 - slip, slip),
        (middle - 0.5 * muntin, muntin),
    ):
        outline = corners(left, low - today, left + wide, low)
        found += wood(outline, "border-wood", "y", within=sheet_box(left, left + wide))
    return [*found, *drawer_bottom.plan(d)[-1:]]


WAY = replace(
    drawer_bottom.WAY,
    key="drawer_slips",
    name="solid bottom in slips with a muntin",
    short="slips and muntin",
    built_as="a solid bottom in two halves, in slips and a muntin",
    also=("drawer slips and a muntin", "drawer slips"),
    numbers=numbers,
    cuts=RULES,
    make=make,
    order=(
        Step("crosscut the bottom into its two halves", [SQUARE_EDGE, SQUARE_ENDS], ["two halves"]),
        Step("plough the slips, the muntin and the front", ["parallel face"], ["grooves"]),
        Step("thin the edges of both halves from below", ["two halves"], ["thinned edges"]),
        Step("glue the slips to the sides, and fix the muntin in the middle", ["grooves"], ["slips in place"]),
        Step(
            "slide both halves in from the back, and screw them up to it",
            ["slips in place", "thinned edges"],
            [TOGETHER],
        ),
    ),
    plan=plan,
    shows="A drawer from below: both halves of its bottom are fixed at the front and grow past the back. Below, the screw of "
    "the back in its slot.",
    reasons=(
        "Fixed at the front alone, both halves slide backward in slips and muntin; thin sides keep all of their wood.",
    ),
    steps=(
        "Run the grain from side to side in both halves.",
        "Glue the slips to the sides, grooves in line with the front's; tenon the muntin into the front, screw it below the back.",
        "Glue the front edge of each half into the front's groove; put no glue in slips and muntin.",
        "Screw each half up to the back through its slot, snug and then backed off a touch.",
        "Thin the edges from below to the thickness given, until they slide in the grooves by hand.",
    ),
    change="A small drawer with sides thick enough for a groove would ask for a bottom in one piece.",
)
