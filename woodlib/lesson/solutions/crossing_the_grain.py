"""Exercises of the lesson on crossing the grain: grip, strain rule, slots, and which stock to choose."""

from __future__ import annotations

from typing import Any

from ...movement.wood import wood_of
from ...restraint.closed_forms import held_strain
from ...restraint.elastic import elastic_constants
from ...restraint.fasteners import slot_plan
from ...restraint.held import held_panel
from . import exercise

_BOARD_M: dict[str, Any] = {"width_m": 0.305, "length_m": 0.457, "thickness_m": 0.019, "strip_width_m": 0.051}


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
    "crossing-the-grain/hinge-strip",
    "A hinge strip is screwed across the grain of a flatsawn white ash lid: three 4 mm screws, the outer two 16 in "
    "(406 mm) apart, the middle one tight. Fitted at 8 %, the lid swings from 6 to 12 %. How long is each outer slot, "
    "with 1/16 in (1.5 mm) to fit it, without any margin for doubt?",
    kind="length",
    tolerance=0.0016,
    safe="up",
    misses={
        0.0055 + 0.406 * 0.01644: "That is the slot for a strip that is tight at one end; here the middle is tight, "
        "and each slot sees half.",
        0.203 * 0.01644: "That is the travel alone; the screw itself and some room to fit it have to go into the slot "
        "too.",
        0.0055 + 0.203 * 0.01096: "That covers the way outward, from 8 up to 12 %; from 8 down to 6 % the screw goes "
        "inward.",
    },
    why="Of that only 3.3 mm (1/8 in) is travel: the middle screw halves what each end has to do.",
    way="Ash moves 0.274 % for each point. Six points over 203 mm, plus 4 mm of screw, plus 1.5 mm.",
)
def hinge_strip() -> float:
    """The slots of a strip that is tight in its middle."""
    wood = wood_of("white ash")
    swelling, shrinkage = (float(wood.axis_strains(8.0, moisture)[2]) for moisture in (12.0, 6.0))
    return slot_plan([0.0, 0.203, 0.406], swelling, shrinkage, 0.004, "middle").longest_m


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
