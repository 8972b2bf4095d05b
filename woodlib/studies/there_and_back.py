"""Study: the air of a room goes from dry to damp and back. Does the wood follow all the way?

Wood that wets rests drier than wood that dries in the same air. So a year rides a loop between the two branches, flatter
than either, and the wood swings less than the curve of the table says (:mod:`woodlib.moisture.hysteresis`).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from ..air.sorption import sorption_percent
from ..moisture.equilibrium import ADSORPTION_TO_DESORPTION
from ..moisture.hysteresis import SHARE, loop
from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Words, box
from ..species import find_species
from ..study import Answer, Choice, Reading, Span, study
from ..units.exact import INCH_M
from ..words.decided import Decided, in_sight
from ..words.say import fine_length, humidity, length, moisture, percent, say

ROOM_C = 20.0
PANEL_M = 20 * INCH_M
PASTS = {
    "worn in": "many years in such a room",
    "dried": "never dried further: on the upper branch",
    "wetted": "never wetter: on the lower branch",
}
_CHART = Frame(left=44, top=40, width=440, height=320, x_low=15, x_high=90, y_low=3, y_high=20)
_BARS = Frame(left=516, top=40, width=200, height=320, x_low=0, x_high=2, y_low=3, y_high=20)
_RH = np.linspace(15.0, 86.0, 41)
_WAY = np.linspace(0.0, 1.0, 25)


@study(
    "there-and-back",
    "The air of a room goes from dry to damp and back. Does the wood follow all the way?",
    [
        Span("dry", "Humidity in the driest month", "humidity", 20.0, 50.0, 1.0, 35.0),
        Span("damp", "Humidity in the dampest month", "humidity", 55.0, 85.0, 1.0, 65.0),
        Choice("past", "What the wood has behind it", PASTS, "worn in"),
    ],
)
def there_and_back(dry: float, damp: float, past: str) -> Answer:
    """The loop of a yearly swing between the two branches, beside the swing by the table's curve."""
    air = dry + (damp - dry) * _WAY
    course = sorption_percent(ROOM_C, air)
    table = sorption_percent(ROOM_C, dry), sorption_percent(ROOM_C, damp)
    wetting, drying = loop(*table, course, past)
    printed = Printed(in_sight(table[0]), in_sight(table[1]), in_sight(course[len(_WAY) // 2]), past)
    return Answer(
        _picture(air, table, wetting, drying, printed),
        say(
            "The wood swings by {loop}, not by the {table} of the curve: between wetting and drying it follows part of the way.",
            loop=moisture(printed.swing(SHARE[1])),
            table=moisture(table[1] - table[0]),
        ),
        _readings(0.5 * (dry + damp), printed),
        say(
            "Moisture of wood at rest against the humidity of the air. A band between two branches, the lower for wood that "
            "takes up water, the upper for wood that gives it off, and the curve of the table in its middle. Between {dry} "
            "and {damp} a narrow loop, flatter than the curve: up by its lower side from {low}, down by its upper side from {high}. Beside it two "
            "bars: the swing by the curve, and the smaller swing of the loop.",
            dry=humidity(dry),
            damp=humidity(damp),
            low=moisture(printed.ends(SHARE[1])[0]),
            high=moisture(printed.ends(SHARE[1])[1]),
        ),
        _FINE_PRINT,
    )


@dataclass(frozen=True)
class Printed:
    """What is printed of a loop: the table's moistures at its ends and halfway, %, kept in sight, and the past."""

    low: Decided
    high: Decided
    middle: Decided
    past: str

    def ends(self, share: float) -> tuple[Any, Any]:
        """Where the loop turns."""
        return tuple(loop(self.low, self.high, end, self.past, share)[0] for end in (self.low, self.high))

    def swing(self, share: float) -> Any:
        """From one turn to the other."""
        low, high = self.ends(share)
        return high - low


def _readings(halfway_rh: Any, printed: Printed) -> tuple[Reading, ...]:
    least, swing, most = map(printed.swing, SHARE)
    table, move = printed.high - printed.low, PANEL_M * _oak_per_percent()
    up, down = loop(printed.low, printed.high, printed.middle, printed.past)
    return (
        Reading(
            "By the curve of the table",
            moisture(table),
            say("from {low} to {high}, there and back alike", low=moisture(printed.low), high=moisture(printed.high)),
        ),
        Reading(
            "By its loop",
            moisture(swing),
            say("could be {least} to {most}", least=moisture(least), most=moisture(most)),
        ),
        Reading(
            "In the same air, halfway",
            say("{up} or {down}", up=moisture(up), down=moisture(down)),
            say("at {air}: the first while it wets, the second while it dries", air=humidity(halfway_rh)),
        ),
        Reading(
            "White oak, flatsawn, 20 in (508 mm) wide",
            say("moves {loop}", loop=fine_length(swing * move)),
            say("by the curve it would be {table}", table=fine_length(table * move)),
        ),
    )


@lru_cache
def _oak_per_percent() -> float:
    return find_species("white oak").require("tangential_coefficient_per_percent").number


def _picture(air: Any, table: Any, wetting: Any, drying: Any, printed: Printed) -> Picture:
    curve, half = sorption_percent(ROOM_C, _RH), np.sqrt(ADSORPTION_TO_DESORPTION)
    branches = [_CHART.points(_RH, curve * half), _CHART.points(_RH, curve / half)]
    up, down = _CHART.points(air, wetting), _CHART.points(air, drying)
    middle = len(_WAY) // 2
    ticks = [(value, str(value)) for value in (4, 8, 12, 16, 20)]
    marks: list[Mark] = [
        *_CHART.axes(
            [(value, str(value)) for value in (20, 40, 60, 80)],
            ticks,
            "relative humidity of the air, %",
            "moisture of wood at rest, %",
            14,
        ),
        Area(np.concatenate([branches[0], branches[1][::-1]]), "range"),
        Line(branches[0], "quiet", 1.6),
        Line(branches[1], "quiet", 1.6),
        Line(_CHART.points(_RH, curve), "ink", 1.4, "5 4"),
        Area(np.concatenate([up, down[::-1]]), "watch"),
        Line(up, "damp", 2.6),
        Line(down, "dry", 2.6),
        *[Circle(point[0], point[1], 4.5, "ink", filled=True) for point in (up[0], up[-1])],
        Words(_CHART.x(70), _CHART.y(16.2), "branch of drying", "quiet", 14, "end"),
        Words(_CHART.x(89), _CHART.y(9.4), "branch of wetting", "quiet", 14, "end"),
        Words(up[middle][0] + 8, up[middle][1] + 22, "it wets", "damp", 15, "start", bold=True),
        Words(down[middle][0] - 8, down[middle][1] - 12, "it dries", "dry", 15, "end", bold=True),
    ]
    bars = (
        ("curve", *table, "ghost", printed.high - printed.low),
        ("loop", wetting[0], wetting[-1], "damp", printed.swing(SHARE[1])),
    )
    for place, (name, low, high, role, swing) in enumerate(bars):
        left = _BARS.x(place) + 27
        bar = box(left, _BARS.y(high), 46.0, _BARS.y(low) - _BARS.y(high))
        marks += [
            Area(bar, role),
            Line([*bar, bar[0]], "edge", 1.2),
            Words(left + 23, _BARS.y(high) - 8, moisture(swing), "ink", 14, bold=True),
            Words(left + 23, _BARS.y(3.0) + 18, f"by the {name}", "ink", 14),
        ]
    return Picture("A year between wetting and drying", 720, 430, tuple(marks))


_FINE_PRINT = (
    "Curve: Wood Handbook FPL-GTR-190 (2010), equation 4-5, at 68 °F (20 °C), taken as the middle of both branches; "
    "wetting over drying 0.85 (from memory).",
    say(
        "Loop: just after a turn the wood follows {share} of what the curve says (could be {low} to {high}), and more the "
        "further it goes. That share was chosen with one measured wood in view, so its agreement with it proves nothing:",
        low=percent(100 * SHARE[0]),
        share=percent(100 * SHARE[1]),
        high=percent(100 * SHARE[2]),
    ),
    "Scots pine, from 60 % to 85 % and to 35 % humidity: 11.3-11.8, 17.4-17.9 and 8.2 % measured, 9.2-9.7 points between "
    "the ends (Sydor, Majka, Langova 2021, abstract); the loop gives 9.2, the curve 11.0.",
    say(
        "Time plays no part here: a board of {thick} needs weeks to come to rest in each air.",
        thick=length(0.75 * INCH_M),
    ),
)
