"""Writes synthetic EPW weather files for the tests: a smooth invented year in the published layout."""

from __future__ import annotations

import datetime
from pathlib import Path

import numpy as np

HEADER = """LOCATION,Invented Harbour,-,NOWHERE,made up,000000,45.0,5.0,1.0,20.0
DESIGN CONDITIONS,0
TYPICAL/EXTREME PERIODS,0
GROUND TEMPERATURES,0
HOLIDAYS/DAYLIGHT SAVINGS,{leap},0,0,0
COMMENTS 1,written by the tests
COMMENTS 2,
DATA PERIODS,1,{per_hour},Data,Sunday, 1/ 1,12/31
"""


def synthetic_year(*, leap: bool = False, per_hour: int = 1) -> list[list[str]]:
    """Rows of a made-up year: cold dry winters, warm damp summers, a daily wave."""
    start = datetime.datetime(2024 if leap else 2023, 1, 1)
    rows = []
    for index in range((8784 if leap else 8760) * per_hour):
        when = start + datetime.timedelta(hours=index // per_hour)
        season = -np.cos(2 * np.pi * index / per_hour / 8760)
        daily = np.sin(2 * np.pi * (when.hour - 9) / 24)
        temperature, humidity = 8 + 12 * season + 4 * daily, 70 + 5 * season - 15 * daily
        minute = 60 if per_hour == 1 else 60 // per_hour * (index % per_hour + 1)
        rows.append(
            [
                str(when.year),
                str(when.month),
                str(when.day),
                str(when.hour + 1),
                str(minute),
                "?9?9",
                f"{temperature:.1f}",
                f"{temperature - 5:.1f}",
                f"{humidity:.0f}",
                "101325",
                *["0"] * 25,
            ]
        )
    return rows


def write_epw(path: Path, rows: list[list[str]] | None = None, *, leap: bool = False, per_hour: int = 1) -> Path:
    """Write the file and return its path; ``rows`` replaces the made-up year."""
    rows = synthetic_year(leap=leap, per_hour=per_hour) if rows is None else rows
    header = HEADER.format(leap="Yes" if leap else "No", per_hour=per_hour)
    path.write_text(header + "\n".join(",".join(row) for row in rows) + "\n", encoding="utf-8")
    return path
