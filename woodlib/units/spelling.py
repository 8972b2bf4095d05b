"""How numbers and units are spelt: typographic marks made plain, fractions read exactly, units named.

Nothing here is evaluated as an expression: a text either has one of the written forms below or it is refused.
"""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

LONGEST_TEXT = 80
"""More characters than any length needs; a longer text is refused before it is looked at."""

# kind -> (what it is called in a sentence, spellings to show when something else was given)
KINDS = {
    "length": ("a length", '1-1/2 in, 1 1/2", 7/8 in, 1\' 6-3/8", 38 mm or 3.8 cm'),
    "temperature": ("a temperature", "68 degF or 20 degC"),
    "share": ("a percentage", "45 % or 45 percent"),
    "density": ("a density", "680 kg/m3, 42 lb/ft3, 0.68 g/cm3 or 2 g/m3"),
    "stress": ("a stress", "5 MPa or 725 psi"),
    "angle": ("an angle", "30 deg"),
    "time": ("a time", "14 days or 2 weeks"),
    "mass": ("a mass", "4 kg or 9 lb"),
    "force": ("a force", "200 N or 45 lbf"),
}

# name in the unit registry -> (kind, spellings in lower case)
_SPELLINGS = {
    "inch": ("length", ("in", "inch", "inches", '"')),
    "foot": ("length", ("ft", "foot", "feet", "'")),
    "yard": ("length", ("yd", "yard", "yards")),
    "millimeter": ("length", ("mm", "millimetre", "millimetres", "millimeter", "millimeters")),
    "centimeter": ("length", ("cm", "centimetre", "centimetres", "centimeter", "centimeters")),
    "meter": ("length", ("m", "metre", "metres", "meter", "meters")),
    "micrometer": ("length", ("um", "\u03bcm", "micron", "microns", "micrometre", "micrometer")),
    "degree_Fahrenheit": ("temperature", ("degf", "deg f", "\u00b0f", "\u00b0 f", "f", "fahrenheit")),
    "degree_Celsius": ("temperature", ("degc", "deg c", "\u00b0c", "\u00b0 c", "c", "celsius")),
    "kelvin": ("temperature", ("k", "kelvin")),
    "percent": ("share", ("%", "percent", "per cent", "pct", "% rh", "%rh", "percent rh", "% mc", "%mc", "percent mc")),
    "kilogram / meter ** 3": ("density", ("kg/m3", "kg/m^3", "kg/m**3")),
    "gram / centimeter ** 3": ("density", ("g/cm3", "g/cm^3", "g/cc")),
    "gram / meter ** 3": ("density", ("g/m3", "g/m^3", "g/m**3")),
    "pound / foot ** 3": ("density", ("lb/ft3", "lb/ft^3", "lbs/ft3", "pcf")),
    "pascal": ("stress", ("pa", "n/m2", "n/m^2")),
    "kilopascal": ("stress", ("kpa",)),
    "megapascal": ("stress", ("mpa", "n/mm2", "n/mm^2")),
    "gigapascal": ("stress", ("gpa",)),
    "psi": ("stress", ("psi", "lbf/in2", "lbf/in^2")),
    "degree": ("angle", ("deg", "degree", "degrees", "\u00b0")),
    "radian": ("angle", ("rad", "radian", "radians")),
    "hour": ("time", ("h", "hr", "hour", "hours")),
    "day": ("time", ("d", "day", "days")),
    "week": ("time", ("week", "weeks")),
    "year": ("time", ("year", "years")),
    "second": ("time", ("s", "sec", "second", "seconds")),
    "kilogram": ("mass", ("kg", "kilogram", "kilograms", "kilo", "kilos")),
    "gram": ("mass", ("g", "gram", "grams")),
    "pound": ("mass", ("lb", "lbs", "pound", "pounds")),
    "ounce": ("mass", ("oz", "ounce", "ounces")),
    "newton": ("force", ("n", "newton", "newtons")),
    "pound_force": ("force", ("lbf",)),
}

UNIT_OF_SPELLING = {spelling: unit for unit, (_, spellings) in _SPELLINGS.items() for spelling in spellings}
KIND_OF_UNIT = {unit: kind for unit, (kind, _) in _SPELLINGS.items()}

# What a percentage is a percentage of, where the writer says so
SHARES = {"rh": "a relative humidity", "mc": "a moisture content"}

