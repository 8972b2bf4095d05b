"""How hard a text is to read, as a school grade.

Source: J. P. Kincaid, R. P. Fishburne, R. L. Rogers, B. S. Chissom, "Derivation of new readability formulas for Navy enlisted
personnel", Research Branch Report 8-75 (1975); the formula is from memory. Syllables are counted by groups of vowels.
"""

from __future__ import annotations

import re

_CODE = re.compile(r"```.*?```|`[^`]*`|\$[^$]*\$|<[^>]+>", re.DOTALL)
_LINK = re.compile(r"!?\[([^\]]*)\]\([^)]*\)")
_WORD = re.compile(r"[A-Za-z]+(?:['\u2019-][A-Za-z]+)*")


def prose(markdown: str) -> str:
    """The running text: no headings, tables, code or addresses; numbers, units and sources are not read as words."""
    lines = []
    for line in _LINK.sub(r"\1", _CODE.sub(" ", markdown)).splitlines():
        text = re.sub(r"^\s*(?:[-*]|\d+\.)\s+", "", line)
        if re.match(r"\s*(#|\||>?\s*$)", line):
            lines.append("")
        else:
            lines.append(("\n" if text != line else "") + text)
    return re.sub(r"[*_]", "", "\n".join(lines))


def sentences(text: str) -> list[list[str]]:
    """Its sentences as words; a paragraph, a step of a list or a row ends one too."""
    parts = re.split(r"(?<=[.!?])[\s\u201d\"']+|\n\s*\n", text)
    return [words for part in parts if (words := _WORD.findall(part))]


def syllables(word: str) -> int:
    """How many syllables a word has, near enough.

    >>> [syllables(word) for word in ("wood", "moisture", "table", "humidity", "moves", "glued", "painted", "are")]
    [1, 2, 2, 4, 1, 1, 2, 1]
    """
    plain = word.lower().replace("\u2019", "'").split("'")[0].replace("-", "")
    groups = len(re.findall(r"[aeiouy]+", plain))
    silent = r"(?<![^aeiouy]l)e$|(?<![td])ed$|(?<![sxzcg])(?<!sh|ch)(?<![^aeiouy]l)es$"
    groups -= groups > 1 and bool(re.search(silent, plain)) and not re.search(r"[aeiouy]{2}$|[aeiou]e[ds]$", plain)
    return max(1, groups)


def grade(text: str) -> float:
    """The grade of a text: 0.39 words per sentence + 11.8 syllables per word - 15.59."""
    found = sentences(text)
    words = [word for sentence in found for word in sentence]
    return 0.39 * len(words) / len(found) + 11.8 * sum(map(syllables, words)) / len(words) - 15.59
