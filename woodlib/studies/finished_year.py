"""Study: a year of wood under a finish: what the finish keeps out of the swing of the air, and how late the rest comes."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from ..air.sorption import sorption_percent
from ..moisture.finishes import BARE, find_finish
from ..moisture.stock import Stock
from ..moisture.swing import Reach, swing_reach
from ..picture.scene import Area, Frame, Line, Mark, Picture, Words, box
from ..study import Answer, Choice, Reading, Span, study
from ..units.exact import INCH_M
from ..words.decided import pick
from ..words.say import days, moisture, percent, say

FINISHES = {
    "bare": "none: bare wood",
    "oil": "three coats of linseed oil",
    "one": "one coat of varnish",
    "varnish": "three coats of varnish",
}
THICKNESSES = {"0.5": "1/2 in (13 mm)", "0.875": "7/8 in (22 mm)", "1.5": "1-1/2 in (38 mm)"}
ROOM_C, MIDDLE_PERCENT = 21.0, 8.0
_UNDER = {
    "bare": "With bare wood",
    "oil": "Under three coats of oil",
    "one": "Under one coat of varnish",
    "varnish": "Under three coats of varnish",
}
_COATS = {"oil": ("linseed oil", 3), "one": ("urethane varnish", 1), "varnish": ("urethane varnish", 3)}
_MONTHS = np.linspace(0.0, 12.0, 49)
_YEAR = Frame(left=64, top=48, width=640, height=212, x_low=0, x_high=12, y_low=0, y_high=18)
_BAR = Frame(left=64, top=330, width=640, height=30, x_low=0, x_high=100, y_low=0, y_high=1)
_LETTERS = tuple((month + 0.5, letter) for month, letter in enumerate("JFMAMJJASOND"))


@study(
    "finished-year",
    "Does a finish stop the seasons? What is left of the year's swing inside the wood?",
    [
        Choice("finish", "On every face", FINISHES, "varnish"),
        Choice("thickness", "Thickness of the oak", THICKNESSES, "0.875"),
        Span("driest", "Air in the driest month", "humidity", 15, 50, 1, 25),
        Span("dampest", "Air in the dampest month", "humidity", 50, 80, 1, 62),
    ],
)
def finished_year(finish: str, thickness: str, driest: float, dampest: float) -> Answer:
    """The wood's year beside that of the air, as one wave each, with the range from slow to fast wood."""
    dry, damp = (sorption_percent(ROOM_C, humidity) for humidity in (driest, dampest))
    swing = damp - dry
    reach, bare = reach_of(finish, thickness), reach_of("bare", thickness)
    inside = swing * reach.kept.mid
    out = kept_out(finish, thickness)
    late = reach.delay_days.mid
    picture = _picture(dry, damp, reach, bare, out)
    readings = (
        Reading("Swing of the air", moisture(swing), "what thin bare wood would do"),
        Reading(
            "Swing inside the wood",
            moisture(inside),
            say(
                "could be {low} to {high}", low=moisture(swing * reach.kept.low), high=moisture(swing * reach.kept.high)
            ),
        ),
        Reading(
            "Kept out, against bare wood", say("about {share}", share=percent(out)), pick(out, [5.0, 25.0, 60.0], _KEPT)
        ),
        Reading("It comes later by", days(late), "the finish and the thickness hold the seasons up"),
    )
    headline = say(
        f"{_UNDER[finish]}, {{inside}} of the air's {{swing}} still come and go in the wood.",
        inside=moisture(inside),
        swing=moisture(swing),
    )
    told = "Two waves over twelve months: the moisture that the air asks for, and the lower, later one inside the wood."
    return Answer(picture, headline, readings, told, _FINE_PRINT)


_KEPT = (
    "next to nothing: the seasons go through",
    "a little: the seasons go through",
    "a part of it: the wood moves less, and later",
    "most of it",
)
_FINE_PRINT = (
    "Yearly wave by diffusion through the thickness with a resistance in each face, in closed form, at 21 °C and 8 % MC; the "
    "range is that of published diffusion coefficients.",
    "Finishes: Wood Handbook (FPL-GTR-190), Table 16-3, moisture kept out in 1, 7 and 14 days.",
    "A cracked or worn finish keeps out less. The year is one wave, driest in January.",
)


@lru_cache
def reach_of(finish: str, thickness: str) -> Reach:
    """How the yearly wave enters oak of this thickness under this finish."""
    coat = BARE if finish == "bare" else find_finish(*_COATS[finish])
    stock = Stock.of("white oak", float(thickness) * INCH_M, first_finish=coat, second_finish=coat)
    return swing_reach(stock, MIDDLE_PERCENT, ROOM_C)["year"]


def kept_out(finish: str, thickness: str) -> float:
    """What a finish keeps out of the swing that bare wood has, %."""
    return 100.0 * (1.0 - reach_of(finish, thickness).kept.mid / reach_of("bare", thickness).kept.mid)


def _picture(dry: float, damp: float, reach: Reach, bare: Reach, out: float) -> Picture:
    middle, half = 0.5 * (dry + damp), 0.5 * (damp - dry)

    def wave(kept: float, delay_days: float):
        return _YEAR.points(
            _MONTHS, middle - half * (kept * np.cos(2 * np.pi * (_MONTHS - 0.5 - delay_days / 30.4) / 12))
        )

    band = np.concatenate(
        [wave(reach.kept.high, reach.delay_days.low), wave(reach.kept.low, reach.delay_days.high)[::-1]]
    )
    gauge, mark = _BAR.gauge("percent", "x")
    full = _BAR.x(out) - _BAR.left
    marks: list[Mark] = [
        *_YEAR.axes(_LETTERS, [(value, str(value)) for value in (0, 6, 12, 18)], "", "moisture, %", 14),
        Area(band, "range"),
        Line(wave(1.0, 0.0), "quiet", 2.0, "6 4"),
        Line(wave(bare.kept.mid, bare.delay_days.mid), "edge", 1.6),
        Line(wave(reach.kept.mid, reach.delay_days.mid), "damp", 2.8),
        Words(704, 38, "dashed: what the air asks for", "quiet", 14, "end"),
        Words(704, 17, "thin: bare wood", "edge", 14, "end"),
        Words(64, 17, "thick: this wood", "damp", 14, "start", bold=True),
        Words(_BAR.left, _BAR.top - 10, "of the swing of bare wood, the finish keeps out", "ink", 15, "start"),
        Area(box(_BAR.left, _BAR.top, full, _BAR.height), "damp"),
        Line([*_BAR.outline, _BAR.outline[0]], "edge", 1.4),
        mark,
        Words(_BAR.left, 384, "none", "quiet", 14, "start"),
        Words(_BAR.left + _BAR.width, 384, "all", "quiet", 14, "end"),
        Words(_BAR.left + _BAR.width, _BAR.top - 10, percent(out), "damp", 16, "end", bold=True),
    ]
    return Picture("A year of the air and of the wood under its finish", 720, 400, tuple(marks), gauge)
