"""Turn a notebook into a handout: the nbconvert exporter behind the button, the export menu and the command line.

A notebook that was run holds a record of every study it shows: which study, and where its sliders stood. Studies that
live in an installed module are frozen from that record. Where a study was made in the notebook itself, or the notebook
was never run, a copy is run once from top to bottom in the notebook's folder, and its studies are frozen there.
"""

from __future__ import annotations

import base64
import copy
import mimetypes
import re
import sys
from collections.abc import Iterator, Mapping
from html import escape, unescape
from importlib import import_module
from pathlib import Path
from typing import Any
from urllib.parse import unquote

from nbconvert.exporters.html import HTMLExporter
from nbconvert.exporters.templateexporter import TemplateExporter
from nbconvert.filters.highlight import Highlight2HTML
from nbconvert.filters.widgetsdatatypefilter import WidgetsDataTypeFilter
from nbformat import NotebookNode
from nbformat.v4 import new_output
from traitlets import default
from traitlets.config import Config

from ..errors import WoodlibError
from ..files import MEGABYTE, check_size
from ..live import STUDY_MIME
from ..study.study import Study
from .page import curtained, page, question_html
from .run import run_notebook
from .sections import SECTION_MIME, Names, Section, section

QUESTION_MIME = "application/vnd.woodlib.question+json"
WIDGET_MIME = "application/vnd.jupyter.widget-view+json"
LEFT_OUT = {"remove-cell", "lesson-only"}
"""Tags of cells that stay out of a handout: what is for the author's tests, and what is for a learner alone."""

LARGEST_PICTURE = 20 * MEGABYTE
_HEADLESS = re.compile(r"<thead>\s*<tr>\s*(?:<th[^>]*></th>\s*)+</tr>\s*</thead>")  # of a table that has no head
NOT_DESCRIBED = "A picture without a description."
STILL_HERE = "This part moves only in the notebook; on this page it stands still."


class HandoutExporter(HTMLExporter):
    """One HTML file that works from disk without a network, with the studies of the notebook alive in it."""

    export_from_notebook = "Handout (one live page)"

    @default("template_name")
    def _template_name_default(self) -> str:
        return "woodlib-handout"

    @default("extra_template_basedirs")
    def _default_extra_template_basedirs(self) -> list[str]:
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
    ) -> tuple[Any, dict[str, Any]]:
        """The page for a notebook.

        ``resources["woodlib"]`` may hold ``sections`` frozen already, by study; ``rules`` of exercises, by key, for
        those to judge on the page; HTML to stand ``before`` and ``after`` the lesson; names of further ``scripts``, and the ``title``.
        """
        wanted = (resources or {}).get("woodlib", {})
        given, rules = dict(wanted.get("sections", {})), dict(wanted.get("rules", {}))
        folder = (resources or {}).get("metadata", {}).get("path") or "."
        nb = copy.deepcopy(nb)
        if _must_run(nb, given):
            kept = {record["study"]: record["values"] for record in _records(nb)}
            nb = run_notebook(nb, folder, kept)
        nb.metadata.pop("widgets", None)  # the state of panels that only lived in that run
        checks = _show_sections(nb, given, rules)
        html, resources = self._body(nb, self._init_resources(resources), **kw)
        settings = _settings(nb)
        title = (
            wanted.get("title")
            or settings.get("title")
            or _title(nb)
            or (resources.get("metadata") or {}).get("name")
            or "Handout"
        )
        language = nb.metadata.get("woodlib", {}).get("language", "en")
        resources["output_extension"] = ".html"
        html = _HEADLESS.sub("", _with_pictures(html, Path(folder).resolve()))
        body = [wanted.get("before", ""), html, wanted.get("after", "")]
        units, scripts = settings.get("units", "both"), wanted.get("scripts", ())
        return page(title, body, checks, language, units, scripts=scripts), resources

    def _body(self, nb: NotebookNode, resources: Any, **kw: Any) -> tuple[str, Any]:
        """The notebook as HTML, past the parser that :class:`HTMLExporter` sends it through: it would break the drawings."""
        language = nb.metadata.get("language_info", {})
        lexer = language.get("pygments_lexer", language.get("name"))
        self.register_filter(
            "highlight_code", self.filters.get("highlight_code", Highlight2HTML(pygments_lexer=lexer, parent=self))
        )
        widgets = WidgetsDataTypeFilter(notebook_metadata=self._nb_metadata, parent=self, resources=resources)
        self.register_filter("filter_data_type", widgets)
        return TemplateExporter.from_notebook_node(self, nb, resources, **kw)


