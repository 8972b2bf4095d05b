"""Whatever is handed in: a sentence of the kit's own, in bounded time and memory, and nothing left on the disk."""

import contextlib
import errno
import inspect
import io
import os
import random
import signal
import sys
import tracemalloc

import numpy as np
import pytest

import woodlib
from woodlib.commission.notes import read_notes
from woodlib.data_files import data_path
from woodlib.errors import MOST_TOLD, InputError, WoodlibError
from woodlib.files import ROOM, check_place, put

GROSS = [None, "", "\0", "x" * 5000, float("nan"), float("inf"), -1, 0, 10**400, 1e-300, True, [], {}, object(), b"a"]
GROSS += [[[1], [1, 2]], np.array([np.nan]), np.array([]), lambda: 0, "1e999999999 in", "9" * 400, {"a": object()}]
SECONDS = 20
CALLABLE = [
    name
    for name in woodlib.__all__
    if name not in ("__version__", "registry", "Quantity", "WoodlibError", "InputError", "MissingDataError")
    and callable(getattr(woodlib, name))
]


@contextlib.contextmanager
def soon(what):
    """Fail, instead of waiting for ever; a system without this signal has to wait."""

    def too_long(*_):
        raise BaseException(f"{what} took more than {SECONDS} s")

    if not hasattr(signal, "SIGALRM"):
        yield
        return
    before = signal.signal(signal.SIGALRM, too_long)
    signal.alarm(SECONDS)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


@pytest.mark.parametrize("name", CALLABLE)
def test_a_public_name_answers_with_the_kits_own_errors(name, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    public = getattr(woodlib, name)
    parameters = inspect.signature(public).parameters.values()
    needed = [each for each in parameters if each.default is each.empty and each.kind < each.VAR_POSITIONAL]
    optional = [each.name for each in parameters if each.default is not each.empty]
    for gross in GROSS:
        for more in ({}, *({option: gross} for option in optional)):
            try:
                with soon(f"{name} with {str(gross)[:40]!r}"):
                    public(*[gross] * len(needed), **more)
            except WoodlibError:
                assert not list(tmp_path.iterdir()), "a file was left behind"
            for path in tmp_path.iterdir():
                path.unlink()


READERS = {
    "seat-notes.csv": (
        lambda path: read_notes(path.with_name("seat.toml")),
        b'date,what,value\n2026-03-02,moisture,9.1%\n2026-08-01,gap,"3/16 in"\n',
    ),
    "seat.toml": (woodlib.read_brief, data_path("briefs/reading_nook_seat.toml").read_bytes()),
    "own.csv": (woodlib.read_own_species, b"name,tangential_shrinkage_percent\npear,9.1\nplum,8.0\n"),
    "log.csv": (
        woodlib.read_hygrometer_log,
        b"time,temperature (C),humidity (%)\n"
        + b"".join(b"2024-01-%02d 10:00,20.5,41\n" % day for day in range(1, 29)),
    ),
    "place.epw": (
        woodlib.read_weather_file,
        b"LOCATION,Town,-,-,-,0,1,2,3,4\n" + b"DATA\n" * 7 + b"2000,1,1,1,60,?,1,1,50\n",
    ),
}
PIECES = [
    b'"',
    b"\n",
    b"\0",
    b",",
    b";",
    b"=",
    b"[" * 3000,
    b"{",
    b"." * 3000,
    b"a." * 22_000,
    b"\xff\xfe",
    b"\xa0",
    b"9" * 500,
]
PIECES += [
    b"'''",
    b'""',
    b"nan",
    b"-1",
    b"\xe2\x80\xae",
    b"\xef\xbb\xbf",
    b"1e999",
    b"x" * 140_000,
    b"\r",
    b"\\u0000",
    b"#",
]


@pytest.mark.parametrize("name", READERS)
def test_a_damaged_file_is_a_sentence(name, tmp_path):
    reader, good = READERS[name]
    file, chance = tmp_path / name, random.Random(7)
    for _ in range(120):
        content = bytearray(good)
        for _ in range(chance.randint(1, 4)):
            place = chance.randrange(len(content) + 1)
            content[place : place + chance.choice([0, 0, 1, 30, 400])] = chance.choice(PIECES)
        file.write_bytes(content)
        with soon(bytes(content[:200])), contextlib.suppress(WoodlibError):
            reader(file)
    assert [path.name for path in tmp_path.iterdir()] == [name]


@pytest.mark.parametrize(
    ("name", "content", "fragment"),
    [
        ("own.csv", b'""', "is empty"),
        ("own.csv", b"\xc2\xa0", "is empty"),
        ("own.csv", b"name\n" + b"x,\n" * 2_000_000, "at most 5 MB"),
        ("place.epw", b"LOCATION," + b"x" * 140_000 + b"\n" * 9, "a line has at most 20000"),
        ("seat.toml", b"a." * 22_500 + b"a = 1", "more than 200 dots"),
        ("seat.toml", b"a = " + b"[" * 100_000, "nested too deeply|cannot be read"),
    ],
)
def test_limits_are_stated_and_cost_little(name, content, fragment, tmp_path):
    (tmp_path / name).write_bytes(content)
    tracemalloc.start()
    try:
        with soon(name), pytest.raises(InputError, match=fragment):
            READERS[name][0](tmp_path / name)
        assert tracemalloc.get_traced_memory()[1] < 60e6
    finally:
        tracemalloc.stop()


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("seat.toml", b"".join(b"k%d = 1\n" % line for line in range(8_000))),  # 50,000 of them once took 39 s
        (
            "own.csv",
            b"name,tangential_shrinkage_percent\n" + b"x,y\n" * 10_000,
        ),  # 100,000 of them once made 22 MB of sentences
    ],
)
def test_of_very_many_mistakes_the_first_are_told(name, content, tmp_path):
    (tmp_path / name).write_bytes(content)
    with soon(name), pytest.raises(InputError, match="more like these") as caught:
        READERS[name][0](tmp_path / name)
    assert len(caught.value.problems) == MOST_TOLD + 1 and len(str(caught.value)) < 20_000


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes that look like files")
@pytest.mark.parametrize("name", [name for name in READERS if name != "seat-notes.csv"])  # what is no file is no log
def test_a_pipe_is_not_waited_for(name, tmp_path):
    os.mkfifo(tmp_path / name)
    with soon(name), pytest.raises(InputError):
        READERS[name][0](tmp_path / name)


