"""A solid drawer bottom, grain from side to side, fixed at the front; its width runs from front to back.

The piece's width is the clear depth inside the drawer, from the front to the back; its border thickness is taken for
the thickness of the drawer's back, under which the bottom passes, and of its sides.
"""

from __future__ import annotations

from ..picture.scene import Circle, Line, Mark, corners
from .drawn import (
    HEIGHT,
    MIDDLE,
    PLAN_LEFT,
    PLAN_RIGHT,
    PLAN_WIDTH,
    TOP,
    Drawn,
    end_wood,
    hollow,
    label,
    shape,
    sized,
    wood,
)
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import MadePiece, Sum
from .opening import fitted
from .piece import Allowances, Piece
from .plan_drawing import sheet_box, sizes_px
from .rules import INCH_M, down, fixed, travel, up
from .travel import Quantities, at_fixing, thickness_travel
from .way import Limit, Way

SIDE_SHARE = 1 / 3  # of a side's thickness that a groove may take; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of the bottom past the screw below the back, and at its rear edge, careful ends.

    With s the narrowing strain the bottom B must satisfy B (1 - s) = groove + depth + back, so it shrinks by
    (groove + depth + back) s/(1 - s).
    """
    width = travels["width"]
    cover, back = allowances.groove_cover_m, piece.border_thickness_m
    narrowing, widening = travels["narrowing_high"] / width, travels["widening_high"] / width
    wanted = cover + width + back
    tongue = min(allowances.drawer_tongue_m, SIDE_SHARE * back, piece.thickness_m)
    return {
        **at_fixing(travels, "screw", cover + width + 0.5 * back),
        **thickness_travel(travels, piece, "tongue", tongue),
        "depth": width,
        "length": piece.length_m,
        "cover": cover,
        "back": back,
        "screw": allowances.screw_diameter_m,
        "clearance": allowances.slot_clearance_m,
        "tongue": tongue,
        "bottom_shrink": wanted * narrowing / (1.0 - narrowing),
        "bottom_growth": wanted * widening / (1.0 - narrowing),
    }


RULES = (
    up(
        "bottom_width",
        "bottom, width from front to back",
        (fixed("cover"), fixed("depth"), fixed("back"), travel("bottom_shrink")),
        "in the driest month it must still sit in the front's groove and cover the back",
    ),
    down(
        "bottom_length",
        "bottom, length from side to side",
        (fixed("length"), fixed("cover", 2.0), fixed("clearance", -1.0)),
        "along the grain it hardly moves; play against the bottoms of both grooves",
    ),
    up("groove_depth", "grooves in front and sides, depth", (fixed("cover"),), "what holds the bottom all round"),
    down(
        "edge_thickness",
        "edges of the bottom, thinned to",
        (fixed("tongue"),),
        "no more than a third of a side, so that wood is left on both sides of the groove",
        fine=True,
    ),
    up(
        "groove_width",
        "grooves, width",
        (fixed("tongue"), travel("tongue_widening")),
        "in the dampest month the thicker edges must still slide",
        fine=True,
    ),
    up(
        "screw_slot",
        "screw slot below the back, length",
        (fixed("screw"), fixed("clearance"), travel("screw_narrowing"), travel("screw_widening")),
        "screw shank, plus the bottom's travel both ways, plus play; fixed at the front, it has all of the movement",
        chain=((1, "screw_slot_backward"), (1, "screw_slot_forward")),
    ),
    up(
        "screw_slot_backward",
        "screw slot below the back, backward from the screw's centre",
        (fixed("screw", 0.5), fixed("clearance", 0.5), travel("screw_narrowing")),
        "in the driest month the slot has come forward past the screw",
    ),
    up(
        "screw_slot_forward",
        "screw slot below the back, forward from the screw's centre",
        (fixed("screw", 0.5), fixed("clearance", 0.5), travel("screw_widening")),
        "in the dampest month the slot has gone backward past the screw",
    ),
)


STATES = (
    up(
        "behind_today",
        "bottom behind the drawer's back today",
        (travel("bottom_shrink"),),
        "leave room behind the drawer",
        chain=((1, "bottom_width"), (-1, "cover"), (-1, "depth"), (-1, "back")),
    ),
    up(
        "behind_dampest",
        "bottom behind the drawer's back in the dampest month",
        (travel("bottom_shrink"), travel("bottom_growth")),
        "leave room behind the drawer",
        chain=((1, "behind_today"),),
        moves=(travel("bottom_growth"),),
    ),
)


def make(given: Given) -> MadePiece:
    """The bottom as cut: from the front's groove to behind the back, and into the grooves of both sides."""
    width, length = given.cut("bottom_width"), given.cut("bottom_length")
    cover, back, depth = given.allowance("cover"), given.border_thickness.exact_m, given.width.exact_m
    behind = width.exact_m - cover - depth - back
    terms = (
        (1, "in the front's groove", cover),
        (1, "clear depth", depth),
        (1, "below the back", back),
        (1, "behind the back today", behind),
    )
    side = (length.exact_m - given.length.exact_m) / 2
    sums = (
        Sum("from front to back", terms, width.exact_m),
        Sum(
            "from side to side",
            ((1, "clear width", given.length.exact_m), (2, "in a side's groove", side)),
            length.exact_m,
        ),
    )
    return fitted(given, "drawer bottom", length, width, sums)


