"""Start here: which slider changes the movement but hardly the pull."""

from __future__ import annotations

from typing import Any

from ...studies.moves_and_pulls import movement_and_pull
from ...units.exact import INCH_M
from . import exercise

_START: dict[str, Any] = {
    "wood": "white oak",
    "width": 20 * INCH_M,
    "driest": 25.0,
    "dampest": 62.0,
    "rings": "flatsawn",
}
_MOVED: dict[str, dict[str, Any]] = {
    "Wood": {"wood": "black cherry"},
    "Width": {"width": 12 * INCH_M},
    "Dry air": {"driest": 40.0},
    "Damp air": {"dampest": 75.0},
    "Rings": {"rings": "quartersawn"},
}


@exercise(
    "start-here/which-slider",
    "Glue the ends. Which slider changes how far the panel moves, but hardly how hard it pulls?",
    options=tuple(_MOVED),
    misses={
        "Wood": "Another wood shrinks more or less for the same air, so both readings change together.",
        "Dry air": "Drier air takes more water out, so the wood shrinks further, and is stretched further.",
        "Damp air": "Damper air makes the year larger, so both readings grow.",
        "Rings": "Turned rings halve both: the wood moves less, so less is held back.",
    },
    why="Half the width moves half as far, but there is half as much wood to be stretched. So a narrow panel is no safer to "
    "glue than a wide one.",
    way="Put everything back, then move one slider at a time from end to end and look at both bars.",
)
def which_slider() -> str:
    """The slider that leaves the pull where it was, while the movement changes by more than a fifth."""
    return next(name for name, moved in _MOVED.items() if _changes(moved))


def _changes(moved: dict[str, Any]) -> bool:
    before, after = (_both(**{**_START, **change}) for change in ({}, moved))
    return abs(after[0] / before[0] - 1.0) > 0.2 and abs(after[1] / before[1] - 1.0) < 0.03


def _both(**state: Any) -> tuple[float, float]:
    moves, pulls = movement_and_pull(**state)
    return float(moves[0]) * state["width"], float(pulls[0])
