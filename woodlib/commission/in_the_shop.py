"""What the setting out takes of the shop, and how its panel is glued up with the machines and clamps that are there."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from ..setting_out.plan import SettingOut
from ..setting_out.practice import NAMED
from ..setting_out.work_lists import finish_rows
from ..units import both, write
from .card import NOTHING, Card, folded, heading, joined, listed, paragraphs, table

SLOWS_LITTLE = 20.0  # percent held back, below which a finish hardly slows the wood (an assumption of ours)
NEAR_PERCENT = 1.0  # points of moisture that a piece takes without harm whichever way it lies (an assumption of ours)
FEW_BY_HAND = 2  # joints that a maker levels by hand without complaint; common practice, no source
_CALLED = {
    "jointer_m": "widest board on the jointer",
    "thicknesser_m": "widest panel through the thicknesser",
    "longest_clamp_m": "longest clamps",
    "clamps": "clamps there are",
    "kerf_m": "kerf of the saw blade",
    "cutters_m": "grooving cutters",
    "drills_m": "drills",
    "open_time": "open time of the glue",
}


def the_shop(plan: SettingOut) -> Card:
    """Machines, clamps and tools as they are taken, and whether the brief names them or they are the usual ones."""
    rows = [
        (
            _CALLED[name],
            _told(plan, name),
            f"named in {plan.shop.told_in}" if getattr(plan.shop, name) else "usual, not named",
        )
        for name in NAMED
    ]
    how = "Name yours under [shop] in the brief, or once for all briefs in a file shop.toml beside them."
    asked = table(("Of the shop", "Taken as", "From"), rows, "What this plan takes of the shop")
    return folded("The shop, as it is taken", joined(asked, paragraphs(how)))


def _told(plan: SettingOut, name: str) -> str:
    value = getattr(plan.practice, NAMED[name])
    if name == "open_time":
        return f"{value} minutes"
    if name == "clamps":
        return str(value) if value else "as many as it takes"
    if isinstance(value, Fraction):
        return both(value, 64, 0.5, first=plan.first)
    return (
        ", ".join(size.text for size in plan.practice.sizes(name.removesuffix("s_m"), plan.first))
        if value
        else "all that are sold"
    )


def gluing_up(plan: SettingOut) -> Card:
    """Which strips go together, with clamps, cauls and time; what the thicknesser no longer reaches."""
    if plan.glue_up is None:
        return NOTHING
    rows = [
        (
            f"{one.name}, {one.strips_said}" if plan.glue_up.last else one.name,
            f"{one.lines}",
            both(one.width_m, rounding="up", first=plan.first),
            f"{one.clamps}, opening {both(one.opens_m, rounding='up', first=plan.first)}",
            f"{one.cauls} pairs" if one.cauls > 1 else "1 pair",
            f"{ceil(one.minutes)} of {plan.practice.glue_open_min}",
        )
        for one in plan.glue_up.goes
    ]
    head = "Goes together", "Lines", "Width", "Clamps", "Cauls across", "Minutes of the glue's"
    return joined(
        heading("Gluing up"),
        paragraphs(*_sections_said(plan)),
        table(head, rows, "Each glue-up: try it dry first, with every clamp at hand"),
        listed(plan.glue_up.remarks) if plan.glue_up.remarks else NOTHING,
    )


def _sections_said(plan: SettingOut) -> Iterator[str]:
    found = plan.glue_up
    if found is None:
        return
    takes = both(plan.practice.thicknesser_m, first=plan.first)
    alone = [one.strips_said for one in found.sections if not one.lines]
    if found.last is None:
        wide = found.sections[0].width_m
        fits = wide <= plan.practice.thicknesser_m
        yield (
            f"The panel is glued up at once and passes the thicknesser, {takes}, as a whole."
            if fits
            else f"The panel is glued up at once; it is wider than the thicknesser, {takes}: level it by hand."
        )
        return
    count = len(found.sections)
    if len(found.goes) == 1:
        yield (
            f"No two strips together pass the thicknesser, {takes}: each goes through it by itself, and after the glue-up "
            f"{count - 1} joint{'s are' if count > 2 else ' is'} left to level by hand, so line them up with most care."
        )
    elif found.by_hand:
        joints = "one joint is" if found.by_hand == 1 else f"{found.by_hand} joints are"
        yield (
            f"The panel is wider than the thicknesser, {takes}. Glue it up in {count} sections, thickness all of them at one "
            f"setting, then join them: {joints} left to level by hand, so line those up with most care."
        )
    else:
        yield (
            f"The glue does not stay open for all the lines at once: glue up {count} sections first, then join them. The "
            f"whole still passes the thicknesser, {takes}, so no joint is left to level by hand."
        )
    if found.by_hand > FEW_BY_HAND:
        yield (
            "So many joints are long work with a plane: a shop with a wide belt or drum sander levels the whole panel in one pass; "
            "leave it thicker by what its sander takes."
        )
    if alone and len(found.goes) > 1:
        yield f"By itself until then: {', '.join(alone)}."
    yield "Cauls are straight bars, waxed, in pairs above and below: they keep the strips level while the clamps draw them up."


def the_finish(plan: SettingOut) -> Card:
    """Coats and their days, what stays bare, and from when on the piece may go to its house."""
    finish = plan.finish
    if finish is None:
        return NOTHING
    if finish.bare:
        return joined(
            heading("Finish"),
            paragraphs(
                "Nothing that hardens is put on, so nothing slows the air: the wood follows its house within weeks, both faces and "
                "ends alike. Keep it flat on stickers, never on one face, until it goes."
            ),
        )
    rows = [(f"day {row['day']}", row["what"]) for row in finish_rows(plan)]
    return joined(
        heading("Finish"),
        paragraphs(
            "Day 0 is the day on which it is together and smooth. A cold or damp shop takes longer; the label of the can comes first."
        ),
        table(("Day", "What"), rows, f"{finish.called}: {finish.note}"),
        listed(list(_finish_said(plan))),
    )


def _finish_said(plan: SettingOut) -> Iterator[str]:
    finish = plan.finish
    if finish is None:
        return
    yield (
        "Coat both faces on the same day, edges and ends too, with as many coats inside and below as outside: a face that is "
        "left bare takes up and gives off more than the other, and the panel cups."
    )
    if finish.glued:
        yield f"Keep bare until they are glued: {', '.join(finish.glued)}. Finish on a glue face keeps glue from holding: tape it off."
    if finish.slides:
        yield (
            f"Where parts slide ({', '.join(finish.slides)}), no film may build up on tongues, nor in grooves: one thin coat, wiped off, "
            "before it goes together, and wax once that is dry. It must never stick."
        )
    if finish.keeps_out is not None:
        much = f"holds back about {finish.keeps_out:.0f} % of what bare wood would take up in two weeks of damp air"
        slow = " so the wood follows its house almost as if it were bare" if finish.keeps_out < SLOWS_LITTLE else ""
        yield f"{finish.finish.label}: it {much} (Wood Handbook, Table 16-3){f',{slow}' if slow else ''}."
    yield from _leaves(plan, finish.handle_day)


def _leaves(plan: SettingOut, day: int) -> Iterator[str]:
    """From when on it may go to its house, by how dry that keeps wood."""
    if plan.verdict is None:
        return
    here, driest = plan.weight.mc_percent, float(plan.verdict.quantities["driest_mc"])
    if here - driest < NEAR_PERCENT:
        yield f"It may go to its house from day {day}: wood at {write(here, 'moisture')} is never dried far there."
        return
    yield (
        f"Its house dries wood to {write(driest, 'moisture')} in the driest month, and this is at {write(here, 'moisture')}: it may go "
        f"from day {day}, with the last coat on every face, not half finished, as then it dries on one side and cups. For its first "
        "weeks keep it clear of heaters and of the wall, so that both faces dry alike."
    )
