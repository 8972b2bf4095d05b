"""All ways to build one piece side by side: how each comes through its house, and up to what width it is sensible."""

from __future__ import annotations

from ..picture.scene import Area, Circle, Frame, Line, Mark, Picture, Words, box
from ..study.answer import Answer, Reading
from ..study.study import Study
from ..ways.judge import NOT_KNOWN, STRESS_WARNS, Judgement, range_words
from ..ways.registry import way_of
from ..ways.risk import risk_levels
from ..words.decided import Decided, Pick, Sliding, level, pick, reached
from ..words.say import Said, count, length, percent, say, strain
from .sliding_piece import PieceInAir, SlidingPiece
from .ways_to_build import spans_of

KEY = "ways-compared"
QUESTION = "Which ways to build this piece are sensible in its house, and up to what width?"
NEAR = 0.85  # of its widest: from here a way is near its limit; an assumption of ours

_WIDTH, _ROW, _TOP, _BAR, _BELOW = 720.0, 27.0, 36.0, 13.0, 65.0
_GLUED_WORDS = ("safe", "strained", "cracking")
_SLIDING_WORDS = ("sensible", "near its limit", "too wide")
_TONES = ("fine", "watch", "stop")


def ways_compared(title: str, sliding: SlidingPiece) -> Study:
    """The comparison for a piece: ``title`` names it, ``sliding`` holds its ways in the order of the rows."""

    def answer(width: float, driest: float, dampest: float) -> Answer:
        here = sliding.at(driest, dampest)
        judged = compared(here, width)
        moves = range_words(here.travels(width), "swing")
        return Answer(
            picture_of(judged, sliding, width, f"{title}: ways to build, and the widest piece each bears"),
            say(
                "{width} wide, {good} in this house.",
                width=length(width),
                good=good_words(judged),
            ),
            (
                Reading("Free, it moves over the year", moves, "from the driest to the dampest month"),
                *(reading_of(entry, sliding) for entry in judged),
            ),
            in_words(sliding, len(judged), width),
            FINE_PRINT,
        )

    return Study(KEY, QUESTION, spans_of(sliding), answer)


class Judged:
    """One way: its verdict as a level of 0 to 2, its widest piece, and for a held way the strain held back."""

    def __init__(
        self,
        way: str,
        verdict: Decided,
        widest: Decided,
        pull: Decided | None = None,
        judgement: Judgement | None = None,
    ) -> None:
        self.way, self.level, self.widest, self.pull, self.judgement = way, verdict, widest, pull, judgement

    def of(self, options: tuple) -> Pick:
        """One of three options, by the level."""
        return pick(self.level, [1.0, 2.0], options)

    @property
    def words(self) -> Pick:
        """The word of its level."""
        if self.judgement is None:
            return self.of(_SLIDING_WORDS)
        return self.judgement.of_risk(_GLUED_WORDS, "not known")


def compared(here: PieceInAir, width: Sliding) -> tuple[Judged, ...]:
    """Every way of a piece at one width: held ways by strain and stress, those that slide by what grows with the width."""
    found = []
    for way in here.sliding.ways:
        if way_of(way).holds:
            held = here.judged(way, width)
            widest = (1.0 - reached(held.level, 1.0)) * here.sliding.scale_m  # strain hardly hangs on the width
            found.append(Judged(way, held.level, widest, held.most, held))
        else:
            widest = here.widest(way)
            found.append(Judged(way, level(width, [widest * NEAR, widest]), widest))
    return tuple(found)


def good_words(judged: tuple[Judged, ...]) -> Said:
    """How many ways are sensible, for a sentence."""
    good = sum((1.0 - reached(entry.level, 1.0 if entry.pull is not None else 2.0) for entry in judged), 0.0)
    return say(f"{{good}} of {len(judged)} ways to build are sensible", good=count(good))


_OTHERWISE = (
    f"strained: {STRESS_WARNS}",
    "squeezed: the wood grows after it is glued, more than any season gives back",
    "strained along the border: so thin or narrow a border has to follow the panel",
    "the ends of the glue line may open before the wood does",
    "where the glue gives way, the joint opens so far that it is seen",
    NOT_KNOWN,
)
"""What decides instead of the pull, in the order of ``DECIDERS``."""


