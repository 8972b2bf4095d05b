"""A live class on this computer: seconds and memory for each student, and how long a slider waits when all move at once.

Sets a hub up in a temporary folder (it fetches packages and needs Node.js), signs students in, starts a server and a
kernel for each, opens a study, and lets all of them move its slider at the same moment.

    python tests/bench/live_class.py 20
    python tests/bench/live_class.py 20 --hub FOLDER      # one that is set up already
"""

from __future__ import annotations

import argparse
import json
import re
import signal
import statistics
import subprocess
import sys
import tempfile
import time
from concurrent.futures import ThreadPoolExecutor
from http.cookiejar import CookieJar
from pathlib import Path
from urllib.error import HTTPError, URLError
from urllib.parse import urlencode
from urllib.request import HTTPCookieProcessor, Request, build_opener, urlopen
from uuid import uuid4

import psutil
from websocket import create_connection

from woodlib.hub.start import WORDS, command, read_words, set_up, settings, students_words

PORT, MOVES, PATIENCE_S = 8765, 12, 300
OPEN = "from woodlib.live import show; from woodlib.studies import find_study; panel = show(find_study('panel-movement')); panel"
MOVE = "panel.set(width='{} in')"
MEGABYTE = 2**20


class Student:
    """Somebody at a browser: signed in, with a server and a kernel of their own."""

    def __init__(self, address: str, name: str, word: str) -> None:
        self.address, self.name, self.word = address, name, word
        self.waits: list[float] = []

    def sign_in(self) -> None:
        cookies = CookieJar()
        browser = build_opener(HTTPCookieProcessor(cookies))
        browser.open(f"{self.address}/hub/login").read()
        xsrf = next(cookie.value for cookie in cookies if cookie.name == "_xsrf")
        form = urlencode({"username": self.name, "password": self.word, "_xsrf": xsrf}).encode()
        browser.open(f"{self.address}/hub/login?next=/hub/token", form).read()
        page = browser.open(f"{self.address}/hub/token").read().decode()
        xsrf = re.search(r'xsrf_token: "([^"]+)"', page)[1]
        asked = Request(f"{self.address}/hub/api/users/{self.name}/tokens?_xsrf={xsrf}", b"{}", method="POST")
        asked.add_header("Content-Type", "application/json")
        self.token = json.load(browser.open(asked))["token"]

    def api(self, path: str, method: str = "GET", body: bytes | None = None):
        asked = Request(f"{self.address}{path}", body, {"Authorization": f"token {self.token}"}, method=method)
        with urlopen(asked, timeout=PATIENCE_S) as reply:
            text = reply.read()
            return json.loads(text) if text else {}

    def start_server(self) -> float:
        begun = time.perf_counter()
        self.api(f"/hub/api/users/{self.name}/server", "POST", b"{}")
        while not self.api(f"/hub/api/users/{self.name}")["servers"].get("", {}).get("ready"):
            if time.perf_counter() - begun > PATIENCE_S:
                raise TimeoutError(f"the server of {self.name} did not start")
            time.sleep(0.2)
        return time.perf_counter() - begun

    def open_study(self) -> float:
        begun = time.perf_counter()
        kernel = self.api(f"/user/{self.name}/api/kernels", "POST", b"{}")["id"]
        place = self.address.replace("http", "ws", 1)
        self.socket = create_connection(
            f"{place}/user/{self.name}/api/kernels/{kernel}/channels",
            timeout=PATIENCE_S,
            header=[f"Authorization: token {self.token}"],
        )
        self.run(OPEN)
        return time.perf_counter() - begun

    def move(self) -> None:
        for number in range(MOVES):
            begun = time.perf_counter()
            self.run(MOVE.format(10 + number))
            self.waits.append(time.perf_counter() - begun)
            time.sleep(0.3)  # a hand does not move without a pause

    def run(self, code: str) -> None:
        """Run code in the kernel and wait until all it shows has come back."""
        name = uuid4().hex
        header = {"msg_id": name, "msg_type": "execute_request", "username": "", "session": "bench", "version": "5.3"}
        content = {"code": code, "silent": False, "store_history": False, "user_expressions": {}, "allow_stdin": False}
        message = {"header": header, "parent_header": {}, "metadata": {}, "content": content, "channel": "shell"}
        self.socket.send(json.dumps(message))
        while True:
            said = self.socket.recv()
            said = json.loads(said) if isinstance(said, str) else {}
            if said.get("parent_header", {}).get("msg_id") != name:
                continue
            if said["msg_type"] == "error":
                raise RuntimeError(said["content"]["evalue"])
            if said["msg_type"] == "status" and said["content"]["execution_state"] == "idle":
                return


