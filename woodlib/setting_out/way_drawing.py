"""The shop drawing of a piece as it is built: plan with its parts and holes, section, and one joint drawn larger."""

from __future__ import annotations

from fractions import Fraction

from ..picture.scene import Area, Circle, Line, Mark, Picture, Window, Words, box, dimension_line
from ..picture.wood import grain_lines
from ..ways.made import MadePiece, Place, Section, Span
from .drawing_marks import (
    LEFT,
    TOP,
    WIDTH,
    head,
    holes,
    holes_text,
    middles,
    scale_for,
    scale_text,
    upright,
)
from .lists import size_text
from .plan import SettingOut

TALL, SHORT = 716.0, 600.0  # with a joint drawn larger, and without
DETAIL_LEFT, DETAIL_WIDE, DETAIL_TALL = LEFT, 300.0, 96.0
MOST_NAMES = 6
SHEET = "sheet"  # it has no grain to draw


def way_drawing(plan: SettingOut) -> Picture:
    """The piece of a plan with a verdict: everything in it comes from the plan's own numbers."""
    made = plan.piece
    long, wide, _ = made.size_m
    scale = scale_for(long, wide)
    bottom = TOP + float(wide) * scale
    marks = _plan_view(plan, scale)
    marks += _chain_along(plan, scale) + _chain_across(plan, scale)
    marks += upright(LEFT - 14, TOP, wide, scale, plan.first)
    marks.append(Words(LEFT, bottom + 18, plan.edge, "quiet", 14, "start"))
    marks += middles(plan, scale, bottom + 70)
    marks += _section(plan, scale, bottom + 118)
    marks += _detail(plan, bottom + 192)
    notes = (holes_text(plan), scale_text(scale))
    title, tall = f"{plan.title}: {made.way.name}", TALL if len(made.section) > 1 and not _turned(made) else SHORT
    return Picture(title, WIDTH, tall, (*head(title, notes, tall), *marks))


def way_in_words(plan: SettingOut) -> list[str]:
    """The drawing's parts and section as sentences without a full stop."""
    made, first = plan.piece, plan.first
    long, wide, thick = (size_text(size, first) for size in made.size_m)
    sentences = [f"{made.way.title}, {long} by {wide}, {thick} thick"]
    sentences += [f"{part.count} x {part.name} {part.text(first)}" for part in made.parts]
    sentences.append(f"Section {made.section_runs} the grain through {', '.join(_names(made.section))}")
    return sentences


def _names(section: tuple[Section, ...]) -> list[str]:
    return list(dict.fromkeys(part.part for part in section))


def _role(made: MadePiece, name: str) -> str:
    """The panel light, what is around it darker, so that grey print tells them apart too."""
    main = made.panel.name if made.panel else made.parts[0].name
    return "wood" if name in (main, "sheet", "board", "last board", "tongue", "tenon", "field") else "border-wood"


def _outline(span_along: Span, span_across: Span, wide: Fraction, scale: float) -> list[tuple[float, float]]:
    x0, x1 = (LEFT + float(at) * scale for at in span_along)
    y1, y0 = (TOP + float(wide - at) * scale for at in span_across)
    return box(x0, y0, x1 - x0, y1 - y0)


def _plan_view(plan: SettingOut, scale: float) -> list[Mark]:
    made = plan.piece
    wide = made.size_m[1]
    marks: list[Mark] = []
    seen = [place for place in made.places if not place.below]
    seen.sort(key=lambda place: made.panel is not None and place.part != made.panel.name)  # a rim lies on the panel
    for number, place in enumerate(seen):
        outline = _outline(place.along, place.across, wide, scale)
        run, lines = ("x", 7) if place.grain == "along" else ("y", 4)
        tight = min(outline[1][0] - outline[0][0], outline[2][1] - outline[1][1]) < 40
        grain = () if place.part == SHEET else grain_lines(outline, run, 3 if tight else lines, seed=number + 1)
        marks += [
            Area(outline, _role(made, place.part)),
            Window(outline, tuple(grain)),
            Line([*outline, outline[0]], "edge", 1.6),
        ]
    marks += _panel_glue_lines(plan, scale) + _hidden(made, scale) + _mitres(made, scale)
    marks += _part_names(made, scale)
    return [*marks, *holes(plan, scale)]


