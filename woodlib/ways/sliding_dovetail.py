"""A batten in a sliding dovetail across the underside, fixed at the middle, free to both ends."""

from __future__ import annotations

from ..picture.scene import Mark, corners
from .drawn import Drawn, Number, end_wood, hollow, label, shape, sized, wood
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import MadePiece, Sum
from .making import ACROSS
from .on_battens import battened, on_battens
from .piece import Allowances, Piece
from .rules import INCH_M, NoteRule, down, fixed, travel, up
from .steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from .travel import Quantities, fixings
from .way import Limit, Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of both edges along the batten, careful end; the batten's own swelling taken like the panel's."""
    swelling = piece.border_width_m / travels["width"]
    return {
        **fixings(travels, allowances),
        "cover": allowances.edge_cover_m,
        "thickness": piece.thickness_m,
        "batten": piece.border_width_m,
        "batten_narrowing": swelling * travels["narrowing_high"],
        "batten_widening": swelling * travels["widening_high"],
        "woods_differ": float(piece.border_wood is not piece.wood),
    }


END_GAP = (fixed("clearance"), travel("edge_narrowing"))


RULES = (
    down(
        "housing_depth",
        "housing, depth",
        (fixed("thickness", 1 / 3),),
        "no more than a third, or the panel snaps there",
    ),
    up("housing_stop", "housing, stop from the front edge", (fixed("cover"),), "closed at the front, open at the back"),
    up(
        "stop_gap",
        "gap between the batten's front end and the stop",
        END_GAP,
        "in the driest month the stop draws in towards the batten",
    ),
    up(
        "set_back",
        "batten, set back from the back edge",
        (fixed("cover"), travel("edge_narrowing")),
        "in the driest month the edge draws in and must still hide the batten",
    ),
    down(
        "batten_length",
        "batten, length",
        (fixed("width"), fixed("cover", -2.0), fixed("clearance", -1.0), travel("edge_narrowing", -2.0)),
        "what stop, gap and set-back leave",
        chain=((1, "width"), (-1, "housing_stop"), (-1, "stop_gap"), (-1, "set_back")),
    ),
    up(
        "slack",
        "slack across the dovetail, housing over batten",
        (travel("batten_widening"),),
        "the batten swells across its own grain and must still slide in the dampest month",
        fine=True,
    ),
)


STATES = (
    down(
        "stop_gap_driest",
        "gap at the stop in the driest month",
        (fixed("clearance"),),
        "it stays open",
        chain=((1, "stop_gap"),),
        moves=(travel("edge_narrowing", -1.0),),
    ),
    up(
        "stop_gap_dampest",
        "gap at the stop in the dampest month",
        (*END_GAP, travel("edge_widening")),
        "the stop has moved away from the batten",
        chain=((1, "stop_gap"),),
        moves=(travel("edge_widening"),),
    ),
    up(
        "slack_driest",
        "slack across the dovetail in the driest month",
        (travel("batten_widening"), travel("batten_narrowing")),
        "the batten is at its narrowest; a long taper takes this up",
        chain=((1, "slack"),),
        moves=(travel("batten_narrowing"),),
    ),
)


def make(given: Given) -> MadePiece:
    """A whole panel on battens in dovetailed housings, closed at the front; what rounding leaves is at the back."""
    length, stop = given.cut("batten_length"), given.cut("housing_stop")
    gap, sunk = given.cut("stop_gap"), given.cut("housing_depth")
    left = given.width.exact_m - length.exact_m - stop.exact_m - gap.exact_m
    terms = (
        (1, "stop", stop.exact_m),
        (1, "gap", gap.exact_m),
        (1, "batten", length.exact_m),
        (1, "set back from the back edge", left),
    )
    whole = Sum(ACROSS, terms, given.width.exact_m)
    return on_battens(given, length, stop.exact_m + gap.exact_m, sunk.exact_m, whole)


def plan(d: Drawn) -> list[Mark]:
    """Two battens below, fixed at the middle alone."""
    return battened(d, screwed=False)


def joint(d: Drawn) -> list[Mark]:
    """Across the batten: its dovetail in the panel's housing; below, its front end and the stop, from the side."""
    px, top = d.px, 66.0
    thick, deep = px(d.piece["thickness"]), px(d.sizes["housing_depth"])
    low = top + thick
    half = 0.5 * px(d.piece["border_width"])
    slack = 0.5 * px(d.sizes["slack"])
    slope = deep / 7.0
    foot = low + px(0.5 * d.piece["border_width"])
    gap = d.sizes["stop_gap"]
    stop = d.sizes["housing_stop"]
    edge = RIGHT - 24.0 + px(d.moved("edge"))
    end, y = RIGHT - 24.0 - px(stop + gap), 270.0

    def trapezium(wider: Number) -> list:
        return [
            (CENTRE - half - slope - wider, low - deep),
            (CENTRE + half + slope + wider, low - deep),
            (CENTRE + half + wider, low),
            (CENTRE - half - wider, low),
        ]

    batten = trapezium(0.0)
    return [
        *wood(corners(LEFT, top, RIGHT, low)),
        *hollow(trapezium(slack)),
        *shape([batten[0], batten[1], batten[2], (CENTRE + half, foot), (CENTRE - half, foot), batten[3]]),
        label(LEFT + 6.0, top + 18.0, "panel"),
        label(CENTRE, foot - 10.0, "batten", "middle"),
        label(LEFT, y - 30.0, "its front end, from the side"),
        *end_wood(corners(LEFT, y - 16.0, edge, y + 40.0), "wood"),
        *hollow(corners(LEFT + 60.0, y + 10.0, edge - px(stop), y + 40.0)),
        *wood(corners(LEFT + 60.0, y + 10.0, end, y + 62.0), "border-wood"),
        *sized((end, y + 70.0), (edge - px(stop), y + 70.0), gap + d.moved("edge"), "down", offset=8.0),
    ]


