"""The panel as a top, held to its apron by wooden blocks with slots."""

from __future__ import annotations

from ..picture.scene import Mark
from .drawn import Drawn
from .fixings_on_a_line import screwed
from .on_a_base import from_fast_line, make, plan
from .piece import Allowances, Piece
from .rules import INCH_M, CutRule, down, fixed, travel, up
from .travel import Quantities
from .way import Limit, Way

HEAD_SHARE = 2.0  # a screw head or washer is about twice the shank; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of the edges and of the outer screws against a base that is fast on one line, careful end."""
    return {
        **from_fast_line(travels, piece, allowances),
        "screw": allowances.screw_diameter_m,
        "hold": allowances.button_hold_m,
    }


REACHES = (
    up(
        "long_apron_slot_outward",
        "slots in the blocks of the long aprons, outward from the screw's centre",
        (fixed("screw", 0.5), fixed("clearance", 0.5), travel("edge_widening")),
        "in the dampest month the screw moves outward with the top",
    ),
    up(
        "long_apron_slot_inward",
        "slots in the blocks of the long aprons, inward from the screw's centre",
        (fixed("screw", 0.5), fixed("clearance", 0.5), travel("edge_narrowing")),
        "in the driest month the screw moves inward with the top",
    ),
)


def _slot(key: str, where: str, name: str, reaches: tuple[CutRule, ...] = ()) -> CutRule:
    return up(
        key,
        f"slots in the {where}, length",
        (fixed("screw"), fixed("clearance"), travel(f"{name}_narrowing"), travel(f"{name}_widening")),
        "screw shank, plus the top's travel both ways, plus play",
        chain=tuple((1, rule.key) for rule in reaches),
    )


RULES = (
    _slot("long_apron_slot", "blocks of the long aprons", "edge", REACHES),
    *REACHES,
    _slot("end_apron_slot", "outer blocks of the end aprons", "outer"),
    up(
        "block_gap",
        "gap between top edge of block and top",
        (fixed("clearance", 0.5),),
        "the screw then pulls the top down on the apron and not on the block",
    ),
    up(
        "block_width",
        "blocks of the long aprons, width square to the apron",
        (fixed("screw", HEAD_SHARE), fixed("hold", 2.0), travel("edge_narrowing"), travel("edge_widening")),
        "the slot, with sound wood on both sides of it",
    ),
)


STATES = (
    down(
        "play_driest",
        "play left in the slots of the long aprons in the driest month",
        (fixed("clearance", 0.5),),
        "the screw has come inward",
        chain=((1, "long_apron_slot_inward"), (-0.5, "screw")),
        moves=(travel("edge_narrowing", -1.0),),
    ),
    down(
        "play_dampest",
        "play left in the slots of the long aprons in the dampest month",
        (fixed("clearance", 0.5),),
        "the screw has gone outward",
        chain=((1, "long_apron_slot_outward"), (-0.5, "screw")),
        moves=(travel("edge_widening", -1.0),),
    ),
)


def joint(d: Drawn) -> list[Mark]:
    """The screw of a block of the long aprons in its slot."""
    return screwed(d, "block", "long_apron_slot", "edge")


WAY = Way(
    key="slotted_blocks",
    name="slotted blocks on a base",
    short="slotted blocks",
    built_as="a panel held to its base by slotted blocks",
    means="Blocks with slots hold it down from below and let it slide.",
    plural=True,
    also=("slotted blocks on an apron",),
    kinds=("table top", "seat"),
    on_a_base=True,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(("long_apron_slot",), 0.75 * INCH_M, "a washer no longer covers a slot longer than {limit}"),
    make=make,
    plan=plan,
    joint=joint,
    shows="A panel on a base: the panel narrows and widens past it. Below, the screw of a block of the long aprons "
    "travels along its slot.",
    main_cuts=("long_apron_slot_outward", "long_apron_slot_inward"),
    driest="the screws of the long aprons slide inward in their slots by {edge_narrowing}",
    dampest="the screws of the long aprons slide outward in their slots by {edge_widening}",
    reasons=("The blocks hold the top down but not across its grain, so the top slides under their screws.",),
    steps=(
        "Glue and screw the blocks to the apron, their slots across the grain of the top.",
        "Use pan-head screws with washers, drawn up snug and then backed off a touch.",
        "Screw no deeper than two thirds of the top's thickness; drill with a stop.",
    ),
    change="Rails thick enough for a groove could take buttons, which need no slots along the long rails.",
)
