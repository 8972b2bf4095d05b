"""All ways to build, judged for one piece and set side by side."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import radians

from ..air.year import Year
from ..door import check_kind, check_moisture
from ..errors import InputError, Problems
from ..movement.months import MonthlyMoisture, check_months
from ..movement.spread import USUAL_DOUBTS, Doubts, Movement, check_doubts
from ..units import shown
from .held import Held, plane_field
from .looks import Kept
from .piece import Allowances, Piece
from .registry import way_of, ways_for
from .travel import Quantities, movement_of, travel_quantities
from .turning import what_would_change
from .verdict import Verdict, decide
from .way import Way


@dataclass(frozen=True)
class Comparison:
    """Verdicts, most suitable first, with a recommendation and what would change it."""

    verdicts: tuple[Verdict, ...]
    recommendation: str
    would_change: str

    def __iter__(self) -> Iterator[Verdict]:
        return iter(self.verdicts)

    def __len__(self) -> int:
        return len(self.verdicts)

    def __getitem__(self, key: int | str) -> Verdict:
        """A verdict by place, or by the key of its construction."""
        if isinstance(key, int):
            return self.verdicts[key]
        found = [verdict for verdict in self.verdicts if verdict.key == key]
        if not found:
            known = ", ".join(verdict.key for verdict in self.verdicts)
            raise InputError(f"construction is {shown(key)}; it must be one of {known}.")
        return found[0]


def verdict_for(
    construction: str,
    piece: Piece,
    stock_mc_percent: float,
    air: Year | MonthlyMoisture | Sequence[float],
    *,
    doubts: Doubts = USUAL_DOUBTS,
    allowances: Allowances | None = None,
    held: Callable[[Piece], Held] = plane_field,
    first: str = "customary",
) -> Verdict:
    """The verdict on one way to build.

    ``construction`` key, see ``registry``; ``stock_mc_percent`` moisture content of the stock today in %, its
    meter error in ``doubts``; ``air`` a ``Year`` or twelve moisture contents in %; ``held`` how much a glued border
    holds back, and with what stress (the plane field unless another rule is given); ``first`` the system that sizes are
    marked in, ``customary`` or ``metric``.
    Raises :class:`InputError` with a sentence for each bad input.

    >>> seat = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")
    >>> air = Year.from_seasons(winter=(20, 30), summer=(25, 60))
    >>> verdict = verdict_for("breadboard", seat, 8, air)
    >>> verdict.risk, verdict.cut("outer_slot").text()
    ('safe', '3/4 in (19 mm)')
    """
    way = way_of(construction)
    months, travels = _travels(piece, stock_mc_percent, air, doubts)
    return _verdict(way, piece, travels, _shop(allowances), held(piece), months, first)


def compare(
    piece: Piece,
    stock_mc_percent: float,
    air: Year | MonthlyMoisture | Sequence[float],
    *,
    doubts: Doubts = USUAL_DOUBTS,
    allowances: Allowances | None = None,
    held: Callable[[Piece], Held] = plane_field,
    kind: str | None = None,
    first: str = "customary",
) -> Comparison:
    """Every way to build for one piece, most suitable first, with a recommendation; arguments as ``verdict_for``.

    ``kind`` of piece, see ``registry.kinds``: all ways that serve it; the usual six when none is named.
    Order: see :func:`suitability`.

    >>> seat = Piece("white oak", "20 in", "44 in", "7/8 in", "2 in")
    >>> comparison = compare(seat, 8, Year.from_seasons(winter=(20, 30), summer=(25, 60)))
    >>> [verdict.key for verdict in comparison][::5], comparison["glued_border"].risk
    (['frame_panel', 'glued_border'], 'cracking')
    """
    ways = ways_for(kind)
    months, travels = _travels(piece, stock_mc_percent, air, doubts)
    allowances, share = _shop(allowances), held(piece)
    verdicts = [_verdict(way, piece, travels, allowances, share, months, first) for way in ways]
    ranked = tuple(sorted(verdicts, key=lambda verdict: suitability(verdict, kind)))
    glued = next((verdict for verdict in verdicts if verdict.way.reference), None)
    if glued is None:
        return Comparison(ranked, _recommendation(ranked[0]), ranked[0].way.change)
    changes = what_would_change(glued, piece, float(stock_mc_percent), months, doubts, held)
    return Comparison(ranked, _recommendation(ranked[0]), changes)


def free_movement(piece: Piece, stock_mc_percent: float, air, doubts: Doubts = USUAL_DOUBTS) -> Movement:
    """How far solid wood as wide as the whole piece goes over the year, however the piece is built."""
    moves = movement_of(_travels(piece, stock_mc_percent, air, doubts)[1], "swing")
    return replace(moves, low_m=max(moves.low_m, 0.0))  # no year moves wood by less than nothing


def suitability(
    verdict: Verdict, kind: str | None = None, bordered: bool = True, kept: Kept | None = None
) -> tuple[bool | int, ...]:
    """What the order of a comparison goes by, best first.

    Advised before refused, what keeps the look that the client insists on (``kept``), what fits before what does not,
    less risk first, solid wood before sheets; then what the trade usually takes for a piece of that kind, what keeps
    the panel flat by itself, what keeps a border across the ends, and fewer cuts. Where no border is asked for
    (``bordered`` false), ways without one come first.
    """
    way = verdict.way
    usual = kind not in way.usual_for
    unasked = way.keeps_border and not bordered and not (way.framed and not usual)
    plain = not way.solid, unasked, usual, not way.keeps_flat, not way.keeps_border
    return (
        not verdict.allowed,
        kept is not None and not kept.by(way),
        verdict.level + 3 * bool(verdict.unfit),
        *plain,
        len(verdict.cuts),
    )


def _travels(piece: Piece, stock_mc_percent: float, air, doubts: Doubts) -> tuple[MonthlyMoisture, Quantities]:
    problems = Problems()
    check_kind(problems, "piece", piece, Piece, "Piece('white oak', '20 in', '44 in', '7/8 in', '2 in')")
    check_doubts(problems, doubts)
    check_moisture(problems, "moisture content of the stock", stock_mc_percent)
    months = check_months(problems, air)
    problems.raise_if_any()
    assert months is not None  # or a sentence has been raised
    driest, dampest = (float(months.mc_percent[place]) for place in (months.driest, months.dampest))
    ring = radians(piece.ring_angle_deg)
    travels = travel_quantities(
        piece.wood, piece.border_wood, ring, piece.width_m, float(stock_mc_percent), driest, dampest, doubts
    )
    return months, travels


def _shop(allowances: Allowances | None) -> Allowances:
    problems = Problems()
    check_kind(problems, "allowances", allowances or Allowances(), Allowances, "Allowances(pin_diameter_m='3/8 in')")
    problems.raise_if_any()
    return allowances or Allowances()


def _verdict(way: Way, piece: Piece, travels, allowances, held: Held, months: MonthlyMoisture, first: str) -> Verdict:
    names = months.names[months.driest], months.names[months.dampest]
    stress = held.through_year if way.reference else None
    panel = stress(travels["stock_mc"], months.mc_percent.tolist()) if stress else None
    verdict = decide(way, piece, travels, allowances, held, names, panel, first)
    return replace(verdict, remarks=verdict.remarks + months.remarks)


def _recommendation(best: Verdict) -> str:
    reason = best.reason[0].lower() + best.reason[1:]
    return f"Build it as {best.way.built_as}: {reason}"
