"""The shop's sheets: plan and section, the joint enlarged with the sizes to cut, and story sticks at full size.

Everything is drawn from what the way hands over: places, section, lines where parts meet, fixings.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import pairwise
from math import cos, radians, sin

from ..picture.scene import Area, Circle, Line, Picture, Window, box
from ..units.exact import Rounding
from ..ways.made import MadePiece, Section, Span
from .lists import check_plan
from .plan import SettingOut
from .sheet import MARGIN, PX_MM, Sheet, scale_in, scale_text, wide
from .way_drawing import past

STRIP_M, STRIPS = 0.24, 3
MAIN = ("panel", "sheet", "board", "last board", "tongue", "tenon", "field")
ROOMS = ("void", "paper")


def sheets(plan: SettingOut, paper: str = "A4") -> tuple[Picture, ...]:
    """All sheets of a piece: its plan, its joint, and its story sticks.

    >>> from woodlib.commission import chosen_brief, commission_of
    >>> from woodlib.setting_out.plan import set_out
    >>> of = commission_of(chosen_brief(), "frame_panel")
    >>> [sheet.title.split(": ")[1] for sheet in sheets(set_out(of.brief, verdict=of.built), "Letter")]
    ['plan and section', 'the joint', 'story stick 1', 'story stick 2', 'story stick 3']
    """
    check_plan(plan)
    return (plan_sheet(plan, paper), joint_sheet(plan, paper), *stick_sheets(plan, paper))


def marked(length_m: Fraction, first: str) -> Fraction:
    """A place as it is marked, so that the sizes between two places close."""
    return Rounding(length_m, "0.1 mm" if first == "metric" else "1/64 in").marked_m


def size(length_m: Fraction, first: str) -> str:
    """A size in the sheet's one unit."""
    return Rounding(length_m, "0.1 mm" if first == "metric" else "1/64 in").text


def breaks(places: Iterable[Span], first: str) -> list[Fraction]:
    """Where spans begin and end, each place once."""
    return sorted({marked(end, first) for span in places for end in span})


def _block(plan: SettingOut, scale: str, what: str) -> list[tuple[str, str]]:
    mc = f"{round(plan.weight.mc_percent, 1):g}"
    return [
        ("Piece", f"{plan.title}, {plan.piece.way.short}"),
        ("Wood", f"{plan.species}; show face up, datum edges marked with a triangle"),
        ("Sheet", f"{what}; scale {scale}; print at 100 %, no fitting. Date cut: ____________"),
        ("Valid", f"for wood at {mc} % MC on the day it is cut; another reading means new sizes"),
        ("Meter", "its reading may be 1 % MC off; that is in the gaps and slots, no tolerance"),
        ("Drawn", "as cut today; driest and dampest month in the table of the joint"),
    ]


def _role(made: MadePiece, name: str) -> str:
    main = made.panel.name if made.panel else made.parts[0].name
    return "wood" if name in (main, *MAIN) else "border-wood"


def plan_sheet(plan: SettingOut, paper: str = "A4") -> Picture:
    """The piece from its show face with running dimensions, and the whole section to the same scale."""
    made, first = plan.piece, plan.first
    sheet = Sheet(f"{plan.title}: plan and section", paper)
    long, wide_m, _ = made.size_m
    upright = plan.upright and long > wide_m
    flat = (wide_m, long) if upright else (long, wide_m)
    deep = _depth(made)
    beside, under = (_whole(made), Fraction(0)) if upright else (Fraction(0), deep)  # the section of what stands
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
        role = "" if place.below else _role(made, place.part)
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
            if not place.below and place.part != "sheet":
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
    _section(made, sheet, x, base, px, None)
    caption = f"Section A-A, {made.section_runs} the grain, show face up"
    sheet.text(x, base - 14 if upright else sheet.low - 12, caption, 12)
    spot = (x + 4, base + float(deep) * px + 8) if upright else (left + float(_whole(made)) * px + 30, base)
    if not any(part.role == "turned" for part in made.parts):
        sheet.label(f"{size(deep, first)} thick", spot)
    return sheet.finish(_block(plan, scale_text(scale), "1 plan and section"))


def _grain_arrow(sheet: Sheet, spot: tuple[float, float], level: bool) -> None:
    x, y = spot
    points = [(-8, -2), (-12, 0), (-8, 2), (-12, 0), (12, 0), (8, -2), (12, 0), (8, 2)]
    sheet.line([(x + a, y + b) if level else (x + b, y + a) for a, b in points], "ink", 0.8)


