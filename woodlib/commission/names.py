"""Names in a brief that only the rest of the kit can judge: ways to build, the finish, studies and their inputs."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import replace
from difflib import get_close_matches
from pathlib import Path
from types import MappingProxyType

import numpy as np

from ..brief import Brief, read_brief
from ..data_files import data_path
from ..errors import InputError, Problems
from ..moisture.finishes import BARE, Finish, find_finish
from ..studies import STUDIES, find_study
from ..studies.ways_compared import KEY as COMPARED
from ..studies.ways_to_build import KEY
from ..units import shown
from ..ways.registry import find_way, way_of, ways_for

BRIEF_VARIABLE = "WOODLIB_BRIEF"
DEMO = "briefs/reading_nook_seat.toml"
WETTEST_YEAR_PERCENT = 28.0
"""Mean of a year, beyond which wood is near fibre saturation and rooms drip (an assumption of ours)."""

KEPT_WAY = f"handout.{KEY}.way"
_OF_THE_PIECE = (KEY, COMPARED)  # studies that a brief brings itself


def chosen_brief(default: str | Path | None = None) -> Brief:
    """The brief that a handout is being made for, else the one named, else the invented demonstration.

    A name that is no file here is looked for among the demonstrations of the kit: ``serving_board.toml``.

    Raises :class:`InputError` with one sentence per mistake, each with its line.

    >>> chosen_brief().title
    'Lift-up seat for a reading-nook bench'
    """
    named = os.environ.get(BRIEF_VARIABLE)
    return checked_brief(named or _demonstration(default or Path(DEMO).name))


def _demonstration(name: str | Path) -> str | Path:
    shipped = data_path("briefs") / Path(name).name
    return shipped if not Path(name).is_file() and Path(name).name == str(name) and shipped.is_file() else name


def checked_brief(path: str | Path) -> Brief:
    """The brief in a file, with every name in it known, every start value within its study, and hardware that can be
    set out; else all sentences.
    """
    from .road import commission_of
    from .shop import setting_out_of

    brief = _way_by_its_key(read_brief(path, (_check_ways, _check_finish, _check_studies)))
    commission, problems = commission_of(brief), Problems()
    _collect(problems, "", at_the_piece, brief, setting_out_of, commission)
    problems.sentences.extend(_too_damp(brief, commission.months.mc_percent, commission.months.rh_percent))
    studies = _collect(problems, "", at_the_piece, brief, commission.plain_studies) or ()
    for study in studies:
        for name, value in brief.handout.get(study.key, {}).items():
            key = f"handout.{study.key}.{name}"
            if key == KEPT_WAY:
                _collect(problems, brief.where(key), compared_way, brief, value, f"{key} is")
            else:
                _collect(problems, f"{brief.where(key)}{key}: ", study.read, {name: value})
    problems.raise_if_any()
    return brief


def _too_damp(brief: Brief, mc_percent: np.ndarray, rh_percent: np.ndarray | None) -> Iterator[str]:
    """A room that stays near saturation all year is a slip: no wood in it comes to rest as wood in rooms does."""
    if float(mc_percent.mean()) <= WETTEST_YEAR_PERCENT:
        return
    key = "moisture_gain" if brief.house.source in ("weather", "climate") else brief.house.source
    air = (
        f"the air of the room is {rh_percent.mean():.0f} % RH on average of the year"
        if rh_percent is not None
        else "the room"
    )
    remedy = "give the air of a drier room"
    if key == "moisture_gain":
        remedy = f'now {shown(brief.typed["house.moisture_gain"])}, lower it, heat more, or write dehumidifier_holds = "55 %"'
    yield (
        f"{brief.where(f'house.{key}')}house.{key}: {air}, which keeps wood at {mc_percent.mean():.1f} % MC, near saturation; "
        f"at most {WETTEST_YEAR_PERCENT:g} % MC is taken: {remedy}."
    )


def _way_by_its_key(brief: Brief) -> Brief:
    """The brief with the way that it keeps for its handout as the studies know it, whichever of its names is written."""
    kept = brief.handout.get(KEY, {})
    try:
        way = compared_way(brief, kept["way"], "way is") if "way" in kept else ""
    except InputError:  # told with the rest, at its line
        return brief
    handout = {**brief.handout, KEY: MappingProxyType({**kept, "way": way})}
    return replace(brief, handout=MappingProxyType(handout)) if way else brief


def compared_way(brief: Brief, name: object, asked: str) -> str:
    """The key of a way by any of its names, if it is among those that are compared for this brief.

    ``asked`` begins the sentence: where the name was written. Raises :class:`InputError` with the ways there are.
    """
    key, ways = find_way(str(name), asked).key, ways_of(brief)
    if key not in ways:
        known = "; ".join(way_of(way).name for way in ways)
        raise InputError(
            f"{asked} {shown(name)}, which is not among the ways compared for this {brief.piece.kind}: {known}."
        )
    return key


def _check_ways(desk) -> None:
    for name in desk.known.get("constructions", ()):
        _collect(desk.problems, desk.where(("constructions",)), find_way, name, "constructions holds")


def _check_finish(desk) -> None:
    if "finish.name" in desk.known:
        finish = desk.known["finish.name"], desk.known.get("finish.coats") or None  # no coats at all: bare wood
        at_coats = _refusal_of(find_finish, *finish).startswith("coats")
        _collect(desk.problems, desk.where(("finish", "coats" if at_coats else "name")), find_finish, *finish)


def _check_studies(desk) -> None:
    """Studies that there are, and their inputs; the piece's own studies wait until the rest of the brief is good."""
    for key in desk.table(("handout",)):
        if key not in (*STUDIES, *_OF_THE_PIECE):
            _collect(desk.problems, desk.where(("handout", key)), _unknown_study, key)
        elif key in STUDIES:
            for name in desk.table(("handout", key)):
                value = desk.known.get(f"handout.{key}.{name}")
                if value is not None:
                    where = f"{desk.where(('handout', key, name))}handout.{key}.{name}: "
                    _collect(desk.problems, where, find_study(key).read, {name: value})


