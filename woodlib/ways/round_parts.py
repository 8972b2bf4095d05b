"""Turned parts: a round tenon glued into a solid seat, and a loose ring around a turned post.

The piece's width is the diameter. A round goes oval: it moves more along its rings than across them.
"""

from __future__ import annotations

from math import cos, radians

from .held import Held
from .parts import ROUND
from .piece import Allowances, Piece
from .registry import register
from .rules import CutRule, Facts, fixed, travel
from .travel import Quantities
from .way import Limit, Way

FIT_M = 0.0002  # glue and hand pressure; common practice, no source


def radial_share(piece: Piece) -> float:
    """Radial coefficient over that of the piece's width: what a tenon wants in the direction that the seat forbids.

    >>> round(radial_share(Piece("white ash", "25 mm", "50 mm", "25 mm", "40 mm")), 2)
    0.62
    """
    square = cos(radians(piece.ring_angle_deg)) ** 2
    radial, tangential = piece.wood.radial_coefficient, piece.wood.tangential_coefficient
    return min(1.0, radial / (tangential * square + radial * (1.0 - square)))


def holding(piece: Piece, held: Held, allowances: Allowances) -> Held:
    """A tenon glued all round is held fully along the seat's grain, where the seat does not move."""
    return Held(radial_share(piece), ("along the seat's grain the tenon is held fully, across it both agree",))


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Change of the two diameters, careful ends, and how far the round goes oval."""
    radial = radial_share(piece)
    named = {}
    for way in ("narrowing", "widening"):
        named[f"large_{way}"] = travels[f"{way}_high"]
        named[f"small_{way}"] = radial * travels[f"{way}_high"]
        named[f"oval_{way}"] = (1.0 - radial) * travels[f"{way}_high"]
    return {
        **named,
        "diameter": travels["width"],
        "least": allowances.least_gap_m,
        "fit": FIT_M,
        "tenon_length": piece.length_m,
    }


OVAL = (
    CutRule(
        "oval_driest", "out of round in the driest month", (travel("oval_narrowing"),), "up", "long one way", fine=True
    ),
    CutRule(
        "oval_dampest",
        "out of round in the dampest month",
        (travel("oval_widening"),),
        "up",
        "long the other way",
        fine=True,
    ),
)

TENON_RULES = (
    CutRule("hole", "hole in the seat, diameter", (fixed("diameter"),), "up", "the size of the bit", fine=True),
    CutRule(
        "tenon_length",
        "tenon, length",
        (fixed("tenon_length"),),
        "down",
        "through the seat, or stopped short of its face",
    ),
)
RING_RULES = (
    CutRule(
        "bore",
        "ring, inside diameter",
        (fixed("diameter"), fixed("least", 2.0), travel("large_narrowing"), travel("large_widening")),
        "up",
        "in the dampest month the post grows, in the driest the ring's own hole shrinks across its grain",
        fine=True,
    ),
)


def _tenon_driest(facts: Facts) -> str:
    return f"the tenon wants to leave the hole by {facts.up_to('small_narrowing')} along the seat's grain"


def _tenon_dampest(facts: Facts) -> str:
    return f"the tenon presses on the hole along the seat's grain, where it wants {facts.up_to('small_widening')} more"


def _ring_driest(facts: Facts) -> str:
    return f"the post goes oval by {facts.up_to('oval_narrowing')}, and the ring stays loose"


def _ring_dampest(facts: Facts) -> str:
    return f"the post grows by {facts.up_to('large_widening')}, and the ring stays loose"


ROUND_TENON = register(
    Way(
        key="round_tenon",
        name="round tenon glued in",
        short="glued round tenon",
        built_as="a round tenon glued into solid wood",
        also=("round tenon glued into a solid seat",),
        kinds=("turned part",),
        round=True,
        holds=True,
        numbers=numbers,
        cuts=TENON_RULES,
        states=(
            *OVAL,
            CutRule(
                "short_driest",
                "tenon short of the hole in the driest month, along the seat's grain",
                (fixed("fit"), travel("small_narrowing")),
                "up",
                "what the glue has to hold, if nothing was dried first",
                fine=True,
            ),
        ),
        outside=ROUND,
        holding=holding,
        part="tenon",
        shows="The end of a round: it goes oval as it dries. Below, the tenon in its hole.",
        main_cuts=("hole",),
        driest=_tenon_driest,
        dampest=_tenon_dampest,
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
)

LOOSE_RING = register(
    Way(
        key="loose_ring",
        name="ring left loose around the post",
        short="loose ring",
        built_as="a ring that stays loose around its post",
        also=("loose ring around a turned post",),
        kinds=("turned part",),
        round=True,
        numbers=numbers,
        cuts=RING_RULES,
        states=(
            *OVAL,
            CutRule(
                "play_dampest",
                "play around the post in the dampest month",
                (fixed("least"),),
                "down",
                "on each side",
                fine=True,
            ),
        ),
        outside=ROUND,
        part="post",
        stopped_by=Limit(
            ("oval_driest", "oval_dampest"),
            0.0015,
            "the post goes out of round by more than {limit}",
        ),
        shows="The end of a round: it goes oval as it dries. Below, the post in its ring.",
        main_cuts=("bore",),
        driest=_ring_driest,
        dampest=_ring_dampest,
        reasons=(
            "The ring is bored for the post at its thickest and its own hole at its narrowest, so nothing binds.",
        ),
        steps=(
            "Turn the post round today; it will be oval in other months, and a finish does not stop that.",
            "Bore the ring to the size given and ease its edges.",
            "Pin the ring at one place only, or let it hang loose.",
        ),
        change="A ring that has to sit tight would ask for one laid up from segments with their grain around the post.",
        watch="inside the ring",
    )
)
