"""From a brief to verdicts and a decision."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from ..air.year import Year
from ..brief import Brief
from ..errors import InputError, Problems
from ..movement.months import MonthlyMoisture
from ..movement.spread import Doubts, Movement
from ..ways.held import plane_field
from ..ways.index import free_movement, suitability, verdict_for
from ..ways.judge import not_yet
from ..ways.looks import read_look
from ..ways.piece import Allowances, Piece
from ..ways.registry import find_way
from ..ways.turning import what_would_change
from ..ways.verdict import Verdict
from ..words.say import plain_text
from .names import WAYS_COMPARED, WAYS_TO_BUILD, ways_of

if TYPE_CHECKING:
    from ..studies.sliding_piece import SlidingPiece
    from ..study.study import Study

MOST_DRAWN = 6
"""Ways that the sliders of one page draw, unless the brief names its own: a page stays small, and a choice short."""

USUAL_END_M = {"inches": 0.0508, "millimetres": 0.05}
"""Width of an end or frame piece where the brief asks for no border: 2 in or 50 mm (common practice, no source)."""


@dataclass(frozen=True)
class Commission:
    """A brief with its verdicts: ``advised`` is the most suitable way compared, ``built`` the one decided on.

    ``whole_moves`` is how far solid wood as wide as the whole piece goes over the year, however the piece is built.
    """

    brief: Brief
    piece: Piece
    year: Year
    months: MonthlyMoisture
    doubts: Doubts
    verdicts: tuple[Verdict, ...]
    built: Verdict
    whole_moves: Movement

    @property
    def advised(self) -> Verdict:
        """The most suitable of the ways that are compared."""
        return self.verdicts[0]

    @property
    def first(self) -> str:
        """Which system is written first: customary or metric."""
        return self.brief.first

    @property
    def glued(self) -> Verdict | None:
        """The verdict on the border glued across the ends, where it is compared."""
        return next((verdict for verdict in self.verdicts if verdict.way.reference), None)

    @property
    def page_units(self) -> str:
        """The units that a page starts in."""
        return "inch" if self.first == "customary" else "metric"

    @cached_property
    def base(self) -> Verdict | None:
        """The verdict on what holds the piece to its base, where the brief names it: a decision of its own."""
        name = self.brief.piece.base
        return self.based_on(find_way(name).key) if name else None

    def based_on(self, way: str) -> Verdict:
        """The verdict on one way to hold the piece to a base; a frame moves no more than its two stiles are wide."""
        framed = self.built.way.framed
        piece = replace(self.piece, width_m=2.0 * self.piece.border_width_m) if framed else self.piece
        return judged_on(self.brief, piece, self.months, self.doubts, way)

    @cached_property
    def would_change(self) -> str:
        """What would turn the advice over, in a sentence or two."""
        if self.glued is None:
            return self.advised.way.change
        if self.year.partial:
            return (
                "Four weeks of log in the driest of the missing months, or climate or weather beside the log, would tell "
                "whether a border may be glued."
            )
        stock = self.brief.stock.moisture_percent()
        return what_would_change(self.glued, self.piece, stock, self.months, self.doubts, plane_field)

    @cached_property
    def sliding(self) -> SlidingPiece:
        """The same piece as its studies take it."""
        from ..studies.sliding_piece import sliding_piece_of

        return sliding_piece_of(self.brief, self.piece, self.months, self.doubts, self._ways)

    @property
    def _ways(self) -> tuple[str, ...]:
        return tuple(verdict.key for verdict in self.verdicts)

    @property
    def drawn_ways(self) -> tuple[str, ...]:
        """The ways that sliders can draw: the one decided on, the glued border, and the most suitable ones."""
        wanted = dict.fromkeys(
            (self.built.key, *(verdict.key for verdict in self.verdicts if verdict.way.reference), *self._ways)
        )
        kept = self._ways if self.brief.constructions else tuple(wanted)[:MOST_DRAWN]
        return tuple(way for way in self._ways if way in kept)

    def plain_study(self, key: str) -> Study:
        """A study of the piece as it starts without the brief's own slider positions."""
        if key == WAYS_TO_BUILD:
            from ..studies.ways_to_build import ways_to_build

            return ways_to_build(self.brief.title, self.sliding.with_ways(self.drawn_ways), self.built.key)
        from ..studies.ways_compared import ways_compared

        return ways_compared(self.brief.title, self.sliding)

    def study(self) -> Study:
        """The study of the ways to build, at the slider positions that the brief keeps for its handout."""
        kept = {**self.brief.handout.get(WAYS_TO_BUILD, {}), "way": self.built.key}
        return self.plain_study(WAYS_TO_BUILD).starting(**kept)

    def compared(self) -> Study:
        """The study that sets all ways side by side, at the slider positions that the brief keeps for its handout."""
        return self.plain_study(WAYS_COMPARED).starting(**self.brief.handout.get(WAYS_COMPARED, {}))

    def building(self, way: str) -> Commission:
        """The same commission with another way decided on; raises :class:`InputError` for one not compared."""
        key = find_way(way).key
        found = [verdict for verdict in self.verdicts if verdict.key == key]
        if not found:
            raise InputError(
                f"{way!r} is not among the ways compared here: {'; '.join(verdict.way.name for verdict in self.verdicts)}."
            )
        return replace(self, built=found[0])