def _collect(problems: Problems, where: str, function, *arguments):
    try:
        return function(*arguments)
    except InputError as error:
        problems.absorb(error, where)
        return None


def at_the_piece(brief: Brief, function, *arguments):
    """What the function returns; sentences of its refusal that name no line get that of the piece."""
    try:
        return function(*arguments)
    except InputError as error:
        where = brief.where("piece")
        raise InputError(*(s if s.startswith(brief.path.name) else f"{where}{s}" for s in error.problems)) from None


def _unknown_study(key: str) -> None:
    known = (*STUDIES, *_OF_THE_PIECE)
    near = get_close_matches(key, known, 1)
    hint = f" Did you mean {near[0]!r}?" if near else ""
    raise InputError(f"There is no study {shown(key)}; there are: {', '.join(known)}.{hint}")


def ways_of(brief: Brief) -> tuple[str, ...]:
    """The ways to compare: those the brief names, else all that serve such a piece.

    Raises :class:`InputError`, with its line, for every name that is not known, or that serves no such piece.
    """
    serving, problems, found = ways_for(brief.piece.kind), Problems(), []
    where = brief.where("constructions")
    for name in brief.constructions:
        try:
            key = find_way(name, "constructions holds").key
        except InputError as error:
            problems.absorb(error, where)
            continue
        if key not in {way.key for way in (*serving, *ways_for())}:
            known = "; ".join(way.name for way in serving)
            problems.add(
                f"{where}constructions holds {shown(name)}, which serves no {brief.piece.kind}; what does: {known}."
            )
        found.append(key)
    problems.raise_if_any()
    if found:
        return tuple(dict.fromkeys(found))
    bordered = bool(brief.piece.border_width_m)  # where none is wanted none is put on
    return tuple(
        way.key for way in serving if (bordered or not way.wants_border) and not (way.on_a_base and brief.piece.lifts)
    )


def finish_of(brief: Brief) -> Finish:
    """The finish of the brief from the table; bare wood where it names none, or no coats of it.

    Raises :class:`InputError` for a finish, or a number of coats, that no table has.
    """
    bare = not brief.finish.name or brief.finish.coats == 0
    return BARE if bare else find_finish(brief.finish.name, brief.finish.coats)


def _refusal_of(function, *arguments) -> str:
    try:
        function(*arguments)
    except InputError as error:
        return str(error)
    return ""
