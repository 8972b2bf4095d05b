"""Set up a hub in a folder and start it. The hub has a Python of its own there; the kit does not depend on it.

What goes in is locked: ``packages.txt`` by pip's hashes on top of the kit's own packages, ``proxy`` by npm's. All of it,
the students' folders too, is in the one folder: to be rid of the hub, take the folder away.
"""

from __future__ import annotations

import csv
import io
import json
import os
import secrets
import shutil
import subprocess
import sys
import sysconfig
from collections.abc import Sequence
from pathlib import Path

from ..environment import MAKE, SetUpError, python_of, say
from ..files import put
from ..units import shown

HERE = Path(__file__).parent
WORDS, MARK, TOLD_IN = "words.csv", "woodlib-hub.json", "WOODLIB_HUB"
PORT = 8000
OLDEST_NODE = 20
_LETTERS = "abcdefghkmnpqrstuvwxyz23456789"  # none that is taken for another


def start_hub(folder: Path, names: Sequence[str], address: str, port: int) -> int:
    """Set up what is missing, write the students' words where there are none, and run the hub until it is stopped.

    ``address`` 127.0.0.1 for this computer alone, 0.0.0.0 for the room. Returns the hub's exit code. Raises
    :class:`SetUpError` with one sentence.
    """
    check_system()
    hub = set_up(folder)
    words = students_words(hub, names)
    place = f"http://{'127.0.0.1' if address == '127.0.0.1' else 'ADDRESS-OF-THIS-COMPUTER'}:{port}"
    say(f"{len(words)} students, each with a word of their own, are listed in {hub / WORDS}; keep it to yourself.")
    say(f"The class opens {place} and signs in. To stop the hub, press Ctrl and C here.")
    return subprocess.call(command(hub), env=settings(hub, address, port), cwd=hub)


def check_system() -> None:
    """Refuse where a hub cannot run, before anything is written."""
    if os.name != "posix":
        raise SetUpError("A hub runs on Linux and macOS only; on Windows use 'class', which needs no server.")
    missing = [name for name in ("node", "npm") if shutil.which(name) is None]
    if missing:
        raise SetUpError(
            f"The hub's proxy needs Node.js {OLDEST_NODE} or newer with npm, and {' and '.join(missing)} cannot be found; "
            "install it, then run this again."
        )
    told = subprocess.run(["node", "--version"], capture_output=True, text=True).stdout.strip().removeprefix("v")
    if not told.split(".")[0].isdigit() or int(told.split(".")[0]) < OLDEST_NODE:
        raise SetUpError(
            f"The hub's proxy needs Node.js {OLDEST_NODE} or newer, and here is {told}; install a newer one."
        )


def set_up(folder: Path) -> Path:
    """The folder with everything in it: made, finished after an interruption, or left alone where it is whole."""
    hub = Path(folder).absolute()
    if hub.exists() and not (hub / MARK).is_file() and (not hub.is_dir() or any(hub.iterdir())):
        raise SetUpError(f"{shown(str(folder))} is there already and is no hub of woodlib; name a new folder.")
    wanted = {"python": sys.version.split()[0], "kit": sysconfig.get_path("purelib"), "packages": _print_of(HERE)}
    try:
        hub.mkdir(exist_ok=True)
        hub.chmod(0o700)
        if not (hub / MARK).is_file() or json.loads((hub / MARK).read_text() or "{}") != wanted:
            put(b"{}", hub / MARK, replace=True)
            say(f"Setting up the hub in {hub}; this fetches packages and takes some minutes.")
            _python(hub)
            _proxy(hub)
            put(json.dumps(wanted).encode(), hub / MARK, replace=True)
    except OSError as error:
        raise SetUpError(f"{shown(str(folder))} cannot be used ({error.strerror}); name another folder.") from None
    return hub


def _print_of(folder: Path) -> str:
    from hashlib import sha256

    return sha256(
        (folder / "packages.txt").read_bytes() + (folder / "proxy" / "package-lock.json").read_bytes()
    ).hexdigest()


def _python(hub: Path) -> None:
    """A Python with the hub in it that also sees the kit and its packages."""
    environment = hub / "python"
    shutil.rmtree(environment, ignore_errors=True)
    _run([*MAKE, str(environment)], "Python could not make an environment for the hub")
    inside = subprocess.run(
        [str(python_of(environment)), "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"],
        capture_output=True,
        text=True,
        check=True,
    )
    # A site folder, not a mere path: the kit may itself be installed there by a link.
    line = f"import site; site.addsitedir({sysconfig.get_path('purelib')!r})\n"
    (Path(inside.stdout.strip()) / "woodlib-kit.pth").write_text(line)
    listed = ["--no-deps", "--require-hashes", "-r", str(HERE / "packages.txt")]
    _run(
        [str(python_of(environment)), "-m", "pip", "install", "--quiet", *listed],
        "The packages of the hub could not be installed",
    )


def _proxy(hub: Path) -> None:
    for name in ("package.json", "package-lock.json"):
        shutil.copyfile(HERE / "proxy" / name, hub / name)
    _run(
        ["npm", "ci", "--omit=dev", "--ignore-scripts", "--no-audit", "--no-fund"],
        "The proxy of the hub could not be installed",
        hub,
    )


def _run(command: list[str], trouble: str, folder: Path | None = None) -> None:
    done = subprocess.run(command, capture_output=True, text=True, cwd=folder)
    if done.returncode:
        lines = [line for line in (done.stdout + done.stderr).splitlines() if line.strip()] or ["no reason was given"]
        told = [line for line in lines if "rror" in line] or lines
        raise SetUpError(f"{trouble}: {told[-1].strip()}")


def students_words(hub: Path, names: Sequence[str]) -> dict[str, str]:
    """Sign-in name -> word; written once, so that a class keeps its words until the file is taken away."""
    place = hub / WORDS
    if not place.exists():
        table = io.StringIO()
        rows = csv.writer(table)
        rows.writerow(["signs in as", "word", "name"])
        for number, name in enumerate(names, 1):
            word = "".join(secrets.choice(_LETTERS) for _ in range(8))
            rows.writerow(
                [f"student-{number:02}", word, name.lstrip("=+-@")]
            )  # a table program would reckon with these
        put(table.getvalue().encode(), place)
        place.chmod(0o600)
    return read_words(place)


def read_words(place: Path) -> dict[str, str]:
    """Sign-in name -> word from the file of words."""
    with place.open(encoding="utf-8", newline="") as file:
        return {row["signs in as"]: row["word"] for row in csv.DictReader(file)}


def command(hub: Path) -> list[str]:
    """How the hub is started."""
    return [str(python_of(hub / "python")), "-m", "jupyterhub", "-f", str(HERE / "config.py")]


def settings(hub: Path, address: str, port: int) -> dict[str, str]:
    """What the hub's configuration reads from its environment."""
    told = {"folder": str(hub), "address": address, "port": port, "kit": sys.prefix}
    return {**os.environ, TOLD_IN: json.dumps(told)}
