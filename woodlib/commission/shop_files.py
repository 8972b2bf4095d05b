"""The setting out of a commission as files for the shop: lists as CSV, sheets as SVG and PDF, in a folder of its own."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from pathlib import Path
from types import MappingProxyType

from ..brief import Brief
from ..errors import InputError
from ..files import check_place, put
from ..picture.pdf import sheets_pdf
from ..picture.scene import Picture
from ..picture.svg import svg
from ..setting_out.lists import Row, as_csv, board_rows, cut_rows, dowel_rows, gap_rows, hole_rows
from ..setting_out.plan import SettingOut
from ..setting_out.sheet import PAPERS
from ..setting_out.sheet_words import blank_in_words, drawing_in_words
from ..setting_out.sheets import sheets
from ..setting_out.work_lists import buy_rows, caution_text, finish_rows, glue_rows, order_rows
from ..units import shown
from ..ways.rules import Cut
from .checked import checked_brief
from .judged import Commission, commission_of
from .names import at_the_piece, compared_way
from .shop import setting_out_of

REMEDY = "choose another folder with -o"


def shop_files(plan: SettingOut, cuts: Sequence[Cut] = ()) -> Mapping[str, Callable[[], bytes]]:
    """Name of each file -> its contents; lists and drawings that would be empty are left out. ``cuts`` of the verdict.

    >>> from woodlib.commission import chosen_brief, commission_of
    >>> files = shop_files(setting_out_of(commission_of(chosen_brief(), "frame_panel")))
    >>> sorted(name.removesuffix("-list.csv") for name in files if name.endswith(".csv"))
    ['board', 'buy', 'cut', 'dowel', 'finish', 'glue', 'hole', 'order']
    """
    rows = {"cut-list": cut_rows(plan), "hole-list": hole_rows(plan), "dowel-list": dowel_rows(plan)}
    rows["board-list"] = board_rows(plan)
    rows |= {"gap-list": gap_rows(plan, cuts), "order-list": order_rows(plan), "glue-list": glue_rows(plan)}
    rows |= {"finish-list": finish_rows(plan), "buy-list": buy_rows(plan)}
    lists: dict[str, Callable[[], bytes]] = {f"{name}.csv": partial(_csv, kept) for name, kept in rows.items() if kept}
    lists["cautions.txt"] = partial(_text, plan)
    own, other = ("A4", "Letter") if plan.first == "metric" else ("Letter", "A4")
    drawn = {paper: sheets(plan, paper) for paper in PAPERS}
    words = drawing_in_words(plan)
    still = {
        f"{name}.svg": partial(_still, sheet, blank_in_words(plan) if name == "blank" else words)
        for name, sheet in drawn[own].items()
    }
    paper = {
        "piece.pdf": partial(sheets_pdf, tuple(drawn[own].values())),
        f"piece-{other.lower()}.pdf": partial(sheets_pdf, tuple(drawn[other].values())),
    }
    return lists | still | paper


def _csv(rows: Sequence[Row]) -> bytes:
    return as_csv(rows).encode()


def _text(plan: SettingOut) -> bytes:
    return caution_text(plan).encode()


def _still(picture: Picture, words: str) -> bytes:
    return svg(picture, words, true_size=True).encode()


def write_shop_files(
    brief_path: str | Path,
    folder: str | Path,
    way: str = "",
    told: Callable[[SettingOut, Brief], None] | None = None,
    pages: Mapping[str, Callable[[Commission], str]] = MappingProxyType({}),
) -> tuple[Path, ...]:
    """Set out the piece of a brief and write its lists and drawings into a folder, which is made where there is none.

    ``way`` to build, by key or name, instead of the one that is decided on; ``told`` gets the plan and the brief
    before anything is written; ``pages`` are texts to write beside them, by name of the file. Returns the paths. Raises
    :class:`InputError` with one sentence per mistake in the brief, and, before anything is written, for each file that
    is there already.
    """
    target = _folder(folder)
    check_place(target / "shop.html" if target.is_dir() else target, REMEDY)
    brief = checked_brief(brief_path)
    key = compared_way(brief, way, "--way is") if way else ""
    commission = commission_of(brief, key)
    plan = at_the_piece(brief, setting_out_of, commission)
    files = shop_files(
        plan, commission.built.cuts + (commission.base.cuts if commission.base and commission.base.allowed else ())
    )
    _refuse_what_is_there(tuple(target / name for name in (*files, *pages)))
    contents = {target / name: make() for name, make in files.items()}
    contents |= {target / name: make(commission).encode() for name, make in pages.items()}
    if told:
        told(plan, brief)
    _write_all(target, contents)
    return tuple(contents)


def _write_all(target: Path, contents: Mapping[Path, bytes]) -> None:
    """All files or none: what was written before one failed is taken away again."""
    made, written = not target.exists(), list[Path]()
    try:
        target.mkdir(exist_ok=True)
        for path, content in contents.items():
            written.append(put(content, path, remedy=REMEDY))
    except (OSError, InputError) as error:
        for path in written:
            path.unlink(missing_ok=True)
        if made and target.is_dir():
            target.rmdir()
        if isinstance(error, InputError):
            raise
        raise InputError(f"{shown(str(target))} cannot be written ({error.strerror}); {REMEDY}.") from None


def _folder(folder: str | Path) -> Path:
    """The folder as a path, with a parent to make it in."""
    if not isinstance(folder, str | os.PathLike) or not str(folder).strip() or "\0" in str(folder):
        raise InputError(f"folder is {shown(str(folder))}; give the name of a folder for the shop's files.")
    target = Path(folder)
    try:
        if target.exists() and not target.is_dir():
            raise InputError(f"{shown(str(target))} is a file and not a folder; choose another name with -o.")
        if not target.absolute().parent.is_dir():
            raise InputError(
                f"There is no folder {shown(str(target.absolute().parent))}; make it first, or choose another."
            )
    except OSError as error:
        raise InputError(f"{shown(str(target))} cannot be used ({error.strerror}); choose another folder.") from None
    return target


def _refuse_what_is_there(paths: tuple[Path, ...]) -> None:
    there = [path for path in paths if os.path.lexists(path)]
    if there:
        raise InputError(
            *(
                f"{path.name} is in {shown(str(path.parent))} already and is left as it is; choose another folder with -o, or "
                "move it away."
                for path in there
            )
        )