def _with_pictures(html: str, folder: Path) -> str:
    """The pictures that lie beside the notebook, carried inside: a page that is sent has no folder beside it."""

    def inside(found: re.Match[str]) -> str:
        path = (folder / unquote(unescape(found[2]))).resolve()
        if folder not in path.parents or not path.exists():
            return found[0]
        check_size(path, "picture", LARGEST_PICTURE)
        kind = mimetypes.guess_type(path.name)[0] or "image/png"
        return f'{found[1]}data:{kind};base64,{base64.b64encode(path.read_bytes()).decode()}"'

    return re.sub(r'(<img\b[^>]*\bsrc=")([^":]+)"', inside, html)


def _must_run(nb: NotebookNode, given: dict[str, Any]) -> bool:
    """Whether the notebook has to be run to know its studies."""
    code = [cell for cell in nb.cells if cell.cell_type == "code" and cell.source.strip()]
    if code and not any(cell.outputs for cell in code):
        return True
    return any(_find_study(record) is None and record["study"] not in given for record in _records(nb))


def _records(nb: NotebookNode) -> Iterator[dict[str, Any]]:
    for cell in nb.cells:
        for output in cell.get("outputs", ()):
            if STUDY_MIME in output.get("data", {}):
                yield output["data"][STUDY_MIME]


def _find_study(record: Mapping[str, Any]) -> Study | None:
    """The study a record names, when it can be had without running the notebook."""
    module, _, name = record["function"].partition(":")
    if module == "__main__" or not re.fullmatch(r"[\w.]+", name):
        return None
    try:
        found = getattr(sys.modules.get(module) or import_module(module), name, None)
    except ImportError:
        return None
    return found if isinstance(found, Study) and found.key == record["study"] else None


def _show_sections(nb: NotebookNode, given: Mapping[str, Section], rules: Mapping[str, Any]) -> tuple[str, ...]:
    """Put its section where a study, and its page's form where a question is shown; how each study was checked."""
    checks: list[str] = []
    names = Names()
    asked: set[str] = set()
    for cell in nb.cells:
        if "outputs" in cell:
            cell.outputs = [
                shown for output in cell.outputs for shown in _shown(output, given, rules, names, checks, asked)
            ]
    return tuple(checks)


def _shown(
    output: NotebookNode,
    given: Mapping[str, Section],
    rules: Mapping[str, Any],
    names: Names,
    checks: list[str],
    asked: set[str],
) -> list[NotebookNode]:
    """What stands in a page for one output of a notebook; ``asked`` are the keys of the predictions before it."""
    data = output.get("data", {})
    if output.get("metadata", {}).get("woodlib", {}).get("still_of"):
        return []
    if SECTION_MIME in data:
        checks.append(data[SECTION_MIME]["report"])
        return [_html(curtained(data[SECTION_MIME]["html"], _asked_before(data[SECTION_MIME], asked)))]
    if STUDY_MIME in data:
        found = given.get(data[STUDY_MIME]["study"]) or _frozen(data[STUDY_MIME])
        checks.append(found.report)
        html = found.html(names.name(found.study.key))
        return [_html(curtained(html, _asked_before(data[STUDY_MIME], asked)))]
    if QUESTION_MIME in data:
        record = dict(data[QUESTION_MIME])
        if record["role"] == "prediction":
            asked.add(record["key"])
        return [_html(question_html(record | ({"rules": rules[record["key"]]} if record["key"] in rules else {})))]
    if WIDGET_MIME in data:
        note = _html(f'<p class="quiet">{escape(STILL_HERE)}</p>')
        rest = {kind: value for kind, value in data.items() if kind != WIDGET_MIME}
        still = new_output("display_data", data=rest, metadata=_with_words(output.metadata, rest))
        return [still, note] if any(kind != "text/plain" for kind in rest) else [note]
    if data:
        output.metadata = _with_words(output.metadata, data)
    return [output]


def _asked_before(record: Mapping[str, Any], asked: set[str]) -> list[str]:
    """The predictions after which a study opens, as far as the page asks for them: a client's page does not."""
    return [key for key in record.get("after", ()) if key in asked]


def _with_words(metadata: Mapping[str, Any], data: Mapping[str, Any]) -> dict[str, Any]:
    """The metadata of an output in which every picture says at least that nobody described it."""
    images = [kind for kind in data if kind.startswith("image/")]
    return {**metadata, **{kind: {"alt": NOT_DESCRIBED, **metadata.get(kind, {})} for kind in images}}


def _html(text: str) -> NotebookNode:
    return new_output("display_data", data={"text/html": text})


def _frozen(record: Mapping[str, Any]) -> Section:
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
