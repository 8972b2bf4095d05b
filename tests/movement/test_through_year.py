"""Movement month by month."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air.year import Year
from woodlib.movement.board import Board
from woodlib.movement.months import MonthlyMoisture, monthly_moisture
from woodlib.movement.spread import NO_DOUBTS, Doubts
from woodlib.movement.through_year import movement_through_year
from woodlib.movement.wood import Wood

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)
BOARD = Board(ASH, 0.5, 0.02, 1.0)
twelve = st.lists(st.floats(2, 25), min_size=12, max_size=12)


def test_hand_worked_year():
    # 500 mm, stock 8 %; driest 6 %: 500*0.00274*-2 = -2.74; dampest 12 %: 500*0.00274*4 = 5.48; swing 8.22 mm.
    year = movement_through_year(BOARD, 8, [6, 6, 7, 8, 9, 10, 12, 11, 10, 9, 8, 7])
    found = [1000 * m.mid_m for m in (year.driest, year.dampest, year.swing)]
    assert found == pytest.approx([-2.74, 5.48, 8.22], abs=1e-9)
    assert year.months.names[year.months.dampest] == "July"
    assert any("in full" in remark for remark in year.remarks)


@given(twelve, st.floats(3, 20))
def test_every_month_lies_between_driest_and_dampest(emc, stock):
    year = movement_through_year(BOARD, stock, emc, NO_DOUBTS)
    mids = [movement.mid_m for movement in year.movements]
    assert min(mids) == pytest.approx(year.driest.mid_m) and max(mids) == pytest.approx(year.dampest.mid_m)
    assert year.swing.mid_m == pytest.approx(max(mids) - min(mids), abs=1e-12) and year.swing.mid_m >= 0


@given(twelve, st.floats(3, 20))
def test_months_without_doubt_are_single_changes_of_the_board(emc, stock):
    year = movement_through_year(BOARD, stock, emc, NO_DOUBTS)
    for month, movement in zip(emc, year.movements, strict=True):
        assert movement.mid_m == pytest.approx(BOARD.change(stock, month).width_m, abs=1e-12)


def test_the_meter_error_cancels_in_the_swing():
    emc = [6.0] * 6 + [12.0] * 6
    year = movement_through_year(BOARD, 9, emc, Doubts(0, 0, 2.0, 0))
    assert year.driest.high_m - year.driest.low_m > 0.004
    assert year.swing.high_m - year.swing.low_m < 0.0003


def test_a_year_of_air_gives_the_same_as_its_monthly_moisture():
    air = Year.from_seasons(winter=(20, 30), summer=(25, 60))
    from_air, from_numbers = (
        movement_through_year(BOARD, 8, source) for source in (air, [month.emc_percent for month in air.months()])
    )
    assert from_air.driest == from_numbers.driest
    assert monthly_moisture(air).rh_percent is not None


def test_a_partial_year_says_so():
    air = Year([15.0, 196.0], [20.0, 24.0], [30.0, 60.0], "two readings")
    assert any("missing" in remark for remark in movement_through_year(BOARD, 8, air).remarks)


def test_steady_air_has_no_swing():
    months = MonthlyMoisture(("May",), np.array([8.0]))
    year = movement_through_year(BOARD, 8, months)
    assert year.swing.mid_m == 0.0
