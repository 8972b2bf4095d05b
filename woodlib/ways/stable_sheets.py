"""A stable sheet instead of the solid panel: edged with solid wood, or veneered on both faces.

The piece's finished width and length hold the sheet and its border, the solid edging. Plywood and fibreboard move
little in their plane; the figure is in the table of shop allowances.
"""

from __future__ import annotations

from math import sqrt

from ..restraint.assumptions import assumption
from ..restraint.fracture import fracture_energy_j_per_m2
from .held import Held
from .parts import EDGING
from .piece import Allowances, Piece
from .registry import register
from .risk import risk_levels
from .rules import INCH_M, CutRule, Facts, NoteRule, fixed, travel
from .stiffness import panel_and_strip
from .travel import RANGE, Quantities, thickness_travel
from .way import Limit, Way

CHANNEL = 1.976  # energy of a crack running through a thin layer on a like base: Hutchinson & Suo 1992, from memory
STRESS_LEFT = 0.5  # of the elastic stress after a slow season; careful side of ``restraint.relaxation``, assumption


def veneer_share(piece: Piece, veneer_m: float) -> float:
    """How a veneer's full restraint counts beside that of a thick panel: a thin layer has little energy to crack with.

    A crack through a layer of thickness h frees Z E (k e)^2 h per area, Z 1.976, k the share of stress left; it runs
    where that meets the fracture energy G. The thickness at which it runs at the strain of failure is
    h0 = G/(Z E (k e_f)^2), and strain counts by sqrt(h/h0), at most in full.

    >>> [round(veneer_share(Piece("white ash", "450 mm", "900 mm", "20 mm", "50 mm"), h), 2) for h in (0.0006, 0.003)]
    [0.52, 1.0]
    """
    wood, along, _ = panel_and_strip(piece)
    energy = fracture_energy_j_per_m2(
        assumption("toughness").low, along.modulus_x_pa, wood.modulus_x_pa, along.poisson_xy, wood.shear_pa
    )
    failure = STRESS_LEFT * risk_levels()[-1].from_strain
    thickest = float(energy) / (CHANNEL * wood.modulus_x_pa * failure**2)
    return min(1.0, sqrt(veneer_m / thickest))


