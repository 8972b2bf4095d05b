"""One number of a wood, with its unit, where it comes from and how sure it is."""

from __future__ import annotations

from dataclasses import dataclass

from ..errors import InputError

STATUSES = ("printed", "quoted", "confirmed", "recalled", "derived", "estimated", "own")


@dataclass(frozen=True)
class Value:
    """A number in SI (percent stays percent) that never travels without its status and source.

    >>> str(Value(0.00274, "1/percent", "printed", "Wood Handbook 2010, Table 13-5"))
    '0.00274 1/percent (printed: Wood Handbook 2010, Table 13-5)'
    >>> float(Value(0.55, "", "own", "my-wood.csv"))
    0.55
    """

    number: float
    unit: str
    status: str
    source: str
    note: str = ""

    def __post_init__(self) -> None:
        if self.status not in STATUSES:
            raise InputError(f"status {self.status!r} is not known; use one of {', '.join(STATUSES)}.")

    def __float__(self) -> float:
        return float(self.number)

    def __str__(self) -> str:
        unit = f" {self.unit}" if self.unit else ""
        return f"{self.number:.6g}{unit} ({self.status}: {self.source})"
