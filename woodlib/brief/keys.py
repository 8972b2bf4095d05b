"""What may stand in a brief: every key with what it means, how it is read, its limits and an example.

The reader, the written template and the suggestions for misspelt keys all come from this one table.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass

from ..data_files import data_path

RING_ANGLES_DEG = {"flatsawn": 0.0, "riftsawn": 45.0, "quartersawn": 90.0}
MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
SEASONS = ("winter", "spring", "summer", "autumn", "fall", *(month.lower() for month in MONTHS))
SOURCES_OF_AIR = ("seasons", "log", "weather", "climate")


@dataclass(frozen=True)
class Key:
    """One key of a brief.

    ``path`` dotted, ``[]`` for each table of an array, ``*`` for a name of the writer's own; ``field`` its name in the
    record, blank for none; ``reads`` names the reader;
    ``low`` and ``high`` are inclusive, in metres, percent, degree, degC, g/m3 or letters; ``shown`` False leaves the
    key commented out in the template.
    """

    path: str
    field: str
    reads: str
    says: str
    example: str
    required: bool
    low: float | None
    high: float | None
    choices: tuple[str, ...]
    shown: bool

    @property
    def table(self) -> str:
        """The table that holds the key, empty at the top of the file."""
        return self.path.rpartition(".")[0]

    @property
    def name(self) -> str:
        """The key without its table."""
        return self.path.rpartition(".")[2]


def _key(row: dict[str, str]) -> Key:
    low, high = (float(row[name]) if row[name] else None for name in ("low", "high"))
    choices = tuple(row["choices"].split("|")) if row["choices"] else ()
    required, shown = (row[name] == "true" for name in ("required", "shown"))
    return Key(row["key"], row["field"], row["reads"], row["says"], row["example"], required, low, high, choices, shown)


def _table() -> tuple[Key, ...]:
    with open(data_path("brief_keys.csv"), encoding="utf-8", newline="") as table:
        return tuple(map(_key, csv.DictReader(table)))


KEYS = _table()
KINDS_OF_PIECE = next(key.choices for key in KEYS if key.path == "piece.kind")
