"""A curtain before a study: it opens when its predictions are given, or when somebody would rather look without."""

from __future__ import annotations

import ipywidgets as widgets

from ..live import Panel
from ..live.controls import GONE_CSS
from ..live.still import hidden_while_live
from ..picture.palette import style_sheet
from ..picture.said import Foretold
from .cards import CARD_CSS, paragraphs
from .kept import kept
from .solutions import find_prediction, lessons

OPEN_WITHOUT = "Open without"
SAY_FIRST = "Say first what you expect: this opens when you have answered the questions above."


class Curtain(widgets.VBox):
    """A panel that waits for predictions; once it is open they stand in its picture."""

    def __init__(self, panel: Panel, keys: tuple[str, ...]) -> None:
        self.panel, self.asked, self.is_open = panel, keys, False
        panel.after = keys
        self._told = widgets.HTML()
        self._without = widgets.Button(description=OPEN_WITHOUT, layout={"width": "auto"})
        self._without.on_click(lambda _: self.open_without())
        style = widgets.HTML(
            f"<style>{style_sheet()}{CARD_CSS}{GONE_CSS}{hidden_while_live(panel.study.key)}</style>",
            layout={"height": "0", "margin": "0"},
        )
        self._closed: tuple[widgets.Widget, ...] = (style, self._told, self._without)
        for key in keys:
            kept.listen(key, self._look)
        super().__init__(self._closed)
        self.add_class("wl-whole")
        self._look()

    @property
    def missing(self) -> tuple[str, ...]:
        """The keys that nobody has answered yet."""
        return tuple(key for key in self.asked if key not in kept.commitments)

    def open_without(self) -> None:
        """Open it although predictions are missing."""
        self.is_open = True
        self._look()

    def _look(self) -> None:
        self.is_open = self.is_open or not self.missing
        given = [kept.commitments[key] for key in self.asked if key in kept.commitments]
        self.panel.foretold(
            [
                Foretold(said.text)
                if isinstance(said.value, str)
                else Foretold(said.text, said.question.kind, said.value)
                for said in given
            ]
        )
        questions = [kept.questions[key].words for key in self.missing if key in kept.questions]
        unasked = "" if questions or self.is_open else "Run the cells above first: they ask."
        self._told.value = (
            "" if self.is_open else paragraphs(SAY_FIRST, unasked, *(f"Still open: {words}" for words in questions))
        )
        self.children = (self.panel,) if self.is_open else self._closed

    def _ipython_display_(self) -> None:
        self.panel.show_in(self, _covered)


def _covered(still: str) -> str:
    """A still that a reader opens."""
    return f"<details><summary>Say first what you expect, then open this.</summary>{still}</details>"


def curtain(panel: Panel, *keys: str) -> Curtain:
    """A panel behind a curtain until the predictions under ``keys`` are given; they are then drawn into its picture.

    Questions declared in :mod:`woodlib.lesson.solutions` are known here although their cells have not run.
    """
    for key in keys:
        if key not in kept.questions and key.partition("/")[0] in lessons():
            kept.ask(find_prediction(key).question)
    return Curtain(panel, keys)
