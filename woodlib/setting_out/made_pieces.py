"""From a brief and a verdict to the parts of the piece, whichever way it is built."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from ..brief import Brief
from ..errors import Problems
from ..units import both
from ..ways.made import MadePiece
from ..ways.verdict import Verdict
from . import more_way_parts as more
from . import way_parts as first
from .given import Given, given_of
from .practice import ShopPractice

MADE_BY: Mapping[str, Callable[[Given], MadePiece]] = MappingProxyType(
    {
        "glued_border": first.glued_border,
        "breadboard": first.breadboard,
        "frame_panel": more.frame_panel,
        "battens": first.battens,
        "buttons": first.on_a_base,
        "same_grain_border": first.same_grain_border,
        "glued_face_rim": first.glued_face_rim,
        "own_blank_rim": first.own_blank_rim,
        "sliding_dovetail": first.sliding_dovetail,
        "slotted_blocks": first.on_a_base,
        "figure_plates": first.on_a_base,
        "drawer_front": more.drawer_front,
        "drawer_side": more.drawer_side,
        "drawer_bottom": more.drawer_bottom,
        "inset_panel": more.inset_panel,
        "lapped_back": more.lapped_back,
        "tongued_back": more.tongued_back,
        "mitred_frame": more.mitred_frame,
        "round_tenon": more.round_tenon,
        "loose_ring": more.loose_ring,
        "edged_sheet": more.edged_sheet,
        "veneered_sheet": more.veneered_sheet,
    }
)
"""Every way to build -> the function that makes its parts."""


def made_by(brief: Brief, verdict: Verdict, practice: ShopPractice) -> MadePiece:
    """The parts of the piece of a brief, built as a verdict says.

    Raises :class:`InputError` where the verdict is for another piece, or where a part would have no size.

    >>> from woodlib.commission import chosen_brief, commission_of
    >>> seat = commission_of(chosen_brief(), "frame_panel")
    >>> piece = made_by(seat.brief, seat.built, ShopPractice())
    >>> [(part.name, part.count) for part in piece.parts]
    [('panel', 1), ('stile', 2), ('rail', 2)]
    >>> piece.sums[0].says
    'across the grain: 2 x stile 50.8 mm + panel 425.45 mm - 2 x panel in a groove 9.525 mm = 508 mm'
    """
    piece = MADE_BY[verdict.key](given_of(brief, verdict, practice))
    problems = Problems()
    for part in piece.parts:
        for name, size in zip(("length", "width", "thickness"), part.sizes, strict=True):
            if size.exact_m <= 0:
                problems.add(
                    f"{brief.where('piece')}the {part.name} of {verdict.way.built_as} would have a {name} of "
                    f"{both(size.exact_m, 64, 0.1)} ({size.comes_from}); make the piece larger or the border narrower, "
                    "or choose another way to build."
                )
    problems.raise_if_any()
    return piece
