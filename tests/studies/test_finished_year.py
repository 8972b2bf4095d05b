"""A year of wood under a finish, held against the simulation of a settled year."""

from __future__ import annotations

import numpy as np
import pytest

from woodlib.air.year import Year
from woodlib.handout.replay import freeze_checked
from woodlib.moisture.finishes import BARE, find_finish
from woodlib.moisture.stock import Stock
from woodlib.moisture.swing import year_inside
from woodlib.picture.scene import Circle, Line, flatten_points, walk
from woodlib.studies import find_study
from woodlib.studies.finished_year import FINISHES, THICKNESSES, finished_year, kept_out, reach_of


def test_it_freezes():
    assert freeze_checked(finished_year)
    assert find_study("finished-year") is finished_year


@pytest.mark.parametrize(
    "state", list(finished_year.corners())[::5], ids=lambda state: "-".join(map(str, state.values()))
)
def test_corners_are_finite_and_on_the_sheet(state):
    answer = finished_year.answer(**state)
    for mark in walk(answer.picture.marks):
        if isinstance(mark, Line) and not isinstance(mark, Circle):
            flat = np.array([float(value) for value in flatten_points(mark.points)])
            assert (
                np.isfinite(flat).all() and flat[::2].max() <= 720 and 0 <= flat[1::2].min() <= flat[1::2].max() <= 400
            )
    assert "come and go" in answer.lines()[0]


@pytest.mark.parametrize("thickness", THICKNESSES)
def test_more_finish_keeps_more_out_and_later(thickness):
    shares = [kept_out(finish, thickness) for finish in FINISHES]
    late = [reach_of(finish, thickness).delay_days.mid for finish in FINISHES]
    assert shares[0] == 0.0 and shares == sorted(shares) and late == sorted(late) and shares[-1] < 40


def test_the_wave_in_closed_form_keeps_what_the_simulated_year_keeps():
    """7/8 in oak, bare and varnished: within 5 % of the swing, since the simulation lets its coefficient vary."""
    year = Year.from_seasons(winter=(21, 25), spring=(21, 42), summer=(21, 62), autumn=(21, 42))
    for finish, coat in (("bare", BARE), ("varnish", find_finish("urethane varnish", 3))):
        simulated = year_inside(Stock.of("white oak", 0.875 * 0.0254, first_finish=coat, second_finish=coat), year)
        assert reach_of(finish, "0.875").kept.mid == pytest.approx(simulated.kept.mid, abs=0.05)
