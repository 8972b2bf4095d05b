"""The panel as a top, held down by metal clips whose tongues sit in a saw kerf of the rails."""

from __future__ import annotations

from ..picture.scene import Mark, corners
from .drawn import Drawn, end_wood, hollow, label, shape, sized
from .joint_drawing import CENTRE, LEFT, RIGHT
from .on_a_base import from_fast_line, make, plan
from .piece import Allowances, Piece
from .rules import down, fixed, travel, up
from .travel import Quantities
from .way import Limit, Way

MOST_OUT_M = 0.0095  # a clip holds by a quarter of its tongue at least; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Travel of each edge against a base that is fast on one line, careful end, and the clip's sizes."""
    return {
        **from_fast_line(travels, piece, allowances),
        "tongue": allowances.clip_tongue_m,
        "kerf": allowances.clip_kerf_m,
    }


RULES = (
    up(
        "clip_gap",
        "gap between the clip's bend and the long rail",
        (fixed("clearance"), travel("edge_widening")),
        "in the dampest month the clip moves outward and must not push the rail",
    ),
    up(
        "kerf_depth",
        "kerf for the clips, depth",
        (fixed("tongue"),),
        "as deep as the clip's tongue is long, which may come in with all of it in the dampest month",
    ),
    down("kerf_width", "kerf for the clips, width", (fixed("kerf"),), "one pass of a saw", fine=True),
)
STATES = (
    up(
        "drawn_out",
        "tongue of a clip out of its kerf in the driest month",
        (fixed("clearance"), travel("edge_widening"), travel("edge_narrowing")),
        "it draws back with the edge",
        chain=((1, "clip_gap"),),
        moves=(travel("edge_narrowing"),),
    ),
)


def joint(d: Drawn) -> list[Mark]:
    """Across a long rail: the clip is screwed to the top, its tongue goes in and out of the kerf."""
    px, top = d.px, 66.0
    low = top + px(d.piece["thickness"])
    gap, moved, tongue = d.sizes["clip_gap"], d.moved("edge"), d.numbers["tongue"]
    rail, drop, thin = CENTRE + 10.0, low + 42.0, 4.0
    bend = rail + px(moved - gap)
    tip, foot = bend + px(tongue), LEFT + 70.0 + px(moved)
    return [
        *end_wood(corners(LEFT, top, RIGHT, low), "wood"),
        *end_wood(corners(rail, low, rail + px(d.piece["border_thickness"] * 1.2), 300.0), "border-wood"),
        *hollow(corners(rail, drop - 3.0, rail + px(d.sizes["kerf_depth"]), drop - 3.0 + px(d.numbers["kerf"]))),
        *shape(
            [
                (foot, low),
                (bend, low),
                (bend, drop),
                (tip, drop),
                (tip, drop + thin),
                (bend - thin, drop + thin),
                (bend - thin, low + thin),
                (foot, low + thin),
            ],
            "metal",
        ),
        *shape(corners(foot + 22.0, low - 0.55 * (low - top), foot + 28.0, low + thin), "metal"),
        *shape(corners(foot + 17.0, low + thin, foot + 33.0, low + thin + 6.0), "metal"),
        label(LEFT + 6.0, top + 18.0, "top"),
        label(LEFT + 6.0, low + 40.0, "clip"),
        label(rail + 8.0, 292.0, "rail"),
        *sized((bend, drop + 30.0), (rail, drop + 30.0), gap - moved, "down", offset=8.0),
        label(LEFT, 320.0, "in the kerf:"),
        *sized((rail, 334.0), (tip, 334.0), tongue - gap + moved, "down", offset=8.0),
    ]


WAY = Way(
    key="kerf_clips",
    name="clips in a kerf of the rails",
    short="clips in a kerf",
    built_as="a panel held to its base by metal clips in a kerf",
    means="Small metal clips hold it down from below and let it slide.",
    plural=True,
    also=("clips in a kerf",),
    kinds=("table top",),
    on_a_base=True,
    numbers=numbers,
    cuts=RULES,
    states=STATES,
    stopped_by=Limit(("drawn_out",), MOST_OUT_M, "a clip draws further out of its kerf than {limit}"),
    make=make,
    plan=plan,
    joint=joint,
    shows="A panel on a base: the panel narrows and widens past it. Below, the tongue of a clip moves in and out of "
    "the kerf in the rail.",
    main_cuts=("clip_gap", "kerf_depth"),
    driest="each clip of the long rails draws back by {edge_narrowing} and still holds",
    dampest="each clip of the long rails moves outward by {edge_widening} and clears the rail",
    reasons=("The clips hold the top down but not across its grain, so the top slides on them.",),
    steps=(
        "Saw the kerf along the inner faces of all rails, so far below their top edge that the clip pulls the top down.",
        "Set the clips of the long rails with the gap given; those of the end rails slide along their kerf.",
        "Screw each clip to the top through its round hole, snug; keep clips clear of the corners of the base.",
    ),
    change="A top that moves further than a clip's tongue is long would ask for buttons, whose tongues are made to measure.",
)
