"""Two measures of the same danger, in words: the strain rule and the stress model, and what to say when they differ.

Smooth numbers are made elsewhere; here are only the edges at which words change, as data.
"""

from __future__ import annotations

from collections.abc import Mapping

from .assumptions import assumption

# Edges of the strain rule (held-back strain), and the words between them.
STRAIN_WORDS = (
    "stays elastic",
    "can take a permanent set, and crack over the years",
    "reaches the strain at which wood starts to fail",
)
# Chances halfway between the odds on either side, and how a maker would say them.
ODDS_EDGES = (
    0.0035,
    0.0075,
    0.015,
    0.026,
    0.042,
    0.058,
    0.083,
    0.11,
    0.145,
    0.18,
    0.225,
    0.29,
    0.41,
    0.58,
    0.71,
    0.85,
    0.95,
)
ODDS = (
    *((1, of) for of in (1000, 200, 100, 50, 30, 20, 15, 10, 8, 6, 5, 4, 3, 2)),
    *((2, 3), (3, 4), (9, 10), (1, 1)),
)
"""How many of how many; the first and the last stand for all that is rarer and surer."""
ODDS_WORDS = ("less than 1 in 200", *(f"{few} in {of}" for few, of in ODDS[1:-1]), "almost certain")
WORRYING_CHANCE = 0.05  # from here on the stress model counts as a warning (a judgement)


def strain_edges() -> tuple[float, float]:
    """Held-back strains at which the words of the strain rule change.

    >>> strain_edges()
    (0.004, 0.009)
    """
    return assumption("yield_strain").middle, assumption("failure_strain").middle


STATUS_WORDS = {
    "printed": "Printed",
    "confirmed": "From memory, and agrees with print",
    "quoted": "Quoted by others",
    "recalled": "From memory, not seen in print",
    "derived": "Worked out",
    "estimated": "Estimated",
    "own": "Your own",
    "missing": "Printed nowhere",
}
_HARDLY_COUNT = ("rolling", "Poisson ratio RT", "Poisson ratio RL", "Poisson ratio TL", "Poisson ratio TR")


def known_sentences(statuses: Mapping[str, str], wood: str) -> tuple[str, ...]:
    """The numbers of a wood that the stress model used, a sentence for each way of knowing them.

    ``statuses`` name of a number -> its status; those that hardly count for a panel held at its ends are left out.

    >>> known_sentences({"radial stiffness": "printed", "strength across the grain": "recalled"}, "white ash")
    ('Printed: radial stiffness of white ash.', 'From memory, not seen in print: strength across the grain of white ash.')
    """
    grouped: dict[str, list[str]] = {}
    for name, status in statuses.items():
        if not any(part in name for part in _HARDLY_COUNT):
            grouped.setdefault(status, []).append(name)
    return tuple(f"{STATUS_WORDS[status]}: {', '.join(names)} of {wood}." for status, names in grouped.items())


def band(value: float, edges: tuple[float, ...]) -> int:
    """How many of the rising edges a value has reached.

    >>> band(0.006, (0.004, 0.009))
    1
    """
    return sum(value >= edge for edge in edges)


def strain_words(held_back_strain: float) -> str:
    """The strain rule in words, for a held-back strain (drying positive).

    >>> strain_words(0.0098)
    'reaches the strain at which wood starts to fail'
    """
    return STRAIN_WORDS[band(held_back_strain, strain_edges())]


def odds_of(chance: float) -> tuple[int, int]:
    """A chance as so many of so many, as a maker would count pieces.

    >>> odds_of(0.37), odds_of(0.66)
    ((1, 3), (2, 3))
    """
    return ODDS[band(chance, ODDS_EDGES)]


def odds_words(chance: float) -> str:
    """A chance as odds a maker would say.

    >>> odds_words(0.119), odds_words(0.012), odds_words(0.37)
    ('1 in 8', '1 in 100', '1 in 3')
    """
    return ODDS_WORDS[band(chance, ODDS_EDGES)]


def crack_words(chance: float) -> str:
    """What a held panel does, in words that follow its chance: a real danger is said by its odds.

    >>> crack_words(0.04), crack_words(0.4)
    ('seldom cracks', 'often cracks')
    """
    return _CRACK_WORDS[band(chance, (0.02, 0.08, 0.3, 0.6))]


_CRACK_WORDS = ("hardly ever cracks", "seldom cracks", "may crack", "often cracks", "mostly cracks")


def chance_range(chance) -> str:
    """A chance as odds with their range, from a ``Probability``.

    >>> from woodlib.restraint.chance import Probability
    >>> chance_range(Probability(0.02, 0.1, 0.24))
    'about 1 in 10 (could be 1 in 50 to 1 in 4)'
    """
    low, likely, high = (odds_words(value) for value in chance)
    if low == high:
        return _about(likely)
    span = f"up to {high}" if low == likely else f"{low} to {high}"
    return f"{_about(likely)} (could be {span})"


def chance_sentence(chance) -> str:
    """The chance of a crack as a range and in words, from a ``CrackChance``.

    >>> from woodlib.restraint.chance import CrackChance, Probability
    >>> chance_sentence(CrackChance(Probability(0.02, 0.1, 0.24), Probability(0.3, 0.35, 0.6), ()))
    'about 1 in 10 (could be 1 in 50 to 1 in 4) for a sound panel; about 1 in 3 (could be up to 2 in 3) if its ends already have checks'
    """
    return f"{chance_range(chance.sound)} for a sound panel; {chance_range(chance.checked)} if its ends already have checks"


def _about(words: str) -> str:
    return words if words[0] in "la" else f"about {words}"


def agreement_sentence(held_back_strain: float, likely_chance: float) -> str:
    """What the two measures say together; where they differ, the careful one is the one to build by.

    >>> agreement_sentence(0.0098, 0.01)[:27]
    'The two measures disagree: '
    """
    level = band(held_back_strain, strain_edges())
    worrying = likely_chance >= WORRYING_CHANCE
    if level == 2 and not worrying:
        return (
            "The two measures disagree: the strain rule warns of failure, the stress model does not. "
            "Build by the strain rule; slow drying lets wood stretch further than the rule allows, but not surely."
        )
    if level == 0 and worrying:
        return (
            "The two measures disagree: the strain rule sees no danger, the stress model does. "
            "Build by the stress model; this species may be weak for its stiffness."
        )
    if level == 2:
        return "Both measures warn: do not hold this panel."
    if worrying:
        return (
            "The stress model warns, and the strain rule leaves room for a crack over the years: "
            "do not hold this panel."
        )
    if level == 1:
        return (
            "The stress model is calm, but the strain rule leaves room for a permanent set and a crack over the years."
        )
    return "Both measures are calm."
