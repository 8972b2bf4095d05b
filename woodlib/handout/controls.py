"""The controls of a study on a page: sliders, lists and boxes, and what the page's table says of them."""

from __future__ import annotations

from html import escape
from typing import Any

from ..study.inputs import Choice, Input, Span


def input_table(entry: Input) -> dict[str, Any]:
    """What a page knows of an input: the places of its control, and at which of them it starts."""
    if isinstance(entry, Span):
        # A start between two steps is the maker's own size and gets a place of its own.
        places = [entry.at(position) for position in range(entry.positions)]
        nearest = entry.at(entry.place(entry.start))
        if abs(nearest - entry.start) >= 1e-9 * max(1, abs(entry.start)):
            places = sorted([*places, nearest := entry.start])
        return {
            "key": entry.key,
            "kind": entry.kind,
            "places": [round(place, 12) for place in places],
            "stride": 0,
            "start": places.index(nearest),
        }
    labels = list(entry.labels.values()) if isinstance(entry, Choice) else ["no", "yes"]
    start = list(entry.labels).index(entry.start) if isinstance(entry, Choice) else int(entry.start)
    return {
        "key": entry.key,
        "options": labels,
        "values": list(entry.labels) if isinstance(entry, Choice) else labels,
        "start": start,
    }


def input_tables(entries: tuple[Input, ...]) -> list[dict[str, Any]]:
    """The tables of all inputs, with how far a step of each moves in the list of cases, the last input changing fastest."""
    tables, stride = [input_table(entry) for entry in entries], 1
    for table in reversed(tables):
        if "options" in table:
            table["stride"], stride = stride, stride * len(table["options"])
    return tables


def start_text(entry: Input, units: str) -> str:
    """An input's start with its unit."""
    start: Any = entry.start
    return entry.text(start, units)


def control_html(entry: Input, name: str, units: str) -> str:
    """A labelled control at its start with its value beside it, for the section ``name``; the page's script shows it."""
    place, table = f"{name}-{entry.key}", input_table(entry)
    value, start = escape(start_text(entry, units)), table["start"]
    last = len(table.get("options") or table["places"]) - 1
    about = f'id="{place}" data-input="{entry.key}" data-start="{start}" data-last="{last}" autocomplete="off" hidden'
    slides = isinstance(entry, Span) or (isinstance(entry, Choice) and entry.ordered)
    if slides:
        control = f'<input type="range" {about} min="0" max="{last}" step="1" value="{start}" aria-valuetext="{value}">'
    elif isinstance(entry, Choice):
        options = "".join(
            f"<option{' selected' if number == start else ''}>{escape(text)}</option>"
            for number, text in enumerate(table["options"])
        )
        control = f"<select {about}>{options}</select>"
    else:
        control = f'<input type="checkbox" {about}{" checked" if start else ""}>'
    asis = "" if slides else " asis"
    shown = f'<span class="value{asis}" data-value="{entry.key}">{value}</span>'
    if isinstance(entry, Choice) and entry.ordered:
        control += f'<span class="ticks" aria-hidden="true">{"".join(map(_tick, table["options"]))}</span>'
    return f'<div class="control"><label for="{place}">{escape(entry.label)}</label>{shown}{control}</div>'


def _tick(text: str) -> str:
    """The mark of a place below its slider: the first letter of a name, a dot for what has none."""
    return f"<span>{escape(text[0]) if text[0].isupper() else '&#9679;'}</span>"
