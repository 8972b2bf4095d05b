"""Find the data tables, in a working copy as well as in an installed wheel."""

from __future__ import annotations

from pathlib import Path

_INSTALLED = Path(__file__).with_name("_data")
_WORKING_COPY = Path(__file__).resolve().parent.parent / "data"


def data_path(name: str = "") -> Path:
    """Path of a file in the kit's data folder.

    A wheel carries the folder inside the package; a working copy has it beside the package.

    >>> data_path("datapackage.json").exists()
    True
    """
    folder = _INSTALLED if _INSTALLED.is_dir() else _WORKING_COPY
    return folder / name
