"""Laying boards: predictions and exercises on the cup of a board, of its strips, and of five in a panel."""

from __future__ import annotations

from ...moisture.equilibrium import emc_percent
from ...movement.glue_up import glue_up
from ...movement.shape import cup_m
from ...movement.wood import wood_of
from . import exercise, prediction

_INCH_M = 0.0254
_EIGHTH_M, _SIXTY_FOURTH_M = _INCH_M / 8, _INCH_M / 64


def _oak_cup(width_m: float = 0.203) -> float:
    return float(cup_m(width_m, 0.102, *wood_of("white oak").axis_strains(12, 8)[1:]))


@prediction(
    "laying-boards/hollow-side",
    "A flatsawn board, flat today, gets drier. Which side goes hollow?",
    options=("The side towards the bark", "The side towards the pith", "Either, as luck has it"),
)
def hollow_side() -> tuple[str, str]:
    """The sign of the cup: above zero hollow towards the bark."""
    side = "The side towards the bark" if _oak_cup() > 0 else "The side towards the pith"
    return side, ("Not by luck: wood shrinks most along its rings, and the bark side has more of its width along them.")


@prediction(
    "laying-boards/oak-cup",
    "White oak, 8 in (203 mm) wide, sawn 4 in (102 mm) above the pith, dries by 4 % moisture. How deep is the cup that its "
    "rings give it?",
    kind="fine_length",
    close="0.3 mm",
)
def oak_cup() -> tuple[float, str]:
    """By the true circles."""
    return _oak_cup(), (
        "Hardly more than a thick line. If a board of yours cups more, moisture or a larger drop is behind it."
    )


@prediction(
    "laying-boards/five-boards",
    "Five boards are glued up with all bark sides up, and cup. How far is the panel out of flat, against one board?",
    options=("As far as one board", "5 times as far", "25 times as far"),
)
def five_boards() -> tuple[str, str]:
    """A panel of five against one of its boards."""
    strains = wood_of("white oak").axis_strains(12, 8)[1:]
    panel = glue_up([0.1016] * 5, [0.102] * 5, *strains).same_way.out_of_flat_m
    times = panel / _oak_cup(0.1016)
    named = "25 times as far" if times > 15 else "5 times as far" if times > 3 else "As far as one board"
    return named, "One arc, five times as wide; and the depth of an arc goes with the square of its width."


@exercise(
    "laying-boards/ripped-in-two",
    "A board 8 in wide is cupped by 1/8 in (3.2 mm). You rip it down the middle. How deep is the cup of each half?",
    kind="fine_length",
    tolerance=0.0002,
    misses={
        _EIGHTH_M: "The curve stays, but a straightedge over half the width spans much less of it.",
        _EIGHTH_M / 2: "Half the width has less than half the cup: the depth of an arc goes with the square of its "
        "width.",
    },
    why="A quarter. That is why a cupped board is ripped first and flattened after: the planer takes a quarter as "
    "much.",
    way="Draw an arc and half of it, or put the width of the study from 8 in to 4 in.",
)
def ripped_in_two() -> float:
    """The square of the width."""
    return _EIGHTH_M * 0.5**2


@exercise(
    "laying-boards/one-big-arc",
    "Each of five boards cups by 1/64 in (0.4 mm). Glued edge to edge with all bark sides up, how far is the panel "
    "out of flat?",
    kind="movement",
    tolerance=0.001,
    misses={
        _SIXTY_FOURTH_M: "Each board starts where its neighbour left off, and in its direction: the slopes add up.",
        5 * _SIXTY_FOURTH_M: "That would be five cups on top of each other; but the panel is one arc five times as "
        "wide.",
    },
    why="25 times, 3/8 in (9.5 mm): five times the width, and the depth of an arc goes with the square.",
    way="Compare the first and the third reading of the study.",
)
def one_big_arc() -> float:
    """Boards of that cup, glued the same way: the strains are chosen to give it."""
    width, pith, radial = 4 * _INCH_M, 4 * _INCH_M, -0.01
    tangential = radial - 4.0 * pith * _SIXTY_FOURTH_M / width**2
    share = _SIXTY_FOURTH_M / float(cup_m(width, pith, radial, tangential))
    panel = glue_up([width] * 5, [pith] * 5, radial, radial + share * (tangential - radial))
    return panel.same_way.out_of_flat_m


@exercise(
    "laying-boards/seaside-board",
    "A flatsawn serving board of cherry, flat at 7 %, comes into a seaside flat of 65 % (both invented). Its bark "
    "side is up. "
    "What does that side do for good?",
    options=("It goes hollow", "It stays flat", "It crowns"),
    misses={
        "It goes hollow": "That is what drying does. In air of 65 % the board takes up water, from 7 to about 12 %.",
        "It stays flat": "Along the rings wood swells about twice as far as across them, so that the rings open or "
        "close.",
    },
    why="It swells more along the rings than across them, so the rings close up and the bark side crowns.",
    way="Move the last slider of the study below zero.",
)
def seaside_board() -> str:
    """Sign of the cup when the board takes up water."""
    change = emc_percent(22.0, 65.0) - 7.0
    wood = wood_of("black cherry")
    cup = cup_m(0.2, 0.1, wood.radial_coefficient * change, wood.tangential_coefficient * change)
    return "It crowns" if cup < 0 else "It goes hollow"


@exercise(
    "laying-boards/nearest-the-heart",
    "Three flatsawn boards of one log, all of one width, lie 3, 5 and 8 in above the pith. Which cups most as it "
    "dries?",
    options=("The one at 3 in", "The one at 8 in", "All alike: it is the same wood"),
    misses={
        "The one at 8 in": "Far from the pith the rings are nearly straight, and the board shrinks nearly evenly "
        "across its width.",
        "All alike: it is the same wood": "The same wood, but not the same rings: the tighter they bend, the more the "
        "board does.",
    },
    why="Cup goes with one over the distance from the pith. Keep boards near the heart for narrow parts.",
    way="Move the first slider of the study and watch the cup.",
)
def nearest_the_heart() -> str:
    """Cups at the three distances."""
    cups = {
        name: float(cup_m(0.15, pith * _INCH_M, -0.0072, -0.0146))
        for name, pith in (("The one at 3 in", 3), ("The one at 5 in", 5), ("The one at 8 in", 8))
    }
    return max(cups, key=lambda name: cups[name])
