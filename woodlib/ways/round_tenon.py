"""A round tenon glued into a solid seat."""

from __future__ import annotations

from dataclasses import replace

from ..picture.scene import Mark
from .drawn import Drawn
from .given import Given
from .held import Held
from .made import MadePiece, Sum
from .making import made
from .piece import Allowances, Piece
from .rules import down, fixed, travel, up
from .turned import ORDER, OVAL, joint, numbers, plan, radial_share, turned
from .way import Way


def holding(piece: Piece, allowances: Allowances) -> Held:
    """A tenon glued all round is held fully along the seat's grain, where the seat does not move."""
    return Held(radial_share(piece), ("along the seat's grain the tenon is held fully, across it both agree",))


RULES = (
    up("hole", "hole in the seat, diameter", (fixed("diameter"),), "the size of the bit", fine=True),
    down("tenon_length", "tenon, length", (fixed("tenon_length"),), "through the seat, or stopped short of its face"),
)


def make(given: Given) -> MadePiece:
    """The tenon, turned from a square."""
    length = given.cut("tenon_length")
    part, places, section = turned(given, "tenon", length)
    wide = given.width.exact_m
    whole = Sum("diameter", ((1, "tenon", wide),), wide)
    return replace(made(given, (part,), (whole,), places, section, wide), size_m=(length.exact_m, wide, wide))


def _joint(d: Drawn) -> list[Mark]:
    return joint(d, d.sizes["hole"], "seat's grain left to right")


WAY = Way(
    key="round_tenon",
    name="round tenon glued in",
    short="glued round tenon",
    built_as="a round tenon glued into solid wood",
    means="A round peg is glued into a round hole.",
    also=("round tenon glued into a solid seat",),
    kinds=("turned part",),
    round=True,
    holds=True,
    numbers=numbers,
    cuts=RULES,
    states=(
        *OVAL,
        up(
            "short_driest",
            "tenon short of the hole in the driest month, along the seat's grain",
            (fixed("fit"), travel("small_narrowing")),
            "what the glue has to hold, if nothing was dried first",
            fine=True,
        ),
    ),
    holding=holding,
    part="tenon",
    make=make,
    order=ORDER,
    plan=plan,
    joint=_joint,
    shows="The end of a round: it goes oval as it dries. Below, the tenon in its hole.",
    main_cuts=("hole",),
    driest="the tenon wants to leave the hole by {small_narrowing} along the seat's grain",
    dampest="the tenon presses on the hole along the seat's grain, where it wants {small_widening} more",
    reasons=(
        "The joint stays sound: along the seat's grain it holds back at most {most}, and wood stays elastic below "
        "{limit}.",
        "The joint will work loose: along the seat's grain it holds back about {held}, at most {most}; above {limit} "
        "the tenon takes a set.",
        "Expect a loose joint: along the seat's grain it holds back about {held}, at most {most}; from {limit} glue or "
        "wood starts to fail.",
    ),
    steps=(
        "Dry the tenons below the driest month of the house, in a box with a lamp or in hot dry sand, before turning.",
        "Turn the tenon so that its rings run across the grain of the seat: seat and tenon then move alike there.",
        "Wedge it across the seat's grain; along it a wedge splits the seat.",
        "Bore a test hole in the same wood, and turn the tenon to a push fit in it.",
    ),
    change="A tenon dried below the driest month before it is turned only tightens; so does a calmer house.",
    cautions=("Hot sand burns and a lamp in a box of shavings sets fire: watch it, and keep the chips away.",),
    watch="around the tenon",
)
