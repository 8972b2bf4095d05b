"""A plain panel, left alone: no border, nothing that holds it."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Mark
from .drawn import MIDDLE, PLAN_LEFT, PLAN_RIGHT, Drawn, broken
from .given import Given
from .joint_drawing import beside_wall
from .made import MadePiece, Place, Section, Sum
from .making import ACROSS, made, whole_panel
from .plan_drawing import panel, sizes_px, today_lines
from .rules import INCH_M
from .same_grain_border import RULES, SPACE_DRIEST, numbers
from .steps import SQUARE_EDGE, SQUARE_ENDS, TOGETHER, Step
from .way import Limit, Way


def make(given: Given) -> MadePiece:
    """One panel as large as the piece."""
    long, wide, thick = (size.exact_m for size in (given.length, given.width, given.thickness))
    zero = Fraction(0)
    return made(
        given,
        (whole_panel(given),),
        (Sum(ACROSS, ((1, "panel", wide),), wide),),
        (Place("panel", (zero, long), (zero, wide)),),
        (Section("panel", (zero, wide), (zero, thick)),),
    )


def plan(d: Drawn) -> list[Mark]:
    """The panel, wider and narrower."""
    today, now, _ = sizes_px(d)
    ends = broken(PLAN_LEFT, MIDDLE - 0.52 * now, 1.04 * now)
    return [*panel(PLAN_LEFT, PLAN_RIGHT, now), *ends, *today_lines(d, PLAN_LEFT, PLAN_RIGHT, today)]


WAY = Way(
    key="plain_panel",
    name="plain panel left alone",
    short="plain panel",
    built_as="a plain panel, left alone",
    means="Nothing is fixed across it, so that it can grow and shrink as it likes.",
    also=("panel without a border",),
    kinds=("table top", "seat", "lid", "board", "shelf"),
    usual_for=("shelf",),
    numbers=numbers,
    cuts=RULES,
    states=(SPACE_DRIEST,),
    stopped_by=Limit(("space_driest",), 0.5 * INCH_M, "the space beside it gets wider than {limit}"),
    make=make,
    order=(Step("ease the edges and the ends", [SQUARE_EDGE, SQUARE_ENDS], [TOGETHER], [SQUARE_EDGE]),),
    plan=plan,
    joint=beside_wall,
    shows="A panel without a border: it narrows and widens as it likes. Below, the space left beside it to a wall.",
    main_cuts=("space_beside",),
    driest="the panel shrinks as it likes, each edge by {edge_narrowing}, and nothing is held",
    dampest="the panel grows as it likes, each edge by {edge_widening}, and nothing is held",
    reasons=(
        "Nothing holds it, so nothing can crack it; it only needs room beside it, and what carries it must let it slide.",
    ),
    steps=(
        "Take boards whose rings stand steep, or narrow ones, so that it stays flat without help.",
        "Carry it on what lets it slide: it is fixed at the middle of its width only, or at one edge.",
        "Finish both faces and the ends alike, on the same days.",
    ),
    remarks=("nothing keeps it flat; add battens below where that matters",),
    change="A border across the ends is wanted, or it has to stay flat by itself: then a way that lets it slide.",
)
