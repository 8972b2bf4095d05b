"""The section through a piece as it is cut: parts with their grain, what is cut off, and the room that joints leave."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from ..picture.scene import Area, Circle, Line, Window, box
from ..units.exact import Rounding
from ..ways.made import MadePiece, Section, Span
from .plan import SettingOut
from .sheet import Sheet

MAIN = ("panel", "sheet", "board", "last board", "tongue", "tenon", "field")
ROOMS = ("void", "paper")
NO_GRAIN = "sheet"


def marked(length_m: Fraction, first: str) -> Fraction:
    """A place as it is marked, so that the sizes between two places close."""
    return Rounding(length_m, "0.1 mm" if first == "metric" else "1/64 in").marked_m


def size(length_m: Fraction, first: str) -> str:
    """A size in the sheet's one unit."""
    return Rounding(length_m, "0.1 mm" if first == "metric" else "1/64 in").text


def breaks(places: Iterable[Span], first: str) -> list[Fraction]:
    """Where spans begin and end, each place once."""
    return sorted({marked(end, first) for span in places for end in span})


def title_block(plan: SettingOut, scale: str, what: str) -> list[tuple[str, str]]:
    mc = f"{round(plan.weight.mc_percent, 1):g}"
    return [
        ("Piece", f"{plan.title}, {plan.piece.way.short}"),
        ("Wood", f"{plan.species}; show face up, datum edges marked with a triangle"),
        ("Sheet", f"{what}; scale {scale}; print at 100 %, no fitting. Date cut: ____________"),
        ("Valid", f"for wood at {mc} % MC on the day it is cut; another reading means new sizes"),
        ("Meter", "its reading may be 1 % MC off; that is in the gaps and slots, no tolerance"),
        ("Drawn", "as cut today; driest and dampest month in the table of the joint"),
    ]


def role_of(made: MadePiece, name: str) -> str:
    main = made.panel.name if made.panel else made.parts[0].name
    return "wood" if name in (main, *MAIN) else "border-wood"


def depth_of(made: MadePiece) -> Fraction:
    return max(part.depth[1] for part in made.section) - min(Fraction(0), *(part.depth[0] for part in made.section))


def whole_of(made: MadePiece) -> Fraction:
    return made.size_m[0] if made.section_runs == "along" else made.size_m[1]


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
                    found.append(("room", span, _groove(tongue)))
    return list(dict.fromkeys(found))


def _groove(tongue: Section) -> Span:
    """From and to below the show face of the groove that a tongue slides in: half of its play on each side."""
    return tongue.depth[0] - tongue.play / 2, tongue.depth[1] + tongue.play / 2


def grooves(made: MadePiece) -> list[tuple[Span, Span]]:
    """Grooves that are wider than their tongues: along the cut, and below the show face."""
    lies = "along" if made.section_runs == "across" else "across"
    return [
        ((line.low_m, line.at_m) if line.low_m < tongue.spread[0] else (line.at_m, line.high_m), _groove(tongue))
        for tongue in made.section
        if tongue.loose and tongue.play
        for line in made.lines
        if line.runs == lies and tongue.spread[0] < line.at_m < tongue.spread[1]
    ]


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


def draw_section(made: MadePiece, sheet: Sheet, left: float, top: float, px: float, seen: Span | None) -> None:
    """The parts as they are cut, end grain with ring arcs, along the grain with lines, voids white."""
    if any(part.role == "turned" for part in made.parts):
        outer = max(part.spread[1] - part.spread[0] for part in made.section)
        for part in made.section:
            radius = float(part.spread[1] - part.spread[0]) / 2 * px
            x, y = left + float(outer) / 2 * px, top + float(outer) / 2 * px
            sheet.marks.append(Circle(x, y, radius, "paper" if part.loose else "wood-end", filled=True))
            sheet.ring(x, y, radius, "edge", 1.6)
        return
    low, high = seen or (Fraction(0), whole_of(made))
    origin = min(Fraction(0), *(part.depth[0] for part in made.section))
    sunk = [part for part in made.section if part.loose or "tongue" in part.part or part.part == "tenon"]
    drawn = [(part.part, part.spread, part.depth, part.end) for part in made.section if part not in sunk]
    drawn += [(ROOMS[0], span, depth, False) for span, depth in grooves(made)]
    drawn += [(part.part, part.spread, part.depth, part.end) for part in sunk]
    drawn += [(ROOMS[0], span, depth, False) for _, span, depth in rooms(made)]
    for name, spread, depth, end in drawn:
        a, b = max(low, spread[0]), min(high, spread[1])
        if a >= b:
            continue
        x, y = left + float(a - low) * px, top + float(depth[0] - origin) * px
        outline = box(x, y, float(b - a) * px, float(depth[1] - depth[0]) * px)
        role = (
            ROOMS[1]
            if name == ROOMS[0]
            else "wood-end"
            if end and role_of(made, name) == "wood"
            else role_of(made, name)
        )
        sheet.marks.append(Area(outline, role))
        if name != ROOMS[0]:
            grain = () if name == NO_GRAIN else tuple(_grain(outline, end, px))
            sheet.marks.append(Window(outline, grain))
        for one, other, shut in ((0, 1, True), (1, 2, b == spread[1]), (2, 3, True), (3, 0, a == spread[0])):
            if shut:
                sheet.line([outline[one], outline[other]], "edge", 1.6)
    for wedge in (wedge for part in made.section for wedge in part.cut_off()):
        if low <= min(wedge)[0] and max(wedge)[0] <= high:
            spots = [(left + float(x - low) * px, top + float(y - origin) * px) for x, y in wedge]
            sheet.marks.append(Area(past(spots), ROOMS[1]))
            sheet.line(spots[1:], "edge", 1.6)


def past(wedge: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """A wedge that is taken off, as far beyond the part as the lines around it are wide."""
    (x, y), (inner, _), third, (_, low) = wedge
    out = 1.5 if inner < x else -1.5
    return [(x + out, y - 1.5), (inner, y - 1.5), third, (x, low), (x + out, low)]


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
