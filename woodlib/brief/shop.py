"""The shop that a brief is built in: machines, clamps and tools, from its own ``[shop]`` or from a file for all briefs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from ..errors import InputError
from ..units import shown
from .desk import Desk
from .toml_file import parsed, text_of
from .unknown import report_unknown

BESIDE = "shop.toml"
"""The file that is taken where it lies beside a brief and the brief names none."""


@dataclass(frozen=True)
class Shop:
    """What a shop says of itself, exact, m; None or empty where it says nothing, and the usual is taken.

    ``open_time`` of its glue in minutes, ``clamps`` how many it has; ``told_in`` names of the
    files that say so, empty for none; ``file`` of a shop that was read, or would be.
    """

    jointer_m: Fraction | None = None
    thicknesser_m: Fraction | None = None
    longest_clamp_m: Fraction | None = None
    clamps: int | None = None
    kerf_m: Fraction | None = None
    cutters_m: tuple[Fraction, ...] = ()
    drills_m: tuple[Fraction, ...] = ()
    open_time: int | None = None
    told_in: str = ""
    file: Path | None = None


def read_shop(desk: Desk) -> Shop:
    """The shop of a brief: its ``[shop]``, and for what is not said there the file it names, or ``shop.toml`` beside it.

    Every mistake is collected with the name and the line of the file that it stands in.
    """
    own: dict[str, Any] = desk.read_table(("shop",), "shop")
    named = own.pop("file", None)
    path = named or desk.path.parent / BESIDE
    if named is None and (desk.raw(("shop", "file")) is not None or not _is_file(path)):
        return Shop(**own, told_in=desk.path.name if own else "", file=path)
    try:
        other = _desk_of(path)
    except InputError as error:
        desk.problems.absorb(error)
        return Shop(**own)
    found = other.read_table(("shop",), "shop")
    desk.problems.sentences += other.problems.sentences
    both = " and ".join([path.name, *([desk.path.name] if own else [])])
    return Shop(**{**found, **own}, told_in=both, file=path)


def _is_file(path: Path) -> bool:
    try:
        return path.is_file()
    except OSError:
        return False


def _desk_of(path: Path) -> Desk:
    """The file of a shop as a desk: a table ``[shop]`` alone, as a brief would have it."""
    document, lines = parsed(path, text_of(path))
    others = [name for name in document if name != "shop"]
    if others or not isinstance(document.get("shop"), Mapping):
        what = f"{shown(others[0])} stands outside it" if others else "it has none"
        raise InputError(f"{path.name} must hold one table, [shop], and nothing else; {what}.")
    if "file" in document["shop"]:
        raise InputError(f"{path.name} names another file; write the shop itself here.")
    desk = Desk(path, document, lines)
    report_unknown(desk)
    return desk