def reading_of(entry: Judged, sliding: SlidingPiece) -> Reading:
    """What is said of one way."""
    name, tone = way_of(entry.way).title, entry.of(_TONES)
    judgement = entry.judgement
    if judgement is not None:
        meanings = entry.of(tuple(f"{risk.word}: {risk.meaning}" for risk in risk_levels()))
        words = pick(judgement.decides, [1.0, 2.0, 3.0, 4.0, 5.0, 6.0], [meanings, *_OTHERWISE])
        return Reading(name, say("up to {pull} held back", pull=strain(judgement.most)), words, tone)
    bears = pick(
        entry.widest,
        [sliding.scale_m],
        [
            say("up to {widest} wide", widest=length(entry.widest, "down")),
            say("{all} and more", all=length(sliding.scale_m)),
        ],
    )
    limit = way_of(entry.way).stopped_by
    if limit is None:
        return Reading(name, bears, "sensible at any width: each part moves by itself", tone)
    meaning = say(limit.meaning, limit=length(limit.most_m))
    joined = zip(_SLIDING_WORDS, ("; beyond, ", "; beyond, ", ": "), strict=True)
    return Reading(
        name, bears, entry.of(tuple(say(f"{word}{by}{{meaning}}", meaning=meaning) for word, by in joined)), tone
    )


def in_words(sliding: SlidingPiece, ways: int, width: float) -> Said:
    """What the picture shows."""
    return say(
        f"A bar for each of {ways} ways to build runs as far as the widest piece that it bears, on a scale up to "
        "{widest}; an upright line marks this piece, {width} wide. Bars that end before the line are out.",
        widest=length(sliding.scale_m),
        width=length(width),
    )


def picture_of(
    judged: tuple[Judged, ...], sliding: SlidingPiece, width: float, title: str, piece: str = "this piece"
) -> Picture:
    """A bar for each way, and an upright line for the piece."""
    scale = Frame(224.0, _TOP, 354.0, _ROW * len(judged), 0.0, sliding.scale_m, 0.0, 1.0)
    bottom = _TOP + scale.height
    gauge, mark = scale.gauge("length", "x")
    marks: list[Mark] = [mark]
    for number, entry in enumerate(judged):
        marks += _row(entry, scale, _TOP + _ROW * number)
    for tick in (sliding.scale_m / 6, 5 * sliding.scale_m / 6):
        marks.append(Line([(scale.x(tick), bottom), (scale.x(tick), bottom + 5)], "quiet", 1.4))
        marks.append(Words(scale.x(tick), bottom + 20, say("{tick}", tick=length(tick)), "quiet", 14))
    marks.append(Line([(scale.left, bottom), (scale.left + scale.width, bottom)], "quiet", 1.4))
    marks.append(Words(scale.left + scale.width / 2, bottom + 46, "widest that it bears, across the grain", "ink", 15))
    here = scale.x(width)
    marks.append(Line([(here, _TOP - 6), (here, bottom)], "today", 2.4))
    marks.append(Words(here, _TOP - 13, say(f"{piece}: {{width}}", width=length(width)), "today", 15, bold=True))
    return Picture(title, _WIDTH, bottom + _BELOW, tuple(marks), gauge)


def _row(entry: Judged, scale: Frame, top: float) -> list[Mark]:
    middle, tone = top + _ROW / 2, entry.of(_TONES)
    end = scale.x(entry.widest)
    bar = box(scale.left, middle - _BAR / 2, end - scale.left, _BAR)
    return [
        Line([(scale.left, middle), (scale.left + scale.width, middle)], "grid", 1.4),
        Area(bar, tone),
        Line([*bar, bar[0]], "edge", 1.0),
        Circle(end, middle, 4.5, tone, filled=True),
        Words(scale.left - 8, middle + 5, way_of(entry.way).short, "ink", 15, "end"),
        Words(scale.left + scale.width + 10, middle + 5, entry.words, tone, 15, "start", bold=True),
    ]


FINE_PRINT: tuple[str | Said, ...] = (
    "Slots, steps and gaps are those of the careful end of the movement (nine cases in ten), by the same rules as every "
    "verdict of the kit.",
    say(
        "What is too long a slot, too high a step or too wide a gap: common practice, no source. A way is called near its "
        "limit from {near} of its widest on.",
        near=percent(100 * NEAR),
    ),
    "Ways that hold the wood are judged by strain, elastic below 0.40 % and failing from 0.90 % (The Structural "
    "Conservation of Panel Paintings, Getty 1998); a glued border also by the stress model, where the wood's strength "
    "is printed; a rim on the face, a mitre, a tenon and a veneer by strain alone.",
    "Moisture from air: two-hydrate equation of the Wood Handbook FPL-GTR-190, eq. 4-5; movement: its eq. 13-2 from 6 "
    "to 14 %, total shrinkage outside.",
)
