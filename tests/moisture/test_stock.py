"""Following a board: ranges, error bound, finishes per face, answers about rest, storage and the year."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from references.resting import end_grain_reach_m, fraction_with_ends

from woodlib.air.year import Year
from woodlib.errors import InputError
from woodlib.moisture.drive import air_log, air_of_year, in_turn, steady_air
from woodlib.moisture.equilibrium import emc_percent
from woodlib.moisture.finishes import BARE, CLOSED, all_finishes, find_finish, finish_names
from woodlib.moisture.following import follow
from woodlib.moisture.resting import resting, storage
from woodlib.moisture.stock import Stock
from woodlib.moisture.swing import coat_by_coat, swing_reach, year_inside

YEAR = Year.from_seasons(winter=(20, 30), summer=(24, 60))
thickness = st.floats(0.004, 0.045)
gravity = st.floats(0.35, 0.8)


def test_error_bound_holds_against_a_far_finer_run():
    drive = steady_air(20, 40, 5).then(steady_air(22, 70, 20))
    stock = Stock(0.019, 0.6)
    bounded = follow(stock, drive, 8.0, tolerance_percent=0.01)
    fine = follow(stock, drive, 8.0, step_hours=0.1)
    truth = np.stack([np.interp(bounded.days, fine.days, fine.mean_percent[:, k]) for k in range(3)], axis=1)
    assert bounded.error_percent <= 0.01
    assert np.abs(bounded.mean_percent - truth).max() <= bounded.error_percent


def test_tolerance_out_of_reach_is_said():
    with pytest.raises(InputError, match="tolerance_percent is 1e-06 %.*allow a larger error"):
        follow(Stock(0.002, 0.4), steady_air(20, 80, 30), 5.0, step_hours=240, tolerance_percent=1e-6)


def test_the_result_says_which_form_ran():
    for form, words in (("siau", "Siau 1984"), ("steep", "aspen"), ("spruce", "spruce")):
        assert words in follow(Stock(0.019, 0.6, form=form), steady_air(20, 60, 3), 8.0).form_says[0]


def test_remarks_carry_the_status_of_a_finish():
    remarks = follow(Stock(0.019, 0.6, first_finish="tung oil"), steady_air(20, 60, 3), 8.0).remarks
    assert any("recalled" in remark for remark in remarks)


def test_many_boards_at_once_match_one_by_one():
    stocks = [Stock(0.01, 0.5), Stock(0.03, 0.7, find_finish("shellac", 2)), Stock(0.02, 0.4, CLOSED, BARE, "spruce")]
    drive = steady_air(20, 65, 20)
    together = follow(stocks, drive, [6.0, 8.0, 10.0])
    assert together.mean_percent.shape == (len(together.days), 3, 3)
    for number, (stock, start) in enumerate(zip(stocks, (6.0, 8.0, 10.0), strict=True)):
        alone = follow(stock, drive, start)
        assert np.allclose(together.mean_percent[:, number], alone.mean_percent, atol=1e-9)


def test_one_finished_face_tilts_the_board():
    """Damp air with varnish on the first face: the bare second face is damper, the tilt positive, then gone."""
    stock = Stock(0.019, 0.6, first_finish=find_finish("urethane varnish", 3))
    course = follow(stock, steady_air(20, 75, 400), 7.0)
    early = course.tilt_percent[np.searchsorted(course.days, 7.0), 1]
    assert early > 0.5
    assert abs(course.tilt_percent[-1, 1]) < 0.1 * early
    assert course.mean_percent[-1, 1] == pytest.approx(course.emc_percent[-1], abs=0.1)


def test_a_closed_face_is_a_board_of_twice_the_thickness():
    half = follow(Stock(0.015, 0.6, first_finish=CLOSED), steady_air(20, 70, 20), 8.0, cells=30)
    whole = follow(Stock(0.030, 0.6), steady_air(20, 70, 20), 8.0, cells=60)
    assert np.allclose(half.mean_percent, whole.mean_percent, atol=2e-3)


@given(thick=thickness, wood=gravity, start=st.floats(3.0, 20.0), humidity=st.floats(20.0, 85.0))
@settings(max_examples=25, deadline=None)
def test_rest_is_ordered_finite_and_arrives(thick, wood, start, humidity):
    rest = resting(Stock(thick, wood), 20, humidity, start)
    assert np.isfinite(rest.days).all() and 0.0 <= rest.days.low <= rest.days.mid <= rest.days.high
    low, high = sorted((start, rest.home_percent))
    assert low - 0.01 <= rest.after_week_percent.low <= rest.after_week_percent.high <= high + 0.01


@given(thick=st.floats(0.006, 0.03), wood=st.floats(0.35, 0.7))
@settings(max_examples=10, deadline=None)
def test_thicker_denser_and_finished_boards_take_longer(thick, wood):
    base = resting(Stock(thick, wood), 20, 65, 6.0).days
    shellac = find_finish("shellac", 3)
    for slower in (Stock(thick * 1.3, wood), Stock(thick, wood * 1.2), Stock(thick, wood, shellac, shellac)):
        assert all(np.greater(resting(slower, 20, 65, 6.0).days, base))


def test_profiles_fall_on_the_days_asked_for():
    """Smooth in the day, and the mean of a profile is the mean moisture of that day."""
    days = [0.0, 0.5, 1.0, 3.3, 7.0, 10.0]
    course = follow(Stock(0.019, 0.6), steady_air(20, 70, 10), 8.0, profile_days=days)
    assert course.profile_days.tolist() == days and course.profile_percent.shape == (6, 60, 3)
    for number, day in enumerate(days):
        expected = [np.interp(day, course.days, course.mean_percent[:, k]) for k in range(3)]
        assert course.profile_percent[number].mean(axis=0) == pytest.approx(expected, abs=1e-9)


def test_a_factor_of_your_own_scales_all_three_speeds():
    base, twice = Stock(0.019, 0.6), Stock(0.019, 0.6, diffusivity_factor=2.0)
    assert np.allclose(np.divide(twice.diffusivity_m2_s(8.0, 20.0), base.diffusivity_m2_s(8.0, 20.0)), 2.0)
    assert all(np.less(resting(twice, 20, 65, 6.0).days, resting(base, 20, 65, 6.0).days))
    assert "times 2" in twice.form_says


def test_rest_inside_the_margin_is_now():
    assert resting(Stock(0.019, 0.6), 20, 50, float(emc_percent(20, 50)) + 0.5).days == (0.0, 0.0, 0.0)


def test_a_smaller_margin_takes_longer():
    days = [resting(Stock(0.019, 0.6), 20, 65, 6.0, margin).days.mid for margin in (2.0, 1.0, 0.5, 0.1)]
    assert np.all(np.diff(days) > 0.0)


def test_storage_in_a_dry_shop_then_a_damp_house():
    ends = storage(Stock(0.025, 0.68), [steady_air(16, 35, 120, "shop"), steady_air(21, 65, 60, "flat")], 8.0)
    assert ends[0].mean_percent.mid < 8.0 < ends[1].mean_percent.mid < ends[1].emc_percent
    assert [end.day for end in ends] == [120.0, 180.0]


def test_year_inside_agrees_with_the_sine_response(request):
    """A sine year: kept and delay from the run lie near the closed response at the mean coefficient."""
    day = np.arange(365.0)
    year = Year(day, np.full(365, 20.0), 50 + 10 * np.sin(2 * np.pi * day / 365), "sine")
    stock = Stock(0.025, 0.6)
    inside = year_inside(stock, year)
    closed = swing_reach(stock, mc_percent=9.3)["year"]
    assert inside.kept.mid == pytest.approx(closed.kept.mid, abs=0.02)
    assert inside.delay_days.mid == pytest.approx(closed.delay_days.mid, rel=0.1)
    assert inside.swing_percent.mid == pytest.approx(inside.air_swing_percent * inside.kept.mid, rel=0.05)


@given(thick=st.floats(0.005, 0.035), wood=gravity, coats=st.sampled_from([None, 1, 3, 6]))
@settings(max_examples=8, deadline=None)
def test_a_board_never_swings_more_than_its_air(thick, wood, coats):
    finish = BARE if coats is None else find_finish("shellac", coats)
    inside = year_inside(Stock(thick, wood, finish, finish), YEAR)
    assert 0.0 < inside.kept.low <= inside.kept.mid <= inside.kept.high <= 1.0 + 1e-4
    assert inside.swing_percent.high <= inside.air_swing_percent + 2e-3  # of four and more: error of daily steps
    assert 0.0 <= inside.delay_days.low <= inside.delay_days.high < 92.0  # a quarter of a year is the most


def test_the_year_repeats():
    inside = year_inside(Stock(0.05, 0.75, "shellac", "shellac"), YEAR)
    mean = inside.followed.mean_percent
    assert np.abs(mean[0] - mean[-1]).max() < 0.05


def test_each_coat_slows_and_none_stops():
    lines = coat_by_coat("urethane varnish", Stock(0.019, 0.6), YEAR)
    kept, week = [line.inside.kept.mid for line in lines], [line.week_percent.mid for line in lines]
    assert [line.finish.coats for line in lines] == [0, 1, 2, 3, 4, 5, 6]
    assert np.all(np.diff(kept) < 0.0) and np.all(np.diff(week) < 0.0)
    assert kept[-1] > 0.6 * kept[0] and week[-1] < 0.25 * week[0]
    assert len(coat_by_coat("bare", Stock(0.019, 0.6), YEAR)) == 1


def test_longer_swings_go_deeper_and_leave_more():
    reach = swing_reach(Stock(0.019, 0.6))
    for name in ("depth_m", "kept", "surface_kept", "delay_days"):
        day, week, year = (getattr(reach[period], name).mid for period in ("day", "week", "year"))
        assert day < week < year


def test_ends_help_short_pieces_only():
    stock = Stock(0.019, 0.6)
    short, long = (fraction_with_ends(0.5, stock, length, 14).mid for length in (0.1, 2.0))
    assert 0.5 < long < 0.53 < short < 1.0
    assert end_grain_reach_m(stock, 40).mid == pytest.approx(2 * end_grain_reach_m(stock, 10).mid)


def test_every_finish_is_found_by_its_own_name():
    for finish in all_finishes():
        assert find_finish(finish.name, finish.coats) is finish
    assert find_finish("bare") is find_finish("NONE") is BARE
    assert finish_names()[0] == "bare wood"


def test_every_figure_has_status_and_source():
    for finish in all_finishes():
        assert finish.figures and all(
            f.status in ("printed", "quoted", "recalled") and f.source for f in finish.figures
        )
        effects = [f.excluded_percent for f in finish.figures]
        assert effects == sorted(effects, reverse=True)  # a finish excludes less the longer it must


def test_more_coats_pass_less():
    for name in finish_names()[1:]:
        films = [finish.film_m_s for finish in all_finishes() if finish.name == name]
        assert films == sorted(films, reverse=True), name


def test_air_is_averaged_over_the_step_exactly():
    """A sawtooth that a six-hour reading would miss: the mean over each day is kept."""
    hours = np.arange(0, 24 * 20 + 1) / 24.0
    rh = 50 + 10 * np.sin(2 * np.pi * hours)
    drive = air_log(hours, 20.0, rh)
    _, emc, _ = drive.on_grid(1.0)
    assert np.abs(emc[40:-2] - np.mean(emc_percent(20.0, rh[:-1]))).max() < 0.01


def test_a_year_starts_over_without_a_jump():
    time, emc, celsius = air_of_year(YEAR, years=2.0).on_grid(1.0)
    day = time / 86400
    later = np.interp(day[day < 360] + 365, day, emc)
    assert np.abs(later - emc[day < 360])[60:].max() < 0.02
    assert np.abs(np.diff(emc)).max() < 0.2 and celsius.min() >= 20.0 - 1e-9


def test_gap_in_a_log_is_said():
    drive = air_log([0, 10, 100], 20.0, [40, 50, 45])
    assert "no readings for 90 days" in drive.remarks[0]
    assert in_turn([drive, drive]).remarks == drive.remarks


def test_air_that_does_not_swing_leaves_no_ratio():
    inside = year_inside(Stock(0.019, 0.6), Year.steady(20, 50))
    assert np.isnan(inside.kept).all() and np.isnan(inside.delay_days).all()
    assert inside.swing_percent.high < 1e-9 and inside.air_swing_percent < 1e-9


def test_the_year_inside_has_whole_days_and_profiles():
    inside = year_inside(Stock(0.019, 0.6), YEAR)
    assert inside.followed.days.tolist() == list(range(366))
    assert inside.followed.profile_days == pytest.approx(np.arange(13) * 365 / 12)
    assert inside.followed.profile_percent.shape == (13, 60, 3)
