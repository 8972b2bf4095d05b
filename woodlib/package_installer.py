"""Run pip with the lock file, say how it is getting on, and put its failures in one sentence; standard library only."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import TextIO

# What pip or the system says -> what is wrong and what to do, in the order they are looked for.
REASONS = (
    (("No space left on device", "Errno 28", "not enough space"), "the disk is full; make room and run this again"),
    (
        (
            "getaddrinfo failed",
            "name resolution",
            "Name or service not known",
            "NewConnectionError",
            "ProxyError",
            "Connection refused",
            "ConnectTimeoutError",
            "Read timed out",
            "nodename nor servname",
            "Network is unreach",
        ),
        "the package index cannot be reached; connect to the internet and run this again",
    ),
    (
        ("CERTIFICATE_VERIFY_FAILED", "SSLError"),
        "the connection to the package index is not trusted here; check the "
        "date of this computer and the certificates of its network",
    ),
    (
        ("Permission denied", "Read-only file system"),
        "the folder cannot be written to; copy the project to a folder of your own",
    ),
    (
        ("error: command 'gcc'", "Microsoft Visual C++", "No matching distribution found", "ResolutionImpossible"),
        "a package is not offered ready-made for this Python and system; Python 3.11 to 3.14 are known to work",
    ),
)

_FOUND = ("Collecting ", "Processing ")  # how pip begins the line of a package


def install(python: Path, lock_file: Path, project: Path, log: Path) -> str:
    """Install what a lock file lists, every file held against its hashes, then a link to the project itself.

    Returns an empty string, or what went wrong. All that pip says goes to the file ``log``; the screen gets a count of
    the packages.
    """
    listed = ["--require-hashes", "-r", str(lock_file)]
    # Nothing more is fetched for the project: what builds it is in the lock file too.
    itself = ["--no-deps", "--no-build-isolation", "-e", str(project)]
    with log.open("w", encoding="utf-8") as written:
        for what in (listed, itself):
            if _pip(python, what, written):
                written.flush()
                return sentence_for(log.read_text(encoding="utf-8"), log)
    return ""


def _pip(python: Path, what: list[str], written: TextIO) -> int:
    """Run ``pip install`` and return its exit code."""
    command = [str(python), "-m", "pip", "install", "--progress-bar", "off", "--use-pep517", *what]
    settings = {**os.environ, "PIP_USER": "0", "PIP_NO_INPUT": "1", "PIP_DISABLE_PIP_VERSION_CHECK": "1"}
    written.write(" ".join(map(repr, command)) + "\n")
    with subprocess.Popen(
        command,
        env=settings,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        encoding="utf-8",
        errors="replace",
    ) as process:
        count = 0
        for line in process.stdout or ():
            written.write(line)
            count += line.startswith(_FOUND)
            show_progress(line, count)
    return process.returncode


def show_progress(line: str, count: int) -> None:
    """One line that counts, where the screen can be written over; elsewhere two lines in all."""
    if line.startswith(_FOUND) and sys.stdout.isatty():
        print(f"\r  {count} packages found", end="", flush=True)
    elif line.startswith("Installing collected packages"):
        start = "\r" if sys.stdout.isatty() else ""
        print(f"{start}  {count} packages fetched, unpacking them", flush=True)


def sentence_for(output: str, log: Path) -> str:
    """The one sentence for a failed installation.

    >>> sentence_for("ERROR: [Errno 28] No space left on device", Path("set-up.log"))
    'The packages could not be installed: the disk is full; make room and run this again (all of it: set-up.log).'
    """
    lines = [line for line in output.splitlines() if line.strip()] or ["no reason was given"]
    last = ([line for line in lines if line.startswith("ERROR")] or lines)[-1].removeprefix("ERROR:").strip(" .")
    known = (reason for signs, reason in REASONS if any(sign.lower() in output.lower() for sign in signs))
    reason = next(known, last)
    return f"The packages could not be installed: {reason} (all of it: {log})."
