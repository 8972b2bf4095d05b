"""A loose ring around a turned post."""

from __future__ import annotations

from ..picture.scene import Mark
from .drawn import Drawn
from .given import Given
from .made import MadePiece, Section, Sum, WoodPart
from .making import made
from .rules import down, fixed, travel, up
from .steps import TOGETHER, Step
from .turned import ORDER, OVAL, joint, numbers, plan, turned
from .way import Limit, Way

RULES = (
    up(
        "bore",
        "ring, inside diameter",
        (fixed("diameter"), fixed("least", 2.0), travel("large_narrowing"), travel("large_widening")),
        "in the dampest month the post grows, in the driest the ring's own hole shrinks across its grain",
        fine=True,
    ),
)


def make(given: Given) -> MadePiece:
    """The post, and a ring whose wall is as wide as the border."""
    post, places, section = turned(given, "post", given.length)
    bore, wall = given.cut("bore"), given.border.exact_m
    across = bore.plus(2 * wall, "with a wall as wide as the border on both sides")
    # A ring has the area of its outer circle less that of its bore: (D - d)(D + d) of a square.
    ring = WoodPart(
        "ring",
        1,
        across,
        across,
        given.border_thickness,
        "turned",
        (2 * wall, across.exact_m + bore.exact_m),
        "bored to the cut list",
    )
    terms = ((2, "wall", wall), (1, "bore", bore.exact_m))
    wide = given.width.exact_m
    half = (across.exact_m - wide) / 2
    play = (bore.exact_m - wide) / 2
    around = (
        Section("ring", (-half, wide + half), (-half, wide + half)),
        Section("bore of the ring", (-play, wide + play), (-play, wide + play), loose=True),
    )
    return made(given, (post, ring), (Sum("ring", terms, across.exact_m),), places, (*around, *section), wide)


RING_ORDER = (
    Step("plane the ring's blank to thickness", makes=["ring blank"]),
    Step("bore the ring to its inside diameter", ["ring blank"], ["bored ring"]),
    Step("turn the outside of the ring about its bore, and ease its edges", ["bored ring"], ["ring"], ["bored ring"]),
    Step("slip the ring over the post; pin it at one place only, or leave it loose", ["ring", TOGETHER]),
)


def _joint(d: Drawn) -> list[Mark]:
    return joint(d, d.sizes["bore"], "ring around the post")


WAY = Way(
    key="loose_ring",
    name="ring left loose around the post",
    short="loose ring",
    built_as="a ring that stays loose around its post",
    means="The ring is not glued, so that the post can grow and shrink inside it.",
    also=("loose ring around a turned post",),
    kinds=("turned part",),
    round=True,
    numbers=numbers,
    cuts=RULES,
    states=(
        *OVAL,
        down(
            "play_dampest",
            "play around the post in the dampest month",
            (fixed("least"),),
            "on each side",
            chain=((0.5, "bore"), (-0.5, "diameter")),
            moves=(travel("large_narrowing", -0.5), travel("large_widening", -0.5)),
        ),
    ),
    part="post",
    stopped_by=Limit(
        ("oval_driest", "oval_dampest"),
        0.0015,
        "the post goes out of round by more than {limit}",
    ),
    make=make,
    order=(*ORDER, *RING_ORDER),
    plan=plan,
    joint=_joint,
    shows="The end of a round: it goes oval as it dries. Below, the post in its ring.",
    main_cuts=("bore",),
    driest="the post goes oval by {oval_narrowing}, and the ring stays loose",
    dampest="the post grows by {large_widening}, and the ring stays loose",
    reasons=("The ring is bored for the post at its thickest and its own hole at its narrowest, so nothing binds.",),
    steps=(
        "Turn the post round today; it will be oval in other months, and a finish does not stop that.",
        "Bore the ring to the size given and ease its edges.",
        "Pin the ring at one place only, or let it hang loose.",
    ),
    change="A ring that has to sit tight would ask for one laid up from segments with their grain around the post.",
    watch="inside the ring",
)
