"""Crossing the grain: predictions and exercises on grip, strain rule, and which stock to choose."""

from __future__ import annotations

from typing import Any

import numpy as np

from ...restraint.closed_forms import held_strain
from ...restraint.elastic import elastic_constants
from ...restraint.field_readings import across_stress_pa
from ...restraint.held import held_panel
from . import exercise, prediction

_BOARD_M: dict[str, Any] = {"width_m": 0.305, "length_m": 0.457, "thickness_m": 0.019, "strip_width_m": 0.051}


_SEAT: dict[str, Any] = {
    "width_m": 0.508,
    "length_m": 1.1176,
    "thickness_m": 0.0222,
    "glue_up_mc_percent": 8.4,
    "year_mc_percent": [11.4, 5.4],
}


@prediction(
    "crossing-the-grain/where-it-cracks",
    "The border, here 2 in (51 mm) wide, is glued across both ends of the oak seat in autumn. If the panel itself cracks in "
    "its first dry winter, where does the crack run?",
    options=(
        "Near a corner, where the panel has moved furthest",
        "Along the glue line, from edge to edge",
        "From the middle of the end, along the grain",
    ),
)
def where_it_cracks() -> tuple[str, str]:
    """Where the first quarter of the panel, counted in widths from the glue line, is pulled hardest across the grain."""
    plane = held_panel("white oak", strip_width_m=0.0508, **_SEAT).plane_field
    places = np.linspace(0.0, 0.5 * plane.plane.width_m, 21)
    near = plane.plane.depth_m - plane.plane.width_m * np.linspace(0.0, 0.25, 9)
    pull = across_stress_pa(plane, places, near).mean(axis=1)
    options = where_it_cracks.question.options
    return options[2] if np.argmax(pull) < 10 else options[0], (
        "The corners move most, but there the panel's free edge gives way. The pull grows towards the middle, and wood "
        "splits along its grain."
    )


@prediction(
    "crossing-the-grain/wider-border",
    "A border of 4 in (102 mm) instead of 2 in (51 mm): how hard does it hold the end of the panel?",
    options=("Twice as hard", "About a quarter harder", "Hardly harder at all"),
)
def wider_border() -> tuple[str, str]:
    """The grip of both."""
    two, four = (held_panel("white oak", strip_width_m=w, **_SEAT).restraint.number for w in (0.0508, 0.1016))
    more = four / two - 1.0
    options = wider_border.question.options
    return options[2] if more < 0.12 else options[1] if more < 0.6 else options[0], (
        f"The 2 in border holds back {100 * two:.0f} % of the movement, the 4 in border {100 * four:.0f} %: only wood close "
        "to the glue line works."
    )


@exercise(
    "crossing-the-grain/strain-rule",
    "A cherry board wants to become 1.2 % narrower from its dampest to its driest month (its own movement, as a share "
    "of its width). A glued border holds back three quarters of that. What strain does the wood have to take up itself?",
    kind="percent",
    tolerance=0.05,
    misses={
        1.2: "That is what the board would like to do; the border leaves it a quarter of that, and the wood takes up the "
        "rest.",
        0.3: "That quarter still happens as movement. Asked is what the wood must take up because it may not move.",
        0.75: "Three quarters is the grip; take that share of the movement.",
    },
    why="At 0.90 % it stands at the strain from which wood starts to fail: by this rule the border has to slide.",
    way="Grip times the movement that is not allowed: 0.75 x 1.2 %.",
)
def strain_rule() -> float:
    """Restraint factor times free strain."""
    return 100.0 * held_strain(0.75, -0.012)


@exercise(
    "crossing-the-grain/quartersawn",
    "Somebody offers quartersawn oak for the seat: it moves half as much across its width. For the same glued border in "
    "the same house, by the stress model, what does that do to the pull across the grain?",
    options=("It halves it, more or less", "It hardly changes it", "It doubles it"),
    misses={
        "It halves it, more or less": "The movement halves, but quartersawn oak is more than twice as stiff across "
        "its width.",
        "It doubles it": "Stiffness alone would do that; the movement it acts on is only half as large.",
    },
    why="Half the movement times twice the stiffness. It is a help all the same: the wood is stretched half as far, and "
    "pulled that way it bears more, so the chance of a crack falls; not enough to promise it in this house.",
    way="Set the boards of the study to quartersawn and compare the stress model and the chance of a crack.",
)
def quartersawn() -> str:
    """Peak tension of quartersawn against flatsawn oak."""
    flat, quarter = (_pull("white oak", angle) for angle in (0.0, 90.0))
    ratio = quarter / flat
    return "It halves it, more or less" if ratio < 0.7 else "It doubles it" if ratio > 1.5 else "It hardly changes it"


def _pull(species: str, ring_angle_deg: float) -> float:
    held = held_panel(
        species,
        ring_angle_deg=ring_angle_deg,
        strip_ring_angle_deg=ring_angle_deg,
        glue_up_mc_percent=8.4,
        year_mc_percent=(11.4, 5.4),
        **_BOARD_M,
    )
    return held.season.relaxed_pa


@exercise(
    "crossing-the-grain/full-grip",
    "On paper: flatsawn white ash, rigidly held, dries by 4 points. Its modulus across the grain is 1056 MPa and it "
    "shrinks 0.274 % for each point. What pull would that be if nothing relaxed?",
    kind="stress",
    tolerance=0.3e6,
    misses={
        2.9e6: "That is one point of drying; the board dries by four.",
        1056e6: "That is the modulus; the pull is modulus times the strain that is held back, 4 x 0.00274.",
    },
    why="Nearly twice what white ash bears across its grain (940 psi, 6.5 MPa), and still most such joints live some "
    "years: slow drying lets the wood creep away from most of it.",
    way="Modulus times strain: 1056 MPa x 4 x 0.00274.",
)
def full_grip() -> float:
    """Full restraint: modulus times free strain."""
    return elastic_constants("white ash").number("modulus_tangential_pa") * 4 * 0.00274
