"""Finishes as what they do to moisture: a film that slows it, on each face of a board.

A finish never changes where the wood comes to rest, only how long it takes. ``data/finishes.csv`` holds the published
moisture-excluding effectiveness with its status and source per value, ``data/finish_films.csv`` the film fitted to it
(the tests redo the fit).
"""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from ..air.psychrometrics import saturation_pressure_pa
from ..errors import InputError
from ..tables import rows
from .diffusivity import WATER_DENSITY
from .equilibrium import emc_percent, humidity_for_moisture
from .rates import Likely, rate


class Effectiveness(NamedTuple):
    """One published figure: how much less moisture than bare wood after some days, with status and source."""

    days: int
    excluded_percent: float
    status: str
    source: str


@dataclass(frozen=True)
class Finish:
    """A finish with its number of coats, the film fitted to it and the figures behind the fit.

    film_m_s: coefficient in the published test; permeance_kg_m2_s_pa: the same film per vapour pressure; both are
    infinite for a finish that cannot be told from none. rms_points: how far the fit is off, NaN without a fit.
    """

    name: str
    coats: int
    film_m_s: float = np.inf
    permeance_kg_m2_s_pa: float = np.inf
    rms_points: float = np.nan
    note: str = ""
    figures: tuple[Effectiveness, ...] = ()

    @property
    def label(self) -> str:
        """The finish as words, with its coats."""
        return self.name if self.coats == 0 else f"{self.name}, {self.coats} coat{'s' if self.coats > 1 else ''}"

    @property
    def hides_the_wood(self) -> bool:
        """Whether nothing of the grain is seen through it."""
        return self.coats > 0 and any(
            word in self.name.casefold() for word in ("paint", "enamel", "primer", "solid-color")
        )

    @property
    def weakest_status(self) -> str:
        """The least trusted status among the figures: printed, quoted or recalled; empty for bare wood."""
        order = ("printed", "quoted", "recalled")
        return max((figure.status for figure in self.figures), key=order.index, default="")

    @property
    def remarks(self) -> tuple[str, ...]:
        """What to say beside a result that uses this finish."""
        if not self.figures:
            return ()
        words = {
            "printed": "seen in the handbook table",
            "quoted": "quoted from the handbook table",
            "recalled": "partly recalled and not seen in print",
        }[self.weakest_status]
        return (f"{self.label}: {self.note}; figures {words}.",)


BARE = Finish("bare wood", 0)
# A face that lies flat on a bench or is glued to something tight: next to nothing passes.
CLOSED = Finish("closed face", 0, film_m_s=1e-14, permeance_kg_m2_s_pa=1e-16)


@lru_cache(maxsize=1)
def all_finishes() -> tuple[Finish, ...]:
    """Every finish of the table, one per number of coats.

    >>> len(all_finishes())
    64
    """
    figures: dict[tuple[str, int], list[Effectiveness]] = {}
    for row in rows("finishes.csv"):
        figure = Effectiveness(int(row["days"]), float(row["excluded_percent"]), row["status"], row["source"])
        figures.setdefault((row["finish"], int(row["coats"])), []).append(figure)
    return tuple(_finish(row, tuple(figures[row["finish"], int(row["coats"])])) for row in rows("finish_films.csv"))


def _finish(row: dict[str, str], figures: tuple[Effectiveness, ...]) -> Finish:
    fitted = bool(row["film_m_s"])
    return Finish(
        row["finish"],
        int(row["coats"]),
        float(row["film_m_s"]) if fitted else np.inf,
        float(row["permeance_kg_m2_s_pa"]) if fitted else np.inf,
        float(row["rms_points"]) if fitted else np.nan,
        row["note"],
        figures,
    )


_HOUSE_PAINTS = ("paint", "stain", "primer", "wall")


def finish_names() -> tuple[str, ...]:
    """Names of all finishes in the order of the table, bare wood first.

    >>> finish_names()[:2]
    ('bare wood', 'Linseed oil')
    """
    return (BARE.name, *dict.fromkeys(finish.name for finish in all_finishes()))


