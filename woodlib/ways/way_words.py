"""What each way to build is called by the maker, on a picture and in a letter, and what its drawing shows."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True)
class WayWords:
    """``name`` for a reader, ``short`` for a picture, ``built_as`` to follow "we build it as"; ``shows`` the drawing in
    words, from above and then the joint; ``main_cuts`` the sizes that a slider shows, at most three.
    """

    name: str
    short: str
    built_as: str
    shows: str
    main_cuts: tuple[str, ...] = ()


_OUTER = "outer slots, outward from the {0}'s centre", "outer slots, inward from the {0}'s centre"
_FRAME = (
    "groove in the stiles, depth",
    "panel, width across the grain",
    "line between shoulder and stile today, each side",
)

WAY_WORDS = MappingProxyType(
    {
        "glued_border": WayWords(
            "border glued across the ends",
            "glued border",
            "a panel with its border glued across the ends",
            "A panel with a border glued across its end: the border holds the end at today's width while the rest narrows "
            "and widens. Below, panel, glue line and border from the side.",
        ),
        "breadboard": WayWords(
            "breadboard end that slides on slots",
            "breadboard end",
            "a panel with breadboard ends that slide on slots",
            "A panel with an end piece across its grain: the panel becomes narrower and wider than the end piece. Below, "
            "the tongue in its groove, and the outer slot that slides past its pin.",
            (*(size.format("pin") for size in _OUTER), "groove stop from each end of the end piece"),
        ),
        "frame_panel": WayWords(
            "frame with a floating panel",
            "frame and panel",
            "a frame with a loose, floating panel",
            "A panel in a frame that hardly moves outside. Below, the tongue of the panel moves in and out of its groove, "
            "and the line beside it opens and closes.",
            _FRAME,
        ),
        "battens": WayWords(
            "battens below, in slots",
            "slotted battens",
            "a panel on battens that let it slide",
            "A panel with battens below it: the panel narrows and widens past them. Below, the outer screw travels along "
            "its slot in the batten.",
            (*(size.format("screw") for size in _OUTER), "batten end, set back from each edge"),
        ),
        "buttons": WayWords(
            "held to a base by buttons",
            "buttons",
            "a panel held to its base by buttons that let it slide",
            "A panel on a base: the panel narrows and widens past it. Below, a button moves in and out of the groove in "
            "the rail.",
            ("gap between button shoulder and rail", "groove for the buttons, depth"),
        ),
        "same_grain_border": WayWords(
            "border with its grain along the panel's",
            "same-grain border",
            "a panel whose border runs the way of its grain",
            "A panel with border strips along its long edges: all of it narrows and widens together. Below, the space left "
            "beside it to a wall or frame.",
            ("space to leave beside each long edge",),
        ),
        "glued_face_rim": WayWords(
            "rim glued across the face",
            "rim on the face",
            "a panel with a rim glued across its face",
            "A panel with a rim glued on its face across the grain: the rim holds the end while the rest narrows and "
            "widens. Below, rim and panel as layers, and how far they would bow.",
        ),
        "own_blank_rim": WayWords(
            "border cut from the panel's own blank",
            "own-blank border",
            "a panel with end pieces cut from its own blank",
            "A panel with an end piece whose grain runs with its own: both narrow and widen together. Below, the joint "
            "from the side, with a loose tongue across it.",
            ("loose tongue in each end joint, length across the panel", "space to leave beside each long edge"),
        ),
        "sliding_dovetail": WayWords(
            "batten in a sliding dovetail",
            "sliding dovetail",
            "a panel kept flat by battens in sliding dovetails",
            "A panel with battens below it: the panel narrows and widens along them. Below, the batten in its housing, and "
            "the gap at its front end.",
            (
                "gap between the batten's front end and the stop",
                "batten, set back from the back edge",
                "slack across the dovetail, housing over batten",
            ),
        ),
        "slotted_blocks": WayWords(
            "slotted blocks on a base",
            "slotted blocks",
            "a panel held to its base by slotted blocks",
            "A panel on a base: the panel narrows and widens past it. Below, the screw of a block of the long aprons "
            "travels along its slot.",
            (
                "slots in the blocks of the long aprons, outward from the screw's centre",
                "slots in the blocks of the long aprons, inward from the screw's centre",
            ),
        ),
        "figure_plates": WayWords(
            "figure-eight fasteners on a base",
            "figure-eight plates",
            "a panel held to its base by figure-eight fasteners that turn",
            "A panel on a base: the panel narrows and widens past it. Below, a plate in its recess from above; it turns "
            "with the panel.",
            ("recess in the end aprons, width along the apron", "recess, depth below the top edge of the apron"),
        ),
        "drawer_front": WayWords(
            "solid front with room above",
            "solid front",
            "a solid front with room to grow above it",
            "A drawer front in its opening: it stands on its lower edge and grows upward. Below, the gap to the rail above.",
            ("drawer front, height", "gap above the front today"),
        ),
        "drawer_side": WayWords(
            "solid side with room above",
            "solid side",
            "a solid side with room to grow above it",
            "A drawer side between runner and kicker: it stands on its lower edge and grows upward. Below, the gap above.",
            ("drawer side, height", "gap above the side today"),
        ),
        "drawer_bottom": WayWords(
            "solid bottom sliding in grooves",
            "solid bottom",
            "a solid bottom that slides in its grooves",
            "A drawer from below: its bottom is fixed at the front and grows past the back. Below, the screw of the back "
            "in its slot.",
            (
                "bottom, width from front to back",
                "screw slot below the back, backward from the screw's centre",
                "screw slot below the back, forward from the screw's centre",
            ),
        ),
        "inset_panel": WayWords(
            "plain panel set into an opening",
            "panel in an opening",
            "a plain panel set into an opening with room on one side",
            "A panel in its opening: it keeps its hinged edge and grows towards the free one. Below, the gap at the free "
            "edge.",
            ("panel, width across the grain", "reveal at the free edge today"),
        ),
        "lapped_back": WayWords(
            "back of lapped boards",
            "lapped boards",
            "a back of boards that lap",
            "A back of upright boards, each fixed along its own middle: every board narrows and widens by itself. Below, "
            "two boards that lap, and the gap between them.",
            ("gap between boards today", "lap on each edge, width"),
        ),
        "tongued_back": WayWords(
            "back of tongued boards",
            "tongued boards",
            "a back of boards with tongues and grooves",
            "A back of upright boards, each fixed along its own middle: every board narrows and widens by itself. Below, "
            "a tongue in its groove, and the gap between two boards.",
            ("gap between boards today", "tongue, length"),
        ),
        "mitred_frame": WayWords(
            "mitred frame with a floating panel",
            "mitred frame",
            "a mitred frame with a loose, floating panel",
            "A panel in a frame with mitred corners. Below, a corner from above: how far its mitre would open if no glue "
            "held it.",
            _FRAME,
        ),
        "round_tenon": WayWords(
            "round tenon glued in",
            "glued round tenon",
            "a round tenon glued into solid wood",
            "The end of a round: it goes oval as it dries. Below, the tenon in its hole.",
            ("hole in the seat, diameter",),
        ),
        "loose_ring": WayWords(
            "ring left loose around the post",
            "loose ring",
            "a ring that stays loose around its post",
            "The end of a round: it goes oval as it dries. Below, the post in its ring.",
            ("ring, inside diameter",),
        ),
        "edged_sheet": WayWords(
            "stable sheet with solid edging",
            "sheet, solid edging",
            "a stable sheet with solid edging",
            "A sheet that hardly moves, with solid wood around it. Below, edging and sheet from the side.",
            ("sheet, width", "space to leave beside each edge"),
        ),
        "veneered_sheet": WayWords(
            "stable sheet with veneer on both faces",
            "veneered sheet",
            "a stable sheet with veneer on both faces",
            "A sheet that hardly moves. Below, its core between two veneers.",
            ("sheet, width", "space to leave beside each edge"),
        ),
    }
)
"""By the key of the way; see ``ways.EVERY_WAY``."""


def way_name(key: str) -> str:
    """What a way is called for a reader.

    >>> way_name("battens")
    'battens below, in slots'
    """
    return WAY_WORDS[key].name


def sentence_case(name: str) -> str:
    """A name at the start of a line: its first letter large, the others as they are.

    >>> sentence_case("sheet with veneer")
    'Sheet with veneer'
    """
    return name[:1].upper() + name[1:]
