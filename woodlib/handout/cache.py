"""Keep frozen tables, so that a study that has not changed costs nothing the second time.

The name of a kept table is a hash of everything the table depends on: the whole library with its data, the study's
own function, and the inputs with their start. A study whose function holds something without a stable text (an open
file, a random object) is never kept.
"""

from __future__ import annotations

import gzip
import hashlib
import inspect
import json
import sys
from functools import cache
from pathlib import Path
from typing import Any

from platformdirs import user_cache_path

from ..data_files import data_path
from ..study.study import Study

MOST_KEPT = 200


@cache
def library_digest() -> str:
    """A hash over every module and data table of the kit."""
    digest = hashlib.sha256(sys.version.encode())
    package = Path(__file__).resolve().parent.parent
    for folder, pattern in ((package, "**/*.py"), (package, "**/*.js"), (data_path(), "**/*.*")):
        for path in sorted(folder.glob(pattern)):
            digest.update(str(path.relative_to(folder)).encode())
            digest.update(path.read_bytes())
    return digest.hexdigest()


def study_name(study: Study) -> str | None:
    """The name under which a study's table is kept, or None when it cannot be told apart safely."""
    function = study.function
    held = [repr(cell.cell_contents) for cell in function.__closure__ or ()] + [repr(function.__defaults__)]
    held += [
        repr(function.__globals__[name])
        for name in function.__code__.co_names
        if _plain(function.__globals__.get(name))
    ]
    try:
        source = (
            inspect.getsource(sys.modules[function.__module__])
            if function.__module__ != "__main__"
            else inspect.getsource(function)
        )
    except (OSError, TypeError, KeyError):
        return None
    text = "\n".join([library_digest(), study.key, study.question, source, *held, repr(study.inputs)])
    return None if " at 0x" in text[64:].replace(source, "") else hashlib.sha256(text.encode()).hexdigest()


def _plain(value: Any) -> bool:
    return isinstance(value, str | int | float | tuple | dict | list)


def _folder() -> Path:
    return user_cache_path("woodlib") / "tables"


def forget() -> tuple[Path, int]:
    """Take every kept table away; returns where they were, and how many."""
    found = [path for path in _folder().glob("*") if path.is_file()]
    for path in found:
        path.unlink(missing_ok=True)
    return _folder(), len(found)


def kept(name: str | None) -> dict[str, Any] | None:
    """What was kept under a name, or None. A damaged file counts as not kept."""
    if name is None:
        return None
    try:
        return json.loads(gzip.decompress((_folder() / name).read_bytes()))
    except (OSError, ValueError, EOFError):
        return None


def keep(name: str | None, content: dict[str, Any]) -> None:
    """Keep a table; the oldest make room. A folder that cannot be written is no reason to fail."""
    if name is None:
        return
    try:
        folder = _folder()
        folder.mkdir(parents=True, exist_ok=True)
        for old in sorted(folder.iterdir(), key=lambda path: path.stat().st_mtime)[: -MOST_KEPT or None]:
            old.unlink(missing_ok=True)
        draft = folder / (name + ".draft")
        draft.write_bytes(gzip.compress(json.dumps(content).encode(), 6, mtime=0))
        draft.replace(folder / name)
    except OSError:
        return