def find_finish(name: str, coats: int | None = None) -> Finish:
    """A finish of the table by name, or by the beginning of its name; case does not matter.

    name: as in :func:`finish_names`, or as makers say it (``finish_names.csv``): "wax", "hardwax oil", "bare". coats: as in the table, the
    most usual three (or the most the table has) when left out. Raises InputError with the nearest names.

    >>> find_finish("urethane varnish", 3).label
    'Urethane varnish (oil-modified), 3 coats'
    >>> find_finish("shelac", 2)
    Traceback (most recent call last):
    ...
    woodlib.errors.InputError: finish is 'shelac', which is not in the table; did you mean Shellac?
    """
    if not isinstance(name, str):
        raise InputError(f"finish is {name!r}; write the name of a finish, for example 'shellac' or 'bare'.")
    full_name = _meant(name)
    if full_name == BARE.name:
        return BARE
    table = {finish.coats: finish for finish in all_finishes() if finish.name == full_name}
    if coats is None:
        coats = 3 if 3 in table else max(table)
    if isinstance(coats, bool) or coats not in table:
        listed = ", ".join(str(number) for number in table)
        raise InputError(f"coats is {coats!r} for {full_name}; the table has {listed}: choose one of these.")
    return table[int(coats)]


def _meant(name: str) -> str:
    """What a maker means by a name: one of the trade's, or a name of the table; an ambiguous one is asked back."""
    wanted = " ".join(name.lower().replace("-", " ").split())
    row = next((row for row in rows("finish_names.csv") if row["said"].replace("-", " ") == wanted), None)
    if row is None:
        return BARE.name if wanted == BARE.name else _full_name(name)
    if not row["finish"] and row["coats"] != "0":
        raise InputError(f"finish is {name!r}, which can mean several; write {row['note']}.")
    return row["finish"] or BARE.name


def _full_name(name: str) -> str:
    names = finish_names()[1:]
    wanted = " ".join(name.lower().split())
    same = [full for full in names if full.lower() == wanted]
    begins = same or [full for full in names if full.lower().startswith(wanted)]
    holds = begins or [full for full in names if wanted and wanted in full.lower()]
    holds = [full for full in holds if not any(word in full.lower() for word in _HOUSE_PAINTS)] or holds
    if wanted and len(holds) == 1:
        return holds[0]
    if wanted and holds:
        raise InputError(
            f"finish is {name!r}, which fits {len(holds)} finishes: {'; '.join(holds)}; write one of them."
        )
    raise InputError(f"finish is {name!r}, which is not in the table; {_nearest(wanted, names)}")


def _nearest(wanted: str, names: tuple[str, ...]) -> str:
    """A guess at what was meant, by whole names and by their single words."""
    by_word = {
        word: full for full in reversed(names) for word in (full.lower(), *full.lower().replace("(", "").split())
    }
    close = get_close_matches(wanted, by_word, n=3, cutoff=0.6)
    guesses = "; ".join(dict.fromkeys(by_word[word] for word in close))
    if guesses:
        return f"did you mean {guesses}?"
    clear = [full for full in names if not any(word in full.lower() for word in _HOUSE_PAINTS)]
    return f"write one of: {'; '.join((BARE.name, *clear))}; or a paint or stain."


def film_coefficient_m_s(
    finish: Finish, specific_gravity: float, temperature_c: float, mc_low_percent: float, mc_high_percent: float
) -> float:
    """Surface coefficient of a film on a given wood, m/s on the basis of that wood's moisture content.

    The film passes vapour in step with vapour pressure; the denser the wood, the less that changes its moisture.
    The slope of the sorption curve is taken between the two moistures (%), widened by half a percent each way so
    that it exists when they agree. Infinite for bare wood.

    >>> varnish = find_finish("urethane varnish", 3)
    >>> f"{film_coefficient_m_s(varnish, 0.68, 21.0, 6.0, 11.0):.1e}"
    '3.5e-09'
    """
    if not np.isfinite(finish.permeance_kg_m2_s_pa):
        return np.inf
    most = float(emc_percent.kernel(temperature_c, 100.0))
    low, high = max(mc_low_percent - 0.5, 0.0), min(mc_high_percent + 0.5, most)
    rh = humidity_for_moisture(temperature_c, np.array([low, high]))
    slope = (rh[1] - rh[0]) / (high - low)
    pressure = saturation_pressure_pa.kernel(temperature_c)
    return float(finish.permeance_kg_m2_s_pa * pressure * slope / (WATER_DENSITY * specific_gravity))


def surface_coefficient_m_s(film_m_s: float) -> Likely:
    """Film and air film in series, m/s; low, mid and high from the spread of the emission of bare wood.

    >>> tuple(f"{value:.2e}" for value in surface_coefficient_m_s(6e-9))
    ('5.66e-09', '5.80e-09', '5.88e-09')
    """
    return Likely(*(1.0 / (1.0 / film_m_s + 1.0 / emission) for emission in rate("surface_emission_m_s")))
