"""What else the shop's folder holds as rows: the order of work, glue and clamps, coats, what to buy."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from ..units import both
from .glue import area_text
from .lists import Row, check_plan, size_text
from .plan import SettingOut
from .work_order import groove_rows, work_order


def order_rows(plan: SettingOut) -> tuple[Row, ...]:
    """One row per step, with what it takes, the cautions that belong to it and room for a tick.

    >>> from woodlib.commission import chosen_brief, commission_of, setting_out_of
    >>> order_rows(setting_out_of(commission_of(chosen_brief(), "breadboard")))[4]["step"]
    'plane to thickness, strips a little over'
    """
    check_plan(plan)
    return tuple(
        {
            "number": str(number),
            "step": job.step,
            "with": " ".join(job.takes),
            "take care": " ".join(job.cautions),
            "done": "",
        }
        for number, job in enumerate(work_order(plan), start=1)
    )


def glue_rows(plan: SettingOut) -> tuple[Row, ...]:
    """One row per glue-up: the panel's, in its order, and the glue lines of the way."""
    check_plan(plan)
    found = []
    for one in plan.glue_up.goes if plan.glue_up else ():
        area = one.lines * plan.glue.length_m * plan.glued_blank.thickness.total_m
        found.append(
            {
                "glued": one.name,
                "from": one.strips_said,
                "lines": str(one.lines),
                "area": area_text(area, plan.first),
                "clamps": str(one.clamps),
                "clamps open at least": both(one.opens_m, rounding="up", first=plan.first),
                "pairs of cauls": str(one.cauls),
                "minutes to the last clamp": str(ceil(one.minutes)),
                "open time of the glue, minutes": str(plan.practice.glue_open_min),
            }
        )
    for line in plan.made.glue if plan.made else ():
        found.append(
            {
                "glued": line.name,
                "from": "",
                "lines": str(line.count),
                "area": area_text(line.area_m2, plan.first),
                "clamps": str(line.clamps) if line.clamps else "pressed all over",
                "clamps open at least": "",
                "pairs of cauls": "",
                "minutes to the last clamp": "",
                "open time of the glue, minutes": str(plan.practice.glue_open_min),
            }
        )
    return tuple(found)


def finish_rows(plan: SettingOut) -> tuple[Row, ...]:
    """One row per coat, and one for each day that something becomes allowed; empty for bare wood."""
    check_plan(plan)
    finish = plan.finish
    if finish is None or finish.bare:
        return ()
    coats = [
        (str(day), f"coat {number} of {finish.named or finish.finish.name}, both faces, edges and ends")
        for number, day in enumerate(finish.coats, 1)
    ]
    rest = [
        (str(finish.handle_day), "it may be set up, and may go to its house"),
        (str(finish.cured_day), "hard: it may be used and wiped"),
    ]
    return tuple({"day": day, "what": what, "done": ""} for day, what in (*coats, *rest))


def buy_rows(plan: SettingOut) -> tuple[Row, ...]:
    """One row for each thing to buy or to have: boards, sheet and veneer, dowels, glue and finish."""
    check_plan(plan)
    return tuple({"what": what, "how much": much} for what, much in _to_buy(plan))


def _to_buy(plan: SettingOut) -> Iterator[tuple[str, str]]:
    for purchase in plan.purchases:
        yield f"boards, {purchase.rough.called}", purchase.says
    for part in plan.made.parts if plan.made else ():
        if not part.solid and part.role != "offcut":
            yield part.name, f"{part.count}, {part.text(plan.first)}"
    dowels = sum(len(joint.wanted_m) for joint in plan.joints)
    if dowels:
        joint = plan.joints[0].joint
        yield (
            "dowels",
            f"{dowels}, {size_text(joint.size_m, plan.first)} thick, {size_text(2 * joint.reach_m, plan.first)} long",
        )
    yield from groove_rows(plan)
    drills = dict.fromkeys(item.fit.drill.text for item in plan.hardware)
    if drills:
        yield "drills for the hardware", ", ".join(drills)
    if plan.glue.glue_kg:
        yield "glue for the panel's edges", _mass(plan.glue.glue_kg, plan.first)
    if plan.finish and not plan.finish.bare:
        litres = plan.finish.litres
        metric, customary = f"{max(litres, 0.05):.2f} l", f"{max(litres, 0.05) / 0.473176473:.1f} pints"
        yield (
            plan.finish.called,
            f"about {metric} ({customary})" if plan.first == "metric" else f"about {customary} ({metric})",
        )


def _mass(mass_kg: float, first: str) -> str:
    ounces, grams = f"{mass_kg / 0.028349523125:.1f} oz", f"{1000 * mass_kg:.0f} g"
    return f"about {grams} ({ounces})" if first == "metric" else f"about {ounces} ({grams})"


def caution_text(plan: SettingOut) -> str:
    """Every caution of the job and what else to know, one a line."""
    check_plan(plan)
    steps = [f"At '{job.step}': {caution}" for job in work_order(plan) for caution in job.cautions]
    always = [caution.words for caution in plan.cautions if caution.at == "always"]
    return "\n".join([*always, *steps, *plan.remarks]) + "\n"
