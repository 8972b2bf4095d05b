"""A pin meter in cold and warm wood."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.brief import read_brief
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.moisture.meter import metered_percent

readings, temperatures = st.floats(5.0, 30.0), st.floats(-20.0, 45.0)
SEAT = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")


@given(readings)
def test_at_20_degrees_the_reading_stands(reading):
    assert metered_percent(reading, 20.0) == pytest.approx(reading, abs=0.02)


@given(readings, temperatures, st.floats(0.5, 10.0))
def test_the_colder_the_wood_the_damper_it_is_for_the_same_reading(reading, wood_c, colder):
    below = max(wood_c - colder, -20.0)
    assert metered_percent(reading, below) >= metered_percent(reading, wood_c)
    assert metered_percent(reading + 1.0, wood_c) > metered_percent(reading, wood_c)


def test_a_point_for_ten_degrees_about_12_percent():
    """Rule of the trade, from memory: take a point off for each 20 degF (11 K) above 70 degF, add one for each below."""
    steps = -np.diff(metered_percent(12.0, [9.0, 20.0, 31.0]))
    assert steps == pytest.approx([1.0, 1.0], abs=0.2)


def brief_with(folder, line):
    path = folder / "seat.toml"
    path.write_text(SEAT.replace('moisture = "8 %"', line), encoding="utf-8")
    return read_brief(path)


def test_a_brief_says_how_cold_the_wood_was(tmp_path):
    plain, cold = (brief_with(tmp_path, f'moisture = "8 %"{more}') for more in ("", '\nmeter_temperature = "50 degF"'))
    assert plain.stock.moisture_percent() == 8.0
    assert cold.stock.moisture_percent() == pytest.approx(8.7, abs=0.05)
    assert not plain.remarks and "means 8.7 % MC, and it is taken so" in " ".join(cold.remarks)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ('moisture = "8 %"\nmeter_temperature = "150 degF"', "meter_temperature"),
        (
            'shop_temperature = "65 degF"\nshop_humidity = "45 %"\nmeter_temperature = "50 degF"',
            "without wood.moisture",
        ),
    ],
)
def test_a_temperature_that_cannot_be_is_told(tmp_path, line, said):
    with pytest.raises(InputError, match=said):
        brief_with(tmp_path, line)