def plan(d: Drawn) -> list[Mark]:
    """A drawer from below: the bottom fixed at the front (below), passing the back (above)."""
    today, now, _ = sizes_px(d)
    low = MIDDLE + 0.5 * today
    today_edge = low - today
    back = corners(PLAN_LEFT + 14.0, today_edge - 4.0, PLAN_RIGHT - 14.0, today_edge + 10.0)
    sides = [corners(x, today_edge - 4.0, x + 14.0, low) for x in (PLAN_LEFT, PLAN_RIGHT - 14.0)]
    return [
        *wood(corners(PLAN_LEFT + 14.0, low - now, PLAN_RIGHT - 14.0, low), count=9, within=sheet_box()),
        Line([*back, back[0]], "edge", 1.4, "6 4"),
        *wood(sides[0], "border-wood", "y", within=sheet_box(PLAN_LEFT, PLAN_LEFT + 14.0)),
        *wood(sides[1], "border-wood", "y", within=sheet_box(PLAN_RIGHT - 14.0)),
        *wood(
            corners(PLAN_LEFT, low, PLAN_RIGHT, low + 16.0),
            "border-wood",
            count=22,
            within=corners(PLAN_LEFT, TOP, PLAN_RIGHT, HEIGHT),
        ),
        Circle(PLAN_LEFT + 0.5 * PLAN_WIDTH, today_edge + 3.0, 3.0, "metal", filled=True),
    ]


def joint(d: Drawn) -> list[Mark]:
    """From the side: the bottom below the drawer's back, its screw in a slot."""
    px, x, mid = d.px, CENTRE, 190.0
    back = 0.5 * px(d.piece["border_thickness"])
    thick = px(d.piece["thickness"])
    moved = d.moved("screw")
    reach = d.either(0.0, d.sizes["behind_dampest"])
    forward, backward = (d.sizes[f"screw_slot_{way}"] for way in ("forward", "backward"))
    low, high = x + px(moved - forward), x + px(moved + backward)
    screw = 0.5 * px(d.numbers["screw"])
    return [
        *end_wood(corners(x - back, 64.0, x + back, mid), "border-wood"),
        *wood(corners(LEFT, mid, x + back + px(reach), mid + thick), count=3),
        *hollow(corners(low, mid, high, mid + thick)),
        *shape(corners(x - screw, 120.0, x + screw, mid + thick), "metal"),
        *shape(corners(x - 2.2 * screw, mid + thick, x + 2.2 * screw, mid + thick + 7.0), "metal"),
        *sized((low, mid + thick + 26.0), (high, mid + thick + 26.0), forward + backward, offset=8.0),
        label(x + back + 8.0, 84.0, "back"),
        label(LEFT + 6.0, mid - 8.0, "bottom"),
        label(RIGHT, 330.0, "to the rear \u2192", "end", "quiet"),
    ]


WAY = Way(
    key="drawer_bottom",
    name="solid bottom sliding in grooves",
    short="solid bottom",
    built_as="a solid bottom that slides in its grooves",
    means="It lies loose in the sides of the drawer and can slide.",
    also=("solid bottom in grooves",),
    kinds=("drawer bottom",),
    fitted=True,
    keeps_flat=True,
    fast_at="front",
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    part="bottom",
    stopped_by=Limit(("screw_slot",), 0.75 * INCH_M, "a washer no longer covers a slot longer than {limit}"),
    make=make,
    plan=plan,
    joint=joint,
    shows="A drawer from below: its bottom is fixed at the front and grows past the back. Below, the screw of the "
    "back in its slot.",
    main_cuts=("bottom_width", "screw_slot_backward", "screw_slot_forward"),
    driest="the bottom draws forward below the back by {screw_narrowing} and still covers it",
    dampest="the bottom pushes out behind the back by {screw_widening}",
    reasons=("Fixed at the front alone, the bottom slides backward in its grooves and out below the back.",),
    steps=(
        "Run the grain from side to side; turned the other way the bottom would push the sides apart.",
        "Glue its front edge into the front's groove, or fix it there with one screw; put no glue in the side grooves.",
        "Screw it up to the back through the slot, snug and then backed off a touch.",
        "Thin the edges from below to the thickness given, until they slide in the grooves by hand.",
    ),
    change="A very deep drawer would ask for two bottoms with a rail between, or for a bottom of sheet.",
    cautions=("Thin wide boards kick at a saw: splitter on, push stick, no cupped stock against the fence.",),
)
