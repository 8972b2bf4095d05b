"""A rim all round whose end pieces are cut from the panel's own blank, so that their grain runs with the panel."""

from __future__ import annotations

from .parts import size
from .piece import Allowances, Piece
from .registry import register
from .rules import INCH_M, CutRule, Facts, NoteRule, fixed, travel
from .travel import Quantities, at_fixing
from .way import Limit, Way

REACH_SHARE = 0.5  # of the rim's width that a loose tongue goes into; common practice, no source


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Blank and rim move as one: the whole width, and the travel of each outer edge, careful end."""
    return {
        **at_fixing(travels, "edge", 0.5 * travels["width"]),
        "whole_width": travels["width"],
        "clearance": allowances.slot_clearance_m,
        "cover": allowances.edge_cover_m,
        "rim_width": piece.border_width_m,
        "tongue_reach": min(allowances.edge_cover_m, REACH_SHARE * piece.border_width_m),
        "rim_thickness": piece.border_thickness_m,
        "woods_differ": float(piece.border_wood is not piece.wood),
    }


RULES = (
    CutRule(
        "end_piece_width",
        "end pieces, width along the grain",
        (fixed("rim_width"),),
        "up",
        "crosscut from both ends of the blank, next to the end each one goes to",
    ),
    CutRule(
        "end_piece_length",
        "end pieces, length across the grain",
        (fixed("whole_width"),),
        "up",
        "as wide as the whole blank today; trimmed flush after gluing",
    ),
    CutRule(
        "loose_tongue_length",
        "loose tongue in each end joint, length across the panel",
        (fixed("whole_width"), fixed("cover", -2.0)),
        "down",
        "stopped short of both edges so that it stays hidden",
    ),
    CutRule(
        "loose_tongue_thickness",
        "loose tongue in each end joint, thickness",
        (fixed("rim_thickness", 1 / 3),),
        "down",
        "a third of the rim",
    ),
    CutRule(
        "loose_tongue_reach",
        "loose tongue in each end joint, reach into each side",
        (fixed("tongue_reach"),),
        "down",
        "half the rim's width at most, so that wood is left beyond it",
        fine=True,
    ),
    CutRule(
        "loose_tongue_slot_depth",
        "slots for the loose tongue, depth on each side",
        (fixed("tongue_reach"), fixed("clearance", 0.5)),
        "up",
        "a little deeper than the tongue reaches, for glue, so that the joint closes",
        fine=True,
    ),
    CutRule(
        "space_beside",
        "space to leave beside each long edge",
        (fixed("clearance"), travel("edge_widening")),
        "up",
        "in the dampest month the whole width grows and must not meet a wall or frame",
    ),
)

STATES = (
    CutRule(
        "space_driest",
        "space beside each long edge in the driest month",
        (fixed("clearance"), travel("edge_widening"), travel("edge_narrowing")),
        "up",
        "the edge has drawn in",
    ),
)


def _driest(facts: Facts) -> str:
    return f"panel and rim shrink together, each edge by {facts.up_to('edge_narrowing')}, and nothing is held"


def _dampest(facts: Facts) -> str:
    return f"panel and rim grow together, each edge by {facts.up_to('edge_widening')}, and nothing is held"


OWN_BLANK_RIM = register(
    Way(
        key="own_blank_rim",
        name="border cut from the panel's own blank",
        short="own-blank border",
        built_as="a panel with end pieces cut from its own blank",
        also=("rim with end pieces from the panel's own blank",),
        kinds=("table top", "seat", "lid", "board"),
        wants_border=True,
        keeps_border=True,
        numbers=numbers,
        cuts=RULES,
        states=STATES,
        parts=(
            size(
                "blank_length",
                "blank before the end pieces are cut off, along the grain",
                fixed("finished_length"),
                why="kerfs and trim are added to it",
            ),
        ),
        stopped_by=Limit(("space_driest",), 0.5 * INCH_M, "the space beside it gets wider than {limit}"),
        shows=(
            "A panel with an end piece whose grain runs with its own: both narrow and widen together. Below, the joint"
            " from the side, with a loose tongue across it."
        ),
        main_cuts=("loose_tongue_length", "space_beside"),
        driest=_driest,
        dampest=_dampest,
        reasons=(
            "The end pieces come off the same blank with their grain along the panel's, so all of it moves alike.",
        ),
        steps=(
            "Glue up one blank for panel and rim, long enough for both end pieces, their kerfs and the trim.",
            "Number the end pieces before the crosscut, and glue each back at its own end, face up, boards in line.",
            "On the face glue them flat, grain beside grain: such a joint is as strong as the wood.",
            "In line with the panel the joint is end grain to end grain and weak: put in a loose tongue.",
            "Let the tongue's own grain cross the joint, along the panel's; a tongue with its grain along the joint holds "
            "the panel like a glued border.",
            "Seal the end grain twice, so that the short pieces keep pace with the panel.",
        ),
        remarks=(
            "an end piece has short grain: it snaps in the hand until it is glued, and must not be used as a handle",
            "nothing keeps the panel flat; add battens where that matters",
        ),
        notes=(
            NoteRule(
                (fixed("woods_differ"),),
                "border and panel are named as different woods; end pieces from the panel's own blank are the panel's wood",
            ),
        ),
        change="A panel that has to be kept flat by its border would ask for a breadboard end or a frame.",
        cautions=(
            "End pieces are short and short-grained: no jointer, no planer; plane them by hand or glue them on first.",
        ),
        watch="inside the panel, or between panel and end piece,",
    )
)
