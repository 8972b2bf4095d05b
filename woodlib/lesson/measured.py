"""A published or measured series beside what the kit says, one for each lesson, with the difference of every point."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from ..air.climates import year_from_climate
from ..air.house_year import house_year
from ..air.rooms import all_kinds, room_air
from ..air.sorption import sorption_percent
from ..air.year import MID_MONTH, MONTH_NAMES, Year
from ..errors import InputError
from ..moisture.drive import steady_air
from ..moisture.equilibrium import emc_percent
from ..moisture.finishes import find_finish
from ..moisture.following import follow
from ..moisture.rates import rate
from ..moisture.stock import Stock
from ..movement.shape import cup_m
from ..movement.wood import wood_of
from ..setting_out.holes import hole_pair, markings
from ..species import find_species
from ..studies.panel_movement import WOODS
from ..tables import number, rows
from ..units.exact import INCH_M
from .series import Series

FIBRE_SATURATION = 30.0
_EIGHT_INCHES, _PITH = 8 * INCH_M, 4 * INCH_M


def held_against(lesson: str) -> Series:
    """The series of a lesson, by the lesson's name without its number. Raises InputError where there is none.

    >>> held_against("reading-a-board").labels[0]
    'white oak'
    """
    if lesson not in SERIES:
        raise InputError(f"There is no series for {lesson!r}; there are: {', '.join(SERIES)}.")
    return SERIES[lesson]()


def _short(name: str) -> str:
    return {"eastern white pine": "white pine", "American beech": "beech", "yellow-poplar": "poplar"}.get(name, name)


def _half_as_far() -> Series:
    woods = [wood_of(name) for name in WOODS]
    return Series(
        "Quartersawn movement as a share of flatsawn",
        "% of it",
        "printed",
        "by the rule of half",
        tuple(map(_short, WOODS)),
        tuple(100.0 * wood.radial_coefficient / wood.tangential_coefficient for wood in woods),
        (50.0,) * len(woods),
        "Wood Handbook, FPL-GTR-190 (2010), chapter 13, Table 13-5",
        "The rule is good enough to choose a board by. It is not good enough to size a gap: take the wood's own number.",
        0,
    )


def _logged() -> dict[str, dict[int, dict[str, str]]]:
    found: dict[str, dict[int, dict[str, str]]] = {}
    for row in rows("measured_houses.csv"):
        found.setdefault(row["house"], {})[int(row["month"])] = row
    return found


def _outdoors(house: str) -> Year:
    # One log lacks two months; outdoors they are those of the house a few kilometres off.
    months = {**_logged()["FI-R4"], **_logged()[house]}
    temperature, humidity = (
        np.array([float(months[month][name]) for month in range(1, 13)])
        for name in ("outdoor_t_c", "outdoor_rh_percent")
    )
    return Year(MID_MONTH, temperature, humidity)


def _room_by_month() -> Series:
    logged = _logged()["FI-R5"]
    told = house_year(_outdoors("FI-R5"), all_kinds()[0]).emc_percent()
    return Series(
        "Where wood rests in one lived-in house, month by month",
        "% MC",
        "from its log",
        "by the kit, from the outdoor air",
        tuple(MONTH_NAMES[month - 1][:3] for month in sorted(logged)),
        tuple(float(logged[month]["room_emc_percent"]) for month in sorted(logged)),
        tuple(float(told[month - 1]) for month in sorted(logged)),
        "public log of a house in Finland (data/README.md)",
        "The usual house was made from five logs, and this is one of them. Your house is another: buy a hygrometer.",
    )


def _two_roads() -> Series:
    points = 8.0
    woods = [wood_of(name) for name in WOODS]
    shrunk = [find_species(name).require("tangential_shrinkage_percent").number for name in WOODS]
    return Series(
        "Flatsawn movement from 6 to 14 % MC, by two printed tables",
        "% of the width",
        "from total shrinkage",
        "by the kit, from its coefficient",
        tuple(map(_short, WOODS)),
        tuple(each * points / FIBRE_SATURATION for each in shrunk),
        tuple(100.0 * wood.tangential_coefficient * points for wood in woods),
        "Wood Handbook, FPL-GTR-190 (2010), Tables 4-3 and 13-5; what is from memory is marked in the catalogue",
        "Two tables of one handbook, so they share their boards. That they agree says that the sum is right, not your board.",
        2,
    )


def _days_to_half() -> Series:
    published = [row for row in rows("published_series.csv") if row["series"] == "days to half"]
    inches = (0.5, 0.75, 1.0, 1.5, 2.0)
    told = []
    for row, thick in zip(published, inches, strict=True):
        stock = Stock.of("red oak", thick * INCH_M)
        drying = follow(stock, steady_air(21.1, 40, days=14 * float(row["value"])), 18.0, step_hours=6)
        part = (drying.mean_percent[:, 1] - 18.0) / (drying.emc_percent[-1] - 18.0)
        told.append(float(np.interp(0.5, part, drying.days)))
    return Series(
        "Days until half the change is done: red oak in room air",
        "days",
        "published",
        "by the kit, middle speed",
        tuple(row["label"] for row in published),
        tuple(float(row["value"]) for row in published),
        tuple(told),
        published[0]["source"],
        "The kit's middle is slow, on the careful side; its range holds the published days. So weigh a board, don't count days.",
    )


def _coats() -> Series:
    varnish = [find_finish("urethane varnish", coats) for coats in (1, 2, 3, 6)]
    air = [rate(f"finish_test_{name}").mid for name in ("temperature_c", "rh_before_percent", "rh_after_percent")]
    start = float(emc_percent(air[0], air[1]))
    thick, gravity = rate("finish_test_thickness_m").mid, rate("finish_test_specific_gravity").mid
    gains = []
    for finish in (find_finish("bare"), *varnish):
        sample = Stock(thick, gravity, first_finish=finish, second_finish=finish)
        damp = follow(sample, steady_air(air[0], air[2], days=14), start, step_hours=3)
        gains.append(np.interp([1, 7, 14], damp.days, damp.mean_percent[:, 1] - start))
    told = [100.0 * (1.0 - gain / gains[0]) for gain in gains[1:]]
    figures = [
        (f"{finish.coats} × {each.days} d", each.excluded_percent) for finish in varnish for each in finish.figures
    ]
    return Series(
        "Moisture kept out by 1, 2, 3 and 6 coats of varnish after 1, 7 and 14 days",
        "% of what bare wood takes up",
        "measured",
        "by the kit",
        tuple(label for label, _ in figures),
        tuple(float(kept) for _, kept in figures),
        tuple(float(value) for row in told for value in row),
        "Wood Handbook, FPL-GTR-190 (2010), Table 16-3: samples from 30 to 90 % RH at 80 °F",
        "Each film was fitted to its own three figures in faster wood than the kit takes for granted. The shape is the test: "
        "every coat loses its hold with the days.",
        0,
    )


def _cups() -> Series:
    points = 4.0
    shrunk = [
        [find_species(name).require(f"{way}_shrinkage_percent").number for way in ("radial", "tangential")]
        for name in WOODS
    ]
    by_total = [
        1000.0 * float(cup_m(_EIGHT_INCHES, _PITH, *(-each * points / FIBRE_SATURATION / 100.0 for each in pair)))
        for pair in shrunk
    ]
    by_kit = [1000.0 * float(cup_m(_EIGHT_INCHES, _PITH, *wood_of(name).axis_strains(12.0, 8.0)[1:])) for name in WOODS]
    return Series(
        "Cup of a board 8 in (203 mm) wide, 4 in (102 mm) from the pith, dried by 4 %",
        "mm",
        "from printed total shrinkage",
        "by the kit",
        tuple(map(_short, WOODS)),
        tuple(by_total),
        tuple(by_kit),
        "Wood Handbook, FPL-GTR-190 (2010), Tables 4-3 and 13-5; the circles are our own derivation",
        "No published cups were at hand, so this holds two printed tables against each other. Beech and oak cup twice as far "
        "as walnut, by both.",
        2,
    )


def _pulled_along_the_radius() -> Series:
    woods = [row for row in rows("tension_directions.csv") if row["kind"] == "hardwood"][:9]
    return Series(
        "Strength across the grain, pulled along the radius over pulled along the rings",
        "times as strong",
        "measured in 1914",
        "by the mean that the kit uses",
        tuple(row["wood"].replace("American ", "") for row in woods),
        tuple(float(row["radial_psi"]) / float(row["tangential_psi"]) for row in woods),
        (_mean_ratio(),) * len(woods),
        "Record, The Mechanical Properties of Wood (1914), Table III; small clear green pieces",
        "The mean is of these and a few more woods, so it must fit on average. What it shows is how far one wood strays.",
        2,
    )


def _mean_ratio() -> float:
    hard = [row for row in rows("tension_directions.csv") if row["kind"] == "hardwood"]
    return float(np.mean([float(row["radial_psi"]) / float(row["tangential_psi"]) for row in hard]))


def _sheets() -> Series:
    published = [row for row in rows("published_series.csv") if row["series"] == "sheet goods"]
    points = float(emc_percent(21.0, 80.0) - emc_percent(21.0, 50.0))
    told = 100.0 * number("allowances", "sheet_coefficient").middle * points
    return Series(
        "Growth of sheets from 50 to 80 % RH",
        "% of the length",
        "printed",
        "by the kit, for any sheet",
        tuple(row["label"].split(",")[0] for row in published),
        tuple(float(row["value"]) for row in published),
        (told,) * len(published),
        "figures of the trade, from memory",
        f"Flatsawn oak grows by {100.0 * wood_of('white oak').tangential_coefficient * points:.1f} % in the same air. The kit's "
        "one number was taken from fibreboard, so it is careful for plywood.",
        2,
    )


def _places() -> Series:
    published = [row for row in rows("published_series.csv") if row["series"] == "indoor average"]
    kind = all_kinds()[0]
    told = []
    for row in published:
        outdoors = year_from_climate(row["label"])
        told.append(
            float(np.mean(sorption_percent(*room_air(outdoors.temperature_c, outdoors.vapour_pressure_pa, kind))))
        )
    return Series(
        "Average moisture of wood indoors, by place",
        "% MC",
        "recommended",
        "by the kit, usual house",
        tuple(row["label"].removesuffix(" Central Park") for row in published),
        tuple(float(row["value"]) for row in published),
        tuple(told),
        published[0]["source"],
        "A drawer fitted to an average sticks in July all the same: the gap is for the swing, not for the average.",
    )


def _centres() -> Series:
    published = [row for row in rows("published_series.csv") if row["series"] == "pull centres"]
    marked = []
    for row in published:
        pair = markings(hole_pair("20 in", row["label"], name="pull"), "1/16 in")[1]
        marked.append(float(row["value"]) + 1000.0 * float(pair.centres_error_m) * _sign(float(row["value"])))
    return Series(
        "Metric pulls marked both ways from the middle, to sixteenths of an inch",
        "mm",
        "on the packet",
        "as marked",
        tuple(row["label"] for row in published),
        tuple(float(row["value"]) for row in published),
        tuple(marked),
        "usual centres: common practice, no source; the rest is arithmetic",
        "The points lie on each other; the bars below do not. A 4 mm screw in a 5 mm hole forgives 1 mm, all errors together.",
        2,
    )


def _sign(centres_mm: float) -> float:
    half = 0.5 * centres_mm
    sixteenth = 1000.0 * INCH_M / 16
    return 1.0 if round(half / sixteenth) * sixteenth >= half else -1.0


def _five_rooms() -> Series:
    swings, told = [], []
    for house, logged in _logged().items():
        at = np.array(sorted(logged)) - 1
        swings.append(float(np.ptp([float(row["room_emc_percent"]) for row in logged.values()])))
        told.append(float(np.ptp(house_year(_outdoors(house), all_kinds()[0]).emc_percent()[at])))
    return Series(
        "How far the moisture of wood swings in five rooms over a year",
        "% MC",
        "from their logs",
        "by the kit, usual house",
        tuple(name.replace("-room", "") for name in _logged()),
        tuple(swings),
        tuple(told),
        "public logs of five rooms (data/README.md)",
        "Four readings of a hygrometer, as in this brief, do better than any usual house.",
    )


SERIES: dict[str, Callable[[], Series]] = {
    "reading-a-board": _half_as_far,
    "the-air-of-a-house": _room_by_month,
    "how-far-it-moves": _two_roads,
    "is-it-ready": _days_to_half,
    "what-a-finish-buys": _coats,
    "laying-boards": _cups,
    "crossing-the-grain": _pulled_along_the_radius,
    "ways-out-and-sheet-goods": _sheets,
    "drawers-doors-backs-and-metal": _places,
    "setting-out": _centres,
    "the-commission": _five_rooms,
}
"""Lesson -> its series."""
