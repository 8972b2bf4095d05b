"""What must not matter: the unit, which side is left, a saw cut along a board, the order of boards, when a year begins."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air.year import DAYS, Year
from woodlib.movement.board import Board
from woodlib.movement.panel import Panel, PanelBoard
from woodlib.movement.spread import width_movement
from woodlib.movement.wood import wood_of

OAK = wood_of("white oak")
moistures = st.floats(5, 18)
boards = st.lists(st.tuples(st.floats(0.03, 0.3), st.floats(0.03, 0.5), st.floats(-0.2, 0.2)), min_size=1, max_size=6)


def panel(rows):
    return Panel(OAK, [PanelBoard(width, pith_depth_m=depth, pith_offset_m=offset) for width, depth, offset in rows])


@given(boards, moistures, moistures, st.randoms(use_true_random=False))
def test_neither_side_nor_order_matters(rows, start, end, chance):
    before = panel(rows).change(start, end)
    mixed = [(width, depth, -offset) for width, depth, offset in chance.sample(rows, len(rows))]
    after = panel(mixed).change(start, end)
    assert (after.low_m, after.mid_m, after.high_m) == pytest.approx(
        (before.low_m, before.mid_m, before.high_m), rel=1e-9, abs=1e-12
    )


@given(st.floats(0.06, 0.4), st.floats(0.03, 0.5), st.floats(-0.2, 0.2), st.floats(0.1, 0.9), moistures, moistures)
def test_a_saw_cut_along_a_board_changes_nothing(width, depth, offset, share, start, end):
    first, second = share * width, (1 - share) * width
    halves = [(first, depth, offset - second / 2), (second, depth, offset + first / 2)]
    # The whole board also cups, and is measured straight across its cup: shorter by the square of the strain at most.
    cup = width * OAK.axis_strains(start, end)[2] ** 2
    assert panel(halves).change_m(start, end) == pytest.approx(
        panel([(width, depth, offset)]).change_m(start, end), abs=cup + 1e-12
    )


@given(st.integers(8, 480), moistures, moistures)
def test_the_unit_does_not_matter(sixteenths, start, end):
    inches, millimetres = f"{sixteenths}/16 in", f"{sixteenths * 25.4 / 16!r} mm"
    one, other = (
        width_movement(Board("white oak", width, "20 mm", "1 m", ring_angle_deg=30), start, end)
        for width in (inches, millimetres)
    )
    assert (one.low_m, one.mid_m, one.high_m) == pytest.approx((other.low_m, other.mid_m, other.high_m), rel=1e-9)


@pytest.mark.parametrize("months", [1, 5, 11])
def test_when_a_year_begins_does_not_matter(months):
    day = np.arange(365) + 0.5
    humidity = 45 + 15 * np.cos(2 * np.pi * (day - 200) / DAYS)
    shift = round(months * DAYS / 12)
    here, there = (Year(day, np.full(365, 21.0), rh, "room") for rh in (humidity, np.roll(humidity, shift)))
    assert there.emc_percent() == pytest.approx(np.roll(here.emc_percent(), shift), abs=1e-12)
