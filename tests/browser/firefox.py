"""Drive a Firefox from the system's packages through WebDriver BiDi, the protocol that it speaks by itself.

W3C WebDriver BiDi: commands and events are JSON messages over one web socket. Only what the tests need is here.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import websocket

FIREFOXES = ("firefox-esr", "firefox", "/Applications/Firefox.app/Contents/MacOS/firefox")
NO_FIREFOX = "no Firefox was found on this computer. Install one (Debian: sudo apt install firefox-esr)"
SECONDS = 60  # how long a busy machine may take to start it, or to answer
KEYS = {
    "ArrowRight": "\ue014",
    "ArrowLeft": "\ue012",
    "ArrowDown": "\ue015",
    "Home": "\ue011",
    "End": "\ue010",
    "Space": " ",
    "Tab": "\ue004",
}
# Nothing is fetched: every address would go through a proxy that does not exist, and its own errands are switched off.
PREFERENCES = {
    "network.proxy.type": 1,
    "network.proxy.http": "127.0.0.1",
    "network.proxy.http_port": 9,
    "network.proxy.ssl": "127.0.0.1",
    "network.proxy.ssl_port": 9,
    "network.proxy.allow_hijacking_localhost": True,
    "app.update.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "toolkit.telemetry.enabled": False,
    "browser.aboutwelcome.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "extensions.update.enabled": False,
    "browser.startup.page": 0,
}


def find_firefox() -> str | None:
    """Path of a Firefox, or None."""
    return next((path for path in map(shutil.which, FIREFOXES) if path), None)


@dataclass
class Firefox:
    """A running Firefox with one page. ``errors`` and ``requests`` fill with what pages complain about and ask for."""

    socket: Any
    errors: list[str] = field(default_factory=list)
    requests: list[str] = field(default_factory=list)
    _number: int = 0
    _context: str = ""

    def send(self, method: str, **parameters: Any) -> dict[str, Any]:
        """Send a command and return its result; events that arrive meanwhile are kept."""
        self._number += 1
        self.socket.send(json.dumps({"id": self._number, "method": method, "params": parameters}))
        while True:
            message = json.loads(self.socket.recv())
            if message["type"] == "event":
                self._keep(message["method"], message["params"])
            elif message.get("id") == self._number:
                if message["type"] == "error":
                    raise RuntimeError(f"{method}: {message['error']}: {message['message']}")
                return message["result"]

    def _keep(self, method: str, event: dict[str, Any]) -> None:
        if method == "log.entryAdded" and event["level"] == "error":
            self.errors.append(event["text"])
        if method == "network.beforeRequestSent" and re.match("(http|ws)s?:", event["request"]["url"]):
            self.requests.append(event["request"]["url"])

    def start(self) -> None:
        """Begin to listen, and open a window: a new one has the focus, so that keys act in it as they do on a screen."""
        self.send("session.new", capabilities={})
        self.send("session.subscribe", events=["log.entryAdded", "network.beforeRequestSent"])
        self._context = self.send("browsingContext.create", type="window")["context"]

    def open(self, address: str) -> None:
        """Open an address and wait until it is loaded."""
        self.send("browsingContext.navigate", context=self._context, url=address, wait="complete")

    def size(self, width: int, height: int) -> None:
        """Give the page's window a size in px."""
        self.send("browsingContext.setViewport", context=self._context, viewport={"width": width, "height": height})

    def run(self, function: str, *arguments: Any) -> Any:
        """Call a JavaScript function with plain values; returns its plain result."""
        call = f"async () => JSON.stringify(await ({function})(...{json.dumps(arguments)}))"
        answer = self.send(
            "script.callFunction", functionDeclaration=call, awaitPromise=True, target={"context": self._context}
        )
        if answer["type"] == "exception":
            raise RuntimeError(answer["exceptionDetails"]["text"])
        return json.loads(answer["result"].get("value", "null"))

    def press(self, selector: str, *keys: str) -> None:
        """Give an element the focus and press keys, one after the other."""
        self.run("selector => document.querySelector(selector).focus()", selector)
        values = [KEYS[key] for key in keys]
        steps = [{"type": kind, "value": value} for value in values for kind in ("keyDown", "keyUp")]
        self._act({"type": "key", "id": "keys", "actions": steps})

    def drag(self, selector: str, start: float, end: float) -> None:
        """Press the mouse at a share of an element's width, and let go at another; a click when both are the same."""
        box = self.run(
            """selector => { const element = document.querySelector(selector); element.scrollIntoView({ block: "center" });
          const box = element.getBoundingClientRect(); return [box.x, box.y + box.height / 2, box.width]; }""",
            selector,
        )
        first, last = (int(box[0] + share * box[2]) for share in (start, end))
        steps: list[dict[str, Any]] = [
            {"type": "pointerMove", "x": first, "y": int(box[1])},
            {"type": "pointerDown", "button": 0},
        ]
        if first != last:
            steps.append({"type": "pointerMove", "x": last, "y": int(box[1]), "duration": 50})
        self._act({"type": "pointer", "id": "mouse", "actions": [*steps, {"type": "pointerUp", "button": 0}]})

    def _act(self, source: dict[str, Any]) -> None:
        self.send("input.performActions", context=self._context, actions=[source])


@contextmanager
def running_firefox(folder: Path) -> Iterator[Firefox]:
    """A Firefox with a fresh profile in ``folder``; closed afterwards."""
    lines = [f"user_pref({json.dumps(name)}, {json.dumps(value)});" for name, value in PREFERENCES.items()]
    (folder / "user.js").write_text("\n".join(lines))
    log = folder / "firefox.log"
    command = [find_firefox(), "--headless", "--no-remote", "--remote-debugging-port=0", "--profile", str(folder)]
    with log.open("w") as written:
        process = subprocess.Popen(
            command,
            stdout=written,
            stderr=subprocess.STDOUT,
            env={**os.environ, "MOZ_HEADLESS": "1", "HOME": str(folder)},
        )
    try:
        socket = websocket.create_connection(
            wait_for_address(process, log) + "/session", timeout=SECONDS, suppress_origin=True, enable_multithread=False
        )
        firefox = Firefox(socket)
        firefox.start()
        yield firefox
        socket.close()
    finally:
        process.terminate()
        process.wait(timeout=SECONDS)


def wait_for_address(process: subprocess.Popen, log: Path) -> str:
    """Wait until Firefox says where it listens."""
    for _ in range(SECONDS * 10):
        if found := re.search(r"WebDriver BiDi listening on (ws://\S+)", log.read_text(errors="replace")):
            return found.group(1)
        if process.poll() is not None:
            break
        time.sleep(0.1)
    raise RuntimeError(f"Firefox did not start:\n{log.read_text(errors='replace')}")
