"""Files in and out: read within a stated size, written in one move, refused in one sentence before any long work."""

from __future__ import annotations

import os
import secrets
import shutil
from pathlib import Path

from .errors import InputError

MEGABYTE = 1_000_000
ROOM = 20 * MEGABYTE
"""What must be free on a disk before a page is made: several times the largest that the kit writes."""


def check_size(place: Path, what: str, largest: int) -> None:
    """Refuse what is no ordinary file (a pipe or a device never ends) and what is larger than its kind can be."""
    if not place.is_file():
        raise InputError(f"{what} {str(place)!r} is not an ordinary file; save it to the disk first.")
    size = place.stat().st_size
    if size > largest:
        raise InputError(
            f"{what} {place.name!r} has {size / MEGABYTE:.1f} MB; at most {largest / MEGABYTE:g} MB are read: "
            "split it, or export less."
        )


def check_lines(text: str, what: str, longest: int) -> None:
    """Refuse a text with a line that no such file has; a table is read line by line."""
    for number, line in enumerate(text.splitlines(), start=1):
        if len(line) > longest:
            raise InputError(
                f"{what}, line {number}, has {len(line)} characters; a line has at most {longest}: export it again."
            )


def check_place(target: Path, remedy: str = "choose another folder") -> None:
    """Refuse a place that cannot be written to: tried with an empty file, since rights alone do not tell."""
    try:
        if os.path.lexists(os.fspath(target)) or len(os.fsencode(target.name)) > 255 or "\0" in str(target):
            target.lstat()
        free = shutil.disk_usage(target.parent).free
        draft = _draft(target)
        draft.open("xb").close()
        draft.unlink()
    except (OSError, ValueError) as error:
        raise _not_written(target, error, remedy) from None
    if free < ROOM:
        raise InputError(
            f"{target} cannot be written: {free / MEGABYTE:.0f} MB are free there and {ROOM / MEGABYTE:.0f} are needed; "
            "make room, or choose another disk."
        )


def put(contents: bytes, target: Path, *, replace: bool = False, remedy: str = "choose another folder") -> Path:
    """Write a file in one move: all of it or nothing, and over an existing one only when told to.

    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     put(b"once", Path(folder) / "a.txt").read_bytes()
    b'once'
    """
    draft = _draft(target)
    try:
        with draft.open("xb") as file:
            file.write(contents)
        if replace:
            os.replace(draft, target)
        elif os.path.lexists(target):
            raise FileExistsError
        else:
            _move_to_new(draft, target)
    except FileExistsError:
        raise InputError(f"{target} exists already and is left as it is; choose another name.") from None
    except (OSError, ValueError) as error:
        raise _not_written(target, error, remedy) from None
    finally:
        _take_away(draft)
    return target


def _draft(target: Path) -> Path:
    """A name beside the target that nothing has and that is never too long."""
    return target.with_name(f".draft-{secrets.token_hex(6)}")


def _move_to_new(draft: Path, target: Path) -> None:
    try:
        os.link(draft, target)  # fails where the target is, also when it came there a moment ago
    except FileExistsError:
        raise
    except OSError:  # a file system without links
        os.replace(draft, target)


def _take_away(draft: Path) -> None:
    try:
        draft.unlink(missing_ok=True)
    except (OSError, ValueError):
        return


def _not_written(target: Path, error: Exception, remedy: str) -> InputError:
    reason = getattr(error, "strerror", None) or "not a path"
    return InputError(f"{str(target)!r} cannot be written ({reason}); {remedy}.")
