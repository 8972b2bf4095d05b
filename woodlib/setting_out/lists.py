"""The cut list, the hole list and the list of dowels as rows, and as CSV for the shop's own spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence
from fractions import Fraction
from os import PathLike
from pathlib import Path

from ..door import check_kind
from ..errors import InputError, Problems
from ..files import put
from ..units import both, shown
from ..units.exact import Rounding, fine_text
from ..ways.made import Fixing, WoodPart
from ..ways.rules import Cut
from .blank import Blank
from .boards import TO_BUY
from .plan import SettingOut

Row = dict[str, str]

INCH_RULE, MM_RULE = "1/16 in", "0.5 mm"
HOLE_INCH_RULE, HOLE_MM_RULE = "1/64 in", "0.1 mm"
SIZES = ("length", "width", "thickness")
FINE = ("1/64 in", "0.1 mm")  # finished parts: as fine as a cut of the verdict is written
UP = ("up", "up", "up")
WITH_WASTE = "finished size with kerfs, trims and planing"


def cut_rows(plan: SettingOut) -> tuple[Row, ...]:
    """One row for each blank, each strip and each finished part, with where its size comes from and what rounding does.

    Finished sizes are rounded the way they may be, sizes of blanks and strips up; inches and millimetres each from the
    exact length, never one from the other.

    >>> from woodlib.commission import chosen_brief
    >>> from woodlib.setting_out.plan import set_out
    >>> [row["piece"] for row in cut_rows(set_out(chosen_brief(), ()))]
    ['blank', '1 left end', '2 panel', '3 right end']
    """
    check_plan(plan)
    rows = [*_panel_rows(plan), *_strip_rows(plan)]
    if plan.made is None:
        return tuple(rows)
    numbered = plan.made.own_ends_m is not None  # panel and end pieces are in the rows of the blank, by number
    for part in plan.made.parts:
        if not numbered or part.role not in ("panel", "strip"):
            directions = tuple(size.direction for size in part.sizes)
            rows.append(
                _cut(
                    part.name,
                    part.count,
                    tuple(s.exact_m for s in part.sizes),
                    directions,
                    where_from(part),
                    plan.first,
                    FINE,
                )
            )
    return tuple(rows)


def where_from(part: WoodPart) -> str:
    """Where the sizes of a part come from, and its note."""
    reasons = [size.comes_from for size in part.sizes]
    named = [f"{name}: {why}" for name, why in zip(SIZES, reasons, strict=True)]
    why = reasons[0] if len(set(reasons)) == 1 else "; ".join(named)
    return f"{why} ({part.note})" if part.note else why


def _strip_rows(plan: SettingOut) -> Iterator[Row]:
    """Blanks of the parts that come from one board."""
    for entry in plan.blanks:
        sizes = _sizes(entry.blank)
        yield _cut(f"blank of the {entry.part.name}", entry.part.count, sizes, UP, WITH_WASTE, plan.first)


def _sizes(blank: Blank) -> tuple[Fraction, Fraction, Fraction]:
    return blank.length.total_m, blank.width.total_m, blank.thickness.total_m


def _panel_rows(plan: SettingOut) -> Iterator[Row]:
    """The blank that is glued up, its strips, and the pieces that are cut from it one after the other."""
    blank = plan.blank
    if blank is None:
        return
    yield _cut("blank of the panel" if plan.made else "blank", 1, _sizes(blank), UP, WITH_WASTE, plan.first)
    for number, strip in enumerate(plan.boards.strips if plan.boards else (), start=1):
        sizes = blank.length.total_m, strip.width_m, blank.thickness.total_m
        if plan.boards and plan.boards.assumed_m:
            wide = both(plan.boards.assumed_m, first=plan.first)
            yield _cut(
                f"strip {number}",
                1,
                sizes,
                UP,
                f"shared evenly by boards {wide} wide, assumed; edges jointed",
                plan.first,
            )
        else:
            board = f"a {TO_BUY}" if strip.board == TO_BUY else f"board {strip.board}"
            yield _cut(f"strip {number} from {board}", 1, sizes, UP, "edges jointed", plan.first)
    if plan.made is None or plan.made.own_ends_m is not None:
        for part in blank.length.pieces:
            sizes = part.size_m, blank.finished_width_m, blank.finished_thickness_m
            yield _cut(f"{part.number} {part.name}", 1, sizes, ("nearest",) * 3, "typed in the brief", plan.first)


def hole_rows(plan: SettingOut) -> tuple[Row, ...]:
    """One row per hole, of hardware and of the way itself: where, how to mark it, how wide, and the slot where it needs one.

    >>> from woodlib.commission import chosen_brief
    >>> from woodlib.setting_out.plan import set_out
    >>> hole_rows(set_out(chosen_brief(), ()))[0]["from the left end, mm"]
    '215.4 mm'
    """
    check_plan(plan)
    rows = []
    for item in plan.hardware:
        for place, (along, across) in enumerate(item.centres_m):
            mark = item.marking.marks[place]
            slot = item.slots.at(item.pair.holes_m[place]) if item.slots else None
            rows.append(
                {
                    "hole": f"{item.pair.name}, {place + 1}",
                    "in": item.part,
                    **_two("from the left end", along, plan.first),
                    **_two(f"from the {plan.edge}", across, plan.first),
                    "mark": _mark_text(mark, item.marking.start),
                    "rounding of the mark": mark.change,
                    "diameter": item.fit.drill.text,
                    "slot in": item.part if slot else "",
                    "slot across the grain": slot[0].text if slot else "",
                    "middle of the slot": _slot_middle(slot[1]) if slot else "",
                    "check": " ".join(item.warnings),
                }
            )
    return (*rows, *fixing_rows(plan))


def fixing_rows(plan: SettingOut) -> tuple[Row, ...]:
    """One row per pin or screw of the way itself, as :func:`hole_rows` has them; empty where it has none."""
    return tuple(
        {
            "hole": fixing.name,
            "in": fixing.part,
            **_two("from the left end", fixing.along_m, plan.first),
            **_two(f"from the {plan.edge}", fixing.across_m, plan.first),
            "mark": f"{fixing.across.text} from the middle of the width"
            if fixing.slot
            else "on the middle of the width",
            "rounding of the mark": fixing.across.change,
            "diameter": both(fixing.diameter.exact_m, 64, 0.1, first=plan.first),
            "slot in": fixing.slot_in,
            "slot across the grain": both(fixing.slot.exact_m, 64, 0.1, "up", plan.first) if fixing.slot else "",
            "middle of the slot": _reaches(fixing, plan.first),
            "check": "",
        }
        for fixing in (plan.made.fixings if plan.made else ())
    )


def _reaches(fixing: Fixing, first: str) -> str:
    """How far a slot reaches from the centre of its fixing, each way as the cut list has it."""
    if fixing.reaches is None:
        return ""
    outward, inward = (both(reach.exact_m, 64, 0.1, first=first) for reach in fixing.reaches)
    return f"from the centre {outward} outward, {inward} inward"


def dowel_rows(plan: SettingOut) -> tuple[Row, ...]:
    """One row per dowel, from the left end of the blank: where it was wanted, where it goes, and why.

    >>> from woodlib.commission import chosen_brief
    >>> from woodlib.setting_out.plan import set_out
    >>> dowel_rows(set_out(chosen_brief(), ()))
    ()
    """
    check_plan(plan)
    rows = []
    for line, joint in enumerate(plan.joints, start=1):
        reasons = {
            n: "; ".join(c.cut for c in joint.conflicts if c.number == n) for n in range(1, len(joint.wanted_m) + 1)
        }
        for number, wanted in enumerate(joint.wanted_m, start=1):
            place = joint.places_m[number - 1] if joint.places_m else None
            rows.append(
                {
                    "glue line": str(line),
                    "dowel": str(number),
                    **_two("wanted at", wanted, plan.first),
                    **_two("bore at", place, plan.first),
                    "diameter": size_text(joint.joint.size_m, plan.first),
                    "depth into each board": size_text(joint.joint.reach_m, plan.first),
                    "height": "middle of the thickness",
                    "too near": reasons[number],
                }
            )
    return tuple(rows)


def board_rows(plan: SettingOut) -> tuple[Row, ...]:
    """One row per blank on a board on hand: from the board's end and from its edge, as it is laid out before the first cut."""
    check_plan(plan)
    counts = {board.name: board.count for board in plan.on_hand}
    return tuple(
        {
            "board": one.board if counts[one.board] == 1 else f"{one.board}, {one.copy} of {counts[one.board]}",
            "piece": one.piece,
            "from the end": f"{size_text(one.along[0], plan.first)} to {size_text(one.along[1], plan.first)}",
            "from the edge": f"{size_text(one.across[0], plan.first)} to {size_text(one.across[1], plan.first)}",
        }
        for one in plan.nested.laid
    )


