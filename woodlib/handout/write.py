"""Write a handout to disk, from a brief or from a notebook; never over anything that is not a handout."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from ..brief import Brief
from ..commission import checked_commission
from ..errors import InputError
from ..files import check_place
from ..files import put as put_file
from .client_page import client_page
from .page import GENERATOR

if TYPE_CHECKING:
    from .sections import Section


def write_handout(
    brief: str | Path,
    output: str | Path,
    progress: Callable[[int, int], None] | None = None,
    accepted: Callable[[Brief], None] | None = None,
) -> Path:
    """The client's page for a brief, as one live file.

    ``accepted`` is called with the brief once everything has been checked and the long part begins.
    Raises :class:`InputError` for a brief that cannot be used or a file that must not be replaced.
    """
    target = checked_target(output)
    commission = checked_commission(brief)
    if accepted:
        accepted(commission.brief)
    return put(client_page(commission, progress), target)


def handout_from_notebook(
    notebook: str | Path, output: str | Path, sections: Mapping[str, Section] | None = None
) -> Path:
    """The handout of a notebook file; ``sections`` are studies frozen already, by key."""
    import nbformat

    from .exporter import HandoutExporter

    target, source = checked_target(output), Path(notebook)
    if not source.is_file():
        raise InputError(f"There is no notebook {source}; save the notebook first, or give its name.")
    try:
        read = nbformat.read(source, as_version=4)
    except (OSError, ValueError, nbformat.ValidationError) as error:
        reason = str(error).splitlines()[0] if str(error) else type(error).__name__
        raise InputError(f"{source} cannot be read as a notebook ({reason}); save it in JupyterLab again.") from None
    resources = {"metadata": {"name": source.stem, "path": str(source.parent)}, "woodlib": {"sections": sections or {}}}
    html, _ = HandoutExporter().from_notebook_node(read, resources)
    return put(html, target)


def checked_target(output: str | Path) -> Path:
    """Where a handout may be written: a new file, or an older handout; raises :class:`InputError` otherwise."""
    target = Path(output)
    if target.suffix.lower() not in (".html", ".htm"):
        raise InputError(f"The handout is to be written to {target}; give a name that ends in .html.")
    if not target.parent.is_dir():
        raise InputError(f"There is no folder {target.parent} for the handout; make it first, or choose another.")
    check_place(target)
    if target.is_dir() or (target.exists() and f'content="{GENERATOR}"' not in _beginning(target)):
        raise InputError(
            f"{target} is there already and is not a handout of woodlib; choose another name, nothing is replaced."
        )
    return target


def _beginning(target: Path) -> str:
    with target.open("rb") as file:
        return file.read(4000).decode("utf-8", "replace")


def put(html: str, target: Path) -> Path:
    """Write the page in one move, so that a broken run leaves the older handout as it was."""
    return put_file(html.encode(), target, replace=True)
