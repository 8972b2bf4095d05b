"""What a maker should know before trusting a row, in sentences."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache

from ..tables import rows
from .shrinkage import USUAL_FIBRE_SATURATION_PERCENT, coefficient_from_shrinkage, volumetric_from_both
from .value import Value

Values = Mapping[str, Value]

DIRECTIONS = ("radial", "tangential")
# Coefficients are printed to five decimals; one step off is rounding, more is another wood's number.
ROUNDING = 0.0000151
# Volume may exceed what R and T make together by lengthwise shrinkage and rounding, not by more than this.
VOLUME_TOLERANCE_PERCENT = 1.6
USUAL_STRENGTH_MOISTURE_PERCENT = 12.0
# An elastic wood needs nu_ij / E_i = nu_ji / E_j; pairs measured apart often miss it. Of each pair the ratio pulled
# along the grain, or else radially, is kept: it is the larger one, which rounding and measuring hurt less.
PAIR_TOLERANCE = 0.25


def doubts_of_species(name: str, own: Values, group_name: str = "", group: Values | None = None) -> tuple[str, ...]:
    """Sentences about one species, those that change the answer most first."""
    return (
        *_group_against_own(name, own, group_name, group or {}),
        *_row_against_own(name, own),
        *_no_row(name, own, group or {}),
        *_saturation(name, own),
        *_notes(name),
        *_tangential_below_radial(name, own),
        *_volume(name, own),
        *_recalled(name, own),
        *_pair(name, own),
        *_strength_moisture(name, own),
    )


def doubts_of_group(name: str, own: Values, members: Mapping[str, Values]) -> tuple[str, ...]:
    """Sentences about a group: how far its named members move from its row."""
    key = "tangential_coefficient_per_percent"
    row = own[key].number
    spread = {member: values[key].number for member, values in members.items() if values[key].status == "derived"}
    sentence = f"{name}: one printed row, {pair_text(own)}, stands for {_listed(members)}"
    if spread:
        least, most = min(spread, key=spread.__getitem__), max(spread, key=spread.__getitem__)
        sentence += (
            f"; by their own shrinkage, {least} moves {_compared(spread[least], row)} tangentially "
            f"and {most} {_compared(spread[most], row)}; name the species if you know it"
        )
    return (f"{sentence}.", *_notes(name), *_recalled(name, own))


def pair_text(values: Values) -> str:
    """Radial and tangential coefficient as a table prints them."""
    return " / ".join(f"{values[f'{way}_coefficient_per_percent'].number:.5f}" for way in DIRECTIONS)


def own_coefficients(own: Values, saturation: float | None = None) -> dict[str, float]:
    """Coefficients that a wood's own shrinkage gives, on its own fibre saturation or on one you choose."""
    given = own.get("fibre_saturation_percent")
    basis = saturation or (given.number if given else USUAL_FIBRE_SATURATION_PERCENT)
    totals = {way: own.get(f"{way}_shrinkage_percent") for way in DIRECTIONS}
    return {way: coefficient_from_shrinkage(total.number, basis) for way, total in totals.items() if total}


def coefficient_exceptions(own: Values) -> tuple[str, ...]:
    """Directions whose tabulated coefficient is not the one its own shrinkage gives, beyond rounding."""
    mine, found = own_coefficients(own), []
    for way, number in mine.items():
        tabled = own.get(f"{way}_coefficient_per_percent")
        if tabled and tabled.status != "derived" and abs(tabled.number - number) > ROUNDING:
            found.append(way)
    return tuple(found)


def volume_excess_percent(own: Values) -> float | None:
    """Volumetric shrinkage less what radial and tangential make together, in percentage points."""
    radial, tangential, volume = (own.get(f"{way}_shrinkage_percent") for way in (*DIRECTIONS, "volumetric"))
    if not (radial and tangential and volume):
        return None
    return volume.number - volumetric_from_both(radial.number, tangential.number)


def pair_disagreement(own: Values) -> float | None:
    """How far the radial-tangential pair misses nu_RT / E_R = nu_TR / E_T, as part of the larger side."""
    needed = ("poisson_rt", "poisson_tr", "ratio_er_el", "ratio_et_el")
    if not all(own.get(key) for key in needed):
        return None
    radial_pull, tangential_pull, radial, tangential = (own[key].number for key in needed)
    sides = radial_pull / radial, tangential_pull / tangential
    return 1.0 - min(sides) / max(sides)


def _group_against_own(name: str, own: Values, group_name: str, group: Values) -> Iterable[str]:
    if not group:
        return
    if own["tangential_coefficient_per_percent"].status != "derived":
        yield (
            f"{name}: no shrinkage of its own is printed; it moves here by the row {pair_text(group)} "
            f"of '{group_name}'."
        )
        return
    keys = {way: f"{way}_coefficient_per_percent" for way in DIRECTIONS}
    differences = " and ".join(f"{_compared(own[key].number, group[key].number)} {way}ly" for way, key in keys.items())
    origin = " (from memory)" if own["tangential_shrinkage_percent"].status == "recalled" else ""
    yield (
        f"{name}: its own shrinkage{origin} gives {pair_text(own)}; compared with the row {pair_text(group)} for "
        f"boards of unknown species that is {differences}; its own is used here, '{group_name}' gives the row."
    )


