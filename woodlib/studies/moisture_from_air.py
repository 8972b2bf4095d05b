"""Study: cold air comes in, is warmed, gets dry, and the wood follows.

Only the heating season is asked for (outdoors up to 50 °F), so the room is always warmer than outdoors and the air is
never past saturation: no kink, nothing to clamp.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from ..air.psychrometrics import indoor_rh_percent, saturation_pressure_pa
from ..air.sorption import sorption_percent
from ..moisture.equilibrium import ADSORPTION_TO_DESORPTION
from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Words, box
from ..picture.wood import board_end
from ..species import find_species
from ..study import Answer, Choice, Reading, Span, study
from ..words.decided import pick, size_of
from ..words.say import humidity, moisture, say, temperature

BOUGHT_PERCENT = 8.0
DRAWN_LARGER = 6.0  # the board's movement, so that it can be seen
GAINS_G_M3 = {"none": 0.0, "some": 2.0, "much": 4.0}

_BASE, _JAR = 372.0, 76.0  # px: foot and width of the jars of air
_OUTDOORS, _INDOORS, _BOARD = 86.0, 226.0, 352.0  # px: middles of the jars and of the board
_PX_PER_PA = 0.058
_CHART = Frame(left=506, top=66, width=200, height=288, x_low=0, x_high=100, y_low=0, y_high=28)
_CURVE_RH = np.linspace(0.0, 95.0, 39)
# The table curve is the middle of both branches, as in woodlib.moisture.equilibrium.hysteresis_band.
_WETTED = 2 * ADSORPTION_TO_DESORPTION / (1 + ADSORPTION_TO_DESORPTION)
_DRIED = 2 / (1 + ADSORPTION_TO_DESORPTION)


@study(
    "moisture-from-air",
    "It is cold and damp outdoors. How damp is it in the heated room, and where does the wood come to rest?",
    [
        Span("outdoor_c", "Outdoor temperature", "temperature", -25.0, 10.0, 1.0, 0.0),
        Span("outdoor_rh", "Outdoor humidity", "humidity", 40.0, 95.0, 1.0, 80.0),
        Span("room_c", "Room temperature", "temperature", 17.0, 25.0, 1.0, 21.0),
        Choice(
            "gain",
            "Water added indoors",
            {
                "none": "none: an empty house",
                "some": "some: two people, windows opened",
                "much": "much: cooking, laundry, plants",
            },
            "none",
        ),
    ],
)
def moisture_from_air(outdoor_c: float, outdoor_rh: float, room_c: float, gain: str) -> Answer:
    """Indoor humidity and the wood's moisture from outdoor air, room temperature and what people add."""
    room_rh = indoor_rh_percent.kernel(outdoor_c, outdoor_rh, room_c, GAINS_G_M3[gain])
    wood = sorption_percent(room_c, room_rh)
    as_forecast = sorption_percent(room_c, outdoor_rh)
    return Answer(
        _picture(outdoor_c, outdoor_rh, room_c, room_rh, wood, as_forecast, gain),
        say(
            "{out} outdoors becomes {inside} in the room, and the wood comes to rest at {mc}.",
            out=humidity(outdoor_rh),
            inside=humidity(room_rh),
            mc=moisture(wood),
        ),
        _readings(room_rh, wood, as_forecast),
        say(
            "A house with one jar of air outdoors and one in the room. The jar in the room is larger, because warm air "
            "can hold more water: outdoors {cold} and {out}, indoors {warm} and {inside}. A board lies in the room, "
            "and a curve shows the moisture of wood against humidity.",
            cold=temperature(outdoor_c),
            out=humidity(outdoor_rh),
            warm=temperature(room_c),
            inside=humidity(room_rh),
        ),
        (
            "Air: vapour pressure stays the same when air is warmed (ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 6).",
            "Below freezing a weather report gives relative humidity over liquid water, not over ice; so it is read here "
            "(convention of weather services, from memory).",
            "People, cooking and plants: 2 and 4 g of water per cubic metre of air, the usual range of homes in winter "
            "(from memory).",
            "Wood: Wood Handbook FPL-GTR-190 (2010), equation 4-5; one curve for all species, within about 1 % MC "
            "(from memory).",
            "Range: wood that dries rests higher than wood that takes up water; ratio 0.85 (from memory).",
            "Colours of the last two readings: common practice, no source.",
        ),
    )


def _readings(room_rh: float, wood: float, as_forecast: float) -> tuple[Reading, ...]:
    off = wood - BOUGHT_PERCENT
    # Over 1.5 % MC a wide panel moves by more than a usual gap forgives, over 3 % it needs a slot: common practice.
    tone = pick(size_of(off), [1.5, 3.0], ["fine", "watch", "stop"])
    return (
        Reading(
            "Air in the room",
            humidity(room_rh),
            pick(room_rh, [25.0, 40.0, 60.0], ["very dry", "dry", "comfortable for people and for wood", "damp"]),
        ),
        Reading(
            "Wood comes to rest at",
            moisture(wood),
            say(
                "{low} if it had to take up water to get there, {high} if it had to give it off",
                low=moisture(wood * _WETTED),
                high=moisture(wood * _DRIED),
            ),
        ),
        Reading(
            "A board bought at 8 %",
            say("{verb} {change}", verb=pick(off, [0.0], ["gives off", "takes up"]), change=moisture(size_of(off))),
            pick(off, [0.0], ["and shrinks, over weeks", "and swells, over weeks"]),
            tone,
        ),
        Reading(
            "By the weather report",
            moisture(as_forecast),
            say(
                "is what one would expect if the room were as damp as outdoors: {miss} away from the truth",
                miss=moisture(size_of(as_forecast - wood)),
            ),
        ),
    )


