"""The case that runs through the course: the demonstration seat, read from its brief, and what each lesson finds of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from html import escape

from ..commission import Commission, chosen_brief, commission_of
from ..commission.seasons import months_of
from ..commission.shop import setting_out_of
from ..data_files import data_path
from ..errors import InputError
from ..moisture.equilibrium import rh_percent_for_emc
from ..movement.glue_up import glue_up
from ..movement.spread import Movement
from ..movement.wood import wood_of
from ..picture.palette import style_sheet
from ..restraint.measures import odds_of, odds_words
from ..setting_out.plan import SettingOut
from ..units import both, write
from ..ways.index import free_movement

ROOM_C = 21.0
BRIEF = "briefs/reading_nook_seat.toml"


@cache
def seat() -> Commission:
    """The demonstration commission, from the brief that every lesson reads."""
    return commission_of(chosen_brief(data_path(BRIEF)))


def bare_movement() -> Movement:
    """How far the seat would move if its wood kept step with the air of each month."""
    case = seat()
    return free_movement(case.piece, case.brief.stock.moisture_percent(), case.year, case.doubts)


def felt_air() -> tuple[float, float]:
    """Steady air, % RH, in which wood would rest at what the seat's wood comes to in its driest and dampest month."""
    months = seat().months
    ends = (float(months.mc_percent[place]) for place in (months.driest, months.dampest))
    dry, damp = (float(rh_percent_for_emc(ROOM_C, moisture)) for moisture in ends)
    return dry, damp


@dataclass(frozen=True)
class CaseSoFar:
    """What is known of the seat after a lesson, as (what, how much) rows; the last row is the lesson's own."""

    rows: tuple[tuple[str, str], ...]

    def __str__(self) -> str:
        return "\n".join(f"{what}: {told}" for what, told in self.rows)

    def _repr_mimebundle_(self, include=None, exclude=None) -> dict[str, str]:
        rows = "".join(
            f"<tr><th scope='row' style='text-align:left;vertical-align:top;white-space:nowrap'>{escape(what)}</th>"
            f"<td style='text-align:left'>{'<strong>' if new else ''}{escape(told)}{'</strong>' if new else ''}</td></tr>"
            for new, (what, told) in ((row == self.rows[-1], row) for row in self.rows)
        )
        return {"text/plain": str(self), "text/html": f"<style>{style_sheet()}</style><table class='wl'>{rows}</table>"}


def case_so_far(lesson: str) -> CaseSoFar:
    """The facts of the seat up to and with a lesson, by its name without the number. Raises InputError for no lesson.

    >>> print(case_so_far("reading-a-board"))  # doctest: +ELLIPSIS
    The piece: a seat of flatsawn white oak, 20 in (508 mm) by 44 in (1118 mm) and 7/8 in (22 mm) thick...
    """
    if lesson not in FACTS:
        raise InputError(f"There is no lesson {lesson!r}; there are: {', '.join(FACTS)}.")
    rows = [("The piece", _piece())]
    for name, (what, told) in FACTS.items():
        rows.append((what, told()))
        if name == lesson:
            break
    return CaseSoFar(tuple(rows))


def _piece() -> str:
    piece, stock = seat().brief.piece, seat().brief.stock
    sizes = f"{both(piece.width_m)} by {both(piece.length_m)} and {both(piece.thickness_m)} thick"
    border = f"a border {both(piece.border_width_m)} wide across its ends"
    error = write(stock.meter_error_percent, "percent")
    return (
        f"a seat of flatsawn {stock.species}, {sizes}, with {border}; boards at {write(stock.moisture_percent(), 'moisture')}, "
        f"give or take {error}"
    )


def _cut() -> str:
    wood = wood_of(seat().brief.stock.species)
    flat, quarter = 100 * wood.tangential_coefficient, 100 * wood.radial_coefficient
    return f"flatsawn it moves {flat:.3f} % of its width for each point of moisture, quartersawn {quarter:.3f} %"


def _air() -> str:
    dry, damp = seat().year.driest(), seat().year.dampest()
    return (
        f"{write(dry.rh_percent, 'humidity')} in {dry.name}, {write(damp.rh_percent, 'humidity')} in {damp.name}; thin bare "
        f"wood rests at {write(dry.emc_percent, 'moisture')} and {write(damp.emc_percent, 'moisture')}"
    )