# The inch is 25.4 mm exactly by definition (international yard and pound agreement, 1959).
METRES_PER_UNIT = {
    "inch": Fraction(254, 10_000),
    "foot": Fraction(3048, 10_000),
    "yard": Fraction(9144, 10_000),
    "millimeter": Fraction(1, 1000),
    "centimeter": Fraction(1, 100),
    "meter": Fraction(1),
    "micrometer": Fraction(1, 1_000_000),
}

# Unit of temperature -> degrees Celsius per step, and where its scale stands at 0 degrees Celsius
CELSIUS_OF = {
    "degree_Celsius": (Fraction(1), Fraction(0)),
    "degree_Fahrenheit": (Fraction(5, 9), Fraction(32)),
    "kelvin": (Fraction(1), Fraction(27315, 100)),
}

PLAIN_MARKS = {
    **dict.fromkeys("\u2033\u201c\u201d\u201e\u201f\u02ba\u3003", '"'),
    **dict.fromkeys("\u2032\u2018\u2019\u201a\u201b\u02b9\u00b4\u0060", "'"),
    **dict.fromkeys("\u2010\u2011\u2012\u2013\u2212\ufe63", "-"),
    **dict.fromkeys("\u2044\u2215", "/"),
    **dict.fromkeys("\u00ba\u02da", "\u00b0"),
}
_SMALL_DIGITS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789")
_SMALL_FRACTION = re.compile("([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[/\u2044\u2215]([₀₁₂₃₄₅₆₇₈₉]+)")

_DECIMAL = r"(?:[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)(?:e[+-]?[0-9]{1,2})?"
_FRACTION = r"[0-9]+\s*/\s*[0-9]+"
NUMBER = rf"(?:[0-9]+(?:-|\s+){_FRACTION}|{_FRACTION}|{_DECIMAL})"
AMBIGUOUS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")


def plain(text: str) -> str:
    """The text in lower case with typographic marks, spaces and fractions replaced by keyboard characters.

    >>> plain("1½″"), plain("1’ 6–⅜”"), plain("1³⁄₁₆ in")
    ('1 1/2"', '1\\' 6-3/8"', '1 3/16 in')
    """
    text = _SMALL_FRACTION.sub(lambda found: f" {found[1]}/{found[2]}".translate(_SMALL_DIGITS), text)
    text = "".join(_one_plain(character) for character in text)
    text = unicodedata.normalize("NFKC", text).replace("\u2044", "/").lower()
    return re.sub(r"\s+", " ", re.sub(r"-\s+(?=[0-9]+/)", "-", text)).replace("''", '"').strip()


def _one_plain(character: str) -> str:
    if unicodedata.decomposition(character).startswith("<fraction>"):
        return " " + unicodedata.normalize("NFKC", character).replace("\u2044", "/")
    return PLAIN_MARKS.get(character, character)


def exact_number(text: str) -> Fraction:
    """The exact value of a whole, decimal, fractional or mixed number that is already in plain characters.

    Raises ``ValueError`` for anything else; its text is the reason, to be put into a sentence by the caller.

    >>> exact_number("1-1/2"), exact_number("3,8"), exact_number("0.25")
    (Fraction(3, 2), Fraction(19, 5), Fraction(1, 4))
    """
    if not re.fullmatch(NUMBER, text):
        raise ValueError("is not a number")
    if "/" not in text:
        if AMBIGUOUS.fullmatch(text):
            raise ValueError(f"can be read two ways: write {text.replace(',', '')} or {text.replace(',', '.')}")
        return Fraction(text.replace(",", "."))
    found = re.fullmatch(r"(?:([0-9]+)[-\s]\s*)?([0-9]+)\s*/\s*([0-9]+)", text)
    if not found:
        raise ValueError("is not a number")
    whole, numerator, denominator = found.groups()
    if int(denominator) == 0:
        raise ValueError("divides by zero")
    return int(whole or 0) + Fraction(int(numerator), int(denominator))


def shown(value: object) -> str:
    """A given value as it may stand in a sentence: on one line, quoted if text, cut if long.

    >>> shown("12\\nfurlongs"), shown("x" * 200), shown(3.5)
    ("'12\\\\nfurlongs'", "'xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx...'", '3.5')
    """
    if isinstance(value, str):
        return repr(value if len(value) <= 40 else value[:40] + "...")
    try:
        text = " ".join(str(value).split())
    except ValueError:  # Python refuses to write out integers of thousands of digits
        return "a number of thousands of digits"
    return text if len(text) <= 60 else text[:60] + "..."
