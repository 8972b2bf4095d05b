"""Sections of joints with slots, tongues, grooves, dovetails and plates, true to their numbers."""

from __future__ import annotations

import numpy as np

from ...words.decided import larger, smaller
from ...words.say import length, say
from ..scene import Area, Circle, Line, Mark, corners, dimension_line
from .sheet import (
    SECTION_LEFT,
    SECTION_WIDTH,
    Drawn,
    Number,
    end_wood,
    hollow,
    label,
    shape,
    sized,
    wood,
)

LEFT, RIGHT = SECTION_LEFT, SECTION_LEFT + SECTION_WIDTH
CENTRE = 0.5 * (LEFT + RIGHT)
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


def breadboard(d: Drawn) -> list[Mark]:
    """Along the grain: the tongue in the end's groove, a pin through both; below, the outer slot from above."""
    px, top = d.px, 74.0
    thickness, tongue = px(d.piece["thickness"]), px(d.sizes["tongue_thickness"])
    shoulder, end = CENTRE - 20.0, CENTRE - 20.0 + px(d.piece["border_width"])
    mid = top + 0.5 * thickness
    tip = shoulder + px(d.sizes["tongue_length"])
    bottom = shoulder + px(d.sizes["groove_depth"])
    pin = shoulder + px(d.sizes["pin_from_shoulder"])
    half = 0.5 * px(d.numbers["pin"])
    return [
        *end_wood(corners(shoulder, top, end, top + thickness), "border-wood"),
        *hollow(corners(shoulder, mid - 0.5 * tongue - 1.0, bottom, mid + 0.5 * tongue + 1.0)),
        *wood(corners(LEFT, top, shoulder, top + thickness)),
        *wood(corners(shoulder - 2.0, mid - 0.5 * tongue, tip, mid + 0.5 * tongue), count=2),
        *shape(corners(pin - half, top, pin + half, top + thickness), "metal"),
        *sized((shoulder, top - 6.0), (tip, top - 6.0), d.sizes["tongue_length"], "down"),
        label(LEFT + 6.0, top + thickness + 18.0, "panel"),
        label(end, top + thickness + 18.0, "end", "end"),
        label(LEFT, 238.0, "outer slot in the tongue, enlarged"),
        *slot_detail(d, "outer_slot", d.numbers["pin"], 284.0, d.moved("outer"), 0.0),
        label(RIGHT, 289.0, "outward \u2192", "end", "quiet"),
    ]


def screwed(d: Drawn) -> list[Mark]:
    """Across the grain: panel above, batten or block below with its slot, the screw going with the panel."""
    slots = "outer_slot" if d.way.key == "battens" else "long_apron_slot"
    travel = "outer" if d.way.key == "battens" else "edge"
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
        label(LEFT + 26.0, low + 18.0, "batten" if d.way.key == "battens" else "block"),
        label(LEFT, 262.0, "the slot from below, enlarged"),
        *slot_detail(d, slots, d.numbers["screw"], 296.0, 0.0, d.moved(travel)),
        label(RIGHT, 301.0, "outward \u2192", "end", "quiet"),
    ]


def groove(d: Drawn) -> list[Mark]:
    """The panel's edge in the groove of the frame."""
    px, numbers = d.px, d.numbers
    depth = d.sizes["stile_groove_depth"]
    today = numbers["cover"] + 0.5 * larger(numbers["panel_shrink"], 0.0)
    moved = d.either(0.0, -0.5 * numbers["panel_shrink"], 0.5 * numbers["panel_growth"])
    deep = today + moved
    line = d.sizes["line_today"] - moved
    face, mid = CENTRE - 20.0, 160.0
    frame, tongue = 0.5 * px(d.piece["border_thickness"]), 0.5 * px(numbers["tongue"])
    body, play = 0.5 * px(d.piece["thickness"]), px(d.sizes["edge_play"])
    return [
        *end_wood(corners(face, mid - frame, face + px(d.piece["border_width"]), mid + frame), "border-wood"),
        *hollow(corners(face, mid - tongue - 0.5 * play, face + px(depth), mid + tongue + 0.5 * play)),
        *wood(corners(LEFT + 60.0, mid - tongue, face + px(deep), mid + tongue), count=3),
        *end_wood(corners(LEFT, mid - body, face - px(line), mid + body), "wood"),
        *sized((face, mid - frame - 8.0), (face + px(depth), mid - frame - 8.0), depth),
        *sized((face - px(line), mid + frame + 12.0), (face, mid + frame + 12.0), line, "nearest", offset=8.0),
        label(LEFT + 6.0, mid - body - 8.0, "panel"),
        label(RIGHT, mid + frame + 20.0, "frame", "end"),
        label(LEFT, 300.0, "in the groove:"),
        *sized((face, 318.0), (face + px(deep), 318.0), deep, "down", offset=8.0),
    ]


