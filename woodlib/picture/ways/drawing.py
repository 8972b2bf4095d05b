"""Which way to build is drawn how; a drawing from a verdict, or from smooth numbers for a study."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from ...errors import InputError
from ...units import shown
from ...ways.piece import Piece
from ...ways.verdict import Verdict
from ...ways.way import Way
from ...words.decided import Decided
from ..scene import Mark, Picture, Words
from . import edges, joints, plans
from .sheet import HEIGHT, MONTHS, PLAN_LEFT, PLAN_WIDTH, SECTION_LEFT, SECTION_WIDTH, WIDTH, Drawn, Scale, scale_for

Part = Callable[[Drawn], list[Mark]]

# key: plan, section
DRAWINGS: dict[str, tuple[Part, Part]] = {
    "glued_border": (plans.glued, edges.glued_edge),
    "breadboard": (plans.breadboard, joints.breadboard),
    "frame_panel": (plans.frame, joints.groove),
    "battens": (plans.battened, joints.screwed),
    "buttons": (plans.on_apron, joints.button),
    "same_grain_border": (plans.along_edges, edges.beside_wall),
    "glued_face_rim": (plans.glued, edges.face_rim),
    "own_blank_rim": (plans.own_blank, edges.own_blank),
    "sliding_dovetail": (plans.battened, joints.dovetail),
    "slotted_blocks": (plans.on_apron, joints.screwed),
    "figure_plates": (plans.on_apron, joints.plate),
    "drawer_front": (plans.in_opening, edges.in_opening),
    "drawer_side": (plans.in_opening, edges.in_opening),
    "drawer_bottom": (plans.drawer, joints.bottom),
    "inset_panel": (plans.in_opening, edges.in_opening),
    "lapped_back": (plans.boards, edges.lapped),
    "tongued_back": (plans.boards, edges.tongued),
    "mitred_frame": (plans.mitred, edges.mitre),
    "round_tenon": (plans.round_part, edges.round_joint),
    "loose_ring": (plans.round_part, edges.round_joint),
    "edged_sheet": (plans.frame, edges.edged),
    "veneered_sheet": (plans.frame, edges.veneered),
}


def sizes_of(way: Way, numbers: Mapping[str, float]) -> dict[str, Decided]:
    """Every size of a way by name, to cut and as it will stand, remembered with its decisions."""
    return {rule.key: rule.size(numbers) for rule in (*way.cuts, *way.states)}


def measures_of(piece: Piece) -> dict[str, float]:
    """The sizes of a piece as the drawings take them, metres."""
    names = ("width", "length", "thickness", "border_width", "border_thickness")
    return {name: getattr(piece, f"{name}_m") for name in names}


def usual_scale(way: Way, numbers: Mapping[str, float], piece: Mapping[str, float]) -> Scale:
    """A scale that holds this state; a study takes the one of its widest and most restless state and keeps it."""
    furthest = max(abs(numbers[f"{way}_mid"]) / numbers["width"] for way in ("narrowing", "widening"))
    if way.round:
        return scale_for(piece["width"], furthest, 1.6 * piece["width"] + 0.02)
    tallest = piece["thickness"] + piece["border_thickness"]
    section = max(2.0 * piece["border_width"], 2.4 * tallest, 0.06)
    travel = max(abs(numbers[f"{way}_high"]) for way in ("narrowing", "widening"))
    return scale_for(piece["width"], furthest, section + 2.0 * travel, 0.03)


def draw_way(d: Drawn, title: str) -> Picture:
    """The sheet of one way in one month: plan on the left, section on the right."""
    if d.month not in MONTHS:
        raise InputError(f"month is {shown(d.month)}; it must be one of {', '.join(MONTHS)}.")
    plan, section = DRAWINGS[d.way.key]
    when = {"today": "today", "driest": "in the driest month", "dampest": "in the dampest month"}[d.month]
    below = (
        "hardly anything moves outside"
        if d.way.still_outside
        else f"today dashed, movement drawn {d.scale.times} times its size"
    )
    marks = (
        Words(PLAN_LEFT + PLAN_WIDTH / 2, 24, f"From above, {when}", "ink", 16, bold=True),
        Words(SECTION_LEFT + SECTION_WIDTH / 2, 24, "The joint, to one scale", "ink", 16, bold=True),
        *plan(d),
        *section(d),
        Words(WIDTH / 2, HEIGHT - 14, f"From above: {below}", "quiet", 14),
    )
    return Picture(title, WIDTH, HEIGHT, marks)


def draw_verdict(verdict: Verdict, piece: Piece, month: str = "today") -> Picture:
    """The drawing of a verdict, for ``month`` today, driest or dampest.

    Raises :class:`InputError` for another month.
    """
    sizes = {cut.key: cut.metres for cut in (*verdict.cuts, *verdict.states)}
    measures = measures_of(piece)
    scale = usual_scale(verdict.way, verdict.quantities, measures)
    return draw_way(Drawn(verdict.way, verdict.quantities, sizes, measures, scale, month), verdict.way.title)


def words_for(verdict: Verdict, month: str = "today") -> str:
    """What the drawing shows, in words with its numbers."""
    cuts = "; ".join(f"{cut.label} {cut.text()}" for cut in verdict.cuts) or "nothing is cut loose"
    said = {"today": verdict.reason, "driest": verdict.driest, "dampest": verdict.dampest}[month]
    return f"{verdict.way.title}, from above and in section. {said} Sizes to cut today: {cuts}."
