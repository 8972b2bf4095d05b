"""What a client sees of a piece in one month: two halves side by side, held fast as first seen, and as it is built.

Each half shows the piece from above, its movement drawn larger than it is, and a cut through the place that opens,
true to its proportions. A way to build says with its attributes which of the few kinds of view it has; all of them
follow from the same numbers as its verdict.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import cos, exp, pi, sin, sqrt

from ..picture.scene import Area, Circle, Line, Mark, Window, Words, box, corners
from ..picture.stem import Stem, end_arcs, face_grain, stems
from ..words.decided import Pick
from ..words.say import Said
from .way import Way

WIDTH, HALF, GAP = 360.0, 172.0, 16.0
PLAN_TOP, PLAN_LOW = 44.0, 156.0
CUT_TOP, CUT_TALL = 172.0, 46.0
SIZE_Y, RESULT_Y, HEIGHT = 232.0, 268.0, 292.0
LETTERS = 15.0
PLAN_SHARE = 0.82  # of a half, that the piece takes in the view from above
MOST_PX = 8.0  # that an edge goes to one side in the view from above
LARGER = (20, 15, 12, 10, 8, 6, 5, 4, 3, 2, 1)
SPLIT_SHARES = (0.0, 0.18, 0.36, 0.54, 0.72, 0.88, 1.0)  # places along a split, where it turns a little
MOST_PX_PER_M = 3200.0  # of the cut; a thin part is not drawn thicker than this makes it


@dataclass(frozen=True)
class Seen:
    """The piece in one month, sizes in metres.

    ``goes`` likely change of the free width since today, over the width; ``furthest`` the largest of any month, by size;
    ``line`` the opening that is seen in this month at the place that opens;
    ``split`` how wide a split would stand open if one took all that is held back; ``level`` 0 calm, 1 pulled, 2 past its
    limit, of the held half; ``reach`` how far from the held end the grip is felt.
    """

    width: float
    length: float
    thickness: float
    border: float
    border_thickness: float
    ring_angle_deg: float
    grip: float
    reach: float
    painted: bool
    goes: float = 0.0
    furthest: float = 0.0
    line: float = 0.0
    split: float = 0.0
    level: int = 0

    @property
    def past(self) -> Pick:
        """Whether the held half is past its limit, so that a split is drawn."""
        return Pick(float(self.level), (False, False, True))

    @property
    def pulled(self) -> Pick:
        """Whether it is pulled hard, but not past its limit."""
        return Pick(float(self.level), (False, True, False))

    @property
    def px(self) -> float:
        """px per metre in the view from above."""
        return PLAN_SHARE * HALF / self.width

    @property
    def times(self) -> int:
        """How much larger than life movement is drawn from above: the most that keeps the edges on the sheet."""
        edge = max(0.5 * self.furthest * self.width * self.px, 1e-9)
        return next((times for times in LARGER if times * edge <= MOST_PX), 1)

    @property
    def cut_px(self) -> float:
        """px per metre in the cut."""
        return min(CUT_TALL / max(self.thickness, self.border_thickness), MOST_PX_PER_M)

    def drawn(self, metres: float) -> float:
        """A movement as drawn from above, px."""
        return metres * self.px * self.times

    @property
    def board(self) -> Stem:
        """The board at the place that is cut."""
        return self.boards[0]

    @property
    def boards(self) -> tuple[Stem, ...]:
        """The boards of the panel."""
        return stems(max(1, min(6, round(self.width / 0.14))), self.ring_angle_deg)


def wood_from_above(seen: Seen, outline: list, left: float, width_px: float, role: str = "wood") -> list[Mark]:
    """The panel's face in an outline, its boards with the grain of their rings, or plain where it is painted."""
    if seen.painted:
        return [Area(outline, "grid"), Line([*outline, outline[0]], "edge", 1.4)]
    marks: list[Mark] = [Area(outline, role)]
    inside: list[Mark] = []
    one = width_px / len(seen.boards)
    for number, stem in enumerate(seen.boards):
        at = left + number * one
        grain = face_grain(
            stem, at, PLAN_LOW, one / seen.px, seen.thickness, (PLAN_LOW - PLAN_TOP) / seen.px, seen.px, 7
        )
        inside.append(Window(box(at, PLAN_TOP, one, PLAN_LOW - PLAN_TOP), tuple(grain)))
        inside += [Line([(at, PLAN_TOP), (at, PLAN_LOW)], "late-wood", 0.7)] if number else []
    return [*marks, Window(outline, tuple(inside)), Line([*outline, outline[0]], "edge", 1.4)]