def gap_rows(plan: SettingOut, cuts: Sequence[Cut]) -> tuple[Row, ...]:
    """One row per gap, slot, groove or tongue of the way as the cut list writes it, and one per slot where it is cut.

    ``cuts`` of the verdict; reaches of a slot are from the centre of its pin or screw, outward and inward.

    >>> from woodlib.commission import chosen_brief, commission_of, setting_out_of
    >>> seat = commission_of(chosen_brief(), "breadboard")
    >>> [row["part"] for row in gap_rows(setting_out_of(seat), seat.built.cuts) if row["from the left end"]][:2]
    ['tongue', 'tongue']
    """
    check_plan(plan)
    first, edge = plan.first, f"from the {plan.edge}"

    def row(
        part: str, feature: str, size: str, reaches: Sequence[str], along: str, across: str, rounded: str, why: str
    ) -> Row:
        outward, inward = reaches or ("", "")
        places = {"from the left end": along, edge: across}
        return {"part": part, "feature": feature, "size": size, "outward": outward, "inward": inward, **places} | {
            "rounded": rounded,
            "why": why,
        }

    found = [
        row(_part_of(plan, cut), cut.label, cut.text(first), _halves(cut, first), "", "", cut.rounding, cut.why)
        for cut in cuts
    ]
    for fixing in plan.made.fixings if plan.made else ():
        if fixing.slot:
            slot = both(fixing.slot.exact_m, 64, 0.1, "up", first)
            reaches = [both(reach.exact_m, 64, 0.1, first=first) for reach in fixing.reaches or ()]
            places = size_text(fixing.along_m, first), size_text(fixing.across_m, first)
            found.append(
                row(fixing.slot_in, f"slot for {fixing.name}", slot, reaches, *places, "up", "as the cut list has it")
            )
    return tuple(found)


