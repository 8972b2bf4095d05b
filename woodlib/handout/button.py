"""The button in a notebook that writes its handout, with every slider where the maker left it."""

from __future__ import annotations

import os
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from .. import live
from ..errors import InputError
from .sections import Section, section
from .write import handout_from_notebook


def this_notebook() -> Path:
    """The file of the notebook that runs here; raises :class:`InputError` when it cannot be told."""
    name = os.environ.get("JPY_SESSION_NAME", "")
    path = Path(name)
    if not name.endswith(".ipynb"):
        raise InputError(
            "The name of this notebook is not known here; write handout_button('name.html', notebook='name.ipynb')."
        )
    # Jupyter may give the name from its own top folder or in full; the kernel runs in the notebook's folder.
    return path if path.is_file() else Path(path.name)


def handout_button(output: str, notebook: str | None = None) -> None:
    """Show a button that writes the handout of this notebook to ``output``, a name ending in .html.

    Studies are frozen where their sliders stand now; the notebook's text and outputs are taken from its saved file.
    In a handout the button itself is left out.
    """
    if live.instead is not None:
        return
    bar = widgets.IntProgress(
        value=0, max=1, layout=widgets.Layout(width="100%", max_width="720px", visibility="hidden")
    )

    def write() -> str:
        bar.layout.visibility = "visible"
        sections: dict[str, Section] = {}
        bar.max, bar.value = 100 * max(1, len(live.shown_panels)), 0
        for number, (key, panel) in enumerate(live.shown_panels.items()):

            def show(done: int, total: int, before: int = 100 * number) -> None:
                bar.value = before + 100 * done // total

            sections[key] = section(panel.study.starting(**panel.values), show)
            bar.value = 100 * (number + 1)
        target = handout_from_notebook(notebook or this_notebook(), output, sections)
        bar.layout.visibility = "hidden"
        return f"Wrote {target.name}, {target.stat().st_size // 1000} kB: one file, to be sent or printed as it is."

    shown = live.button("Write the handout", write)
    text = f"A button here writes the handout {output}; run the notebook to use it."
    bundle = dict(widgets.VBox([shown, bar])._repr_mimebundle_())
    bundle |= {"text/plain": text, "text/html": f"<p><em>{text}</em></p>"}
    display(bundle, raw=True, metadata={"woodlib": {"still_of": "handout button"}})