def memory(hub: psutil.Process) -> tuple[float, float]:
    """Megabytes of the hub with its proxy, and of all students; shared pages are counted once."""
    students = {
        each.pid: each
        for child in hub.children()
        if "singleuser" in " ".join(child.cmdline())
        for each in (child, *child.children(recursive=True))
    }
    others = [each for each in (hub, *hub.children(recursive=True)) if each.pid not in students]
    return tuple(sum(each.memory_full_info().pss for each in group) / MEGABYTE for group in (others, students.values()))


def answers(address: str) -> bool:
    try:
        return urlopen(f"{address}/hub/login", timeout=5).status == 200
    except (HTTPError, URLError, OSError):
        return False


def main() -> int:
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("students", type=int, nargs="?", default=20)
    asked.add_argument("--hub", type=Path)
    chosen = asked.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        begun = time.perf_counter()
        hub = set_up(chosen.hub or Path(folder) / "hub")
        students_words(hub, [f"Student {number}" for number in range(chosen.students)])
        print(f"set up in {time.perf_counter() - begun:.0f} s", flush=True)
        address, begun = f"http://127.0.0.1:{PORT}", time.perf_counter()
        with (hub / "hub.log").open("w") as log:
            process = subprocess.Popen(
                command(hub), env=settings(hub, "127.0.0.1", PORT), cwd=hub, stdout=log, stderr=subprocess.STDOUT
            )
            try:
                while not answers(address):
                    time.sleep(0.2)
                print(f"the hub answers after {time.perf_counter() - begun:.1f} s", flush=True)
                words = list(read_words(hub / WORDS).items())[: chosen.students]
                measure([Student(address, *pair) for pair in words], psutil.Process(process.pid))
            finally:
                process.send_signal(signal.SIGINT)
                process.wait(60)
    return 0


def measure(students: list[Student], hub: psutil.Process) -> None:
    count = len(students)
    with ThreadPoolExecutor(count) as all_at_once:
        list(all_at_once.map(Student.sign_in, students))
        starts = list(all_at_once.map(Student.start_server, students))
        print(f"{count} servers, all at once: {said(starts)} s", flush=True)
        opened = list(all_at_once.map(Student.open_study, students))
        print(f"{count} kernels with a study open, all at once: {said(opened)} s", flush=True)
        list(all_at_once.map(Student.move, students))
    waits = [wait for student in students for wait in student.waits]
    print(f"a slider moved, {count} at once, {len(waits)} moves: {said([1000 * wait for wait in waits])} ms")
    own, theirs = memory(hub)
    print(f"memory: hub and proxy {own:.0f} MB; {theirs / count:.0f} MB for each student, {theirs:.0f} MB for {count}")
    print(
        f"{psutil.cpu_count()} cores, load {psutil.getloadavg()[0]:.1f}, {psutil.virtual_memory().total / 2**30:.0f} GB"
    )


def said(values: list[float]) -> str:
    """Middle and the worst of twenty."""
    worst = sorted(values)[-(-95 * len(values) // 100) - 1]
    return f"median {statistics.median(values):.1f}, 95 in 100 within {worst:.1f}, most {max(values):.1f}"


if __name__ == "__main__":
    sys.exit(main())