def bottom(d: Drawn) -> list[Mark]:
    """From the side: the bottom below the drawer's back, its screw in a slot."""
    px, x, mid = d.px, CENTRE, 190.0
    back = 0.5 * px(d.piece["border_thickness"])
    thick = px(d.piece["thickness"])
    moved = d.moved("screw")
    today = d.sizes["behind_today"]
    reach = d.either(
        today,
        0.0 * today,
        d.sizes["behind_dampest"],
    )
    forward, backward = (d.sizes[f"screw_slot_{way}"] for way in ("forward", "backward"))
    low, high = x + px(moved - forward), x + px(moved + backward)
    screw = 0.5 * px(d.numbers["screw"])
    return [
        *end_wood(corners(x - back, 64.0, x + back, mid), "border-wood"),
        *wood(corners(LEFT, mid, x + back + px(reach), mid + thick), count=3),
        *hollow(corners(low, mid, high, mid + thick)),
        *shape(corners(x - screw, 120.0, x + screw, mid + thick), "metal"),
        *shape(corners(x - 2.2 * screw, mid + thick, x + 2.2 * screw, mid + thick + 7.0), "metal"),
        *sized((low, mid + thick + 26.0), (high, mid + thick + 26.0), forward + backward, offset=8.0),
        label(x + back + 8.0, 84.0, "back"),
        label(LEFT + 6.0, mid - 8.0, "bottom"),
        label(RIGHT, 330.0, "to the rear \u2192", "end", "quiet"),
    ]


def dovetail(d: Drawn) -> list[Mark]:
    """Across the batten: its dovetail in the panel's housing; below, its front end and the stop, from the side."""
    px, top = d.px, 66.0
    thick, deep = px(d.piece["thickness"]), px(d.sizes["housing_depth"])
    low = top + thick
    half = 0.5 * px(d.piece["border_width"])
    slack = 0.5 * px(d.sizes["slack"])
    slope = deep / 7.0
    foot = low + px(0.5 * d.piece["border_width"])
    gap = d.sizes["stop_gap"]
    stop = d.sizes["housing_stop"]
    edge = RIGHT - 24.0 + px(d.moved("edge"))
    end, y = RIGHT - 24.0 - px(stop + gap), 270.0

    def trapezium(wider: Number) -> list:
        return [
            (CENTRE - half - slope - wider, low - deep),
            (CENTRE + half + slope + wider, low - deep),
            (CENTRE + half + wider, low),
            (CENTRE - half - wider, low),
        ]

    batten = trapezium(0.0)
    return [
        *wood(corners(LEFT, top, RIGHT, low)),
        *hollow(trapezium(slack)),
        *shape([batten[0], batten[1], batten[2], (CENTRE + half, foot), (CENTRE - half, foot), batten[3]]),
        label(LEFT + 6.0, top + 18.0, "panel"),
        label(CENTRE, foot - 10.0, "batten", "middle"),
        label(LEFT, y - 30.0, "its front end, from the side"),
        *end_wood(corners(LEFT, y - 16.0, edge, y + 40.0), "wood"),
        *hollow(corners(LEFT + 60.0, y + 10.0, edge - px(stop), y + 40.0)),
        *wood(corners(LEFT + 60.0, y + 10.0, end, y + 62.0), "border-wood"),
        *sized((end, y + 70.0), (edge - px(stop), y + 70.0), gap + d.moved("edge"), "down", offset=8.0),
    ]


def button(d: Drawn) -> list[Mark]:
    """Across the rail: the top, a button screwed to it, its tongue in the rail's groove."""
    px, top = d.px, 66.0
    low = top + px(d.piece["thickness"])
    gap, tongue = d.sizes["shoulder_gap"], d.sizes["tongue_length"]
    depth, moved = d.sizes["groove_depth"], d.moved("edge")
    rail = CENTRE + 10.0
    shoulder = rail + px(moved - gap)
    tip = shoulder + px(tongue)
    return [
        *end_wood(corners(LEFT, top, RIGHT, low), "wood"),
        *end_wood(corners(rail, low, rail + px(d.piece["border_thickness"] * 1.2), 300.0)),
        *hollow(corners(rail, low + 40.0, rail + px(depth), low + 66.0)),
        *shape(
            [
                (LEFT + 40.0, low),
                (shoulder, low),
                (shoulder, low + 42.0),
                (tip, low + 42.0),
                (tip, low + 64.0),
                (shoulder, low + 64.0),
                (shoulder, low + 90.0),
                (LEFT + 40.0, low + 90.0),
            ]
        ),
        label(LEFT + 6.0, top + 18.0, "top"),
        label(LEFT + 50.0, low + 60.0, "button"),
        label(rail + 8.0, 292.0, "rail"),
        *sized((shoulder, low + 104.0), (rail, low + 104.0), gap - moved, "down", offset=8.0),
        label(LEFT, 320.0, "hold in the groove:"),
        *sized((rail, 334.0), (tip, 334.0), tongue - gap + moved, "down", offset=8.0),
    ]


def plate(d: Drawn) -> list[Mark]:
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