def _row_against_own(name: str, own: Values) -> Iterable[str]:
    ways = coefficient_exceptions(own)
    if not ways:
        return
    mine = own_coefficients(own, USUAL_FIBRE_SATURATION_PERCENT)
    parts = " and ".join(
        f"{own[f'{way}_coefficient_per_percent'].number:.5f} {way}ly where its own shrinkage gives {mine[way]:.5f} "
        f"({_compared(mine[way], own[f'{way}_coefficient_per_percent'].number)})"
        for way in ways
    )
    yield f"{name}: its row in the coefficient table has {parts}; the row is used here."


def _no_row(name: str, own: Values, group: Values) -> Iterable[str]:
    found = [own.get(f"{way}_coefficient_per_percent") for way in DIRECTIONS]
    if not group and all(value and value.status == "derived" for value in found):
        yield f"{name}: no movement coefficient is carried; {pair_text(own)} is worked out from its own shrinkage."


def _saturation(name: str, own: Values) -> Iterable[str]:
    basis = own.get("fibre_saturation_percent")
    if not basis or basis.status == "own":
        return
    sentence = (
        f"{name}: coefficient and shrinkage are taken on a fibre saturation of {basis.number:g}%, not "
        f"{USUAL_FIBRE_SATURATION_PERCENT:g}%, inferred and not seen in print: {basis.note}"
    )
    if not coefficient_exceptions(own):
        usual = own_coefficients(own, USUAL_FIBRE_SATURATION_PERCENT)
        numbers = " / ".join(f"{usual[way]:.5f}" for way in DIRECTIONS)
        sentence += (
            f"; on {USUAL_FIBRE_SATURATION_PERCENT:g}% the coefficients would be {numbers} instead of {pair_text(own)}"
        )
    yield f"{sentence}."


def _tangential_below_radial(name: str, own: Values) -> Iterable[str]:
    for kind in ("shrinkage_percent", "coefficient_per_percent"):
        radial, tangential = own.get(f"radial_{kind}"), own.get(f"tangential_{kind}")
        if radial and tangential and tangential.number < radial.number:
            yield (
                f"{name}: tangential {kind.split('_')[0]} {tangential.number:g} is below radial {radial.number:g}, "
                "the other way round in almost all woods; check that the two are not swapped."
            )


def _volume(name: str, own: Values) -> Iterable[str]:
    excess = volume_excess_percent(own)
    if excess is not None and abs(excess) > VOLUME_TOLERANCE_PERCENT:
        volume = own["volumetric_shrinkage_percent"]
        seen = "from memory" if volume.status == "recalled" else "as printed"
        yield (
            f"{name}: volumetric shrinkage {volume.number:g}% ({seen}) is {abs(excess):.1f} points "
            f"{'more' if excess > 0 else 'less'} than radial and tangential make together; trust those two more."
        )


def _recalled(name: str, own: Values) -> Iterable[str]:
    keys = [f"{way}_{kind}" for kind in ("shrinkage_percent", "coefficient_per_percent") for way in DIRECTIONS]
    keys = [key for key in keys if key in own and own[key].status == "recalled"]
    if keys:
        words = _listed(key.removesuffix("_percent").removesuffix("_per").replace("_", " ") for key in keys)
        yield f"{name}: {words} from memory, not seen in print; check before anything costly depends on it."


def _pair(name: str, own: Values) -> Iterable[str]:
    gap = pair_disagreement(own)
    if gap is not None and gap > PAIR_TOLERANCE:
        yield (
            f"{name}: the two Poisson's ratios between radial and tangential contradict each other by "
            f"{100 * gap:.0f}%; the one pulled radially, {own['poisson_rt'].number:g}, is kept and the other "
            "follows from it."
        )


def _strength_moisture(name: str, own: Values) -> Iterable[str]:
    measured = own.get("strength_moisture_percent")
    if measured and measured.number != USUAL_STRENGTH_MOISTURE_PERCENT:
        yield f"{name}: stiffness and strength were measured at {measured.number:g}% moisture content, not 12%."


@cache
def _all_notes() -> tuple[tuple[str, str], ...]:
    return tuple((row["species"], row["sentence"]) for row in rows("species_notes.csv"))


def _notes(name: str) -> list[str]:
    return [sentence for species, sentence in _all_notes() if species == name]


def _compared(number: float, reference: float) -> str:
    change = 100.0 * (number / reference - 1.0)
    if abs(change) < 0.5:
        return "the same"
    return f"{abs(change):.0f}% {'more' if change > 0 else 'less'}"


def _listed(names: Iterable[str]) -> str:
    *first, last = names
    return f"{', '.join(first)} and {last}" if first else last
