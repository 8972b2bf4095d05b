"""Blanks nested on the boards on hand: the panel's strips first, the other parts on what their ends and edges leave."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from .blank import Blank
from .boards import TO_BUY, BoardsPlan, StockBoard
from .practice import ShopPractice

Span = tuple[Fraction, Fraction]


@dataclass(frozen=True)
class Laid:
    """One blank on a board: ``copy`` tells boards of one name apart, from 1; spans from the board's end and edge, m."""

    board: str
    copy: int
    piece: str
    along: Span
    across: Span


@dataclass(frozen=True)
class Nested:
    """What lies on which board, board by board from its end on; ``missing`` what is left to buy, with its count."""

    laid: tuple[Laid, ...]
    missing: tuple[tuple[str, Blank, int], ...]


@dataclass
class _Free:
    """A piece of a board that nothing lies on yet."""

    board: StockBoard
    copy: int
    order: int
    along: Span
    across: Span

    @property
    def size(self) -> tuple[Fraction, Fraction]:
        return self.along[1] - self.along[0], self.across[1] - self.across[0]


def nest(
    boards: BoardsPlan | None,
    panel: Blank | None,
    others: Sequence[tuple[str, Blank, int]],
    stock: Sequence[StockBoard],
    practice: ShopPractice,
) -> Nested:
    """Lay out the strips of a panel as they were chosen, and then each other blank on the smallest rest that takes it.

    Boards are crosscut first and ripped after; a kerf lies between any two blanks. ``others`` names, blanks and counts.

    >>> from .blank import strip_blank
    >>> rail = strip_blank("rail", tuple(Fraction(mm, 1000) for mm in (400, 45, 20)))
    >>> board = StockBoard("A", "160 mm", "1 m", "25 mm")
    >>> found = nest(None, None, [("rail", rail, 8)], [board], ShopPractice())
    >>> len(found.laid), [(name, count) for name, _, count in found.missing]
    (6, [('rail', 2)])
    """
    free = _whole(stock)
    laid: list[Laid] = []
    long = panel.length.total_m if panel else Fraction(0)
    for number, strip in enumerate(boards.strips if boards and panel else (), start=1):
        size = long, strip.width_m + 2 * practice.edge_jointing_m
        mine = [rest for rest in free if rest.board.name == strip.board and strip.board != TO_BUY]
        found = min((rest for rest in mine if _fits(size, rest)), key=lambda rest: rest.order, default=None)
        if found:
            laid.append(_lay(f"strip {number}", size, found, free, practice))
    missing = []
    for name, blank, count in sorted(others, key=lambda other: -other[1].length.total_m):
        size = blank.length.total_m, blank.width.total_m
        lacking = 0
        for _ in range(count):
            thick = [rest for rest in free if rest.board.thickness_m >= blank.thickness.total_m and _fits(size, rest)]
            if thick:
                best = min(thick, key=lambda rest: (rest.board.thickness_m, rest.size[0] * rest.size[1], rest.order))
                laid.append(_lay(name, size, best, free, practice))
            else:
                lacking += 1
        missing += [(name, blank, lacking)] if lacking else []
    names = [board.name for board in stock]
    laid.sort(key=lambda one: (names.index(one.board), one.copy, one.along, one.across))
    return Nested(tuple(laid), tuple(missing))


def _whole(stock: Sequence[StockBoard]) -> list[_Free]:
    boards = [(board, copy) for board in stock for copy in range(1, board.count + 1)]
    return [
        _Free(board, copy, order, (Fraction(0), board.length_m), (Fraction(0), board.width_m))
        for order, (board, copy) in enumerate(boards)
    ]


def _fits(size: tuple[Fraction, Fraction], rest: _Free) -> bool:
    return size[0] <= rest.size[0] and size[1] <= rest.size[1]


def _lay(name: str, size: tuple[Fraction, Fraction], rest: _Free, free: list[_Free], practice: ShopPractice) -> Laid:
    """Lay one blank into the corner of a rest, and keep what is left beyond it and beside it."""
    (start, end), (near, far) = rest.along, rest.across
    along, across = (start, start + size[0]), (near, near + size[1])
    free.remove(rest)
    kerf = practice.saw_kerf_m
    for left_along, left_across in (((along[1] + kerf, end), (near, far)), (along, (across[1] + kerf, far))):
        if left_along[0] < left_along[1] and left_across[0] < left_across[1]:
            free.append(_Free(rest.board, rest.copy, rest.order, left_along, left_across))
    return Laid(rest.board.name, rest.copy, name, along, across)
