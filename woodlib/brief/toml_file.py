"""A TOML file of the brief: read within limits, and its mistakes told in plain words with their line."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import Any

from ..errors import InputError
from ..units import shown
from .lines import key_lines
from .plain_words import TWICE, in_plain_words

MOST_DOTS = 200
"""Dots on one line, far beyond any sentence: a key of thousands of parts costs gigabytes before it can be refused."""
LARGEST_BYTES = 1_000_000
"""A brief is a page of text; a file beyond this is refused before it is read."""


def text_of(path: Path) -> str:
    """The text of a brief, or of a file beside it. Raises :class:`InputError` where there is none."""
    try:
        if not path.is_file():
            raise InputError(f"there is no brief at {shown(str(path))}; give the path of a .toml file.")
        if path.stat().st_size > LARGEST_BYTES:
            raise InputError(f"{path.name} has {path.stat().st_size} bytes; a brief has at most {LARGEST_BYTES}.")
        content = path.read_bytes()
    except (OSError, ValueError) as error:
        if isinstance(error, InputError):
            raise
        reason = getattr(error, "strerror", None) or "not a path"
        raise InputError(f"{shown(str(path))} cannot be read ({reason}); give the path of a .toml file.") from None
    try:
        return content.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        raise InputError(f"{path.name}, line {line}: a letter is not in UTF-8; save the file as UTF-8 text.") from None


def parsed(path: Path, text: str) -> tuple[dict[str, Any], dict[tuple[str | int, ...], int]]:
    """What the text says, and the line of every key. Raises :class:`InputError` with the line that cannot be read."""
    for number, line in enumerate(text.split("\n"), start=1):
        if line.count(".") > MOST_DOTS:
            raise InputError(f"{path.name}, line {number}: more than {MOST_DOTS} dots on one line; write key = value.")
    try:
        return tomllib.loads(text), key_lines(text)
    except RecursionError:
        raise InputError(f"{path.name}: brackets are nested too deeply; write the brief as flat tables.") from None
    except ValueError as error:
        raise InputError(_broken(path, text, str(error))) from None


def _broken(path: Path, text: str, reason: str) -> str:
    found = re.search(r" \(at (?:line (\d+), column (\d+)|end of document)\)", reason)
    line = int(found[1]) if found and found[1] else text.count("\n") + 1
    why = in_plain_words(reason[: found.start()]) if found else "a number has too many digits"
    if why in TWICE:
        return f"{path.name}, line {line}: {TWICE[why]}"
    return (
        f"{path.name}, line {line}: this line cannot be read as TOML ({why}); write key = value "
        'with text in quotation marks, for example width = "20 in" or width = \'20"\'.'
    )
