"""Outdoor air of the places the kit carries, as monthly means of typical years."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache

import numpy as np

from ..errors import InputError
from ..tables import rows
from .year import MID_MONTH, Year


@dataclass(frozen=True)
class Climate:
    """One place: twelve monthly means of outdoor air, and where they come from.

    temperature_c, rh_percent, vapour_pressure_pa: 12 values each, January first; status and source as in the data
    table; year_type as the weather file names it; note: a caution, or empty.
    """

    place: str
    country: str
    also_called: str
    latitude_deg: float
    longitude_deg: float
    year_type: str
    temperature_c: tuple[float, ...]
    rh_percent: tuple[float, ...]
    vapour_pressure_pa: tuple[float, ...]
    status: str
    source: str
    note: str


@cache
def all_climates() -> tuple[Climate, ...]:
    """Every place the kit carries, by name.

    >>> len(all_climates())
    34

    These are typical years picked from long records, not normals, and they are outdoor air: see
    :func:`woodlib.air.indoors.indoors`. Mean vapour pressure is the mean of the hours (over water): in dry places up
    to 15 % below what mean temperature and mean humidity give, in months of cold spells up to 27 % above.
    """
    of_place: dict[str, list[dict[str, str]]] = {}
    for row in rows("climates.csv"):
        of_place.setdefault(row["place"], []).append(row)
    return tuple(map(_climate, of_place.values()))


def _climate(rows: list[dict[str, str]]) -> Climate:
    rows = sorted(rows, key=lambda row: int(row["month"]))
    first = rows[0]
    columns = [
        tuple(float(row[name]) for row in rows) for name in ("temperature_c", "rh_percent", "vapour_pressure_pa")
    ]
    return Climate(
        first["place"],
        first["country"],
        first["also_called"],
        float(first["latitude_deg"]),
        float(first["longitude_deg"]),
        first["year_type"],
        columns[0],
        columns[1],
        columns[2],
        first["status"],
        first["source"],
        first["note"],
    )


def find_climate(place: str) -> Climate:
    """Look a place up: capitals, accents and word order do not matter, and part of a name is enough if it is unique.

    Raises InputError with suggestions when the place is unknown or several places fit.

    >>> find_climate("zürich").place
    'Zurich'
    >>> find_climate("central park").place
    'New York Central Park'
    """
    if not isinstance(place, str) or not _key(place):
        raise InputError(f'place is {place!r}; write the name of a place, for example "Chicago".')
    wanted = _key(place)
    for fits in (_exact, _contains):
        found = [climate for climate in all_climates() if fits(wanted, climate)]
        if len(found) == 1:
            return found[0]
        if found:
            raise InputError(f"place {place!r} fits {len(found)} places: {_listed(found)}; write one of them.")
    raise InputError(_unknown(place, wanted))


def _key(text: str) -> str:
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    return " ".join("".join(c if c.isalnum() else " " for c in plain).split())


def _exact(wanted: str, climate: Climate) -> bool:
    names = (climate.place, climate.also_called)
    full = [f"{name} {climate.country}" for name in names]
    return wanted in {_key(name) for name in (*names, *full)}


def _contains(wanted: str, climate: Climate) -> bool:
    words = _key(f"{climate.place} {climate.also_called} {climate.country}").split()
    return all(any(word.startswith(part) for word in words) for part in wanted.split())


def _listed(climates: list[Climate]) -> str:
    return ", ".join(climate.place for climate in climates[:12]) + (" and more" if len(climates) > 12 else "")


def _unknown(place: str, wanted: str) -> str:
    by_key = {
        _key(name): climate.place for climate in all_climates() for name in (climate.place, climate.also_called) if name
    }
    close = list(dict.fromkeys(by_key[key] for key in get_close_matches(wanted, by_key, 3, 0.6)))
    if close:
        return f"place {place!r} is not carried; did you mean {' or '.join(close)}?"
    places = ", ".join(climate.place for climate in all_climates())
    return f"place {place!r} is not carried; write one of {places}, or give a weather file (EPW) of a place near by."


def year_from_climate(place: str) -> Year:
    """Outdoor year of a carried place: 12 monthly means.

    place: see :func:`find_climate`. Returns a :class:`Year` that keeps the mean vapour pressure and whose remarks
    name the source. Raises InputError.

    >>> year = year_from_climate("Chicago")
    >>> year.dampest().name, round(year.driest().emc_percent, 1)
    ('December', 11.4)
    """
    climate = find_climate(place)
    remarks = [f"{climate.place}: {climate.source} ({climate.year_type}; {climate.status})."]
    if climate.note:
        remarks.append(f"{climate.place}: {climate.note}.")
    return Year(
        MID_MONTH,
        np.array(climate.temperature_c),
        np.array(climate.rh_percent),
        f"{climate.place}, {climate.country}, outdoors",
        tuple(remarks),
        np.array(climate.vapour_pressure_pa),
    )
