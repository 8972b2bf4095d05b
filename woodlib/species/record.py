"""One wood: its names, its values and what is doubtful about them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from ..errors import InputError, MissingDataError
from . import estimates
from .quantities import meaning_of
from .value import Value


@dataclass(frozen=True)
class Species:
    """A species, or a group of species sold under one name (``is_group``).

    ``values`` maps keys such as ``tangential_coefficient_per_percent`` to :class:`Value`; a key that no table gives
    is absent, never zero and never guessed. ``doubts`` are sentences for a maker about what to be careful with.
    """

    name: str
    scientific_name: str
    kind: str
    is_group: bool
    values: Mapping[str, Value] = field(hash=False, repr=False)
    doubts: tuple[str, ...] = field(default=(), repr=False)
    origin: str = ""
    table_name: str = ""
    coefficient_row: str = ""

    def __post_init__(self) -> None:
        object.__setattr__(self, "values", MappingProxyType(dict(self.values)))

    def __reduce__(self):
        # A read-only mapping cannot be pickled or copied; rebuild it from a plain one.
        return Species, (
            self.name,
            self.scientific_name,
            self.kind,
            self.is_group,
            dict(self.values),
            self.doubts,
            self.origin,
            self.table_name,
            self.coefficient_row,
        )

    def get(self, key: str) -> Value | None:
        """The value under ``key``, or None where the tables are blank; a key that does not exist is refused."""
        meaning_of(key)
        return self.values.get(key)

    def require(self, key: str) -> Value:
        """The value under ``key``.

        Raises :class:`MissingDataError` with one sentence when the tables give none.
        """
        value = self.get(key)
        if value is None:
            raise MissingDataError(f"{self.name} has no {key} in the tables ({meaning_of(key)}); {self._way_out(key)}.")
        return value

    def estimate(self, key: str) -> Value:
        """An estimate of ``key`` by its published rule, with status ``estimated`` and the rule in the note.

        The table's own value of the same key is not used, so the two can be compared.
        Raises :class:`MissingDataError` when no published rule exists or when the rule lacks its inputs.
        """
        meaning_of(key)
        return estimates.estimate(self, key)

    def value_or_estimate(self, key: str) -> Value:
        """The value of the tables where there is one, otherwise the estimate; its status says which."""
        return self.get(key) or self.estimate(key)

    def borrow(self, key: str, lender: Species) -> Value:
        """The value of another wood, used because you asked for it; the note names the lender.

        >>> from woodlib.species import find_species
        >>> find_species("sugar maple").borrow("tension_perpendicular_pa", find_species("black maple")).note
        'borrowed from black maple on request; the tables give none for sugar maple'
        """
        meaning_of(key)
        if self.get(key) is not None:
            raise InputError(f"{self.name} has its own {key}; use it instead of borrowing from {lender.name}.")
        lent = lender.require(key)
        note = f"borrowed from {lender.name} on request; the tables give none for {self.name}"
        return Value(lent.number, lent.unit, "estimated", lent.source, note)

    def lenders(self, key: str) -> tuple[Species, ...]:
        """Woods of the same genus whose tables give ``key``, nearest in specific gravity first: candidates to lend it.

        >>> from woodlib.species import find_species
        >>> [wood.name for wood in find_species("sugar maple").lenders("tension_perpendicular_pa")][0]
        'black maple'
        """
        from .catalogue import all_species  # the catalogue is built from this class

        meaning_of(key)
        genus = self.scientific_name.split(" ")[0]
        same = (wood for wood in all_species() if wood.scientific_name.split(" ")[0] == genus and not wood.is_group)
        return tuple(sorted((wood for wood in same if wood.get(key) and wood != self), key=self._gravity_apart))

    def _gravity_apart(self, other: Species) -> float:
        mine, theirs = self.get("specific_gravity_basic"), other.get("specific_gravity_basic")
        return abs(mine.number - theirs.number) if mine and theirs else math.inf

    @property
    def fibre_saturation_percent(self) -> float:
        """Moisture content on which this wood's coefficient and shrinkage belong together: 30 unless stated."""
        return estimates.fibre_saturation_percent(self)

    def _way_out(self, key: str) -> str:
        if estimates.has_rule(key):
            return f"ask for an estimate with estimate({key!r}) or give your own in a species file"
        near = self.lenders(key)[:1] if self.scientific_name else ()
        nearest = f"; the nearest that has one is {near[0].name}" if near else ""
        return f"it is not estimated: give your own in a species file, or borrow it from a wood you name{nearest}"


def estimates_used(values: Mapping[str, Value] | tuple[Value, ...]) -> tuple[str, ...]:
    """One sentence per estimated value, for results to carry.

    >>> estimates_used({"specific_gravity_12": Value(0.6, "", "estimated", "rule", "taken from basic gravity")})
    ('specific_gravity_12 is estimated: taken from basic gravity.',)
    """
    named = values.items() if isinstance(values, Mapping) else ((value.unit or "a value", value) for value in values)
    return tuple(f"{name} is estimated: {value.note}." for name, value in named if value.status == "estimated")
