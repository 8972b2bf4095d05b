"""Study: your board against its kind. What does a test piece say that the table does not, and how far is it to be believed?

The piece is 4 in wide and flatsawn, measured at 12 % MC and drier, where the handbook's straight coefficients hold; what it
says is put together with the scatter of its kind as for a brief (:mod:`woodlib.movement.measured_piece`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..movement.measured_piece import BELIEVED, RULER_M, WITHIN_BOARD, factor_by_piece, together
from ..movement.spread import NINETY_PERCENT_HALF_WIDTH, Doubts
from ..movement.wood import width_strain, wood_of
from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Window, Words
from ..study import Answer, Choice, Reading, Span, study
from ..units.exact import INCH_M
from ..words.decided import pick, size_of
from ..words.say import Said, fine_length, length, moisture, movement, say, whole_percent

WOODS = ("white oak", "black cherry", "eastern white pine")
PIECE_M, FIRST_PERCENT = 4 * INCH_M, 12.0
PANEL_M, PANEL_POINTS = 20 * INCH_M, 4.0
HOW = {"meter": "a meter, good to 1 point", "scale": "weighed, and once dried in the oven"}
_WITHIN = {"meter": 1.0, "scale": 0.2}  # % MC; a scale of 0.1 g with a piece of 100 g, rounded up
PIECES = {"one": "one", "three": "three, and all moved so"}
_COUNT = {"one": 1, "three": 3}
_SHARES = Frame(left=40, top=54, width=640, height=300, x_low=25, x_high=205, y_low=0, y_high=3)
_BELL = np.linspace(-3.0, 3.0, 41)
_KIND_SD = Doubts.species_share


@dataclass(frozen=True)
class Share:
    """A share of the average of the kind, with one standard deviation; 1 is the average."""

    mid: Any
    sd: Any

    def end(self, side: float) -> Any:
        """Nine in ten lie above (-1) or below (1) this."""
        return self.mid + side * NINETY_PERCENT_HALF_WIDTH * self.sd

    def words(self) -> Said:
        """The share with its range."""
        mid, low, high = (whole_percent(100.0 * share) for share in (self.mid, self.end(-1.0), self.end(1.0)))
        return say("about {mid}, could be {low} to {high}", mid=mid, low=low, high=high)

    def moves(self, average_m: Any) -> Said:
        """A length that moves by this share of an average."""
        ends = (self.mid, self.end(-1.0), self.end(1.0))
        mid, low, high = (movement(share * average_m) for share in ends)
        return say("about {mid}, could be {low} to {high}", mid=mid, low=low, high=high)


@study(
    "your-board",
    "Does your board move as its kind does, and how far is one test piece to be believed?",
    [
        Choice("species", "Wood", WOODS, "white oak"),
        Span("drop", "It was dried by", "moisture", 2.5, 5.0, 0.5, 4.0),
        Span(
            "shrank",
            f"The piece, {PIECE_M / INCH_M:.0f} in (102 mm) wide, shrank by",
            "fine_length",
            2e-4,
            3e-3,
            1e-4,
            1.1e-3,
        ),
        Choice("how", "Its moisture was found by", HOW, "scale"),
        Choice("pieces", "Pieces measured", PIECES, "one"),
    ],
)
def your_board(species: str, drop: float, shrank: float, how: str, pieces: str) -> Answer:
    """The share of the average by the kind alone, by the piece alone, and by both together."""
    wood = wood_of(species)
    at = FIRST_PERCENT, FIRST_PERCENT - drop
    found = factor_by_piece(wood, -shrank / PIECE_M, PIECE_M, *at, 0.0, RULER_M, _WITHIN[how])
    kind, piece = Share(1.0, _KIND_SD), Share(found[0], np.hypot(found[1], WITHIN_BOARD))
    board = Share(*together(_KIND_SD, [found] * _COUNT[pieces]))
    off = size_of((piece.mid - 1.0) / np.hypot(found[1], _KIND_SD))
    average = -width_strain(wood, 0.0, 0.0, FIRST_PERCENT, FIRST_PERCENT - PANEL_POINTS) * PANEL_M
    return Answer(
        _picture(kind, piece, board),
        pick(
            off,
            [BELIEVED],
            [
                say(
                    f"By {_told(pieces)} this {species} moves {{mid}} of the average of its kind.",
                    mid=whole_percent(100.0 * board.mid),
                ),
                f"No {species} moves like that: it is a slip, or another wood.",
            ],
        ),
        (
            Reading("Its kind, by the table", kind.words(), "of the average: nine boards in ten; more is not known"),
            Reading(
                "The piece alone",
                piece.words(),
                pick(
                    off,
                    [1.0, 2.5, BELIEVED],
                    [
                        "much as its kind does",
                        "a board of its own, as many are",
                        "a rare board: measure it once more",
                        "no board of this wood does: look for a slip in widths, moistures, rings or the species",
                    ],
                ),
                pick(off, [2.5, BELIEVED], ["fine", "watch", "stop"]),
            ),
            Reading(
                "These boards, by both",
                board.words(),
                say(
                    "the range is {share} as wide as by the table: so far the measuring is to be believed",
                    share=whole_percent(100.0 * board.sd / kind.sd),
                ),
            ),
            Reading(
                "A panel 20 in (508 mm) wide, over 4 points",
                board.moves(average),
                say("by the table alone: {before}", before=kind.moves(average)),
            ),
        ),
        say(
            "Three hills on a scale of shares of the kind's average, the bar below each holding nine in ten. By the table: {kind}. "
            "By the piece alone: {piece}. By both together, narrower than either: {board}.",
            kind=kind.words(),
            piece=piece.words(),
            board=board.words(),
        ),
        _FINE_PRINT,
    )


def _told(pieces: str) -> str:
    return "this test piece" if pieces == "one" else "three test pieces"


def _picture(kind: Share, piece: Share, board: Share) -> Picture:
    rows: Sequence[tuple[str, Share, str, str]] = (
        ("its kind, by the table", kind, "range", "quiet"),
        ("the piece alone", piece, "wood-end", "edge"),
        ("these boards, by both", board, "damp", "damp"),
    )
    ticks = [(value, f"{value} %") for value in (50, 75, 100, 125, 150, 175, 200)]
    bottom, average = _SHARES.top + _SHARES.height, _SHARES.x(100)
    marks: list[Mark] = [
        *_SHARES.axes(ticks, [], "of the average movement of its kind", size=14),
        Line([(average, _SHARES.top - 8), (average, bottom)], "ink", 1.4, "5 4"),
        Words(average, _SHARES.top - 14, "average of the table", "ink", 14),
    ]
    inside: list[Mark] = []
    for place, (name, share, fill, stroke) in enumerate(rows):
        foot = _SHARES.top + 100.0 * place + 74.0
        across = _SHARES.x(100.0 * (share.mid + share.sd * _BELL))
        hill = np.column_stack([across, foot - 52.0 * np.exp(-0.5 * _BELL**2)])
        low, high = (_SHARES.x(100.0 * share.end(side)) for side in (-1.0, 1.0))
        inside += [
            Area(hill, fill),
            Line(hill, stroke, 1.8),
            Line([(low, foot + 9), (high, foot + 9)], stroke, 4.0),
            Circle(_SHARES.x(100.0 * share.mid), foot + 9, 5.5, stroke, filled=True),
        ]
        marks.append(Words(_SHARES.left, foot - 60, name, "ink", 15, "start", bold=True))
    return Picture("A board against its kind", 720, 430, (*marks, Window(_SHARES.outline, tuple(inside))))


_FINE_PRINT = (
    "Scatter of a kind: boards differ from their average with a standard deviation of 15 % (coefficient of variation of shrinkage, Wood "
    "Handbook chapter 4, from memory).",
    say(
        "The piece: flatsawn, {wide} wide, first measured at {first}; calipers good to {ruler}, rings to 5°, and one board "
        "differs within itself by 5 % (judgement, no source).",
        wide=length(PIECE_M),
        first=moisture(FIRST_PERCENT),
        ruler=fine_length(RULER_M),
    ),
    "Both are taken as normal and weighed by how sure they are (conjugate normal), the errors of several pieces as independent. Pieces "
    "beyond 4 standard deviations are "
    "not believed.",
    "The panel's ranges hold the doubt of the wood alone; rings, meter and air add theirs.",
)
