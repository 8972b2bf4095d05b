"""Every way to build the kit knows: each module of this package that has a ``WAY``, and what a test registers."""

from __future__ import annotations

import pkgutil
from difflib import get_close_matches
from functools import cache
from importlib import import_module

from ..errors import InputError
from ..units import shown
from .way import Way

_WAYS: dict[str, Way] = {}


def register(way: Way) -> None:
    """Make a way known; two of one key are refused."""
    if way.key in _WAYS:
        raise InputError(f"key of the way is {shown(way.key)}, which another way has; give it a key of its own.")
    _WAYS[way.key] = way


def unregister(key: str) -> None:
    """Forget a way, such as one that a test made known."""
    del _WAYS[key]


@cache
def _load() -> None:
    package = __package__ or ""
    for entry in pkgutil.iter_modules(import_module(package).__path__):
        way = getattr(import_module(f"{package}.{entry.name}"), "WAY", None)
        if way is not None:
            register(way)


def every_way() -> tuple[Way, ...]:
    """All ways: those that are compared when no kind of piece is named, then the others, by key."""
    _load()
    return tuple(sorted(_WAYS.values(), key=lambda way: (not way.usual, way.key)))


def kinds() -> tuple[str, ...]:
    """Kinds of piece, each served by at least one way."""
    return tuple(dict.fromkeys(kind for way in every_way() for kind in way.kinds))


def ways_for(kind: str | None = None) -> tuple[Way, ...]:
    """The ways that serve a kind of piece; when none is named, the usual six for a panel with a border.

    Raises :class:`InputError` for a kind the kit does not know.

    >>> [way.key for way in ways_for("turned part")]
    ['loose_ring', 'round_tenon']
    """
    if kind is None:
        return tuple(way for way in every_way() if way.usual)
    if kind not in kinds():
        raise InputError(f"kind of piece is {shown(kind)}; it must be one of {', '.join(kinds())}.")
    return tuple(way for way in every_way() if kind in way.kinds)


def way_of(key: str) -> Way:
    """A way to build by its key.

    Raises :class:`InputError` naming every key.

    >>> way_of("breadboard").short
    'breadboard end'
    """
    _load()
    if not isinstance(key, str) or key not in _WAYS:
        known = ", ".join(way.key for way in every_way())
        raise InputError(f"construction is {shown(key)}; it must be one of {known}.")
    return _WAYS[key]


def reference_way() -> Way:
    """The border glued across both ends, which every other way is compared with."""
    return next(way for way in every_way() if way.reference)


def find_way(name: str, asked: str = "the way to build is") -> Way:
    """A way by its key, any of its names, or the beginning of one; ``asked`` begins a refusal.

    >>> find_way("Breadboard end").key, find_way("frame and panel").key, find_way("battens").key
    ('breadboard', 'frame_panel', 'battens')
    """
    wanted = " ".join(name.casefold().replace("_", " ").split())
    known: dict[str, Way] = {}
    for way in every_way():
        names = way.key.replace("_", " "), way.name, way.short, *way.also
        known |= {text.casefold(): way for text in names}
    begins = {way.key for text, way in known.items() if wanted and text.startswith(wanted)}
    if wanted in known:
        return known[wanted]
    if len(begins) == 1:
        return way_of(begins.pop())
    near = get_close_matches(wanted, known, 1)
    hint = f" Did you mean {known[near[0]].name!r}?" if near else ""
    ways = "; ".join(way.name for way in every_way())
    raise InputError(f"{asked} {shown(name)}; the ways to build are: {ways}.{hint}")