def commission_of(brief: Brief, way: str = "") -> Commission:
    """Everything a brief leads to. ``way`` decides how it is built; left out, the brief's handout or the advice does.

    Raises :class:`InputError` with the line of the brief for sizes, stock or air that cannot be worked with.

    >>> from woodlib.commission import chosen_brief
    >>> commission_of(chosen_brief()).advised.way.name
    'frame with a floating panel'
    """
    made = next((kept for kept in _made if kept.brief is brief), None) or _judge(brief)
    return made.building(way) if way else made


_made: deque[Commission] = deque(maxlen=8)


def _judge(brief: Brief) -> Commission:
    problems = Problems()
    piece = _absorbed(problems, brief, "piece", _piece, brief)
    year = _absorbed(problems, brief, "house", brief.year)
    problems.raise_if_any()
    own = _absorbed(problems, brief, "house", brief.months)
    problems.raise_if_any()
    months, doubts = own
    stock = brief.stock.moisture_percent()
    ways = ways_of(brief)

    def judged(way: str) -> Verdict:
        found = judged_on(brief, piece, months, doubts, way)
        return _not_yet(found, year) if year.partial and found.allowed else found

    kept = read_look(brief.piece.keep) if brief.piece.keep else None

    def fitting(verdict: Verdict) -> tuple:
        return suitability(verdict, brief.piece.kind, bool(brief.piece.border_width_m), kept)

    verdicts = _absorbed(problems, brief, "wood.moisture", lambda: sorted(map(judged, ways), key=fitting))
    problems.raise_if_any()
    free = free_movement(piece, stock, months, doubts)
    made = Commission(brief, piece, year, months, doubts, tuple(verdicts), verdicts[0], free)
    decided = _kept_way(brief)
    made = made.building(decided) if decided else made
    _made.append(made)
    return made


def judged_on(brief: Brief, piece: Piece, months: MonthlyMoisture, doubts: Doubts, way: str) -> Verdict:
    """The verdict on one way for the piece of a brief, with the usual sizes of its shop."""
    stock = brief.stock.moisture_percent()
    allowances = Allowances.of(brief.first, brief.shop.cutters_m)
    return verdict_for(way, piece, stock, months, doubts=doubts, allowances=allowances, first=brief.first)


def _not_yet(verdict: Verdict, year: Year) -> Verdict:
    """On part of a year a way that holds the panel is not advised, for the missing months may be those that split it; and room
    that is left is enough for the measured months only."""
    if not verdict.way.holds:
        return replace(verdict, risk=f"{verdict.risk} in the months that were measured")
    judged = not_yet(verdict.judged, year.not_known)
    said = plain_text(judged.reason())
    return replace(verdict, allowed=False, unfit=said, reason=said, risk="not known", judged=judged)


def _kept_way(brief: Brief) -> str:
    """The way that the brief has for its ends, or keeps for its handout; a wrong one is reported where it is written."""
    kept = brief.piece.ends or str(brief.handout.get(WAYS_TO_BUILD, {}).get("way", ""))
    try:
        return kept if kept and find_way(kept).key in ways_of(brief) else ""
    except InputError:
        return ""


def _absorbed(problems: Problems, brief: Brief, key: str, function, *arguments):
    try:
        return function(*arguments)
    except InputError as error:
        problems.absorb(error, brief.where(key))
        return None


def _piece(brief: Brief) -> Piece:
    asked = brief.piece
    border = asked.border_width_m or min(USUAL_END_M[brief.units], 0.25 * asked.width_m, 0.25 * asked.length_m)
    return Piece(
        brief.species(),
        asked.width_m,
        asked.length_m,
        asked.thickness_m,
        border,
        float(brief.joins[0]) if brief.joins else None,
        asked.ring_angle_deg,
        base_holds=asked.base_holds,
    )