def rail_from_above(seen: Seen, outline: list) -> list[Mark]:
    """A piece whose grain runs across the sheet."""
    (left, top), _, (right, low), _ = outline
    role = "grid" if seen.painted else "border-wood"
    lines = [
        Line([(left, y), (right, y + 1.5)], "late-wood", 0.8)
        for y in (top + share * (low - top) for share in (0.2, 0.45, 0.7, 0.9))
    ]
    return [
        Area(outline, role),
        Window(outline, () if seen.painted else tuple(lines)),
        Line([*outline, outline[0]], "edge", 1.4),
    ]


def stile_from_above(seen: Seen, outline: list) -> list[Mark]:
    """A piece whose grain runs up the sheet."""
    (left, top), _, (right, low), _ = outline
    role = "grid" if seen.painted else "border-wood"
    lines = [
        Line([(x, top), (x + 1.5, low)], "late-wood", 0.8)
        for x in (left + share * (right - left) for share in (0.2, 0.45, 0.7, 0.9))
    ]
    return [
        Area(outline, role),
        Window(outline, () if seen.painted else tuple(lines)),
        Line([*outline, outline[0]], "edge", 1.4),
    ]


def torn(left: float) -> list[Mark]:
    """The upper edge of a half, where the piece goes on."""
    steps = 12
    wave = [(left + HALF * k / steps, PLAN_TOP + (5.0 if k % 2 else 1.0)) for k in range(steps + 1)]
    paper = [*wave, (left + HALF, PLAN_TOP - 4.0), (left, PLAN_TOP - 4.0)]
    return [Area(paper, "paper"), Line(wave, "quiet", 1.0)]


def end_grain(seen: Seen, outline: list, middle_x: float, role: str = "wood-end", turned: bool = False) -> list[Mark]:
    """End grain in an outline of the cut, its rings about the pith of the board whose middle is at ``middle_x``."""
    stem = seen.boards[-1] if turned else seen.board
    wide = HALF / seen.cut_px
    arcs = end_arcs(stem, (middle_x, CUT_TOP + 0.5 * CUT_TALL), wide, seen.thickness, seen.cut_px)
    return [Area(outline, role), Window(outline, tuple(arcs)), Line([*outline, outline[0]], "edge", 1.6)]


def _slab(seen: Seen, left: float, right: float, thick: float) -> list:
    """An upright rectangle in the cut, its middle on the middle of the cut."""
    tall = thick * seen.cut_px
    middle = CUT_TOP + 0.5 * CUT_TALL
    return corners(left, middle - 0.5 * tall, right, middle + 0.5 * tall)


def sized(half: float, left: float, right: float, text: Said | Pick | str, shown: bool | Pick = True) -> list[Mark]:
    """The opening in the cut, measured below it; ``half`` is where its half begins, whose middle the words stay near."""
    y = SIZE_Y - 8.0
    middle = min(max(0.5 * (left + right), half + 0.46 * HALF), half + 0.56 * HALF)
    bars: list[Mark] = [
        Line([(left, y), (right, y)], "ink", 1.3, shown=shown),
        Line([(left, y - 4), (left, y + 4)], "ink", 1.3, shown=shown),
        Line([(right, y - 4), (right, y + 4)], "ink", 1.3, shown=shown),
    ]
    return [*bars, Words(middle, SIZE_Y + 13.0, text, "ink", LETTERS, shown=shown)]


# --- held fast ------------------------------------------------------------------------------------------------------


