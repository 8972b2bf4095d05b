"""Setting up: once, again, after an interruption, on damage, and refused in one sentence when something is missing.

Packages are not fetched here: a stand-in for the installer makes the folders that a package leaves behind. The real
installation is what brought the packages that these tests run with.
"""

from __future__ import annotations

import json
import os
import shutil
import sys
import threading
from collections import namedtuple
from pathlib import Path

import pytest

from woodlib import environment
from woodlib.environment import SetUpError, prepare, python_of, read_record

PROJECT = """\
[project]
dependencies = ["numpy>=1", "Foo_Bar"]
[project.optional-dependencies]
test = ["pytest"]
"""


class Shop:
    """A small project, and an installer that writes down what it was asked for."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.venv = folder / ".venv"
        self.targets: list[str] = []
        self.failure: str | BaseException = ""

    def install(self, python: Path, lock_file: Path, project: Path, log: Path) -> str:
        assert python.exists() and lock_file.exists() and log.parent == self.venv and project == self.folder
        self.targets.append(lock_file.stem)
        if isinstance(self.failure, BaseException):
            raise self.failure
        if not self.failure:
            for name in ("numpy", "foo_bar", *(["pytest"] if "test" in self.targets[-1] else [])):
                self.package(name).mkdir(exist_ok=True)
        return self.failure

    def package(self, name: str) -> Path:
        version = f"python{sys.version_info.major}.{sys.version_info.minor}"
        place = "Lib/site-packages" if os.name == "nt" else f"lib/{version}/site-packages"
        return self.venv / place / f"{name}-1.0.dist-info"


@pytest.fixture
def shop(tmp_path, monkeypatch) -> Shop:
    folder = tmp_path / "a shop"
    folder.mkdir()
    (folder / "pyproject.toml").write_text(PROJECT)
    (folder / "woodlib" / "lock").mkdir(parents=True)
    for name in environment.LOCK_FILES.values():
        (folder / name).write_text("numpy==1.0\n")
    made = Shop(folder)
    monkeypatch.setattr(environment, "install", made.install)
    monkeypatch.setattr(environment, "MAKE", [*environment.MAKE, "--without-pip"])
    return made


def test_a_second_run_installs_nothing(shop):
    prepare(shop.folder, "")
    prepare(shop.folder, "")
    assert shop.targets == ["kit"]
    assert python_of(shop.venv).exists()


def test_the_tests_bring_their_packages_and_serve_the_kit_too(shop):
    prepare(shop.folder, "")
    prepare(shop.folder, "test")
    prepare(shop.folder, "")
    assert shop.targets == ["kit", "test"]


def test_a_changed_lock_file_is_followed_with_the_same_extras(shop):
    prepare(shop.folder, "test")
    (shop.folder / environment.LOCK_FILES["test"]).write_text("numpy==2.0\n")
    prepare(shop.folder, "")
    assert shop.targets == ["test", "test"]


@pytest.mark.parametrize("stage", ["while installing", "while making"])
def test_an_interrupted_set_up_is_begun_again(shop, stage, monkeypatch):
    shop.failure = KeyboardInterrupt()
    with pytest.raises(KeyboardInterrupt):
        prepare(shop.folder, "")
    if stage == "while making":
        shutil.rmtree(python_of(shop.venv).parent)
    (shop.venv / "left over").touch()
    shop.failure = ""
    prepare(shop.folder, "")
    assert not (shop.venv / "left over").exists()
    assert read_record(shop.venv)["finished"] is True


@pytest.mark.parametrize("damage", ["package", "python", "moved"])
def test_damage_is_noticed_and_mended(shop, damage, capsys):
    prepare(shop.folder, "")
    if damage == "package":
        shop.package("foo_bar").rmdir()
    elif damage == "python":
        python_of(shop.venv).unlink()
    else:
        record = read_record(shop.venv)
        (shop.venv / "woodlib.json").write_text(json.dumps({**record, "project": "elsewhere", "fingerprint": "other"}))
    prepare(shop.folder, "")
    prepare(shop.folder, "")
    assert shop.targets == ["kit", "kit"]
    assert "making it anew" in capsys.readouterr().out


def test_a_failed_installation_is_one_sentence_and_leaves_what_worked(shop):
    prepare(shop.folder, "")
    shop.failure = "The packages could not be installed: no network."
    with pytest.raises(SetUpError, match="^The packages could not be installed: no network.$"):
        prepare(shop.folder, "test")
    prepare(shop.folder, "")
    assert shop.targets == ["kit", "test"]


def test_an_environment_that_someone_made_by_hand_is_filled_and_not_thrown_away(shop):
    environment.make(shop.folder, shop.venv)
    (shop.venv / "woodlib.json").unlink()
    (shop.venv / "of my own").touch()
    prepare(shop.folder, "")
    shop.package("numpy").rmdir()
    prepare(shop.folder, "")
    assert (shop.venv / "of my own").exists()
    assert shop.targets == ["kit", "kit"]


def test_a_second_process_waits_for_the_first(shop, monkeypatch):
    waiting = threading.Event()
    monkeypatch.setattr(environment, "say", lambda sentence: waiting.set() if "waiting" in sentence else None)
    second = threading.Thread(target=prepare, args=(shop.folder, ""))
    with environment.one_at_a_time(shop.folder):
        second.start()
        assert waiting.wait(30)
        assert shop.targets == []
    second.join(60)
    assert shop.targets == ["kit"]


# --- refused, in one sentence --------------------------------------------------------------------------------------


def no_ensurepip(shop, monkeypatch):
    util = environment.importlib.util
    found = util.find_spec
    monkeypatch.setattr(util, "find_spec", lambda name: None if name == "ensurepip" else found(name))


def no_room(shop, monkeypatch):
    usage = namedtuple("usage", "total used free")
    monkeypatch.setattr(environment.shutil, "disk_usage", lambda path: usage(10**9, 10**9 - 5 * 10**6, 5 * 10**6))


def not_writable(shop, monkeypatch):
    (shop.folder / ".woodlib").write_text("in the way")


def not_an_environment(shop, monkeypatch):
    shop.venv.mkdir()
    (shop.venv / "letters").touch()


def disk_fails(shop, monkeypatch):
    shop.failure = OSError(28, "No space left on device", "set-up.log")


def venv_fails(shop, monkeypatch):
    monkeypatch.setattr(environment, "MAKE", [sys.executable, "-c", "import sys; sys.exit('the clock has stopped')"])


@pytest.mark.parametrize(
    ("missing", "words"),
    [
        (no_ensurepip, f"its ensurepip module.*sudo apt install python3.{sys.version_info.minor}-venv"),
        (no_room, "needs about 1000 MB of free disk.* has 5 MB left"),
        (not_writable, "cannot be written to.*copy the project to a folder of your own"),
        (not_an_environment, "exists but is not a Python environment; move it away"),
        (disk_fails, "No space left on device .set-up.log."),
        (venv_fails, "could not make the environment .*: the clock has stopped"),
    ],
    ids=lambda value: getattr(value, "__name__", ""),
)
def test_what_is_missing_is_said_in_one_sentence(shop, monkeypatch, missing, words):
    missing(shop, monkeypatch)
    with pytest.raises(SetUpError, match=words) as caught:
        prepare(shop.folder, "")
    assert "\n" not in str(caught.value)


def test_what_is_no_environment_is_left_as_it_is(shop, monkeypatch):
    not_an_environment(shop, monkeypatch)
    with pytest.raises(SetUpError):
        prepare(shop.folder, "")
    assert (shop.venv / "letters").exists()


# --- where to run --------------------------------------------------------------------------------------------------


def test_a_python_that_holds_this_working_copy_and_all_it_needs_is_used_as_it_is(monkeypatch):
    monkeypatch.setattr(environment, "installed_from", lambda project: True)
    monkeypatch.setattr(environment, "missing_here", lambda names: set())
    monkeypatch.setattr(environment, "prepare", lambda *_: pytest.fail("an environment was made"))
    assert environment.enter("test", ["test"]) is None


def test_another_python_goes_on_in_the_environment_with_the_same_arguments(shop, monkeypatch):
    went = []
    monkeypatch.setattr(environment, "project_folder", lambda: shop.folder)
    monkeypatch.setattr(environment, "installed_from", lambda project: False)
    monkeypatch.setattr(environment, "run_in", lambda venv, arguments: went.append((venv, arguments)))
    environment.enter("", ["open", "--", "--no-browser"])
    assert went == [(shop.venv, ["open", "--", "--no-browser"])]


def test_an_installed_kit_without_its_packages_names_them(monkeypatch):
    monkeypatch.setattr(environment, "project_folder", lambda: None)
    needed = ["numpy>=1", "no-such-package", "pytest; extra == 'test'"]
    monkeypatch.setattr(environment.importlib.metadata, "requires", lambda name: needed)
    with pytest.raises(SetUpError, match=r"missing from this Python \(no-such-package\)"):
        environment.enter("", ["open"])


def test_an_installed_kit_has_no_tests_to_run(monkeypatch):
    monkeypatch.setattr(environment, "project_folder", lambda: None)
    with pytest.raises(SetUpError, match="working copy"):
        environment.enter("test", ["test"])


def test_a_link_to_another_working_copy_is_not_this_one(monkeypatch, tmp_path):
    class Linked:
        def read_text(self, name):
            return json.dumps({"url": tmp_path.as_uri(), "dir_info": {"editable": True}})

    monkeypatch.setattr(environment.importlib.metadata, "distributions", lambda name: [Linked()])
    assert environment.installed_from(tmp_path)
    assert not environment.installed_from(tmp_path / "other")
