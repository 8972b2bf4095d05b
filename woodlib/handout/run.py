"""Run a copy of a notebook so that its studies freeze themselves; the file on disk is not touched."""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from typing import Any

from nbclient import NotebookClient
from nbclient.exceptions import CellExecutionError, CellTimeoutError, DeadKernelError
from nbformat import NotebookNode
from nbformat.v4 import new_code_cell

from ..errors import WoodlibError

SECONDS_PER_CELL = 300
_ONLY_ERRORS = "--log-level=ERROR"  # a kernel that is only spoken to from this computer warns that others could listen


def run_notebook(
    nb: NotebookNode,
    folder: str,
    environment: dict[str, str] | None = None,
    progress: Callable[[int, int], None] | None = None,
    positions: dict[str, dict[str, Any]] | None = None,
) -> NotebookNode:
    """A copy of the notebook after a run in ``folder``, with every study frozen in its output.

    ``environment`` is set in the kernel before the first cell; ``positions`` are the places where sliders were left, by
    study, as far as the studies still know them. Raises :class:`WoodlibError` with the sentence of the
    cell that failed.
    """
    copied = copy.deepcopy(nb)
    first = new_code_cell(
        f"import os\nos.environ.update({json.dumps(environment or {})})\n"
        "import woodlib.live\nwoodlib.live.freeze_when_shown = True\n"
        f"woodlib.live.left_at.update({positions or {}!r})\ndel os, woodlib"
    )
    copied.cells.insert(0, first)
    total = len(copied.cells)

    def executed(cell: NotebookNode, cell_index: int, **_: Any) -> None:
        if progress:
            progress(cell_index + 1, total)

    client = NotebookClient(
        copied,
        timeout=SECONDS_PER_CELL,
        resources={"metadata": {"path": folder}},
        record_timing=False,
        kernel_name="python3",
        on_cell_executed=executed,
        extra_arguments=[_ONLY_ERRORS],
    )
    try:
        client.execute()
    except CellExecutionError as error:
        raise WoodlibError(f"The notebook stopped at a cell that says: {error.evalue or error.ename}") from error
    except CellTimeoutError as error:
        raise WoodlibError(
            f"A cell of the notebook ran for more than {SECONDS_PER_CELL} s; the handout was not made."
        ) from error
    except DeadKernelError as error:
        raise WoodlibError(
            "The notebook's kernel died while it ran; the handout was not made. Try again with more memory free."
        ) from error
    del copied.cells[0]
    return copied
