"""One part of a survey: a wood in a place, every width and way, as rows of a labelled table."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from math import radians

import numpy as np

from ..air.climates import find_climate
from ..door import check_length
from ..errors import InputError, Problems
from ..movement.wood import wood_of
from ..species import find_species
from ..ways.held import Held, plane_field
from ..ways.judge import judge, numbers_of
from ..ways.piece import Allowances, Piece
from ..ways.registry import way_of, ways_for
from ..ways.strained import Strained
from ..ways.travel import over_width
from ..ways.way import Way
from ..words.decided import now
from ..words.many import Many
from .sampled import houses_of, moistures, strains_of

INCH_M = 0.0254
CUTS = {"flatsawn": 0.0, "riftsawn": 45.0, "quartersawn": 90.0}
MOST_BOARDS = 100_000
"""Sampled boards of one part: with this many it takes less than 250 MB, and the rows of a whole survey are little beside it."""
TROUBLE = (0.05, 0.25)
"""Shares of the pieces from which a way is near its limit, and not sensible: one in twenty and one in four; a judgement."""
VERDICTS = ("sensible", "near its limit", "not sensible")


@dataclass(frozen=True)
class Settings:
    """What is surveyed: names, widths in m, the cut, keys of ways, how many boards and houses, and the piece around them."""

    woods: tuple[str, ...]
    places: tuple[str, ...]
    widths_m: tuple[float, ...]
    ways: tuple[str, ...]
    cut: str = "flatsawn"
    samples: int = 400
    thickness_m: float = 0.875 * INCH_M
    length_m: float = 44 * INCH_M
    border_m: float = 2 * INCH_M
    coats: int = 3

    @property
    def parts(self) -> list[tuple[Settings, str, str]]:
        """Every part as it goes to :func:`rows_of`."""
        return [(self, wood, place) for wood in self.woods for place in self.places]

    @property
    def told(self) -> dict:
        """The settings as they are kept beside a survey that was stopped."""
        return {name: list(value) if isinstance(value, tuple) else value for name, value in asdict(self).items()}


def settings_of(woods, places, widths, ways=(), *, cut: str = "flatsawn", samples: int = 400) -> Settings:
    """Checked settings. Raises :class:`InputError` with a sentence for everything that cannot be surveyed.

    >>> settings_of(["white oak"], ["Chicago"], ["24 in"]).ways[0]
    'battens'
    """
    problems = Problems()

    def each(names, find) -> tuple[str, ...]:
        found = []
        for name in names:
            try:
                found.append(find(name))
            except InputError as error:
                problems.absorb(error)
        return tuple(dict.fromkeys(found))

    woods = each(woods, lambda name: find_species(name).name)
    places = each(places, lambda name: find_climate(name).place)
    keys = each(ways, lambda name: way_of(name).key) or tuple(way.key for way in ways_for(None))
    sizes = tuple(check_length(problems, "width", width) for width in widths)
    if cut not in CUTS:
        problems.add(f"cut is {cut!r}; write {', '.join(CUTS)}.")
    if not 20 <= samples <= MOST_BOARDS:
        problems.add(f"boards is {samples}; draw 20 to {MOST_BOARDS} of them, 400 is usual.")
    problems.raise_if_any()
    return Settings(woods, places, tuple(float(size) for size in sizes), keys, cut, samples)


def rows_of(part: tuple[Settings, str, str]) -> list[dict]:
    """The rows of one part: a pure function, so that any ``map`` may carry it, on this machine or on others.

    >>> rows = rows_of((settings_of(["white oak"], ["Chicago"], ["24 in"], ["frame_panel", "glued_border"]), "white oak", "Chicago"))
    >>> [(row["way"], row["verdict"]) for row in rows]
    [('frame_panel', 'sensible'), ('glued_border', 'not sensible')]
    """
    settings, name, place = part
    species, ring = find_species(name), CUTS[settings.cut]
    gravity = (species.get("specific_gravity_12") or species.require("specific_gravity_basic")).number
    at = moistures(houses_of(place, settings.samples), gravity, settings.thickness_m, settings.coats, settings.samples)
    strains = strains_of(wood_of(species), radians(ring), at, settings.samples)
    rows = []
    for width in settings.widths_m:
        border = min(settings.border_m, 0.25 * width, 0.25 * settings.length_m)  # as where a brief asks for none
        piece = Piece(species, width, settings.length_m, settings.thickness_m, border, ring_angle_deg=ring)
        travels = over_width({key: Many(value) for key, value in strains.items()}, width)
        moved = np.quantile(travels["swing_mid"].values, (0.05, 0.5, 0.95))
        held = plane_field(piece)
        for way in map(way_of, settings.ways):
            trouble, failing, gap = _judged(way, piece, travels, held, settings.samples)
            half, most = np.quantile(gap, (0.5, 0.95))
            share = float(trouble.mean())
            rows.append(
                {
                    "wood": name,
                    "place": place,
                    "cut": settings.cut,
                    "width_m": round(width, 6),
                    "way": way.key,
                    "verdict": VERDICTS[int(np.searchsorted(TROUBLE, share, "left"))],
                    "trouble_share": round(share, 4),
                    "failing_share": round(float(failing.mean()), 4),
                    "gap": _gap(way),
                    "gap_half_m": round(float(half), 6),
                    "gap_19_of_20_m": round(float(most), 6),
                    "swing_half_percent": round(float(np.median(at[2] - at[1])), 3),
                    **{
                        f"moves_{end}_m": round(float(q), 6)
                        for end, q in zip(("low", "half", "high"), moved, strict=True)
                    },
                }
            )
    return rows


def _gap(way: Way) -> str:
    """Key of the size that grows until it stops the way; else the first that a slider shows, or none."""
    return (way.stopped_by.sizes if way.stopped_by else way.main_cuts[:1] or ("",))[0]


def _judged(way: Way, piece: Piece, travels: dict, held: Held, samples: int) -> tuple[np.ndarray, ...]:
    """Which sampled pieces are in trouble and which fail, and the size that matters, m; (samples,) each."""

    def plain(value) -> np.ndarray:
        value = now(value)
        return np.broadcast_to(value.values if isinstance(value, Many) else value, (samples,))

    allowances = Allowances()
    held = way.holding(piece, allowances) if way.holding else held
    judged = judge(way, numbers_of(way, piece, travels, allowances, held), held)
    levels = [plain(level) for level in _likely(judged.strained).levels] if way.holds else [np.zeros(samples)]
    step, past, limit = np.max(levels, axis=0), np.zeros(samples, bool), way.stopped_by
    for key in limit.sizes if limit else ():
        past |= plain(judged.sizes[key]) > limit.most_m  # type: ignore[union-attr]
    return (step >= 1) | past, step >= 2, plain(judged.sizes[_gap(way)]) if _gap(way) else np.zeros(samples)


def _likely(strained: Strained) -> Strained:
    """The boards differ already: of the doubt in the law itself its middle counts."""
    pulled, squeezed, border, glue = (
        (three[1], three[1], three[1]) for three in (strained.pulled, strained.squeezed, strained.border, strained.glue)
    )
    return Strained(pulled, squeezed, border, glue, strained.splits, strained.whole_m)
