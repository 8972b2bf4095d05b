"""The strips of a panel in the shop as it is: from boards on hand that fit the jointer, with boards bought where they lack."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from functools import partial
from math import ceil

from ..errors import InputError
from ..units import both
from ..units.exact import Rounding
from .blank import Blank
from .boards import MOST_BOARDS, TO_BUY, BoardsPlan, StockBoard, Strip, boards_for
from .practice import ShopPractice


def strips_of(
    blank: Blank,
    stock: Sequence[StockBoard],
    rule: str,
    practice: ShopPractice,
    *,
    equal_widths: bool = False,
    all_there: bool = False,
) -> tuple[BoardsPlan, str]:
    """The strips of a panel, and what is missing where the boards on hand do not reach.

    Strips fit the jointer; where boards do not reach when they are ripped for it, they stay whole and are flattened by
    hand. ``all_there`` that no board may be bought: then :class:`InputError` is raised instead.
    """
    if not stock:
        return ordinary_boards(blank, rule, practice), ""
    first = "customary" if rule.endswith("in") else "metric"
    take = partial(boards_for, blank, stock, equal_widths=equal_widths, rule=rule, practice=practice)
    try:
        return take(widest=practice.jointer_m), ""
    except InputError:
        pass
    try:
        whole = take()
        return replace(whole, remarks=(*whole.remarks, _by_hand(practice, first))), ""
    except InputError as error:
        if all_there:
            raise
        boards = boards_with_more(blank, stock, rule, practice, equal_widths=equal_widths)
        more, wide = boards.bought, both(bought_m(practice), first=first)
        long = both(blank.length.total_m, rounding="up", first=first)
        buy = f"{more} more board{'s' if more > 1 else ''}, {wide} wide and {long} long"
        return boards, f"The boards on hand do not make this panel: {error} Set out with {buy}, to be bought."


def bought_m(practice: ShopPractice) -> Fraction:
    """Width of a board that is bought: an ordinary one, if the jointer takes it."""
    return min(practice.ordinary_board_m, practice.jointer_m)


def _by_hand(practice: ShopPractice, first: str) -> str:
    return (
        f"Boards wider than the jointer, {both(practice.jointer_m, first=first)}, are flattened by hand: ripped for it they "
        "do not reach."
    )


def ordinary_boards(blank: Blank, rule: str, practice: ShopPractice) -> BoardsPlan:
    """Equal strips from boards of an ordinary width, for a panel whose boards are not listed.

    >>> from woodlib.setting_out.blank import blank_for
    >>> plan = ordinary_boards(blank_for("44 in", "20 in", "7/8 in"), "1/16 in", ShopPractice())
    >>> len(plan.strips), both(plan.strips[0].width_m)
    (4, '5-3/16 in (132 mm)')
    """
    wide, needed = bought_m(practice), blank.width.total_m
    count = ceil(needed / (wide - 2 * practice.edge_jointing_m))
    rounding = Rounding(needed / count, rule, "up")
    strips = (Strip("ordinary board", rounding.marked_m),) * count
    return BoardsPlan(strips, needed, (rounding,), (), gives=(("ordinary board", 1),), assumed_m=wide)


def boards_with_more(
    blank: Blank, stock: Sequence[StockBoard], rule: str, practice: ShopPractice, *, equal_widths: bool = False
) -> BoardsPlan:
    """Strips where the boards on hand do not reach: the fewest boards of an ordinary width are bought beside them.

    >>> from woodlib.setting_out.blank import blank_for
    >>> blank = blank_for("44 in", "20 in", "7/8 in")
    >>> stock = [StockBoard("A", "7 in", "8 ft", "1 in"), StockBoard("B", "6 in", "20 in", "1 in", 2)]
    >>> boards_with_more(blank, stock, "1/16 in", ShopPractice()).used
    (('A', 1, 2), ('board to buy', 2, 2))
    """
    wide, listed = bought_m(practice), list(stock)[: MOST_BOARDS - 1]
    most = ceil(blank.width.total_m / (wide - 2 * practice.edge_jointing_m))
    for count in range(1, most + 1):
        more = StockBoard(TO_BUY, wide, blank.length.total_m, blank.thickness.total_m, count)
        try:
            return boards_for(
                blank,
                [*listed, more],
                equal_widths=equal_widths,
                widest=practice.jointer_m,
                rule=rule,
                practice=practice,
            )
        except InputError:
            if count == most:
                raise
    raise AssertionError("ordinary boards alone reach")
