"""The line on which each key of a TOML text stands, which the standard reader does not tell.

Only for texts that ``tomllib`` has accepted: this scanner follows the structure and does not check it again.
"""

from __future__ import annotations

import re
import tomllib
from bisect import bisect_right

Path = tuple[str | int, ...]

_BLANK = re.compile(r"(?:[ \t\r\n]+|#[^\n]*)*")
_SPACE = re.compile(r"[ \t]*")
_STRING = re.compile(r'"""(?:\\.|[^\\])*?"{3,5}|\'\'\'.*?\'{3,5}|"(?:\\.|[^"\\\n])*"|\'[^\'\n]*\'', re.DOTALL)
_KEY_PART = re.compile(r'[A-Za-z0-9_-]+|"(?:\\.|[^"\\\n])*"|\'[^\'\n]*\'')
_OTHER_VALUE = re.compile(r"[^,\]}\n#]*")


def key_lines(text: str) -> dict[Path, int]:
    """Line number, from 1, of every key, table and array element; a path is its keys and array positions.

    A table that is opened in several places has the line where it is first named.

    >>> key_lines('[piece]\\nwidth = "20 in"\\n[[hardware]]\\nname = "pull"')[("hardware", 0, "name")]
    4
    """
    return _Scanner(text).lines


class _Scanner:
    def __init__(self, text: str) -> None:
        self.text, self.at = text, 0
        self.starts = [0, *(found.end() for found in re.finditer("\n", text))]
        self.lines: dict[Path, int] = {}
        self.tables_in: dict[Path, int] = {}
        self._document()

    def _document(self) -> None:
        table: Path = ()
        while self._skip(_BLANK) and self.at < len(self.text):
            if self.text[self.at] == "[":
                table = self._header()
            else:
                self._pair(table)

    def _header(self) -> Path:
        start, many = self.at, self.text.startswith("[[", self.at)
        self.at += 2 if many else 1
        table = self._named((), self._key(), start, many)
        self.at += 2 if many else 1
        return table

    def _pair(self, table: Path) -> None:
        start = self.at
        path = self._named(table, self._key(), start, False)
        self._skip(_SPACE)
        self.at += 1  # the equals sign
        self._value(path)

    def _named(self, path: Path, parts: list[str], start: int, many: bool) -> Path:
        """Note the line of each part of a dotted key; step into the newest table of an array of tables."""
        for number, part in enumerate(parts, 1):
            path = (*path, part)
            self._note(path, start)
            if many and number == len(parts):
                self.tables_in[path] = self.tables_in.get(path, 0) + 1
            if path in self.tables_in:
                path = (*path, self.tables_in[path] - 1)
                self._note(path, start)
        return path

    def _key(self) -> list[str]:
        parts = []
        while True:
            self._skip(_SPACE)
            part = self._take(_KEY_PART)
            parts.append(tomllib.loads(f"key = {part}")["key"] if part[0] in "\"'" else part)
            self._skip(_SPACE)
            if self.text[self.at] != ".":
                return parts
            self.at += 1

    def _value(self, path: Path) -> None:
        self._skip(_SPACE)
        first = self.text[self.at]
        if first in "\"'":
            self._take(_STRING)
        elif first == "[":
            self._array(path)
        elif first == "{":
            self._inline_table(path)
        else:
            self._take(_OTHER_VALUE)

    def _array(self, path: Path) -> None:
        self.at, position = self.at + 1, 0
        while self._skip(_BLANK) and self.text[self.at] != "]":
            if self.text[self.at] == ",":
                self.at += 1
                continue
            self._note((*path, position), self.at)
            self._value((*path, position))
            position += 1
        self.at += 1

    def _inline_table(self, path: Path) -> None:
        self.at += 1
        while self._skip(_BLANK) and self.text[self.at] != "}":
            if self.text[self.at] == ",":
                self.at += 1
            else:
                self._pair(path)
        self.at += 1

    def _note(self, path: Path, start: int) -> None:
        self.lines.setdefault(path, bisect_right(self.starts, start))

    def _skip(self, pattern: re.Pattern[str]) -> bool:
        self._take(pattern)
        return True

    def _take(self, pattern: re.Pattern[str]) -> str:
        found = pattern.match(self.text, self.at)
        if found is None:
            raise ValueError(f"not as it should be (at line {bisect_right(self.starts, self.at)}, column 1)")
        self.at = found.end()
        return found[0]
