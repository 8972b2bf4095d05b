"""What must fit together in a brief: sizes with each other, one source of air, one source of moisture, real names."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from ..errors import InputError, Problems
from ..units import both, shown
from .keys import SOURCES_OF_AIR
from .record import House, Season, species_of

MOST_BOARDS = 60
MOST_HARDWARE = 60
EXAMPLE_OF_AIR = (
    'house.seasons.winter = {temperature = "70 degF", humidity = "25 %"} and house.seasons.summer = {temperature = '
    '"75 degF", humidity = "60 %"}, above the first heading'
)
LOG_SETTINGS = {
    "log_sensor": "sensor",
    "log_time_column": "time_column",
    "log_temperature_column": "temperature_column",
    "log_humidity_column": "rh_column",
    "log_temperature_unit": "temperature_unit",
    "log_date_order": "date_order",
}
OUTDOOR_SETTINGS = {
    "kind": "kind",
    "heating": "heating_set_point_c",
    "cooling": "cooling_set_point_c",
    "warmer_in_summer": "warmer_k",
    "moisture_gain": "moisture_gain_g_m3",
    "summer_moisture_gain": "summer_moisture_gain_g_m3",
    "humidifier_holds": "humidifier_holds_percent",
    "dehumidifier_holds": "dehumidifier_holds_percent",
}
_HOUSE = {"log": "log_path", "weather": "weather", "climate": "place", "hemisphere": "hemisphere", **OUTDOOR_SETTINGS}


def check_fit(desk) -> None:
    """Sizes that cannot belong together are usually two swapped numbers or a wrong unit."""
    size = {name: desk.known.get(f"piece.{name}") for name in ("width", "length", "thickness", "border_width")}
    if desk.known.get("piece.kind") != "turned part":  # as thick as it is wide
        _smaller(desk, size, "thickness", ("width", "length"), 1.0, "the thickness is the smallest size of a panel")
    _smaller(desk, size, "border_width", ("width", "length"), 0.5, "two borders must leave some panel between them")
    given = [name for name in ("border_width", "border_thickness") if desk.raw(("piece", name)) is not None]
    if len(given) == 1:
        other = "border_thickness" if given == ["border_width"] else "border_width"
        path = ("piece", given[0])
        desk.problems.add(f"{desk.where(path)}piece.{given[0]} is given without piece.{other}; give both or neither.")
    _hardware_fits(desk, size)


def _smaller(desk, size: dict, small: str, larges: tuple[str, ...], share: float, why: str) -> None:
    for large in larges:
        if None not in (size[small], size[large]) and not size[small] < share * size[large]:
            path = ("piece", small)
            limit = both(share * size[large])
            desk.problems.add(
                f"{desk.where(path)}piece.{small} is {shown(desk.raw(path))}; with piece.{large} "
                f"{shown(desk.raw(('piece', large)))} it must be less than {limit}, because {why}."
            )


def _hardware_fits(desk, size: dict) -> None:
    listed = desk.raw(("hardware",))
    count = len(listed) if isinstance(listed, list) else 0
    if count > MOST_HARDWARE:
        desk.problems.add(
            f"{desk.where(('hardware', MOST_HARDWARE))}hardware holds {count} tables; at most {MOST_HARDWARE} can be set "
            "out, so take some out."
        )
    for place in range(count):
        path = ("hardware", place)
        centres, runs = (desk.known.get(f"hardware.{place + 1}.{name}") for name in ("centres", "runs"))
        along, aside = ("length", "width") if runs == "along the grain" else ("width", "length")
        _hole_on_the_piece(desk, size, place, along, aside)
        if None not in (centres, runs, size[along]) and centres >= size[along]:
            here = (*path, "centres")
            desk.problems.add(
                f"{desk.where(here)}hardware.centres is {shown(desk.raw(here))}, which does not fit on a panel "
                f"with piece.{along} {shown(desk.raw(('piece', along)))}; check both."
            )


def _hole_on_the_piece(desk, size: dict, place: int, along: str, aside: str) -> None:
    """Holes at the places that are typed lie on the piece: both of a pair, and their line."""
    inset, middle, centres = (desk.known.get(f"hardware.{place + 1}.{name}") for name in ("inset", "middle", "centres"))
    if None not in (inset, size[aside]) and inset >= size[aside]:
        _off_the_wood(desk, (("hardware", place, "inset"), aside), "its holes would lie beside the piece")
    if None in (middle, centres, size[along]) or centres >= size[along]:
        return
    if not 0.5 * centres < middle < size[along] - 0.5 * centres:
        least, most = both(0.5 * centres, 64, 0.1), both(size[along] - 0.5 * centres, 64, 0.1)
        _off_the_wood(
            desk, (("hardware", place, "middle"), along), f"a hole would lie beside the piece; write {least} to {most}"
        )


def _off_the_wood(desk, at: tuple[tuple, str], why: str) -> None:
    path, entry = at
    desk.problems.add(
        f"{desk.where(path)}hardware.{path[-1]} is {shown(desk.raw(path))}; with piece.{entry} "
        f"{shown(desk.raw(('piece', entry)))} {why}, or check both."
    )


def check_boards(desk) -> None:
    """Boards on hand that can be told apart, and no more of them than can be laid out."""
    listed = desk.raw(("boards",))
    count = len(listed) if isinstance(listed, list) else 0
    names = [desk.known.get(f"boards.{place + 1}.name") for place in range(count)]
    for place, name in enumerate(names):
        if name is not None and name in names[:place]:
            path = ("boards", place, "name")
            desk.problems.add(
                f"{desk.where(path)}boards.name is {shown(name)}, which another board is called already; chalk another "
                "name on it, or write count = 2 where the two are alike."
            )
    if count > MOST_BOARDS:
        path = ("boards", MOST_BOARDS)
        desk.problems.add(
            f"{desk.where(path)}boards holds {count} tables; at most {MOST_BOARDS} can be laid out, so put those alike "
            "together with count."
        )


def check_stock(desk) -> None:
    """Moisture from exactly one source, and a species that is in a table."""
    metered = desk.raw(("wood", "moisture")) is not None
    shop = [name for name in ("shop_temperature", "shop_humidity") if desk.raw(("wood", name)) is not None]
    if metered and shop:
        desk.problems.add(
            f"{desk.where(('wood', shop[0]))}wood.{shop[0]} is given beside wood.moisture; give the meter reading or "
            "the air of the shop, not both."
        )
    elif not metered and len(shop) < 2:
        desk.problems.add(
            f'{desk.where(("wood", *shop))}the moisture of the stock is missing; write moisture = "8 %", or both '
            'shop_temperature = "65 degF" and shop_humidity = "45 %".'
        )
    own = desk.known.get("wood.own_species")
    own_path = ("wood", "own_species")
    own_is_good = _absorb(desk, own_path, _own_species, own) if own else desk.raw(own_path) is None
    if "wood.species" in desk.known and own_is_good:
        _absorb(desk, ("wood", "species"), _wood_that_moves, desk.known["wood.species"], own)


def check_house(desk, seasons: tuple[Season, ...]) -> str:
    """One source of air, with the settings that go with it; returns the source, or nothing if there is none.

    A log may have weather or climate beside it, for the months that it lacks.
    """
    given = [name for name in SOURCES_OF_AIR if desk.raw(("house", name)) is not None]
    if len(given) != 1 and given not in (["log", "weather"], ["log", "climate"]):
        has = f"has {' and '.join(given)}" if given else "has no air"
        example = "" if given else f"; for example {EXAMPLE_OF_AIR}"
        desk.problems.add(
            f"{desk.where(('house', *given[1:2]))}house {has}; give exactly one of seasons, log, weather and climate{example}."
        )
        return ""
    outdoors = given[-1] in ("weather", "climate")
    _goes_with(desk, tuple(OUTDOOR_SETTINGS), outdoors, given[0], "weather or climate")
    _goes_with(desk, ("hemisphere",), given[0] == "seasons", given[0], "seasons")
    _goes_with(desk, tuple(LOG_SETTINGS), given[0] == "log", given[0], "log")
    if outdoors:
        _set_points(desk)
    readable = all(None not in (season.temperature_c, season.rh_percent) for season in seasons)
    if given[0] == "seasons" and readable and _all_known(desk, len(seasons)):
        _absorb(desk, ("house", "seasons"), _year_of, seasons, desk.known.get("house.hemisphere", "north"))
    if given[0] == "log" and "house.log" in desk.known:
        _absorb(desk, ("house", "log"), _log, desk.known["house.log"], log_settings(desk.known))
    if given[-1] == "weather" and "house.weather" in desk.known:
        _absorb(desk, ("house", "weather"), _weather, desk.known["house.weather"])
    if "house.climate" in desk.known:
        _absorb(desk, ("house", "climate"), _climate, desk.known["house.climate"])
    return given[0]


def log_settings(known: Mapping[str, object]) -> dict[str, str]:
    """What a brief says about its log, by the names the reader of logs has for it."""
    given = {setting: known.get(f"house.{key}") for key, setting in LOG_SETTINGS.items()}
    return {setting: str(value) for setting, value in given.items() if value is not None}


def _all_known(desk, number: int) -> bool:
    """True when every entry under house.seasons was known, so that only their number and months can be wrong."""
    table = desk.raw(("house", "seasons"))
    return isinstance(table, Mapping) and len(table) == number


def _goes_with(desk, names: tuple[str, ...], fits: bool, source: str, wanted: str) -> None:
    for name in names:
        if desk.raw(("house", name)) is not None and not fits:
            path = ("house", name)
            desk.problems.add(f"{desk.where(path)}house.{name} goes with {wanted}, not with {source}; take it out.")


def _set_points(desk) -> None:
    """Set points that do not fight each other, as typed or beside those that are usual for the kind of house."""
    told = len(desk.problems.sentences)
    heating, cooling = desk.known.get("house.heating"), desk.known.get("house.cooling")
    if heating is not None and cooling is not None and cooling < heating:
        path = ("house", "cooling")
        desk.problems.add(
            f"{desk.where(path)}house.cooling is {shown(desk.raw(path))}, below house.heating "
            f"{shown(desk.raw(('house', 'heating')))}; the room cannot be heated and cooled at once, so raise it."
        )
    above, below = (desk.known.get(f"house.{name}_holds") for name in ("humidifier", "dehumidifier"))
    if above is not None and below is not None and above > below:
        path = ("house", "humidifier_holds")
        desk.problems.add(
            f"{desk.where(path)}house.humidifier_holds is {shown(desk.raw(path))}, above house.dehumidifier_holds "
            f"{shown(desk.raw(('house', 'dehumidifier_holds')))}; the two would work against each other, so lower the first "
            "or raise the second."
        )
    if len(desk.problems.sentences) == told:
        _room(desk)


def _room(desk) -> None:
    """Kind of house and set points that the kind's own do not contradict."""
    named = next((name for name in ("kind", "cooling", "heating") if desk.raw(("house", name)) is not None), "")
    _absorb(desk, ("house", *([named] if named else [])), House("climate", **_outdoor_settings(desk.known)).room)


