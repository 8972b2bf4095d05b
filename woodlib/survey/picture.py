"""The picture of a survey: for one width, in which places a wood can still be built in each way."""

from __future__ import annotations

from itertools import takewhile

from ..picture.scene import Area, Mark, Picture, Words, box
from ..units import both
from ..ways.registry import way_of
from .part import INCH_M, TROUBLE, VERDICTS

_TONES = dict(zip(VERDICTS, ("fine", "watch", "stop"), strict=True))
_CELL, _LEFT, _TOP, _BETWEEN, _BELOW = 26.0, 150.0, 190.0, 26.0, 122.0


def map_of(table: list[dict], width_m: float) -> tuple[Picture, str]:
    """Picture and its words: places down (the calmest house first), woods across (the calmest first), a field for each
    way that is not sensible everywhere.

    ``width_m``: the nearest width of the table is in colour, by the share of the sampled boards and houses in trouble; the
    number in a cell is the widest that is sensible, in inches, + where no wider one was asked about.
    """
    width = min({row["width_m"] for row in table}, key=lambda each: abs(each - width_m))
    shown = [row for row in table if row["width_m"] == width]
    cells = {(row["way"], row["place"], row["wood"]): row["verdict"] for row in shown}
    every = list(dict.fromkeys(row["way"] for row in shown))
    ways = [key for key in every if any(cells[each] != VERDICTS[0] for each in cells if each[0] == key)]
    places, woods = _by(shown, "place", "swing_half_percent"), _by(shown, "wood", "moves_half_m")
    widest = _widest(table)
    across = _CELL * len(woods) + _BETWEEN
    foot = _TOP + _CELL * len(places)
    title = f"Where a {shown[0]['cut']} panel {both(width)} wide stops being sensible"
    marks: list[Mark] = [Words(8, 24, title, size=17, anchor="start", bold=True)]
    for y, place in enumerate(places):
        marks.append(Words(_LEFT - 8, _TOP + _CELL * (y + 0.7), place, size=12, anchor="end"))
    for column, key in enumerate(ways):
        left = _LEFT + across * column
        marks.append(Words(left, 48, way_of(key).short, size=13, anchor="start", bold=True))
        for x, wood in enumerate(woods):
            marks.append(
                Words(left + _CELL * (x + 0.7), _TOP - 6, wood.partition(",")[0], size=12, anchor="start", turn=90)
            )
            for y, place in enumerate(places):
                at, verdict = (key, place, wood), cells[key, place, wood]
                marks.append(Area(box(left + _CELL * x, _TOP + _CELL * y, _CELL - 1, _CELL - 1), _TONES[verdict]))
                if widest[at]:
                    marks.append(Area(box(left + _CELL * x + 1, _TOP + _CELL * y + 5, _CELL - 3, _CELL - 11), "paper"))
                    marks.append(
                        Words(left + _CELL * (x + 0.5), _TOP + _CELL * (y + 0.66), widest[at], size=10, bold=True)
                    )
    named = (
        f"at most {TROUBLE[0]:.0%} of the sampled boards and houses in trouble: sensible",
        f"at most {TROUBLE[1]:.0%}: near its limit",
        "more: not sensible",
    )
    for row, (words, tone) in enumerate(zip(named, _TONES.values(), strict=True)):
        low = foot + 14 + 20 * row
        marks += [Area(box(8, low, 12, 12), tone), Words(26, low + 11, words, size=12, anchor="start")]
    number = "Numbers: the widest that is sensible, in inches; + where no wider one was asked about."
    marks.append(Words(8, foot + 90, number, size=12, anchor="start"))
    marks.append(Words(8, _TOP - 6, "calmest house first", size=11, role="quiet", anchor="start"))
    fine = [way_of(key).short for key in every if key not in ways]
    if fine:
        marks.append(Words(8, foot + 110, f"Sensible everywhere: {', '.join(fine)}.", size=12, anchor="start"))
    sheet = Picture(title, max(_LEFT + across * max(len(ways), 1), 660.0), foot + _BELOW, tuple(marks))
    return sheet, f"{title}. {_in_words(cells, every, places, woods)}"


def _widest(table: list[dict]) -> dict[tuple[str, str, str], str]:
    """The widest width up to which a way stays sensible in a place and a wood, in whole inches; + where it is the last."""
    verdicts: dict[tuple[str, str, str], list[tuple[float, str]]] = {}
    for row in table:
        verdicts.setdefault((row["way"], row["place"], row["wood"]), []).append((row["width_m"], row["verdict"]))
    found = {}
    for cell, rows in verdicts.items():
        good = list(takewhile(lambda row: row[1] == VERDICTS[0], sorted(rows)))
        inches = f"{int(good[-1][0] / INCH_M + 1e-6)}" if good else ""
        found[cell] = inches + "+" * (len(good) == len(rows) > 0)
    return found


def _by(rows: list[dict], name: str, number: str) -> list[str]:
    """The names in the order of the mean of a number."""
    found: dict[str, list[float]] = {}
    for row in rows:
        found.setdefault(row[name], []).append(row[number])
    return sorted(found, key=lambda each: sum(found[each]) / len(found[each]))


def _in_words(cells: dict, ways: list[str], places: list[str], woods: list[str]) -> str:
    """How many of the places and woods each way serves, and where it begins to fail."""
    told = []
    for key in ways:
        bad = [place for place in places if any(cells[key, place, wood] == VERDICTS[2] for wood in woods)]
        good = sum(cells[key, place, wood] == VERDICTS[0] for place in places for wood in woods)
        where = f"not sensible for some wood in {', '.join(bad)}" if bad else "past it nowhere"
        told.append(f"{way_of(key).title}: sensible in {good} of {len(places) * len(woods)} cells, {where}.")
    return " ".join(told)
