"""The air of a house, and the wood in it: predictions and exercises."""

from __future__ import annotations

from ...air.psychrometrics import indoor_rh_percent
from ...moisture.equilibrium import emc_percent, rh_percent_for_emc
from . import exercise, prediction

_ROOM_C, _WINTER_C = 21.0, -10.0


@prediction(
    "the-air-of-a-house/heated-air",
    "It is 32 °F (0 °C) outdoors, and the report says 80 % relative humidity. An empty house is heated to 70 °F (21 °C). "
    "What is the relative humidity in the room?",
    kind="humidity",
    close="5 %",
)
def heated_air() -> tuple[float, str]:
    """The vapour of the outdoor air, in warm air."""
    room = float(indoor_rh_percent(0.0, 80.0, _ROOM_C, 0.0))
    return room, "A desert, made from damp winter air by nothing but a radiator."


@prediction(
    "the-air-of-a-house/kiln-dried",
    "A kiln-dried oak board at 8 % moisture lies in that room until spring. What does it do?",
    options=("It stays at 8 %: it has been dried for good", "It takes up water", "It gives off water"),
)
def kiln_dried() -> tuple[str, str]:
    """Where wood comes to rest in that room, against 8 %."""
    room = float(indoor_rh_percent(0.0, 80.0, _ROOM_C, 0.0))
    rest = float(emc_percent(_ROOM_C, room))
    words = f"In air of {room:.0f} % relative humidity wood comes to rest at {rest:.1f} %, and the board leaves its 8 % behind."
    return "It gives off water" if rest < 8.0 else "It takes up water", words


@exercise(
    "the-air-of-a-house/garage-workshop",
    "A raw March day, 41 °F (5 °C) and 90 % outdoors. You heat an empty garage workshop to 64 °F (18 °C). "
    "What is the relative humidity in it?",
    kind="humidity",
    tolerance=2.0,
    misses={
        90.0: "That is the humidity outdoors. Warming leaves the water in the air as it is, but gives it a larger jar.",
        float(emc_percent(18.0, 38.0)): "That is where wood would come to rest; the question is about the air.",
        25.0: "Humidity does not go with the degrees in proportion: what air can hold doubles every 20 °F (11 °C).",
    },
    why="Less than half of what the forecast says, without a drop of water having gone.",
    way="Put the sliders of the study at 41 °F, 90 %, 64 °F and no water added, and read the air in the room.",
)
def garage_workshop() -> float:
    """Outdoor vapour against what the warmer air can hold."""
    return float(indoor_rh_percent(5.0, 90.0, 18.0, 0.0))


@exercise(
    "the-air-of-a-house/lived-in-winter",
    "A cold spell: 14 °F (-10 °C) and 80 % outdoors, 70 °F (21 °C) indoors, and two people live there (some water "
    "added). Where does a board bought at 8 % come to rest?",
    kind="moisture",
    tolerance=0.4,
    misses={
        8.0: "Drying in a kiln is not a property that stays: the board goes on trading water with the air around it.",
        float(emc_percent(_ROOM_C, 80.0)): "That is the answer to 80 % indoors; the 80 % are outdoors.",
        float(emc_percent(_ROOM_C, indoor_rh_percent(_WINTER_C, 80.0, _ROOM_C, 0.0))): (
            "That would be so in an empty house; the two people add water to the air."
        ),
        float(indoor_rh_percent(_WINTER_C, 80.0, _ROOM_C, 2.0)): (
            "That is the humidity of the room; the question is about the wood."
        ),
    },
    why="It gives off more than 3 % of its dry weight in water, and shrinks across the grain while it does.",
    way="Slide to 14 °F, 80 %, 70 °F, choose two people, and read where wood comes to rest.",
)
def lived_in_winter() -> float:
    """The room's humidity with 2 g/m3 added, then the wood's moisture."""
    return float(emc_percent(_ROOM_C, indoor_rh_percent(_WINTER_C, 80.0, _ROOM_C, 2.0)))


@exercise(
    "the-air-of-a-house/seaside-board",
    "A cherry serving board, bought at 7 %, goes to a seaside flat (both invented) where a hygrometer reads 65 % at "
    "72 °F (22 °C) all year. What does the board do over the first months?",
    options=("It shrinks", "It stays as it is", "It swells"),
    misses={
        "It shrinks": "Wood shrinks where the air is drier than the wood is used to; at 65 % it takes water up.",
        "It stays as it is": "Cherry at 7 % is at home in air of about 35 %; in air of 65 % it takes water up.",
    },
    why="It heads for about 12 %, five more than it was bought at. Let it come to rest in such air before planing it.",
    way="Find 65 % on the curve of the study and compare the moisture there with 7 %.",
)
def seaside_board() -> str:
    """Which way from 7 % to the moisture that the flat's air asks for."""
    return "It swells" if emc_percent(22.2, 65.0) > 7.0 else "It shrinks"


@exercise(
    "the-air-of-a-house/meter-reading",
    "Your meter says 6 % in a board that has lain for months in a client's room at 70 °F (21 °C). "
    "About how humid has that room been?",
    kind="humidity",
    tolerance=4.0,
    misses={
        6.0: "That is the reading of the wood; look from 6 % on the upright scale across to the curve, then down.",
        50.0: "At 50 % wood comes to rest above 9 %: the room must be drier than that.",
    },
    why="A meter is good to about 1 %, so say 23 to 35 %: a dry room.",
    way="On the chart go from 6 % across to the curve and down to the humidity.",
)
def meter_reading() -> float:
    """The curve read backwards."""
    return float(rh_percent_for_emc(_ROOM_C, 6.0))
