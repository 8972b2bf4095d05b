"""Every way to build the kit knows, and which of them serve which kind of piece."""

from __future__ import annotations

from ..errors import InputError
from ..units import shown
from .battens import BATTENS
from .breadboard import BREADBOARD
from .buttons import BUTTONS
from .drawer_bottom import DRAWER_BOTTOM
from .drawer_front import DRAWER_FRONT
from .drawer_side import DRAWER_SIDE
from .figure_plates import FIGURE_PLATES
from .frame_panel import FRAME_PANEL
from .glued_border import GLUED_BORDER
from .glued_face_rim import GLUED_FACE_RIM
from .inset_panel import INSET_PANEL
from .mitred_frame import MITRED_FRAME
from .own_blank_rim import OWN_BLANK_RIM
from .round_parts import LOOSE_RING, ROUND_TENON
from .same_grain_border import SAME_GRAIN_BORDER
from .sliding_dovetail import SLIDING_DOVETAIL
from .slotted_blocks import SLOTTED_BLOCKS
from .solid_back import LAPPED_BACK, TONGUED_BACK
from .stable_sheets import EDGED_SHEET, VENEERED_SHEET
from .verdict import Construction

USUAL_WAYS = (GLUED_BORDER, BREADBOARD, FRAME_PANEL, BATTENS, BUTTONS, SAME_GRAIN_BORDER)
"""What is compared when no kind of piece is named: a panel with a border."""

EVERY_WAY = (
    *USUAL_WAYS,
    GLUED_FACE_RIM,
    OWN_BLANK_RIM,
    SLIDING_DOVETAIL,
    SLOTTED_BLOCKS,
    FIGURE_PLATES,
    DRAWER_FRONT,
    DRAWER_SIDE,
    DRAWER_BOTTOM,
    INSET_PANEL,
    LAPPED_BACK,
    TONGUED_BACK,
    MITRED_FRAME,
    ROUND_TENON,
    LOOSE_RING,
    EDGED_SHEET,
    VENEERED_SHEET,
)

KINDS = tuple(dict.fromkeys(kind for way in EVERY_WAY for kind in way.kinds))
"""Kinds of piece, each served by at least one way."""


def ways_for(kind: str | None = None) -> tuple[Construction, ...]:
    """The ways that serve a kind of piece; the usual six when none is named.

    Raises :class:`InputError` for a kind the kit does not know.

    >>> [way.key for way in ways_for("turned part")]
    ['round_tenon', 'loose_ring']
    """
    if kind is None:
        return USUAL_WAYS
    if kind not in KINDS:
        raise InputError(f"kind of piece is {shown(kind)}; it must be one of {', '.join(KINDS)}.")
    return tuple(way for way in EVERY_WAY if kind in way.kinds)


def find_construction(key: str) -> Construction:
    """A way to build by its key.

    Raises :class:`InputError` naming every key.

    >>> find_construction("breadboard").name
    'breadboard end with slots'
    """
    found = [way for way in EVERY_WAY if way.key == key]
    if not found:
        known = ", ".join(way.key for way in EVERY_WAY)
        raise InputError(f"construction is {shown(key)}; it must be one of {known}.")
    return found[0]
