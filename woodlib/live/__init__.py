"""A study at work in a notebook: labelled controls, a picture that changes in place, readings in words.

The picture is SVG text put into one HTML widget: nothing is redrawn by a plotting library, so a move costs about as
much as the physics does, nothing flickers, and lines stay sharp on any screen.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Sequence
from html import escape
from itertools import count
from math import ceil
from typing import Any

import ipywidgets as widgets
from IPython.display import DisplayHandle, display

from ..errors import WoodlibError
from ..picture.palette import style_sheet
from ..picture.said import Foretold, with_said
from ..picture.svg import svg
from ..study.answer import Answer
from ..study.inputs import Span
from ..study.readings import READINGS_CSS, readings_html
from ..study.study import Study
from ..words.say import plain_text
from .controls import GONE_CSS, PANEL_CSS, UNITS, control, place_slider, unit_choice
from .still import BRING_TO_LIFE, hidden_while_live, show_with_still, still_html

__all__ = ["BRING_TO_LIFE", "STUDY_MIME", "Panel", "button", "show", "shown_panels"]

STUDY_MIME = "application/vnd.woodlib.study+json"
_SETTLE_SECONDS = 0.4
_ERROR_CSS = ".wl-error{border:2px solid var(--w-stop);padding:.5em .8em;max-width:700px}"

LINES_SHOWN, LETTERS_A_LINE = 24, 36
"""How much of the readings a panel shows at once: what stands below the picture on a small laptop, in three columns."""

_panel_numbers = count(1)
shown_panels: dict[str, Panel] = {}
instead: Callable[[Panel], dict[str, Any]] | None = None
"""What to show instead of a panel, as a bundle; set by whoever runs a notebook to make something else of it."""


def _fold(label: str) -> widgets.ToggleButton:
    return widgets.ToggleButton(description=label, layout={"width": "auto", "height": "auto", "flex": "0 0 auto"})


def _readings_at_first(answer: Answer) -> tuple[int, ...]:
    """Which readings stand below the picture at first: the first, and of the others those for which there is room."""
    shown: list[int] = []
    room = LINES_SHOWN
    for number, reading in enumerate(answer.readings):
        lines = 1 + sum(ceil(len(plain_text(text)) / LETTERS_A_LINE) for text in (reading.value, reading.words))
        if lines <= room or not shown:
            shown.append(number)
            room -= lines
    return tuple(shown)


class Panel(widgets.VBox):
    """Sliders, picture and readings of one study; also driven from code with :meth:`set`."""

    def __init__(self, study: Study) -> None:
        self.study = study
        self.answer_now: Answer | None = None
        self.error = ""
        self._name = f"panel-{next(_panel_numbers)}"
        self._record: DisplayHandle | None = None
        self._timer: asyncio.TimerHandle | None = None
        self._hold = False
        self.after: tuple[str, ...] = ()
        """Keys of the predictions after which this panel opens."""
        self._said: tuple[Foretold, ...] = ()
        self.controls: dict[str, widgets.ValueWidget] = {entry.key: control(entry) for entry in study.inputs}
        for entry in study.inputs:
            if isinstance(entry, Span):
                place_slider(self.controls[entry.key], entry, entry.read(entry.start))
        self._units = unit_choice()
        folded = [entry.label for entry in study.inputs if entry not in study.shown_first]
        self._all_controls = _fold(f"More: {', '.join(folded)}")
        self._all_readings = _fold("More readings, and their sources")
        self.picture = self.readings = ""  # the SVG now shown, and the readings as HTML
        self._shown = widgets.HTML()  # one widget, so that a move is one message to the page
        for each in (*self.controls.values(), self._units, self._all_readings):
            each.observe(self._moved, names="value")
        self._first: tuple[int, ...] | None = None
        self._redraw()
        super().__init__([self._head(), self._body()])
        self.add_class("wl-panel").add_class("wl-whole")
        shown_panels[study.key] = self

    def _head(self) -> widgets.Widget:
        style = f"<style>{style_sheet()}{READINGS_CSS}{_ERROR_CSS}{PANEL_CSS}{GONE_CSS}{hidden_while_live(self.study.key)}</style>"
        return widgets.HTML(style, layout={"height": "0", "margin": "0"})

    def _body(self) -> widgets.Widget:
        """Controls on the left, the more unusual ones folded; picture and answer on the right."""
        first = [entry.key for entry in self.study.shown_first]
        rest = [self.controls[key] for key in self.controls if key not in first]
        folded = widgets.VBox(rest, layout={"display": "none", "overflow": "visible"})
        self._all_controls.observe(
            lambda change: setattr(folded.layout, "display", "" if change.new else "none"), "value"
        )
        question = widgets.HTML(f"<strong>{escape(self.study.question)}</strong>")
        more = [self._all_controls, folded] if rest else []
        left = widgets.VBox([question, *(self.controls[key] for key in first), *more, self._units])
        right = widgets.VBox([self._shown, self._all_readings])
        body = widgets.HBox([left, right])
        for box, name in ((left, "wl-left"), (right, "wl-right"), (body, "wl-body")):
            box.add_class(name)
        return body

    @property
    def values(self) -> dict[str, Any]:
        """The inputs as they stand, in SI."""
        return {key: control.value for key, control in self.controls.items()}

    def set(self, **values: Any) -> Answer | None:
        """Move controls from code, with SI numbers or text with units; returns the new answer."""
        state = self.study.read({**self.values, **values})
        self._hold = True
        try:
            for entry in self.study.inputs:
                if isinstance(entry, Span):
                    place_slider(self.controls[entry.key], entry, state[entry.key])
                else:
                    self.controls[entry.key].value = state[entry.key]
        finally:
            self._hold = False
        self._redraw()
        return self.answer_now

    def _moved(self, _change) -> None:
        if not self._hold:
            self._redraw()
            self._keep_soon()

    def _redraw(self) -> None:
        units = UNITS[self._units.value]
        try:
            answer = self.study.answer(**self.values)
            if self._first is None:
                self._first = _readings_at_first(answer)  # counted once, so that nothing jumps in a move
            alt = " ".join([answer.alt_text(units), *(f"You said: {each.words}." for each in self._said)])
            drawing = svg(with_said(answer.picture, self._said), alt, units, self._name, styled=False)
            readings = readings_html(answer, units, None if self._all_readings.value else self._first)
        except WoodlibError as error:
            # The last good picture stays, so that a maker sees what the sentence is about.
            self.error = str(error)
            self.readings = f'<div class="wl wl-error" role="alert">{escape(self.error)}</div>'
        else:
            self.error, self.answer_now = "", answer
            self.picture, self.readings = drawing, readings
        self._shown.value = self.picture + self.readings

    def foretold(self, said: Sequence[Foretold]) -> None:
        """Draw what somebody said beforehand into the picture, from now on."""
        self._said = tuple(said)
        self._redraw()

    def record(self) -> dict[str, Any]:
        """What a handout needs to start where this panel stands."""
        function = self.study.function
        return {
            "study": self.study.key,
            "function": f"{function.__module__}:{function.__qualname__}",
            "values": self.values,
            **({"after": list(self.after)} if self.after else {}),
        }

    def _record_bundle(self) -> dict[str, Any]:
        state = " · ".join(f"{entry.label}: {entry.text(self.values[entry.key])}" for entry in self.study.inputs)
        text = f"Kept for the handout: {state}"
        return {STUDY_MIME: self.record(), "text/plain": text, "text/html": f"<small>{escape(text)}</small>"}

    def _keep_soon(self) -> None:
        # Written into the notebook once the slider rests, so that a saved notebook exports where the maker left it.
        if self._record is None:
            return
        if self._timer is not None:
            self._timer.cancel()
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            return
        self._timer = loop.call_later(_SETTLE_SECONDS, self._keep)

    def _keep(self) -> None:
        if self._record is not None:
            self._record.update(self._record_bundle(), raw=True)

    def _ipython_display_(self) -> None:
        self.show_in(self)

    def show_in(self, box: widgets.VBox, cover: Callable[[str], str] = str) -> None:
        """Display a box that holds this panel, and its still under a ``cover``; then the record for a handout."""
        if instead is not None:
            display(instead(self), raw=True)
            return
        answer = self.answer_now or self.study.answer(**self.values)
        text = "\n".join([self.study.question, *answer.lines()])
        still = cover(still_html(self.study, answer, self.values))
        metadata = {"woodlib": {"still_of": self.study.key}}
        show_with_still(box, self.study.key, {"text/plain": text}, still, metadata)
        self._record = display(self._record_bundle(), raw=True, display_id=True)


def show(study: Study, **values: Any) -> Panel:
    """Labelled sliders, a picture and readings in a notebook; ``values`` move the start."""
    return Panel(study.starting(**values))


def button(label: str, action: Callable[[], str]) -> widgets.Widget:
    """A button with a line below it that says what happened; a known error becomes its sentence."""
    pressed = widgets.Button(description=label, layout=widgets.Layout(width="auto"), button_style="primary")
    said = widgets.HTML()

    def act(_button) -> None:
        try:
            said.value = f'<div role="status">{escape(action())}</div>'
        except (WoodlibError, OSError) as error:
            said.value = f'<div role="alert">{escape(str(error))}</div>'

    pressed.on_click(act)
    return widgets.VBox([pressed, said])
