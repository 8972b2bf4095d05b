"""How a piece is built: every way that is compared, the one decided on, and what would turn the decision over."""

from __future__ import annotations

from ..units import write
from ..ways.registry import ways_for
from ..ways.verdict import Verdict
from ..words.say import Said, say
from .base import fast_lines, fights
from .card import Card, Paragraph, folded, heading, joined, judged, paragraphs, sentences, table
from .judged import Commission
from .kept_look import what_it_costs
from .measured_boards import measured_words
from .seasons import month_sentence, months_of

_TONES = ("fine", "watch", "stop")  # of a verdict's level


def how_they_compare(commission: Commission) -> Card:
    """What is to be seen in the picture of every way."""
    return joined(
        heading("Every way side by side", 2),
        paragraphs(
            "Here is every usual way to build such a piece in your house, the most suitable first. A bar ends at the widest "
            "piece that its way bears; the upright line is yours."
        ),
    )


def comparison_table(commission: Commission) -> Card:
    """Every way that is compared, most suitable first, with what the two months do to it."""
    rows = [
        (
            verdict.way.name + (_chosen(verdict) if verdict is commission.built else ""),
            month_sentence(commission, verdict, "narrowing"),
            month_sentence(commission, verdict, "widening"),
            _judged(commission, verdict),
        )
        for verdict in commission.verdicts
    ]
    driest, dampest = months_of(commission)
    head = ("Way to build", f"Driest month ({driest})", f"Dampest month ({dampest})", "Verdict")
    compared = table(head, rows, "The usual ways to build this piece, most suitable first")
    glued = commission.glued
    measures = glued.measures if glued is not None and glued.panel else ()
    said = f"Glued across the ends, judged in two ways. {' '.join(measures)}" if measures else ""
    return joined(
        folded("What the driest and the dampest month do to each", compared), paragraphs(said), first=commission.first
    )


def _chosen(verdict: Verdict) -> str:
    return " (ours)" if verdict.allowed else " (asked for)"


def _judged(commission: Commission, verdict: Verdict) -> str:
    most = verdict.restrained_strain.high
    held = f"stretched by up to {write(most, 'strain')}" if most > 0.0 else "nothing is forced"
    wanted = commission.brief.piece.border_width_m
    border = ("; border kept" if verdict.way.keeps_border else "; no border across the ends") if wanted else ""
    return f"{verdict.risk}: {held}{border}"


def decision(commission: Commission) -> Card:
    """What is built, why, and what would change the decision."""
    built = commission.built
    lead, other = _decided(commission)
    known = commission.piece.wood.remarks + commission.months.remarks
    remarks = [f"{text[:1].upper()}{text[1:]}." for text in built.remarks if text not in known]
    # What would turn the advice over, and what would speak for another way that is as safe.
    changes = dict.fromkeys((commission.would_change, built.way.change if built.allowed else ""))
    said = paragraphs(
        *fast_lines(commission),
        other,
        sentences(*changes),
        *remarks,
        *filter(None, [measured_words(commission)]),
    )
    tone = "stop" if fights(commission) else _TONES[built.level]
    marked = judged(tone, joined(Card((Paragraph("", lead),)), said))
    return joined(heading("How we build it", 2), marked, what_it_costs(commission), first=commission.first)


def _decided(commission: Commission) -> tuple[Said, Said | str]:
    """The decision with its reason, and what speaks for another one."""
    built, advised = commission.built, commission.advised
    name, best = built.way.with_article, advised.way.with_article
    because = built.unfit or built.judged.reason()
    if built.allowed:
        lead = say("We build it as {name}. {because}", name=name, because=because)
        return (
            lead,
            "" if built is advised else f"The kit would put {best} first; both come through this house unharmed.",
        )
    if advised.allowed:
        lead = say("Decided so far: {name}. We advise against it. {because}", name=name, because=because)
        best_because = advised.unfit or advised.judged.reason()
        return lead, say("Our advice: {best}. {because}", best=best, because=best_because)
    lead = say(
        "None of the ways compared comes through this house unharmed; {name} is the least risky. {because}",
        name=name,
        because=because,
    )
    others = [way.with_article for way in ways_for(commission.brief.piece.kind) if not way.holds]
    return lead, f"Ask for a way that lets it move: {', or '.join(others[:2])}." if others else ""
