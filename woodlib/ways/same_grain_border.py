"""A border whose grain runs the same way as the panel's, glued along the long edges."""

from __future__ import annotations

from .parts import size
from .piece import Allowances, Piece
from .registry import register
from .rules import INCH_M, CutRule, Facts, NoteRule, fixed, travel
from .travel import Quantities, at_fixing
from .way import Limit, Way


def numbers(travels: Quantities, piece: Piece, allowances: Allowances) -> Quantities:
    """Panel and border move as one: travel of each outer edge, careful end."""
    return {
        **at_fixing(travels, "edge", 0.5 * travels["width"]),
        "clearance": allowances.slot_clearance_m,
        "woods_differ": float(piece.border_wood is not piece.wood),
    }


RULES = (
    CutRule(
        "space_beside",
        "space to leave beside each long edge",
        (fixed("clearance"), travel("edge_widening")),
        "up",
        "in the dampest month the whole width grows and must not meet a wall or frame",
    ),
)


def _driest(facts: Facts) -> str:
    return f"border and panel shrink together, each edge by {facts.up_to('edge_narrowing')}, and nothing is held"


def _dampest(facts: Facts) -> str:
    return f"border and panel grow together, each edge by {facts.up_to('edge_widening')}, and nothing is held"


SAME_GRAIN_BORDER = register(
    Way(
        key="same_grain_border",
        name="border with its grain along the panel's",
        short="same-grain border",
        built_as="a panel whose border runs the way of its grain",
        also=("border with the grain",),
        kinds=("table top", "seat", "lid", "board"),
        usual=True,
        wants_border=True,
        numbers=numbers,
        cuts=RULES,
        states=(
            CutRule(
                "space_driest",
                "space beside each long edge in the driest month",
                (fixed("clearance"), travel("edge_widening"), travel("edge_narrowing")),
                "up",
                "the edge has drawn in",
            ),
        ),
        parts=(
            size(
                "panel_between",
                "panel between the strips, across the grain",
                fixed("finished_width"),
                fixed("border", -2.0),
            ),
            size("strip_length", "strips, two, length", fixed("finished_length")),
            size("strip_width", "strips, width", fixed("border")),
        ),
        stopped_by=Limit(("space_driest",), 0.5 * INCH_M, "the space beside it gets wider than {limit}"),
        shows=(
            "A panel with border strips along its long edges: all of it narrows and widens together. Below, the space "
            "left beside it to a wall or frame."
        ),
        main_cuts=("space_beside",),
        driest=_driest,
        dampest=_dampest,
        reasons=("Grain beside grain moves alike, so a border along the edges can be glued and nothing is held back.",),
        steps=(
            "Glue the border strips along the long edges, grain parallel, rings tilted like the panel's.",
            "Show the border at the ends with a scribed line or a bead worked into the panel itself.",
            "Glue no strip on the end grain: such a joint holds about a quarter of the wood's strength.",
        ),
        remarks=(
            "no border is left across the ends, and nothing keeps the panel flat; add battens where that matters",
        ),
        notes=(
            NoteRule(
                (fixed("woods_differ"),),
                "border and panel are different woods; they are taken to move alike, which is right only roughly",
            ),
        ),
        change="A border across the ends is wanted: then cut its end pieces from the panel's own blank.",
    )
)