def test_numbers_that_once_slipped_through():
    with pytest.raises(InputError, match='temperature_c is 70 without a unit; write "70 degF"'):
        woodlib.emc_percent(70, 45)
    assert woodlib.emc_percent("70 degC", 45) < woodlib.emc_percent("70 degF", 45)
    with pytest.raises(InputError, match="mc_from is nan"):
        woodlib.movement_strain(0.00365, 0.105, float("nan"), 9)
    with soon("glue_lines"), pytest.raises(InputError, match="width of the edge board .*at least"):
        woodlib.glue_lines(3, "1 m", "20 mm", edge_board_width="0.0001 mm")


def test_a_file_is_written_whole_or_not_at_all(tmp_path, monkeypatch):
    target = tmp_path / "list.csv"
    put(b"old", target)
    with pytest.raises(InputError, match="exists already"):
        put(b"new", target)
    put(b"newer", target, replace=True)

    def full(*_):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr("woodlib.files.os.replace", full)
    with pytest.raises(InputError, match="No space left"):
        put(b"newest", target, replace=True)
    assert target.read_bytes() == b"newer" and [path.name for path in tmp_path.iterdir()] == ["list.csv"]


@pytest.mark.parametrize("name", ["x" * 300 + ".html", "no/such/folder.html", "a\0b.html"])
def test_a_place_is_tried_before_the_work(name, tmp_path):
    with pytest.raises(InputError, match="cannot be written"):
        check_place(tmp_path / name)
    assert not list(tmp_path.iterdir())


def test_a_disk_that_is_nearly_full_is_told_before_the_work(tmp_path, monkeypatch):
    monkeypatch.setattr("woodlib.files.shutil.disk_usage", lambda _: type("Usage", (), {"free": ROOM // 2})())
    with pytest.raises(InputError, match="10 MB are free there and 20 are needed"):
        check_place(tmp_path / "seat.html")


def test_a_screen_that_lacks_letters(monkeypatch, capsys):
    from woodlib.__main__ import main

    narrow = io.TextIOWrapper(io.BytesIO(), encoding="cp1252")
    monkeypatch.setattr(sys, "stderr", narrow)
    monkeypatch.setattr("woodlib.environment.enter", lambda *_: None)
    assert main(["verdicts", "ספסל 🪑.toml"]) == 1
    narrow.flush()
    assert b"there is no brief at" in narrow.buffer.getvalue()


def test_what_is_handed_out_tells_nothing_about_the_machine(tmp_path):
    import getpass
    import platform
    import re

    from woodlib.commission.shop_files import write_shop_files
    from woodlib.handout import write_handout
    from woodlib.handout.client_page import shop_page

    home = tmp_path / "ofakind-username"
    home.mkdir()
    brief = home / "seat.toml"
    brief.write_bytes(READERS["seat.toml"][1])
    files = [write_handout(brief, home / "seat.html")]
    files += write_shop_files(brief, home / "shop", pages={"shop.html": shop_page})
    told = {"ofakind-username", str(tmp_path), platform.node(), os.path.expanduser("~")} - {"", "/", "localhost"}
    told |= {getpass.getuser()} - {"root", "user"}
    for path in files:
        content = path.read_bytes().decode("latin-1")
        for secret in told:
            found = re.search(rf"(?<![\w/-]){re.escape(secret)}(?![\w-])", content)
            assert not found, f"{path.name} tells {secret!r}: {content[max(found.start() - 60, 0) :][:140]!r}"
