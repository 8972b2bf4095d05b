"""Open the notebooks in JupyterLab: in place in a working copy, or copied to a folder of the reader's own."""

from __future__ import annotations

import os
import shutil
from pathlib import Path
from urllib.parse import quote

from .environment import SetUpError, project_folder, say

_INSTALLED = Path(__file__).with_name("_notebooks")
SETTINGS = Path(__file__).with_name("opening_settings")
"""What JupyterLab is told beyond its options: nobody is asked about news, and nothing is fetched."""


def notebooks_folder() -> Path:
    """Where the notebooks of this kit lie: inside an installed package, or beside it in a working copy."""
    project = project_folder()
    return project / "notebooks" if project else _INSTALLED


def open_lab(folder: Path | None, options: list[str]) -> int:
    """Start JupyterLab at the start page and return its exit code when it is closed.

    ``folder`` is where copies go, or None to open the notebooks in place; ``options`` go to JupyterLab as they are.
    Raises :class:`SetUpError` when an installed kit is given no folder, or the folder cannot be used.
    """
    if folder is not None:
        copy_notebooks(notebooks_folder(), folder)
    elif project_folder() is None:
        raise SetUpError("Name a folder of your own for the notebooks, for example: woodlib open my-panels")
    first = first_notebook(folder or notebooks_folder())
    say(f"Opening {first} in JupyterLab. To stop it, press Ctrl and C here.")
    kept = os.environ.get("JUPYTER_CONFIG_PATH")
    os.environ["JUPYTER_CONFIG_PATH"] = os.pathsep.join(filter(None, [str(SETTINGS), kept]))
    from jupyterlab.labapp import main

    return main([*start_options(first), *root_option(options), *options]) or 0


def start_options(first: Path) -> list[str]:
    """Options that make JupyterLab begin with the start page, alone on its page.

    >>> start_options(Path("notebooks/00-start-here.ipynb"))
    ['--ServerApp.root_dir=notebooks', '--LabApp.default_url=/doc/tree/00-start-here.ipynb']
    """
    return [f"--ServerApp.root_dir={first.parent}", f"--LabApp.default_url=/doc/tree/{quote(first.name)}"]


def root_option(options: list[str]) -> list[str]:
    """JupyterLab refuses to run as root unless told; a container often has nobody else, so tell it and say so."""
    if getattr(os, "geteuid", lambda: 1)() != 0 or "--allow-root" in options:
        return []
    say(
        "You are root here, as in most containers: JupyterLab is started with --allow-root. It answers this computer "
        "only and asks for its token, but whatever runs in a notebook runs as root."
    )
    return ["--allow-root"]


def first_notebook(folder: Path) -> Path:
    """The notebook that comes first by its number."""
    found = sorted(folder.glob("*.ipynb"))
    if not found:
        raise SetUpError(f"There is no notebook in {folder.resolve()}; get the kit again, or name another folder.")
    return found[0].resolve()


def copy_notebooks(source: Path, folder: Path) -> None:
    """Copy the notebooks and what they show into a folder; a file that is there already is left as it is."""
    kept = []
    try:
        for path in sorted(source.rglob("*")):
            target = folder / path.relative_to(source)
            if not path.is_file() or ".ipynb_checkpoints" in path.parts:
                continue
            if target.exists():
                kept.append(target.name)
                continue
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(path, target)
    except OSError as error:
        raise SetUpError(
            f"The notebooks cannot be copied to {folder} ({error.strerror}); name a folder that you can write to."
        ) from None
    if kept:
        say(f"Left as they are in {folder}: {', '.join(kept)}.")
