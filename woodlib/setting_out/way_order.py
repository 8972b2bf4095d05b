"""The steps of each way to build, beside those of its panel, put in an order that never needs a face that is gone."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from ..ways.made import MadePiece
from .order import CROSSCUT, USUAL_PRESENT, CutOrder, Step, cut_order, usual_steps

BORE = "bore for hardware"

_EDGE, _ENDS = "square edge", "square ends"

_CUT_ENDS = Step("cut the end pieces to size", ["parallel face"], ["square end pieces"])
_FRAME = (
    Step("cut the frame's members to size", ["parallel face"], ["square inner edges"]),
    Step("cut the joints of the frame", ["square inner edges"], ["frame joints"]),
    Step("plough the grooves in the frame", ["square inner edges"], ["grooves"], ["square inner edges"]),
    Step("cut the tongues on the panel's edges", [_EDGE, _ENDS], ["tongues"], [_EDGE, _ENDS]),
    Step("finish the panel, tongues and all", ["tongues"], ["finished panel"]),
    Step("put frame and panel together dry", ["frame joints", "grooves", "finished panel"], ["dry fit"]),
    Step("glue the frame around the dry panel, soft spacers in its grooves", ["dry fit"], ["glued frame"], ["dry fit"]),
    Step(
        "pin the panel at the middle of each rail, where no spacers keep it there",
        ["glued frame"],
        ["panel in the middle"],
    ),
    Step("level the joints of the frame", ["panel in the middle"], ["piece together"]),
)
_BOARDS = (
    CROSSCUT,
    Step("number the boards and mark the show face", makes=["numbers"]),
    Step("flatten one face", ["rough lengths", "rough face"], ["flat face"], ["rough face"]),
    Step("joint one edge", ["flat face", "rough edge"], ["jointed edge"], ["rough edge"]),
    Step("plane to thickness", ["flat face"], ["parallel face"]),
    Step("rip to width", ["jointed edge", "parallel face"], [_EDGE]),
    Step("cut to length", [_EDGE], [_ENDS]),
)
_BACK = (
    Step("cut laps or tongues and grooves", [_EDGE, _ENDS], ["laps"], [_EDGE]),
    Step("finish the boards, laps and all", ["laps"], ["finished boards"]),
    Step("fix each board at its middle, gaps as given", ["finished boards"], ["piece together"]),
)
_TURNING = (
    Step("plane the blank square", ["rough face", "rough edge"], ["square blank"], ["rough face", "rough edge"]),
    Step("cut the blank to length, waste and all", ["square blank"], ["blank ends"]),
    Step("mark the middle of both ends", ["blank ends"], ["centres"]),
    Step("turn to size", ["centres"], ["turned"], ["square blank"]),
    Step("part off the waste", ["turned", "centres"], ["piece together"], ["centres", "blank ends"]),
)
_RING = (
    Step("plane the ring's blank to thickness", makes=["ring blank"]),
    Step("bore the ring to its inside diameter", ["ring blank"], ["bored ring"]),
    Step("turn the outside of the ring about its bore, and ease its edges", ["bored ring"], ["ring"], ["bored ring"]),
    Step("slip the ring over the post; pin it at one place only, or leave it loose", ["ring", "piece together"]),
)
_SHEET = (
    Step("plane the edging to thickness", ["rough face"], ["parallel face"], ["rough face"]),
    Step("cut the sheet to size", makes=["square sheet"]),
    Step("mitre the edging around the sheet", ["parallel face", "square sheet"], ["edging"]),
    Step("glue the edging on", ["edging", "square sheet"], ["edged sheet"]),
)
_FLUSH = "plane the edging flush"

STEPS: Mapping[str, tuple[Step, ...]] = MappingProxyType(
    {
        "glued_border": (
            _CUT_ENDS,
            Step(
                "glue the end pieces on, where the verdict allows it", [_ENDS, "square end pieces"], ["piece together"]
            ),
        ),
        "breadboard": (
            _CUT_ENDS,
            Step("plough the end pieces, stopped short of their ends", ["square end pieces"], ["ploughed ends"]),
            Step(
                "drill the ends from below, short of the show face unless pins may show",
                ["square end pieces", "ploughed ends"],
                ["drilled ends"],
                ["square end pieces"],
            ),
            Step("cut the tongue on both ends of the panel", [_EDGE, _ENDS], ["long tongues"], [_ENDS]),
            Step("saw the notch at each edge of the tongues, down to their width", ["long tongues"], ["tongues"]),
            Step("mark the pins through the end pieces on the tongues", ["drilled ends", "tongues"], ["pin marks"]),
            Step("drill the middle hole and cut the slots in the tongues", ["pin marks"], ["slots"], ["pin marks"]),
            Step("finish the tongues, and pin the ends on", ["slots", "drilled ends"], ["piece together"]),
        ),
        "own_blank_rim": (
            Step("slot the panel's ends and the end pieces for loose tongues", [_ENDS, "end pieces"], ["tongue slots"]),
            Step(
                "glue each end piece back at its own end",
                ["tongue slots", "end numbers"],
                ["piece together"],
                ["end numbers"],
            ),
        ),
        "glued_face_rim": (
            Step("cut the rim pieces to size", ["parallel face"], ["rim pieces"]),
            Step(
                "glue the rim on the face, where the verdict allows it",
                [_EDGE, _ENDS, "rim pieces"],
                ["piece together"],
            ),
        ),
        "same_grain_border": (
            Step("rip the border strips", ["parallel face"], ["strips"]),
            Step("glue the strips to the long edges", [_EDGE, _ENDS, "strips"], ["piece together"], [_EDGE]),
        ),
        "battens": (
            Step("cut the battens to size, with their slots", ["parallel face"], ["slotted battens"]),
            Step(
                "screw the battens on, square to the front edge", [_EDGE, _ENDS, "slotted battens"], ["piece together"]
            ),
        ),
        "sliding_dovetail": (
            Step("cut the dovetail housings, square to the front edge", [_EDGE, _ENDS], ["housings"]),
            Step("cut the battens and fit them to the housings", ["parallel face", "housings"], ["fitted battens"]),
            Step("wax the battens and drive them home", ["fitted battens"], ["piece together"]),
        ),
        **dict.fromkeys(("frame_panel", "mitred_frame"), _FRAME),
        **dict.fromkeys(("lapped_back", "tongued_back"), _BACK),
        "round_tenon": _TURNING,
        "loose_ring": (*_TURNING, *_RING),
        "edged_sheet": (*_SHEET, Step(_FLUSH, ["edged sheet"], ["piece together"])),
        "veneered_sheet": (
            *_SHEET,
            Step(_FLUSH, ["edged sheet"], ["flush faces"]),
            Step("veneer both faces on one day", ["flush faces"], ["piece together"], ["flush faces"]),
        ),
    }
)
"""Steps of a way after, or beside, those of its panel; a way that is not named has none."""


def order_for(
    piece: MadePiece, dowels: bool, hardware: bool, *, glued_up: bool = True, lifts: bool = False
) -> CutOrder:
    """An order of all steps that works, with its reasons.

    ``dowels`` whether glue lines of the panel have them; ``hardware`` whether there is any to bore for: then the holes
    come once the piece is together, or, for a part alone, while its edge and ends are square; ``glued_up`` whether
    the panel takes more than one board; ``lifts`` whether the piece is hung on hinges.
    """
    own = STEPS.get(piece.way.key, ())
    base: tuple[Step, ...] = ()
    if piece.panel is not None:
        usual = usual_steps(end_pieces=piece.own_ends_m is not None, dowels=dowels, glued_up=glued_up)
        base = tuple(step for step in usual if step.name != BORE)
    elif piece.way.boarded:
        base = _BOARDS
    return cut_order((*base, *own, *_at_the_end(own, hardware, lifts)), USUAL_PRESENT)


def _at_the_end(own: tuple[Step, ...], hardware: bool, lifts: bool) -> tuple[Step, ...]:
    """Boring, finishing and hanging, once the piece is together or its ends are square."""
    whole = ["piece together"] if _assembled(own) else [_EDGE, _ENDS]
    bore = (Step(BORE, whole, ["hardware holes"]),) if hardware else ()
    finish = Step("finish all faces alike, ends too", [*whole, *(["hardware holes"] if hardware else [])], ["finish"])
    return (*bore, finish, *((Step("hang it on its hinges", ["finish"]),) if lifts else ()))


def _assembled(steps: tuple[Step, ...]) -> bool:
    return any("piece together" in step.makes for step in steps)
