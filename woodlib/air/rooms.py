"""What a lived-in room makes of the outdoor air: four constants with a meaning each, by the kind of house.

For monthly means (used day by day it gives up to half a per cent of moisture content less in mild months):
the room is what heating keeps or ``warmer_k`` above outdoors, whichever is more, rounded where the two meet; people add
``winter_gain`` of vapour per m3 of room air at 0 degC outside and ``summer_gain`` at 20 degC and warmer, in a straight
line between, and half as much again as in winter at -10 degC and colder; devices cool, dry and moisten at their set points.

That more is added in hard frost was chosen by the months of the five logs: level from 0 degC down misses each house's own
months by 0.42 % MC (its constants fitted), so by 0.35. No month of theirs is colder than -15 degC.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import numpy as np

from ..errors import InputError
from ..tables import rows
from .psychrometrics import gained_pressure_pa, saturation_pressure_pa

CONSTANTS = ("set_point_c", "warmer_k", "winter_gain_g_m3", "summer_gain_g_m3")
SPREADS = ("set_point_sd_k", "warmer_sd_k", "winter_gain_sd_g_m3", "summer_gain_sd_g_m3")
SUMMER_GAIN_ABOVE_C, HARD_FROST_C, MORE_IN_HARD_FROST = 20.0, -10.0, 0.5
_ROUNDED_K = 2.0  # heating does not stop on one day: the two temperatures pass into each other over about this
_WINDOWS_OPEN_C = 27.0  # people open windows when a room gets warmer, from memory


@dataclass(frozen=True)
class Room:
    """What a house does to the outdoor air. The four ``..._sd_...`` are the spread between houses (one standard
    deviation); set points of devices are infinite, 0 and 100 where there is none."""

    name: str
    set_point_c: float
    warmer_k: float
    winter_gain_g_m3: float
    summer_gain_g_m3: float
    set_point_sd_k: float
    warmer_sd_k: float
    winter_gain_sd_g_m3: float
    summer_gain_sd_g_m3: float
    cooled_to_c: float = np.inf
    rh_at_least_percent: float = 0.0
    rh_at_most_percent: float = 100.0
    also_called: str = ""
    source: str = ""

    def __post_init__(self) -> None:
        if self.rh_at_least_percent > self.rh_at_most_percent:
            raise InputError(
                f"the humidifier holds {self.rh_at_least_percent:g} %, above the {self.rh_at_most_percent:g} % that the "
                "dehumidifier holds; the two devices would fight: lower the first."
            )
        if self.cooled_to_c < self.set_point_c:
            raise InputError(
                f"the room is cooled to {self.cooled_to_c:g} degC, below the {self.set_point_c:g} degC that heating keeps; "
                "cool to what heating keeps or above it."
            )

    def in_words(self) -> str:
        """One sentence on what is assumed."""
        cooled = "" if np.isinf(self.cooled_to_c) else f", cooled to {self.cooled_to_c:.4g} degC"
        damp = "" if self.rh_at_least_percent <= 0 else f", kept above {self.rh_at_least_percent:g} % by a humidifier"
        dry = (
            ""
            if self.rh_at_most_percent >= 100
            else f", kept below {self.rh_at_most_percent:g} % by a device that dries"
        )
        return (
            f"The room is taken as {self.name}: heated to {self.set_point_c:.4g} degC, {self.warmer_k:.2g} K warmer than "
            f"outdoors in warm weather, {self.winter_gain_g_m3:.2g} g/m3 of vapour added when it freezes outside and "
            f"{self.summer_gain_g_m3:.2g} g/m3 in summer{cooled}{damp}{dry}."
        )


@cache
def all_kinds() -> tuple[Room, ...]:
    """Every kind of house in the table, the usual one first; each carries where its constants come from.

    >>> all_kinds()[0].name
    'lived in, windows open in summer'
    """
    return tuple(_kind(row) for row in rows("houses.csv"))


def _kind(row: dict[str, str]) -> Room:
    none = {"cooled_to_c": np.inf, "rh_at_least_percent": 0.0, "rh_at_most_percent": 100.0}
    numbers = {name: float(row[name] or none[name]) for name in (*CONSTANTS, *SPREADS, *none)}
    return Room(name=row["name"], also_called=row["also_called"], source=row["source"], **numbers)


def find_kind(name: str) -> Room:
    """A kind of house by any of its names.

    >>> find_kind("Air-conditioned").rh_at_most_percent
    58.0
    """
    wanted = _key(name)
    for room in all_kinds():
        if wanted and wanted in {_key(called) for called in (room.name, *room.also_called.split(";"))}:
            return room
    listed = ", ".join(f'"{room.also_called.split(";")[0]}"' for room in all_kinds())
    raise InputError(f"kind is {name!r}, which is no kind of house that is known; write one of {listed}.")


def _key(name: str) -> str:
    return " ".join("".join(letter if letter.isalnum() else " " for letter in str(name).lower()).split())


def room_air(outdoor_c: Any, outdoor_pa: Any, room: Room) -> tuple[np.ndarray, np.ndarray]:
    """Room temperature (degC) and relative humidity (%) from outdoor means of a week or longer; broadcasts, unchecked.

    >>> cold, warm = (room_air(t, p, all_kinds()[0]) for t, p in ((-7.0, 340.0), (19.0, 1640.0)))
    >>> [round(float(value)) for value in (*cold, *warm)]
    [22, 30, 25, 54]
    """
    return air_of_constants(outdoor_c, outdoor_pa, room, *(getattr(room, name) for name in CONSTANTS))


def air_of_constants(
    outdoor_c: Any, outdoor_pa: Any, room: Room, set_point: Any, warmer: Any, winter_gain: Any, summer_gain: Any
) -> tuple[np.ndarray, np.ndarray]:
    """The same with constants of any shape in place of the room's own."""
    out = np.multiply(outdoor_c, 1.0)  # no conversion: whatever follows NumPy's protocols may come in
    warm = _ROUNDED_K * np.logaddexp(set_point / _ROUNDED_K, (out + warmer) / _ROUNDED_K)
    warm = np.minimum(warm, np.maximum(np.maximum(_WINDOWS_OPEN_C, out + 1.0), set_point))
    warm = np.minimum(warm, np.maximum(room.cooled_to_c, set_point))
    cold = np.clip(1.0 - out / SUMMER_GAIN_ABOVE_C, 0.0, 1.0)
    frost = np.clip(out / HARD_FROST_C, 0.0, 1.0)
    gain = summer_gain * (1.0 - cold) + winter_gain * (cold + MORE_IN_HARD_FROST * frost)
    vapour = np.maximum(outdoor_pa + gained_pressure_pa(warm, gain), 0.0)
    humidity = 100.0 * vapour / saturation_pressure_pa.kernel(warm)
    return warm, np.clip(humidity, room.rh_at_least_percent, room.rh_at_most_percent)


def with_settings(room: Room, **settings: float | None) -> Room:
    """The room with what is said of it in place of the kind's constants.

    settings: any number of :class:`Room`; None is passed over. What heating keeps is known where it is said; the gains
    stay as doubtful as they were, for nobody has measured their own. A gain in the cold below the one in summer lowers
    that too.
    """
    known: dict[str, Any] = {name: float(value) for name, value in settings.items() if value is not None}
    if "set_point_c" in known:
        known["set_point_sd_k"] = 0.0
    if "winter_gain_g_m3" in known and "summer_gain_g_m3" not in known:
        known["summer_gain_g_m3"] = min(room.summer_gain_g_m3, known["winter_gain_g_m3"])
    return replace(room, **known)
