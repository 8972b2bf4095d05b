"""The hub without a network: what it refuses, whom it lets in, and that what it fetches is locked."""

from __future__ import annotations

import asyncio
import json
import re
import stat
import sys
from pathlib import Path
from types import ModuleType

import pytest
from traitlets.config import Config

from woodlib.environment import SetUpError, distribution_name
from woodlib.hub import start
from woodlib.opening import notebooks_folder

LOCK = Path(start.__file__).parent.parent / "lock" / "kit.txt"
NAMES = ("Ada", "=cmd|'/c calc'!A1", "Bo, the 2nd")


@pytest.fixture
def hub(tmp_path):
    folder = tmp_path / "hub"
    folder.mkdir()
    return folder


@pytest.fixture
def configured(hub, monkeypatch):
    """The configuration as the hub reads it, with a stand-in for the package that only the hub's own Python has."""
    start.students_words(hub, NAMES)
    auth = ModuleType("jupyterhub.auth")
    auth.Authenticator = object
    monkeypatch.setitem(sys.modules, "jupyterhub", ModuleType("jupyterhub"))
    monkeypatch.setitem(sys.modules, "jupyterhub.auth", auth)
    monkeypatch.setenv(start.TOLD_IN, start.settings(hub, "127.0.0.1", 8000)[start.TOLD_IN])
    config = Config()
    space = {"get_config": lambda: config}
    text = (Path(start.__file__).parent / "config.py").read_text()
    exec(compile(text, "config.py", "exec"), space)
    return config, space


def test_every_student_has_a_word_and_keeps_it(hub):
    words = start.students_words(hub, NAMES)
    assert list(words) == ["student-01", "student-02", "student-03"]
    assert len(set(words.values())) == 3 and all(re.fullmatch(r"[a-z2-9]{8}", word) for word in words.values())
    assert start.students_words(hub, (*NAMES, "late")) == words
    place = hub / start.WORDS
    assert stat.S_IMODE(place.stat().st_mode) == 0o600
    assert not re.search(r"(^|,)\"?[=+@-]", place.read_text(), re.MULTILINE)


def test_a_student_enters_with_their_own_word_alone(hub, configured):
    words = start.read_words(hub / start.WORDS)
    door = configured[1]["OwnWord"]()

    def enters(name, word):
        return asyncio.run(door.authenticate(None, {"username": name, "password": word}))

    assert enters("student-01", words["student-01"]) == "student-01"
    for name, word in (("student-01", words["student-02"]), ("student-09", ""), ("student-01", ""), ("", "\u00e9")):
        assert enters(name, word) is None


def test_the_lessons_come_into_the_student_s_own_folder_and_nothing_is_replaced(hub, configured):
    class Spawner:
        class user:
            name = "student-01"

    home = hub / "students" / "student-01"
    home.mkdir(parents=True)
    first = sorted(notebooks_folder().glob("*.ipynb"))[0].name
    (home / first).write_text("mine")
    configured[1]["lessons_of"](Spawner)
    assert (home / first).read_text() == "mine"
    assert {path.name for path in notebooks_folder().glob("*.ipynb")} == {path.name for path in home.glob("*.ipynb")}
    assert configured[0].Spawner.default_url.endswith(first)


def test_everything_of_the_hub_stays_in_its_folder(hub, configured):
    text = json.dumps(configured[0], default=str)
    assert "/tmp/{username}" not in text and str(hub / "students" / "{username}") in text
    assert configured[0].JupyterHub.bind_url == "http://127.0.0.1:8000"
    # Twenty at once were sent away by the hub's usual limit, and their kernels took each other's ports.
    assert configured[0].JupyterHub.concurrent_spawn_limit == 0
    assert "--KernelManager.transport=ipc" in configured[0].Spawner.args


@pytest.mark.parametrize(
    "path, told, sentence",
    [
        ("", "", "node and npm cannot be found"),
        ("node npm", "v18.1.0", "here is 18.1.0"),
        ("node npm", "what", "newer"),
    ],
)
def test_a_computer_without_what_the_proxy_needs_gets_a_sentence(tmp_path, monkeypatch, path, told, sentence):
    for name in path.split():
        program = tmp_path / name
        program.write_text(f"#!/bin/sh\necho {told}\n")
        program.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(SetUpError, match=sentence):
        start.check_system()


def test_a_folder_of_somebody_s_is_left_alone(tmp_path):
    (tmp_path / "mine.txt").write_text("mine")
    with pytest.raises(SetUpError, match="is there already"):
        start.set_up(tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["mine.txt"]


def test_an_interrupted_set_up_is_begun_again_and_a_whole_one_is_not(hub, monkeypatch):
    made = []
    monkeypatch.setattr(start, "_python", lambda hub: made.append("python"))
    monkeypatch.setattr(start, "_proxy", lambda hub: (_ for _ in ()).throw(SetUpError("no network.")))
    with pytest.raises(SetUpError, match="no network"):
        start.set_up(hub)
    monkeypatch.setattr(start, "_proxy", lambda hub: made.append("proxy"))
    for _ in range(2):
        start.set_up(hub)
    assert made == ["python", "python", "proxy"] and stat.S_IMODE(hub.stat().st_mode) == 0o700


def test_what_is_fetched_is_locked_and_the_kit_s_own_is_not_fetched_again():
    text = (start.HERE / "packages.txt").read_text()
    listed = re.findall(r"^([\w.-]+)==\S+ .*\\\n((?:    --hash=sha256:[0-9a-f]{64}(?: \\)?\n)+)", text, re.MULTILINE)
    pinned = re.findall(r"^[\w.-]+==", text, re.MULTILINE)
    assert len(listed) == len(pinned) and "jupyterhub" in {name for name, _ in listed}
    kit = {distribution_name(line) for line in LOCK.read_text().splitlines() if "==" in line}
    assert kit.isdisjoint(name for name, _ in listed)
    proxy = json.loads((start.HERE / "proxy" / "package-lock.json").read_text())["packages"]
    assert all("integrity" in each for name, each in proxy.items() if name)
    assert "jupyterhub" not in LOCK.read_text()
