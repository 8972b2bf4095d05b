"""The package as it is handed out: light to import, complete as a wheel, locked, its pages without dead links."""

from __future__ import annotations

import re
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path

import pytest

import woodlib
from woodlib.environment import distribution_name

PROJECT = Path(woodlib.__file__).resolve().parent.parent
PYPROJECT = tomllib.loads((PROJECT / "pyproject.toml").read_text())
LOCKS = {path.stem: path.read_text().splitlines() for path in sorted((PROJECT / "woodlib" / "lock").glob("*.txt"))}


def run(code: str, *options: str, **settings) -> str:
    """Run some lines in a Python of their own and return what they print."""
    command = [sys.executable, *options, "-c", code]
    return subprocess.run(command, text=True, capture_output=True, check=True, **settings).stdout


# --- names ---------------------------------------------------------------------------------------------------------


def test_importing_the_package_loads_no_other():
    code = "import sys; before = set(sys.modules); import woodlib; print(*(set(sys.modules) - before))"
    loaded = run(code, cwd=PROJECT)
    assert {name.split(".")[0] for name in loaded.split()} - set(sys.stdlib_module_names) == {"woodlib"}


@pytest.mark.parametrize("name", [name for name in woodlib.__all__ if name != "__version__"])
def test_every_public_name_is_there(name):
    assert getattr(woodlib, name) is not None
    assert name in dir(woodlib)


def test_an_unknown_name_is_answered_with_the_known_ones():
    with pytest.raises(AttributeError, match="no name 'movment'; the public names are: .*InputError"):
        _ = woodlib.movment


# --- lock file -----------------------------------------------------------------------------------------------------


EXTRAS = {"kit": ["install"], "test": ["install", "test"], "compiled": ["install", "test", "compiled"]}


@pytest.mark.parametrize("name", EXTRAS)
def test_a_lock_file_pins_everything_the_project_asks_for(name):
    project = PYPROJECT["project"]
    wanted = [each for extra in EXTRAS[name] for each in project["optional-dependencies"][extra]]
    asked = {distribution_name(each) for each in project["dependencies"] + wanted}
    assert asked <= {distribution_name(line) for line in LOCKS[name] if "==" in line}


def test_the_lock_files_are_all_there_and_agree():
    assert set(LOCKS) == set(EXTRAS)
    pinned = {name: {line.rstrip(" \\") for line in lines if "==" in line} for name, lines in LOCKS.items()}
    versions = {name: {line.split(" ")[0] for line in lines} for name, lines in pinned.items()}
    assert versions["kit"] <= versions["test"] <= versions["compiled"]


@pytest.mark.parametrize("name", EXTRAS)
def test_a_lock_file_names_versions_and_hashes_and_no_place_to_fetch_them_from(name):
    lines = [line for line in LOCKS[name] if not line.lstrip().startswith("#")]
    pin = r"[\w.-]+==[\w.!+-]+( ; [\w.'<>=!() -]+?)? \\"
    odd = [line for line in lines if not re.fullmatch(rf"{pin}|    --hash=sha256:[0-9a-f]{{64}}( \\)?", line)]
    assert odd == []
    bare = [a for a, b in zip(lines, lines[1:], strict=False) if "==" in a and "--hash" not in b]
    assert bare == []


# --- wheel ---------------------------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def wheel(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(folder), str(PROJECT)]
    subprocess.run(command, check=True, capture_output=True)
    return next(folder.glob("woodlib-*.whl"))


def carried(folder: str) -> set[str]:
    """Files of a folder of the project that belong into the package."""
    unwanted = {"__pycache__", ".ipynb_checkpoints"}
    return {
        path.relative_to(PROJECT / folder).as_posix()
        for path in (PROJECT / folder).rglob("*")
        if path.is_file() and not unwanted & set(path.parts) and path.suffix != ".pyc"
    }


@pytest.mark.parametrize(
    ("folder", "place"), [("data", "woodlib/_data"), ("notebooks", "woodlib/_notebooks"), ("woodlib", "woodlib")]
)
def test_the_wheel_carries_every_file(wheel, folder, place):
    inside = set(zipfile.ZipFile(wheel).namelist())
    assert carried(folder)
    assert {f"{place}/{name}" for name in carried(folder)} <= inside


def test_the_wheel_carries_nothing_else(wheel):
    tops = {name.split("/")[0] for name in zipfile.ZipFile(wheel).namelist()}
    assert tops == {"woodlib", f"woodlib-{woodlib.__version__}.dist-info"}


def test_an_unpacked_wheel_finds_its_own_data(wheel, tmp_path):
    zipfile.ZipFile(wheel).extractall(tmp_path)
    code = (
        f"import sys; sys.path.insert(0, {str(tmp_path)!r}); import woodlib; print(woodlib.__file__); "
        "from woodlib.data_files import data_path; print(data_path('species.csv')); "
        "print(woodlib.find_species('white oak').name)"
    )
    module, table, name = run(code, "-P", cwd=tmp_path).splitlines()
    assert Path(module).is_relative_to(tmp_path) and Path(table).is_relative_to(tmp_path) and Path(table).exists()
    assert "oak" in name.lower()


# --- pages ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("page", ["README.md", "DEVELOPERS.md", "CLASS.md"])
def test_links_between_the_pages_and_files_lead_somewhere(page):
    targets = re.findall(r"\]\(([^)\s]+)\)", (PROJECT / page).read_text())
    inside = [target.split("#")[0] for target in targets if "://" not in target and not target.startswith("#")]
    assert inside
    assert [target for target in inside if not (PROJECT / target).exists()] == []


def test_the_readme_gives_commands_that_exist():
    text = (PROJECT / "README.md").read_text()
    from woodlib.command_line import parser

    known = parser()._subparsers._group_actions[0].choices
    named = set(re.findall(r"(?:python3|py|python) -m woodlib ([\w-]+)", text))
    assert {"open", "test", "handout", "brief"} <= named <= set(known)
