"""Make the kit's own Python environment, ``.venv`` beside the project, and run there; standard library only.

The lock file says which packages go in. A small record inside ``.venv`` says whether the set-up finished and from
which lock file, so that a second run starts at once, a changed lock file is followed, and a set-up that was
interrupted is begun again.
"""

from __future__ import annotations

import hashlib
import importlib.metadata
import importlib.util
import json
import os
import re
import shutil
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from .errors import WoodlibError
from .package_installer import install

LOCK_FILES = {"": "woodlib/lock/kit.txt", "test": "woodlib/lock/test.txt"}
"""By extra: every package that goes in, with its version and its hashes."""
# Measured on Linux with Python 3.11: 570 MB for the kit, 830 MB with its tests; the rest is room for downloads.
ROOM_NEEDED_MB = {"": 1000, "test": 1300}
MAKE = [sys.executable, "-m", "venv"]


class SetUpError(WoodlibError, RuntimeError):
    """The environment cannot be made; the text says in one sentence what is missing."""


def say(sentence: str) -> None:
    """Tell the person at the keyboard what is going on."""
    print(sentence, flush=True)


def project_folder() -> Path | None:
    """The working copy that this package is part of, or None when it was installed from a wheel."""
    folder = Path(__file__).resolve().parent.parent
    return folder if (folder / "pyproject.toml").is_file() and (folder / LOCK_FILES[""]).is_file() else None


def enter(extra: str, arguments: list[str]) -> None:
    """Return when this Python has all that is needed; otherwise set up ``.venv`` and run the command there.

    ``extra`` is "" for what the kit needs or "test" for what its tests need on top; ``arguments`` are those of the
    command line, given again to the Python of the environment. Raises :class:`SetUpError`.
    """
    project = project_folder()
    if project is None:
        return require_installed(extra)
    if installed_from(project) and not missing_here(project_requirements(project, extra)):
        return None
    environment = project / ".venv"
    prepare(project, extra)
    if Path(sys.prefix).resolve() != environment.resolve():
        run_in(environment, arguments)


def run_in(environment: Path, arguments: list[str]) -> None:
    """Go on in the Python of the environment; does not return."""
    command = [str(python_of(environment)), "-m", "woodlib", *arguments]
    sys.stdout.flush()
    if os.name == "posix":
        os.execv(command[0], command)
    process = subprocess.Popen(command)
    while True:
        try:
            sys.exit(process.wait())
        except KeyboardInterrupt:
            continue  # the command got the same signal and is closing down


# --- what is installed ---------------------------------------------------------------------------------------------


def distribution_name(requirement: str) -> str:
    """Name of a package as installers compare it.

    >>> distribution_name("Axe_Playwright.Python>=0.1.4; extra == 'test'")
    'axe-playwright-python'
    """
    name = re.split(r"[^\w.-]", requirement, maxsplit=1)[0]
    return re.sub(r"[-_.]+", "-", name).lower()