def held_fast(seen: Seen, left: float, ends: bool) -> list[Mark]:
    """A panel that something keeps from moving: a border across its end, or (``ends`` false) its two long edges."""
    middle = left + 0.5 * HALF
    half = 0.5 * seen.width * seen.px
    low = PLAN_LOW - (seen.border * seen.px if ends else 0.0)
    grip_px = seen.reach * seen.px
    marks: list[Mark] = []
    right_edge = []
    for share in (0.0, 0.1, 0.2, 0.35, 0.5, 0.75, 1.0):
        y = low - share * (low - PLAN_TOP)
        held = seen.grip * exp(-(low - y) / max(grip_px, 1e-6)) if ends else 1.0
        right_edge.append((half + 0.5 * seen.drawn(seen.goes * seen.width) * (1.0 - held), y))
    outline = [(middle - dx, y) for dx, y in reversed(right_edge)] + [(middle + dx, y) for dx, y in right_edge]
    marks += wood_from_above(seen, outline, middle - half, 2.0 * half)
    today = [[(middle + side * half, PLAN_TOP), (middle + side * half, low)] for side in (-1.0, 1.0)]
    marks += [Line(points, "quiet", 1.0, "2 3") for points in today]
    zone = corners(middle - half + 1, low - min(grip_px, 0.9 * (low - PLAN_TOP)), middle + half - 1, low - 1)
    marks += [Area(zone, "past-limit", shown=seen.past), Area(zone, "pulled-hard", shown=seen.pulled)]
    if ends:
        marks += rail_from_above(seen, corners(middle - half, low, middle + half, PLAN_LOW))
    split = seen.drawn(seen.split) if seen.level == 2 else 0.0
    tip = low - max(min(grip_px, 0.8 * (low - PLAN_TOP)), 20.0)
    jag = (0.0, 1.6, -1.4, 1.2, -1.0, 0.6, 0.0)
    steps = [(share, low - share * (low - tip), shift) for share, shift in zip(SPLIT_SHARES, jag, strict=True)]
    sides = [
        [(middle + shift + side * 0.5 * split * sqrt(1.0 - share), y) for share, y, shift in steps] for side in (-1, 1)
    ]
    marks.append(Area([*sides[0], *reversed(sides[1])], "edge", shown=seen.past))
    return [*marks, *torn(left)]


def held_cut(seen: Seen, left: float, split_text: Said | Pick | str) -> list[Mark]:
    """End grain at the middle of the held end, with its split open where it is past its limit."""
    middle = left + 0.5 * HALF
    open_px = seen.split * seen.cut_px if seen.level == 2 else 0.0
    whole = _slab(seen, left + 2, left + HALF - 2, seen.thickness)
    marks = end_grain(seen, whole, middle)
    top, low = whole[0][1], whole[2][1]
    jag = (0.6, -0.8, 1.0, -0.6, 0.4)
    ys = [top + (low - top) * k / 4.0 for k in range(5)]
    crack = [(middle + j - 0.5 * open_px, y) for j, y in zip(jag, ys, strict=True)]
    crack += [(middle + j + 0.5 * open_px, y) for j, y in zip(reversed(jag), reversed(ys), strict=True)]
    marks.append(Area(crack, "edge", shown=seen.past))
    marks += sized(left, middle - 0.5 * open_px, middle + 0.5 * open_px, split_text, seen.past)
    return marks


# --- as it is built: from above -------------------------------------------------------------------------------------


def framed_plan(seen: Seen, left: float) -> list[Mark]:
    """A loose panel in its frame; the tongue shows in the line."""
    middle, px = left + 0.5 * HALF, seen.px
    half, border = 0.5 * seen.width * px, seen.border * px
    inside = corners(middle - half + border, PLAN_TOP, middle + half - border, PLAN_LOW - border)
    line = max(seen.line * px * seen.times / 2.0, 1.0)
    panel = corners(inside[0][0] + line, PLAN_TOP, inside[1][0] - line, PLAN_LOW - border - 2.0)
    marks: list[Mark] = [Area(inside, "late-wood")]
    marks += wood_from_above(seen, panel, middle - half + border, 2.0 * (half - border))
    marks += stile_from_above(seen, corners(middle - half, PLAN_TOP, middle - half + border, PLAN_LOW))
    marks += stile_from_above(seen, corners(middle + half - border, PLAN_TOP, middle + half, PLAN_LOW))
    marks += rail_from_above(seen, corners(middle - half + border, PLAN_LOW - border, middle + half - border, PLAN_LOW))
    return [*marks, *torn(left)]


