"""The commission set out for the shop: parts, blanks, holes, dowels, cut order, weight, what to buy, and drawings."""

from __future__ import annotations

from fractions import Fraction

from ..setting_out.boards import Strip
from ..setting_out.glue import area_text
from ..setting_out.lists import board_rows, dowel_rows, fixing_rows, hole_rows, in_order, size_text, where_from
from ..setting_out.plan import SettingOut, set_out
from ..setting_out.sheet_words import blank_in_words, drawing_in_words
from ..setting_out.sheets import sheets
from ..setting_out.work_lists import buy_rows
from ..setting_out.work_order import Job, work_order
from ..units import both
from .card import NOTHING, Card, figure, folded, heading, joined, listed, paragraphs, table
from .in_the_shop import gluing_up, the_finish, the_shop
from .judged import Commission

NOT_SET_OUT = (
    "Where the buttons, blocks or plates and their screws sit is not set out here, as it goes with the base: spread them "
    "evenly, and take gaps and slots from the cut list."
)


def setting_out_of(commission: Commission) -> SettingOut:
    """The piece of a commission set out as it is built, with the boards on hand and the hardware of its brief.

    Raises :class:`InputError` with the line of the brief where hardware or sizes do not fit the way it is built.

    >>> from woodlib.commission import chosen_brief, commission_of
    >>> plan = setting_out_of(commission_of(chosen_brief(), "breadboard"))
    >>> [(part.count, part.name) for part in plan.piece.parts], len(plan.joints)
    ([(1, 'panel'), (2, 'end piece')], 3)
    """
    return set_out(commission.brief, verdict=commission.built)


def shop_cards(commission: Commission) -> Card:
    """All of the setting out, one card after the other, with its drawings."""
    plan = setting_out_of(commission)
    cards = (
        parts_to_cut,
        blanks_to_cut,
        shop_drawings,
        holes_to_bore,
        dowels_to_bore,
        gluing_up,
        order_of_cuts,
        the_finish,
        weight_and_wood,
        roundings_shown,
        shop_cautions,
        the_shop,
    )
    return joined(shortage(plan), *(card(plan) for card in cards))


def shortage(plan: SettingOut) -> Card:
    """That the boards on hand do not reach, before anything is cut."""
    return paragraphs(plan.short) if plan.short else NOTHING


def parts_to_cut(plan: SettingOut) -> Card:
    """The finished parts, where each size comes from, and that they add up exactly."""
    rows = [*_whole(plan), *((f"{part.count} x {part.name}", part.text(plan.first)) for part in plan.piece.parts)]
    sums = listed([f"{line.said(plan.first)}." for line in plan.piece.sums])
    reasons = listed([f"{part.name}: {where_from(part)}." for part in plan.piece.parts])
    return joined(
        heading("Parts"),
        table(("Part", "Length along its grain x width x thickness"), rows, "The piece and its parts, finished"),
        folded("Where each size comes from", reasons),
        paragraphs("They add up exactly:"),
        sums,
    )


def _whole(plan: SettingOut) -> list[tuple[str, str]]:
    """The size of the whole piece, or of a part that is fitted into an opening."""
    long, wide, thick = (size_text(size, plan.first) for size in plan.piece.size_m)
    what = "as fitted" if plan.piece.way.fitted else "finished outside"
    return [(f"{what}, across the grain", wide), (f"{what}, along the grain", long), (f"{what}, thick", thick)]