def _halves(cut: Cut, first: str) -> tuple[str, ...]:
    """Both reaches of a slot, outward first, as they are marked; nothing for a size that is none."""
    reaches = [part for _, part in cut.chain if isinstance(part, Cut) and part.key.startswith(cut.key)]
    return tuple(reach.text(first) for reach in reaches) if len(reaches) == 2 else ()


def _part_of(plan: SettingOut, cut: Cut) -> str:
    """The part that a size is of, where its key names one: ``stile_groove_depth`` is of the stile."""
    names = [part.name for part in plan.made.parts] if plan.made else []
    return next((name for name in names if name.replace(" ", "_") in cut.key), "")


def as_csv(rows: Sequence[Row]) -> str:
    """Rows as CSV text with a heading; a text that a spreadsheet would run as a formula is kept as text.

    >>> as_csv([{"piece": "=lid", "length, mm": "500 mm"}]).splitlines()
    ['piece,"length, mm"', "'=lid,500 mm"]
    """
    listed = list(rows)
    if not listed:
        return ""
    buffer = io.StringIO()
    writer = csv.DictWriter(buffer, list(listed[0]), lineterminator="\n")
    writer.writeheader()
    writer.writerows({name: _plain(value) for name, value in row.items()} for row in listed)
    return buffer.getvalue()


