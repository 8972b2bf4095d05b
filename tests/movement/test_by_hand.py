"""Small cases worked by hand, each for a step of the calculation that larger cases let pass unseen."""

import numpy as np
import pytest

from woodlib.air.year import MID_MONTH, Year
from woodlib.moisture.hysteresis import swing_factor
from woodlib.moisture.stock import Stock
from woodlib.moisture.swing import swing_reach
from woodlib.movement.board import Board, moisture_remarks
from woodlib.movement.glue_up import glue_up, panel_line
from woodlib.movement.measured_piece import Learned, MeasuredPiece, learn
from woodlib.movement.months import monthly_moisture, months_inside
from woodlib.movement.panel import Panel, PanelBoard
from woodlib.movement.spread import NINETY_PERCENT_HALF_WIDTH, NO_DOUBTS, Doubts, cumulants, raw_moments
from woodlib.movement.wood import Wood, wood_of

ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)


def test_cumulants_and_moments_undo_each_other():
    given = np.array([0.7, 0.4, -0.3, 0.2])
    assert cumulants(raw_moments(given)) == pytest.approx(given, rel=1e-12)


def test_trees_of_unlike_boards_add_by_how_far_each_moves():
    """20 mm of a flatsawn board, 300 mm of a quartersawn one, each of its own tree: the root of the sum of squares."""
    panel = Panel(ASH, [PanelBoard(0.02, 0), PanelBoard(0.30, 90)], likeness=0.0)
    found = panel.change(8, 12, Doubts(0.15, 0, 0, 0))
    alone = np.array([0.02 * 0.00274, 0.30 * 0.00169]) * 4.0
    half = NINETY_PERCENT_HALF_WIDTH * 0.15 * float(np.hypot(*alone))
    assert found.mid_m == pytest.approx(alone.sum(), rel=1e-12)
    assert found.high_m - found.mid_m == pytest.approx(half, rel=0.01)


def test_a_panel_kept_at_no_moisture_cannot_be_drier():
    doubts = Doubts(0.0, 0.0, 2.0, 0.0)
    found = Panel(ASH, [PanelBoard(0.1, 0)]).change(0.0, 5.0, doubts)
    step = 2.0 / NINETY_PERCENT_HALF_WIDTH
    up, down = (Panel(ASH, [PanelBoard(0.1, 0)]).change_m(start, 5.0) for start in (step, 0.0))
    assert found.high_m - found.mid_m == pytest.approx(NINETY_PERCENT_HALF_WIDTH * abs(up - down) / 2, rel=0.02)


def test_a_strongly_curved_strip_keeps_its_length_along_the_arc():
    """An arc of 0.1 m radius and 0.1 m length: its ends lie 2 r sin(1/2) apart, its middle r (1 - cos(1/2)) off."""
    arc = panel_line([0.1], [10.0], points=5)
    assert arc.across_m[-1] - arc.across_m[0] == pytest.approx(0.2 * np.sin(0.5), rel=1e-12)
    assert np.ptp(arc.height_m) == pytest.approx(0.1 * (1 - np.cos(0.5)), rel=1e-9)


def test_laid_in_turn_the_first_strip_lies_as_it_did_and_the_next_the_other_way():
    panel = glue_up([0.1, 0.1], [0.08, 0.08], -0.0054, -0.0110)
    bend = [np.diff(line.height_m, 2) for line in (panel.same_way, panel.in_turn)]
    assert np.sign(bend[1][:39]) == pytest.approx(np.sign(bend[0][:39]))
    assert np.sign(bend[1][-39:]) == pytest.approx(-np.sign(bend[0][-39:]))


def test_out_of_flat_is_the_least_over_every_way_to_lay_it():
    """A step at one end: laid on its long flat part it rises by the step; tilted, by less, as a sheet of tries shows."""
    line = panel_line([0.1, 0.1, 0.1], [0.0, 0.0, 3.0])
    tries = [np.ptp(line.height_m - slope * line.across_m) for slope in np.linspace(-0.5, 0.5, 20001)]
    assert line.out_of_flat_m == pytest.approx(min(tries), abs=1e-6)


