"""A folder for a class: an index, the lessons, a page and a worksheet for each student, and all that is for the teacher."""

from __future__ import annotations

import os
import secrets
import shutil
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from ..errors import InputError
from ..files import check_place, put
from ..handout.page import page
from ..templates import template
from ..units import shown
from .lessons import Lesson, all_lessons, beside
from .teaching import all_sheets, sheet_for, sheet_page, sheets_on_paper
from .worksheets import key_pdf, on_paper, practice_page, worksheets_pdf

TEACHER = "for-the-teacher"
MARK = "woodlib-class.txt"
_REMEDY = "choose another folder with -o"
Told = Callable[[str], None]


def write_class(
    folder: Path, notebooks: Path, names: Sequence[str], seed: str, replace: bool = False, told: Told | None = None
) -> tuple[Path, ...]:
    """Write everything for a class into a new folder; returns the paths.

    ``notebooks`` is where the lessons are; ``names`` what each student is called; the same ``seed`` gives the same
    numbers. A folder that is there is left as it is, unless ``replace`` and it was made by this: then its files are
    written anew and whatever else lies in it stays. Raises :class:`InputError`.
    """
    target = _checked(folder, replace)
    contents = class_files(all_lessons(notebooks), names, seed, told or (lambda _: None))
    if target.exists():
        for name in contents:
            (target / name).parent.mkdir(parents=True, exist_ok=True)
        return tuple(put(content, target / name, replace=True, remedy=_REMEDY) for name, content in contents.items())
    return _as_one(target, contents)


def class_files(lessons: Sequence[Lesson], names: Sequence[str], seed: str, told: Told) -> dict[str, bytes]:
    """Every file by its path in the folder."""
    lessons = tuple(lessons)
    files: dict[str, str | bytes] = {}
    for number, lesson in enumerate(lessons):
        told(f"Page {number + 1} of {len(lessons)}: {lesson.title}")
        links = (beside(lessons, number, where) for where in ("above", "below"))
        files[f"lessons/{lesson.file}"] = lesson.page(*links)
    told(f"Worksheets, pages and keys of {len(names)} students.")
    by_hand = [name for number, name in enumerate(names, 1) if on_paper(name, number) != name]
    if by_hand:
        told(f"These names cannot be printed here and are left for a pen on the paper: {', '.join(by_hand)}.")
    own = [f"students/{number:02}.html" for number in range(1, len(names) + 1)]
    files |= {
        path: practice_page(name, number, seed) for number, (path, name) in enumerate(zip(own, names, strict=True), 1)
    }
    files[f"{TEACHER}/worksheets.pdf"] = worksheets_pdf(names, seed)
    files[f"{TEACHER}/key.pdf"] = key_pdf(names, seed)
    files |= _for_the_teacher(lessons, names, seed)
    listed = [(lesson.title, lesson.decides, f"lessons/{lesson.file}") for lesson in lessons]
    body = template("classroom/templates/class.html").render(
        lessons=listed, students=list(zip(names, own, strict=True))
    )
    files["index.html"] = page("Wood that moves", [body], slides=False)
    files[MARK] = f"Made by python3 -m woodlib class, seed {seed!r}. Give the class everything but {TEACHER}.\n"
    return {name: text.encode() if isinstance(text, str) else text for name, text in files.items()}


def _for_the_teacher(lessons: Sequence[Lesson], names: Sequence[str], seed: str) -> dict[str, str | bytes]:
    found = [(lesson, sheet_for(lesson.shown)) for lesson in lessons]
    files: dict[str, str | bytes] = {}
    listed = []
    for lesson, sheet in found:
        if sheet is not None:
            files[f"{TEACHER}/{lesson.file}"] = sheet_page(sheet, lesson.file, lesson.title)
        listed.append((lesson.title, lesson.file if sheet else ""))
    # A sheet printed for the lessons that are there, in their order; once, where two lessons share it.
    sheets = list({sheet.key: sheet for _, sheet in found if sheet is not None}.values())
    files[f"{TEACHER}/sheets.pdf"] = sheets_on_paper(sheets or all_sheets())
    body = template("classroom/templates/teacher.html").render(lessons=listed, count=len(names), seed=seed)
    files[f"{TEACHER}/index.html"] = page("For the teacher", [body], slides=False)
    return files


def _checked(folder: Path, replace: bool) -> Path:
    target = Path(folder)
    if not str(target).strip() or "\0" in str(target):
        raise InputError(f"folder is {shown(str(folder))}; give the name of a new folder.")
    parent = target.absolute().parent
    if not parent.is_dir():
        raise InputError(f"There is no folder {shown(str(parent))}; make it first, or choose another.")
    if os.path.lexists(target):
        if not replace:
            raise InputError(f"{target} is there already and is left as it is; {_REMEDY}, or add --replace.")
        if not (target / MARK).is_file():
            raise InputError(f"{target} was not made by this command, so nothing in it is replaced; {_REMEDY}.")
    check_place(target / MARK if target.is_dir() else target, _REMEDY)
    return target


def _as_one(target: Path, contents: Mapping[str, bytes]) -> tuple[Path, ...]:
    """All files or none: they are written beside the place and moved there in one go."""
    draft = target.absolute().with_name(f".draft-{secrets.token_hex(6)}")
    try:
        for name, content in contents.items():
            (draft / name).parent.mkdir(parents=True, exist_ok=True)
            put(content, draft / name, remedy=_REMEDY)
        draft.rename(target)
    except OSError as error:
        raise InputError(f"{shown(str(target))} cannot be written ({error.strerror}); {_REMEDY}.") from None
    finally:
        shutil.rmtree(draft, ignore_errors=True)
    return tuple(target / name for name in contents)