def ended_plan(seen: Seen, left: float) -> list[Mark]:
    """A panel that becomes wider and narrower past an end piece that does not."""
    middle, px = left + 0.5 * HALF, seen.px
    half, low = 0.5 * seen.width * px, PLAN_LOW - seen.border * px
    now = half + 0.5 * seen.drawn(seen.goes * seen.width)
    marks = wood_from_above(seen, corners(middle - now, PLAN_TOP, middle + now, low), middle - half, 2.0 * half)
    marks += rail_from_above(seen, corners(middle - half, low, middle + half, PLAN_LOW))
    return [*marks, *torn(left)]


def free_plan(seen: Seen, left: float) -> list[Mark]:
    """A panel that nothing stops, with today's width dotted."""
    middle = left + 0.5 * HALF
    half = 0.5 * seen.width * seen.px
    now = half + 0.5 * seen.drawn(seen.goes * seen.width)
    marks = wood_from_above(seen, corners(middle - now, PLAN_TOP, middle + now, PLAN_LOW), middle - half, 2.0 * half)
    for side in (-1.0, 1.0):
        marks.append(Line([(middle + side * half, PLAN_TOP), (middle + side * half, PLAN_LOW)], "quiet", 1.0, "2 3"))
    return [*marks, *torn(left)]


def opening_plan(seen: Seen, left: float) -> list[Mark]:
    """A part in its opening, standing on its lower edge, the line above it."""
    room = PLAN_LOW - PLAN_TOP - 24.0
    tall = min(seen.width * seen.px * 0.86, room)
    low = 0.5 * (PLAN_TOP + PLAN_LOW) + 0.5 * tall
    line = min(seen.line / seen.width * tall * seen.times, 0.4 * tall)
    case = corners(left + 4, low - tall - 10, left + HALF - 4, low + 10)
    hole = corners(left + 14, low - tall, left + HALF - 14, low)
    part = corners(left + 16, low - tall + line, left + HALF - 16, low)
    marks = [*stile_from_above(seen, case), Area(hole, "gap")]
    grain = [
        Line([(left + 16, y), (left + HALF - 16, y + 1.5)], "late-wood", 0.8)
        for y in (low - tall * share for share in (0.12, 0.3, 0.45, 0.62, 0.8))
    ]
    marks += [Area(part, "grid" if seen.painted else "wood"), Window(part, () if seen.painted else tuple(grain))]
    return [*marks, Line([*part, part[0]], "edge", 1.4)]


def boards_plan(seen: Seen, left: float) -> list[Mark]:
    """Boards side by side, each with its own line."""
    middle, half = left + 0.5 * HALF, 0.5 * seen.width * seen.px
    count = 5
    one = 2.0 * half / count
    line = min(max(seen.line * seen.px * seen.times, 0.8), 0.3 * one)
    marks: list[Mark] = [Area(corners(middle - half, PLAN_TOP, middle + half, PLAN_LOW), "late-wood")]
    for number, stem in enumerate(stems(count, seen.ring_angle_deg)):
        begin = middle - half + number * one
        outline = corners(begin + 0.5 * line, PLAN_TOP, begin + one - 0.5 * line, PLAN_LOW)
        tall = (PLAN_LOW - PLAN_TOP) / seen.px
        grain = face_grain(stem, begin, PLAN_LOW, one / seen.px, seen.thickness, tall, seen.px, 6)
        marks += [Area(outline, "grid" if seen.painted else "wood")]
        marks += [Window(outline, () if seen.painted else tuple(grain)), Line([*outline, outline[0]], "edge", 1.2)]
    return [*marks, *torn(left)]


