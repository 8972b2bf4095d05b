"""Run a copy of a notebook so that its studies freeze themselves; the file on disk is not touched."""

from __future__ import annotations

import copy
from collections.abc import Mapping
from typing import Any

from nbclient import NotebookClient
from nbclient.exceptions import CellExecutionError, CellTimeoutError, DeadKernelError
from nbformat import NotebookNode
from nbformat.v4 import new_code_cell

from ..errors import WoodlibError

SECONDS_PER_CELL = 300
_ONLY_ERRORS = "--log-level=ERROR"  # a kernel that is only spoken to from this computer warns that others could listen
_NOT_MADE = "the handout was not made."


def run_notebook(
    nb: NotebookNode, folder: str, positions: Mapping[str, Mapping[str, Any]] | None = None
) -> NotebookNode:
    """A copy of the notebook after a run in ``folder``, with every study frozen in its output.

    ``positions`` are the places where sliders were left, by study, as far as the studies still know them. Raises
    :class:`WoodlibError` with the sentence of the cell that failed.
    """
    copied = copy.deepcopy(nb)
    first = new_code_cell(
        "from woodlib.handout.sections import show_sections\n"
        f"show_sections({dict(positions or {})!r})\ndel show_sections"
    )
    copied.cells.insert(0, first)
    client = NotebookClient(
        copied,
        timeout=SECONDS_PER_CELL,
        resources={"metadata": {"path": folder}},
        record_timing=False,
        kernel_name="python3",
        extra_arguments=[_ONLY_ERRORS],
    )
    try:
        client.execute()
    except CellExecutionError as error:
        raise WoodlibError(f"The notebook stopped at a cell that says: {_said(error)}") from error
    except CellTimeoutError as error:
        raise WoodlibError(f"A cell of the notebook ran for more than {SECONDS_PER_CELL} s; {_NOT_MADE}") from error
    except DeadKernelError as error:
        raise WoodlibError(
            f"The notebook's kernel died while it ran; {_NOT_MADE} Try again with more memory free."
        ) from error
    del copied.cells[0]
    return copied


def _said(error: CellExecutionError) -> str:
    """What a failed cell says, on one line; its kind of error where it has no words."""
    words = " ".join(str(error.evalue or "").split())
    return words if words not in ("", "None") else f"{error.ename}, without a word why."
