"""What to buy: board feet and cubic metres, with waste, and the rough thickness that is sold."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil
from typing import Any

from ..door import check_kind
from ..errors import InputError, Problems
from ..shop_sizes import TABLES, ShopSize, at_least, sold
from ..units import both, shown
from ..units.exact import INCH, fine_text, read_exact, read_whole
from .blank import Blank
from .practice import ShopPractice, check_practice

BOARD_FOOT_M3 = 144 * INCH**3
"""A board foot is a foot square and an inch thick: 144 cubic inches."""

RESAWN_SHARE = Fraction(3, 4)  # of what is sold: below it much would be planed away; common practice, no source


def rough_for(needed: object, system: str = "customary") -> ShopSize:
    """The thinnest rough thickness that is sold and holds what is needed. Raises :class:`InputError`.

    >>> rough_for("15/16 in").called, rough_for("25 mm", "metric").called
    ('4/4', '27 mm')
    """
    problems = Problems()
    needed_m = read_exact(problems, "thickness needed", needed, high=Fraction(1, 2))
    _check_system(problems, system)
    problems.raise_if_any()
    boards = sold("rough thickness", system)
    if rough := at_least(boards, needed_m):
        return rough
    raise InputError(
        f"thickness needed is {both(needed_m, 64, 0.1, 'up', system)}, more than the thickest that is sold, "
        f"{boards[-1].called}; glue it up from two layers."
    )


def thick_enough(blank: Blank, least: ShopSize, practice: ShopPractice) -> ShopSize:
    """The next thickness that is sold where the least leaves a long board too little for flattening, unless that is measured.

    >>> from .blank import blank_for
    >>> tight = blank_for("1800 mm", "400 mm", "26 mm", practice=ShopPractice.of("metric"))
    >>> thick_enough(tight, rough_for(tight.thickness.total_m, "metric"), ShopPractice.of("metric")).text
    '34 mm'
    """
    spare = least.size_m - blank.thickness.total_m
    measured = blank.thickness.of_kind_m("flattening")
    if measured or spare >= practice.least_planing_m or blank.length.total_m < practice.long_board_m:
        return least
    return next((size for size in sold("rough thickness", least.first) if size.size_m > least.size_m), least)


def board_feet(thickness: object, width: object, length: object) -> Fraction:
    """Board feet of one board, exact; stock under an inch is counted as an inch (common practice, no source).

    >>> float(board_feet("1 in", "12 in", "12 in")), float(board_feet("8/4 in", "6 in", "8 ft"))
    (1.0, 8.0)
    """
    problems = Problems()
    sizes = [
        read_exact(problems, name, value)
        for name, value in (("thickness", thickness), ("width", width), ("length", length))
    ]
    problems.raise_if_any()
    thick, wide, long = sizes
    return max(thick, INCH) * wide * long / BOARD_FOOT_M3


@dataclass(frozen=True)
class Purchase:
    """What to buy for one or more blanks alike: net, and with waste.

    ``board_feet`` and ``volume_m3`` with waste, exact; ``net_board_feet`` and ``net_m3`` without; ``needed_m`` thickness that
    the thickest of its blanks needs; ``tight`` the thickness that would do if long boards lay flat, and is passed over.
    """

    rough: ShopSize
    net_board_feet: Fraction
    net_m3: Fraction
    waste: Fraction
    needed_m: Fraction
    tight: ShopSize | None = None

    @property
    def board_feet(self) -> Fraction:
        """Board feet with waste."""
        return self.net_board_feet * (1 + self.waste)

    @property
    def volume_m3(self) -> Fraction:
        """Cubic metres with waste."""
        return self.net_m3 * (1 + self.waste)

    @property
    def says(self) -> str:
        """What to ask the yard for, rounded up once: whole board feet, thousandths of a cubic metre."""
        feet, litres = ceil(self.board_feet), ceil(self.volume_m3 * 1000)
        count = f"{feet} board {'foot' if feet == 1 else 'feet'}"
        thin = self.needed_m <= RESAWN_SHARE * self.rough.size_m
        resaw = ", or resaw thicker boards" if thin else ""
        waste = f"{float(100 * self.waste):.0f} % for waste"
        return f"{self._bought(count, resaw, waste, litres)}{self._why_thicker()}"

    def _why_thicker(self) -> str:
        if self.tight is None:
            return ""
        spare = fine_text(self.tight.size_m - self.needed_m, self.tight.first, "down")
        return f" {self.tight.called} would leave {spare} beside planing, which is little for boards so long: flatten one first if you try it."

    def _bought(self, count: str, resaw: str, waste: str, litres: int) -> str:
        if self.rough.first == "metric":
            return (
                f"Buy {litres / 1000:.3f} m3 ({count}) of {self.rough.called}{resaw}: the blanks hold {float(self.net_m3):.4f} m3, "
                f"with {waste} {float(self.volume_m3):.4f} m3, rounded up."
            )
        return (
            f"Buy {count} ({litres / 1000:.3f} m3) of {self.rough.called}{resaw}: the blanks hold {float(self.net_board_feet):.1f}, "
            f"with {waste} {float(self.board_feet):.1f}, rounded up."
        )


def to_buy(
    blank: Blank,
    *,
    count: int = 1,
    waste: object = None,
    system: str = "customary",
    practice: ShopPractice | None = None,
) -> Purchase:
    """Board feet and cubic metres for a blank, in the rough thickness that is sold.

    ``waste`` as a share of the blank, the practice's unless given; ``count`` blanks alike; jointing of the boards'
    edges counts as waste. Raises :class:`InputError` with a sentence for each bad input.

    >>> from woodlib.setting_out.blank import blank_for
    >>> to_buy(blank_for("44 in", "20 in", "7/8 in"), waste=0.25).says
    'Buy 9 board feet (0.020 m3) of 4/4: the blanks hold 6.7, with 25 % for waste 8.3, rounded up.'
    """
    problems = Problems()
    practice = check_practice(problems, practice)
    check_kind(problems, "blank", blank, Blank, "blank_for('44 in', '20 in', '7/8 in')")
    number = read_whole(problems, "count of blanks", count, 1, 1000)
    _check_system(problems, system)
    share = practice.buying_waste if waste is None else _share(problems, waste)
    problems.raise_if_any()
    needed = blank.thickness.total_m
    least = rough_for(needed, system)
    rough = thick_enough(blank, least, practice)
    area = number * blank.length.total_m * blank.width.total_m
    feet = area * max(rough.size_m, INCH) / BOARD_FOOT_M3
    return Purchase(rough, feet, area * rough.size_m, share, needed, least if rough != least else None)


def _share(problems: Problems, waste: Any) -> Fraction:
    try:
        return ShopPractice(buying_waste=waste).buying_waste
    except InputError as error:
        problems.absorb(error)
        return Fraction(0)


def _check_system(problems: Problems, system: object) -> None:
    if system not in TABLES:
        problems.add(f"system is {shown(system)}; it must be customary or metric.")


def to_buy_all(
    blanks: Sequence[tuple[Blank, int]],
    *,
    system: str = "customary",
    practice: ShopPractice | None = None,
) -> tuple[Purchase, ...]:
    """What to buy for several blanks, each with its count: together for each rough thickness, thinnest first.

    >>> from woodlib.setting_out.blank import blank_for
    >>> panel, leg = blank_for("44 in", "20 in", "7/8 in"), blank_for("18 in", "2 in", "1-3/4 in")
    >>> [(buy.rough.called, round(float(buy.net_board_feet), 2)) for buy in to_buy_all([(panel, 1), (leg, 4)])]
    [('4/4', 6.66), ('8/4', 3.09)]
    """
    together: dict[ShopSize, Purchase] = {}
    for blank, count in blanks:
        one = to_buy(blank, count=count, system=system, practice=practice)
        if one.rough in together:
            other = together[one.rough]
            one = replace(
                one,
                net_board_feet=one.net_board_feet + other.net_board_feet,
                net_m3=one.net_m3 + other.net_m3,
                needed_m=max(one.needed_m, other.needed_m),
            )
        together[one.rough] = one
    return tuple(together[rough] for rough in sorted(together, key=lambda rough: rough.size_m))