def blanks_to_cut(plan: SettingOut) -> Card:
    """The blanks with all that is lost on the way, and the strips of the panel from the boards on hand."""
    panel = "panel, glued up" if plan.glued_up else "panel, from one board"
    listed_blanks = [(panel, 1, plan.blank)] if plan.blank else []
    listed_blanks += [(entry.part.name, entry.part.count, entry.blank) for entry in plan.blanks]
    rows = [(f"{count} x {name}", blank.text(plan.first)) for name, count, blank in listed_blanks]
    lost = [
        f"{name}, {division.direction}: {division.adds_up(plan.first)}."
        for name, _, blank in listed_blanks
        for division in (blank.length, blank.width, blank.thickness)
    ]
    return joined(
        heading("Blanks"),
        table(("Blank of", "Cut to at least"), rows, "Blanks, with kerfs, trims and planing"),
        folded("What each blank is made up of", listed(lost)),
        _strips(plan),
        _laid(plan),
        _own_blank(plan),
    )


def _strips(plan: SettingOut) -> Card:
    if plan.boards is None:
        return NOTHING
    if plan.boards.assumed_m:
        return _assumed(plan.boards.strips, plan.boards.assumed_m, plan.first)
    rows = [
        (f"strip {number}", strip.board, size_text(strip.width_m, plan.first))
        for number, strip in enumerate(plan.boards.strips, start=1)
    ]
    near, far = (size_text(ripped, plan.first) for ripped in plan.boards.ripped_m)
    off = (
        f"{far} is ripped off once, off the edge away from the {plan.edge}"
        if plan.boards.once
        else (f"{near} is ripped off each long edge")
    )
    used = "; ".join(
        f"{boards} of {name} for {strips} strip{'s' if strips > 1 else ''}" for name, boards, strips in plan.boards.used
    )
    return joined(
        table((f"Strip, from the {plan.edge}", "Board", "Width, edges jointed"), rows, "Strips of the panel"),
        paragraphs(f"Boards to cut into: {used}.", f"Beyond the blank's width {off}.", *plan.boards.remarks),
    )


def _laid(plan: SettingOut) -> Card:
    """Where each blank lies on the boards on hand."""
    listed_boards = board_rows(plan)
    if not listed_boards:
        return NOTHING
    head = "Board", "Blank", "Along from its end, and across from its edge"
    rows = [(row["board"], row["piece"], f"{row['from the end']}; {row['from the edge']}") for row in listed_boards]
    said = "Crosscut first, then rip; look for knots and checks before the first cut, and move a blank aside for them."
    return folded("Where each blank lies on the boards", joined(table(head, rows, "Boards on hand"), paragraphs(said)))


def _assumed(strips: tuple[Strip, ...], assumed_m: Fraction, first: str) -> Card:
    """Strips alike, from boards that are not listed."""
    count, wide = len(strips), both(assumed_m, first=first)
    strip = size_text(strips[0].width_m, first)
    said = (
        f"The panel is set out in {count} strips {strip} wide, edges jointed, ripped from boards {wide} wide."
        if count > 1
        else f"The panel is set out from one board {wide} wide."
    )
    return paragraphs(f"{said} That width is assumed, as the brief lists no boards: list yours under [[boards]].")


def _own_blank(plan: SettingOut) -> Card:
    """Numbers to write before the first cut, and how the figure runs on, where end pieces come from the blank."""
    if plan.piece.own_ends_m is None:
        return NOTHING
    marks = ", ".join(plan.glued_blank.run.mark_with)
    return joined(
        paragraphs(f"Before the first cut write on the show face, in this order: {marks}."),
        listed([corner.said(plan.first) for corner in plan.glued_blank.run.corners]),
    )


def holes_to_bore(plan: SettingOut) -> Card:
    """Every hole: where it is, how to mark it, how wide; what fits, what gets slots, and what is in the way."""
    rows = [_hole(row, plan.edge, plan.first) for row in hole_rows(plan)[: -len(plan.piece.fixings) or None]]
    head = "Hole", "From the left end", f"From the {plan.edge}", "Mark and bore"
    cards = [table(head, rows, "Holes for hardware")] if rows else []
    said = [item.fit.says for item in plan.hardware]
    said += [item.slots.said(plan.first) for item in plan.hardware if item.slots]
    said += [item.metal.said_of_metal(plan.first) for item in plan.hardware if item.metal]
    cards += [_warned(plan), listed(list(dict.fromkeys(said)))] if rows else []
    cards += [_fixings(plan)] if plan.piece.fixings else []
    cards += [paragraphs(NOT_SET_OUT)] if plan.piece.way.on_a_base else []
    return joined(heading("Holes"), *cards) if cards else NOTHING