def _panel_glue_lines(plan: SettingOut, scale: float) -> list[Mark]:
    """Glue lines of the panel where they are seen between its shoulders."""
    made, panel = plan.piece, plan.piece.panel
    if plan.boards is None or panel is None:
        return []
    place = next(place for place in made.places if place.part == panel.name)
    trim = (plan.glued_blank.width.total_m - plan.glued_blank.finished_width_m) / 2
    marks: list[Mark] = []
    for at in plan.boards.joints_m:
        # Strips are numbered from the front edge of the blank.
        across = made.panel_at_m[1] + at - trim
        if place.across[0] < across < place.across[1]:
            y = TOP + float(made.size_m[1] - across) * scale
            x0, x1 = (LEFT + float(end) * scale for end in place.along)
            marks.append(Line([(x0, y), (x1, y)], "glue", 1.2, dash="6 3"))
    return marks


def _hidden(made: MadePiece, scale: float) -> list[Mark]:
    """What lies under the face, dashed: battens, and grooves with what slides in them."""
    long, wide, _ = made.size_m
    marks: list[Mark] = []
    for place in (place for place in made.places if place.below):
        outline = _outline(place.along, place.across, wide, scale)
        marks.append(Line([*outline, outline[0]], "quiet", 1.2, dash="5 4"))
    for fixing in made.fixings:
        x, y = LEFT + float(fixing.along_m) * scale, TOP + float(wide - fixing.across_m) * scale
        marks.append(Circle(x, y, 2.6, "quiet", 1.2))
    for line in made.lines:
        if not line.loose or made.way.boarded:
            continue
        begin, end = line.between or (Fraction(0), long if line.runs == "along" else wide)
        for at in {line.low_m, line.high_m} - {line.at_m}:
            ends = [(begin, at), (end, at)] if line.runs == "along" else [(at, begin), (at, end)]
            points = [(LEFT + float(a) * scale, TOP + float(wide - c) * scale) for a, c in ends]
            marks.append(Line(points, "quiet", 1.0, dash="5 4"))
    return marks


def _mitres(made: MadePiece, scale: float) -> list[Mark]:
    if not made.way.mitred:
        return []
    long, wide, _ = made.size_m
    border = made.places[0].across[1]
    zero = Fraction(0)
    corners = [((zero, zero), (1, 1)), ((long, zero), (-1, 1)), ((zero, wide), (1, -1)), ((long, wide), (-1, -1))]
    marks: list[Mark] = []
    for (along, across), (right, up) in corners:
        inner = along + right * border, across + up * border
        square = (along, across), (inner[0], across), inner, (along, inner[1])
        points = [(LEFT + float(a) * scale, TOP + float(wide - c) * scale) for a, c in square]
        marks += [
            Area(points, "border-wood"),
            Line([points[1], points[0], points[3]], "edge", 1.6),
            Line([points[0], points[2]], "edge", 1.6),
        ]
    return marks


def _part_names(made: MadePiece, scale: float) -> list[Mark]:
    """Each part's name once for each place that has room for it; battens at their own."""
    wide = made.size_m[1]
    marks: list[Mark] = []
    for place in (place for place in made.places[:MOST_NAMES] if place.part != "field"):  # it is in the panel's
        (x0, y0), _, (x1, y1), _ = _outline(place.along, place.across, wide, scale)
        hidden = any(other.below for other in made.places) and not place.below
        middle = x0 + (x1 - x0) * (0.27 if hidden else 0.5), (y0 + y1) / 2  # clear of the name of a batten below
        if x1 - x0 > 8.0 * len(place.part) and y1 - y0 >= 17:
            marks.append(Words(middle[0], middle[1] + (5 if y1 - y0 < 60 else -10), place.part, "ink", 14))
        elif y1 - y0 > 8.0 * len(place.part) and x1 - x0 >= 17:
            marks.append(Words(middle[0] + 5, middle[1], place.part, "ink", 14, turn=90))
    return marks


def _breaks(places: list[Place], end: str) -> list[Fraction]:
    return sorted({at for place in places for at in getattr(place, end)})


