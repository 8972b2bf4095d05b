"""A Chromium to look with, with and without a network, and a JupyterLab to look at.

Pages come wrapped in :class:`Watched`, which keeps what the page logged as an error and which addresses it asked for,
so that a test can say that there were none.
"""

from __future__ import annotations

import json
import os
import secrets
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from urllib.request import urlopen

import pytest
from browser.firefox import NO_FIREFOX, find_firefox
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from woodlib.testing import NO_BROWSER, browser_is_required, find_browser

PROJECT = Path(__file__).resolve().parent.parent.parent
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-default-apps",
    "--mute-audio",
]
SECONDS = 60  # how long JupyterLab may take to start on a busy machine

# In continuous integration a missing Firefox is a failure; at a desk its one file is left out, and the end of the run says so.
FIREFOX_IS_LEFT_OUT = find_firefox() is None and not browser_is_required()
collect_ignore = ["test_handout_firefox.py"] if FIREFOX_IS_LEFT_OUT else []


def pytest_terminal_summary(terminalreporter) -> None:
    """Say what was left out, and how to bring it in."""
    if FIREFOX_IS_LEFT_OUT:
        terminalreporter.write_line(f"Left out: the handout in Firefox; {NO_FIREFOX}.")


@dataclass
class Watched:
    """A page with what it complained about and what it asked the network for."""

    page: Page
    errors: list[str] = field(default_factory=list)
    requests: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.page.on("pageerror", lambda error: self.errors.append(str(error)))
        self.page.on("console", lambda message: self.errors.append(message.text) if message.type == "error" else None)
        self.page.on("request", lambda request: self._asked(request.url))
        self.page.on("websocket", lambda socket: self._asked(socket.url))

    def _asked(self, url: str) -> None:
        if url.startswith(("http:", "https:", "ws:", "wss:")):
            self.requests.append(url)


@dataclass(frozen=True)
class JupyterServer:
    """A running JupyterLab: its address, its token, and the folder of notebooks that it shows (a copy)."""

    address: str
    token: str
    folder: Path

    def url(self, notebook: str = "") -> str:
        """Address of a notebook, alone in a workspace of its own."""
        place = f"/tree/{notebook}" if notebook else ""
        return f"{self.address}lab/workspaces/w{secrets.token_hex(4)}{place}?reset&token={self.token}"


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One Chromium for the whole run."""
    path = find_browser()
    if path is None:
        pytest.fail(f"The browser tests cannot run: {NO_BROWSER}.", pytrace=False)
    with sync_playwright() as playwright:
        launched = playwright.chromium.launch(executable_path=path, args=ARGUMENTS)
        yield launched
        launched.close()


@pytest.fixture
def open_context(browser: Browser) -> Iterator:
    """Make browser contexts with options of one's own, for example a phone's window; all are closed after the test."""
    contexts: list[BrowserContext] = []

    def make(**options) -> BrowserContext:
        contexts.append(browser.new_context(**options))
        return contexts[-1]

    yield make
    for context in contexts:
        context.close()


@pytest.fixture
def browser_page(open_context) -> Watched:
    """An empty page of a laptop's size, watched."""
    return Watched(open_context(viewport={"width": 1280, "height": 900}).new_page())


@pytest.fixture
def offline(open_context):
    """Make watched pages without a network, with options such as ``viewport``; requests are kept and refused."""

    def make(**options) -> Watched:
        context = open_context(offline=True, **options)
        watched = Watched(context.new_page())
        context.route(lambda url: not url.startswith(("file:", "data:", "blob:")), lambda route: route.abort())
        return watched

    return make


@pytest.fixture
def offline_page(offline) -> Watched:
    """An empty page of a laptop's size without a network, watched."""
    return offline(viewport={"width": 1280, "height": 900})


@pytest.fixture(scope="session")
def jupyter_server(tmp_path_factory) -> Iterator[JupyterServer]:
    """A JupyterLab on a free port of this computer, with a copy of the notebooks; stopped after the run."""
    home = tmp_path_factory.mktemp("jupyter")
    folder = home / "notebooks"
    shutil.copytree(PROJECT / "notebooks", folder, ignore=shutil.ignore_patterns(".ipynb_checkpoints"))
    keep_quiet(home / "settings")
    token = secrets.token_hex(16)
    log = home / "server.log"
    with log.open("w") as written:
        server = subprocess.Popen(
            server_command(folder, token),
            cwd=folder,
            env=server_settings(home),
            stdout=written,
            stderr=subprocess.STDOUT,
        )
        try:
            yield JupyterServer(wait_for(server, home / "runtime", token, log), token, folder)
        finally:
            server.terminate()
            server.wait(timeout=SECONDS)


def server_command(folder: Path, token: str) -> list[str]:
    """Start JupyterLab on a port that the system chooses."""
    command = [
        sys.executable,
        "-m",
        "jupyterlab",
        "--no-browser",
        "--ServerApp.ip=127.0.0.1",
        "--ServerApp.port=0",
        f"--IdentityProvider.token={token}",
        f"--ServerApp.root_dir={folder}",
        "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
    ]
    return command + (["--allow-root"] if getattr(os, "geteuid", lambda: 1)() == 0 else [])


def server_settings(home: Path) -> dict[str, str]:
    """The environment of the server: nothing of this person's own settings, and this working copy of the library."""
    own = {f"JUPYTER_{name}_DIR": str(home / name.lower()) for name in ("CONFIG", "DATA", "RUNTIME")}
    own |= {"JUPYTERLAB_SETTINGS_DIR": str(home / "settings"), "JUPYTERLAB_WORKSPACES_DIR": str(home / "workspaces")}
    return {**os.environ, **own, "IPYTHONDIR": str(home / "ipython"), "PYTHONPATH": str(PROJECT)}


def keep_quiet(settings: Path) -> None:
    """Answer JupyterLab's question about news beforehand, so that nothing lies over the notebook."""
    folder = settings / "@jupyterlab" / "apputils-extension"
    folder.mkdir(parents=True)
    quiet = {"fetchNews": "false", "checkForUpdates": False}
    (folder / "notification.jupyterlab-settings").write_text(json.dumps(quiet))


def wait_for(server: subprocess.Popen, runtime: Path, token: str, log: Path) -> str:
    """Wait until the server answers and return its address."""
    for _ in range(SECONDS * 10):
        for path in runtime.glob("jpserver-*.json"):
            address = json.loads(path.read_text() or "{}").get("url")
            if address and answers(f"{address}api/status?token={token}"):
                return address
        if server.poll() is not None:
            break
        time.sleep(0.1)
    raise RuntimeError(f"JupyterLab did not start:\n{log.read_text()}")


def answers(url: str) -> bool:
    """Whether a server answers at an address."""
    try:
        with urlopen(url, timeout=5) as reply:
            return reply.status == 200
    except OSError:
        return False
