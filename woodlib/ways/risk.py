"""The three steps of risk of held wood, and which of them a strain reaches."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from ..restraint.assumptions import assumption
from ..tables import rows
from ..words.decided import Decided, level


@dataclass(frozen=True)
class RiskLevel:
    """One step of risk: the restrained strain from which it holds, our word for it and what it means."""

    from_strain: float
    word: str
    meaning: str


@cache
def risk_levels() -> tuple[RiskLevel, ...]:
    """The three steps of risk, mildest first; their edges are sourced in the table of held movement.

    >>> [(risk.word, risk.from_strain) for risk in risk_levels()]
    [('safe', 0.0), ('strained', 0.004), ('cracking', 0.009)]
    """
    return tuple(
        RiskLevel(assumption(row["reached_at"]).middle if row["reached_at"] else 0.0, row["word"], row["meaning"])
        for row in rows("risk_levels.csv")
    )


def risk_level(strain: float | Decided) -> Decided:
    """0, 1 or 2: which step of ``risk_levels`` a restrained strain reaches.

    >>> [float(risk_level(strain)) for strain in (0.0039, 0.004, 0.0089, 0.009)]
    [0.0, 1.0, 1.0, 2.0]
    """
    return level(strain, [risk.from_strain for risk in risk_levels()[1:]])
