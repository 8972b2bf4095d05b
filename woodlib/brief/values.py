"""Read one value of a brief: each reader takes the raw value, its key, its name and the brief's folder."""

from __future__ import annotations

import re
import unicodedata
from difflib import get_close_matches
from fractions import Fraction
from os import PathLike
from pathlib import Path

from ..errors import InputError
from ..units import exact_metres, metres, number_in, shown
from ..units.spelling import NUMBER, plain
from .keys import MONTHS, RING_ANGLES_DEG, Key

LONGEST_WORDS = 200
LONGEST_TEXT = 5_000
MOST_NAMES = 50
# Marks that turn the reading direction around could make a printed name say something else than the file.
_BARE_FRACTION = re.compile(rf"[+-]?\s*(?=[^/]*/){NUMBER}")
_DIFFERENCE = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(?:°|deg)?\s*([CFKcfk])\s*")
_TURNING = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")


def as_path(path) -> Path:
    """The argument as a path, or a sentence."""
    if not isinstance(path, (str, PathLike)) or not str(path).strip():
        raise InputError(f"path of the brief is {shown(path)}; give the path of a .toml file.")
    return Path(path)


def _length(raw, key: Key, name: str, folder: Path) -> float:
    if isinstance(raw, str) and _BARE_FRACTION.fullmatch(plain(raw)):
        raise InputError(
            f'{name} is {shown(raw)}, a fraction without a unit; write the unit, for example "{raw.strip()} in".'
        )
    return metres(raw, name=name, minimum_m=key.low, maximum_m=key.high)


def _exact(raw, key: Key, name: str, folder: Path) -> Fraction:
    """A length exactly as typed."""
    _length(raw, key, name, folder)
    return exact_metres(raw, name=name)


def _sizes(raw, key: Key, name: str, folder: Path) -> tuple[Fraction, ...]:
    """Sizes of tools, each exactly as typed."""
    if not isinstance(raw, list) or not 1 <= len(raw) <= MOST_NAMES:
        raise InputError(f"{name} is {shown(raw)}; write a list of 1 to {MOST_NAMES} sizes, such as {key.example}.")
    return tuple(_exact(entry, key, name, folder) for entry in raw)


def _humidity(raw, key: Key, name: str, folder: Path) -> float:
    return _number(raw, key, name, "percent", "percent", "rh")


def _moisture(raw, key: Key, name: str, folder: Path) -> float:
    return _number(raw, key, name, "percent", "percent", "mc")


def _temperature(raw, key: Key, name: str, folder: Path) -> float:
    return _number(raw, key, name, "degC", None)


def _difference(raw, key: Key, name: str, folder: Path) -> float:
    """Kelvins between two temperatures, which no conversion of a temperature gives."""
    found = _DIFFERENCE.fullmatch(raw) if isinstance(raw, str) else None
    kelvins = float(found[1]) / (1.8 if found[2] in "Ff" else 1.0) if found else None
    low, high = key.low or 0.0, key.high or 0.0
    if kelvins is None or not low <= kelvins <= high:
        raise InputError(
            f"{name} is {shown(raw)}; write by how much, {low:g} to {high:g} K, for example {key.name} = {key.example}."
        )
    return kelvins


def _density(raw, key: Key, name: str, folder: Path) -> float:
    return _number(raw, key, name, "g/m3", None)


def _mass(raw, key: Key, name: str, folder: Path) -> float:
    return _number(raw, key, name, "gram", None)


def _number(raw, key: Key, name: str, unit: str, default_unit: str | None, share: str = "") -> float:
    return number_in(raw, unit, name=name, default_unit=default_unit, minimum=key.low, maximum=key.high, share=share)


def _rings(raw, key: Key, name: str, folder: Path) -> float:
    if isinstance(raw, str) and raw.strip().lower() in RING_ANGLES_DEG:
        return RING_ANGLES_DEG[raw.strip().lower()]
    if isinstance(raw, str) and not any(character.isdigit() for character in raw):
        raise InputError(_not_one_of(raw, name, (*RING_ANGLES_DEG, "an angle such as 30 deg")))
    return _number(raw, key, name, "degree", "degree")


def _words(raw, key: Key, name: str, folder: Path) -> str:
    words = _checked_text(raw, name, LONGEST_WORDS)
    if "\n" in words:
        raise InputError(f"{name} has several lines; write it on one line, for example {key.name} = {key.example}.")
    if not words.strip():
        raise InputError(f"{name} is empty; write it like {key.name} = {key.example}.")
    return words.strip()