def test_the_wood_follows_late_and_less_and_the_year_stays_twelve_months_long():
    """Air that swings as a sine: the wood's is the same sine, smaller by the two shares and late by the delay."""
    phase = 2 * np.pi * np.arange(12) / 12
    air = Year(MID_MONTH, np.full(12, 21.0), 45.0 + 8.0 * np.cos(phase), "room")
    stock = Stock(0.022, 0.68)
    inside, doubt = months_inside(air, stock)
    mc = np.asarray(monthly_moisture(air).mc_percent)
    reach = swing_reach(stock, float(mc.mean()), 21.0)["year"]
    assert inside.mc_percent.shape == (12,) and doubt > 0
    late = np.sum((inside.mc_percent - inside.mc_percent.mean()) * np.exp(-1j * phase))
    early = np.sum((mc - mc.mean()) * np.exp(-1j * phase))
    days = -np.angle(late / early) / (2 * np.pi) * 365
    assert days == pytest.approx(reach.delay_days.mid, abs=1.0)
    kept = reach.kept.mid * float(swing_factor(mc.min(), mc.max())[1])
    assert np.ptp(inside.mc_percent) == pytest.approx(kept * np.ptp(mc), rel=1e-6)
    assert inside.mc_percent.mean() == pytest.approx(mc.mean(), abs=0.05)


def test_air_that_does_not_swing_is_taken_as_it_is():
    still = Year(MID_MONTH, np.full(12, 21.0), np.full(12, 45.0), "cellar")
    assert months_inside(still, Stock(0.022, 0.68))[1] == 0.0


@pytest.mark.parametrize(("moistures", "said"), [((6.0, 14.0), 0), ((5.9, 8.0), 1), ((8.0, 14.1), 1), ((8.0, 31.0), 2)])
def test_where_the_law_changes_is_said(moistures, said):
    assert len(moisture_remarks(wood_of("white ash"), *moistures)) == said


def test_straight_grain_and_the_average_of_the_species_are_usual():
    plain = Board(ASH, 0.2, 0.02, 1.0)
    assert (plain.ring_angle_deg, plain.grain_slope_deg) == (0.0, 0.0)
    assert float(plain.strains(12, 8)[1]) == pytest.approx(-0.01096, rel=1e-9)
    assert PanelBoard(0.2, pith_depth_m=0.1).pith_offset_m == 0.0


def test_a_leaning_ring_is_doubted_to_both_sides():
    """At 45 degrees the strain changes by (T - R) sin(2t) for each radian: 5 degrees nine in ten are 3.04 one in three."""
    wood, piece = ASH, MeasuredPiece(0.1, 0.0991, 12.0, 8.0, 45.0, ruler_m=1e-6, moisture_percent=0.0)
    learned = learn(wood, [piece], Doubts(0.15, 0.0, 0.0, 0.0))
    tilt = np.radians(5.0 / NINETY_PERCENT_HALF_WIDTH)
    strain = 4 * (0.00274 + 0.00169) / 2
    rings = 4 * (0.00274 - 0.00169) / 2 * np.sin(2 * tilt)
    assert learned.pieces[0][1] == pytest.approx(rings / strain, rel=1e-3)


def test_no_doubt_at_all_is_no_range():
    found = Panel(ASH, [PanelBoard(0.1, 0)]).change(8, 12, NO_DOUBTS)
    assert found.low_m == found.mid_m == found.high_m


def test_what_pieces_say_runs_from_the_lower_to_the_higher():
    """0.9 of the average, give or take 1.645 times 0.05; without pieces 1.645 times 0.15."""
    learned = Learned(ASH, Doubts(), 0.9, 0.05, ((0.9, 0.05),))
    assert "90 % of the average of white ash (nine in ten: 82 % to 98 %); without, 75 % to 125 %" in learned.in_words()