def project_requirements(project: Path, extra: str) -> set[str]:
    """Names of the packages that ``pyproject.toml`` asks for, with those of the extra."""
    table = tomllib.loads((project / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = table["dependencies"] + (table["optional-dependencies"][extra] if extra else [])
    return {distribution_name(requirement) for requirement in wanted}


def missing_here(names: set[str]) -> set[str]:
    """Those of the packages that the running Python does not have."""
    return {name for name in names if not any(importlib.metadata.distributions(name=name))}


def installed_from(project: Path) -> bool:
    """Whether the running Python has woodlib installed as a link to this very working copy."""
    for distribution in importlib.metadata.distributions(name="woodlib"):
        origin = json.loads(distribution.read_text("direct_url.json") or "{}")
        if origin.get("url") == project.as_uri() and origin.get("dir_info", {}).get("editable"):
            return True
    return False


def require_installed(extra: str) -> None:
    """Refuse in one sentence when an installed kit lacks packages; raises :class:`SetUpError`."""
    if extra:
        raise SetUpError("The tests are not part of the installed package; run this in a working copy of the project.")
    needed = [line for line in importlib.metadata.requires("woodlib") or [] if "extra ==" not in line]
    missing = missing_here({distribution_name(line) for line in needed})
    if missing:
        names = ", ".join(sorted(missing))
        raise SetUpError(
            f"Packages are missing from this Python ({names}); run '{sys.executable} -m pip install "
            "woodlib' with the wheel's path to bring them in."
        )


# --- the environment beside the project ----------------------------------------------------------------------------


def python_of(environment: Path) -> Path:
    """The Python of an environment, spelled as this system spells it."""
    return environment / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def prepare(project: Path, extra: str) -> None:
    """Make sure that ``.venv`` holds what is needed: make it, mend it, or leave it alone; raises SetUpError."""
    environment = project / ".venv"
    if is_ready(project, environment, extra):
        return
    try:
        with one_at_a_time(project):
            if not is_ready(project, environment, extra):
                check_room(project, extra)
                make_if_needed(project, environment)
                fill(project, environment, extra)
    except OSError as error:
        raise SetUpError(f"woodlib could not be set up in {project}: {error.strerror} ({error.filename}).") from None


def is_ready(project: Path, environment: Path, extra: str) -> bool:
    """Whether the set-up finished, from the present lock file, and is still whole."""
    record = read_record(environment)
    return (
        record.get("finished") is True
        and record.get("fingerprint") == fingerprint(project)
        and extra in ["", *record.get("extras", [])]
        and not missing_from(environment, project_requirements(project, extra))
        and runs(environment)
    )


def fingerprint(project: Path) -> str:
    """A short sum of what decides which packages go in."""
    total = hashlib.sha256()
    for name in (*LOCK_FILES.values(), "pyproject.toml"):
        total.update((project / name).read_bytes())
    return total.hexdigest()[:16]


def read_record(environment: Path) -> dict:
    """What an earlier set-up wrote down; empty when there was none or it cannot be read."""
    try:
        return json.loads((environment / "woodlib.json").read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}


def write_record(environment: Path, **record) -> None:
    """Write down how far the set-up has come."""
    (environment / "woodlib.json").write_text(json.dumps(record, indent=1), encoding="utf-8")


def missing_from(environment: Path, names: set[str]) -> set[str]:
    """Those of the packages that an environment does not have, seen from outside by its folders."""
    pattern = "Lib/site-packages/*.dist-info" if os.name == "nt" else "lib/python3*/site-packages/*.dist-info"
    present = {distribution_name(folder.name.split("-")[0]) for folder in environment.glob(pattern)}
    return names - present


def runs(environment: Path) -> bool:
    """Whether the Python of the environment starts and is new enough."""
    question = [str(python_of(environment)), "-I", "-S", "-c", "import sys; sys.exit(sys.version_info < (3, 11))"]
    try:
        return subprocess.run(question, capture_output=True).returncode == 0
    except OSError:
        return False


def make_if_needed(project: Path, environment: Path) -> None:
    """Make ``.venv`` when there is none, and anew when what is there cannot be used; raises SetUpError."""
    record = read_record(environment)
    inside = Path(sys.prefix).resolve() == environment.resolve()
    if environment.exists() and not inside:
        trouble = trouble_with(project, environment, record)
        if trouble:
            say(f"{trouble}; making it anew.")
            remove(environment, record)
    if not environment.exists():
        make(project, environment)


def trouble_with(project: Path, environment: Path, record: dict) -> str:
    """Why an existing ``.venv`` cannot be kept, or an empty string."""
    if record.get("ours") and not record.get("finished"):
        return "An earlier set-up did not finish"
    if not runs(environment):
        return "The Python in .venv does not start, or is too old"
    if record.get("ours") and record.get("project") != str(project):
        return "The environment in .venv was made for another folder"
    if record.get("ours") and missing_from(environment, project_requirements(project, "")):
        return "Packages have gone from .venv"
    return ""


def remove(environment: Path, record: dict) -> None:
    """Delete a broken environment, but nothing that is not one; raises :class:`SetUpError`."""
    if not record and not (environment / "pyvenv.cfg").is_file():
        raise SetUpError(f"{environment} exists but is not a Python environment; move it away and run this again.")
    try:
        shutil.rmtree(environment)
    except OSError as error:
        raise SetUpError(
            f"{environment} cannot be removed ({error.strerror}); close the programs that use it, then run this again."
        ) from None


def make(project: Path, environment: Path) -> None:
    """Make an empty environment with pip in it; raises :class:`SetUpError`."""
    missing = [name for name in ("venv", "ensurepip") if importlib.util.find_spec(name) is None]
    if missing:
        raise SetUpError(
            f"This Python comes without its {' and '.join(missing)} module, which makes environments; on Debian or "
            f"Ubuntu run 'sudo apt install python3.{sys.version_info.minor}-venv', then run this again."
        )
    say(f"Making a Python environment for woodlib in {environment} (nothing outside this folder is changed).")
    environment.mkdir()
    write_record(environment, ours=True, finished=False, project=str(project))
    result = subprocess.run([*MAKE, str(environment)], capture_output=True, text=True)
    if result.returncode:
        reason = (result.stderr or result.stdout).strip().splitlines() or ["no reason was given"]
        raise SetUpError(f"Python could not make the environment {environment}: {reason[-1]}")


def fill(project: Path, environment: Path, extra: str) -> None:
    """Install the packages of the lock file and woodlib itself; raises :class:`SetUpError`."""
    record = read_record(environment)
    extras = sorted({extra, *record.get("extras", [])} - {""})
    state = {"ours": record.get("ours", False), "project": str(project), "extras": extras}
    write_record(environment, finished=False, **state)
    lock_file = project / LOCK_FILES["test" if "test" in extras else ""]
    what = "the kit and what its tests need" if extras else "the kit"
    say(f"Installing {what} from {lock_file.name}; the first time this fetches packages and takes a minute or more.")
    problem = install(python_of(environment), lock_file, project, environment / "woodlib-set-up.log")
    if problem:
        if record.get("finished"):  # pip gave up before it changed anything, so what worked before still works
            write_record(environment, **record)
        raise SetUpError(problem)
    write_record(environment, finished=True, fingerprint=fingerprint(project), **state)
    importlib.invalidate_caches()
    say("woodlib is set up.")


def check_room(project: Path, extra: str) -> None:
    """Refuse before starting when the disk is nearly full; raises :class:`SetUpError`."""
    free_mb = shutil.disk_usage(project).free // 10**6
    if free_mb < ROOM_NEEDED_MB[extra]:
        raise SetUpError(
            f"Setting up needs about {ROOM_NEEDED_MB[extra]} MB of free disk, and the disk that holds "
            f"{project} has {free_mb} MB left; make room and run this again."
        )


@contextmanager
def one_at_a_time(project: Path) -> Iterator[None]:
    """Hold the set-up for one process; a second one waits. The system lets go of the lock when a process dies."""
    try:
        (project / ".woodlib").mkdir(exist_ok=True)
        file = (project / ".woodlib" / "set-up.lock").open("a")
    except OSError as error:
        raise SetUpError(
            f"woodlib keeps its environment in {project}, and that folder cannot be written to "
            f"({error.strerror}); copy the project to a folder of your own."
        ) from None
    with file:
        take_lock(file)
        yield


def take_lock(file) -> None:
    """Wait until no other process holds the file; closing the file gives it back."""
    waiting = "Another run is setting up woodlib; waiting for it."
    if sys.platform == "win32":
        import msvcrt

        while True:
            try:
                return msvcrt.locking(file.fileno(), msvcrt.LK_LOCK, 1)
            except OSError:
                say(waiting)
    else:
        import fcntl

        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            say(waiting)
            fcntl.flock(file, fcntl.LOCK_EX)
