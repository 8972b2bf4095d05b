"""A common wrong idea beside the picture that refutes it: one for each lesson, drawn by the lesson's own study."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from typing import Any

from ..errors import InputError
from ..studies import find_study
from ..study.answer import Answer
from ..words.say import plain_text
from .series import scrolling


@dataclass(frozen=True)
class Refuted:
    """What one hears, the study and the place of its sliders that show otherwise, and what to look at."""

    idea: str
    study: str
    values: dict[str, Any]
    look: str

    def answer(self) -> Answer:
        """The study's answer there."""
        return find_study(self.study).starting(**self.values).answer()

    def __str__(self) -> str:
        answer = self.answer()
        return f"You hear: {self.idea}\nThe picture: {plain_text(answer.headline)}\nLook: {self.look}"

    def _repr_mimebundle_(self, include=None, exclude=None) -> dict[str, str]:
        answer = self.answer()
        told = answer.alt_text()
        html = (
            f"<p>You hear: <strong>{escape(self.idea)}</strong></p>"
            f"{scrolling(answer.picture, told, told)}"
            f"<p>{escape(plain_text(answer.headline))}</p><p>{escape(self.look)}</p>"
        )
        return {"text/plain": str(self), "text/html": html}


def refuted(lesson: str) -> Refuted:
    """The wrong idea of a lesson, by its name without the number. Raises InputError where there is none.

    >>> refuted("what-a-finish-buys").idea
    'Varnish seals the wood.'
    """
    if lesson not in IDEAS:
        raise InputError(f"There is no wrong idea for {lesson!r}; there are some for: {', '.join(IDEAS)}.")
    return IDEAS[lesson]


IDEAS = {
    "reading-a-board": Refuted(
        "Old wood is dead. It has stopped moving.",
        "moisture-by-month",
        {},
        "The curve asks for the air and for nothing else: not for the wood, not for its age. Cell walls from an old beam "
        "take up water as those of a new board do (from memory, no source at hand).",
    ),
    "the-air-of-a-house": Refuted(
        "Heating burns up the moisture.",
        "moisture-from-air",
        {"outdoor_c": 0.0},
        "The filling of both jars is the same water. Only the jar has grown.",
    ),
    "how-far-it-moves": Refuted(
        "Quartersawn wood does not move.",
        "panel-movement",
        {"driest": 25, "dampest": 62, "ring_angle": 90},
        "The rings stand up, and the edge still goes out and back. It moves half as far, not nothing.",
    ),
    "is-it-ready": Refuted(
        "It has been here a week, so it has settled.",
        "a-week-in-the-shop",
        {"bottom": "bare"},
        "After a week the blue still bulges in the middle: skin and core have not met.",
    ),
    "what-a-finish-buys": Refuted(
        "Varnish seals the wood.",
        "a-week-in-the-shop",
        {"top": "varnish", "bottom": "varnish"},
        "The dashed line, where the wood is going, stands where it stood for bare wood. The varnish only makes it late.",
    ),
    "laying-boards": Refuted(
        "Always turn every other board.",
        "laying-boards",
        {"width": "4", "dries": 3},
        "Turned, the panel is flatter and has five stiff waves. Laid one way it is one weak arc, which a frame pulls flat.",
    ),
    "crossing-the-grain": Refuted(
        "Strong glue holds the wood still.",
        "crossing-the-grain",
        {"driest": 33, "dampest": 54},
        "The glue holds. The dark place at the middle of the end is the wood beside it, pulled across its grain.",
    ),
    "ways-out-and-sheet-goods": Refuted(
        "A narrower piece may be glued.",
        "ways-out",
        {"driest": 33, "dampest": 54, "width": "10 in"},
        "The two glued rows stay refused at half the width. Strain does not ask how wide the piece is.",
    ),
    "drawers-doors-backs-and-metal": Refuted(
        "A big screw holds it.",
        "hardware-across-the-grain",
        {"driest": 33, "dampest": 54, "shank": "6 mm"},
        "A thicker screw makes the slot longer by its own thickness, and the travel no smaller.",
    ),
    "setting-out": Refuted(
        "I see it when I get there.",
        "setting-out",
        {},
        "On the finished blank nothing shows. Inside it, the saw goes into a dowel.",
    ),
    "the-commission": Refuted(
        "It cracked, so glue the crack and it is mended.",
        "moves-and-pulls",
        {"driest": 33, "dampest": 54},
        "The glued ends are still there, and the year comes again. Free the ends first; then a crack may be mended.",
    ),
}
"""Lesson -> the idea that it refutes with a picture."""
