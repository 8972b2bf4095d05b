"""A year of air: months, means, typed seasons."""

from __future__ import annotations

import calendar

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.air.seasons import year_from_seasons
from woodlib.air.year import MID_MONTH, MONTH_NAMES, MONTH_STARTS, Year
from woodlib.errors import InputError
from woodlib.moisture.equilibrium import emc_percent

air = st.tuples(st.floats(5, 35), st.floats(5, 95))


def test_calendar():
    assert MONTH_STARTS[-1] == 365
    assert [calendar.monthrange(2023, month)[1] for month in range(1, 13)] == np.diff(MONTH_STARTS).tolist()
    days = Year(np.arange(365) + 0.5, np.full(365, 20.0), np.full(365, 40.0))
    assert np.bincount(days.month)[1:].tolist() == np.diff(MONTH_STARTS).tolist()
    assert Year([0.0, 31.0, 364.999], [20.0] * 3, [40.0] * 3).month.tolist() == [1, 2, 12]


@given(air, air, st.sampled_from(["north", "south"]))
def test_two_seasons_are_reached_and_never_passed(winter, summer, hemisphere):
    year = Year.from_seasons(winter=winter, summer=summer, hemisphere=hemisphere)
    for values, at in ((year.temperature_c, 0), (year.rh_percent, 1)):
        low, high = sorted((winter[at], summer[at]))
        assert values.min() == low and values.max() == high
        monthly = year.monthly()
        cold = 0 if hemisphere == "north" else 6
        means = monthly.temperature_c if at == 0 else monthly.rh_percent
        assert means[cold] == pytest.approx(winter[at], abs=1e-9)
        assert means[(cold + 6) % 12] == pytest.approx(summer[at], abs=1e-9)


@given(air, air, air, air)
def test_four_seasons_run_monotone_between_neighbours(winter, spring, summer, autumn):
    year = Year.from_seasons(winter=winter, spring=spring, summer=summer, autumn=autumn)
    for values, at in ((year.temperature_c, 0), (year.rh_percent, 1)):
        typed = [season[at] for season in (winter, spring, summer, autumn)]
        assert values.min() == min(typed) and values.max() == max(typed)
        corners = [14, 104, 195, 287, 14 + 365]  # middle of January, April, July, October, January
        around = np.concatenate((values, values))
        for index, (start, stop) in enumerate(zip(corners, corners[1:], strict=False)):
            steps = np.diff(around[start : stop + 1])
            towards = typed[(index + 1) % 4] - typed[index]
            assert np.all(steps * np.sign(towards) >= -1e-9)
            assert around[start] == typed[index]


@given(air, air)
def test_the_year_is_smooth_and_closes(winter, summer):
    year = Year.from_seasons(winter=winter, summer=summer)
    wrapped = np.append(year.rh_percent, year.rh_percent[0])
    assert np.abs(np.diff(wrapped)).max() <= abs(winter[1] - summer[1]) * np.pi / 2 / 149 + 1e-9


def test_seasons_by_month_by_text_and_as_a_table():
    year = year_from_seasons({"February": (27, 55), "aug": {"temperature": "82.4 degF", "rh": 80}})
    assert year.driest().name == "February" and year.dampest().name == "August"
    assert year.dampest().temperature_c == pytest.approx(28.0)
    same = Year.from_seasons(fall=(20, 50), winter=(20, 30), spring=(20, 40), summer=(20, 60))
    other = Year.from_seasons(winter=(20, 30), spring=(20, 40), summer=(20, 60), autumn=(20, 50))
    assert np.array_equal(same.rh_percent, other.rh_percent)


def test_south_is_the_north_half_a_year_later():
    north, south = (Year.from_seasons(winter=(18, 40), summer=(26, 60), hemisphere=side) for side in ("north", "south"))
    assert north.driest().name == "January" and south.driest().name == "July"
    assert np.allclose(north.monthly().rh_percent[[0, 6]], south.monthly().rh_percent[[6, 0]])


def test_neighbouring_months_may_be_seasons():
    year = Year.from_seasons(January=(20, 30), February=(20, 50))
    assert year.monthly().rh_percent[:2] == pytest.approx([30, 50])
    assert np.all(np.isfinite(year.rh_percent))


def test_demonstration_house():
    """Cold dry winter, humid summer: 20 degC 30 % and 25 degC 60 % ask for 6.2 and 10.9 % moisture content."""
    year = Year.from_seasons(winter=(20, 30), summer=(25, 60))
    assert year.driest().name == "January" and year.dampest().name == "July"
    assert year.driest().emc_percent == pytest.approx(emc_percent(20, 30), abs=1e-12)
    assert year.dampest().emc_percent == pytest.approx(emc_percent(25, 60), abs=1e-12)


@given(
    st.lists(
        st.tuples(st.floats(0, 730), st.floats(0, 40), st.floats(0, 100)),
        min_size=1,
        max_size=40,
        unique_by=lambda row: round(row[0], 3),
    )
)
def test_monthly_means_lie_within_the_readings(rows):
    rows = sorted(rows)
    if np.any(np.diff([row[0] for row in rows]) <= 0):
        return
    year = Year(*map(np.array, zip(*rows, strict=True)))
    mean = year.monthly()
    assert mean.day.size == 12 - len(year.missing_months) == len(year.months())
    for values, means in (
        (year.temperature_c, mean.temperature_c),
        (year.rh_percent, mean.rh_percent),
        (year.emc_percent(), year.monthly_mean_of_emc()),
    ):
        assert np.all((means >= values.min() - 1e-9) & (means <= values.max() + 1e-9))
    assert year.driest().emc_percent <= year.dampest().emc_percent
    assert mean.monthly().rh_percent == pytest.approx(mean.rh_percent)


def test_days_weigh_alike_whatever_the_pace_of_the_logger():
    """One day logged every minute and one logged once: the mean of the month is the mean of the two days."""
    day = np.concatenate(([0.5], 1.0 + np.arange(1440) / 1440.0))
    year = Year(day, np.full(day.size, 20.0), np.concatenate(([30.0], np.full(1440, 50.0))))
    assert year.monthly().rh_percent.tolist() == [40.0]


def test_mean_of_hours_is_not_emc_of_means():
    day = np.arange(48) / 24.0
    year = Year(day, np.full(48, 20.0), np.where(np.arange(48) % 2, 95.0, 55.0))
    assert year.monthly_mean_of_emc()[0] > year.driest().emc_percent + 1.0


def test_year_is_frozen_and_keeps_its_own_copy():
    humidity = np.full(12, 40.0)
    year = Year(MID_MONTH, np.full(12, 20.0), humidity, "house")
    humidity[0] = 99.0
    assert year.rh_percent[0] == 40.0
    with pytest.raises(ValueError, match="read-only"):
        year.rh_percent[0] = 50.0
    with pytest.raises(AttributeError):
        year.label = "other"  # type: ignore[misc]


def test_partial_year():
    year = Year([10.0, 40.0], [20.0, 20.0], [30.0, 35.0])
    assert year.partial and year.missing_months == tuple(range(3, 13))
    assert not Year.steady(20, 40).partial
    assert [month.name for month in Year.steady(20, 40).months()] == list(MONTH_NAMES)


def test_very_cold_air_is_kept_and_its_moisture_refused():
    year = Year([10.0, 200.0], [-55.0, 10.0], [70.0, 70.0])
    with pytest.raises(InputError, match="goes down to -55 degC.*indoors"):
        year.driest()
    assert "below -1.1 degC" in Year([1.0], [-10.0], [70.0]).emc_remarks()[0]
