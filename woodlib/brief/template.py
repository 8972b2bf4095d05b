"""Write a new brief in which every key is explained; an existing file is never touched."""

from __future__ import annotations

from pathlib import Path
from textwrap import wrap

from ..errors import InputError
from ..units import shown
from .keys import KEYS, Key
from .values import as_path

_HEAD = """\
# A brief: one commission, one file. Change the values, take out what you do not need.
# Lengths as you write them: "1-1/2 in", '1 1/2"', "1' 6-3/8\\"", "38 mm", "3.8 cm".
# Text with an inch mark in it goes between single quotation marks: '20"'.
# Paths are relative to the folder of this file. The kit reads this file and never writes into it.
"""

# table -> (heading as written, what the table is about)
_TABLES = {
    "piece": ("[piece]", "The piece, finished, border included. Grain runs along its length."),
    "wood": ("[wood]", "The stock on the bench."),
    "finish": ("[finish]", "Leave the table out for bare wood."),
    "house.seasons.*": (
        "[house.seasons.winter]",
        "The air where it will live: one of seasons (two or four, or months by name), log, weather, climate; a log may have "
        "weather or climate beside it, for the months that it lacks.",
    ),
    "house": ("[house]", "Other ways to give the air; [house.seasons...] above must go then."),
    "hardware[]": ("[[hardware]]", "Anything screwed on at two points; one such table each."),
    "boards[]": (
        "[[boards]]",
        "Rough boards on hand for the panel; one such table each. Without them the panel is set out as one board.",
    ),
}
_SUMMER = '[house.seasons.summer]\ntemperature = "75 degF"\nhumidity = "60 %"\n'
_HANDOUT = """\
# Where the sliders of a handout begin: one table per study, named by the study's key, inputs by theirs.
# [handout.name_of_the_study]
# name_of_the_input = "20 in"
"""


def write_template(path: str | Path) -> Path:
    """Write a documented brief to ``path`` and return the path; raises :class:`InputError` if the file exists.

    >>> import tempfile, pathlib
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     write_template(pathlib.Path(folder) / "bench.toml").name
    'bench.toml'
    """
    path = as_path(path)
    try:
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(template_text())
    except FileExistsError:
        raise InputError(f"{shown(str(path))} exists already and is left as it is; choose another name.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "not a path"
        raise InputError(f"{shown(str(path))} cannot be written ({reason}); choose a folder that exists.") from None
    return path


def template_text() -> str:
    """The text of a new brief: every key of the table of keys, explained, with an example value."""
    parts = [_HEAD, *_lines_of("")]
    for table, (heading, about) in _TABLES.items():
        keys = _lines_of(table)
        bare = not any(key.shown for key in KEYS if key.table == table)
        parts += ["", *_comment(about), f"# {heading}" if bare else heading, *keys]
        if table == "house.seasons.*":
            parts += ["", _SUMMER.rstrip()]
    return "\n".join([*parts, "", _HANDOUT])


def _lines_of(table: str) -> list[str]:
    return [line for key in KEYS if key.table == table for line in _entry(key)]


def _entry(key: Key) -> list[str]:
    lines = f"{key.name} = {key.example}".split("\n")
    return [*_comment(key.says), *(lines if key.shown else [f"# {line}" for line in lines])]


def _comment(sentence: str) -> list[str]:
    return [f"# {line}" for line in wrap(sentence, 100)]