def _outdoor_settings(known: Mapping[str, object]) -> dict[str, Any]:
    return {field: known.get(f"house.{key}") for key, field in OUTDOOR_SETTINGS.items() if f"house.{key}" in known}


def house_settings(known: Mapping[str, object]) -> dict[str, Any]:
    """What a brief says about the house, by the names its record has for it."""
    given = {field: known[f"house.{key}"] for key, field in _HOUSE.items() if f"house.{key}" in known}
    return {**given, "log": log_settings(known)}


def _absorb(desk, path: tuple, function, *arguments) -> bool:
    """Try something on behalf of a key; its sentences get the key's line. True when there were none."""
    try:
        function(*arguments)
    except InputError as error:
        desk.problems.absorb(error, desk.where(path))
        return False
    return True


def _own_species(path) -> None:
    from ..species import read_own_species

    read_own_species(path)


def _wood_that_moves(name: str, own) -> None:
    """A wood by name that has the numbers its movement is worked out from."""
    from ..movement.board import check_wood

    problems = Problems()
    check_wood(problems, species_of(name, own))
    problems.raise_if_any()


def _year_of(seasons: tuple[Season, ...], hemisphere: str) -> None:
    from ..air.seasons import year_from_seasons

    year_from_seasons({s.name: (s.temperature_c, s.rh_percent) for s in seasons}, hemisphere=hemisphere)


def _log(path, settings: Mapping[str, str]) -> None:
    from ..air.hygrometer_log import read_hygrometer_log

    read_hygrometer_log(path, **settings)


def _weather(path) -> None:
    from ..air.weather_file import read_weather_file

    read_weather_file(path)


def _climate(place: str) -> None:
    from ..air.climates import find_climate

    find_climate(place)
