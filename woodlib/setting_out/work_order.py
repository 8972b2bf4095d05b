"""The order of work to tick: each step with what it takes, and each caution at the step where it is first needed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from math import ceil
from typing import TYPE_CHECKING

from ..shop_sizes import at_most
from ..tables import rows
from ..units import both
from ..units.exact import fine_text
from ..ways.steps import Step
from .sections import GoesTogether

if TYPE_CHECKING:
    from .plan import SettingOut


@dataclass(frozen=True)
class Job:
    """One step of the work: ``takes`` what to have at hand or to set, one sentence each; ``cautions`` first met here."""

    step: str
    takes: tuple[str, ...]
    cautions: tuple[str, ...]


@cache
def machines() -> dict[str, str]:
    """What a step makes -> the machine it is made with.

    >>> machines()["flat face"]
    'jointer'
    """
    return {face: row["machine"] for row in rows("work_cautions.csv") for face in row["makes"].split("|")}


def machine_of(step: Step) -> str:
    """The machine that a step is done with; empty where it is a matter of marking, fitting or hand tools."""
    return next((machines()[face] for face in sorted(step.makes) if face in machines()), "")


def work_order(plan: SettingOut) -> tuple[Job, ...]:
    """Every step of a plan in its order, with clamps, coats and drills beside it.

    >>> from woodlib.commission import chosen_brief, commission_of, setting_out_of
    >>> jobs = work_order(setting_out_of(commission_of(chosen_brief(), "breadboard")))
    >>> jobs[0].step, jobs[0].cautions[0][:32]
    ('crosscut the boards to rough length', 'Crosscut against one fence or sl')
    """
    usual = {row["machine"]: row["caution"] for row in rows("work_cautions.csv")}
    met: set[str] = set()
    jobs = []
    for number, step in enumerate(plan.order.steps, start=1):
        machine = machine_of(step)
        last = number == len(plan.order.steps)
        places = {machine} - met | ({"last"} if last else set())
        met.add(machine)
        cautions = [usual[place] for place in places if place in usual]
        cautions += [caution.words for caution in plan.cautions if caution.at in places]
        jobs.append(Job(step.name, tuple(_takes(plan, step)), tuple(cautions)))
    return tuple(jobs)


def _takes(plan: SettingOut, step: Step) -> Iterator[str]:
    """What a step has to have at hand."""
    if plan.glue_up and step.makes & {"sections", "panel"}:
        together = plan.glue_up.goes[-1:] if "panel" in step.makes else plan.glue_up.goes[:-1]
        alike: dict[str, list[str]] = {}
        for one in together:
            alike.setdefault(_clamped(plan, one), []).append(one.name)
        yield from (f"{' and '.join(names).capitalize()}: {said}" for said, names in alike.items())
    if "dowel holes" in step.makes and plan.joints:
        joint = plan.joints[0].joint
        yield f"Drill {fine_text(joint.size_m, plan.first)}, {fine_text(joint.reach_m, plan.first)} deep and a touch more."
    if "hardware holes" in step.makes:
        drills = dict.fromkeys(item.fit.drill.text for item in plan.hardware)
        yield f"Drill{'s' if len(drills) > 1 else ''} {', '.join(drills)}."
    if "finish" in step.makes and plan.finish and plan.finish.coats:
        days = list(dict.fromkeys(plan.finish.coats))
        when = f"on days {', '.join(map(str, days))} from now" if len(days) > 1 else "today"
        count = len(plan.finish.coats)
        coats = f"{count} coats" if count > 1 else "One coat"
        yield (f"{coats} on both faces, edges and ends, {when}; hard enough to move on day {plan.finish.handle_day}.")


def _clamped(plan: SettingOut, one: GoesTogether) -> str:
    wide = both(one.opens_m, rounding="up", first=plan.first)
    pairs = f"{one.cauls} pair{'s' if one.cauls > 1 else ''} of cauls"
    return (
        f"{one.clamps} clamps that open {wide}, {pairs}; about {ceil(one.minutes)} minutes, and the glue stays open for "
        f"{plan.practice.glue_open_min}."
    )


def groove_rows(plan: SettingOut) -> tuple[tuple[str, str], ...]:
    """The cutter for each groove of the way: one that is as wide, or a narrower one in two passes or more."""
    found = []
    for cut in plan.verdict.cuts if plan.verdict else ():
        if cut.key.endswith("groove_width"):
            wide = cut.written_m(plan.first)
            cutter = at_most(plan.practice.sizes("cutter", plan.first), wide)
            if cutter:
                passes = ceil(wide / cutter.size_m)
                how = "in one pass" if passes == 1 else f"in {passes} passes, the fence moved between them"
                found.append((cut.label, f"cutter {cutter.text}, {how}"))
    return tuple(found)
