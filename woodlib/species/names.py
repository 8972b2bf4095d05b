"""Find a wood by whatever a maker writes."""

from __future__ import annotations

import difflib
import re
import unicodedata
from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from functools import cache, lru_cache

from ..errors import InputError
from ..tables import rows
from .catalogue import all_species
from .record import Species

_NOISE = {"wood", "lumber", "timber", "board", "solid", "the"}
_SHOWN = 12
_NEAR = 0.74  # likeness from which a word is taken for a slip of the pen: below it, Eiche becomes obeche


def find_species(name: str | Species, own: Iterable[Species] = ()) -> Species:
    """A wood by name: case, word order, punctuation and plurals do not matter.

    ``own`` are woods read from your own file; they are looked at first. A name that several woods share is refused
    with the choices; a name that none has is refused with the nearest ones.

    >>> find_species("Ash, white").name
    'white ash'
    >>> find_species("RED OAK").name
    'red oak, species unknown'
    >>> find_species("walnt")
    Traceback (most recent call last):
    ...
    woodlib.errors.InputError: species 'walnt' is not in the tables; did you mean 'black walnut'?
    """
    if isinstance(name, Species):
        return name
    if not isinstance(name, str):
        raise InputError(f"species {name!r} is not a name; write the name of a wood, for example 'white oak'.")
    return _find(name, tuple(own))


@lru_cache(maxsize=1024)
def _find(name: str, own: tuple[Species, ...]) -> Species:
    words = _words(name)
    if not words:
        raise InputError(f"species {name!r} is not a name; write the name of a wood, for example 'white oak'.")
    for index in (_index(own), _index(all_species()) + _trade_names()):
        # 'bass wood' is tried as written before 'wood' is dropped as a word that says nothing.
        found = _match(words, index) or _match(_telling(words), index)
        if len(found) == 1:
            return found[0]
        if found:
            raise InputError(_choices(name, found))
    raise InputError(_nearest(name, _telling(words), _index(own) + _index(all_species())))


def normal(text: str) -> str:
    """A name reduced to what counts: plain letters, singular words, sorted.

    >>> normal("Oaks, WHITE")
    'oak white'
    """
    return " ".join(sorted(_words(text)))


def _words(text: str) -> list[str]:
    plain = unicodedata.normalize("NFKD", text)
    plain = "".join(letter for letter in plain if not unicodedata.combining(letter)).lower()
    return [_singular(word) for word in re.findall(r"[^\W_]+", plain)]


def _telling(words: list[str]) -> list[str]:
    return [word for word in words if word not in _NOISE] or words


def _singular(word: str) -> str:
    if len(word) > 4 and word.endswith("ies"):
        return word[:-3] + "y"
    if len(word) > 4 and word.endswith(("ches", "shes", "xes", "sses")):
        return word[:-2]
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us")):
        return word[:-1]
    return word


Index = list[tuple[Counter, str, Species]]


@cache
def _index(woods: tuple[Species, ...]) -> Index:
    """Every way to write each wood: word counts, the letters run together, and the wood."""
    entries: Index = []
    for wood in woods:
        for text in dict.fromkeys((wood.name, wood.table_name, wood.scientific_name, *_short_names(wood))):
            if text:
                words = _words(text)
                entries.append((Counter(words), "".join(words), wood))
    return entries


def _short_names(wood: Species) -> tuple[str, ...]:
    """A group also answers to its name without 'species unknown': 'red oak' in a shop means the group."""
    return (wood.name.removesuffix(", species unknown"),) if wood.is_group else ()


@cache
def _trade_names() -> Index:
    by_name = {wood.name: wood for wood in all_species()}
    entries: Index = []
    for row in rows("trade_names.csv"):
        wood, words = by_name[row["species"]], _words(row["trade_name"])
        said = f"'{row['trade_name']}' is read as {wood.name}: common practice, no source."
        entries.append((Counter(words), "".join(words), replace(wood, doubts=(said, *wood.doubts))))
    return entries


def _match(words: list[str], index: Index) -> list[Species]:
    """Woods whose name is the words given; failing that, run together; failing that, contains them."""
    asked, together = Counter(words), "".join(words)
    for test in (
        lambda entry: entry[0] == asked,
        lambda entry: entry[1] == together,
        lambda entry: asked <= entry[0],
        lambda entry: together in entry[0],
    ):
        found = {entry[2].name: entry[2] for entry in reversed(index) if test(entry)}
        if found:
            return list(reversed(found.values()))
    return []


def _choices(name: str, found: list[Species]) -> str:
    ordered = sorted(found, key=lambda wood: not wood.is_group)
    shown = ", ".join(f"'{wood.name}'" for wood in ordered[:_SHOWN])
    more = f" and {len(found) - _SHOWN} more" if len(found) > _SHOWN else ""
    return f"species {name!r} can mean several woods; choose one of {shown}{more}."


def _nearest(name: str, words: list[str], index: Index) -> str:
    vocabulary = sorted({word for entry in index for word in entry[0]})
    near = [difflib.get_close_matches(word, vocabulary, n=1, cutoff=_NEAR) for word in words]
    found = _match([match[0] for match in near], index) if all(near) else []
    if len(found) == 1:
        # Short, as a maker would write it, and found again by that name.
        short = " ".join(match[0] for match in near) if found[0].is_group else found[0].name
        return f"species {name!r} is not in the tables; did you mean '{short}'?"
    if not found:
        texts = {" ".join(sorted(entry[0].elements())): entry[2] for entry in index}
        found = [texts[text] for text in difflib.get_close_matches(" ".join(sorted(words)), texts, n=3, cutoff=_NEAR)]
    if found:
        meant = ", ".join(dict.fromkeys(f"'{wood.name}'" for wood in found[:_SHOWN]))
        return f"species {name!r} is not in the tables; did you mean {meant}?"
    return (
        f"species {name!r} is not in the tables; write its common English or its scientific name, or give your own "
        "species file."
    )