def _fixings(plan: SettingOut) -> Card:
    """Pins or screws of the way itself: those as far from the front edge together, as they are bored alike."""
    rows: dict[str, tuple[list[str], str]] = {}
    for row in fixing_rows(plan):
        across = _place(row, f"from the {plan.edge}", plan.first)
        slot = (
            f"; slot in the {row['slot in']} {row['slot across the grain']} long, {row['middle of the slot']}"
            if row["slot across the grain"]
            else ""
        )
        said = f"bore {row['diameter']}{slot}; {row['mark']}, {row['rounding of the mark']}"
        along = _place(row, "from the left end", plan.first)
        rows.setdefault(across, ([], said))[0].append(along)
    listed_rows = [(across, ", ".join(along), said) for across, (along, said) in rows.items()]
    head = f"From the {plan.edge}", "From the left end", "Bore"
    caption = f"Bored in the {plan.piece.fixings[0].part}, as it is built"
    return folded("Pins and screws of the way it is built", table(head, listed_rows, caption))


def _hole(row: dict[str, str], edge: str, first: str) -> tuple[str, str, str, str]:
    """A row of the hole list for a page."""
    found = row["middle of the slot"]
    slot = (
        f"; slot {row['slot across the grain']}, {'its middle ' if 'round hole' in found else ''}{found}"
        if found
        else ""
    )
    from_left, from_front = (_place(row, side, first) for side in ("from the left end", f"from the {edge}"))
    said = f"{row['mark']}, {row['rounding of the mark']}; bore {row['diameter']}{slot}"
    return f"{row['hole']} (in the {row['in']})", from_left, from_front, said


def _place(row: dict[str, str], name: str, first: str) -> str:
    """A place of a list in both systems, the shop's own first."""
    one, other = in_order({system: row[f"{name}, {system}"] for system in ("inches", "mm")}, first).values()
    return f"{one} ({other})"


def _warned(plan: SettingOut) -> Card:
    warnings = [warning for item in plan.hardware for warning in item.warnings]
    return joined(paragraphs("Please check before boring:"), listed(warnings)) if warnings else NOTHING


def dowels_to_bore(plan: SettingOut) -> Card:
    """Dowels in the panel's glue lines: where, and which were moved out of the way of a later cut."""
    if not plan.joints:
        return NOTHING
    margin, size = size_text(plan.joints[0].margin_m, plan.first), plan.joints[0].joint
    bore = (
        f"Dowels {size_text(size.size_m, plan.first)} thick: bore {size_text(size.reach_m, plan.first)} deep into each edge, "
        "and a touch deeper for glue, in the middle of the thickness; measure from the show face on both boards."
    )
    cards = [
        heading("Dowels"),
        paragraphs(bore, f"Each keeps {margin} clear of every later cut. From the left end of the blank:"),
    ]
    for places, lines in _alike(plan).items():
        name = f"Glue line {lines[0]}" if len(lines) == 1 else f"Glue lines {', '.join(lines)}"
        cards.append(table(("Dowel", "Bore at", "Why there"), list(places), name))
    return joined(*cards)


def _alike(plan: SettingOut) -> dict[tuple, list[str]]:
    """Rows of dowels, with the glue lines that have the same."""
    by_line: dict[str, list[tuple[str, str, str]]] = {}
    for row in dowel_rows(plan):
        moved = row["bore at, mm"] != row["wanted at, mm"]
        why = f"moved from {_place(row, 'wanted at', plan.first)}: {row['too near']}" if moved else "clear"
        at = _place(row, "bore at", plan.first)
        by_line.setdefault(row["glue line"], []).append(
            (row["dowel"], at if "(no" not in at else "no clear place", why)
        )
    alike: dict[tuple, list[str]] = {}
    for line, rows in by_line.items():
        alike.setdefault(tuple(rows), []).append(line)
    return alike


