"""The studies of the kit, found by key and loaded when they are asked for."""

from __future__ import annotations

from difflib import get_close_matches
from importlib import import_module

from ..errors import InputError
from ..study.study import Study

# Key of a study -> module in this package and the name it has there; in the order of the job.
STUDIES = {
    "moves-and-pulls": "moves_and_pulls:moves_and_pulls",
    "reading-a-board": "reading_a_board:reading_a_board",
    "moisture-from-air": "moisture_from_air:moisture_from_air",
    "moisture-by-month": "moisture_by_month:moisture_by_month",
    "there-and-back": "there_and_back:there_and_back",
    "panel-movement": "panel_movement:panel_movement",
    "your-board": "your_board:your_board",
    "a-week-in-the-shop": "week_in_the_shop:week_in_the_shop",
    "finished-year": "finished_year:finished_year",
    "laying-boards": "laying_boards:laying_boards",
    "crossing-the-grain": "crossing_the_grain:crossing_the_grain",
    "hardware-across-the-grain": "hardware_across_the_grain:hardware_across_the_grain",
    "ways-out": "ways_out:ways_out",
    "setting-out": "setting_out_study:setting_out_study",
}


def find_study(key: str) -> Study:
    """A study by its key.

    >>> find_study("moisture-from-air").key
    'moisture-from-air'
    """
    if key not in STUDIES:
        near = get_close_matches(str(key), STUDIES, 1)
        hint = f" Did you mean {near[0]!r}?" if near else ""
        raise InputError(f"There is no study {key!r}; there are: {', '.join(STUDIES)}.{hint}")
    module, _, name = STUDIES[key].partition(":")
    return getattr(import_module(f".{module}", __name__), name)