def _depth(made: MadePiece) -> Fraction:
    return max(part.depth[1] for part in made.section) - min(Fraction(0), *(part.depth[0] for part in made.section))


def _whole(made: MadePiece) -> Fraction:
    return made.size_m[0] if made.section_runs == "along" else made.size_m[1]


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


def rooms(made: MadePiece) -> list[tuple[str, Span, Span]]:
    """Voids in the section: what a groove is deeper than its tongue, and gaps between parts that face each other."""
    found = []
    lies = "along" if made.section_runs == "across" else "across"
    for tongue in (part for part in made.section if part.loose):
        for line in made.lines:
            if line.runs != lies or line.high_m <= tongue.spread[0] or line.low_m >= tongue.spread[1]:
                continue
            for span in ((line.low_m, tongue.spread[0]), (tongue.spread[1], line.high_m)):
                if span[0] < span[1] and not _solid(made, span, tongue):
                    found.append(("room", span, tongue.depth))
    return list(dict.fromkeys(found))


def _solid(made: MadePiece, span: Span, tongue: Section) -> bool:
    """Whether the other side of a joint is the tongue's own part, which fills that place."""
    main = made.panel.name if made.panel else "board"
    return any(
        p.part == main
        and p.spread[0] <= span[0]
        and span[1] <= p.spread[1]
        and abs(p.spread[0] - tongue.spread[1]) * 1000 < 1
        for p in made.section
    )


def _section(made: MadePiece, sheet: Sheet, left: float, top: float, px: float, seen: Span | None) -> None:
    """The parts as they are cut, end grain with ring arcs, along the grain with lines, voids white."""
    if any(part.role == "turned" for part in made.parts):
        outer = max(part.spread[1] - part.spread[0] for part in made.section)
        for part in made.section:
            radius = float(part.spread[1] - part.spread[0]) / 2 * px
            x, y = left + float(outer) / 2 * px, top + float(outer) / 2 * px
            sheet.marks.append(Circle(x, y, radius, "paper" if part.loose else "wood-end", filled=True))
            sheet.ring(x, y, radius, "edge", 1.6)
        return
    low, high = seen or (Fraction(0), _whole(made))
    origin = min(Fraction(0), *(part.depth[0] for part in made.section))
    drawn = [
        (p.part, p.spread, p.depth, p.end)
        for p in sorted(made.section, key=lambda p: "tongue" in p.part or p.part == "tenon")
    ]
    drawn += [(ROOMS[0], span, depth, False) for _, span, depth in rooms(made)]
    for name, spread, depth, end in drawn:
        a, b = max(low, spread[0]), min(high, spread[1])
        if a >= b:
            continue
        x, y = left + float(a - low) * px, top + float(depth[0] - origin) * px
        outline = box(x, y, float(b - a) * px, float(depth[1] - depth[0]) * px)
        role = (
            ROOMS[1] if name == ROOMS[0] else "wood-end" if end and _role(made, name) == "wood" else _role(made, name)
        )
        sheet.marks.append(Area(outline, role))
        if name != ROOMS[0]:
            sheet.marks.append(Window(outline, tuple(_grain(outline, end, px))))
        for one, other, shut in ((0, 1, True), (1, 2, b == spread[1]), (2, 3, True), (3, 0, a == spread[0])):
            if shut:
                sheet.line([outline[one], outline[other]], "edge", 1.6)
    for wedge in (wedge for part in made.section for wedge in part.cut_off()):
        if low <= min(wedge)[0] and max(wedge)[0] <= high:
            spots = [(left + float(x - low) * px, top + float(y - origin) * px) for x, y in wedge]
            sheet.marks.append(Area(past(spots), ROOMS[1]))
            sheet.line(spots[1:], "edge", 1.6)


def _grain(outline, end: bool, px: float) -> Iterator[Circle | Line]:
    """Ring arcs whose hollow side faces the pith below, or lines along the fibre."""
    (x0, y0), (x1, _), (_, y1), _ = outline
    if not end:
        for share in (0.3, 0.65):
            yield Line([(x0, y0 + share * (y1 - y0)), (x1, y0 + share * (y1 - y0))], "late-wood", 0.6)
        return
    pith = 0.06 * px
    step = max(0.0034 * px, 5.0)
    half = (x1 - x0) / 2
    first = int(pith / step)
    for ring in range(first, int((half**2 + (pith + y1 - y0) ** 2) ** 0.5 / step) + 1):
        yield Circle((x0 + x1) / 2, y1 + pith, ring * step, "late-wood", 0.6)