def _name(raw, key: Key, name: str, folder: Path) -> str:
    words = _words(raw, key, name, folder)
    if len(words) > (key.high or LONGEST_WORDS) or not words.isprintable():
        raise InputError(
            f"{name} is {shown(raw)}; write a name of up to {key.high:g} letters, for example {key.name} = {key.example}."
        )
    return words


def _text(raw, key: Key, name: str, folder: Path) -> str:
    return _checked_text(raw, name, LONGEST_TEXT)


def _checked_text(raw, name: str, longest: int) -> str:
    if not isinstance(raw, str):
        raise InputError(f"{name} is {shown(raw)}, not text; put it in quotation marks.")
    if len(raw) > longest:
        raise InputError(f"{name} has {len(raw)} characters; at most {longest} are accepted, so shorten it.")
    if any((unicodedata.category(c) == "Cc" and c not in "\n\t\r") or c in _TURNING for c in raw):
        raise InputError(f"{name} is {shown(raw)}, with a control character in it; retype it by hand.")
    return raw


def _names(raw, key: Key, name: str, folder: Path) -> tuple[str, ...]:
    if not isinstance(raw, list) or len(raw) > MOST_NAMES:
        raise InputError(f"{name} is {shown(raw)}; write a list of up to {MOST_NAMES} names, such as {key.example}.")
    names = tuple(_words(entry, key, name, folder) for entry in raw)
    twice = {entry for entry in names if names.count(entry) > 1}
    if twice:
        raise InputError(f"{name} holds {shown(sorted(twice)[0])} twice; write each name once.")
    return names


def _choice(raw, key: Key, name: str, folder: Path) -> str:
    spelt = {choice.lower(): choice for choice in key.choices}
    wanted = raw.strip().lower() if isinstance(raw, str) else ""
    if wanted not in spelt:
        raise InputError(_not_one_of(raw, name, key.choices))
    return spelt[wanted]


def _month(raw, key: Key, name: str, folder: Path) -> int:
    """A month by its English name or its first letters; a number would be read differently by different people."""
    wanted = raw.strip().lower().rstrip(".") if isinstance(raw, str) else ""
    matches = [number for number, month in enumerate(MONTHS, 1) if month.lower().startswith(wanted)]
    if len(wanted) < 3 or len(matches) != 1:
        raise InputError(_not_one_of(raw, name, MONTHS))
    return matches[0]


def _file(raw, key: Key, name: str, folder: Path) -> Path:
    path = folder / _words(raw, key, name, folder)
    try:
        there, is_file, is_folder = path.exists(), path.is_file(), path.is_dir()
    except (OSError, ValueError):
        there = is_file = is_folder = False
    if is_file:
        return path
    what = (
        f"a {'folder' if is_folder else 'device'} and not a file"
        if there
        else "and there is no such file beside the brief"
    )
    raise InputError(f"{name} is {shown(raw)}, {what}; give the path of a file, relative to the brief.")


def _whole(raw, key: Key, name: str, folder: Path) -> int:
    low, high = key.low or 0.0, key.high or 0.0
    if isinstance(raw, bool) or not isinstance(raw, int) or not low <= raw <= high:
        raise InputError(f"{name} is {shown(raw)}; write a whole number from {low:g} to {high:g}.")
    return raw


def _start(raw, key: Key, name: str, folder: Path) -> object:
    """A slider's start stays as typed: only the study knows what it accepts."""
    if isinstance(raw, str):
        return _words(raw, key, name, folder)
    if not isinstance(raw, (bool, int, float)) or not abs(raw) < 1e12:
        raise InputError(f'{name} is {shown(raw)}; write one value, for example "20 in", 45 or true.')
    return raw


def _not_one_of(raw, name: str, choices: tuple[str, ...]) -> str:
    spelt = {choice.lower(): choice for choice in choices}
    near = get_close_matches(raw.strip().lower(), spelt, 1) if isinstance(raw, str) else []
    hint = f"; did you mean {spelt[near[0]]}?" if near else "."
    return f"{name} is {shown(raw)}; write one of {', '.join(choices)}{hint}"


READERS = {
    "length": _length,
    "exact": _exact,
    "sizes": _sizes,
    "humidity": _humidity,
    "moisture": _moisture,
    "temperature": _temperature,
    "density": _density,
    "mass": _mass,
    "difference": _difference,
    "rings": _rings,
    "words": _words,
    "name": _name,
    "text": _text,
    "names": _names,
    "choice": _choice,
    "month": _month,
    "file": _file,
    "whole": _whole,
    "start": _start,
}
