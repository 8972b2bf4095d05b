"""What stands in a notebook that nobody has run: a study or a question on paper, put away while the live one is there."""

from __future__ import annotations

import re
from collections.abc import Mapping
from html import escape
from typing import Any

import ipywidgets as widgets
from IPython.display import display

from ..picture.svg import picture_address
from ..study.answer import Answer, Reading
from ..study.study import Study
from ..words.say import plain_text

BRING_TO_LIFE = "This is a still. To move the sliders, run the notebook: menu Run, then Run All Cells."
WIDGET_MIME = "application/vnd.jupyter.widget-view+json"
# A notebook opened on another day has no kernel that knows its widgets: JupyterLab then leaves a bare word in their place.
_NO_WIDGET_CSS = ".lm-Panel.jp-OutputArea-output:not(:has(*)){display:none}"


def show_with_still(
    box: widgets.Widget, name: str, bundle: Mapping[str, Any], html: str, metadata: Mapping[str, Any]
) -> None:
    """Display a still, with whatever else is in its bundle, and the live box after it.

    Two outputs, since a notebook shows the live one alone of two in one, and nothing where its kernel has gone. The box
    carries :func:`hidden_while_live` of the same name.
    """
    still = f'<div class="{_still_class(name)}"><style>{_NO_WIDGET_CSS}</style>{html}</div>'
    display({**bundle, "text/html": still}, raw=True, metadata=dict(metadata))
    view = box._repr_mimebundle_()[WIDGET_MIME]
    display({WIDGET_MIME: view}, raw=True, metadata={"woodlib": {"still_of": name}})


def hidden_while_live(name: str) -> str:
    """CSS that puts a still away."""
    return f".{_still_class(name)}{{display:none}}"


def _still_class(name: str) -> str:
    return "wl-still-" + re.sub(r"[^A-Za-z0-9]+", "-", name)


def still_html(study: Study, answer: Answer, values: dict[str, Any]) -> str:
    """A study as a still: what a notebook shows before anybody runs it."""
    state = " · ".join(f"{escape(entry.label)}: {escape(entry.text(values[entry.key]))}" for entry in study.inputs)
    return (
        f"<div><p><strong>{escape(study.question)}</strong></p><p>{state}</p>"
        f'<img alt="{escape(answer.alt_text(), quote=True)}" src="{picture_address(answer.picture, answer.alt_text())}" '
        f'style="width:100%;max-width:{answer.picture.width:g}px">{_still_readings(answer)}<p><em>{BRING_TO_LIFE}</em></p></div>'
    )


def _still_readings(answer: Answer) -> str:
    # Plain elements that read well without a style sheet: viewers strip it from a notebook they do not trust.
    def row(reading: Reading) -> str:
        words = plain_text(reading.words)
        told = escape(plain_text(reading.value)) + (f"<br>{escape(words)}" if words else "")
        return f'<tr><th scope="row" style="text-align:left;white-space:nowrap">{escape(reading.label)}</th><td style="text-align:left">{told}</td></tr>'

    fine = "".join(f"<li>{escape(plain_text(line))}</li>" for line in answer.fine_print)
    small = f"<details><summary>Where the numbers come from</summary><ul>{fine}</ul></details>" if fine else ""
    rows = "".join(row(reading) for reading in answer.readings)
    return f"<p><strong>{escape(plain_text(answer.headline))}</strong></p><table>{rows}</table>{small}"
