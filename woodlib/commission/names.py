"""Names in a brief that only the rest of the kit can judge: ways to build, the finish, studies and their inputs."""

from __future__ import annotations

from difflib import get_close_matches

from ..brief import Brief
from ..brief.desk import Desk
from ..errors import InputError, MissingDataError, Problems
from ..moisture.finishes import find_finish
from ..units import shown
from ..ways.looks import read_look
from ..ways.registry import find_way, way_of, ways_for

SAME_M = 1e-4  # widths written in two places
WAYS_TO_BUILD, WAYS_COMPARED = OF_THE_PIECE = ("ways-to-build", "ways-compared")
"""Keys of the studies that a brief brings itself."""


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


def _check_ways(desk: Desk) -> None:
    for name in desk.known.get("constructions", ()):
        collect(desk.problems, desk.where(("constructions",)), find_way, name, "constructions holds")


def _check_two_decisions(desk: Desk) -> None:
    """What the ends get and what the base is: each a way of its sort that serves such a piece."""
    kind = desk.known.get("piece.kind")
    for entry, on_a_base in (("ends", False), ("base", True)):
        name = desk.known.get(f"piece.{entry}")
        if not name or kind is None:
            continue
        where, fitting = desk.where(("piece", entry)), [w for w in ways_for(kind) if w.on_a_base == on_a_base]
        way = collect(desk.problems, where, find_way, name, f"piece.{entry} is")
        if way is not None and way not in fitting:
            known = "; ".join(other.name for other in fitting) or f"none for a {kind}"
            desk.problems.add(f"{where}piece.{entry} is {shown(name)}, which is none of them; there are: {known}.")
    if look := desk.known.get("piece.keep"):
        kept = collect(desk.problems, desk.where(("piece", "keep")), read_look, look, "piece.keep is")
        border = desk.known.get("piece.border_width")
        if kept is not None and kept.border_m is not None and (border is None or abs(border - kept.border_m) > SAME_M):
            desk.problems.add(
                f"{desk.where(('piece', 'keep'))}piece.keep is {shown(look)}, but border_width is "
                f"{shown(desk.typed['piece.border_width']) if border else 'not given'}; write the same width in both."
            )
    if desk.known.get("piece.base_holds") and not desk.known.get("piece.base"):
        desk.problems.add(
            f"{desk.where(('piece', 'base_holds'))}piece.base_holds is given without piece.base; write what holds it there, "
            'such as base = "buttons", or take it out.'
        )
    if desk.known.get("piece.base") and desk.known.get("piece.lifts") == "yes":
        desk.problems.add(
            f"{desk.where(('piece', 'base'))}piece.base is given for a piece that lifts; take one of the two out."
        )


def _check_finish(desk: Desk) -> None:
    if "finish.name" in desk.known:
        name, coats = desk.known["finish.name"], desk.known.get("finish.coats")
        known = collect(desk.problems, desk.where(("finish", "name")), find_finish, name)
        if known is not None and coats:  # no coats at all: bare wood
            collect(desk.problems, desk.where(("finish", "coats")), find_finish, name, coats)


def _check_studies(desk: Desk) -> None:
    """Studies that there are, and their inputs; the piece's own studies wait until the rest of the brief is good."""
    from ..studies import STUDIES, find_study

    for key in desk.table(("handout",)):
        if key not in (*STUDIES, *OF_THE_PIECE):
            desk.problems.add(f"{desk.where(('handout', key))}{_unknown_study(key, (*STUDIES, *OF_THE_PIECE))}")
        elif key in STUDIES:
            for name in desk.table(("handout", key)):
                value = desk.known.get(f"handout.{key}.{name}")
                if value is not None:
                    where = f"{desk.where(('handout', key, name))}handout.{key}.{name}: "
                    collect(desk.problems, where, find_study(key).read, {name: value})


CHECKS = (_check_ways, _check_two_decisions, _check_finish, _check_studies)
"""What is checked while a brief is read, so that its sentences come with the others."""


def collect(problems: Problems, where: str, function, *arguments):
    """What the function returns; None where it refuses, with its sentences kept."""
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
    except MissingDataError as error:
        raise InputError(
            f"{brief.where('wood.species')}{error} Take another wood, or add it to a table of your own (own_species)."
        ) from None


def _unknown_study(key: str, known: tuple[str, ...]) -> str:
    near = get_close_matches(key, known, 1)
    hint = f" Did you mean {near[0]!r}?" if near else ""
    return f"There is no study {shown(key)}; there are: {', '.join(known)}.{hint}"


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
    if profile := brief.piece.panel:
        return tuple(way.key for way in serving if way.profile == profile)
    bordered = bool(brief.piece.border_width_m)  # where none is wanted none is put on
    return tuple(
        way.key
        for way in serving
        if (bordered or not way.wants_border) and not (way.on_a_base and (brief.piece.lifts or brief.piece.base))
    )
