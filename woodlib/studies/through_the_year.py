"""A piece month by month for the client: as first seen, held fast, beside as it will be built."""

from __future__ import annotations

from dataclasses import dataclass, replace

from ..picture.scene import Mark, Picture, Words
from ..study.answer import Answer, Reading
from ..study.inputs import Choice
from ..study.study import Study
from ..ways.client_held import held_cut, held_fast
from ..ways.client_parts import GAP, HALF, HEIGHT, LETTERS, RESULT_Y, WIDTH, Seen
from ..ways.client_view import view_of
from ..ways.risk import risk_levels
from ..ways.way import Way
from ..words.decided import Pick, pick
from ..words.say import Said, length, percent, say, whole_percent

KEY = "through-the-year"
QUESTION = "How will it stand, month by month?"
TODAY = "the day it is cut"
HARDLY_M = 0.0008  # an opening below this is written as none: half of 1/16 in


@dataclass(frozen=True)
class Month:
    """One place of the slider: its name, air and wood in percent, and the likely change of width since the day it is cut.

    The change is a share of the width; ``line`` is how wide the opening that is seen stands, m; ``cut`` marks that day
    itself, before any summer.
    """

    name: str
    rh_percent: float | None
    mc_percent: float
    goes: float
    line: float
    cut: bool = False


@dataclass(frozen=True)
class Held:
    """The piece as first seen: what its border holds, the push of damp months that a drying has to take back first, and how
    many times the likely pull the careful one is."""

    grip: float
    reach_m: float
    taken_back: float
    careful: float
    ends: bool
    says: str

    def pull(self, month: Month, dampest: float) -> float:
        """Strain that pulls on the wood in a month, after a damp summer; below zero it is squeezed."""
        first = -self.grip * month.goes
        after_summer = self.grip * (dampest - month.goes) - self.taken_back
        return first if month.cut else max(first, after_summer)


@dataclass(frozen=True)
class PieceYear:
    """What the client's year is drawn from."""

    title: str
    months: tuple[Month, ...]
    start: str
    way: Way
    drawn: Seen
    held: Held

    @property
    def dampest(self) -> float:
        """The largest change of width of any month, as a share."""
        return max(month.goes for month in self.months)

    @property
    def furthest(self) -> float:
        """The largest change by size."""
        return max(abs(month.goes) for month in self.months)

    @property
    def times(self) -> int:
        """How much larger than life movement is drawn from above."""
        return replace(self.drawn, furthest=self.furthest).times

    def level(self, month: Month) -> int:
        """0 calm, 1 pulled, 2 past its limit, of the half that is held, by the careful pull."""
        pull = self.held.careful * self.held.pull(month, self.dampest)
        return sum(pull >= risk.from_strain for risk in risk_levels()[1:])

    @property
    def splits(self) -> bool:
        """Whether a split is drawn in any month."""
        return any(self.level(month) == 2 for month in self.months)


def through_the_year(year: PieceYear) -> Study:
    """The client's study: one slider with the months, and the day it is cut."""
    by_name = {month.name: month for month in year.months}
    driest = min(year.months, key=lambda month: month.goes)

    def answer(month: str) -> Answer:
        here = by_name[month]
        pull, level = year.held.pull(here, year.dampest), year.level(here)
        seen = replace(
            year.drawn,
            goes=here.goes,
            furthest=year.furthest,
            line=here.line,
            split=max(pull, 0.0) * year.drawn.width,
            level=level,
        )
        held, built = held_words(pull, level, here.cut), built_words(year, seen)
        return Answer(
            picture_of(year, here, seen, held[0]),
            say(f"{month}: {{held}}; {{built}}.", held=held[1], built=built),
            (
                *air_readings(here),
                Reading(year.held.says.capitalize(), held[0], held[1], Pick(float(level), ("fine", "watch", "stop"))),
                Reading("As we build it", FREE, built, "fine"),
            ),
            f"Two drawings side by side, from above and in the cut. Left, {year.held.says.lower()}: a panel that cannot "
            f"move. Right, {year.way.with_article}: it moves, and the line beside it opens and shuts.",
            (
                f"From above, movement is drawn {seen.times} times its size; the cut has its true proportions. Driest: {driest.name}.",
            ),
        )

    options = tuple(month.name for month in year.months)
    return Study(KEY, QUESTION, (Choice("month", "Month", options, year.start, ordered=True),), answer)


FREE = "Nothing pulls"


