"""Small tables for held movement: fracture toughness, scatter, moisture and temperature effects, grain angle."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from woodlib.errors import InputError, MissingDataError
from woodlib.species.names import normal
from woodlib.species.value import Value
from woodlib.tables import rows as table_rows


@dataclass(frozen=True)
class TemperatureEffect:
    """Change of a quantity from 20 degC to -50 and to +50 degC, in percent, within a span of moisture content."""

    quantity: str
    moisture_lowest_percent: float
    moisture_highest_percent: float
    change_at_minus_50c: Value | None
    change_at_plus_50c: Value | None


@dataclass(frozen=True)
class GrainAngle:
    """Hankinson exponent and strength across over along the grain, each as lowest and highest."""

    quantity: str
    exponent: tuple[Value, Value]
    across_to_along: tuple[Value, Value]


@dataclass(frozen=True)
class SlopeOfGrain:
    """What is left of straight-grained strength where the grain leaves the edge by 1 in ``run``; percent."""

    run: float
    modulus_of_rupture: Value
    impact_bending: Value
    compression_parallel: Value


def fracture_toughness_pa_sqrt_m(wood: str, mode: str = "I", plane: str = "TL") -> Value:
    """Stress intensity (Pa sqrt m) at which a crack along the grain runs; mode I opens, mode II slides.

    Plane ``TL`` or ``RL``: the crack opens tangentially or radially and runs lengthwise; a value whose plane was not
    legible has plane ``""``. Raises :class:`MissingDataError` with the woods that have one.
    Source: Wood Handbook 2010, Table 5-10.

    >>> fracture_toughness_pa_sqrt_m("Douglas-fir").number
    320000.0
    """
    rows = [row for row in table_rows("fracture_toughness.csv") if (row["mode"], row["plane"]) == (mode, plane)]
    for row in rows:
        if normal(row["wood"]) == normal(wood):
            return _value(float(row["toughness_kpa_sqrt_m"]) * 1e3, "Pa sqrt(m)", row)
    if not rows:
        raise InputError(
            f"mode {mode!r} in plane {plane!r} is not in the fracture table; use mode 'I' or 'II' "
            "and plane 'TL', 'RL' or ''."
        )
    raise MissingDataError(
        f"fracture toughness of {wood}, mode {mode}, plane {plane or 'not known'}, is in no table; "
        f"it is given for {', '.join(row['wood'] for row in rows)}."
    )


def coefficient_of_variation(quantity: str) -> Value:
    """Scatter of one property from board to board: standard deviation over mean, as a fraction.

    >>> coefficient_of_variation("shear parallel").number
    0.14
    """
    rows = table_rows("strength_variation.csv")
    for row in rows:
        if normal(row["quantity"]) == normal(quantity):
            return _value(float(row["coefficient_of_variation_percent"]) / 100.0, "", row)
    raise MissingDataError(
        f"scatter of {quantity!r} is in no table; it is given for {', '.join(row['quantity'] for row in rows)}."
    )


def moisture_intersection_percent(wood: str) -> Value:
    """Moisture content (percent) below which drying strengthens a wood; 25 where the wood is not listed.

    Source: Wood Handbook 2021 (FPL-GTR-282), Table 5-13, for use in its Equation (5-3).

    >>> moisture_intersection_percent("Ash, white").number, moisture_intersection_percent("teak").number
    (24.0, 25.0)
    """
    rows = {normal(row["wood"]): row for row in table_rows("moisture_intersection.csv")}
    row = rows.get(normal(wood), rows[normal("any other wood")])
    return _value(float(row["moisture_intersection_percent"]), "percent", row, f"row '{row['wood']}'")


@cache
def temperature_effects() -> tuple[TemperatureEffect, ...]:
    """Every row of the temperature table; Wood Handbook 2021 (FPL-GTR-282), Table 5-15.

    A span open at the top ends at infinity; a change that is not printed is None.

    >>> temperature_effects()[0].change_at_plus_50c.number
    -6.0
    """

    def change(row: dict[str, str], column: str) -> Value | None:
        return _value(float(row[column]), "percent", row) if row[column] else None

    return tuple(
        TemperatureEffect(
            row["quantity"],
            float(row["moisture_lowest_percent"]),
            float(row["moisture_highest_percent"] or "inf"),
            change(row, "change_at_minus_50c_percent"),
            change(row, "change_at_plus_50c_percent"),
        )
        for row in table_rows("temperature_effects.csv")
    )


@cache
def grain_angles() -> tuple[GrainAngle, ...]:
    """Exponent and ratio for strength at an angle to the grain: N = P Q / (P sin^n a + Q cos^n a).

    >>> grain_angles()[0].exponent[0].number
    1.5
    """

    def ends(row: dict[str, str], stem: str) -> tuple[Value, Value]:
        return tuple(_value(float(row[f"{stem}_{end}"]), "", row) for end in ("lowest", "highest"))

    rows = table_rows("grain_angle.csv")
    return tuple(GrainAngle(row["quantity"], ends(row, "exponent"), ends(row, "across_to_along")) for row in rows)


@cache
def slopes_of_grain() -> tuple[SlopeOfGrain, ...]:
    """Strength left at a slope of grain, straightest first; Wood Handbook 2010, Table 5-12, from memory.

    >>> [(slope.run, slope.modulus_of_rupture.number) for slope in slopes_of_grain()][-1]
    (5.0, 55.0)
    """
    columns = ("modulus_of_rupture_percent", "impact_bending_percent", "compression_parallel_percent")
    return tuple(
        SlopeOfGrain(float(row["run_for_one_of_rise"]), *(_value(float(row[name]), "percent", row) for name in columns))
        for row in table_rows("slope_of_grain.csv")
    )


@cache
def _sources() -> dict[str, str]:
    return {row["id"]: row["short"] for row in table_rows("sources.csv")}


def _value(number: float, unit: str, row: dict[str, str], note: str = "") -> Value:
    return Value(number, unit, row["status"], _sources()[row["source"]], note or row.get("note", ""))