def _chain_along(plan: SettingOut, scale: float) -> list[Mark]:
    """The parts along the piece above it, and the whole above them."""
    made = plan.piece
    long, wide, _ = made.size_m
    crossed = [p for p in made.places if not p.below and p.across[0] <= wide / 2 <= p.across[1]]
    at = _breaks(crossed, "along")
    whole = TOP - (34 if len(at) > 2 else 10)
    marks = dimension_line((LEFT, whole), (LEFT + float(long) * scale, whole), size_text(long, plan.first), size=14)
    if len(at) <= 2:
        return marks
    y = TOP - 10
    for begin, end in zip(at, at[1:], strict=False):
        x0, x1 = (LEFT + float(place) * scale for place in (begin, end))
        text = size_text(end - begin, plan.first)
        room = x1 - x0 >= 8.0 * len(text)
        marks += dimension_line((x0, y), (x1, y), text if room else "", size=14)
        if not room and begin == at[0]:
            inches, mm = text.split(" (")
            marks.append(Words(LEFT - 8, y - 6, inches, "ink", 14, "end"))
            marks.append(Words(LEFT - 8, y + 10, mm.rstrip(")"), "ink", 14, "end"))
    return marks


def _chain_across(plan: SettingOut, scale: float) -> list[Mark]:
    """The parts across the piece, on its right; equal neighbours after the first are left to the eye."""
    made = plan.piece
    long, wide, _ = made.size_m
    crossed = [p for p in made.places if not p.below and p.along[0] <= long / 2 <= p.along[1]]
    at, x = _breaks(crossed, "across"), LEFT + float(long) * scale + 10
    if len(at) <= 2 and at == [0, wide]:
        return []
    marks: list[Mark] = []
    told: set[Fraction] = set()
    for begin, end in zip(at, at[1:], strict=False):
        y1, y0 = (TOP + float(wide - place) * scale for place in (begin, end))
        marks += dimension_line((x, y0), (x, y1), "")
        if end - begin not in told and y1 - y0 >= 12:
            told.add(end - begin)
            inches, mm = size_text(end - begin, plan.first).split(" (")
            marks.append(Words(x + 8, (y0 + y1) / 2 + (-2 if y1 - y0 > 30 else 5), inches, "ink", 14, "start"))
            if y1 - y0 > 30:
                marks.append(Words(x + 8, (y0 + y1) / 2 + 15, mm.rstrip(")"), "ink", 14, "start"))
    return marks


def _whole_of(made: MadePiece) -> Fraction:
    return made.size_m[0] if made.section_runs == "along" else made.size_m[1]


def _turned(made: MadePiece) -> bool:
    return any(part.role == "turned" for part in made.parts)


def _rounds(made: MadePiece, left: float, top: float, scale: float) -> list[Mark]:
    """Turned parts from their end, the outermost first and touching left and top; a bore is seen through."""
    outer = max(part.spread[1] - part.spread[0] for part in made.section)
    x = left + float(outer) / 2 * scale
    y = top + float(outer) / 2 * scale
    marks: list[Mark] = []
    for part in made.section:
        radius = float(part.spread[1] - part.spread[0]) / 2 * scale
        marks += [
            Circle(x, y, radius, "paper" if part.loose else "wood-end", filled=True),
            Circle(x, y, radius, "edge", 1.6),
        ]
    return marks


def _section_marks(made: MadePiece, left: float, top: float, scale: float, seen: Span | None = None) -> list[Mark]:
    """The parts of the section, all of it or from one place to another; where it is cut off no edge is drawn."""
    low, high = seen or (Fraction(0), _whole_of(made))
    marks: list[Mark] = []
    order = sorted(made.section, key=lambda part: part.part in ("tongue", "tenon"))
    for number, part in enumerate(order):
        (a, b), (c, d) = (max(low, part.spread[0]), min(high, part.spread[1])), part.depth
        if a >= b:
            continue
        outline = box(left + float(a - low) * scale, top + float(c) * scale, float(b - a) * scale, float(d - c) * scale)
        role = "wood-end" if part.end else _role(made, part.part)
        role = "border-wood" if part.end and _role(made, part.part) == "border-wood" else role
        marks.append(Area(outline, role))
        if not part.end and part.part != SHEET and float(d - c) * scale > 12:
            marks.append(Window(outline, tuple(grain_lines(outline, "x", 3, seed=number + 1))))
        marks += [Line(outline[:2], "edge", 1.4), Line(outline[2:], "edge", 1.4)]
        marks += [Line([outline[0], outline[3]], "edge", 1.4)] if a == part.spread[0] else []
        marks += [Line(outline[1:3], "edge", 1.4)] if b == part.spread[1] else []
        for wedge in part.cut_off():
            if low <= min(wedge)[0] and max(wedge)[0] <= high:
                spots = [(left + float(x - low) * scale, top + float(y) * scale) for x, y in wedge]
                marks += [Area(past(spots), "paper"), Line(spots[1:], "edge", 1.4)]
    return marks