def held_words(pull: float, level: int, rests: bool) -> tuple[Pick, Pick]:
    """What the held half goes through: a word or two, and a sentence; ``rests`` on the day it is cut, when nothing has moved."""
    step = 0.0 if rests else 1.0 if pull <= 0.0 else 2.0 + level
    return (
        Pick(step, ("Nothing pulls yet", "Squeezed", "Pulled a little", "Pulled hard", "Past its limit")),
        Pick(
            step,
            (
                "held fast, and nothing has moved yet",
                "held fast, the wood is squeezed; a split would be shut, not healed",
                "held fast, the wood is pulled a little",
                "held fast, the wood is pulled harder than it can bear for good",
                "held fast, the wood is pulled past its limit and may split",
            ),
        ),
    )


def built_words(year: PieceYear, seen: Seen) -> Said | Pick | str:
    """The same for the half as it is built."""
    opens = year.way.opens
    if opens is None:
        return "free, nothing pulls; it moves, and no line opens"
    wide = say(f"free, nothing pulls; the {opens.name} is {{line}} wide", line=length(seen.line))
    return pick(seen.line, [HARDLY_M], [f"free, nothing pulls; the {opens.name} is shut", wide])


def opening_words(way: Way, seen: Seen) -> Said | Pick | str:
    """What is measured below the cut: the opening, or, where none is seen, how far each edge has gone."""
    opens, edge = way.opens, 0.5 * seen.goes * seen.width
    if opens is not None:
        return pick(
            seen.line, [HARDLY_M], [f"{opens.what} shut", say(f"{opens.what} {{line}}", line=length(seen.line))]
        )
    if not way.solid:
        return "hardly moves"
    gone = [say(f"edge {{line}} {side}", line=length(abs(edge))) for side in ("in", "out")]
    return pick(edge, [-HARDLY_M, HARDLY_M], [gone[0], "edge as cut", gone[1]])


def split_words(seen: Seen) -> Pick:
    """How wide a split would stand, at most."""
    return pick(seen.split, [HARDLY_M], ["split, a hair wide", say("split, up to {split}", split=length(seen.split))])


def air_words(month: Month) -> Pick:
    """Air and wood of a month in a few words."""
    wood = percent(month.mc_percent)
    known = say("air {air}, wood {wood}", air=whole_percent(month.rh_percent or 0.0), wood=wood)
    return Pick(float(month.rh_percent is not None), (say("wood {wood}", wood=wood), known))


def air_readings(month: Month) -> tuple[Reading, ...]:
    """Air and wood of a month; on the day it is cut only the wood is known."""
    air = say("{air} humidity", air=whole_percent(month.rh_percent or 0.0))
    return (
        Reading("Air in the room", Pick(float(month.rh_percent is not None), ("not measured", air))),
        Reading("Moisture in the wood", say("{wood} of its dry weight", wood=percent(month.mc_percent))),
    )


def picture_of(year: PieceYear, month: Month, seen: Seen, state: Pick) -> Picture:
    """Both halves of one month."""
    right = HALF + GAP
    plan, cut = view_of(year.way)
    change = seen.goes * seen.width
    sides = [
        say(f"{'panel ' if year.way.framed else ''}{{change}} {side}", change=length(abs(change)))
        for side in ("narrower", "wider")
    ]
    marks: list[Mark] = [
        Words(0.0, 15.0, "As you saw it" if year.held.ends else "If it were held", "ink", LETTERS, "start", bold=True),
        Words(0.0, 34.0, year.held.says, "quiet", LETTERS, "start"),
        Words(right, 15.0, "As we build it", "ink", LETTERS, "start", bold=True),
        Words(right, 34.0, year.way.short, "quiet", LETTERS, "start"),
        *held_fast(seen, 0.0, year.held.ends),
        *held_cut(seen, 0.0, split_words(seen)),
        *plan(seen, right),
        *cut(seen, right, opening_words(year.way, seen)),
        Words(0.0, RESULT_Y, state, Pick(float(seen.level), ("fine", "watch", "stop")), LETTERS, "start", bold=True),
        Words(0.0, RESULT_Y + 19.0, air_words(month), "ink", LETTERS, "start"),
        Words(right, RESULT_Y, FREE, "fine", LETTERS, "start", bold=True),
        Words(
            right,
            RESULT_Y + 19.0,
            pick(change, [-HARDLY_M, HARDLY_M], [sides[0], "as wide as when cut", sides[1]]),
            "ink",
            LETTERS,
            "start",
        ),
    ]
    return Picture(f"{year.title}: as first seen and as it is built", WIDTH, HEIGHT, tuple(marks))