def order_of_cuts(plan: SettingOut) -> Card:
    """The steps to tick, in an order in which none needs a face that is gone; each caution where it is first needed."""
    reasons = folded("Why in this order", listed([f"{reason}." for reason in plan.order.reasons]))
    return joined(
        heading("Order of cuts"),
        listed([_job(job) for job in work_order(plan)], ordered=True, ticks=True),
        reasons,
    )


def _job(job: Job) -> str:
    care = f" Take care: {' '.join(job.cautions)}" if job.cautions else ""
    return f"{' '.join((f'{job.step[0].upper()}{job.step[1:]}.', *job.takes))}{care}"


def weight_and_wood(plan: SettingOut) -> Card:
    """Weight of the piece, glue and clamps, and what to buy."""
    said = [f"Weight: {plan.weight.text(plan.first)}, at {round(plan.weight.mc_percent, 1):g} % MC."]
    if plan.blank:
        said.append(f"Panel: {plan.glue.said(plan.first)}")
    for glue in plan.piece.glue:
        lines = f"{glue.count} glue line{'s' if glue.count > 1 else ''}"
        clamps = f", {glue.clamps} clamps" if glue.clamps else ", pressed all over"
        said.append(f"{glue.name[0].upper()}{glue.name[1:]}: {lines}, {area_text(glue.area_m2, plan.first)}{clamps}.")
    said += [purchase.says for purchase in plan.purchases]
    if plan.boards and plan.on_hand:
        lacks = ", ".join(f"{count} x {name}" for name, _, count in plan.nested.missing)
        rest = " and ".join(filter(None, [plan.short and "what the panel lacks", lacks]))
        said.append(
            f"What the boards on hand give is taken off; bought is only {rest}."
            if rest
            else "The boards on hand give it all."
        )
    beside = [part for part in plan.piece.parts if not part.solid]
    said += [
        f"Beside it{', from offcuts' if part.role == 'offcut' else ''}: {part.count} x {part.name}, {part.text(plan.first)}."
        for part in beside
    ]
    rows = [(row["what"], row["how much"]) for row in buy_rows(plan) if not row["what"].startswith("boards")]
    have = table(("What", "How much"), rows, "Beside the boards") if rows else NOTHING
    return joined(heading("Weight, glue, and what to buy"), listed(said), have)


def roundings_shown(plan: SettingOut) -> Card:
    """Every length that is rounded to be marked, with the difference."""
    rows = [(name, mark.text, mark.change) for name, mark in plan.roundings if mark.error_m]
    if not rows:
        return NOTHING
    return folded("Each rounding", table(("Length", "Marked", "Than exact"), rows, "Rounded once, to be marked"))


def shop_cautions(plan: SettingOut) -> Card:
    """What to know beside the numbers, and the usual cautions."""
    always = [caution.words for caution in plan.cautions if caution.at == "always"]
    return joined(heading("In the shop, take care"), listed([*plan.remarks, *always]))


def shop_drawings(of: SettingOut | Commission) -> Card:
    """The piece as it is built, and the blank of its panel, as pictures with their numbers in words."""
    plan = setting_out_of(of) if isinstance(of, Commission) else of
    paper = "A4" if plan.first == "metric" else "Letter"
    words = drawing_in_words(plan)
    drawn = {
        name: sheet for name, sheet in sheets(plan, paper).items() if not name.startswith("stick")
    }  # true on paper only
    told = {name: blank_in_words(plan) if name == "blank" else words for name in drawn}
    return joined(*(figure(sheet, f"{sheet.title}. {told[name]}") for name, sheet in drawn.items()))
