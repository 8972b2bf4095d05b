"""What the views of a client share: the piece in one month, its scales, and wood from above and in the cut."""

from __future__ import annotations

from dataclasses import dataclass

from ..picture.scene import Area, Line, Mark, Window, Words, box, corners
from ..picture.stem import Stem, end_arcs, face_grain, stems
from ..words.decided import Pick
from ..words.say import Said

WIDTH, HALF, GAP = 360.0, 172.0, 16.0
PLAN_TOP, PLAN_LOW = 44.0, 156.0
CUT_TOP, CUT_TALL = 172.0, 46.0
SIZE_Y, RESULT_Y, HEIGHT = 232.0, 268.0, 292.0
LETTERS = 15.0
PLAN_SHARE = 0.82  # of a half, that the piece takes in the view from above
MOST_PX = 8.0  # that an edge goes to one side in the view from above
BOARD_M = 0.14  # of one board of a panel; an assumption of ours
LARGER = (20, 15, 12, 10, 8, 6, 5, 4, 3, 2, 1)
MOST_PX_PER_M = 3200.0  # of the cut; a thin part is not drawn thicker than this makes it


@dataclass(frozen=True)
class Seen:
    """The piece in one month, sizes in metres.

    ``goes`` likely change of the free width since today, over the width; ``furthest`` the largest of any month, by size;
    ``agreed`` the width by which its boards are counted, where it is another;
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
    agreed: float = 0.0
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
        return stems(max(1, min(6, round((self.agreed or self.width) / BOARD_M))), self.ring_angle_deg)


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


def slab(seen: Seen, left: float, right: float, thick: float) -> list:
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
