"""Pins or screws in a row across the panel, the middle one fast, the others in slots."""

from __future__ import annotations

from fractions import Fraction

import numpy as np

from ..picture.scene import Circle, Mark, corners, dimension_line
from ..units.exact import Rounding
from ..words.say import length, say
from .drawn import Drawn, end_wood, hollow, label, shape, wood
from .given import Given
from .joint_drawing import CENTRE, LEFT, RIGHT
from .made import Fixing, Size
from .rules import CutRule, fixed, travel, up


def slots(name: str, fixing: str, outward: str, inward: str, length_why: str, why: str) -> tuple[CutRule, ...]:
    """Length of a slot and its two reaches from the centre of its fixing; both directions name a travel.

    ``why`` has ``{month}`` and ``{direction}``.
    """
    months = {"narrowing": "driest", "widening": "dampest"}

    def reach(direction: str, way: str) -> CutRule:
        return up(
            f"{name}_slot_{direction}",
            f"{name} slots, {direction} from the {fixing}'s centre",
            (fixed(fixing, 0.5), fixed("clearance", 0.5), travel(f"{name}_{way}")),
            why.format(month=months[way], direction=direction),
        )

    reaches = reach("outward", outward), reach("inward", inward)
    length = up(
        f"{name}_slot",
        f"{name} slots, length",
        (fixed(fixing), fixed("clearance"), travel(f"{name}_narrowing"), travel(f"{name}_widening")),
        length_why,
        chain=tuple((1, rule.key) for rule in reaches),
    )
    return length, *reaches


def fixings_across(
    given: Given,
    name: str,
    part: str,
    along_m: Fraction,
    diameter: Size,
    slot_in: str = "",
    slotted: tuple[str, ...] = ("halfway", "outer"),
) -> tuple[Fixing, ...]:
    """In a row across the panel: the middle one fast, half-way and outer ones in slots as long as the cut list says."""
    middle = given.width.exact_m / 2
    found = [Fixing(f"{name}, middle", part, along_m, middle, Rounding(Fraction(0), given.rule), diameter)]
    for which in slotted:
        out = Rounding(given.allowance(f"{which}_distance"), given.rule, "down")  # nearer travels less
        slot = given.cut(f"{which}_slot")
        reaches = given.cut(f"{which}_slot_outward"), given.cut(f"{which}_slot_inward")
        in_slot = slot, reaches, slot_in or part
        for side, sign in (("front", -1), ("back", 1)):
            place = middle + sign * out.marked_m
            found.append(Fixing(f"{name}, {which}, {side}", part, along_m, place, out, diameter, *in_slot))
    return tuple(sorted(found, key=lambda fixing: fixing.across_m))


SLOT_TIMES = 2.5


def slot_detail(d: Drawn, slots: str, pin: float, y: float, slot_moves: float, pin_moves: float) -> list[Mark]:
    """A slot from above with its pin or screw, outward to the right, drawn ``SLOT_TIMES`` as large as the joint."""
    out, inward = d.sizes[f"{slots}_outward"], d.sizes[f"{slots}_inward"]
    px = d.scale.section_px * SLOT_TIMES
    low, high = CENTRE + (slot_moves - inward) * px, CENTRE + (slot_moves + out) * px
    half = 0.5 * pin * px + 1.5
    turn = np.linspace(0.0, np.pi, 9)
    right = [(high - half + half * float(np.sin(a)), y - half * float(np.cos(a))) for a in turn]
    left = [(low + half - half * float(np.sin(a)), y + half * float(np.cos(a))) for a in turn]
    return [
        *hollow([*right, *left]),
        Circle(CENTRE + pin_moves * px, y, half - 1.5, "metal", filled=True),
        Circle(CENTRE + pin_moves * px, y, half - 1.5, "edge", 1.2),
        *dimension_line((low, y + half + 12.0), (high, y + half + 12.0), ""),
        label(LEFT, y + half + 33.0, say("{inward} + {out}", inward=length(inward, "up"), out=length(out, "up"))),
    ]


def screwed(d: Drawn, part: str, slots: str, travel: str) -> list[Mark]:
    """Across the grain: panel above, batten or block below with its slot, the screw going with the panel."""
    px, top = d.px, 70.0
    low = top + px(d.piece["thickness"])
    foot = low + px(d.piece["border_thickness"])
    out, inward = (d.sizes[f"{slots}_{way}"] for way in ("outward", "inward"))
    x, half = CENTRE + px(d.moved(travel)), 0.5 * px(d.numbers["screw"])
    return [
        *end_wood(corners(LEFT, top, RIGHT, low), "wood"),
        *wood(corners(LEFT + 20.0, low, RIGHT - 20.0, foot), "border-wood"),
        *hollow(corners(CENTRE - px(inward), low, CENTRE + px(out), foot)),
        *shape(corners(x - half, top + 0.35 * (low - top), x + half, foot), "metal"),
        *shape(corners(x - 2.2 * half, foot, x + 2.2 * half, foot + 7.0), "metal"),
        label(LEFT + 6.0, top + 18.0, "panel"),
        label(LEFT + 26.0, low + 18.0, part),
        label(LEFT, 262.0, "slot from below, enlarged"),
        *slot_detail(d, slots, d.numbers["screw"], 296.0, 0.0, d.moved(travel)),
        label(RIGHT, 262.0, "outward \u2192", "end", "quiet"),
    ]
