"""What may stand in a brief: every key with what it means, how it is read, its limits and an example.

The reader, the written template and the suggestions for misspelt keys all come from this one table.
"""

from __future__ import annotations

from dataclasses import dataclass

KINDS_OF_PIECE = (
    "lid",
    "seat",
    "table top",
    "door panel",
    "board",
    "frame",
    "back",
    "drawer front",
    "drawer side",
    "drawer bottom",
    "turned part",
)
RING_ANGLES_DEG = {"flatsawn": 0.0, "riftsawn": 45.0, "quartersawn": 90.0}
DIRECTIONS = ("across the grain", "along the grain")
UNITS = ("inches", "millimetres")
HEMISPHERES = ("north", "south")
MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
SEASONS = ("winter", "spring", "summer", "autumn", "fall", *(month.lower() for month in MONTHS))
WIDEST_M = 4.572
"""15 ft: sliders go a quarter beyond the piece, and the kit takes nothing wider than 6 m."""
SOURCES_OF_AIR = ("seasons", "log", "weather", "climate")


@dataclass(frozen=True)
class Key:
    """One key of a brief.

    ``path`` dotted, ``[]`` for each table of an array, ``*`` for a name of the writer's own; ``reads`` names the
    reader; ``low`` and ``high`` are inclusive, in metres, percent, degree, degC, K, g/m3 or letters; ``shown`` False leaves the
    key commented out in the template.
    """

    path: str
    reads: str
    says: str
    example: str
    required: bool = False
    low: float | None = None
    high: float | None = None
    choices: tuple[str, ...] = ()
    shown: bool = True

    @property
    def table(self) -> str:
        """The table that holds the key, empty at the top of the file."""
        return self.path.rpartition(".")[0]

    @property
    def name(self) -> str:
        """The key without its table."""
        return self.path.rpartition(".")[2]