def round_plan(seen: Seen, left: float) -> list[Mark]:
    """The end of a round in its ring or hole, oval as the month makes it."""
    x, y, radius = left + 0.5 * HALF, 0.5 * (PLAN_TOP + PLAN_LOW), 40.0
    more = min(seen.line / seen.width * radius * seen.times, 10.0)
    turns = [2.0 * pi * k / 36 for k in range(37)]
    across, along = radius * (1.0 + 0.5 * seen.goes * seen.times), radius * (1.0 + 0.25 * seen.goes * seen.times)
    oval = [(x + along * cos(turn), y + across * sin(turn)) for turn in turns]
    stem = Stem(seen.ring_angle_deg, 0.02, 0.0)
    px = 2.0 * radius / seen.width
    rings = [Circle(x, y + 0.55 * seen.width * px, n * 0.11 * seen.width * px, "late-wood", 1.0) for n in range(1, 12)]
    return [
        Circle(x, y, radius + more + 13.0, "border-wood", filled=True),
        Circle(x, y, radius + more + 13.0, "edge", 1.4),
        Circle(x, y, radius + more, "gap", filled=True),
        Circle(x, y, radius + more, "edge", 1.2),
        Area(oval, "grid" if seen.painted else "wood-end"),
        Window(oval, () if seen.painted or stem.pith_m <= 0 else tuple(rings)),
        Line(oval, "edge", 1.4),
    ]


# --- as it is built: the cut ----------------------------------------------------------------------------------------


def framed_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """Stile, groove and tongue: the line opens and shuts, the tongue stays in its groove."""
    px, middle = seen.cut_px, CUT_TOP + 0.5 * CUT_TALL
    face = left + 0.5 * HALF - 6.0
    line = seen.line * px
    stile = _slab(seen, left + 2, face, seen.border_thickness)
    marks = end_grain(seen, stile, face - 0.5 * seen.border * px, "border-wood", turned=True)
    thin, deep = seen.border_thickness * px / 6.0, min(0.4 * seen.border * px, 0.45 * HALF)
    marks += [Area(corners(face - deep, middle - thin - 1, face + 1, middle + thin + 1), "gap")]
    marks += [
        Line(
            [
                (face, middle - thin - 1),
                (face - deep, middle - thin - 1),
                (face - deep, middle + thin + 1),
                (face, middle + thin + 1),
            ],
            "edge",
            1.2,
        )
    ]
    tongue = corners(face + line - 0.85 * deep, middle - thin, face + line + 2, middle + thin)
    panel = _slab(seen, face + line, left + HALF - 2, min(seen.thickness, seen.border_thickness))
    whole = [
        tongue[0],
        (face + line, middle - thin),
        panel[0],
        panel[1],
        panel[2],
        panel[3],
        (face + line, middle + thin),
        tongue[3],
    ]
    marks += end_grain(seen, whole, face + line + 0.05 * px)
    return [*marks, *sized(left, face, face + line, text)]


def step_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """The corner from above: the panel's edge and the end piece, and the step between them."""
    px = seen.cut_px
    edge = left + 0.62 * HALF
    step = seen.line * px * (1.0 if seen.goes >= 0.0 else -1.0)
    seam = CUT_TOP + 0.5 * CUT_TALL
    panel = corners(left + 2, CUT_TOP, edge + step, seam)
    end = corners(left + 2, seam, edge, CUT_TOP + CUT_TALL)
    up = [Line([(x, CUT_TOP), (x + 1, seam)], "late-wood", 0.8) for x in (left + 2 + 14.0 * k for k in range(1, 12))]
    marks: list[Mark] = [
        Area(panel, "grid" if seen.painted else "wood"),
        Window(panel, () if seen.painted else tuple(up)),
    ]
    marks += [Line([*panel, panel[0]], "edge", 1.4), *rail_from_above(seen, end)]
    return [*marks, *sized(left, min(edge, edge + step), max(edge, edge + step), text)]


