"""The panel as a top, held to its apron by figure-eight fasteners that swing with it."""

from __future__ import annotations

from ..picture.scene import Area, Circle, Line, Mark, corners
from ..words.decided import larger, smaller
from .drawn import Drawn, end_wood, hollow, label, sized
from .joint_drawing import CENTRE, LEFT, RIGHT
from .on_a_base import from_fast_line, make, plan
from .piece import Allowances, Piece
from .rules import NoteRule, fixed, travel, up
from .travel import Quantities
from .way import Limit, Way

FREE_SWING = 0.5  # travel over reach: 30 degrees to a side, where a plate still swings freely; common practice


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of the outer plates on the end aprons and of the edges, careful end, and the plate's sizes."""
    return {
        **from_fast_line(travels, piece, allowances),
        "reach": allowances.plate_reach_m,
        "plate": allowances.plate_width_m,
    }


RULES = (
    up(
        "end_recess_width",
        "recess in the end aprons, width along the apron",
        (fixed("plate"), fixed("clearance"), travel("outer_narrowing"), travel("outer_widening")),
        "the plate swings with the top past its screw in the apron, both ways",
    ),
    up(
        "recess_depth",
        "recess, depth below the top edge of the apron",
        (fixed("clearance"),),
        "thickness of the plate and a hair more, so that the screws pull the top down on the apron",
        fine=True,
    ),
    up(
        "long_recess_length",
        "recess in the long aprons, length along the apron",
        (fixed("plate"), fixed("reach"), fixed("clearance")),
        "there the plate lies along the apron, because the top moves square to it",
    ),
)


STATES = (
    up(
        "swing_driest",
        "swing of the outer plates to the driest month",
        (travel("outer_narrowing"),),
        "sideways at the screw in the top",
        fine=True,
    ),
    up(
        "swing_dampest",
        "swing of the outer plates to the dampest month",
        (travel("outer_widening"),),
        "sideways at the screw in the top",
        fine=True,
    ),
)


def _swing(name: str) -> NoteRule:
    return NoteRule(
        (travel(name), fixed("reach", -FREE_SWING)),
        "the outer plates would have to swing more than 30 degrees; use longer plates or slotted blocks out there",
    )


def joint(d: Drawn) -> list[Mark]:
    """From above on an end apron: the plate turns about its screw in the apron, the other goes with the top."""
    px, y = d.px, 250.0
    wide = d.sizes["end_recess_width"]
    reach, half = d.numbers["reach"], 0.5 * px(d.numbers["plate"])
    side = smaller(larger(d.moved("outer"), -0.9 * reach), 0.9 * reach)
    up = reach - side * side / (2.0 * reach)  # the small-angle arc: within 4 % up to 30 degrees
    x, top, neck = CENTRE + px(side), y - px(up), 0.5 * half
    return [
        *end_wood(corners(LEFT, y - 1.1 * half, RIGHT, y + 1.6 * half), "border-wood"),
        *hollow(corners(CENTRE - 0.5 * px(wide), y - 1.1 * half, CENTRE + 0.5 * px(wide), y + 1.2 * half)),
        Area([(CENTRE - neck, y), (CENTRE + neck, y), (x + neck, top), (x - neck, top)], "metal"),
        Circle(CENTRE, y, half, "metal", filled=True),
        Circle(x, top, half, "metal", filled=True),
        Circle(CENTRE, y, 4.0, "edge", filled=True),
        Circle(x, top, 4.0, "edge", filled=True),
        Line([(CENTRE, y), (CENTRE, y - px(reach))], "today", 1.2, "5 4"),
        *sized((CENTRE - 0.5 * px(wide), y + 2.2 * half), (CENTRE + 0.5 * px(wide), y + 2.2 * half), wide, offset=8.0),
        label(LEFT + 6.0, y + 1.4 * half, "end apron"),
        label(LEFT + 6.0, 76.0, "upper screw: top; lower: apron"),
    ]


WAY = Way(
    key="figure_plates",
    name="figure-eight fasteners on a base",
    short="figure-eight plates",
    built_as="a panel held to its base by figure-eight fasteners that turn",
    means="Small metal plates hold it down from below, and turn as the wood moves.",
    plural=True,
    also=("figure-eight fasteners", "figure-eight fasteners on an apron"),
    kinds=("table top", "seat"),
    on_a_base=True,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(
        ("swing_driest", "swing_dampest"),
        0.008,
        "the outer plates swing by more than {limit}, or 30 degrees",
    ),
    make=make,
    plan=plan,
    joint=joint,
    shows="A panel on a base: the panel narrows and widens past it. Below, a plate in its recess from above; it "
    "turns with the panel.",
    main_cuts=("end_recess_width", "recess_depth"),
    driest="the outer plates swing inward by {outer_narrowing}",
    dampest="the outer plates swing outward by {outer_widening}",
    reasons=("Each plate turns about its screw in the apron, so the top is held down but slides across.",),
    steps=(
        "Set each plate so that a line through its holes stands square to the way the top moves.",
        "On the end aprons that is square to the apron; on the long aprons it is along it.",
        "Recess it just below the top edge of the apron, wide enough to swing.",
        "Draw the screws up snug, not tight: the plate has to turn.",
    ),
    notes=(_swing("outer_narrowing"), _swing("outer_widening")),
    change="A wide top that asks its plates to swing more than 30 degrees would ask for slotted blocks or buttons.",
)
