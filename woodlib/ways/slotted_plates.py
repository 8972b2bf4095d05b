"""The panel as a top, held to its rails by metal angles whose slots let the screws travel."""

from __future__ import annotations

from ..picture.scene import Mark, corners
from .drawn import Drawn, end_wood, label, shape
from .fixings_on_a_line import slot_detail
from .joint_drawing import CENTRE, LEFT, RIGHT
from .on_a_base import from_fast_line, make, plan
from .piece import Allowances, Piece
from .rules import fixed, travel, up
from .travel import Quantities
from .way import Limit, Way

MOST_SLOT_M = 0.02  # slots in sold metal end there; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of the edges and of the outer screws against a base that is fast on one line, careful end."""
    return {**from_fast_line(travels, piece, allowances), "screw": allowances.screw_diameter_m}


REACHES = tuple(
    up(
        f"long_rail_slot_{direction}",
        f"screws of the long rails, slot needed {direction} from the screw's centre",
        (fixed("screw", 0.5), fixed("clearance", 0.5), travel(f"edge_{way}")),
        f"set each screw so far from that end of its slot: in the {month} month it moves {direction} with the top",
    )
    for direction, way, month in (("outward", "widening", "dampest"), ("inward", "narrowing", "driest"))
)
RULES = (
    up(
        "long_rail_slot",
        "slots needed in the metal of the long rails",
        (fixed("screw"), fixed("clearance"), travel("edge_narrowing"), travel("edge_widening")),
        "screw shank, plus the top's travel both ways, plus play; choose metal whose slots run square to the rail",
        chain=tuple((1, rule.key) for rule in REACHES),
    ),
    *REACHES,
    up(
        "end_rail_slot",
        "slots needed in the metal of the end rails",
        (fixed("screw"), fixed("clearance"), travel("outer_narrowing"), travel("outer_widening")),
        "as along the long rails; there the slots run along the rail",
    ),
    up(
        "metal_gap",
        "gap between the metal and the top",
        (fixed("clearance", 0.5),),
        "set below the rail's top edge, the metal pulls the top down on the rail",
        fine=True,
    ),
)


def joint(d: Drawn) -> list[Mark]:
    """Across a long rail: the angle on its inner face, the screw in the slot going with the top; below, the slot."""
    px, top = d.px, 62.0
    low = top + px(d.piece["thickness"])
    rail, gap = CENTRE + 30.0, px(d.sizes["metal_gap"])
    x, half = CENTRE - 40.0 + px(d.moved("edge")), 0.5 * px(d.numbers["screw"])
    leg = low + gap
    out, inward = (px(d.sizes[f"long_rail_slot_{way}"]) for way in ("outward", "inward"))
    slot = CENTRE - 40.0 - inward, CENTRE - 40.0 + out
    return [
        *end_wood(corners(LEFT, top, RIGHT, low), "wood"),
        *end_wood(corners(rail, low, rail + px(d.piece["border_thickness"] * 1.2), low + 96.0), "border-wood"),
        *shape(corners(rail - 5.0, leg, rail, leg + 80.0), "metal"),
        *shape(corners(slot[1], leg, rail - 5.0, leg + 5.0), "metal"),
        *shape(corners(slot[0] - 24.0, leg, slot[0], leg + 5.0), "metal"),
        *shape(corners(x - half, low - 0.55 * (low - top), x + half, leg + 5.0), "metal"),
        *shape(corners(x - 2.0 * half, leg + 5.0, x + 2.0 * half, leg + 11.0), "metal"),
        label(LEFT + 6.0, top + 18.0, "top"),
        label(LEFT + 6.0, leg + 40.0, "metal angle"),
        label(rail + 8.0, leg + 84.0, "rail"),
        label(LEFT, 262.0, "slot from below, enlarged"),
        *slot_detail(d, "long_rail_slot", d.numbers["screw"], 296.0, 0.0, d.moved("edge")),
        label(RIGHT, 262.0, "outward \u2192", "end", "quiet"),
    ]


WAY = Way(
    key="slotted_plates",
    name="slotted metal angles on a base",
    short="slotted metal",
    built_as="a panel held to its base by slotted metal angles",
    means="Metal angles with slots hold it down from below and let it slide.",
    plural=True,
    also=("slotted metal fixings", "metal angles with slots"),
    kinds=("table top",),
    on_a_base=True,
    numbers=numbers,
    cuts=RULES,
    stopped_by=Limit(("long_rail_slot",), MOST_SLOT_M, "no sold metal has a slot longer than {limit}"),
    make=make,
    plan=plan,
    joint=joint,
    shows="A panel on a base: the panel narrows and widens past it. Below, the screw of a long rail travels along the "
    "slot in its metal.",
    main_cuts=("long_rail_slot_outward", "long_rail_slot_inward"),
    driest="the screws of the long rails slide inward in their slots by {edge_narrowing}",
    dampest="the screws of the long rails slide outward in their slots by {edge_widening}",
    reasons=("The slots are in the metal: it holds the top down but not across its grain, so the top slides.",),
    steps=(
        "Buy metal whose slots are at least as long as given, and turn every slot across the grain of the top.",
        "Screw the metal to the rails through its round holes, a hair below their top edge.",
        "Set each screw in its slot with the reach given to both ends, not by eye in the middle.",
        "Use round-head screws with washers, drawn up snug and then backed off a touch.",
    ),
    remarks=("a slot in metal wears no wood, but a screw drawn hard into it holds like glue",),
    change="A top that moves further than sold slots allow would ask for buttons or slotted blocks of wood.",
)
