"""The woods that the kit carries, read once from its data folder."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from statistics import fmean

from .. import tables
from ..errors import InputError
from . import shrinkage
from .doubts import doubts_of_group, doubts_of_species
from .quantities import columns, keys
from .record import Species
from .value import Value


@cache
def all_species() -> tuple[Species, ...]:
    """Every species and every group, in the order of the tables.

    >>> len([wood for wood in all_species() if not wood.is_group])
    220
    """
    provenance = _provenance()
    rows = tables.rows("species.csv")
    values = {row["name"]: _printed(row, provenance) for row in rows}
    groups = {row["coefficient_row"]: row["name"] for row in rows if row["is_group"] == "true"}
    for row in rows:
        if row["is_group"] == "false":
            _fill_coefficients(row, values, groups)
    for row in rows:
        if row["is_group"] == "true":
            _fill_group(row, rows, values)
    return tuple(_species(row, values, groups, rows) for row in rows)


def _species(row: dict[str, str], values: dict[str, dict[str, Value]], groups: dict[str, str], rows) -> Species:
    name, own = row["name"], values[row["name"]]
    if row["is_group"] == "true":
        doubts = doubts_of_group(name, own, {member: values[member] for member in _members(row, rows)})
    else:
        group_name = groups.get(row["coefficient_row"], "")
        doubts = doubts_of_species(name, own, group_name, values.get(group_name))
    return Species(
        name,
        row["scientific_name"],
        row["kind"],
        row["is_group"] == "true",
        own,
        doubts,
        row["origin"],
        row["table_name"],
        row["coefficient_row"],
    )


def _members(group: dict[str, str], rows: Sequence[dict[str, str]]) -> list[str]:
    return [r["name"] for r in rows if r["coefficient_row"] == group["coefficient_row"] and r["is_group"] == "false"]


@cache
def _sources() -> dict[str, str]:
    return {row["id"]: row["short"] for row in tables.rows("sources.csv")}


def _provenance() -> dict[tuple[str, str], dict[str, str]]:
    return {(row["species"], row["column"]): row for row in tables.rows("species_provenance.csv")}


def _provenance_of(provenance: Mapping[tuple[str, str], dict[str, str]], wood: str, column: str) -> dict[str, str]:
    """Where a printed value comes from; raises :class:`InputError` for whoever adds a wood and leaves one out."""
    if (wood, column) not in provenance:
        raise InputError(
            f"species.csv gives {wood} a {column}, but species_provenance.csv has no row for it; add a row "
            f"'{wood},{column},STATUS,SOURCE,,'."
        )
    return provenance[wood, column]


def _printed(row: dict[str, str], provenance: dict) -> dict[str, Value]:
    """Values of one row of the table, in SI, each with its own status and source."""
    found = {}
    for name, column in columns().items():
        text = row.get(name, "")
        if text:
            found[column.key] = _value(text, column, _provenance_of(provenance, row["name"], name))
    return found


def _value(text: str, column, origin: dict[str, str]) -> Value:
    source = _sources()[origin["source"]]
    if origin["source"] == "memory" and origin["status"] == "recalled" and column.table:
        source = f"from memory ({column.table})"
    elif origin["also_seen_in"]:
        source = f"{source}; also {_sources()[origin['also_seen_in']]}"
    given = f"given as {text} {column.unit}" if column.si_per_unit != 1.0 else ""
    note = "; ".join(part for part in (given, origin["note"]) if part)
    return Value(float(text) * column.si_per_unit, column.si_unit, origin["status"], source, note)


def _fill_coefficients(row: dict[str, str], values: dict[str, dict[str, Value]], groups: dict[str, str]) -> None:
    """Where no coefficient is printed under a species' own name: from its own shrinkage, else from its group's row."""
    own = values[row["name"]]
    group = values.get(groups.get(row["coefficient_row"], ""), {})
    for direction in ("radial", "tangential"):
        key, total = f"{direction}_coefficient_per_percent", own.get(f"{direction}_shrinkage_percent")
        if key in own:
            continue
        if total:
            own[key] = _coefficient_of(total, direction, own)
        elif key in group:
            printed = group[key]
            own[key] = Value(printed.number, printed.unit, printed.status, printed.source, f"group {printed.note}")


def _coefficient_of(total: Value, direction: str, own: dict[str, Value]) -> Value:
    given = own.get("fibre_saturation_percent")
    saturation = given.number if given else shrinkage.USUAL_FIBRE_SATURATION_PERCENT
    note = f"from its own {direction} shrinkage {total.number:g}% by C = S/(F-(F-10)S), F = {saturation:g}%"
    number = shrinkage.coefficient_from_shrinkage(total.number, saturation)
    return Value(number, "1/percent", "derived", total.source, note)


# These describe single rows; a mean of them would mean nothing.
_NOT_FOR_GROUPS = {"fibre_saturation_percent", "strength_moisture_percent"}


def _fill_group(row: dict[str, str], rows: Sequence[dict[str, str]], values: dict[str, dict[str, Value]]) -> None:
    """A group moves by its printed row; what the row leaves open is the mean of its members."""
    own = values[row["name"]]
    for direction in ("radial", "tangential"):
        own[f"{direction}_shrinkage_percent"] = _shrinkage_of(own[f"{direction}_coefficient_per_percent"])
    members = _members(row, rows)
    for key in keys():
        found = {name: values[name][key] for name in members if key in values[name]}
        if found and key not in own and key not in _NOT_FOR_GROUPS:
            own[key] = _of_members(found, len(members))


def _shrinkage_of(coefficient: Value) -> Value:
    number = shrinkage.shrinkage_from_coefficient(coefficient.number)
    note = f"belongs to the group's coefficient {coefficient.number:.5f} by S = FC/(1+(F-10)C), F = 30%"
    return Value(number, "percent", "derived", coefficient.source, note)


def _of_members(found: dict[str, Value], members: int) -> Value:
    if len(found) == 1:
        ((name, value),) = found.items()
        return replace(value, note=f"of {name}, the only one of the group's {members} species with this value")
    numbers = [value.number for value in found.values()]
    parts = (part.removeprefix("also ") for value in found.values() for part in value.source.split("; "))
    note = f"mean of {len(found)} of the group's {members} species, from {min(numbers):.4g} to {max(numbers):.4g}"
    unit = next(iter(found.values())).unit
    return Value(fmean(numbers), unit, "derived", "; ".join(dict.fromkeys(parts)), note)
