"""The sheet with the joint enlarged: every break of its section measured, and all sizes to cut and as they will stand."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import cos, radians, sin

from ..picture.scene import Picture
from ..ways.made import MadePiece, Span
from .plan import SettingOut
from .section_drawing import breaks, depth_of, draw_section, grooves, marked, rooms, size, title_block, whole_of
from .sheet import PX_MM, Sheet, scale_in, scale_text, wide


def joint_sheet(plan: SettingOut, paper: str = "A4") -> Picture:
    """The front or left joint enlarged, every break of its section measured both ways, and all sizes to cut."""
    made, first = plan.piece, plan.first
    sheet = Sheet(f"{plan.title}: the joint", paper)
    turned = any(part.role == "turned" for part in made.parts)
    low, high = _window(made, turned)
    deep = depth_of(made)
    origin = min(Fraction(0), *(part.depth[0] for part in made.section))
    rows = _table(plan)
    tall = sheet.low - sheet.top - 19 * (len(rows) // 2 + 2)
    seen = high - low
    scale = min(
        scale_in(first, float(seen), sheet.right - sheet.left - 330, 8 if turned else 4),
        scale_in(first, float(deep), max(60.0, tall - 180), 8 if turned else 4),
    )
    px = scale * 1000 * PX_MM
    left, top = sheet.left + 150, sheet.top + 80
    draw_section(made, sheet, left, top, px, None if turned else (low, high))
    bottom = top + float(deep) * px
    if turned:
        for number, part in enumerate(made.section):
            half = float(part.spread[1] - part.spread[0]) / 2 * px
            turn = radians(45 - 40 * number)  # each ring is pointed at from the right, where the others are not
            mid = left + float(deep) / 2 * px, top + float(deep) / 2 * px
            spot = mid[0] + half * cos(turn), mid[1] - half * sin(turn)
            aside = left + float(deep) * px + 40, mid[1] + 40 * (number - 1)
            sheet.line([spot, aside], "quiet", 0.6)
            sheet.label(f"{part.part}: {size(part.spread[1] - part.spread[0], first)} across", (aside[0] + 4, aside[1]))
    else:
        inside = [p for p in made.section if p.spread[0] < high and p.spread[1] > low]
        voids = [(span, depth) for _, span, depth in rooms(made) if span[0] < high and span[1] > low]
        stops = [s for s in breaks((p.spread for p in inside), first) if low <= s <= high]
        stops = sorted({*stops, *(marked(e, first) for span, _ in voids for e in span)})
        axis = 0 if made.section_runs == "along" else 1
        for pin in {marked((f.along_m, f.across_m)[axis], first) for f in made.fixings}:
            if low < pin < high and not any(abs(pin - s) < Fraction(1, 2000) for s in stops):
                centre = left + float(pin - low) * px
                sheet.line([(centre, top - 10), (centre, bottom + 30)], "quiet", 0.8, "10 3 2 3")
                stops = sorted({*stops, pin})
        for begin, end in pairwise(stops):
            x = [left + float(s - low) * px for s in (begin, end)]
            sheet.dimension(
                (x[0], bottom + 26), (x[1], bottom + 26), size(end - begin, first), ((x[0], bottom), (x[1], bottom))
            )
        sunk = [depth for _, depth in grooves(made)[:1]]  # on the left what the groove is, on the right its tongue
        if sunk:
            tongue = next(p for p in inside if p.loose)
            right = left + float(min(high, whole_of(made)) - low) * px
            for begin, end in pairwise(
                sorted(
                    {
                        *breaks((p.depth for p in inside if not p.loose), first),
                        *(marked(end, first) for end in tongue.depth),
                    }
                )
            ):
                y = [top + float(s - origin) * px for s in (begin, end)]
                sheet.dimension(
                    (right + 80, y[0]), (right + 80, y[1]), size(end - begin, first), ((right, y[0]), (right, y[1]))
                )
        depths = breaks([*(p.depth for p in inside if not (sunk and p.loose)), *sunk], first)
        for begin, end in pairwise(depths):
            y = [top + float(s - origin) * px for s in (begin, end)]
            sheet.dimension(
                (left - 30, y[0]), (left - 30, y[1]), size(end - begin, first), ((left, y[0]), (left, y[1]))
            )
        if len(depths) > 2:
            sheet.dimension((left - 100, top), (left - 100, bottom), size(depths[-1] - depths[0], first))
        for span, depth in voids[:2]:
            middle = left + float(sum(span) / 2 - low) * px, top + float(sum(depth) / 2 - origin) * px
            sheet.label(f"room {size(span[1] - span[0], first)}", middle)
        for span, depth in grooves(made)[:1]:
            spot = left + float(sum(span) / 2 - low) * px, top + float(depth[0] - origin) * px
            sheet.label(f"groove {size(depth[1] - depth[0], first)}", spot)
        for name in dict.fromkeys(p.part for p in inside):
            part = next(p for p in inside if p.part == name)
            share = Fraction(1, 2) if part.loose else Fraction(4, 5)
            a, b = max(low, part.spread[0]), min(high, part.spread[1])
            deep_in = part.depth[0] + share * (part.depth[1] - part.depth[0]) - origin
            middle = left + float((a + b) / 2 - low) * px, top + float(deep_in) * px
            sheet.label(name, middle, first=True)
    months = (plan.verdict.driest_month, plan.verdict.dampest_month) if plan.verdict else ("", "")
    title = f"Sizes to cut today, and as they will stand: the driest month is {months[0]}, the dampest {months[1]}"
    _write_table(sheet, rows, title)
    return sheet.finish(title_block(plan, scale_text(scale), "2 the joint"))


def _window(made: MadePiece, turned: bool) -> Span:
    """What of the section is enlarged: as far as its first joint reaches, with wood beyond it on both sides."""
    whole, deep = whole_of(made), depth_of(made)
    if turned:
        return Fraction(0), deep
    lies = "along" if made.section_runs == "across" else "across"
    lines = [line for line in made.lines if line.runs == lies]
    if not lines:
        return Fraction(0), min(whole, 4 * deep)
    line = lines[0]
    if made.way.boarded:
        return max(Fraction(0), line.low_m - deep), min(whole, line.high_m + 2 * deep)
    beyond = max([deep, *(part.bevel[0] + deep / 4 for part in made.section if part.bevel)])  # a bevel is shown whole
    return Fraction(0), min(whole, line.high_m + beyond)


def _table(plan: SettingOut) -> list[tuple[str, str]]:
    """Every size to cut, and what it will be in the driest and the dampest month."""
    verdict = plan.verdict
    if verdict is None:
        return []
    system = "metric" if plan.first == "metric" else "customary"
    rows = [(cut.label, _one(cut, system)) for cut in verdict.cuts]
    rows += [(cut.label, _one(cut, system)) for cut in verdict.states]
    return [(label[:1].upper() + label[1:], said) for label, said in rows]


def _one(cut, system: str) -> str:
    return size(cut.written_m(system), system)


def _write_table(sheet: Sheet, rows: list[tuple[str, str]], title: str) -> None:
    """Sizes to cut in two columns above the title block."""
    half, wide_px = -(-len(rows) // 2), (sheet.right - sheet.left) / 2
    for number, (label, said) in enumerate(rows):
        x = sheet.left + 10 + wide_px * (number // half)
        y = sheet.low - 10 - 19 * (half - 1 - number % half)
        letters = min(11.0, 11.0 * (wide_px - 120) / wide(label, 11.0))
        sheet.text(x, y, label, letters)
        sheet.text(x + wide_px - 26, y, said, 11, True, "end")
    if rows:
        sheet.text(sheet.left + 10, sheet.low - 14 - 19 * half, title, 12, True)
