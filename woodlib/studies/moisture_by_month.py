"""Study: a year of a house from four typed humidities, and the moisture of its wood month by month."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import numpy as np

from ..air.seasons import year_from_seasons
from ..air.sorption import sorption_percent
from ..moisture.equilibrium import ADSORPTION_TO_DESORPTION
from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Words
from ..study import Answer, Reading, Span, study
from ..words.decided import Decided, larger, pick, reached, smaller
from ..words.say import Said, moisture, say

# Room temperatures of an invented house: heated in winter, warm in summer.
ROOM_C = {"winter": 20.0, "spring": 21.0, "summer": 24.0, "autumn": 21.0}
SEASONS = tuple(ROOM_C)

_AIR = Frame(left=64, top=48, width=640, height=110, x_low=0.5, x_high=12.5, y_low=0, y_high=100)
_WOOD = Frame(left=64, top=216, width=640, height=180, x_low=0.5, x_high=12.5, y_low=0, y_high=20)
_MONTHS = np.arange(1, 13)
_LETTERS = tuple(zip(_MONTHS.tolist(), "JFMAMJJASOND", strict=True))
_WETTED = 2 * ADSORPTION_TO_DESORPTION / (1 + ADSORPTION_TO_DESORPTION)
_DRIED = 2 / (1 + ADSORPTION_TO_DESORPTION)


@lru_cache
def season_shares() -> tuple[np.ndarray, np.ndarray]:
    """How much of each season is in each month, shape (12, 4), and the monthly room temperatures, degC."""
    years = [
        year_from_seasons({name: (ROOM_C[name], 100.0 if name == season else 0.0) for name in SEASONS})
        for season in SEASONS
    ]
    return np.column_stack([year.monthly().rh_percent / 100.0 for year in years]), years[0].monthly().temperature_c


def _span(season: str, start: float) -> Span:
    return Span(season, f"Humidity indoors in {season}", "humidity", 15.0, 85.0, 1.0, start)


@study(
    "moisture-by-month",
    "How moist is the wood of a house in each month, and at what moisture should the piece be built?",
    [_span("winter", 25.0), _span("spring", 42.0), _span("summer", 62.0), _span("autumn", 48.0)],
)
def moisture_by_month(winter: float, spring: float, summer: float, autumn: float) -> Answer:
    """The wood's moisture through a year of typed indoor humidities; the seasons are those of the northern half."""
    typed = (winter, spring, summer, autumn)
    shares, room_c = season_shares()
    months_rh = shares @ np.stack(typed)
    months_wood = sorption_percent(room_c, months_rh)
    # Between two seasons the air never leaves their range, so the ends of the year are among the four seasons.
    rest = [sorption_percent(ROOM_C[name], rh) for name, rh in zip(SEASONS, typed, strict=True)]
    low = smaller(smaller(rest[0], rest[1]), smaller(rest[2], rest[3]))
    high = larger(larger(rest[0], rest[1]), larger(rest[2], rest[3]))
    return Answer(
        _picture(months_rh, months_wood, low, high),
        say(
            "The wood swings from {low} in {dry} to {high} in {damp}.",
            low=moisture(low),
            dry=_season(rest, low, "dry"),
            high=moisture(high),
            damp=_season(rest, high, "damp"),
        ),
        _readings(low, high),
        "Two curves over twelve months: above, the humidity of the room; below, where the wood comes to rest.",
        (
            "Air: each typed season holds for a month (January, April, July, October), with a smooth passage between.",
            "Room temperatures 20, 21, 24 and 21 °C from winter to autumn, of an invented house; a degree more or less "
            "hardly changes the wood.",
            "Wood: Wood Handbook FPL-GTR-190 (2010), equation 4-5, at the means of each month; the band is for wood "
            "that takes up water (lower edge) or gives it off (upper edge), ratio 0.85 from memory.",
            "Thick or well-finished boards lag behind and swing less than this; thin bare ones follow.",
            "Colour of the swing: common practice, no source. Every number is rounded by itself.",
        ),
    )


def _season(rest: list[float], end: Decided, side: str) -> Any:
    """The name of the first season whose moisture is the driest (``side`` "dry") or the dampest."""
    here = [reached(end, value) if side == "dry" else reached(value, end) for value in rest[:3]]
    place: Any = 1.0 - here[2]
    for reaches in (here[1], here[0]):
        place = (1.0 - reaches) * (1.0 + place)
    return pick(place, [0.5, 1.5, 2.5], SEASONS)


def _readings(low: Decided, high: Decided) -> tuple[Reading, ...]:
    swing, middle = high - low, (low + high) * 0.5
    return (
        Reading("Driest", moisture(low), _range(low)),
        Reading("Dampest", moisture(high), _range(high)),
        Reading(
            "Swing over the year",
            moisture(swing),
            pick(
                swing, [3.0, 6.0], ["a small swing", "a usual swing: leave room for it", "a large swing: plan for it"]
            ),
            pick(swing, [3.0, 6.0], ["fine", "watch", "stop"]),
        ),
        Reading(
            "Build at about",
            moisture(middle),
            say("the middle of the year; from there it goes {half} up and down", half=moisture(swing * 0.5)),
        ),
    )


def _range(end: Decided) -> Said:
    return say(
        "{a} if it takes up water to get there, {b} if it dries", a=moisture(end * _WETTED), b=moisture(end * _DRIED)
    )


def _picture(months_rh: np.ndarray, months_wood: np.ndarray, low: Decided, high: Decided) -> Picture:
    wood = _WOOD.points(_MONTHS, months_wood)
    band = np.concatenate(
        [_WOOD.points(_MONTHS, months_wood * _WETTED), _WOOD.points(_MONTHS, months_wood * _DRIED)[::-1]]
    )
    air = _AIR.points(_MONTHS, months_rh)
    gauge, mark = _WOOD.gauge("moisture", "y")
    marks: list[Mark] = [
        mark,
        *_AIR.axes(_LETTERS, [(0, "0"), (50, "50"), (100, "100")], "", "air in the room: relative humidity, %", 14),
        Line(air, "quiet", 2.5),
        *[Circle(x, y, 3.5, "quiet", filled=True) for x, y in air],
        *_WOOD.axes(
            _LETTERS, [(value, str(value)) for value in (0, 5, 10, 15, 20)], "", "wood at rest: moisture, %", 14
        ),
        Area(band, "range"),
        Line(wood, "damp", 2.5),
        *[Circle(x, y, 4.0, "damp", filled=True) for x, y in wood],
    ]
    for end, words, down in ((low, "driest: {mc}", 18), (high, "dampest: {mc}", -8)):
        y = _WOOD.y(end)
        role = "dry" if words.startswith("dri") else "damp"
        marks.append(Line([(_WOOD.left, y), (_WOOD.left + _WOOD.width, y)], role, 1.5, "6 4"))
        marks.append(
            Words(_WOOD.left + _WOOD.width - 4, y + down, say(words, mc=moisture(end)), role, 15, "end", bold=True)
        )
    return Picture("A year of a room and of the wood in it", 720, 430, tuple(marks), gauge)
