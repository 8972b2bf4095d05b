"""A frame with a groove: the panel floats inside, the frame makes the border."""

from __future__ import annotations

from .piece import Allowances, Piece
from .rules import CutRule, Facts, NoteRule, fixed, travel
from .travel import Quantities, thickness_travel
from .verdict import Construction

FIT_M = 0.0002  # a sliding fit: slides by hand, does not fall; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Shrinkage and growth of the panel that fills the opening and both grooves, careful ends.

    With s the narrowing and g the widening strain, the panel P = opening + 2 cover + shrink must satisfy
    P (1 - s) = opening + 2 cover, so shrink = (opening + 2 cover) s/(1 - s); it grows by P g.
    """
    width, cover = travels["width"], allowances.groove_cover_m
    narrowing, widening = travels["narrowing_high"] / width, travels["widening_high"] / width
    wanted = width + 2.0 * cover
    return {
        "opening": width,
        "opening_length": piece.length_m,
        "cover": cover,
        "clearance": allowances.slot_clearance_m,
        "panel_shrink": wanted * narrowing / (1.0 - narrowing),
        "panel_growth": wanted * widening / (1.0 - narrowing),
        "stile": piece.border_width_m,
        "tongue": piece.border_thickness_m / 3.0,
        "fit": FIT_M,
        **thickness_travel(travels, piece, "tongue", piece.border_thickness_m / 3.0),
    }


GROOVE = CutRule(
    "groove in the stiles, depth",
    (fixed("cover"), fixed("clearance"), travel("panel_shrink", 0.5), travel("panel_growth", 0.5)),
    "up",
    "in the dampest month the panel must not reach the bottom and push the frame apart",
)

RULES = (
    CutRule(
        "panel, width across the grain",
        (fixed("opening"), fixed("cover", 2.0), travel("panel_shrink")),
        "down",
        "in the driest month it must still sit in both grooves",
    ),
    GROOVE,
    CutRule(
        "panel, length along the grain",
        (fixed("opening_length"), fixed("cover", 2.0)),
        "down",
        "along the grain it hardly moves; the rails' groove only has to hold it",
    ),
    CutRule(
        "groove in the rails, depth",
        (fixed("cover"), fixed("clearance")),
        "up",
        "the panel's small change of length fits in the play",
    ),
    CutRule("groove, width", (fixed("tongue"),), "up", "a third of the frame's thickness, as the cutter is", fine=True),
    CutRule(
        "play of the panel's edge across its groove today",
        (fixed("fit"), travel("tongue_widening")),
        "up",
        "in the dampest month the thicker edge must still slide",
        fine=True,
    ),
)

STATES = (
    CutRule("panel in each groove in the driest month", (fixed("cover"),), "down", "what keeps it from dropping out"),
    CutRule(
        "spare at the bottom of each groove in the dampest month",
        (fixed("clearance"),),
        "down",
        "nothing is left to blow the frame apart",
        fine=True,
    ),
    CutRule(
        "rattle across the groove in the driest month",
        (fixed("fit"), travel("tongue_widening"), travel("tongue_narrowing")),
        "up",
        "the panel's edge is at its thinnest",
        fine=True,
    ),
)


def _driest(facts: Facts) -> str:
    return f"it still sits about {facts.at_least('cover')} deep in each groove"


def _dampest(facts: Facts) -> str:
    return "each edge comes within the play of the groove's bottom and does not touch it"


FRAME_PANEL = Construction(
    key="frame_panel",
    name="frame with a floating panel",
    holds=False,
    keeps_border=True,
    numbers=numbers,
    rules=RULES,
    driest=_driest,
    dampest=_dampest,
    reasons=("The border becomes a frame that hardly moves, and the panel grows and shrinks unseen in its grooves.",),
    kinds=("table top", "seat", "lid", "door panel", "frame", "back"),
    states=STATES,
    change="A top that must be flush and easy to wipe would ask for a breadboard end or battens.",
    steps=(
        "Join the frame at its corners with tenons, dowels or loose tongues; the joints carry all of it.",
        "Pin the panel at the middle of each rail, so that it moves alike to both sides.",
        "Put no glue in the groove.",
        "Lay soft spacers of cork or foam in the grooves; they take up the rattle and keep the panel centred.",
        "Finish the panel before assembly, edges too, so that no bare line shows in the driest month.",
    ),
    notes=(
        NoteRule(
            (*GROOVE.terms, fixed("stile", -0.5)),
            "the groove takes more than half of the border's width; make the border wider or split the panel in two",
        ),
    ),
)
