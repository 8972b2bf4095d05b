"""A stable sheet veneered on both faces."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

from ..picture.scene import Mark
from ..restraint.assumptions import assumption
from ..restraint.fracture import fracture_energy_j_per_m2
from .drawn import Drawn, label
from .frame import plan
from .given import Given
from .held import Held
from .joint_drawing import LEFT, layers
from .made import MadePiece, Size
from .piece import Allowances, Piece
from .risk import risk_levels
from .rules import down, fixed, travel, up
from .stable_sheet import DUST, FLUSH, ORDER, SHEET, SPACE, edged, numbers
from .steps import TOGETHER, Step
from .stiffness import panel_and_strip
from .travel import Quantities
from .way import Way

CHANNEL = 1.976  # energy of a crack running through a thin layer on a like base: Hutchinson & Suo 1992, from memory


STRESS_LEFT = 0.28  # of the elastic stress after a slow season of five points, as ``restraint.relaxation`` expects it


def veneer_share(piece: Piece, veneer_m: float) -> float:
    """How a veneer's full restraint counts beside that of a thick panel: a thin layer has little energy to crack with.

    A crack through a layer of thickness h frees Z E (k e)^2 h per area, Z 1.976, k the share of stress left; it runs
    where that meets the fracture energy G. The thickness at which it runs at the strain of failure is
    h0 = G/(Z E (k e_f)^2), and strain counts by sqrt(h/h0), at most in full.

    >>> [round(veneer_share(Piece("white ash", "450 mm", "900 mm", "20 mm", "50 mm"), h), 2) for h in (0.0006, 0.003)]
    [0.29, 0.65]
    """
    wood, along, _ = panel_and_strip(piece)
    energy = fracture_energy_j_per_m2(
        assumption("toughness").low, along.modulus_x_pa, wood.modulus_x_pa, along.poisson_xy, wood.shear_pa
    )
    failure = STRESS_LEFT * risk_levels()[-1].from_strain
    thickest = float(energy) / (CHANNEL * wood.modulus_x_pa * failure**2)
    return min(1.0, sqrt(veneer_m / thickest))


def holding(piece: Piece, allowances: Allowances) -> Held:
    """The share of a veneer of the thickness allowed for; the rule for an edge-glued border is not used."""
    return Held(
        veneer_share(piece, allowances.veneer_thickness_m),
        (
            "the veneer is held fully by its core; thin as it is, it has little energy to crack with",
            *panel_and_strip(piece)[2],
        ),
    )


def thin_edged(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """The sheet within thin edging, however wide a border is drawn on it: solid wood under veneer shows its line."""
    thin = min(allowances.thin_edging_m, piece.border_width_m)
    return numbers(travels, replace(piece, border_width_m=thin), allowances)


def make(given: Given) -> MadePiece:
    """A sheet with thin solid edging, veneered over both."""
    thin = Size(given.allowance("edging"), "shop allowance")
    return edged(replace(given, border=thin), given.allowance("veneer"))


def joint(d: Drawn) -> list[Mark]:
    """A core between two veneers."""
    veneer, core = d.px(d.sizes["veneer_thickness"]), d.px(d.piece["thickness"])
    return [
        *layers(
            d,
            [
                ("veneer", veneer, "border-wood", "along"),
                ("stable sheet", core, "grid", "end"),
                ("", veneer, "border-wood", "along"),
            ],
        ),
        label(LEFT, 320.0, "same veneer on both faces"),
    ]


WAY = Way(
    key="veneered_sheet",
    name="stable sheet with veneer on both faces",
    short="veneered sheet",
    built_as="a stable sheet with veneer on both faces",
    means="A made board that hardly moves, such as plywood, with a thin sheet of real wood on either face.",
    also=("sheet veneered on both faces",),
    kinds=("table top", "lid", "door panel", "drawer front", "drawer side", "drawer bottom", "back"),
    still_outside=True,
    mitred=True,
    holds=True,
    keeps_flat=True,
    solid=False,
    numbers=thin_edged,
    cuts=(
        *SHEET,
        down(
            "veneer_thickness",
            "veneer, thickness",
            (fixed("veneer"),),
            "no thicker than this: thicker layers carry more energy to crack with",
            fine=True,
        ),
        SPACE,
    ),
    states=(
        up(
            "narrower_driest",
            "sheet narrower at each edge in the driest month",
            (travel("sheet_narrowing"),),
            "half its width",
            fine=True,
        ),
        up(
            "wider_dampest",
            "sheet wider at each edge in the dampest month",
            (travel("sheet_widening"),),
            "half its width",
            fine=True,
        ),
    ),
    holding=holding,
    part="sheet",
    make=make,
    order=(
        *ORDER,
        Step(FLUSH, ["edged sheet"], ["flush faces"]),
        Step("veneer both faces on one day", ["flush faces"], [TOGETHER], ["flush faces"]),
    ),
    plan=plan,
    joint=joint,
    shows="A sheet that hardly moves. Below, its core between two veneers.",
    main_cuts=("sheet_width", "space_beside"),
    driest="the sheet hardly moves, and the veneer is pulled as its core holds it",
    dampest="the sheet hardly moves, and the veneer is pressed as its core holds it",
    reasons=(
        "The sheet takes the movement away, and its veneer is thin: strained by {most} at most, counted by its "
        "thickness, below {limit}.",
        "The sheet stays, but its veneer is strained by about {held}, at most {most}, counted by its thickness; above "
        "{limit} fine checks are likely.",
        "The sheet stays, but its veneer is strained by about {held}, at most {most}, counted by its thickness; from "
        "{limit} expect it to check.",
    ),
    steps=(
        "Veneer both faces with the same wood and thickness, on the same day; one face alone pulls the sheet hollow.",
        "Press at the moisture of the driest months: veneer pressed damp checks in the first winter.",
        "Keep the edging under the veneer thin: wide solid wood moves in thickness, and its line shows through.",
    ),
    change="A thinner veneer, or veneer pressed drier, would ease it; solid wood would need a way that lets it move.",
    cautions=(DUST,),
)
