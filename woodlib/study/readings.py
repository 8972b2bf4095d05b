"""The words of an answer as HTML: headline, labelled readings, fine print; one writer for panel, still and handout.

Every place that holds words carries ``data-s``, in the order in which :func:`said_places` lists what is said there.
"""

from __future__ import annotations

from collections.abc import Iterator
from html import escape
from typing import Any

from ..words.decided import chosen
from ..words.say import plain_text
from .answer import Answer, Reading

READINGS_CSS = (
    ".wl-read{margin:.3em 0;max-width:720px;line-height:1.45}.wl-read dl{display:grid;"
    "grid-template-columns:minmax(7em,max-content) 1fr;gap:.25em 1em;margin:.4em 0}.wl-read dt{font-weight:600}"
    # Notebook viewers float definition lists and give them a width of their own.
    ".wl-read dt,.wl-read dd{float:none;width:auto;margin:0}.wl-read p{margin:.2em 0;font-size:1.08em;font-weight:600}.wl-read dd span{display:block}"
    ".wl-read .t{border-left:.45em solid;padding-left:.6em}.wl .t-fine{border-color:var(--w-fine)}"
    ".wl .t-watch{border-color:var(--w-watch);border-left-style:double}"
    ".wl .t-stop{border-color:var(--w-stop);border-left-style:dashed}"
)


def said_places(answer: Answer) -> Iterator[Any]:
    """Everything an answer says, in the order of its ``data-s`` places: words, or a reading for its tone."""
    yield answer.headline
    for reading in answer.readings:
        yield reading
        yield reading.value
        yield reading.words
    yield from answer.fine_print


def tone_class(tone: str) -> str:
    """The CSS class of a judged reading, "" for one without judgement."""
    return f"t t-{tone}" if tone else ""


def readings_html(answer: Answer, units: str = "both", only: tuple[int, ...] | None = None) -> str:
    """The headline, the readings and the fine print of an answer; with ``only`` the readings of these numbers alone."""

    def words(said: Any, tag: str = "span") -> str:
        return f"<{tag} data-s>{escape(plain_text(said, units))}</{tag}>"

    def row(reading: Reading) -> str:
        tone = tone_class(chosen(reading.tone))
        return f'<dt>{escape(reading.label)}</dt><dd data-s class="{tone}">{words(reading.value)}{words(reading.words)}</dd>'

    rows = "".join(row(reading) for number, reading in enumerate(answer.readings) if only is None or number in only)
    fine = "" if only is not None else "".join(words(line, "li") for line in answer.fine_print)
    small = f"<details><summary>Where the numbers come from</summary><ul>{fine}</ul></details>" if fine else ""
    return f'<div class="wl wl-read">{words(answer.headline, "p")}<dl>{rows}</dl>{small}</div>'
