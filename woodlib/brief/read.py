"""Read a brief: the whole file is checked and every mistake reported at once, each with its line."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType

from ..errors import InputError, Problems
from ..units import shown
from . import values
from .checks import check_boards, check_fit, check_house, check_stock, house_settings
from .keys import KEYS, RING_ANGLES_DEG, SEASONS, Key
from .lines import key_lines
from .plain_words import TWICE, in_plain_words
from .record import BoardOnHand, Brief, Finish, Hardware, House, Piece, Season, Stock
from .unknown import report_unknown

LARGEST_BYTES = 1_000_000
"""A brief is a page of text; a file beyond this is refused before it is read."""


def read_brief(path: str | Path, more_checks: Sequence[Callable[[_Desk], None]] = ()) -> Brief:
    """The brief in a TOML file; paths in it are relative to its own folder. The file is only ever read.

    ``more_checks`` get the file while it is being read, so that what they find is reported together with the rest.
    Raises :class:`InputError` with one sentence per mistake, each with its line.

    >>> from woodlib.data_files import data_path
    >>> brief = read_brief(data_path("briefs/reading_nook_seat.toml"))
    >>> brief.typed["piece.width"], round(brief.piece.width_m, 4), brief.stock.species
    ('20 in', 0.508, 'white oak')
    """
    path = values.as_path(path)
    text = _text_of(path)
    document, lines = _parsed(path, text)
    return _Desk(path, document, lines).brief(more_checks)


def _text_of(path: Path) -> str:
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


def _parsed(path: Path, text: str) -> tuple[dict, dict]:
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


class _Desk:
    """The file while it is being read: raw values, lines, the problems so far."""

    def __init__(self, path: Path, document: dict, lines: dict) -> None:
        self.path, self.document, self.lines, self.problems = path, document, lines, Problems()
        self.known: dict[str, object] = {}
        self.typed: dict[str, object] = {}

    def brief(self, more_checks: Sequence[Callable[[_Desk], None]]) -> Brief:
        report_unknown(self)
        for key in KEYS:
            if "[]" not in key.path and "*" not in key.path:
                self.read(key, tuple(key.path.split(".")))
        hardware = self._each("hardware", Hardware)
        boards = self._each("boards", BoardOnHand)
        seasons = self._seasons()
        handout = self._handout()
        for check in (check_fit, check_boards, check_stock, *more_checks):
            check(self)
        source = check_house(self, seasons)
        self.problems.raise_if_any()
        return self._made(hardware, boards, seasons, handout, source)

    def read(self, key: Key, path: tuple) -> object:
        """Read one value and remember it under its dotted name; a problem is collected instead."""
        raw = self.raw(path)
        if raw is None:
            if key.required:
                self.problems.add(f"{self.where(path)}{dotted(path)} is missing; write {key.name} = {key.example}.")
            return None
        try:
            value = values.READERS[key.reads](raw, key, dotted(path), self.path.parent)
        except InputError as error:
            self.problems.absorb(error, self.where(path))
            return None
        self.known[dotted_with_places(path)] = value
        self.typed[dotted_with_places(path)] = raw
        return value

    def raw(self, path: tuple) -> object:
        """The value as it stands in the file, or None."""
        found: object = self.document
        for part in path:
            inside = isinstance(found, Mapping) and part in found
            inside = inside or (isinstance(found, list) and isinstance(part, int) and part < len(found))
            if not inside:
                return None
            found = found[part]
        return found

    def where(self, path: tuple) -> str:
        """File name and line of a key, or of the table it would stand in, to put in front of a sentence."""
        while path and path not in self.lines:
            path = path[:-1]
        return f"{self.path.name}, line {self.lines[path]}: " if path else f"{self.path.name}: "

    def table(self, path: tuple) -> Mapping:
        """The table at a path; anything else counts as empty, as it has been reported already."""
        found = self.raw(path)
        return found if isinstance(found, Mapping) else {}

    def _each(self, array: str, record: type) -> tuple:
        """One record for each table of an array; what is not given keeps the record's own default."""
        keys = [key for key in KEYS if key.table == f"{array}[]"]
        listed = self.raw((array,))
        found = []
        for place, entry in enumerate(listed if isinstance(listed, list) else ()):
            if isinstance(entry, Mapping):
                read = {key: self.read(key, (array, place, key.name)) for key in keys}
                found.append(record(**{_field(k): v for k, v in read.items() if v is not None or k.required}))
        return tuple(found)

    def _seasons(self) -> tuple[Season, ...]:
        keys = [key for key in KEYS if key.table == "house.seasons.*"]
        path = ("house", "seasons")
        entries = self.table(path).items()
        named = [name for name, entry in entries if name.lower() in SEASONS and isinstance(entry, Mapping)]
        return tuple(Season(name, *(self.read(key, (*path, name, key.name)) for key in keys)) for name in named)

    def _handout(self) -> Mapping:
        start_key = next(key for key in KEYS if key.table == "handout.*")
        studies = {}
        for study in self.table(("handout",)):
            inputs = {name: self.read(start_key, ("handout", study, name)) for name in self.table(("handout", study))}
            studies[study] = MappingProxyType(inputs)
        return MappingProxyType(studies)

    def _made(self, hardware, boards, seasons, handout, source) -> Brief:
        given = self.known.get
        return Brief(
            path=self.path,
            title=given("title"),
            maker=given("maker", ""),
            client=given("client", ""),
            notes=given("notes", ""),
            units=given("units", "inches"),
            piece=self._piece(),
            stock=self._stock(),
            finish=Finish(given("finish.name", ""), given("finish.coats")),
            house=self._house(source, seasons),
            hardware=hardware,
            boards=boards,
            constructions=given("constructions", ()),
            handout=handout,
            typed=MappingProxyType(self.typed),
            lines=MappingProxyType({dotted_with_places(path): line for path, line in self.lines.items()}),
        )

    def _piece(self) -> Piece:
        names = ("kind", "width", "length", "thickness", "border_width", "border_thickness")
        given = [self.known.get(f"piece.{name}") for name in names]
        lifts = self.known.get("piece.lifts", "yes" if self.known["piece.kind"] == "lid" else "no") == "yes"
        return Piece(*given, self.known.get("piece.rings", RING_ANGLES_DEG["flatsawn"]), lifts)

    def _stock(self) -> Stock:
        names = ("species", "own_species", "moisture", "shop_temperature", "shop_humidity")
        given = [self.known.get(f"wood.{name}") for name in names]
        out_of_flat = self.known.get("wood.out_of_flat", 0.0)
        return Stock(*given, self.known.get("wood.meter_error", 1.0), self.known["wood.built_in"], out_of_flat)

    def _house(self, source: str, seasons: tuple[Season, ...]) -> House:
        return House(source, seasons, **house_settings(self.known))


def _field(key: Key) -> str:
    """The record's name for a key: lengths carry their unit."""
    return f"{key.name}_m" if key.reads == "length" else key.name


def dotted(path: tuple) -> str:
    """A path as a maker would write it, without places in arrays: the line says which one is meant."""
    return ".".join(part for part in path if isinstance(part, str))


def dotted_with_places(path: tuple) -> str:
    """A path with places in arrays counted from 1: ``hardware.2.centres``."""
    return ".".join(str(part + 1) if isinstance(part, int) else part for part in path)
