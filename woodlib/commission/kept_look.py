"""The look a client insists on: every way that keeps it, with its price, and what would not cost it."""

from __future__ import annotations

from ..restraint.measures import chance_range, crack_words
from ..ways.looks import extra_hours, read_look
from ..ways.verdict import Verdict
from ..words.say import Said, say
from .card import Card, Words, heading, joined, paragraphs, table, told
from .in_four_lines import besides
from .judged import Commission

_STEADY = "Nothing is held, so nothing is forced."


def keeping(commission: Commission) -> tuple[Verdict, ...]:
    """The ways compared that keep the look of the brief, in their order; none where it insists on nothing."""
    if not commission.brief.piece.keep:
        return ()
    kept = read_look(commission.brief.piece.keep)
    return tuple(verdict for verdict in commission.verdicts if kept.by(verdict.way))


def what_it_costs(commission: Commission) -> Card:
    """Each way that keeps the look: what opens, the odds, the hours; nothing where the client insists on nothing."""
    keep, kept = commission.brief.piece.keep, keeping(commission)
    if not keep:
        return Card()
    rows = [(verdict.way.title, _seen(verdict), odds_of_it(verdict), hours_of_it(verdict)) for verdict in kept]
    caption = f"What keeps it ({keep}), and its price"
    head = ("Way to build", "What will be seen", "Will it hold", "Extra hours")
    return joined(
        heading("What you want to keep, and what it costs", 2),
        paragraphs(in_a_sentence(commission)),
        *((table(head, rows, caption),) if rows else ()),
        paragraphs(
            "Hours are those beyond a plain panel of that size, in a shop that has done it before (common practice, no source)."
        ),
        first=commission.first,
    )


def in_a_sentence(commission: Commission) -> str:
    """How many ways keep the look, and which of them is best."""
    keep, kept = commission.brief.piece.keep, keeping(commission)
    good = [verdict for verdict in kept if verdict.allowed]
    built = commission.built
    lost = "" if built in kept else f" What is decided on, {built.way.with_article}, does not keep it."
    if good:
        ways = f"{len(good)} ways keep" if len(good) > 1 else "One way keeps"
        best = f"{'the best of them is ' if len(good) > 1 else 'it is '}{good[0].way.with_article}"
        return f"You asked for this: {keep}. {ways} it and come through this house unharmed; {best}.{lost}"
    free = next((verdict for verdict in commission.verdicts if verdict.allowed), None)
    other = f" What does come through is {free.way.with_article}, without it." if free else ""
    return f"You asked for this: {keep}. Nothing that keeps it comes through this house unharmed.{other}{lost}"


def _seen(verdict: Verdict) -> Said:
    return verdict.judged.seen()


def odds_of_it(verdict: Verdict) -> Words:
    """Whether it will hold, in words that follow its odds; where they are low and it is refused, the other reason."""
    if verdict.unfit:
        return verdict.unfit
    if verdict.panel is None:
        return say("{reason}", reason=verdict.judged.reason()) if verdict.way.holds else _STEADY
    chance = verdict.panel.chance.sound
    more = "" if verdict.allowed else besides(verdict, chance.likely)
    return f"It {crack_words(chance.likely)} in the first years: {chance_range(chance)}{more}."


def hours_of_it(verdict: Verdict) -> str:
    """Extra hours from and to, or that nobody has said.

    >>> from woodlib.commission import chosen_brief, commission_of
    >>> hours_of_it(commission_of(chosen_brief(), "frame_panel").built)
    '4 to 8 h'
    """
    hours = extra_hours(verdict.way)
    if hours is None:
        return "not estimated"
    return f"{hours[0]:g} to {hours[1]:g} h" if hours[1] else "none"


def kept_lines(commission: Commission) -> list[str]:
    """The same for a terminal: the sentence, then a line for each way that keeps the look."""
    if not commission.brief.piece.keep:
        return []
    lines = [in_a_sentence(commission)]
    for verdict in keeping(commission):
        seen, odds = (told(words, commission.first) for words in (_seen(verdict), odds_of_it(verdict)))
        lines.append(f"- {verdict.way.title} (extra hours: {hours_of_it(verdict)}): {_lower(seen)} {odds}")
    return lines


def _lower(text: str) -> str:
    return text[:1].lower() + text[1:]
