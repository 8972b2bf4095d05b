"""A brief from its file, checked against all that the kit knows, once for the same bytes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from types import MappingProxyType

from ..brief import Brief, read_brief
from ..brief.toml_file import LARGEST_BYTES
from ..data_files import data_path
from ..errors import InputError, Problems
from ..study.study import Study
from ..units import shown
from .judged import Commission, commission_of
from .names import CHECKS, OF_THE_PIECE, WAYS_TO_BUILD, at_the_piece, collect, compared_way

DEMO = "briefs/reading_nook_seat.toml"
WETTEST_YEAR_PERCENT = 28.0
"""Mean of a year, beyond which wood is near fibre saturation and rooms drip (an assumption of ours)."""

KEPT_WAY = f"handout.{WAYS_TO_BUILD}.way"
MOST_KEPT = 8


def chosen_brief(named: str | Path = Path(DEMO).name) -> Brief:
    """The brief in a file, or the invented demonstration.

    A name that is no file here is looked for among the demonstrations of the kit: ``serving_board.toml``.
    Raises :class:`InputError` with one sentence per mistake, each with its line.

    >>> chosen_brief().title
    'Lift-up seat for a reading-nook bench'
    """
    shipped = data_path("briefs") / Path(named).name
    bare = Path(named).name == str(named) and not Path(named).is_file()
    return checked_brief(shipped if bare and shipped.is_file() else named)


def checked_brief(path: str | Path) -> Brief:
    """The brief in a file, with every name in it known, every start value within its study, and hardware that can be
    set out; else all sentences.
    """
    return checked_commission(path).brief


def judged_brief(path: str | Path) -> Commission:
    """The commission of a brief's file for its verdicts alone: nothing is set out, no study is made.

    Raises :class:`InputError` with one sentence per mistake, each with its line.
    """
    commission = commission_of(_way_by_its_key(read_brief(path, CHECKS)))
    problems = Problems()
    problems.sentences.extend(_too_damp(commission))
    problems.raise_if_any()
    return commission


@dataclass(frozen=True)
class _Kept:
    """A commission with what its files were like when they were read."""

    commission: Commission
    beside: tuple[tuple[int, int] | None, ...]

    def still_holds(self) -> bool:
        return self.beside == _beside(self.commission.brief)


_kept: dict[tuple[Path, bytes], _Kept] = {}


def checked_commission(path: str | Path) -> Commission:
    """The commission of a brief's file; the same bytes are checked and judged once.

    Raises :class:`InputError` with one sentence per mistake, each with its line.
    """
    key = _key(path)
    if key is not None and key in _kept and _kept[key].still_holds():
        return _kept[key].commission
    commission = _checked(read_brief(path, CHECKS))
    if key is not None:
        _kept[key] = _Kept(commission, _beside(commission.brief))
        while len(_kept) > MOST_KEPT:
            del _kept[next(iter(_kept))]
    return commission


def _key(path: str | Path) -> tuple[Path, bytes] | None:
    """What tells a file apart; None for what only the reader can speak about."""
    try:
        file = Path(path).absolute()
        return (file, file.read_bytes()) if file.is_file() and file.stat().st_size <= LARGEST_BYTES else None
    except (OSError, ValueError, TypeError):
        return None


def _beside(brief: Brief) -> tuple[tuple[int, int] | None, ...]:
    """Date and size of the files that a brief names."""
    found = []
    for path in (brief.stock.own_species, brief.shop.file, *brief.house.paths):
        there = path.stat() if path is not None and path.exists() else None
        found.append((there.st_mtime_ns, there.st_size) if there else None)
    return tuple(found)


def _checked(read: Brief) -> Commission:
    from .shop import setting_out_of

    brief, problems = _way_by_its_key(read), Problems()
    commission = commission_of(brief)
    collect(problems, "", at_the_piece, brief, setting_out_of, commission)
    problems.sentences.extend(_too_damp(commission))
    for key in OF_THE_PIECE:
        if brief.handout.get(key):
            study = collect(problems, "", at_the_piece, brief, commission.plain_study, key)
            _check_starts(problems, brief, study)
    problems.raise_if_any()
    return commission


def _check_starts(problems: Problems, brief: Brief, study: Study | None) -> None:
    if study is None:
        return
    for name, value in brief.handout.get(study.key, {}).items():
        key = f"handout.{study.key}.{name}"
        if key == KEPT_WAY:
            collect(problems, brief.where(key), compared_way, brief, value, f"{key} is")
        else:
            collect(problems, f"{brief.where(key)}{key}: ", study.read, {name: value})


def _too_damp(commission: Commission) -> Iterator[str]:
    """A room that stays near saturation all year is a slip: no wood in it comes to rest as wood in rooms does."""
    brief, mc_percent, rh_percent = commission.brief, commission.months.mc_percent, commission.months.rh_percent
    if float(mc_percent.mean()) <= WETTEST_YEAR_PERCENT:
        return
    key = brief.house.source
    if "house.moisture_gain" in brief.typed and key in ("weather", "climate"):
        key = "moisture_gain"
    air = (
        f"the air of the room is {rh_percent.mean():.0f} % RH on average of the year"
        if rh_percent is not None
        else "the room"
    )
    remedy = "give the air of a drier room"
    if key in ("weather", "climate"):
        remedy = 'write kind = "air-conditioned" or dehumidifier_holds = "55 %" if the room is dried'
    if key == "moisture_gain":
        remedy = f'now {shown(brief.typed["house.moisture_gain"])}, lower it, heat more, or write dehumidifier_holds = "55 %"'
    yield (
        f"{brief.where(f'house.{key}')}house.{key}: {air}, which keeps wood at {mc_percent.mean():.1f} % MC, near saturation; "
        f"at most {WETTEST_YEAR_PERCENT:g} % MC is taken: {remedy}."
    )


def _way_by_its_key(brief: Brief) -> Brief:
    """The brief with the way that it keeps for its handout as the studies know it, whichever of its names is written."""
    kept = brief.handout.get(WAYS_TO_BUILD, {})
    try:
        way = compared_way(brief, kept["way"], "way is") if "way" in kept else ""
    except InputError:  # told with the rest, at its line
        return brief
    handout = {**brief.handout, WAYS_TO_BUILD: MappingProxyType({**kept, "way": way})}
    return replace(brief, handout=MappingProxyType(handout)) if way else brief
