"""A brief's file while it is being read: raw values, lines, what is known so far, and the problems."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from ..errors import InputError, Problems
from ..units import shown
from . import values
from .keys import KEYS, Key
from .lines import Path as KeyPath


class Desk:
    """The file on the desk; ``known`` and ``typed`` go by dotted key, with places in arrays counted from 1."""

    def __init__(self, path: Path, document: dict[str, Any], lines: Mapping[KeyPath, int]) -> None:
        self.path, self.document, self.lines, self.problems = path, document, lines, Problems()
        self.known: dict[str, Any] = {}
        self.typed: dict[str, Any] = {}

    def read(self, key: Key, path: KeyPath) -> Any:
        """Read one value and remember it under its dotted name; a problem is collected instead."""
        raw = self.raw(path)
        if raw is None:
            if key.required:
                self.add(path, f"{dotted(path)} is missing; write {key.name} = {key.example}.")
            return None
        value = self.attempt(path, values.READERS[key.reads], raw, key, dotted(path), self.path.parent)
        if value is not None:
            self.known[with_places(path)], self.typed[with_places(path)] = value, raw
        return value

    def value(self, name: str) -> Any:
        """What is known under a dotted name, or None."""
        return self.known.get(name)

    def read_table(self, path: KeyPath, table: str) -> dict[str, Any]:
        """Every value of a table by the name of its field, those that are not there left out; ``a.b`` is b within a."""
        found: dict[str, Any] = {}
        for key in KEYS:
            value = self.read(key, (*path, key.name)) if key.table == table else None
            if value is not None and key.field:
                group, _, name = key.field.rpartition(".")
                (found.setdefault(group, {}) if group else found)[name] = value
        return found

    def raw(self, path: KeyPath) -> Any:
        """The value as it stands in the file, or None."""
        found: Any = self.document
        for part in path:
            inside = isinstance(found, Mapping) and part in found
            if not inside and not (isinstance(found, list) and isinstance(part, int) and part < len(found)):
                return None
            found = found[part]
        return found

    def count(self, array: str) -> int:
        """How many tables an array holds."""
        listed = self.raw((array,))
        return len(listed) if isinstance(listed, list) else 0

    def table(self, path: KeyPath) -> Mapping[str, Any]:
        """The table at a path; anything else counts as empty, as it has been reported already."""
        found = self.raw(path)
        return found if isinstance(found, Mapping) else {}

    def where(self, path: KeyPath) -> str:
        """File name and line of a key, or of the table it would stand in, to put in front of a sentence."""
        while path and path not in self.lines:
            path = path[:-1]
        return f"{self.path.name}, line {self.lines[path]}: " if path else f"{self.path.name}: "

    def add(self, path: KeyPath, sentence: str) -> None:
        """Collect a sentence about a key."""
        self.problems.add(f"{self.where(path)}{sentence}")

    def says(self, path: KeyPath, joint: str = " is ") -> str:
        """A key with its value as typed: ``piece.width is '3 in'``."""
        return f"{dotted(path)}{joint}{shown(self.raw(path))}"

    def attempt(self, path: KeyPath, function: Callable[..., Any], *arguments: Any) -> Any:
        """What a function returns on behalf of a key; None where it refuses, its sentences kept with the key's line."""
        try:
            return function(*arguments)
        except InputError as error:
            self.problems.absorb(error, self.where(path))
            return None


def dotted(path: KeyPath) -> str:
    """A path as a maker would write it, without places in arrays: the line says which one is meant."""
    return ".".join(part for part in path if isinstance(part, str))


def with_places(path: KeyPath) -> str:
    """A path with places in arrays counted from 1: ``hardware.2.centres``."""
    return ".".join(str(part + 1) if isinstance(part, int) else part for part in path)
