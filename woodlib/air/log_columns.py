"""Which column of a log is which: names in several spellings and languages, and the units they carry."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from typing import Any

from ..errors import Problems

# Beginnings of words, without accents; a leading "=" asks for the whole word.
_WORDS = {
    "time": "=time =date =datetime =timestamp =datum =zeit uhrzeit zeitst zeitp =heure horodat =temps =fecha =hora "
    "=data =ora =tijd =tid tidpunkt =dato klokke =aika paivam =czas =recorded 时间 時間 日時 日期 время дата",
    "temperature": "=t =ta temperat tempc tempf =temp =temps lampot =celsius =fahrenheit dry 温度 気温 температ",
    "humidity": "=rh rh =hum humid humed umid luftfeucht feucht =rf =rlf =hr =ur =lf vocht luchtvocht luftfukt fukt "
    "luftfugt fugt kosteus =relative wilgot 湿度 влажн",
}
_NOT = {
    "time": "zone",
    "temperature": "dew taupunkt rosee rocio rugiada dauw dagg wet set target soll",
    "humidity": "absol specific spezif ratio dew set target soll gm3 mixing",
}
_CALLED = {"time": "time", "temperature": "temperature", "humidity": "relative humidity"}
_PARAMETER = {"time": "time_column", "temperature": "temperature_column", "humidity": "rh_column"}
_EXAMPLE = {"time": "time", "temperature": "temperature", "humidity": "humidity"}
_FAHRENHEIT = {"f", "degf", "fahrenheit", "tempf"}
_CELSIUS = {"c", "degc", "celsius", "tempc"}


def words_of(text: str) -> list[str]:
    """Lower-case words of a heading, without accents, degree signs and punctuation.

    >>> words_of("Température_°C")
    ['temperature', 'c']
    """
    plain = "".join(c for c in unicodedata.normalize("NFKD", text) if not unicodedata.combining(c)).lower()
    return re.findall(r"[^\W_]+", plain.replace("g/m", "gm").replace("ł", "l"))


def _any_word(words: Sequence[str], vocabulary: str) -> bool:
    entries = vocabulary.split()
    whole = {entry[1:] for entry in entries if entry.startswith("=")}
    starts = tuple(entry for entry in entries if not entry.startswith("="))
    return any(word in whole or word.startswith(starts) for word in words)


def kinds_of(cell: str) -> set[str]:
    """What a heading cell may be: time, temperature, humidity; usually one of them or none.

    >>> kinds_of("rel. Luftfeuchte [%]"), kinds_of("Dew point temperature")
    ({'humidity'}, set())
    """
    if len(cell) > 80 or re.search(r"\d{4}|\d:\d", re.sub(r"(GMT|UTC)\S*|S/N.*", "", cell)):
        return set()  # a sentence above the table, or a row of data
    words = words_of(cell)
    found = {kind for kind in _WORDS if _any_word(words, _WORDS[kind]) and not _any_word(words, _NOT[kind])}
    if found >= {"time", "temperature"} and "temps" in words:
        return {"time"} if "heure" not in words else found - {"temperature"}
    return found - {"time"} if len(found) > 1 else found


def heading_score(cells: Sequence[str], named: Sequence[str]) -> int:
    """How much a row looks like the heading: kinds recognised, and columns the caller named."""
    kinds: set[str] = set().union(*(kinds_of(cell) for cell in cells))
    lowered = {cell.strip().lower() for cell in cells}
    return len(kinds) + 3 * sum(name.strip().lower() in lowered for name in named)


def choose(kind: str, heading: Sequence[str], wanted: Any, problems: Problems, *, several: bool = False) -> list[int]:
    """Indices of the columns of one kind: those the caller named, or the one recognised.

    several: allow more than one (a date and a time of day). Adds a sentence and returns [] when it cannot tell.
    """
    listed = ", ".join(repr(cell) for cell in heading)
    if wanted is not None:
        names = [wanted] if isinstance(wanted, str) else list(wanted)
        lowered = [cell.lower() for cell in heading]
        missing = [name for name in names if str(name).strip().lower() not in lowered]
        if missing:
            problems.add(f"{_PARAMETER[kind]} {missing[0]!r} is not in the log; its columns are {listed}.")
            return []
        return [lowered.index(str(name).strip().lower()) for name in names]
    found = [index for index, cell in enumerate(heading) if kind in kinds_of(cell)]
    if not found:
        problems.add(
            f"the log has no {_CALLED[kind]} column among {listed}; rename the column that holds it to "
            f"{_EXAMPLE[kind]}{_in_python(kind)}."
        )
    elif len(found) > 1 and not several:
        names = " and ".join(repr(heading[index]) for index in found)
        problems.add(
            f"{names} could each be the {_CALLED[kind]}; take the wrong one out, or rename it{_in_python(kind)}."
        )
        return []
    return found


def _in_python(kind: str) -> str:
    return f" (from Python: give {_PARAMETER[kind]})"


def unit_in(*texts: str) -> str | None:
    """Temperature unit named in a heading or a units row: "degC", "degF", or None.

    >>> unit_in("Temp (°F)"), unit_in("Temperatur", "[°C]"), unit_in("Temp")
    ('degF', 'degC', None)
    """
    words = {word for text in texts for word in words_of(text)}
    if bool(words & _FAHRENHEIT) == bool(words & _CELSIUS):
        return None
    return "degF" if words & _FAHRENHEIT else "degC"
