"""The usual cautions of setting out, said only where this job meets them, and briefly."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..units import both, write
from .blank import Blank
from .practice import ShopPractice

HEAVY_KG = 4.0  # a lid that falls from upright hurts fingers well below this; common practice, no source


@dataclass(frozen=True)
class Caution:
    """One caution, ``at`` the machine of the step where it is needed: "always" for all of them, "last" for the end."""

    at: str
    words: str


ALWAYS = (
    Caution(
        "always",
        "Guards and riving knife on, push sticks at hand, eyes, ears and lungs protected, dust drawn off at the machine.",
    ),
    Caution(
        "always", "Machine makers' instructions, local codes and licensed practice come before anything said here."
    ),
)


def cautions_for(
    blank: Blank | None,
    mass_kg: float,
    lifts: bool,
    practice: ShopPractice,
    others: tuple[Blank, ...] = (),
    first: str = "customary",
) -> tuple[Caution, ...]:
    """Cautions that these blanks and the weight call for; ``lifts`` whether the piece is lifted on hinges.

    ``blank`` of the panel, if there is one, ``others`` of parts from one board.

    >>> from woodlib.setting_out.blank import blank_for
    >>> cautions_for(blank_for("44 in", "20 in", "7/8 in", end_pieces="2 in"), 9.0, True, ShopPractice())[0].words
    'The left end is only 2 in (51 mm) along the grain: plane and joint it while it is still part of the blank, ...'
    """
    of_panel = (*_short(blank, practice, first), *_warped(blank)) if blank else ()
    return (*of_panel, *_short_strips(others, practice, first), *_heavy(mass_kg, lifts, first), *ALWAYS)


def _short_strips(blanks: tuple[Blank, ...], practice: ShopPractice, first: str) -> tuple[Caution, ...]:
    short = [b for b in blanks if b.length.total_m < practice.shortest_jointed_m]
    if not short:
        return ()
    least = min(short, key=lambda b: b.length.total_m)
    said = (
        f"The {least.length.pieces[0].name} is short, {both(least.length.total_m, first=first)} rough: joint and plane a piece of at "
        f"least {both(practice.shortest_jointed_m, first=first)} and cut it from that."
    )
    return (Caution("jointer", said),)


def _short(blank: Blank, practice: ShopPractice, first: str) -> tuple[Caution, ...]:
    short = [part for part in blank.length.pieces if part.size_m < practice.shortest_jointed_m]
    if not short:
        return ()
    least = min(short, key=lambda part: part.size_m)
    said = (
        f"The {least.name} is only {both(least.size_m, first=first)} along the grain: plane and joint it while it is still part "
        "of the blank, then cut it off with a stop that lets it fall free, never between fence and blade."
    )
    return (Caution("jointer", said),)


def _warped(blank: Blank) -> tuple[Caution, ...]:
    lost: Fraction = blank.thickness.of_kind_m("flattening")
    said = "Cupped or twisted stock rocks and grabs: flatten one face before it meets a saw."
    return (Caution("jointer", said),) if lost else ()


def _heavy(mass_kg: float, lifts: bool, first: str) -> tuple[Caution, ...]:
    if not lifts or mass_kg < HEAVY_KG:
        return ()
    said = (
        f"At about {write(mass_kg, 'mass')} this lid falls hard: fit a stay or soft-close hinges, "
        "and keep small fingers away until they are on."
    )
    return (Caution("last", said),)