def write_csv(rows: Sequence[Row], path: str | PathLike) -> Path:
    """Write rows as CSV (UTF-8) and return the path. Raises :class:`InputError` where that cannot be done."""
    return written(as_csv(rows).encode(), path, ".csv")


def written(contents: bytes, path: object, ending: str) -> Path:
    """Write a file and return its path, or say in one sentence why not."""
    if not isinstance(path, str | PathLike) or not str(path).strip():
        raise InputError(f"path is {shown(path)}; give the name of a file that ends in {ending}.")
    target = Path(path)
    if target.suffix.lower() != ending:
        raise InputError(f"path is {shown(str(target))}; its name must end in {ending}.")
    return put(contents, target, remedy="choose a folder that exists")


def check_plan(plan: object) -> None:
    """Refuse anything that is not a setting-out."""
    problems = Problems()
    check_kind(problems, "plan", plan, SettingOut, "set_out(brief)")
    problems.raise_if_any()


def _cut(
    name: str,
    count: int,
    sizes: tuple[Fraction, ...],
    directions: tuple[str, ...],
    comes_from: str,
    first: str,
    rules: tuple[str, str] = (INCH_RULE, MM_RULE),
) -> Row:
    row = {"piece": name, "count": str(count)}
    ruled = in_order(dict(zip(("inches", "mm"), rules, strict=True)), first)
    changes: dict[str, list[str]] = {system: [] for system in ruled}
    for entry, size, direction in zip(SIZES, sizes, directions, strict=True):
        for system, rule in ruled.items():
            rounding = Rounding(size, rule, direction)
            row[f"{entry}, {system}"] = rounding.text
            if rounding.error_m:
                changes[system].append(f"{entry} {rounding.change}")
    for system, changed in changes.items():
        row[f"rounding, {system}"] = "; ".join(changed) or "exact"
    return row | {"where the size comes from": comes_from}


def _two(name: str, place: Fraction | None, first: str) -> Row:
    """A place in both systems, the shop's own first; None where no place is clear."""
    rules = in_order({"inches": HOLE_INCH_RULE, "mm": HOLE_MM_RULE if first == "customary" else MM_RULE}, first)
    return {
        f"{name}, {system}": "no clear place" if place is None else Rounding(place, rule).text
        for system, rule in rules.items()
    }


def in_order(systems: dict[str, str], first: str) -> dict[str, str]:
    """What is said in inches and in mm, the shop's own system first.

    >>> list(in_order({"inches": "3/16 in", "mm": "5 mm"}, "metric"))
    ['mm', 'inches']
    """
    names = ("inches", "mm") if first == "customary" else ("mm", "inches")
    return {name: systems[name] for name in names}


def _mark_text(mark: Rounding, start: str) -> str:
    if start != "the centre line":
        return f"{mark.text} from {start}"
    if not mark.marked_m:
        return "on the centre line"
    size = Rounding(abs(mark.marked_m), mark.rule).text
    return f"{size} {'left' if mark.marked_m < 0 else 'right'} of the centre line"


def _slot_middle(middle: Rounding) -> str:
    if not middle.marked_m:
        return "on the mark"
    size = Rounding(abs(middle.marked_m), middle.rule).text
    return f"{size} {'further from' if middle.marked_m > 0 else 'nearer to'} the round hole"


def _plain(value: str) -> str:
    """A leading =, +, - or @ would make a spreadsheet compute; an apostrophe keeps it a text."""
    return f"'{value}" if value[:1] in ("=", "+", "-", "@", "\t", "\r") else value


def size_text(length_m: Fraction, first: str) -> str:
    """A length on a drawing: both systems, to the finest step that the shop reads."""
    return fine_text(length_m, first)
