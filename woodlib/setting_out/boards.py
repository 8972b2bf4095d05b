"""How many boards make up the width of a blank, and how wide each ends up, from the stock on hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil

from ..door import check_kind
from ..errors import InputError, Problems
from ..units import both
from ..units.exact import Rounding, check_rule, read_exact, read_name, read_whole
from .blank import Blank
from .division import Division, Part
from .practice import ShopPractice, check_practice

MOST_BOARDS = 60
MOST_STRIPS = 120
TO_BUY = "board to buy"
JUST_OVER_M = Fraction(1, 40)
"""A board so little wider than the jointer is ripped down to it, not in two (1 in; common practice, no source)."""
MOST_SUMS = 20_000
"""Different total widths kept in mind while looking for the least surplus; far more than a stack of boards makes."""


@dataclass(frozen=True)
class StockBoard:
    """A rough board on hand, as measured; ``count`` boards alike.

    >>> StockBoard("A", "6-1/2 in", "8 ft", "1 in").width_m
    Fraction(1651, 10000)
    """

    name: str
    width_m: Fraction
    length_m: Fraction
    thickness_m: Fraction
    count: int = 1

    def __post_init__(self) -> None:
        problems = Problems()
        object.__setattr__(self, "name", read_name(problems, "name of the board", self.name))
        for entry in ("width", "length", "thickness"):
            value = read_exact(problems, f"{entry} of board {self.name}", getattr(self, f"{entry}_m"))
            object.__setattr__(self, f"{entry}_m", value)
        read_whole(problems, f"number of boards {self.name}", self.count, 1, MOST_BOARDS)
        problems.raise_if_any()


@dataclass(frozen=True)
class Strip:
    """One strip of the panel: the board it comes from and its width with both edges jointed, m."""

    board: str
    width_m: Fraction


@dataclass(frozen=True)
class BoardsPlan:
    """The strips of a panel from one edge to the other.

    ``division`` strips and the surplus in two halves, adding up to all the wood glued; ``blank_width_m`` what is
    needed; ``roundings`` of ripped widths; ``left_out`` one sentence per board that cannot serve; ``gives`` how many
    strips one board of each name gives; ``assumed_m`` the width of the rough boards where none are
    listed; ``once`` whether all of the surplus is ripped off the far edge, as it is more than the trim.
    """

    strips: tuple[Strip, ...]
    blank_width_m: Fraction
    roundings: tuple[Rounding, ...]
    left_out: tuple[str, ...]
    remarks: tuple[str, ...] = ()
    gives: tuple[tuple[str, int], ...] = ()
    assumed_m: Fraction | None = None
    once: bool = False

    @property
    def used(self) -> tuple[tuple[str, int, int], ...]:
        """Name of each board, how many of it are cut into, and the strips that they give to this panel."""
        counts = {name: sum(strip.board == name for strip in self.strips) for name, _ in self.gives}
        return tuple((name, ceil(counts[name] / each), counts[name]) for name, each in self.gives if counts[name])

    @property
    def bought(self) -> int:
        """How many boards are still to be bought for it."""
        return sum(count for name, count, _ in self.used if name == TO_BUY)

    @property
    def glued_m(self) -> Fraction:
        """Width of all strips together, m."""
        return sum((strip.width_m for strip in self.strips), Fraction(0))

    @property
    def surplus_m(self) -> Fraction:
        """Width beyond the blank, m: half is ripped off each edge, or all of it off the far one."""
        return self.glued_m - self.blank_width_m

    @property
    def ripped_m(self) -> tuple[Fraction, Fraction]:
        """How much of the surplus is ripped off the first edge and off the far one, m."""
        return (Fraction(0), self.surplus_m) if self.once else (self.surplus_m / 2, self.surplus_m / 2)

    @property
    def joints_m(self) -> tuple[Fraction, ...]:
        """Glue lines, from the edge of the blank, m."""
        at, found = -self.ripped_m[0], []
        for strip in self.strips[:-1]:
            at += strip.width_m
            found.append(at)
        return tuple(found)

    @property
    def division(self) -> Division:
        """What is left of each strip in the blank, and the surplus ripped off."""
        near, far = self.ripped_m
        sizes = [strip.width_m for strip in self.strips]
        sizes[0] -= near
        sizes[-1] -= far
        parts = [
            Part(strip.board, "piece", size, n)
            for n, (strip, size) in enumerate(zip(self.strips, sizes, strict=True), 1)
        ]
        spare = [Part("surplus", "spare", ripped) for ripped in (near, far)]
        return Division("width of the panel", (spare[0], *parts, spare[1]))


def boards_for(
    blank: Blank,
    stock: Sequence[StockBoard],
    *,
    equal_widths: bool = False,
    widest: object = None,
    rule: str = "1/16 in",
    practice: ShopPractice | None = None,
) -> BoardsPlan:
    """The fewest strips from the stock on hand that make up the blank's width, and among those the least surplus.

    ``equal_widths`` rips all to one width; ``widest`` no strip is wider than this rough (a jointer, or to keep cup
    small): wider boards are ripped first, in strips alike or, a little too wide, down to it. A long board gives
    several strips. Strips are laid widest in the middle. Raises :class:`InputError` for bad input and where the stock does not reach.

    >>> from woodlib.setting_out.blank import blank_for
    >>> blank = blank_for("44 in", "20 in", "7/8 in")
    >>> stock = [StockBoard("A", "7-1/4 in", "8 ft", "1 in"), StockBoard("B", "6-1/2 in", "50 in", "1 in", 2)]
    >>> plan = boards_for(blank, stock)
    >>> [strip.board for strip in plan.strips], both(plan.surplus_m, 64, 0.1)
    (['B', 'A', 'A'], '1/16 in (1.6 mm)')
    """
    problems = Problems()
    practice = check_practice(problems, practice)
    check_kind(problems, "blank", blank, Blank, "blank_for('44 in', '20 in', '7/8 in')")
    listed = list(stock) if isinstance(stock, list | tuple) else [stock]
    for number, board in enumerate(listed, start=1):
        check_kind(
            problems, f"board {number} of the stock", board, StockBoard, "StockBoard('A', '6 in', '8 ft', '1 in')"
        )
    if not 1 <= len(listed) <= MOST_BOARDS:
        problems.add(f"stock holds {len(listed)} boards; give 1 to {MOST_BOARDS}.")
    check_rule(problems, rule)
    widest_m = None if widest is None else read_exact(problems, "widest strip", widest)
    problems.raise_if_any()
    first = _first(rule)
    strips, left_out = _strips(blank, listed, widest_m, practice, first)
    needed, gives = blank.width.total_m, _gives(blank, listed, widest_m, practice)
    if equal_widths:
        return replace(_equal(strips, needed, rule, left_out), gives=gives)
    chosen, remarks = _least_surplus(strips, needed, first)
    once = sum(strip.width_m for strip in chosen) - needed > practice.edge_trim_m
    return BoardsPlan(_widest_inside(chosen), needed, (), left_out, remarks, gives, once=once)


def _first(rule: str) -> str:
    return "customary" if rule.endswith("in") else "metric"


def _gives(blank: Blank, stock, widest_m: Fraction | None, practice: ShopPractice) -> tuple[tuple[str, int], ...]:
    """How many strips one board of each name gives; the least where boards that differ have one name."""
    found: dict[str, int] = {}
    for board in stock:
        each = _lengths(board, blank.length.total_m, practice) * _rips(board, widest_m, practice)
        found[board.name] = min(each, found.get(board.name, each)) if each else found.get(board.name, 0)
    return tuple((name, each) for name, each in found.items() if each)


def _lengths(board: StockBoard, length: Fraction, practice: ShopPractice) -> int:
    return int((board.length_m + practice.saw_kerf_m) // (length + practice.saw_kerf_m))


def _rips(board: StockBoard, widest_m: Fraction | None, practice: ShopPractice) -> int:
    if widest_m is None or board.width_m <= widest_m + JUST_OVER_M:
        return 1
    return max(1, ceil((board.width_m + practice.saw_kerf_m) / (widest_m + practice.saw_kerf_m)))


def _strips(
    blank: Blank, stock, widest_m: Fraction | None, practice: ShopPractice, first: str
) -> tuple[list[Strip], tuple[str, ...]]:
    """Jointed strips that the stock gives, widest first, and why boards were left out."""
    length, thickness = blank.length.total_m, blank.thickness.total_m
    strips: list[Strip] = []
    left_out: list[str] = []
    for board in stock:
        if board.thickness_m < thickness:
            have, need = both(board.thickness_m, 64, 0.1, first=first), both(thickness, 64, 0.1, "up", first)
            left_out.append(f"{board.name} is {have} thick, less than {need}")
        elif board.length_m < length:
            have, need = both(board.length_m, first=first), both(length, rounding="up", first=first)
            left_out.append(f"{board.name} is {have} long, less than {need}")
        else:
            lengths, rips = _lengths(board, length, practice), _rips(board, widest_m, practice)
            rough = (board.width_m - (rips - 1) * practice.saw_kerf_m) / rips
            width = min(rough, widest_m or rough) - 2 * practice.edge_jointing_m
            strips += [Strip(board.name, width)] * (lengths * rips * board.count if width > 0 else 0)
    strips.sort(key=lambda strip: -strip.width_m)
    if len(strips) > MOST_STRIPS:
        left_out.append(f"{len(strips) - MOST_STRIPS} of the narrowest strips, as {MOST_STRIPS} are plenty")
    return strips[:MOST_STRIPS], tuple(left_out)


def _fewest(strips: list[Strip], needed: Fraction, first: str) -> int:
    """How many of the widest strips it takes."""
    total = Fraction(0)
    for count, strip in enumerate(strips, start=1):
        total += strip.width_m
        if total >= needed:
            return count
    raise _too_little(total, needed, first)


def _too_little(total: Fraction, needed: Fraction, first: str) -> InputError:
    return InputError(
        f"stock gives {both(total, rounding='down', first=first)} of jointed width in boards long and thick enough, but the blank "
        f"needs {both(needed, rounding='up', first=first)}; add boards, or allow less trim."
    )


def _least_surplus(strips: list[Strip], needed: Fraction, first: str) -> tuple[list[Strip], tuple[str, ...]]:
    """Of the fewest strips, those with the least surplus: sums of widths, kept only while they can still reach."""
    count = _fewest(strips, needed, first)
    sums: list[dict[Fraction, tuple[int, ...]]] = [{Fraction(0): ()}, *({} for _ in range(count))]
    cut_short = False
    for place, strip in enumerate(strips):
        for taken in range(min(place, count - 1), -1, -1):
            still = (count - taken - 1) * strip.width_m  # the strips that follow are no wider than this one
            for total, chosen in sums[taken].items():
                reached = total + strip.width_m
                if reached + still >= needed and reached not in sums[taken + 1]:
                    if len(sums[taken + 1]) >= MOST_SUMS:
                        cut_short = True
                        break
                    sums[taken + 1][reached] = (*chosen, place)
    best = min(total for total in sums[count] if total >= needed)
    remarks = (
        ("The stack is so varied that not every combination was tried; this is the best of those tried.",)
        if cut_short
        else ()
    )
    return [strips[place] for place in sums[count][best]], remarks


def _equal(strips: list[Strip], needed: Fraction, rule: str, left_out: tuple[str, ...]) -> BoardsPlan:
    for count in range(_fewest(strips, needed, _first(rule)), len(strips) + 1):
        rounding = Rounding(needed / count, rule, "up")
        if strips[count - 1].width_m >= rounding.marked_m:
            chosen = tuple(Strip(strip.board, rounding.marked_m) for strip in strips[:count])
            return BoardsPlan(chosen, needed, (rounding,), left_out)
    raise InputError(
        f"stock cannot be ripped to equal strips that make up {both(needed, rounding='up', first=_first(rule))}: the narrow boards are too "
        "narrow; leave equal_widths out, or add boards."
    )


def _widest_inside(strips: list[Strip]) -> tuple[Strip, ...]:
    """Widest in the middle, so that no narrow strip sits between wide ones and the edges carry the trim."""
    left: list[Strip] = []
    right: list[Strip] = []
    for place, strip in enumerate(sorted(strips, key=lambda strip: strip.width_m)):
        (left if place % 2 == 0 else right).append(strip)
    return (*left, *right[::-1])