def _bare() -> str:
    return f"{bare_movement().text()} over the year, if its wood kept step with the air"


def _ready() -> str:
    months = seat().months
    middle = float(months.mc_percent.mean())
    now = seat().brief.stock.moisture_percent()
    near = "ready" if abs(now - middle) <= 1.0 else "not ready"
    return f"{near}: {write(now, 'moisture')}, and the year's middle in this house is {write(middle, 'moisture')}"


def _finish() -> str:
    months, finish = seat().months, seat().brief.finish
    ends = [float(months.mc_percent[place]) for place in (months.driest, months.dampest)]
    driest, dampest = months_of(seat())
    return (
        f"this thick, under {finish.coats} coats of {finish.name}, the wood goes from {write(ends[0], 'moisture')} in {driest} "
        f"to {write(ends[1], 'moisture')} in {dampest}: it moves {seat().whole_moves.text()}"
    )


def _flat() -> str:
    months = seat().months
    wood = wood_of(seat().brief.stock.species)
    winter = wood.axis_strains(seat().brief.stock.moisture_percent(), float(months.mc_percent[months.driest]))[1:]
    arc = glue_up([0.2 * seat().piece.width_m] * 5, [0.102] * 5, *winter).same_way.out_of_flat_m
    return f"five boards laid for their best faces make one arc of about {both(arc, 32, 0.5)} in the driest month"


def odds() -> tuple[str, str, str]:
    """How likely the glued seat is to split in its first years: likely, lowest, highest, as ``1 in 20``."""
    glued = seat().glued
    assert glued is not None and glued.panel is not None  # the brief of the course compares it
    chance = glued.panel.chance.sound
    few, of = odds_of(chance.likely)
    return f"{few} in {of}", odds_words(chance.low), odds_words(chance.high)


def stretch() -> tuple[str, str]:
    """Share of its width by which the glued border stretches the seat: likely and at most."""
    glued = seat().glued
    assert glued is not None  # the brief of the course compares it
    likely = float(glued.judged.strained.pulled[1])
    return write(likely, "strain"), write(float(glued.judged.most), "strain")


def _glued() -> str:
    likely, low, high = odds()
    mid, most = stretch()
    return (
        f"glued, it stretches the panel by about {mid}, at most {most}, and about {likely} split in the first years "
        f"(could be {low} to {high})"
    )


def _ways() -> str:
    ways = seat().verdicts
    return f"{sum(verdict.allowed for verdict in ways)} of {len(ways)} ways to build serve it in this house"


def _metal() -> str:
    pulls = seat().brief.hardware
    along = all(pull.runs == "along the grain" for pull in pulls)
    where = "along the grain, so they need no slots" if along else "across the grain, so one screw of each is tight"
    return f"{len(pulls)} finger pulls, {both(pulls[0].centres_m, first='metric')} between their holes, run {where}"


def _set_out() -> str:
    plan, weight = setting_out_of(seat()), setting_out_of(seat()).weight
    mid, low, high = (write(mass, "mass") for mass in (weight.mid_kg, weight.low_kg, weight.high_kg))
    return f"as the way that stands first it weighs about {mid}, could be {low} to {high}; {_clear(plan)}"


def _clear(plan: SettingOut) -> str:
    near = [warning for each in plan.hardware for warning in each.warnings]
    return "its pulls keep clear of every cut" if not near else near[0]


def _decided() -> str:
    return f"we build it as {seat().built.way.built_as}"


FACTS: dict[str, tuple[str, Callable[[], str]]] = {
    "reading-a-board": ("Its boards", _cut),
    "the-air-of-a-house": ("Its air", _air),
    "how-far-it-moves": ("It would move", _bare),
    "is-it-ready": ("Its stock", _ready),
    "what-a-finish-buys": ("Its wood", _finish),
    "laying-boards": ("Flat", _flat),
    "crossing-the-grain": ("Its border", _glued),
    "ways-out-and-sheet-goods": ("Instead", _ways),
    "drawers-doors-backs-and-metal": ("Its metal", _metal),
    "setting-out": ("Set out", _set_out),
    "the-commission": ("Decided", _decided),
}
"""Lesson -> what it adds to the case, in the order of the path."""
