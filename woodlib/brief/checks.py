"""What must fit together in a brief: sizes with each other, one source of air, one source of moisture, real names."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from ..errors import InputError, Problems
from ..units import both, shown
from .desk import Desk
from .keys import KEYS, SOURCES_OF_AIR, Key
from .record import House, species_of

MOST_BOARDS = 60
MOST_HARDWARE = 60
EXAMPLE_OF_AIR = (
    'house.seasons.winter = {temperature = "70 degF", humidity = "25 %"} and house.seasons.summer = {temperature = '
    '"75 degF", humidity = "60 %"}, above the first heading'
)
_OUTDOORS = ("weather", "climate")
_ROOM = ("kind", "cooling", "heating")  # what a refusal of the room is told at, the first that is given


def check_fit(desk: Desk) -> None:
    """Sizes that cannot belong together are usually two swapped numbers or a wrong unit."""
    if desk.value("piece.kind") != "turned part":  # as thick as it is wide
        _smaller(desk, "thickness", 1.0, "the thickness is the smallest size of a panel")
    _smaller(desk, "border_width", 0.5, "two borders must leave some panel between them")
    given = [name for name in ("border_width", "border_thickness") if desk.raw(("piece", name)) is not None]
    if len(given) == 1:
        other = "border_thickness" if given == ["border_width"] else "border_width"
        desk.add(("piece", given[0]), f"piece.{given[0]} is given without piece.{other}; give both or neither.")
    if desk.count("hardware") > MOST_HARDWARE:
        desk.add(
            ("hardware", MOST_HARDWARE),
            f"hardware holds {desk.count('hardware')} tables; at most {MOST_HARDWARE} can be set out, so take some out.",
        )
    for place in range(desk.count("hardware")):
        _hardware_fits(desk, place)


def _smaller(desk: Desk, small: str, share: float, why: str) -> None:
    for large in ("width", "length"):
        sizes = [desk.value(f"piece.{name}") for name in (small, large)]
        if None not in sizes and not sizes[0] < share * sizes[1]:
            path = ("piece", small)
            desk.add(
                path,
                f"{desk.says(path)}; with {desk.says(('piece', large), ' ')} it must be less than "
                f"{_written(desk, share * sizes[1])}, because {why}.",
            )


def _written(desk: Desk, length_m: float) -> str:
    """A length with the system first that the brief is written in."""
    return both(length_m, 64, 0.1, first="metric" if desk.value("units") == "millimetres" else "customary")


def _hardware_fits(desk: Desk, place: int) -> None:
    """Both holes of a pair, and their line, lie on the piece."""
    names = ("runs", "centres", "inset", "middle")
    runs, centres, inset, middle = (desk.value(f"hardware.{place + 1}.{name}") for name in names)
    along, aside = ("length", "width") if runs == "along the grain" else ("width", "length")
    long, wide = (desk.value(f"piece.{name}") for name in (along, aside))

    def refuse(name: str, entry: str, why: str) -> None:
        path = ("hardware", place, name)
        desk.add(path, f"{desk.says(path)}; with {desk.says(('piece', entry), ' ')} {why}, or check both.")

    if None not in (inset, wide) and inset >= wide:
        refuse("inset", aside, "its holes would lie beside the piece")
    if None in (centres, runs, long):
        return
    if centres >= long:
        path = ("hardware", place, "centres")
        size = desk.says(("piece", along), " ")
        desk.add(path, f"{desk.says(path)}, which does not fit on a panel with {size}; check both.")
    elif middle is not None and not 0.5 * centres < middle < long - 0.5 * centres:
        least, most = _written(desk, 0.5 * centres), _written(desk, long - 0.5 * centres)
        refuse("middle", along, f"a hole would lie beside the piece; write {least} to {most}")


def check_boards(desk: Desk) -> None:
    """Boards on hand that can be told apart, and no more of them than can be laid out."""
    count = desk.count("boards")
    names = [desk.value(f"boards.{place + 1}.name") for place in range(count)]
    for place, name in enumerate(names):
        if name is not None and name in names[:place]:
            desk.add(
                ("boards", place, "name"),
                f"boards.name is {shown(name)}, which another board is called already; chalk another name on it, or "
                "write count = 2 where the two are alike.",
            )
    if count > MOST_BOARDS:
        desk.add(
            ("boards", MOST_BOARDS),
            f"boards holds {count} tables; at most {MOST_BOARDS} can be laid out, so put those alike together with count.",
        )


def check_stock(desk: Desk) -> None:
    """Moisture from exactly one source, and a species that is in a table."""
    metered = desk.raw(("wood", "moisture")) is not None
    shop = [name for name in ("shop_temperature", "shop_humidity") if desk.raw(("wood", name)) is not None]
    if metered and shop:
        desk.add(
            ("wood", shop[0]),
            f"wood.{shop[0]} is given beside wood.moisture; give the meter reading or the air of the shop, not both.",
        )
    elif not metered and desk.raw(("wood", "meter_temperature")) is not None:
        desk.add(
            ("wood", "meter_temperature"),
            "wood.meter_temperature is given without wood.moisture; it is the temperature of the wood when the meter was read.",
        )
    elif not metered and len(shop) < 2:
        desk.add(
            ("wood", *shop),
            'the moisture of the stock is missing; write moisture = "8 %", or both shop_temperature = "65 degF" and '
            'shop_humidity = "45 %".',
        )
    own, own_path = desk.known.get("wood.own_species"), ("wood", "own_species")
    own_is_good = desk.attempt(own_path, _own_species, own) if own else desk.raw(own_path) is None
    if "wood.species" in desk.known and own_is_good:
        desk.attempt(("wood", "species"), _wood_that_moves, desk.known["wood.species"], own)


def check_house(desk: Desk, settings: Mapping[str, Any]) -> House | None:
    """One source of air, with the settings that go with it; returns the house, or nothing if it has no air.

    A log may have weather or climate beside it, for the months that it lacks. ``settings`` are the fields of the house
    that could be read.
    """
    given = [name for name in SOURCES_OF_AIR if desk.raw(("house", name)) is not None]
    if len(given) != 1 and given not in (["log", "weather"], ["log", "climate"]):
        has = f"has {' and '.join(given)}" if given else "has no air"
        example = "" if given else f"; for example {EXAMPLE_OF_AIR}"
        path = ("house", *given[1:2])
        desk.add(path, f"house {has}; give exactly one of seasons, log, weather and climate{example}.")
        return None
    for key in KEYS:
        sources = _goes_with(key)
        if sources and not set(sources) & set(given) and desk.raw(("house", key.name)) is not None:
            wanted = " or ".join(sources)
            desk.add(("house", key.name), f"{key.path} goes with {wanted}, not with {given[0]}; take it out.")
    house = House(given[0], **settings)
    for source in given:
        _air_can_be_read(desk, source, house)
    if given[-1] in _OUTDOORS:
        _set_points(desk, house)
    return house


def _goes_with(key: Key) -> tuple[str, ...]:
    """The sources of air that a setting of a house goes with; none for what is no such setting."""
    if key.table != "house" or key.name in SOURCES_OF_AIR:
        return ()
    if key.name.startswith("log_"):
        return ("log",)
    return ("seasons",) if key.name == "hemisphere" else _OUTDOORS


def _air_can_be_read(desk: Desk, source: str, house: House) -> None:
    """Try the source; of seasons only where each could be read, so that only their number and months can be wrong."""
    typed = desk.raw(("house", source))
    all_known = isinstance(typed, Mapping) and len(typed) == len(house.seasons)
    if all_known or f"house.{source}" in desk.known:
        read = {"seasons": house.seasonal, "log": house.logged}.get(source, house.outdoors)
        desk.attempt(("house", source), read)


def _set_points(desk: Desk, house: House) -> None:
    """Set points that do not fight each other, as typed or beside those that are usual for the kind of house."""
    told = len(desk.problems.sentences)
    heating, cooling, above, below = (
        desk.value(f"house.{name}") for name in ("heating", "cooling", "humidifier_holds", "dehumidifier_holds")
    )
    if None not in (heating, cooling) and cooling < heating:
        path, other = ("house", "cooling"), desk.says(("house", "heating"), " ")
        desk.add(path, f"{desk.says(path)}, below {other}; the room cannot be heated and cooled at once, so raise it.")
    if None not in (above, below) and above > below:
        path, other = ("house", "humidifier_holds"), desk.says(("house", "dehumidifier_holds"), " ")
        desk.add(
            path,
            f"{desk.says(path)}, above {other}; the two would work against each other, so lower the first or raise the "
            "second.",
        )
    if len(desk.problems.sentences) == told:
        named = [name for name in _ROOM if desk.raw(("house", name)) is not None]
        desk.attempt(("house", *named[:1]), house.room)


def _own_species(path: Any) -> bool:
    from ..species import read_own_species

    read_own_species(path)
    return True


def _wood_that_moves(name: str, own: Any) -> Any:
    """A wood by name that has the numbers its movement is worked out from."""
    from ..movement.board import check_wood

    problems = Problems()
    wood = check_wood(problems, species_of(name, own))
    problems.raise_if_any()
    return wood


def check_test_pieces(desk: Desk, made: Mapping[str, Any]) -> None:
    """Each piece measured at two moistures that tell something, and moved as its species can."""
    from ..movement.measured_piece import learn

    name, own = desk.value("wood.species"), desk.value("wood.own_species")
    rings, meter = made["piece"].get("ring_angle_deg", 0.0), made["wood"].get("meter_error_percent", 1.0)
    for place, piece in enumerate(made["test_piece"]):
        measured = desk.attempt(("test_piece", place), piece.measured, rings, meter)
        try:
            wood = _wood_that_moves(name, own) if name and measured else None
        except InputError:  # told at the species already
            continue
        if wood:
            desk.attempt(("test_piece", place), learn, wood, [measured])