def _picture(
    outdoor_c: float, outdoor_rh: float, room_c: float, room_rh: float, wood: float, as_forecast: float, gain: str
) -> Picture:
    gauge, mark = _CHART.gauge("humidity", "x")
    marks = [
        Words(16, 26, "Jar: how much water the air could hold. Filled: what it holds.", "quiet", 14, "start"),
        *_house(gain),
        *_jars(outdoor_c, outdoor_rh, room_c, room_rh),
        *_board(wood),
        *_chart(room_c, outdoor_rh, room_rh, wood, as_forecast),
        mark,
    ]
    return Picture("Cold air, warmed, and the wood in it", 720, 440, tuple(marks), gauge)


def _house(gain: str) -> list[Mark]:
    water = "the same water" if gain == "none" else "the same water and more"
    walls = [(170, 394), (170, 158), (152, 158), (296, 56), (440, 158), (424, 158), (424, 394)]
    return [
        Line([(10, 394), (446, 394)], "quiet", 1.5),
        Line(walls, "quiet", 2.5),
        Words(296, 126, water, "ink", 14),
        Words(296, 144, "in a larger jar", "ink", 14),
    ]


def _jars(outdoor_c: float, outdoor_rh: float, room_c: float, room_rh: float) -> list[Mark]:
    level = _BASE - _PX_PER_PA * outdoor_rh / 100 * saturation_pressure_pa.kernel(outdoor_c)
    marks: list[Mark] = []
    for middle, name, celsius, rh in (
        (_OUTDOORS, "outdoors", outdoor_c, outdoor_rh),
        (_INDOORS, "in the room", room_c, room_rh),
    ):
        height = _PX_PER_PA * saturation_pressure_pa.kernel(celsius)
        filled = height * rh / 100
        left = middle - _JAR / 2
        marks += [
            Area(box(left, _BASE - filled, _JAR, filled), "damp"),
            Line(
                [(left, _BASE - height), (left, _BASE), (left + _JAR, _BASE), (left + _JAR, _BASE - height)], "ink", 2.0
            ),
            Words(middle, _BASE - height - 10, humidity(rh), "ink", 16, bold=True),
            Words(middle, _BASE + 40, name, "ink", 15),
            Words(middle, _BASE + 58, temperature(celsius), "quiet", 14),
        ]
    # Where the water stood outdoors: in the room the same, plus what people add.
    return [*marks, Line([(_OUTDOORS - _JAR / 2, level), (_INDOORS + _JAR / 2, level)], "damp", 1.4, "5 4")]


@lru_cache
def _oak_per_percent() -> float:
    return find_species("white oak").require("tangential_coefficient_per_percent").number


def _board(wood: float) -> list[Mark]:
    width = 96 * (1 + DRAWN_LARGER * _oak_per_percent() * (wood - BOUGHT_PERCENT))
    off = wood - BOUGHT_PERCENT
    bought = box(_BOARD - 48, 330, 96, 30)
    arrows: list[Mark] = []
    for x in (_BOARD - 24, _BOARD + 24):
        shaft = [(x, 322), (x, 294)]
        arrows += [
            Line(shaft, "damp", 2.0),
            Line([(x - 5, 301), (x, 294), (x + 5, 301)], "damp", 2.0, shown=pick(off, [0.0], [True, False])),
            Line([(x - 5, 315), (x, 322), (x + 5, 315)], "damp", 2.0, shown=pick(off, [0.0], [False, True])),
        ]
    return [
        *board_end(_BOARD - width * 0.5, 330, width, 30, 0.0, 90.0, 7.0, 80.0),
        Line([*bought, bought[0]], "ghost", 1.6, "4 3"),
        Line([(_BOARD - 66, 362), (_BOARD + 66, 362)], "edge", 3.0),
        Line([(_BOARD - 50, 362), (_BOARD - 50, 394)], "edge", 2.0),
        Line([(_BOARD + 50, 362), (_BOARD + 50, 394)], "edge", 2.0),
        *arrows,
        Words(_BOARD, 284, moisture(wood), "ink", 16, bold=True),
        Words(_BOARD, _BASE + 40, "dashed: at 8 %,", "quiet", 14),
        Words(_BOARD, _BASE + 58, "movement x 6", "quiet", 14),
    ]


def _chart(room_c: float, outdoor_rh: float, room_rh: float, wood: float, as_forecast: float) -> list[Mark]:
    curve = sorption_percent(room_c, _CURVE_RH)
    band = np.concatenate([_CHART.points(_CURVE_RH, curve * _WETTED), _CHART.points(_CURVE_RH, curve * _DRIED)[::-1]])
    x, y = _CHART.x(room_rh), _CHART.y(wood)
    ghost_x, ghost_y = _CHART.x(outdoor_rh), _CHART.y(as_forecast)
    axes = _CHART.axes(
        [(value, str(value)) for value in (0, 20, 40, 60, 80, 100)],
        [(value, str(value)) for value in (0, 4, 8, 12, 16, 20, 24, 28)],
        "relative humidity, %",
        size=14,
    )
    return [
        Words(_CHART.left - 26, 48, "moisture of wood at rest, %", "quiet", 14, "start"),
        *axes,
        Area(band, "range"),
        Line(_CHART.points(_CURVE_RH, curve), "damp", 2.5),
        Line([(x, _CHART.y(0.0)), (x, y), (_CHART.x(0.0), y)], "today", 1.6, "5 4"),
        Circle(ghost_x, ghost_y, 6.0, "ghost", 2.2),
        Words(ghost_x - 12, ghost_y - 12, "weather", "quiet", 14, "end"),
        Words(ghost_x - 12, ghost_y + 4, "report", "quiet", 14, "end"),
        Circle(x, y, 6.5, "today", filled=True),
    ]
