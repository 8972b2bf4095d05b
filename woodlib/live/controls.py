"""The controls of a panel, and how panel and controls lie on the screen."""

from __future__ import annotations

import ipywidgets as widgets

from ..study.inputs import Choice, Input, Span, Switch

KERNEL_GONE = "This no longer moves: its kernel has stopped. Run the notebook again: menu Run, then Run All Cells."
"""What stands above a panel or a card once its kernel has gone."""

GONE_CSS = (
    # JupyterLab marks every part of a dead widget with a broken link: one sentence above the whole stands for them all.
    ".jupyter-widgets-disconnected:is(.wl-whole,.wl-whole *)::before{content:none!important}"
    f".wl-whole.jupyter-widgets-disconnected::before{{content:'{KERNEL_GONE}'!important;display:block;font:inherit;font-weight:600;"
    "color:inherit;border-left:.45em double var(--jp-warn-color1,#775600);padding:.2em .8em;margin:.2em 0;white-space:normal}"
    ".wl-whole .wl-whole.jupyter-widgets-disconnected::before{content:none!important}"
)

UNITS = {"inch and mm": "both", "inch": "inch", "mm": "metric"}

# Side by side where there is room, one below the other where there is not. A label is never cut short: it stands above its
# control, with what the control says at the end of the line.
PANEL_CSS = (
    ".wl-panel{container-type:inline-size}.wl-panel .wl-body{flex-wrap:nowrap;gap:0 1.4em;overflow:visible}"
    ".wl-panel .wl-left{flex:0 0 19em;overflow:visible}.wl-panel .wl-right{flex:1 1 0;min-width:0;overflow:visible}"
    ".wl-panel .widget-inline-hbox{flex-wrap:wrap;height:auto;min-height:0;margin:2px 2px 5px}"
    ".wl-panel .widget-inline-hbox .widget-label{order:1;flex:1 1 0;min-width:0;width:auto;height:auto;line-height:1.25;"
    "white-space:normal;overflow:visible;text-align:left}"
    ".wl-panel .widget-inline-hbox .widget-readout{order:2;flex:none;max-width:none;height:auto;line-height:1.25;font-weight:600}"
    ".wl-panel .widget-inline-hbox :is(.slider-container,select,.widget-toggle-buttons){order:3;flex:1 0 100%}"
    ".wl-panel .widget-inline-hbox .slider-container{margin:.45em 6px .15em}"
    ".wl-panel .widget-toggle-button{white-space:normal;line-height:1.3;padding:.25em .6em}"
    ".wl-panel .widget-checkbox{height:auto}.wl-panel .widget-html-content{line-height:1.35}"
    ".wl-panel .wl-right svg.wl{display:block;max-height:24rem}"
    ".wl-panel .wl-read{max-width:none;font-size:.95em;line-height:1.32}"
    ".wl-panel .wl-read dl{display:block;columns:15em;column-gap:1.5em;max-width:none}"
    ".wl-panel .wl-read dt{break-after:avoid}.wl-panel .wl-read dd{break-inside:avoid;margin-bottom:.45em}"
    "@container (max-width:46em){.wl-panel .wl-body{flex-direction:column}"
    ".wl-panel .wl-body>:is(.wl-left,.wl-right){flex:none}.wl-panel .wl-left{max-width:30em}}"
)


def control(entry: Input) -> widgets.ValueWidget:
    """The control of one input, at its start; a span begins without places (see :func:`place_slider`)."""
    how = {
        "description": entry.label,
        "style": {"description_width": "initial"},
        "layout": widgets.Layout(width="100%", max_width="720px"),
    }
    if isinstance(entry, Switch):
        return widgets.Checkbox(value=entry.start, indent=False, **how)
    if isinstance(entry, Choice):
        options = [(label, value) for value, label in entry.labels.items()]
        kind = widgets.SelectionSlider if entry.ordered else widgets.Dropdown
        return kind(options=options, value=entry.start, **how)
    return widgets.SelectionSlider(
        options=_places(entry), index=entry.place(entry.start), continuous_update=True, **how
    )


def place_slider(slider: widgets.SelectionSlider, entry: Span, value: float) -> None:
    """Move a slider to a value; one between two steps gets a place of its own."""
    options = _places(entry, value)
    if [number for _, number in slider.options] != [number for _, number in options]:
        slider.options = options
    slider.index = min(range(len(options)), key=lambda k: abs(options[k][1] - value))


def _places(entry: Span, extra: float | None = None) -> list[tuple[str, float]]:
    # A start between two steps is the maker's own size: it gets a place of its own rather than being moved.
    values = [entry.at(position) for position in range(entry.positions)]
    for own in (entry.start, extra):
        if own is not None and all(abs(own - value) > 1e-9 * max(1.0, abs(own)) for value in values):
            values.append(own)
    return [(entry.text(value), value) for value in sorted(values)]


def unit_choice() -> widgets.ToggleButtons:
    """In which units numbers are written."""
    return widgets.ToggleButtons(
        options=list(UNITS), description="Numbers in", style={"description_width": "initial", "button_width": "auto"}
    )
