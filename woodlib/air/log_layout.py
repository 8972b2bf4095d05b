"""How one way of writing a time is laid out: where its date, clock and half of the day stand.

A text is looked at with every digit written 0, so that one look serves all the rows written alike.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache

DIGITS = str.maketrans("123456789", "000000000")
BLANKS = str.maketrans({"\u00a0": " ", "\u202f": " ", "\u2009": " ", "−": "-"})
LAYOUT_KINDS = ("settled", "open", "dotted", "number")
Span = tuple[int, int]

# Beginnings of the names of months in a dozen languages, without accents.
_MONTHS = (
    "jan ene gen janv tammi sty led",
    "feb fev fevr helmi lut uno",
    "mar mrz mrt mars maalis bre",
    "apr avr abr huhti kwi dub",
    "may mai mei maj mag touko kve",
    "jun juin giu kesa cze",
    "jul juil lug heina lip",
    "aug aout ago elo sie srp",
    "sep set syys wrz zar",
    "oct okt ott out loka paz rij",
    "nov marras lis",
    "dec dez dic des joulu gru pro",
)
_BY_NAME = sorted(
    ((word, number) for number, words in enumerate(_MONTHS, 1) for word in words.split()),
    key=lambda pair: -len(pair[0]),
)
_AM = {"a", "am", "vorm", "vormittags", "πμ", "午前", "上午", "오전", "de", "dop", "fm", "ap", "öö"}
_PM = {"p", "pm", "nachm", "nachmittags", "μμ", "午後", "下午", "오후", "du", "odp", "em", "ip", "ös"}
_HALVES = "|".join(
    sorted((re.escape(word) for word in (_AM | _PM) - {"a", "p", "am", "pm", "πμ", "μμ"}), key=len, reverse=True)
)
_HALF = rf"(?:[ap]\.?\s?m\b\.?|[πμ]\.?\s?μ\.?|[ap]\b|{_HALVES})\.?"
_CLOCK = (
    rf"(?:(?P<before>{_HALF})\s*)?(?P<hour>0{{1,2}})[:.hH时時](?P<minute>00)(?:[:.分](?P<second>00)(?:[.,:]0+)?)?[秒分hH]?"
    rf"(?:\s*(?P<after>{_HALF}))?(?:\s*(?:Z|[A-Z]{{3,4}}))?(?:\s*[+-]00:?(?:00)?)?"
)
_WEEKDAY = r"(?:[^\W\d]{2,10}[,.]?\s+)?"
_MARK = r"\s?[-/.年月]\s?"
_NUMERIC = rf"{_WEEKDAY}(?P<a>0{{1,4}})(?P<mark>{_MARK})(?P<b>0{{1,2}}){_MARK}(?P<c>0{{1,4}})[.日]?"
_DAY_NAME = rf"{_WEEKDAY}(?P<c>0{{1,2}})\.?[\s.-]*(?:de\s)?(?P<name>[^\W\d_]{{3,12}})\.?[\s,.-]*(?:de\s)?(?P<a>0000|00)"
_NAME_DAY = rf"{_WEEKDAY}(?P<name>[^\W\d_]{{3,12}})\.?\s+(?P<c>0{{1,2}})(?:st|nd|rd|th)?[\s,]+(?P<a>0000)"
_COMPACT = r"(?P<a>0000)(?P<b>00)(?P<c>00)"
_BETWEEN = r"(?:\s*[T,_;]\s*|\s+(?:at\s+|um\s+|-\s*)?|-)"
_DATES = [re.compile(rf"{date}(?:{_BETWEEN}{_CLOCK})?", re.IGNORECASE) for date in (_NUMERIC, _DAY_NAME, _NAME_DAY)]
_CLOCK_FIRST = [re.compile(rf"{_CLOCK}[\s,]+{date}", re.IGNORECASE) for date in (_NUMERIC, _DAY_NAME, _NAME_DAY)]
_RUN_TOGETHER = re.compile(rf"{_COMPACT}(?:[T _-]?(?P<hour>00):?(?P<minute>00)(?::?(?P<second>00)(?:[.,]0+)?)?)?Z?")
_NUMBER = re.compile(r"0{5}(?:[.,]0+)?|0{9,10}(?:[.,]0+)?|0{12,13}(?:[.,]0+)?|0{15,16}|0{1,7}(?:[.,]0+)?")
_MONTH_ALONE = [
    re.compile(form, re.IGNORECASE)
    for form in (r"(?P<a>0000)[-/](?P<b>00)", r"(?P<name>[^\W\d_]{3,12})\.?[\s-]+(?P<a>0000)")
]
_CLOCK_ALONE = re.compile(_CLOCK, re.IGNORECASE)


@dataclass(frozen=True)
class Layout:
    """Where the digits stand. ``kind``: settled (year, month, day in that order), open, dotted (open, with full stops)
    or number; ``month`` is 0 where it is written in digits; ``half`` is "am", "pm" or empty."""

    kind: str
    length: int
    date: tuple[Span | None, ...] = (None, None, None)
    clock: tuple[Span | None, ...] = (None, None, None)
    month: int = 0
    half: str = ""


@lru_cache(maxsize=4096)
def layout_of(pattern: str) -> Layout | None:
    """The layout of a text whose digits are all written 0; None when it is no time.

    >>> layout_of("00.00.0000 00:00").kind, layout_of("0000-00-00").kind, layout_of("3 apples")
    ('dotted', 'settled', None)
    """
    if found := _RUN_TOGETHER.fullmatch(pattern):
        return _layout(found, "settled")
    if _NUMBER.fullmatch(pattern):
        return Layout("number", len(pattern))
    for form in (*_DATES, *_CLOCK_FIRST, *_MONTH_ALONE):
        found = form.fullmatch(pattern)
        if found is None:
            continue
        if "name" in form.groupindex:
            month = month_of(found["name"])
            if month:
                return _layout(found, "settled", month)
        elif len(found["a"]) == 4:
            return _layout(found, "settled")
        elif len(found["a"]) < 3 and len(found["c"]) in (2, 4):
            return _layout(found, "dotted" if found["mark"].strip() == "." else "open")
    return None


def is_clock(text: str) -> bool:
    """True for a time of day without a date.

    >>> is_clock("12:30"), is_clock("9.05.00"), is_clock("30.01.24"), is_clock("3:15 p.m.")
    (True, True, False, True)
    """
    found = _CLOCK_ALONE.fullmatch(text.translate(BLANKS).translate(DIGITS))
    if found is None:
        return False
    hour, minute, second = (int(text[slice(*found.span(name))] or 0) for name in ("hour", "minute", "second"))
    return hour <= 24 and minute <= 59 and second <= 59


def month_of(word: str) -> int:
    """Number of a month by its name or the beginning of it in a dozen languages; 0 for another word."""
    plain = unicodedata.normalize("NFKD", word.lower())
    plain = "".join(letter for letter in plain if not unicodedata.combining(letter)).replace("ź", "z")
    return next((number for name, number in _BY_NAME if plain.startswith(name)), 0)


def _layout(found: re.Match[str], kind: str, month: int = 0) -> Layout:
    groups = found.re.groupindex

    def span(name: str) -> Span | None:
        return found.span(name) if name in groups and found[name] else None

    half = next((found[name] for name in ("before", "after") if name in groups and found[name]), "")
    word = re.sub(r"[\s.]", "", half).lower()
    return Layout(
        kind,
        len(found.string),
        tuple(map(span, "abc")),
        tuple(map(span, ("hour", "minute", "second"))),
        month,
        "am" if word in _AM else "pm" if word in _PM else "",
    )
