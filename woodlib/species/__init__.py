"""The catalogue of woods: values with unit, source and status, look-up by name, and woods of your own."""

from .catalogue import all_species
from .names import find_species
from .own import read_own_species, write_own_species_template
from .record import Species, estimates_used
from .shrinkage import coefficient_from_shrinkage, shrinkage_from_coefficient
from .value import STATUSES, Value

__all__ = [
    "STATUSES",
    "Species",
    "Value",
    "all_species",
    "coefficient_from_shrinkage",
    "estimates_used",
    "find_species",
    "read_own_species",
    "shrinkage_from_coefficient",
    "write_own_species_template",
]