def past(wedge: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """A wedge that is taken off, as far beyond the part as the lines around it are wide."""
    (x, y), (inner, _), third, (_, low) = wedge
    out = 1.5 if inner < x else -1.5
    return [(x + out, y - 1.5), (inner, y - 1.5), third, (x, low), (x + out, low)]


def _section(plan: SettingOut, scale: float, top: float) -> list[Mark]:
    """The whole section to the scale of the plan."""
    made = plan.piece
    if _turned(made):
        return _rounds_told(plan, scale, top)
    marks = _section_marks(made, LEFT, top, scale)
    name = f"section {made.section_runs} the grain, show face up"
    marks.append(Words(LEFT, top - 10, name, "quiet", 14, "start"))
    right = LEFT + float(_whole_of(made)) * scale
    deep = max(part.depth[1] for part in made.section)
    if right + 190 < WIDTH:
        y = top + float(deep) * scale / 2 + 5
        marks.append(Words(right + 12, y, f"{size_text(deep, plan.first)} thick", "ink", 14, "start"))
    return marks


def _rounds_told(plan: SettingOut, scale: float, top: float) -> list[Mark]:
    """Turned parts from their end, with each diameter beside them."""
    section = plan.piece.section
    outer = float(max(part.spread[1] - part.spread[0] for part in section))
    scale = min(scale, 100 / outer)
    marks = [*_rounds(plan.piece, LEFT, top, scale), Words(LEFT, top - 10, "seen from the end", "quiet", 14, "start")]
    for number, part in enumerate(section):
        said = f"{part.part}: {size_text(part.spread[1] - part.spread[0], plan.first)} across"
        marks.append(Words(LEFT + outer * scale + 14, top + 16 + 20 * number, said, "ink", 14, "start"))
    return marks


def _detail(plan: SettingOut, top: float) -> list[Mark]:
    """The front or left joint larger, cut off where nothing more happens; nothing where there is no joint."""
    made = plan.piece
    if len(made.section) < 2 or _turned(made):
        return []
    deep = max(part.depth[1] for part in made.section)
    whole = _whole_of(made)
    far = made.way.boarded  # its joints are between boards, not at the edge
    ends = [end for part in made.section for end in part.spread if end > 0]
    first_break = made.section[0].spread[1] if far else min(ends)
    begin = first_break - 2 * deep if far else Fraction(0)
    seen = min(whole, 4 * deep if far else max(2 * first_break, 4 * deep))
    scale = min(DETAIL_WIDE / float(seen), DETAIL_TALL / float(deep))
    wide = float(seen) * scale
    ragged = Line(
        [(DETAIL_LEFT + wide, top - 4), (DETAIL_LEFT + wide, top + float(deep) * scale + 4)], "quiet", 1.0, "4 3"
    )
    side = "between two boards" if far else f"at the {'left end' if made.section_runs == 'along' else plan.edge}"
    times = scale / scale_for(*made.size_m[:2])
    marks: list[Mark] = [
        Words(DETAIL_LEFT, top - 8, f"the joint {side}, {times:.1f} times as large", "quiet", 14, "start"),
        *_section_marks(made, DETAIL_LEFT, top, scale, (begin, begin + seen)),
        ragged,
    ]
    marks += [] if far else _detail_sizes(plan, top + float(deep) * scale + 20, scale, seen)
    marks += _legend(plan, DETAIL_LEFT + wide + 26, top + 8)
    return marks


def _detail_sizes(plan: SettingOut, y: float, scale: float, seen: Fraction) -> list[Mark]:
    """The first part's width below the joint."""
    first = min(plan.piece.section, key=lambda part: (part.spread[0], part.part == "tongue"))
    size = first.spread[1] - first.spread[0]
    if first.spread[0] or size > seen:
        return []
    x1 = DETAIL_LEFT + float(size) * scale
    marks = dimension_line((DETAIL_LEFT, y), (x1, y), "", size=14)
    return [*marks, Words(x1 + 8, y + 5, size_text(size, plan.first), "ink", 14, "start")]


def _legend(plan: SettingOut, x: float, y: float) -> list[Mark]:
    """Parts with their sizes beside the joint, as many as there is room for."""
    rows = []
    for part in plan.piece.parts[:3]:
        inches = " x ".join(size_text(size.exact_m, plan.first).split(" (")[0] for size in part.sizes)
        rows += [f"{part.count} x {part.name}:", f"   {inches}"]
    return [Words(x, y + 18 * number, row, "ink", 14, "start") for number, row in enumerate(rows)]