def joint_sheet(plan: SettingOut, paper: str = "A4") -> Picture:
    """The front or left joint enlarged, every break of its section measured both ways, and all sizes to cut."""
    made, first = plan.piece, plan.first
    sheet = Sheet(f"{plan.title}: the joint", paper)
    turned = any(part.role == "turned" for part in made.parts)
    low, high = _window(made, turned)
    deep = _depth(made)
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
    _section(made, sheet, left, top, px, None if turned else (low, high))
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
        depths = breaks((p.depth for p in inside), first)
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
    return sheet.finish(_block(plan, scale_text(scale), "2 the joint"))


def _window(made: MadePiece, turned: bool) -> Span:
    """What of the section is enlarged: as far as its first joint reaches, with wood beyond it on both sides."""
    whole, deep = _whole(made), _depth(made)
    if turned:
        return Fraction(0), deep
    lies = "along" if made.section_runs == "across" else "across"
    lines = [line for line in made.lines if line.runs == lies]
    if not lines:
        return Fraction(0), min(whole, 4 * deep)
    line = lines[0]
    if made.way.boarded:
        return max(Fraction(0), line.low_m - deep), min(whole, line.high_m + 2 * deep)
    return Fraction(0), min(whole, line.high_m + 2 * deep)


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


def _stops(plan: SettingOut, axis: int) -> dict[Fraction, str]:
    """What is marked along one axis of the piece, by place."""
    made, runs = plan.piece, ("across", "along")[axis]
    found: dict[Fraction, list[str]] = {}
    for line in made.lines:
        if line.runs == runs:
            found.setdefault(line.at_m, []).append(line.name)
    for item in plan.hardware:
        for centre in item.centres_m:
            found.setdefault(centre[axis], []).append(item.pair.name)
    for fixing in made.fixings:
        found.setdefault((fixing.along_m, fixing.across_m)[axis], []).append(
            f"bore {size(fixing.diameter.exact_m, plan.first)}"
        )
    return {place: ", ".join(dict.fromkeys(names)) for place, names in sorted(found.items())}


def stick_sheets(plan: SettingOut, paper: str = "A4") -> tuple[Picture, ...]:
    """Strips at full size with every joint and hole on its place, three on a sheet, and two bars to check the print."""
    strips = []
    for axis, name in enumerate(("along, from the left end", f"across, from the {plan.edge}")):
        stops, whole = _stops(plan, axis), plan.piece.size_m[axis]
        count = max(1, -(-whole // Fraction(STRIP_M).limit_denominator(1000)))
        for number in range(count if stops else 0):
            begin = number * Fraction(STRIP_M).limit_denominator(1000)
            end = min(whole, begin + Fraction(STRIP_M).limit_denominator(1000))
            inside = {p: what for p, what in stops.items() if begin <= p <= end}
            if inside or number in (0, count - 1):
                strips.append((name, number + 1, count, begin, end, inside))
    groups = [strips[at : at + STRIPS] for at in range(0, len(strips), STRIPS)]
    return tuple(_stick(plan, paper, number, group) for number, group in enumerate(groups, start=1))


def _stick(plan: SettingOut, paper: str, number: int, strips: list) -> Picture:
    sheet = Sheet(f"{plan.title}: story stick {number}", paper)
    px, left = 1000 * PX_MM, MARGIN + 24
    for x, long_m, said in ((left, 0.1, "100 mm"), (left + 460, 3 * 0.0254, "3 in")):
        y = sheet.top + 40
        sheet.dimension((x, y), (x + long_m * px, y), f"measure first: {said}")
    for row, (name, part, count, begin, end, stops) in enumerate(strips):
        y = sheet.top + 170 + row * 150
        sheet.line([(left, y), (left + float(end - begin) * px, y)], "ink", 2.6)
        for place, what in stops.items():
            x = left + float(place - begin) * px
            sheet.line([(x, y), (x, y - 16)], "ink", 1.0)
            sheet.label(f"{size(place, plan.first)} {what}", (x, y - 18), 11)
        for place in (begin, end):
            x = left + float(place - begin) * px
            sheet.line([(x, y - 34), (x, y + 8)], "ink", 1.0, "4 3")
        said = (
            f"Strip {part} of {count}, {name}: {size(begin, plan.first)} to {size(end, plan.first)}; thick edge marks"
        )
        sheet.text(left + 8, y + 22, said, 12)
    return sheet.finish(_block(plan, "1:1", f"{number + 2} story stick"))
