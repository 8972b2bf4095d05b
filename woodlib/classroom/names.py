"""The names of a class from a file: one a line, cleaned of what is no letter, never used as the name of a file."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from pathlib import Path

from ..errors import InputError
from ..files import MEGABYTE, check_size
from ..units import shown

MOST_STUDENTS, LONGEST_NAME = 60, 40
NO_NAME = "Student {number}"
_NO_LETTERS = {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"}  # controls, direction marks, halves of letters, unknown ones


def read_names(path: Path) -> tuple[str, ...]:
    """The names in a file of plain text; raises :class:`InputError` for one that cannot be used."""
    if not path.exists():
        raise InputError(f"There is no file {shown(str(path))} with names; write one name a line into a text file.")
    check_size(path, "The list of names", MEGABYTE)
    try:
        lines = path.read_bytes().decode("utf-8-sig").splitlines()
    except UnicodeDecodeError:
        raise InputError(f"{path.name} is not plain text in UTF-8; save it as plain text, one name a line.") from None
    names = [name for line in lines if (name := clean_name(line))]
    if not 0 < len(names) <= MOST_STUDENTS:
        raise InputError(f"{path.name} holds {len(names)} names; a class has 1 to {MOST_STUDENTS}, one name a line.")
    long = [f"{shown(name)}, {len(name)} letters" for name in names if len(name) > LONGEST_NAME]
    if long:
        raise InputError(f"{path.name} holds a name too long for a sheet ({long[0]}); at most {LONGEST_NAME} letters.")
    return tuple(names)


def clean_name(text: str) -> str:
    """A name without controls and marks that turn the writing round, its blanks made single.

    >>> clean_name("  Ada\\u202e \\x00 Oak\\t")
    'Ada Oak'
    """
    spaced = "".join(" " if sign.isspace() else sign for sign in text)
    kept = (sign for sign in unicodedata.normalize("NFC", spaced) if unicodedata.category(sign) not in _NO_LETTERS)
    return " ".join("".join(kept).split())


def students(count: int | None, names: Sequence[str] = ()) -> tuple[str, ...]:
    """What each student is called; "Student 3" where there is no list. Raises :class:`InputError`."""
    if names and count not in (None, len(names)):
        raise InputError(f"There are {len(names)} names and {count} students; leave --students out, or mend the list.")
    count = len(names) or (12 if count is None else count)
    if not 1 <= count <= MOST_STUDENTS:
        raise InputError(f"The class has {count} students; it can have 1 to {MOST_STUDENTS}.")
    return tuple(names) or tuple(NO_NAME.format(number=number) for number in range(1, count + 1))
