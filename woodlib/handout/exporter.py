"""Turn a notebook into a handout: the nbconvert exporter behind the button, the export menu and the command line.

A notebook that was run holds a record of every study it shows: which study, and where its sliders stood. Studies that
live in an installed module are frozen from that record. Where a study was made in the notebook itself, or the notebook
was never run, a copy is run once from top to bottom in the notebook's folder, and its studies are frozen there.
"""

from __future__ import annotations

import copy
import re
import sys
from html import escape
from importlib import import_module
from pathlib import Path
from typing import Any

from nbconvert.exporters.html import HTMLExporter
from nbformat import NotebookNode
from nbformat.v4 import new_output
from traitlets import default
from traitlets.config import Config

from ..errors import WoodlibError
from ..live import STUDY_MIME
from ..study.study import Study
from .cards import QUESTION_MIME, card_html
from .page import page
from .run import run_notebook
from .sections import NAME, SECTION_MIME, section

WIDGET_MIME = "application/vnd.jupyter.widget-view+json"
LEFT_OUT = {"remove-cell", "lesson-only"}
"""Tags of cells that stay out of a handout: what is for the author's tests, and what is for a learner alone."""

STILL_HERE = "This part moves only in the notebook; on this page it stands still."


class HandoutExporter(HTMLExporter):
    """One HTML file that works from disk without a network, with the studies of the notebook alive in it."""

    export_from_notebook = "Handout (one live page)"

    @default("template_name")
    def _template_name_default(self) -> str:
        return "woodlib-handout"

    @property
    def extra_template_basedirs(self) -> list[str]:
        """nbconvert looks for templates here first."""
        return [str(Path(__file__).with_name("templates"))]

    @property
    def default_config(self) -> Config:
        """Cells tagged for authors or learners only stay out; headings carry no link signs."""
        config = Config(
            {
                "TagRemovePreprocessor": {
                    "enabled": True,
                    "remove_cell_tags": LEFT_OUT,
                    "remove_input_tags": {"remove-input"},
                    "remove_all_outputs_tags": {"remove-output"},
                },
                "HTMLExporter": {"exclude_anchor_links": True},
            }
        )
        base = super().default_config
        base.merge(config)
        return base

    def from_notebook_node(
        self, nb: NotebookNode, resources: dict[str, Any] | None = None, **kw: Any
    ) -> tuple[str, dict[str, Any]]:
        """The page for a notebook. ``resources["woodlib"]["sections"]`` may hold sections frozen already, by study."""
        given = dict((resources or {}).get("woodlib", {}).get("sections", {}))
        folder = (resources or {}).get("metadata", {}).get("path") or "."
        nb = copy.deepcopy(nb)
        if _must_run(nb, given):
            kept = {record["study"]: record["values"] for record in _records(nb)}
            nb = run_notebook(nb, folder, positions=kept)
        nb.metadata.pop("widgets", None)  # the state of panels that only lived in that run
        sections, checks = _take_sections(nb, given)
        html, resources = super().from_notebook_node(nb, resources, **kw)
        for slot, content in sections.items():
            html = html.replace(f'<div id="{slot}"></div>', content)
        settings = _settings(nb)
        title = settings.get("title") or _title(nb) or (resources.get("metadata") or {}).get("name") or "Handout"
        language = nb.metadata.get("woodlib", {}).get("language", "en")
        resources["output_extension"] = ".html"
        return page(title, html, checks, language, settings.get("units", "both")), resources


def _must_run(nb: NotebookNode, given: dict[str, Any]) -> bool:
    """Whether the notebook has to be run to know its studies."""
    code = [cell for cell in nb.cells if cell.cell_type == "code" and cell.source.strip()]
    if code and not any(cell.outputs for cell in code):
        return True
    return any(_find_study(record) is None and record["study"] not in given for record in _records(nb))


def _records(nb: NotebookNode):
    for cell in nb.cells:
        for output in cell.get("outputs", ()):
            if STUDY_MIME in output.get("data", {}):
                yield output["data"][STUDY_MIME]


def _find_study(record: dict[str, Any]) -> Study | None:
    """The study a record names, when it can be had without running the notebook."""
    module, _, name = record["function"].partition(":")
    if module == "__main__" or not re.fullmatch(r"[\w.]+", name):
        return None
    try:
        found = getattr(sys.modules.get(module) or import_module(module), name, None)
    except ImportError:
        return None
    return found if isinstance(found, Study) and found.key == record["study"] else None


def _take_sections(nb: NotebookNode, given: dict[str, Any]) -> tuple[dict[str, str], tuple[str, ...]]:
    """Replace what studies show by empty places; the sections that belong there, by place, and how each was checked."""
    taken = _Taken(given)
    for cell in nb.cells:
        if "outputs" in cell:
            cell.outputs = [out for output in cell.outputs for out in taken.one_output(output)]
    return taken.places, tuple(taken.checks)


class _Taken:
    """What was taken out of a notebook's outputs so far."""

    def __init__(self, given: dict[str, Any]) -> None:
        self.given, self.places = given, {}
        self.checks: list[str] = []
        self._names: dict[str, int] = {}

    def one_output(self, output: NotebookNode) -> list[NotebookNode]:
        """What stands in a page for one output of a notebook."""
        data = output.get("data", {})
        if output.get("metadata", {}).get("woodlib", {}).get("still_of"):
            return []
        if STUDY_MIME in data or SECTION_MIME in data:
            content = data.get(SECTION_MIME) or self.given.get(data[STUDY_MIME]["study"]) or _frozen(data[STUDY_MIME])
            return [_html(f'<div id="{self._place(content)}"></div>')]
        if QUESTION_MIME in data:
            return [_html(card_html(data[QUESTION_MIME]))]
        if WIDGET_MIME in data:
            note = _html(f'<p class="quiet">{escape(STILL_HERE)}</p>')
            rest = {kind: value for kind, value in data.items() if kind != WIDGET_MIME}
            shown = any(kind != "text/plain" for kind in rest)
            return [new_output("display_data", data=rest), note] if shown else [note]
        return [output]

    def _place(self, content: dict[str, str]) -> str:
        study = content["study"]
        self._names[study] = self._names.get(study, 0) + 1
        name = study + (f"-{self._names[study]}" if self._names[study] > 1 else "")
        self.places[f"place-of-{name}"] = content["html"].replace(NAME, name)
        self.checks.append(content["report"])
        return f"place-of-{name}"


def _html(text: str) -> NotebookNode:
    return new_output("display_data", data={"text/html": text})


def _frozen(record: dict[str, Any]) -> dict[str, str]:
    study = _find_study(record)
    if study is None:
        raise WoodlibError(
            f"The study {record['study']!r} was not found when the notebook was run; check its last cells."
        )
    return section(study.starting(**record["values"]))


def _settings(nb: NotebookNode) -> dict[str, str]:
    """What outputs say about the page as a whole: its title, and the units that its numbers start in."""
    said: dict[str, str] = {}
    for cell in nb.cells:
        for output in cell.get("outputs", ()):
            said |= {
                name: text
                for name, text in output.get("metadata", {}).get("woodlib", {}).items()
                if name in ("title", "units")
            }
    return said


def _title(nb: NotebookNode) -> str:
    for cell in nb.cells:
        found = re.search(r"^#\s+(.+)$", cell.source, re.MULTILINE) if cell.cell_type == "markdown" else None
        if found:
            return re.sub(r"[*_`]", "", found.group(1)).strip()
    return ""
