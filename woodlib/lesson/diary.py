"""Predictions kept from one kernel to the next: one line each at the end of a file in the user's state folder.

Nothing that stands in the file is ever changed or taken away; a line that cannot be read is passed over.
"""

from __future__ import annotations

import json
import os
from pathlib import Path

from platformdirs import user_state_path

from ..files import MEGABYTE

NAME = "predictions.jsonl"
LONGEST = MEGABYTE
"""How much of the file's end is read: some thousand predictions."""


class Diary:
    """What was said to a question, newest last.

    >>> import tempfile
    >>> diary = Diary(Path(tempfile.mkdtemp()) / "state" / NAME)
    >>> diary.write("gap", "How wide?", "3/16"), diary.said("gap", "How wide?"), diary.said("gap", "How deep?")
    ('', '3/16', None)
    >>> diary.start_over(), diary.said("gap", "How wide?")
    ('', None)
    """

    def __init__(self, path: Path | None = None) -> None:
        self._path = path

    @property
    def path(self) -> Path:
        """Where the lines stand."""
        return self._path or user_state_path("woodlib") / NAME

    def write(self, key: str, question: str, said: str | float) -> str:
        """Append what was said; returns why it could not be kept, "" when it was."""
        return self._append({"key": key, "question": question, "said": said})

    def start_over(self) -> str:
        """From here on nothing counts as said yet; what was said before still stands in the file."""
        return self._append({"start": "over"})

    def said(self, key: str, question: str) -> str | float | None:
        """What was said last to this very question since the last start, or None."""
        found: str | float | None = None
        for line in self._lines():
            if line.get("start") == "over":
                found = None
            elif (line.get("key"), line.get("question")) == (key, question):
                said = line.get("said")
                found = said if isinstance(said, str | float) else found
        return found

    def _append(self, line: dict[str, object]) -> str:
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            # Opened for appending: two kernels that write at once each leave a whole line.
            file = os.open(self.path, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)
            try:
                os.write(file, (json.dumps(line, ensure_ascii=False) + "\n").encode())
            finally:
                os.close(file)
        except OSError as error:
            return f"{self.path} cannot be written ({error.strerror})"
        return ""

    def _lines(self) -> list[dict[str, object]]:
        try:
            with self.path.open("rb") as file:
                file.seek(max(0, os.fstat(file.fileno()).st_size - LONGEST))
                text = file.read().decode(errors="replace")
        except OSError:
            return []
        found = []
        for line in text.splitlines():
            try:
                read = json.loads(line)
            except ValueError:
                continue
            if isinstance(read, dict):
                found.append(read)
        return found