def holding(piece: Piece, held: Held, allowances: Allowances) -> Held:
    """The share of a veneer of the thickness allowed for; the rule for an edge-glued border is not used."""
    return Held(
        veneer_share(piece, allowances.veneer_thickness_m),
        (
            "the veneer is held fully by its core; thin as it is, it has little energy to crack with",
            *panel_and_strip(piece)[2],
        ),
    )


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Growth and shrinkage of the sheet, which stands in for the panel, and of the edging around it, careful ends."""
    whole, edging = travels["width"], piece.border_width_m
    width = whole - 2.0 * edging
    reached = {
        "narrowing": travels["stock_mc"] - travels["driest_mc"],
        "widening": travels["dampest_mc"] - travels["stock_mc"],
    }
    named = {}
    for way, points in reached.items():
        named[f"sheet_{way}"] = 0.5 * width * allowances.sheet_coefficient * points
        named[f"edging_{way}"] = edging * travels[f"{way}_high"] / whole
        named[f"mitre_{way}"] = sqrt(2.0) * named[f"edging_{way}"]
    for end in RANGE:
        named |= {f"{way}_{end}": 2.0 * named[f"sheet_{way}"] for way in reached}
        named[f"swing_{end}"] = 2.0 * (named["sheet_narrowing"] + named["sheet_widening"])
    return {
        **named,
        **thickness_travel(travels, piece, "step", piece.border_thickness_m),
        "sheet_width": width,
        "sheet_length": piece.length_m - 2.0 * edging,
        "edging": edging,
        "clearance": allowances.slot_clearance_m,
        "visible": allowances.visible_gap_m,
        "veneer": allowances.veneer_thickness_m,
    }


SPACE = CutRule(
    "space_beside",
    "space to leave beside each edge",
    (fixed("clearance"), travel("sheet_widening"), travel("edging_widening")),
    "up",
    "half the sheet's growth and all of the edging's",
    fine=True,
)
SHEET = (
    CutRule(
        "sheet_width", "sheet, width", (fixed("sheet_width"),), "down", "the finished size less the edging", fine=True
    ),
    CutRule(
        "sheet_length",
        "sheet, length",
        (fixed("sheet_length"),),
        "down",
        "the finished size less the edging",
        fine=True,
    ),
)

EDGED_RULES = (
    *SHEET,
    CutRule("edging_width", "edging, width", (fixed("edging"),), "up", "planed flush with the faces after gluing"),
    SPACE,
)
EDGED_STATES = (
    CutRule(
        "step_driest",
        "edging below the sheet in the driest month",
        (travel("step_narrowing"),),
        "up",
        "both faces together",
        fine=True,
    ),
    CutRule(
        "step_dampest",
        "edging above the sheet in the dampest month",
        (travel("step_widening"),),
        "up",
        "both faces together",
        fine=True,
    ),
    CutRule(
        "mitre_driest",
        "mitre of the edging open in the driest month, if no glue held it",
        (travel("mitre_narrowing"),),
        "up",
        "at the inside corner",
        fine=True,
    ),
    CutRule(
        "mitre_dampest",
        "mitre of the edging open in the dampest month, if no glue held it",
        (travel("mitre_widening"),),
        "up",
        "at the outside corner",
        fine=True,
    ),
)


def _mitre(name: str) -> NoteRule:
    return NoteRule(
        (travel(name), fixed("visible", -1.0)),
        "edging this wide would open its mitres visibly; make it narrower, or butt the corners",
    )


def _edged_driest(facts: Facts) -> str:
    return f"the sheet hardly moves; the edging draws in by {facts.up_to('edging_narrowing')} and sinks a hair"


def _edged_dampest(facts: Facts) -> str:
    return f"the sheet hardly moves; the edging grows out by {facts.up_to('edging_widening')} and stands a hair proud"


EDGED_SHEET = register(
    Way(
        key="edged_sheet",
        name="stable sheet with solid edging",
        short="sheet, solid edging",
        built_as="a stable sheet with solid edging",
        also=("sheet with solid edging",),
        kinds=("table top", "seat", "lid", "door panel", "drawer front"),
        still_outside=True,
        mitred=True,
        keeps_border=True,
        keeps_flat=True,
        solid=False,
        numbers=numbers,
        cuts=EDGED_RULES,
        states=EDGED_STATES,
        parts=EDGING,
        part="sheet",
        stopped_by=Limit(("space_beside",), 0.25 * INCH_M, "the space beside it gets wider than {limit}"),
        shows="A sheet that hardly moves, with solid wood around it. Below, edging and sheet from the side.",
        main_cuts=("sheet_width", "space_beside"),
        driest=_edged_driest,
        dampest=_edged_dampest,
        reasons=("The sheet moves a small part as far as solid wood, so edging can be glued along all four sides.",),
        steps=(
            "Let the grain of the edging run along each edge; glue it with a loose tongue or a plain long-grain joint.",
            "Veneer after the edging is on and flush, or leave a small chamfer at the joint: its line will be felt.",
            "Keep the edging narrow: its own width moves like any solid wood.",
        ),
        notes=(_mitre("mitre_narrowing"), _mitre("mitre_widening")),
        change="A client who wants solid wood through and through would ask for a frame, or for a breadboard end.",
        cautions=("Dust of fibreboard is fine and carries binder: draw it off and wear a mask.",),
    )
)

VENEERED_SHEET = register(
    Way(
        key="veneered_sheet",
        name="stable sheet with veneer on both faces",
        short="veneered sheet",
        built_as="a stable sheet with veneer on both faces",
        also=("sheet veneered on both faces",),
        kinds=("table top", "lid", "door panel", "drawer front", "drawer side", "drawer bottom", "back"),
        still_outside=True,
        mitred=True,
        holds=True,
        keeps_border=True,
        keeps_flat=True,
        solid=False,
        numbers=numbers,
        cuts=(
            *SHEET,
            CutRule(
                "veneer_thickness",
                "veneer, thickness",
                (fixed("veneer"),),
                "down",
                "no thicker than this: thicker layers carry more energy to crack with",
                fine=True,
            ),
            SPACE,
        ),
        states=(
            CutRule(
                "narrower_driest",
                "sheet narrower at each edge in the driest month",
                (travel("sheet_narrowing"),),
                "up",
                "half its width",
                fine=True,
            ),
            CutRule(
                "wider_dampest",
                "sheet wider at each edge in the dampest month",
                (travel("sheet_widening"),),
                "up",
                "half its width",
                fine=True,
            ),
        ),
        parts=EDGING,
        holding=holding,
        part="sheet",
        shows="A sheet that hardly moves. Below, its core between two veneers.",
        main_cuts=("sheet_width", "space_beside"),
        driest=lambda facts: "the sheet hardly moves, and the veneer is pulled as its core holds it",
        dampest=lambda facts: "the sheet hardly moves, and the veneer is pressed as its core holds it",
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
            "Draw the border with crossbanding; on a stable core its grain may run any way.",
        ),
        change="A thinner veneer, or veneer pressed drier, would ease it; solid wood would need a way that lets it move.",
        cautions=("Dust of fibreboard is fine and carries binder: draw it off and wear a mask.",),
    )
)
