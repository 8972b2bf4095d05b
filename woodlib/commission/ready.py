"""Is the stock ready: dry enough for that house, flat and thick enough for the piece, and what to do if not."""

from __future__ import annotations

from math import isnan

from ..air.year import MONTH_NAMES
from ..errors import InputError
from ..moisture.equilibrium import rh_percent_for_emc
from ..moisture.rates import readiness_limit
from ..moisture.resting import resting
from ..moisture.stock import Stock
from ..setting_out.plan import SettingOut
from ..shop_sizes import at_least, sold
from ..units import both, write
from .card import Card, Words, joined, listed, table
from .judged import Commission
from .notes import drawn_stack, note_lines
from .shop import setting_out_of

REST_C = 20.0  # a heated shop
_NEAR_PERCENT = 0.5  # how near the middle of the year is worth waiting for; an assumption of ours
_REST_RH = 10.0, 90.0  # air that a shop can be held at


def stock_ready(commission: Commission) -> Card:
    """Moisture of the stock against the year of the house, the month of gluing up, thickness and flatness."""
    rows: list[tuple[str, Words]] = [
        ("Dry enough?", _dry(commission)),
        ("When it is built", _month(commission)),
        ("Thick and flat enough?", _flat(commission)),
    ]
    rows += [("By your notes", said) for said in note_lines(commission)]
    advice = listed(
        [
            "Read the meter on both faces, and on a fresh crosscut away from the end: wet inside and dry outside cups "
            "after it is flattened.",
            "Bring boards near their thickness, stand them on edge for a few days, and only then take the last cut "
            "(common practice, no source).",
        ]
    )
    asked = table(("Asked", "Answer"), rows, "Is the stock ready?")
    return joined(asked, drawn_stack(commission), advice, first=commission.first)


def _dry(commission: Commission) -> str:
    now, months = commission.brief.stock.moisture_percent(), commission.months
    driest, dampest = (float(months.mc_percent[place]) for place in (months.driest, months.dampest))
    middle = float(months.mc_percent.mean())
    margin = readiness_limit("margin_percent")
    error = write(commission.brief.stock.meter_error_percent, "percent")
    here, year = write(now, "moisture"), f"{write(driest, 'moisture')} to {write(dampest, 'moisture')}"
    if abs(now - middle) <= margin:
        return (
            f"Yes: {here}, give or take {error} of the meter, stands within {write(margin, 'percent')} of the middle of "
            f"this house's year ({year}, {write(middle, 'moisture')} on average)."
        )
    side = "above" if now > middle else "below"
    if driest <= now <= dampest:
        return (
            f"It can be used: {here} lies within this house's year ({year}), but {side} its middle, "
            f"{write(middle, 'moisture')}. More of the movement goes one way, and the sizes given count that. "
            f"{_rest(commission, now, middle)}"
        )
    beyond = "dampest" if now > dampest else "driest"
    only = "shrink" if now > dampest else "grow"
    wrong = "Not yet, too damp" if now > dampest else "Too dry yet"
    return (
        f"{wrong}: {here} is {side} all that this house ever does ({year}), so the piece could only {only} after it "
        f"reaches its room. The sizes given count that, but wood at rest near its {beyond} month or further in is kinder. "
        f"{_rest(commission, now, middle)}"
    )


def _rest(commission: Commission, now: float, middle: float) -> str:
    """How long boards as thick as the stock take to come near the middle of the year, with its range."""
    humidity = float(rh_percent_for_emc(REST_C, middle))
    if not _REST_RH[0] <= humidity <= _REST_RH[1]:
        return "No air that a shop can be held at brings it there."
    thick = _thickest(commission)
    try:
        rest = resting(Stock.of(commission.brief.species(), thick), REST_C, humidity, now, _NEAR_PERCENT)
    except InputError:
        return "How long it takes to rest cannot be said for this wood."
    low, mid, high = rest.days
    if any(isnan(days) for days in rest.days):
        return "How long it takes to rest cannot be said for this wood."
    span = f"about {_weeks(mid)}, could be {_weeks(low)} to {_weeks(high)}"
    return (
        f"On stickers, in air of {write(REST_C, 'temperature')} and {write(humidity, 'humidity')}, boards "
        f"{both(thick, first=commission.first)} thick come within {write(_NEAR_PERCENT, 'percent')} of the middle in {span}."
    )


