"""Reading a board: predictions and exercises on what the rings at its end say."""

from __future__ import annotations

import numpy as np

from ...movement.wood import width_strain, wood_of
from . import exercise, prediction

_INCH_M = 0.0254
_OAK = wood_of("white oak")
_SHELF_M, _POINTS = 12 * _INCH_M, 4.0


def _across(ring_angle_deg: float) -> float:
    """Share of the width that oak moves for one point."""
    return float(width_strain(_OAK, np.radians(ring_angle_deg), 0.0, 8.0, 9.0))


@prediction(
    "reading-a-board/calmest-panel",
    "Three oak boards, all of one width. In which one does the width move least over the year?",
    options=("Rings along the width", "Rings that slant", "Rings that stand up across the width"),
)
def calmest_panel() -> tuple[str, str]:
    """The least movement across of the three angles."""
    options = calmest_panel.question.options
    shares = [_across(angle) for angle in (0.0, 45.0, 90.0)]
    return options[int(np.argmin(shares))], (
        f"{100 * shares[2]:.3f} % of the width for a point of moisture, against {100 * shares[1]:.3f} % with slanting rings "
        f"and {100 * shares[0]:.3f} % with rings along the width."
    )


@prediction(
    "reading-a-board/slanted-leg",
    "A leg is planed square. Its rings run from corner to corner. What has drying made of it?",
    options=("A smaller square", "An oblong: narrower one way", "A diamond: its corners are out of square"),
)
def slanted_leg() -> tuple[str, str]:
    """Sides of one length, corners out of square: the shear of strains that differ, turned by 45 degrees."""
    options = slanted_leg.question.options
    shear = abs(_OAK.tangential_coefficient - _OAK.radial_coefficient) * float(np.sin(np.radians(90.0)))
    sides = abs(_across(45.0) - _across(-45.0))
    named = options[2] if shear > 10 * sides else options[1] if sides > 0 else options[0]
    return (
        named,
        "It shrinks most along its rings, which is along one diagonal, so one diagonal gets shorter than the other.",
    )


@exercise(
    "reading-a-board/quartersawn-shelf",
    "A quartersawn oak shelf, 12 in (305 mm) wide, dries by four points. Oak moves 0.180 % for a point from ring to ring, and "
    "0.365 % along its rings. How much narrower does the shelf get?",
    kind="fine_length",
    tolerance=_INCH_M / 64,
    misses={
        _SHELF_M * _POINTS * _across(0.0): "That is a flatsawn shelf. Upright rings use the smaller number.",
        _SHELF_M * _across(90.0): "That is one point; the shelf dries by four.",
    },
    why="Four times 0.18 % of 12 in: less than a tenth of an inch.",
    way="12 in x 4 x 0.0018.",
)
def quartersawn_shelf() -> float:
    """Radial coefficient, four points, the shelf's width."""
    return _SHELF_M * _POINTS * _across(90.0)


@exercise(
    "reading-a-board/board-for-a-leg",
    "You want a square leg whose four faces look alike. Which board do you take, and what do you do about it?",
    options=(
        "Rings along one face: it stays square by itself",
        "Slanting rings, squared after it has come to rest",
        "Slanting rings, squared at once",
    ),
    misses={
        "Rings along one face: it stays square by itself": "It does stay square, but two faces show flat figure and two "
        "show stripes.",
        "Slanting rings, squared at once": "While it dries its corners go out of square, and you square it twice.",
    },
    why="The faces are alike because the rings meet them alike; the diamond is planed away once the leg is at rest.",
    way="Set the rings of the study to 45 degrees and look at the leg.",
)
def board_for_a_leg() -> str:
    """At rings of 45 degrees all faces are alike, and the corners move."""
    moves = abs(_OAK.tangential_coefficient - _OAK.radial_coefficient) > 0.1 * _OAK.radial_coefficient
    options = board_for_a_leg.question.options
    return options[1] if moves else options[2]


@exercise(
    "reading-a-board/which-way-thicker",
    "A flatsawn and a quartersawn board of one thickness take up water. Which one gets thicker by more?",
    options=("The flatsawn one", "The quartersawn one", "Both alike"),
    misses={
        "The flatsawn one": "Its rings lie along the width, so the big movement goes there; its thickness lies from ring to ring.",
        "Both alike": "Wood moves about twice as far along its rings as from ring to ring; look which way they run.",
    },
    why="Upright rings run through the thickness, so that is where the big movement goes.",
    way="Turn the rings of the study to 90 degrees and look at the thickness of the panel's board.",
)
def which_way_thicker() -> str:
    """Across the width one angle, through the thickness the other."""
    flat, quarter = _across(90.0), _across(0.0)
    return "The quartersawn one" if quarter > flat else "The flatsawn one"