WAY = Way(
    key="sliding_dovetail",
    name="batten in a sliding dovetail",
    short="sliding dovetail",
    built_as="a panel kept flat by battens in sliding dovetails",
    means="Bars let into its underside keep it flat, and it can slide along them.",
    kinds=("table top", "seat", "shelf", "lid", "board", "door panel"),
    keeps_flat=True,
    fast_at="middle",
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(
        ("set_back",),
        0.875 * INCH_M,
        "the batten ends more than {limit} short of the edge and no longer keeps it flat",
    ),
    make=make,
    order=(
        Step("cut the dovetail housings, square to the front edge", [SQUARE_EDGE, SQUARE_ENDS], ["housings"]),
        Step("cut the battens and fit them to the housings", ["parallel face", "housings"], ["fitted battens"]),
        Step("wax the battens and drive them home", ["fitted battens"], [TOGETHER]),
    ),
    plan=plan,
    joint=joint,
    shows="A panel with battens below it: the panel narrows and widens along them. Below, the batten in its housing,"
    " and the gap at its front end.",
    main_cuts=("stop_gap", "set_back", "slack"),
    driest="each edge slides inward along the batten by {edge_narrowing} and still hides its ends",
    dampest="each edge slides outward along the batten by {edge_widening}, and the dovetail is tightest",
    reasons=("The dovetail keeps the panel flat without a screw, and the panel slides along it both ways.",),
    steps=(
        "Rout the housing first, then fit the batten to it with the slack given; slope about 1 in 7.",
        "Taper the housing a little in its length, wide at the back: the batten goes home only with the last push.",
        "Fix it at the middle of the width with one screw or a spot of glue, and nowhere else; wax the rest.",
        "Rings of the batten upright, so that it swells least across the dovetail.",
    ),
    notes=(
        NoteRule(
            (fixed("woods_differ"),),
            "batten and panel are different woods; the slack is that of the panel's wood, right only roughly",
        ),
    ),
    change="A panel too thin for a housing of a third of its thickness would ask for screwed battens.",
    cautions=("A dovetail cutter cannot be lifted out of its cut: clamp a fence, one pass, stop before lifting.",),
)
