"""Drawers, doors, backs and metal: predictions and exercises on gaps, slots and tight screws."""

from __future__ import annotations

from ...movement.board import Board
from ...movement.wood import wood_of
from ...restraint.fasteners import slot_plan
from ...restraint.measures import strain_edges
from ...units import both
from ..case import seat
from . import exercise, prediction

_INCH_M = 0.0254
_SIDE_M = 6 * _INCH_M


def _grows(width_m: float, start: float, end: float) -> float:
    return float(Board("white oak", width_m, 0.019, 0.5).change(start, end).width_m)


@prediction(
    "drawers-doors-backs-and-metal/close-drawer",
    "A flatsawn oak drawer side, 6 in (152 mm) high, is fitted in March with 1/32 in (0.8 mm) above it. What does it do in September?",
    options=("It runs as before", "It sticks", "It rattles"),
)
def close_drawer() -> tuple[str, str]:
    """Growth from the driest to the dampest month of the case, against the gap."""
    months = seat().months.mc_percent
    grows = _grows(_SIDE_M, float(months.min()), float(months.max()))
    return ("It sticks" if grows > _INCH_M / 32 else "It runs as before"), (
        f"It grows by {both(grows, 64, 0.1)} until then, more than twice the room that it was given."
    )


@prediction(
    "drawers-doors-backs-and-metal/six-tight-screws",
    "A steel strip is screwed tight across the grain of the seat, six stout screws in a row. What happens over the years?",
    options=(
        "The screws hold, and nothing happens",
        "The steel stretches with the wood",
        "The wood takes a set and may split",
    ),
)
def six_tight_screws() -> tuple[str, str]:
    """What a rigid hold would keep back over the year, against the strain at which wood takes a set."""
    months = seat().months.mc_percent
    held = abs(float(wood_of("white oak").axis_strains(float(months.max()), float(months.min()))[2]))
    options = six_tight_screws.question.options
    return options[2] if held > strain_edges()[0] else options[0], (
        f"The steel keeps {100 * held:.2f} % of the width from moving; from {100 * strain_edges()[0]:.2f} % wood takes a set."
    )


@exercise(
    "drawers-doors-backs-and-metal/hinge-strip",
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
    "drawers-doors-backs-and-metal/fitted-in-winter",
    "A flatsawn oak drawer side, 6 in (152 mm) high, reads 7 % when it is fitted. In the damp months it will be at 10 %. Oak moves 0.365 % "
    "for a point. How far does it grow?",
    kind="fine_length",
    tolerance=_INCH_M / 64,
    misses={
        _grows(_SIDE_M, 9.0, 10.0): "That is one point; from 7 to 10 % there are three.",
        _grows(_SIDE_M, 0.0, 10.0): "It was not bone dry when it was fitted: only the way from 7 to 10 % counts.",
    },
    why="A sixteenth, and a bit more for doubt: that is the gap above it today.",
    way="6 in x 3 x 0.00365.",
)
def fitted_in_winter() -> float:
    """The handbook's coefficient, three points, the side's height."""
    return _grows(_SIDE_M, 7.0, 10.0)


@exercise(
    "drawers-doors-backs-and-metal/pull-along-the-grain",
    "A pull, 128 mm from hole to hole, is screwed along the grain of the seat. Does it need a slot?",
    options=("Yes, one of its holes", "No", "Only in flatsawn wood"),
    misses={
        "Yes, one of its holes": "Along the grain wood moves by less than a hair over such a length; the hole's own play is more.",
        "Only in flatsawn wood": "Flat or quartersawn says how the width moves. This pull lies along the length.",
    },
    why="Wood hardly moves along its length: a hundredth of a millimetre or two here.",
    way="Compare how far wood moves along and across, in lesson 3.",
)
def pull_along_the_grain() -> str:
    """Movement along the grain over the pull, against a tenth of a millimetre of play."""
    months = seat().months.mc_percent
    along = abs(float(wood_of("white oak").axis_strains(float(months.max()), float(months.min()))[0])) * 0.128
    return "No" if along < 1e-4 else "Yes, one of its holes"
