"""The finish as part of the plan: coats on every face alike with their days, what stays bare, and when the piece may leave."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, isfinite

from ..moisture.finishes import Finish
from ..tables import rows
from ..ways.made import MadePiece

OTHER = "any other"


@dataclass(frozen=True)
class FinishPlan:
    """Coats of a finish, counted in days from the day on which the piece is together and smooth, which is day 0.

    ``coats`` the day of each; ``handle_day`` from which it may be carried and set up, ``cured_day`` from which it may be
    used hard; ``area_m2`` of all faces, edges and ends; ``litres`` for all coats; ``glued`` names of glue faces and
    ``slides`` of joints that move, which stay bare; ``keeps_out`` percent of the moisture that bare wood takes up in
    two weeks of damp air, by the published table, None where it has none; ``note`` how it goes on; ``named`` as the
    brief has it.
    """

    finish: Finish
    coats: tuple[int, ...]
    handle_day: int
    cured_day: int
    area_m2: float
    litres: float
    glued: tuple[str, ...]
    slides: tuple[str, ...]
    keeps_out: float | None
    note: str
    named: str = ""

    @property
    def called(self) -> str:
        """The finish as the brief names it, and as what it is counted."""
        same = not self.named or self.finish.name.casefold().startswith(self.named.casefold())
        return self.finish.label if same else f"{self.named}, counted as {self.finish.label}"

    @property
    def bare(self) -> bool:
        """Whether nothing is put on."""
        return not self.coats


def finish_plan(
    finish: Finish, piece: MadePiece | None, size_m: tuple[Fraction, ...], glued_up: bool, named: str = ""
) -> FinishPlan:
    """Coats and days of a finish on a piece of this length, width and thickness.

    Days between coats and of hardening are those of usual labels, from memory (``finish_days.csv``): the label of the
    can, and a cold or damp shop, come before them.

    >>> from ..moisture.finishes import find_finish
    >>> plan = finish_plan(find_finish("varnish", 3), None, (Fraction(1), Fraction(1, 2), Fraction(1, 50)), True)
    >>> plan.coats, plan.handle_day, plan.cured_day, round(plan.area_m2, 2), round(plan.litres, 2)
    ((0, 1, 2), 5, 16, 1.06, 0.32)
    """
    table = {row["finish"]: row for row in rows("finish_days.csv")}
    row = table.get(finish.name, table[OTHER])
    long, wide, thick = (float(size) for size in size_m)
    area = 2.0 * (long * wide + long * thick + wide * thick)
    between, handle, cured, spread = (
        float(row[name]) for name in ("between_days", "handle_days", "cured_days", "m2_per_litre")
    )
    coats = tuple(int(number * between) for number in range(finish.coats))
    last = coats[-1] if coats else 0
    glued = tuple(dict.fromkeys(line.name for line in piece.glue)) if piece else ()
    return FinishPlan(
        finish,
        coats,
        last + ceil(handle) if coats else 0,
        last + ceil(cured) if coats else 0,
        area,
        finish.coats * area / spread,
        (*(["edges of the strips"] if glued_up else []), *glued),
        tuple(dict.fromkeys(line.name for line in piece.lines if line.loose)) if piece else (),
        _kept_out(finish),
        row["note"] if coats else "",
        named,
    )


def _kept_out(finish: Finish) -> float | None:
    """What the published table says after its longest time."""
    longest = max(finish.figures, key=lambda figure: figure.days, default=None)
    return longest.excluded_percent if longest and isfinite(longest.excluded_percent) else None
