"""The sheet with the piece from its show face and its section, to one standard scale."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from ..picture.scene import Area, Picture
from ..ways.made import Span
from .plan import SettingOut
from .section_drawing import NO_GRAIN, breaks, depth_of, draw_section, marked, role_of, size, title_block, whole_of
from .sheet import PX_MM, Sheet, scale_in, scale_text


def plan_sheet(plan: SettingOut, paper: str = "A4") -> Picture:
    """The piece from its show face with running dimensions, and the whole section to the same scale."""
    made, first = plan.piece, plan.first
    sheet = Sheet(f"{plan.title}: plan and section", paper)
    long, wide_m, _ = made.size_m
    upright = plan.upright and long > wide_m
    flat = (wide_m, long) if upright else (long, wide_m)
    deep = depth_of(made)
    beside, under = (whole_of(made), Fraction(0)) if upright else (Fraction(0), deep)  # the section of what stands
    room = sheet.right - sheet.left - (480 if upright else 260), sheet.low - sheet.top - (164 if upright else 234)
    scale = min(
        scale_in(first, float(flat[0] + beside), room[0], 1), scale_in(first, float(flat[1] + under), room[1], 1)
    )
    px = scale * 1000 * PX_MM
    left, top = sheet.left + 120, sheet.top + 98
    low = top + float(flat[1]) * px

    def at(along: Fraction, across: Fraction) -> tuple[float, float]:
        x, y = (across, along) if upright else (along, across)
        return left + float(x) * px, low - float(y) * px

    def outline(along: Span, across: Span) -> list[tuple[float, float]]:
        return [at(along[0], across[1]), at(along[1], across[1]), at(along[1], across[0]), at(along[0], across[0])]

    for place in sorted(made.places, key=lambda p: p.below):
        role = "" if place.below else role_of(made, place.part)
        sheet.shape(outline(place.along, place.across), role, 1.0 if place.below else 1.8, "5 4" if place.below else "")
    if made.way.mitred:
        border = made.places[0].across[1]
        for a, c in ((0, 0), (long, 0), (0, wide_m), (long, wide_m)):
            inner = (a + border if a == 0 else a - border, c + border if c == 0 else c - border)
            sheet.line([at(Fraction(a), Fraction(c)), at(*inner)], "edge", 1.4)
    for line in made.lines:
        whole = (Fraction(0), long if line.runs == "along" else wide_m)
        begin, end = line.between or whole
        for far in {line.low_m, line.high_m} - {line.at_m} if line.loose and not made.way.boarded else ():
            run = ((begin, far), (end, far)) if line.runs == "along" else ((far, begin), (far, end))
            sheet.line([at(*run[0]), at(*run[1])], "quiet", 0.9, "5 4")
    _holes(plan, sheet, at, px)
    named: set[str] = set()
    for place in made.places:
        if place.part not in named:
            named.add(place.part)
            middle = sum(place.along, Fraction(0)) / 2, sum(place.across, Fraction(0)) / 2
            sheet.label(place.part, at(*middle), first=True)
            if not place.below and place.part != NO_GRAIN:
                _grain_arrow(
                    sheet, at(middle[0] * 3 / 4 + place.along[0] / 4, middle[1]), (place.grain == "along") != upright
                )
    _datum(sheet, left, low)
    _plan_sizes(plan, sheet, at, upright, (left, low))
    cut = made.section_runs == "across"
    ends = (
        ((Fraction(long * 3, 5), Fraction(0)), (Fraction(long * 3, 5), wide_m))
        if cut
        else ((Fraction(0), wide_m * 2 / 5), (long, wide_m * 2 / 5))
    )
    trace = [at(*spot) for spot in ends]
    sheet.line(trace, "quiet", 0.7, "12 3 2 3")
    for spot in trace:
        sheet.label("A", spot, 14, first=True)
    x = left + float(flat[0]) * px + 220 if upright else left
    base = top + 60 if upright else sheet.low - 56 - float(deep) * px
    draw_section(made, sheet, x, base, px, None)
    caption = f"Section A-A, {made.section_runs} the grain, show face up"
    sheet.text(x, base - 14 if upright else sheet.low - 12, caption, 12)
    spot = (x + 4, base + float(deep) * px + 8) if upright else (left + float(whole_of(made)) * px + 30, base)
    if not any(part.role == "turned" for part in made.parts):
        sheet.label(f"{size(deep, first)} thick", spot)
    return sheet.finish(title_block(plan, scale_text(scale), "1 plan and section"))


def _grain_arrow(sheet: Sheet, spot: tuple[float, float], level: bool) -> None:
    x, y = spot
    points = [(-8, -2), (-12, 0), (-8, 2), (-12, 0), (12, 0), (8, -2), (12, 0), (8, 2)]
    sheet.line([(x + a, y + b) if level else (x + b, y + a) for a, b in points], "ink", 0.8)


def _datum(sheet: Sheet, left: float, low: float) -> None:
    for points in (
        [(left, low), (left - 9, low + 4), (left - 9, low - 4)],
        [(left, low), (left + 4, low + 9), (left - 4, low + 9)],
    ):
        sheet.marks.append(Area(points, "ink"))
        sheet.note([*points, points[0]])


def _plan_sizes(plan: SettingOut, sheet: Sheet, at, upright: bool, corner: tuple[float, float]) -> None:
    """Chains on both sides, smallest next to the piece, and running dimensions of holes from the datum edges."""
    made, first = plan.piece, plan.first
    long, wide_m, _ = made.size_m
    seen = [p for p in made.places if not p.below]
    along = breaks(
        [p.along for p in seen if p.across[0] <= wide_m / 2 <= p.across[1]] or [p.along for p in seen], first
    )
    across = breaks([p.across for p in seen if p.along[0] <= long / 2 <= p.along[1]] or [p.across for p in seen], first)
    for runs, stops, whole in (("along", along, long), ("across", across, wide_m)):
        level = (runs == "along") != upright
        rows = [[Fraction(0), marked(whole, first)]]
        if stops[0] > 0 or stops[-1] < marked(whole, first) or len(stops) > 2:
            rows.insert(0, _few(stops))
        far = wide_m if runs == "along" else long
        for number, row in enumerate(rows):
            for begin, end in pairwise(row):
                if end > begin:
                    spots = [at(s, far) if runs == "along" else at(far, s) for s in (begin, end)]
                    away = 16 + (44 if level else 60) * number
                    put = [(x, y - away) if level else (x + away, y) for x, y in spots]
                    sheet.dimension(put[0], put[1], size(end - begin, first), (spots[0], spots[1]))
    holes = [(centre, item.fit.drill.text) for item in plan.hardware for centre in item.centres_m]
    holes += [((f.along_m, f.across_m), "") for f in made.fixings]
    for axis, runs in enumerate(("along", "across")):
        level = (runs == "along") != upright
        places = sorted({marked(centre[axis], first) for centre, _ in holes})
        if not places:
            continue
        zero = at(Fraction(0), Fraction(0))
        marks = [at(p, Fraction(0)) if axis == 0 else at(Fraction(0), p) for p in places]
        put = [(x, y + 30) if level else (x - 34, y) for x, y in marks]
        start = (zero[0], zero[1] + 30) if level else (zero[0] - 34, zero[1])
        sheet.line([start, put[-1]], "ink", 0.7)
        sheet.ring(start[0], start[1], 2.5)
        for spot, far_off, place in zip(marks, put, places, strict=True):
            sheet.line([spot, far_off], "quiet", 0.5)
            sheet.label(size(place, first), far_off, 11)


def _few(stops: list[Fraction]) -> list[Fraction]:
    """Many boards alike are told by the first two and the last."""
    return stops if len(stops) <= 8 else [*stops[:4], stops[-1]]


def _holes(plan: SettingOut, sheet: Sheet, at, px: float) -> None:
    for item in plan.hardware:
        for along, across in item.centres_m:
            x, y = at(along, across)
            sheet.ring(x, y, max(2.0, float(item.fit.drill.size_m) / 2 * px))
            sheet.line([(x - 6, y), (x + 6, y)], "ink", 0.6)
            sheet.line([(x, y - 6), (x, y + 6)], "ink", 0.6)
        along, across = item.centres_m[0]
        slot = next((f" slot {r.text}" for r in (item.slots.lengths if item.slots else ())), "")
        sheet.label(f"{item.pair.name}, bore {item.fit.drill.text}{slot}", at(along, across), 11)
    for fixing in plan.piece.fixings:
        x, y = at(fixing.along_m, fixing.across_m)
        sheet.ring(x, y, max(1.6, float(fixing.diameter.exact_m) / 2 * px), "quiet")
