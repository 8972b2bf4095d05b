"""Write a handout to disk, from a brief or from a notebook; never over anything that is not a handout."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import nbformat

from ..brief import Brief
from ..commission import BRIEF_VARIABLE, checked_brief
from ..errors import InputError
from ..opening import notebooks_folder
from .page import GENERATOR

COMMISSION = "*-the-commission.ipynb"


def write_handout(
    brief: str | Path,
    output: str | Path,
    progress: Callable[[int, int], None] | None = None,
    accepted: Callable[[Brief], None] | None = None,
) -> Path:
    """The handout for a brief: the commission notebook, run with that brief, as one live page.

    ``accepted`` is called with the brief once everything has been checked and the long part begins.
    Raises :class:`InputError` for a brief that cannot be used or a file that must not be replaced.
    """
    from .exporter import LEFT_OUT, HandoutExporter
    from .run import run_notebook

    target = checked_target(output)
    read = checked_brief(brief)
    source = next(iter(sorted(notebooks_folder().glob(COMMISSION))), None)
    if source is None:
        raise InputError(f"The kit's notebook {COMMISSION} is missing from {notebooks_folder()}; get the kit again.")
    if accepted:
        accepted(read)
    notebook = nbformat.read(source, as_version=4)
    # What the client does not see is not run either: a lesson's questions are about the demonstration.
    notebook.cells = [cell for cell in notebook.cells if not LEFT_OUT & set(cell.metadata.get("tags", ()))]
    ran = run_notebook(notebook, str(source.parent), {BRIEF_VARIABLE: str(Path(brief).resolve())}, progress)
    html, _ = HandoutExporter().from_notebook_node(ran, {"metadata": {"name": source.stem, "path": str(source.parent)}})
    return put(html, target)


def handout_from_notebook(notebook: str | Path, output: str | Path, sections: dict[str, Any] | None = None) -> Path:
    """The handout of a notebook file; ``sections`` are studies frozen already, by key."""
    from .exporter import HandoutExporter

    target, source = checked_target(output), Path(notebook)
    if not source.is_file():
        raise InputError(f"There is no notebook {source}; save the notebook first, or give its name.")
    resources = {"metadata": {"name": source.stem, "path": str(source.parent)}, "woodlib": {"sections": sections or {}}}
    html, _ = HandoutExporter().from_notebook_node(nbformat.read(source, as_version=4), resources)
    return put(html, target)


def checked_target(output: str | Path) -> Path:
    """Where a handout may be written: a new file, or an older handout; raises :class:`InputError` otherwise."""
    target = Path(output)
    if target.suffix.lower() not in (".html", ".htm"):
        raise InputError(f"The handout is to be written to {target}; give a name that ends in .html.")
    if not target.parent.is_dir():
        raise InputError(f"There is no folder {target.parent} for the handout; make it first, or choose another.")
    if target.is_dir() or (
        target.exists() and f'content="{GENERATOR}"' not in target.read_text("utf-8", "replace")[:4000]
    ):
        raise InputError(
            f"{target} is there already and is not a handout of woodlib; choose another name, nothing is replaced."
        )
    return target


def put(html: str, target: Path) -> Path:
    """Write the page in one move, so that a broken run leaves the older handout as it was."""
    draft = target.with_name(target.name + ".draft")
    draft.write_text(html, encoding="utf-8")
    os.replace(draft, target)
    return target
