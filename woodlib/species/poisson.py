"""Poisson's ratios that agree with each other.

An elastic wood needs nu_ij / E_i = nu_ji / E_j for each pair of directions; the printed pairs were measured apart and
often miss this. Of each pair the larger ratio is kept, because rounding and measuring hurt it less: those pulled along
the grain (LR, LT) and radially (RT). The other three follow from them and from the stiffness ratios.
"""

from __future__ import annotations

from collections.abc import Mapping

from .value import Value

PAIR_TOLERANCE = 0.25
_KEPT = {"poisson_rl": "poisson_lr", "poisson_tl": "poisson_lt", "poisson_tr": "poisson_rt"}


def pair_disagreement(values: Mapping[str, Value]) -> float | None:
    """How far the radial-tangential pair misses nu_RT / E_R = nu_TR / E_T, as part of the larger side; None if unknown.

    >>> from woodlib.species import find_species
    >>> round(pair_disagreement(find_species("baldcypress").values), 2)
    0.46
    """
    needed = [values.get(key) for key in ("poisson_rt", "poisson_tr", "ratio_er_el", "ratio_et_el")]
    if not all(needed):
        return None
    radial_pull, tangential_pull, radial, tangential = (value.number for value in needed)
    sides = radial_pull / radial, tangential_pull / tangential
    return 1.0 - min(sides) / max(sides)


def consistent_poisson(values: Mapping[str, Value]) -> dict[str, Value]:
    """All six Poisson's ratios, the weaker of each pair replaced by the one that follows from its partner.

    Ratios whose partner or stiffness ratios are missing are left out, never guessed.

    >>> from woodlib.species import find_species
    >>> ratios = consistent_poisson(find_species("black cherry").values)
    >>> round(ratios["poisson_tr"].number, 3)  # 0.282 is recalled for it
    0.303
    """
    kept = {key: values[key] for key in _KEPT.values() if key in values}
    stiffness = {"l": 1.0}
    stiffness |= {way: values[f"ratio_e{way}_el"].number for way in "rt" if f"ratio_e{way}_el" in values}
    for derived, partner in _KEPT.items():
        pulled, other = derived[-2], partner[-2]
        if partner in kept and pulled in stiffness and other in stiffness:
            number = kept[partner].number * stiffness[pulled] / stiffness[other]
            note = f"follows from {partner} = {kept[partner].number:g} and the stiffness ratios"
            kept[derived] = Value(number, "", "derived", kept[partner].source, note)
    return kept
