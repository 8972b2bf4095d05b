"""A rim across the panel's face, glued on top of it: layers, not edges, so it holds and it bends."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Mark
from ..restraint.closed_forms import working_depth_m
from ..restraint.field import PlaneWood
from ..restraint.layers import bow_m, two_layer_curvature_per_m
from .drawn import Drawn, label, sized
from .given import Given
from .held import Held
from .joint_drawing import LEFT, layers
from .made import JointGlue, JointLine, MadePiece, Place, Section, Sum, WoodPart
from .making import made, whole_panel
from .piece import Allowances, Piece
from .plan_drawing import glued
from .rules import travel, up
from .steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from .stiffness import panel_and_strip
from .travel import Quantities
from .way import Way


def face_share(piece: Piece) -> float:
    """Share of the panel's free strain that a rim on its face takes away while something keeps the piece flat.

    Two springs that share one length: the rim with its own section, the panel with its thickness and the width that
    shear lets it work with (under the rim, and inward of it): R = A_r/(A_r + A_p), A = E b h. Free to bend it takes
    less; flat is the careful side, and what hinges, a base or a rim on both faces do.

    >>> round(face_share(Piece("white ash", "450 mm", "900 mm", "20 mm", "50 mm")), 2)
    0.77
    """
    panel, strip, _ = panel_and_strip(piece)
    rim = strip.modulus_x_pa * piece.border_width_m * piece.border_thickness_m
    held = panel.modulus_x_pa * _working_m(piece, piece.width_m, panel) * piece.thickness_m
    return float(rim / (rim + held))


def _working_m(piece: Piece, width_m: float, panel: PlaneWood) -> float:
    """Width of panel, along its grain, that works against the rim: under it, and inward as far as shear reaches."""
    inward = max(0.5 * piece.length_m - piece.border_width_m, 0.0)
    return piece.border_width_m + working_depth_m(width_m, panel.modulus_x_pa, panel.shear_pa, inward)


def holding(piece: Piece, allowances: Allowances) -> Held:
    """The rim's own share; the rule for an edge-glued border is not used."""
    remarks = panel_and_strip(piece)[2]
    return Held(face_share(piece), ("the rim holds as a layer on a panel that is kept flat", *remarks))


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """How far the panel would bow across its width if nothing kept it flat, careful ends."""
    panel, strip, _ = panel_and_strip(piece)
    working = _working_m(piece, travels["width"], panel)
    curvature = two_layer_curvature_per_m(
        piece.thickness_m,
        piece.border_thickness_m,
        panel.modulus_x_pa * working,
        strip.modulus_x_pa * piece.border_width_m,
        1.0,
    )
    per_strain = bow_m(curvature, travels["width"])
    return {f"bow_{way}": per_strain * travels[f"{way}_high"] / travels["width"] for way in ("narrowing", "widening")}


def make(given: Given) -> MadePiece:
    """A whole panel with a piece glued on its face at each end."""
    long, wide, border = given.length.exact_m, given.width.exact_m, given.border.exact_m
    thick, rim = given.thickness.exact_m, given.border_thickness.exact_m
    zero = Fraction(0)
    pieces = WoodPart("rim piece", 2, given.width, given.border, given.border_thickness)
    ends = [Place("rim piece", span, (zero, wide), "across") for span in ((zero, border), (long - border, long))]
    section = [
        Section("rim piece", (zero, border), (zero, rim)),
        Section("rim piece", (long - border, long), (zero, rim)),
        Section("panel", (zero, long), (rim, rim + thick), False),
    ]
    lines = (
        JointLine("left rim piece", "across", border, border, border),
        JointLine("right rim piece", "across", long - border, long - border, long - border),
    )
    return made(
        given,
        (whole_panel(given), pieces),
        (Sum("through the rim", ((1, "rim piece", rim), (1, "panel", thick)), thick + rim),),
        (*ends, Place("panel", (zero, long), (zero, wide))),
        section,
        thick + rim,
        lines=lines,
        glue=(JointGlue("rim piece on the face", 2, wide, border, 2 * given.clamps(wide)),),
        section_runs="along",
    )


def joint(d: Drawn) -> list[Mark]:
    """Across the panel: the rim lies on it, its grain across the panel's, glue all along."""
    bow = d.either(d.sizes["bow_driest"], d.sizes["bow_dampest"])
    return [
        *layers(
            d,
            [
                ("rim", d.px(d.piece["border_thickness"]), "border-wood", "along"),
                ("panel", d.px(d.piece["thickness"]), "wood", "end"),
            ],
        ),
        label(LEFT, 300.0, "bow across the whole width, if free:"),
        *sized((LEFT + 80.0, 326.0), (LEFT + 80.0 + d.px(bow), 326.0), bow, offset=8.0),
    ]


WAY = Way(
    key="glued_face_rim",
    name="rim glued across the face",
    short="rim on the face",
    built_as="a panel with a rim glued across its face",
    means="The rim is glued to the face of the panel, which then cannot move.",
    kinds=("table top", "seat", "lid", "board"),
    holds_width=True,
    wants_border=True,
    holds=True,
    keeps_border=True,
    all_round=True,
    numbers=numbers,
    states=(
        up(
            "bow_driest",
            "bow in the driest month, if free",
            (travel("bow_narrowing"),),
            "the side with the rim turns round, proud in the middle",
            fine=True,
        ),
        up(
            "bow_dampest",
            "bow in the dampest month, if free",
            (travel("bow_widening"),),
            "the side with the rim turns hollow",
            fine=True,
        ),
    ),
    holding=holding,
    held_by="Stretched by its rim, at most",
    make=make,
    order=(
        Step("cut the rim pieces to size", ["parallel face"], ["rim pieces"]),
        Step(
            "glue the rim on the face, where the verdict allows it",
            [SQUARE_EDGE, SQUARE_ENDS, "rim pieces"],
            [TOGETHER],
        ),
    ),
    plan=glued,
    joint=joint,
    shows="A panel with a rim glued on its face across the grain: the rim holds the end while the rest narrows and "
    "widens. Below, rim and panel as layers, and how far they would bow.",
    driest=(
        "the rim keeps its face from shrinking by {narrowing_high}; held flat it is pulled apart, free it "
        "bows by {bow_narrowing}"
    ),
    driest_still="it is no drier than today, so the rim does not pull in the first year",
    dampest="the panel bows the other way by {bow_widening}, or pushes on the glue if it is held flat",
    dampest_still="it is no damper than today, so the rim does not push",
    reasons=(
        "Glue is allowed here: held flat, the rim takes at most {most} of the panel's width, and wood stays elastic "
        "below {limit}.",
        "Glue is refused: held flat, the rim takes about {held} of the panel's width, at most {most}; above {limit} "
        "wood takes a set and may crack over the years.",
        "Glue is refused: held flat, the rim takes about {held} of the panel's width, at most {most}; from {limit} "
        "wood starts to fail.",
    ),
    steps=(
        "Glue a rim across the grain only where the verdict allows it, and then as thin as it may be.",
        "Otherwise cut its end pieces from the panel's own blank, or screw it from below through slots.",
        "Where it has to be glued, glue a hand's width at the middle and let the rest slide on screws in slots.",
    ),
    remarks=("a rim on the face pulls on one side only; the same below would stop the bow but not the pull",),
    change="A thinner rim takes less; a rim whose end pieces are cut from the panel's own blank takes nothing.",
    watch="inside the panel, or in the glue line of the rim,",
)
