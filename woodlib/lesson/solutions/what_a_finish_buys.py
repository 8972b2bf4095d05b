"""What a finish buys: predictions and exercises."""

from __future__ import annotations

from ...moisture.drive import steady_air
from ...moisture.equilibrium import emc_percent
from ...moisture.finishes import find_finish
from ...moisture.following import follow
from ...moisture.hysteresis import loop
from ...moisture.stock import Stock
from ...moisture.swing import coat_by_coat, year_inside
from ..case import seat
from . import exercise, prediction

_THIN_M = 0.0191


@prediction(
    "what-a-finish-buys/sealed",
    "Three coats of varnish on every face of the finished seat. Which part of the yearly swing of its moisture do they keep "
    "out, against bare wood?",
    kind="percent",
    close="10 %",
)
def sealed() -> tuple[float, str]:
    """The swing inside, with no coat and with three."""
    coats = coat_by_coat("urethane varnish", Stock.of("white oak", seat().piece.thickness_m), seat().year)
    bare, three = (coats[count].inside.swing_percent.mid for count in (0, 3))
    return 100.0 * (1.0 - three / bare), f"{three:.1f} of {bare:.1f} % of moisture still come and go."


@prediction(
    "what-a-finish-buys/one-face",
    "A board at 12 % is varnished on its upper face alone; below it is bare. It comes into dry air. What does its upper face do in the first week?",
    options=("It goes hollow", "It stays flat", "It crowns"),
)
def one_face() -> tuple[str, str]:
    """The sign of the tilt after a week: above zero hollow on the varnished face."""
    board = Stock.of("white oak", _THIN_M, first_finish=find_finish("urethane varnish", 3))
    tilt = follow(board, steady_air(21.0, 40.0, days=7.0), 12.0).tilt_percent[-1, 1]
    return ("It goes hollow" if tilt > 0 else "It crowns"), (
        "The bare face below dries first and shrinks, and pulls the board into a bow with the varnish on its back."
    )


@prediction(
    "what-a-finish-buys/spring-and-autumn",
    "Bare, thin wood lives in a room that goes from 25 % in winter to 62 % in summer, year after year. Twice a year it passes 50 %. "
    "Is it equally moist both times?",
    options=("Yes: the air decides", "No: moister in spring, on the way up", "No: moister in autumn, on the way down"),
)
def spring_and_autumn() -> tuple[str, str]:
    """Moisture at 50 % on the two sides of the yearly loop."""
    dry, damp, middle = (float(emc_percent(20.0, humidity)) for humidity in (25.0, 62.0, 50.0))
    wetting, drying = (float(side) for side in loop(dry, damp, middle, "worn in"))
    options = spring_and_autumn.question.options
    named = options[0] if abs(drying - wetting) < 0.01 else options[2] if drying > wetting else options[1]
    return named, (
        f"{wetting:.1f} % on the way up, {drying:.1f} % on the way down: little, but at both ends of the year it keeps the wood from "
        "going all the way."
    )


@exercise(
    "what-a-finish-buys/varnished-top",
    "A table top at 7 % has three coats of varnish above and bare wood below. It is delivered to a damp seaside flat "
    "(invented). "
    "What does it do in the first weeks?",
    options=("Its upper face goes hollow", "It stays flat", "Its upper face crowns"),
    misses={
        "It stays flat": "The two faces let water in at unlike speed, so that for a while one face is larger than the "
        "other.",
        "Its upper face crowns": "That would be so if the upper face took up water first; here the lower one is open.",
    },
    why="The bare underside takes up water first and grows, and the top dishes. Finish both faces alike.",
    way="Set the air from 35 % to 65 %, varnish above, bare below, and look at the six ends.",
)
def varnished_top() -> str:
    """The sign of the tilt after two weeks: above zero hollow on the first face."""
    top = Stock.of("white oak", _THIN_M, first_finish=find_finish("urethane varnish", 3))
    tilt = follow(top, steady_air(22.0, 65.0, days=14.0), 7.0).tilt_percent[-1, 1]
    return "Its upper face goes hollow" if tilt > 0 else "Its upper face crowns"


def _year(name: str) -> float:
    finish = find_finish(name, 3)
    stock = Stock.of("white oak", seat().piece.thickness_m, first_finish=finish, second_finish=finish)
    return year_inside(stock, seat().year).swing_percent.mid


@exercise(
    "what-a-finish-buys/oiled-year",
    "In the invented house the air asks a swing of 5.9 points of the wood each year. How large a swing does the seat, 7/8 in "
    "(22 mm) thick, make with three coats of linseed oil on both faces?",
    kind="moisture",
    tolerance=0.3,
    misses={
        0.0: "No finish of the table stops water; oil hardly slows it.",
        3.7: "That is what three coats of varnish leave. Oil lets through far more.",
        5.9: "Close, but even bare wood of this thickness does not follow the air all the way.",
    },
    why="Bare wood makes 5.1 points, and oiled wood hardly less: oil is for the hand and the eye.",
    way="Unfold the cell that lists the coats and write linseed oil in it.",
)
def oiled_year() -> float:
    """The yearly swing inside, both faces oiled."""
    return _year("linseed oil")


@exercise(
    "what-a-finish-buys/where-it-ends",
    "The same board lies in the same room for five years, once bare, once under six coats of varnish. Where does its moisture end?",
    options=("The varnished one stays where it was", "Both end at the same moisture", "The varnished one ends halfway"),
    misses={
        "The varnished one stays where it was": "Six coats keep out three quarters for a week. Five years are 260 weeks.",
        "The varnished one ends halfway": "A film changes how fast water goes through, not where it stops going.",
    },
    why="The air decides where, the finish only when.",
    way="Look at the dashed line of the study while you change the finish.",
)
def where_it_ends() -> str:
    """Bare and varnished after five years of steady air."""
    ends = []
    for name, coats in (("bare", 0), ("urethane varnish", 6)):
        finish = find_finish(name, coats) if coats else find_finish(name)
        board = Stock.of("white oak", _THIN_M, first_finish=finish, second_finish=finish)
        ends.append(
            float(follow(board, steady_air(21.0, 40.0, days=1825.0), 12.0, step_hours=48.0).mean_percent[-1, 1])
        )
    return "Both end at the same moisture" if abs(ends[0] - ends[1]) < 0.1 else "The varnished one ends halfway"
