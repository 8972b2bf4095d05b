"""Published rules for values that a table lacks; each estimate says which rule made it."""

from __future__ import annotations

from ..errors import MissingDataError
from . import shrinkage
from .value import Value

_GRAVITY_RULE = "volumetric shrinkage taken as 26.5 times basic specific gravity"
_TWICE = "tangential shrinkage taken as twice radial"
_HANDBOOK = "Wood Handbook 2021"


def fibre_saturation_percent(species) -> float:
    """Fibre saturation (percent) of a wood's tables: 30 as the working value unless its row says otherwise."""
    given = species.values.get("fibre_saturation_percent")
    return given.number if given else shrinkage.USUAL_FIBRE_SATURATION_PERCENT


def has_rule(key: str) -> bool:
    """Whether a published rule exists for this key."""
    return key in _RULES


def estimate(species, key: str) -> Value:
    """Estimate one value of a wood by its published rule.

    Raises :class:`MissingDataError` when there is no rule, or when the rule needs something the tables lack.
    """
    if key not in _RULES:
        raise MissingDataError(
            f"{key} of {species.name} is not estimated because no published rule is good enough; "
            "give your own in a species file, or borrow it from a wood you name."
        )
    return _RULES[key](species)


def _value(number: float, unit: str, source: str, note: str) -> Value:
    return Value(float(number), unit, "estimated", source, note)


def _cannot(species, key: str, needs: str) -> MissingDataError:
    return MissingDataError(
        f"{key} of {species.name} cannot be estimated: the rule needs {needs}, which the tables lack."
    )


def _volumetric(species) -> Value:
    radial = species.values.get("radial_shrinkage_percent")
    tangential = species.values.get("tangential_shrinkage_percent")
    if radial and tangential:
        volume = shrinkage.volumetric_from_both(radial.number, tangential.number)
        return _value(volume, "percent", "geometry", "volumetric shrinkage taken as 1 - (1 - R)(1 - T)")
    gravity = species.values.get("specific_gravity_basic")
    if not gravity:
        raise _cannot(species, "volumetric_shrinkage_percent", "specific_gravity_basic")
    volume = shrinkage.volumetric_from_gravity(gravity.number)
    return _value(volume, "percent", f"{_HANDBOOK}, Equation 4-12", _GRAVITY_RULE)


def _shrinkage_in(direction: str):
    def rule(species) -> Value:
        coefficient = species.values.get(f"{direction}_coefficient_per_percent")
        # A coefficient that was itself worked out from the shrinkage would only give the shrinkage back.
        if coefficient and coefficient.status not in ("derived", "estimated"):
            saturation = fibre_saturation_percent(species)
            total = shrinkage.shrinkage_from_coefficient(coefficient.number, saturation)
            start = f"{direction} shrinkage taken from the coefficient {coefficient.number:.5f}"
            note = f"{start} by S = FC/(1+(F-10)C), F = {saturation:g}%"
            return _value(total, "percent", coefficient.source, note)
        return _share_of_volume(species, direction)

    return rule


def _share_of_volume(species, direction: str) -> Value:
    volume = species.values.get("volumetric_shrinkage_percent")
    start = "" if volume else f"{_GRAVITY_RULE}, then "
    if not volume:
        gravity = species.values.get("specific_gravity_basic")
        if not gravity:
            raise _cannot(species, f"{direction}_shrinkage_percent", "volumetric shrinkage or specific_gravity_basic")
        volume = _volumetric_by_gravity(gravity)
    radial = shrinkage.radial_from_volumetric(volume.number)
    number = radial if direction == "radial" else 2.0 * radial
    return _value(number, "percent", f"{_HANDBOOK}, chapter 4", f"{start}{_TWICE}")


def _volumetric_by_gravity(gravity: Value) -> Value:
    return _value(shrinkage.volumetric_from_gravity(gravity.number), "percent", _HANDBOOK, _GRAVITY_RULE)


def _coefficient_in(direction: str):
    def rule(species) -> Value:
        key = f"{direction}_shrinkage_percent"
        own = species.values.get(key)
        total = own or _share_of_volume(species, direction)
        saturation = fibre_saturation_percent(species)
        number = shrinkage.coefficient_from_shrinkage(total.number, saturation)
        start = "" if own else f"{total.note}, then "
        start += f"coefficient taken from {direction} shrinkage {total.number:.1f}%"
        note = f"{start} by C = S/(F-(F-10)S), F = {saturation:g}%"
        return _value(number, "1/percent", total.source, note)

    return rule


def _gravity_12(species) -> Value:
    basic = species.values.get("specific_gravity_basic")
    if not basic:
        raise _cannot(species, "specific_gravity_12", "specific_gravity_basic")
    number = basic.number / (1.0 - _shrunk_at_12(species))
    note = "gravity at 12% taken from basic gravity and volumetric shrinkage"
    return _value(number, "", f"{_HANDBOOK}, Equation 4-10", note)


def _gravity_basic(species) -> Value:
    dry = species.values.get("specific_gravity_12")
    if not dry:
        raise _cannot(species, "specific_gravity_basic", "specific_gravity_12")
    if not species.values.get("volumetric_shrinkage_percent"):
        raise _cannot(species, "specific_gravity_basic", "volumetric_shrinkage_percent")
    number = dry.number * (1.0 - _shrunk_at_12(species))
    note = "basic gravity taken from gravity at 12% and volumetric shrinkage"
    return _value(number, "", f"{_HANDBOOK}, Equation 4-10", note)


def _shrunk_at_12(species) -> float:
    """Volumetric shrinkage, as a fraction, from green to 12% moisture content (Equation 4-9)."""
    volume = species.values.get("volumetric_shrinkage_percent") or _volumetric(species)
    return volume.number / 100.0 * (1.0 - 12.0 / fibre_saturation_percent(species))


_RULES = {
    "volumetric_shrinkage_percent": _volumetric,
    "radial_shrinkage_percent": _shrinkage_in("radial"),
    "tangential_shrinkage_percent": _shrinkage_in("tangential"),
    "radial_coefficient_per_percent": _coefficient_in("radial"),
    "tangential_coefficient_per_percent": _coefficient_in("tangential"),
    "specific_gravity_12": _gravity_12,
    "specific_gravity_basic": _gravity_basic,
}
