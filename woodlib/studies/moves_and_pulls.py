"""Study: the first five minutes. How far a panel moves, and how hard it pulls when its ends are glued."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..movement.spread import USUAL_DOUBTS, strain_range
from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Words, box
from ..restraint.assumptions import assumption
from ..restraint.gathered import first_share
from ..restraint.measures import strain_edges
from ..study import Answer, Choice, Reading, Span, Switch, study
from ..units.exact import INCH_M
from ..words.decided import Decided, level, pick
from ..words.say import Said, length, movement, say, strain
from .crossing_numbers import DAMPEST_RH, DRIEST_RH, LENGTH_M, RINGS_DEG, THICKNESS_M, WIDTHS_M, cut_wood
from .crossing_panels import held_wood

WOODS = {name: name for name in ("white oak", "white ash", "black cherry", "black walnut", "sugar maple")}
BORDER_M = 2 * INCH_M
TIMES = 8  # the panel's movement is drawn this many times too large
_REACH = 0.3  # of the width: how far into the panel the drawing lets a glued end hold it

_PX_PER_M = 6.4 / INCH_M
_LEFT, _MIDDLE_Y = 36.0, 168.0
_MOVES = Frame(left=414, top=86, width=280, height=30, x_low=0.0, x_high=1.5 * INCH_M, y_low=0.0, y_high=1.0)
_PULLS = Frame(left=414, top=226, width=280, height=30, x_low=0.0, x_high=0.03, y_low=0.0, y_high=1.0)


def movement_and_pull(wood: str, width: Any, driest: Any, dampest: Any, rings: str) -> tuple[tuple, tuple]:
    """Share of its width that a panel moves, and the stretch that glued ends gather; each likely, lowest, highest.

    ``width`` in m, ``driest`` and ``dampest`` the air's relative humidity in %. The glue-up is halfway through the year.
    """
    cut = cut_wood(wood, rings)
    season = cut.season(driest, dampest)
    doubt, angle = USUAL_DOUBTS.air_percent, float(np.radians(RINGS_DEG[rings]))
    moistures = season.dry_mc, season.damp_mc
    low, mid, high = strain_range(cut.wood, angle, 0.0, *moistures, from_percent=doubt, to_percent=doubt)
    share = first_share(season.swing_percent, season.swing_percent * 0.5, assumption("relaxation_rate").middle)
    grip = held_wood(wood, rings).panel(width, BORDER_M, THICKNESS_M).restraint
    return (mid, low, high), tuple(each * share * grip for each in (mid, low, high))


@study(
    "moves-and-pulls",
    "How far does a panel move over a year, and how hard does it pull when its ends are glued?",
    [
        Choice("wood", "Wood", WOODS, "white oak"),
        Span("width", "Width, across the grain", "length", *WIDTHS_M, INCH_M, 20 * INCH_M),
        Span("driest", "Dry air: driest month", "humidity", *DRIEST_RH, 1, 25),
        Span("dampest", "Damp air: dampest month", "humidity", *DAMPEST_RH, 1, 62),
        Choice("rings", "Rings", {cut: cut for cut in RINGS_DEG}, "flatsawn"),
        Switch("glued", "Ends glued", True),
    ],
    more=("wood",),
)
def moves_and_pulls(wood: str, width: float, driest: float, dampest: float, rings: str, glued: bool) -> Answer:
    """Movement of the free panel, and the stretch that a border glued across its ends gathers in it."""
    shares, pulls = movement_and_pull(wood, width, driest, dampest, rings)
    moves, mid = tuple(each * width for each in shares), shares[0]
    pulls = pulls if glued else (0.0, 0.0, 0.0)
    return Answer(
        _picture(width, mid, moves[0], pulls[0], glued),
        _headline(moves[0], pulls[0], glued),
        (_moves(*moves), _pulls(*pulls) if glued else _free()),
        _told(moves[0], pulls[0], glued),
        (
            say(
                "A panel {length} long and {thick} thick; the border across each end is {border} wide and as thick. It is "
                "glued up halfway through its year.",
                length=length(LENGTH_M),
                thick=length(THICKNESS_M),
                border=length(BORDER_M),
            ),
            "Movement: Wood Handbook FPL-GTR-190 (2010), chapter 13. The wood follows the air in full, at 70 °F (21 °C); "
            "thick or varnished wood follows less. The range holds nine boards in ten.",
            say(
                "Pull: what the border keeps the wood from shrinking. Wood begins to yield at {low} and to fail at {high} "
                "(The Structural Conservation of Panel Paintings, Getty 1998). Its range is that of the movement.",
                low=strain(strain_edges()[0]),
                high=strain(strain_edges()[1]),
            ),
        ),
    )


def _moves(mid: Any, low: Any, high: Any) -> Reading:
    words = say("about {a}, could be {b} to {c}", a=movement(mid), b=movement(low), c=movement(high))
    return Reading("It moves", words, "across its width, from the driest to the dampest month, where nothing holds it")


def _pulls(mid: Decided, low: Any, high: Any) -> Reading:
    step = level(mid, strain_edges())
    meaning = [
        "it stretches and goes back: no harm",
        "it stretches for good: the wood takes a set, and may crack in the years to come",
        "stretched as far as this, wood starts to tear",
    ]
    words = say("stretched by about {a}, could be {b} to {c}", a=strain(mid), b=strain(low), c=strain(high))
    return Reading(
        "It pulls", words, pick(step, [1.0, 2.0], meaning), pick(step, [1.0, 2.0], ["fine", "watch", "stop"])
    )


def _free() -> Reading:
    return Reading("It pulls", "nothing", "its ends are free, so nothing stretches", "fine")


def _headline(moves: Decided, pulls: Any, glued: bool) -> Said:
    if not glued:
        return say("It moves {m} over the year and pulls at nothing.", m=movement(moves))
    return say("It would move {m}; its glued ends stretch it by {p}.", m=movement(moves), p=strain(pulls))


def _told(moves: Decided, pulls: Any, glued: bool) -> Said:
    ends = "held wide at both glued ends, narrower in the middle" if glued else "narrower along its whole length"
    return say(
        f"Left, the panel from above: dashed in the dampest month, filled in the driest, {ends}; movement drawn {TIMES} "
        "times too large. Right, two rules: it moves {m}, and its pull is {p}.",
        m=movement(moves),
        p=strain(pulls) if glued else "nothing",
    )


def _picture(width: float, share: Any, moves: Decided, pulls: Any, glued: bool) -> Picture:
    marks: list[Mark] = [
        Words(14, 22, f"From above, movement {TIMES} times too large", "ink", 15, "start", bold=True),
        *_panel(width, share, glued),
        Words(14, 330, "filled: driest month · dashed: dampest month", "quiet", 14, "start"),
        *_rule(_MOVES, moves, "It moves", [(k * INCH_M / 2, length(INCH_M) if k == 2 else "") for k in range(4)]),
        *_rule(_PULLS, pulls, "It pulls", [(k / 100, f"{k} %" if k else "0") for k in range(4)]),
    ]
    low = _PULLS.top + _PULLS.height
    for place, words, role, side in zip(
        strain_edges(), ("takes a set", "starts to tear"), ("watch", "stop"), (-1, 1), strict=True
    ):
        x = _PULLS.x(place)
        marks += [
            Line([(x, _PULLS.top - 6), (x, low + 30)], role, 2.0, "5 3"),
            Words(x + 5 * side, low + 30, words, role, 14, "start" if side > 0 else "end"),
        ]
    return Picture("A panel that moves, and pulls", 720, 344, tuple(marks))


def _rule(frame: Frame, value: Any, name: str, ticks: list[tuple[float, Any]]) -> list[Mark]:
    """A bar on a rule."""
    bar = box(frame.left, frame.top, frame.x(value) - frame.left, frame.height)
    marks: list[Mark] = [Words(frame.left, frame.top - 12, name, "ink", 16, "start", bold=True)]
    marks += [Area(frame.outline, "range"), Area(bar, "damp" if frame is _MOVES else "dry")]
    for place, label in ticks:
        x, low = frame.x(place), frame.top + frame.height
        marks += [Line([(x, low), (x, low + 6)], "quiet", 1.2)]
        marks += [Words(x, frame.top - 12 if frame is _PULLS else low + 20, label, "quiet", 13)] if place else []
    return marks


def _panel(width: float, share: Any, glued: bool) -> list[Mark]:
    half, long, border = width * (0.5 * _PX_PER_M), LENGTH_M * _PX_PER_M, BORDER_M * _PX_PER_M
    left, right = _LEFT + border, _LEFT + long - border
    x = np.linspace(0.0, 1.0, 13)
    far = np.minimum(x, 1.0 - x) * (right - left)
    free = [1.0 - 0.8 * np.exp(-far_px / (2 * half * _REACH)) if glued else 1.0 for far_px in far]
    halves = [half - half * (share * (TIMES * part)) for part in free]
    places = (left + x * (right - left)).tolist()
    edge = [(place, _MIDDLE_Y - each) for place, each in zip(places, halves, strict=True)]
    outline = edge + [(place, _MIDDLE_Y + each) for place, each in zip(places[::-1], halves[::-1], strict=True)]
    damp = box(left, _MIDDLE_Y - half, right - left, 2 * half)
    ends = [box(start, _MIDDLE_Y - half, border, 2 * half) for start in (_LEFT, right)] if glued else []
    grain = [
        Line([(place, _MIDDLE_Y + each * part) for place, each in zip(places, halves, strict=True)], "late-wood", 1.0)
        for part in (-0.75, -0.5, -0.25, 0.0, 0.25, 0.5, 0.75)
    ]
    marks: list[Mark] = [Area(outline, "wood"), *grain, Line([*outline, outline[0]], "edge", 1.6)]
    marks += [Line([*damp, damp[0]], "ghost", 1.6, "6 4")]
    for end in ends:
        marks += [Area(end, "wood-end"), Line([*end, end[0]], "edge", 1.6)]
        marks += [Circle(end[0][0] + border / 2, _MIDDLE_Y, 3.0, "edge", filled=True)]
    return marks
