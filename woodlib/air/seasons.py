"""A year of air from two or four typed seasons."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import get_close_matches
from typing import Any

import numpy as np

from ..door import read_values
from ..errors import Problems
from .checks import RH_PERCENT
from .year import AIR_TEMPERATURE_C, DAYS, MONTH_LENGTHS, MONTH_NAMES, MONTH_STARTS, Year

_SEASON_MONTH = {"winter": 1, "spring": 4, "summer": 7, "autumn": 10, "fall": 10}
_HEMISPHERES = {"north": 0, "northern": 0, "south": 6, "southern": 6}


def year_from_seasons(seasons: Mapping[str, Any], *, hemisphere: str = "north", label: str = "typed seasons") -> Year:
    """A year of 365 days from two or four seasons, each a temperature and a relative humidity.

    seasons: season or month name -> (temperature, relative humidity) or {"temperature": .., "rh": ..}; numbers
    are degC and %, text may carry a unit ("70 degF"). hemisphere: "north" or "south" (winter is July there).
    Returns a :class:`Year`, one reading at each midday. Raises InputError with every problem found.

    >>> year = year_from_seasons({"winter": ("70 degF", 25), "summer": ("75 degF", 60)})
    >>> float(year.rh_percent.min()), float(year.rh_percent.max())
    (25.0, 60.0)
    >>> year_from_seasons({"February": (27, 55), "August": (28, 80)}).dampest().name
    'August'

    A season's air holds through one whole month (winter January, spring April, summer July, autumn October, six
    months later in the south; or the month named), so its monthly mean is what was typed. Between those months
    temperature and humidity follow half a cosine wave: smooth, never beyond the two seasons they join.
    """
    problems = Problems()
    shift = _HEMISPHERES.get(str(hemisphere).strip().lower())
    if shift is None:
        problems.add(f'hemisphere is {hemisphere!r}; write "north" or "south".')
    typed: dict[int, tuple[float, float]] = {}
    for name, value in seasons.items():
        _read_season(str(name), value, shift or 0, typed, problems)
    if len(seasons) not in (2, 4):
        listed = f" ({', '.join(map(str, seasons))})" if seasons else ""
        problems.add(
            f"{len(seasons)} season{' was' if len(seasons) == 1 else 's were'} given{listed}; give two, for example winter and summer, or all four."
        )
    problems.raise_if_any()
    months = np.array(sorted(typed))
    return _join(months, np.array([typed[month] for month in months.tolist()]), label)


def _read_season(name: str, value: Any, shift: int, typed: dict[int, tuple[float, float]], problems: Problems) -> None:
    month = _month_of(name, shift)
    if month is None:
        known = [*_SEASON_MONTH, *(m.lower() for m in MONTH_NAMES)]
        close = get_close_matches(name.lower(), known, 1)
        hint = f"; did you mean {close[0]}?" if close else "."
        problems.add(f"season {name!r} is not known: write winter, spring, summer, autumn or the name of a month{hint}")
        return
    if month in typed:
        problems.add(f"season {name!r} falls in {MONTH_NAMES[month - 1]}, which is given already; name another month.")
        return
    pair = _pair(value)
    if pair is None:
        problems.add(
            f"{name} is {value!r}; write its temperature and relative humidity, for example {name} = (20, 35)."
        )
        return
    temperature = read_values(pair[0], AIR_TEMPERATURE_C, name=f"{name} temperature", problems=problems)
    humidity = read_values(pair[1], RH_PERCENT, name=f"{name} relative humidity", problems=problems)
    if np.ndim(temperature) or np.ndim(humidity):
        problems.add(f"{name} holds a list; write one temperature and one relative humidity.")
        return
    typed[month] = (float(temperature), float(humidity))


def _month_of(name: str, shift: int) -> int | None:
    """Month number of a season (moved by half a year in the south) or of a month's name."""
    key = name.strip().lower()
    if key in _SEASON_MONTH:
        return (_SEASON_MONTH[key] - 1 + shift) % 12 + 1
    matches = [number for number, month in enumerate(MONTH_NAMES, 1) if len(key) >= 3 and month.lower().startswith(key)]
    return matches[0] if len(matches) == 1 else None


def _pair(value: Any) -> tuple[Any, Any] | None:
    if isinstance(value, Mapping):
        return (value["temperature"], value["rh"]) if set(value) == {"temperature", "rh"} else None
    if isinstance(value, list | tuple) and len(value) == 2:
        return value[0], value[1]
    return None


def _join(months: np.ndarray, values: np.ndarray, label: str) -> Year:
    """Hold each season through its month and join neighbours by half a cosine wave."""
    day = np.arange(365) + 0.5
    start, length = MONTH_STARTS[months - 1], MONTH_LENGTHS[months - 1]
    season = (np.searchsorted(start, day, side="right") - 1) % months.size
    following = (season + 1) % months.size
    since = np.mod(day - start[season], DAYS) - length[season]
    span = np.mod(start[following] - start[season], DAYS) - length[season]
    share = np.clip(since / np.maximum(span, 1.0), 0.0, 1.0)  # 0 through the season's own month
    weight = (0.5 - 0.5 * np.cos(np.pi * share))[:, None]
    joined = values[season] + weight * (values[following] - values[season])
    return Year(day, joined[:, 0], joined[:, 1], label)
