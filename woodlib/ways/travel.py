"""How far the width goes from today's moisture to the driest and the dampest month: smooth numbers, no decisions.

Everything a way to build needs is worked out here once, as a dictionary of named floats that change smoothly with
sizes and moistures. Larger-of, thresholds and rounding come later, in ``verdict``.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeAlias

import numpy as np

from ..movement.spread import USUAL_DOUBTS, Doubts, Movement, end_effect, spread_about, start_effect
from ..movement.wood import Wood, width_strain
from ..words.decided import Sliding
from .piece import Allowances, Piece

Quantities: TypeAlias = dict[str, Any]  # floats, or numbers that slide
RANGE = ("low", "mid", "high")
_LENGTHS = ("to_driest", "to_dampest", "swing", "narrowing", "widening")
MOVING_SHARE = (
    0.06  # of half the width, for all travel between an outer slot and the end it is near; an assumption of ours
)


def travel_quantities(
    wood: Wood,
    border_wood: Wood,
    ring_angle_rad: float,
    width_m: Sliding,
    stock_mc_percent: float,
    driest_mc_percent: Sliding,
    dampest_mc_percent: Sliding,
    doubts: Doubts = USUAL_DOUBTS,
) -> Quantities:
    """Smooth numbers about the width of a panel; kernel, assumes good input.

    Returns, each with ``_low``, ``_mid``, ``_high``: ``to_driest``, ``to_dampest``, ``swing`` change of width in metres
    (positive wider); ``narrowing``, ``widening`` the same counted positive in the direction of their name;
    ``stretch`` strain against a border across the grain, e_L - e_w in the driest month: what a rigid border would pull;
    ``swing_strain`` the same from the dampest month to the driest. One board value drives all of them. And
    ``stock_mc``, ``driest_mc`` and ``dampest_mc``, as given.

    >>> ash = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
    >>> q = travel_quantities(ash, ash, 0.0, 0.5, 8.0, 6.0, 12.0)
    >>> [round(1000 * float(q[name]), 2) for name in ("narrowing_mid", "widening_mid", "swing_mid", "narrowing_high")]
    [2.74, 5.48, 8.22, 4.88]
    """
    strains = travel_strains(
        wood, border_wood, ring_angle_rad, stock_mc_percent, driest_mc_percent, dampest_mc_percent, doubts
    )
    return over_width(strains, width_m)


def over_width(strains: Quantities, width_m: Sliding) -> Quantities:
    """The travels of a width from its strains."""
    lengths = {name: width_m * x if name.rpartition("_")[0] in _LENGTHS else x for name, x in strains.items()}
    return lengths | {"width": width_m}


def travel_strains(
    wood: Wood,
    border_wood: Wood,
    ring_angle_rad: float,
    stock_mc_percent: float,
    driest_mc_percent: Sliding,
    dampest_mc_percent: Sliding,
    doubts: Doubts = USUAL_DOUBTS,
) -> Quantities:
    """What :func:`travel_quantities` says of a width of one metre; a slider of widths asks it once."""
    angles = ring_angle_rad, 0.0
    ends = driest_mc_percent, dampest_mc_percent
    driest_mid, dampest_mid = (width_strain(wood, *angles, stock_mc_percent, end) for end in ends)
    from_stock = [start_effect(wood, *angles, stock_mc_percent, end, doubts.meter_percent) for end in ends]
    of_air = [end_effect(wood, *angles, stock_mc_percent, end, doubts.air_percent) for end in ends]
    driest, dampest, swing = (
        spread_about(mid, effects, wood, ring_angle_rad, doubts)
        for mid, effects in (
            (driest_mid, (from_stock[0], of_air[0])),
            (dampest_mid, (from_stock[1], of_air[1])),
            (dampest_mid - driest_mid, of_air),
        )
    )
    along_driest, along_dampest = (border_wood.axis_strains(stock_mc_percent, end)[0] for end in ends)
    ranges = {
        "to_driest": driest,
        "to_dampest": dampest,
        "swing": swing,
        "narrowing": [-strain for strain in reversed(driest)],
        "widening": dampest,
        "stretch": [along_driest - strain for strain in reversed(driest)],
        "swing_strain": [strain - (along_dampest - along_driest) for strain in swing],
    }
    found = {f"{name}_{end}": x for name, three in ranges.items() for end, x in zip(RANGE, three, strict=True)}
    return found | {"stock_mc": stock_mc_percent, "driest_mc": driest_mc_percent, "dampest_mc": dampest_mc_percent}


def movement_of(quantities: Mapping[str, float], name: str, share: float = 1.0) -> Movement:
    """The range of one travel as a :class:`Movement`, for example of half the width."""
    low, mid, high = (quantities[f"{name}_{end}"] for end in RANGE)
    return Movement(low, mid, high).times(share)


def at_fixing(quantities: Mapping[str, float], name: str, distance_m: float) -> Quantities:
    """Careful travel of a fixing this far from the fixed middle: how far the panel slides past it, both ways.

    Movement grows evenly from the middle: s/W of the change of width. Returns ``{name}_narrowing`` and
    ``{name}_widening`` in metres.

    >>> at_fixing({"width": 0.5, "narrowing_high": 0.004, "widening_high": 0.008}, "outer", 0.25)
    {'outer_narrowing': 0.002, 'outer_widening': 0.004}
    """
    share = distance_m / quantities["width"]
    return {f"{name}_{way}": share * quantities[f"{way}_high"] for way in ("narrowing", "widening")}


def fixings(quantities: Mapping[str, float], allowances: Allowances, outer_m: Sliding | None = None) -> Quantities:
    """Careful travel of the edges and of the outer and half-way fixings, and where those fixings sit, metres.

    ``outer_m`` of the outer fixings from the middle; left out, the shop's share of half the width.
    """
    outer = 0.5 * quantities["width"] * allowances.outermost_share if outer_m is None else outer_m
    return {
        **at_fixing(quantities, "outer", outer),
        **at_fixing(quantities, "halfway", 0.5 * outer),
        **at_fixing(quantities, "edge", 0.5 * quantities["width"]),
        "outer_distance": outer,
        "halfway_distance": 0.5 * outer,
        "clearance": allowances.slot_clearance_m,
    }


def outermost_m(width_m: Sliding, kept_m: float) -> float:
    """Middle of the width to an outer fixing: half of it, less what moves and less ``kept_m`` that never changes, m.

    What moves is counted as a share that seldom is more, so that the place does not change with the air of the house.

    >>> round(outermost_m(0.5, 0.03), 6)
    0.205
    """
    return 0.5 * width_m * (1.0 - MOVING_SHARE) - kept_m


def in_opening(quantities: Mapping[str, float], name: str, opening_m: float, least_m: float) -> Quantities:
    """Growth and shrinkage of a part that just clears an opening in the dampest month, careful ends, metres.

    With g the widening strain a part P must satisfy P (1 + g) = opening - least, so it grows by (opening - least)
    g/(1 + g); taken for its greatest size it shrinks by (opening - least) s, with s the narrowing strain.

    >>> in_opening({"width": 0.5, "narrowing_high": 0.005, "widening_high": 0.01}, "front", 0.203, 0.001)
    {'front_growth': 0.00396078431372549, 'front_shrink': 0.00202}
    """
    free = opening_m - least_m
    narrowing, widening = (quantities[f"{way}_high"] / quantities["width"] for way in ("narrowing", "widening"))
    return {f"{name}_growth": free * widening / (1.0 + widening), f"{name}_shrink": free * narrowing}


def thickness_travel(quantities: Mapping[str, float], piece: Piece, name: str, thickness_m: float) -> Quantities:
    """How far a thickness shrinks and grows, careful ends: the width's strain times the ratio of the two coefficients.

    Thickness goes with the coefficient square to the width's: C_R cos^2 + C_T sin^2 against C_T cos^2 + C_R sin^2.
    """
    square = np.cos(np.radians(piece.ring_angle_deg)) ** 2
    radial, tangential = piece.wood.radial_coefficient, piece.wood.tangential_coefficient
    ratio = (radial * square + tangential * (1.0 - square)) / (tangential * square + radial * (1.0 - square))
    share = float(ratio) * thickness_m / quantities["width"]
    return {f"{name}_{way}": share * quantities[f"{way}_high"] for way in ("narrowing", "widening")}
