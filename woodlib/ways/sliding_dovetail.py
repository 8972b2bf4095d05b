"""A batten in a sliding dovetail across the underside, fixed at the middle, free to both ends."""

from __future__ import annotations

from .piece import Allowances, Piece
from .registry import register
from .rules import INCH_M, CutRule, Facts, NoteRule, fixed, travel
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
    CutRule(
        "housing_depth",
        "housing, depth",
        (fixed("thickness", 1 / 3),),
        "down",
        "no more than a third, or the panel snaps there",
    ),
    CutRule(
        "housing_stop",
        "housing, stop from the front edge",
        (fixed("cover"),),
        "up",
        "closed at the front, open at the back",
    ),
    CutRule(
        "stop_gap",
        "gap between the batten's front end and the stop",
        END_GAP,
        "up",
        "in the driest month the stop draws in towards the batten",
    ),
    CutRule(
        "set_back",
        "batten, set back from the back edge",
        (fixed("cover"), travel("edge_narrowing")),
        "up",
        "in the driest month the edge draws in and must still hide the batten",
    ),
    CutRule(
        "batten_length",
        "batten, length",
        (fixed("width"), fixed("cover", -2.0), fixed("clearance", -1.0), travel("edge_narrowing", -2.0)),
        "down",
        "what stop, gap and set-back leave",
    ),
    CutRule(
        "slack",
        "slack across the dovetail, housing over batten",
        (travel("batten_widening"),),
        "up",
        "the batten swells across its own grain and must still slide in the dampest month",
        fine=True,
    ),
)

STATES = (
    CutRule(
        "stop_gap_driest",
        "gap at the stop in the driest month",
        (fixed("clearance"),),
        "down",
        "it stays open",
        fine=True,
    ),
    CutRule(
        "stop_gap_dampest",
        "gap at the stop in the dampest month",
        (*END_GAP, travel("edge_widening")),
        "up",
        "the stop has moved away from the batten",
    ),
    CutRule(
        "slack_driest",
        "slack across the dovetail in the driest month",
        (travel("batten_widening"), travel("batten_narrowing")),
        "up",
        "the batten is at its narrowest; a long taper takes this up",
        fine=True,
    ),
)


def _driest(facts: Facts) -> str:
    return f"each edge slides inward along the batten by {facts.up_to('edge_narrowing')} and still hides its ends"


def _dampest(facts: Facts) -> str:
    return f"each edge slides outward along the batten by {facts.up_to('edge_widening')}, and the dovetail is tightest"


SLIDING_DOVETAIL = register(
    Way(
        key="sliding_dovetail",
        name="batten in a sliding dovetail",
        short="sliding dovetail",
        built_as="a panel kept flat by battens in sliding dovetails",
        kinds=("table top", "seat", "lid", "board", "door panel"),
        keeps_flat=True,
        numbers=numbers,
        cuts=RULES,
        states=STATES,
        stopped_by=Limit(
            ("set_back",),
            0.875 * INCH_M,
            "the batten ends more than {limit} short of the edge and no longer keeps it flat",
        ),
        shows=(
            "A panel with battens below it: the panel narrows and widens along them. Below, the batten in its housing,"
            " and the gap at its front end."
        ),
        main_cuts=("stop_gap", "set_back", "slack"),
        driest=_driest,
        dampest=_dampest,
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
)
