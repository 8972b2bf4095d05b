"""Every way that is compared for a brief, ranked, in plain lines: the gap that a client sees, the risk, the reason."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from ..units import both, write
from ..ways.verdict import Verdict
from .base import fast_lines
from .card import told
from .judged import Commission
from .kept_look import kept_lines
from .measured_boards import measured_words

_WIDTH = 100


def verdict_lines(commission: Commission) -> Iterator[str]:
    """The verdicts of a commission as lines for a terminal, the most suitable first."""
    brief, first = commission.brief, commission.first
    numbers = commission.built.quantities
    air = f"{write(numbers['driest_mc'], 'moisture')} and {write(numbers['dampest_mc'], 'moisture')}"
    yield f"{brief.title}: {both(brief.piece.width_m, first=first)} of {brief.stock.species} across the grain."
    if commission.year.partial:
        yield from _wrapped(
            f"{commission.year.not_known} To have these months filled from the outdoor air, write climate or weather beside the log."
        )
    yield from _wrapped(
        f"The wood stands between {air} in this house and is cut at {write(numbers['stock_mc'], 'moisture')}; free, it moves "
        f"by {commission.whole_moves.text(first)} over the year."
    )
    yield from _wrapped(measured_words(commission))
    if commission.base is not None:
        said = " ".join(told(line, first) for line in fast_lines(commission))
        yield from _wrapped(f"Held to its base by {commission.base.way.short}. {said}")
    for line in kept_lines(commission):
        yield from _wrapped(line)
    for place, verdict in enumerate(commission.verdicts, 1):
        yield ""
        decided = " (decided on)" if verdict is commission.built and place > 1 else ""
        yield f"{place}. {verdict.way.title}: {_risk(verdict)}{decided}"
        yield from _wrapped(verdict.unfit or told(verdict.judged.reason(), first), "   ")
        yield from _wrapped(_gap(verdict, first), "   ")
    yield ""
    yield from _wrapped(commission.would_change)


def _risk(verdict: Verdict) -> str:
    most = verdict.restrained_strain.high
    return f"{verdict.risk}, stretched by up to {write(most, 'strain')}" if most > 0.0 else verdict.risk


def _gap(verdict: Verdict, first: str) -> str:
    """The size to cut that matters most, or that there is none."""
    key = next(iter(verdict.way.main_cuts), "")
    if not key:
        return "Nothing in it is left loose."
    cut = verdict.cut(key)
    return f"{cut.label[:1].upper()}{cut.label[1:]}: {cut.text(first)}."


def _wrapped(text: str, indent: str = "") -> list[str]:
    return wrap(text, _WIDTH, initial_indent=indent, subsequent_indent=indent)
