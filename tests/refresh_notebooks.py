"""Run notebooks from top to bottom and store their outputs in the form that is committed; redraw the README's picture.

    python3 -m woodlib refresh [NOTEBOOK ...]

Running it twice changes nothing, unless an answer changed: timings, model ids and widget state are not stored.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

import nbformat
from nbclient import NotebookClient
from nbclient.exceptions import CellExecutionError
from notebook_rules import faults, hidden_errors, normalise

from woodlib.picture.svg import svg
from woodlib.studies import find_study

PROJECT = Path(__file__).resolve().parent.parent
README_PICTURE = PROJECT / "notebooks" / "pictures" / "panel-movement.svg"


def refresh(path: Path) -> list[str]:
    """Run one notebook and write it back; returns what is wrong with it. A notebook that fails is left as it was."""
    notebook = nbformat.read(path, as_version=4)
    for cell in notebook.cells:
        cell.metadata.pop("execution", None)
    client = NotebookClient(
        notebook,
        timeout=120,
        kernel_name="python3",
        record_timing=False,
        resources={"metadata": {"path": str(path.parent)}},
    )
    try:
        client.execute()
    except CellExecutionError as error:
        return [f"it fails: {error.ename}: {error.evalue}"]
    hidden = hidden_errors(notebook)
    if hidden:
        return [f"a panel fails: {each}" for each in hidden]
    normalise(notebook)
    nbformat.validate(notebook)
    nbformat.write(notebook, path)
    return faults(notebook)


def redraw_readme_picture() -> None:
    """Draw what the kit shows first: the panel of the reading-nook seat over a year, as its study begins."""
    answer = find_study("panel-movement").answer()
    README_PICTURE.parent.mkdir(exist_ok=True)
    README_PICTURE.write_text(svg(answer.picture, answer.alt_text()), encoding="utf-8")


def main(names: list[str]) -> int:
    """Refresh the named notebooks, or all; returns 1 when something is wrong with one of them."""
    os.environ["PYTHONPATH"] = os.pathsep.join(filter(None, [str(PROJECT), os.environ.get("PYTHONPATH")]))
    paths = [Path(name) for name in names] or sorted((PROJECT / "notebooks").glob("*.ipynb"))
    absent = [str(path) for path in paths if not path.is_file()]
    if absent:
        print(f"There is no notebook {', '.join(absent)}; give the path of one, or none at all to refresh them all.")
        return 2
    if not names:
        redraw_readme_picture()
    wrong = 0
    for path in paths:
        found = refresh(path)
        wrong += bool(found)
        print(f"{path.name}: {'in order' if not found else ''}", *found, sep="\n  " if found else "")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