def overhang_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """The edge of the panel and what carries it below: it slides, and nothing opens."""
    px = seen.cut_px * 0.6
    edge = left + 0.66 * HALF
    now = edge + seen.goes * 0.5 * seen.width * px
    low = CUT_TOP + 0.55 * CUT_TALL
    panel = corners(left + 2, low - min(seen.thickness * px, 0.5 * CUT_TALL), now, low)
    carrier = corners(left + 2, low, edge - 10.0, low + 0.4 * CUT_TALL)
    marks = end_grain(seen, panel, left + 0.4 * HALF)
    marks += rail_from_above(seen, carrier)
    marks += [Line([(edge, CUT_TOP - 2), (edge, low + 8)], "quiet", 1.0, "2 3")]
    return [*marks, *sized(left, min(edge, now), max(edge, now), text)]


def opening_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """The free edge of a part and what stands beside it."""
    face = left + 0.6 * HALF
    part = _slab(seen, left + 2, face - seen.line * seen.cut_px, seen.thickness)
    beside = _slab(seen, face, left + HALF - 2, max(seen.border_thickness, seen.thickness))
    marks = end_grain(seen, part, left + 0.3 * HALF)
    marks += end_grain(seen, beside, face + 0.03 * seen.cut_px, "border-wood", turned=True)
    return [*marks, *sized(left, face - seen.line * seen.cut_px, face, text)]


def boards_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """Two boards that overlap, and the line between them."""
    px, line = seen.cut_px, seen.line * seen.cut_px
    middle, y = left + 0.5 * HALF, CUT_TOP + 0.5 * CUT_TALL
    half, lap = 0.5 * seen.thickness * px, 0.012 * px
    first = [
        (left + 2, y - half),
        (middle, y - half),
        (middle, y),
        (middle + lap, y),
        (middle + lap, y + half),
        (left + 2, y + half),
    ]
    begin = middle + line
    second = [
        (begin, y - half),
        (left + HALF - 2, y - half),
        (left + HALF - 2, y + half),
        (begin + lap, y + half),
        (begin + lap, y + 0.5),
        (begin, y + 0.5),
    ]
    marks = [
        *end_grain(seen, first, left + 0.25 * HALF),
        *end_grain(seen, second, left + 0.8 * HALF, "border-wood", turned=True),
    ]
    return [*marks, *sized(left, middle, begin, text)]


def round_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """The wall of the ring, the line, and the round."""
    return opening_cut(seen, left, text)


def still_cut(seen: Seen, left: float, text: Said | Pick | str) -> list[Mark]:
    """A sheet with its edging: nothing to measure."""
    joint = left + 0.6 * HALF
    sheet = _slab(seen, left + 2, joint, seen.thickness)
    plies = [
        Line([(left, y), (joint, y)], "late-wood", 1.0) for y in (CUT_TOP + CUT_TALL * k / 8.0 for k in range(1, 8))
    ]
    marks: list[Mark] = [Area(sheet, "grid"), Window(sheet, tuple(plies)), Line([*sheet, sheet[0]], "edge", 1.6)]
    edging = _slab(seen, joint, min(joint + seen.border * seen.cut_px, left + HALF - 2), seen.thickness)
    marks += end_grain(seen, edging, joint + 0.5 * seen.border * seen.cut_px, "border-wood", turned=True)
    return [*marks, Words(left + 0.5 * HALF, SIZE_Y + 13.0, text, "ink", LETTERS)]


Plan = Callable[[Seen, float], list[Mark]]
Cut = Callable[[Seen, float, Said | Pick | str], list[Mark]]


def view_of(way: Way) -> tuple[Plan, Cut]:
    """How a way is seen from above and in the cut, by what it is."""
    if way.round:
        return round_plan, round_cut
    if way.boarded:
        return boards_plan, boards_cut
    if way.fitted:
        return opening_plan, opening_cut
    if not way.solid:
        return framed_plan, still_cut
    if way.framed:
        return framed_plan, framed_cut
    if way.keeps_border and way.keeps_flat and not way.holds:
        return ended_plan, step_cut
    return free_plan, overhang_cut
