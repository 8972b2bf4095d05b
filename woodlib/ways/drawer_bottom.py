"""A solid drawer bottom, grain from side to side, fixed at the front; its width runs from front to back.

The piece's width is the clear depth inside the drawer, from the front to the back; its border thickness is taken for
the thickness of the drawer's back, under which the bottom passes, and of its sides.
"""

from __future__ import annotations

from .parts import OPENING
from .piece import Allowances, Piece
from .registry import register
from .rules import INCH_M, CutRule, Facts, fixed, travel
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
    CutRule(
        "bottom_width",
        "bottom, width from front to back",
        (fixed("cover"), fixed("depth"), fixed("back"), travel("bottom_shrink")),
        "up",
        "in the driest month it must still sit in the front's groove and cover the back",
    ),
    CutRule(
        "bottom_length",
        "bottom, length from side to side",
        (fixed("length"), fixed("cover", 2.0), fixed("clearance", -1.0)),
        "down",
        "along the grain it hardly moves; play against the bottoms of both grooves",
    ),
    CutRule(
        "groove_depth", "grooves in front and sides, depth", (fixed("cover"),), "up", "what holds the bottom all round"
    ),
    CutRule(
        "edge_thickness",
        "edges of the bottom, thinned to",
        (fixed("tongue"),),
        "down",
        "no more than a third of a side, so that wood is left on both sides of the groove",
        fine=True,
    ),
    CutRule(
        "groove_width",
        "grooves, width",
        (fixed("tongue"), travel("tongue_widening")),
        "up",
        "in the dampest month the thicker edges must still slide",
        fine=True,
    ),
    CutRule(
        "screw_slot",
        "screw slot below the back, length",
        (fixed("screw"), fixed("clearance"), travel("screw_narrowing"), travel("screw_widening")),
        "up",
        "screw shank, plus the bottom's travel both ways, plus play; fixed at the front, it has all of the movement",
    ),
    CutRule(
        "screw_slot_backward",
        "screw slot below the back, backward from the screw's centre",
        (fixed("screw", 0.5), fixed("clearance", 0.5), travel("screw_narrowing")),
        "up",
        "in the driest month the slot has come forward past the screw",
    ),
    CutRule(
        "screw_slot_forward",
        "screw slot below the back, forward from the screw's centre",
        (fixed("screw", 0.5), fixed("clearance", 0.5), travel("screw_widening")),
        "up",
        "in the dampest month the slot has gone backward past the screw",
    ),
)

STATES = (
    CutRule(
        "behind_today",
        "bottom behind the drawer's back today",
        (travel("bottom_shrink"),),
        "up",
        "leave room behind the drawer",
    ),
    CutRule(
        "behind_dampest",
        "bottom behind the drawer's back in the dampest month",
        (travel("bottom_shrink"), travel("bottom_growth")),
        "up",
        "leave room behind the drawer",
    ),
)


def _driest(facts: Facts) -> str:
    return f"the bottom draws forward below the back by {facts.up_to('screw_narrowing')} and still covers it"


def _dampest(facts: Facts) -> str:
    return f"the bottom pushes out behind the back by {facts.up_to('screw_widening')}"


DRAWER_BOTTOM = register(
    Way(
        key="drawer_bottom",
        name="solid bottom sliding in grooves",
        short="solid bottom",
        built_as="a solid bottom that slides in its grooves",
        also=("solid bottom in grooves",),
        kinds=("drawer bottom",),
        fitted=True,
        keeps_flat=True,
        numbers=numbers,
        cuts=RULES,
        states=STATES,
        outside=OPENING,
        part="bottom",
        stopped_by=Limit(("screw_slot",), 0.75 * INCH_M, "a washer no longer covers a slot longer than {limit}"),
        shows=(
            "A drawer from below: its bottom is fixed at the front and grows past the back. Below, the screw of the "
            "back in its slot."
        ),
        main_cuts=("bottom_width", "screw_slot_backward", "screw_slot_forward"),
        driest=_driest,
        dampest=_dampest,
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
)