KEYS = (
    Key("title", "words", "What the piece is called.", '"Reading-nook seat"', required=True),
    Key("maker", "words", "Who builds it; printed on the handout.", '"Name of the workshop"'),
    Key("client", "words", "Who it is for; printed on the handout.", '"Name of the client"'),
    Key("notes", "text", "Anything else worth keeping with the commission.", '"""\nWhat was agreed.\n"""'),
    Key("units", "choice", "Which system is written first: inches or millimetres.", '"inches"', choices=UNITS),
    Key(
        "constructions",
        "names",
        "Ways to build that are to be compared; left out, all of them are.",
        '["breadboard end", "frame and panel"]',
        shown=False,
    ),
    Key(
        "piece.kind",
        "choice",
        "lid, seat, table top, door panel, board, frame, back, drawer front, drawer "
        "side, drawer bottom or turned part.",
        '"seat"',
        True,
        choices=KINDS_OF_PIECE,
    ),
    Key(
        "piece.lifts",
        "choice",
        "Whether it lifts or comes off, yes or no; left out, a lid does. What lifts is screwed to no base.",
        '"yes"',
        choices=("yes", "no"),
        shown=False,
    ),
    Key(
        "piece.width",
        "length",
        "Finished width of the whole piece, border included, ACROSS the grain: the direction "
        "that moves. Of a drawer part, a back of boards or a plain inset door the opening it fits into (of a framed one the "
        "frame outside); of a turned part the diameter.",
        '"20 in"',
        True,
        low=0.01,
        high=WIDEST_M,
    ),
    Key(
        "piece.length",
        "length",
        "Finished length of the whole piece along the grain, border included.",
        '"44 in"',
        True,
        low=0.01,
        high=6,
    ),
    Key(
        "piece.thickness",
        "length",
        "Thickness of the panel; of a turned part the diameter.",
        '"7/8 in"',
        True,
        low=0.001,
        high=0.3,
    ),
    Key(
        "piece.border_width",
        "length",
        "Width of the border the client has in mind, within that size; leave both out for none.",
        '"2 in"',
        low=0.001,
        high=1,
    ),
    Key("piece.border_thickness", "length", "Thickness of that border.", '"7/8 in"', low=0.001, high=0.3),
    Key(
        "piece.rings",
        "rings",
        "flatsawn, riftsawn, quartersawn, or the ring angle from 0 deg (flatsawn) to 90 deg; "
        "left out, flatsawn is taken, which moves most.",
        '"flatsawn"',
        low=0,
        high=90,
    ),
    Key("wood.species", "words", "Name of the wood.", '"white oak"', True),
    Key(
        "wood.own_species",
        "file",
        "Table (CSV) with woods of your own; the species is looked for there first.",
        '"my_woods.csv"',
        shown=False,
    ),
    Key(
        "wood.moisture",
        "moisture",
        "Moisture of the stock today, by meter. Instead of it, the air of the shop where "
        "the stock has come to rest can be given below.",
        '"8 %"',
        low=1,
        high=30,
    ),
    Key(
        "wood.shop_temperature",
        "temperature",
        "Temperature of the shop, with shop_humidity.",
        '"65 degF"',
        low=-20,
        high=45,
        shown=False,
    ),
    Key(
        "wood.shop_humidity",
        "humidity",
        "Relative humidity of the shop, by hygrometer.",
        '"45 %"',
        low=1,
        high=100,
        shown=False,
    ),
    Key(
        "wood.meter_error",
        "moisture",
        "How far the moisture may be off, in points of moisture content; left out, "
        "1 point (common practice, no source).",
        '"1 %"',
        low=0,
        high=10,
    ),
    Key(
        "wood.out_of_flat",
        "length",
        "How far rough or glued faces are out of flat, from the highest to the lowest point; "
        "planing them flat loses as much.",
        '"1/16 in"',
        low=0,
        high=0.05,
        shown=False,
    ),
    Key("wood.built_in", "month", "Month in which the panel is glued up.", '"October"', True),
    Key("finish.name", "words", "Finish.", '"urethane varnish"'),
    Key("finish.coats", "whole", "Number of coats; left out, as many as are usual.", "3", low=0, high=30),
    Key("house.seasons.*.temperature", "temperature", "Temperature indoors.", '"70 degF"', True, low=-40, high=45),
    Key("house.seasons.*.humidity", "humidity", "Relative humidity indoors.", '"25 %"', True, low=1, high=100),
    Key(
        "house.hemisphere",
        "choice",
        "With seasons: north, or south where winter is in July.",
        '"north"',
        choices=HEMISPHERES,
        shown=False,
    ),
    Key(
        "house.log", "file", "Instead of seasons: a hygrometer log (CSV) from that room.", '"room_log.csv"', shown=False
    ),
    Key(
        "house.log_sensor",
        "words",
        "With log, where several sensors speak: words of the name of the one in the room.",
        '"shelf"',
        shown=False,
    ),
    Key(
        "house.log_time_column",
        "words",
        "With log, where its headings do not tell: the column with the time.",
        '"time"',
        shown=False,
    ),
    Key(
        "house.log_temperature_column",
        "words",
        "With log, where its headings do not tell: the column with the temperature.",
        '"temperature"',
        shown=False,
    ),
    Key(
        "house.log_humidity_column",
        "words",
        "With log, where its headings do not tell: the column with the relative humidity.",
        '"humidity"',
        shown=False,
    ),
    Key(
        "house.log_temperature_unit",
        "choice",
        "With log, where its heading does not tell: degC or degF.",
        '"degC"',
        choices=("degC", "degF"),
        shown=False,
    ),
    Key(
        "house.log_date_order",
        "choice",
        "With log, where its dates do not tell: day first, month first or year first.",
        '"day first"',
        choices=("day first", "month first", "year first"),
        shown=False,
    ),
    Key(
        "house.weather",
        "file",
        "Instead of seasons: a weather file (EPW) of a place near by.",
        '"near_by.epw"',
        shown=False,
    ),
    Key(
        "house.climate",
        "words",
        "Instead of seasons: a place from the table of climates that is shipped.",
        '"Aberdeen"',
        shown=False,
    ),
    Key(
        "house.kind",
        "words",
        "With weather or climate: open windows in summer (taken where nothing is said), air-conditioned, dehumidified, "
        "humidified, tight, old, seldom lived in, wood stove.",
        '"open windows in summer"',
        shown=False,
    ),
    Key(
        "house.heating",
        "temperature",
        "With weather or climate: the room is heated up to this; left out, what is usual for its kind, as below.",
        '"68 degF"',
        low=0,
        high=45,
        shown=False,
    ),
    Key(
        "house.cooling",
        "temperature",
        "With weather or climate: the room is cooled down to this.",
        '"76 degF"',
        low=0,
        high=45,
        shown=False,
    ),
    Key(
        "house.warmer_in_summer",
        "difference",
        "With weather or climate: how much warmer than outdoors the room is in warm weather.",
        '"9 degF"',
        low=0,
        high=15,
        shown=False,
    ),
    Key(
        "house.moisture_gain",
        "density",
        "With weather or climate: moisture that people, cooking and plants add to the air when it freezes outside; homes "
        "2 to 4 g/m3, an empty house 0.",
        '"2 g/m3"',
        low=0,
        high=20,
        shown=False,
    ),
    Key(
        "house.summer_moisture_gain",
        "density",
        "With weather or climate: the same in summer, with open windows next to nothing.",
        '"0.2 g/m3"',
        low=0,
        high=20,
        shown=False,
    ),
    Key(
        "house.humidifier_holds",
        "humidity",
        "With weather or climate: a humidifier keeps the room above this.",
        '"35 %"',
        low=1,
        high=100,
        shown=False,
    ),
    Key(
        "house.dehumidifier_holds",
        "humidity",
        "With weather or climate: a dehumidifier, or cooling that dries, keeps the room below this.",
        '"55 %"',
        low=1,
        high=100,
        shown=False,
    ),
    Key("hardware[].name", "name", "What it is.", '"finger pull"', True, high=200),
    Key(
        "hardware[].centres",
        "length",
        "Distance between its two screws, centre to centre.",
        '"128 mm"',
        True,
        low=0.001,
        high=5,
    ),
    Key(
        "hardware[].runs",
        "choice",
        "across the grain (the distance will change) or along the grain.",
        '"across the grain"',
        True,
        choices=DIRECTIONS,
    ),
    Key(
        "hardware[].inset",
        "length",
        "From the front edge, of a drawer front or side the lower edge, to the line of its "
        "holes; from the left end where it runs across the grain. Left out, 1-1/2 in (common practice, no source); several that run "
        "across the grain share the length evenly.",
        '"3/4 in"',
        low=0.003,
        high=6,
        shown=False,
    ),
    Key(
        "hardware[].middle",
        "length",
        "From the left end to the middle between its holes; from the front edge where it "
        "runs across the grain. Left out, all that run along the grain share the length evenly, and what runs across it is "
        "in the middle of the width, which those on one line share.",
        '"11 in"',
        low=0.003,
        high=6,
        shown=False,
    ),
    Key(
        "hardware[].screw",
        "length",
        "Diameter of its screws; left out, 4 mm (common practice, no source).",
        '"4 mm"',
        low=0.001,
        high=0.02,
        shown=False,
    ),
    Key("boards[].name", "name", "What is chalked on the board.", '"A"', True, high=60, shown=False),
    Key("boards[].width", "length", "Its width, rough.", '"6-1/2 in"', True, low=0.01, high=1.5, shown=False),
    Key("boards[].length", "length", "Its length, rough.", '"10 ft"', True, low=0.05, high=8, shown=False),
    Key("boards[].thickness", "length", "Its thickness, rough.", '"1-1/8 in"', True, low=0.002, high=0.3, shown=False),
    Key("boards[].count", "whole", "How many there are like it; left out, one.", "2", low=1, high=60, shown=False),
    Key("handout.*.*", "start", "", ""),
)