def _weeks(days: float) -> str:
    """A time as a shop says it."""
    if days < 10:
        return write(round(days), "days")
    weeks = round(days / 7.0)
    return f"{weeks} weeks" if weeks < 18 else f"{round(days / 30.4)} months"


def _thickest(commission: Commission) -> float:
    boards = commission.brief.boards
    return max(board.thickness_m for board in boards) if boards else commission.piece.thickness_m


def _month(commission: Commission) -> str:
    months, name = commission.months, MONTH_NAMES[commission.brief.stock.month - 1]
    if name not in months.names:
        return f"The air of this house in {name} is not known, so nor is whether a piece that moves in then arrives at rest."
    there = float(months.mc_percent[months.names.index(name)])
    gains = there - commission.brief.stock.moisture_percent()
    lead = f"In {name} this house keeps wood at about {write(there, 'moisture')}"
    if abs(gains) < 0.5:
        return f"{lead}: a piece that moves in then arrives at rest."
    way = "takes up" if gains > 0 else "gives off"
    return f"{lead}: a piece that moves in then first {way} about {write(abs(gains), 'percent')} of its dry weight in water."


def _flat(commission: Commission) -> str:
    plan, brief = setting_out_of(commission), commission.brief
    blanks = [plan.blank, *(entry.blank for entry in plan.blanks)]
    needed = max((float(blank.thickness.total_m) for blank in blanks if blank is not None), default=0.0)
    if not needed:
        return "No solid blank has to be planed for this way to build."
    asked = both(needed, rounding="up", first=commission.first)
    apart = brief.stock.out_of_flat_m
    counted = (
        f"{both(apart, 64, 0.1, 'up', commission.first)} out of flat, and planing, are counted"
        if apart
        else "planing is counted; nothing out of flat is given, so lay a straight edge on each board and add to the brief what it shows (out_of_flat)"
    )
    if not brief.boards:
        return f"Rough boards of at least {asked}: {counted}. The brief lists no boards on hand."
    used = {one.board for one in plan.nested.laid}
    thin = [board for board in brief.boards if board.thickness_m < needed]
    names = " and ".join(
        f"board {board.name}, {both(board.thickness_m, first=commission.first)}, is "
        f"{both(needed - board.thickness_m, 32, 0.5, 'up', commission.first)} too thin"
        for board in thin
    )
    if not used:
        return f"No: {asked} is needed ({counted}){f', and {names}' if names else ''}. Leave it for thinner parts, or choose thicker stock."
    thinnest = min(board.thickness_m for board in brief.boards if board.name in used)
    if thinnest < needed:
        return f"Not all of it: {asked} is needed for the thickest part ({counted}), and {names}."
    left = thinnest - needed
    spare = both(left, 32, 0.5, "down", commission.first)
    beside = f" Beside them {names}, and is not used." if names else ""
    return (
        f"{'Yes' if apart else f'Only if every board lies flat within {spare}'}: the thinnest that is used, "
        f"{both(thinnest, first=commission.first)}, has {spare} to spare over the {asked} that is needed; {counted}."
        f"{beside}{_tight(plan, left)}"
    )


def _tight(plan: SettingOut, left_m: float) -> str:
    """That long boards on hand are barely thick enough, and the next thickness that is sold."""
    panel, practice = plan.blank, plan.practice
    if panel is None or panel.length.total_m < practice.long_board_m or panel.thickness.of_kind_m("flattening"):
        return ""
    if left_m >= practice.least_planing_m:
        return ""
    needed = panel.thickness.total_m + practice.least_planing_m
    safe = at_least(sold("rough thickness", plan.first), needed)
    size = f": {safe.called} is safer" if safe else ""
    return f" For boards so long that is little{size}."
